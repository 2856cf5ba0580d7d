//! Least ligament beside a tube hole in a flat tube plate.
//!
//! ```text
//! least ligament = D/8 + 1/2 in            D  finished hole in the plate, in
//! least ligament = share × D + plus        the same in the works' own figures, where the spec gives them
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 580; or the works' own limit.
//! Covers:  expanded tubes; every neighbouring pair with a tube or flue in it, slanting ones too; a bushed hole at its outer
//!          size; the larger hole where two differ. Another published form has 12.5 mm for the 1/2 in, 0.2 mm less: where a
//!          works holds that code it enters the figure as its own limit.
//! Leaves:  bending of the plate between its supports; holes as drilled, drifted or worn; holes with no tube in them,
//!          for which `other_ligaments` gives the figures.

use super::measure::{Unit, figure};
use super::pairs::{Pair, beside_tubes};
use super::{Finding, Rule, source, why_not_steel};
use crate::design::Design;
use crate::spec::{LigamentLimit, Written};
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "tube_ligament",
    asks: "metal between tube holes",
    source: &source::IBR_580,
    run,
    page: include_str!("tube_ligament.rs"),
};

/// Least ligament beside a tube hole of this finished diameter, regulation 580.
pub fn least_ligament(hole: Length) -> Length {
    hole / 8.0 + Length::inches(0.5)
}

/// Least ligament in the works' own figures.
pub fn own_least_ligament(hole: Length, limit: &LigamentLimit) -> Length {
    hole * limit.share_of_hole + limit.plus.value()
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for pairs in beside_tubes(design).values() {
        findings.push(by_regulation(written, pairs));
        if let Some(limit) = &written.own_limits.tube_ligament {
            findings.push(by_own_limit(written, pairs, limit));
        }
    }
    findings
}

fn by_regulation(written: &Written, pairs: &[Pair]) -> Finding {
    let worst = worst_of(pairs, |pair| least_ligament(pair.tube_hole()));
    let mut finding = RULE.finding(worst.place());
    if by_alternative(written) {
        finding.set = source::NOTED;
        finding = finding.because("the job is judged by the alternative of regulation 580 instead");
    }
    let d = worst.tube_hole();
    let required = least_ligament(d);
    let finding = compared(finding, written, &worst, required)
        .work(format!("D = {} in", figure(d.to_inches())))
        .work(format!(
            "least = D/8 + 1/2 = {}/8 + 0.5 = {} in",
            figure(d.to_inches()),
            figure(required.to_inches())
        ));
    let finding = provided_line(finding, &worst, Unit::Inch, required);
    if let Some(why) = why_not_steel(written) {
        let asked = Unit::of_job(written).text(required);
        return finding.not_judged(format!("{why}; for steel it would ask {asked}"));
    }
    say_the_others(finding, pairs, |pair| least_ligament(pair.tube_hole()))
}

/// Whether the works has chosen the alternative of regulation 580, and not this form beside it.
fn by_alternative(written: &Written) -> bool {
    let named = |name: &str| written.judged_by.iter().any(|word| word.trim() == name);
    named("tube_ligament_alternative") && !named(RULE.name)
}

fn by_own_limit(written: &Written, pairs: &[Pair], limit: &LigamentLimit) -> Finding {
    let worst = worst_of(pairs, |pair| own_least_ligament(pair.tube_hole(), limit));
    let (d, unit) = (worst.tube_hole(), Unit::as_written(limit.plus.as_written()));
    let required = own_least_ligament(d, limit);
    let finding = RULE.finding_of_works(&limit.origin, worst.place());
    let finding = compared(finding, written, &worst, required)
        .work(format!("D = {} {}", figure(unit.of(d)), unit.name()))
        .work(format!(
            "least = {} × {} + {} = {} {}",
            figure(limit.share_of_hole),
            figure(unit.of(d)),
            figure(unit.of(limit.plus.value())),
            figure(unit.of(required)),
            unit.name()
        ));
    let finding = provided_line(finding, &worst, unit, required);
    say_the_others(finding, pairs, |pair| {
        own_least_ligament(pair.tube_hole(), limit)
    })
}

