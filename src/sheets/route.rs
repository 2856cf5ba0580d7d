//! Which side of a view a row of running dimensions stands on, and which hole of a line each begins at.
//!
//! An extension line leaves by the side that is asked for first, unless holes stand in the way there and another side is clearer.
//! Values that belong together stay together, so that nobody has to look for one tube's line on two sides of the view. Where no
//! side is clear, the line is broken beside the holes that it meets (`interrupt`).

use super::at;
use super::dimension::Running;
use super::view::{PlateBox, View};
use crate::design::{Hole, Point};
use crate::units::Length;

/// An extension line keeps this far from a hole that it passes, mm of plate: a line nearer looks as if it touched.
const BESIDE: f64 = 2.0;
/// Extension lines nearer than this on paper run into one, mm (ISO 128: least space between parallel lines).
pub const LEAST_APART: f64 = 0.7;

/// A side of a view.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Above it.
    Top,
    /// Below it.
    Foot,
    /// Left of it.
    Left,
    /// Right of it.
    Right,
}

impl Side {
    fn is_across(self) -> bool {
        match self {
            Side::Top | Side::Foot => true,
            Side::Left | Side::Right => false,
        }
    }

    /// How far towards this side a place lies, mm of plate.
    fn towards(self, p: Point) -> f64 {
        match self {
            Side::Top => p.y,
            Side::Foot => -p.y,
            Side::Left => -p.x,
            Side::Right => p.x,
        }
    }
}

/// Something that a running dimension points at: a hole, a pop or a place of the edge.
#[derive(Clone, Debug)]
pub struct Feature {
    /// Its centre on the plate.
    pub at: Point,
    /// Radius of the hole, nothing for an edge, mm.
    pub half: f64,
    /// Its number, where it has one.
    pub name: String,
}

impl Feature {
    /// A hole at its finished size.
    pub fn hole(hole: &Hole) -> Feature {
        Feature {
            at: hole.at,
            half: hole.finish.value().to_mm() / 2.0,
            name: hole.id.clone(),
        }
    }

    /// The box round it, which is all that matters to a line along an axis.
    pub fn around(&self) -> PlateBox {
        let mut b = PlateBox::NONE;
        b.take(self.at, self.half);
        b
    }
}

/// A value of a running dimension, and everything on its line, on the line of the other hand too where it is said once for both.
#[derive(Clone, Debug)]
pub struct Line {
    /// Distance from the datum.
    pub length: Length,
    /// Lettering.
    pub words: String,
    /// What stands on the line; the hand that is asked for first comes first.
    pub features: Vec<Feature>,
}

/// A value with the feature that its extension line begins at.
#[derive(Clone, Debug)]
pub struct Stop {
    /// Distance from the datum.
    pub length: Length,
    /// Lettering.
    pub words: String,
    /// Where it begins.
    pub feature: Feature,
}

impl Stop {
    /// The value on paper, its extension line beside the feature on this side.
    pub fn running(&self, view: &View, side: Side) -> Running {
        let c = view.place(self.feature.at);
        let r = self.feature.half * view.scale;
        let place = match side {
            Side::Top => at(c.x, c.y - r),
            Side::Foot => at(c.x, c.y + r),
            Side::Left => at(c.x - r, c.y),
            Side::Right => at(c.x + r, c.y),
        };
        Running {
            place,
            words: self.words.clone(),
            length: self.length,
        }
    }
}

/// One row of values per side, as routed.
#[derive(Clone, Debug, Default)]
pub struct Rows {
    /// The rows, at most one of a side.
    rows: Vec<(Side, Vec<Stop>)>,
}

