//! Closed edges of lines and arcs.

use std::fmt;

use super::edges_meet::{edges_meet, edges_meet_again};
use super::{Edge, Point};
use crate::units::Length;
use crate::units::angle::PI;
use crate::units::tolerance::{SAME_ANGLE_DEG, SAME_LENGTH_MM};

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
    /// An arc whose ends are not both at its radius from its centre: the start of it.
    BadArc(Point),
    /// A co-ordinate is not a number.
    NotANumber,
}

impl fmt::Display for NotAnOutline {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NotAnOutline::Open(gap) => {
                write!(f, "the edge does not close: it is open by {gap:.3} mm")
            }
            NotAnOutline::Crosses(p) => {
                write!(
                    f,
                    "the edge crosses or touches itself near x {:.3}, y {:.3} mm",
                    p.x, p.y
                )
            }
            NotAnOutline::TooSmall => f.write_str("the edge has a piece of no length"),
            NotAnOutline::BadArc(p) => {
                write!(
                    f,
                    "the arc from x {:.3}, y {:.3} mm does not fit its radius",
                    p.x, p.y
                )
            }
            NotAnOutline::NotANumber => f.write_str("a place on the edge is not a number"),
        }
    }
}

impl std::error::Error for NotAnOutline {}

impl Outline {
    /// A closed chain of edges, walked either way.
    ///
    /// Ends nearer than [`SAME_LENGTH_MM`] are joined; arcs of more than half a turn are split; a chain walked clockwise is
    /// turned round. Refused: a gap, an edge of no length, an arc off its radius, edges that cross or touch anywhere but at
    /// their joint.
    pub fn new(edges: Vec<Edge>) -> Result<Outline, NotAnOutline> {
        refuse_bad_edges(&edges)?;
        let edges = split_long_arcs(&join_ends(&edges)?);
        refuse_crossings(&edges)?;
        let outline = Outline { edges };
        Ok(if outline.signed_area_mm2() < 0.0 {
            outline.walked_the_other_way()
        } else {
            outline
        })
    }

    /// A full circle, as two arcs of half a turn. The radius, mm, is more than nothing.
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

    /// Area inside, mm², the segments of arcs exactly.
    pub fn area_mm2(&self) -> f64 {
        self.signed_area_mm2()
    }

    fn signed_area_mm2(&self) -> f64 {
        // Taken from a corner of its own, so that an outline far from the barrel centre loses no digits.
        let base = self.edges[0].from();
        self.edges
            .iter()
            .map(|e| (e.from() - base).cross(e.to() - base) / 2.0 + e.area_beyond_chord_mm2())
            .sum()
    }

    /// Length of the edge all round.
    pub fn perimeter(&self) -> Length {
        Length::mm(self.edges.iter().map(Edge::length_mm).sum())
    }

    /// Lower left and upper right corner of the box round it, the bulges of arcs included.
    pub fn bounds(&self) -> (Point, Point) {
        let mut boxes = self.edges.iter().map(Edge::bounds);
        let first = boxes.next().expect("an outline has edges");
        boxes.fold(first, |(low, high), (l, h)| {
            (
                Point::new(low.x.min(l.x), low.y.min(l.y)),
                Point::new(high.x.max(h.x), high.y.max(h.y)),
            )
        })
    }

    /// Whether a place lies inside. On the edge itself, to a rounding, it may say either.
    pub fn contains(&self, place: Point) -> bool {
        self.edges
            .iter()
            .map(|e| turns_about(e, place))
            .sum::<i32>()
            != 0
    }

    /// The place of the edge nearest to a place; of several alike, the first along the edge.
    pub fn nearest(&self, place: Point) -> Point {
        self.nearest_edge(place).nearest(place)
    }

    /// Distance from a place to the edge, mm, whichever side of it the place lies.
    pub fn distance(&self, place: Point) -> f64 {
        self.edges
            .iter()
            .map(|e| e.distance(place))
            .fold(f64::INFINITY, f64::min)
    }

    fn nearest_edge(&self, place: Point) -> &Edge {
        let mut best = (f64::INFINITY, &self.edges[0]);
        for edge in &self.edges {
            let distance = edge.distance(place);
            if distance < best.0 {
                best = (distance, edge);
            }
        }
        best.1
    }

    /// Distance to the edge, mm, positive inside and negative outside.
    pub fn depth(&self, place: Point) -> f64 {
        let distance = self.distance(place);
        if self.contains(place) {
            distance
        } else {
            -distance
        }
    }