fn compared(finding: Finding, written: &Written, pair: &Pair, required: Length) -> Finding {
    let unit = Unit::of_job(written);
    finding
        .with_length("hole", "D", pair.tube_hole(), unit)
        .with_length("pitch of the pair", "p", pair.pitch, unit)
        .at_least_length(required, pair.metal, unit)
}

fn provided_line(finding: Finding, pair: &Pair, unit: Unit, required: Length) -> Finding {
    let (p, a, b) = (
        unit.of(pair.pitch),
        unit.of(pair.a.ligament_hole),
        unit.of(pair.b.ligament_hole),
    );
    finding
        .work(format!(
            "provided = p − (d1 + d2)/2 = {} − ({} + {})/2 = {} {}",
            figure(p),
            figure(a),
            figure(b),
            figure(unit.of(pair.metal)),
            unit.name()
        ))
        .work(format!(
            "margin = {} − {} = {} {}",
            figure(unit.of(pair.metal)),
            figure(unit.of(required)),
            figure(unit.of(pair.metal - required)),
            unit.name()
        ))
}

/// The pair with the least margin over what is required of it; of several alike, the first.
fn worst_of<'a>(pairs: &[Pair<'a>], required: impl Fn(&Pair) -> Length) -> Pair<'a> {
    let mut worst = pairs[0];
    for pair in &pairs[1..] {
        let (margin, least) = (pair.metal - required(pair), worst.metal - required(&worst));
        if margin.shortfall(least).is_some() {
            worst = *pair;
        }
    }
    worst
}

/// Names the other pairs that are below, since each is metal that somebody has to decide about.
fn say_the_others(finding: Finding, pairs: &[Pair], required: impl Fn(&Pair) -> Length) -> Finding {
    if !finding.is_below() {
        return finding;
    }
    const NAMED: usize = 6;
    let mut below: Vec<&Pair> = pairs
        .iter()
        .filter(|p| p.metal.shortfall(required(p)).is_some())
        .collect();
    let margin = |pair: &&Pair| pair.metal - required(pair);
    below.sort_by(|a, b| margin(a).total_cmp(&margin(b)));
    let names: Vec<String> = below.iter().take(NAMED).map(|p| p.numbers()).collect();
    let rest = match below.len().saturating_sub(NAMED) {
        0 => String::new(),
        more => format!(" and {more} more"),
    };
    let why = match below.len() {
        1 => "the one pair below".to_string(),
        count => format!("{count} pairs below: {}{rest}", names.join(", ")),
    };
    finding.also(why)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// Worked sheet of G. Subhash Reddy for regulation 580: 63.5 mm hole, 20.6375 mm required.
    #[test]
    fn published_63_5_mm_hole() {
        assert_eq!(
            decimal(least_ligament(Length::mm(63.5)).to_mm(), 4),
            "20.6375"
        );
    }

    /// 1 27/32 = 1.84375; /8 = 0.23046875; + 0.5 = 0.73046875.
    #[test]
    fn by_hand_1_27_32_hole() {
        assert_eq!(
            decimal(least_ligament(Length::inches(1.84375)).to_inches(), 8),
            "0.73046875"
        );
    }

    /// 1 1/2: 0.1875 + 0.5; 1 5/8: 0.203125 + 0.5; 1 3/4: 0.21875 + 0.5; 2: 0.25 + 0.5; 2 1/4: 0.28125 + 0.5 in.
    #[test]
    fn by_hand_usual_holes() {
        let table = [
            (1.5, 0.6875),
            (1.625, 0.703125),
            (1.75, 0.71875),
            (2.0, 0.75),
            (2.25, 0.78125),
        ];
        for (hole, least) in table {
            assert!(
                least_ligament(Length::inches(hole)).same_as(Length::inches(least)),
                "{hole}"
            );
        }
    }

    /// 39/8 = 4.875; + 12.7 = 17.575, where the form with 12.5 mm asks 17.375: two tenths apart, so the form must be stated.
    #[test]
    fn by_hand_the_two_forms_are_two_tenths_apart() {
        let hole = Length::mm(39.0);
        assert!(least_ligament(hole).same_as(Length::mm(17.575)));
        let limit = LigamentLimit {
            share_of_hole: 0.125,
            plus: crate::units::Written::read("12.5 mm").expect("a length"),
            origin: "shop book".into(),
        };
        assert!(own_least_ligament(hole, &limit).same_as(Length::mm(17.375)));
    }
}
