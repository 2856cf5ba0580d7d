//! Room for washers, nuts, heads and joint faces round the holes that need it.
//!
//! ```text
//! room = distance to the other hole − half of what is needed clear − half of the other hole (or of what it needs clear)
//! room = distance to the line − half of what is needed clear
//! ```
//!
//! What is needed clear is the largest of what the works gives for a group of holes: `needs_clear`, a washer, a nut across its
//! corners, the large end of a plug, a joint face, a pad with its weld, the bead of a tube. Each face of the plate is reckoned by
//! itself: a bead in the smokebox and a pad on the boiler side do not meet.
//!
//! Source:  the works, which gives those sizes.
//! Covers:  every hole of such a group against every other hole on the same face, and against the lines beyond which that face has
//!          no flat: the edge of the plate, the heel, which bends both faces from its tangent on, and the weld toes on the face that
//!          the ring stands on; not the studs of a joint face against the face that they stand in. What is needed clear counts on
//!          both faces.
//! Leaves:  spanners, and whatever else has to be got in; nuts and washers of which the spec gives no size.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::{Design, FlangeDesign, Hole, HoleGroup, HoleIndex};
use crate::spec::{NamedLine, Purpose, ViewFrom, Written};
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

/// What stands beside a hole.
#[derive(Clone, Copy, PartialEq)]
enum Other {
    Hole(usize),
    Line(NamedLine),
}

/// A hole, what stands beside it on one face, and the room between.
struct Beside {
    hole: usize,
    other: Other,
    distance: Length,
    half_of_other: Length,
    room: Length,
}

impl Beside {
    /// Whether it is the same two with the same room, whichever is named first.
    fn is(&self, other: &Beside) -> bool {
        let turned = self.other == Other::Hole(other.hole) && other.other == Other::Hole(self.hole);
        let same = self.hole == other.hole && self.other == other.other;
        (same || turned) && self.room.same_as(other.room)
    }
}

/// The tightest of a group, with the other groups of which it is the tightest too, and the faces on which it is.
struct Tightest<'a> {
    beside: Beside,
    needed: Length,
    groups: Vec<&'a str>,
    faces: Vec<ViewFrom>,
}

const FACES: [ViewFrom; 2] = [ViewFrom::Smokebox, ViewFrom::Firebox];

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let places = FACES.map(|face| Places::on(design, face));
    let mut found: Vec<Tightest> = Vec::new();
    for (index, group) in design.groups.iter().enumerate() {
        for places in &places {
            if let Some(tightest) = tightest(written, design, places, index, group) {
                take(&mut found, tightest);
            }
        }
    }
    let told = |tightest: &Tightest| told(written, design, tightest);
    found.iter().map(told).collect()
}

/// Adds what is tightest of a group on a face, or says of what stands there already that it is that too.
fn take<'a>(found: &mut Vec<Tightest<'a>>, next: Tightest<'a>) {
    let Some(known) = found.iter_mut().find(|known| known.beside.is(&next.beside)) else {
        found.push(next);
        return;
    };
    for group in next.groups {
        if !known.groups.contains(&group) {
            known.groups.push(group);
        }
    }
    for face in next.faces {
        if !known.faces.contains(&face) {
            known.faces.push(face);
        }
    }
}

fn told(written: &Written, design: &Design, tightest: &Tightest) -> Finding {
    let unit = Unit::of_job(written);
    let beside = &tightest.beside;
    let other = match beside.other {
        Other::Hole(hole) => design.holes[hole].id.clone(),
        Other::Line(line) => format!("the {}", line.name()),
    };
    let where_ = match tightest.faces.as_slice() {
        [face] => format!("{} face", face.name()),
        _ => "both faces".into(),
    };
    RULE.finding(format!(
        "{} beside {other}, {where_}",
        design.holes[beside.hole].id
    ))
    .with_length("needed clear, diameter", "", tightest.needed, unit)
    .at_least_length(Length::ZERO, beside.room, unit)
    .because(format!(
        "the tightest of {}",
        tightest.groups.join(" and of ")
    ))
    .work(format!(
        "room = {} − {}/2 − {} = {} {}",
        figure(unit.of(beside.distance)),
        figure(unit.of(tightest.needed)),
        figure(unit.of(beside.half_of_other)),
        figure(unit.of(beside.room)),
        unit.name()
    ))
}

/// The tightest place of a group on one face; nothing where it takes up nothing there.
fn tightest<'a>(
    written: &Written,
    design: &Design,
    places: &Places,
    index: usize,
    group: &'a HoleGroup,
) -> Option<Tightest<'a>> {
    let needed = group.takes_up.on(places.face)?;
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
                nearest_line(design, places.face, hole, needed),
            ]
        })
        .flatten()
        .reduce(|a, b| if b.room < a.room { b } else { a })?;
    Some(Tightest {
        beside,
        needed,
        groups: vec![&group.name],
        faces: vec![places.face],
    })
}

/// Every hole by its place on one face, and the most that any takes up on its own side.
struct Places {
    face: ViewFrom,
    index: HoleIndex,
    most_half: Length,
}

impl Places {
    fn on(design: &Design, face: ViewFrom) -> Places {
        let halves = design
            .holes
            .iter()
            .map(|hole| half_taken(design, hole, face));
        Places {
            face,
            index: HoleIndex::new(&design.holes),
            most_half: halves.fold(Length::ZERO, Length::max),
        }
    }
}

/// Half of what a hole takes up on a face: itself, or what is to stand clear on it.
fn half_taken(design: &Design, hole: &Hole, face: ViewFrom) -> Length {
    let clear = design.groups[hole.group].takes_up.on(face);
    hole.ligament_hole.max(clear.unwrap_or(Length::ZERO)) / 2.0
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
        let room = distance - needed / 2.0 - half_taken(design, other, places.face);
        if least.is_none_or(|(first, least)| room < least || (room == least && near < first)) {
            least = Some((near, room));
        }
    }
    let (near, room) = least?;
    let other = &design.holes[near];
    Some(Beside {
        hole: number,
        other: Other::Hole(near),
        distance: Length::mm(hole.at.distance(other.at)),
        half_of_other: half_taken(design, other, places.face),
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

/// The line with the least room to it, of those beyond which a face has no flat; of two alike the first.
fn nearest_line(design: &Design, face: ViewFrom, hole: usize, needed: Length) -> Option<Beside> {
    design
        .lines
        .iter()
        .filter(|(line, _)| ends_flat(design, *line, face))
        .map(|(line, outline)| {
            let distance = Length::mm(outline.distance(design.holes[hole].at));
            Beside {
                hole,
                other: Other::Line(*line),
                distance,
                half_of_other: Length::ZERO,
                room: distance - needed / 2.0,
            }
        })
        .reduce(|a, b| if b.room < a.room { b } else { a })
}

/// Whether a line ends the flat of a face. A weld's toe is on the face that the ring stands on: the other is flat behind it.
fn ends_flat(design: &Design, line: NamedLine, face: ViewFrom) -> bool {
    match line {
        NamedLine::Edge | NamedLine::Tangent => true,
        NamedLine::InnerWeldToe | NamedLine::OuterWeldToe => matches!(
            &design.flange,
            Some(FlangeDesign::Fabricated(ring)) if ring.towards == face
        ),
    }
}
