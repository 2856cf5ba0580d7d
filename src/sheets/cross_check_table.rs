//! The table of long lengths that are measured before anything is popped deep, with blanks for what is found.

use super::Hang;
use super::beginning::Beginning;
use super::marking_tables::long_length;
use super::set::Set;
use super::table::Table;
use crate::design::cross_checks;

/// Expected lengths, and blanks for the actual length, the difference and initials.
pub fn cross_check_table(set: &Set<'_>) -> Table {
    let before = match Beginning::of_plate(set).pops() {
        0 => "CROSS-CHECKS BEFORE ANY HOLE IS OPENED",
        _ => "CROSS-CHECKS BEFORE POPPING DEEP",
    };
    let mut table = Table::new(
        before,
        &[
            ("NO.", 8.0, Hang::Middle),
            ("FROM–TO", 24.0, Hang::Start),
            ("LENGTH", 48.0, Hang::Start),
            ("EXPECTED", 34.0, Hang::End),
            ("ACTUAL", 22.0, Hang::Middle),
            ("DIFF.", 16.0, Hang::Middle),
            ("BY", 12.0, Hang::Middle),
        ],
    )
    .filled_in();
    for (i, check) in cross_checks(set.design, set.spec.written.barrel.as_ref())
        .iter()
        .enumerate()
    {
        table.row(vec![
            (i + 1).to_string(),
            format!("{}–{}", check.ids.0, check.ids.1),
            check.what.clone(),
            long_length(set, check.length),
        ]);
    }
    table.row(vec![
        String::new(),
        String::new(),
        "difference allowed by the works:".into(),
        "………………".into(),
    ]);
    table
}
