//! Letters of the datums: A and B at the ends of the barrel's centre lines, C at the plate's face in section.

use super::board::{Board, PaperBox};
use super::clear::{crosses_lettering, is_clear};
use super::dimension::arrow;
use super::face_view::CENTRE_OVER;
use super::letter_size::FIGURES;
use super::section::SectionView;
use super::view::View;
use super::{Hang, PaperPoint, at, face};

/// Clear paper round a letter, mm.
const CLEAR: f64 = 0.6;
/// From the end of a centre line, or from the line, to the middle of its letter, mm.
const OFF: f64 = 2.6;
/// From the face to the letter C at most, mm.
const REACH: f64 = 24.0;

/// A and B on a face view whose edge stands in this box of the paper, each at the first end of its line that is clear.
pub fn put_face_datums(board: &mut Board, view: &View, paper: &PaperBox) {
    let c = view.centre;
    let ends = paper.grown(CENTRE_OVER);
    let beside = |y: f64| [at(c.x - OFF, y), at(c.x + OFF, y)];
    let upright = [
        ends.bottom - 1.0,
        ends.top + 1.0,
        ends.bottom + OFF,
        ends.top - OFF,
    ];
    let upright: Vec<PaperPoint> = upright.into_iter().flat_map(beside).collect();
    let over = |x: f64| [at(x, c.y - OFF), at(x, c.y + OFF), at(x, c.y)];
    let level = [
        ends.right + OFF,
        ends.left - OFF,
        ends.right - 1.0,
        ends.left + 1.0,
    ];
    let level: Vec<PaperPoint> = level.into_iter().flat_map(over).collect();
    put_first_clear(board, "A", &upright);
    put_first_clear(board, "B", &level);
}

/// C with an arrow to the face that is looked at, on a section whose plate stands between two heights of the paper.
pub fn put_section_datum(board: &mut Board, s: &SectionView, (top, foot): (f64, f64)) {
    let steps = ((foot - top) / 1.5) as usize;
    let mut off = 7.0;
    while off <= REACH {
        for y in (1..steps).map(|i| foot - 1.5 * f64::from(i as u32)) {
            let (tip, tail) = (at(s.face_x, y), at(s.face_x + off, y));
            let room = PaperBox::new(tail.x + 0.5, y - 2.0, tail.x + 4.5, y + 2.0);
            // The arrow may cross an edge that stands before the face, but not run along one.
            let shaft = PaperBox::new(tip.x + 0.5, y - 0.8, tip.x + 4.5, y + 0.8);
            let is_free = is_clear(board, &room, CLEAR)
                && is_clear(board, &shaft, 0.0)
                && !crosses_lettering(board, tip, tail)
                && is_solid(board, s, y);
            if is_free {
                arrow(board, tip, 180.0);
                board.dimension_line(tail, tip);
                board.bold(
                    at(tail.x + 1.0, y + FIGURES / 2.0),
                    "C",
                    FIGURES,
                    Hang::Start,
                );
                return;
            }
        }
        off += 3.0;
    }
}

/// Whether the plate is hatched at a height: an arrow is to end on metal.
fn is_solid(board: &Board, s: &SectionView, y: f64) -> bool {
    let (a, b) = (s.x(0.0), s.x(s.thickness));
    let within = PaperBox::new(a.min(b) + 0.2, y - 1.5, a.max(b) - 0.2, y + 1.5);
    !is_clear(board, &within, 0.0)
}

fn put_first_clear(board: &mut Board, letter: &str, places: &[PaperPoint]) {
    let half = face::width(letter, FIGURES, true) / 2.0;
    let round = |p: &PaperPoint| {
        PaperBox::new(
            p.x - half,
            p.y - FIGURES / 2.0,
            p.x + half,
            p.y + FIGURES / 2.0,
        )
    };
    let clear = |p: &&PaperPoint| board.room.holds(&round(p)) && is_clear(board, &round(p), CLEAR);
    if let Some(p) = places.iter().find(clear) {
        board.bold(at(p.x, p.y + FIGURES / 2.0), letter, FIGURES, Hang::Middle);
    }
}
