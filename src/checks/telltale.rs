//! Telltale holes in the ends of short stays, which leak when the stay breaks.
//!
//! ```text
//! diameter 3/16 to 7/32 in, at least 1 1/4 in deep from the outer end        stays under 8 in long
//! ```
//!
//! Source:  49 CFR 230.38. A through hole is allowed; on a reduced body the hole passes the fillet.
//! Covers:  firebox stays that have one, by its diameter; the spec gives no depth.
//! Leaves:  depth, and renewed stays of 8 in or less, which 49 CFR 230.39 wants drilled from both ends or through.

use super::measure::{Unit, figure};
use super::stay_core::stay_groups;
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{StayKind, Written};
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "telltale",
    asks: "telltale holes of short stays",
    source: &source::CFR_230_38,
    run,
    page: include_str!("telltale.rs"),
};

/// Least and most diameter.
pub fn least_and_most() -> (Length, Length) {
    (Length::inches(3.0 / 16.0), Length::inches(7.0 / 32.0))
}

/// Least depth from the outer end.
pub fn least_depth() -> Length {
    Length::inches(1.25)
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for group in stay_groups(written, design)
        .iter()
        .filter(|g| g.is(StayKind::Firebox))
    {
        let path = &group.group.path;
        let finding = || RULE.finding(group.group.name.clone());
        let Some(telltale) = group.stay.and_then(|stay| stay.telltale.as_ref()) else {
            findings.push(finding().not_judged(format!("`{path}.stay.telltale` is not given")));
            continue;
        };
        let ((least, most), size, unit) =
            (least_and_most(), telltale.value(), Unit::of_job(written));
        let compared = if most.shortfall(size).is_some() {
            finding().at_most_length(most, size, unit)
        } else {
            finding().at_least_length(least, size, unit)
        };
        findings.push(
            compared
                .because("depth of at least 1 1/4 in is for the inspector to gauge")
                .work(format!(
                    "3/16 = 0.1875, 7/32 = 0.21875; provided {} in",
                    figure(size.to_inches())
                )),
        );
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 49 CFR 230.38: 3/16 to 7/32 in, 1 1/4 in deep.
    #[test]
    fn published_sizes() {
        let (least, most) = least_and_most();
        assert!(least.same_as(Length::mm(4.7625)) && most.same_as(Length::mm(5.55625)));
        assert!(least_depth().same_as(Length::mm(31.75)));
    }
}
