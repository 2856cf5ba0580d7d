//! Which rules judge this job: only those that the spec names.
//!
//! ```text
//! a finding judges if `judged_by` names its rule, its rule set or its source, or the limit is the works' own
//! ```
//!
//! Source:  the spec; nobody else chooses the rules of a job.
//! Covers:  every finding of the register; a name that judges nothing of the plate, which is said aloud; strength that nobody can
//!          compare because the spec gives no pressure, which is counted whoever judges; the words of `judged_by` and
//!          `concessions`, with the nearest known word for a wrong one.
//! Leaves:  whether the rules named are the right ones, which the works' engineer and the inspecting body decide.

use super::measure::shown_apart;
use super::{Finding, REGISTER, Rule, Standing, Verdict, source};
use crate::design::Design;
use crate::spec::{Fault, Spec, Written};

/// The rule.
pub const RULE: Rule = Rule {
    name: "judged_by",
    asks: "rules that judge this job",
    source: &source::WORKS,
    run,
    page: include_str!("judged_by.rs"),
};

fn run(written: &Written, _: &Design) -> Vec<Finding> {
    if written.judged_by.is_empty() {
        let finding = RULE.finding("the job").not_judged(
            "no rule judges this job, so that published rules are notes only: name the rules or rule sets under `judged_by`",
        );
        return vec![finding];
    }
    Vec::new()
}

/// Rules that put the pressure on something: on stays, on flats, on the rivets of the flange.
const STRENGTH: [&str; 11] = [
    "largest_circle",
    "area_above_tubes",
    "stay_stress",
    "longitudinal_stay",
    "screwed_stay",
    "stay_tube",
    "diagonal_stay",
    "stayed_surface",
    "stayed_surface_rectangular",
    "roof_girders",
    "end_load",
];

/// Why strength is not judged where the spec gives no pressure; what the rule itself misses follows.
const NO_PRESSURE: &str = "pressure not given: `working_pressure`";

/// Whether a finding stays not judged, whichever rules the job names: a plate drawn without its pressure must not read as though
/// nothing had been left open on the strength of it.
pub(super) fn wants_pressure(finding: &Finding, written: &Written) -> bool {
    written.working_pressure.is_none()
        && STRENGTH.contains(&finding.rule)
        && matches!(finding.verdict, Verdict::NotJudged { .. })
}

/// The finding with the missing pressure as its first reason, and said once.
pub(super) fn for_want_of_pressure(finding: &mut Finding) {
    let others = finding
        .why
        .split("; ")
        .filter(|said| !said.is_empty() && *said != "`working_pressure` is not given");
    let reasons: Vec<&str> = std::iter::once(NO_PRESSURE).chain(others).collect();
    let why = reasons.join("; ");
    finding.verdict = Verdict::NotJudged { why: why.clone() };
    finding.why = why;
}

/// Turns what a rule says into a note, unless the spec lets the rule judge.
pub(super) fn note_unless_named(finding: &mut Finding, judged_by: &[String]) {
    if finding.set == source::WORKS_SET || is_named(finding, judged_by) {
        return;
    }
    let said = match &finding.verdict {
        Verdict::Note => return,
        Verdict::Meets => "not among this job's rules; the plate has what it asks".to_string(),
        Verdict::Below { by } => {
            let short = if finding.at_most {
                "more than it allows"
            } else {
                "less than it asks"
            };
            // As many places as the figures beside it, and more where it would seem to be nothing.
            let (_, by) = shown_apart(0.0, *by, finding.unit);
            format!("not among this job's rules; the plate has {short}, by {by}")
        }
        Verdict::NotJudged { .. } => "not among this job's rules, and not compared".to_string(),
        Verdict::Conceded { .. } => unreachable!("concessions are applied last"),
    };
    *finding = finding.clone().also(said);
    finding.verdict = Verdict::Note;
}

/// What `judged_by` names without its judging anything of this plate: said aloud, or a plate would seem to be judged by it.
pub(super) fn idle_words(findings: &[Finding], judged_by: &[String]) -> Vec<Finding> {
    let judges = |word: &String| {
        let named = |f: &&Finding| is_named(f, std::slice::from_ref(word));
        findings
            .iter()
            .filter(named)
            .any(|f| !matches!(f.verdict, Verdict::Note))
    };
    judged_by
        .iter()
        .filter(|word| !judges(word))
        .map(|word| {
            RULE.finding(word.clone()).not_judged(format!(
                "`judged_by` names {word}, and nothing of this plate is judged by it"
            ))
        })
        .collect()
}

fn is_named(finding: &Finding, judged_by: &[String]) -> bool {
    judged_by.iter().any(|word| {
        let word = word.trim();
        word.eq_ignore_ascii_case(finding.rule)
            || (!finding.set.is_empty() && word.eq_ignore_ascii_case(finding.set))
            || word.eq_ignore_ascii_case(&finding.source)
    })
}

