//! Whether the paper asked for holds the sheets: refused before anything is written where lettering would run into lines.

use super::Sheet;
use super::audit::audit;
use super::paper_size::paper_name;
use super::templates::{MOST_TILES, tiles};
use crate::design::Design;
use crate::spec::{Fault, Paper, Spec};

/// A fault where a plate is too large for A4, and where its template takes more tiles than anybody lays out.
pub fn faults_of_paper(spec: &Spec, design: &Design, sheets: &[Sheet]) -> Vec<Fault> {
    let wishes = &spec.written.sheets;
    let mut faults = Vec::new();
    if wishes.paper == Paper::A4 {
        faults.extend(too_large_for_a4(sheets));
    }
    let (across, down) = tiles(spec, design);
    if wishes.templates && across * down > MOST_TILES {
        faults.push(Fault::new(
            "sheets.templates",
            format!(
                "a template of this plate takes {across} × {down} = {} tiles of {}, more than {MOST_TILES}",
                across * down,
                paper_name(wishes.paper)
            ),
            match wishes.paper {
                Paper::A0 => "leave the templates out",
                Paper::A4 | Paper::A3 | Paper::A2 | Paper::A1 => {
                    "write larger paper at `sheets.paper`, or leave the templates out"
                }
            },
        ));
    }
    faults
}

/// A4 is small for a boiler plate: whether this one can be read on it is seen from the sheets as they are drawn.
fn too_large_for_a4(sheets: &[Sheet]) -> Option<Fault> {
    let unread: Vec<String> = sheets
        .iter()
        .filter(|sheet| !audit(sheet).is_empty())
        .map(|sheet| format!("{} ({})", sheet.number, sheet.title))
        .collect();
    if unread.is_empty() {
        return None;
    }
    let many = if unread.len() == 1 { "sheet" } else { "sheets" };
    Some(Fault::new(
        "sheets.paper",
        format!(
            "on A4 this plate is drawn so small that lettering runs into lines on {many} {}",
            unread.join(", ")
        ),
        "write A3, or larger paper, at `sheets.paper`",
    ))
}

#[cfg(test)]
mod tests {
    use super::super::draw_sheets;
    use super::super::sample_jobs::{jobs, with_changed_set};
    use super::*;
    use crate::units::MM_PER_INCH;

    /// Plates of 36 in and more across cannot be lettered on A4, and the fault names the key, the sheets and the paper to take.
    #[test]
    fn refuses_a_large_plate_on_a4() {
        for job in jobs() {
            let a4 = |spec: &mut Spec| spec.written.sheets.paper = Paper::A4;
            with_changed_set(&job, a4, |set| {
                let sheets = draw_sheets(set.spec, set.design, set.findings, set.parts);
                let faults = faults_of_paper(set.spec, set.design, &sheets);
                assert_eq!(faults.len(), 1, "{job}");
                assert_eq!(faults[0].path, "sheets.paper");
                // A plate under 38 in across has a general arrangement that can be read, and other sheets that cannot.
                let across = set.design.edge.bounds().1.x / MM_PER_INCH * 2.0;
                let general = faults[0].fact.contains("1 (General arrangement)");
                assert!(general || across < 38.0, "{}", faults[0].fact);
                assert!(faults[0].remedy.contains("A3"));
            });
        }
    }

    /// The same plates on the paper of their specs are refused nothing.
    #[test]
    fn holds_every_spec_fits_its_own_paper() {
        for job in jobs() {
            with_changed_set(
                &job,
                |_| {},
                |set| {
                    let sheets = draw_sheets(set.spec, set.design, set.findings, set.parts);
                    assert_eq!(faults_of_paper(set.spec, set.design, &sheets), [], "{job}");
                },
            );
        }
    }
}
