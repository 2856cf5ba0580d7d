//! What is said of a plate that is kept: thickness readings, what is required, and repairs.

use std::collections::BTreeSet;

use super::job::date;
use super::sizes::other_unit;
use crate::spec::{BuildUpSpec, Fault, Repair, RepairWeld, Survey, Written};
use crate::units::{Length, Size};

/// No reading, and nothing required, is more than this many times the thickness as made: only a slip of unit goes past.
const THICKEST_TIMES: f64 = 1.5;

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
        RepairWeld::Crack(_) | RepairWeld::Line(_) => {}
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
