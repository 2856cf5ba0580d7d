//! The steam's load on the end of the barrel, and what it puts on the flange rivets.
//!
//! ```text
//! load   = 0.7854 B² p              B  barrel's bore, in       p  working pressure, psi
//! stress = load/(n A)               n  rivets                  A  area of a rivet hole, in²
//! factor = shear strength/stress ≥ 4
//! ```
//!
//! Source:  49 CFR 230.24, factor of safety 4; or the works' own factor. The load itself is mechanics.
//! Covers:  the full circle of the bore on the rivets alone: no credit for tubes or stays, which no rule known to this program gives
//!          without a designer's say.
//! Leaves:  bending of the flange, tightness, and a ring's weld, of which the load for each millimetre is given.

use super::measure::{figure, rounded};
use super::{Finding, Rule, source};
use crate::design::{Design, FlangeDesign, RivetLine};
use crate::spec::Written;
use crate::units::angle::PI;
use crate::units::{Length, NEWTONS_PER_LBF, SQUARE_MM_PER_SQUARE_INCH, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "end_load",
    asks: "load on the flange rivets",
    source: &source::CFR_230_24,
    run,
    page: include_str!("end_load.rs"),
};

/// Least factor of safety, 49 CFR 230.24.
pub const LEAST_FACTOR: f64 = 4.0;

/// Pressure on the full circle of the bore, N.
pub fn end_load_n(bore: Length, pressure: Stress) -> f64 {
    PI / 4.0 * bore.to_mm() * bore.to_mm() * pressure.to_n_mm2()
}

/// The load shared evenly by so many rivets, on their holes.
pub fn rivet_stress(load_n: f64, count: usize, hole: Length) -> Stress {
    Stress::n_mm2(load_n / (count as f64 * PI / 4.0 * hole.to_mm() * hole.to_mm()))
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let finding = RULE.finding_by(&source::GEOMETRY, "end of the barrel");
    let (Some(barrel), Some(pressure)) = (&written.barrel, &written.working_pressure) else {
        let key = if written.barrel.is_none() {
            "barrel"
        } else {
            "working_pressure"
        };
        return vec![
            RULE.finding("end of the barrel")
                .not_judged(format!("`{key}` is not given")),
        ];
    };
    let (bore, p) = (barrel.bore.value(), pressure.value());
    let load_n = end_load_n(bore, p);
    let load_lb = load_n / NEWTONS_PER_LBF;
    let line = format!(
        "load = 0.785398 B² p = 0.785398 × {}² × {} = {} lb",
        figure(bore.to_inches()),
        figure(p.to_psi()),
        rounded(load_lb, 0)
    );
    let mut findings = vec![
        finding
            .with("barrel's bore", "B", bore.to_inches(), "in")
            .with("working pressure", "p", p.to_psi(), "psi")
            .provides(load_lb, "lb")
            .because(format!(
                "{} lb, {} kN{}",
                rounded(load_lb, 0),
                rounded(load_n / 1000.0, 1),
                ring_weld(design, load_n)
            ))
            .work(line.clone()),
    ];
    if let Some(rivets) = &design.rivets {
        findings.extend(on_rivets(written, rivets, load_n, &line));
    }
    findings
}

/// What each millimetre of a ring's weld carries. No weld size is worked out from it.
fn ring_weld(design: &Design, load_n: f64) -> String {
    match &design.flange {
        Some(FlangeDesign::Fabricated(ring)) => {
            let each_mm = load_n / ring.strip_net.to_mm();
            format!(
                "; {} N for each mm round the middle of the ring",
                rounded(each_mm, 0)
            )
        }
        Some(FlangeDesign::Pressed(_)) | None => String::new(),
    }
}

fn on_rivets(written: &Written, rivets: &RivetLine, load_n: f64, load_line: &str) -> Vec<Finding> {
    let (count, hole) = (rivets.rivets.len(), rivets.hole.value());
    let stress = rivet_stress(load_n, count, hole);
    let place = format!("{count} rivets");
    let own = written.own_limits.end_load_factor.as_ref();
    let strength = written
        .rivets
        .as_ref()
        .and_then(|r| r.shear_strength.as_ref());
    let Some(strength) = strength else {
        let why = "`rivets.shear_strength` is not given";
        let own = own.map(|l| {
            RULE.finding_of_works(&l.origin, place.clone())
                .not_judged(why)
        });
        return [RULE.finding(place.clone()).not_judged(why)]
            .into_iter()
            .chain(own)
            .collect();
    };
    let factor = strength.value().to_psi() / stress.to_psi();
    let area = PI / 4.0 * hole.to_mm() * hole.to_mm() / SQUARE_MM_PER_SQUARE_INCH;
    let worked = |finding: Finding| {
        finding
            .with("rivets", "n", count as f64, "")
            .with("area of a hole", "A", area, "in2")
            .with("stress", "", stress.to_psi(), "psi")
            .with("shear strength", "", strength.value().to_psi(), "psi")
            .because(format!(
                "{} psi, {} N/mm² on the rivets; no credit for tubes or stays",
                rounded(stress.to_psi(), 0),
                rounded(stress.to_n_mm2(), 1)
            ))
            .work(load_line)
            .work(format!(
                "A = 0.785398 × {}² = {} in²",
                figure(hole.to_inches()),
                figure(area)
            ))
            .work(format!(
                "stress = {} lb/({count} × {} in²) = {} psi",
                rounded(load_n / NEWTONS_PER_LBF, 0),
                figure(area),
                rounded(stress.to_psi(), 1)
            ))
            .work(format!(
                "factor = {} psi/{} psi = {}",
                rounded(strength.value().to_psi(), 0),
                rounded(stress.to_psi(), 1),
                rounded(factor, 2)
            ))
    };
    let published = worked(RULE.finding(place.clone())).at_least(LEAST_FACTOR, factor, "");
    let own = own.map(|limit| {
        worked(RULE.finding_of_works(&limit.origin, place)).at_least(limit.limit, factor, "")
    });
    [published].into_iter().chain(own).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// 0.785398 × 38² × 160 = 181,458 lb; /(56 × 0.690291) = 4,694 psi; 51,520/4,694 = 10.98. 23 tonf/in² is 51,520 psi.
    #[test]
    fn by_hand_38_in_at_160_psi() {
        let load = end_load_n(Length::inches(38.0), Stress::psi(160.0));
        assert_eq!(decimal(load / NEWTONS_PER_LBF, 0), "181458");
        let stress = rivet_stress(load, 56, Length::inches(15.0 / 16.0));
        assert_eq!(decimal(stress.to_psi(), 0), "4694");
        assert_eq!(
            decimal(Stress::tonf_in2(23.0).to_psi() / stress.to_psi(), 1),
            "11.0"
        );
    }
}
