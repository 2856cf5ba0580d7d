//! The area within the outermost stays of a set that stands on a pitch.

use super::edges_meet::meetings_of_carriers;
use super::numbering::Numbered;
use super::{Edge, Outline, Point, StayPitch};
use crate::spec::Purpose;
use crate::units::Length;
use crate::units::tolerance::{SAME_JOINT_MM, SAME_LENGTH_MM};

/// A set of stays that stands on a pitch, and the line round its outermost stays' centres.
pub(super) struct StayField {
    /// Index into [`super::Design::groups`].
    pub(super) group: usize,
    /// From centre to centre of the outermost stays, always bulging outwards: a missing corner is cut off.
    pub(super) outer: Outline,
    /// The least pitch between neighbouring lines, either way.
    pub(super) pitch: Length,
}

impl StayField {
    /// At how many places a weld meets the line round the outermost stays.
    pub(super) fn times_crossed(&self, weld: &[Edge]) -> usize {
        let pairs = weld
            .iter()
            .flat_map(|edge| self.outer.edges().iter().map(move |side| (edge, side)));
        let mut places: Vec<Point> = Vec::new();
        for (edge, side) in pairs {
            for place in meetings_of_carriers(edge, side) {
                let on_both = edge.distance(place).max(side.distance(place)) <= SAME_LENGTH_MM;
                if on_both && places.iter().all(|p| p.distance(place) > SAME_JOINT_MM) {
                    places.push(place);
                }
            }
        }
        places.len()
    }
}

/// The fields of every set that stands on a pitch.
pub(super) fn stay_fields(
    numbered: &Numbered,
    stay_pitches: &[StayPitch],
    stay_tubes: &[usize],
) -> Vec<StayField> {
    let of = |pitch: &StayPitch| {
        let is_stay = numbered.groups[pitch.group].purpose == Purpose::Stay;
        let holes = numbered.holes.iter().enumerate();
        let places: Vec<Point> = holes
            .filter(|(index, hole)| {
                hole.group == pitch.group && (is_stay || stay_tubes.binary_search(index).is_ok())
            })
            .map(|(_, hole)| hole.at)
            .collect();
        let gaps = pitch.across.iter().chain(&pitch.up).copied();
        Some(StayField {
            group: pitch.group,
            outer: round_outermost(places)?,
            pitch: gaps.reduce(Length::min)?,
        })
    };
    stay_pitches.iter().filter_map(of).collect()
}

/// The straight-sided outline round the outermost of some places; none where they lie on one line.
pub(super) fn round_outermost(mut places: Vec<Point>) -> Option<Outline> {
    places.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    // From left to right below, then back above, leaving out each place that is no outward corner.
    let half = |places: &mut dyn Iterator<Item = Point>| {
        let mut kept: Vec<Point> = Vec::new();
        for place in places {
            while let [.., a, b] = kept[..]
                && (b - a).cross(place - b) <= 0.0
            {
                kept.pop();
            }
            kept.push(place);
        }
        kept.pop();
        kept
    };
    let mut corners = half(&mut places.iter().copied());
    corners.extend(half(&mut places.iter().rev().copied()));
    if corners.len() < 3 {
        return None;
    }
    let side = |i: usize| Edge::Line {
        from: corners[i],
        to: corners[(i + 1) % corners.len()],
    };
    Outline::new((0..corners.len()).map(side).collect()).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(places: &[(f64, f64)]) -> Option<f64> {
        let places = places.iter().map(|&(x, y)| Point::new(x, y)).collect();
        round_outermost(places).map(|outline| outline.area_mm2())
    }

    /// A box of 20 × 10: a line from its middle to beyond its side crosses once, one right through twice, through a corner on the
    /// slant once, one inside not at all; an arc that bulges over one side crosses it twice.
    #[test]
    fn by_hand_times_crossed() {
        let field = StayField {
            group: 0,
            outer: round_outermost(vec![
                Point::new(0.0, 0.0),
                Point::new(20.0, 0.0),
                Point::new(20.0, 10.0),
                Point::new(0.0, 10.0),
            ])
            .expect("a box"),
            pitch: Length::mm(10.0),
        };
        let line = |from: (f64, f64), to: (f64, f64)| Edge::Line {
            from: Point::new(from.0, from.1),
            to: Point::new(to.0, to.1),
        };
        for (edge, times) in [
            (line((10.0, 5.0), (10.0, 15.0)), 1),
            (line((-5.0, 5.0), (25.0, 5.0)), 2),
            (line((15.0, 15.0), (25.0, 5.0)), 1),
            (line((5.0, 5.0), (15.0, 5.0)), 0),
            (
                Edge::arc(Point::new(10.0, 5.0), 7.0, 0.0, crate::units::angle::PI),
                2,
            ),
        ] {
            assert_eq!(field.times_crossed(&[edge]), times, "{edge:?}");
        }
    }

    /// A 3 by 2 grid at 10 is 20 × 10; without one upper corner half a cell, 50, is cut off. A row has no area.
    #[test]
    fn by_hand_round_the_outermost() {
        let grid = [
            (0.0, 0.0),
            (10.0, 0.0),
            (20.0, 0.0),
            (0.0, 10.0),
            (10.0, 10.0),
            (20.0, 10.0),
        ];
        assert_eq!(area(&grid), Some(200.0));
        assert_eq!(area(&grid[..5]), Some(150.0));
        assert_eq!(area(&grid[..3]), None);
    }
}