    /// Centre and radius, mm, where the outline is one full circle.
    pub fn as_circle(&self) -> Option<(Point, f64)> {
        let Edge::Arc {
            centre: middle,
            radius: size,
            ..
        } = self.edges[0]
        else {
            return None;
        };
        self.edges
            .iter()
            .all(|e| match *e {
                Edge::Line { .. } => false,
                Edge::Arc {
                    centre,
                    radius,
                    anticlockwise,
                    ..
                } => {
                    anticlockwise
                        && centre.distance(middle) <= SAME_LENGTH_MM
                        && (radius - size).abs() <= SAME_LENGTH_MM
                }
            })
            .then_some((middle, size))
    }

    /// A place where this outline and another cross or touch, if there is one.
    pub fn crosses(&self, other: &Outline) -> Option<Point> {
        self.edges.iter().find_map(|a| {
            let near = other.edges.iter().filter(|b| boxes_meet(a, b));
            near.filter_map(|b| edges_meet(a, b)).next()
        })
    }

    /// The stretch of it walked anticlockwise from one place on it to another; of a place beside it, from the nearest on it.
    pub fn stretch(&self, from: Point, to: Point) -> Vec<Edge> {
        let number = |place: Point| {
            let from_edge = |edge: &Edge| edge.distance(place);
            let nearest = (0..self.edges.len())
                .min_by(|&a, &b| from_edge(&self.edges[a]).total_cmp(&from_edge(&self.edges[b])));
            let index = nearest.expect("an outline has edges");
            (index, self.edges[index].nearest(place))
        };
        let ((first, from), (last, to)) = (number(from), number(to));
        let along = &self.edges[first];
        if first == last && along.run_to(from) <= along.run_to(to) {
            return vec![along.between(from, to)];
        }
        let mut all = vec![along.between(from, along.to())];
        let mut next = (first + 1) % self.edges.len();
        while next != last {
            all.push(self.edges[next]);
            next = (next + 1) % self.edges.len();
        }
        all.push(self.edges[last].between(self.edges[last].from(), to));
        all.retain(|edge| edge.from().distance(edge.to()) > SAME_LENGTH_MM);
        all
    }

    /// The outline at the opposite hand about the vertical centre line.
    pub fn opposite_hand(&self) -> Outline {
        Outline {
            edges: self
                .edges
                .iter()
                .map(|e| e.moved(Point::opposite_hand, true))
                .collect(),
        }
        .walked_the_other_way()
    }

    /// The outline after the plate is turned about a centre, radians anticlockwise.
    pub fn turned_about(&self, centre: Point, radians: f64) -> Outline {
        Outline {
            edges: self
                .edges
                .iter()
                .map(|e| e.turned_about(centre, radians))
                .collect(),
        }
    }

    /// The outline shifted without a turn.
    pub fn shifted(&self, by: Point) -> Outline {
        Outline {
            edges: self
                .edges
                .iter()
                .map(|e| e.moved(|p| p + by, false))
                .collect(),
        }
    }

    fn walked_the_other_way(&self) -> Outline {
        Outline {
            edges: self.edges.iter().rev().map(Edge::reversed).collect(),
        }
    }
}

fn refuse_bad_edges(edges: &[Edge]) -> Result<(), NotAnOutline> {
    for edge in edges {
        if !(edge.from().is_finite() && edge.to().is_finite()) {
            return Err(NotAnOutline::NotANumber);
        }
        if let Edge::Arc {
            from,
            to,
            centre,
            radius,
            ..
        } = *edge
        {
            if !(centre.is_finite() && radius.is_finite()) {
                return Err(NotAnOutline::NotANumber);
            }
            let off = |end: Point| (end.distance(centre) - radius).abs() > SAME_LENGTH_MM;
            if radius <= SAME_LENGTH_MM || off(from) || off(to) {
                return Err(NotAnOutline::BadArc(from));
            }
        }
        if edge.from().distance(edge.to()) <= SAME_LENGTH_MM {
            return Err(NotAnOutline::TooSmall);
        }
    }
    if edges.len() < 2 {
        Err(NotAnOutline::TooSmall)
    } else {
        Ok(())
    }
}

