//! Ligaments of a nest by the direction in which its neighbours lie.
//!
//! Two holes are *neighbours* here where no third hole of the nest has its centre inside the circle drawn on their pitch as
//! diameter: in a staggered nest the next hole in the same row but two columns off is no neighbour, because a hole stands
//! between.

use super::{Hole, HoleGroup, HoleIndex, Ligament};
use crate::units::Length;
use crate::units::tolerance::SAME_LENGTH_MM;

/// Neighbours are looked for within this many times the distance at which half the holes of the nest have another: room for a
/// nest drawn out to twice as far one way as the other.
const REACH: f64 = 2.2;

/// One direction in which neighbours of a nest lie, with its least ligament and its efficiency.
#[derive(Clone, Debug)]
pub struct DirectionLigament {
    /// Index into [`super::Design::groups`].
    pub group: usize,
    /// "column", "row" or "diagonal".
    pub direction: &'static str,
    /// The tightest pair in that direction; of several alike, that with the lowest indices.
    pub ligament: Ligament,
    /// (p − d)/p of that pair, a share.
    pub efficiency: f64,
    /// Hole diameter used: the mean of the two where they differ.
    pub hole: Length,
}

const DIRECTIONS: [&str; 3] = ["column", "row", "diagonal"];

/// For each nest of tubes or flues, the tightest pair of neighbours one above the other (column), side by side (row) and on the
/// slant (diagonal); a direction in which no neighbours lie is left out.
pub fn directions(holes: &[Hole], groups: &[HoleGroup]) -> Vec<DirectionLigament> {
    let is_nest = |g: &usize| groups[*g].purpose.takes_a_tube();
    let nests = (0..groups.len()).filter(is_nest);
    nests
        .flat_map(|group| directions_of_nest(holes, group))
        .collect()
}

fn directions_of_nest(holes: &[Hole], group: usize) -> Vec<DirectionLigament> {
    let members: Vec<usize> = (0..holes.len())
        .filter(|&h| holes[h].group == group)
        .collect();
    let index = HoleIndex::of_places(members.iter().map(|&m| (m, holes[m].at)));
    let reach = REACH * usual_spacing(holes, &members, &index);
    let mut tightest: [Option<Ligament>; 3] = [None, None, None];
    for &hole in &members {
        let near: Vec<usize> = index.within(holes[hole].at, reach).collect();
        for &other in near.iter().filter(|&&other| other > hole) {
            let pair = Ligament::between(holes, hole, other);
            let best = &mut tightest[direction_of(holes, &pair)];
            let tighter = best.as_ref().is_none_or(|b| is_tighter(&pair, b));
            if tighter && are_neighbours(holes, &near, hole, other) {
                *best = Some(pair);
            }
        }
    }
    let found = DIRECTIONS.into_iter().zip(tightest);
    found
        .filter_map(|(direction, pair)| Some(describe(holes, group, direction, pair?)))
        .collect()
}

/// The distance, mm, within which half the holes of a nest have another; nothing where there is but one.
fn usual_spacing(holes: &[Hole], members: &[usize], index: &HoleIndex) -> f64 {
    let nearest = |&hole: &usize| {
        let other = index
            .nearest_first(holes[hole].at)
            .find(|&other| other != hole)?;
        Some(holes[hole].at.distance(holes[other].at))
    };
    // A hundred holes spread over the nest tell it well enough.
    let step = members.len().div_ceil(100).max(1);
    let mut spacings: Vec<f64> = members.iter().step_by(step).filter_map(nearest).collect();
    spacings.sort_by(f64::total_cmp);
    spacings.get(spacings.len() / 2).copied().unwrap_or(0.0)
}

/// Whether no third hole stands between two, `near` holding all that can.
fn are_neighbours(holes: &[Hole], near: &[usize], hole: usize, other: usize) -> bool {
    let middle = holes[hole].at.midway(holes[other].at);
    let reach = holes[hole].at.distance(holes[other].at) / 2.0 - SAME_LENGTH_MM;
    let stands_between = |&third: &usize| {
        third != hole && third != other && holes[third].at.distance(middle) < reach
    };
    !near.iter().any(stands_between)
}

fn direction_of(holes: &[Hole], pair: &Ligament) -> usize {
    let way = holes[pair.holes.1].at - holes[pair.holes.0].at;
    match (way.x.abs() <= SAME_LENGTH_MM, way.y.abs() <= SAME_LENGTH_MM) {
        (true, _) => 0,
        (_, true) => 1,
        _ => 2,
    }
}

fn is_tighter(pair: &Ligament, than: &Ligament) -> bool {
    if pair.metal.same_as(than.metal) {
        pair.holes < than.holes
    } else {
        pair.metal < than.metal
    }
}

