//! Room for rivet heads beside the heel or the ring's weld.
//!
//! ```text
//! straight needed = edge + half the head + clearance         pressed flange, up to the tangent of the heel
//! outer weld toe to hole centre, against what is needed      fabricated ring
//! ```
//!
//! Source:  the works' own clearance, given under `rivets.head_clearance` with its origin.
//! Covers:  a head that must lie on the straight, clear of the bend or the weld.
//! Leaves:  room to get the rivet in and to hold it up.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::{Design, FlangeDesign, HeadRoom};
use crate::spec::{RivetLineSpec, Written};
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "head_room",
    asks: "room for rivet heads",
    source: &source::WORKS,
    run,
    page: include_str!("head_room.rs"),
};

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let (Some(rivets), Some(given)) = (&design.rivets, &written.rivets) else {
        return Vec::new();
    };
    let unit = Unit::of_job(written);
    let origin = given
        .head_clearance
        .as_ref()
        .map_or("an edge of 1.5 holes kept from the weld too", |c| {
            c.origin.as_str()
        });
    let Some(room) = &rivets.head_room else {
        let missing = match (&given.head_diameter, &given.head_clearance) {
            (None, None) => "`rivets.head_diameter` and `rivets.head_clearance` are not given",
            (None, Some(_)) => "`rivets.head_diameter` is not given",
            (Some(_), None) => "`rivets.head_clearance` is not given",
            (Some(_), Some(_)) => "the flange has no heel or weld to stand clear of",
        };
        return vec![RULE.finding("flange").not_judged(missing)];
    };
    let finding = RULE
        .finding_of_works(origin, "flange")
        .at_least_length(room.needed, room.given, unit)
        .because(room.words.clone());
    let finding = match (&given.head_diameter, &given.head_clearance) {
        (Some(_), Some(_)) => finding,
        _ => finding.also(
            "the head itself is not compared, since `rivets.head_diameter` and `rivets.head_clearance` are not both given",
        ),
    };
    let finding = working(design, given, room, unit)
        .into_iter()
        .fold(finding, |finding, line| finding.work(line));
    vec![finding]
}

/// How needed and given were reckoned, line by line.
fn working(design: &Design, spec: &RivetLineSpec, room: &HeadRoom, unit: Unit) -> Vec<String> {
    let text = |length: Length| figure(unit.of(length));
    let (head, clearance) = match (&spec.head_diameter, &spec.head_clearance) {
        (Some(head), Some(clearance)) => (head.value(), clearance.size.value()),
        _ => (Length::ZERO, Length::ZERO),
    };
    match &design.flange {
        Some(FlangeDesign::Pressed(_)) => vec![
            format!(
                "needed = edge + half head + clearance = {} + {}/2 + {} = {} {}",
                text(room.needed - head / 2.0 - clearance),
                text(head),
                text(clearance),
                text(room.needed),
                unit.name()
            ),
            format!("given = straight = {} {}", text(room.given), unit.name()),
        ],
        Some(FlangeDesign::Fabricated(ring)) => vec![
            format!(
                "needed = {} = {} {}",
                if head == Length::ZERO {
                    format!("1.5 × {}", text(spec.hole.value()))
                } else {
                    let (hole, head) = (text(spec.hole.value()), text(head));
                    format!(
                        "the larger of 1.5 × {hole} and {head}/2 + {}",
                        text(clearance)
                    )
                },
                text(room.needed),
                unit.name()
            ),
            format!(
                "given = ring − edge − weld = {} − {} − {} = {} {}",
                text(ring.ring_width.value()),
                text(spec.from_edge.value()),
                text(ring.toe_on_ring),
                text(room.given),
                unit.name()
            ),
        ],
        None => Vec::new(),
    }
}
