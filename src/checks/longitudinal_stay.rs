//! Working pressure of longitudinal bar stays.
//!
//! ```text
//! WP = C (D − 1.28/N)²/A        D  over threads, in      N  threads to the inch      A  area held by each, in²
//! C  = 7,850  steel of 26 to 30 tonf/in²       8,640  of 28 to 32       9,420  of 30 to 34       10,200  of 32 to 36
//! no part under 1 in in diameter
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 587.
//! Covers:  bars from end to end. A is the rectangle of the pitches where the stays stand on an even pitch (regulation 588), or an
//!          even share of the area of `area_above_tubes`, whichever is more. C goes by the least strength of the stay's steel,
//!          `stay.strength`. The core is taken as the least part; the spec gives no reduced body.
//! Leaves:  sag, nuts and washers, and what the plate does between them.

use super::area_held::area_held;
use super::measure::{figure, rounded};
use super::screwed_stay::stay_pressure;
use super::stay_core::{StayGroup, core_diameter, core_lines, stay_groups};
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{Metal, StayKind, StaySpec, Written};
use crate::units::tolerance::SAME_SHARE;
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "longitudinal_stay",
    asks: "longitudinal bar stays",
    source: &source::IBR_587,
    run,
    page: include_str!("longitudinal_stay.rs"),
};

/// The constant for steel of this least strength; none below 26 tonf/in².
pub fn constant(strength: Stress) -> Option<f64> {
    const CLASSES: [(f64, f64); 4] = [
        (32.0, 10_200.0),
        (30.0, 9_420.0),
        (28.0, 8_640.0),
        (26.0, 7_850.0),
    ];
    let tons = strength.to_tonf_in2() * (1.0 + SAME_SHARE);
    CLASSES
        .iter()
        .find(|(least, _)| tons >= *least)
        .map(|(_, c)| *c)
}

/// Least diameter of any part of the stay.
pub fn least_part() -> Length {
    Length::inches(1.0)
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for group in stay_groups(written, design) {
        match group.stay {
            Some(stay) if stay.kind == StayKind::Longitudinal => {
                findings.push(by_diameter(&group, stay));
                findings.push(by_pressure(written, design, &group, stay));
            }
            Some(_) => {}
            None => {
                let why = format!("`{}.stay` is not given", group.group.path);
                findings.push(RULE.finding(group.group.name.clone()).not_judged(why));
            }
        }
    }
    findings
}

fn by_diameter(group: &StayGroup, stay: &StaySpec) -> Finding {
    let core = core_diameter(stay.diameter.value(), stay.threads_per_inch);
    let lines = core_lines(stay);
    RULE.finding(format!("{}, least diameter", group.group.name))
        .with("over threads", "D", stay.diameter.value().to_inches(), "in")
        .with("threads to the inch", "N", stay.threads_per_inch, "")
        .at_least_length(least_part(), core, super::measure::Unit::Inch)
        .because("the core taken as the least part")
        .work(lines[0].clone())
}

fn by_pressure(written: &Written, design: &Design, group: &StayGroup, stay: &StaySpec) -> Finding {
    let finding = RULE.finding(group.group.name.clone());
    let c = match constant_of(group, stay) {
        Ok(c) => c,
        Err(why) => return finding.not_judged(why),
    };
    let Some(pressure) = &written.working_pressure else {
        return finding.not_judged("`working_pressure` is not given");
    };
    let held = match area_held(design, group) {
        Ok(held) => held,
        Err(why) => return finding.not_judged(why),
    };
    let area = held.in2;
    let core = core_diameter(stay.diameter.value(), stay.threads_per_inch);
    let allowed = stay_pressure(c, core, area);
    let lines = core_lines(stay);
    finding
        .with("constant", "C", c, "")
        .with("core", "", core.to_inches(), "in")
        .with("area held by each", "A", area, "in2")
        .at_least_pressure(pressure.value(), allowed, "psi")
        .because(held.because)
        .work(lines[0].clone())
        .work_all(held.lines)
        .work(format!(
            "WP = {} × {}²/{} = {} psi",
            figure(c),
            figure(core.to_inches()),
            figure(area),
            rounded(allowed.to_psi(), 1)
        ))
}

fn constant_of(group: &StayGroup, stay: &StaySpec) -> Result<f64, String> {
    let path = &group.group.path;
    match stay.metal {
        Some(Metal::Steel) => {}
        Some(_) => {
            return Err(format!(
                "the rule is for steel, and `{path}.stay.metal` is another metal"
            ));
        }
        None => return Err(format!("`{path}.stay.metal` is not given")),
    }
    let strength = stay
        .strength
        .as_ref()
        .ok_or_else(|| format!("`{path}.stay.strength` is not given"))?;
    constant(strength.value()).ok_or_else(|| {
        format!("`{path}.stay.strength` is under 26 tonf/in², the least that the rule covers")
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Regulation 587: the class goes by the lower of its two strengths. 28 tonf/in² is 432.44 N/mm², so that steel ordered at
    /// 432 N/mm² falls just under it: nothing is rounded up at a limit.
    #[test]
    fn published_constants_by_strength() {
        let c = |tons: f64| constant(Stress::tonf_in2(tons));
        assert_eq!(
            [c(25.9), c(26.0), c(28.0), c(30.0), c(32.0)],
            [
                None,
                Some(7_850.0),
                Some(8_640.0),
                Some(9_420.0),
                Some(10_200.0)
            ]
        );
        assert_eq!(constant(Stress::n_mm2(432.0)), Some(7_850.0));
        assert_eq!(constant(Stress::n_mm2(432.5)), Some(8_640.0));
    }
}
