//! A part as the contractor cuts it: closed contours and marks on named layers, true size in millimetres.

use crate::design::{Outline, Point};
use crate::spec::{Material, Process};
use crate::units::print::decimal;
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

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
    /// Every layer, in the order in which files list them.
    pub const ALL: [Layer; 6] = [
        Layer::CutOutside,
        Layer::CutInside,
        Layer::Pop,
        Layer::Scribe,
        Layer::Stamp,
        Layer::Reference,
    ];

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

    /// The layer of this name, if there is one.
    pub fn named(name: &str) -> Option<Layer> {
        Layer::ALL.into_iter().find(|layer| layer.name() == name)
    }

    /// Whether the torch or jet goes through the plate along what lies on it.
    pub fn is_cut(self) -> bool {
        match self {
            Layer::CutOutside | Layer::CutInside => true,
            Layer::Pop | Layer::Scribe | Layer::Stamp | Layer::Reference => false,
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
    /// A pop as a small upright cross of two lines.
    Cross {
        /// Where the lines cross.
        at: Point,
        /// From there to the end of each arm, mm.
        arm: f64,
    },
}

/// What sort of piece a part is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartKind {
    /// The blank or the flat plate itself.
    Plate,
    /// The strip of the ring.
    Ring,
    /// A pad or a doubling ring.
    Pad,
    /// A template, which goes into no boiler.
    Template,
}

/// One piece to be cut.
#[derive(Clone, Debug)]
pub struct CutPart {
    /// What it is, for file names: "blank", "plate", "ring".
    pub name: String,
    /// What sort of piece it is.
    pub kind: PartKind,
    /// How many are wanted.
    pub number_off: u32,
    /// The process it is drawn for.
    pub process: Process,
    /// Thickness as written; a template may have none.
    pub thickness: Option<Size>,
    /// What it is made of, where the spec says.
    pub material: Option<Material>,
    /// Which face is up and what lies where, in words for the file's head and the order note.
    pub lies: String,
    /// Its shapes, each on its layer, in cutting order: marks, inside, outside; reference last.
    pub shapes: Vec<(Layer, Shape)>,
    /// Holes that are cut, by size.
    pub holes_cut: Vec<HolesCut>,
    /// Holes not cut, with the reason, for the order note.
    pub withheld: Vec<Withheld>,
    /// Where numbered holes lie on this part, whatever is made of them.
    pub places: Vec<(String, Point)>,
    /// What else the contractor is told of this part, a sentence each.
    pub remarks: Vec<String>,
    /// Mass as cut with no hole out, kg, where the spec gives a density.
    pub mass_kg: Option<f64>,
    /// What is stamped on it and where, in words; the strokes are among the shapes.
    pub inscriptions: Vec<Inscribed>,
    /// What the part has no room for and is asked for by hand, in the same words.
    pub by_hand: Vec<String>,
    /// Quarters of the round that have a tick on a strip, each with its distance from the left end, mm.
    pub quarters: Vec<(&'static str, f64)>,
}

impl CutPart {
    /// Which holes are out of [`CutPart::mass_kg`], in words.
    pub fn mass_is_of(&self) -> &'static str {
        let middle = |at: Point| at.radius() <= SAME_LENGTH_MM;
        let has_bore = self.shapes.iter().any(|(layer, shape)| match shape {
            Shape::Circle { centre, .. } => *layer == Layer::CutInside && middle(*centre),
            _ => false,
        });
        let is_numbered = self.places.iter().any(|(_, at)| middle(*at));
        match self.kind == PartKind::Pad && has_bore && !is_numbered {
            true => "its bore out, no other hole",
            false => "no hole out",
        }
    }

    /// Whether it has a way up of its own: a plate, and a pad of which a hole stands off the middle.
    pub fn has_top(&self) -> bool {
        let off_the_middle = |(_, at): &(String, Point)| at.radius() > SAME_LENGTH_MM;
        match self.kind {
            PartKind::Plate => true,
            PartKind::Pad => self.places.iter().any(off_the_middle),
            PartKind::Ring | PartKind::Template => false,
        }
    }

    /// Its mass in words, where the spec gives a density: whole kilogrammes, and tenths of what a hand lifts.
    pub fn mass_words(&self) -> Option<String> {
        let kg = self.mass_kg?;
        Some(match kg {
            kg if kg < 0.05 => "less than 0.1 kg".into(),
            kg if kg < 10.0 => format!("about {} kg", decimal(kg, 1)),
            kg => format!("about {} kg", decimal(kg, 0)),
        })
    }
}

/// Lettering that stands together on a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Inscribed {
    /// What it says, a line each.
    pub says: Vec<String>,
    /// Lower left corner of the box round it.
    pub low: Point,
    /// Upper right corner.
    pub high: Point,
}

/// Holes cut to one size.
#[derive(Clone, Debug, PartialEq)]
pub struct HolesCut {
    /// Ids of the holes.
    pub ids: Vec<String>,
    /// What they are called on the sheets.
    pub name: String,
    /// Diameter cut.
    pub cut: Length,
    /// Diameter after the works has finished them.
    pub finish: Length,
    /// By what figures, in words.
    pub by: String,
}

/// A hole that the cut file does not cut, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Withheld {
    /// Ids of the holes.
    pub ids: Vec<String>,
    /// What is done instead: "a pop" or "nothing".
    pub instead: &'static str,
    /// Why.
    pub reason: String,
}
