//! Metal between holes, every pair; and from hole edges to the lines of the plate.

use crate::spec::{NamedLine, Purpose};
use crate::units::Length;

/// Clear metal between the edges of two holes.
#[derive(Clone, Debug)]
pub struct Ligament {
    /// Indices into [`super::Design::holes`], the lower first.
    pub holes: (usize, usize),
    /// Centre to centre.
    pub pitch: Length,
    /// Edge to edge, on the diameter through which ligaments are judged; negative where the holes overlap.
    pub metal: Length,
}

/// The least ligament between holes of two purposes.
#[derive(Clone, Debug)]
pub struct LeastLigament {
    /// The purposes, in the order of [`Purpose`].
    pub between: (Purpose, Purpose),
    /// The pair.
    pub ligament: Ligament,
}

/// One direction in which neighbours of a nest lie, with its least ligament and its efficiency.
#[derive(Clone, Debug)]
pub struct DirectionLigament {
    /// Index into [`super::Design::groups`].
    pub group: usize,
    /// "column", "row" or "diagonal".
    pub direction: &'static str,
    /// The tightest pair in that direction.
    pub ligament: Ligament,
    /// (p − d)/p of that pair, a share.
    pub efficiency: f64,
    /// Hole diameter used.
    pub hole: Length,
}

/// Least clear metal from the holes of one purpose to a line.
#[derive(Clone, Debug)]
pub struct Land {
    /// Purpose of the holes.
    pub purpose: Purpose,
    /// The line.
    pub line: NamedLine,
    /// Index of the nearest hole.
    pub hole: usize,
    /// Clear metal; negative where the hole crosses the line.
    pub metal: Length,
}
