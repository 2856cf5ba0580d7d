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
        for (i, point) in proposed(set).into_iter().enumerate() {
            table.row(vec![(i + 1).to_string(), point.into()]);
        }
    }
    table
}

/// What is proposed for this job: of a plate that is kept, the points of what is done to it.
fn proposed(set: &Set<'_>) -> Vec<&'static str> {
    let design = set.design;
    if !design.kept {
        return PROPOSED.into();
    }
    let welded = !design.repairs.is_empty();
    let holes = design.holes_made().next().is_some();
    let rivets = design.rivets_made() > 0;
    let tubes = set.spec.written.tubes.iter();
    let points = [
        (welded, "material in"),
        (true, "repair agreed, design stamped"),
        (welded, "cut proved to sound metal"),
        (welded, "after welding, and tests"),
        (holes, "count of the marking-out"),
        (holes || rivets, "holes finished"),
        (rivets, "before closing rivets"),
        (
            tubes.clone().any(|nest| nest.renewed != Some(false)),
            "before tubes",
        ),
        (true, "hydraulic test"),
        (true, "steam test"),
    ];
    let points = points.into_iter().filter(|(wanted, _)| *wanted);
    points.map(|(_, point)| point).collect()
}
