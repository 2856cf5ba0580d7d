//! The tubes lengthwise, shortened: both plates on edge, the highest, the lowest and the furthest drifting tube between them.

use super::board::{Board, PaperBox};
use super::letter_size::TABLE;
use super::set::Set;
use super::{Hang, Pattern, Pen, Role, at};
use crate::design::{Hole, TubeEnds};
use crate::units::Length;

/// Room for the figures beside each plate, mm.
const SIDE: f64 = 31.0;
/// Room above and below, mm.
const HEAD: f64 = 9.0;
const FOOT: f64 = 10.0;

/// Puts the sketch into a box: heights are to one scale, lengths are not.
pub fn put_tubes_lengthwise(board: &mut Board, set: &Set<'_>, b: &PaperBox) {
    let Some(end) = set.design.other_ends.first() else {
        return;
    };
    let heights = end.tubes.iter().flat_map(|t| [t.here.y, t.there.y]);
    let (low, high) = heights.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| {
        (low.min(y), high.max(y))
    });
    if low >= high {
        return;
    }
    let tall = b.height() - HEAD - FOOT - 6.0;
    let scale = tall / (high - low);
    let y = |mm: f64| b.top + HEAD + 3.0 + (high - mm) * scale;
    let (left, right) = (b.left + SIDE, b.right - SIDE);
    for x in [left, right] {
        board.edge_line(at(x, b.top + HEAD), at(x, b.bottom - FOOT));
    }
    let fig = set.figures;
    for tube in shown(set, end.tubes.iter()) {
        let (a, c) = (at(left, y(tube.here.y)), at(right, y(tube.there.y)));
        let (pen, pattern, role) = (Pen::Middle, Pattern::Continuous, Role::Object);
        board.line(a, c, pen, pattern, role);
        let hole: &Hole = &set.design.holes[tube.hole];
        let words = format!("{}  y {}", hole.id, fig.decimal(Length::mm(tube.here.y)));
        board.text(at(left - 1.5, a.y + TABLE / 2.0), &words, TABLE, Hang::End);
        let words = format!("y {}", fig.decimal(Length::mm(tube.there.y)));
        board.text(
            at(right + 1.5, c.y + TABLE / 2.0),
            &words,
            TABLE,
            Hang::Start,
        );
    }
    for (x, words) in [(left, "THIS PLATE"), (right, "OTHER PLATE")] {
        board.bold(at(x, b.top + TABLE + 3.0), words, TABLE, Hang::Middle);
    }
    let between = end.between.map_or("NOT GIVEN".into(), |l| fig.short(l));
    let words =
        format!("TUBES LENGTHWISE, {between} BETWEEN PLATES; HEIGHTS TO ONE SCALE, LENGTH NOT");
    let height = super::letter_size::fitting_height(&words, b.width(), TABLE, true);
    board.bold(
        at(b.middle().x, b.bottom - 1.5),
        &words,
        height,
        Hang::Middle,
    );
}

/// Highest, lowest and furthest drifting tube, each once, far enough apart to be lettered.
fn shown<'a>(set: &Set<'_>, tubes: impl Iterator<Item = &'a TubeEnds> + Clone) -> Vec<TubeEnds> {
    let by_height = |a: &&TubeEnds, b: &&TubeEnds| a.here.y.total_cmp(&b.here.y);
    let end = &set.design.other_ends[0];
    let middle = tubes
        .clone()
        .min_by(|a, b| a.here.y.abs().total_cmp(&b.here.y.abs()));
    let highest = end.furthest().filter(|f| {
        tubes
            .clone()
            .all(|t| t.here.y <= f.here.y + crate::units::tolerance::SAME_LENGTH_MM)
    });
    let picked = [
        highest.or(tubes.clone().max_by(by_height)),
        middle,
        tubes.clone().min_by(by_height),
    ];
    let mut all: Vec<TubeEnds> = Vec::new();
    for tube in picked.into_iter().flatten() {
        if !all.iter().any(|t| t.hole == tube.hole) {
            all.push(*tube);
        }
    }
    all
}
