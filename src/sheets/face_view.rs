//! The face of the plate as one looks at it: edge, flange, lines and holes.

use super::at;
use super::board::{Board, PaperBox};
use super::clear::is_clear;
use super::letter_size::{LEAST_NUMBER, TABLE};
use super::section::flange_is_near;
use super::symbols::{put_sign, signs_of};
use super::view::{PlateBox, Stroke, View};
use super::{Hang, PaperPoint, face};
use crate::design::{Design, FlangeDesign, Hole, PlacedPad, Point};
use crate::units::Length;
use crate::units::angle::{cos, from_top_clockwise, sin, sqrt};

/// How far centre lines run past an outline, mm of paper.
pub const CENTRE_OVER: f64 = 4.0;

/// What of the face is put down.
#[derive(Clone, Copy, Debug)]
pub struct Wanted {
    /// Height of the numbers inside tube and flue holes, and whether they stand without their letter; none for no numbers.
    pub tube_numbers: Option<(f64, bool)>,
    /// Numbers inside other holes.
    pub other_numbers: bool,
    /// The plate's own edge and its flange.
    pub edge: bool,
    /// Ticks where rivets lie.
    pub rivets: bool,
    /// The sign of its group in every hole of a nest that is not the largest.
    pub signs: bool,
}

/// Puts the face down.
pub fn put_face(board: &mut Board, view: &View, design: &Design, wanted: Wanted) {
    if wanted.edge {
        put_plate(board, view, design);
    }
    if wanted.rivets {
        put_rivet_ticks(board, view, design);
    }
    for hole in &design.holes {
        put_hole(board, view, design, hole, wanted);
    }
    if wanted.signs {
        put_signs(board, view, design);
    }
}

/// The plate without its holes: edge, flange and the centre lines of the barrel.
pub fn put_plate(board: &mut Board, view: &View, design: &Design) {
    view.outline(board, &design.edge, Stroke::SEEN);
    put_flange(board, view, design);
    put_pads(board, view, design, |_| true);
    put_centre_lines(board, view, &PlateBox::round(&design.edge));
}

/// Signs in the holes of every nest; other holes bear their letter and number.
fn put_signs(board: &mut Board, view: &View, design: &Design) {
    let signs = signs_of(design);
    for hole in &design.holes {
        if design.groups[hole.group].purpose.takes_a_tube() {
            let radius = hole.finish.value().to_mm() / 2.0 * view.scale;
            put_sign(board, view.place(hole.at), radius, signs[hole.group]);
        }
    }
}

/// Vertical and horizontal centre lines of the barrel, just past the edge.
pub fn put_centre_lines(board: &mut Board, view: &View, edge: &PlateBox) {
    let b = view.paper_box(edge).grown(CENTRE_OVER);
    board.centre_line(at(view.centre.x, b.top), at(view.centre.x, b.bottom));
    board.centre_line(at(b.left, view.centre.y), at(b.right, view.centre.y));
}

/// Flange edges and the lines of bend or weld; hidden where the flange stands away from the viewer.
fn put_flange(board: &mut Board, view: &View, design: &Design) {
    let Some(flange) = &design.flange else {
        return;
    };
    let (towards, radii, lines) = match flange {
        FlangeDesign::Pressed(p) => {
            let outside = p.outside_diameter.value().to_mm() / 2.0;
            let inside = outside - design.thickness.value().to_mm();
            (p.towards, vec![inside], vec![p.tangent_radius.to_mm()])
        }
        FlangeDesign::Fabricated(f) => {
            let outside = f.ring_outside_diameter.value().to_mm() / 2.0;
            let inside = outside - f.ring_thickness.value().to_mm();
            (
                f.towards,
                vec![outside, inside],
                vec![f.inner_toe_radius.to_mm(), f.outer_toe_radius.to_mm()],
            )
        }
    };
    let seen = towards == design.view_from;
    for radius in radii {
        let stroke = if seen { Stroke::SEEN } else { Stroke::HIDDEN };
        view.circle(board, Point::CENTRE, radius, stroke);
    }
    // The toe of a weld behind the plate is hidden; where a heel begins shows on both faces.
    let line = match flange {
        FlangeDesign::Fabricated(_) if !seen => Stroke::HIDDEN_TOE,
        FlangeDesign::Fabricated(_) | FlangeDesign::Pressed(_) => Stroke::TANGENT,
    };
    for radius in lines {
        view.circle(board, Point::CENTRE, radius, line);
    }
}

