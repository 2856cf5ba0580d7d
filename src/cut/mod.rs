//! Parts for the profile cutter, and the files they travel in. Knows no sheet and no check.

mod part;

pub use part::{CutPart, Layer, Shape, Withheld};
