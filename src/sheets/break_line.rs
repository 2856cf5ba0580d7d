//! The line where a part is broken off: narrow, with a zigzag in its middle, and carried a little past the part's edges.

use super::board::Board;
use super::{PaperPoint, Pattern, Pen, Role, at};
use crate::units::angle::hypot;

/// How far the line is carried past the edges, mm.
const OVER: f64 = 2.0;
/// Half the length of the zigzag along the line, and its reach aside, mm.
const ZIGZAG: (f64, f64) = (1.2, 2.0);

/// Puts the line down between two edges of a part.
pub fn put_break(board: &mut Board, a: PaperPoint, b: PaperPoint) {
    put_break_past(board, (a, b), (OVER, OVER));
}

/// The same where the part lies against another at `a`: the line ends there, for its tail would stand in the other's metal.
pub fn put_break_against(board: &mut Board, a: PaperPoint, b: PaperPoint) {
    put_break_past(board, (a, b), (0.0, OVER));
}

fn put_break_past(board: &mut Board, (a, b): (PaperPoint, PaperPoint), over: (f64, f64)) {
    let long = hypot(b.x - a.x, b.y - a.y);
    let (c, s) = ((b.x - a.x) / long, (b.y - a.y) / long);
    let along = |t: f64, aside: f64| at(a.x + c * t - s * aside, a.y + s * t + c * aside);
    let middle = long / 2.0;
    let (half, reach) = ZIGZAG;
    let corners = [
        along(-over.0, 0.0),
        along(middle - half, 0.0),
        along(middle - half / 3.0, -reach),
        along(middle + half / 3.0, reach),
        along(middle + half, 0.0),
        along(long + over.1, 0.0),
    ];
    for pair in corners.windows(2) {
        board.line(
            pair[0],
            pair[1],
            Pen::Narrow,
            Pattern::Continuous,
            Role::Object,
        );
    }
}
