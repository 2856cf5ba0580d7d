//! Where there is room on the board: what a box on the paper would touch.

use super::PaperPoint;
use super::Text;
use super::board::{Board, PaperBox};
use super::face;
use super::text_box::text_box;
use super::{Mark, Pen, Role};
use crate::units::angle::{cos, hypot, sin, sqrt};

/// Whether a box is clear of every mark put down so far, `gap` mm all round.
pub fn is_clear(board: &Board, b: &PaperBox, gap: f64) -> bool {
    let b = b.grown(gap);
    board.marks.iter().all(|mark| !touches(mark, &b))
}

/// Whether lettering may stand there: struck lines and extension lines give way to it; holes, arrows and other words do not.
pub fn clear_of_all_but_lines(board: &Board, b: &PaperBox) -> bool {
    let b = b.grown(0.7);
    board.marks.iter().all(|mark| match mark {
        Mark::Line {
            pen: Pen::Narrow, ..
        } => true,
        Mark::Circle {
            role: Role::Centre, ..
        } => true,
        _ => !touches(mark, &b),
    })
}

/// Whether no lettering that has been put down reaches into a box.
pub fn no_lettering_in(board: &Board, b: &PaperBox) -> bool {
    let lettering = |mark: &&Mark| matches!(mark, Mark::Text(_));
    !board.marks.iter().filter(lettering).any(|m| touches(m, b))
}

/// Whether a line would run through lettering that has been put down.
pub fn crosses_lettering(board: &Board, from: PaperPoint, to: PaperPoint) -> bool {
    board.marks.iter().any(|mark| match mark {
        Mark::Text(text) => {
            let round = PaperBox::new(
                from.x.min(to.x),
                from.y.min(to.y),
                from.x.max(to.x),
                from.y.max(to.y),
            );
            may_reach(text, &round.grown(0.6)) && line_meets(from, to, &text_box(text).grown(0.6))
        }
        Mark::Line { .. } | Mark::Arc { .. } | Mark::Circle { .. } | Mark::Filled { .. } => false,
    })
}

/// Whether a line would run through a circle of the object, which it neither comes from nor ends in.
pub fn crosses_hole(board: &Board, from: PaperPoint, to: PaperPoint) -> bool {
    // The rim of the plate and the circles of the flange are crossed once, from within.
    board.marks.iter().any(|mark| match mark {
        Mark::Circle {
            centre,
            radius,
            role: Role::Object,
            ..
        } => line_through(from, to, *centre, *radius).is_some(),
        _ => false,
    })
}

/// Whether a line would cross the line of a leader or a dimension that has been put down, or touch it.
pub fn crosses_leader(board: &Board, from: PaperPoint, to: PaperPoint) -> bool {
    board.marks.iter().any(|mark| match mark {
        Mark::Line {
            from: a,
            to: b,
            role: Role::Dimension,
            ..
        } => lines_cross((from, to), (*a, *b)),
        _ => false,
    })
}

/// Whether two lines have a place in common.
fn lines_cross((a, b): (PaperPoint, PaperPoint), (c, d): (PaperPoint, PaperPoint)) -> bool {
    let side = |p: PaperPoint, q: PaperPoint, r: PaperPoint| {
        (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)
    };
    side(a, b, c) * side(a, b, d) <= 0.0 && side(c, d, a) * side(c, d, b) <= 0.0
}

