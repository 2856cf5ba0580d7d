//! The largest circle that fits on the flat without a support inside it.
//!
//! A hill climb stalls on one of many tops and reads low, which is the unsafe way; so the flat is covered with square cells, and
//! a cell is laid aside only when it is proved that no circle with its centre in the cell is larger than the best one known, by
//! more than half of [`LARGEST_CIRCLE_MM`] on the radius. Cells that cannot be laid aside are quartered, the most promising first.
//!
//! ```text
//! radius at p     r(p)  = least distance from p to a support or to the line
//! plain bound     r(p) ≤ r(c) + h                       c middle of the cell, h half its diagonal
//! touch bound     r(p) ≤ max(v, √(v² + ρ² − 2 ρ v cos g))   supports all at v from some q, 2 g the widest gap between them
//!                                                       as seen from q; ρ = |c − q| + h, the furthest that p can be from q
//! ```
//!
//! The touch bound holds because some support lies within g of the direction from q to p. It settles a whole cell at once
//! where three supports stand round it, as in a nest; and a ridge between two supports in cells of √(2 v × bound).
//! A place on the line counts as a support in it: the line is nowhere further off than that place.

use std::cmp::Ordering;
use std::collections::BinaryHeap;

use super::circle_climb::climb;
use super::support_field::{MOST_TOUCHES, SupportField, TO_BOUND, Touching};
use super::{Outline, Point};
use crate::units::Length;
use crate::units::angle::{hypot, sqrt};
use crate::units::tolerance::{LARGEST_CIRCLE_MM, SAME_LENGTH_MM, SAME_MIDDLE_MM};

/// What a circle touches.
#[derive(Clone, Debug, PartialEq)]
pub enum Touch {
    /// A stay, tube or flue that the spec counts as support: index into [`super::Design::holes`].
    Hole(usize),
    /// The line along which the flange supports the flat, at this place.
    FlangeLine(Point),
}

/// The largest unsupported circle, proven within [`crate::units::tolerance::LARGEST_CIRCLE_MM`].
#[derive(Clone, Debug)]
pub struct LargestCircle {
    /// Its centre; of several alike, the one furthest right and then highest.
    pub centre: Point,
    /// Its diameter, never below the true one by more than the bound.
    pub diameter: Length,
    /// The supports it touches.
    pub touches: Vec<Touch>,
}

/// Half the bound on the diameter.
const BOUND_ON_RADIUS: f64 = LARGEST_CIRCLE_MM / 2.0;

/// The largest circle with its centre inside the flange line, no support inside it and no crossing of the line.
///
/// Supports are points, each with the index of its hole, and count wherever they lie. Without any, it is the largest circle
/// inside the line. Of several circles alike it is the one furthest right and then highest. Nothing where a co-ordinate is not a
/// number.
pub fn largest_circle(supports: &[(usize, Point)], flange_line: &Outline) -> Option<LargestCircle> {
    let finite = supports.iter().all(|(_, place)| place.is_finite());
    finite.then(|| {
        let field = SupportField::new(supports, flange_line);
        let nothing = Fitting {
            centre: flange_line.edges()[0].from(),
            radius: 0.0,
        };
        let mut search = Search {
            field: &field,
            best: nothing,
            cells: BinaryHeap::new(),
        };
        search.run();
        LargestCircle {
            centre: search.best.centre,
            diameter: Length::mm(2.0 * search.best.radius),
            touches: field.touched(search.best.centre, search.best.radius + LARGEST_CIRCLE_MM),
        }
    })
}

/// A circle that fits.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fitting {
    pub centre: Point,
    pub radius: f64,
}

/// A square of the flat that may hold the centre of a larger circle than the best known.
struct Cell {
    middle: Point,
    half_side: f64,
    bound: Bound,
}

/// No circle with its centre in a cell is larger than this.
#[derive(Clone, Copy)]
struct Bound {
    radius: f64,
    /// The place about which that was proved: where the top is, if the cell holds one.
    about: Point,
}

struct Search<'a> {
    field: &'a SupportField,
    best: Fitting,
    cells: BinaryHeap<Cell>,
}

