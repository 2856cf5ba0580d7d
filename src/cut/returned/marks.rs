//! Marks and pops of the part against loose lines, arcs and points of the file.

use super::chain::same_piece;
use super::deviation::{Deviation, DeviationKind, mm, place, signed};
use super::wanted::{WantedMark, WantedPop};
use crate::design::{Edge, HoleIndex, Point};

/// A pop is looked for this far from its place, mm: further off it is another pop.
const POP_REACH_MM: f64 = 20.0;
/// Arms of a cross longer than this make no pop, mm.
const LONGEST_ARM_MM: f64 = 15.0;

/// For each mark, the piece of the file that lies on it. Pieces found are taken.
pub(super) fn match_marks(
    wanted: &[WantedMark],
    pieces: &[Edge],
    index: &HoleIndex,
    taken: &mut [bool],
    within: f64,
) -> Vec<Option<usize>> {
    let mut found = Vec::new();
    for mark in wanted {
        let near = index.within_sorted(mark.edge.midpoint(), within);
        let on = near
            .into_iter()
            .find(|&p| !taken[p] && same_piece(&pieces[p], &mark.edge, within));
        if let Some(piece) = on {
            taken[piece] = true;
        }
        found.push(on);
    }
    found
}

/// A pop of the file: where it is, and the pieces of its cross, or the number of its point.
#[derive(Clone, Debug)]
pub(super) struct DrawnPop {
    /// Where it is.
    pub at: Point,
    /// Pieces of its cross.
    pub pieces: Vec<usize>,
    /// Its point.
    pub dot: Option<usize>,
}

/// Every pop of the file: points, and crosses of two short lines that halve one another squarely.
pub(super) fn drawn_pops(
    pieces: &[Edge],
    index: &HoleIndex,
    taken: &[bool],
    dots: &[Point],
    within: f64,
) -> Vec<DrawnPop> {
    let mut found: Vec<DrawnPop> = Vec::new();
    let short = |p: usize| {
        matches!(pieces[p], Edge::Line { .. })
            && !taken[p]
            && pieces[p].length_mm() <= 2.0 * LONGEST_ARM_MM
    };
    for piece in (0..pieces.len()).filter(|&p| short(p)) {
        let along = pieces[piece].direction_at_start();
        let at = pieces[piece].midpoint();
        let across = index.within_sorted(at, within).into_iter().find(|&other| {
            other > piece
                && short(other)
                && along.dot(pieces[other].direction_at_start()).abs() < 0.01
                && (pieces[other].length_mm() - pieces[piece].length_mm()).abs() <= 2.0 * within
        });
        if let Some(other) = across {
            found.push(DrawnPop {
                at,
                pieces: vec![piece, other],
                dot: None,
            });
        }
    }
    found.extend(dots.iter().enumerate().map(|(number, at)| DrawnPop {
        at: *at,
        pieces: Vec::new(),
        dot: Some(number),
    }));
    found
}

/// What the pops come to.
#[derive(Debug, Default)]
pub(super) struct Pops {
    /// What differs.
    pub differences: Vec<Deviation>,
    /// For each pop of the part, that of the file.
    pub matched: Vec<Option<usize>>,
    /// How many are as they should be.
    pub as_wanted: usize,
    /// How many crosses came back as points, or the reverse.
    pub otherwise_drawn: usize,
}

/// Matches pops, the nearest first within a bound.
pub(super) fn compare_pops(wanted: &[WantedPop], drawn: &[DrawnPop], within: f64) -> Pops {
    let mut pops = Pops {
        matched: vec![None; wanted.len()],
        ..Pops::default()
    };
    let index = HoleIndex::of_places(drawn.iter().map(|d| d.at).enumerate());
    let mut pairs = Vec::new();
    for (number, pop) in wanted.iter().enumerate() {
        for d in index.within(pop.at, POP_REACH_MM) {
            let otherwise = pop.arm.is_some() == drawn[d].dot.is_some();
            pairs.push((drawn[d].at.distance(pop.at), otherwise, number, d));
        }
    }
    pairs.sort_by(|a, b| {
        a.0.total_cmp(&b.0)
            .then((a.1, a.2, a.3).cmp(&(b.1, b.2, b.3)))
    });
    let mut taken = vec![false; drawn.len()];
    for (_, otherwise, number, d) in pairs {
        if pops.matched[number].is_none() && !taken[d] {
            pops.matched[number] = Some(d);
            taken[d] = true;
            pops.otherwise_drawn += usize::from(otherwise);
        }
    }
    for (pop, matched) in wanted.iter().zip(&pops.matched) {
        let by = matched.map(|d| drawn[d].at - pop.at);
        let (kind, by, fact) = match by {
            None => (
                DeviationKind::Missing,
                None,
                format!("has no pop at {}", place(pop.at)),
            ),
            Some(by) if by.radius() > within => (
                DeviationKind::Moved,
                Some(by.radius()),
                format!(
                    "has its pop moved by {} (x {}, y {}), to {}",
                    mm(by.radius()),
                    signed(by.x),
                    signed(by.y),
                    place(pop.at + by)
                ),
            ),
            Some(_) => {
                pops.as_wanted += 1;
                continue;
            }
        };
        pops.differences.push(Deviation {
            kind,
            what: pop.name.clone(),
            at: Some(pop.at),
            by,
            fact,
        });
    }
    pops
}