/// Every pad that is wanted with its weld and its own holes, hidden where it lies on the far face.
pub fn put_pads(
    board: &mut Board,
    view: &View,
    design: &Design,
    wanted: impl Fn(&PlacedPad) -> bool,
) {
    for pad in design.pads.iter().filter(|pad| wanted(pad)) {
        let near = pad.is_near(design);
        let (edge, toe) = match near {
            true => (Stroke::SEEN, Stroke::TANGENT),
            false => (Stroke::HIDDEN, Stroke::HIDDEN_TOE),
        };
        let middle = pad.at(design);
        view.circle(board, middle, pad.diameter.to_mm() / 2.0, edge);
        if pad.weld_leg.is_some() {
            view.circle(board, middle, pad.toe_radius().to_mm(), toe);
        }
        for (at, wide) in &pad.holes {
            let centre = Point::new(middle.x + at.x, middle.y + at.y);
            view.circle(board, centre, wide.to_mm() / 2.0, edge);
        }
    }
}

/// A short centre line across the flange at every rivet.
pub fn put_rivet_ticks(board: &mut Board, view: &View, design: &Design) {
    let (Some(line), Some(flange)) = (&design.rivets, &design.flange) else {
        return;
    };
    let (outside, thick) = flange_rim(design, flange);
    let pattern = match flange_is_near(design) {
        true => super::Pattern::Continuous,
        false => super::Pattern::Dashed,
    };
    for rivet in line.places_round() {
        let a = from_top_clockwise(rivet.angle_deg);
        let along = |r: f64| view.place(Point::new(r * cos(a), r * sin(a)));
        let over = 2.0 / view.scale;
        board.line(
            along(outside - thick - over),
            along(outside + over),
            super::Pen::Narrow,
            pattern,
            super::Role::Centre,
        );
    }
}

/// Outside radius and thickness of the flange's parallel part, mm.
pub fn flange_rim(design: &Design, flange: &FlangeDesign) -> (f64, f64) {
    match flange {
        FlangeDesign::Pressed(p) => (
            p.outside_diameter.value().to_mm() / 2.0,
            design.thickness.value().to_mm(),
        ),
        FlangeDesign::Fabricated(f) => (
            f.ring_outside_diameter.value().to_mm() / 2.0,
            f.ring_thickness.value().to_mm(),
        ),
    }
}

/// Puts down a hole, its number in it where it is wanted and can be read.
pub fn put_hole(board: &mut Board, view: &View, design: &Design, hole: &Hole, wanted: Wanted) {
    let radius = hole.finish.value().to_mm() / 2.0;
    view.circle(board, hole.at, radius, Stroke::SEEN);
    if hole.exception.is_some() {
        // A second ring marks a hole that departs from its pattern, in black and white.
        let ring = radius + 1.0 / view.scale;
        view.circle(board, hole.at, ring, Stroke::TANGENT);
    }
    if design.groups[hole.group].purpose.takes_a_tube() {
        if let Some((height, bare)) = wanted.tube_numbers {
            put_number(board, view, hole.at, number_words(&hole.id, bare), height);
        }
        return;
    }
    match number_height(&hole.id, radius * view.scale) {
        Some(height) if wanted.other_numbers => put_number(board, view, hole.at, &hole.id, height),
        Some(_) | None => put_centre_mark(board, view, hole.at, radius),
    }
}

/// A hole's number, with or without the letter that opens it.
pub fn number_words(id: &str, bare: bool) -> &str {
    if bare {
        id.trim_start_matches(char::is_alphabetic)
    } else {
        id
    }
}

/// Small cross of centre lines through a hole.
fn put_centre_mark(board: &mut Board, view: &View, centre: Point, radius: f64) {
    let c = view.place(centre);
    let reach = radius * view.scale + 2.0;
    board.centre_line(at(c.x - reach, c.y), at(c.x + reach, c.y));
    board.centre_line(at(c.x, c.y - reach), at(c.x, c.y + reach));
}

