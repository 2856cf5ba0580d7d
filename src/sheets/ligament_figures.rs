//! Small figures of the tightest pairs of a nest, one for each direction, each laid level with its metal and its pitch.

use super::board::{Board, PaperBox};
use super::dimension::{Says, across};
use super::letter_size::{LINE_PITCH, TABLE};
use super::scale::{Scale, largest_scale};
use super::set::Set;
use super::view::Stroke;
use super::{Hang, PaperPoint, at, face};
use crate::design::DirectionLigament;

/// Room above the holes for the metal and below them for the pitch, mm.
const ABOVE: f64 = 12.0;
const BELOW: f64 = 17.0;
/// The figures want no more height than this for the holes, mm.
const HOLES: f64 = 30.0;
/// Clear strip between figures, mm.
const BETWEEN: f64 = 12.0;

/// Height that the figures would like, mm.
pub fn figures_height(set: &Set<'_>) -> f64 {
    if set.design.directions.is_empty() {
        0.0
    } else {
        ABOVE + BELOW + HOLES + 6.0
    }
}

/// Puts the figures side by side in a box; nothing where it is too low for them.
pub fn put_ligament_figures(board: &mut Board, set: &Set<'_>, room: &PaperBox) {
    let pairs: Vec<&DirectionLigament> = set.design.directions.iter().take(3).collect();
    let widest = pairs
        .iter()
        .map(|d| (d.ligament.pitch + d.hole).to_mm())
        .fold(0.0, f64::max);
    let tallest = pairs.iter().map(|d| d.hole.to_mm()).fold(0.0, f64::max);
    if pairs.is_empty() || room.height() < ABOVE + BELOW + 8.0 {
        return;
    }
    let count = pairs.len() as f64;
    let wide = (room.width() - BETWEEN * (count - 1.0)) / count;
    let high = (room.height() - ABOVE - BELOW).min(HOLES);
    let scale = largest_scale(widest, tallest, (wide, high), set.figures.in_inches());
    let captions: Vec<[String; 2]> = pairs.iter().map(|d| caption(set, d, scale)).collect();
    let lettering = captions
        .iter()
        .flatten()
        .map(|words| face::width(words, TABLE, false))
        .fold(0.0, f64::max);
    let drawn = widest * scale.factor();
    let aside = ((lettering - drawn) / 2.0).max(0.0);
    let start = room.left + 4.0 + aside;
    let step = (drawn.max(lettering) + 24.0).min(wide + BETWEEN);
    let middle = room.top + ABOVE + tallest * scale.factor() / 2.0;
    for (i, (pair, caption)) in pairs.iter().zip(&captions).enumerate() {
        let left = start + i as f64 * step;
        let below = put_pair(board, set, pair, scale, at(left, middle));
        for (k, words) in caption.iter().enumerate() {
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
        board.text(at(c.x, y - 1.0 + TABLE / 2.0), id, TABLE, Hang::Middle);
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
        y - r - 4.0,
        says(&metal, d.ligament.metal),
    );
    let words = set.figures.short(d.ligament.pitch);
    across(
        board,
        at(a.x, y + r),
        at(b.x, y + r),
        y + r + 8.0,
        says(&words, d.ligament.pitch),
    );
    at((a.x + b.x) / 2.0, y + r + 8.0 + TABLE + 1.8)
}
