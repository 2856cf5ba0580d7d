//! Clear metal from a weld repair to holes and rivets, for `weld_repair`. No published limit was to be had; the works may set one.

use super::measure::Unit;
use super::weld_repair::RULE;
use super::{Finding, source};
use crate::design::{Design, Repair};
use crate::spec::Written;

/// The least metal to a hole: against the works' own limit, or a note with the least to each sort of hole.
pub(super) fn clear_of_holes(
    written: &Written,
    design: &Design,
    repair: &Repair,
) -> Option<Finding> {
    let unit = Unit::of_job(written);
    let (_, hole, metal) = *repair.nearest.iter().min_by(|a, b| a.2.total_cmp(&b.2))?;
    let place = format!("{} to {}", repair.name, design.holes[hole].id);
    let each: Vec<String> = repair
        .nearest
        .iter()
        .map(|(purpose, hole, metal)| {
            let id = &design.holes[*hole].id;
            format!("{} {id} {}", purpose.name(), unit.text(*metal))
        })
        .collect();
    let each = format!(
        "from the weld to the edge of the hole; the least: {}",
        each.join(", ")
    );
    Some(match &written.own_limits.weld_to_hole {
        Some(limit) => RULE
            .finding_of_works(&limit.origin, place)
            .at_least_length(limit.limit.value(), metal, unit)
            .because(each),
        None => RULE
            .finding_by(&source::GEOMETRY, place)
            .provides_length(metal, unit)
            .because(format!(
                "{each}; `own_limits.weld_to_hole` would set a limit to it"
            )),
    })
}

/// Where the weld runs over the flange: the metal to the nearest rivet hole, and how square it comes to the heel.
pub(super) fn clear_of_rivets(written: &Written, repair: &Repair) -> Vec<Finding> {
    let unit = Unit::of_job(written);
    let note = |crossing: &crate::design::FlangeCrossing| {
        let angle = crate::units::print::decimal(crossing.angle_deg, 2);
        let off = crate::units::print::decimal(crossing.off_square_deg, 1);
        let finding = RULE.finding_by(
            &source::GEOMETRY,
            format!("{} over the flange at {angle}°", repair.name),
        );
        let square = format!("comes to the tangent {off}° off square, and runs square from there");
        match &crossing.rivet {
            Some((id, metal)) => finding.provides_length(*metal, unit).because(format!(
                "along the bore from the weld to the hole of rivet {id}; {square}"
            )),
            None => finding.because(square),
        }
    };
    repair.crossings.iter().map(note).collect()
}
