//! Paper: views, dimensions, tables and lettering as marks, and the three writers that decide nothing.

pub mod audit;
mod curves;
mod dashes;
pub mod face;
pub mod lettering;
mod lettering_box;
mod mark;
pub mod pdf;
pub mod png;
#[cfg(test)]
mod sample;
pub mod svg;
#[cfg(test)]
mod writers_agree;

pub use mark::{Hang, Mark, PaperPoint, Pattern, Pen, Role, Sheet, Text, at};