impl Rows {
    /// Puts lines that belong together on the side where the fewest holes stand in their way, the earliest of those.
    pub fn route(&mut self, lines: &[Line], in_the_way: &[PlateBox], sides: &[Side]) {
        let routed = sides
            .iter()
            .map(|&side| {
                let ways: Vec<(usize, Stop)> = lines
                    .iter()
                    .filter_map(|line| way(line, in_the_way, side))
                    .collect();
                let crossed: usize = ways.iter().map(|(crossed, _)| crossed).sum();
                (crossed, side, ways)
            })
            .min_by_key(|(crossed, _, _)| *crossed);
        let Some((_, side, ways)) = routed else {
            return;
        };
        let stops = ways.into_iter().map(|(_, stop)| stop);
        match self.rows.iter_mut().find(|(of, _)| *of == side) {
            Some((_, row)) => row.extend(stops),
            None => self.rows.push((side, stops.collect())),
        }
    }

    /// The values of a side, each distance once, in order along the view.
    pub fn row(&self, side: Side) -> Vec<Stop> {
        let of_side = self.rows.iter().filter(|(of, _)| *of == side);
        let mut row: Vec<Stop> = of_side.flat_map(|(_, row)| row.clone()).collect();
        let place = |s: &Stop| match side.is_across() {
            true => s.feature.at.x,
            false => s.feature.at.y,
        };
        row.sort_by(|a, b| place(a).total_cmp(&place(b)));
        row.dedup_by(|a, b| Length::mm(place(a)).same_as(Length::mm(place(b))));
        row
    }

    /// The values of a side on paper.
    pub fn running(&self, view: &View, side: Side) -> Vec<Running> {
        let row = self.row(side);
        row.iter().map(|stop| stop.running(view, side)).collect()
    }

    /// Lettering of a side, to know what room it takes.
    pub fn words(&self, side: Side) -> Vec<String> {
        self.row(side).into_iter().map(|stop| stop.words).collect()
    }

    /// Adds the number of its hole to every value whose extension line runs into another's at a scale: of two values at one
    /// place a reader cannot tell which is which.
    pub fn name_what_runs_together(&mut self, scale: f64) {
        for (side, row) in &mut self.rows {
            let place = |s: &Stop| match side.is_across() {
                true => s.feature.at.x,
                false => s.feature.at.y,
            };
            let places: Vec<f64> = row.iter().map(place).collect();
            for (i, stop) in row.iter_mut().enumerate() {
                let runs_into = |(k, p): (usize, &f64)| {
                    let apart = (p - places[i]).abs();
                    let same = Length::mm(apart).same_as(Length::ZERO);
                    k != i && !same && apart * scale < LEAST_APART
                };
                if places.iter().enumerate().any(runs_into) && !stop.feature.name.is_empty() {
                    stop.words = format!("{} {}", stop.words, stop.feature.name);
                }
            }
        }
    }
}

/// The feature of a line from which the fewest things stand in the way towards a side, and how many do.
fn way(line: &Line, in_the_way: &[PlateBox], side: Side) -> Option<(usize, Stop)> {
    line.features
        .iter()
        .map(|feature| (crossed(feature, in_the_way, side), feature))
        .min_by_key(|(crossed, _)| *crossed)
        .map(|(crossed, feature)| {
            let stop = Stop {
                length: line.length,
                words: line.words.clone(),
                feature: feature.clone(),
            };
            (crossed, stop)
        })
}

