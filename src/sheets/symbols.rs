//! Signs by which groups of holes are told apart on a map in black and white, and from a photocopy of it.

use super::board::Board;
use super::{PaperPoint, Pattern, Pen, Role, at};
use crate::units::angle::{PI, cos, sin};

/// How many signs there are; groups beyond that take the first ones again with a second ring.
const SIGNS: usize = 8;

/// Puts the sign of a group into a hole of this radius on paper.
pub fn put_sign(board: &mut Board, c: PaperPoint, radius: f64, group: usize) {
    board.circle(c, radius, Pen::Middle, Pattern::Continuous, Role::Object);
    if group >= SIGNS {
        board.circle(
            c,
            radius + 0.9,
            Pen::Narrow,
            Pattern::Continuous,
            Role::Object,
        );
    }
    let r = radius;
    match group % SIGNS {
        0 => {}
        1 => sector(board, c, r, 0.0, 360.0),
        2 => {
            stroke(board, at(c.x - r, c.y), at(c.x + r, c.y));
            stroke(board, at(c.x, c.y - r), at(c.x, c.y + r));
        }
        3 => sector(board, c, r, 0.0, 180.0),
        4 => {
            let d = r * cos(PI / 4.0);
            stroke(board, at(c.x - d, c.y - d), at(c.x + d, c.y + d));
            stroke(board, at(c.x - d, c.y + d), at(c.x + d, c.y - d));
        }
        5 => {
            sector(board, c, r, 0.0, 90.0);
            sector(board, c, r, 180.0, 270.0);
        }
        6 => {
            for k in [-0.5, 0.0, 0.5] {
                let half = r * cos(k * PI / 3.0);
                let y = c.y + r * sin(k * PI / 3.0);
                stroke(board, at(c.x - half, y), at(c.x + half, y));
            }
        }
        _ => sector(board, c, r * 0.5, 0.0, 360.0),
    }
}

fn stroke(board: &mut Board, a: PaperPoint, b: PaperPoint) {
    board.line(a, b, Pen::Middle, Pattern::Continuous, Role::Object);
}

/// A filled part of a disc, degrees clockwise on paper from x.
fn sector(board: &mut Board, c: PaperPoint, r: f64, from: f64, to: f64) {
    let steps = 24;
    let mut corners: Vec<PaperPoint> = (0..=steps)
        .map(|i| {
            let a = (from + (to - from) * f64::from(i) / f64::from(steps)).to_radians();
            at(c.x + r * cos(a), c.y + r * sin(a))
        })
        .collect();
    if to - from < 360.0 {
        corners.push(c);
    }
    board.filled(corners, Role::Object);
}
