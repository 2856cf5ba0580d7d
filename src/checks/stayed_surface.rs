//! Pressure that a flat plate carries between stays set in a square.
//!
//! ```text
//! P = t² S C/p²        t  thickness, in        S  stress allowed, psi        p  greatest pitch between lines of stays, in
//! C = 2.1  welded, or screwed and riveted over, t up to 7/16 in      2.2  the same, thicker
//!     2.5  one nut outside, or nuts both sides without washers       2.8  formed heads of 1.3 diameters, bearing truly
//!     3.2  nuts both sides, washers outside of 0.4 p and of the plate's thickness
//! ```
//!
//! Source:  ASME Section I 2007, PG-46.1, as restated; the form and its step at 7/16 in also in National Board proposal NB12-1201.
//! Covers:  firebox, throat and back plates, on the larger pitch. C follows from `stay.ends`; S from the spec: neither is guessed.
//! Leaves:  patterns that are not square, for which `stayed_surface_rectangular` is kinder; a smokebox tube plate, whose stays
//!          stand in no such pattern. Do not mix with the constants 112 to 175, which go with sixteenths of an inch.

use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{Kind, StayEnds, Written};
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "stayed_surface",
    asks: "flat plate between stays set in a square",
    source: &source::PG_46,
    run,
    page: include_str!("stayed_surface.rs"),
};

/// The constant C for stays with such ends in a plate of this thickness.
pub fn constant(ends: StayEnds, thickness: Length) -> f64 {
    match ends {
        StayEnds::RivetedOver => {
            let thin = Length::inches(7.0 / 16.0).shortfall(thickness).is_none();
            if thin { 2.1 } else { 2.2 }
        }
        StayEnds::Nuts => 2.5,
        StayEnds::FormedHeads => 2.8,
        StayEnds::NutsAndWashers => 3.2,
    }
}

/// Pressure on a plate of this thickness with stays at this pitch both ways.
pub fn square_pitch_pressure(
    thickness: Length,
    allowed: Stress,
    constant: f64,
    pitch: Length,
) -> Stress {
    let ratio = thickness / pitch;
    Stress::n_mm2(ratio * ratio * allowed.to_n_mm2() * constant)
}

fn run(written: &Written, _: &Design) -> Vec<Finding> {
    match written.plate.kind {
        // Its stays stand above the nest in no square; `largest_circle` looks at what they leave unsupported.
        Kind::SmokeboxTubePlate => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::largest_circle::circle_pressure;
    use crate::units::angle::sqrt;

    /// The step lies above 7/16 in, and 7/16 in itself still takes 2.1.
    #[test]
    fn by_hand_the_constant_steps_above_seven_sixteenths() {
        assert_eq!(constant(StayEnds::RivetedOver, Length::mm(11.1125)), 2.1);
        assert_eq!(constant(StayEnds::RivetedOver, Length::inches(0.44)), 2.2);
        assert_eq!(
            constant(StayEnds::NutsAndWashers, Length::inches(0.375)),
            3.2
        );
    }

    proptest::proptest! {
        /// The largest circle of a square is p √2, so that 574 with C behaves as a square pitch with 1/(2 C²).
        #[test]
        fn holds_circle_and_square_agree(t in 6.0..30.0f64, p in 60.0..200.0f64, c in 0.2..0.6f64) {
            let (t, p, f) = (Length::mm(t), Length::mm(p), Stress::n_mm2(100.0));
            let circle = circle_pressure(f, t, Length::ZERO, c, p * sqrt(2.0)).to_n_mm2();
            let square = square_pitch_pressure(t, f, 1.0 / (2.0 * c * c), p).to_n_mm2();
            proptest::prop_assert!((circle - square).abs() < 1e-9 * square);
        }
    }
}
