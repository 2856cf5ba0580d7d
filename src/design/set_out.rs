//! Setting out, step by step: form, holes, numbers, contradictions, rivets, metal between, largest circles, masses.

use super::above_tubes::above_tubes;
use super::amount::{Amounts, point};
use super::crowd::heap;
use super::hole_set::place_hole_set;
use super::masses::figures;
use super::nest::place_nest;
use super::numbering::{Numbered, PlacedGroup, number_holes};
use super::overlap::overlaps;
use super::pads::place_pads;
use super::reading::place_readings;
use super::repair::{Site, place_repairs};
use super::rivet_line::{RIVET_LETTER, set_out_rivets};
use super::since::since;
use super::smokebox_tube_plate::{self, Form};
use super::stay_area::stay_areas;
use super::stay_pitch::stay_pitches;
use super::stay_tubes::stay_tubes;
use super::tube_ends::other_ends;
use super::withdrawal::draw_out;
use super::{
    Design, Hole, HoleGroup, LargestCircle, Outline, Point, directions, lands, largest_circle,
    survey,
};
use crate::spec::{Fault, Kind, NamedLine, Purpose, Spec, Written};
use crate::units::Length;

/// Sets out a plate: every edge and hole in its place, or every fault that makes it contradictory.
///
/// Refused: sizes that leave no plate; holes that overlap one another, an edge, a heel or a weld; a hole written twice; a tube
/// outside the flange line; an exception or a former pin where no hole is; tubes and the holes of
/// the other end that do not agree; stages that do not end in the finished hole; a blank
/// smaller than its flange takes; a former issue that cannot be set out. Too little metal is not refused: the rules judge it.
pub fn set_out(spec: &Spec) -> Result<Design, Vec<Fault>> {
    let mut design = set_out_alone(spec)?;
    design.since = since(spec, &design)?;
    Ok(design)
}

/// Sets out a plate by itself, whatever it was at a former issue.
fn set_out_alone(spec: &Spec) -> Result<Design, Vec<Fault>> {
    let written = &spec.written;
    let amounts = Amounts::of(written.job.units);
    let mut faults = Vec::new();
    let form = match written.plate.kind {
        Kind::SmokeboxTubePlate => smokebox_tube_plate::form(written, amounts, &mut faults),
    };
    let Some(form) = form else {
        return Err(faults);
    };
    let placed = place_holes(written, &form, amounts, &mut faults);
    refuse_confusing_letters(written, &placed, &mut faults);
    let own_metal: Vec<Option<f64>> = placed.iter().map(|group| group.own_metal).collect();
    let numbered = number_holes(placed);
    if let Some(heap) = heap(&numbered, amounts) {
        faults.push(heap);
        return Err(faults);
    }
    let survey = survey(&numbered.holes, &numbered.groups);
    faults.extend(overlaps(
        &numbered,
        &survey.close_pairs,
        &own_metal,
        &form,
        amounts,
    ));
    let rivets = set_out_rivets(written, form.flange.as_ref(), amounts, &mut faults);
    let former_pins = pins_on_tubes(written, &numbered, amounts, &mut faults);
    let stay_tubes = stay_tubes(written, &numbered, amounts, &mut faults);
    support_line_is_there(written, &form, &mut faults);
    let other_ends = other_ends(written, &numbered, amounts, &mut faults);
    let withdrawal = draw_out(written, &numbered, &other_ends, &mut faults);
    let stay_pitches = stay_pitches(&numbered, &stay_tubes);
    let site = Site {
        written,
        form: &form,
        numbered: &numbered,
        rivets: rivets.as_ref(),
        amounts,
    };
    let mut repairs = place_repairs(&site, &stay_pitches, &stay_tubes, &mut faults);
    let readings = place_readings(&site, &mut repairs, &mut faults);
    if !faults.is_empty() {
        return Err(faults);
    }
    let figures = figures(
        written,
        &form.edge,
        form.flange.as_ref(),
        &numbered.holes,
        rivets.as_ref(),
    );
    let circles = largest_circles(
        written,
        &form.lines,
        &numbered.holes,
        &numbered.groups,
        &stay_tubes,
    );
    let flange = form.flange.as_ref();
    let above_tubes = above_tubes(
        written,
        flange,
        &numbered.holes,
        &numbered.groups,
        &stay_tubes,
    );
    let stay_areas = stay_areas(
        written,
        &numbered.holes,
        &numbered.groups,
        &stay_pitches,
        above_tubes.as_ref(),
        &stay_tubes,
    );
    let pads = place_pads(written, &numbered);
    Ok(Design {
        kind: written.plate.kind,
        view_from: written.plate.view_from,
        kept: written.plate.kept,
        thickness: written.plate.thickness.clone(),
        directions: directions(&numbered.holes, &numbered.groups),
        lands: lands(&numbered.holes, &numbered.groups, &form.lines),
        edge: form.edge,
        lines: form.lines,
        flange: form.flange,
        groups: numbered.groups,
        holes: numbered.holes,
        nest_lines: numbered.nest_lines,
        line_way: numbered.line_way,
        omissions: numbered.omissions,
        former_pins,
        other_ends,
        withdrawal,
        pads,
        rivets,
        repairs,
        readings,
        least_ligaments: survey.least,
        close_pairs: survey.close_pairs,
        largest_circle: circles.0,
        largest_circle_without_tubes: circles.1,
        above_tubes,
        stay_pitches,
        stay_tubes,
        stay_areas,
        figures,
        since: None,
    })
}

