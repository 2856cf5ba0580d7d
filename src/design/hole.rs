//! Holes in the flat of the plate, in groups, numbered once for every sheet and file.

use super::Point;
use crate::spec::{Purpose, StagePlace};
use crate::units::{Length, Size};

/// One stage in the making of a hole: what size it is now.
#[derive(Clone, Debug)]
pub struct Stage {
    /// What is done.
    pub name: String,
    /// The size it leaves; none for a pop.
    pub size: Option<Size>,
    /// Where it is done.
    pub place: StagePlace,
}

/// Holes alike in purpose and size that stand in one line of the hole schedule.
#[derive(Clone, Debug)]
pub struct HoleGroup {
    /// As the spec calls it.
    pub name: String,
    /// What the holes are for.
    pub purpose: Purpose,
    /// Finished hole.
    pub finish: Size,
    /// Size through which ligaments are judged: the bush's outside where there is one, else the finished hole.
    pub ligament_hole: Length,
    /// Largest hole that the tolerance lets through, where the spec says.
    pub largest: Option<Size>,
    /// Hole after the next re-bore, where the spec says.
    pub next_rebore: Option<Size>,
    /// Tube's outside where it sits in this plate, for tubes and flues.
    pub tube_end: Option<Size>,
    /// Diameter that heads, nuts or washers need clear.
    pub needs_clear: Option<Size>,
    /// Stages in order, the last one the finished hole; never empty.
    pub stages: Vec<Stage>,
    /// For the hole schedule.
    pub remarks: Option<String>,
    /// Where it stands in the spec: `tubes[0]` or `holes[2]`.
    pub path: String,
}

/// A hole in the flat.
#[derive(Clone, Debug)]
pub struct Hole {
    /// Its number, a letter and figures: T17. The same on every sheet, file and record.
    pub id: String,
    /// Index into [`super::Design::groups`].
    pub group: usize,
    /// Centre.
    pub at: Point,
    /// Finished hole; an exception may differ from its group's.
    pub finish: Size,
    /// Diameter through which ligaments are judged.
    pub ligament_hole: Length,
    /// Why it departs from its pattern, where it does.
    pub exception: Option<String>,
    /// Where it stands in the spec, `tubes[0].exceptions[1]` where an exception made it.
    pub path: String,
}

/// A line of a nest, for the column or row table.
#[derive(Clone, Debug)]
pub struct NestLine {
    /// Index into [`super::Design::groups`].
    pub group: usize,
    /// Number of the line in its pattern; 0 runs through the pattern's `through`.
    pub number: i32,
    /// x of a column or y of a row, mm.
    pub offset: f64,
    /// Ids of its holes, from low to high (column) or left to right (row).
    pub holes: Vec<String>,
    /// Lowest y of a column or leftmost x of a row, mm.
    pub first: f64,
    /// Highest y or rightmost x, mm.
    pub last: f64,
}

/// A hole of the pattern that is left out, and why.
#[derive(Clone, Debug)]
pub struct Omission {
    /// Index into [`super::Design::groups`].
    pub group: usize,
    /// Where it would have been.
    pub at: Point,
    /// The reason given.
    pub reason: String,
}

/// Whether the lines of a nest are columns or rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LineWay {
    /// Vertical.
    Columns,
    /// Horizontal.
    Rows,
}
