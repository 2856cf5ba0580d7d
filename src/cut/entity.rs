//! What stands in a cut file, whichever version of the format carries it: the shapes of a part taken apart.
//!
//! The *bulge* of a vertex is the tangent of a quarter of the arc to the next one: 0 for a straight line, 1 for half a
//! turn, positive where the arc runs anticlockwise.

use super::part::{CutPart, Layer, Shape};
use crate::design::{Edge, Outline, Point};
use crate::units::angle::{PI, atan2, cos, sin};

/// A corner of a polyline and how the edge to the next one bends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vertex {
    /// Where it is.
    pub at: Point,
    /// Bulge of the edge that leaves it, -1 to 1.
    pub bulge: f64,
}

/// One entity of a cut file.
#[derive(Clone, Debug, PartialEq)]
pub enum Entity {
    /// A straight line.
    Line {
        /// Start.
        from: Point,
        /// End.
        to: Point,
    },
    /// An arc, anticlockwise from start to end.
    Arc {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius: f64,
        /// Start, degrees anticlockwise from x.
        start_deg: f64,
        /// End, degrees anticlockwise from x.
        end_deg: f64,
    },
    /// A full circle.
    Circle {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius: f64,
    },
    /// A chain of lines and arcs.
    Polyline {
        /// Its corners.
        vertices: Vec<Vertex>,
        /// Whether the last corner runs on to the first.
        closed: bool,
    },
    /// A point.
    Dot(Point),
}

impl Entity {
    /// What it is called in messages.
    pub fn kind(&self) -> &'static str {
        match self {
            Entity::Line { .. } => "line",
            Entity::Arc { .. } => "arc",
            Entity::Circle { .. } => "circle",
            Entity::Polyline { closed: true, .. } => "closed polyline",
            Entity::Polyline { closed: false, .. } => "polyline",
            Entity::Dot(_) => "point",
        }
    }

    /// The same with x reversed.
    pub(super) fn opposite_hand(&self) -> Entity {
        match self {
            Entity::Line { from, to } => Entity::Line {
                from: from.opposite_hand(),
                to: to.opposite_hand(),
            },
            Entity::Circle { centre, radius } => Entity::Circle {
                centre: centre.opposite_hand(),
                radius: *radius,
            },
            Entity::Arc {
                centre,
                radius,
                start_deg,
                end_deg,
            } => Entity::Arc {
                centre: centre.opposite_hand(),
                radius: *radius,
                start_deg: 180.0 - end_deg,
                end_deg: 180.0 - start_deg,
            },
            Entity::Polyline { vertices, closed } => Entity::Polyline {
                vertices: vertices
                    .iter()
                    .map(|v| Vertex {
                        at: v.at.opposite_hand(),
                        bulge: -v.bulge,
                    })
                    .collect(),
                closed: *closed,
            },
            Entity::Dot(at) => Entity::Dot(at.opposite_hand()),
        }
    }
}

/// Everything that a part's file holds, in the order in which it is written.
pub fn entities(part: &CutPart) -> Vec<(Layer, Entity)> {
    part.shapes
        .iter()
        .flat_map(|(layer, shape)| {
            taken_apart(shape)
                .into_iter()
                .map(|entity| (*layer, entity))
        })
        .collect()
}

fn taken_apart(shape: &Shape) -> Vec<Entity> {
    match shape {
        Shape::Circle { centre, radius } => vec![Entity::Circle {
            centre: *centre,
            radius: *radius,
        }],
        Shape::Closed(outline) => vec![Entity::Polyline {
            vertices: vertices(outline),
            closed: true,
        }],
        Shape::Line { from, to } => vec![Entity::Line {
            from: *from,
            to: *to,
        }],
        Shape::Arc {
            centre,
            radius,
            start,
            end,
        } => vec![Entity::Arc {
            centre: *centre,
            radius: *radius,
            start_deg: start.to_degrees(),
            end_deg: end.to_degrees(),
        }],
        Shape::Dot(at) => vec![Entity::Dot(*at)],
        Shape::Cross { at, arm } => vec![
            Entity::Line {
                from: Point::new(at.x - arm, at.y),
                to: Point::new(at.x + arm, at.y),
            },
            Entity::Line {
                from: Point::new(at.x, at.y - arm),
                to: Point::new(at.x, at.y + arm),
            },
        ],
    }
}

fn vertices(outline: &Outline) -> Vec<Vertex> {
    let corner = |edge: &Edge| Vertex {
        at: edge.from(),
        // An outline has no arc above half a turn; the last bit of π must not make one.
        bulge: edge.bulge().clamp(-1.0, 1.0),
    };
    outline.edges().iter().map(corner).collect()
}

/// A box with sides along x and y.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extent {
    /// Lower left corner.
    pub low: Point,
    /// Upper right corner.
    pub high: Point,
}

