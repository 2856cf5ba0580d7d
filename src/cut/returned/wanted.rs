//! What a part's file should draw, each figure with the name that the sheets give it.

use super::super::part::{CutPart, Layer, Shape};
use super::chain::same_piece;
use crate::design::{Edge, Outline, Point};
use crate::units::Length;
use crate::units::print::millimetres;
use crate::units::tolerance::{JOINED_ENDS_MM, SAME_LENGTH_MM};

/// A circle of the part.
#[derive(Clone, Debug)]
pub(super) struct WantedCircle {
    /// "T17", "the edge", "the scribed circle 1054 mm across".
    pub name: String,
    /// Its layer.
    pub layer: Layer,
    /// Centre.
    pub centre: Point,
    /// Radius, mm.
    pub radius: f64,
}

/// A closed contour of the part, no circle.
#[derive(Clone, Debug)]
pub(super) struct WantedContour {
    /// "the edge", "the scribed edge", "the proving square".
    pub name: String,
    /// Its layer.
    pub layer: Layer,
    /// The contour.
    pub outline: Outline,
}

/// A centre pop of the part.
#[derive(Clone, Debug)]
pub(super) struct WantedPop {
    /// The hole that it is for.
    pub name: String,
    /// Where it is.
    pub at: Point,
    /// From its middle to the end of each arm, mm, where it is a cross; none where it is a point.
    pub arm: Option<f64>,
}

/// A line or arc marked on the part, or drawn beside it.
#[derive(Clone, Debug)]
pub(super) struct WantedMark {
    /// Its layer.
    pub layer: Layer,
    /// The line or arc.
    pub edge: Edge,
}

/// Everything that a part's file should draw.
#[derive(Clone, Debug, Default)]
pub(super) struct Wanted {
    /// Circles, the edge of a round part included.
    pub circles: Vec<WantedCircle>,
    /// Other closed contours.
    pub contours: Vec<WantedContour>,
    /// Pops.
    pub pops: Vec<WantedPop>,
    /// Marks, each once.
    pub marks: Vec<WantedMark>,
    /// Marks that our own file draws more than once: the middle of each.
    pub twice: Vec<Point>,
}

/// What this part's file should draw.
pub(super) fn wanted(part: &CutPart) -> Wanted {
    let places = part.places.clone();
    let mut wanted = Wanted::default();
    for (layer, shape) in &part.shapes {
        let layer = *layer;
        match shape {
            Shape::Circle { centre, radius } => wanted.circles.push(WantedCircle {
                name: circle_name(layer, *centre, *radius, &places),
                layer,
                centre: *centre,
                radius: *radius,
            }),
            Shape::Closed(outline) => match outline.as_circle() {
                Some((centre, radius)) => wanted.circles.push(WantedCircle {
                    name: circle_name(layer, centre, radius, &places),
                    layer,
                    centre,
                    radius,
                }),
                None => wanted.contours.push(WantedContour {
                    name: contour_name(layer).into(),
                    layer,
                    outline: outline.clone(),
                }),
            },
            Shape::Dot(at) => wanted.pops.push(pop(&places, *at, None)),
            Shape::Cross { at, arm } => wanted.pops.push(pop(&places, *at, Some(*arm))),
            Shape::Line { from, to } => {
                let (from, to) = (*from, *to);
                add_mark(&mut wanted, layer, Edge::Line { from, to });
            }
            Shape::Arc {
                centre,
                radius,
                start,
                end,
            } => add_mark(
                &mut wanted,
                layer,
                Edge::arc(*centre, *radius, *start, *end),
            ),
        }
    }
    wanted
}

fn add_mark(wanted: &mut Wanted, layer: Layer, edge: Edge) {
    if edge.length_mm() <= SAME_LENGTH_MM {
        return;
    }
    let drawn = |mark: &WantedMark| same_piece(&mark.edge, &edge, JOINED_ENDS_MM);
    match wanted.marks.iter().any(drawn) {
        true => wanted.twice.push(edge.midpoint()),
        false => wanted.marks.push(WantedMark { layer, edge }),
    }
}

fn name_at(places: &[(String, Point)], at: Point) -> Option<String> {
    let here = |(_, place): &&(String, Point)| place.distance(at) <= JOINED_ENDS_MM;
    places.iter().find(here).map(|(name, _)| name.clone())
}

fn pop(places: &[(String, Point)], at: Point, arm: Option<f64>) -> WantedPop {
    let name = name_at(places, at).unwrap_or_else(|| "a pop".into());
    WantedPop { name, at, arm }
}

fn circle_name(layer: Layer, at: Point, radius: f64, places: &[(String, Point)]) -> String {
    let across = millimetres(Length::mm(2.0 * radius));
    match layer {
        Layer::CutOutside => "the edge".into(),
        Layer::CutInside => {
            name_at(places, at).unwrap_or_else(|| format!("the opening {across} mm across"))
        }
        Layer::Scribe => format!("the scribed circle {across} mm across"),
        Layer::Pop | Layer::Stamp | Layer::Reference => {
            format!("the circle {across} mm across on {}", layer.name())
        }
    }
}

fn contour_name(layer: Layer) -> &'static str {
    match layer {
        Layer::CutOutside => "the edge",
        Layer::CutInside => "an opening",
        Layer::Scribe => "the scribed edge",
        Layer::Pop | Layer::Stamp => "a marked outline",
        Layer::Reference => "the proving square",
    }
}
