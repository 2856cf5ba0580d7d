//! Room for washers, nuts, heads and joint faces round the holes that need it.
//!
//! ```text
//! room = distance to the other hole − half of what is needed clear − half of the other hole (or of what it needs clear)
//! room = distance to the line − half of what is needed clear
//! ```
//!
//! What is needed clear is the largest of what the works gives for a group of holes: `needs_clear`, a washer, a nut across its
//! corners, a joint face, a pad with its weld, the bead of a tube.
//!
//! Source:  the works, which gives those sizes.
//! Covers:  every hole of such a group against every other hole, and against the lines where heel or weld begins; not the studs
//!          of a joint face against the face that they stand in.
//! Leaves:  spanners, and whatever else has to be got in; nuts and washers of which the spec gives no size.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::{Design, Hole, HoleGroup, HoleIndex};
use crate::spec::{NamedLine, Purpose, Written};
use crate::units::Length;
use crate::units::tolerance::SAME_LENGTH_MM;

/// The rule.
pub const RULE: Rule = Rule {
    name: "washer_room",
    asks: "room for washers, nuts, joint faces and beads",
    source: &source::WORKS,
    run,
    page: include_str!("washer_room.rs"),
};

/// Something that stands beside a hole, and the room between.
struct Beside {
    hole: String,
    other: String,
    distance: Length,
    half_of_other: Length,
    room: Length,
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let needs = |(_, group): &(usize, &HoleGroup)| group.takes_up.is_some();
    let halves = design.holes.iter().map(|hole| half_taken(design, hole));
    let places = Places {
        index: HoleIndex::new(&design.holes),
        most_half: halves.fold(Length::ZERO, Length::max),
    };
    design
        .groups
        .iter()
        .enumerate()
        .filter(needs)
        .filter_map(|(index, group)| tightest(written, design, &places, index, group))
        .collect()
}

fn tightest(
    written: &Written,
    design: &Design,
    places: &Places,
    index: usize,
    group: &HoleGroup,
) -> Option<Finding> {
    let (unit, needed) = (Unit::of_job(written), group.takes_up?);
    let others: Vec<bool> = design
        .groups
        .iter()
        .map(|other| stands_by(written, group, other))
        .collect();
    let holes = (0..design.holes.len()).filter(|&hole| design.holes[hole].group == index);
    let beside = holes
        .flat_map(|hole| {
            [
                nearest_hole(design, places, &others, hole, needed),
                nearest_line(design, &design.holes[hole], needed),
            ]
        })
        .flatten()
        .reduce(|a, b| if b.room < a.room { b } else { a })?;
    Some(
        RULE.finding(format!("{} beside {}", beside.hole, beside.other))
            .with_length("needed clear, diameter", "", needed, unit)
            .at_least_length(Length::ZERO, beside.room, unit)
            .because(format!("the tightest of {}", group.name))
            .work(format!(
                "room = {} − {}/2 − {} = {} {}",
                figure(unit.of(beside.distance)),
                figure(unit.of(needed)),
                figure(unit.of(beside.half_of_other)),
                figure(unit.of(beside.room)),
                unit.name()
            )),
    )
}

/// Every hole by its place, and the most that any takes up on its own side.
struct Places {
    index: HoleIndex,
    most_half: Length,
}

/// Half of what a hole takes up: itself, or what is to stand clear on it.
fn half_taken(design: &Design, hole: &Hole) -> Length {
    let clear = design.groups[hole.group].takes_up.unwrap_or(Length::ZERO);
    hole.ligament_hole.max(clear) / 2.0
}

/// The other hole with the least room to it, of the groups that stand by it; of two alike the first.
fn nearest_hole(
    design: &Design,
    places: &Places,
    others: &[bool],
    number: usize,
    needed: Length,
) -> Option<Beside> {
    let hole = &design.holes[number];
    let mut least: Option<(usize, Length)> = None;
    for near in places.index.nearest_first(hole.at) {
        let other = &design.holes[near];
        let distance = Length::mm(hole.at.distance(other.at));
        // Whatever stands further off has more room than this, however large it is.
        let beyond = distance - needed / 2.0 - places.most_half;
        if least.is_some_and(|(_, room)| beyond > room + Length::mm(SAME_LENGTH_MM)) {
            break;
        }
        if near == number || !others[other.group] {
            continue;
        }
        let room = distance - needed / 2.0 - half_taken(design, other);
        if least.is_none_or(|(first, least)| room < least || (room == least && near < first)) {
            least = Some((near, room));
        }
    }
    let (near, room) = least?;
    let other = &design.holes[near];
    Some(Beside {
        hole: hole.id.clone(),
        other: other.id.clone(),
        distance: Length::mm(hole.at.distance(other.at)),
        half_of_other: half_taken(design, other),
        room,
    })
}

/// Whether the holes of another group count beside those of one. A former pin is gone by the time that washers come.
fn stands_by(written: &Written, own: &HoleGroup, other: &HoleGroup) -> bool {
    other.purpose != Purpose::FormerPin && !stand_together(written, own, other)
}

/// Whether one of two groups is the studs of the other's joint face.
fn stand_together(written: &Written, one: &HoleGroup, two: &HoleGroup) -> bool {
    let studs_of = |group: &HoleGroup| {
        let set = written.holes.iter().find(|set| set.name == group.name);
        set.and_then(|set| set.joint_face.as_ref()?.studs.as_deref())
    };
    studs_of(one) == Some(two.name.as_str()) || studs_of(two) == Some(one.name.as_str())
}

fn nearest_line(design: &Design, hole: &Hole, needed: Length) -> Option<Beside> {
    design
        .lines
        .iter()
        .filter(|(line, _)| {
            matches!(
                line,
                NamedLine::Tangent | NamedLine::InnerWeldToe | NamedLine::OuterWeldToe
            )
        })
        .map(|(line, outline)| {
            let distance = Length::mm(outline.distance(hole.at));
            Beside {
                hole: hole.id.clone(),
                other: format!("the {}", line.name()),
                distance,
                half_of_other: Length::ZERO,
                room: distance - needed / 2.0,
            }
        })
        .reduce(|a, b| if b.room < a.room { b } else { a })
}
