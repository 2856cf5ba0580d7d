//! The pitch of stays that stand in rows and columns.
//!
//! Stays *stand on a pitch* where four of them are the corners of one rectangle between neighbouring lines, and every other
//! stands next along a row or a column to one that does. A corner may be wanting, as where the flange cuts it off.

use std::collections::BTreeSet;

use super::Point;
use super::numbering::Numbered;
use crate::spec::Purpose;
use crate::units::Length;
use crate::units::tolerance::SAME_LENGTH_MM;

/// The pitches of one set of stays that stand in rows and columns.
#[derive(Clone, Debug)]
pub struct StayPitch {
    /// Index into [`super::Design::groups`].
    pub group: usize,
    /// From each vertical line of stay centres to the next, left to right; never empty.
    pub across: Vec<Length>,
    /// From each level line to the next, low to high; never empty.
    pub up: Vec<Length>,
}

impl StayPitch {
    /// The greatest pitch between vertical lines, and between level ones.
    pub fn greatest(&self) -> (Length, Length) {
        let most = |gaps: &[Length]| gaps.iter().copied().fold(Length::ZERO, Length::max);
        (most(&self.across), most(&self.up))
    }

    /// The pitch across and up, where both are the same from every line to the next.
    pub fn even(&self) -> Option<(Length, Length)> {
        let even = |gaps: &[Length]| gaps.iter().all(|gap| gap.same_as(gaps[0]));
        (even(&self.across) && even(&self.up)).then(|| (self.across[0], self.up[0]))
    }
}

/// The pitches of every set of stays, and of the stay tubes of every nest, that stand in rows and columns.
pub(super) fn stay_pitches(numbered: &Numbered, stay_tubes: &[usize]) -> Vec<StayPitch> {
    let pitch_of = |group: usize| {
        let is_stay = numbered.groups[group].purpose == Purpose::Stay;
        let holes = numbered.holes.iter().enumerate();
        let places: Vec<Point> = holes
            .filter(|(index, hole)| {
                hole.group == group && (is_stay || stay_tubes.binary_search(index).is_ok())
            })
            .map(|(_, hole)| hole.at)
            .collect();
        stay_pitch(group, &places)
    };
    (0..numbered.groups.len()).filter_map(pitch_of).collect()
}

/// The pitches of stays at these places; nothing where they do not stand on a pitch.
fn stay_pitch(group: usize, places: &[Point]) -> Option<StayPitch> {
    let columns = lines(places.iter().map(|at| at.x));
    let rows = lines(places.iter().map(|at| at.y));
    let stays: BTreeSet<(usize, usize)> = places
        .iter()
        .map(|at| (line_of(&columns, at.x), line_of(&rows, at.y)))
        .collect();
    let is_corner = |&(c, r): &(usize, usize)| {
        let others = [(c + 1, r), (c, r + 1), (c + 1, r + 1)];
        others.iter().all(|other| stays.contains(other))
    };
    let on_a_pitch = stays.iter().any(is_corner) && hang_together(&stays);
    on_a_pitch.then(|| StayPitch {
        group,
        across: gaps(&columns),
        up: gaps(&rows),
    })
}

/// The lines on which so many offsets lie, mm, in order.
fn lines(offsets: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut offsets: Vec<f64> = offsets.collect();
    offsets.sort_by(f64::total_cmp);
    offsets.dedup_by(|next, line| *next - *line <= SAME_LENGTH_MM);
    offsets
}

/// The number of the line on which an offset lies.
fn line_of(lines: &[f64], offset: f64) -> usize {
    lines.partition_point(|line| *line + SAME_LENGTH_MM < offset)
}

fn gaps(lines: &[f64]) -> Vec<Length> {
    let gap = |pair: &[f64]| Length::mm(pair[1] - pair[0]);
    lines.windows(2).map(gap).collect()
}

