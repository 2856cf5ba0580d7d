//! BOILER and SMOKEBOX beside the two faces of a plate in section.

use super::board::{Board, PaperBox};
use super::clear::is_clear;
use super::letter_size::TABLE;
use super::section::SectionView;
use super::set::Set;
use super::{Hang, at, face};
use crate::spec::ViewFrom;

/// From a face to its word at least, and at most, mm of paper.
const OFF: (f64, f64) = (2.0, 26.0);
/// A word may stand so far above the section and below it, mm of paper.
const BEYOND: f64 = 18.0;
/// Clear paper round a word, mm.
const CLEAR: f64 = 1.6;
/// And so much more above and below a level one, mm.
const NO_LINE: f64 = 1.0;
/// From one line that is tried to the next, mm.
const STEP: f64 = 1.5;

/// Names both sides of a section between two heights of the paper: both words on one line where that is clear, else each as near
/// to its face as it goes, upright where no level place is clear. A room, where one is given, holds both words.
pub fn put_side_names(
    board: &mut Board,
    set: &Set<'_>,
    s: &SectionView,
    (top, foot): (f64, f64),
    (room, first): (Option<&PaperBox>, First),
) {
    let (a, b) = (s.x(0.0), s.x(s.thickness));
    let (near, far) = match set.design.view_from {
        ViewFrom::Smokebox => ("SMOKEBOX", "BOILER"),
        ViewFrom::Firebox => ("BOILER", "SMOKEBOX"),
    };
    let sides = [(b.max(a), near, 1.0), (a.min(b), far, -1.0)];
    let levels = levels(top, foot, first);
    let on_one_line = levels.iter().copied().find(|&y| {
        let mut both = sides.iter();
        both.all(|&(x, words, way)| is_free(board, room, &level(x + way * OFF.0, y, words, way)))
    });
    for (x, words, way) in sides {
        match on_one_line {
            Some(y) => put_level(board, x + way * OFF.0, y, words, way),
            None => put_alone(board, (room, &levels), (x, way), words),
        }
    }
}

/// Where a section's names are looked for first.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum First {
    /// Above the plate's upper end, which is its own edge or rim.
    Above,
    /// Beside the flat and below it, and never above: there stand flange and barrel, whose other side is another.
    Beside,
}

/// Base lines to try.
fn levels(top: f64, foot: f64, first: First) -> Vec<f64> {
    let steps = |from: f64, to: f64| {
        let count = ((to - from).abs() / STEP) as usize;
        let way = (to - from).signum();
        (0..=count).map(move |i| from + way * STEP * i as f64)
    };
    let above = steps(top - 3.0, top - BEYOND);
    let beside = steps(top + TABLE, foot);
    let below = steps(foot + 3.0 + TABLE, foot + BEYOND);
    match first {
        First::Above => above.chain(beside).chain(below).collect(),
        First::Beside => {
            let beside: Vec<f64> = beside.collect();
            let upwards = beside.into_iter().rev();
            upwards.chain(below).collect()
        }
    }
}

/// What a level word takes up, with more paper above and below, that it is not read as a line of some note.
fn level(x: f64, y: f64, words: &str, way: f64) -> PaperBox {
    let end = x + way * face::width(words, TABLE, false);
    PaperBox::new(x.min(end), y - TABLE - NO_LINE, x.max(end), y + NO_LINE)
}

fn is_free(board: &Board, room: Option<&PaperBox>, b: &PaperBox) -> bool {
    room.is_none_or(|room| room.holds(b)) && is_clear(board, b, CLEAR)
}

fn put_level(board: &mut Board, x: f64, y: f64, words: &str, way: f64) {
    let hang = if way > 0.0 { Hang::Start } else { Hang::End };
    board.text(at(x, y), words, TABLE, hang);
}

/// One word by itself, level or upright; nothing where no place is clear.
fn put_alone(
    board: &mut Board,
    (room, levels): (Option<&PaperBox>, &[f64]),
    (x, way): (f64, f64),
    words: &str,
) {
    let steps = ((OFF.1 - OFF.0) / STEP) as usize;
    for off in (0..=steps).map(|i| OFF.0 + STEP * i as f64) {
        let from = x + way * off;
        if let Some(&y) = levels
            .iter()
            .find(|&&y| is_free(board, room, &level(from, y, words, way)))
        {
            return put_level(board, from, y, words, way);
        }
        let long = face::width(words, TABLE, false);
        let (left, right) = (from.min(from + way * TABLE), from.max(from + way * TABLE));
        let upright = |y: f64| PaperBox::new(left, y - long, right, y);
        if let Some(&y) = levels.iter().find(|&&y| is_free(board, room, &upright(y))) {
            board.lettering(at(right, y), words, TABLE, Hang::Start, 90.0, false);
            return;
        }
    }
}
