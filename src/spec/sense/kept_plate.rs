//! What is said of a plate that is kept: thickness readings, what is required, and repairs.

use std::collections::BTreeSet;

use super::job::date;
use super::sizes::other_unit;
use crate::spec::{
    BuildUpSpec, Fault, Flange, Purpose, Repair, RepairWeld, Survey, WeldLineSpec, Written,
};
use crate::units::{Length, Size};

/// No reading, and nothing required, is more than this many times the thickness as made: only a slip of unit goes past.
const THICKEST_TIMES: f64 = 1.5;

/// What a plate that is kept cannot have, and what no other plate has.
pub(super) fn kept(written: &Written, faults: &mut Vec<Fault>) {
    let (wrong, remedy): (Vec<(String, &str)>, &str) = match written.plate.kept {
        true => (
            of_a_new_plate(written),
            "leave it out, or leave `plate.kept` out",
        ),
        false => (
            of_a_kept_plate(written),
            "write `plate.kept: true` where the plate stands, or leave this out",
        ),
    };
    for (path, fact) in wrong {
        let fault = Fault::new(path, fact, remedy);
        faults.push(match written.plate.kept {
            true => fault.and("plate.kept", "the plate is kept"),
            false => fault.and("plate", "the plate is to be made"),
        });
    }
}

/// Keys that order, cut or form a plate, with what is wrong about each in a spec of one that is kept.
fn of_a_new_plate(written: &Written) -> Vec<(String, &'static str)> {
    const FORMED: &str = "the plate is kept, and nothing of it is formed again";
    let mut wrong: Vec<(String, &str)> = Vec::new();
    if written.cutting.is_some() {
        let fact = "the plate is kept, so that there is no plate to cut";
        wrong.push(("cutting".into(), fact));
    }
    match &written.flange {
        Some(Flange::Pressed(flange)) => {
            if flange.trim.value() > Length::ZERO {
                let fact = "the plate is kept, and its flange was trimmed when it was made";
                wrong.push(("flange.pressed.trim".into(), fact));
            }
            let blank = flange.blank_diameter.as_ref().map(|_| "blank_diameter");
            let hot = flange.former_hot_allowance.as_ref();
            let keys = blank.into_iter().chain(hot.map(|_| "former_hot_allowance"));
            wrong.extend(keys.map(|key| (format!("flange.pressed.{key}"), FORMED)));
        }
        Some(Flange::Fabricated(ring)) => {
            let keys = [
                ("strip_allowance", ring.strip_allowance.is_some()),
                ("strip_preparation", ring.strip_preparation.is_some()),
                ("strip_roll_waste", ring.strip_roll_waste.is_some()),
            ];
            let written = keys.into_iter().filter(|(_, written)| *written);
            wrong.extend(written.map(|(key, _)| (format!("flange.fabricated.{key}"), FORMED)));
        }
        None => {}
    }
    for (i, set) in written.holes.iter().enumerate() {
        if set.purpose == Purpose::FormerPin {
            wrong.push((format!("holes[{i}].purpose"), FORMED));
        }
    }
    wrong
}

/// Keys that tell of a plate that stands, in a spec that does not say so.
fn of_a_kept_plate(written: &Written) -> Vec<(String, &'static str)> {
    const MADE: &str =
        "this tells of a plate that stands, and the spec does not say that it is kept";
    let mut wrong: Vec<(String, &str)> = Vec::new();
    wrong.extend(written.survey.iter().map(|_| ("survey".into(), MADE)));
    if !written.repairs.is_empty() {
        wrong.push(("repairs".into(), MADE));
    }
    for (i, nest) in written.tubes.iter().enumerate() {
        if nest.renewed.is_some() {
            wrong.push((format!("tubes[{i}].renewed"), MADE));
        }
    }
    wrong
}

pub(super) fn survey(written: &Written, faults: &mut Vec<Fault>) {
    let Some(survey) = &written.survey else {
        return;
    };
    faults.extend(date("survey.date", &survey.date));
    if survey.instrument.trim().is_empty() {
        faults.push(Fault::new(
            "survey.instrument",
            "`instrument` is empty, and a reading is worth no more than what it was taken with",
            "write the kind and the number of the instrument",
        ));
    }
    regions(survey, faults);
    let required = survey.required.iter().enumerate();
    for (i, region) in required {
        a_thickness(
            written,
            &region.thickness,
            format!("survey.required[{i}].thickness"),
            faults,
        );
    }
    for (i, reading) in survey.readings.iter().enumerate() {
        a_thickness(
            written,
            &reading.thickness,
            format!("survey.readings[{i}].thickness"),
            faults,
        );
    }
}

/// A region has both corners or none, and one that holds everything is the last.
fn regions(survey: &Survey, faults: &mut Vec<Fault>) {
    for (i, region) in survey.required.iter().enumerate() {
        let path = format!("survey.required[{i}]");
        match (&region.from, &region.to) {
            (Some(_), None) => faults.push(Fault::new(
                format!("{path}.from"),
                "a region between two corners has one corner only",
                "write `to`, the opposite corner",
            )),
            (None, Some(_)) => faults.push(Fault::new(
                format!("{path}.to"),
                "a region between two corners has one corner only",
                "write `from`, the opposite corner",
            )),
            (None, None) if i + 1 < survey.required.len() => faults.push(Fault::new(
                path,
                format!(
                    "`{}` holds the whole plate, so that no reading comes to the regions after it",
                    region.region
                ),
                "write the region without corners last",
            )),
            _ => {}
        }
    }
}

