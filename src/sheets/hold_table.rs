//! The table of points at which work stops until somebody has signed.

use super::Hang;
use super::set::Set;
use super::table::Table;

/// So many lines stand blank where the spec writes no hold point.
const BLANK_HOLDS: usize = 8;

/// Points at which work stops, with blanks for both signatures.
pub fn hold_table(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "HOLD POINTS: STOP UNTIL SIGNED",
        &[
            ("NO.", 10.0, Hang::Middle),
            ("POINT", 76.0, Hang::Start),
            ("WORKS", 30.0, Hang::Middle),
            ("INSPECTING BODY", 32.0, Hang::Middle),
            ("DATE", 22.0, Hang::Middle),
        ],
    )
    .filled_in();
    let written = &set.spec.written.sheets.hold_points;
    for (i, point) in written.iter().enumerate() {
        table.row(vec![(i + 1).to_string(), point.clone()]);
    }
    if written.is_empty() {
        table.title = "HOLD POINTS: NONE IS WRITTEN; AGREE THEM WITH THE INSPECTING BODY".into();
        for i in 1..=BLANK_HOLDS {
            table.row(vec![i.to_string()]);
        }
    }
    table
}