/// Every word that `judged_by` may hold: rule names, rule sets and sources, each once.
pub fn known_words() -> Vec<&'static str> {
    let mut words: Vec<&'static str> = Vec::new();
    let names = REGISTER.iter().map(|rule| rule.name);
    let published = source::ALL
        .iter()
        .filter(|s| matches!(s.standing, Standing::Read | Standing::Restated));
    let sets = published.flat_map(|s| [s.set, s.cite]);
    for word in names.chain(sets) {
        if !word.is_empty() && !words.contains(&word) {
            words.push(word);
        }
    }
    words
}

/// The faults in `judged_by` and `concessions`: words that name no rule and no rule set, each with the nearest that does.
pub fn check_names(spec: &Spec) -> Vec<Fault> {
    let written = &spec.written;
    let mut faults = Vec::new();
    for (i, word) in written.judged_by.iter().enumerate() {
        let words = known_words();
        if !words
            .iter()
            .any(|known| known.eq_ignore_ascii_case(word.trim()))
        {
            faults.push(unknown(
                format!("judged_by[{i}]"),
                word,
                "rule or rule set",
                &words,
            ));
        }
    }
    for (i, concession) in written.concessions.iter().enumerate() {
        let names: Vec<&'static str> = REGISTER.iter().map(|rule| rule.name).collect();
        if !names
            .iter()
            .any(|name| name.eq_ignore_ascii_case(concession.rule.trim()))
        {
            faults.push(unknown(
                format!("concessions[{i}].rule"),
                &concession.rule,
                "rule",
                &names,
            ));
        }
    }
    faults
}

fn unknown(path: String, word: &str, kind: &str, known: &[&'static str]) -> Fault {
    Fault::new(
        path,
        format!("`{word}` names no {kind} that this program knows"),
        format!(
            "the nearest is `{}`; `centrepop explain` lists them all",
            nearest(word, known)
        ),
    )
}

/// The known word that is most like this one; of several alike, the first in the alphabet.
pub(super) fn nearest(word: &str, known: &[&'static str]) -> &'static str {
    let likeness = |known: &str| {
        strsim::normalized_damerau_levenshtein(&known.to_lowercase(), &word.trim().to_lowercase())
    };
    known
        .iter()
        .copied()
        .max_by(|a, b| likeness(a).total_cmp(&likeness(b)).then_with(|| b.cmp(a)))
        .expect("the register is never empty")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sample() -> Finding {
        super::super::tube_ligament::RULE
            .finding("T1–T2")
            .at_least(2.0, 1.0, "in")
    }

    #[test]
    fn holds_only_what_is_named_judges() {
        for word in [
            "tube_ligament",
            "Indian Boiler Regulations 1950",
            "indian boiler regulations 1950, regulation 580",
        ] {
            let mut finding = sample();
            note_unless_named(&mut finding, &[word.to_string()]);
            assert!(finding.is_below(), "{word}");
        }
        let mut finding = sample();
        note_unless_named(&mut finding, &["TRD 305".to_string()]);
        assert_eq!(finding.verdict.name(), "note");
        assert_eq!(
            finding.why,
            "not among this job's rules; the plate has less than it asks, by 1.0000 in"
        );
    }

    #[test]
    fn holds_a_limit_of_the_works_always_judges() {
        let mut finding = super::super::tube_ligament::RULE
            .finding_of_works("shop book", "T1–T2")
            .at_least(2.0, 1.0, "in");
        note_unless_named(&mut finding, &[]);
        assert!(finding.is_below());
    }

    #[test]
    fn holds_every_known_word_stands_once() {
        let words = known_words();
        let once: std::collections::BTreeSet<&str> = words.iter().copied().collect();
        assert_eq!(once.len(), words.len());
        assert!(!once.contains("") && once.contains("49 CFR Part 230"));
        assert!(!once.contains("geometry") && !once.contains("works' own limit"));
    }

    #[test]
    fn refuses_an_unknown_word_with_the_nearest() {
        let fault = unknown(
            "judged_by[0]".into(),
            "tube_ligaments",
            "rule or rule set",
            &known_words(),
        );
        assert_eq!(
            fault.fact,
            "`tube_ligaments` names no rule or rule set that this program knows"
        );
        assert_eq!(
            fault.remedy,
            "the nearest is `tube_ligament`; `centrepop explain` lists them all"
        );
        let fault = unknown(
            "judged_by[1]".into(),
            "Indian Boiler Rules 1950",
            "rule or rule set",
            &known_words(),
        );
        assert!(
            fault.remedy.contains("`Indian Boiler Regulations 1950`"),
            "{}",
            fault.remedy
        );
    }
}
