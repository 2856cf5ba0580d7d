//! Edge of the flange beside its rivets.
//!
//! ```text
//! centre of hole to edge ≥ 1.5 D        D  finished rivet hole
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 184(e).
//! Covers:  the edge of the flange. The clear metal left is then D or more.
//! Leaves:  the edge of the barrel, which the spec does not give; the pitch that caulking allows.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::Written;
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "rivet_edge",
    asks: "rivet holes to the flange's edge",
    source: &source::IBR_184,
    run,
    page: include_str!("rivet_edge.rs"),
};

/// Least distance from the centre of a rivet hole to the edge.
pub fn least_edge(hole: Length) -> Length {
    hole * 1.5
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(rivets) = &design.rivets else {
        return Vec::new();
    };
    let (unit, hole) = (Unit::of_job(written), rivets.hole.value());
    let finding = RULE
        .finding("flange edge")
        .with_length("rivet hole", "D", hole, unit)
        .at_least_length(least_edge(hole), rivets.from_edge.value(), unit)
        .work(format!(
            "1.5 D = 1.5 × {} = {} in",
            figure(hole.to_inches()),
            figure(least_edge(hole).to_inches())
        ))
        .work(format!(
            "provided = {} in",
            figure(rivets.from_edge.value().to_inches())
        ));
    vec![finding]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 1.5 × 15/16 = 1.40625 = 1 13/32 in: a row set exactly there meets.
    #[test]
    fn by_hand_15_16_hole() {
        let least = least_edge(Length::inches(15.0 / 16.0));
        assert!(Length::inches(1.0 + 13.0 / 32.0).shortfall(least).is_none());
        assert!(Length::inches(1.39).shortfall(least).is_some());
    }
}
