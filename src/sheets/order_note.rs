//! The order note as the contractor prints it: its lines, then one page with a picture of every part.

use super::as_cut::{cut_box, put_letters, put_shape};
use super::board::{Board, PaperBox};
use super::cut_sizes::{Across, Reads, put_cut_sizes, rows_below};
use super::dimension::{FIRST_ROW, NEXT_ROW};
use super::letter_size::{NOTES, wrap};
use super::note::{PAPER, note_foot, pages_of};
use super::view::View;
use super::{Hang, Sheet, at};
use crate::cut::{Between, CutPart, PartKind, long_sizes};
use crate::units::print::trimmed;

/// Clear on the left, for the binder, and on the other edges, mm.
const LEFT: f64 = 20.0;
const EDGE: f64 = 12.0;
/// Share of the page that the first of several parts takes.
const MAIN_SHARE: f64 = 0.55;
/// Kept for dimensions of a part, mm: left, above, right.
const AROUND: (f64, f64, f64) = (16.0, 8.0, 8.0);
/// Least height of a picture, mm: however many there are, each can be told from the others.
const LEAST: f64 = 3.0;
/// From the lowest dimension to the first line of the title, mm.
const TITLE_GAP: f64 = 7.5;
/// From line to line of the title, as a share of its height.
const TITLE_PITCH: f64 = 1.5;

/// Every page of the note, the picture of the parts last.
pub fn order_note_pages(title: &str, lines: &[String], parts: &[CutPart]) -> Vec<Sheet> {
    let of = pages_of(lines).len() + usize::from(!parts.is_empty());
    let mut pages = super::note::note_pages(title, lines, of);
    if !parts.is_empty() {
        pages.push(pictures(title, parts, of));
    }
    pages
}

fn pictures(title: &str, parts: &[CutPart], number: usize) -> Sheet {
    let page = PaperBox::new(LEFT, EDGE, PAPER.0 - EDGE, PAPER.1 - 2.0 * EDGE);
    let mut board = Board::new("order-note", title, page);
    for (part, room) in parts.iter().zip(rooms(&page, parts.len())) {
        picture(&mut board, part, &room);
    }
    let mut marks = board.marks;
    marks.push(note_foot(title, number, number));
    Sheet {
        number,
        name: "order-note".into(),
        title: title.into(),
        width: PAPER.0,
        height: PAPER.1,
        marks,
    }
}

/// A place for every part: the first across the top, the others two in a row under it.
fn rooms(page: &PaperBox, count: usize) -> Vec<PaperBox> {
    if count == 1 {
        return vec![*page];
    }
    let foot = page.top + MAIN_SHARE * page.height();
    let mut rooms = vec![PaperBox::new(page.left, page.top, page.right, foot)];
    let others = count - 1;
    let across = others.min(2);
    let rows = others.div_ceil(across);
    let (wide, high) = (
        page.width() / across as f64,
        (page.bottom - foot) / rows as f64,
    );
    for i in 0..others {
        let (left, top) = (
            page.left + wide * (i % across) as f64,
            foot + high * (i / across) as f64,
        );
        rooms.push(PaperBox::new(left, top, left + wide, top + high));
    }
    rooms
}

/// One part with its key sizes, how many are wanted, how it lies and what is cut of it.
fn picture(board: &mut Board, part: &CutPart, room: &PaperBox) {
    let b = cut_box(part);
    let (left, above, right) = AROUND;
    // A second row of sizes below a part goes with one more on its left.
    let rows = NEXT_ROW * (rows_below(part) - 1) as f64;
    let left = left + rows;
    let titles = title_lines(part, room.width() - 4.0);
    let below = FIRST_ROW + rows + TITLE_GAP + TITLE_PITCH * NOTES * titles.len() as f64;
    let free = (
        room.width() - left - right,
        (room.height() - above - below).max(LEAST),
    );
    // A picture fills its room: nobody measures it, and the file beside it is at true size.
    let f = (free.0 / b.width()).min(free.1 / b.height()).min(1.0);
    let spare = (free.0 - b.width() * f) / 2.0;
    let view = View {
        scale: f,
        centre: at(
            room.left + left + spare - b.left * f,
            room.top + above + b.top * f,
        ),
    };
    for (layer, shape) in &part.shapes {
        put_shape(board, &view, *layer, shape);
    }
    put_letters(board, part, &view);
    let paper = view.paper_box(&b);
    put_cut_sizes(board, part, &view, Reads::Millimetres, Across::Below);
    if part.has_top() {
        board.bold(
            at(view.centre.x, paper.top - 1.2),
            "TOP",
            NOTES,
            Hang::Middle,
        );
    }
    let mut y = paper.bottom + FIRST_ROW + rows + TITLE_GAP;
    for (line, is_name) in titles {
        let place = at(room.middle().x, y);
        match is_name {
            true => board.bold(place, &line, NOTES, Hang::Middle),
            false => board.text(place, &line, NOTES, Hang::Middle),
        };
        y += TITLE_PITCH * NOTES;
    }
}

/// What stands under the picture, broken to a width, each line with whether it is of the part's name.
fn title_lines(part: &CutPart, width: f64) -> Vec<(String, bool)> {
    let paragraphs = titles(part).into_iter().enumerate();
    paragraphs
        .flat_map(|(i, words)| {
            let lines = wrap(&words, width, NOTES, i == 0).into_iter();
            lines.map(move |line| (line, i == 0))
        })
        .collect()
}

fn titles(part: &CutPart) -> Vec<String> {
    let thickness = match &part.thickness {
        Some(size) => format!("{} mm thick", trimmed(size.value().to_mm(), 2)),
        None => "thickness not stated".into(),
    };
    let cut: usize = part.holes_cut.iter().map(|holes| holes.ids.len()).sum();
    let uncut: usize = part.withheld.iter().map(|holes| holes.ids.len()).sum();
    let mass = part.mass_words();
    let mass = mass.map_or(String::new(), |words| format!(", {words} each"));
    let mut titles = vec![
        format!(
            "{}, {} OFF, NOT TO SCALE, MILLIMETRES",
            part.name.to_uppercase(),
            part.number_off
        ),
        part.lies.replace(" DEGREES", "°"),
        format!("{thickness}, {}{mass}", holes_words(cut, uncut)),
    ];
    // The plate's picture is the large one, with room for what is measured across it.
    let checked = long_sizes(part).into_iter();
    let is_plate = part.kind == PartKind::Plate;
    let between_places =
        checked.filter(|size| is_plate && matches!(size.between, Between::Places | Between::Pops));
    titles.extend(between_places.map(|size| format!("{}: {}", size.words, trimmed(size.mm, 2))));
    titles
}

fn holes_words(cut: usize, uncut: usize) -> String {
    let holes = |count: usize| match count {
        0 => "no hole".to_string(),
        1 => "1 hole".to_string(),
        n => format!("{n} holes"),
    };
    match uncut {
        0 => format!("{} cut", holes(cut)),
        _ => format!("{} cut, {} not cut: see the note", holes(cut), holes(uncut)),
    }
}
