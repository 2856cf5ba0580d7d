//! Former pins stand where tubes will be drilled later.
//!
//! ```text
//! distance from pin to the nearest tube centre <= 1/64 in
//! ```
//!
//! Source:  works' practice: a pin hole anywhere else stays in the plate for ever.
//! Covers:  the places under `cutting.former_pins`.
//!          Up to 1/64 in is a place read off to the nearest 64th, and the pin is taken to stand on the tube.
//! Leaves:  the size of the pins, and whether the former takes them there.

use super::measure::{Unit, figure};
use super::pairs::is_tube;
use super::{Finding, Rule, source};
use crate::design::{Design, Point};
use crate::spec::Written;
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "former_pins",
    asks: "former pins on tube centres",
    source: &source::WORKS,
    run,
    page: include_str!("former_pins.rs"),
};

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(cutting) = &written.cutting else {
        return Vec::new();
    };
    let unit = Unit::of_job(written);
    let tubes = || {
        design
            .holes
            .iter()
            .filter(|h| is_tube(design.groups[h.group].purpose))
    };
    let mut findings = Vec::new();
    for (x, y) in &cutting.former_pins {
        let pin = Point::new(x.value().to_mm(), y.value().to_mm());
        let place = format!("pin at ({}, {})", x.as_written(), y.as_written());
        let nearest = tubes().min_by(|a, b| a.at.distance(pin).total_cmp(&b.at.distance(pin)));
        let finding = RULE.finding_of_works(&cutting.origin, place);
        findings.push(match nearest {
            None => finding.not_judged("the plate has no tubes to set a pin on"),
            Some(tube) => {
                let away = Length::mm(tube.at.distance(pin));
                finding
                    .at_most_length(Length::sixty_fourths(1), away, unit)
                    .because(match away.same_as(Length::ZERO) {
                        true => format!("nearest tube {}", tube.id),
                        false => format!("taken to stand on {}, the nearest tube", tube.id),
                    })
                    .work(format!(
                        "from pin to {}: {} {}",
                        tube.id,
                        figure(unit.of(away)),
                        unit.name()
                    ))
            }
        });
    }
    findings
}
