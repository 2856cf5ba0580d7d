//! Tables of the survey: readings at their places, and the thickness required.

use super::Hang;
use super::kept::in_both_units;
use super::set::Set;
use super::survey_marks::{Covering, covering};
use super::table::Table;
use super::weld_numbers::repair_number;
use crate::design::Reading;
use crate::spec::Survey;
use crate::units::Size;

/// Every reading with what is required of it; those that are low and not covered stand out.
pub fn reading_table(set: &Set<'_>, survey: &Survey) -> Table {
    let unit = set.figures.unit_sign();
    let (x, y) = (format!("x, {unit}"), format!("y, {unit}"));
    let weld = format!("NEAREST WELD, {unit}");
    let covered_by = match covering(set) {
        Covering::Pieces => "RENEWED BY",
        Covering::Both => "COVERED OR RENEWED BY",
        Covering::BuildUps => "COVERED BY",
    };
    let mut table = Table::new(
        "THICKNESS AS FOUND",
        &[
            ("NO.", 9.0, Hang::Middle),
            (&x, 16.0, Hang::End),
            (&y, 16.0, Hang::End),
            ("FOUND", 32.0, Hang::End),
            ("REQUIRED", 20.0, Hang::End),
            ("BELOW BY", 19.0, Hang::End),
            (covered_by, 20.0, Hang::Middle),
            (&weld, 22.0, Hang::Start),
        ],
    );
    for reading in &set.design.readings {
        if reading.is_left_low() {
            table.loud.push(table.rows.len());
        }
        table.rows.push(row(set, survey, reading));
    }
    table
}

fn row(set: &Set<'_>, survey: &Survey, reading: &Reading) -> Vec<String> {
    let fig = set.figures;
    let mm = crate::units::Length::mm;
    let covered = reading.covered.map(|c| repair_number(set, c.repair));
    let covered = match (covered, reading.short) {
        (Some(number), _) => number,
        (None, Some(_)) => "NOTHING".into(),
        (None, None) => "–".into(),
    };
    let weld = reading
        .nearest_weld
        .map(|(repair, away)| format!("{} {}", fig.decimal(away), repair_number(set, repair)));
    let below = match (&reading.required, reading.short) {
        (None, _) => "NOT JUDGED".into(),
        (Some(_), None) => "–".into(),
        (Some(required), Some(short)) => in_unit_of(required, short),
    };
    let mut found = in_both_units(set, &reading.thickness);
    let own_face = reading.face.filter(|face| Some(*face) != survey.face);
    if let Some(face) = own_face {
        found = format!("{found}, {} face", face.name());
    }
    if reading.instrument != survey.instrument {
        found = format!("{found}, {}", reading.instrument);
    }
    vec![
        reading.number.to_string(),
        fig.decimal(mm(reading.at.x)),
        fig.decimal(mm(reading.at.y)),
        found,
        reading
            .required
            .as_ref()
            .map_or("–".into(), |r| r.as_written().to_string()),
        below,
        covered,
        weld.unwrap_or("–".into()),
    ]
}

/// A difference in the unit that the requirement was written in.
fn in_unit_of(size: &Size, difference: crate::units::Length) -> String {
    let print = crate::units::print::decimal;
    match size.as_written().ends_with("mm") {
        true => format!("{} mm", print(difference.to_mm(), 2)),
        false => format!("{} in", print(difference.to_inches(), 3)),
    }
}

/// What the works requires, region by region; none where nothing is required.
pub fn required_table(set: &Set<'_>, survey: &Survey) -> Option<Table> {
    let mut table = Table::new(
        "THICKNESS REQUIRED, AS THE WORKS GIVES IT",
        &[
            ("REGION", 34.0, Hang::Start),
            ("THICKNESS", 30.0, Hang::End),
            ("BETWEEN CORNERS", 44.0, Hang::Start),
            ("ORIGIN", 39.0, Hang::Start),
        ],
    );
    let corner = |at: &crate::spec::At| {
        format!(
            "({}, {})",
            set.figures.decimal(at.0.value()),
            set.figures.decimal(at.1.value())
        )
    };
    for region in &survey.required {
        let corners = match (&region.from, &region.to) {
            (Some(from), Some(to)) => format!("{} and {}", corner(from), corner(to)),
            _ if survey.required.len() == 1 => "the whole flat".into(),
            _ => "all the rest of the plate".into(),
        };
        table.rows.push(vec![
            region.region.clone(),
            in_both_units(set, &region.thickness),
            corners,
            region.origin.clone(),
        ]);
    }
    (!table.rows.is_empty()).then_some(table)
}
