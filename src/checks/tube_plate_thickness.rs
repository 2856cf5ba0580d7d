//! Least thickness of a tube plate in the way of its tubes.
//!
//! ```text
//! t ≥ 1/2 in    for a hole D of 2 in or less          t  thickness, less the corrosion allowance where the spec states one
//! t ≥ 9/16 in   for a larger hole
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 580.
//! Covers:  expanded tubes in a steel plate; the largest tube or flue hole of the plate governs. Of a plate that is kept, t is the least
//!          reading among the tubes, in metal that stays; with none there it is not judged.
//! Leaves:  the thickness that staying asks for, and mill tolerance: order on the least thickness.

use super::measure::{Unit, figure};
use super::metal_there::{Reckoned, among_tubes};
use super::{Finding, Rule, source, why_not_steel};
use crate::design::{Design, Hole};
use crate::spec::Written;
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "tube_plate_thickness",
    asks: "thickness of the plate where its tubes are",
    source: &source::IBR_580,
    run,
    page: include_str!("tube_plate_thickness.rs"),
};

/// Least thickness with holes of this finished diameter.
pub fn least_thickness(hole: Length) -> Length {
    // A hole of 2 in exactly takes the thinner plate, however its decimals fell.
    if Length::inches(2.0).shortfall(hole).is_none() {
        Length::inches(1.0 / 2.0)
    } else {
        Length::inches(9.0 / 16.0)
    }
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(largest) = largest_tube_hole(design) else {
        return Vec::new();
    };
    let (unit, hole) = (Unit::of_job(written), largest.ligament_hole);
    let required = least_thickness(hole);
    let finding = RULE
        .finding(format!("largest tube hole, {}", largest.id))
        .with_length("hole", "D", hole, unit)
        .work(format!(
            "D = {} in, {} 2 in: at least {} in",
            figure(hole.to_inches()),
            if required.same_as(Length::inches(0.5)) {
                "not over"
            } else {
                "over"
            },
            figure(required.to_inches())
        ));
    let finding = match among_tubes(written, design) {
        Ok(reckoned) => compared(written, finding, required, &reckoned),
        Err(why) => finding.not_judged(why),
    };
    vec![match why_not_steel(written) {
        Some(why) => finding.not_judged(why),
        None => finding,
    }]
}

fn compared(written: &Written, finding: Finding, required: Length, reckoned: &Reckoned) -> Finding {
    let unit = Unit::of_job(written);
    let finding = finding
        .with_length("thickness", "t", reckoned.thickness, unit)
        .at_least_length(required, reckoned.left, unit)
        .because(reckoned.as_found.clone().unwrap_or_default());
    let (thickness, left) = (reckoned.thickness.to_inches(), reckoned.left.to_inches());
    let Some(allowance) = &written.plate.corrosion_allowance else {
        return finding.work(format!("provided = {} in", figure(left)));
    };
    let lost = allowance.size.value();
    finding
        .with_length("corrosion allowance", "", lost, unit)
        .also(format!(
            "less the corrosion allowance of {}",
            allowance.origin
        ))
        .work(format!(
            "provided = {} − {} = {} in",
            figure(thickness),
            figure(lost.to_inches()),
            figure(left)
        ))
}

/// The largest hole that takes a tube or flue; of several alike, the first.
fn largest_tube_hole(design: &Design) -> Option<&Hole> {
    let mut largest: Option<&Hole> = None;
    for hole in design
        .holes
        .iter()
        .filter(|h| design.groups[h.group].purpose.takes_a_tube())
    {
        if largest.is_none_or(|l| l.ligament_hole.shortfall(hole.ligament_hole).is_some()) {
            largest = Some(hole);
        }
    }
    largest
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Regulation 580 puts the step at a hole of 2 in: 50.8 mm asks 12.7 mm, anything larger 14.2875 mm.
    #[test]
    fn by_hand_the_step_is_above_two_inches() {
        assert!(least_thickness(Length::mm(50.8)).same_as(Length::mm(12.7)));
        assert!(
            least_thickness(Length::inches(2.0) + Length::mm(0.01)).same_as(Length::mm(14.2875))
        );
    }
}
