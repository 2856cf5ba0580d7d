//! What the least ligaments of a nest are while its holes are still smaller than they will be.
//!
//! ```text
//! metal = p − d        p  pitch of the tightest pair     d  hole at the stage
//! ```
//!
//! Source:  geometry; nothing to cite.
//! Covers:  each nest, at the size that the contractor cuts (where the works lets him) and at every stage before the
//!          last that has a size. A figure for the rule and calipers between the stages; the finished hole is `tube_ligament`.
//! Leaves:  whether the metal is enough, which is judged at the finished hole, where it is least.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::cutter::cut_diameter;
use crate::design::{Design, DirectionLigament};
use crate::spec::Written;
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "ligament_at_stage",
    asks: "metal between tube holes at each stage",
    source: &source::GEOMETRY,
    run,
    page: include_str!("ligament_at_stage.rs"),
};

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let job = Unit::of_job(written);
    let mut findings = Vec::new();
    for group in 0..design.groups.len() {
        let Some(tightest) = tightest(design, group) else {
            continue;
        };
        for (stage, hole) in sizes_on_the_way(written, design, group) {
            findings.push(at_stage(design, tightest, &stage, hole, job));
        }
    }
    findings
}

/// The direction in which a nest has least metal.
fn tightest(design: &Design, group: usize) -> Option<&DirectionLigament> {
    design
        .directions
        .iter()
        .filter(|direction| direction.group == group)
        .min_by(|a, b| a.ligament.metal.total_cmp(&b.ligament.metal))
}

/// Every size of a nest's holes before the last, with what is done to leave it.
fn sizes_on_the_way(written: &Written, design: &Design, group: usize) -> Vec<(String, Length)> {
    let group = &design.groups[group];
    let finish = group.finish.value();
    let as_cut = cut_diameter(written, design, group, finish)
        .filter(|cut| finish.shortfall(*cut).is_none() && !cut.same_as(finish))
        .map(|cut| ("as cut".to_string(), cut));
    let before_the_last = &group.stages[..group.stages.len() - 1];
    let stages = before_the_last.iter().filter_map(|stage| {
        let size = stage.size.as_ref()?;
        Some((format!("after {}", stage.name), size.value()))
    });
    as_cut.into_iter().chain(stages).collect()
}

fn at_stage(
    design: &Design,
    tightest: &DirectionLigament,
    stage: &str,
    hole: Length,
    job: Unit,
) -> Finding {
    let (a, b) = tightest.ligament.holes;
    let pitch = tightest.ligament.pitch;
    let place = format!(
        "{}–{}, {}, {stage}",
        design.holes[a].id, design.holes[b].id, tightest.direction
    );
    RULE.finding(place)
        .with_length("pitch", "p", pitch, job)
        .with_length("hole at this stage", "d", hole, job)
        .provides_length(pitch - hole, job)
        .because("for the rule and calipers between the stages; the finished hole is judged")
        .work(format!(
            "metal = p − d = {} − {} = {} {}",
            figure(job.of(pitch)),
            figure(job.of(hole)),
            figure(job.of(pitch - hole)),
            job.name()
        ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::set_out;
    use crate::spec::read_spec_file;
    use crate::units::print::decimal;

    fn at_stages(spec: &str) -> Vec<(String, String)> {
        let spec = read_spec_file(std::path::Path::new(spec)).expect("a demo spec reads");
        let design = set_out(&spec).expect("a demo spec sets out");
        let findings = run(&spec.written, &design);
        let row = |f: Finding| (f.place, decimal(f.provided.expect("metal is given"), 5));
        findings.into_iter().map(row).collect()
    }

    /// Pitch 56.5 mm: cut 2 mm under 39, 56.5 − 37 = 19.5; bored to 38.5, 56.5 − 38.5 = 18.
    #[test]
    fn by_hand_hobthrush_as_cut_and_bored() {
        let rows = at_stages("specs/hobthrush-smokebox.yaml");
        let metal: Vec<(&str, &str)> = rows.iter().map(|(p, m)| (p.as_str(), m.as_str())).collect();
        assert_eq!(
            metal,
            [
                ("T1–T2, row, as cut", "19.50000"),
                ("T1–T2, row, after bore", "18.00000")
            ]
        );
    }

    /// Pitch 2 19/32 in: after a pilot of 1/2 in, 2.09375; after boring to 1 13/16, 2.59375 − 1.8125 = 0.78125 in.
    #[test]
    fn by_hand_marl_hen_after_pilot_and_bore() {
        let rows = at_stages("specs/marl-hen-smokebox.yaml");
        let metal: Vec<&str> = rows.iter().map(|(_, metal)| metal.as_str()).collect();
        assert_eq!(metal, ["2.09375", "0.78125"]);
    }
}
