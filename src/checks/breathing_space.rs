//! Flat left free between tubes and shell, so that plate and tubes may move apart in heat.
//!
//! ```text
//! tubes to shell ≥ 40 mm
//! tubes to the toe of a gusset or link stay ≥ 100 mm
//! elsewhere ≥ 50 mm and 3 % of the shell's bore, never more than 100 mm asked      5 % round a furnace
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 590.
//! Covers:  shell boilers. A small locomotive plate rarely has 40 mm beside its tubes: the figure is given, and judges only where
//!          `judged_by` names this rule.
//! Leaves:  furnaces and gussets, which a smokebox plate does not have.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::{Design, Hole};
use crate::spec::Written;
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "breathing_space",
    asks: "flat free between tubes and shell",
    source: &source::IBR_590,
    run,
    page: include_str!("breathing_space.rs"),
};

/// Least space from a tube hole to the shell.
pub fn tubes_to_shell() -> Length {
    Length::mm(40.0)
}

/// Least space elsewhere, or round a furnace, in a shell of this bore.
pub fn elsewhere(bore: Length, round_a_furnace: bool) -> Length {
    let share = if round_a_furnace { 0.05 } else { 0.03 };
    (bore * share).max(Length::mm(50.0)).min(Length::mm(100.0))
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(barrel) = &written.barrel else {
        return Vec::new();
    };
    let bore = barrel.bore.value();
    let space = |hole: &Hole| bore / 2.0 - Length::mm(hole.at.radius()) - hole.ligament_hole / 2.0;
    let nearest = design
        .holes
        .iter()
        .filter(|hole| design.groups[hole.group].purpose.takes_a_tube())
        .reduce(|a, b| if space(b) < space(a) { b } else { a });
    let Some(nearest) = nearest else {
        return Vec::new();
    };
    let given = space(nearest);
    vec![
        RULE.finding(format!("{} to the barrel's bore", nearest.id))
            .with_length("barrel's bore", "", bore, Unit::Mm)
            .at_least_length(tubes_to_shell(), given, Unit::Mm)
            .because("written for shell boilers; a small locomotive plate rarely has it")
            .work(format!(
                "{}/2 − {} − {}/2 = {} mm",
                figure(bore.to_mm()),
                figure(nearest.at.radius()),
                figure(nearest.ligament_hole.to_mm()),
                figure(given.to_mm())
            )),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 3 % of 840 is 25.2, so 50 mm; 3 % of 2,400 is 72; 5 % of 2,400 is 120, capped at 100.
    #[test]
    fn by_hand_floor_and_cap() {
        assert!(elsewhere(Length::mm(840.0), false).same_as(Length::mm(50.0)));
        assert!(elsewhere(Length::mm(2400.0), false).same_as(Length::mm(72.0)));
        assert!(elsewhere(Length::mm(2400.0), true).same_as(Length::mm(100.0)));
    }
}
