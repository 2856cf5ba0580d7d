//! Dimensions: arrows 3 × 1 mm filled, lettering above its line, read from the bottom or the right.

use super::at;
use super::board::Board;
use super::letter_size::FIGURES;
use super::text_box::rise_and_fall;
use super::{Hang, PaperPoint, Role, face};
use crate::units::Length;
use crate::units::angle::{atan2, cos, hypot, sin};

/// Length of an arrow, mm.
pub const ARROW: f64 = 3.0;
/// Half its width, mm.
const HALF_WIDTH: f64 = 0.5;
/// From an outline to the first dimension line, mm.
pub const FIRST_ROW: f64 = 10.0;
/// From one dimension line to the next, mm.
pub const NEXT_ROW: f64 = 8.0;
/// Gap between an outline and its extension line, mm.
const GAP: f64 = 1.0;
/// How far an extension line runs past its dimension line, mm.
const OVERSHOOT: f64 = 2.0;
/// Lettering stands this far above its dimension line, mm.
pub(super) const ABOVE: f64 = 1.0;

/// Two places no further apart across stand one above the other, mm of paper.
const UPRIGHT: f64 = 1e-6;

/// Clear between stacked fractions of two lines beside a leader, as a share of the height.
const BETWEEN_STACKED: f64 = 0.1;

/// What a dimension says, and of what length on which scale.
#[derive(Clone, Debug)]
pub struct Says<'a> {
    /// Lettering.
    pub words: &'a str,
    /// Length of the plate that it states.
    pub length: Length,
    /// Millimetres of paper for a millimetre of plate.
    pub scale: f64,
}

/// Dimensions of a view at one scale: from lettering and length to what one says.
pub fn saying(scale: f64) -> impl for<'w> Fn(&'w str, Length) -> Says<'w> {
    move |words, length| Says {
        words,
        length,
        scale,
    }
}

/// A filled arrow with its point at `tip`, pointing along an angle (degrees clockwise on paper from x).
pub fn arrow(board: &mut Board, tip: PaperPoint, towards_deg: f64) {
    let (s, c) = (sin(towards_deg.to_radians()), cos(towards_deg.to_radians()));
    let place =
        |back: f64, aside: f64| at(tip.x - back * c - aside * s, tip.y - back * s + aside * c);
    board.filled(
        vec![tip, place(ARROW, HALF_WIDTH), place(ARROW, -HALF_WIDTH)],
        Role::Dimension,
    );
}

/// A dimension across, its line at height `line_y`, extension lines from both places.
pub fn across(board: &mut Board, a: PaperPoint, b: PaperPoint, line_y: f64, says: Says<'_>) {
    let (a, b) = if a.x <= b.x { (a, b) } else { (b, a) };
    extension(board, a, at(a.x, line_y));
    extension(board, b, at(b.x, line_y));
    let (left, right) = (at(a.x, line_y), at(b.x, line_y));
    board.state(left, right, says.scale, says.length, says.words);
    let wide = face::width(says.words, FIGURES, false);
    let (_, fall) = rise_and_fall(says.words, FIGURES);
    let base = line_y - ABOVE - fall;
    if right.x - left.x >= wide + 2.0 {
        double_arrow(board, left, right);
        board.text(
            at((left.x + right.x) / 2.0, base),
            says.words,
            FIGURES,
            Hang::Middle,
        );
    } else {
        outside_arrows(board, left, right);
        let from = right.x + ARROW + 1.0;
        board.dimension_line(at(right.x + ARROW, line_y), at(from + wide, line_y));
        board.text(at(from, base), says.words, FIGURES, Hang::Start);
    }
}

