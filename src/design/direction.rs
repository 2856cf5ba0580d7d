//! Ligaments of a nest by the direction in which its neighbours lie.
//!
//! Two holes are *neighbours* here where no third hole of the nest has its centre inside the circle drawn on their pitch as
//! diameter: in a staggered nest the next hole in the same row but two columns off is no neighbour, because a hole stands
//! between.

use super::{Hole, HoleGroup, HoleIndex, Ligament};
use crate::spec::Purpose;
use crate::units::Length;
use crate::units::tolerance::SAME_LENGTH_MM;

/// Neighbours of one hole looked at, nearest first. Six stand round a hole of a staggered nest and eight of a square one;
/// three times as many leaves room for a nest stretched one way.
const NEIGHBOURS: usize = 24;

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
    let is_nest = |g: &usize| matches!(groups[*g].purpose, Purpose::Tube | Purpose::Flue);
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
    let mut tightest: [Option<Ligament>; 3] = [None, None, None];
    for &hole in &members {
        for other in neighbours(holes, &index, hole) {
            let pair = Ligament::between(holes, hole, other);
            let best = &mut tightest[direction_of(holes, &pair)];
            if best.as_ref().is_none_or(|b| is_tighter(&pair, b)) {
                *best = Some(pair);
            }
        }
    }
    let found = DIRECTIONS.into_iter().zip(tightest);
    found
        .filter_map(|(direction, pair)| Some(describe(holes, group, direction, pair?)))
        .collect()
}

/// The neighbours of a hole with a higher index.
fn neighbours(holes: &[Hole], index: &HoleIndex, hole: usize) -> Vec<usize> {
    let near: Vec<usize> = index
        .nearest_first(holes[hole].at)
        .take(NEIGHBOURS + 1)
        .collect();
    let mut kept = Vec::new();
    for &other in near.iter().filter(|&&other| other > hole) {
        let middle = holes[hole].at.midway(holes[other].at);
        let reach = holes[hole].at.distance(holes[other].at) / 2.0 - SAME_LENGTH_MM;
        let between = |third: &usize| {
            *third != hole && *third != other && holes[*third].at.distance(middle) < reach
        };
        if !near.iter().any(between) {
            kept.push(other);
        }
    }
    kept
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
