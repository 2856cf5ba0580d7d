//! Templates as parts of their own, where the spec asks for them: what the smith holds against the work as it is formed.
//!
//! They are cut to the finished size and carry no metal for dressing: a template is compared with, not fitted.

use super::centre_line::{TICK_GAP_MM, TICK_MM, ring_of_ticks};
use super::clear_place::Field;
use super::fabricated::closed;
use super::part::{CutPart, Layer, PartKind};
use super::stamp::{Inscription, identity, lay_marks};
use crate::design::cutter::in_mm;
use crate::design::{Design, Edge, Fabricated, FlangeDesign, Outline, Point, Pressed};
use crate::spec::{Cutting, Fault, Flange, Spec};
use crate::units::Length;
use crate::units::angle::{PI, sqrt};
use crate::units::print::{decimal, millimetres, trimmed};

/// Straight beyond the heel on each leg of its gauge, mm: enough to lie on flat and flange by eye.
const LEG_MM: f64 = 60.0;
/// Depth of the roll check below the ends of its arc, mm: enough to hold it by.
const DEPTH_MM: f64 = 60.0;
/// Chord of the roll check as a share of the ring's inside radius: a fifth of the round, which a hand can hold steady.
const CHORD_SHARE: f64 = 0.8;

/// The templates of a flange; none where they are not asked for or the plate has no flange.
pub(super) fn templates(
    spec: &Spec,
    cutting: &Cutting,
    design: &Design,
) -> Result<Vec<CutPart>, Vec<Fault>> {
    if !cutting.templates {
        return Ok(Vec::new());
    }
    match &design.flange {
        Some(FlangeDesign::Pressed(flange)) => {
            let mut gauge = heel_gauge(spec, cutting, flange)?;
            let mut parts = Vec::new();
            match former(spec, cutting, design, flange) {
                Some(former) => parts.push(former),
                None => gauge.remarks.push(
                    "No former outline is drawn: the works' allowance for heat, `flange.pressed.former_hot_allowance`, is not written."
                        .into(),
                ),
            }
            parts.insert(0, gauge);
            Ok(parts)
        }
        Some(FlangeDesign::Fabricated(ring)) => Ok(vec![roll_check(spec, cutting, ring)?]),
        None => Ok(Vec::new()),
    }
}

/// Lays the lettering on an outline and makes a part of it.
fn template(
    spec: &Spec,
    cutting: &Cutting,
    name: &str,
    outline: Outline,
    lines: Vec<String>,
    remarks: Vec<String>,
) -> CutPart {
    let (low, high) = outline.bounds();
    let mut part = CutPart {
        name: name.into(),
        kind: PartKind::Template,
        number_off: 1,
        process: cutting.process,
        thickness: cutting.template_thickness.clone(),
        material: None,
        lies: "EITHER FACE UP - A TEMPLATE".into(),
        shapes: vec![(Layer::CutOutside, closed(&outline))],
        holes_cut: Vec::new(),
        withheld: Vec::new(),
        places: Vec::new(),
        remarks,
        inscriptions: Vec::new(),
        by_hand: Vec::new(),
        quarters: Vec::new(),
        mass_kg: None,
    };
    if outline.as_circle().is_some() {
        let outer = high.y - TICK_GAP_MM;
        part.shapes
            .splice(0..0, ring_of_ticks(outer - TICK_MM, outer));
    }
    let mut inscribed = vec![identity(spec), name.to_uppercase()];
    inscribed.extend(lines);
    let inscription = Inscription::anywhere(inscribed, low.midway(high));
    lay_marks(&mut part, spec, &[inscription], Field::inside(outline));
    part
}

