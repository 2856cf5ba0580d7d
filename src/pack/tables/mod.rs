//! The tables as CSV, for marking out and for ordering: one row a hole, or one row a line of the order.
//!
//! A co-ordinate stands in millimetres, and in inches as the nearest 64th with what the fraction leaves over, so that
//! nobody steps a rounded figure along a row.

mod holes;
mod readings;
mod rivets;
mod stays;
mod tubes;

use super::PackFile;
use super::csv_file::csv_file;
use crate::design::{Design, Stage};
use crate::spec::Spec;
use crate::units::{Length, Size, print};

/// Every table of the pack. A table of something that the plate has none of holds its head alone; that of thickness readings is
/// there for a plate that was surveyed.
pub fn tables(spec: &Spec, design: &Design) -> Vec<PackFile> {
    let mut tables = vec![
        holes::holes(spec, design),
        rivets::rivets(spec, design),
        stays::stays(spec, design),
        tubes::tubes(spec, design),
    ];
    tables.extend(readings::readings(spec, design));
    tables
}

/// A table as a file: its head, then its rows, each as long as the head; the fingerprint closes every row.
fn table(spec: &Spec, path: &str, head: &[&str], rows: Vec<Vec<String>>) -> PackFile {
    debug_assert!(rows.iter().all(|row| row.len() == head.len()), "{path}");
    let head = head.iter().map(ToString::to_string).collect();
    let closed = |mut row: Vec<String>, last: &str| {
        row.push(last.to_string());
        row
    };
    let rows = rows
        .into_iter()
        .map(|row| closed(row, spec.short_fingerprint()));
    csv_file(
        path,
        std::iter::once(closed(head, "fingerprint")).chain(rows),
    )
}

/// Millimetres to the thousandth.
pub(super) fn mm(length: Length) -> String {
    print::decimal(length.to_mm(), 3)
}

/// The nearest 64th of an inch, and what the length has over it in decimals of an inch, with its sign.
fn nearest_64th(length: Length) -> [String; 2] {
    // With its unit, since a spreadsheet takes a bare 5/8 for a day in August.
    let fraction = format!("{} in", print::inches(length).trim_start_matches('~'));
    let over = print::inch_fraction(length).remainder.to_inches();
    let digits = print::decimal(over, 4);
    let sign = if digits.starts_with('-') || digits == "0.0000" {
        ""
    } else {
        "+"
    };
    [fraction, format!("{sign}{digits}")]
}

/// A size as it was written, and in millimetres.
fn size(size: &Size) -> [String; 2] {
    [size.as_written().to_string(), mm(size.value())]
}

/// A size that the spec may leave out.
fn size_or_blank(given: Option<&Size>) -> [String; 2] {
    given.map(size).unwrap_or_default()
}

/// The stages of a hole in one cell: "pilot 12 mm to drawing; ream 1 27/32 in in place".
fn stages(stages: &[Stage]) -> String {
    let words: Vec<String> = stages
        .iter()
        .map(|stage| match &stage.size {
            Some(size) => format!(
                "{} {} ({})",
                stage.name,
                size.as_written(),
                stage.place.name()
            ),
            None => format!("{} ({})", stage.name, stage.place.name()),
        })
        .collect();
    words.join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 6.484375 in is 6 31/64 exactly; 50 mm is 1.968504 in, and 1 31/32 in is 1.96875 in, so 0.000246 in too much;
    /// -2.1318 in lies 0.0068 below -2 1/8, which is -2.125.
    #[test]
    fn by_hand_nearest_64th_and_what_is_over() {
        assert_eq!(
            nearest_64th(Length::inches(6.484375)),
            ["6 31/64 in", "0.0000"]
        );
        assert_eq!(nearest_64th(Length::mm(50.0)), ["1 31/32 in", "-0.0002"]);
        assert_eq!(
            nearest_64th(Length::inches(-2.1318)),
            ["-2 1/8 in", "-0.0068"]
        );
    }
}
