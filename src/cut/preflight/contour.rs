//! Closed contours as they stand in a file, and the metal between them.

use crate::cut::entity::{Entity, arc_through, steps};
use crate::design::{Edge, NotAnOutline, Outline, Point};
use crate::units::tolerance::SAME_LENGTH_MM;

/// A closed contour.
#[derive(Clone, Debug)]
pub(super) enum Contour {
    Circle { centre: Point, radius: f64 },
    Path(Outline),
}

/// Why an entity is no contour, and near what place.
type NoContour = (&'static str, Option<Point>);

impl Contour {
    /// A circle or a closed polyline as a contour.
    pub(super) fn from(entity: &Entity) -> Result<Contour, NoContour> {
        match entity {
            Entity::Circle { centre, radius } => Ok(Contour::Circle {
                centre: *centre,
                radius: *radius,
            }),
            Entity::Polyline {
                vertices,
                closed: true,
            } => {
                let first = vertices.first().map(|v| v.at);
                if vertices.iter().any(|v| v.bulge.abs() > 1.0) {
                    return Err(("has an arc of more than half a turn", first));
                }
                let edges = steps(vertices, true).map(edge).collect();
                Outline::new(edges)
                    .map(Contour::Path)
                    .map_err(|why| match why {
                        NotAnOutline::Crosses(at) => ("crosses itself", Some(at)),
                        _ => ("has an edge of no length, or too few", first),
                    })
            }
            Entity::Polyline {
                vertices,
                closed: false,
            } => Err(("is not closed", vertices.first().map(|v| v.at))),
            Entity::Line { from, .. } => Err(("stands alone and closes nothing", Some(*from))),
            Entity::Arc { centre, .. } => Err(("stands alone and closes nothing", Some(*centre))),
            Entity::Dot(at) => Err(("is no contour", Some(*at))),
        }
    }

    /// A place to name it by: its middle.
    pub(super) fn place(&self) -> Point {
        let (low, high) = self.bounds();
        low.midway(high)
    }

    /// Its diameter where it is a circle.
    pub(super) fn diameter(&self) -> Option<f64> {
        match self {
            Contour::Circle { radius, .. } => Some(2.0 * radius),
            Contour::Path(_) => None,
        }
    }

    fn bounds(&self) -> (Point, Point) {
        match self {
            Contour::Circle { centre, radius } => (
                Point::new(centre.x - radius, centre.y - radius),
                Point::new(centre.x + radius, centre.y + radius),
            ),
            Contour::Path(outline) => outline.bounds(),
        }
    }

    /// Whether a place lies inside it.
    pub(super) fn holds(&self, place: Point) -> bool {
        match self {
            Contour::Circle { centre, radius } => centre.distance(place) < *radius,
            Contour::Path(outline) => outline.contains(place),
        }
    }

    /// Whether the two are one contour.
    pub(super) fn same_as(&self, other: &Contour) -> bool {
        match (self, other) {
            (
                Contour::Circle { centre, radius },
                Contour::Circle {
                    centre: c,
                    radius: r,
                },
            ) => centre.distance(*c) <= SAME_LENGTH_MM && (radius - r).abs() <= SAME_LENGTH_MM,
            (Contour::Path(a), Contour::Path(b)) => one_walk(a, b),
            _ => false,
        }
    }

    /// Metal between two contours that lie beside each other, mm; nothing or less where they meet or one holds the other.
    pub(super) fn metal_to(&self, other: &Contour) -> f64 {
        match (self, other) {
            (
                Contour::Circle { centre, radius },
                Contour::Circle {
                    centre: c,
                    radius: r,
                },
            ) => centre.distance(*c) - radius - r,
            (Contour::Circle { centre, radius }, Contour::Path(outline))
            | (Contour::Path(outline), Contour::Circle { centre, radius }) => {
                -outline.depth(*centre) - radius
            }
            (Contour::Path(a), Contour::Path(b)) => {
                between(a, b, a.contains(first(b)) || b.contains(first(a)))
            }
        }
    }

    /// Metal between this contour and the edge round it, mm; nothing or less where it meets the edge or lies outside.
    pub(super) fn depth_in(&self, edge: &Contour) -> f64 {
        match (self, edge) {
            (
                Contour::Circle { centre, radius },
                Contour::Circle {
                    centre: c,
                    radius: r,
                },
            ) => r - centre.distance(*c) - radius,
            (Contour::Circle { centre, radius }, Contour::Path(outline)) => {
                outline.depth(*centre) - radius
            }
            (Contour::Path(outline), Contour::Circle { centre, radius }) => {
                let round = Outline::circle(*centre, *radius);
                between(outline, &round, !round.contains(first(outline)))
            }
            (Contour::Path(a), Contour::Path(b)) => between(a, b, !b.contains(first(a))),
        }
    }
}

/// Whether two outlines run through the same places, wherever each begins.
fn one_walk(a: &Outline, b: &Outline) -> bool {
    let (a, b) = (a.edges(), b.edges());
    let same = |p: Point, q: Point| p.distance(q) <= SAME_LENGTH_MM;
    let from = |shift: usize| {
        (0..a.len()).all(|i| {
            let other = &b[(i + shift) % b.len()];
            same(a[i].from(), other.from()) && same(a[i].midpoint(), other.midpoint())
        })
    };
    a.len() == b.len() && (0..b.len()).any(from)
}

fn first(outline: &Outline) -> Point {
    outline.edges()[0].from()
}

/// Metal between two edges, nothing where they cross or where the one is on the wrong side of the other.
fn between(a: &Outline, b: &Outline, wrong_side: bool) -> f64 {
    if wrong_side || a.crosses(b).is_some() {
        return 0.0;
    }
    // The nearest places of two edges that do not cross lie at a corner of one or where they run alike; walking both in
    // small steps is near enough for a web, which is judged in tenths.
    let walked = |one: &Outline, other: &Outline| {
        let places = one
            .edges()
            .iter()
            .flat_map(|edge| (0..32).map(move |i| edge.at_share(f64::from(i) / 32.0)));
        places
            .map(|at| other.distance(at))
            .fold(f64::INFINITY, f64::min)
    };
    walked(a, b).min(walked(b, a))
}

fn edge((from, to, bulge): (Point, Point, f64)) -> Edge {
    match arc_through(from, to, bulge) {
        None => Edge::Line { from, to },
        Some(arc) => Edge::Arc {
            from,
            to,
            centre: arc.centre,
            radius: arc.radius,
            anticlockwise: bulge > 0.0,
        },
    }
}

/// Every pair of contours whose boxes come nearer than `reach`, mm.
pub(super) fn pairs_within(contours: &[Contour], reach: f64) -> Vec<(&Contour, &Contour)> {
    let mut boxed: Vec<(Point, Point, &Contour)> = contours
        .iter()
        .map(|contour| {
            let (low, high) = contour.bounds();
            (low, high, contour)
        })
        .collect();
    boxed.sort_by(|a, b| a.0.x.total_cmp(&b.0.x).then(a.0.y.total_cmp(&b.0.y)));
    let mut pairs = Vec::new();
    for (i, (low, high, contour)) in boxed.iter().enumerate() {
        let beside = boxed[i + 1..]
            .iter()
            .take_while(|(other_low, _, _)| other_low.x <= high.x + reach);
        for (other_low, other_high, other) in beside {
            if other_low.y <= high.y + reach && low.y <= other_high.y + reach {
                pairs.push((*contour, *other));
            }
        }
    }
    pairs
}
