//! Every sheet of every spec in `specs/`, on every paper, looked over by the audit.

use std::path::PathBuf;

use super::audit::audit;
use super::draw_sheets;
use crate::checks::run_checks;
use crate::cut::cut_parts;
use crate::design::set_out;
use crate::spec::{Paper, Spec, read_spec_file};

fn specs() -> Vec<Spec> {
    let mut files: Vec<PathBuf> = std::fs::read_dir("specs")
        .expect("the folder of specs")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|e| e == "yaml"))
        .collect();
    files.sort();
    files
        .iter()
        .map(|file| read_spec_file(file).unwrap_or_else(|faults| panic!("{faults}")))
        .collect()
}

/// What the audit finds on the sheets of a spec, a line each.
fn defects_of(spec: &Spec) -> Vec<String> {
    let design = set_out(spec).unwrap_or_else(|faults| panic!("{}: {faults:#?}", spec.file));
    let parts =
        cut_parts(spec, &design).unwrap_or_else(|faults| panic!("{}: {faults:#?}", spec.file));
    let findings = run_checks(spec, &design);
    let paper = spec.written.sheets.paper;
    let mut found = Vec::new();
    for sheet in draw_sheets(spec, &design, &findings, &parts) {
        for defect in audit(&sheet) {
            found.push(format!(
                "{} on {paper:?}, sheet {} {}: {defect}",
                spec.file, sheet.number, sheet.name
            ));
        }
    }
    found
}

fn no_defects_on(paper: Option<Paper>, templates: bool) {
    let mut found = Vec::new();
    for mut spec in specs() {
        if let Some(paper) = paper {
            spec.written.sheets.paper = paper;
        }
        spec.written.sheets.templates |= templates;
        found.extend(defects_of(&spec));
    }
    assert!(
        found.is_empty(),
        "{} defects\n{}",
        found.len(),
        found.join("\n")
    );
}

#[test]
fn holds_no_defect_on_any_sheet_as_written() {
    no_defects_on(None, false);
}
