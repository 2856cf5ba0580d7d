//! Judges a part as a profile cutter would, before anything is written: what would be cut twice, cut open or cut away.
//!
//! It looks at the entities of the file alone and knows nothing of the plate, so that a slip in the making of a part is
//! found and not repeated.

mod as_rounded;
mod contour;
mod facets;

use std::fmt;

use super::entity::{Entity, entities, extent};
use super::part::{CutPart, Layer, PartKind};
use crate::design::Point;
use crate::design::cutter::Settings;
use crate::spec::Cutting;
use crate::units::print::{millimetres, trimmed};
use crate::units::tolerance::{SAME_JOINT_MM, SAME_LENGTH_MM};
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
    /// Room on the plate that the part is cut from.
    stock_mm: Option<[f64; 2]>,
}

/// Everything that makes a part unfit to be cut.
pub fn preflight(cutting: &Cutting, part: &CutPart) -> Result<(), Vec<Unfit>> {
    let settings = Settings::of(cutting, part.thickness.as_ref().map(Size::value));
    let limits = Limits {
        least_hole_mm: settings.least_hole().map(|f| f.value.to_mm()),
        least_web_mm: settings.least_web().map(|f| f.value.to_mm()),
        least_edge_mm: settings.least_edge().map(|f| f.value.to_mm()),
        stock_mm: stock(cutting, part),
    };
    judge(&entities(part), limits)
}

/// Width and height of the plate less its margin, for the part that the spec's plate is meant for.
fn stock(cutting: &Cutting, part: &CutPart) -> Option<[f64; 2]> {
    let (wide, tall) = cutting.stock.as_ref()?;
    let margin = cutting
        .stock_margin
        .as_ref()
        .map_or(Length::ZERO, Size::value);
    let clear = |size: &Size| (size.value() - 2.0 * margin).to_mm();
    (part.kind == PartKind::Plate).then(|| [clear(wide), clear(tall)])
}

