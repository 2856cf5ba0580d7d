//! Metal between holes with no tube in them: stays, pipes, plugs, fittings, bolts.
//!
//! ```text
//! metal = p − (d1 + d2)/2
//! ```
//!
//! Source:  geometry. No rule known to this program covers metal between such holes.
//! Covers:  the tightest pair of every two purposes, so that a thin bridge cannot pass unseen.
//! Leaves:  whether it is enough: the works' engineer and the inspecting body judge it.

use super::measure::{Unit, figure};
use super::pairs::apart_from_tubes;
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::Written;

/// The rule.
pub const RULE: Rule = Rule {
    name: "other_ligaments",
    asks: "metal between holes with no tube in them",
    source: &source::GEOMETRY,
    run,
    page: include_str!("other_ligaments.rs"),
};

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let pairs = apart_from_tubes(design);
    let Some(least) = pairs
        .iter()
        .copied()
        .reduce(|a, b| if b.metal < a.metal { b } else { a })
    else {
        return Vec::new();
    };
    let unit = Unit::of_job(written);
    let mut finding = RULE
        .finding(least.place())
        .provides_length(least.metal, unit)
        .because(format!(
            "least {} between {}; no published rule here covers it",
            unit.text(least.metal),
            least.numbers()
        ));
    for pair in &pairs {
        let (a, b) = (pair.groups.0.purpose.name(), pair.groups.1.purpose.name());
        finding = finding.work(format!(
            "{a} and {b}, {}: {} − ({} + {})/2 = {} {}",
            pair.numbers(),
            figure(unit.of(pair.pitch)),
            figure(unit.of(pair.a.ligament_hole)),
            figure(unit.of(pair.b.ligament_hole)),
            figure(unit.of(pair.metal)),
            unit.name()
        ));
    }
    vec![finding]
}