/// A short dimension across metal, arrows from outside and lettering beyond the left or the right one.
pub fn across_beside(
    board: &mut Board,
    a: PaperPoint,
    b: PaperPoint,
    to_left: bool,
    says: Says<'_>,
) {
    let (a, b) = if a.x <= b.x { (a, b) } else { (b, a) };
    board.state(a, b, says.scale, says.length, says.words);
    outside_arrows(board, a, b);
    let wide = face::width(says.words, FIGURES, false);
    let (_, fall) = rise_and_fall(says.words, FIGURES);
    let base = a.y - ABOVE - fall;
    if to_left {
        board.dimension_line(at(a.x - ARROW - 1.0 - wide, a.y), at(a.x - ARROW, a.y));
        board.text(at(a.x - ARROW - 1.0, base), says.words, FIGURES, Hang::End);
    } else {
        board.dimension_line(at(b.x + ARROW, b.y), at(b.x + ARROW + 1.0 + wide, b.y));
        board.text(
            at(b.x + ARROW + 1.0, base),
            says.words,
            FIGURES,
            Hang::Start,
        );
    }
}

/// A dimension upwards, its line at `line_x`, read from the right.
pub fn upwards(board: &mut Board, a: PaperPoint, b: PaperPoint, line_x: f64, says: Says<'_>) {
    let (low, high) = if a.y >= b.y { (a, b) } else { (b, a) };
    extension(board, low, at(line_x, low.y));
    extension(board, high, at(line_x, high.y));
    let (low, high) = (at(line_x, low.y), at(line_x, high.y));
    board.state(low, high, says.scale, says.length, says.words);
    let wide = face::width(says.words, FIGURES, false);
    let (_, fall) = rise_and_fall(says.words, FIGURES);
    let base = line_x - ABOVE - fall;
    if low.y - high.y >= wide + 2.0 {
        double_arrow(board, low, high);
        let middle = at(base, (low.y + high.y) / 2.0);
        board.lettering(middle, says.words, FIGURES, Hang::Middle, 90.0, false);
    } else {
        outside_arrows(board, low, high);
        let from = high.y - ARROW - 1.0;
        board.dimension_line(at(line_x, high.y - ARROW), at(line_x, from - wide));
        board.lettering(
            at(base, from),
            says.words,
            FIGURES,
            Hang::Start,
            90.0,
            false,
        );
    }
}

/// A dimension along its own two places whichever way they lie: the line so far to the side on which its lettering stands, or to
/// the other where that is negative. It is read from the bottom, or from the right where the places stand upright.
pub fn aligned(board: &mut Board, a: PaperPoint, b: PaperPoint, aside: f64, says: Says<'_>) {
    let upright = (a.x - b.x).abs() < UPRIGHT;
    let from_a = if upright { a.y >= b.y } else { a.x <= b.x };
    let (a, b) = if from_a { (a, b) } else { (b, a) };
    let length = hypot(b.x - a.x, b.y - a.y);
    let (along_x, along_y) = ((b.x - a.x) / length, (b.y - a.y) / length);
    // So far along the line from a place, and so far to the side where its lettering stands.
    let from = |p: PaperPoint, along: f64, aside: f64| {
        at(
            p.x + along * along_x + aside * along_y,
            p.y + along * along_y - aside * along_x,
        )
    };
    let (first, last) = (from(a, 0.0, aside), from(b, 0.0, aside));
    extension(board, a, first);
    extension(board, b, last);
    board.state(first, last, says.scale, says.length, says.words);
    let wide = face::width(says.words, FIGURES, false);
    let (_, fall) = rise_and_fall(says.words, FIGURES);
    let turn = -atan2(along_y, along_x).to_degrees();
    let (place, hang) = if length >= wide + 2.0 {
        double_arrow(board, first, last);
        (from(first, length / 2.0, ABOVE + fall), Hang::Middle)
    } else {
        outside_arrows(board, first, last);
        let end = from(last, ARROW + 1.0 + wide, 0.0);
        board.dimension_line(from(last, ARROW, 0.0), end);
        (from(last, ARROW + 1.0, ABOVE + fall), Hang::Start)
    };
    board.lettering(place, says.words, FIGURES, hang, turn, false);
}

