//! Ligament rules of shells and drums, named because they are often applied where they do not belong.
//!
//! ```text
//! E  = (p − d)/p                                    ligaments of a drum                                  regulation 215
//! WP = 17.24 (t − 2)(P − D) S/(R P)                 tube plate that is part of a vertical boiler's shell regulation 213
//! WP = 33.3 (t − 4) E S/D                           curved tube plate of a drum                          regulation 213
//!      t  thickness in 32nds of an inch             P  vertical pitch       D  hole; of the drum in the last line, in
//!      S  strength, tonf/in²                        R  radius of the outer row of tubes, in
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulations 213 and 215.
//! Covers:  shells under hoop and end stress. For a flat plate this rule only says that it does not apply.
//! Leaves:  flat plates: they bend between their supports, and the ratio is never multiplied into a pressure.

use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{Kind, Written};
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "drum_ligaments",
    asks: "rules for ligaments of shells and drums",
    source: &source::IBR_215,
    run,
    page: include_str!("drum_ligaments.rs"),
};

/// Working pressure of a flat tube plate that is part of a vertical boiler's shell, regulation 213 equation 52.
pub fn vertical_boiler_pressure(
    thickness: Length,
    vertical_pitch: Length,
    hole: Length,
    strength: Stress,
    outer_row_radius: Length,
) -> Stress {
    let t_32nds = thickness.to_inches() * 32.0;
    let share = (vertical_pitch - hole) / vertical_pitch;
    Stress::psi(
        17.24 * (t_32nds - 2.0) * share * strength.to_tonf_in2() / outer_row_radius.to_inches(),
    )
}

/// Working pressure of the curved tube plate of a drum, regulation 213 equation 53.
pub fn curved_plate_pressure(
    thickness: Length,
    efficiency: f64,
    strength: Stress,
    drum: Length,
) -> Stress {
    let t_32nds = thickness.to_inches() * 32.0;
    Stress::psi(33.3 * (t_32nds - 4.0) * efficiency * strength.to_tonf_in2() / drum.to_inches())
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    match written.plate.kind {
        Kind::SmokeboxTubePlate => {
            let nests = design
                .groups
                .iter()
                .any(|group| group.purpose.takes_a_tube());
            let note = || {
                RULE.finding("nest")
                    .because("for shells and drums: does not apply to a flat plate")
            };
            nests.then(note).into_iter().collect()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// 17.24 × 18 × (2.75 − 1.875)/2.75 × 26/20 = 128.4 psi; t is in 32nds: 5/8 in is 20.
    #[test]
    fn by_hand_vertical_boiler() {
        let wp = vertical_boiler_pressure(
            Length::inches(0.625),
            Length::inches(2.75),
            Length::inches(1.875),
            Stress::tonf_in2(26.0),
            Length::inches(20.0),
        );
        assert_eq!(decimal(wp.to_psi(), 1), "128.4");
    }

    /// 33.3 × (20 − 4) × 0.4 × 28/40 = 149.184 psi.
    #[test]
    fn by_hand_curved_plate() {
        let wp = curved_plate_pressure(
            Length::inches(0.625),
            0.4,
            Stress::tonf_in2(28.0),
            Length::inches(40.0),
        );
        assert_eq!(decimal(wp.to_psi(), 3), "149.184");
    }
}
