//! Circles with their letters round the places that are enlarged on the details sheet.

use super::board::{Board, PaperBox};
use super::clear::{crosses_lettering, is_clear, touches};
use super::detail_letters::{Shows, lettered};
use super::letter_size::FIGURES;
use super::section::SectionView;
use super::set::Set;
use super::text_box::text_box;
use super::view::View;
use super::{Hang, Mark, PaperPoint, Pattern, Pen, Role, at, face};
use crate::design::{FlangeDesign, Hole, PlacedPad};
use crate::units::Length;
use crate::units::angle::{PI, cos, hypot, sin};

/// Clear paper between a hole's edge and the circle round it, mm.
const ROUND: f64 = 1.3;
/// Radius of the circle about a place of a weld, mm of paper.
const ON_WELD: f64 = 2.4;
/// Clear paper round a letter, mm.
const CLEAR: f64 = 0.7;
/// A letter no further from its circle than this stands at it without a line, mm.
const CLOSE_BY: f64 = 1.0;
/// By so much a letter stands nearer to its own circle than to another, mm.
const FROM_OTHERS: f64 = 3.0;
/// Directions tried for a letter about its circle.
const DIRECTIONS: i32 = 24;

/// Puts the circle and letter of every detail on face and section, each where it goes without touching what is there; tells
/// which letters found no place. `reach` is how far a letter may stand from its circle, mm.
pub fn put_places(
    board: &mut Board,
    set: &Set<'_>,
    (view, section): (&View, &SectionView),
    reach: f64,
) -> Vec<String> {
    let mut missed = Vec::new();
    for (letter, shows) in lettered(set) {
        let Some(letter) = letter else { continue };
        let places = match shows {
            Shows::Heel | Shows::Ring => vec![at_flange(set, section, 1.0)],
            Shows::Preparation => vec![at_flange(set, section, -1.0)],
            Shows::Hole(group) => at_holes(set, view, group),
            Shows::Joint(repair) => on_weld(set, view, repair),
            Shows::HeelGauge | Shows::RollCheck => Vec::new(),
        };
        // At its own circle alone; else at the end of a line; else beside another circle rather than nowhere.
        let ways = [(reach.min(CLOSE_BY), true), (reach, true), (reach, false)];
        let put = ways.into_iter().any(|way| {
            let mut places = places.iter().flatten();
            places.any(|&place| put_place(board, place, &letter, way))
        });
        if !put {
            missed.push(letter);
        }
    }
    missed
}

/// The bend or the welds in section, at the top or at the foot.
pub fn at_flange(set: &Set<'_>, s: &SectionView, hand: f64) -> Option<(PaperPoint, f64)> {
    let (u, y, r) = match set.design.flange.as_ref()? {
        FlangeDesign::Pressed(p) => {
            let heel = p.heel_radius.value().to_mm();
            let half = (heel + s.thickness) / 2.0;
            (half, p.tangent_radius.to_mm() + half, half * 1.5)
        }
        FlangeDesign::Fabricated(f) => {
            let thick = f.ring_thickness.value().to_mm();
            let middle = f.ring_outside_diameter.value().to_mm() / 2.0 - thick / 2.0;
            let leg = f.weld_leg_inside.value().max(f.weld_leg_outside.value());
            (s.thickness, middle, thick / 2.0 + leg.to_mm())
        }
    };
    Some((s.place(u, hand * y), (r * s.scale + 0.6).max(2.2)))
}

/// Places along a weld, those nearest its middle first.
fn on_weld(set: &Set<'_>, view: &View, repair: usize) -> Vec<Option<(PaperPoint, f64)>> {
    let weld = &set.design.repairs[repair].weld;
    let mut edges: Vec<_> = weld.iter().collect();
    edges.sort_by(|a, b| b.length_mm().total_cmp(&a.length_mm()));
    let shares = [0.3, 0.7, 0.5, 0.15, 0.85];
    let places = edges
        .into_iter()
        .flat_map(|edge| shares.map(|share| edge.at_share(share)));
    places.map(|p| Some((view.place(p), ON_WELD))).collect()
}

