//! Small figures of the tightest pairs of a nest, one for each direction, each laid level with its metal and its pitch.

use super::board::{Board, PaperBox};
use super::dimension::{FIRST_ROW, Says, across};
use super::face_view::number_height;
use super::letter_size::{LINE_PITCH, TABLE};
use super::scale::{Scale, largest_scale};
use super::set::Set;
use super::view::Stroke;
use super::{Hang, PaperPoint, at};
use crate::design::DirectionLigament;

/// Room above the holes for the metal and below them for the pitch, mm.
const ABOVE: f64 = 18.0;
const BELOW: f64 = 21.0;
/// The figures want no more height than this for the holes, mm.
const HOLES: f64 = 30.0;
/// Clear strip between figures, mm.
const BETWEEN: f64 = 6.0;
/// Room of a figure beside its holes, for centre lines and figures beyond the arrows, mm.
const AROUND: f64 = 8.0;

/// Height that the figures would like, mm.
pub fn figures_height(set: &Set<'_>) -> f64 {
    if set.design.directions.is_empty() {
        0.0
    } else {
        ABOVE + BELOW + HOLES + 6.0
    }
}

/// The pairs that are drawn.
fn pairs<'a>(set: &Set<'a>) -> Vec<&'a DirectionLigament> {
    set.design.directions.iter().take(3).collect()
}

/// The scale of every figure in a box: each as large as its share of the box holds; none where the box is too low for them.
fn scales(set: &Set<'_>, room: &PaperBox) -> Option<Vec<Scale>> {
    let pairs = pairs(set);
    if pairs.is_empty() || room.height() < ABOVE + BELOW + 8.0 {
        return None;
    }
    let count = pairs.len() as f64;
    let wide = (room.width() - BETWEEN * (count - 1.0)) / count - AROUND;
    let high = (room.height() - ABOVE - BELOW).min(HOLES);
    let inches = set.figures.in_inches();
    let scale = |d: &&DirectionLigament| {
        let (across, hole) = ((d.ligament.pitch + d.hole).to_mm(), d.hole.to_mm());
        largest_scale(across, hole, (wide, high), inches)
    };
    Some(pairs.iter().map(scale).collect())
}

/// Puts the figures side by side in that one of the boxes where they are drawn larger, the first where both are alike; nothing
/// where each is too low for them.
pub fn put_ligament_figures(board: &mut Board, set: &Set<'_>, rooms: &[PaperBox]) {
    let first = |scales: &[Scale]| scales.first().map_or(0.0, |s| s.factor());
    let fitting = rooms.iter().filter_map(|r| Some((r, scales(set, r)?)));
    let Some((room, scales)) =
        fitting.reduce(|best, other| match first(&other.1) > first(&best.1) {
            true => other,
            false => best,
        })
    else {
        return;
    };
    let pairs = pairs(set);
    let step = (room.width() + BETWEEN) / pairs.len() as f64;
    let tallest = pairs
        .iter()
        .zip(&scales)
        .map(|(pair, scale)| pair.hole.to_mm() * scale.factor())
        .fold(0.0, f64::max);
    let middle = room.top + ABOVE + tallest / 2.0;
    for (i, (pair, &scale)) in pairs.iter().zip(&scales).enumerate() {
        let drawn = (pair.ligament.pitch + pair.hole).to_mm() * scale.factor();
        let left = room.left + i as f64 * step + (step - BETWEEN - drawn) / 2.0;
        let below = put_pair(board, set, pair, scale, at(left, middle));
        for (k, words) in caption(set, pair, scale).iter().enumerate() {
            let base = below.y + k as f64 * TABLE * LINE_PITCH;
            board.text(at(below.x, base), words, TABLE, Hang::Middle);
        }
    }
}

/// Two lines that name a figure.
fn caption(set: &Set<'_>, d: &DirectionLigament, scale: Scale) -> [String; 2] {
    let nest = &set.design.groups[d.group].name;
    [
        format!("{nest}, {}", d.direction).to_uppercase(),
        format!("LEAST METAL, SCALE {}", scale.words()),
    ]
}

/// Puts a pair down level from its left edge; tells where its caption begins.
fn put_pair(
    board: &mut Board,
    set: &Set<'_>,
    d: &DirectionLigament,
    scale: Scale,
    corner: PaperPoint,
) -> PaperPoint {
    let (left, y) = (corner.x, corner.y);
    let f = scale.factor();
    let r = d.hole.to_mm() / 2.0 * f;
    let pitch = d.ligament.pitch.to_mm() * f;
    let (a, b) = (at(left + r, y), at(left + r + pitch, y));
    let seen = Stroke::SEEN;
    for c in [a, b] {
        board.circle(c, r, seen.pen, seen.pattern, seen.role);
        board.centre_line(at(c.x, y - r - 2.0), at(c.x, y + r + 2.0));
    }
    board.centre_line(at(left - 2.0, y), at(b.x + r + 2.0, y));
    let (first, second) = d.ligament.holes;
    for (c, hole) in [(a, first), (b, second)] {
        let id = &set.design.holes[hole].id;
        match number_height(id, r) {
            Some(height) => board.text(at(c.x, y + height / 2.0), id, height, Hang::Middle),
            None => board.text(at(c.x, y - r - 1.0), id, TABLE, Hang::Middle),
        }
    }
    let says = |words, length| Says {
        words,
        length,
        scale: f,
    };
    let metal = set.figures.short(d.ligament.metal);
    across(
        board,
        at(a.x + r, y),
        at(b.x - r, y),
        y - r - FIRST_ROW,
        says(&metal, d.ligament.metal),
    );
    let words = set.figures.short(d.ligament.pitch);
    across(
        board,
        at(a.x, y + r),
        at(b.x, y + r),
        y + r + FIRST_ROW,
        says(&words, d.ligament.pitch),
    );
    at((a.x + b.x) / 2.0, y + r + FIRST_ROW + TABLE + 3.0)
}
