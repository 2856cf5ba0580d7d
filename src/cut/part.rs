//! A part as the contractor cuts it: closed contours and marks on named layers, true size in millimetres.

use crate::design::{Outline, Point};

/// Layer of a cut file, by operation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Layer {
    /// The outside edge of the part.
    CutOutside,
    /// Holes and openings.
    CutInside,
    /// Centre pops.
    Pop,
    /// Lines scribed on the face.
    Scribe,
    /// Lettering in strokes.
    Stamp,
    /// Proving square and notes; not to be cut.
    Reference,
}

impl Layer {
    /// Its name in the file.
    pub fn name(self) -> &'static str {
        match self {
            Layer::CutOutside => "CUT-OUTSIDE",
            Layer::CutInside => "CUT-INSIDE",
            Layer::Pop => "POP",
            Layer::Scribe => "SCRIBE",
            Layer::Stamp => "STAMP",
            Layer::Reference => "REFERENCE",
        }
    }
}

/// What lies on a layer.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A full circle.
    Circle {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius: f64,
    },
    /// A closed contour of lines and arcs.
    Closed(Outline),
    /// A single open line.
    Line {
        /// Start.
        from: Point,
        /// End.
        to: Point,
    },
    /// A single open arc, anticlockwise from start to end.
    Arc {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius: f64,
        /// Start, radians anticlockwise from x.
        start: f64,
        /// End, radians anticlockwise from x.
        end: f64,
    },
    /// A point, for machines that take one as a pop.
    Dot(Point),
}

/// One piece to be cut.
#[derive(Clone, Debug)]
pub struct CutPart {
    /// What it is, for file names: "blank", "plate", "ring".
    pub name: String,
    /// How many are wanted.
    pub number_off: u32,
    /// Its shapes, each on its layer, in cutting order: marks, inside, outside.
    pub shapes: Vec<(Layer, Shape)>,
    /// Holes not cut, with the reason, for the order note.
    pub withheld: Vec<Withheld>,
}

/// A hole that the cut file does not cut, and why.
#[derive(Clone, Debug)]
pub struct Withheld {
    /// Ids of the holes.
    pub ids: Vec<String>,
    /// What is done instead: a pop, or nothing.
    pub instead: &'static str,
    /// Why.
    pub reason: String,
}