/// Holes of a group, those nearest the right-hand edge first: letters have the most room there.
fn at_holes(set: &Set<'_>, view: &View, group: usize) -> Vec<Option<(PaperPoint, f64)>> {
    let holes = set.design.holes.iter();
    let mut holes: Vec<&Hole> = holes.filter(|h| h.group == group).collect();
    let outwards = |h: &Hole| h.at.x * 0.9 - h.at.y * 0.4;
    holes.sort_by(|a, b| outwards(b).total_cmp(&outwards(a)));
    holes
        .into_iter()
        .take(8)
        .map(|h| {
            // Round a pad too, whose edge and weld the detail shows.
            let of_hole = set.design.pads.iter();
            let pad = of_hole.filter(|pad| std::ptr::eq(&set.design.holes[pad.hole], h));
            let own = h.finish.value() / 2.0;
            let r = pad.map(PlacedPad::toe_radius).fold(own, Length::max);
            Some((view.place(h.at), r.to_mm() * view.scale + ROUND))
        })
        .collect()
}

/// Whether a letter at its own circle stands as near to another one, whose letter it would be taken for.
fn is_at_another(board: &Board, b: &PaperBox, (c, radius): (PaperPoint, f64)) -> bool {
    let from = |p: PaperPoint, r: f64| {
        let dx = (b.left - p.x).max(p.x - b.right).max(0.0);
        let dy = (b.top - p.y).max(p.y - b.bottom).max(0.0);
        hypot(dx, dy) - r
    };
    let own = from(c, radius).max(0.0);
    // What the circle lies round is its own, and what the letter stands within is too large to be named by it.
    board.marks.iter().any(|mark| match mark {
        Mark::Circle {
            centre, radius: r, ..
        } if hypot(centre.x - c.x, centre.y - c.y) > radius => {
            (0.0..own + FROM_OTHERS).contains(&from(*centre, *r))
        }
        _ => false,
    })
}

/// One circle and its letter beside it, or further off with a line between; false where neither circle nor letter is clear.
/// `alone` asks that the letter stand nearer to its own circle than to any other.
fn put_place(
    board: &mut Board,
    (c, radius): (PaperPoint, f64),
    letter: &str,
    (reach, alone): (f64, bool),
) -> bool {
    let circle = Mark::circle(c, radius, Pen::Narrow, Role::Dimension);
    let through_words = |mark: &Mark| matches!(mark, Mark::Text(text) if touches(&circle, &text_box(text).grown(CLEAR)));
    if board.marks.iter().any(through_words) {
        return false;
    }
    let half = face::width(letter, FIGURES, true) / 2.0;
    let steps = (reach / 0.75).ceil() as i32;
    for step in 0..=steps {
        let off = radius + 1.0 + f64::from(step) * 0.75;
        for turn in 0..DIRECTIONS {
            // To the upper right first, then both ways round from there.
            let k = if turn % 2 == 0 {
                turn / 2
            } else {
                -(turn + 1) / 2
            };
            let a = -PI / 4.0 + f64::from(k) * 2.0 * PI / f64::from(DIRECTIONS);
            let (dx, dy) = (cos(a), sin(a));
            let middle = at(
                c.x + off * dx + half * dx.signum() * dx.abs().min(1.0),
                c.y + off * dy + FIGURES / 2.0 * dy,
            );
            let box_of = PaperBox::new(
                middle.x - half,
                middle.y - FIGURES / 2.0,
                middle.x + half,
                middle.y + FIGURES / 2.0,
            );
            if !is_clear(board, &box_of, CLEAR) || touches(&circle, &box_of.grown(0.4)) {
                continue;
            }
            let from = at(c.x + radius * dx, c.y + radius * dy);
            let to = at(c.x + (off - 0.6) * dx, c.y + (off - 0.6) * dy);
            let far = off - radius > 2.5;
            if alone && !far && is_at_another(board, &box_of, (c, radius)) {
                continue;
            }
            if far && crosses_lettering(board, from, to) {
                continue;
            }
            let pattern = Pattern::Continuous;
            board.circle(c, radius, Pen::Narrow, pattern, Role::Dimension);
            if far {
                board.dimension_line(from, to);
            }
            let base = at(middle.x, middle.y + FIGURES / 2.0);
            board.bold(base, letter, FIGURES, Hang::Middle);
            return true;
        }
    }
    false
}
