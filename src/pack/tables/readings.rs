//! `tables/readings.csv`: every thickness reading as found, with what is required there and what covers it.

use super::{mm, nearest_64th, size, size_or_blank, table};
use crate::design::{Design, Reading};
use crate::pack::PackFile;
use crate::spec::{Spec, Survey};
use crate::units::Length;

const HEAD: &[&str] = &[
    "reading",
    "x_mm",
    "y_mm",
    "x_nearest_64th",
    "x_over_in",
    "y_nearest_64th",
    "y_over_in",
    "thickness",
    "thickness_mm",
    "region",
    "required",
    "required_mm",
    "below_by_mm",
    "covered_by",
    "inside_it_mm",
    "nearest_weld",
    "to_weld_mm",
    "to_end_of_flat_mm",
    "face",
    "instrument",
    "date",
    "by",
];

/// The table; none where the spec holds no survey.
pub(super) fn readings(spec: &Spec, design: &Design) -> Option<PackFile> {
    let survey = spec.written.survey.as_ref()?;
    let rows = design.readings.iter().map(|r| row(survey, design, r));
    Some(table(spec, "tables/readings.csv", HEAD, rows.collect()))
}

fn row(survey: &Survey, design: &Design, reading: &Reading) -> Vec<String> {
    let (x, y) = (Length::mm(reading.at.x), Length::mm(reading.at.y));
    let name = |repair: usize| design.repairs[repair].name.clone();
    let or_blank = |length: Option<Length>| length.map(mm).unwrap_or_default();
    let mut row = vec![reading.number.to_string(), mm(x), mm(y)];
    row.extend(nearest_64th(x));
    row.extend(nearest_64th(y));
    row.extend(size(&reading.thickness));
    let region = reading
        .region
        .map(|region| survey.required[region].region.clone());
    row.push(region.unwrap_or_default());
    row.extend(size_or_blank(reading.required.as_ref()));
    row.push(or_blank(reading.short));
    row.push(reading.covered.map(|c| name(c.repair)).unwrap_or_default());
    row.push(or_blank(reading.covered.map(|c| c.inside)));
    row.push(reading.nearest_weld.map(|w| name(w.0)).unwrap_or_default());
    row.push(or_blank(reading.nearest_weld.map(|w| w.1)));
    row.push(or_blank(reading.to_end_of_flat));
    row.push(
        reading
            .face
            .map(|face| face.name().to_string())
            .unwrap_or_default(),
    );
    row.push(reading.instrument.clone());
    row.push(survey.date.clone());
    row.push(survey.by.clone().unwrap_or_default());
    row
}
