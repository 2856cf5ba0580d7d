//! A place on the face of the plate.

use crate::units::angle::hypot;

/// A place or a displacement, mm: x right and y up from the barrel centre, as seen from the declared side.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// To the right, mm.
    pub x: f64,
    /// Upwards, mm.
    pub y: f64,
}

impl Point {
    /// The barrel centre.
    pub const CENTRE: Point = Point { x: 0.0, y: 0.0 };

    /// A place by its co-ordinates, mm.
    pub const fn new(x: f64, y: f64) -> Point {
        Point { x, y }
    }

    /// Distance to another place, mm.
    pub fn distance(self, other: Point) -> f64 {
        hypot(self.x - other.x, self.y - other.y)
    }

    /// Distance from the barrel centre, mm.
    pub fn radius(self) -> f64 {
        hypot(self.x, self.y)
    }

    /// The place at the opposite hand about the vertical centre line.
    pub fn opposite_hand(self) -> Point {
        Point {
            x: -self.x,
            y: self.y,
        }
    }
}