/// Nests first, then the other holes, in the order of the spec.
fn place_holes(
    written: &Written,
    form: &Form,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> Vec<PlacedGroup> {
    let mut placed = Vec::new();
    for (index, nest) in written.tubes.iter().enumerate() {
        let path = format!("tubes[{index}]");
        placed.push(place_nest(nest, &path, form, amounts, faults));
    }
    for (index, set) in written.holes.iter().enumerate() {
        placed.push(place_hole_set(
            set,
            &written.pads,
            &format!("holes[{index}]"),
            faults,
        ));
    }
    placed
}

/// A letter that ends in a figure could give two holes one number (T1 and T, 1 and 11), and so could the rivets' own letter.
fn refuse_confusing_letters(written: &Written, placed: &[PlacedGroup], faults: &mut Vec<Fault>) {
    for group in placed {
        let letter = &group.letter;
        let path = format!("{}.letter", group.group.path);
        if letter.is_empty() || letter.ends_with(|c: char| c.is_ascii_digit()) {
            faults.push(Fault::new(
                path,
                format!("`{letter}` cannot open a number: T1 and 1 would read as T and 11"),
                "write one or two letters",
            ));
        } else if letter == RIVET_LETTER && written.rivets.is_some() {
            faults.push(Fault::new(
                path,
                format!("{RIVET_LETTER} opens the numbers of the rivets"),
                "write another letter",
            ));
        }
    }
}

/// How far a former pin may be written from the tube that it is taken to stand on: a place read off to the nearest 64th is at most
/// half of that out each way, and a tube stands much further from the next.
fn a_64th() -> Length {
    Length::sixty_fourths(1)
}

/// The tubes on whose centres the former pins stand. A pin anywhere else would leave a hole in metal that stays.
fn pins_on_tubes(
    written: &Written,
    numbered: &Numbered,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> Vec<usize> {
    let Some(cutting) = &written.cutting else {
        return Vec::new();
    };
    let mut pins = Vec::new();
    for (index, pin) in cutting.former_pins.iter().enumerate() {
        let at = point(pin);
        match nearest_tube(numbered, at) {
            Some((tube, away)) if a_64th().shortfall(Length::mm(away)).is_none() => {
                pins.push(tube);
            }
            nearest => {
                let beside = nearest.map_or(String::new(), |(tube, away)| {
                    let tube = &numbered.holes[tube];
                    format!(
                        "; the nearest tube is {} at {}, {} away",
                        tube.id,
                        amounts.place(tube.at),
                        amounts.mm(away)
                    )
                });
                faults.push(Fault::new(
                    format!("cutting.former_pins[{index}]"),
                    format!(
                        "a former pin at {} is not on the centre of a tube, and would leave a hole in metal that stays{beside}",
                        amounts.place(at)
                    ),
                    "put it on the centre of a tube",
                ));
            }
        }
    }
    pins
}

fn nearest_tube(numbered: &Numbered, at: Point) -> Option<(usize, f64)> {
    let is_tube = |group: usize| numbered.groups[group].purpose.takes_a_tube();
    let tubes = numbered.holes.iter().enumerate();
    tubes
        .filter(|(_, hole)| is_tube(hole.group))
        .map(|(index, hole)| (index, hole.at.distance(at)))
        .min_by(|a, b| a.1.total_cmp(&b.1))
}

/// The line that the works names as support is one that the plate has.
fn support_line_is_there(written: &Written, form: &Form, faults: &mut Vec<Fault>) {
    if let Some(support) = &written.support
        && form.line(support.flange_line).is_none()
    {
        faults.push(form.no_such_line(support.flange_line, "support.flange_line".into()));
    }
}

/// The largest unsupported circle with what the spec counts as support, and the same with tubes and flues not counted that are
/// only expanded; nothing where the spec does not say what supports the flat.
pub(super) fn largest_circles(
    written: &Written,
    lines: &[(NamedLine, Outline)],
    holes: &[Hole],
    groups: &[HoleGroup],
    stay_tubes: &[usize],
) -> (Option<LargestCircle>, Option<LargestCircle>) {
    let Some(support) = &written.support else {
        return (None, None);
    };
    let named = lines.iter().find(|(name, _)| *name == support.flange_line);
    let Some((_, line)) = named else {
        return (None, None);
    };
    // A stay tube holds the plate as any stay does.
    let holds = |tube: usize| support.stays && stay_tubes.binary_search(&tube).is_ok();
    let supports = |counts: &dyn Fn(Purpose) -> bool| -> Vec<(usize, Point)> {
        holes
            .iter()
            .enumerate()
            .filter(|(index, hole)| counts(groups[hole.group].purpose) || holds(*index))
            .map(|(index, hole)| (index, hole.at))
            .collect()
    };
    let counted = supports(&|purpose| support.counts(purpose));
    let without_tubes = supports(&|purpose| purpose == Purpose::Stay && support.stays);
    let circle = largest_circle(&counted, line);
    let circle_without_tubes = if counted.len() == without_tubes.len() {
        circle.clone()
    } else {
        largest_circle(&without_tubes, line)
    };
    (circle, circle_without_tubes)
}
