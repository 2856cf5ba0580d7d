//! The lines that whoever measured and whoever watched sign: at the end of every record.

use super::Hang;
use super::table::Table;

/// Lines are high enough for a signature, mm.
const SIGNATURE: f64 = 10.0;

/// Who measured and who watched, with what, and when; nothing is filled in.
pub fn signed_table() -> Table {
    signed_by(&["measured by", "witness"])
}

/// A line for each of these people; nothing is filled in.
pub fn signed_by(people: &[&str]) -> Table {
    let mut table = Table::new(
        "SIGNED",
        &[
            ("", 28.0, Hang::Start),
            ("NAME", 38.0, Hang::Middle),
            ("SIGNATURE", 48.0, Hang::Middle),
            ("INSTRUMENT NO.", 36.0, Hang::Middle),
            ("DATE", 24.0, Hang::Middle),
        ],
    );
    table.least_row = SIGNATURE;
    for who in people {
        table.row(vec![(*who).into()]);
    }
    table
}