impl Search<'_> {
    fn run(&mut self) {
        self.start();
        while let Some(cell) = self.cells.pop() {
            if cell.bound.radius <= self.enough() {
                self.lay_aside(&cell);
                continue;
            }
            let half = cell.half_side / 2.0;
            for (x, y) in [(half, half), (half, -half), (-half, half), (-half, -half)] {
                self.take_up(cell.middle + Point::new(x, y), half);
            }
        }
    }

    /// The first cells, and a first good circle: climbed to from the middle that has the most room.
    fn start(&mut self) {
        let (middles, half_side) = self.field.first_cells();
        let mut roomiest = self.best;
        for &centre in &middles {
            if !self.field.is_within(centre, roomiest.radius) {
                let radius = self.field.radius_at(centre);
                roomiest = Fitting { centre, radius };
            }
        }
        self.improve(roomiest, half_side);
        for middle in middles {
            self.take_up(middle, half_side);
        }
    }

    /// The radius that a cell must be able to hold if it is to be looked into.
    fn enough(&self) -> f64 {
        self.best.radius + BOUND_ON_RADIUS
    }

    /// Looks at a new cell: a better circle at its middle is climbed from; the cell is kept, or laid aside at once.
    fn take_up(&mut self, middle: Point, half_side: f64) {
        let half_diagonal = half_side * sqrt(2.0);
        // By far the most cells go here, where one support near enough settles it.
        if self
            .field
            .is_within(middle, self.best.radius - SAME_LENGTH_MM - half_diagonal)
        {
            return;
        }
        let near = self.field.touching::<TO_BOUND>(middle);
        if near.radius > self.best.radius + SAME_LENGTH_MM {
            self.improve(
                Fitting {
                    centre: middle,
                    radius: near.radius,
                },
                half_side,
            );
        }
        let bound = bound_on(&near, middle, half_side, self.enough());
        let cell = Cell {
            middle,
            half_side,
            bound,
        };
        if bound.radius <= self.enough() {
            self.lay_aside(&cell);
        } else {
            self.cells.push(cell);
        }
    }

    fn improve(&mut self, from: Fitting, step: f64) {
        let top = climb(self.field, from, step);
        let larger = top.radius > self.best.radius + SAME_LENGTH_MM;
        let alike = top.radius > self.best.radius - SAME_LENGTH_MM;
        if larger || (alike && is_preferred(top.centre, self.best.centre)) {
            self.best = top;
        }
    }

    /// A cell that holds nothing larger by more than the bound may yet hold a circle just as large, further right or higher.
    fn lay_aside(&mut self, cell: &Cell) {
        let larger = cell.bound.radius > self.best.radius + SAME_LENGTH_MM;
        let alike = cell.bound.radius > self.best.radius - SAME_LENGTH_MM;
        if larger || (alike && is_preferred(cell.bound.about, self.best.centre)) {
            let centre = cell.bound.about;
            let radius = self.field.radius_at(centre);
            self.improve(Fitting { centre, radius }, cell.half_side);
        }
    }
}

/// Whether one centre is further right than another, or as far right and higher, by more than the bound.
fn is_preferred(centre: Point, than: Point) -> bool {
    let (right, up) = (centre.x - than.x, centre.y - than.y);
    right > LARGEST_CIRCLE_MM || (right > -LARGEST_CIRCLE_MM && up > LARGEST_CIRCLE_MM)
}

/// The best bound found on a cell; no better one is looked for once it is enough to lay the cell aside.
fn bound_on(near: &Touching, middle: Point, half_side: f64, enough: f64) -> Bound {
    let mut bound = Bound {
        radius: near.radius + half_side * sqrt(2.0),
        about: middle,
    };
    let places = near.places();
    for rank in 0..places.len() {
        for second in 0..rank {
            let (a, b) = (places[rank], places[second]);
            let ridge = std::iter::once((a.midway(b), 2));
            let tops = places[..second]
                .iter()
                .filter_map(|&c| Some((equidistant(a, b, c)?, 3)));
            for (about, touches) in ridge.chain(tops) {
                if bound.radius <= enough {
                    return bound;
                }
                let v = a.distance(about);
                // A touch bound is never less than v, so one about here could not settle the cell; and two supports in one
                // place have nothing midway between them.
                if v > enough || v <= SAME_LENGTH_MM {
                    continue;
                }
                let radius = match touches {
                    2 => ridge_bound(a, b, middle, half_side),
                    _ => touch_bound(places, about, v, furthest(about, middle, half_side)),
                };
                if radius < bound.radius {
                    bound = Bound { radius, about };
                }
            }
        }
    }
    bound
}

