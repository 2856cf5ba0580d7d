//! The plate at a hole in section: what every detail of a hole is drawn about.

use super::board::{Board, PaperBox};
use super::break_line::put_break;
use super::clear::is_clear;
use super::dimension::saying;
use super::free_row::{across_free, upwards_free};
use super::hatch::{Lean, hatch};
use super::letter_size::TABLE;
use super::set::Set;
use super::view::{Stroke, View};
use super::{Hang, PaperPoint, Pattern, Pen, Role, at, face};
use crate::design::{Design, Hole, Point};
use crate::spec::ViewFrom;
use crate::units::Length;

/// Plate shown beyond a hole or what covers it, mm of plate.
pub const METAL: f64 = 8.0;
/// The names of the sides stand so far from everything else, that no note is read together with them, mm.
const APART: f64 = 2.5;
/// Hatch lines of a detail stand so far apart, mm.
pub const HATCHING: f64 = 2.5;

/// A hole's plate: depth runs from the boiler side (nothing) to the smokebox side (the thickness), height from the axis.
pub struct Seat<'a, 'b> {
    /// What is drawn from.
    pub set: &'a Set<'b>,
    /// Which group of holes it is.
    pub group: usize,
    view: View,
    /// 1 where the smokebox side lies to the right.
    pub side: f64,
    /// Thickness of the plate, mm.
    pub t: f64,
    /// Radius of the finished hole, mm.
    pub hole: f64,
    /// How the plate's hatching leans: as in the section, that of a piece let in the other way than that of the old metal.
    pub lean: Lean,
}

/// Whether every hole of a group lies in a piece that is let in.
fn is_in_piece(design: &Design, group: usize) -> bool {
    let renewed = |hole: &Hole| {
        let outlines = design
            .pieces()
            .filter_map(|(_, piece)| piece.renews.as_ref());
        outlines
            .into_iter()
            .any(|outline| outline.contains(hole.at))
    };
    let mut holes = design.holes.iter().filter(|hole| hole.group == group);
    holes.all(renewed)
}

impl<'a, 'b> Seat<'a, 'b> {
    /// The seat of a group about the origin of a board.
    pub fn new(set: &'a Set<'b>, group: usize, scale: f64) -> Seat<'a, 'b> {
        let design = set.design;
        Seat {
            set,
            group,
            view: View {
                scale,
                centre: at(0.0, 0.0),
            },
            side: match design.view_from {
                ViewFrom::Smokebox => 1.0,
                ViewFrom::Firebox => -1.0,
            },
            t: design.thickness.value().to_mm(),
            hole: design.groups[group].finish.value().to_mm() / 2.0,
            lean: match is_in_piece(design, group) {
                true => Lean::Left,
                false => Lean::Right,
            },
        }
    }

    /// Millimetres of paper for a millimetre of plate.
    pub fn scale(&self) -> f64 {
        self.view.scale
    }

    /// A place on the paper from its depth and height.
    pub fn place(&self, depth: f64, y: f64) -> PaperPoint {
        let x = (depth - self.t / 2.0) * self.side;
        self.view.place(Point::new(x, y))
    }

    /// A line between two places.
    pub fn line(&self, board: &mut Board, a: (f64, f64), b: (f64, f64), stroke: Stroke) {
        let (a, b) = (self.place(a.0, a.1), self.place(b.0, b.1));
        board.line(a, b, stroke.pen, stroke.pattern, stroke.role);
    }

    /// The same above and below the axis.
    pub fn twice(&self, board: &mut Board, a: (f64, f64), b: (f64, f64), stroke: Stroke) {
        for hand in [1.0, -1.0] {
            self.line(board, (a.0, a.1 * hand), (b.0, b.1 * hand), stroke);
        }
    }

    /// The four edges of something between two depths, so far from the axis above and below.
    pub fn block(&self, board: &mut Board, from: f64, to: f64, radius: f64) {
        self.twice(board, (from, radius), (to, radius), Stroke::SEEN);
        for depth in [from, to] {
            self.line(board, (depth, radius), (depth, -radius), Stroke::SEEN);
        }
    }

    /// Cut metal above and below the axis, hatched, between two depths and two radii; its edges are the caller's.
    pub fn cut(&self, board: &mut Board, depths: (f64, f64), radii: (f64, f64), lean: Lean) {
        let (inner, outer) = radii;
        self.cut_between(board, depths, ((inner, inner), (outer, outer)), lean);
    }

    /// The same between radii that may differ from one depth to the other: the inner ones, then the outer ones.
    pub fn cut_between(
        &self,
        board: &mut Board,
        depths: (f64, f64),
        (inner, outer): ((f64, f64), (f64, f64)),
        lean: Lean,
    ) {
        for hand in [1.0, -1.0] {
            let corners = [
                (depths.0, inner.0),
                (depths.1, inner.1),
                (depths.1, outer.1),
                (depths.0, outer.0),
            ];
            let polygon = corners.map(|(u, y)| self.place(u, y * hand)).to_vec();
            hatch(board, &[polygon], HATCHING, lean);
        }
    }

