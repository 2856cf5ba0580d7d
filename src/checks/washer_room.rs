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
use crate::design::{Design, Hole, HoleGroup};
use crate::spec::{NamedLine, Purpose, Written};
use crate::units::Length;

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
    design
        .groups
        .iter()
        .enumerate()
        .filter(needs)
        .filter_map(|(index, group)| tightest(written, design, index, group))
        .collect()
}

fn tightest(
    written: &Written,
    design: &Design,
    index: usize,
    group: &HoleGroup,
) -> Option<Finding> {
    let (unit, needed) = (Unit::of_job(written), group.takes_up?);
    let holes = design.holes.iter().filter(|hole| hole.group == index);
    let beside = holes
        .flat_map(|hole| {
            [
                nearest_hole(written, design, hole, needed),
                nearest_line(design, hole, needed),
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

/// The other hole with the least room to it; a former pin is gone by the time that washers come.
fn nearest_hole(written: &Written, design: &Design, hole: &Hole, needed: Length) -> Option<Beside> {
    let own = &design.groups[hole.group];
    design
        .holes
        .iter()
        .filter(|other| other.id != hole.id)
        .filter(|other| design.groups[other.group].purpose != Purpose::FormerPin)
        .filter(|other| !stand_together(written, own, &design.groups[other.group]))
        .map(|other| {
            let group = &design.groups[other.group];
            let clear = group.takes_up.unwrap_or(Length::ZERO);
            let half_of_other = other.ligament_hole.max(clear) / 2.0;
            let distance = Length::mm(hole.at.distance(other.at));
            Beside {
                hole: hole.id.clone(),
                other: other.id.clone(),
                distance,
                half_of_other,
                room: distance - needed / 2.0 - half_of_other,
            }
        })
        .reduce(|a, b| if b.room < a.room { b } else { a })
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
