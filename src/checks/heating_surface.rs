//! Heating surface, gas area and slenderness of the tubes.
//!
//! ```text
//! surface  = n π d L          d  outside or inside of the tube, said which       L  between the tube plates       n  tubes
//! gas area = n π b²/4         b  bore
//! slenderness = L/d           outside
//! ```
//!
//! Source:  geometry. Old books mix inside and outside in one table, a matter of 10 %; early British engines have L/d of 59 to 100.
//! Covers:  every nest that gives `between_plates`; the inside and the gas area where it gives `wall`.
//! Leaves:  ferrules, beading, and what the surface evaporates.

use super::measure::{figure, rounded};
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{Nest, Written};
use crate::units::angle::PI;
use crate::units::{Length, SQUARE_MM_PER_SQUARE_INCH};

/// The rule.
pub const RULE: Rule = Rule {
    name: "heating_surface",
    asks: "heating surface and gas area of the tubes",
    source: &source::GEOMETRY,
    run,
    page: include_str!("heating_surface.rs"),
};

/// Square inches in a square foot.
const SQUARE_INCHES_PER_SQUARE_FOOT: f64 = 144.0;

/// Surface of so many tubes on this diameter, ft².
pub fn surface_ft2(count: usize, diameter: Length, length: Length) -> f64 {
    let mm2 = count as f64 * PI * diameter.to_mm() * length.to_mm();
    mm2 / SQUARE_MM_PER_SQUARE_INCH / SQUARE_INCHES_PER_SQUARE_FOOT
}

/// Area for gas through so many tubes, or one chimney, of this bore, ft².
pub fn gas_area_ft2(count: usize, bore: Length) -> f64 {
    let mm2 = count as f64 * PI / 4.0 * bore.to_mm() * bore.to_mm();
    mm2 / SQUARE_MM_PER_SQUARE_INCH / SQUARE_INCHES_PER_SQUARE_FOOT
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (i, nest) in written.tubes.iter().enumerate() {
        let path = format!("tubes[{i}]");
        let group = design.groups.iter().position(|g| g.path == path);
        if let (Some(group), Some(length)) = (group, &nest.between_plates) {
            let count = design.holes.iter().filter(|h| h.group == group).count();
            findings.push(noted(nest, count, length.value()));
        }
    }
    findings
}

fn noted(nest: &Nest, count: usize, length: Length) -> Finding {
    let tube = nest.tube.value();
    let outside = surface_ft2(count, tube, length);
    let slenderness = length / tube;
    let mut why = format!("{} ft² on the outside", rounded(outside, 0));
    let mut finding = RULE
        .finding(nest.name.clone())
        .with("tubes", "n", count as f64, "")
        .with("outside of the tube", "d", tube.to_inches(), "in")
        .with("between the plates", "L", length.to_inches(), "in")
        .provides(outside, "ft2")
        .work(format!(
            "outside: {count} × 3.141593 × {} × {}/144 = {} ft²",
            figure(tube.to_inches()),
            figure(length.to_inches()),
            rounded(outside, 1)
        ));
    if let Some(wall) = &nest.wall {
        let bore = tube - wall.value() * 2.0;
        let (inside, gas) = (surface_ft2(count, bore, length), gas_area_ft2(count, bore));
        why += &format!(
            ", {} ft² on the inside; gas area {} ft²",
            rounded(inside, 0),
            rounded(gas, 2)
        );
        finding = finding
            .with("bore", "b", bore.to_inches(), "in")
            .work(format!(
                "inside: {count} × 3.141593 × {} × {}/144 = {} ft²",
                figure(bore.to_inches()),
                figure(length.to_inches()),
                rounded(inside, 1)
            ))
            .work(format!(
                "gas: {count} × 0.785398 × {}²/144 = {} ft²",
                figure(bore.to_inches()),
                rounded(gas, 3)
            ));
    } else {
        why += &format!(
            "; the inside is not known, since `wall` of {} is not given",
            nest.name
        );
    }
    let why = format!("{why}; length {} diameters", rounded(slenderness, 1));
    finding
        .because(why)
        .work(format!("L/d = {}", rounded(slenderness, 2)))
}