    /// The same, but for a hole through it between two radii.
    pub fn cut_round(
        &self,
        board: &mut Board,
        depths: (f64, f64),
        (inner, outer): (f64, f64),
        (lean, hole): (Lean, Option<(f64, f64)>),
    ) {
        match hole {
            Some((from, to)) => {
                self.cut(board, depths, (inner, from), lean);
                self.cut(board, depths, (to, outer), lean);
            }
            None => self.cut(board, depths, (inner, outer), lean),
        }
    }

    /// The plate above and below the hole as far as a radius, where it is broken off.
    pub fn plate(&self, board: &mut Board, end: f64) {
        self.plate_with_hole(board, end, None);
    }

    /// The same with another hole through it, between two radii.
    pub fn plate_with_hole(&self, board: &mut Board, end: f64, hole: Option<(f64, f64)>) {
        self.cut_round(board, (0.0, self.t), (self.hole, end), (self.lean, hole));
        for u in [0.0, self.t] {
            self.twice(board, (u, self.hole), (u, end), Stroke::SEEN);
        }
        self.twice(board, (0.0, self.hole), (self.t, self.hole), Stroke::SEEN);
        self.break_plate(board, end);
    }

    /// The lines where the plate is broken off, so far from the axis above and below.
    pub fn break_plate(&self, board: &mut Board, end: f64) {
        for hand in [1.0, -1.0] {
            let (a, b) = (self.place(0.0, end * hand), self.place(self.t, end * hand));
            put_break(board, a, b);
        }
    }

    /// The line where something is broken off at a depth, so far from the axis above and below.
    pub fn break_across(&self, board: &mut Board, depth: f64, radius: f64) {
        put_break(board, self.place(depth, radius), self.place(depth, -radius));
    }

    /// The rims of an open hole beyond the cut, at several depths.
    pub fn rims(&self, board: &mut Board, depths: &[f64], radius: f64) {
        for &depth in depths {
            self.line(board, (depth, radius), (depth, -radius), Stroke::SEEN);
        }
    }

    /// The axis, a little past two depths.
    pub fn axis(&self, board: &mut Board, from: f64, to: f64) {
        let over = 3.0 / self.scale();
        let (a, b) = ((from - over, 0.0), (to + over, 0.0));
        self.line(board, a, b, Stroke::CENTRE);
    }

    /// A length along the axis between two depths at a height, below what has been drawn.
    pub fn along(&self, board: &mut Board, depths: (f64, f64), y: f64, words: &str) {
        let foot = metal(board).bottom;
        let (a, b) = (self.place(depths.0, -y), self.place(depths.1, -y));
        let length = Length::mm(depths.1 - depths.0).abs();
        across_free(
            board,
            (a, b),
            foot,
            true,
            saying(self.scale())(words, length),
        );
    }

    /// A diameter at a depth, its line beyond all that has been drawn on the smokebox or the boiler side.
    pub fn across(&self, board: &mut Board, depth: f64, outwards: bool, size: Length, words: &str) {
        let r = size.to_mm() / 2.0;
        let all = metal(board);
        let to_right = outwards == (self.side > 0.0);
        let x = if to_right { all.right } else { all.left };
        let ends = (self.place(depth, r), self.place(depth, -r));
        upwards_free(board, ends, x, to_right, saying(self.scale())(words, size));
    }

    /// BOILER and SMOKEBOX at the two sides of the plate, on one line, as low above its edges as is clear.
    pub fn name_sides(&self, board: &mut Board) {
        let sides = [(0.0, "BOILER", -self.side), (self.t, "SMOKEBOX", self.side)];
        let x = |depth: f64, way: f64| self.place(depth, 0.0).x + way * 3.0;
        let top = metal(board).top - 2.5;
        let clear = |y: f64| {
            sides.iter().all(|&(depth, words, way)| {
                let wide = face::width(words, TABLE, false) * way;
                let (a, b) = (x(depth, way), x(depth, way) + wide);
                let round = PaperBox::new(a.min(b), y - TABLE, a.max(b), y);
                is_clear(board, &round, APART)
            })
        };
        let rows = (0..60).map(|row| top - f64::from(row) * 1.5);
        let y = rows.into_iter().find(|&y| clear(y)).unwrap_or(top);
        for (depth, words, way) in sides {
            let hang = if way > 0.0 { Hang::Start } else { Hang::End };
            board.text(at(x(depth, way), y), words, TABLE, hang);
        }
    }
}

/// Where a part is broken off.
pub const BROKEN: Stroke = Stroke {
    pen: Pen::Narrow,
    pattern: Pattern::Continuous,
    role: Role::Object,
};

/// The root of a thread seen from the side: a narrow unbroken line (ISO 6410-1).
pub const ROOT: Stroke = BROKEN;

/// The box round all edges drawn so far.
pub fn metal(board: &Board) -> PaperBox {
    board
        .extent(|role| matches!(role, Role::Object | Role::Hatch))
        .unwrap_or(PaperBox::new(0.0, 0.0, 0.0, 0.0))
}
