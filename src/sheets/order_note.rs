//! The order note as the contractor prints it: its lines, then one page with a picture of every part.

use super::as_cut::{cut_box, leftmost_at_top, put_letters, put_shape};
use super::board::{Board, PaperBox};
use super::dimension::{FIRST_ROW, Says, across, upwards};
use super::letter_size::{NOTES, wrap};
use super::note::{PAPER, note_foot, pages_of};
use super::view::View;
use super::{Hang, Sheet, at};
use crate::cut::{CutPart, Layer, PartKind, Shape};
use crate::units::Length;
use crate::units::print::trimmed;

/// Clear on the left, for the binder, and on the other edges, mm.
const LEFT: f64 = 20.0;
const EDGE: f64 = 12.0;
/// Share of the page that the first of several parts takes.
const MAIN_SHARE: f64 = 0.55;
/// Kept for dimensions and title of a part, mm: left, above, right, below.
const AROUND: (f64, f64, f64, f64) = (16.0, 8.0, 8.0, 32.0);

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
    let (left, above, right, below) = AROUND;
    let free = (room.width() - left - right, room.height() - above - below);
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
    let (wide, tall) = (Length::mm(b.width()), Length::mm(b.height()));
    let disc = part
        .shapes
        .iter()
        .any(|(layer, shape)| *layer == Layer::CutOutside && matches!(shape, Shape::Circle { .. }));
    let mm = |length: Length| trimmed(length.to_mm(), 2);
    let width_words = match disc {
        true => format!("⌀{}", mm(wide)),
        false => mm(wide),
    };
    let row = paper.bottom + FIRST_ROW;
    let says = |words, length| Says {
        words,
        length,
        scale: f,
    };
    let middle = if disc { paper.middle().y } else { paper.bottom };
    across(
        board,
        at(paper.left, middle),
        at(paper.right, middle),
        row,
        says(&width_words, wide),
    );
    if !disc {
        let top = view.x(leftmost_at_top(part, &b));
        upwards(
            board,
            at(paper.left, paper.bottom),
            at(top, paper.top),
            paper.left - FIRST_ROW,
            says(&mm(tall), tall),
        );
    }
    if part.kind == PartKind::Plate {
        board.bold(
            at(view.centre.x, paper.top - 1.2),
            "TOP",
            NOTES,
            Hang::Middle,
        );
    }
    let mut y = row + 7.5;
    for (i, words) in titles(part).iter().enumerate() {
        for line in wrap(words, room.width() - 4.0, NOTES, i == 0) {
            let place = at(room.middle().x, y);
            match i {
                0 => board.bold(place, &line, NOTES, Hang::Middle),
                _ => board.text(place, &line, NOTES, Hang::Middle),
            };
            y += 1.5 * NOTES;
        }
    }
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
    vec![
        format!(
            "{}, {} OFF, NOT TO SCALE, MILLIMETRES",
            part.name.to_uppercase(),
            part.number_off
        ),
        part.lies.clone(),
        format!("{thickness}, {}{mass}", holes_words(cut, uncut)),
    ]
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
