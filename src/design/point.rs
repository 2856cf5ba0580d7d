//! A place on the face of the plate.

use std::ops::{Add, Mul, Neg, Sub};

use crate::units::angle::{cos, hypot, sin};

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

    /// Distance from the barrel centre, or the length of a displacement, mm.
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

    /// Length of one displacement along another, times the other's length, mm².
    pub fn dot(self, other: Point) -> f64 {
        self.x * other.x + self.y * other.y
    }

    /// Area of the parallelogram of two displacements, mm²; positive where the second lies anticlockwise of the first.
    pub fn cross(self, other: Point) -> f64 {
        self.x * other.y - self.y * other.x
    }

    /// A displacement turned a quarter turn anticlockwise: what lies to the left of a walk.
    pub fn left(self) -> Point {
        Point::new(-self.y, self.x)
    }

    /// A displacement of the same direction and 1 mm long; of no direction where it has no length.
    pub fn unit(self) -> Point {
        let length = self.radius();
        if length > 0.0 {
            self * (1.0 / length)
        } else {
            Point::default()
        }
    }

    /// Midway between two places.
    pub fn midway(self, other: Point) -> Point {
        (self + other) * 0.5
    }

    /// The place after the plate is turned about a centre, radians anticlockwise.
    pub fn turned_about(self, centre: Point, radians: f64) -> Point {
        let (arm, s, c) = (self - centre, sin(radians), cos(radians));
        centre + Point::new(arm.x * c - arm.y * s, arm.x * s + arm.y * c)
    }

    /// Whether both co-ordinates are numbers.
    pub fn is_finite(self) -> bool {
        self.x.is_finite() && self.y.is_finite()
    }
}

impl Add for Point {
    type Output = Point;
    fn add(self, other: Point) -> Point {
        Point::new(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Point {
    type Output = Point;
    fn sub(self, other: Point) -> Point {
        Point::new(self.x - other.x, self.y - other.y)
    }
}

impl Neg for Point {
    type Output = Point;
    fn neg(self) -> Point {
        Point::new(-self.x, -self.y)
    }
}

impl Mul<f64> for Point {
    type Output = Point;
    fn mul(self, times: f64) -> Point {
        Point::new(self.x * times, self.y * times)
    }
}
