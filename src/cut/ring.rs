//! The strip from which the ring of a fabricated flange is rolled.
//!
//! It lies with the face up that will be the inside of the ring, the free edge at the top and bottom centre at half its
//! length, so that the joint falls at top centre. Rivets lie along it by angle on mid thickness, where the net length is true.

use super::centre_line::{TICK_GAP_MM, TICK_MM};
use super::clear_place::Field;
use super::part::{CutPart, Layer, Shape, Withheld};
use super::pressed::pop;
use super::reference::rectangle;
use super::stamp::{Inscription, identity, lay_marks};
use crate::design::{Design, Fabricated, Point, Rivet, RivetMade};
use crate::spec::{Cutting, Fault, Flange, Spec};

/// The strip, or the fault in its sizes.
pub(super) fn strip(
    spec: &Spec,
    cutting: &Cutting,
    design: &Design,
    ring: &Fabricated,
) -> Result<CutPart, Vec<Fault>> {
    let (length, width) = (ring.strip_cut.to_mm(), ring.ring_width.value().to_mm());
    let edge = rectangle(Point::CENTRE, length, width).ok_or_else(|| {
        vec![Fault::new(
            "flange.fabricated.ring_width",
            "the strip of the ring has no length or no width",
            "look again at the ring's sizes",
        )]
    })?;
    let rivets: Vec<(&Rivet, Point)> = design
        .rivets
        .iter()
        .flat_map(|line| line.rivets.iter().map(move |rivet| (line, rivet)))
        .map(|(line, rivet)| {
            let y = width - line.from_edge.value().to_mm();
            (rivet, Point::new(along(ring, design, rivet.angle_deg), y))
        })
        .collect();
    let mut shapes: Vec<(Layer, Shape)> = rivets
        .iter()
        .filter(|(rivet, _)| rivet.made == RivetMade::Tack)
        .map(|(_, at)| (Layer::Pop, pop(cutting.pop, *at)))
        .collect();
    shapes.extend(quarter_ticks(ring, width));
    shapes.push((Layer::CutOutside, Shape::Closed(edge.clone())));
    let mut part = CutPart {
        name: "ring".into(),
        number_off: cutting.order.number_off.unwrap_or(1),
        process: cutting.process,
        thickness: ring.ring_thickness.clone(),
        material: material(spec),
        lies:
            "FACE UP IS THE INSIDE OF THE RING, FREE EDGE AT THE TOP, BOTTOM CENTRE AT HALF LENGTH"
                .into(),
        shapes,
        holes_cut: Vec::new(),
        withheld: withheld(&rivets),
        mass_kg: design
            .figures
            .ring_mass_kg
            .map(|kg| kg * (ring.strip_cut / ring.strip_net)),
    };
    let mut field = Field::inside(edge);
    let hole = design.rivets.as_ref().map(|line| line.hole.value().to_mm());
    for (_, at) in &rivets {
        field.keep_clear_of(*at, hole.unwrap_or(0.0) / 2.0);
    }
    let inscriptions = [Inscription::anywhere(
        [
            format!("{} RING", identity(spec)),
            "INSIDE OF RING - FREE EDGE ^".into(),
            "BOTTOM CENTRE".into(),
        ],
        Point::new(length / 2.0, width / 2.0),
    )];
    lay_marks(&mut part, spec, &inscriptions, field);
    Ok(part)
}

fn material(spec: &Spec) -> Option<crate::spec::Material> {
    let own = match &spec.written.flange {
        Some(Flange::Fabricated(ring)) => ring.material.clone(),
        _ => None,
    };
    own.or_else(|| spec.written.plate.material.clone())
}

/// Where along the strip an angle (clockwise from the top) falls, mm from its left end.
///
/// Looking at the inside of the ring from within, free edge up, one sees clockwise running to the right where the ring
/// stands towards the side that one views the plate from, and to the left where it stands away.
fn along(ring: &Fabricated, design: &Design, angle_deg: f64) -> f64 {
    let from_bottom = (angle_deg + 180.0) % 360.0;
    let from_bottom = match from_bottom > 180.0 {
        true => from_bottom - 360.0,
        false => from_bottom,
    };
    let run = ring.strip_net.to_mm() * from_bottom / 360.0;
    let middle = ring.strip_cut.to_mm() / 2.0;
    match ring.towards == design.view_from {
        true => middle + run,
        false => middle - run,
    }
}

/// Ticks inside both long edges at bottom centre, at the quarters, and where the net length ends if more than it is cut.
fn quarter_ticks(ring: &Fabricated, width: f64) -> Vec<(Layer, Shape)> {
    let middle = ring.strip_cut.to_mm() / 2.0;
    let net = ring.strip_net.to_mm();
    let mut places = vec![middle - net / 4.0, middle, middle + net / 4.0];
    if ring.strip_cut.shortfall(ring.strip_net).is_none() && !ring.strip_cut.same_as(ring.strip_net)
    {
        places.extend([middle - net / 2.0, middle + net / 2.0]);
    }
    let tick = TICK_MM.min(width / 4.0);
    let line = |x: f64, low: f64, high: f64| {
        (
            Layer::Scribe,
            Shape::Line {
                from: Point::new(x, low),
                to: Point::new(x, high),
            },
        )
    };
    places
        .into_iter()
        .flat_map(|x| {
            [
                line(x, TICK_GAP_MM, tick),
                line(x, width - tick, width - TICK_GAP_MM),
            ]
        })
        .collect()
}

fn withheld(rivets: &[(&Rivet, Point)]) -> Vec<Withheld> {
    let of = |tack: bool, instead, reason: &str| Withheld {
        ids: rivets
            .iter()
            .filter(|(rivet, _)| (rivet.made == RivetMade::Tack) == tack)
            .map(|(rivet, _)| rivet.id.clone())
            .collect(),
        instead,
        reason: reason.into(),
    };
    [
        of(
            true,
            "a pop",
            "tack reference in the flat strip, opened after rolling and welding",
        ),
        of(
            false,
            "nothing",
            "drilled after the ring is rolled and welded",
        ),
    ]
    .into_iter()
    .filter(|withheld| !withheld.ids.is_empty())
    .collect()
}
