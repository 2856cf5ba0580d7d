//! Thickness as found, against what the works requires.
//!
//! ```text
//! reading ≥ thickness required of its region        a reading that new metal takes the place of is noted, not compared
//! ```
//!
//! Source:  the works: `survey.required` gives the thickness, region by region, and who says so.
//! Covers:  every reading of the survey; for each region the reading that is furthest below, or nearest to it; which repair covers those
//!          below, and the nearest sound reading outside each piece let in.
//! Leaves:  metal between the readings: nothing is interpolated. Ultrasonic thickness finds no cracks, grooving or wasted stays.

use super::measure::Unit;
use super::{Finding, Rule, source};
use crate::design::{Design, Reading, Repair};
use crate::spec::{Survey, Written};
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "thickness_readings",
    asks: "thickness as found",
    source: &source::WORKS,
    run,
    page: include_str!("thickness_readings.rs"),
};

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(survey) = &written.survey else {
        return Vec::new();
    };
    let unit_of_job = Unit::of_job(written);
    let mut findings = Vec::new();
    for region in 0..survey.required.len() {
        let here: Vec<&Reading> = of_region(design, Some(region)).collect();
        findings.extend(as_left(unit_of_job, design, survey, region, &here));
        findings.extend(covered(unit_of_job, survey, design, region, &here));
    }
    findings.extend(where_nothing_is_required(survey, design));
    let repairs = design.repairs.iter().enumerate();
    findings.extend(repairs.filter_map(|(i, repair)| sound_outside(written, design, (i, repair))));
    findings
}

fn of_region(design: &Design, region: Option<usize>) -> impl Iterator<Item = &Reading> {
    design.readings.iter().filter(move |r| r.region == region)
}

/// "2 12.4 mm, 7 12.6 mm": readings by number, as they were read.
fn listed<'a>(readings: impl Iterator<Item = &'a Reading>) -> String {
    let each: Vec<String> = readings
        .map(|r| format!("{} ({})", r.number, r.thickness.as_written()))
        .collect();
    each.join(", ")
}

/// The readings that nothing covers: the one furthest below what is required, or else the one nearest to it.
fn as_left(
    unit_of_job: Unit,
    design: &Design,
    survey: &Survey,
    region: usize,
    here: &[&Reading],
) -> Option<Finding> {
    let required = &survey.required[region];
    let left: Vec<&Reading> = here
        .iter()
        .copied()
        .filter(|r| r.covered.is_none())
        .collect();
    let worst = *left
        .iter()
        .min_by(|a, b| a.thickness.value().total_cmp(&b.thickness.value()))?;
    let low: Vec<&Reading> = left.iter().copied().filter(|r| r.short.is_some()).collect();
    let unit = Unit::as_written(worst.thickness.as_written());
    let as_read = match unit == unit_of_job {
        true => String::new(),
        false => format!(" ({})", worst.thickness.as_written()),
    };
    let place = format!("{}, reading {}{as_read}", required.region, worst.number);
    let finding = RULE
        .finding_of_works(&required.origin, place)
        .at_least_length(required.thickness.value(), worst.thickness.value(), unit);
    let said = match low.len() {
        0 => format!("the least of {} that stay as they are", count(left.len())),
        _ => format!(
            "below and covered by no repair: {}",
            listed(low.iter().copied())
        ),
    };
    let finding = finding.because(said).work(format!(
        "reading {} {}, required {}",
        worst.number,
        worst.thickness.as_written(),
        required.thickness.as_written()
    ));
    Some(match (low.is_empty(), worst.nearest_weld) {
        (false, Some((repair, away))) => finding.also(format!(
            "reading {} lies {} from the weld of {}",
            worst.number,
            unit_of_job.text(away),
            design.repairs[repair].name
        )),
        _ => finding,
    })
}

fn count(readings: usize) -> String {
    match readings {
        1 => "1 reading".into(),
        many => format!("{many} readings"),
    }
}

/// The readings below what is required whose place new metal takes, repair by repair.
fn covered(
    unit_of_job: Unit,
    survey: &Survey,
    design: &Design,
    region: usize,
    here: &[&Reading],
) -> Vec<Finding> {
    let required = &survey.required[region];
    let by = |(index, repair): (usize, &Repair)| {
        let low: Vec<(&Reading, Length)> = here
            .iter()
            .filter(|r| r.short.is_some())
            .filter_map(|r| Some((*r, r.covered.filter(|c| c.repair == index)?.inside)))
            .collect();
        let weld = low
            .iter()
            .filter_map(|(r, _)| Some((*r, r.nearest_weld.filter(|w| w.0 == index)?.1)))
            .min_by(|a, b| a.1.total_cmp(&b.1));
        let mut finding = RULE
            .finding_of_works(
                &required.origin,
                format!("{}, within {}", required.region, repair.name),
            )
            .because(format!(
                "{} below {}, in metal that is renewed: {}",
                count(low.len()),
                required.thickness.as_written(),
                listed(low.iter().map(|(r, _)| *r))
            ));
        if let Some((reading, away)) = weld {
            finding = finding.also(format!(
                "nearest to the weld is {}, {}",
                reading.number,
                unit_of_job.text(away)
            ));
        }
        (!low.is_empty()).then_some(finding)
    };
    design.repairs.iter().enumerate().filter_map(by).collect()
}

/// Readings to which no region comes.
fn where_nothing_is_required(survey: &Survey, design: &Design) -> Option<Finding> {
    let bare: Vec<&Reading> = of_region(design, None).collect();
    let why = match (bare.is_empty(), survey.required.is_empty()) {
        (true, _) => return None,
        (false, true) => "`survey.required` is not given",
        (false, false) => "no region of `survey.required` holds them",
    };
    let place = format!("readings {}", listed(bare.into_iter()));
    Some(RULE.finding(place).not_judged(why))
}

/// The sound reading nearest outside a piece let in: the weld is to land on metal like it.
fn sound_outside(
    written: &Written,
    design: &Design,
    (index, repair): (usize, &Repair),
) -> Option<Finding> {
    repair.renews.as_ref()?;
    let sound = design
        .readings
        .iter()
        .filter(|r| r.covered.is_none() && r.required.is_some() && r.short.is_none());
    let (reading, away) = sound
        .filter_map(|r| Some((r, r.nearest_weld.filter(|w| w.0 == index)?.1)))
        .min_by(|a, b| a.1.total_cmp(&b.1))?;
    let finding = RULE.finding_by(
        &source::GEOMETRY,
        format!("outside {}, reading {}", repair.name, reading.number),
    );
    Some(
        finding
            .provides_length(away, Unit::of_job(written))
            .because(format!(
                "from the weld to the nearest sound reading outside it, {}; sound metal is to be proved on cutting",
                reading.thickness.as_written()
            )),
    )
}
