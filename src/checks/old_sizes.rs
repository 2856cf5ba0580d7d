//! What this plate departs from its original in: a metric thickness for an inch one, other holes, another number of tubes.
//!
//! ```text
//! bending strength = (t/t0)²        t  thickness now        t0  thickness of the original
//! ```
//!
//! Source:  geometry: a flat plate bends by the square of its thickness.
//! Covers:  whatever `plate.original` gives; 12 mm for 1/2 in is 0.7 mm thinner and bends at 89 % of the load. Of a plate that is kept, t
//!          is the least reading of the survey in metal that stays.
//! Leaves:  whether the departure may be made. Mill tolerance can take another few tenths: order on the least thickness.

use super::measure::{Unit, figure, rounded};
use super::{Finding, Rule, source};
use crate::design::{BesideOriginal, Design, OriginalFigure, Told, beside_original};
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
    beside_original(written, design)
        .into_iter()
        .filter_map(|one| match one.what {
            OriginalFigure::Thickness => thickness(written, &one.now, original),
            // The heel of a pressed flange is told under `flange_radius`.
            OriginalFigure::HeelRadius if one.now.length().is_some() => None,
            _ if one.departs() => Some(departure(written, original, &one)),
            _ => None,
        })
        .collect()
}

fn thickness(written: &Written, now: &Told, original: &Original) -> Option<Finding> {
    let (was, finding) = (original.thickness.as_ref()?, RULE.finding("thickness"));
    let Told::Size(now) = now else {
        let why = "what is left of the thickness is not known: the plate is kept, and no reading of the survey stands in metal that stays";
        return Some(finding.because(why));
    };
    let unit = Unit::of_job(written);
    let share = bending_share(now.value(), was.value());
    let whose = match written.plate.kept {
        true => "the least reading that stays, ",
        false => "",
    };
    let why = if now.value().same_as(was.value()) {
        format!(
            "{whose}as thick as the original, {} ({})",
            was.as_written(),
            original.source
        )
    } else {
        let word = if now.value() < was.value() {
            "thinner than"
        } else {
            "thicker than"
        };
        format!(
            "{whose}{} for {}: {word} the original by {}, and {} % of its strength in bending; not like for like ({})",
            now.as_written(),
            was.as_written(),
            unit.text((now.value() - was.value()).abs()),
            rounded(100.0 * share, 0),
            original.source
        )
    };
    Some(
        finding
            .with_length("original", "t0", was.value(), unit)
            .provides_length(now.value(), unit)
            .because(why)
            .work(format!(
                "(t/t0)² = ({}/{})² = {}",
                figure(now.value().to_mm()),
                figure(was.value().to_mm()),
                figure(share)
            )),
    )
}

fn departure(written: &Written, original: &Original, one: &BesideOriginal) -> Finding {
    let unit = Unit::of_job(written);
    let told = |told: &Told| match told {
        Told::Size(size) => size.as_written().to_string(),
        Told::Length(length) => unit.text(*length),
        Told::Count(count) => count.to_string(),
        Told::Words(words) => words.clone(),
        Told::Nothing(why) => (*why).to_string(),
    };
    let (was, now) = (told(&one.was), told(&one.now));
    let why = match one.what {
        OriginalFigure::TubeCount => {
            format!("{now} tubes for the original {was} ({})", original.source)
        }
        OriginalFigure::Tube => format!(
            "{now} for the original {was}{} ({})",
            goes_in(&one.now, original),
            original.source
        ),
        OriginalFigure::Ligament => {
            let word = if one.now.length() < one.was.length() {
                ", less metal than the original"
            } else {
                ""
            };
            format!("{now} for the original {was}{word} ({})", original.source)
        }
        _ => format!("{now} for the original {was} ({})", original.source),
    };
    let finding = RULE.finding(one.what.name()).because(why);
    match (&one.now, one.was.length()) {
        (Told::Count(count), _) => finding.provides(*count as f64, ""),
        (now, Some(was)) => match now.length() {
            Some(length) => finding
                .with_length("original", "", was, unit)
                .provides_length(length, unit),
            None => finding,
        },
        (_, None) => finding,
    }
}

/// Says so where a tube is larger than the hole that the original had for it: 42.4 mm for 1 5/8 in.
fn goes_in(now: &Told, original: &Original) -> String {
    match (now.length(), &original.tube_hole) {
        (Some(tube), Some(hole)) if hole.value().shortfall(tube).is_some() => {
            format!(
                ": it does not go into the original's hole, {}",
                hole.as_written()
            )
        }
        _ => String::new(),
    }
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
