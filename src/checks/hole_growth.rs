//! What the ligaments come to at the largest hole of the tolerance and after the next re-bore, and how far holes may still grow.
//!
//! ```text
//! metal = p − (d1 + d2)/2                  with the grown holes
//! largest hole of an even nest = (p − c)/(1 + s)      where the least ligament is  s D + c
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 580; or the works' own limit. The growth is geometry.
//! Covers:  every close pair beside a tube, at `hole_largest` (which judges as `tube_ligament` does) and at `next_rebore` (a note);
//!          the largest hole that the tightest pair of each nest allows (a note). A bushed hole keeps its bush's outside.
//! Leaves:  holes that go oval or wander, which only measuring finds.

use super::measure::{Unit, figure};
use super::pairs::{Pair, beside_tubes};
use super::tube_ligament::{least_ligament, own_least_ligament};
use super::{Finding, Rule, source, why_not_steel};
use crate::design::{Design, Hole, HoleGroup};
use crate::spec::{LigamentLimit, Written};
use crate::units::{Length, Size};

/// The rule.
pub const RULE: Rule = Rule {
    name: "hole_growth",
    asks: "metal between tube holes as they grow",
    source: &source::IBR_580,
    run,
    page: include_str!("hole_growth.rs"),
};

/// The largest holes that two neighbours may both have at this pitch, where the least ligament is `share` × hole + `plus`.
pub fn largest_hole(pitch: Length, share: f64, plus: Length) -> Length {
    (pitch - plus) / (1.0 + share)
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for pairs in beside_tubes(design).values() {
        findings.extend(grown(
            written,
            pairs,
            "at the largest hole",
            |g| g.largest.as_ref(),
            true,
        ));
        findings.extend(grown(
            written,
            pairs,
            "after the next re-bore",
            |g| g.next_rebore.as_ref(),
            false,
        ));
    }
    findings.extend(lives(written, design));
    findings
}

/// A pair whose holes have grown.
struct Grown<'a> {
    pair: Pair<'a>,
    holes: (Length, Length),
    tube_hole: Length,
    metal: Length,
}

type GrownSize = for<'a> fn(&'a HoleGroup) -> Option<&'a Size>;

fn grown(
    written: &Written,
    pairs: &[Pair],
    when: &str,
    size: GrownSize,
    judges: bool,
) -> Vec<Finding> {
    if pairs
        .iter()
        .all(|p| size(p.groups.0).is_none() && size(p.groups.1).is_none())
    {
        return Vec::new();
    }
    let grown: Vec<Grown> = pairs.iter().map(|pair| grow(pair, size)).collect();
    let mut findings = vec![by_regulation(written, &grown, when, judges)];
    if let Some(limit) = &written.own_limits.tube_ligament {
        findings.push(by_own_limit(written, &grown, when, judges, limit));
    }
    findings
}

fn grow<'a>(pair: &Pair<'a>, size: GrownSize) -> Grown<'a> {
    let one = |hole: &Hole, group: &HoleGroup| match size(group) {
        Some(size) => hole.ligament_hole.max(size.value()),
        None => hole.ligament_hole,
    };
    let holes = (one(pair.a, pair.groups.0), one(pair.b, pair.groups.1));
    let mut tube_hole = Length::ZERO;
    for (hole, group) in [(holes.0, pair.groups.0), (holes.1, pair.groups.1)] {
        if group.purpose.takes_a_tube() {
            tube_hole = tube_hole.max(hole);
        }
    }
    Grown {
        pair: *pair,
        holes,
        tube_hole,
        metal: pair.pitch - (holes.0 + holes.1) / 2.0,
    }
}

fn by_regulation(written: &Written, grown: &[Grown], when: &str, judges: bool) -> Finding {
    let worst = worst_of(grown, least_ligament);
    let required = least_ligament(worst.tube_hole);
    let finding = RULE.finding(format!("{}, {when}", worst.pair.place()));
    let d = figure(worst.tube_hole.to_inches());
    let finding = compared(finding, written, worst, required, judges).work(format!(
        "least = D/8 + 1/2 = {d}/8 + 0.5 = {} in{}",
        figure(required.to_inches()),
        in_job(written, required)
    ));
    match why_not_steel(written) {
        Some(why) => finding.not_judged(why),
        None => finding,
    }
}

/// A length worked out in inches once more in the unit of the job, where that is another.
fn in_job(written: &Written, length: Length) -> String {
    match Unit::of_job(written) {
        Unit::Inch => String::new(),
        Unit::Mm => format!(" = {} mm", figure(length.to_mm())),
    }
}

fn by_own_limit(
    written: &Written,
    grown: &[Grown],
    when: &str,
    judges: bool,
    limit: &LigamentLimit,
) -> Finding {
    let worst = worst_of(grown, |hole| own_least_ligament(hole, limit));
    let required = own_least_ligament(worst.tube_hole, limit);
    let unit = Unit::as_written(limit.plus.as_written());
    let finding = RULE.finding_of_works(&limit.origin, format!("{}, {when}", worst.pair.place()));
    compared(finding, written, worst, required, judges).work(format!(
        "least = {} × {} + {} = {} {}",
        figure(limit.share_of_hole),
        figure(unit.of(worst.tube_hole)),
        figure(unit.of(limit.plus.value())),
        figure(unit.of(required)),
        unit.name()
    ))
}

