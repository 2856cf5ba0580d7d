//! What was found in comparing a file with a part, in words that name the hole.

use std::collections::BTreeMap;
use std::fmt;

use crate::design::Point;
use crate::units::print::{decimal, trimmed};

/// Sort of difference between a file and the part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DeviationKind {
    /// The whole drawing is larger or smaller.
    Scaled,
    /// The whole drawing lies elsewhere.
    Shifted,
    /// The whole drawing is turned.
    Turned,
    /// The whole drawing is at the other hand.
    Mirrored,
    /// A contour runs elsewhere.
    Outline,
    /// A hole or a pop lies elsewhere.
    Moved,
    /// A circle has another size.
    Resized,
    /// Something is not in the file.
    Missing,
    /// Something is in the file and not in the part.
    Extra,
    /// Something is drawn twice.
    Doubled,
    /// A contour does not close.
    Open,
    /// A circle or an arc is drawn as short straight lines.
    Facetted,
    /// Something to be cut lies among marks, or the reverse.
    Layer,
    /// The file holds what no cut file holds.
    Foreign,
}

impl DeviationKind {
    /// As the report and its JSON have it.
    pub fn name(self) -> &'static str {
        match self {
            DeviationKind::Scaled => "scaled",
            DeviationKind::Shifted => "shifted",
            DeviationKind::Turned => "turned",
            DeviationKind::Mirrored => "mirrored",
            DeviationKind::Outline => "outline",
            DeviationKind::Moved => "moved",
            DeviationKind::Resized => "resized",
            DeviationKind::Missing => "missing",
            DeviationKind::Extra => "extra",
            DeviationKind::Doubled => "doubled",
            DeviationKind::Open => "open",
            DeviationKind::Facetted => "facetted",
            DeviationKind::Layer => "layer",
            DeviationKind::Foreign => "foreign",
        }
    }
}

/// One difference.
#[derive(Clone, Debug, PartialEq)]
pub struct Deviation {
    /// Its sort.
    pub kind: DeviationKind,
    /// What it concerns: "T17", "the edge", "the drawing".
    pub what: String,
    /// Where on the part, as the spec has its axes; none where it concerns the whole drawing.
    pub at: Option<Point>,
    /// By how much, mm (a scale as it is), where one figure says it.
    pub by: Option<f64>,
    /// The fact, in words.
    pub fact: String,
}

impl fmt::Display for Deviation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.what, self.fact)
    }
}

/// What came of comparing a file with a part.
#[derive(Clone, Debug)]
pub struct Comparison {
    /// The part: "plate", "blank", "ring".
    pub part: String,
    /// Whether the part was chosen as the likeliest, and not named.
    pub part_chosen: bool,
    /// Nearer than this two places are one, mm.
    pub within_mm: f64,
    /// Differences, those of the whole drawing first.
    pub differences: Vec<Deviation>,
    /// What is worth knowing and changes nothing that is cut.
    pub notes: Vec<String>,
    /// How many circles, contours, pops and marks of the part were found as they should be.
    pub as_wanted: BTreeMap<&'static str, (usize, usize)>,
}

/// "12.5 mm", to a thousandth at most.
pub(super) fn mm(length: f64) -> String {
    format!("{} mm", trimmed(length, 3))
}

/// "(12.5, -30) mm".
pub(super) fn place(at: Point) -> String {
    format!("({}, {}) mm", trimmed(at.x, 3), trimmed(at.y, 3))
}

/// "+0.5 mm", always signed.
pub(super) fn signed(length: f64) -> String {
    let text = trimmed(length, 3);
    match decimal(length, 3).starts_with('-') {
        true => format!("{text} mm"),
        false => format!("+{text} mm"),
    }
}

/// "1 line", "3 lines".
pub(super) fn counted(count: usize, one: &str, many: &str) -> String {
    match count {
        1 => format!("1 {one}"),
        _ => format!("{count} {many}"),
    }
}
