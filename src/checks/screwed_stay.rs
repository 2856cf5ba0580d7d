//! Working pressure of screwed firebox stays.
//!
//! ```text
//! WP = C (D − 1.28/N)²/A        D  over threads, in      N  threads to the inch      A  area held, in²
//! WP = C D1²/A                  D1 reduced body, in
//! C  = 7,100  steel or special iron firebox stays        8,640  steel cross stays with nuts        4,700  copper
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 585(a). C/(π/4) is the stress on the core: 9,040, 11,001 and 5,984 psi.
//! Covers:  stays of the firebox kind that stand on an even pitch, whose rectangle is A. One copy of regulation 202 shows the exponent as 1/2; 585, 587 and 208 show the square.
//! Leaves:  bars from end to end (`longitudinal_stay`); the plate between the stays (`stayed_surface`); stays on no even pitch.

use super::area_held::area_held;
use super::measure::{figure, rounded};
use super::stay_core::{StayGroup, core_diameter, core_lines, stay_groups};
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{Metal, StayKind, StaySpec, Written};
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "screwed_stay",
    asks: "screwed firebox stays",
    source: &source::IBR_585,
    run,
    page: include_str!("screwed_stay.rs"),
};

/// The constant of a firebox stay.
pub fn firebox_constant(metal: Metal) -> f64 {
    match metal {
        Metal::Steel | Metal::Iron => 7_100.0,
        Metal::Copper => 4_700.0,
    }
}

/// The constant of a steel cross stay with nuts.
pub const CROSS_STAY_CONSTANT: f64 = 8_640.0;

/// Working pressure of a stay of this core (or reduced body) that holds this area.
pub fn stay_pressure(constant: f64, core: Length, area_in2: f64) -> Stress {
    let core_in = core.to_inches();
    Stress::psi(constant * core_in * core_in / area_in2)
}

/// Stress on the core that a constant comes to.
pub fn core_stress(constant: f64) -> Stress {
    Stress::psi(constant * 4.0 / crate::units::angle::PI)
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    stay_groups(written, design)
        .iter()
        .filter_map(|group| {
            let stay = group.stay.filter(|stay| stay.kind == StayKind::Firebox)?;
            Some(compared(written, design, group, stay))
        })
        .collect()
}

fn compared(written: &Written, design: &Design, group: &StayGroup, stay: &StaySpec) -> Finding {
    let finding = RULE.finding(group.group.name.clone());
    let Some(metal) = stay.metal else {
        return finding.not_judged(format!("`{}.stay.metal` is not given", group.group.path));
    };
    let Some(pressure) = &written.working_pressure else {
        return finding.not_judged("`working_pressure` is not given");
    };
    let held = match area_held(design, group) {
        Ok(held) => held,
        Err(why) => return finding.not_judged(why),
    };
    let c = firebox_constant(metal);
    let core = core_diameter(stay.diameter.value(), stay.threads_per_inch);
    let allowed = stay_pressure(c, core, held.in2);
    finding
        .with("constant", "C", c, "")
        .with("core", "", core.to_inches(), "in")
        .with("area held by each", "A", held.in2, "in2")
        .at_least_pressure(pressure.value(), allowed, "psi")
        .because(held.because)
        .work(core_lines(stay).swap_remove(0))
        .work_all(held.lines)
        .work(format!(
            "WP = {} × {}²/{} = {} psi",
            figure(c),
            figure(core.to_inches()),
            figure(held.in2),
            rounded(allowed.to_psi(), 1)
        ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::stay_core::core_diameter;
    use crate::checks::stay_stress::most_stress_psi;
    use crate::units::print::decimal;

    fn on_16_in2(constant: f64, diameter: f64, tpi: f64) -> String {
        let core = core_diameter(Length::inches(diameter), tpi);
        decimal(stay_pressure(constant, core, 16.0).to_psi(), 1)
    }

    /// 1 × 11 steel: 7,100 × 0.883636²/16 = 346.5; 1 × 12: 354.1; 7/8 × 11 copper: 4,700 × 0.758636²/16 = 169.1 psi.
    #[test]
    fn by_hand_on_16_square_inches() {
        assert_eq!(on_16_in2(7_100.0, 1.0, 11.0), "346.5");
        assert_eq!(on_16_in2(7_100.0, 1.0, 12.0), "354.1");
        assert_eq!(on_16_in2(4_700.0, 0.875, 11.0), "169.1");
    }

    /// Stays 4 × 3 7/8 in: 7/8 × 11 263.6 psi, 1 1/8 × 11 466.0 psi, on 15.5 in². Copper 1 × 11 on 14.53 in²: 252.5 psi.
    #[test]
    fn by_hand_throat_plate_stays() {
        let wp = |c: f64, d: f64, a: f64| {
            decimal(
                stay_pressure(c, core_diameter(Length::inches(d), 11.0), a).to_psi(),
                1,
            )
        };
        assert_eq!(wp(7_100.0, 0.875, 15.5), "263.6");
        assert_eq!(wp(7_100.0, 1.125, 15.5), "466.0");
        assert_eq!(wp(4_700.0, 1.0, 14.53125), "252.5");
    }

    /// 7,100/(π/4) = 9,040 psi: more than the 7,500 of 49 CFR 230.25, so that a stay can meet one and be below the other.
    #[test]
    fn by_hand_core_stresses() {
        let psi = |c: f64| decimal(core_stress(c).to_psi(), 0);
        assert_eq!(
            (psi(7_100.0), psi(8_640.0), psi(4_700.0)),
            ("9040".into(), "11001".into(), "5984".into())
        );
        assert!(core_stress(7_100.0).to_psi() > most_stress_psi(StayKind::Firebox));
    }
}