/// A square with one corner rounded to the inside radius of the heel.
fn heel_gauge(spec: &Spec, cutting: &Cutting, flange: &Pressed) -> Result<CutPart, Vec<Fault>> {
    let radius = flange.heel_radius.value().to_mm();
    let side = radius + LEG_MM;
    let corners = [
        (radius, 0.0),
        (side, 0.0),
        (side, side),
        (0.0, side),
        (0.0, radius),
    ]
    .map(|(x, y)| Point::new(x, y));
    let mut edges: Vec<Edge> = corners
        .windows(2)
        .map(|ends| Edge::Line {
            from: ends[0],
            to: ends[1],
        })
        .collect();
    edges.push(Edge::arc(Point::new(radius, radius), radius, PI, 1.5 * PI));
    let outline = Outline::new(edges).map_err(|_| no_heel(&flange.heel_radius.to_string()))?;
    let size = in_mm(&flange.heel_radius);
    Ok(template(
        spec,
        cutting,
        "heel gauge",
        outline,
        vec![format!(
            "INSIDE R {}",
            flange.heel_radius.as_written().to_uppercase()
        )],
        vec![format!(
            "Rounded corner: the inside radius of the heel, {size}; the two straight legs lie on flat and flange."
        )],
    ))
}

fn no_heel(radius: &str) -> Vec<Fault> {
    vec![Fault::new(
        "cutting.templates",
        format!("a heel of radius {radius} has no gauge"),
        "leave the templates out, or look again at `flange.pressed.heel_radius_inside`",
    )]
}

/// The former's outline cold: the inside of the flange and the works' allowance for heat.
fn former(spec: &Spec, cutting: &Cutting, design: &Design, flange: &Pressed) -> Option<CutPart> {
    let Some(Flange::Pressed(written)) = &spec.written.flange else {
        return None;
    };
    let hot = written.former_hot_allowance.as_ref()?;
    let inside = flange.outside_diameter.value() - 2.0 * design.thickness.value();
    let diameter = (1.0 + hot.share) * inside;
    let percent = trimmed(100.0 * hot.share, 3);
    let outline = Outline::circle(Point::CENTRE, diameter.to_mm() / 2.0);
    let words = |length: Length| format!("{} mm", millimetres(length));
    Some(template(
        spec,
        cutting,
        "former",
        outline,
        vec![
            format!("DIA {} MM", millimetres(diameter)),
            format!("HOT ALLOWANCE {percent} PER CENT"),
        ],
        vec![format!(
            "Former outline: the inside of the flange, {}, and {percent} % for heat ({}), {} across.",
            words(inside),
            hot.origin,
            words(diameter)
        )],
    ))
}

/// A segment whose arc is the inside of the ring.
fn roll_check(spec: &Spec, cutting: &Cutting, ring: &Fabricated) -> Result<CutPart, Vec<Fault>> {
    let inside = ring.ring_outside_diameter.value() / 2.0 - ring.ring_thickness.value();
    let radius = inside.to_mm();
    let half = CHORD_SHARE * radius / 2.0;
    let drop = sqrt(radius * radius - half * half);
    let at = Point::new;
    let line = |from, to| Edge::Line { from, to };
    let (left, right) = (at(-half, 0.0), at(half, 0.0));
    let outline = Outline::new(vec![
        line(at(-half, -DEPTH_MM), at(half, -DEPTH_MM)),
        line(at(half, -DEPTH_MM), right),
        Edge::Arc {
            from: right,
            to: left,
            centre: at(0.0, -drop),
            radius,
            anticlockwise: true,
        },
        line(left, at(-half, -DEPTH_MM)),
    ]);
    let outline = outline.map_err(|_| {
        vec![Fault::new(
            "cutting.templates",
            "the ring is too small for a check of its curve",
            "leave the templates out, or look again at the ring's sizes",
        )]
    })?;
    let (chord, height) = (decimal(2.0 * half, 2), decimal(radius - drop, 2));
    let inside_mm = decimal(radius, 2);
    Ok(template(
        spec,
        cutting,
        "roll check",
        outline,
        vec![
            format!("RING INSIDE R {inside_mm} MM"),
            format!("CHORD {chord} HEIGHT {height}"),
        ],
        vec![format!(
            "Arc: the inside of the ring, radius {inside_mm} mm; chord {chord} mm, height over the chord {height} mm."
        )],
    ))
}
