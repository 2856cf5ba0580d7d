//! Every check again on the plate as it was made, and which hole made otherwise changes what of them.

use std::collections::{BTreeMap, BTreeSet};

use super::measure::Unit;
use super::rivet_joint::plate_as_made;
use super::verdict_changes::{Pair, paired};
use super::{Finding, Verdict, VerdictChange, run_checks, verdict_changes};
use crate::design::{Design, FilledRecord, HoleMade, as_made};
use crate::spec::Spec;

/// The checks of a plate as it was made.
#[derive(Clone, Debug)]
pub struct CheckedAgain {
    /// The plate as it was made.
    pub plate: Design,
    /// What the rules find on it.
    pub findings: Vec<Finding>,
    /// The same of the plate as designed.
    pub as_designed: Vec<Finding>,
    /// Findings whose verdict is another one than as designed.
    pub changed: Vec<VerdictChange>,
}

/// What a hole made otherwise changes in what is judged.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Effect {
    /// Rule and place: "tube_ligament, T1–T2, column".
    pub of: String,
    /// What came of it: "below, was meets".
    pub change: String,
    /// Whether it is below as made.
    pub is_below: bool,
}

/// Effects in a line, rule and place once where several stand there: two sources may ask for one ligament.
pub fn effect_words(effects: &[Effect]) -> String {
    let mut words: Vec<String> = Vec::new();
    for (i, effect) in effects.iter().enumerate() {
        words.push(match i > 0 && effects[i - 1].of == effect.of {
            true => effect.change.clone(),
            false => format!("{}: {}", effect.of, effect.change),
        });
    }
    words.join("; ")
}

/// Effects by the index of the hole; none for a hole that changes nothing.
pub type Effects = BTreeMap<usize, Vec<Effect>>;

/// Runs every check on the plate as designed and as made. A note on the riveted joint is added where the largest rivet hole that was
/// measured is not the designed one: the joint itself is judged at the designed hole.
pub fn check_again(spec: &Spec, design: &Design, record: &FilledRecord) -> CheckedAgain {
    let as_designed = run_checks(spec, &as_made(&spec.written, design, &[]));
    let plate = as_made(&spec.written, design, &record.holes);
    let mut findings = run_checks(spec, &plate);
    let changed = verdict_changes(&as_designed, &findings);
    let unit = Unit::of_job(&spec.written);
    if let (Some(line), Some(largest)) = (&design.rivets, record.largest_rivet())
        && unit.shows(largest.made.value() - largest.designed.value())
    {
        findings.push(plate_as_made(line, largest));
    }
    CheckedAgain {
        plate,
        findings,
        as_designed,
        changed,
    }
}

/// What each hole made otherwise changes in what is judged: verdicts that are not those of the design, and shortfalls that have grown.
/// A note that comes or goes is none: notes judge nothing.
///
/// A rule names the worst pair alone, so the holes that it names are put back as designed and the checks run again, until nothing that
/// is changed names a hole made otherwise. Of holes without an entry it is known that all of them together change nothing that names
/// one of them, once those with an entry are put right.
pub fn effects(
    spec: &Spec,
    design: &Design,
    record: &FilledRecord,
    checked: &CheckedAgain,
) -> Effects {
    let mut found = Effects::new();
    let mut left: Vec<HoleMade> = record.holes.clone();
    let mut findings = checked.findings.clone();
    loop {
        let mut named = BTreeSet::new();
        for (rule, pair) in paired(&checked.as_designed, &findings) {
            let Some((place, effect)) = effect(rule, pair) else {
                continue;
            };
            for measured in &left {
                if names(place, &design.holes[measured.hole].id) {
                    named.insert(measured.hole);
                    let of_hole = found.entry(measured.hole).or_default();
                    if !of_hole.contains(&effect) {
                        of_hole.push(effect.clone());
                    }
                }
            }
        }
        if named.is_empty() {
            return found;
        }
        left.retain(|measured| !named.contains(&measured.hole));
        findings = run_checks(spec, &as_made(&spec.written, design, &left));
    }
}

/// The place of a finding that is not what it was, and what came of it.
fn effect<'a>(rule: &'static str, (old, new): Pair<'a>) -> Option<(&'a str, Effect)> {
    let place = &new.or(old)?.place;
    let verdict = |f: Option<&Finding>| f.map_or("no finding", |f| f.verdict.name());
    let said = |change: String| Effect {
        of: format!("{rule}, {place}"),
        change,
        is_below: new.is_some_and(|f| matches!(f.verdict, Verdict::Below { .. })),
    };
    if verdict(old) == verdict(new) {
        let grown = shortfall(new?)? > shortfall(old?)?;
        let words = format!("{}, by more than designed", verdict(new));
        return grown.then(|| (place.as_str(), said(words)));
    }
    let judges = |f: Option<&Finding>| f.is_some_and(|f| !matches!(f.verdict, Verdict::Note));
    let words = format!("{}, was {}", verdict(new), verdict(old));
    (judges(old) || judges(new)).then(|| (place.as_str(), said(words)))
}

fn shortfall(finding: &Finding) -> Option<f64> {
    match finding.verdict {
        Verdict::Below { by } | Verdict::Conceded { by, .. } => Some(by),
        Verdict::Meets | Verdict::NotJudged { .. } | Verdict::Note => None,
    }
}

