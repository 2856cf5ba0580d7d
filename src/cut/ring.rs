//! The strip from which the ring of a fabricated flange is rolled.
//!
//! It lies with the face up that will be the inside of the ring and the free edge at the top. Its ends meet midway between
//! the two rivets next to top centre, so that no rivet goes through the joint. Rivets lie along it by angle on mid
//! thickness, where the net length is true.

use super::centre_line::{TICK_GAP_MM, TICK_MM};
use super::clear_place::Field;
use super::part::{CutPart, Layer, Shape, Withheld};
use super::pressed::pop;
use super::reference::rectangle;
use super::stamp::{Inscription, identity, lay_marks};
use crate::design::{Design, Fabricated, Point, Rivet, RivetMade};
use crate::spec::{Cutting, Fault, Flange, Spec};
use crate::units::Length;
use crate::units::print::decimal;
use crate::units::tolerance::SAME_ANGLE_DEG;

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
    let joint_deg = joint(design);
    let place = |angle_deg: f64| along(ring, design, joint_deg, angle_deg);
    let rivets = rivet_places(design, ring);
    let mut shapes: Vec<(Layer, Shape)> = rivets
        .iter()
        .filter(|(rivet, _)| rivet.made == RivetMade::Tack)
        .map(|(_, at)| (Layer::Pop, pop(cutting.pop, *at)))
        .collect();
    let quarters = [90.0, 180.0, 270.0];
    shapes.extend(
        quarters
            .into_iter()
            .flat_map(|deg| ticks(place(deg), width)),
    );
    shapes.extend(net_end_ticks(ring, width));
    shapes.push((Layer::CutOutside, Shape::Closed(edge.clone())));
    let mut part = CutPart {
        name: "ring".into(),
        number_off: cutting.order.number_off.unwrap_or(1),
        process: cutting.process,
        thickness: Some(ring.ring_thickness.clone()),
        material: material(spec),
        lies: format!(
            "FACE UP IS THE INSIDE OF THE RING, FREE EDGE AT THE TOP, JOINT {}",
            joint_words(joint_deg)
        ),
        shapes,
        holes_cut: Vec::new(),
        withheld: withheld(&rivets),
        remarks: Vec::new(),
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
    let near = |x: f64| Point::new(x, width / 2.0);
    let inscriptions = [
        Inscription::anywhere(["BOTTOM CENTRE".into()], near(place(180.0))),
        Inscription::anywhere([format!("{} RING", identity(spec))], near(length / 4.0)),
        Inscription::anywhere(["INSIDE OF RING - FREE EDGE ^".into()], near(length * 0.75)),
    ];
    lay_marks(&mut part, spec, &inscriptions, field);
    Ok(part)
}

/// Where each rivet lies on the strip.
pub(super) fn rivet_places<'a>(design: &'a Design, ring: &Fabricated) -> Vec<(&'a Rivet, Point)> {
    let width = ring.ring_width.value().to_mm();
    let joint_deg = joint(design);
    design
        .rivets
        .iter()
        .flat_map(|line| line.rivets.iter().map(move |rivet| (line, rivet)))
        .map(|(line, rivet)| {
            let x = along(ring, design, joint_deg, rivet.angle_deg);
            let y = width - line.from_edge.value().to_mm();
            (rivet, Point::new(x, y))
        })
        .collect()
}

fn material(spec: &Spec) -> Option<crate::spec::Material> {
    let own = match &spec.written.flange {
        Some(Flange::Fabricated(ring)) => ring.material.clone(),
        _ => None,
    };
    own.or_else(|| spec.written.plate.material.clone())
}

/// Where the ends of the strip meet, degrees clockwise from the top: the middle of the gap between rivets that holds top
/// centre, or of the next one clockwise where a rivet stands on it.
fn joint(design: &Design) -> f64 {
    let rivets = design.rivets.iter().flat_map(|line| &line.rivets);
    // A rivet on top centre counts as the last before it, whichever way its angle was rounded.
    let before_top = |deg: f64| match deg.rem_euclid(360.0) {
        turn if turn > 360.0 - SAME_ANGLE_DEG => turn - 360.0,
        turn => turn,
    };
    let angles: Vec<f64> = rivets.map(|rivet| before_top(rivet.angle_deg)).collect();
    let after = |deg: &f64| *deg > SAME_ANGLE_DEG;
    let first = angles.iter().copied().filter(after).reduce(f64::min);
    let last = angles
        .iter()
        .map(|deg| if after(deg) { deg - 360.0 } else { *deg })
        .reduce(f64::max);
    match (first, last) {
        (Some(first), Some(last)) => (last + first) / 2.0,
        _ => 0.0,
    }
}

fn joint_words(joint_deg: f64) -> String {
    let size = decimal(joint_deg.abs(), 3);
    match joint_deg {
        deg if deg.abs() <= SAME_ANGLE_DEG => "AT TOP CENTRE".into(),
        deg if deg > 0.0 => format!("{size} DEGREES CLOCKWISE FROM TOP CENTRE"),
        _ => format!("{size} DEGREES ANTICLOCKWISE FROM TOP CENTRE"),
    }
}

/// Where along the strip an angle (clockwise from the top) falls, mm from its left end.
///
/// Looking at the inside of the ring from within, free edge up, one sees clockwise running to the right where the ring
/// stands towards the side that one views the plate from, and to the left where it stands away.
fn along(ring: &Fabricated, design: &Design, joint_deg: f64, angle_deg: f64) -> f64 {
    let (net, cut) = (ring.strip_net.to_mm(), ring.strip_cut.to_mm());
    let run = (angle_deg - joint_deg).rem_euclid(360.0) / 360.0 * net;
    let from_end = (cut - net) / 2.0 + run;
    match ring.towards == design.view_from {
        true => from_end,
        false => cut - from_end,
    }
}

/// Ticks inside both long edges.
fn ticks(x: f64, width: f64) -> [(Layer, Shape); 2] {
    let tick = TICK_MM.min(width / 4.0);
    let line = |low: f64, high: f64| {
        let (from, to) = (Point::new(x, low), Point::new(x, high));
        (Layer::Scribe, Shape::Line { from, to })
    };
    [
        line(TICK_GAP_MM, tick),
        line(width - tick, width - TICK_GAP_MM),
    ]
}

/// Where the net length ends, if more than it is cut.
fn net_end_ticks(ring: &Fabricated, width: f64) -> Vec<(Layer, Shape)> {
    let spare = ring.strip_cut - ring.strip_net;
    if spare <= Length::mm(2.0 * TICK_GAP_MM) {
        return Vec::new();
    }
    let x = spare.to_mm() / 2.0;
    let ends = [x, ring.strip_cut.to_mm() - x];
    ends.into_iter().flat_map(|x| ticks(x, width)).collect()
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
