//! Greatest pitch of rivets that still makes a tight seam.
//!
//! ```text
//! p ≤ C t + 41.28 mm (1 5/8 in)        t  thinner plate of the seam        C  1.31 for one rivet in a pitch of a lap seam
//! p ≤ so many t + so much              the works' own figures              C  3.5, 4.63, 6.00: two, three, five rivets, double strap
//! ```
//!
//! Source:  restated in machine-design texts, so that it is a note; or the works' own limit, which judges.
//! Covers:  the pitch along the barrel's outside, the larger, where the edge is caulked from without. For two rows and more C of a lap
//!          seam is known from no source, so that only the works' own limit is compared.
//! Leaves:  how the edge is caulked.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::Written;
use crate::units::Length;
use crate::units::tolerance::SAME_SHARE;

/// The rule.
pub const RULE: Rule = Rule {
    name: "rivet_pitch",
    asks: "greatest pitch of the flange rivets",
    source: &source::LARGEST_PITCH,
    run,
    page: include_str!("rivet_pitch.rs"),
};

/// C for one rivet in a pitch of a lap seam.
pub const ONE_RIVET_LAP: f64 = 1.31;

/// Greatest pitch in the form C t + 41.28 mm.
pub fn greatest_pitch(constant: f64, thickness: Length) -> Length {
    thickness * constant + Length::mm(41.28)
}

/// Rivets in a row round a seam of this mean girth at no more than this pitch: a whole number, rounded up.
///
/// The pitch drawn is then the girth divided by the count, and no longer the trial pitch.
pub fn count_round(girth: Length, most_pitch: Length) -> u32 {
    (girth / most_pitch - SAME_SHARE).ceil().max(0.0) as u32
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(rivets) = &design.rivets else {
        return Vec::new();
    };
    let flange = match &design.flange {
        Some(crate::design::FlangeDesign::Fabricated(ring)) => ring.ring_thickness.value(),
        Some(crate::design::FlangeDesign::Pressed(_)) | None => design.thickness.value(),
    };
    let thinner = written
        .barrel
        .as_ref()
        .map_or(flange, |b| b.thickness.value().min(flange));
    let (unit, pitch) = (Unit::of_job(written), rivets.pitch_outside);
    let noted = match &rivets.rows {
        None => one_rivet_in_a_pitch(thinner, pitch, unit),
        Some(rows) => RULE
            .finding("pitch at the barrel's outside")
            .with_length("thinner plate", "t", thinner, unit)
            .not_judged(format!(
                "C for {} rivets in a pitch of a lap seam is known from no source: {}",
                rows.number,
                match written.own_limits.rivet_pitch {
                    Some(_) => "the works' own limit stands alone",
                    None => "give `own_limits.rivet_pitch`",
                }
            )),
    };
    let own = written.own_limits.rivet_pitch.as_ref().map(|limit| {
        let most = thinner * limit.thicknesses + limit.plus.value();
        RULE.finding_of_works(&limit.origin, "pitch at the barrel's outside")
            .with_length("thinner plate", "t", thinner, unit)
            .at_most_length(most, pitch, unit)
            .work(format!(
                "{} × {} + {} = {} {}",
                figure(limit.thicknesses),
                figure(unit.of(thinner)),
                figure(unit.of(limit.plus.value())),
                figure(unit.of(most)),
                unit.name()
            ))
    });
    [noted].into_iter().chain(own).collect()
}

fn one_rivet_in_a_pitch(thinner: Length, pitch: Length, unit: Unit) -> Finding {
    let most = greatest_pitch(ONE_RIVET_LAP, thinner);
    RULE.finding("pitch at the barrel's outside")
        .with_length("thinner plate", "t", thinner, unit)
        .at_most_length(most, pitch, unit)
        .work(format!(
            "1.31 t + 41.28 = 1.31 × {} + 41.28 = {} mm",
            figure(thinner.to_mm()),
            figure(most.to_mm())
        ))
        .work(format!("provided = {} mm", figure(pitch.to_mm())))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 100 mm at 10 mm is ten rivets, a hundred and one eleven: a whole number stays what it is.
    #[test]
    fn by_hand_rivets_round_a_seam() {
        let count = |girth: f64| count_round(Length::mm(girth), Length::mm(10.0));
        assert_eq!((count(100.0), count(101.0), count(99.0)), (10, 11, 10));
    }
}
