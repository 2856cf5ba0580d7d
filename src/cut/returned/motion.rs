//! How a drawing lies to the part that it shows: larger or smaller, turned, shifted, perhaps at the other hand.

use crate::design::{Edge, Point};
use crate::units::angle::{PI, atan2, cos, sin};

/// From the part to the drawing: x reversed where mirrored, then scaled, then turned, then shifted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Motion {
    /// Drawing over part.
    pub scale: f64,
    /// Radians anticlockwise.
    pub turn: f64,
    /// Whether left and right are changed over.
    pub mirrored: bool,
    /// Where the part's own origin lies in the drawing, mm.
    pub shift: Point,
}

impl Motion {
    /// The drawing lies as the part does.
    pub const NONE: Motion = Motion::scaled(1.0, false);

    /// Scaled about the origin, at either hand.
    pub const fn scaled(scale: f64, mirrored: bool) -> Motion {
        Motion {
            scale,
            turn: 0.0,
            mirrored,
            shift: Point::CENTRE,
        }
    }

    /// The motion of this scale and hand that carries one place of the part onto one of the drawing, and the direction of a
    /// second as nearly as may be.
    pub fn through(scale: f64, mirrored: bool, part: [Point; 2], drawing: [Point; 2]) -> Motion {
        let hand = Motion::scaled(scale, mirrored);
        let (along, wanted) = (
            hand.out(part[1]) - hand.out(part[0]),
            drawing[1] - drawing[0],
        );
        let turn = atan2(along.cross(wanted), along.dot(wanted));
        let turned = Motion { turn, ..hand };
        Motion {
            shift: drawing[0] - turned.out(part[0]),
            ..turned
        }
    }

    /// The motion of this scale and hand that brings the pairs (part, drawing) nearest together, by least squares.
    pub fn nearest(scale: f64, mirrored: bool, pairs: &[(Point, Point)]) -> Motion {
        let hand = Motion::scaled(scale, mirrored);
        let count = pairs.len().max(1) as f64;
        let sum = |points: &mut dyn Iterator<Item = Point>| {
            points.fold(Point::CENTRE, |a, b| a + b) * (1.0 / count)
        };
        let middle = sum(&mut pairs.iter().map(|(p, _)| hand.out(*p)));
        let middle_drawn = sum(&mut pairs.iter().map(|(_, d)| *d));
        let (mut across, mut along) = (0.0, 0.0);
        for (part, drawn) in pairs {
            let (a, b) = (hand.out(*part) - middle, *drawn - middle_drawn);
            across += a.cross(b);
            along += a.dot(b);
        }
        let turned = Motion {
            turn: atan2(across, along),
            ..hand
        };
        let shift = middle_drawn - middle.turned_about(Point::CENTRE, turned.turn);
        Motion { shift, ..turned }
    }

    /// A place of the part, in the drawing.
    pub fn out(&self, place: Point) -> Point {
        let handed = match self.mirrored {
            true => place.opposite_hand(),
            false => place,
        };
        let scaled = handed * self.scale;
        match self.turn {
            0.0 => scaled + self.shift,
            turn => scaled.turned_about(Point::CENTRE, turn) + self.shift,
        }
    }

    /// A place of the drawing, on the part.
    pub fn back(&self, place: Point) -> Point {
        let (s, c) = (sin(self.turn), cos(self.turn));
        let arm = place - self.shift;
        let unturned = match self.turn {
            0.0 => arm,
            _ => Point::new(arm.x * c + arm.y * s, arm.y * c - arm.x * s),
        };
        let unscaled = Point::new(unturned.x / self.scale, unturned.y / self.scale);
        match self.mirrored {
            true => unscaled.opposite_hand(),
            false => unscaled,
        }
    }

    /// An edge of the drawing, on the part.
    pub fn edge_back(&self, edge: &Edge) -> Edge {
        edge.carried(|place| self.back(place), 1.0 / self.scale, self.mirrored)
    }

    /// The turn in degrees anticlockwise, −180 to 180.
    pub fn turn_deg(&self) -> f64 {
        let turn = self.turn % (2.0 * PI);
        turn.to_degrees()
    }
}
