//! An entity as the digits of the file leave it: six places of a millimetre, twelve of a bulge.

use crate::cut::entity::{Entity, Vertex};
use crate::design::Point;

/// Digits after the point of a length, as a power of ten.
const LENGTHS: f64 = 1e6;
/// The same of a bulge.
const BULGES: f64 = 1e12;

fn to(value: f64, digits: f64) -> f64 {
    (value * digits).round() / digits
}

fn place(at: Point) -> Point {
    Point::new(to(at.x, LENGTHS), to(at.y, LENGTHS))
}

/// The entity rounded as it is written.
pub(super) fn as_rounded(entity: &Entity) -> Entity {
    match entity {
        Entity::Line { from, to } => Entity::Line {
            from: place(*from),
            to: place(*to),
        },
        Entity::Arc {
            centre,
            radius,
            start_deg,
            end_deg,
        } => Entity::Arc {
            centre: place(*centre),
            radius: to(*radius, LENGTHS),
            start_deg: *start_deg,
            end_deg: *end_deg,
        },
        Entity::Circle { centre, radius } => Entity::Circle {
            centre: place(*centre),
            radius: to(*radius, LENGTHS),
        },
        Entity::Polyline { vertices, closed } => Entity::Polyline {
            vertices: vertices
                .iter()
                .map(|vertex| Vertex {
                    at: place(vertex.at),
                    bulge: to(vertex.bulge, BULGES),
                })
                .collect(),
            closed: *closed,
        },
        Entity::Dot(at) => Entity::Dot(place(*at)),
    }
}
