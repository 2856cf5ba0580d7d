//! Firebox tube plate pressed down by the girders of the roof.
//!
//! ```text
//! WP = 875 (P − D) t/(L P)        t  thickness in 32nds of an inch       P  pitch of the tubes (the smaller), in
//!                                 D  bore of the plain tubes, in         L  inside length of the firebox at the top, in
//! nominal compression ≤ 14,000 psi where side plates share the load
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 582, in a copy of unknown standing.
//! Covers:  a firebox tube plate on which roof girders bear, by the tube's *bore*, not its hole.
//! Leaves:  boxes whose roof is stayed direct to the shell, or whose girders do not bear on the tube plate; smokebox plates.

use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{Kind, Written};
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "roof_girders",
    asks: "firebox tube plate under roof girders",
    source: &source::IBR_582,
    run,
    page: include_str!("roof_girders.rs"),
};

/// Most nominal compression where side plates share the load.
pub fn most_compression() -> Stress {
    Stress::psi(14_000.0)
}

/// Working pressure of the plate. `bore` is the inside of the plain tubes.
pub fn girder_pressure(thickness: Length, pitch: Length, bore: Length, firebox: Length) -> Stress {
    let t_32nds = thickness.to_inches() * 32.0;
    Stress::psi(875.0 * ((pitch - bore) / pitch) * t_32nds / firebox.to_inches())
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

    /// Regulation 582: 14,000 psi.
    #[test]
    fn published_most_compression() {
        assert_eq!(decimal(most_compression().to_psi(), 0), "14000");
    }

    /// 875 × (2.5 − 1.5) × 20/(36 × 2.5) = 194.4 psi. On the 1 3/4 in hole in place of the 1 1/2 in bore it would be 145.8: the
    /// bore is what the regulation names.
    #[test]
    fn by_hand_on_the_bore() {
        let wp = |d: f64| {
            let inches = Length::inches;
            decimal(
                girder_pressure(inches(0.625), inches(2.5), inches(d), inches(36.0)).to_psi(),
                1,
            )
        };
        assert_eq!(
            (wp(1.5), wp(1.75)),
            ("194.4".to_string(), "145.8".to_string())
        );
    }
}