impl Extent {
    /// Width and height, mm.
    pub fn size(&self) -> [f64; 2] {
        [self.high.x - self.low.x, self.high.y - self.low.y]
    }

    fn around(point: Point) -> Extent {
        Extent {
            low: point,
            high: point,
        }
    }

    fn and(self, other: Extent) -> Extent {
        Extent {
            low: Point::new(self.low.x.min(other.low.x), self.low.y.min(other.low.y)),
            high: Point::new(self.high.x.max(other.high.x), self.high.y.max(other.high.y)),
        }
    }
}

/// The box round these entities, the crowns of arcs included; none where there is nothing.
pub fn extent<'a>(entities: impl Iterator<Item = &'a Entity>) -> Option<Extent> {
    entities.filter_map(box_of).reduce(Extent::and)
}

fn box_of(entity: &Entity) -> Option<Extent> {
    let circle = |centre: Point, radius: f64| Extent {
        low: Point::new(centre.x - radius, centre.y - radius),
        high: Point::new(centre.x + radius, centre.y + radius),
    };
    match entity {
        Entity::Line { from, to } => Some(Extent::around(*from).and(Extent::around(*to))),
        Entity::Circle { centre, radius } => Some(circle(*centre, *radius)),
        Entity::Arc {
            centre,
            radius,
            start_deg,
            end_deg,
        } => Some(arc_box(
            *centre,
            *radius,
            start_deg.to_radians(),
            end_deg.to_radians(),
        )),
        Entity::Polyline { vertices, closed } => steps(vertices, *closed)
            .map(|(from, to, bulge)| match arc_through(from, to, bulge) {
                None => Extent::around(from).and(Extent::around(to)),
                Some(arc) => arc_box(arc.centre, arc.radius, arc.start, arc.end),
            })
            .reduce(Extent::and),
        Entity::Dot(at) => Some(Extent::around(*at)),
    }
}

fn arc_box(centre: Point, radius: f64, start: f64, end: f64) -> Extent {
    let on = |angle: f64| {
        Extent::around(Point::new(
            centre.x + radius * cos(angle),
            centre.y + radius * sin(angle),
        ))
    };
    let swept = turned(start, end);
    let crowns = (0..4)
        .map(|quarter| f64::from(quarter) * PI / 2.0)
        .filter(|angle| turned(start, *angle) <= swept)
        .map(|angle| match angle {
            a if a < 1.0 => Extent::around(Point::new(centre.x + radius, centre.y)),
            a if a < 2.0 => Extent::around(Point::new(centre.x, centre.y + radius)),
            a if a < 4.0 => Extent::around(Point::new(centre.x - radius, centre.y)),
            _ => Extent::around(Point::new(centre.x, centre.y - radius)),
        });
    crowns.fold(on(start).and(on(end)), Extent::and)
}

/// How far one turns anticlockwise from one angle to another, radians, 0 to a full turn.
pub fn turned(start: f64, end: f64) -> f64 {
    let turn = (end - start) % (2.0 * PI);
    if turn < 0.0 { turn + 2.0 * PI } else { turn }
}

/// The edges of a polyline: start, end and bulge of each.
pub fn steps(vertices: &[Vertex], closed: bool) -> impl Iterator<Item = (Point, Point, f64)> {
    let count = if closed {
        vertices.len()
    } else {
        vertices.len().saturating_sub(1)
    };
    (0..count).map(|i| {
        let next = &vertices[(i + 1) % vertices.len()];
        (vertices[i].at, next.at, vertices[i].bulge)
    })
}

/// The arc of a bulged edge, anticlockwise from `start` to `end` whichever way the edge runs.
#[derive(Clone, Copy, Debug)]
pub struct BulgeArc {
    /// Its centre.
    pub centre: Point,
    /// Its radius, mm.
    pub radius: f64,
    /// Angle at which it starts, radians.
    pub start: f64,
    /// Angle at which it ends, radians.
    pub end: f64,
}

/// The arc that a bulge makes between two places; none where the edge is straight.
pub fn arc_through(from: Point, to: Point, bulge: f64) -> Option<BulgeArc> {
    if bulge == 0.0 {
        return None;
    }
    // Half chord c, bulge b: the centre stands c(1 - b²)/2b off the chord, to the left of an anticlockwise arc.
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let off = (1.0 - bulge * bulge) / (4.0 * bulge);
    let centre = Point::new(
        (from.x + to.x) / 2.0 - dy * off,
        (from.y + to.y) / 2.0 + dx * off,
    );
    let direction = |p: Point| atan2(p.y - centre.y, p.x - centre.x);
    let (start, end) = match bulge > 0.0 {
        true => (direction(from), direction(to)),
        false => (direction(to), direction(from)),
    };
    Some(BulgeArc {
        centre,
        radius: centre.distance(from),
        start,
        end,
    })
}
