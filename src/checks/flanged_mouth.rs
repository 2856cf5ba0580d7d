//! Depth of a flanged mouth that makes a flat plate count as if it were not pierced.
//!
//! ```text
//! depth ≥ √(T W)        T  thickness, in        W  minor axis of the opening, in
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 201, equation 38. T is in inches here, though t is in 32nds elsewhere in it.
//! Covers:  firehole mouths and other openings turned out of a flat plate.
//! Leaves:  openings that are not flanged, such as a smokebox plate's.

use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{Kind, Written};
use crate::units::Length;
use crate::units::angle::sqrt;

/// The rule.
pub const RULE: Rule = Rule {
    name: "flanged_mouth",
    asks: "depth of a flanged mouth",
    source: &source::IBR_201,
    run,
    page: include_str!("flanged_mouth.rs"),
};

/// Least depth of the mouth.
pub fn least_depth(thickness: Length, minor_axis: Length) -> Length {
    Length::mm(sqrt(thickness.to_mm() * minor_axis.to_mm()))
}

fn run(written: &Written, _: &Design) -> Vec<Finding> {
    match written.plate.kind {
        Kind::SmokeboxTubePlate => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// √(0.5 × 12) = 2.449 in, in inches or millimetres alike.
    #[test]
    fn by_hand_twelve_inch_mouth() {
        assert_eq!(
            decimal(
                least_depth(Length::inches(0.5), Length::inches(12.0)).to_inches(),
                3
            ),
            "2.449"
        );
        assert!(
            least_depth(Length::mm(12.7), Length::mm(304.8))
                .same_as(least_depth(Length::inches(0.5), Length::inches(12.0)))
        );
    }
}
