//! A defect of a sheet: what is the matter, where, with which words.

use std::fmt;

use kurbo::Point;

use crate::sheets::mark::{PaperPoint, Role};

/// Something on a sheet that a reader would trip on.
#[derive(Clone, Debug, PartialEq)]
pub struct Defect {
    /// What is the matter.
    pub flaw: Flaw,
    /// Where on the paper.
    pub at: PaperPoint,
    /// The words concerned; empty where it is not lettering.
    pub words: String,
}

/// What can be the matter.
#[derive(Clone, Debug, PartialEq)]
pub enum Flaw {
    /// Other words lie over these.
    Overlapped(String),
    /// A line of this role runs through them or too near.
    Crossed(Role),
    /// Reaches off the paper.
    OffPaper,
    /// Reaches out of the frame.
    OutOfFrame,
    /// Lettering lower than the least, mm.
    TooLow {
        /// Its height, mm.
        height: f64,
        /// The least that may stand there, mm.
        least: f64,
    },
    /// A line, arc, circle or polygon of no size.
    NoSize,
    /// A place or size that is no number.
    NoNumber,
    /// An extension line that runs through a hole which it does not belong to.
    ThroughHole,
    /// A character that the face lacks.
    CannotLetter(char),
}

impl fmt::Display for Defect {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let PaperPoint { x, y } = self.at;
        write!(f, "at {x:.1}, {y:.1} mm: ")?;
        if !self.words.is_empty() {
            write!(f, "\"{}\" ", self.words)?;
        }
        match &self.flaw {
            Flaw::Overlapped(other) => write!(f, "is overlapped by \"{other}\""),
            Flaw::Crossed(role) => write!(f, "is crossed by {}", line_name(*role)),
            Flaw::OffPaper => write!(f, "reaches off the paper"),
            Flaw::OutOfFrame => write!(f, "reaches out of the frame"),
            Flaw::TooLow { height, least } => {
                write!(f, "is {height} mm high; the least is {least} mm")
            }
            Flaw::NoSize => write!(f, "a mark of no size"),
            Flaw::NoNumber => write!(f, "a mark's place or size is no number"),
            Flaw::ThroughHole => write!(f, "an extension line runs through a hole"),
            Flaw::CannotLetter(character) => {
                write!(f, "holds {character:?}, which the face cannot letter")
            }
        }
    }
}

fn line_name(role: Role) -> &'static str {
    match role {
        Role::Furniture => "a frame or table line",
        Role::Object => "an edge of the object",
        Role::Centre => "a centre line",
        Role::Hatch => "hatching",
        Role::Dimension => "a dimension line, leader or arrow",
        Role::Extension => "an extension line",
        Role::Lettering => "lettering",
    }
}

impl Defect {
    pub(super) fn new(flaw: Flaw, at: Point, words: &str) -> Self {
        Defect {
            flaw,
            at: PaperPoint { x: at.x, y: at.y },
            words: words.to_string(),
        }
    }
}
