//! Pressure that the flat carries across the largest circle through its points of support.
//!
//! ```text
//! P = f1 [(e − e1)/(C d)]²        d  diameter of the largest circle          e   thickness         e1  taken as lost
//!                                 f1 stress allowed                          C   by the kind of support
//! ```
//!
//! Source:  the form stands in Indian Boiler Regulations 1950, regulation 574, seen in a worked sheet (f1 = 0.85 f, e1 = 0.75 mm,
//!          one C only). Its table of C was not to be had.
//! Covers:  the circle through what `support` counts as support. It is compared only with the constants that the works enters under
//!          `own_limits.largest_circle` from the code that it holds: neither C nor f1 is ever guessed. The thickness is as ordered:
//!          what is to be taken as lost stands in that entry. Of a plate that is kept it is the least reading within the circle, in
//!          metal that stays; with none there it is not judged.
//! Leaves:  plates of uneven thickness; pressure on parts outside the flange line.

use super::measure::{Unit, figure, rounded};
use super::metal_there::reckoned;
use super::{Finding, Rule, source};
use crate::design::{Design, LargestCircle, Point, Touch};
use crate::spec::{CircleLimit, Purpose, Written};
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "largest_circle",
    asks: "flat between its points of support",
    source: &source::IBR_574,
    run,
    page: include_str!("largest_circle.rs"),
};

/// Pressure across a circle of this diameter, in the form of regulation 574.
pub fn circle_pressure(
    allowed: Stress,
    thickness: Length,
    lost: Length,
    constant: f64,
    diameter: Length,
) -> Stress {
    let ratio = (thickness - lost) / (diameter * constant);
    Stress::n_mm2(allowed.to_n_mm2() * ratio * ratio)
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(circle) = &design.largest_circle else {
        let why = match written.support {
            None => "`support` is not given, so that nothing says what holds the flat",
            Some(_) => "no circle lies within the flange line of `support.flange_line`",
        };
        return vec![RULE.finding_by(&source::WORKS, "flat").not_judged(why)];
    };
    let unit = Unit::of_job(written);
    let mut findings = vec![described(
        RULE.finding(place(circle, unit)),
        design,
        circle,
        unit,
    )];
    let first = &mut findings[0];
    match (
        &written.own_limits.largest_circle,
        &written.working_pressure,
    ) {
        (None, _) => {
            let why = "constant C and stress allowed are not given: `own_limits.largest_circle` takes them from the code that the works holds";
            // No published constant is known to this program, so that no rule set could judge it: the works must.
            *first = Finding {
                set: source::WORKS_SET,
                ..first.clone().not_judged(why)
            };
        }
        (Some(limit), None) => {
            let finding = RULE.finding_of_works(&limit.origin, place(circle, unit));
            *first = described(finding, design, circle, unit)
                .not_judged("`working_pressure` is not given");
        }
        (Some(limit), Some(pressure)) => {
            let finding = RULE.finding_of_works(&limit.origin, place(circle, unit));
            let finding = described(finding, design, circle, unit);
            let within = |at: Point| at.distance(circle.centre) * 2.0 <= circle.diameter.to_mm();
            *first = match reckoned(written, design.metal_there(within), "within the circle") {
                Ok(metal) => {
                    let finding = metal.as_found.iter().fold(finding, Finding::also);
                    compared(finding, metal.thickness, circle, limit, pressure.value())
                }
                Err(why) => finding.not_judged(why),
            };
        }
    }
    findings.extend(without_tubes(design, circle, unit));
    findings
}

fn place(circle: &LargestCircle, unit: Unit) -> String {
    format!(
        "circle at ({}, {}) {}",
        as_on_the_figure(Length::mm(circle.centre.x), unit),
        as_on_the_figure(Length::mm(circle.centre.y), unit),
        unit.name()
    )
}

/// A length of the circle to as many places as the figure of the design check has it: the two are read side by side.
fn as_on_the_figure(length: Length, unit: Unit) -> String {
    let places = match unit {
        Unit::Inch => 3,
        Unit::Mm => 2,
    };
    rounded(unit.of(length), places)
}

fn described(finding: Finding, design: &Design, circle: &LargestCircle, unit: Unit) -> Finding {
    let supports: Vec<String> = circle
        .touches
        .iter()
        .map(|touch| match touch {
            Touch::Hole(hole) => design.holes[*hole].id.clone(),
            Touch::FlangeLine(_) => "the flange line".to_string(),
        })
        .collect();
    finding
        .with_length("largest circle", "d", circle.diameter, unit)
        .provides_length(circle.diameter, unit)
        .because(format!(
            "diameter {} {}, touching {}",
            as_on_the_figure(circle.diameter, unit),
            unit.name(),
            supports.join(", ")
        ))
}

fn compared(
    finding: Finding,
    e: Length,
    circle: &LargestCircle,
    limit: &CircleLimit,
    pressure: Stress,
) -> Finding {
    let e1 = limit.thickness_allowance.value();
    let (f1, c, d) = (limit.stress.value(), limit.constant, circle.diameter);
    let allowed = circle_pressure(f1, e, e1, c, d);
    finding
        .with_length("thickness", "e", e, Unit::Mm)
        .with_length("taken as lost", "e1", e1, Unit::Mm)
        .with("constant", "C", c, "")
        .with("stress allowed", "f1", f1.to_n_mm2(), "N/mm2")
        .at_least_pressure(pressure, allowed, "N/mm2")
        .work(format!(
            "f1 [(e − e1)/(C d)]² = {} × [({} − {})/({} × {})]² = {} N/mm²",
            figure(f1.to_n_mm2()),
            figure(e.to_mm()),
            figure(e1.to_mm()),
            figure(c),
            figure(d.to_mm()),
            figure(allowed.to_n_mm2())
        ))
        .work(format!(
            "working pressure {} N/mm²",
            figure(pressure.to_n_mm2())
        ))
}

/// What the circle would be on the stays alone, where tubes and flues alter it.
fn without_tubes(design: &Design, with: &LargestCircle, unit: Unit) -> Option<Finding> {
    let circle = design.largest_circle_without_tubes.as_ref()?;
    if circle.diameter.same_as(with.diameter) {
        return None;
    }
    let finding = RULE.finding_by(&source::GEOMETRY, place(circle, unit));
    let finding = described(finding, design, circle, unit);
    let why = format!("{}: {}", not_counted(design), finding.why);
    Some(finding.because(why))
}

/// What is left out of the circle on the stays alone, of what the plate has.
fn not_counted(design: &Design) -> &'static str {
    let has = |purpose| design.groups.iter().any(|group| group.purpose == purpose);
    match (has(Purpose::Tube), has(Purpose::Flue)) {
        (true, true) => "neither tubes nor flues counted",
        (false, true) => "flues not counted",
        (_, false) => "tubes not counted",
    }
}
