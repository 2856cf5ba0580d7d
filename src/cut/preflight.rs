//! Judges a part as a profile cutter would, before anything is written: what would be cut twice, cut open or cut away.
//!
//! It looks at the entities of the file alone and knows nothing of the plate, so that a slip in the making of a part is
//! found and not repeated.

mod contour;

use std::fmt;

use super::entity::{Entity, entities};
use super::part::{CutPart, Layer};
use super::settings::Settings;
use crate::design::Point;
use crate::spec::Cutting;
use crate::units::print::millimetres;
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};
use contour::{Contour, pairs_within};

/// What is wrong with a part, and where.
#[derive(Clone, Debug, PartialEq)]
pub struct Unfit {
    /// What is wrong, in a sentence without a full stop.
    pub fact: String,
    /// Near this place.
    pub at: Option<Point>,
}

impl fmt::Display for Unfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.fact)?;
        match self.at {
            None => Ok(()),
            Some(at) => write!(
                f,
                ", near ({} mm, {} mm)",
                millimetres(Length::mm(at.x)),
                millimetres(Length::mm(at.y))
            ),
        }
    }
}

fn unfit(fact: impl Into<String>, at: impl Into<Option<Point>>) -> Unfit {
    Unfit {
        fact: fact.into(),
        at: at.into(),
    }
}

/// What the process can do, where the spec says.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Limits {
    least_hole_mm: Option<f64>,
    least_web_mm: Option<f64>,
    least_edge_mm: Option<f64>,
}

/// Everything that makes a part unfit to be cut.
pub fn preflight(cutting: &Cutting, part: &CutPart) -> Result<(), Vec<Unfit>> {
    let settings = Settings::of(cutting, part.thickness.as_ref().map(Size::value));
    let limits = Limits {
        least_hole_mm: settings.least_hole().map(|f| f.value.to_mm()),
        least_web_mm: settings.least_web().map(|f| f.value.to_mm()),
        least_edge_mm: settings.least_edge().map(|f| f.value.to_mm()),
    };
    judge(&entities(part), limits)
}

fn judge(entities: &[(Layer, Entity)], limits: Limits) -> Result<(), Vec<Unfit>> {
    let mut found: Vec<Unfit> = entities
        .iter()
        .filter_map(|(layer, entity)| no_length(*layer, entity))
        .collect();
    let (outside, inside) = contours(entities, &mut found);
    if outside.len() != 1 {
        let fact = format!(
            "{} contours lie on CUT-OUTSIDE, and a part has one edge",
            outside.len()
        );
        found.push(unfit(fact, outside.get(1).map(Contour::place)));
    }
    // What is said of a part without an edge, or with a contour that is none, would only be noise.
    if let ([edge], true) = (&outside[..], found.is_empty()) {
        found.extend(off_the_part(edge, &inside, limits));
        found.extend(meeting(&inside, limits));
        found.extend(too_small(&inside, limits));
        found.extend(repeated_pops(entities));
        found.extend(stray_marks(entities, edge, &inside));
    }
    if found.is_empty() { Ok(()) } else { Err(found) }
}

fn no_length(layer: Layer, entity: &Entity) -> Option<Unfit> {
    let nothing = |what: &str, at: Point| {
        Some(unfit(
            format!("a {what} of no size on {}", layer.name()),
            at,
        ))
    };
    match entity {
        Entity::Line { from, to } if from.distance(*to) <= SAME_LENGTH_MM => nothing("line", *from),
        Entity::Circle { centre, radius } if *radius <= SAME_LENGTH_MM => {
            nothing("circle", *centre)
        }
        Entity::Arc {
            centre,
            radius,
            start_deg,
            end_deg,
        } if *radius <= SAME_LENGTH_MM || start_deg == end_deg => nothing("arc", *centre),
        _ => None,
    }
}

/// The closed contours outside and inside; whatever else lies on a CUT layer is a fault.
fn contours(entities: &[(Layer, Entity)], found: &mut Vec<Unfit>) -> (Vec<Contour>, Vec<Contour>) {
    let (mut outside, mut inside) = (Vec::new(), Vec::new());
    for (layer, entity) in entities.iter().filter(|(layer, _)| layer.is_cut()) {
        match Contour::from(entity) {
            Ok(contour) if *layer == Layer::CutOutside => outside.push(contour),
            Ok(contour) => inside.push(contour),
            Err((why, at)) => found.push(unfit(
                format!("a {} on {} {why}", entity.kind(), layer.name()),
                at,
            )),
        }
    }
    (outside, inside)
}