fn describe(
    holes: &[Hole],
    group: usize,
    direction: &'static str,
    ligament: Ligament,
) -> DirectionLigament {
    let (a, b) = ligament.holes;
    DirectionLigament {
        group,
        direction,
        efficiency: ligament.metal / ligament.pitch,
        hole: (holes[a].ligament_hole + holes[b].ligament_hole) / 2.0,
        ligament,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Point;
    use crate::units::Size;
    use crate::units::angle::sqrt;

    /// The tightest pair of each direction, mm, of a nest of holes of 40.
    fn of_nest(places: &[(f64, f64)]) -> Vec<(&'static str, f64, (usize, usize))> {
        let finish = Size::read("40 mm").unwrap();
        let hole = |&(x, y): &(f64, f64)| Hole {
            id: String::new(),
            group: 0,
            at: Point::new(x, y),
            finish: finish.clone(),
            ligament_hole: finish.value(),
            exception: None,
            line: None,
            path: String::new(),
        };
        let holes: Vec<Hole> = places.iter().map(hole).collect();
        let found = directions_of_nest(&holes, 0);
        let told = found
            .into_iter()
            .map(|d| (d.direction, d.ligament.metal.to_mm(), d.ligament.holes));
        told.collect()
    }

    /// Square at 60: 20 both ways and 60 √2 − 40 = 44.85 on the slant; the first pair of each is named.
    #[test]
    fn by_hand_square() {
        let places: Vec<_> = (0..9)
            .map(|i| (60.0 * f64::from(i % 3), 60.0 * f64::from(i / 3)))
            .collect();
        let found = of_nest(&places);
        assert_eq!(found[0], ("column", 20.0, (0, 3)));
        assert_eq!(found[1], ("row", 20.0, (0, 1)));
        assert_eq!((found[2].0, found[2].2), ("diagonal", (0, 4)));
        assert!((found[2].1 - (60.0 * sqrt(2.0) - 40.0)).abs() < 1e-9);
    }

    /// Columns 50 apart at a pitch of 60, odd ones half a pitch up: 20 in the column, √(50² + 30²) − 40 = 18.31 on the slant, and
    /// no row, since a hole stands between two in one row.
    #[test]
    fn by_hand_staggered_columns() {
        let place = |i: i32| {
            (
                50.0 * f64::from(i % 4),
                60.0 * f64::from(i / 4) + 30.0 * f64::from(i % 2),
            )
        };
        let found = of_nest(&(0..16).map(place).collect::<Vec<_>>());
        assert_eq!(found.len(), 2);
        assert_eq!(found[0], ("column", 20.0, (0, 4)));
        assert_eq!(
            (found[1].0, format!("{:.2}", found[1].1)),
            ("diagonal", "18.31".into())
        );
    }

    /// In a row at 0, 100 and 190 the second pair is the tighter, 50. One pair close together in a nest pitched at 120 does not shut
    /// the rest out: it is the row, 10, and the columns at 120 stand, 80.
    #[test]
    fn by_hand_uneven_spacing() {
        assert_eq!(
            of_nest(&[(0.0, 0.0), (100.0, 0.0), (190.0, 0.0)]),
            [("row", 50.0, (1, 2))]
        );
        let mut places = vec![(0.0, 0.0), (50.0, 0.0)];
        places.extend((1..8).map(|i| (0.0, 120.0 * f64::from(i))));
        let found = of_nest(&places);
        assert_eq!(found[0], ("column", 80.0, (0, 2)));
        assert_eq!(found[1], ("row", 10.0, (0, 1)));
    }

    /// Of four alike on the slant about one hole, that with the lowest number is named, in whatever order they are written.
    #[test]
    fn holds_of_several_alike_the_lowest_numbers() {
        let round = [(50.0, 30.0), (-50.0, 30.0), (50.0, -30.0), (-50.0, -30.0)];
        for turn in 0..4 {
            let mut places = vec![(0.0, 0.0)];
            places.extend((0..4).map(|i| round[(i + turn) % 4]));
            let found = of_nest(&places);
            let slant = found.iter().find(|d| d.0 == "diagonal").expect("a slant");
            assert_eq!(slant.2, (0, 1), "{turn}");
        }
    }

    /// Two holes of 40 and 50 at 100: the mean is 45, and (100 − 45)/100 = 55 %.
    #[test]
    fn by_hand_unequal_holes() {
        let hole = |x: f64, size: &str| Hole {
            id: String::new(),
            group: 0,
            at: Point::new(x, 0.0),
            finish: Size::read(size).unwrap(),
            ligament_hole: Size::read(size).unwrap().value(),
            exception: None,
            line: None,
            path: String::new(),
        };
        let found = directions_of_nest(&[hole(0.0, "40 mm"), hole(100.0, "50 mm")], 0);
        assert!(found[0].hole.same_as(Length::mm(45.0)));
        assert_eq!(format!("{:.4}", found[0].efficiency), "0.5500");
    }

    /// A row of three 100 apart, wider than two holes: still a row. One hole alone, or none, has no neighbour.
    #[test]
    fn by_hand_few_holes() {
        assert_eq!(
            of_nest(&[(0.0, 0.0), (100.0, 0.0), (200.0, 0.0)]),
            [("row", 60.0, (0, 1))]
        );
        assert_eq!(of_nest(&[(0.0, 0.0)]), []);
        assert_eq!(of_nest(&[]), []);
    }
}