/// How many boxes an extension line from a feature to a side passes through.
fn crossed(feature: &Feature, in_the_way: &[PlateBox], side: Side) -> usize {
    let p = feature.at;
    in_the_way
        .iter()
        .filter(|b| {
            let on_the_line = match side.is_across() {
                true => b.left - BESIDE < p.x && p.x < b.right + BESIDE,
                false => b.bottom - BESIDE < p.y && p.y < b.top + BESIDE,
            };
            let far_corner = match side {
                Side::Top | Side::Right => Point::new(b.right, b.top),
                Side::Foot | Side::Left => Point::new(b.left, b.bottom),
            };
            let its_own = b.left <= p.x && p.x <= b.right && b.bottom <= p.y && p.y <= b.top;
            on_the_line && !its_own && side.towards(far_corner) > side.towards(p)
        })
        .count()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hole(name: &str, x: f64, y: f64, half: f64) -> Feature {
        Feature {
            at: Point::new(x, y),
            half,
            name: name.into(),
        }
    }

    fn line(value: f64, features: &[&Feature]) -> Line {
        Line {
            length: Length::mm(value),
            words: format!("{value}"),
            features: features.iter().map(|&f| f.clone()).collect(),
        }
    }

    fn begins(rows: &Rows, side: Side) -> Vec<String> {
        let row = rows.row(side);
        row.into_iter().map(|stop| stop.feature.name).collect()
    }

    /// Tubes at 60 and 200 stand under a flue that covers 20 to 140: from above, 60 would run through it. Both go below, from
    /// their lowest holes; the flue itself stays above.
    #[test]
    fn by_hand_tubes_under_a_flue_are_dimensioned_from_below() {
        let flue = hole("F1", 80.0, 100.0, 60.0);
        let high = hole("T2", 60.0, -20.0, 20.0);
        let low = hole("T1", 60.0, -70.0, 20.0);
        let beside = hole("T3", 200.0, -20.0, 20.0);
        let all: Vec<PlateBox> = [&flue, &high, &low, &beside].map(Feature::around).into();
        let mut rows = Rows::default();
        let sides = [Side::Top, Side::Foot];
        rows.route(&[line(80.0, &[&flue])], &all, &sides);
        rows.route(
            &[line(60.0, &[&high, &low]), line(200.0, &[&beside])],
            &all,
            &sides,
        );
        assert_eq!(begins(&rows, Side::Top), ["F1"]);
        assert_eq!(begins(&rows, Side::Foot), ["T1", "T3"]);
    }

    /// A line of holes at height 50, seen from the left: the value begins at the leftmost, whose way out is clear.
    #[test]
    fn by_hand_a_row_is_dimensioned_from_its_nearest_hole() {
        let row = [
            hole("T2", 0.0, 50.0, 20.0),
            hole("T1", -60.0, 50.0, 20.0),
            hole("T3", 60.0, 50.0, 20.0),
        ];
        let all: Vec<PlateBox> = row.iter().map(Feature::around).collect();
        for (side, name) in [(Side::Left, "T1"), (Side::Right, "T3")] {
            let mut rows = Rows::default();
            rows.route(&[line(50.0, &[&row[0], &row[1], &row[2]])], &all, &[side]);
            assert_eq!(begins(&rows, side), [name]);
        }
    }

    /// A value said for both hands is taken from the hand whose way is clear.
    #[test]
    fn by_hand_the_clear_hand_is_taken() {
        let right = hole("T84", 90.0, 0.0, 0.0);
        let left = hole("T18", -90.0, 0.0, 0.0);
        let stamp = PlateBox {
            left: 70.0,
            right: 120.0,
            top: 60.0,
            bottom: 40.0,
        };
        let mut rows = Rows::default();
        rows.route(&[line(90.0, &[&right, &left])], &[stamp], &[Side::Top]);
        assert_eq!(begins(&rows, Side::Top), ["T18"]);
    }

    /// 14 1/4 in and 14 17/64 in are 0.397 mm apart: 0.08 mm at 1:5, so both are named; 3 mm at 1:4 is 0.75 mm and is not.
    #[test]
    fn by_hand_values_that_run_together_are_named() {
        let named = |apart: f64, scale: f64| {
            let (one, other) = (
                hole("W1", 0.0, -50.0, 9.0),
                hole("T30", 0.0, -50.0 - apart, 9.0),
            );
            let mut rows = Rows::default();
            rows.route(
                &[line(50.0, &[&one]), line(50.0 + apart, &[&other])],
                &[],
                &[Side::Left],
            );
            rows.name_what_runs_together(scale);
            rows.words(Side::Left)
        };
        assert_eq!(named(0.397, 0.2), ["50.397 T30", "50 W1"]);
        assert_eq!(named(3.0, 0.25), ["53", "50"]);
    }
}