fn judge(exact: &[(Layer, Entity)], limits: Limits) -> Result<(), Vec<Unfit>> {
    // The cutter sees what the digits of the file leave.
    let rounded: Vec<(Layer, Entity)> = exact
        .iter()
        .map(|(layer, entity)| (*layer, as_rounded::as_rounded(entity)))
        .collect();
    let entities = rounded.as_slice();
    let mut found: Vec<Unfit> = entities
        .iter()
        .filter_map(|(layer, entity)| no_length(*layer, entity))
        .collect();
    found.extend(entities.iter().filter_map(|(layer, entity)| {
        let at = facets::facets(entity)?;
        let fact = format!(
            "an arc on {} is drawn in short straight pieces",
            layer.name()
        );
        Some(unfit(fact, at))
    }));
    contours(entities, &mut found);
    // Metal is measured before rounding: a web of just what is asked would else fall short by the last digit.
    let (outside, inside) = contours(exact, &mut Vec::new());
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
        found.extend(repeated_marks(entities));
        found.extend(scribed_over(entities));
        found.extend(stray_marks(entities, edge, &inside));
        found.extend(far_off(entities));
        found.extend(off_the_stock(entities, limits));
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
    // As many places as it takes to see that the two differ.
    let places = (2..=6).find(|&p| trimmed(metal, p) != trimmed(web, p));
    let places = places.unwrap_or(2);
    format!(
        "{} mm is left between {between}, and the process leaves no less than {} mm sound",
        trimmed(metal, places),
        trimmed(web, places)
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

/// Marks made twice in one place, whichever way they were drawn.
fn repeated_marks(entities: &[(Layer, Entity)]) -> Vec<Unfit> {
    let key = |entity: &Entity| {
        let (a, b) = ends(entity).unwrap_or_default();
        let (a, b) = ((a.x, a.y), (b.x, b.y));
        if a <= b { (a, b) } else { (b, a) }
    };
    let order = |(a, b): (f64, f64), (c, d): (f64, f64)| a.total_cmp(&c).then(b.total_cmp(&d));
    let mut marks: Vec<(Layer, &Entity)> = entities
        .iter()
        .filter(|(layer, entity)| !layer.is_cut() && ends(entity).is_some())
        .map(|(layer, entity)| (*layer, entity))
        .collect();
    marks.sort_by(|(layer, a), (other, b)| {
        let (a, b) = (key(a), key(b));
        layer.cmp(other).then(order(a.0, b.0)).then(order(a.1, b.1))
    });
    let alike = |(layer, a): (Layer, &Entity), (other, b): (Layer, &Entity)| {
        let one_line = matches!((a, b), (Entity::Line { .. }, Entity::Line { .. }));
        layer == other && (a == b || one_line && key(a) == key(b))
    };
    marks
        .windows(2)
        .filter(|pair| alike(pair[0], pair[1]))
        .map(|pair| {
            let (layer, entity) = pair[0];
            let fact = match layer {
                Layer::Pop => "a pop is struck twice".into(),
                _ => format!("a {} on {} is drawn twice", entity.kind(), layer.name()),
            };
            unfit(fact, ends(entity).map(|(a, _)| a))
        })
        .collect()
}

/// Scribed lines that lie along one another for part of their length: the marker would run there twice. Letters are left alone,
/// since the strokes of a figure may meet so.
fn scribed_over(entities: &[(Layer, Entity)]) -> Vec<Unfit> {
    let lines: Vec<(Point, Point)> = entities
        .iter()
        .filter(|(layer, _)| *layer == Layer::Scribe)
        .filter_map(|(_, entity)| match entity {
            Entity::Line { .. } => ends(entity),
            _ => None,
        })
        .collect();
    let mut found = Vec::new();
    for (index, &line) in lines.iter().enumerate() {
        for &other in &lines[index + 1..] {
            // The same line again is a repeated mark.
            let again = line == other || line == (other.1, other.0);
            if !again && shared_length(line, other) > SAME_JOINT_MM {
                let fact = "two lines on SCRIBE lie along one another";
                found.push(unfit(fact, other.0));
            }
        }
    }
    found
}

/// How much of two straight lines is common, mm; nothing unless both ends of the second lie on the line of the first.
fn shared_length((from, to): (Point, Point), other: (Point, Point)) -> f64 {
    let length = from.distance(to);
    let along = (to - from) * (1.0 / length);
    let place = |end: Point| ((end - from).dot(along), (end - from).cross(along).abs());
    let (a, b) = (place(other.0), place(other.1));
    if a.1.max(b.1) > SAME_JOINT_MM {
        return 0.0;
    }
    a.0.max(b.0).min(length) - a.0.min(b.0).max(0.0)
}

/// Things so far from the part that whoever opens the file sees a speck.
fn far_off(entities: &[(Layer, Entity)]) -> Vec<Unfit> {
    let cut = entities.iter().filter(|(layer, _)| layer.is_cut());
    let Some(around) = extent(cut.map(|(_, entity)| entity)) else {
        return Vec::new();
    };
    let [wide, tall] = around.size();
    let reach = wide.max(tall).max(NEAR_MM);
    let far = |entity: &Entity| {
        let here = extent(std::iter::once(entity))?;
        let off = (around.low.x - here.low.x)
            .max(around.low.y - here.low.y)
            .max(here.high.x - around.high.x)
            .max(here.high.y - around.high.y);
        (off > reach).then_some(here.low)
    };
    entities
        .iter()
        .filter_map(|(layer, entity)| {
            let at = far(entity)?;
            let fact = format!(
                "a {} on {} lies far off the part",
                entity.kind(),
                layer.name()
            );
            Some(unfit(fact, at))
        })
        .collect()
}

/// Notes and square lie within this of the part, mm, or within its own size.
const NEAR_MM: f64 = 1500.0;

/// A part too large for the plate it is to be cut from, whichever way it is turned by a quarter.
fn off_the_stock(entities: &[(Layer, Entity)], limits: Limits) -> Option<Unfit> {
    let [stock_wide, stock_tall] = limits.stock_mm?;
    let cut = entities.iter().filter(|(layer, _)| layer.is_cut());
    let [wide, tall] = extent(cut.map(|(_, entity)| entity))?.size();
    let fits =
        |w: f64, h: f64| w <= stock_wide + SAME_LENGTH_MM && h <= stock_tall + SAME_LENGTH_MM;
    let mm = |mm: f64| millimetres(Length::mm(mm));
    (!fits(wide, tall) && !fits(tall, wide)).then(|| {
        let fact = format!(
            "the part is {} mm by {} mm, and the plate named as its stock has room for {} mm by {} mm within its margin",
            mm(wide), mm(tall), mm(stock_wide), mm(stock_tall)
        );
        unfit(fact, None)
    })
}

/// Marks off the part or in a hole, and reference lines on it.
fn stray_marks(entities: &[(Layer, Entity)], edge: &Contour, inside: &[Contour]) -> Vec<Unfit> {
    let mut found = Vec::new();
    for (layer, entity) in entities {
        if matches!(entity, Entity::Dot(_)) && *layer != Layer::Pop {
            found.push(unfit(
                format!("a stray point on {}", layer.name()),
                ends(entity).map(|e| e.0),
            ));
            continue;
        }
        if let (Entity::Polyline { vertices, .. }, false) =
            (entity, layer.is_cut() || *layer == Layer::Reference)
            && let Some(off) = vertices.iter().find(|v| !edge.holds(v.at))
        {
            let fact = format!("a mark on {} lies off the part", layer.name());
            found.push(unfit(fact, off.at));
            continue;
        }
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
