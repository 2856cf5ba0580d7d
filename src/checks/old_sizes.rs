//! What this plate departs from its original in: a metric thickness for an inch one, other holes, another number of tubes.
//!
//! ```text
//! bending strength = (t/t0)²        t  thickness now        t0  thickness of the original
//! ```
//!
//! Source:  geometry: a flat plate bends by the square of its thickness.
//! Covers:  whatever `plate.original` gives; 12 mm for 1/2 in is 0.7 mm thinner and bends at 89 % of the load.
//! Leaves:  whether the departure may be made. Mill tolerance can take another few tenths: order on the least thickness.

use super::measure::{Unit, figure, rounded};
use super::pairs::is_tube;
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{Original, Written};
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "old_sizes",
    asks: "departures from the original",
    source: &source::GEOMETRY,
    run,
    page: include_str!("old_sizes.rs"),
};

/// Bending strength of a plate beside one of another thickness, a share.
pub fn bending_share(now: Length, original: Length) -> f64 {
    let ratio = now / original;
    ratio * ratio
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(original) = &written.plate.original else {
        return Vec::new();
    };
    let noted = [
        thickness(written, design, original),
        tube_hole(written, design, original),
        tube_count(design, original),
    ];
    noted.into_iter().flatten().collect()
}

fn thickness(written: &Written, design: &Design, original: &Original) -> Option<Finding> {
    let was = original.thickness.as_ref()?;
    let (now, unit) = (design.thickness.value(), Unit::of_job(written));
    let share = bending_share(now, was.value());
    let why = if now.same_as(was.value()) {
        format!(
            "as thick as the original, {} ({})",
            was.as_written(),
            original.source
        )
    } else {
        let word = if now < was.value() {
            "thinner than"
        } else {
            "thicker than"
        };
        format!(
            "{} for {}: {word} the original by {}, and {} % of its strength in bending; not like for like ({})",
            design.thickness.as_written(),
            was.as_written(),
            unit.text((now - was.value()).abs()),
            rounded(100.0 * share, 0),
            original.source
        )
    };
    Some(
        RULE.finding("thickness")
            .with_length("original", "t0", was.value(), unit)
            .provides_length(now, unit)
            .because(why)
            .work(format!(
                "(t/t0)² = ({}/{})² = {}",
                figure(now.to_mm()),
                figure(was.value().to_mm()),
                figure(share)
            )),
    )
}

fn tube_hole(written: &Written, design: &Design, original: &Original) -> Option<Finding> {
    let was = original.tube_hole.as_ref()?;
    let group = design.groups.iter().find(|g| is_tube(g.purpose))?;
    let (now, unit) = (group.finish.value(), Unit::of_job(written));
    if now.same_as(was.value()) {
        return None;
    }
    Some(
        RULE.finding(format!("{}, hole", group.name))
            .provides_length(now, unit)
            .because(format!(
                "{} for the original {} ({})",
                group.finish.as_written(),
                was.as_written(),
                original.source
            )),
    )
}

fn tube_count(design: &Design, original: &Original) -> Option<Finding> {
    let was = original.tube_count?;
    let now = design
        .holes
        .iter()
        .filter(|h| is_tube(design.groups[h.group].purpose))
        .count();
    if now == was as usize {
        return None;
    }
    Some(
        RULE.finding("number of tubes")
            .provides(now as f64, "")
            .because(format!(
                "{now} tubes for the original {was} ({})",
                original.source
            )),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// (12/12.7)² = 0.8928: 89 %.
    #[test]
    fn by_hand_12_mm_for_half_an_inch() {
        assert_eq!(
            rounded(
                100.0 * bending_share(Length::mm(12.0), Length::inches(0.5)),
                0
            ),
            "89"
        );
    }
}
