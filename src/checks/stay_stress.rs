//! Stress at the thread root of stays.
//!
//! ```text
//! stress = load/net area ≤ 7,500 psi   firebox and combustion-chamber stays
//!                        ≤ 9,000 psi   round, rectangular or gusset braces
//!          net area = π/4 (D − 1.28/N)² less the telltale hole        D  over threads, in       N  threads to the inch
//! ```
//!
//! Source:  49 CFR 230.25; or the stress that the works allows under `stay.allowed_stress`, with its origin.
//! Covers:  stays above the tubes, which share the load of `area_above_tubes` by their net areas. Threads of Whitworth form.
//!          Regulations 585 and 587 allow other stresses; the lower is named as the lower, and never passed over in silence.
//! Leaves:  bending of the stay, wastage in the water, and the fastening of its ends.

use super::area_above_tubes::{AboveTheTubes, above_the_tubes};
use super::measure::{figure, rounded};
use super::stay_core::{StayGroup, core_lines, net_area_in2, round_in2, stay_groups};
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{StayKind, StaySpec, Written};
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "stay_stress",
    asks: "stress at the thread root of stays",
    source: &source::CFR_230_25,
    run,
    page: include_str!("stay_stress.rs"),
};

/// Most stress on the net area of a stay of this kind, psi, 49 CFR 230.25.
pub fn most_stress_psi(kind: StayKind) -> f64 {
    match kind {
        StayKind::Firebox => 7_500.0,
        StayKind::Longitudinal | StayKind::Palm | StayKind::Diagonal => 9_000.0,
    }
}

/// Load that a round section of this diameter carries at this stress, lb.
pub fn load_at_stress_lb(stress: Stress, diameter: Length) -> f64 {
    stress.to_psi() * round_in2(diameter)
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let groups = stay_groups(written, design);
    if groups.is_empty() {
        return Vec::new();
    }
    let above = match above_the_tubes(written, design) {
        Ok(above) => above,
        Err(why) => {
            return groups
                .iter()
                .map(|g| RULE.finding(g.group.name.clone()).not_judged(why.clone()))
                .collect();
        }
    };
    let mut findings = Vec::new();
    for group in &groups {
        findings.extend(of_group(design, &above, group));
    }
    findings
}

fn of_group(design: &Design, above: &AboveTheTubes, group: &StayGroup) -> Vec<Finding> {
    let finding = RULE.finding(group.group.name.clone());
    let Some(stay) = group.stay else {
        return vec![finding.not_judged(format!("`{}.stay` is not given", group.group.path))];
    };
    let count = group.holes(design).count();
    let counted = above
        .stays
        .iter()
        .find(|(g, _)| g.group.path == group.group.path)
        .map_or(0, |(_, n)| *n);
    let mut findings = Vec::new();
    if counted > 0 {
        findings.extend(compared(above, group, stay, counted));
    }
    if counted < count {
        let why = format!(
            "{} of {count} stays do not stand above the tubes, and the area that each holds is not known to this program",
            count - counted
        );
        findings.push(RULE.finding(group.group.name.clone()).not_judged(why));
    }
    findings
}

fn compared(
    above: &AboveTheTubes,
    group: &StayGroup,
    stay: &StaySpec,
    counted: usize,
) -> Vec<Finding> {
    if let Some(bare) = above.stays.iter().find(|(g, _)| g.stay.is_none()) {
        let why = format!(
            "`{}.stay` is not given, and its stays share the load",
            bare.0.group.path
        );
        return vec![RULE.finding(group.group.name.clone()).not_judged(why)];
    }
    let net_in2: f64 = above
        .stays
        .iter()
        .filter_map(|(g, n)| g.stay.map(|s| net_area_in2(s) * *n as f64))
        .sum();
    let stress = above.load_lb / net_in2;
    let place = format!("{counted} {}", group.group.name);
    let worked = |mut finding: Finding| {
        for line in core_lines(stay) {
            finding = finding.work(line);
        }
        let each: Vec<String> = above
            .stays
            .iter()
            .filter_map(|(g, n)| g.stay.map(|s| format!("{n} × {}", figure(net_area_in2(s)))))
            .collect();
        finding = finding.work(format!(
            "all = {} = {} in²",
            each.join(" + "),
            figure(net_in2)
        ));
        finding
            .with("load above the tubes", "", above.load_lb, "lb")
            .with("net area of all stays above the tubes", "", net_in2, "in2")
            .work(format!(
                "stress = {}/{} = {} psi",
                rounded(above.load_lb, 0),
                figure(net_in2),
                rounded(stress, 0)
            ))
    };
    let most = most_stress_psi(stay.kind);
    let published = worked(RULE.finding(place.clone()))
        .at_most(most, stress, "psi")
        .because(lower_of(stay.kind));
    let own = stay.allowed_stress.as_ref().map(|allowed| {
        worked(RULE.finding_of_works(&allowed.origin, place)).at_most(
            allowed.stress.value().to_psi(),
            stress,
            "psi",
        )
    });
    [published].into_iter().chain(own).collect()
}

/// Which of the published stresses is the lower.
fn lower_of(kind: StayKind) -> &'static str {
    match kind {
        StayKind::Firebox => {
            "7,500 psi is the lower; regulation 585 comes to 9,040 psi on a steel core"
        }
        StayKind::Longitudinal | StayKind::Palm | StayKind::Diagonal => {
            "9,000 psi is the lower where regulation 587 comes to 9,995 psi (26 tons) or more on the core"
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::stay_core::core_diameter;

    /// 1 × 11 on 16 in²: core 0.883636 in, 7,500 × 0.613246/16 = 287.5 psi, where regulation 585 gives 346.5: the lower is offered.
    #[test]
    fn by_hand_inch_stay_on_16_square_inches() {
        let core = core_diameter(Length::inches(1.0), 11.0);
        let load = load_at_stress_lb(Stress::psi(most_stress_psi(StayKind::Firebox)), core);
        assert_eq!(rounded(load / 16.0, 1), "287.5");
    }

    /// 49 CFR 230.25: 7,500 psi on firebox stays, 9,000 on braces.
    #[test]
    fn published_stresses() {
        assert_eq!(most_stress_psi(StayKind::Firebox), 7_500.0);
        for brace in [StayKind::Longitudinal, StayKind::Palm, StayKind::Diagonal] {
            assert_eq!(most_stress_psi(brace), 9_000.0);
        }
    }
}
