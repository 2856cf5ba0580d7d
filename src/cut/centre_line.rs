//! Ticks on the centre lines, so that they can be struck again after forming or welding.

use super::part::{Layer, Shape};
use crate::design::{Edge, Outline, Point};
use crate::units::angle::sqrt;

/// Length of a tick, mm: a straight-edge laid across two of them finds the line again.
pub(super) const TICK_MM: f64 = 20.0;
/// Clear of the line that a tick stands at, mm.
pub(super) const TICK_GAP_MM: f64 = 2.0;

/// The four quarters, as directions.
const QUARTERS: [Point; 4] = [
    Point::new(0.0, 1.0),
    Point::new(1.0, 0.0),
    Point::new(0.0, -1.0),
    Point::new(-1.0, 0.0),
];

/// A tick on each quarter between two radii from the barrel centre.
pub(super) fn ring_of_ticks(inner: f64, outer: f64) -> Vec<(Layer, Shape)> {
    QUARTERS
        .into_iter()
        .map(|way| tick(way, inner, outer))
        .collect()
}

/// A tick on each quarter just inside an edge.
pub(super) fn ticks_at_edge(edge: &Outline) -> Vec<(Layer, Shape)> {
    QUARTERS
        .into_iter()
        .filter_map(|way| {
            let outer = furthest_on_ray(edge, way)? - TICK_GAP_MM;
            Some(tick(way, outer - TICK_MM, outer))
        })
        .collect()
}

/// A tick on the vertical centre line above the middle, between two distances from it, mm.
pub(super) fn top_tick(inner: f64, outer: f64) -> (Layer, Shape) {
    tick(QUARTERS[0], inner, outer)
}

fn tick(way: Point, inner: f64, outer: f64) -> (Layer, Shape) {
    let at = |radius: f64| Point::new(way.x * radius, way.y * radius);
    (
        Layer::Scribe,
        Shape::Line {
            from: at(inner),
            to: at(outer),
        },
    )
}

/// How far out the ray from the barrel centre last meets an edge, mm; `way` runs along an axis.
fn furthest_on_ray(edge: &Outline, way: Point) -> Option<f64> {
    let meets = edge.edges().iter().flat_map(|piece| meetings(piece, way));
    meets.filter(|&d| d > 0.0).reduce(f64::max)
}

fn meetings(piece: &Edge, way: Point) -> Vec<f64> {
    // Along the ray and across it, so that the ray is the first axis.
    let turned = |p: Point| (p.x * way.x + p.y * way.y, -p.x * way.y + p.y * way.x);
    match *piece {
        Edge::Line { from, to } => {
            let ((a, u), (b, v)) = (turned(from), turned(to));
            match u * v <= 0.0 && u != v {
                true => vec![a + (b - a) * u / (u - v)],
                false => Vec::new(),
            }
        }
        Edge::Arc { centre, radius, .. } => {
            let (along, across) = turned(centre);
            let square = radius * radius - across * across;
            if square < 0.0 {
                return Vec::new();
            }
            let half = sqrt(square);
            [along - half, along + half]
                .into_iter()
                .filter(|&d| {
                    let at = Point::new(way.x * d, way.y * d);
                    piece.distance(at) <= crate::units::tolerance::SAME_LENGTH_MM
                })
                .collect()
        }
    }
}
