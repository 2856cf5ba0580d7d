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

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::design::set_out;
    use crate::spec::read_spec_file;

    fn file(name: &str) -> Option<String> {
        let path = Path::new("specs").join(format!("{name}-smokebox.yaml"));
        let spec = read_spec_file(&path).unwrap_or_else(|faults| panic!("{faults}"));
        let design = set_out(&spec).unwrap_or_else(|faults| panic!("{faults:?}"));
        let file = readings(&spec, &design)?;
        Some(String::from_utf8(file.bytes.clone()).expect("words"))
    }

    /// Reading 7 at (−7.4, −13.9) in is 12.6 of 12.7 mm, 1.553 in (39.45 mm) inside the piece let in; reading 14 is covered by nothing
    /// and 19 7/8 in (504.825 mm) from the weld. A plate that was not surveyed has no such table.
    #[test]
    fn by_hand_rows_of_gritstone() {
        let text = file("gritstone").expect("a survey");
        let rows: Vec<&str> = text.lines().collect();
        assert_eq!(rows.len(), 15);
        let low = "12.6 mm,12.600,flat,12.7 mm,12.700,0.100,bottom patch,39.45";
        assert!(rows[7].starts_with("7,-187.960,-353.060,"), "{}", rows[7]);
        assert!(rows[7].contains(low), "{}", rows[7]);
        let sound = "15.7 mm,15.700,flat,12.7 mm,12.700,,,,bottom patch,504.825,";
        assert!(rows[14].contains(sound), "{}", rows[14]);
        assert!(file("marl-hen").is_none());
    }
}