fn a_thickness(written: &Written, size: &Size, path: String, faults: &mut Vec<Fault>) {
    let plate = &written.plate.thickness;
    if size.value() <= Length::ZERO {
        let fact = format!("{size} is no thickness: it is not above nothing");
        faults.push(Fault::new(
            path,
            fact,
            "write the thickness itself, without a sign",
        ));
    } else if (plate.value() * THICKEST_TIMES)
        .shortfall(size.value())
        .is_some()
    {
        let fact = format!("{size} of metal in a plate that was made {plate} thick");
        let fault = Fault::new(path, fact, format!("did you mean {}?", other_unit(size)));
        faults.push(fault.and("plate.thickness", "the plate"));
    }
}

pub(super) fn repairs(written: &Written, faults: &mut Vec<Fault>) {
    let mut names = BTreeSet::new();
    for (i, repair) in written.repairs.iter().enumerate() {
        let path = format!("repairs[{i}]");
        if !names.insert(repair.name.trim()) {
            faults.push(Fault::new(
                format!("{path}.name"),
                format!("two repairs are called `{}`", repair.name),
                "give each its own name: sheets and record go by it",
            ));
        }
        weld(written, repair, &format!("{path}.weld"), faults);
    }
}

fn weld(written: &Written, repair: &Repair, path: &str, faults: &mut Vec<Fault>) {
    match &repair.weld {
        RepairWeld::BuildUp(area) => build_up(written, area, &format!("{path}.build_up"), faults),
        // Their places are looked at when they are set out.
        RepairWeld::Crack(_) => {}
        RepairWeld::Line(line) => piece(line, &format!("{path}.line"), faults),
        RepairWeld::GirthCracks(cracks) => {
            let path = format!("{path}.girth_cracks.longest_run");
            if cracks.longest_run == 0 || cracks.longest_run > cracks.in_all {
                let fact = format!(
                    "the longest run is {} of {} cracks in all",
                    cracks.longest_run, cracks.in_all
                );
                let remedy = "write at least 1, and no more than there are in all";
                faults.push(Fault::new(path, fact, remedy));
            }
        }
        RepairWeld::CaulkingEdge(edge) => {
            let key = |key: &str| format!("{path}.caulking_edge.{key}");
            above_nothing(&edge.length, key("length"), faults);
            if let Some(left) = &edge.metal_left {
                not_below_nothing(left, key("metal_left"), faults);
            }
        }
    }
}

fn piece(line: &WeldLineSpec, path: &str, faults: &mut Vec<Fault>) {
    let Some(piece) = &line.piece else {
        return;
    };
    if !line.let_in {
        faults.push(Fault::new(
            format!("{path}.piece"),
            "a piece is written, and the line lets none in",
            "write `let_in: true`, or leave `piece` out",
        ));
    }
    if let Some(thickness) = &piece.thickness {
        above_nothing(thickness, format!("{path}.piece.thickness"), faults);
    }
}

fn build_up(written: &Written, area: &BuildUpSpec, path: &str, faults: &mut Vec<Fault>) {
    let key = |key: &str| format!("{path}.{key}");
    let told = (
        area.diameter.is_some(),
        area.width.is_some(),
        area.height.is_some(),
    );
    if !matches!(told, (true, false, false) | (false, true, true)) {
        faults.push(Fault::new(
            path,
            "the area has no one size: a box has a width and a height, a round area a diameter",
            "write `width` and `height`, or `diameter` alone",
        ));
    }
    let sizes = [
        ("diameter", &area.diameter),
        ("width", &area.width),
        ("height", &area.height),
    ];
    for (name, size) in sizes {
        if let Some(size) = size {
            above_nothing(size, key(name), faults);
        }
    }
    if area.metal_left.is_some() && area.loss.is_some() {
        faults.push(
            Fault::new(
                key("loss"),
                "both the metal left and the metal lost are written, and one follows from the other",
                "leave one of the two out",
            )
            .and(key("metal_left"), "the metal left"),
        );
    }
    for (name, size) in [("metal_left", &area.metal_left), ("loss", &area.loss)] {
        let Some(size) = size else {
            continue;
        };
        not_below_nothing(size, key(name), faults);
        let plate = &written.plate.thickness;
        if plate.value().shortfall(size.value()).is_some() {
            let fact = format!("{size} of a plate that was made {plate} thick");
            let remedy = "look again at its figures and its unit";
            let fault = Fault::new(key(name), fact, remedy);
            faults.push(fault.and("plate.thickness", "the plate"));
        }
    }
}

fn above_nothing(size: &Size, path: String, faults: &mut Vec<Fault>) {
    if size.value() <= Length::ZERO {
        faults.push(Fault::new(
            path,
            format!("{size} is no size: it is not above nothing"),
            "write the size itself, without a sign",
        ));
    }
}

fn not_below_nothing(size: &Size, path: String, faults: &mut Vec<Fault>) {
    if size.value() < Length::ZERO {
        let fact = format!("{size} is below nothing");
        faults.push(Fault::new(path, fact, "write it without the sign"));
    }
}