/// Whether any part of a mark lies in a box.
pub fn touches(mark: &Mark, b: &PaperBox) -> bool {
    match mark {
        Mark::Line { from, to, .. } => line_meets(*from, *to, b),
        Mark::Circle { centre, radius, .. } => {
            let (near, far) = near_and_far(*centre, b);
            near <= *radius && *radius <= far
        }
        Mark::Arc {
            centre,
            radius,
            start_deg,
            sweep_deg,
            ..
        } => {
            let (near, far) = near_and_far(*centre, b);
            near <= *radius
                && *radius <= far
                && arc_meets(*centre, *radius, *start_deg, *sweep_deg, b)
        }
        Mark::Filled { corners, .. } => {
            let mut round = PaperBox::new(f64::MAX, f64::MAX, f64::MIN, f64::MIN);
            for c in corners {
                round = PaperBox::new(
                    round.left.min(c.x),
                    round.top.min(c.y),
                    round.right.max(c.x),
                    round.bottom.max(c.y),
                );
            }
            round.meets(b)
        }
        Mark::Text(text) => may_reach(text, b) && text_box(text).meets(b),
    }
}

/// Whether lettering could touch a box at all, told from how many characters it has: laying it out costs a hundred times that.
fn may_reach(text: &Text, b: &PaperBox) -> bool {
    let most = text.height * face::WIDEST * (text.words.len() + 2) as f64;
    near_and_far(text.at, b).0 <= most
}

fn near_and_far(c: PaperPoint, b: &PaperBox) -> (f64, f64) {
    let dx = (b.left - c.x).max(c.x - b.right).max(0.0);
    let dy = (b.top - c.y).max(c.y - b.bottom).max(0.0);
    let fx = (c.x - b.left).abs().max((c.x - b.right).abs());
    let fy = (c.y - b.top).abs().max((c.y - b.bottom).abs());
    (hypot(dx, dy), hypot(fx, fy))
}

/// The share of a line, from 0 to 1, that lies in a box.
pub fn line_within(from: PaperPoint, to: PaperPoint, b: &PaperBox) -> Option<(f64, f64)> {
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    for (start, run, low, high) in [
        (from.x, to.x - from.x, b.left, b.right),
        (from.y, to.y - from.y, b.top, b.bottom),
    ] {
        if run.abs() < 1e-12 {
            if start < low || start > high {
                return None;
            }
        } else {
            let (one, two) = ((low - start) / run, (high - start) / run);
            enter = enter.max(one.min(two));
            leave = leave.min(one.max(two));
        }
    }
    (enter < leave).then_some((enter, leave))
}

/// A line that enters a circle by less than this touches it, mm: half the narrowest pen.
const TOUCHING: f64 = 0.12;

/// The share of a line, from 0 to 1, that runs through a circle which it comes from outside and leaves again; nothing where it
/// begins or ends within, or only touches.
pub fn line_through(
    from: PaperPoint,
    to: PaperPoint,
    centre: PaperPoint,
    radius: f64,
) -> Option<(f64, f64)> {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let length = hypot(dx, dy);
    if length < LEAST_LINE {
        return None;
    }
    let middle = ((centre.x - from.x) * dx + (centre.y - from.y) * dy) / length;
    let aside = ((centre.x - from.x) * dy - (centre.y - from.y) * dx).abs() / length;
    if aside >= radius - TOUCHING {
        return None;
    }
    let half = sqrt(radius * radius - aside * aside);
    let whole = middle - half >= -TOUCHING && middle + half <= length + TOUCHING;
    whole.then_some(((middle - half) / length, (middle + half) / length))
}

/// No line is shorter, mm.
const LEAST_LINE: f64 = 1e-9;

fn line_meets(from: PaperPoint, to: PaperPoint, b: &PaperBox) -> bool {
    line_within(from, to, b).is_some()
}

fn arc_meets(centre: PaperPoint, radius: f64, start: f64, sweep: f64, b: &PaperBox) -> bool {
    // A chord every half millimetre is finer than any gap asked for.
    let steps = ((sweep.to_radians() * radius / 0.5).ceil() as usize).clamp(1, 4000);
    (0..=steps).any(|i| {
        let a = (start + sweep * i as f64 / steps as f64).to_radians();
        let (x, y) = (centre.x + radius * cos(a), centre.y + radius * sin(a));
        x >= b.left && x <= b.right && y >= b.top && y <= b.bottom
    })
}
