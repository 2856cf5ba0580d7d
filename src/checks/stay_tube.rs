//! Working pressure of screwed stay tubes, and the area that each holds.
//!
//! ```text
//! WP = 5,900 [(D − 1.28/N)² − D1²]/A        D  over threads, in      N  threads to the inch      D1 bore under the thread, in
//! A  = product of the pitches less the tube holes in it                                    within the nest
//! A  = square of the mean of the four sides, less the tube holes in it                     where the pitches are irregular
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulations 581 and 588.
//! Covers:  the tubes of `stay_tubes` of a nest, screwed into both plates: every tube of a pattern, or some that stand on an even pitch
//!          of their own. The hole of the stay tube itself is not taken off. A tube that is only expanded is no stay tube, whatever its
//!          breaking load.
//! Leaves:  stay tubes on an irregular pitch, of which the four sides are for the designer to name; plain tubes counted as support, which is the works' statement under `support`.

use super::area_held::by_pitch;
use super::measure::{figure, rounded};
use super::stay_core::core_diameter;
use super::{Finding, Rule, source};
use crate::design::{Design, StayArea};
use crate::spec::{Nest, StayTubes, Written};
use crate::units::{Length, SQUARE_MM_PER_SQUARE_INCH, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "stay_tube",
    asks: "screwed stay tubes",
    source: &source::IBR_581,
    run,
    page: include_str!("stay_tube.rs"),
};

/// Working pressure of a stay tube.
pub fn stay_tube_pressure(core: Length, bore: Length, area_in2: f64) -> Stress {
    let (core, bore) = (core.to_inches(), bore.to_inches());
    Stress::psi(5_900.0 * (core * core - bore * bore) / area_in2)
}

/// Area held by a stay tube within a regular nest, in², less the area of the tube holes in it.
pub fn area_held_in2(pitches: (Length, Length), holes_in2: f64) -> f64 {
    pitches.0.to_mm() * pitches.1.to_mm() / SQUARE_MM_PER_SQUARE_INCH - holes_in2
}

/// The same where the four sides of the quadrilateral are unequal.
pub fn irregular_area_held_in2(sides: [Length; 4], holes_in2: f64) -> f64 {
    let mean = sides.into_iter().sum::<Length>() / 4.0;
    area_held_in2((mean, mean), holes_in2)
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (i, nest) in written.tubes.iter().enumerate() {
        if let Some(stay_tubes) = &nest.stay_tubes {
            let path = format!("tubes[{i}]");
            findings.push(compared(written, design, &path, nest, stay_tubes));
        }
    }
    findings
}

fn compared(
    written: &Written,
    design: &Design,
    path: &str,
    nest: &Nest,
    stay_tubes: &StayTubes,
) -> Finding {
    let finding = RULE.finding(format!("stay tubes of {}", nest.name));
    let Some(pressure) = &written.working_pressure else {
        return finding.not_judged("`working_pressure` is not given");
    };
    let own = |area: &StayArea| design.groups[design.holes[area.hole].group].path == path;
    let Some(held) = by_pitch(design, own) else {
        return finding.not_judged(format!(
            "the stay tubes of `{path}.stay_tubes.which` stand on no even pitch, and the area that each holds is not known"
        ));
    };
    let (d, n) = (stay_tubes.over_threads.value(), stay_tubes.threads_per_inch);
    let (core, bore) = (core_diameter(d, n), stay_tubes.bore.value());
    let allowed = stay_tube_pressure(core, bore, held.in2);
    finding
        .with("over threads", "D", d.to_inches(), "in")
        .with("threads to the inch", "N", n, "")
        .with("bore under the thread", "D1", bore.to_inches(), "in")
        .with("area held by each", "A", held.in2, "in2")
        .at_least_pressure(pressure.value(), allowed, "psi")
        .because(held.because)
        .work(format!(
            "D − 1.28/N = {} − 1.28/{} = {} in",
            figure(d.to_inches()),
            figure(n),
            figure(core.to_inches())
        ))
        .work_all(held.lines)
        .work(format!(
            "WP = 5,900 × ({}² − {}²)/{} = {} psi",
            figure(core.to_inches()),
            figure(bore.to_inches()),
            figure(held.in2),
            rounded(allowed.to_psi(), 1)
        ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::stay_core::round_in2;
    use crate::units::print::decimal;

    /// 2 1/2 × 11, bore 2: core 2.5 − 0.116364 = 2.383636; 5,900 × (5.681722 − 4)/40 = 248.1 psi.
    #[test]
    fn by_hand_two_and_a_half_inch_tube() {
        let core = core_diameter(Length::inches(2.5), 11.0);
        assert_eq!(
            decimal(
                stay_tube_pressure(core, Length::inches(2.0), 40.0).to_psi(),
                1
            ),
            "248.1"
        );
    }

    /// Two pitches of 5 in with three whole holes of 2 in beside the tube: 25 − 3 × 3.141593 = 15.5752 in². The holes come off:
    /// leaving them in would load the stay tube more than it is.
    #[test]
    fn by_hand_the_holes_come_off() {
        let holes = 3.0 * round_in2(Length::inches(2.0));
        let side = Length::inches(5.0);
        assert_eq!(decimal(area_held_in2((side, side), holes), 4), "15.5752");
        let sides = [4.0, 6.0, 5.0, 5.0].map(Length::inches);
        assert_eq!(decimal(irregular_area_held_in2(sides, holes), 4), "15.5752");
    }
}
