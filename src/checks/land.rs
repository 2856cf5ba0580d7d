//! Clear metal from hole edges to the line along which the flange holds the flat.
//!
//! ```text
//! land = distance from hole centre to the line − half the hole
//! ```
//!
//! Source:  the works' own limit; no published figure for a small locomotive plate is known to this program.
//! Covers:  every purpose of hole, to the flange line that `support` names, or to tangent and inner weld toe where it names none.
//! Leaves:  room for heads, nuts and washers; heat from welding beside a hole. Breathing spaces of shell boilers are noted
//!          by `breathing_space`.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::{Design, Land};
use crate::spec::{NamedLine, Purpose, Written};

/// The rule.
pub const RULE: Rule = Rule {
    name: "land",
    asks: "metal between hole edges and the flange line",
    source: &source::WORKS,
    run,
    page: include_str!("land.rs"),
};

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let lands = lands_to_flange(written, design);
    let Some(limit) = &written.own_limits.land else {
        return noted(written, design, &lands).into_iter().collect();
    };
    let unit = Unit::of_job(written);
    let compared = |land: &&Land| {
        let finding = RULE.finding_of_works(&limit.origin, place(design, land));
        figures(finding, written, design, land).at_least_length(
            limit.limit.value(),
            land.metal,
            unit,
        )
    };
    lands.iter().map(compared).collect()
}

/// The least land of all, with the others in its working.
fn noted(written: &Written, design: &Design, lands: &[&Land]) -> Option<Finding> {
    let least = lands
        .iter()
        .copied()
        .reduce(|a, b| if b.metal < a.metal { b } else { a })?;
    let mut finding = RULE.finding_by(&source::GEOMETRY, place(design, least));
    for land in lands {
        finding = figures(finding, written, design, land);
    }
    let noted = finding.provides_length(least.metal, Unit::of_job(written));
    Some(noted.because("the least; `own_limits.land` would set a limit to it"))
}

/// Lands to the line that holds the flat, of every purpose of hole that will still be a hole.
pub(super) fn lands_to_flange<'a>(written: &Written, design: &'a Design) -> Vec<&'a Land> {
    let named = written.support.as_ref().map(|s| s.flange_line);
    let holds = |line: NamedLine| match named {
        Some(named) => line == named,
        None => matches!(line, NamedLine::Tangent | NamedLine::InnerWeldToe),
    };
    design
        .lands
        .iter()
        .filter(|land| holds(land.line) && land.purpose != Purpose::FormerPin)
        .collect()
}

fn place(design: &Design, land: &Land) -> String {
    format!("{} to {}", design.holes[land.hole].id, land.line.name())
}

fn figures(finding: Finding, written: &Written, design: &Design, land: &Land) -> Finding {
    let unit = Unit::of_job(written);
    let hole = design.holes[land.hole].ligament_hole;
    let from_centre = land.metal + hole / 2.0;
    let id = &design.holes[land.hole].id;
    finding
        .with_length(format!("hole {id}"), "d", hole, unit)
        .work(format!(
            "{id}: land = {} − {}/2 = {} {}",
            figure(unit.of(from_centre)),
            figure(unit.of(hole)),
            figure(unit.of(land.metal)),
            unit.name()
        ))
}
