//! The title block (ISO 7200), 180 mm wide, with the revision table that stands on it.

use super::at;
use super::board::{Board, PaperBox};
use super::furniture::FOOT;
use super::letter_size::{LABEL, fitting_height};
use super::paper_size::{frame, paper_name};
use super::set::Set;
use super::{Hang, Pen};
use crate::spec::Spec;

/// Width of the identification block, mm (ISO 7200: 180 at most).
pub const WIDTH: f64 = 180.0;

/// Between the tails of the last line of a field and its rule, mm.
const CLEAR: f64 = 0.4;

/// Height of a row of the revision table, in which somebody signs, mm.
const SIGNED: f64 = 7.0;

/// What a print is worth.
const UNCONTROLLED: &str = "UNCONTROLLED WHEN PRINTED UNLESS STAMPED";

/// Which sheet of how many, and what it shows.
#[derive(Clone, Copy, Debug)]
pub struct SheetPlace<'a> {
    /// Number in the set, from 1.
    pub number: usize,
    /// How many sheets the set has.
    pub of: usize,
    /// What this sheet shows.
    pub title: &'a str,
}

/// A field: label above, value below, in a ruled box.
pub struct Field<'a> {
    /// Small label.
    pub label: &'a str,
    /// What stands in it; empty where somebody is to write there.
    pub value: &'a str,
    /// Height of the value where it fits, mm.
    pub height: f64,
    /// Whether it is bold.
    pub bold: bool,
}

/// Puts a field into its box, the value as large as fits.
pub fn put_field(board: &mut Board, b: PaperBox, field: &Field<'_>) {
    board.ruled_box(b, Pen::Narrow);
    board.text(
        at(b.left + 1.2, b.top + 0.9 + LABEL),
        field.label,
        LABEL,
        Hang::Start,
    );
    let room = b.width() - 2.4;
    let height = fitting_height(field.value, room, field.height, field.bold);
    let lines = super::letter_size::wrap(field.value, room + 0.01, height, field.bold);
    let below_label = b.top + 1.5 + LABEL;
    if lines.len() > 1 {
        let height = height
            .min((b.bottom - below_label) / (lines.len() as f64 * 1.5))
            .max(LABEL);
        let last = lines.last().map_or("", String::as_str);
        let (_, fall) = super::text_box::rise_and_fall(last, height);
        let clear = (fall + CLEAR).max(0.9);
        for (i, line) in lines.iter().enumerate() {
            let base = b.bottom - clear - height * 1.45 * (lines.len() - 1 - i) as f64;
            board.lettering(
                at(b.left + 1.2, base),
                line,
                height,
                Hang::Start,
                0.0,
                field.bold,
            );
        }
    } else {
        let (rise, fall) = super::text_box::rise_and_fall(field.value, height);
        let base = (below_label + b.bottom + rise - fall) / 2.0;
        board.lettering(
            at(b.left + 1.2, base),
            field.value,
            height,
            Hang::Start,
            0.0,
            field.bold,
        );
    }
}

/// Puts the identification block in the bottom right corner.
pub fn put_title_block(board: &mut Board, set: &Set<'_>, place: SheetPlace<'_>) {
    let f = frame(board.paper);
    let job = &set.spec.written.job;
    let kind = set.spec.written.plate.kind.name();
    let title = job.title.as_deref().unwrap_or(kind);
    let kept = if set.design.kept { ", kept" } else { "" };
    let title = set.titled(&format!("{title}{kept}")).to_uppercase();
    let (state, worth, state_height) = match set.made {
        None => ("WORKING DRAWING", UNCONTROLLED, 2.5),
        // The record from which the sheets come, beside the spec's fingerprint among the particulars.
        Some(made) => ("RECORD FINGERPRINT", made.record.short_sha256(), 3.5),
    };
    let sheet = format!("{} of {}", place.number, place.of);
    let sheet_title = place.title.to_uppercase();
    let size = paper_name(board.paper);
    let drawn = job.drawn_by.clone().unwrap_or_default();
    let field = |label, value, height, bold| Field {
        label,
        value,
        height,
        bold,
    };
    let left = f.right - WIDTH;
    let top = f.bottom - FOOT;
    let rows: [(f64, Vec<(f64, Field<'_>)>); 3] = [
        (
            11.0,
            vec![
                (58.0, field("LEGAL OWNER", &job.works, 3.5, true)),
                (74.0, field("TITLE", &title, 5.0, true)),
                (48.0, field(state, worth, state_height, false)),
            ],
        ),
        (
            11.0,
            vec![
                (58.0, field("ENGINE OR BOILER", &job.engine, 4.3, true)),
                (74.0, field("SHEET SHOWS", &sheet_title, 3.5, true)),
                (48.0, field("DATE OF ISSUE", &job.issued, 3.0, false)),
            ],
        ),
        (
            14.0,
            vec![
                (29.0, field("DRAWN", &drawn, 3.0, false)),
                (29.0, field("CHECKED", "", 3.0, false)),
                (70.0, field("DRAWING NUMBER", &job.drawing, 7.0, true)),
                (14.0, field("REV.", &job.revision, 7.0, true)),
                (25.0, field("SHEET", &sheet, 5.0, true)),
                (13.0, field("SIZE", size, 5.0, false)),
            ],
        ),
    ];
    let mut y = top;
    for (high, fields) in &rows {
        let mut x = left;
        for (wide, one) in fields {
            put_field(board, PaperBox::new(x, y, x + wide, y + high), one);
            x += wide;
        }
        y += high;
    }
    board.rule(at(left, top), at(f.right, top), Pen::Frame);
    board.rule(at(left, top), at(left, f.bottom), Pen::Frame);
}

/// The revision table as wide as the title block, newest issue uppermost.
pub fn revision_table(spec: &Spec) -> super::table::Table {
    let mut table = super::table::Table::new(
        "",
        &[
            ("REV.", 19.0, Hang::Middle),
            ("DATE", 50.0, Hang::Start),
            ("CHANGE", 67.0, Hang::Start),
            ("SIGNED", 44.0, Hang::Start),
        ],
    );
    table.least_row = SIGNED;
    let job = &spec.written.job;
    for r in job.revisions.iter().rev() {
        table.rows.push(vec![
            r.index.clone(),
            r.date.clone(),
            r.change.clone(),
            String::new(),
        ]);
    }
    if job.revisions.is_empty() {
        table.rows.push(vec![
            job.revision.clone(),
            job.issued.clone(),
            "none recorded".into(),
            String::new(),
        ]);
    }
    table
}
