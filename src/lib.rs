//! From a written spec of a boiler plate to everything its making needs.
//!
//! The stages, in working order; one type leaves each:
//!
//! 1. [`spec`] reads what the drawing office wrote, or gathers every fault in it: a [`spec::Spec`].
//! 2. [`design`] puts every edge and hole in its place: a [`design::Design`].
//! 3. [`checks`] compares the design with the named rules: a list of [`checks::Finding`].
//! 4. [`sheets`] draws it on paper as marks in millimetres: a list of [`sheets::Sheet`].
//! 5. [`cut`] makes the closed contours that a contractor cuts: a list of [`cut::CutPart`].
//! 6. [`pack`] writes the folder that is handed over, whole or not at all.
//!
//! [`units`] lies below them all and knows no boiler word; [`commands`] calls the stages for each command.

pub mod checks;
pub mod commands;
pub mod cut;
pub mod design;
pub mod pack;
pub mod sheets;
pub mod spec;
pub mod units;
