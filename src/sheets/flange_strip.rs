//! The flange unrolled: its rivet holes along the girth from bottom centre, with their numbers, the joint of a ring and the barrel's seam.

use super::board::{Board, PaperBox};
use super::clear::is_clear;
use super::kept::pieces;
use super::letter_size::{NOTES, TABLE, fitting_height};
use super::rivet_plan::{is_named, joint_marks, put_sign};
use super::scale::largest_scale;
use super::section::flange_is_near;
use super::set::Set;
use super::text_box::rise_and_fall;
use super::{Hang, Pattern, Pen, Role, at, face};
use crate::design::{FlangeDesign, RivetLine};
use crate::units::Length;

/// Room above the strip for the numbers of the rivets, mm.
const NUMBERS: f64 = 5.0;
/// And below it for the quarters and the title, mm.
const BELOW: f64 = 10.5;
/// From an end to what is named there, mm.
const ENDS: f64 = 2.0;
/// Left free at the left end for the names of the edges, mm.
const EDGE_NAMES: f64 = 12.0;
/// And at the right end where rows are named there, mm.
const ROW_NAMES: f64 = 13.0;
/// What stands beyond an edge is named so far from other words, with which it would be read together, mm.
const APART: f64 = 2.2;
/// No sign of a rivet is smaller, mm.
const LEAST_SIGN: f64 = 0.6;

/// The strip on the paper.
struct Strip {
    left: f64,
    top: f64,
    foot: f64,
    /// Millimetres of paper for a millimetre of flange.
    f: f64,
    /// Length of the girth on paper.
    long: f64,
    /// Whether the flange's edge lies below.
    near: bool,
}

impl Strip {
    /// Paper x of an angle clockwise from the top.
    fn at_angle(&self, deg: f64) -> f64 {
        self.left + self.long * (deg - 180.0).rem_euclid(360.0) / 360.0
    }

    /// Paper y of a distance from the flange's edge, mm of flange.
    fn at_depth(&self, length: f64) -> f64 {
        match self.near {
            true => self.foot - length * self.f,
            false => self.top + length * self.f,
        }
    }
}

/// Puts the strip into a box as wide as the sheet; its scale is its own.
pub fn put_flange_strip(board: &mut Board, set: &Set<'_>, line: &RivetLine, room: &PaperBox) {
    let Some(flange) = &set.design.flange else {
        return;
    };
    let girth = line.girth_bore.to_mm();
    let straight = match flange {
        FlangeDesign::Pressed(p) => p.straight.value().to_mm(),
        FlangeDesign::Fabricated(f) => f.ring_width.value().to_mm(),
    };
    let after = line.rows.as_ref().map_or(ENDS, |_| ROW_NAMES);
    let long = room.width() - EDGE_NAMES - after;
    let high = room.height() - NUMBERS - BELOW;
    let scale = largest_scale(girth, straight, (long, high), set.figures.in_inches());
    let f = scale.factor();
    let strip = Strip {
        left: room.left + EDGE_NAMES + (long - girth * f) / 2.0,
        top: room.top + NUMBERS,
        foot: room.top + NUMBERS + straight * f,
        f,
        long: girth * f,
        near: flange_is_near(set.design),
    };
    put_edges(board, &strip);
    put_rows(board, &strip, line);
    put_quarters(board, &strip);
    put_marks(board, set, &strip);
    put_pieces(board, set, &strip);
    put_ends(board, set, &strip);
    let title = format!(
        "FLANGE UNROLLED, SEEN FROM OUTSIDE, RUN AT BORE CLOCKWISE FROM BOTTOM CENTRE, SCALE {}",
        scale.words()
    );
    let height = fitting_height(&title, room.width(), NOTES, true);
    let place = at(room.middle().x, strip.foot + 2.5 + TABLE + 5.0);
    board.bold(place, &title, height, Hang::Middle);
}

/// Both edges of the strip, and its ends at bottom centre.
fn put_edges(board: &mut Board, strip: &Strip) {
    let right = strip.left + strip.long;
    for y in [strip.top, strip.foot] {
        board.edge_line(at(strip.left, y), at(right, y));
    }
}

/// The rows with their rivets; numbers of row 1 above the strip, and the first of row 2 too.
fn put_rows(board: &mut Board, strip: &Strip, line: &RivetLine) {
    let right = strip.left + strip.long;
    for row in 1..=line.row_count() {
        let y = strip.at_depth(line.from_edge_of(row).to_mm());
        board.centre_line(at(strip.left, y), at(right, y));
        if line.rows.is_some() {
            let words = format!("ROW {row}");
            board.text(at(right + 2.0, y + TABLE / 2.0), &words, TABLE, Hang::Start);
        }
    }
    let r = (line.hole.value().to_mm() / 2.0 * strip.f).max(LEAST_SIGN);
    for rivet in &line.rivets {
        let y = strip.at_depth(line.from_edge_of(rivet.row).to_mm());
        let c = at(strip.left + rivet.run.to_mm() * strip.f, y);
        put_sign(board, rivet.made, c, r);
        if is_named(line, rivet) {
            put_number(board, strip, c.x, &rivet.id);
        }
    }
}