/// Whether one can go from any stay to any other by steps to the next line along a row or column.
fn hang_together(stays: &BTreeSet<(usize, usize)>) -> bool {
    let mut reached = BTreeSet::new();
    let mut to_visit: Vec<(usize, usize)> = stays.first().copied().into_iter().collect();
    while let Some((c, r)) = to_visit.pop() {
        if stays.contains(&(c, r)) && reached.insert((c, r)) {
            to_visit.extend([(c + 1, r), (c, r + 1)]);
            to_visit.extend(c.checked_sub(1).map(|left| (left, r)));
            to_visit.extend(r.checked_sub(1).map(|below| (c, below)));
        }
    }
    reached.len() == stays.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(places: &[(f64, f64)]) -> Option<StayPitch> {
        let places: Vec<Point> = places.iter().map(|&(x, y)| Point::new(x, y)).collect();
        stay_pitch(0, &places)
    }

    fn mm(gaps: &[Length]) -> Vec<f64> {
        gaps.iter().map(|gap| gap.to_mm()).collect()
    }

    /// Six columns 150 apart, two rows 160 apart, the two outer corners of the upper row cut off by the flange.
    #[test]
    fn by_hand_two_rows_without_their_corners() {
        let mut places = Vec::new();
        for x in [75.0, 225.0, 375.0] {
            places.extend([(x, 200.0), (-x, 200.0)]);
            if x < 300.0 {
                places.extend([(x, 360.0), (-x, 360.0)]);
            }
        }
        let pitch = of(&places).expect("on a pitch");
        assert_eq!(mm(&pitch.across), [150.0; 5]);
        assert_eq!(mm(&pitch.up), [160.0]);
        let (across, up) = pitch.even().expect("even");
        assert_eq!((across.to_mm(), up.to_mm()), (150.0, 160.0));
    }

    /// Columns at 0, 100 and 220: the greatest pitch is 120, and no one pitch holds for all.
    #[test]
    fn by_hand_uneven_lines() {
        let places = [0.0, 100.0, 220.0].map(|x| [(x, 0.0), (x, 90.0)]);
        let pitch = of(places.as_flattened()).expect("on a pitch");
        let (across, up) = pitch.greatest();
        assert_eq!((across.to_mm(), up.to_mm()), (120.0, 90.0));
        assert!(pitch.even().is_none());
        // A cell of 1 mm one way and a hair off in its upper row, as a slip of the pen would have it, is still one line.
        let hair = of(&[(0.0, 0.0), (100.0, 0.0), (0.0, 90.0), (100.0 + 1e-7, 90.0)]);
        assert_eq!(hair.expect("on a pitch").across.len(), 1);
    }

    /// Three corners of a rectangle, whichever is wanting, are none.
    #[test]
    fn holds_three_corners_are_no_rectangle() {
        let corners = [(0.0, 0.0), (10.0, 0.0), (0.0, 20.0), (10.0, 20.0)];
        for wanting in 0..4 {
            let mut three = corners.to_vec();
            three.remove(wanting);
            assert!(of(&three).is_none(), "{wanting}");
        }
        assert!(of(&corners).is_some());
    }

    /// Two levels of two, the outer lower: no four are the corners of a rectangle. Nor are a row, one stay, or none. Two cells far
    /// apart with nothing next to both hang not together.
    #[test]
    fn holds_what_stands_on_no_pitch() {
        assert!(of(&[(-5.0, 12.0), (5.0, 12.0), (-10.0, 9.0), (10.0, 9.0)]).is_none());
        assert!(of(&[(0.0, 0.0), (50.0, 0.0), (100.0, 0.0)]).is_none());
        assert!(of(&[(0.0, 0.0)]).is_none() && of(&[]).is_none());
        let cell = |x: f64, y: f64| [(x, y), (x + 10.0, y), (x, y + 10.0), (x + 10.0, y + 10.0)];
        assert!(of([cell(0.0, 0.0), cell(50.0, 50.0)].as_flattened()).is_none());
        let beside = of([cell(0.0, 0.0), cell(50.0, 0.0)].as_flattened());
        assert_eq!(mm(&beside.expect("on a pitch").across), [10.0, 40.0, 10.0]);
    }
}
