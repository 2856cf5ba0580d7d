//! Frame, zones and centring marks (ISO 5457), and which parts of the furniture a sheet carries.

use super::at;
use super::board::{Board, PaperBox};
use super::clear::no_lettering_in;
use super::paper_size::{frame, is_upright, paper_size};
use super::{Hang, PaperPoint, Pen};
use crate::spec::Paper;

/// Zone fields are this long, counted outwards from the centring marks, mm.
const FIELD: f64 = 50.0;
/// From the frame to the line round the zone letters, mm.
const ZONE_STRIP: f64 = 5.0;
/// Height of zone letters, mm.
const ZONE_LETTER: f64 = 3.5;
/// How far a centring mark runs inside the frame, mm.
const CENTRING_INSIDE: f64 = 5.0;
/// Height of the title block at the foot of the sheet, mm; of the particulars too where they stand beside it.
pub const FOOT: f64 = 36.0;
/// Height of the particulars where they stand on the title block, mm.
pub const FOOT_ABOVE: f64 = 39.0;
/// Height kept at the head of a sheet for its banner, mm.
pub const BANNER: f64 = 10.0;
/// Clear strip between the frame and the drawing, mm.
pub const CLEAR: f64 = 3.0;

/// Height of all that stands at the foot of a sheet, mm: on upright paper the title block fills the width.
fn foot(paper: Paper) -> f64 {
    FOOT + if is_upright(paper) { FOOT_ABOVE } else { 0.0 }
}

/// The box free for drawing on a sheet.
pub fn room(paper: Paper, with_banner: bool) -> PaperBox {
    let f = frame(paper);
    let head = if with_banner { BANNER } else { 0.0 };
    PaperBox::new(
        f.left + CENTRING_INSIDE + 2.0,
        f.top + head + CLEAR,
        f.right - CENTRING_INSIDE - 2.0,
        f.bottom - foot(paper) - CLEAR,
    )
}

/// Frame, zone grid, zone letters, centring and trimming marks.
pub fn put_frame(board: &mut Board, paper: Paper) {
    let (width, height) = paper_size(paper);
    let f = frame(paper);
    board.ruled_box(f, Pen::Frame);
    let outer = f.grown(ZONE_STRIP);
    board.ruled_box(outer, Pen::Narrow);
    put_zones(board, &f, &outer, is_upright(paper));
    put_centring_marks(board, &f, &outer);
    put_trimming_marks(board, width, height);
}

/// Letters down the sides, numbers along top and foot, from the top left corner; I and O are not used. On A4 the top and the
/// left side alone are lettered.
fn put_zones(board: &mut Board, f: &PaperBox, outer: &PaperBox, top_and_left: bool) {
    let sides = if top_and_left { 1 } else { 2 };
    let xs = fields(f.left, f.right);
    for (i, pair) in xs.windows(2).enumerate() {
        let middle = (pair[0] + pair[1]) / 2.0;
        let number = (i + 1).to_string();
        for (strip, foot) in [(f.top, outer.top), (outer.bottom, f.bottom)]
            .into_iter()
            .take(sides)
        {
            let base = (strip + foot) / 2.0 + ZONE_LETTER * 0.5;
            board.text(at(middle, base), &number, ZONE_LETTER * 0.8, Hang::Middle);
        }
        if i > 0 && (pair[0] - f.middle().x).abs() > 0.1 {
            board.rule(at(pair[0], outer.top), at(pair[0], f.top), Pen::Middle);
            if !top_and_left {
                let (a, b) = (at(pair[0], f.bottom), at(pair[0], outer.bottom));
                board.rule(a, b, Pen::Middle);
            }
        }
    }
    let ys = fields(f.top, f.bottom);
    for (pair, letter) in ys.windows(2).zip("ABCDEFGHJKLMNPQRSTUVWXYZ".chars()) {
        let base = (pair[0] + pair[1]) / 2.0 + ZONE_LETTER * 0.4;
        let strips = [(f.left + outer.left) / 2.0, (f.right + outer.right) / 2.0];
        for x in strips.into_iter().take(sides) {
            board.text(
                at(x, base),
                &letter.to_string(),
                ZONE_LETTER * 0.8,
                Hang::Middle,
            );
        }
        if pair[0] > f.top && (pair[0] - f.middle().y).abs() > 0.1 {
            board.rule(at(outer.left, pair[0]), at(f.left, pair[0]), Pen::Middle);
            if !top_and_left {
                board.rule(at(f.right, pair[0]), at(outer.right, pair[0]), Pen::Middle);
            }
        }
    }
}

/// Borders of the zone fields between two sides of the frame: 50 mm outwards from the middle, the rest to the corner fields.
fn fields(from: f64, to: f64) -> Vec<f64> {
    let middle = (from + to) / 2.0;
    let half = (to - from) / 2.0;
    let whole = ((half / FIELD).round() as i32).max(1);
    let mut borders = vec![from];
    borders.extend((1 - whole..whole).map(|i| middle + f64::from(i) * FIELD));
    borders.push(to);
    borders
}

/// Marks at the middles of the sides, a little way into the drawing: no further than the frame where lettering stands there.
fn put_centring_marks(board: &mut Board, f: &PaperBox, outer: &PaperBox) {
    let m = f.middle();
    let inner = |from: PaperPoint, to: PaperPoint, board: &Board| {
        let round = PaperBox::new(
            from.x.min(to.x),
            from.y.min(to.y),
            from.x.max(to.x),
            from.y.max(to.y),
        );
        match no_lettering_in(board, &round.grown(1.0)) {
            true => to,
            false => from,
        }
    };
    let (top, left, right) = (at(m.x, f.top), at(f.left, m.y), at(f.right, m.y));
    let top_end = inner(top, at(m.x, f.top + CENTRING_INSIDE), board);
    let left_end = inner(left, at(f.left + CENTRING_INSIDE, m.y), board);
    let right_end = inner(right, at(f.right - CENTRING_INSIDE, m.y), board);
    board.rule(at(m.x, outer.top), top_end, Pen::Frame);
    board.rule(at(m.x, f.bottom), at(m.x, outer.bottom), Pen::Frame);
    board.rule(at(outer.left, m.y), left_end, Pen::Frame);
    board.rule(right_end, at(outer.right, m.y), Pen::Frame);
}

/// A rule pen 0.7 mm wide shows where the paper ends: two short lines in each corner.
fn put_trimming_marks(board: &mut Board, width: f64, height: f64) {
    for (x, sx) in [(0.4, 1.0), (width - 0.4, -1.0)] {
        for (y, sy) in [(0.4, 1.0), (height - 0.4, -1.0)] {
            board.rule(at(x, y), at(x + sx * 5.0, y), Pen::Frame);
            board.rule(at(x, y), at(x, y + sy * 5.0), Pen::Frame);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 5457: A3 has 8 fields along its long side and 6 along its short one, A1 16 and 12, A2 12 and 8; A4 upright 4 across
    /// and 6 down.
    #[test]
    fn published_zone_fields() {
        for (paper, long, short) in [
            (Paper::A4, 4, 6),
            (Paper::A3, 8, 6),
            (Paper::A2, 12, 8),
            (Paper::A1, 16, 12),
        ] {
            let f = frame(paper);
            let count = (
                fields(f.left, f.right).len() - 1,
                fields(f.top, f.bottom).len() - 1,
            );
            assert_eq!(count, (long, short), "{paper:?}");
        }
    }
}
