//! The flat plate of a fabricated flange, or a plate with no flange: edge, holes by policy, ring line and marks.

use super::centre_line::{TICK_GAP_MM, TICK_MM, ring_of_ticks, ticks_at_edge};
use super::clear_place::Field;
use super::cut_edge::{CutEdge, cut_edge};
use super::file_name::side;
use super::hole_policy::Tally;
use super::part::{CutPart, Layer, PartKind, Shape};
use super::pressed::{hole_places, pop};
use super::stamp::stamp_part;
use crate::design::cutter::Settings;
use crate::design::cutter::{Made, made_of};
use crate::design::{Design, Fabricated, FlangeDesign, Outline, Point};
use crate::spec::{Cutting, Fault, Spec};
use crate::units::Length;
use crate::units::print::millimetres;

/// The plate, or the faults in what the spec wants done to it.
pub(super) fn plate(
    spec: &Spec,
    cutting: &Cutting,
    design: &Design,
) -> Result<CutPart, Vec<Fault>> {
    if !cutting.former_pins.is_empty() {
        return Err(vec![Fault::new(
            "cutting.former_pins",
            "former pins hold a blank while its flange is pressed, and this plate is not pressed",
            "leave `former_pins` out",
        )]);
    }
    let settings = Settings::of(cutting, Some(design.thickness.value()));
    let dress = settings
        .dress_outside()
        .map_or(Length::ZERO, |figure| figure.value);
    let CutEdge {
        outline: edge,
        mut remarks,
    } = cut_edge(cutting, &design.edge, dress, "cutting.dress_outside")?;
    let ring = match &design.flange {
        Some(FlangeDesign::Fabricated(ring)) => Some(ring),
        _ => None,
    };
    remarks.extend(ring.and_then(|ring| ring_on_the_other_face(design, ring)));
    let (mut shapes, tally) = holes(cutting, design);
    if dress > Length::ZERO {
        shapes.insert(0, (Layer::Scribe, closed(&design.edge)));
    }
    let mut marks = ticks_at_edge(&design.edge);
    marks.extend(ring.into_iter().flat_map(|ring| ring_marks(design, ring)));
    shapes.splice(0..0, marks);
    shapes.push((Layer::CutOutside, closed(&edge)));
    let mut part = CutPart {
        name: "plate".into(),
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
        remarks,
        inscriptions: Vec::new(),
        by_hand: Vec::new(),
        quarters: Vec::new(),
        mass_kg: design
            .figures
            .plate_plain_kg
            .map(|kg| kg * edge.area_mm2() / design.edge.area_mm2()),
    };
    let mut field = Field::inside(design.edge.clone());
    if let Some(ring) = ring {
        field.keep_clear_of_weld(ring.inner_toe_radius, ring.outer_toe_radius);
    }
    stamp_part(&mut part, spec, design, field);
    Ok(part)
}

/// An outline as a shape: a true circle where it is one.
pub(super) fn closed(outline: &Outline) -> Shape {
    match outline.as_circle() {
        Some((centre, radius)) => Shape::Circle { centre, radius },
        None => Shape::Closed(outline.clone()),
    }
}

/// The ring's line where it stands on the face that is up, and the centre lines inside it, where the weld leaves them to be seen.
fn ring_marks(design: &Design, ring: &Fabricated) -> Vec<(Layer, Shape)> {
    let mut marks = Vec::new();
    if ring.towards == design.view_from {
        marks.push((
            Layer::Scribe,
            Shape::Circle {
                centre: Point::CENTRE,
                radius: ring.ring_outside_diameter.value().to_mm() / 2.0,
            },
        ));
    }
    let outer = ring.inner_toe_radius.to_mm() - TICK_GAP_MM;
    marks.extend(ring_of_ticks(outer - TICK_MM, outer));
    marks
}

/// Why no line of the ring is scribed, where it stands on the face that lies down: a line on the wrong face puts the ring there.
fn ring_on_the_other_face(design: &Design, ring: &Fabricated) -> Option<String> {
    (ring.towards != design.view_from).then(|| {
        format!(
            "No line of the ring is scribed: the ring stands on the {} face, which lies down here. The works strikes its line there, \
             {} mm across, from the quarter ticks carried over the edge.",
            side(ring.towards),
            millimetres(ring.ring_outside_diameter.value())
        )
    })
}

/// Pops, then holes, in the order of their numbers; and what became of each.
fn holes(cutting: &Cutting, design: &Design) -> (Vec<(Layer, Shape)>, Tally) {
    let settings = Settings::of(cutting, Some(design.thickness.value()));
    let (mut pops, mut cuts, mut tally) = (Vec::new(), Vec::new(), Tally::default());
    for hole in &design.holes {
        let group = &design.groups[hole.group];
        match made_of(&settings, group, hole.finish.value()) {
            Made::Cut(diameter, by) => {
                let radius = diameter.to_mm() / 2.0;
                let centre = hole.at;
                cuts.push((Layer::CutInside, Shape::Circle { centre, radius }));
                tally.cut(&hole.id, &group.name, hole.finish.value(), (diameter, by));
            }
            Made::Pop(reason) => {
                pops.push((Layer::Pop, pop(cutting.pop, hole.at)));
                tally.withhold(&hole.id, "a pop", &reason);
            }
            Made::Nothing(reason) => tally.withhold(&hole.id, "nothing", &reason),
        }
    }
    pops.extend(cuts);
    (pops, tally)
}
