//! `record/inspection.csv`: the record that is filled in at the plate and read back.
//!
//! The head rows say which drawing it belongs to; the filled-in figures are in millimetres. Nothing is filled in here.

use super::PackFile;
use super::tables::mm;
use crate::design::Design;
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
    let mut writer = csv::WriterBuilder::new()
        .flexible(true)
        .from_writer(Vec::new());
    let in_memory = "a record in memory takes rows of any length";
    let mut write = |row: &[String]| writer.write_record(row).expect(in_memory);
    let head: [(&str, &str); 8] = [
        ("drawing", &job.drawing),
        ("revision", &job.revision),
        ("fingerprint", spec.short_fingerprint()),
        ("works", &job.works),
        ("engine", &job.engine),
        ("view from", design.view_from.name()),
        ("instrument", ""),
        ("witness", ""),
    ];
    for (name, value) in head {
        write(&[name.to_string(), value.to_string()]);
    }
    write(&COLUMNS.map(str::to_string));
    for hole in &design.holes {
        let group = &design.groups[hole.group];
        write(&blank_row([
            hole.id.clone(),
            group.name.clone(),
            mm(Length::mm(hole.at.x)),
            mm(Length::mm(hole.at.y)),
            mm(hole.finish.value()),
        ]));
    }
    if let Some(line) = &design.rivets {
        for rivet in &line.rivets {
            write(&blank_row([
                rivet.id.clone(),
                format!("rivet hole, {}", rivet.made.name()),
                String::new(),
                String::new(),
                mm(line.hole.value()),
            ]));
        }
    }
    PackFile::new(
        "record/inspection.csv",
        writer.into_inner().expect(in_memory),
    )
}

/// What was designed, and a blank in every other column.
fn blank_row(designed: [String; 5]) -> Vec<String> {
    let mut row = designed.to_vec();
    row.resize(COLUMNS.len(), String::new());
    row
}
