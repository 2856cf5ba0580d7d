//! Signs by which groups of holes are told apart on a map in black and white, and from a photocopy of it.

use super::board::Board;
use super::{PaperPoint, Pattern, Pen, Role, at};
use crate::design::Design;
use crate::units::angle::{PI, cos, sin};

/// How many signs there are; groups beyond that take the first ones again with a second ring.
const SIGNS: usize = 8;

/// The sign of each group: nothing but the hole for the one with most holes, so that a nest stays quiet, then the next by
/// number off.
pub fn signs_of(design: &Design) -> Vec<usize> {
    let mut off = vec![0_usize; design.groups.len()];
    for hole in &design.holes {
        off[hole.group] += 1;
    }
    let mut order: Vec<usize> = (0..off.len()).collect();
    order.sort_by_key(|&group| std::cmp::Reverse(off[group]));
    let mut signs = vec![0; off.len()];
    for (sign, group) in order.into_iter().enumerate() {
        signs[group] = sign;
    }
    signs
}

/// Puts a sign into a hole of this radius on paper, round which a circle has been drawn or is drawn by the caller.
pub fn put_sign(board: &mut Board, c: PaperPoint, radius: f64, sign: usize) {
    let r = radius;
    let ring = |board: &mut Board, r: f64| {
        board.circle(c, r, Pen::Narrow, Pattern::Continuous, Role::Object);
    };
    if sign >= SIGNS {
        ring(board, r + 0.9);
    }
    match sign % SIGNS {
        0 => {}
        1 => ring(board, r * 0.6),
        2 => sector(board, c, r, 0.0, 90.0),
        3 => {
            let d = r * cos(PI / 4.0);
            stroke(board, at(c.x - d, c.y - d), at(c.x + d, c.y + d));
            stroke(board, at(c.x - d, c.y + d), at(c.x + d, c.y - d));
        }
        4 => {
            sector(board, c, r, 0.0, 90.0);
            sector(board, c, r, 180.0, 270.0);
        }
        5 => sector(board, c, r, 0.0, 180.0),
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

/// The sign with its hole about it, for a map or a key.
pub fn put_signed_hole(board: &mut Board, c: PaperPoint, radius: f64, sign: usize) {
    board.circle(c, radius, Pen::Middle, Pattern::Continuous, Role::Object);
    put_sign(board, c, radius, sign);
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
