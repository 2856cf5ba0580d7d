//! The joint of a piece let in, square through its weld: old metal and new, each with its thickness. No weld is drawn or sized here: what
//! lies between them is the works' procedure.

use super::board::Board;
use super::dimension::saying;
use super::free_row::upwards_free;
use super::hatch::{Lean, hatch};
use super::kept::in_both_units;
use super::letter_size::{NOTES, TABLE};
use super::seat::HATCHING;
use super::set::Set;
use super::weld_numbers::repair_number;
use super::{Hang, PaperPoint, Pattern, Pen, Role, at};
use crate::design::Reading;
use crate::spec::{RepairWeld, ViewFrom};
use crate::units::{Length, Size};

/// Metal shown on each side of the weld, mm.
const SHOWN: f64 = 42.0;
/// Left open on each side of the line of the weld, mm: its preparation is not drawn.
const OPEN: f64 = 7.0;

/// Puts the joint of a repair about the origin of an empty board, the line of its weld at x 0, the old metal at the left.
pub fn put_joint(board: &mut Board, set: &Set<'_>, index: usize, scale: f64) {
    let repair = &set.design.repairs[index];
    let Some(piece) = &repair.piece else {
        return;
    };
    let as_made = &set.design.thickness;
    let found = nearest_sound(set, index);
    let old = found.map_or(as_made, |reading| &reading.thickness);
    let new = piece.thickness.as_ref();
    let flush = flush_on(set, index);
    let thick = |size: &Size| size.value().to_mm();
    // Flush above, else about one middle line.
    let top = |size: &Size| match flush {
        Some(_) => 0.0,
        None => thick(size) / 2.0,
    };
    let place = |x: f64, y: f64| at(x * scale, -y * scale);
    let sides = [
        (old, -1.0, Lean::Right),
        (new.unwrap_or(as_made), 1.0, Lean::Left),
    ];
    for (size, side, lean) in sides {
        let (high, low) = (top(size), top(size) - thick(size));
        let (near, far) = (side * OPEN, side * SHOWN);
        let corners = [(near, high), (far, high), (far, low), (near, low)];
        let corners = corners.map(|(x, y)| place(x, y));
        hatch(board, &[corners.to_vec()], HATCHING, lean);
        board.edge_line(corners[0], corners[1]);
        board.edge_line(corners[2], corners[3]);
        for pair in [(1, 2), (3, 0)] {
            broken(board, corners[pair.0], corners[pair.1]);
        }
        let to_right = side > 0.0;
        let words = set.figures.size_short(size);
        let (a, b) = (place(far, low), place(far, high));
        let says = saying(scale);
        upwards_free(board, (a, b), a.x, to_right, says(&words, size.value()));
    }
    put_line_of_weld(board, &place, as_made.value(), scale);
    let names = [
        (-1.0, "OLD METAL".to_string()),
        (1.0, format!("{}, NEW METAL", repair_number(set, index))),
    ];
    for (side, words) in names {
        let x = place(side * (OPEN + SHOWN) / 2.0, 0.0).x + side * 2.0;
        let y = place(0.0, top(as_made)).y - 2.0;
        board.text(at(x, y), &words, TABLE, Hang::Middle);
    }
    put_words_below(board, set, index, &[old_words(set, found), new_words(new)]);
}

/// The sound reading outside the piece that lies nearest to its weld.
fn nearest_sound<'a>(set: &Set<'a>, index: usize) -> Option<&'a Reading> {
    let outside = set.design.readings.iter();
    let sound = outside.filter(|r| r.covered.is_none() && r.short.is_none());
    let away = |r: &Reading| r.nearest_weld.filter(|w| w.0 == index).map(|w| w.1);
    sound
        .filter(|r| away(r).is_some())
        .min_by(|a, b| match (away(a), away(b)) {
            (Some(a), Some(b)) => a.total_cmp(&b),
            _ => std::cmp::Ordering::Equal,
        })
}

fn old_words(set: &Set<'_>, found: Option<&Reading>) -> String {
    match found {
        Some(reading) => format!(
            "OLD METAL {}, READING {}",
            in_both_units(set, &reading.thickness),
            reading.number
        ),
        None => "OLD METAL DRAWN AS MADE: NO SOUND READING".into(),
    }
}

fn new_words(thickness: Option<&Size>) -> String {
    match thickness {
        Some(size) => format!("NEW METAL {} AS ORDERED", size.as_written()),
        None => "NEW METAL DRAWN AS THE OLD WAS MADE: ITS THICKNESS IS NOT GIVEN".into(),
    }
}

fn flush_on(set: &Set<'_>, index: usize) -> Option<ViewFrom> {
    match &set.spec.written.repairs[index].weld {
        RepairWeld::Line(line) => line.piece.as_ref()?.flush_on,
        _ => None,
    }
}

fn broken(board: &mut Board, a: PaperPoint, b: PaperPoint) {
    board.line(a, b, Pen::Narrow, Pattern::Continuous, Role::Object);
}

fn put_line_of_weld(
    board: &mut Board,
    place: &impl Fn(f64, f64) -> PaperPoint,
    thickness: Length,
    scale: f64,
) {
    let (over, t) = (3.0 / scale, thickness.to_mm());
    board.centre_line(place(0.0, t / 2.0 + over), place(0.0, -t - over));
}

/// What is said of the joint and what is not: below the section, in lines.
fn put_words_below(board: &mut Board, set: &Set<'_>, index: usize, metals: &[String; 2]) {
    let Some(all) = board.extent(|_| true) else {
        return;
    };
    let mut lines = metals.to_vec();
    lines.push("WELD AND PREPARATION BY THE WORKS' PROCEDURE".into());
    lines.push(match flush_on(set, index) {
        Some(face) => format!("FLUSH ON THE {} FACE, ABOVE", face.name().to_uppercase()),
        None => "WHICH FACE IS FLUSH IS NOT GIVEN".into(),
    });
    let remarks = set.spec.written.repairs[index].remarks.as_ref();
    lines.extend(remarks.map(|words| words.to_uppercase()));
    for (i, line) in lines.iter().enumerate() {
        let y = all.bottom + 5.0 + i as f64 * NOTES * 1.4;
        board.text(at(all.left, y), line, TABLE, Hang::Start);
    }
}