/// Every edge made to start exactly where the last ended.
fn join_ends(edges: &[Edge]) -> Result<Vec<Edge>, NotAnOutline> {
    let mut end = edges[edges.len() - 1].to();
    edges
        .iter()
        .map(|edge| {
            let gap = edge.from().distance(end);
            if gap > SAME_LENGTH_MM {
                return Err(NotAnOutline::Open(gap));
            }
            let joined = edge.between(end, edge.to());
            end = edge.to();
            Ok(joined)
        })
        .collect()
}

fn split_long_arcs(edges: &[Edge]) -> Vec<Edge> {
    let half_turn = PI + SAME_ANGLE_DEG.to_radians();
    edges
        .iter()
        .flat_map(|edge| {
            if edge.sweep().abs() > half_turn {
                let (first, second) = edge.halves();
                vec![first, second]
            } else {
                vec![*edge]
            }
        })
        .collect()
}

/// Looks at every pair of edges whose boxes meet, the edges sorted by the left side of their boxes.
fn refuse_crossings(edges: &[Edge]) -> Result<(), NotAnOutline> {
    let mut order: Vec<usize> = (0..edges.len()).collect();
    let boxes: Vec<_> = edges.iter().map(Edge::bounds).collect();
    order.sort_by(|&a, &b| boxes[a].0.x.total_cmp(&boxes[b].0.x));
    for (rank, &a) in order.iter().enumerate() {
        for &b in &order[rank + 1..] {
            if boxes[b].0.x > boxes[a].1.x + SAME_LENGTH_MM {
                break;
            }
            if let Some(place) = pair_meets(edges, a, b) {
                return Err(NotAnOutline::Crosses(place));
            }
        }
    }
    Ok(())
}

fn pair_meets(edges: &[Edge], a: usize, b: usize) -> Option<Point> {
    if !boxes_meet(&edges[a], &edges[b]) {
        return None;
    }
    let mut joints = Vec::new();
    if (a + 1) % edges.len() == b {
        joints.push(edges[b].from());
    }
    if (b + 1) % edges.len() == a {
        joints.push(edges[a].from());
    }
    if joints.is_empty() {
        edges_meet(&edges[a], &edges[b])
    } else {
        edges_meet_again(&edges[a], &edges[b], &joints)
    }
}

fn boxes_meet(a: &Edge, b: &Edge) -> bool {
    let ((a_low, a_high), (b_low, b_high)) = (a.bounds(), b.bounds());
    a_low.x <= b_high.x + SAME_LENGTH_MM
        && b_low.x <= a_high.x + SAME_LENGTH_MM
        && a_low.y <= b_high.y + SAME_LENGTH_MM
        && b_low.y <= a_high.y + SAME_LENGTH_MM
}

/// How often an edge carries the outline round a place: by where its chord crosses the level line that runs right from the
/// place, and by whether the place lies between arc and chord. Summed over a closed chain it is whole turns.
///
/// A place exactly on a chord is taken as a hair to the right of it, or above a level one, in both questions alike: otherwise
/// a place on the chord of an arc, which is well inside the plate, would be counted twice or never.
fn turns_about(edge: &Edge, place: Point) -> i32 {
    let (from, along) = (edge.from(), edge.to() - edge.from());
    let side = match along.cross(place - from) {
        0.0 if along.y != 0.0 => -along.y,
        0.0 => along.x,
        side => side,
    };
    let to = edge.to();
    let mut turns = 0;
    if from.y <= place.y && place.y < to.y && side > 0.0 {
        turns += 1;
    }
    if to.y <= place.y && place.y < from.y && side < 0.0 {
        turns -= 1;
    }
    if edge.holds_beyond_chord(place, side < 0.0) {
        turns += if side < 0.0 { 1 } else { -1 };
    }
    turns
}

#[cfg(test)]
mod tests {
    use super::*;

    fn polygon(corners: &[(f64, f64)]) -> Vec<Edge> {
        let at = |i: usize| Point::new(corners[i].0, corners[i].1);
        let n = corners.len();
        (0..n)
            .map(|i| Edge::Line {
                from: at(i),
                to: at((i + 1) % n),
            })
            .collect()
    }

    /// Disc of radius 10: area 100 π, girth 20 π, box 20 × 20.
    #[test]
    fn by_hand_disc() {
        let disc = Outline::circle(Point::new(5.0, -7.0), 10.0);
        assert!((disc.area_mm2() - 100.0 * PI).abs() < 1e-9);
        assert!((disc.perimeter().to_mm() - 20.0 * PI).abs() < 1e-9);
        assert_eq!(
            disc.bounds(),
            (Point::new(-5.0, -17.0), Point::new(15.0, 3.0))
        );
        assert_eq!(disc.as_circle(), Some((Point::new(5.0, -7.0), 10.0)));
        assert!(disc.contains(Point::new(5.0, -7.0)) && !disc.contains(Point::new(16.0, -7.0)));
    }

