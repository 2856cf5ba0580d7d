//! Long sizes that the contractor measures on the part as cut and returns: four across and two diagonals.
//!
//! A scale, a unit or a hand gone wrong shows in these before the plate leaves his floor.

use super::entity::{Entity, entities, extent};
use super::part::{CutPart, Layer, Shape};
use crate::design::Point;
use crate::units::Length;
use crate::units::print::millimetres;

/// A size to be measured back.
#[derive(Clone, Debug, PartialEq)]
pub struct LongSize {
    /// From where to where, in words.
    pub words: String,
    /// What it should be, mm.
    pub mm: f64,
    /// Between which places.
    pub between: Between,
}

/// Between which places of a part a long size is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Between {
    /// Opposite sides of the box round it.
    Sides,
    /// Opposite places of a round edge.
    Round,
    /// The two pops of the former's pins.
    Pops,
    /// Two holes or corners.
    Places,
}

fn size(words: impl Into<String>, mm: f64, between: Between) -> LongSize {
    LongSize {
        words: words.into(),
        mm,
        between,
    }
}

/// The six sizes; fewer where the part has too little to measure between.
pub fn long_sizes(part: &CutPart) -> Vec<LongSize> {
    let Some((_, edge)) = part
        .shapes
        .iter()
        .find(|(layer, _)| *layer == Layer::CutOutside)
    else {
        return Vec::new();
    };
    if let Shape::Circle { radius, .. } = edge {
        return round_sizes(part, 2.0 * radius);
    }
    let all = entities(part);
    let cut = all.iter().filter(|(layer, _)| layer.is_cut());
    let [wide, tall] = extent(cut.map(|(_, e)| e)).map_or([0.0, 0.0], |e| e.size());
    let mut sizes = vec![
        size("over all, left to right", wide, Between::Sides),
        size("over all, bottom to top", tall, Between::Sides),
    ];
    let holes = hole_centres(part);
    if holes.len() >= 4 {
        sizes.extend(across("hole centres", &holes, &STRAIGHT));
        sizes.extend(across("hole centres", &holes, &SLANTED));
    } else {
        sizes.extend(across("corners of the edge", &corners(&all), &SLANTED));
    }
    sizes
}

fn round_sizes(part: &CutPart, diameter: f64) -> Vec<LongSize> {
    let mut sizes = vec![
        size("diameter, left to right", diameter, Between::Round),
        size("diameter, bottom to top", diameter, Between::Round),
    ];
    let pops: Vec<Point> = part
        .shapes
        .iter()
        .filter_map(|(layer, shape)| match (layer, shape) {
            (Layer::Pop, Shape::Cross { at, .. } | Shape::Dot(at)) => Some(*at),
            _ => None,
        })
        .collect();
    if let [a, b] = pops[..] {
        sizes.push(size("pop to pop", a.distance(b), Between::Pops));
    }
    sizes.extend([
        size(
            "diameter, lower left to upper right",
            diameter,
            Between::Round,
        ),
        size(
            "diameter, upper left to lower right",
            diameter,
            Between::Round,
        ),
    ]);
    sizes
}

type Way = (&'static str, f64, f64);
const STRAIGHT: [Way; 2] = [
    ("furthest left to furthest right", 1.0, 0.0),
    ("lowest to highest", 0.0, 1.0),
];
const SLANTED: [Way; 2] = [
    ("lower left to upper right", 1.0, 1.0),
    ("upper left to lower right", 1.0, -1.0),
];

/// Between the two places that lie furthest apart each way; the first of several alike.
fn across(what: &str, places: &[Point], ways: &[Way]) -> Vec<LongSize> {
    let mut sizes = Vec::new();
    for (words, x, y) in ways {
        let along = |p: &Point| p.x * x + p.y * y;
        let mut ends: Option<(Point, Point)> = None;
        for place in places {
            let (low, high) = ends.unwrap_or((*place, *place));
            ends = Some((
                if along(place) < along(&low) {
                    *place
                } else {
                    low
                },
                if along(place) > along(&high) {
                    *place
                } else {
                    high
                },
            ));
        }
        if let Some((low, high)) = ends {
            let place = |p: Point| {
                let [x, y] = [p.x, p.y].map(|mm| millimetres(Length::mm(mm)));
                format!("({x}, {y})")
            };
            sizes.push(size(
                format!("{what}, {words}: {} to {}", place(low), place(high)),
                low.distance(high),
                Between::Places,
            ));
        }
    }
    sizes
}

fn hole_centres(part: &CutPart) -> Vec<Point> {
    part.shapes
        .iter()
        .filter_map(|(layer, shape)| match (layer, shape) {
            (Layer::CutInside, Shape::Circle { centre, .. }) => Some(*centre),
            _ => None,
        })
        .collect()
}

fn corners(entities: &[(Layer, Entity)]) -> Vec<Point> {
    entities
        .iter()
        .filter(|(layer, _)| *layer == Layer::CutOutside)
        .flat_map(|(_, entity)| match entity {
            Entity::Polyline { vertices, .. } => vertices.iter().map(|v| v.at).collect(),
            _ => Vec::new(),
        })
        .collect()
}
