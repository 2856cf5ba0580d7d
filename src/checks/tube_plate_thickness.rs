//! Least thickness of a tube plate in the way of its tubes.
//!
//! ```text
//! t ≥ 1/2 in    for a hole D of 2 in or less          t  thickness, less the corrosion allowance where the spec states one
//! t ≥ 9/16 in   for a larger hole
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 580.
//! Covers:  expanded tubes in a steel plate; the largest tube or flue hole of the plate governs.
//! Leaves:  the thickness that staying asks for, and mill tolerance: order on the least thickness.

use super::measure::{Unit, figure};
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

/// Thickness left for a strength check: as ordered, less what the works says is to be taken as lost.
pub fn reckoned_thickness(written: &Written) -> Length {
    let lost = written
        .plate
        .corrosion_allowance
        .as_ref()
        .map_or(Length::ZERO, |a| a.size.value());
    written.plate.thickness.value() - lost
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(largest) = largest_tube_hole(design) else {
        return Vec::new();
    };
    let (unit, hole) = (Unit::of_job(written), largest.ligament_hole);
    let (required, provided) = (least_thickness(hole), reckoned_thickness(written));
    let mut finding = RULE
        .finding(format!("largest tube hole, {}", largest.id))
        .with_length("hole", "D", hole, unit)
        .with_length("thickness", "t", written.plate.thickness.value(), unit)
        .at_least_length(required, provided, unit)
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
    if let Some(allowance) = &written.plate.corrosion_allowance {
        finding = finding
            .with_length("corrosion allowance", "", allowance.size.value(), unit)
            .because(format!(
                "less the corrosion allowance of {}",
                allowance.origin
            ))
            .work(format!(
                "provided = {} − {} = {} in",
                figure(written.plate.thickness.value().to_inches()),
                figure(allowance.size.value().to_inches()),
                figure(provided.to_inches())
            ));
    } else {
        finding = finding.work(format!("provided = {} in", figure(provided.to_inches())));
    }
    if let Some(why) = why_not_steel(written) {
        finding = finding.not_judged(why);
    }
    vec![finding]
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
