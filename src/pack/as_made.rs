//! The folder of a plate as it was made: its sheets, its deviations as a table, its results, and the record from which they come.

use super::csv_file::csv_file;
use super::manifest::listing;
use super::results::results_as_made;
use super::sheet_files::as_made_sheet_files;
use super::tables::mm;
use super::{NotDrawn, PackFile, folder_name};
use crate::checks::{CheckedAgain, effect_words};
use crate::design::{Deviation, Point};
use crate::sheets::{AsMade, Sheet};
use crate::spec::Spec;
use crate::units::Length;

/// The record as it was read, byte for byte.
const RECORD: &str = "record/as-read.csv";

/// Its folder, beside the pack's own: `MH-TP1-A-as-made`.
pub fn as_made_folder_name(spec: &Spec) -> String {
    format!("{}-as-made", folder_name(spec))
}

/// Every file of the folder, the manifest among them; nothing is written yet.
pub fn as_made_files(
    spec: &Spec,
    made: &AsMade<'_>,
    checked: &CheckedAgain,
    sheets: &[Sheet],
    record_as_read: &str,
) -> Result<Vec<PackFile>, NotDrawn> {
    let mut files = as_made_sheet_files(spec, sheets)?;
    files.push(deviations(spec, made));
    files.push(results_as_made(spec, checked, made.designed, made.record));
    files.push(PackFile::new(RECORD, record_as_read));
    files.push(listing(spec, Some(&made.record.sha256), &files));
    Ok(files)
}

/// What was designed of a hole, what was made, and what that changes: a row each.
const HEAD: [&str; 19] = [
    "no",
    "item",
    "what",
    "designed_mm",
    "made_mm",
    "over_mm",
    "measured",
    "oval_by_mm",
    "designed_x_mm",
    "designed_y_mm",
    "made_x_mm",
    "made_y_mm",
    "off_x_mm",
    "off_y_mm",
    "off_by_mm",
    "remarks",
    "effect_on_checks",
    "record",
    "fingerprint",
];

fn deviations(spec: &Spec, made: &AsMade<'_>) -> PackFile {
    let head = HEAD.map(str::to_string).to_vec();
    let rows = made.deviations.iter().enumerate().map(|(i, deviation)| {
        let mut row = row(made, i + 1, deviation);
        row.push(made.record.short_sha256().to_string());
        row.push(spec.short_fingerprint().to_string());
        row
    });
    csv_file("deviations.csv", std::iter::once(head).chain(rows))
}

fn row(made: &AsMade<'_>, number: usize, deviation: &Deviation<'_>) -> Vec<String> {
    let length = |length: Option<Length>| length.map(mm).unwrap_or_default();
    let pair = |point: Option<Point>| {
        let part = |of: fn(Point) -> f64| length(point.map(|p| Length::mm(of(p))));
        [part(|p| p.x), part(|p| p.y)]
    };
    let measured = match (deviation.made, deviation.both_ways) {
        (None, _) => "size not measured",
        (Some(_), false) => "one way",
        (Some(_), true) => "both ways",
    };
    let designed = deviation.hole.map(|hole| made.designed.holes[hole].at);
    let effects = deviation.hole.and_then(|hole| made.effects.get(&hole));
    let mut row = vec![
        number.to_string(),
        deviation.id.to_string(),
        deviation.what.to_string(),
        mm(deviation.designed.value()),
        length(deviation.made.map(|size| size.value())),
        length(deviation.over),
        measured.to_string(),
        length(deviation.oval_by),
    ];
    row.extend(pair(designed));
    row.extend(pair(deviation.at));
    row.extend(pair(deviation.off));
    row.push(length(deviation.off.map(|off| Length::mm(off.radius()))));
    row.push(deviation.remark.unwrap_or_default().to_string());
    row.push(
        effects
            .map(|effects| effect_words(effects))
            .unwrap_or_default(),
    );
    row
}
