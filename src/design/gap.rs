//! The least distance between edges and between outlines.

use super::edges_meet::edges_meet;
use super::{Edge, Outline, Point};

/// Least distance between two edges, mm; nothing where they meet.
///
/// Two edges that do not meet come nearest at an end of one of them, or where one line is square to both, which of an arc runs
/// through its centre.
pub(super) fn gap(a: &Edge, b: &Edge) -> f64 {
    if edges_meet(a, b).is_some() {
        return 0.0;
    }
    let ends = |of: &Edge, to: &Edge| to.distance(of.from()).min(to.distance(of.to()));
    let square = |of: &Edge, to: &Edge| match *of {
        Edge::Line { .. } => f64::INFINITY,
        Edge::Arc { centre, .. } => of.distance(to.nearest(centre)),
    };
    ends(a, b)
        .min(ends(b, a))
        .min(square(a, b))
        .min(square(b, a))
}

/// Least distance between two chains of edges, mm.
pub(super) fn gap_of_chains(a: &[Edge], b: &[Edge]) -> f64 {
    let pairs = a
        .iter()
        .flat_map(|one| b.iter().map(move |other| gap(one, other)));
    pairs.fold(f64::INFINITY, f64::min)
}

/// Least distance between the areas of two outlines, mm; nothing where they meet or one holds the other.
pub(super) fn gap_of_outlines(a: &Outline, b: &Outline) -> f64 {
    let corner = |of: &Outline| of.edges()[0].from();
    let holds = |outer: &Outline, place: Point| outer.contains(place);
    if holds(a, corner(b)) || holds(b, corner(a)) {
        return 0.0;
    }
    gap_of_chains(a.edges(), b.edges())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::angle::PI;

    fn line(from: (f64, f64), to: (f64, f64)) -> Edge {
        Edge::Line {
            from: Point::new(from.0, from.1),
            to: Point::new(to.0, to.1),
        }
    }

    /// Level lines 3 apart side by side; ends 3-4-5 off; a cross; a half circle of 5 about (0, 0) above a line at y −2: its ends
    /// at y 0 are nearest, 2; the same below it, its crown at y −5, 3 above a line at y −8. Two half circles of 5, crowns facing,
    /// centres 16 apart: 6.
    #[test]
    fn by_hand_gaps_of_edges() {
        let level = line((0.0, 0.0), (10.0, 0.0));
        let near = |a: &Edge, b: &Edge, mm: f64| {
            assert!((gap(a, b) - mm).abs() < 1e-9, "{a:?} {b:?} {}", gap(a, b));
            assert!((gap(b, a) - mm).abs() < 1e-9);
        };
        near(&level, &line((2.0, 3.0), (30.0, 3.0)), 3.0);
        near(&level, &line((13.0, 4.0), (13.0, 30.0)), 5.0);
        near(&level, &line((5.0, -1.0), (5.0, 1.0)), 0.0);
        let upper = Edge::arc(Point::CENTRE, 5.0, 0.0, PI);
        near(&upper, &line((-20.0, -2.0), (20.0, -2.0)), 2.0);
        let lower = Edge::arc(Point::CENTRE, 5.0, PI, 2.0 * PI);
        near(&lower, &line((-20.0, -8.0), (20.0, -8.0)), 3.0);
        let facing = Edge::arc(Point::new(0.0, -16.0), 5.0, 0.0, PI);
        near(&lower, &facing, 6.0);
        // Within a wider arc the gap runs from the inner crown outwards: 9 − 5.
        near(
            &lower,
            &Edge::arc(Point::CENTRE, 9.0, PI * 1.25, PI * 1.75),
            4.0,
        );
    }

    /// Discs of 5, centres 16 apart: 6; one within the other, and two that meet: nothing.
    #[test]
    fn by_hand_gaps_of_outlines() {
        let disc = |x: f64, radius: f64| Outline::circle(Point::new(x, 0.0), radius);
        assert!((gap_of_outlines(&disc(0.0, 5.0), &disc(16.0, 5.0)) - 6.0).abs() < 1e-9);
        for other in [disc(1.0, 20.0), disc(8.0, 5.0), disc(0.5, 1.0)] {
            assert_eq!(gap_of_outlines(&disc(0.0, 5.0), &other), 0.0);
            assert_eq!(gap_of_outlines(&other, &disc(0.0, 5.0)), 0.0);
        }
    }
}
