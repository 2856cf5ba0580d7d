//! The numbers of the holes: given once, in one order, and the same on every sheet, file and record.
//!
//! By the letter of the group, then in the order in which the group was placed: a nest line by line (columns left to right
//! and low to high, rows bottom to top and left to right), places in the order written, added holes last. Groups with one
//! letter go on counting where the last one stopped.

use std::collections::BTreeMap;

use super::line_names::name_lines;
use super::{Hole, HoleGroup, LineWay, NestLine, Omission, Point};
use crate::units::{Length, Size};

/// A group of holes in place, not yet numbered.
#[derive(Clone, Debug)]
pub(super) struct PlacedGroup {
    /// What the hole schedule says of it.
    pub group: HoleGroup,
    /// The letter that opens its numbers.
    pub letter: String,
    /// Its holes in the order of their numbers.
    pub holes: Vec<PlacedHole>,
    /// Whether its lines are columns or rows, where it has lines.
    pub lines: Option<LineWay>,
    /// x or y of each line that has a hole, by the line's number.
    pub line_offsets: BTreeMap<i32, f64>,
    /// Places of the pattern left out, each with its reason.
    pub omitted: Vec<(Point, String)>,
    /// Least metal between two holes of its regular pattern, mm.
    pub own_metal: Option<f64>,
}

/// A hole in place, not yet numbered.
#[derive(Clone, Debug)]
pub(super) struct PlacedHole {
    pub at: Point,
    pub finish: Size,
    pub ligament_hole: Length,
    pub exception: Option<String>,
    pub path: String,
    /// Number of the line of the pattern it stands on; none for a hole off the pattern.
    pub line: Option<i32>,
}

/// The groups of a plate with every hole numbered.
#[derive(Clone, Debug, Default)]
pub(super) struct Numbered {
    pub groups: Vec<HoleGroup>,
    pub holes: Vec<Hole>,
    pub nest_lines: Vec<NestLine>,
    pub line_way: Vec<(usize, LineWay)>,
    pub omissions: Vec<Omission>,
}

/// Numbers every hole.
pub(super) fn number_holes(placed: Vec<PlacedGroup>) -> Numbered {
    let mut numbered = Numbered::default();
    let mut last_number: BTreeMap<String, usize> = BTreeMap::new();
    for (index, group) in placed.into_iter().enumerate() {
        let count = last_number.entry(group.letter.clone()).or_default();
        let first = numbered.holes.len();
        for hole in group.holes {
            *count += 1;
            numbered.holes.push(Hole {
                id: format!("{}{count}", group.letter),
                group: index,
                at: hole.at,
                finish: hole.finish,
                ligament_hole: hole.ligament_hole,
                exception: hole.exception,
                line: hole.line,
                path: hole.path,
            });
        }
        if let Some(way) = group.lines {
            numbered.line_way.push((index, way));
            let lines = nest_lines(index, way, &group.line_offsets, &numbered.holes[first..]);
            numbered.nest_lines.extend(lines);
        }
        let omitted = group.omitted.into_iter();
        numbered
            .omissions
            .extend(omitted.map(|(at, reason)| Omission {
                group: index,
                at,
                reason,
            }));
        numbered.groups.push(group.group);
    }
    name_lines(&mut numbered.nest_lines, &numbered.holes);
    numbered
}

/// The lines of one nest, in the order of their numbers.
fn nest_lines(
    group: usize,
    way: LineWay,
    offsets: &BTreeMap<i32, f64>,
    holes: &[Hole],
) -> Vec<NestLine> {
    let along = |hole: &Hole| match way {
        LineWay::Columns => hole.at.y,
        LineWay::Rows => hole.at.x,
    };
    let mut by_line: BTreeMap<i32, Vec<&Hole>> = BTreeMap::new();
    for hole in holes {
        if let Some(line) = hole.line {
            by_line.entry(line).or_default().push(hole);
        }
    }
    by_line
        .into_iter()
        .map(|(number, on_line)| NestLine {
            group,
            name: String::new(),
            number,
            offset: offsets[&number],
            first: along(on_line[0]),
            last: along(on_line[on_line.len() - 1]),
            holes: on_line.into_iter().map(|h| h.id.clone()).collect(),
        })
        .collect()
}
