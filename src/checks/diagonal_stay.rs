//! Pressure that a stay set at a slant holds.
//!
//! ```text
//! P = a s (C/D)/E        a  area of the stay, in²           s  stress allowed, psi
//!                        C  its length square to the plate  D  its length along the slant      E  area held, in²
//! ```
//!
//! Source:  Laying Out for Boiler Makers and Sheet Metal Workers, p. 48; the stress is that of `stay_stress`, or the works'.
//! Covers:  diagonal stays whose two lengths the spec gives.
//! Leaves:  palm stays, whose foot holds a patch of plate: the area it holds is the designer's statement; the rivets or studs of a foot.

use super::area_held::area_held;
use super::measure::{figure, rounded};
use super::stay_core::{StayGroup, core_lines, net_area_in2, stay_groups};
use super::stay_stress::most_stress_psi;
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{StayKind, StaySpec, Written};
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "diagonal_stay",
    asks: "diagonal and palm stays",
    source: &source::LAYING_OUT,
    run,
    page: include_str!("diagonal_stay.rs"),
};

/// Pressure held by a diagonal stay of this area and stress over an area of plate.
pub fn diagonal_pressure(
    area_in2: f64,
    stress: Stress,
    square: Length,
    slant: Length,
    held_in2: f64,
) -> Stress {
    Stress::psi(area_in2 * stress.to_psi() * (square / slant) / held_in2)
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for group in stay_groups(written, design) {
        match group.stay {
            Some(stay) if stay.kind == StayKind::Palm => findings.push(
                RULE.finding_by(&source::WORKS, group.group.name.clone()).not_judged(
                    "no rule known to this program says what a palm's foot holds: its area is the designer's statement",
                ),
            ),
            Some(stay) if stay.kind == StayKind::Diagonal => {
                findings.push(of_diagonal(written, design, &group, stay));
            }
            _ => {}
        }
    }
    findings
}

fn of_diagonal(written: &Written, design: &Design, group: &StayGroup, stay: &StaySpec) -> Finding {
    let finding = RULE.finding(group.group.name.clone());
    let (Some(square), Some(slant)) = (&stay.square_length, &stay.slant_length) else {
        let path = &group.group.path;
        let why = format!(
            "`{path}.stay.square_length` and `{path}.stay.slant_length` are not both given"
        );
        return finding.not_judged(why);
    };
    let Some(pressure) = &written.working_pressure else {
        return finding.not_judged("`working_pressure` is not given");
    };
    let area_held = match area_held(design, group) {
        Ok(held) => held,
        Err(why) => return finding.not_judged(why),
    };
    let (area, held) = (net_area_in2(stay), area_held.in2);
    let (stress, origin) = match &stay.allowed_stress {
        Some(own) => (own.stress.value(), own.origin.as_str()),
        None => (Stress::psi(most_stress_psi(stay.kind)), "49 CFR 230.25"),
    };
    let allowed = diagonal_pressure(area, stress, square.value(), slant.value(), held);
    finding
        .with("net area", "a", area, "in2")
        .with("stress allowed", "s", stress.to_psi(), "psi")
        .with(
            "length square to the plate",
            "C",
            square.value().to_inches(),
            "in",
        )
        .with(
            "length along the slant",
            "D",
            slant.value().to_inches(),
            "in",
        )
        .with("area held", "E", held, "in2")
        .at_least_pressure(pressure.value(), allowed, "psi")
        .because(format!("stress allowed by {origin}; {}", area_held.because))
        .work(core_lines(stay).join("; "))
        .work_all(area_held.lines)
        .work(format!(
            "P = a s (C/D)/E = {} × {} × ({}/{})/{} = {} psi",
            figure(area),
            figure(stress.to_psi()),
            figure(square.value().to_inches()),
            figure(slant.value().to_inches()),
            figure(held),
            rounded(allowed.to_psi(), 1)
        ))
}
