//! Arcs that somebody has drawn as many short lines: the cutter stops at every corner of them.

use crate::cut::entity::{Entity, Vertex, steps};
use crate::design::Point;
use crate::units::angle::{PI, atan2};

/// So many straight pieces on one circle are no polygon that a plate would have.
const PIECES: usize = 8;
/// Nor are pieces that turn by less than this from one to the next, radians: 24 sides to the round.
const TURN: f64 = PI / 12.0;
/// Corners this near a circle lie on it, mm: what a drawing program rounds to.
const ON_CIRCLE_MM: f64 = 1e-2;

/// The corner at which such a run of pieces begins, if there is one.
pub(super) fn facets(entity: &Entity) -> Option<Point> {
    let Entity::Polyline { vertices, closed } = entity else {
        return None;
    };
    if vertices.len() <= PIECES {
        return None;
    }
    let count = steps(vertices, *closed).count();
    let starts = if *closed {
        count
    } else {
        count.saturating_sub(PIECES - 1)
    };
    let run = |start: usize| -> Vec<&Vertex> {
        let place = |i: usize| &vertices[(start + i) % vertices.len()];
        (0..=PIECES).map(place).collect()
    };
    let found = (0..starts).map(run).find(|run| is_facets(run))?;
    Some(found[0].at)
}

fn is_facets(run: &[&Vertex]) -> bool {
    let (pieces, at) = (&run[..PIECES], |i: usize| run[i].at);
    if pieces.iter().any(|vertex| vertex.bulge != 0.0) {
        return false;
    }
    let Some((centre, radius)) = circle_through(at(0), at(PIECES / 2), at(PIECES)) else {
        return false;
    };
    let on_circle = run
        .iter()
        .all(|vertex| (vertex.at.distance(centre) - radius).abs() <= ON_CIRCLE_MM);
    let turns_little = (1..PIECES).all(|i| {
        let (before, after) = (at(i) - at(i - 1), at(i + 1) - at(i));
        let turn = atan2(before.cross(after), before.dot(after));
        turn != 0.0 && turn.abs() < TURN
    });
    on_circle && turns_little
}

/// The circle through three places; none where they lie in line.
fn circle_through(a: Point, b: Point, c: Point) -> Option<(Point, f64)> {
    let (u, v) = (b - a, c - a);
    let twice = 2.0 * u.cross(v);
    if twice == 0.0 {
        return None;
    }
    let (uu, vv) = (u.dot(u), v.dot(v));
    let arm = Point::new((v.y * uu - u.y * vv) / twice, (u.x * vv - v.x * uu) / twice);
    Some((a + arm, arm.radius()))
}
