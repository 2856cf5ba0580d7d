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
use crate::design::Design;
use crate::spec::Written;

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
        .because(room.words.clone())
        .work(format!(
            "needed = {} {}, given = {} {}",
            figure(unit.of(room.needed)),
            unit.name(),
            figure(unit.of(room.given)),
            unit.name()
        ));
    vec![finding]
}
