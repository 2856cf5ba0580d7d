//! Centre lines, hatching and extension lines stop short of lettering, and extension lines of holes, as a draughtsman's do.

use super::at;
use super::board::{Board, PaperBox};
use super::clear::{line_through, line_within, touches};
use super::text_box::text_box;
use super::{Mark, PaperPoint, Role};
use crate::units::angle::{cos, hypot, sin};

/// Metal-free strip kept round lettering, mm.
const GAP: f64 = 0.6;
/// Pieces of a line shorter than this are left out, mm.
const LEAST_PIECE: f64 = 0.8;

/// Takes out every part of a centre line, hatch line or dimension line that would run through lettering.
pub fn interrupt_lines_at_lettering(board: &mut Board) {
    let boxes: Vec<PaperBox> = board
        .marks
        .iter()
        .filter_map(|m| match m {
            Mark::Text(t) => Some(text_box(t).grown(GAP)),
            _ => None,
        })
        .collect();
    let marks = std::mem::take(&mut board.marks);
    for mark in marks {
        let role = match &mark {
            Mark::Line { role, .. } | Mark::Arc { role, .. } | Mark::Circle { role, .. } => *role,
            Mark::Filled { .. } | Mark::Text(_) => Role::Lettering,
        };
        let gives_way = matches!(
            role,
            Role::Centre | Role::Hatch | Role::Dimension | Role::Extension
        );
        let in_the_way: Vec<&PaperBox> = if gives_way {
            boxes.iter().filter(|b| touches(&mark, b)).collect()
        } else {
            Vec::new()
        };
        if in_the_way.is_empty() {
            board.marks.push(mark);
        } else {
            board.marks.extend(pieces(&mark, &in_the_way));
        }
    }
}

/// An extension line stops so far short of a hole in its way, and goes on so far beyond, mm.
const BESIDE_HOLE: f64 = 1.0;

/// Takes out every part of an extension line that would run through a hole which it has no business with: a line across a hole
/// is read as the hole's own.
pub fn interrupt_extension_lines_at_holes(board: &mut Board) {
    let holes: Vec<(PaperPoint, f64)> = board
        .marks
        .iter()
        .filter_map(|m| match m {
            Mark::Circle {
                centre,
                radius,
                role: Role::Object,
                ..
            } => Some((*centre, *radius)),
            _ => None,
        })
        .collect();
    let marks = std::mem::take(&mut board.marks);
    for mark in marks {
        let Mark::Line {
            from,
            to,
            pen,
            pattern,
            role: Role::Extension,
        } = mark
        else {
            board.marks.push(mark);
            continue;
        };
        let length = hypot(to.x - from.x, to.y - from.y);
        let beside = BESIDE_HOLE / length.max(BESIDE_HOLE);
        let cuts = holes
            .iter()
            .filter_map(|&(centre, radius)| line_through(from, to, centre, radius))
            .map(|(a, b)| (a - beside, b + beside))
            .collect();
        let along = |t: f64| at(from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t);
        for (a, b) in left_over(cuts, LEAST_PIECE / length.max(LEAST_PIECE)) {
            let (from, to) = (along(a), along(b));
            board.line(from, to, pen, pattern, Role::Extension);
        }
    }
}

/// What is left of a mark outside the boxes.
fn pieces(mark: &Mark, boxes: &[&PaperBox]) -> Vec<Mark> {
    match mark {
        Mark::Line {
            from,
            to,
            pen,
            pattern,
            role,
        } => {
            let length = hypot(to.x - from.x, to.y - from.y);
            let cuts = boxes.iter().filter_map(|b| line_within(*from, *to, b));
            let along = |t: f64| at(from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t);
            left_over(cuts.collect(), LEAST_PIECE / length.max(LEAST_PIECE))
                .into_iter()
                .map(|(a, b)| Mark::Line {
                    from: along(a),
                    to: along(b),
                    pen: *pen,
                    pattern: *pattern,
                    role: *role,
                })
                .collect()
        }
        Mark::Circle {
            centre,
            radius,
            pen,
            pattern,
            role,
        } => {
            let whole = Mark::Arc {
                centre: *centre,
                radius: *radius,
                start_deg: 0.0,
                sweep_deg: 360.0,
                pen: *pen,
                pattern: *pattern,
                role: *role,
            };
            pieces(&whole, boxes)
        }
        Mark::Arc {
            centre,
            radius,
            start_deg,
            sweep_deg,
            pen,
            pattern,
            role,
        } => arc_pieces(*centre, *radius, *start_deg, *sweep_deg, boxes)
            .into_iter()
            .map(|(start_deg, sweep_deg)| Mark::Arc {
                centre: *centre,
                radius: *radius,
                start_deg,
                sweep_deg,
                pen: *pen,
                pattern: *pattern,
                role: *role,
            })
            .collect(),
        Mark::Filled { .. } | Mark::Text(_) => vec![mark.clone()],
    }
}

/// Shares of 0 to 1 that no cut covers and that are worth drawing.
fn left_over(mut cuts: Vec<(f64, f64)>, least: f64) -> Vec<(f64, f64)> {
    cuts.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (mut left, mut from) = (Vec::new(), 0.0_f64);
    for (a, b) in cuts {
        if a - from > least {
            left.push((from, a));
        }
        from = from.max(b);
    }
    if 1.0 - from > least {
        left.push((from, 1.0));
    }
    left
}

/// Start and sweep of what is left of an arc, found to a fifth of a millimetre.
fn arc_pieces(
    centre: PaperPoint,
    radius: f64,
    start: f64,
    sweep: f64,
    boxes: &[&PaperBox],
) -> Vec<(f64, f64)> {
    let steps = ((sweep.to_radians() * radius / 0.2).ceil() as usize).max(8);
    let inside = |i: usize| {
        let a = (start + sweep * i as f64 / steps as f64).to_radians();
        let (x, y) = (centre.x + radius * cos(a), centre.y + radius * sin(a));
        boxes
            .iter()
            .any(|b| x >= b.left && x <= b.right && y >= b.top && y <= b.bottom)
    };
    let mut cuts = Vec::new();
    for i in 0..steps {
        if inside(i) || inside(i + 1) {
            cuts.push((i as f64 / steps as f64, (i + 1) as f64 / steps as f64));
        }
    }
    let length = sweep.to_radians() * radius;
    left_over(cuts, LEAST_PIECE / length.max(LEAST_PIECE))
        .into_iter()
        .map(|(a, b)| (start + sweep * a, sweep * (b - a)))
        .collect()
}