fn off_the_part(edge: &Contour, inside: &[Contour], limits: Limits) -> Vec<Unfit> {
    let least = limits.least_edge_mm.unwrap_or(0.0);
    inside
        .iter()
        .filter_map(|contour| {
            let metal = contour.depth_in(edge);
            let fact = match metal {
                m if m <= SAME_LENGTH_MM => {
                    "an inside cut meets the edge or lies outside it".into()
                }
                m if m < least - SAME_LENGTH_MM => thin(m, "a hole and the edge", least),
                _ => return None,
            };
            Some(unfit(fact, contour.place()))
        })
        .collect()
}

fn meeting(inside: &[Contour], limits: Limits) -> Vec<Unfit> {
    let web = limits.least_web_mm.unwrap_or(0.0);
    pairs_within(inside, web)
        .into_iter()
        .filter_map(|(a, b)| {
            let fact = if a.same_as(b) {
                "one contour is drawn twice and would be cut twice".into()
            } else {
                match a.metal_to(b) {
                    m if m <= SAME_LENGTH_MM => "two inside cuts meet or lie in one another".into(),
                    m if m < web - SAME_LENGTH_MM => thin(m, "two cuts", web),
                    _ => return None,
                }
            };
            Some(unfit(fact, a.place()))
        })
        .collect()
}

fn thin(metal: f64, between: &str, web: f64) -> String {
    format!(
        "{} mm is left between {between}, and the process leaves no less than {} mm sound",
        millimetres(Length::mm(metal)),
        millimetres(Length::mm(web))
    )
}

fn too_small(inside: &[Contour], limits: Limits) -> Vec<Unfit> {
    let Some(least) = limits.least_hole_mm else {
        return Vec::new();
    };
    inside
        .iter()
        .filter_map(|contour| {
            let diameter = contour.diameter()?;
            let words = format!(
                "a hole of {} mm is below the least that the process makes clean, {} mm",
                millimetres(Length::mm(diameter)),
                millimetres(Length::mm(least))
            );
            (diameter < least - SAME_LENGTH_MM).then(|| unfit(words, contour.place()))
        })
        .collect()
}

/// Pops struck twice in one place.
fn repeated_pops(entities: &[(Layer, Entity)]) -> Vec<Unfit> {
    let mut pops: Vec<&Entity> = entities
        .iter()
        .filter(|(layer, _)| *layer == Layer::Pop)
        .map(|(_, entity)| entity)
        .collect();
    let key = |entity: &Entity| ends(entity).map_or((0.0, 0.0), |(a, _)| (a.x, a.y));
    pops.sort_by(|a, b| {
        let ((ax, ay), (bx, by)) = (key(a), key(b));
        ax.total_cmp(&bx).then(ay.total_cmp(&by))
    });
    pops.windows(2)
        .filter(|pair| pair[0] == pair[1])
        .map(|pair| unfit("a pop is struck twice", ends(pair[0]).map(|(a, _)| a)))
        .collect()
}

/// Marks off the part or in a hole, and reference lines on it.
fn stray_marks(entities: &[(Layer, Entity)], edge: &Contour, inside: &[Contour]) -> Vec<Unfit> {
    let mut found = Vec::new();
    for (layer, entity) in entities {
        let Some((from, to)) = ends(entity) else {
            continue;
        };
        match layer {
            Layer::CutOutside | Layer::CutInside => {}
            Layer::Reference => {
                if edge.holds(from) || edge.holds(to) {
                    found.push(unfit("a line that is not to be cut lies on the part", from));
                }
            }
            Layer::Pop | Layer::Scribe | Layer::Stamp => {
                if let Some(at) = [from, to].into_iter().find(|end| !edge.holds(*end)) {
                    let fact = format!("a mark on {} lies off the part", layer.name());
                    found.push(unfit(fact, at));
                }
                // A centre line may run over a hole; a pop or a letter in one is struck on nothing.
                let struck = *layer != Layer::Scribe;
                let gone = |end: &Point| inside.iter().any(|hole| hole.holds(*end));
                if let Some(at) = [from, to].into_iter().find(|end| struck && gone(end)) {
                    let fact = format!("a mark on {} lies in a hole that is cut", layer.name());
                    found.push(unfit(fact, at));
                }
            }
        }
    }
    found
}

/// Two places that an open entity or a circle reaches; none for a polyline.
fn ends(entity: &Entity) -> Option<(Point, Point)> {
    match entity {
        Entity::Line { from, to } => Some((*from, *to)),
        Entity::Dot(at) => Some((*at, *at)),
        Entity::Circle { centre, radius } => Some((
            Point::new(centre.x - radius, centre.y),
            Point::new(centre.x + radius, centre.y),
        )),
        Entity::Arc { .. } => None,
        Entity::Polyline { vertices, .. } => vertices.first().map(|v| (v.at, v.at)),
    }
}

#[cfg(test)]
mod tests;
