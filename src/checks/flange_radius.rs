//! Inside radius of the heel of a pressed flange.
//!
//! ```text
//! r ≥ 1.75 t and 38 mm                          flat end flanged for connection to a shell       Lloyd's Register, naval
//! r ≥ t and 25 mm                               firebox plate flanged to its wrapper             Lloyd's Register, naval
//! r ≥ 30, 35, 40, 45, 50 mm by outside diameter, and 1.3 t                                       TRD 305
//!     (to 500, 1,400, 1,600, 1,900 mm, and over)
//! ```
//!
//! Source:  Lloyd's Register Naval Ship Rules, Vol 2 Pt 8 Ch 1, 9.1; TRD 305 (June 1977), 3.1.2; or the works' own limit.
//! Covers:  pressed flanges. TRD's radius is taken as the inside one, which the part that was read does not say. Its first
//!          line is read as 500 mm where one copy prints 50. A radius kept like for like is noted beside the comparison,
//!          naming the original: it does not meet anything by being old.
//! Leaves:  how the heel is formed, its thinning and its heat treatment.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::{Design, FlangeDesign, Pressed};
use crate::spec::Written;
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "flange_radius",
    asks: "inside radius of the heel",
    source: &source::LLOYDS_NAVAL_9_1,
    run,
    page: include_str!("flange_radius.rs"),
};

/// Least inside radius of a flat end flanged for connection to a shell, Lloyd's naval rules.
pub fn least_radius_to_shell(thickness: Length) -> Length {
    (thickness * 1.75).max(Length::mm(38.0))
}

/// Least inside radius of a firebox or combustion-chamber plate flanged to its wrapper, Lloyd's naval rules.
pub fn least_radius_to_wrapper(thickness: Length) -> Length {
    thickness.max(Length::mm(25.0))
}

/// Least radius of a flat flanged end of this outside diameter, TRD 305.
pub fn least_radius_trd_305(outside: Length, thickness: Length) -> Length {
    const STEPS_MM: [(f64, f64); 4] = [
        (500.0, 30.0),
        (1400.0, 35.0),
        (1600.0, 40.0),
        (1900.0, 45.0),
    ];
    let by_diameter = STEPS_MM
        .iter()
        .find(|(up_to, _)| Length::mm(*up_to).shortfall(outside).is_none())
        .map_or(50.0, |(_, radius)| *radius);
    Length::mm(by_diameter).max(thickness * 1.3)
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    match &design.flange {
        Some(FlangeDesign::Pressed(pressed)) => compared(written, design, pressed),
        Some(FlangeDesign::Fabricated(_)) => vec![RULE.finding("ring").because(
            "a welded ring has no heel; the size and preparation of its welds are for the works' engineer and are not checked here",
        )],
        None => Vec::new(),
    }
}

fn compared(written: &Written, design: &Design, pressed: &Pressed) -> Vec<Finding> {
    let mut findings = vec![
        by_lloyds(written, design, pressed),
        by_trd(written, design, pressed),
    ];
    if let Some(limit) = &written.own_limits.flange_radius {
        let finding = RULE.finding_of_works(&limit.origin, "heel");
        findings.push(finding.at_least_length(
            limit.limit.value(),
            pressed.heel_radius.value(),
            Unit::of_job(written),
        ));
    }
    findings.extend(like_for_like(written, pressed));
    findings
}

fn by_lloyds(written: &Written, design: &Design, pressed: &Pressed) -> Finding {
    let (unit, t) = (Unit::of_job(written), design.thickness.value());
    let required = least_radius_to_shell(t);
    RULE.finding("heel")
        .with_length("thickness", "t", t, unit)
        .at_least_length(required, pressed.heel_radius.value(), unit)
        .work(format!(
            "1.75 t = 1.75 × {} = {} mm; and 38 mm: at least {} mm",
            figure(t.to_mm()),
            figure(1.75 * t.to_mm()),
            figure(required.to_mm())
        ))
        .work(format!(
            "provided = {} mm",
            figure(pressed.heel_radius.value().to_mm())
        ))
}

fn by_trd(written: &Written, design: &Design, pressed: &Pressed) -> Finding {
    let (unit, t) = (Unit::of_job(written), design.thickness.value());
    let outside = pressed.outside_diameter.value();
    let required = least_radius_trd_305(outside, t);
    RULE.finding_by(&source::TRD_305, "heel")
        .with_length("outside diameter", "", outside, unit)
        .with_length("thickness", "t", t, unit)
        .at_least_length(required, pressed.heel_radius.value(), unit)
        .because("taken as the inside radius")
        .work(format!(
            "by outside diameter {} mm, and 1.3 t = 1.3 × {} = {} mm: at least {} mm",
            figure(outside.to_mm()),
            figure(t.to_mm()),
            figure(1.3 * t.to_mm()),
            figure(required.to_mm())
        ))
        .work(format!(
            "provided = {} mm",
            figure(pressed.heel_radius.value().to_mm())
        ))
}

fn like_for_like(written: &Written, pressed: &Pressed) -> Option<Finding> {
    let original = written.plate.original.as_ref()?;
    let was = original.heel_radius_inside.as_ref()?;
    let kept = if was.value().same_as(pressed.heel_radius.value()) {
        "kept like for like"
    } else {
        "changed"
    };
    let finding = RULE.finding_by(&source::GEOMETRY, "heel, against the original");
    Some(
        finding
            .with_length("original heel", "r", was.value(), Unit::of_job(written))
            .provides_length(pressed.heel_radius.value(), Unit::of_job(written))
            .because(format!(
                "{kept}: the original had {} inside ({})",
                was.as_written(),
                original.source
            )),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 1.75 × 5/8 in = 1.09375 in = 27.78 mm, so 38 mm governs; 1.75 × 1 in = 44.45 mm governs over 38.
    #[test]
    fn by_hand_lloyds() {
        assert!(least_radius_to_shell(Length::inches(0.625)).same_as(Length::mm(38.0)));
        assert!(least_radius_to_shell(Length::inches(1.0)).same_as(Length::mm(44.45)));
        assert!(least_radius_to_wrapper(Length::inches(0.625)).same_as(Length::mm(25.0)));
        assert!(least_radius_to_wrapper(Length::inches(1.25)).same_as(Length::mm(31.75)));
    }

    /// TRD 305, table of 3.1.2: the radius of each line holds up to and including its diameter; never under 1.3 t.
    #[test]
    fn published_trd_305_table() {
        let table = [
            (500.0, 30.0),
            (500.1, 35.0),
            (1400.0, 35.0),
            (1600.0, 40.0),
            (1900.0, 45.0),
            (1900.1, 50.0),
        ];
        for (outside, radius) in table {
            let least = least_radius_trd_305(Length::mm(outside), Length::mm(10.0));
            assert!(least.same_as(Length::mm(radius)), "{outside}");
        }
        assert!(
            least_radius_trd_305(Length::mm(450.0), Length::mm(30.0)).same_as(Length::mm(39.0))
        );
    }
}
