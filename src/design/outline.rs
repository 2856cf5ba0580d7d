//! Closed edges of lines and arcs.

use super::Point;

/// One straight or round piece of an edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Edge {
    /// A straight line.
    Line {
        /// Start.
        from: Point,
        /// End.
        to: Point,
    },
    /// A circular arc of half a turn or less.
    Arc {
        /// Start.
        from: Point,
        /// End.
        to: Point,
        /// Centre of its circle.
        centre: Point,
        /// Its radius, mm.
        radius: f64,
        /// Whether it runs anticlockwise.
        anticlockwise: bool,
    },
}

/// The edge of a plate: straight lines and arcs, each starting where the last ended.
///
/// Always closed, anticlockwise, without a crossing; [`Outline::new`] refuses anything else. An arc stays an arc, never
/// facets, and none is more than half a turn.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    edges: Vec<Edge>,
}

/// Why a chain of edges is not an outline.
#[derive(Clone, Debug, PartialEq)]
pub enum NotAnOutline {
    /// The chain does not close, or has a gap: the distance in mm.
    Open(f64),
    /// Two of its edges cross or touch, near this place.
    Crosses(Point),
    /// It has fewer than two edges, or one of no length.
    TooSmall,
}

impl Outline {
    /// A full circle, as two arcs of half a turn.
    pub fn circle(centre: Point, radius: f64) -> Outline {
        let (right, left) = (
            Point::new(centre.x + radius, centre.y),
            Point::new(centre.x - radius, centre.y),
        );
        let arc = |from, to| Edge::Arc {
            from,
            to,
            centre,
            radius,
            anticlockwise: true,
        };
        Outline {
            edges: vec![arc(right, left), arc(left, right)],
        }
    }

    /// The edges, in order.
    pub fn edges(&self) -> &[Edge] {
        &self.edges
    }
}