/// One value of a running dimension: where on the plate it starts on paper, and what it says.
#[derive(Clone, Debug)]
pub struct Running {
    /// The feature on paper.
    pub place: PaperPoint,
    /// Lettering.
    pub words: String,
    /// Distance from the datum.
    pub length: Length,
}

/// Running dimensions across from a vertical datum line at `datum_x`, below or above the view: the line at `line_y`,
/// values beyond it, read from the right. Values that would stand too near are cranked apart.
pub fn running_across(
    board: &mut Board,
    datum: PaperPoint,
    line_y: f64,
    scale: f64,
    values: &[Running],
) {
    if values.is_empty() {
        return;
    }
    let outwards = if line_y > datum.y { 1.0 } else { -1.0 };
    let wanted: Vec<f64> = values.iter().map(|v| v.place.x).collect();
    let spread = spread_out(&wanted, least_apart(values));
    origin(board, at(datum.x, line_y));
    let mut furthest = (datum.x, datum.x);
    for (value, x) in values.iter().zip(&spread) {
        let foot = at(value.place.x, line_y);
        extension_to(board, value.place, foot);
        let knee = at(value.place.x, line_y + outwards * OVERSHOOT);
        let end = at(*x, line_y + outwards * (OVERSHOOT + 2.5));
        board.dimension_line(foot, knee);
        board.dimension_line(knee, end);
        if (value.place.x - datum.x).abs() > 1e-9 {
            arrow(
                board,
                foot,
                if value.place.x > datum.x { 0.0 } else { 180.0 },
            );
        }
        board.state(at(datum.x, line_y), foot, scale, value.length, &value.words);
        let (rise, fall) = rise_and_fall(&value.words, FIGURES);
        let base = at(*x + (rise - fall) / 2.0, end.y + outwards * 1.0);
        let hang = if outwards > 0.0 {
            Hang::End
        } else {
            Hang::Start
        };
        board.lettering(base, &value.words, FIGURES, hang, 90.0, false);
        furthest = (furthest.0.min(foot.x), furthest.1.max(foot.x));
    }
    board.dimension_line(at(furthest.0, line_y), at(furthest.1, line_y));
}

/// Running dimensions upwards from a horizontal datum line, left or right of the view: the line at `line_x`, values beyond.
pub fn running_upwards(
    board: &mut Board,
    datum: PaperPoint,
    line_x: f64,
    scale: f64,
    values: &[Running],
) {
    if values.is_empty() {
        return;
    }
    let outwards = if line_x > datum.x { 1.0 } else { -1.0 };
    let wanted: Vec<f64> = values.iter().map(|v| v.place.y).collect();
    let spread = spread_out(&wanted, least_apart(values));
    origin(board, at(line_x, datum.y));
    let mut furthest = (datum.y, datum.y);
    for (value, y) in values.iter().zip(&spread) {
        let foot = at(line_x, value.place.y);
        extension_to(board, value.place, foot);
        let knee = at(line_x + outwards * OVERSHOOT, value.place.y);
        let end = at(line_x + outwards * (OVERSHOOT + 2.5), *y);
        board.dimension_line(foot, knee);
        board.dimension_line(knee, end);
        if (value.place.y - datum.y).abs() > 1e-9 {
            arrow(
                board,
                foot,
                if value.place.y > datum.y { 90.0 } else { 270.0 },
            );
        }
        board.state(at(line_x, datum.y), foot, scale, value.length, &value.words);
        let (rise, fall) = rise_and_fall(&value.words, FIGURES);
        let base = at(end.x + outwards * 1.0, *y + (rise - fall) / 2.0);
        let hang = if outwards > 0.0 {
            Hang::Start
        } else {
            Hang::End
        };
        board.text(base, &value.words, FIGURES, hang);
        furthest = (furthest.0.min(foot.y), furthest.1.max(foot.y));
    }
    board.dimension_line(at(line_x, furthest.0), at(line_x, furthest.1));
}

