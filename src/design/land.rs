//! Clear metal from hole edges to the lines of the plate.

use super::{Hole, HoleGroup, Outline};
use crate::spec::{NamedLine, Purpose};
use crate::units::Length;
use crate::units::tolerance::SAME_LENGTH_MM;

/// Least clear metal from the holes of one purpose to a line.
#[derive(Clone, Debug)]
pub struct Land {
    /// Purpose of the holes.
    pub purpose: Purpose,
    /// The line.
    pub line: NamedLine,
    /// Index of the nearest hole.
    pub hole: usize,
    /// Clear metal; negative where the hole crosses the line or lies beyond it.
    pub metal: Length,
}

/// The least land of each purpose of hole to each line, by purpose and then in the order of the lines; of several holes alike,
/// the one with the lowest index.
///
/// The edge and the tangent bound the flat, so every hole must lie within them, and a hole beyond has negative land. The toes of
/// a ring's weld divide a plate carried below its barrel in two: holes within the ring are measured to the inner toe and holes
/// without to the outer, and a hole in the weld itself has negative land to both. Where a plate has only one toe, only the
/// holes on its own side or across it are measured.
pub fn lands(holes: &[Hole], groups: &[HoleGroup], lines: &[(NamedLine, Outline)]) -> Vec<Land> {
    let mut purposes: Vec<Purpose> = holes.iter().map(|h| groups[h.group].purpose).collect();
    purposes.sort_unstable();
    purposes.dedup();
    let mut all = Vec::new();
    for purpose in purposes {
        for (name, line) in lines {
            let measured = (0..holes.len())
                .filter(|&hole| groups[holes[hole].group].purpose == purpose)
                .filter_map(|hole| Some((hole, land_of(&holes[hole], *name, line, lines)?)));
            all.extend(least_land(measured).map(|(hole, metal)| Land {
                purpose,
                line: *name,
                hole,
                metal,
            }));
        }
    }
    all
}

/// Clear metal from one hole's edge to a line; none where the hole stands on the side of a weld that the line does not face.
pub fn land_of(
    hole: &Hole,
    name: NamedLine,
    line: &Outline,
    lines: &[(NamedLine, Outline)],
) -> Option<Length> {
    let radius = hole.ligament_hole.to_mm() / 2.0;
    let depth = line.depth(hole.at);
    let beyond_other = |other: NamedLine| {
        let other = lines.iter().find(|(name, _)| *name == other);
        other.map(|(_, line)| !line.contains(hole.at))
    };
    let (metal, belongs) = match name {
        NamedLine::Edge | NamedLine::Tangent => (depth - radius, true),
        NamedLine::InnerWeldToe => {
            let beyond = beyond_other(NamedLine::OuterWeldToe).unwrap_or(depth < -radius);
            (depth - radius, !beyond)
        }
        NamedLine::OuterWeldToe => {
            let beyond = beyond_other(NamedLine::InnerWeldToe).unwrap_or(depth < radius);
            (-depth - radius, beyond)
        }
    };
    belongs.then_some(Length::mm(metal))
}

fn least_land(measured: impl Iterator<Item = (usize, Length)>) -> Option<(usize, Length)> {
    let mut best: Option<(usize, Length)> = None;
    for (hole, metal) in measured {
        // A hole must be nearer by more than a rounding to take the place of one with a lower index.
        if best.is_none_or(|(_, least)| metal < least - Length::mm(SAME_LENGTH_MM)) {
            best = Some((hole, metal));
        }
    }
    best
}
