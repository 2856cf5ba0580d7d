//! Hatching of cut metal with real lines at 45 degrees.

use super::at;
use super::board::Board;
use super::{PaperPoint, Pattern, Pen, Role};
use crate::units::angle::{hypot, sqrt};

/// No line of a hatching is shorter, mm.
const LEAST: f64 = 0.02;

/// Which way the lines lean; neighbouring parts lean opposite ways.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lean {
    /// Up to the right.
    Right,
    /// Up to the left.
    Left,
}

/// Hatches the inside of polygons (odd–even), lines `spacing` mm apart.
pub fn hatch(board: &mut Board, polygons: &[Vec<PaperPoint>], spacing: f64, lean: Lean) {
    let side = match lean {
        Lean::Right => 1.0,
        Lean::Left => -1.0,
    };
    // x + y is constant along a line that rises to the right on a paper whose y runs down.
    let across = |p: &PaperPoint| p.x * side + p.y;
    let step = spacing * sqrt(2.0);
    let corners = || polygons.iter().flatten();
    let least = corners().map(across).fold(f64::INFINITY, f64::min);
    let most = corners().map(across).fold(f64::NEG_INFINITY, f64::max);
    if least >= most {
        return;
    }
    let mut at_line = (least / step).floor() * step + step / 2.0;
    while at_line < most {
        let crossings = crossings(polygons, &across, at_line);
        for pair in crossings.chunks_exact(2) {
            // Where an opening reaches an edge the two are crossed at one place, and nothing lies between.
            if hypot(pair[1].x - pair[0].x, pair[1].y - pair[0].y) < LEAST {
                continue;
            }
            board.line(
                pair[0],
                pair[1],
                Pen::Narrow,
                Pattern::Continuous,
                Role::Hatch,
            );
        }
        at_line += step;
    }
}

fn crossings(
    polygons: &[Vec<PaperPoint>],
    across: &dyn Fn(&PaperPoint) -> f64,
    line: f64,
) -> Vec<PaperPoint> {
    let mut found = Vec::new();
    for polygon in polygons {
        for i in 0..polygon.len() {
            let (a, b) = (polygon[i], polygon[(i + 1) % polygon.len()]);
            let (ca, cb) = (across(&a), across(&b));
            if (ca < line) != (cb < line) {
                let t = (line - ca) / (cb - ca);
                found.push(at(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t));
            }
        }
    }
    found.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    found
}

#[cfg(test)]
mod tests {
    use super::super::Mark;
    use super::super::board::PaperBox;
    use super::*;

    /// Every hatch line of a square with a square hole lies in the metal.
    #[test]
    fn holds_hatching_stays_in_the_metal() {
        let square =
            |low: f64, high: f64| vec![at(low, low), at(high, low), at(high, high), at(low, high)];
        let mut board = Board::new("t", "t", PaperBox::new(0.0, 0.0, 100.0, 100.0));
        hatch(
            &mut board,
            &[square(0.0, 30.0), square(10.0, 20.0)],
            2.0,
            Lean::Right,
        );
        assert!(board.marks.len() > 20);
        for mark in &board.marks {
            let Mark::Line { from, to, .. } = mark else {
                panic!("hatching is lines")
            };
            for t in [0.1, 0.5, 0.9] {
                let (x, y) = (from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t);
                let in_hole = x > 10.01 && x < 19.99 && y > 10.01 && y < 19.99;
                assert!(!in_hole && (0.0..=30.0).contains(&x) && (0.0..=30.0).contains(&y));
            }
        }
    }
}
