//! Clearance of a tube in its hole, on the diameter.
//!
//! ```text
//! clearance = hole − outside of the tube where it sits in this plate
//! ```
//!
//! Source:  geometry; judged only against a limit of the works' own.
//! Covers:  every nest that states its tube. 1/32 in stands in the example of Indian Boiler Regulations 1950, regulation 215;
//!          1/16 in was called usual for American locomotive flues. Tubes expanded 1/8 in have been tried and given up.
//! Leaves:  how far a tube may be expanded, its wall after expanding, and the seat.

use super::measure::{Unit, figure};
use super::pairs::is_tube;
use super::{Finding, Rule, source};
use crate::design::{Design, HoleGroup};
use crate::spec::Written;
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "tube_hole_clearance",
    asks: "clearance of a tube in its hole",
    source: &source::GEOMETRY,
    run,
    page: include_str!("tube_hole_clearance.rs"),
};

/// Above this clearance the note says that it is more than was usual.
fn usual() -> Length {
    Length::inches(1.0 / 16.0)
}

/// Clearance on the diameter; negative where the tube is larger than its hole.
pub fn clearance(hole: Length, tube_end: Length) -> Length {
    hole - tube_end
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for group in design.groups.iter().filter(|g| is_tube(g.purpose)) {
        let Some(tube) = &group.tube_end else {
            let why = format!("`{}.tube` is not given", group.path);
            findings.push(RULE.finding(group.name.clone()).not_judged(why));
            continue;
        };
        findings.push(noted(written, group, tube.value()));
        if let Some(limit) = &written.own_limits.tube_hole_clearance {
            let given = clearance(group.finish.value(), tube.value());
            let finding = RULE.finding_of_works(&limit.origin, group.name.clone());
            findings.push(
                figures(finding, written, group, tube.value()).at_most_length(
                    limit.limit.value(),
                    given,
                    Unit::of_job(written),
                ),
            );
        }
    }
    findings
}

fn noted(written: &Written, group: &HoleGroup, tube: Length) -> Finding {
    let given = clearance(group.finish.value(), tube);
    let why = if given < Length::ZERO {
        "the tube is larger than its hole".to_string()
    } else if usual().shortfall(given).is_some() {
        "more than the 1/16 in that was usual for locomotive flues: a tube expanded so far is thinned".to_string()
    } else {
        "within the 1/16 in that was usual for locomotive flues".to_string()
    };
    let finding = RULE.finding(group.name.clone());
    figures(finding, written, group, tube)
        .provides_length(given, Unit::of_job(written))
        .because(why)
}

fn figures(finding: Finding, written: &Written, group: &HoleGroup, tube: Length) -> Finding {
    let unit = Unit::of_job(written);
    let hole = group.finish.value();
    finding
        .with_length("hole", "", hole, unit)
        .with_length("tube where it sits", "", tube, unit)
        .work(format!(
            "clearance = {} − {} = {} {}",
            figure(unit.of(hole)),
            figure(unit.of(tube)),
            figure(unit.of(clearance(hole, tube))),
            unit.name()
        ))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Example of regulation 215: a 3 1/4 in tube in a 3 9/32 in hole, 1/32 in of clearance.
    #[test]
    fn published_three_and_a_quarter_tube() {
        let given = clearance(Length::inches(3.0 + 9.0 / 32.0), Length::inches(3.25));
        assert!(given.same_as(Length::inches(1.0 / 32.0)));
    }
}
