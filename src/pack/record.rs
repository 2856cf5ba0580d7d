//! `record/inspection.csv`: the record that is filled in at the plate and read back.
//!
//! The head rows say which drawing it belongs to; the filled-in figures are in millimetres. Nothing is filled in here.

mod filled;

pub use filled::{RecordFault, read_record};

use super::PackFile;
use super::csv_file::csv_file;
use super::tables::mm;
use crate::design::{Design, Hole, RivetLine};
use crate::spec::Spec;
use crate::units::Length;

/// Columns of the record: what was designed, then the blanks.
pub const COLUMNS: [&str; 13] = [
    "item",
    "what",
    "x_mm",
    "y_mm",
    "designed_mm",
    "as_found_mm",
    "made_first_way_mm",
    "made_across_it_mm",
    "made_x_mm",
    "made_y_mm",
    "remarks",
    "by",
    "date",
];

/// The blank record of a plate: a row a hole, a row a rivet hole.
pub fn inspection_record(spec: &Spec, design: &Design) -> PackFile {
    let job = &spec.written.job;
    let head = [
        ("drawing", job.drawing.as_str()),
        ("revision", &job.revision),
        ("fingerprint", spec.short_fingerprint()),
        ("works", &job.works),
        ("engine", &job.engine),
        ("view from", design.view_from.name()),
        ("instrument", ""),
        ("witness", ""),
    ];
    let head = head.map(|(name, value)| vec![name.to_string(), value.to_string()]);
    let columns = COLUMNS.map(str::to_string).to_vec();
    let rows = head
        .into_iter()
        .chain([columns])
        .chain(design.holes.iter().map(|hole| hole_row(design, hole)))
        .chain(design.rivets.iter().flat_map(rivet_rows));
    csv_file("record/inspection.csv", rows)
}

fn hole_row(design: &Design, hole: &Hole) -> Vec<String> {
    blank_row([
        hole.id.clone(),
        design.groups[hole.group].name.clone(),
        mm(Length::mm(hole.at.x)),
        mm(Length::mm(hole.at.y)),
        mm(hole.finish.value()),
    ])
}

fn rivet_rows(line: &RivetLine) -> impl Iterator<Item = Vec<String>> {
    line.rivets.iter().map(|rivet| {
        blank_row([
            rivet.id.clone(),
            match &line.rows {
                Some(_) => format!("rivet hole, row {}, {}", rivet.row, rivet.made.name()),
                None => format!("rivet hole, {}", rivet.made.name()),
            },
            String::new(),
            String::new(),
            mm(line.hole.value()),
        ])
    })
}

/// What was designed, and a blank in every other column.
fn blank_row(designed: [String; 5]) -> Vec<String> {
    let mut row = designed.to_vec();
    row.resize(COLUMNS.len(), String::new());
    row
}
