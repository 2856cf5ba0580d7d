//! The table of points at which work stops until somebody has signed.

use super::Hang;
use super::set::Set;
use super::table::Table;

/// Where the spec writes no hold point, these are proposed (common practice, no source).
const PROPOSED: [&str; 10] = [
    "material in",
    "design stamped",
    "after forming or welding, and tests",
    "count of the marking-out",
    "trial fit, before final drilling",
    "holes finished",
    "before closing rivets",
    "before tubes",
    "hydraulic test",
    "steam test",
];

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
        table.title = "HOLD POINTS PROPOSED: NONE IS WRITTEN; THE INSPECTING BODY DECIDES".into();
        for (i, point) in PROPOSED.iter().enumerate() {
            table.row(vec![(i + 1).to_string(), (*point).into()]);
        }
    }
    table
}
