//! Clear metal from hole edges to the line along which the flange holds the flat.
//!
//! ```text
//! land = distance from hole centre to the line − half the hole
//! ```
//!
//! Source:  the works' own limit; no published figure for a small locomotive plate is known to this program.
//! Covers:  every purpose of hole, to the flange line that `support` names, or to tangent and inner weld toe where it names none; and
//!          the holes of a nest to each line of its `within.land`, added and moved ones too.
//! Leaves:  room for heads, nuts and washers; heat from welding beside a hole. Breathing spaces of shell boilers are noted
//!          by `breathing_space`.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::{Design, Hole, Land, land_of};
use crate::spec::{NamedLine, Purpose, Written};
use crate::units::Length;

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
    let mut findings = of_nests(written, design);
    match &written.own_limits.land {
        Some(limit) => findings.extend(lands.iter().map(|land| {
            let finding = RULE.finding_of_works(&limit.origin, place(design, land));
            compared(finding, written, design, land, limit.limit.value())
        })),
        None => findings.extend(noted(written, design, lands)),
    }
    findings
}

fn compared(
    finding: Finding,
    written: &Written,
    design: &Design,
    land: &Land,
    least: Length,
) -> Finding {
    let unit = Unit::of_job(written);
    figures(finding, written, design, land).at_least_length(least, land.metal, unit)
}

/// The land that the works sets for a nest, on all its holes: those that an exception adds or moves as well as those that the
/// pattern places.
fn of_nests(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (i, nest) in written.tubes.iter().enumerate() {
        for limit in &nest.within.land {
            let path = format!("tubes[{i}]");
            let own = |hole: &Hole| design.groups[hole.group].path == path;
            let Some(land) = least_land(design, limit.to, own) else {
                continue;
            };
            let origin = format!("`{path}.within.land`");
            let finding = RULE.finding_of_works(&origin, place(design, &land));
            findings.push(compared(
                finding,
                written,
                design,
                &land,
                limit.at_least.value(),
            ));
        }
    }
    findings
}

/// The least land to a line of the holes that are wanted.
fn least_land(design: &Design, to: NamedLine, wanted: impl Fn(&Hole) -> bool) -> Option<Land> {
    let (line, outline) = design.lines.iter().find(|(line, _)| *line == to)?;
    let holes = design
        .holes
        .iter()
        .enumerate()
        .filter(|(_, hole)| wanted(hole));
    let lands = holes.filter_map(|(index, hole)| {
        Some(Land {
            purpose: design.groups[hole.group].purpose,
            line: *line,
            hole: index,
            metal: land_of(hole, *line, outline, &design.lines)?,
        })
    });
    lands.reduce(|a, b| match b.metal.shortfall(a.metal) {
        Some(_) => b,
        None => a,
    })
}

/// The least land of the holes for which no limit is set, with that of every other purpose in its working; nothing where each has
/// its limit.
fn noted(written: &Written, design: &Design, lands: Vec<&Land>) -> Option<Finding> {
    let judged = |hole: &Hole, to| is_judged(written, &design.groups[hole.group].path, to);
    let judged_to = |line| design.holes.iter().any(|hole| judged(hole, line));
    let some_judged = lands.iter().any(|land| judged_to(land.line));
    let lands: Vec<Land> = lands
        .into_iter()
        .filter_map(|land| {
            least_land(design, land.line, |hole| {
                design.groups[hole.group].purpose == land.purpose && !judged(hole, land.line)
            })
        })
        .collect();
    let least = lands
        .iter()
        .reduce(|a, b| if b.metal < a.metal { b } else { a })?;
    let mut finding = RULE.finding_by(&source::GEOMETRY, place(design, least));
    for land in &lands {
        finding = figures(finding, written, design, land);
    }
    let noted = finding.provides_length(least.metal, Unit::of_job(written));
    let of = match some_judged {
        true => "the least of the holes that no `within.land` judges",
        false => "the least of all",
    };
    Some(noted.because(format!(
        "{of}; `own_limits.land` would set one limit to every hole"
    )))
}

/// Whether the works sets the holes of a group, by its path in the spec, their land to a line.
fn is_judged(written: &Written, path: &str, to: NamedLine) -> bool {
    let mut nests = written.tubes.iter().enumerate();
    nests.any(|(i, nest)| {
        path == format!("tubes[{i}]") && nest.within.land.iter().any(|limit| limit.to == to)
    })
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
