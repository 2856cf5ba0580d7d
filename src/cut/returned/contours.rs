//! Closed contours of the part against chains of the file: how far they lie apart, where they gape, where arcs became facets.

use super::chain::Chain;
use super::deviation::{Deviation, DeviationKind, counted, mm, place};
use super::wanted::WantedContour;
use crate::design::{Edge, Outline, Point};
use crate::units::angle::hypot;

/// Contours are walked in steps of this, mm.
const STEP_MM: f64 = 2.0;
/// Steps along one piece at most and at least.
const STEPS: std::ops::RangeInclusive<usize> = 8..=1500;
/// Loose pieces within this share of a contour's size of it are taken to be what is left of it.
const NEAR: f64 = 0.02;
/// Straight lines with both ends on one arc, from which number on it is said to be facetted.
const FEWEST_FACETS: usize = 3;

/// What one contour came to.
#[derive(Debug, Default)]
pub(super) struct Contour {
    /// What differs.
    pub differences: Vec<Deviation>,
    /// Chains of the file that make it.
    pub chains: Vec<usize>,
}

/// Finds the chains that make a contour among those not taken, and compares. `pieces` lie on the part.
pub(super) fn compare_contour(
    wanted: &WantedContour,
    pieces: &[Edge],
    chains: &[Chain],
    taken: &[bool],
    within: f64,
) -> Contour {
    let edges = |c: usize| {
        chains[c]
            .pieces
            .iter()
            .map(|&p| pieces[p])
            .collect::<Vec<Edge>>()
    };
    let free: Vec<usize> = (0..chains.len()).filter(|&c| !taken[c]).collect();
    if let Some(closed) = closed_like(wanted, &free, chains, &edges) {
        let drawn = edges(closed);
        let mut differences = apart(wanted, &drawn, within, true);
        differences.extend(facetted(wanted, &drawn, within));
        let chains = vec![closed];
        return Contour {
            differences,
            chains,
        };
    }
    let left = what_is_left(wanted, &free, &edges);
    if left.is_empty() {
        return Contour {
            differences: vec![missing(wanted)],
            chains: left,
        };
    }
    let drawn: Vec<Edge> = left.iter().flat_map(|&c| edges(c)).collect();
    let ends = left.iter().filter_map(|&c| chains[c].ends);
    let ends: Vec<Point> = ends.flat_map(|(a, b)| [a, b]).collect();
    let ends: Vec<Point> = ends.into_iter().collect();
    let mut differences = gaps(wanted, &ends, pieces, chains, &left);
    differences.extend(apart(wanted, &drawn, within, false));
    differences.extend(facetted(wanted, &drawn, within));
    Contour {
        differences,
        chains: left,
    }
}

fn size(outline: &Outline) -> f64 {
    let (low, high) = outline.bounds();
    hypot(high.x - low.x, high.y - low.y)
}

/// The closed chain whose box is most like the contour's; none where none is like it.
fn closed_like(
    wanted: &WantedContour,
    free: &[usize],
    chains: &[Chain],
    edges: &impl Fn(usize) -> Vec<Edge>,
) -> Option<usize> {
    let (low, high) = wanted.outline.bounds();
    let unlike = |c: usize| {
        let boxes = edges(c).into_iter().map(|e| e.bounds());
        let (l, h) = boxes
            .reduce(|a, b| {
                (
                    Point::new(a.0.x.min(b.0.x), a.0.y.min(b.0.y)),
                    Point::new(a.1.x.max(b.1.x), a.1.y.max(b.1.y)),
                )
            })
            .unwrap_or_default();
        l.distance(low) + h.distance(high)
    };
    let closed = free.iter().copied().filter(|&c| chains[c].ends.is_none());
    closed
        .map(|c| (unlike(c), c))
        .filter(|(unlike, _)| *unlike <= size(&wanted.outline) / 4.0)
        .min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)))
        .map(|(_, c)| c)
}

/// Chains that lie along the contour.
fn what_is_left(
    wanted: &WantedContour,
    free: &[usize],
    edges: &impl Fn(usize) -> Vec<Edge>,
) -> Vec<usize> {
    let reach = NEAR * size(&wanted.outline);
    let along = |&c: &usize| {
        let near = |edge: &Edge| walk(edge).all(|p| wanted.outline.distance(p) <= reach);
        edges(c).iter().all(near)
    };
    // Where short pieces alone are near, they are marks beside it and not the contour.
    let left: Vec<usize> = free.iter().copied().filter(along).collect();
    let length: f64 = left
        .iter()
        .flat_map(|&c| edges(c))
        .map(|e| e.length_mm())
        .sum();
    match length >= wanted.outline.perimeter().to_mm() / 4.0 {
        true => left,
        false => Vec::new(),
    }
}

fn walk(edge: &Edge) -> impl Iterator<Item = Point> + '_ {
    let steps = (edge.length_mm() / STEP_MM) as usize;
    let steps = steps.clamp(*STEPS.start(), *STEPS.end());
    (0..=steps).map(move |i| edge.at_share(i as f64 / steps as f64))
}

fn missing(wanted: &WantedContour) -> Deviation {
    Deviation {
        kind: DeviationKind::Missing,
        what: wanted.name.clone(),
        at: None,
        by: None,
        fact: "is missing: no closed contour of the file is like it".into(),
    }
}