/// Height at which a number stands inside a hole of this radius on paper; none where it would be too small to read.
pub fn number_height(id: &str, paper_radius: f64) -> Option<f64> {
    // The corners of the lettering keep this far from the rim, mm.
    const CLEAR: f64 = 0.7;
    let wide = face::width(id, 1.0, false);
    let fits = |height: f64| {
        let half = wide * height / 2.0;
        sqrt(half * half + height * height / 4.0) <= paper_radius - CLEAR
    };
    [3.5, 3.0, TABLE, 2.25, LEAST_NUMBER]
        .into_iter()
        .find(|&h| fits(h))
}

fn put_number(board: &mut Board, view: &View, centre: Point, words: &str, height: f64) {
    let c = view.place(centre);
    board.text(at(c.x, c.y + height / 2.0), words, height, Hang::Middle);
}

/// Numbers of holes off the nest that are too small to hold them, each where nothing stands in its way.
pub fn put_loose_numbers(board: &mut Board, view: &View, design: &Design) {
    put_loose_numbers_clear(board, view, design, (0.4, 6));
}

/// The same with so much clear paper round each, mm, looked for on so many rings about the hole: wider lines ask for more.
pub fn put_loose_numbers_clear(board: &mut Board, view: &View, design: &Design, room: (f64, u32)) {
    for hole in loose_holes(design) {
        let radius = hole.finish.value().to_mm() / 2.0 * view.scale;
        if number_height(&hole.id, radius).is_none() {
            let radius = taken_up(design, hole) * view.scale;
            let c = view.place(hole.at);
            let beside = put_number_beside(board, c, radius, &hole.id, room);
            if !beside {
                let place = at(c.x + radius + 1.0, c.y - radius - TABLE / 2.0);
                board.text(place, &hole.id, TABLE, Hang::Start);
            }
        }
    }
}

/// Radius of what is drawn round a hole: its own, or that of its pad's weld.
fn taken_up(design: &Design, hole: &Hole) -> f64 {
    let pads = design.pads.iter();
    let pad = pads.filter(|pad| std::ptr::eq(&design.holes[pad.hole], hole));
    let own = hole.finish.value() / 2.0;
    pad.map(PlacedPad::toe_radius)
        .fold(own, Length::max)
        .to_mm()
}

/// Holes that are no part of a nest.
pub fn loose_holes(design: &Design) -> impl Iterator<Item = &Hole> {
    let holes = design.holes.iter();
    holes.filter(|hole| !design.groups[hole.group].purpose.takes_a_tube())
}

/// Puts a number beside its hole, on the first of so many rings where it is clear; tells whether there is such a place.
pub fn put_number_beside(
    board: &mut Board,
    c: PaperPoint,
    radius: f64,
    id: &str,
    (gap, rings): (f64, u32),
) -> bool {
    let wide = face::width(id, TABLE, false);
    let places = (0..rings).flat_map(|ring| {
        let reach = radius + 1.0 + f64::from(ring) * 1.5;
        let (dx, dy) = (reach + wide / 2.0, reach + TABLE / 2.0);
        let slant = reach * 0.7;
        [
            at(c.x + slant + wide / 2.0, c.y - slant - TABLE / 2.0),
            at(c.x - slant - wide / 2.0, c.y - slant - TABLE / 2.0),
            at(c.x + slant + wide / 2.0, c.y + slant + TABLE / 2.0),
            at(c.x - slant - wide / 2.0, c.y + slant + TABLE / 2.0),
            at(c.x, c.y - dy),
            at(c.x + dx, c.y),
            at(c.x - dx, c.y),
            at(c.x, c.y + dy),
        ]
    });
    let round = |p: PaperPoint| {
        PaperBox::new(
            p.x - wide / 2.0,
            p.y - TABLE / 2.0,
            p.x + wide / 2.0,
            p.y + TABLE / 2.0,
        )
    };
    let found = places
        .into_iter()
        .find(|&p| is_clear(board, &round(p), gap));
    if let Some(place) = found {
        board.text(at(place.x, place.y + TABLE / 2.0), id, TABLE, Hang::Middle);
    }
    found.is_some()
}
