//! The largest circle that fits on the flat without a support inside it.

use super::Point;
use crate::units::Length;

/// What a circle touches.
#[derive(Clone, Debug, PartialEq)]
pub enum Touch {
    /// A stay, tube or flue that the spec counts as support: index into [`super::Design::holes`].
    Hole(usize),
    /// The line along which the flange supports the flat, at this place.
    FlangeLine(Point),
}

/// The largest unsupported circle, proven within [`crate::units::tolerance::LARGEST_CIRCLE_MM`].
#[derive(Clone, Debug)]
pub struct LargestCircle {
    /// Its centre; of several alike, the one furthest right and then highest.
    pub centre: Point,
    /// Its diameter, never below the true one by more than the bound.
    pub diameter: Length,
    /// The supports it touches.
    pub touches: Vec<Touch>,
}
