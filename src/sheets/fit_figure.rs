//! The flange as one looks at it, with numbered places at which the gap to the barrel is felt.

use super::board::{Board, PaperBox};
use super::kept::pieces;
use super::letter_size::{FIGURES, NOTES, TABLE, fitting_height};
use super::particulars::view_words;
use super::set::Set;
use super::{Hang, PaperPoint, Pattern, Pen, Role, at};
use crate::design::{RivetLine, ring_joint};
use crate::units::angle::{cos, from_top_clockwise, sin};
use crate::units::print::trimmed;

/// Places round the flange.
pub const PLACES: usize = 16;
/// Room round the barrel for the numbers, mm.
const ROUND: f64 = 13.0;
/// Width of barrel and flange as drawn, mm: the figure is not to scale.
const METAL: f64 = 4.0;
/// The gap as drawn, mm.
const GAP: f64 = 1.2;

/// A place by its number, counted clockwise from the bottom, and its angle: "1, 180°".
pub fn place_words(place: usize) -> String {
    format!("{place}, {}°", trimmed(place_deg(place), 1))
}

/// Puts the figure into a box.
pub fn put_fit_figure(board: &mut Board, set: &Set<'_>, room: &PaperBox) {
    let foot = 8.0;
    let c = at(room.middle().x, (room.top + room.bottom - foot) / 2.0);
    let outside = (room.width() / 2.0).min((room.height() - foot) / 2.0) - ROUND;
    let on = |deg: f64, r: f64| {
        let a = from_top_clockwise(deg);
        at(c.x + r * cos(a), c.y - r * sin(a))
    };
    let flange = outside - METAL - GAP;
    for r in [outside, outside - METAL, flange, flange - METAL] {
        board.circle(c, r, Pen::Wide, Pattern::Continuous, Role::Object);
    }
    put_rivets(board, set, &on, outside, flange);
    put_pieces(board, set, &on, outside, flange);
    for place in 1..=PLACES {
        let deg = place_deg(place);
        board.line(
            on(deg, outside),
            on(deg, outside + 3.5),
            Pen::Narrow,
            Pattern::Continuous,
            Role::Dimension,
        );
        let p = on(deg, outside + 7.5);
        let words = place.to_string();
        board.bold(at(p.x, p.y + FIGURES / 2.0), &words, FIGURES, Hang::Middle);
    }
    for (words, deg) in [
        ("TOP", 0.0),
        ("RIGHT", 90.0),
        ("BOTTOM", 180.0),
        ("LEFT", 270.0),
    ] {
        let p = on(deg, flange - METAL - 10.0);
        board.text(at(p.x, p.y + TABLE / 2.0), words, TABLE, Hang::Middle);
    }
    let reach = flange - METAL - 18.0;
    board.centre_line(at(c.x - reach, c.y), at(c.x + reach, c.y));
    board.centre_line(at(c.x, c.y - reach), at(c.x, c.y + reach));
    let mark = match set.design.kept {
        true => ["MARK THE BARREL'S", "SEAM HERE"],
        false => ["MARK BARREL SEAM", "AND PATCHES HERE"],
    };
    let joint = ring_joint(set.spec, set.design);
    let mut inside = vec![
        (-8.5, "BARREL OUTSIDE,".to_string()),
        (-4.0, "FLANGE WITHIN IT".into()),
    ];
    match joint.as_ref().and_then(|joint| Some((joint, joint.seam?))) {
        Some((joint, (seam, _))) => {
            // Where both are known they are drawn, and only what nobody has told is left to be marked.
            for (deg, from) in [(seam, outside), (joint.angle_deg, flange)] {
                let (a, b) = (on(deg, from), on(deg, from - METAL));
                board.line(a, b, Pen::Frame, Pattern::Continuous, Role::Object);
            }
            inside.push((6.5, format!("BARREL SEAM AT {}°,", trimmed(seam, 3))));
            inside.push((
                11.0,
                format!("RING JOINT AT {}°.", trimmed(joint.angle_deg, 3)),
            ));
            inside.push((15.5, "MARK PATCHES HERE".into()));
        }
        None => {
            inside.push((6.5, mark[0].into()));
            inside.push((11.0, mark[1].into()));
        }
    }
    for (below, words) in inside {
        board.text(at(c.x, c.y + below), &words, TABLE, Hang::Middle);
    }
    let words = format!(
        "PLACES ROUND THE FLANGE, NOT TO SCALE, {}",
        view_words(set.design.view_from)
    );
    let height = fitting_height(&words, room.width(), NOTES, true);
    board.bold(
        at(room.middle().x, room.bottom - 1.0),
        &words,
        height,
        Hang::Middle,
    );
}

/// Where a place stands, degrees clockwise from the top: the first at bottom centre.
pub fn place_deg(place: usize) -> f64 {
    (180.0 + 360.0 * (place - 1) as f64 / PLACES as f64) % 360.0
}

/// The welds of the pieces let in across the flange, and the number of each within it.
fn put_pieces(
    board: &mut Board,
    set: &Set<'_>,
    on: &dyn Fn(f64, f64) -> PaperPoint,
    outside: f64,
    flange: f64,
) {
    for (number, repair, _) in pieces(set) {
        for crossing in &repair.crossings {
            board.line(
                on(crossing.angle_deg, flange - METAL - 3.0),
                on(crossing.angle_deg, (flange + outside - METAL) / 2.0),
                Pen::Frame,
                Pattern::Continuous,
                Role::Object,
            );
            let p = on(crossing.angle_deg, flange - METAL - 6.5);
            let base = at(p.x, p.y + NOTES / 2.0);
            board.bold(base, &number, NOTES, Hang::Middle);
        }
    }
}

/// A tick through flange and barrel at every rivet.
fn put_rivets(
    board: &mut Board,
    set: &Set<'_>,
    on: &dyn Fn(f64, f64) -> PaperPoint,
    outside: f64,
    flange: f64,
) {
    for rivet in set.design.rivets.iter().flat_map(RivetLine::places_round) {
        board.line(
            on(rivet.angle_deg, flange - METAL),
            on(rivet.angle_deg, outside),
            Pen::Narrow,
            Pattern::Continuous,
            Role::Centre,
        );
    }
}