/// How much room the values of a running dimension take beyond its line, with their extension, mm.
pub fn running_room(words: &[String]) -> f64 {
    OVERSHOOT
        + 3.5
        + words
            .iter()
            .map(|w| face::width(w, FIGURES, false))
            .fold(0.0, f64::max)
}

/// Values of a running dimension may run past the view by this much in all before they go to the table, mm.
const RUN_OUT: f64 = 36.0;

/// Whether the values of a running dimension have room beside a view of this extent, mm of paper; a table has them else.
pub fn have_room(values: &[Running], extent: f64) -> bool {
    values.len() as f64 * least_apart(values) <= extent + RUN_OUT
}

/// How far apart values stand: stacked fractions want more.
fn least_apart(values: &[Running]) -> f64 {
    let most = values
        .iter()
        .map(|v| rise_and_fall(&v.words, FIGURES))
        .fold(0.0, |most: f64, (rise, fall)| most.max(rise + fall));
    most + 1.0
}

/// Circle at the datum of a running dimension.
fn origin(board: &mut Board, place: PaperPoint) {
    board.circle(
        place,
        1.5,
        super::Pen::Narrow,
        super::Pattern::Continuous,
        Role::Dimension,
    );
}

/// A radius: one arrow on the arc, lettering on a level shoulder at `shoulder`, from `tip` on the arc.
pub fn leader(board: &mut Board, tip: PaperPoint, knee: PaperPoint, lines: &[String], height: f64) {
    let to_right = knee.x >= tip.x;
    let wide = lines
        .iter()
        .map(|l| face::width(l, height, false))
        .fold(0.0, f64::max);
    let shoulder = 3.0;
    let side = if to_right { 1.0 } else { -1.0 };
    arrow(
        board,
        tip,
        atan2(tip.y - knee.y, tip.x - knee.x).to_degrees(),
    );
    board.dimension_line(tip, knee);
    board.dimension_line(knee, at(knee.x + side * shoulder, knee.y));
    let x = knee.x + side * (shoulder + 1.0);
    let x = if to_right { x } else { x - wide };
    let stacked = lines.iter().any(|l| l.contains('{'));
    let pitch = height
        * if stacked {
            super::lettering::stacked(height) + BETWEEN_STACKED
        } else {
            super::letter_size::LINE_PITCH
        };
    let first = knee.y - pitch * (lines.len() as f64 - 1.0) / 2.0 + height / 2.0;
    for (i, line) in lines.iter().enumerate() {
        board.text(at(x, first + i as f64 * pitch), line, height, Hang::Start);
    }
}

pub(super) fn double_arrow(board: &mut Board, a: PaperPoint, b: PaperPoint) {
    let angle = atan2(b.y - a.y, b.x - a.x).to_degrees();
    board.dimension_line(a, b);
    if hypot(b.x - a.x, b.y - a.y) >= 2.0 * ARROW {
        arrow(board, b, angle);
        arrow(board, a, angle + 180.0);
    }
}

/// Arrows from outside, where there is no room between.
pub(super) fn outside_arrows(board: &mut Board, a: PaperPoint, b: PaperPoint) {
    let angle = atan2(b.y - a.y, b.x - a.x);
    let (s, c) = (sin(angle), cos(angle));
    let tail = ARROW + 2.0;
    board.dimension_line(at(a.x - tail * c, a.y - tail * s), a);
    board.dimension_line(a, b);
    board.dimension_line(b, at(b.x + tail * c, b.y + tail * s));
    arrow(board, a, angle.to_degrees());
    arrow(board, b, angle.to_degrees() + 180.0);
}

/// Extension line from beside a feature to just past a dimension line.
pub(super) fn extension(board: &mut Board, feature: PaperPoint, foot: PaperPoint) {
    let length = hypot(foot.x - feature.x, foot.y - feature.y);
    if length <= GAP {
        return;
    }
    let (c, s) = ((foot.x - feature.x) / length, (foot.y - feature.y) / length);
    board.extension_line(
        at(feature.x + GAP * c, feature.y + GAP * s),
        at(foot.x + OVERSHOOT * c, foot.y + OVERSHOOT * s),
    );
}