/// A stretch that lies off, and the place where it lies furthest off.
struct Stretch {
    at: Point,
    off: f64,
}

/// Stretches of a walk that lie further off than `within`.
fn stretches(walk: impl Iterator<Item = (Point, f64)>, within: f64) -> Vec<Stretch> {
    let mut found: Vec<Stretch> = Vec::new();
    let mut inside = false;
    for (at, off) in walk {
        if off <= within {
            inside = false;
        } else if !inside {
            inside = true;
            found.push(Stretch { at, off });
        } else if let Some(last) = found.last_mut().filter(|last| off > last.off) {
            *last = Stretch { at, off };
        }
    }
    found
}

/// Where the two lie apart. A contour that gapes is walked along the file alone: its gaps are told for themselves.
fn apart(wanted: &WantedContour, drawn: &[Edge], within: f64, closed: bool) -> Vec<Deviation> {
    let to_drawn = |p: Point| {
        drawn
            .iter()
            .map(|e| e.distance(p))
            .fold(f64::INFINITY, f64::min)
    };
    let outline = &wanted.outline;
    let mut found = match closed {
        true => {
            let places = outline.edges().iter().flat_map(walk);
            stretches(places.map(|p| (p, to_drawn(p))), within)
        }
        false => Vec::new(),
    };
    let places = drawn.iter().flat_map(|e| walk(e).collect::<Vec<_>>());
    let along_file = stretches(places.map(|p| (p, outline.distance(p))), within);
    let most = |list: &[Stretch]| list.iter().map(|s| s.off).fold(0.0, f64::max);
    // What a spike of the file reaches, the part's own contour does not see.
    if found.is_empty() || most(&along_file) > 2.0 * most(&found) {
        found = along_file;
    }
    found
        .into_iter()
        .map(|stretch| lies_off(wanted, drawn, &stretch))
        .collect()
}

fn lies_off(wanted: &WantedContour, drawn: &[Edge], stretch: &Stretch) -> Deviation {
    let nearest = |p: Point| {
        let places = drawn.iter().map(|e| e.nearest(p));
        places.min_by(|a, b| a.distance(p).total_cmp(&b.distance(p)))
    };
    // A place of the file that is no place of the part lies on one side of the part's contour.
    let of_file = nearest(stretch.at).unwrap_or(stretch.at);
    let side = match wanted.outline.contains(of_file) {
        true => "inside",
        false => "outside",
    };
    Deviation {
        kind: DeviationKind::Outline,
        what: wanted.name.clone(),
        at: Some(stretch.at),
        by: Some(stretch.off),
        fact: format!(
            "runs {} {side} its true line at {}",
            mm(stretch.off),
            place(stretch.at)
        ),
    }
}

/// Each end of what is left with the nearest other end.
fn gaps(
    wanted: &WantedContour,
    ends: &[Point],
    pieces: &[Edge],
    chains: &[Chain],
    left: &[usize],
) -> Vec<Deviation> {
    let mut free: Vec<Point> = ends.to_vec();
    let mut found = Vec::new();
    while free.len() >= 2 {
        let mut best = (f64::INFINITY, 0, 1);
        for a in 0..free.len() {
            for b in a + 1..free.len() {
                let gap = free[a].distance(free[b]);
                if gap < best.0 {
                    best = (gap, a, b);
                }
            }
        }
        let (gap, a, b) = best;
        let at = free[a].midway(free[b]);
        found.push(Deviation {
            kind: DeviationKind::Open,
            what: wanted.name.clone(),
            at: Some(at),
            by: Some(gap),
            fact: format!("does not close: a gap of {} at {}", mm(gap), place(at)),
        });
        free.remove(b);
        free.remove(a);
    }
    if found.is_empty() {
        let count: usize = left.iter().map(|&c| chains[c].pieces.len()).sum();
        let at = left
            .first()
            .map(|&c| pieces[chains[c].pieces[0]].midpoint());
        found.push(Deviation {
            kind: DeviationKind::Open,
            what: wanted.name.clone(),
            at,
            by: None,
            fact: format!(
                "is broken up into {}",
                counted(count, "piece", "pieces that make no one contour")
            ),
        });
    }
    found
}

/// Arcs of the contour that the file draws in short straight lines.
fn facetted(wanted: &WantedContour, drawn: &[Edge], within: f64) -> Vec<Deviation> {
    let arcs = wanted.outline.edges().iter();
    let arcs = arcs.filter(|e| matches!(e, Edge::Arc { .. }));
    arcs.filter_map(|arc| {
        let on = |p: Point| arc.distance(p) <= within;
        let facets = drawn
            .iter()
            .filter(|e| matches!(e, Edge::Line { .. }) && on(e.from()) && on(e.to()));
        let across: Vec<f64> = facets.map(|e| arc.distance(e.midpoint())).collect();
        let most = across.iter().copied().fold(0.0, f64::max);
        (across.len() >= FEWEST_FACETS).then(|| Deviation {
            kind: DeviationKind::Facetted,
            what: wanted.name.clone(),
            at: Some(arc.midpoint()),
            by: Some(most),
            fact: format!(
                "has an arc at {} drawn as {} straight lines, which cut across it by up to {}",
                place(arc.midpoint()),
                across.len(),
                mm(most)
            ),
        })
    })
    .collect()
}