/// Whether the place of a finding names a hole.
fn names(place: &str, id: &str) -> bool {
    place
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| word == id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{RivetHoleMade, set_out};
    use crate::spec::read_spec_file;
    use crate::units::Size;

    /// Column pitch 2 19/32 in, hole 1 27/32: 1 29/32 in T1, T20 and T40, each beside a hole as designed, leaves 2.59375 − 1.875 =
    /// 0.71875 in, and 1.90625/8 + 0.5 = 0.73828 is asked. 1 7/8 in in T60 leaves 0.73438 and is asked 0.73438: nothing changes. The
    /// rule names one pair alone; the other holes are found all the same.
    #[test]
    fn by_hand_every_hole_that_brings_metal_below_is_found() {
        let path = std::path::Path::new("specs/marl-hen-smokebox.yaml");
        let spec = read_spec_file(path).expect("it reads");
        let design = set_out(&spec).expect("it sets out");
        let made = |id: &str, size: &str| HoleMade {
            hole: (0..design.holes.len())
                .find(|&hole| design.holes[hole].id == id)
                .expect("a number"),
            sized: true,
            first_way: Size::read(size).expect("a size"),
            across: None,
            at: None,
        };
        let holes: Vec<HoleMade> = [
            ("T1", "1 29/32 in"),
            ("T20", "1 29/32 in"),
            ("T40", "1 29/32 in"),
            ("T60", "1 7/8 in"),
        ]
        .map(|(id, size)| made(id, size))
        .to_vec();
        let record = FilledRecord {
            holes: holes.clone(),
            ..FilledRecord::default()
        };
        let checked = check_again(&spec, &design, &record);
        let found = effects(&spec, &design, &record, &checked);
        let indices: Vec<usize> = found.keys().copied().collect();
        assert_eq!(indices, [holes[0].hole, holes[1].hole, holes[2].hole]);
        for effects in found.values() {
            let below = |e: &Effect| e.of.starts_with("tube_ligament, ") && e.is_below;
            assert!(effects.iter().any(below), "{effects:?}");
        }
    }

    /// 2 in asked of the ligament T1–T2, and so much provided.
    fn of_two_inches(provided: f64) -> Finding {
        super::super::tube_ligament::RULE
            .finding("T1–T2, row")
            .at_least(2.0, provided, "in")
    }

    fn change_of(old: &Finding, new: &Finding) -> Option<String> {
        let (place, effect) = effect("tube_ligament", (Some(old), Some(new)))?;
        assert_eq!(place, "T1–T2, row");
        assert_eq!(effect.of, "tube_ligament, T1–T2, row");
        assert_eq!(effect.is_below, new.is_below());
        Some(effect.change)
    }

    /// 2 in asked: 1 in is 1 short, 0.5 in is 1.5 short, 3 in has enough. A shortfall as large as it was, or less, changes nothing.
    #[test]
    fn by_hand_a_shortfall_that_grows_is_an_effect() {
        let [half, one, three] = [0.5, 1.0, 3.0].map(of_two_inches);
        let below = "below, by more than designed";
        assert_eq!(change_of(&one, &half).as_deref(), Some(below));
        assert_eq!(change_of(&half, &one), None);
        assert_eq!(change_of(&one, &one), None);
        assert_eq!(change_of(&three, &three), None);
        assert_eq!(change_of(&three, &one).as_deref(), Some("below, was meets"));
        assert_eq!(change_of(&one, &three).as_deref(), Some("meets, was below"));
        let note = super::super::tube_ligament::RULE.finding("T1–T2, row");
        assert_eq!(change_of(&note, &one).as_deref(), Some("below, was note"));
        assert_eq!(change_of(&one, &note).as_deref(), Some("note, was below"));
        assert_eq!(change_of(&note, &note), None);
    }

    /// The joint is spoken of again where its largest hole is not the designed one, 15/16 in, and only there.
    #[test]
    fn by_hand_the_joint_is_spoken_of_where_a_rivet_hole_differs() {
        let path = std::path::Path::new("specs/marl-hen-smokebox.yaml");
        let spec = read_spec_file(path).expect("it reads");
        let design = set_out(&spec).expect("it sets out");
        for (made, one_more) in [("15/16 in", 0), ("1 in", 1)] {
            let record = FilledRecord {
                rivets: vec![RivetHoleMade {
                    id: "R2".into(),
                    designed: Size::read("15/16 in").expect("a size"),
                    made: Size::read(made).expect("a size"),
                    oval_by: None,
                }],
                ..FilledRecord::default()
            };
            let checked = check_again(&spec, &design, &record);
            let more = checked.findings.len() - checked.as_designed.len();
            assert_eq!(more, one_more, "{made}");
        }
    }

    #[test]
    fn holds_a_place_stands_once_before_what_came_of_it() {
        let effect = |of: &str, change: &str| Effect {
            of: of.into(),
            change: change.into(),
            is_below: true,
        };
        let effects = [
            effect("ligament, T1–T2", "below, was meets"),
            effect("ligament, T1–T2", "below, by more than designed"),
            effect("land, T1", "below, was meets"),
        ];
        assert_eq!(
            effect_words(&effects),
            "ligament, T1–T2: below, was meets; below, by more than designed; land, T1: below, was meets"
        );
    }

    #[test]
    fn holds_a_place_names_whole_numbers_alone() {
        assert!(names("T1–T2, column", "T2"));
        assert!(!names("T12–T19, diagonal", "T1"));
    }
}