/// Extension line from beside a feature to a dimension line, no further.
fn extension_to(board: &mut Board, feature: PaperPoint, foot: PaperPoint) {
    let length = hypot(foot.x - feature.x, foot.y - feature.y);
    if length > GAP {
        let (c, s) = ((foot.x - feature.x) / length, (foot.y - feature.y) / length);
        board.extension_line(at(feature.x + GAP * c, feature.y + GAP * s), foot);
    }
}

/// Places along a line moved as little as may be so that none is nearer than `least` to the next, order kept.
pub fn spread_out(wanted: &[f64], least: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|&a, &b| wanted[a].total_cmp(&wanted[b]));
    // Clumps of (members, sum of wanted less their offset in the clump): a clump stands at its mean.
    let mut clumps: Vec<(usize, f64)> = Vec::new();
    for &i in &order {
        clumps.push((1, wanted[i]));
        while clumps.len() > 1 {
            let (n2, s2) = clumps[clumps.len() - 1];
            let (n1, s1) = clumps[clumps.len() - 2];
            let end = s1 / n1 as f64 + n1 as f64 * least;
            if end <= s2 / n2 as f64 {
                break;
            }
            clumps.truncate(clumps.len() - 2);
            clumps.push((n1 + n2, s1 + s2 - n2 as f64 * n1 as f64 * least));
        }
    }
    let mut places = vec![0.0; wanted.len()];
    let mut next = order.iter();
    for (count, sum) in clumps {
        let start = sum / count as f64;
        for k in 0..count {
            if let Some(&i) = next.next() {
                places[i] = start + k as f64 * least;
            }
        }
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A length of 50 that rises by 3 in 4 is turned by atan 0.75 = 36.87°, whichever end is named first; its line runs 10 to the
    /// side on which it is read: up by 8 and left by 6. One that stands upright is turned by 90° and its line is 10 to the left.
    #[test]
    fn by_hand_a_dimension_along_its_own_line() {
        use super::super::Mark;
        use super::super::board::PaperBox;
        let low = at(20.0, 80.0);
        for (high, turn, line) in [
            (at(60.0, 50.0), 36.87, (14.0, 72.0)),
            (at(20.0, 30.0), 90.0, (10.0, 80.0)),
        ] {
            for (a, b) in [(low, high), (high, low)] {
                let mut board = Board::new("t", "t", PaperBox::new(0.0, 0.0, 100.0, 100.0));
                let says = Says {
                    words: "50",
                    length: Length::mm(50.0),
                    scale: 1.0,
                };
                aligned(&mut board, a, b, 10.0, says);
                let stated = &board.stated[0];
                assert!((stated.from.x - line.0).abs() < 1e-9, "{stated:?}");
                assert!((stated.from.y - line.1).abs() < 1e-9, "{stated:?}");
                assert!((stated.shown().to_mm() - 50.0).abs() < 1e-9);
                let turns: Vec<f64> = board
                    .marks
                    .iter()
                    .filter_map(|mark| match mark {
                        Mark::Text(text) => Some(text.turn_deg),
                        _ => None,
                    })
                    .collect();
                assert_eq!(turns.len(), 1);
                assert!((turns[0] - turn).abs() < 0.01, "{turns:?}");
            }
        }
    }

    /// Three values at 10, 11 and 12 that want 5 between them stand at 6, 11 and 16; one at 40 stays.
    #[test]
    fn by_hand_crowded_values_spread_about_their_mean() {
        let placed = spread_out(&[11.0, 10.0, 40.0, 12.0], 5.0);
        assert_eq!(placed, vec![11.0, 6.0, 40.0, 16.0]);
    }
}