    /// A rectangle 30 × 20 walked clockwise is turned round: area 600, and the place (10, 4) is 4 from its lower side.
    #[test]
    fn by_hand_rectangle_walked_clockwise() {
        let edges = polygon(&[(0.0, 0.0), (0.0, 20.0), (30.0, 20.0), (30.0, 0.0)]);
        let outline = Outline::new(edges).unwrap();
        assert_eq!(outline.area_mm2(), 600.0);
        assert_eq!(outline.perimeter(), Length::mm(100.0));
        assert_eq!(
            outline.nearest(Point::new(10.0, 4.0)),
            Point::new(10.0, 0.0)
        );
        assert_eq!(outline.depth(Point::new(10.0, 4.0)), 4.0);
        assert_eq!(outline.depth(Point::new(33.0, 24.0)), -5.0);
        assert_eq!(outline.as_circle(), None);
    }

    /// Three quarters of a disc of radius 10 and the two radii: the arc is split; area 75 π, box from −10 to 10 both ways.
    #[test]
    fn by_hand_three_quarter_disc() {
        let arc = Edge::arc(Point::CENTRE, 10.0, 0.0, 1.5 * PI);
        let outline = Outline::new(vec![
            arc,
            Edge::Line {
                from: arc.to(),
                to: Point::CENTRE,
            },
            Edge::Line {
                from: Point::CENTRE,
                to: arc.from(),
            },
        ])
        .unwrap();
        assert_eq!(outline.edges().len(), 4);
        assert!((outline.area_mm2() - 75.0 * PI).abs() < 1e-9);
        let (low, high) = outline.bounds();
        assert!(low.distance(Point::new(-10.0, -10.0)) < 1e-9);
        assert!(high.distance(Point::new(10.0, 10.0)) < 1e-9);
        assert!(
            outline.contains(Point::new(-3.0, -3.0)) && !outline.contains(Point::new(3.0, -3.0))
        );
    }

    #[test]
    fn refuses_what_is_not_an_outline() {
        let bow = polygon(&[(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)]);
        assert!(
            matches!(Outline::new(bow), Err(NotAnOutline::Crosses(p)) if p == Point::new(5.0, 5.0))
        );
        let mut open = polygon(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)]);
        open.pop();
        assert!(matches!(Outline::new(open), Err(NotAnOutline::Open(_))));
        let back = polygon(&[(0.0, 0.0), (10.0, 0.0), (4.0, 0.0), (4.0, 5.0)]);
        assert!(matches!(Outline::new(back), Err(NotAnOutline::Crosses(_))));
        let touching = polygon(&[
            (0.0, 0.0),
            (10.0, 0.0),
            (10.0, 10.0),
            (5.0, 0.0),
            (0.0, 10.0),
        ]);
        assert!(matches!(
            Outline::new(touching),
            Err(NotAnOutline::Crosses(_))
        ));
        assert_eq!(Outline::new(Vec::new()), Err(NotAnOutline::TooSmall));
        let nowhere = polygon(&[(0.0, 0.0), (f64::NAN, 0.0), (10.0, 10.0)]);
        assert_eq!(Outline::new(nowhere), Err(NotAnOutline::NotANumber));
    }

    /// Two discs of radius 10: 20.1 apart they are clear, 20 apart they touch, 12 apart they cross, 5 apart with radius 2 one
    /// holds the other.
    #[test]
    fn by_hand_crossing_of_two_edges() {
        let disc = |x: f64, r: f64| Outline::circle(Point::new(x, 0.0), r);
        assert!(disc(0.0, 10.0).crosses(&disc(20.1, 10.0)).is_none());
        assert!(disc(0.0, 10.0).crosses(&disc(20.0, 10.0)).is_some());
        let place = disc(0.0, 10.0).crosses(&disc(12.0, 10.0)).unwrap();
        assert!((place.x - 6.0).abs() < 1e-9 && (place.y.abs() - 8.0).abs() < 1e-9);
        assert!(disc(0.0, 10.0).crosses(&disc(5.0, 2.0)).is_none());
    }
}
