//! Departures that somebody with the right to do so has agreed, put against the findings they concern.
//!
//! ```text
//! below  →  conceded, where a concession names the rule and, if it says `only`, the source or place
//! ```
//!
//! Source:  the spec, which records who agreed, in what letter and why.
//! Covers:  findings that are below; a concession that answers to none is said aloud, since it may be out of date.
//! Leaves:  whether the one who agreed may agree, which is for the works and the inspecting body.

use super::{Finding, Rule, Verdict, source};
use crate::design::Design;
use crate::spec::{Concession, Written};

/// The rule.
pub const RULE: Rule = Rule {
    name: "concession",
    asks: "departures agreed",
    source: &source::WORKS,
    run,
    page: include_str!("concession.rs"),
};

/// Nothing of its own: [`concede`] speaks once every other rule has spoken.
fn run(_: &Written, _: &Design) -> Vec<Finding> {
    Vec::new()
}

/// Puts each concession against the findings below that it concerns, and adds a note for one that concerns none.
pub(super) fn concede(findings: &mut Vec<Finding>, concessions: &[Concession]) {
    let mut idle = Vec::new();
    for concession in concessions {
        let mut used = false;
        for finding in findings.iter_mut().filter(|f| concerns(concession, f)) {
            match finding.verdict {
                Verdict::Below { by } => {
                    finding.verdict = Verdict::Conceded {
                        by,
                        concession: concession.clone(),
                    };
                    used = true;
                }
                // A second concession for the same finding is not an idle one.
                Verdict::Conceded { .. } => used = true,
                _ => {}
            }
        }
        if !used {
            idle.push(unused(concession));
        }
    }
    findings.extend(idle);
}

fn concerns(concession: &Concession, finding: &Finding) -> bool {
    concession.rule.trim() == finding.rule
        && concession.only.as_ref().is_none_or(|words| {
            finding.source.contains(words.trim()) || finding.place.contains(words.trim())
        })
}

fn unused(concession: &Concession) -> Finding {
    let only = concession.only.as_ref().map_or(String::new(), |words| {
        format!(" with the words \"{words}\"")
    });
    RULE.finding(concession.rule.clone()).because(format!(
        "nothing of {}{only} is below, so that the concession of {} ({}) concedes nothing: take it out, or look whether it is out of date",
        concession.rule, concession.agreed_by, concession.reference
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn concession(rule: &str, only: Option<&str>) -> Concession {
        Concession {
            rule: rule.into(),
            only: only.map(str::to_string),
            agreed_by: "A. Surveyor".into(),
            reference: "letter 12".into(),
            reason: "as the original".into(),
        }
    }

    fn below() -> Finding {
        super::super::tube_ligament::RULE
            .finding("T1–T2, row")
            .at_least(2.0, 1.0, "in")
    }

    #[test]
    fn holds_a_concession_keeps_the_shortfall_and_the_one_who_agreed() {
        let mut findings = vec![below(), below()];
        findings[1].place = "T3–T9, diagonal".into();
        concede(&mut findings, &[concession("tube_ligament", Some("T1–T2"))]);
        let Verdict::Conceded { by, concession } = &findings[0].verdict else {
            panic!("not conceded")
        };
        assert_eq!((*by, concession.agreed_by.as_str()), (1.0, "A. Surveyor"));
        assert!(findings[1].is_below());
        assert_eq!(findings.len(), 2);
    }

    #[test]
    fn holds_a_concession_of_nothing_is_said_aloud() {
        let mut findings = vec![below()];
        concede(&mut findings, &[concession("end_seam", None)]);
        assert_eq!(findings.len(), 2);
        assert_eq!(findings[1].verdict.name(), "note");
        assert!(findings[1].why.starts_with("nothing of end_seam is below"));
    }
}
