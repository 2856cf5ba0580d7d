//! The piece of flat that each stay carries.
//!
//! A stay on an even pitch carries the rectangle of its pitches about its centre, less what other holes take out of it (Indian Boiler
//! Regulations 1950, regulation 588); any other stay above the tubes carries an even share of the flat there. A stay tube carries
//! the rectangle of its own pitches: those of its nest where every tube is a stay tube, else of the stay tubes of the nest.

use super::circle_measures::circle_in_rectangle;
use super::{AboveTubes, Hole, HoleGroup, HoleIndex, Point, StayPitch};
use crate::spec::{Nest, Pattern, Purpose, WhichTubes, Written};
use crate::units::Length;

/// What one stay carries.
#[derive(Clone, Debug)]
pub struct StayArea {
    /// Index into [`super::Design::holes`].
    pub hole: usize,
    /// The piece of flat.
    pub piece: Piece,
    /// Its area, with what other holes take out of a rectangle taken off, mm².
    pub area_mm2: f64,
}

/// A piece of flat.
#[derive(Clone, Debug)]
pub enum Piece {
    /// The rectangle of its pitches, its middle on the stay.
    Rectangle(Rectangle),
    /// An even share of the flat above the tubes ([`super::Design::above_tubes`]).
    Share {
        /// How many stays share it.
        among: usize,
    },
}

/// The rectangle of a stay's pitches. It is taken whole as regulation 588 has it, also where it reaches beyond the flange line: the
/// larger area, which loads the stay more.
#[derive(Clone, Copy, Debug)]
pub struct Rectangle {
    /// Pitch from column to column.
    pub across: Length,
    /// Pitch from row to row.
    pub up: Length,
    /// What the other holes take out of it, mm².
    pub holes_mm2: f64,
}

/// The largest of the rectangles among some pieces, by which all of them are judged; of several alike the first.
pub fn largest_rectangle<'a>(
    areas: impl Iterator<Item = &'a StayArea>,
) -> Option<(&'a StayArea, Rectangle)> {
    let rectangles = areas.filter_map(|area| match area.piece {
        Piece::Rectangle(rectangle) => Some((area, rectangle)),
        Piece::Share { .. } => None,
    });
    rectangles.reduce(|a, b| if b.0.area_mm2 > a.0.area_mm2 { b } else { a })
}

/// What every stay and stay tube carries, by hole.
pub(super) fn stay_areas(
    written: &Written,
    holes: &[Hole],
    groups: &[HoleGroup],
    pitches: &[StayPitch],
    above: Option<&AboveTubes>,
    stay_tubes: &[usize],
) -> Vec<StayArea> {
    let near = Near::new(holes);
    let mut areas = Vec::new();
    for (index, hole) in holes.iter().enumerate() {
        let group = &groups[hole.group];
        let is_stay_tube = stay_tubes.binary_search(&index).is_ok();
        if group.purpose != Purpose::Stay && !is_stay_tube {
            continue;
        }
        let own = pitches.iter().find(|pitch| pitch.group == hole.group);
        let even = if is_stay_tube {
            nest_pitch(written, group).or_else(|| own?.even())
        } else {
            own.and_then(StayPitch::even)
        };
        areas.extend(match (even, above) {
            (Some(even), _) => Some(rectangle(&near, index, even)),
            (None, Some(above)) if above.stays.contains(&index) => Some(share(above, index)),
            _ => None,
        });
    }
    areas
}

/// Pitches across and up of a nest in which every tube is a stay tube and stands in a pattern.
fn nest_pitch(written: &Written, group: &HoleGroup) -> Option<(Length, Length)> {
    let mut nests = written.tubes.iter().enumerate();
    let (_, nest): (_, &Nest) = nests.find(|(i, _)| group.path == format!("tubes[{i}]"))?;
    if !matches!(nest.stay_tubes.as_ref()?.which, WhichTubes::Every) {
        return None;
    }
    match &nest.pattern {
        Pattern::Columns(lines) => Some((lines.spacing.value(), lines.pitch.value())),
        Pattern::Rows(lines) => Some((lines.pitch.value(), lines.spacing.value())),
        Pattern::Square(square) => Some((square.pitch.value(), square.pitch.value())),
        Pattern::Points(_) => None,
    }
}

/// The holes of a plate, to be found by their places.
struct Near<'a> {
    holes: &'a [Hole],
    index: HoleIndex,
    largest: Length,
}

impl Near<'_> {
    fn new(holes: &[Hole]) -> Near<'_> {
        let sizes = holes.iter().map(|hole| hole.ligament_hole);
        Near {
            holes,
            index: HoleIndex::new(holes),
            largest: sizes.fold(Length::ZERO, Length::max),
        }
    }
}

fn rectangle(near: &Near, stay: usize, (across, up): (Length, Length)) -> StayArea {
    let middle = near.holes[stay].at;
    let half = Point::new(across.to_mm() / 2.0, up.to_mm() / 2.0);
    let (low, high) = (middle - half, middle + half);
    let reach = half.radius() + near.largest.to_mm() / 2.0;
    let others = near.index.within_sorted(middle, reach);
    let holes_mm2 = others
        .into_iter()
        .filter(|other| *other != stay)
        .map(|other| &near.holes[other])
        .map(|hole| circle_in_rectangle(hole.at, hole.ligament_hole / 2.0, low, high))
        .sum();
    StayArea {
        hole: stay,
        piece: Piece::Rectangle(Rectangle {
            across,
            up,
            holes_mm2,
        }),
        area_mm2: across.to_mm() * up.to_mm() - holes_mm2,
    }
}

fn share(above: &AboveTubes, stay: usize) -> StayArea {
    let among = above.stays.len();
    StayArea {
        hole: stay,
        piece: Piece::Share { among },
        area_mm2: above.area_mm2 / among as f64,
    }
}
