//! What a cut file holds, counted, as `results.json` has it.

use std::collections::BTreeMap;

use serde::Serialize;

use super::entity::{entities, extent};
use super::part::{CutPart, Layer, Shape};
use crate::units::angle::PI;

/// Shapes on one layer. Each shape is counted once, under one head.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct LayerCount {
    /// Full circles.
    pub circles: usize,
    /// Closed contours other than circles.
    pub closed: usize,
    /// Single lines and arcs.
    pub open: usize,
    /// Pops, whether crosses or points: a cross of two lines is one mark.
    pub marks: usize,
}

/// A cut file in figures.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Summary {
    /// Counts by name of layer; every layer is there.
    pub layers: BTreeMap<&'static str, LayerCount>,
    /// Width and height over the CUT layers, mm.
    pub extent_mm: [f64; 2],
    /// Area within the outside edge, mm².
    pub outside_area_mm2: f64,
    /// Area that is left with every inside cut out, mm².
    pub area_mm2: f64,
}

/// Counts what a part's file holds.
pub fn summary(part: &CutPart) -> Summary {
    let mut layers: BTreeMap<_, _> = Layer::ALL
        .into_iter()
        .map(|layer| (layer.name(), LayerCount::default()))
        .collect();
    for (layer, shape) in &part.shapes {
        let count = layers.entry(layer.name()).or_default();
        match shape {
            Shape::Circle { .. } => count.circles += 1,
            Shape::Closed(_) => count.closed += 1,
            Shape::Line { .. } | Shape::Arc { .. } => count.open += 1,
            Shape::Dot(_) | Shape::Cross { .. } => count.marks += 1,
        }
    }
    let all = entities(part);
    let cut = all.iter().filter(|(layer, _)| layer.is_cut());
    let area = |wanted: Layer| -> f64 {
        let on = part.shapes.iter().filter(|(layer, _)| *layer == wanted);
        on.map(|(_, shape)| area_mm2(shape)).sum()
    };
    let outside_area_mm2 = area(Layer::CutOutside);
    Summary {
        outside_area_mm2,
        area_mm2: outside_area_mm2 - area(Layer::CutInside),
        layers,
        extent_mm: extent(cut.map(|(_, entity)| entity)).map_or([0.0, 0.0], |e| e.size()),
    }
}

fn area_mm2(shape: &Shape) -> f64 {
    match shape {
        Shape::Circle { radius, .. } => PI * radius * radius,
        Shape::Closed(outline) => outline.area_mm2(),
        Shape::Line { .. } | Shape::Arc { .. } | Shape::Dot(_) | Shape::Cross { .. } => 0.0,
    }
}
