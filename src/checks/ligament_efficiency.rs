//! Share of the metal left between the holes of a nest, direction by direction.
//!
//! ```text
//! E = (p − d)/p        p  pitch in that direction     d  finished hole
//! E = (p − n d)/p      p  a length that repeats       n  holes in it
//! d = Σ(d_i t_i)/t     a stepped hole, as one of a single diameter: d_i over a depth t_i of the thickness t
//! ```
//!
//! Source:  geometry. The same ratio stands in Indian Boiler Regulations 1950, regulation 215, for shells and drums.
//! Covers:  every direction in which neighbours of a nest lie; judged only against a limit of the works' own.
//! Leaves:  strength. A flat plate bends between its supports and does not lose strength in this ratio: the figure is for
//!          comparison, and is never multiplied into a pressure.

use super::measure::{Unit, figure, rounded};
use super::{Finding, Rule, source};
use crate::design::{Design, DirectionLigament};
use crate::spec::Written;
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "ligament_efficiency",
    asks: "share of metal left between the holes of a nest",
    source: &source::GEOMETRY,
    run,
    page: include_str!("ligament_efficiency.rs"),
};

/// (p − n d)/p over a pitch or a repeating length that holds so many holes, a share.
pub fn efficiency(pitch: Length, holes: u32, hole: Length) -> f64 {
    (pitch - f64::from(holes) * hole) / pitch
}

/// The one diameter that a counterbored or grooved hole is worth: each diameter with the depth that it has.
pub fn equivalent_hole(steps: &[(Length, Length)]) -> Length {
    let thickness: Length = steps.iter().map(|(_, depth)| *depth).sum();
    steps
        .iter()
        .map(|(hole, depth)| *hole * (*depth / thickness))
        .sum()
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for direction in &design.directions {
        findings.push(noted(written, design, direction));
        if let Some(limit) = &written.own_limits.ligament_efficiency {
            let finding = RULE.finding_of_works(&limit.origin, place(design, direction));
            findings.push(figures(finding, written, direction).at_least(
                limit.limit,
                direction.efficiency,
                "",
            ));
        }
    }
    findings
}

fn noted(written: &Written, design: &Design, direction: &DirectionLigament) -> Finding {
    let finding = RULE.finding(place(design, direction));
    figures(finding, written, direction).provides(direction.efficiency, "").because(format!(
        "{} % of the pitch is metal; for comparison only, a flat plate's pressure is not multiplied by it",
        rounded(100.0 * direction.efficiency, 1)
    ))
}

fn place(design: &Design, direction: &DirectionLigament) -> String {
    format!(
        "{}, {}",
        design.groups[direction.group].name, direction.direction
    )
}

fn figures(finding: Finding, written: &Written, direction: &DirectionLigament) -> Finding {
    let unit = Unit::of_job(written);
    let (p, d) = (unit.of(direction.ligament.pitch), unit.of(direction.hole));
    finding
        .with_length("pitch", "p", direction.ligament.pitch, unit)
        .with_length("hole", "d", direction.hole, unit)
        .work(format!(
            "E = (p − d)/p = ({} − {})/{} = {}",
            figure(p),
            figure(d),
            figure(p),
            figure(direction.efficiency)
        ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// Worked sheet of G. Subhash Reddy: pitch 350 mm, hole 50 mm, 0.85714.
    #[test]
    fn published_pitch_350_hole_50() {
        assert_eq!(
            decimal(efficiency(Length::mm(350.0), 1, Length::mm(50.0)), 5),
            "0.85714"
        );
    }
}