/// How far the furthest corner of a cell is from a place.
fn furthest(place: Point, middle: Point, half_side: f64) -> f64 {
    let arm = middle - place;
    hypot(arm.x.abs() + half_side, arm.y.abs() + half_side)
}

/// The touch bound of two supports about the place midway, v from each: for a place `u` off along their line and `w` off square
/// to it the nearer is at √((v − |u|)² + w²), which is no more than √(v² + w²) while |u| is within 2 v.
fn ridge_bound(a: Point, b: Point, middle: Point, half_side: f64) -> f64 {
    let (about, v) = (a.midway(b), a.distance(b) / 2.0);
    let (along, arm) = ((b - a).unit(), middle - about);
    let spread = half_side * (along.x.abs() + along.y.abs());
    let (u, w) = (
        arm.dot(along).abs() + spread,
        arm.cross(along).abs() + spread,
    );
    if u <= 2.0 * v {
        hypot(v, w)
    } else {
        f64::INFINITY
    }
}

/// The touch bound of the head of this file, from those of the places that lie at `v` from `about` to a rounding.
fn touch_bound(places: &[Point], about: Point, v: f64, reach: f64) -> f64 {
    let mut ways = [Point::default(); MOST_TOUCHES];
    let mut count = 0;
    for place in places {
        let arm = *place - about;
        let distance = arm.radius();
        if (distance - v).abs() <= SAME_MIDDLE_MM && distance > 0.0 {
            ways[count] = arm * (1.0 / distance);
            count += 1;
        }
    }
    let cosine = cosine_of_half_the_widest_gap(&ways[..count]);
    let furthest = sqrt((v * v + reach * reach - 2.0 * v * reach * cosine).max(0.0));
    v.max(furthest) + SAME_MIDDLE_MM
}

/// Of directions 1 mm long: the cosine of half the widest angle between one and the next round the circle.
fn cosine_of_half_the_widest_gap(ways: &[Point]) -> f64 {
    let mut least: f64 = 1.0;
    for (rank, &way) in ways.iter().enumerate() {
        // The next one anticlockwise: measured by a figure that grows with the angle, from 0 to 4.
        let others = ways.iter().enumerate().filter(|(other, _)| *other != rank);
        let turn = |w: &Point| quarter_turns(way.dot(*w), way.cross(*w));
        let next = others.map(|(_, w)| turn(w)).fold(4.0, f64::min);
        least = least.min(cosine_of_half(next));
    }
    if ways.is_empty() { -1.0 } else { least }
}

/// Grows from 0 to 4 as an angle grows from nothing to a full turn: 1 − cos over the first half turn, 3 + cos over the second.
fn quarter_turns(cosine: f64, sine: f64) -> f64 {
    if sine >= 0.0 {
        1.0 - cosine
    } else {
        3.0 + cosine
    }
}

/// Cosine of half the angle that [`quarter_turns`] measures.
fn cosine_of_half(turns: f64) -> f64 {
    if turns <= 2.0 {
        sqrt((1.0 - turns / 2.0).max(0.0))
    } else {
        -sqrt(((turns - 2.0) / 2.0).clamp(0.0, 1.0))
    }
}

/// The place equally far from three others; none where they lie in a line.
fn equidistant(a: Point, b: Point, c: Point) -> Option<Point> {
    let (b, c) = (b - a, c - a);
    let twice = 2.0 * b.cross(c);
    let (bb, cc) = (b.dot(b), c.dot(c));
    let arm = Point::new(c.y * bb - b.y * cc, b.x * cc - c.x * bb) * (1.0 / twice);
    arm.is_finite().then(|| a + arm)
}

impl PartialEq for Cell {
    fn eq(&self, other: &Cell) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Cell {}

impl PartialOrd for Cell {
    fn partial_cmp(&self, other: &Cell) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// The most promising cell is the greatest; of cells alike, the one further right and then higher.
impl Ord for Cell {
    fn cmp(&self, other: &Cell) -> Ordering {
        (self.bound.radius.total_cmp(&other.bound.radius))
            .then(self.middle.x.total_cmp(&other.middle.x))
            .then(self.middle.y.total_cmp(&other.middle.y))
    }
}
