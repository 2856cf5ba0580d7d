//! The blank of a pressed plate: its edge, the lines that the former is set to, and two pops. No hole is cut in it.
//!
//! Holes in the part that moves come out oval and out of place, and a tube hole cut before forming pulls with the flat;
//! so every hole waits, and the two former pins stand where tubes will be drilled later.

use super::centre_line::{TICK_GAP_MM, TICK_MM, ring_of_ticks};
use super::clear_place::Field;
use super::file_name::side;
use super::hole_policy::Tally;
use super::part::{CutPart, Layer, PartKind, Shape};
use super::stamp::stamp_part;
use crate::design::{Design, Hole, Outline, Point, Pressed};
use crate::spec::{Cutting, Fault, HoleCut, PopMark, Spec};
use crate::units::Length;
use crate::units::print::decimal;

/// From the middle of a pop to the end of each arm of its cross, mm.
pub(super) const POP_ARM_MM: f64 = 3.0;

/// The blank, or the faults in what the spec wants done to it.
pub(super) fn blank(
    spec: &Spec,
    cutting: &Cutting,
    design: &Design,
    flange: &Pressed,
) -> Result<CutPart, Vec<Fault>> {
    let mut faults = holes_before_forming(cutting);
    let pins = former_pins(cutting, design, &mut faults);
    if !faults.is_empty() {
        return Err(faults);
    }
    let radius = flange.blank_cut.to_mm() / 2.0;
    let circle = |radius: f64| Shape::Circle {
        centre: Point::CENTRE,
        radius,
    };
    let mut shapes: Vec<(Layer, Shape)> = pins
        .iter()
        .map(|hole| (Layer::Pop, pop(cutting.pop, hole.at)))
        .collect();
    shapes.push((Layer::Scribe, circle(flange.tangent_radius.to_mm())));
    let net = net_blanks(flange);
    for diameter in &net {
        shapes.push((Layer::Scribe, circle(diameter.to_mm() / 2.0)));
    }
    shapes.extend(ticks(flange, radius, &net));
    shapes.push((Layer::CutOutside, circle(radius)));
    let tally = withheld(cutting, design, &pins);
    let mut part = CutPart {
        name: "blank".into(),
        kind: PartKind::Plate,
        number_off: cutting.order.number_off.unwrap_or(1),
        process: cutting.process,
        thickness: Some(design.thickness.clone()),
        material: spec.written.plate.material.clone(),
        lies: format!(
            "FACE UP IS THE {} SIDE",
            side(design.view_from).to_uppercase()
        ),
        shapes,
        holes_cut: tally.cut,
        withheld: tally.withheld,
        places: hole_places(design),
        remarks: Vec::new(),
        inscriptions: Vec::new(),
        by_hand: Vec::new(),
        quarters: Vec::new(),
        mass_kg: design.figures.blank_mass_kg,
    };
    let field = Field::inside(Outline::circle(
        Point::CENTRE,
        flange.tangent_radius.to_mm(),
    ));
    stamp_part(&mut part, spec, design, field);
    Ok(part)
}

/// The net blanks of the two methods, the larger first; one where they are the same.
fn net_blanks(flange: &Pressed) -> Vec<Length> {
    let (a, b) = (flange.blank_mid_line, flange.blank_equal_area);
    let mut net = vec![a.max(b), a.min(b)];
    if a.same_as(b) {
        net.pop();
    }
    net
}

/// Inside the tangent, and in the trim outside both net blanks where there is room.
fn ticks(flange: &Pressed, radius: f64, net: &[Length]) -> Vec<(Layer, Shape)> {
    let flat = flange.tangent_radius.to_mm() - TICK_GAP_MM;
    let mut ticks = ring_of_ticks(flat - TICK_MM, flat);
    let (inner, outer) = (net[0].to_mm() / 2.0 + TICK_GAP_MM, radius - TICK_GAP_MM);
    if inner < outer {
        ticks.extend(ring_of_ticks(inner.max(outer - TICK_MM), outer));
    }
    ticks
}

/// Every hole of the flat with its place.
pub(super) fn hole_places(design: &Design) -> Vec<(String, Point)> {
    let holes = design.holes.iter();
    holes.map(|hole| (hole.id.clone(), hole.at)).collect()
}

/// A pop as the spec wants it drawn.
pub(super) fn pop(mark: PopMark, at: Point) -> Shape {
    match mark {
        PopMark::Cross => Shape::Cross {
            at,
            arm: POP_ARM_MM,
        },
        PopMark::Point => Shape::Dot(at),
    }
}

fn holes_before_forming(cutting: &Cutting) -> Vec<Fault> {
    let asks_for_something = cutting
        .holes
        .iter()
        .enumerate()
        .filter(|(_, policy)| policy.cut != HoleCut::Nothing);
    asks_for_something
        .map(|(i, policy)| {
            Fault::new(
                format!("cutting.holes[{i}].cut"),
                format!(
                    "{} holes are wanted in the blank of a pressed plate: they would come out oval and out of place",
                    policy.purpose.name()
                ),
                "leave the policy out; holes are marked out and drilled after forming",
            )
        })
        .collect()
}

/// The tubes on whose centres the former pins stand, as the design found them.
fn former_pins<'a>(
    cutting: &Cutting,
    design: &'a Design,
    faults: &mut Vec<Fault>,
) -> Vec<&'a Hole> {
    let pins = &design.former_pins;
    if !matches!(pins.len(), 0 | 2) {
        faults.push(Fault::new(
            "cutting.former_pins",
            format!(
                "the number of former pins is {}: one lets the blank swing, and more than two are holes for nothing",
                cutting.former_pins.len()
            ),
            "write the places of two",
        ));
    }
    if let [a, b] = pins[..]
        && a == b
    {
        faults.push(Fault::new(
            "cutting.former_pins[1]",
            format!("both former pins stand on {}", design.holes[a].id),
            "write the places of two tubes",
        ));
    }
    pins.iter().map(|&pin| &design.holes[pin]).collect()
}

/// Why a tube hole has a pop in it; where the pin was written a hair off the tube, that too.
fn pin_reason(cutting: &Cutting, pin: &Hole) -> String {
    const PIN: &str = "for a former pin, on the centre of a tube that is drilled after forming";
    let away = cutting.former_pins.iter().map(|(x, y)| {
        let written = Point::new(x.value().to_mm(), y.value().to_mm());
        Length::mm(written.distance(pin.at))
    });
    match away.min_by(Length::total_cmp) {
        Some(away) if !away.same_as(Length::ZERO) => format!(
            "{PIN}; the pin is written {} mm from {} and taken to stand on it",
            decimal(away.to_mm(), 3),
            pin.id
        ),
        _ => PIN.into(),
    }
}

fn withheld(cutting: &Cutting, design: &Design, pins: &[&Hole]) -> Tally {
    const FLAT: &str = "drilled after forming: the flat moves while the flange is turned";
    const MOVES: &str = "in the moving zone of the blank: it would come out oval and out of place";
    const MOUTH: &str =
        "opened and flanged after forming: its mouth is turned out of the plate's own metal";
    let mut tally = Tally::default();
    for hole in &design.holes {
        let mouth = design.groups[hole.group].mouth.is_some();
        match pins.iter().any(|pin| pin.id == hole.id) {
            true => tally.withhold(&hole.id, "a pop", &pin_reason(cutting, hole)),
            false => tally.withhold(&hole.id, "nothing", if mouth { MOUTH } else { FLAT }),
        }
    }
    for rivet in design.rivets.iter().flat_map(|line| &line.rivets) {
        tally.withhold(&rivet.id, "nothing", MOVES);
    }
    tally
}