fn worst_of<'g, 'a>(grown: &'g [Grown<'a>], required: impl Fn(Length) -> Length) -> &'g Grown<'a> {
    let margin = |g: &Grown| g.metal - required(g.tube_hole);
    grown
        .iter()
        .reduce(|a, b| {
            if margin(b).shortfall(margin(a)).is_some() {
                b
            } else {
                a
            }
        })
        .expect("a list of pairs is never empty")
}

fn compared(
    finding: Finding,
    written: &Written,
    grown: &Grown,
    required: Length,
    judges: bool,
) -> Finding {
    let unit = Unit::of_job(written);
    let finding = finding
        .with_length("grown hole", "D", grown.tube_hole, unit)
        .work(format!(
            "metal = p − (d1 + d2)/2 = {} − ({} + {})/2 = {} {}",
            figure(unit.of(grown.pair.pitch)),
            figure(unit.of(grown.holes.0)),
            figure(unit.of(grown.holes.1)),
            figure(unit.of(grown.metal)),
            unit.name()
        ))
        .at_least_length(required, grown.metal, unit);
    if judges {
        return finding;
    }
    // A re-bore is a forecast: it can be below without the plate being below.
    let margin = grown.metal - required;
    let words = if finding.is_below() {
        "short of"
    } else {
        "over"
    };
    let why = format!(
        "a forecast: {} {words} what is asked",
        unit.text(margin.abs())
    );
    Finding {
        set: source::NOTED,
        verdict: super::Verdict::Note,
        ..finding.because(why)
    }
}

/// For each nest, the hole that its tightest pair of equal holes allows.
fn lives(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (index, group) in design.groups.iter().enumerate() {
        let tightest = design
            .directions
            .iter()
            .filter(|d| d.group == index)
            .reduce(|a, b| {
                if b.ligament.pitch < a.ligament.pitch {
                    b
                } else {
                    a
                }
            });
        if let Some(tightest) = tightest {
            let pitch = tightest.ligament.pitch;
            let finding = RULE.finding(format!("{}, {}", group.name, tightest.direction));
            findings.push(life(
                finding,
                written,
                tightest.hole,
                pitch,
                0.125,
                Length::inches(0.5),
                Unit::Inch,
            ));
            if let Some(limit) = &written.own_limits.tube_ligament {
                let unit = Unit::as_written(limit.plus.as_written());
                let finding = RULE.finding_of_works(
                    &limit.origin,
                    format!("{}, {}", group.name, tightest.direction),
                );
                let (share, plus) = (limit.share_of_hole, limit.plus.value());
                findings.push(life(
                    finding,
                    written,
                    tightest.hole,
                    pitch,
                    share,
                    plus,
                    unit,
                ));
            }
        }
    }
    findings
}

fn life(
    finding: Finding,
    written: &Written,
    hole: Length,
    pitch: Length,
    share: f64,
    plus: Length,
    unit: Unit,
) -> Finding {
    let job = Unit::of_job(written);
    let largest = largest_hole(pitch, share, plus);
    let left = largest - hole;
    let why = if left < Length::ZERO {
        format!(
            "holes are {} larger already than this form allows",
            job.text(left.abs())
        )
    } else {
        format!(
            "holes may still grow {} on the diameter by this form",
            job.text(left)
        )
    };
    finding
        .with_length("pitch", "p", pitch, job)
        .with_length("hole", "d", hole, job)
        .provides_length(largest, job)
        .because(why)
        .work(format!(
            "largest hole = (p − c)/(1 + s) = ({} − {})/{} = {} {}",
            figure(unit.of(pitch)),
            figure(unit.of(plus)),
            figure(1.0 + share),
            figure(unit.of(largest)),
            unit.name()
        ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// Pitch 56.5: (56.5 − 12.5)/1.125 = 39.11 and (56.5 − 12.7)/1.125 = 38.93 mm.
    #[test]
    fn by_hand_56_5_pitch() {
        let pitch = Length::mm(56.5);
        assert_eq!(
            decimal(largest_hole(pitch, 0.125, Length::mm(12.5)).to_mm(), 2),
            "39.11"
        );
        assert_eq!(
            decimal(largest_hole(pitch, 0.125, Length::inches(0.5)).to_mm(), 2),
            "38.93"
        );
    }

    /// Pitch 2 19/32 in: (2.59375 − 0.5)/1.125 = 1.8611, which is 0.0174 over a 1 27/32 in hole.
    #[test]
    fn by_hand_2_19_32_pitch() {
        let largest = largest_hole(Length::inches(2.59375), 0.125, Length::inches(0.5));
        assert_eq!(decimal(largest.to_inches() - 1.84375, 4), "0.0174");
    }

    proptest::proptest! {
        /// At the largest hole the metal left is exactly what is asked.
        #[test]
        fn holds_the_largest_hole_uses_the_margin_up(pitch in 30.0..200.0f64, share in 0.0..0.5f64, plus in 5.0..25.0f64) {
            let hole = largest_hole(Length::mm(pitch), share, Length::mm(plus));
            let (metal, required) = (Length::mm(pitch) - hole, hole * share + Length::mm(plus));
            proptest::prop_assert!(metal.same_as(required));
        }
    }
}
