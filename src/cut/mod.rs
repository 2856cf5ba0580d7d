//! Parts for the profile cutter, and the files they travel in. Knows no sheet and no check.
//!
//! A part is made by [`cut_parts`], written by [`write`], judged by [`preflight`] and read back by [`read_back`].

mod dxf;
mod entity;
mod file_name;
mod lettering;
mod part;
mod read_back;
mod reference;
mod summary;

pub use dxf::{Heading, Unwritable, Version, write};
pub use entity::Extent;
pub use file_name::{file_name, heading};
pub use part::{CutPart, HolesCut, Layer, Shape, Withheld};
pub use read_back::{Difference, read_back};
pub use reference::PROVING_SQUARE_MM;
pub use summary::{LayerCount, Summary, summary};
