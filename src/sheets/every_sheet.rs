//! Every sheet of every shipped spec, looked over by the audit.

use super::audit::audit;
use super::sample_jobs::{jobs, with_set};
use super::{boards, finish};

/// No lettering lies over other lettering or a line, none is too low, and nothing lies off the paper.
#[test]
fn holds_no_sheet_of_any_spec_has_a_defect() {
    let mut found = Vec::new();
    for job in jobs() {
        with_set(&job, |set| {
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
    assert!(found.is_empty(), "{}", found.join("\n"));
}
