//! Pressure that a flat plate carries between stays set in rectangles.
//!
//! ```text
//! P = 2 t² S C/(l² + w²)        l, w  pitches both ways, in        t, S, C  as in `stayed_surface`
//! ```
//!
//! Source:  National Board proposal NB12-1201, S2.10.6: a proposal, not the issued text.
//! Covers:  the same stays as `stayed_surface`, a note beside it unless it is named. Along a long rectangle it is kinder than the larger pitch in a square, which is why the
//!          square rule on the larger pitch stays the one that is compared.
//! Leaves:  everything that `stayed_surface` leaves.

use super::measure::{Unit, figure, rounded};
use super::stayed_surface::{Stayed, stayed};
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::Written;
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "stayed_surface_rectangular",
    asks: "flat plate between stays set in rectangles",
    source: &source::NB_1201,
    run,
    page: include_str!("stayed_surface_rectangular.rs"),
};

/// Pressure on a plate with stays at these pitches.
pub fn rectangular_pitch_pressure(
    thickness: Length,
    allowed: Stress,
    constant: f64,
    pitches: (Length, Length),
) -> Stress {
    let (l, w, t) = (pitches.0.to_mm(), pitches.1.to_mm(), thickness.to_mm());
    Stress::n_mm2(2.0 * t * t * allowed.to_n_mm2() * constant / (l * l + w * w))
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    stayed(written, design)
        .iter()
        .map(by_both_pitches)
        .collect()
}

fn by_both_pitches(stayed: &Stayed) -> Finding {
    let (l, w) = stayed.pitches;
    let finding = RULE
        .finding(stayed.place.clone())
        .with_length("greatest pitch across", "l", l, Unit::Inch)
        .with_length("greatest pitch up", "w", w, Unit::Inch);
    let terms = match &stayed.terms {
        Ok(terms) => terms,
        Err(why) => return finding.not_judged(why.clone()),
    };
    let allowed = rectangular_pitch_pressure(
        terms.thickness,
        terms.allowed,
        terms.constant,
        stayed.pitches,
    );
    let beside = if l.same_as(w) {
        "a square: as `stayed_surface`"
    } else {
        "kinder than the larger pitch in a square, which `stayed_surface` compares"
    };
    terms
        .compare(finding, allowed)
        .because(format!("{}; {beside}", stayed.found))
        .work(format!(
            "P = 2 t² S C/(l² + w²) = 2 × {}² × {} × {}/({}² + {}²) = {} psi",
            figure(terms.thickness.to_inches()),
            figure(terms.allowed.to_psi()),
            figure(terms.constant),
            figure(l.to_inches()),
            figure(w.to_inches()),
            rounded(allowed.to_psi(), 1)
        ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::stayed_surface::square_pitch_pressure;

    proptest::proptest! {
        /// It is the square rule where the pitches are equal, and never stricter than the larger pitch in a square.
        #[test]
        fn holds_against_the_square_rule(t in 6.0..30.0f64, l in 60.0..200.0f64, share in 0.3..1.0f64) {
            let (t, l, w, s) = (Length::mm(t), Length::mm(l), Length::mm(l * share), Stress::n_mm2(95.0));
            let square = square_pitch_pressure(t, s, 2.2, l).to_n_mm2();
            let even = rectangular_pitch_pressure(t, s, 2.2, (l, l)).to_n_mm2();
            let oblong = rectangular_pitch_pressure(t, s, 2.2, (l, w)).to_n_mm2();
            proptest::prop_assert!((even - square).abs() < 1e-9 * square);
            proptest::prop_assert!(oblong >= square * (1.0 - 1e-12));
        }
    }
}