/// The number of a rivet above the strip, left out where it would touch its neighbour's.
fn put_number(board: &mut Board, strip: &Strip, x: f64, id: &str) {
    let half = face::width(id, TABLE, false) / 2.0;
    let x = x.clamp(
        strip.left + half - ENDS,
        strip.left + strip.long - half + ENDS,
    );
    let base = strip.top - 1.5;
    let round = PaperBox::new(x - half, base - TABLE, x + half, base);
    if is_clear(board, &round, 0.6) {
        board.text(at(x, base), id, TABLE, Hang::Middle);
    }
}

fn put_quarters(board: &mut Board, strip: &Strip) {
    let names = ["BOTTOM", "LEFT", "TOP", "RIGHT", "BOTTOM"];
    for (i, words) in names.iter().enumerate() {
        let x = strip.left + strip.long * i as f64 / 4.0;
        let (a, b) = (at(x, strip.top - 1.0), at(x, strip.foot + 1.5));
        board.line(a, b, Pen::Narrow, Pattern::Chain, Role::Centre);
        let (x, hang) = match i {
            0 => (x - ENDS, Hang::Start),
            4 => (x + ENDS, Hang::End),
            _ => (x, Hang::Middle),
        };
        board.text(at(x, strip.foot + 2.5 + TABLE), words, TABLE, hang);
    }
}

/// The joint of a ring and the barrel's seam, named below the strip.
fn put_marks(board: &mut Board, set: &Set<'_>, strip: &Strip) {
    for mark in joint_marks(set) {
        let x = strip.at_angle(mark.deg);
        let (a, b) = (at(x, strip.top), at(x, strip.foot + 1.5));
        board.line(a, b, mark.stroke.pen, mark.stroke.pattern, mark.stroke.role);
        let half = face::width(&mark.words, TABLE, false) / 2.0;
        let base = strip.foot + 2.5 + TABLE;
        let aside = [0.0, 4.0, -4.0, 8.0, -8.0, 12.0, -12.0, 16.0, -16.0];
        let free = aside.into_iter().map(|off| x + off).find(|x| {
            let round = PaperBox::new(x - half, base - TABLE, x + half, base);
            is_clear(board, &round, 1.0)
        });
        if let Some(x) = free {
            board.text(at(x, base), &mark.words, TABLE, Hang::Middle);
        }
    }
}

/// Where the weld of a piece let in runs over the flange, with its number below the strip: above it stand the numbers of rivets.
fn put_pieces(board: &mut Board, set: &Set<'_>, strip: &Strip) {
    for (number, repair, _) in pieces(set) {
        for crossing in &repair.crossings {
            let x = strip.at_angle(crossing.angle_deg);
            let weld = (at(x, strip.top), at(x, strip.foot + 1.5));
            let pattern = Pattern::Continuous;
            board.line(weld.0, weld.1, Pen::Frame, pattern, Role::Object);
            let half = face::width(&number, TABLE, true) / 2.0;
            let free = |x: &f64, base: f64| {
                let round = PaperBox::new(x - half, base - TABLE, x + half, base);
                is_clear(board, &round, 0.6)
            };
            let bases = [strip.foot + 2.5 + TABLE, strip.top - 1.5];
            let aside = [0.0, 4.0, -4.0, 8.0, -8.0];
            let places = bases
                .into_iter()
                .flat_map(|base| aside.map(|off| (x + off, base)));
            if let Some((x, base)) = places.into_iter().find(|(x, base)| free(x, *base)) {
                board.bold(at(x, base), &number, TABLE, Hang::Middle);
            }
        }
    }
}

/// What lies along each edge, named at its end; and what stands beyond one, below the strip.
fn put_ends(board: &mut Board, set: &Set<'_>, strip: &Strip) {
    let other = match set.design.flange {
        Some(FlangeDesign::Fabricated(_)) => "PLATE",
        Some(FlangeDesign::Pressed(_)) | None => "HEEL",
    };
    let (above, below) = if strip.near {
        (other, "EDGE")
    } else {
        ("EDGE", other)
    };
    let trim = match &set.design.flange {
        Some(FlangeDesign::Pressed(p)) if p.trim.value() > Length::ZERO => {
            // Its fraction on one line, as in the tables: the title stands close below.
            let trim = set.figures.size_short(&p.trim).replace(['{', '}'], "");
            format!("TRIM {trim} STANDS BEYOND THE EDGE")
        }
        _ => String::new(),
    };
    // Apart where the strip is lower than two lines.
    let (middle, apart) = ((strip.top + strip.foot) / 2.0, 0.8 * TABLE);
    let upper = strip.top.min(middle - apart);
    let lower = strip.foot.max(middle + apart);
    for (words, y) in [(above, upper), (below, lower)] {
        let place = at(strip.left - ENDS, y + TABLE / 2.0);
        board.text(place, words, TABLE, Hang::End);
    }
    let under = strip.foot + 2.5 + TABLE;
    if let Some(x) = clear_along(board, strip, &trim, (under, strip.long * 0.3)) {
        board.text(at(x, under), &trim, TABLE, Hang::Middle);
    }
}

/// The first place along the strip, from so far on, where words on this base line are clear of all others.
fn clear_along(board: &Board, strip: &Strip, words: &str, (base, from): (f64, f64)) -> Option<f64> {
    let half = face::width(words, TABLE, false) / 2.0;
    let (rise, fall) = rise_and_fall(words, TABLE);
    let steps = (1..(strip.long / 2.0) as u32).map(|i| strip.left + from + f64::from(i));
    steps.into_iter().find(|x| {
        let round = PaperBox::new(x - half - APART, base - rise, x + half + APART, base + fall);
        is_clear(board, &round, 0.6)
    })
}
