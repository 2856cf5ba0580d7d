//! Every sheet of every shipped spec, looked over by the audit.

use super::audit::audit;
use super::sample_jobs::{jobs, with_changed_set};
use super::{boards, finish};
use crate::spec::{Paper, Spec};

/// What the audit finds on every sheet of every spec, something in it written otherwise.
fn defects(change: impl Fn(&mut Spec) + Copy) -> String {
    let mut found = Vec::new();
    for job in jobs() {
        with_changed_set(&job, change, |set| {
            for sheet in finish(set, boards(set)) {
                let (number, name) = (sheet.number, &sheet.name);
                found.extend(
                    audit(&sheet)
                        .iter()
                        .map(|defect| format!("{job}, sheet {number} {name}: {defect}")),
                );
            }
        });
    }
    found.join("\n")
}

/// No lettering lies over other lettering or a line, none is too low, and nothing lies off the paper.
#[test]
fn holds_no_sheet_of_any_spec_has_a_defect() {
    let found = defects(|_| {});
    assert!(found.is_empty(), "{found}");
}

#[test]
fn holds_no_tile_of_a_template_has_a_defect() {
    let found = defects(|spec| spec.written.sheets.templates = true);
    assert!(found.is_empty(), "{found}");
}

#[test]
fn holds_no_sheet_on_larger_paper_has_a_defect() {
    let found: Vec<String> = [Paper::A2, Paper::A1, Paper::A0]
        .into_iter()
        .map(|paper| (paper, defects(|spec| spec.written.sheets.paper = paper)))
        .filter(|(_, found)| !found.is_empty())
        .map(|(paper, found)| format!("{paper:?}: {found}"))
        .collect();
    assert!(found.is_empty(), "{}", found.join("\n"));
}
