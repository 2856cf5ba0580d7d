//! The warning in hollow letters across the whole of a sheet, read at arm's length and from a photocopy of a corner.
//!
//! Drawn as outlines and stopped short of every figure, so that whoever looks for the fault can still read the sheet.

use kurbo::{Affine, ParamCurve, Point};

use super::at;
use super::board::Board;
use super::lettering::{self, Piece};
use super::mark::{Pattern, Pen, Role, Text};
use super::{PaperPoint, face};
use crate::units::angle::{atan2, cos, hypot, sin};

/// Lettering no higher than this, mm.
const MOST: f64 = 40.0;
/// Chords to a curve of an outline: none leaves a 40 mm letter's curve by half a pen.
const CHORDS: u32 = 6;

/// Puts the words from corner to corner of the room; before lines are interrupted at lettering.
pub fn put_overprint(board: &mut Board, warning: &str) {
    let room = board.room;
    let slant = atan2(room.height(), room.width());
    // The words and their own height fill the slanting line between the corners.
    let long = hypot(room.width(), room.height());
    let unit = face::width(warning, 1.0, true);
    let height = (long / (unit + 2.0 * sin(slant) / cos(slant))).min(MOST);
    let middle = room.middle();
    let text = Text::new(
        at(
            middle.x + height / 2.0 * sin(slant),
            middle.y + height / 2.0 * cos(slant),
        ),
        warning,
        height,
    )
    .bold()
    .middle()
    .turned(slant.to_degrees());
    let laid = lettering::lay(&text);
    let placing = lettering::placing(&text, laid.width);
    for piece in &laid.pieces {
        if let Piece::Glyph {
            number, x, y, size, ..
        } = piece
        {
            put_outline(board, *number, placing, (*x, *y), *size);
        }
    }
}

fn put_outline(board: &mut Board, number: u32, placing: Affine, (x, y): (f64, f64), size: f64) {
    let unit = size / face::CAPITAL_UNITS;
    let place =
        placing * Affine::translate((x, y)) * Affine::new([unit, 0.0, 0.0, -unit, 0.0, 0.0]);
    let on_paper = |p: Point| {
        let p = place * p;
        at(p.x, p.y)
    };
    for segment in face::outline(number, true).segments() {
        let chords = match segment {
            kurbo::PathSeg::Line(_) => 1,
            kurbo::PathSeg::Quad(_) | kurbo::PathSeg::Cubic(_) => CHORDS,
        };
        let along = |i: u32| on_paper(segment.eval(f64::from(i) / f64::from(chords)));
        for i in 0..chords {
            stroke(board, along(i), along(i + 1));
        }
    }
}

/// In the role of hatching, which gives way to lettering.
fn stroke(board: &mut Board, from: PaperPoint, to: PaperPoint) {
    board.line(from, to, Pen::Middle, Pattern::Continuous, Role::Hatch);
}
