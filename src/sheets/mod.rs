//! Paper: views, dimensions, tables and lettering as marks, and the three writers that decide nothing.

pub mod face;
#[allow(missing_docs)]
mod mark;

pub use mark::{Hang, Mark, PaperPoint, Pattern, Pen, Role, Sheet, Text};
