//! The regular places of a nest: parallel lines of holes, filled as far as the room goes.
//!
//! Every place is worked from the place the pattern runs through, never from its neighbour, so that nothing adds up.

use super::room::Room;
use super::{LineWay, Point};
use crate::units::angle::hypot;

/// Parallel lines of places. Line 0 has a place at `through`; odd lines lie half a pitch on where staggered.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lattice {
    pub way: LineWay,
    pub through: Point,
    /// From one line to the next, mm.
    pub spacing: f64,
    /// From place to place along a line, mm.
    pub pitch: f64,
    pub staggered: bool,
    /// Number of the first line; as many as fit where there is none.
    pub first: Option<i32>,
    /// Number of the last line.
    pub last: Option<i32>,
}

/// A place of the pattern.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Site {
    pub line: i32,
    pub at: Point,
}

/// More places than a plate ever held: beyond it the pitch is a slip of the pen, and filling would not end.
pub(super) const MOST_PLACES: f64 = 2_000_000.0;

impl Lattice {
    /// The place numbered `number` along the line numbered `line`.
    pub(super) fn place(&self, line: i32, number: i64) -> Point {
        let along = (number as f64 + self.half_step(line)) * self.pitch;
        match self.way {
            LineWay::Columns => Point::new(self.offset(line), self.through.y + along),
            LineWay::Rows => Point::new(self.through.x + along, self.offset(line)),
        }
    }

    /// x of a column or y of a row, mm.
    pub(super) fn offset(&self, line: i32) -> f64 {
        let across = f64::from(line) * self.spacing;
        match self.way {
            LineWay::Columns => self.through.x + across,
            LineWay::Rows => self.through.y + across,
        }
    }

    /// The least distance between two places, mm.
    pub(super) fn least_distance(&self) -> f64 {
        let next_line = if self.staggered {
            hypot(self.spacing, self.pitch / 2.0).min(2.0 * self.spacing)
        } else {
            self.spacing
        };
        next_line.min(self.pitch)
    }

    /// Every place that the room admits: line by line in the order of their places on the plate (left to right, low to high),
    /// and low to high or left to right along each. Nothing where the room is not bounded; an error, with how many places
    /// would have to be looked at, where they are more than [`MOST_PLACES`].
    pub(super) fn fill(&self, room: &Room) -> Result<Vec<Site>, f64> {
        let Some(span) = room.span() else {
            return Ok(Vec::new());
        };
        let (across, along) = match self.way {
            LineWay::Columns => ((span.low.x, span.high.x), (span.low.y, span.high.y)),
            LineWay::Rows => ((span.low.y, span.high.y), (span.low.x, span.high.x)),
        };
        let (across_from, along_from) = match self.way {
            LineWay::Columns => (self.through.x, self.through.y),
            LineWay::Rows => (self.through.y, self.through.x),
        };
        let places =
            (across.1 - across.0) / self.spacing * ((along.1 - along.0) / self.pitch).max(1.0);
        if places > MOST_PLACES {
            return Err(places);
        }
        // One line and one place more at each end than the box holds; `admits` has the last word.
        let (low, high) = steps(across, across_from, self.spacing);
        let lines = (low as i32).max(self.first.unwrap_or(i32::MIN))
            ..=(high as i32).min(self.last.unwrap_or(i32::MAX));
        let (low, high) = steps(along, along_from, self.pitch);
        let on_line = |line| {
            (low..=high).map(move |number| Site {
                line,
                at: self.place(line, number),
            })
        };
        Ok(lines
            .flat_map(on_line)
            .filter(|site| room.admits(site.at))
            .collect())
    }

    fn half_step(&self, line: i32) -> f64 {
        if self.staggered && line.rem_euclid(2) == 1 {
            0.5
        } else {
            0.0
        }
    }
}

/// Numbers of the steps from `origin` that reach just beyond a span.
fn steps(span: (f64, f64), origin: f64, step: f64) -> (i64, i64) {
    (
        ((span.0 - origin) / step).floor() as i64 - 1,
        ((span.1 - origin) / step).ceil() as i64 + 1,
    )
}
