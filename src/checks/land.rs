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
        return lands
            .iter()
            .map(|land| noted(written, design, land))
            .collect();
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

fn noted(written: &Written, design: &Design, land: &Land) -> Finding {
    let finding = RULE.finding_by(&source::GEOMETRY, place(design, land));
    figures(finding, written, design, land)
        .provides_length(land.metal, Unit::of_job(written))
        .because("`own_limits.land` would set a limit to it")
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
    finding.with_length("hole", "d", hole, unit).work(format!(
        "land = {} − {}/2 = {} {}",
        figure(unit.of(from_centre)),
        figure(unit.of(hole)),
        figure(unit.of(land.metal)),
        unit.name()
    ))
}
