//! Pressures of the hydraulic test as different rules have it, side by side.
//!
//! ```text
//! 1.25 p                       49 CFR 230.36; regulation 379 where the parts were tested at the maker's
//! 1.5 p                        regulation 379 otherwise; Malaysian regulation 72 after a repair that affects strength
//! 2 p up to 100 psi, 1.5 p + 50 psi above      Malaysian regulation 72, first test
//! ```
//!
//! Source:  49 CFR 230.36; Indian Boiler Regulations 1950, regulation 379; Factories and Machinery (Steam Boiler and Unfired Pressure
//!          Vessel) Regulations 1970, regulation 72.
//! Covers:  figures only. None is chosen: the inspecting body states the test pressure.
//! Leaves:  water temperature, holding time and inspection, which each rule has its own words for.

use super::as_read::ReadIn;
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::Written;
use crate::units::Stress;

/// The rule.
pub const RULE: Rule = Rule {
    name: "test_pressure",
    asks: "hydraulic test, as different rules have it",
    source: &source::CFR_230_36,
    run,
    page: include_str!("test_pressure.rs"),
};

/// 49 CFR 230.36, and regulation 379 for parts tested at the maker's.
pub fn quarter_over(working: Stress) -> Stress {
    Stress::psi(1.25 * working.to_psi())
}

/// Regulation 379 otherwise.
pub fn half_over(working: Stress) -> Stress {
    Stress::psi(1.5 * working.to_psi())
}

/// First test by Malaysian regulation 72; its two branches meet at 100 psi.
pub fn malaysian_first_test(working: Stress) -> Stress {
    let psi = working.to_psi();
    Stress::psi(if psi <= 100.0 {
        2.0 * psi
    } else {
        1.5 * psi + 50.0
    })
}

/// The test pressure that each rule would ask: its source, its form and the pressure.
fn test_pressures(p: Stress) -> [(&'static str, &'static str, Stress); 4] {
    let first = match p.to_psi() <= 100.0 {
        true => "2 p, first test",
        false => "1.5 p + 50 psi, first test",
    };
    [
        (source::CFR_230_36.cite, "1.25 p", quarter_over(p)),
        (
            source::IBR_379.cite,
            "1.25 p, parts tested at the maker's",
            quarter_over(p),
        ),
        (source::IBR_379.cite, "1.5 p, otherwise", half_over(p)),
        (source::MALAYSIA_72.cite, first, malaysian_first_test(p)),
    ]
}

fn run(written: &Written, _: &Design) -> Vec<Finding> {
    let finding = RULE.finding("boiler");
    let Some(working) = &written.working_pressure else {
        return vec![finding.because(
            "`working_pressure` is not given, so that no figure can be set side by side",
        )];
    };
    let p = working.value();
    let each = test_pressures(p);
    let unit = ReadIn::of_job(written);
    let figures = each.map(|(cite, form, test)| (cite, form, unit.pressure_beside_psi(test)));
    let words = figures
        .each_ref()
        .map(|(cite, form, test)| format!("{test} by {cite} ({form})"));
    let mut finding = finding
        .with("working pressure", "p", p.to_psi(), "psi")
        .because(format!(
            "{}; none is chosen here, the inspecting body states it",
            words.join("; ")
        ));
    finding.source = sources(&each.map(|(cite, ..)| cite));
    for (cite, form, test) in figures {
        finding = finding.work(format!("{cite}: {form} = {test}"));
    }
    vec![finding]
}

/// Every source once.
fn sources(cites: &[&str]) -> String {
    let mut each: Vec<&str> = cites.to_vec();
    each.dedup();
    each.join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 100: 125, 150, 200 either way; 120: 150, 180, 230; 160: 200, 240, 290; 180: 225, 270, 320 psi.
    #[test]
    fn by_hand_side_by_side() {
        let table = [
            (100.0, 200.0, 150.0, 125.0),
            (120.0, 230.0, 180.0, 150.0),
            (160.0, 290.0, 240.0, 200.0),
            (180.0, 320.0, 270.0, 225.0),
        ];
        for (psi, first, half, quarter) in table {
            let p = Stress::psi(psi);
            for (test, expected) in [
                (malaysian_first_test(p), first),
                (half_over(p), half),
                (quarter_over(p), quarter),
            ] {
                assert!((test.to_psi() - expected).abs() < 1e-9, "{psi}");
            }
        }
    }
}
