//! Departures that somebody with the right to do so has agreed, put against the findings they concern.
//!
//! ```text
//! below  →  conceded, where a concession names the rule; if it says `only`, the source or place; if it says `up_to`, no more than that
//! ```
//!
//! Source:  the spec, which records who agreed, in what letter and why.
//! Covers:  findings that are below; a concession that answers to none is said aloud, since it may be out of date, and so is one that
//!          answers to several, since it may be wider than what was agreed.
//! Leaves:  whether the one who agreed may agree, which is for the works and the inspecting body.

use super::{Finding, Rule, Verdict, source};
use crate::design::Design;
use crate::spec::{Concession, Written};
use crate::units::Length;

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

/// Puts each concession against the findings below that it concerns, and says aloud which concern none or several.
pub(super) fn concede(findings: &mut Vec<Finding>, concessions: &[Concession]) {
    let mut notes = Vec::new();
    for concession in concessions {
        let mut conceded = Vec::new();
        for finding in findings.iter_mut().filter(|f| concerns(concession, f)) {
            match finding.verdict {
                Verdict::Below { by } => {
                    finding.verdict = Verdict::Conceded {
                        by,
                        concession: concession.clone(),
                    };
                    finding.why = format!("{}{}", opening(&finding.why), agreed(concession));
                    conceded.push(finding.place.clone());
                }
                // A second concession for the same finding is not an idle one.
                Verdict::Conceded { .. } => conceded.push(finding.place.clone()),
                Verdict::Meets | Verdict::NotJudged { .. } | Verdict::Note => {}
            }
        }
        match conceded.as_slice() {
            [] => notes.push(idle(concession)),
            [_] => {}
            several => notes.push(wide(concession, several)),
        }
    }
    findings.extend(notes);
}

/// Who agreed to it, and in which letter.
fn agreed(concession: &Concession) -> String {
    format!(
        "agreed by {}, {}",
        concession.agreed_by, concession.reference
    )
}

/// What was said before, with a stop behind it where there is anything.
fn opening(why: &str) -> String {
    if why.is_empty() {
        String::new()
    } else {
        format!("{why}; ")
    }
}

fn concerns(concession: &Concession, finding: &Finding) -> bool {
    let holds = |words: &String| {
        finding.source.contains(words.trim()) || finding.place.contains(words.trim())
    };
    concession.rule.trim().eq_ignore_ascii_case(finding.rule)
        && concession.only.as_ref().is_none_or(holds)
        && within(concession, finding)
}

/// Whether the shortfall is no more than was agreed. A limit that is a length agrees to nothing in another unit.
fn within(concession: &Concession, finding: &Finding) -> bool {
    let (Some(up_to), Verdict::Below { by }) = (&concession.up_to, &finding.verdict) else {
        return true;
    };
    let by = match finding.unit {
        "in" => Length::inches(*by),
        "mm" => Length::mm(*by),
        _ => return false,
    };
    up_to.value().shortfall(by).is_none()
}

fn idle(concession: &Concession) -> Finding {
    let only = concession.only.as_ref().map_or(String::new(), |words| {
        format!(" with the words \"{words}\"")
    });
    let up_to = concession.up_to.as_ref().map_or(String::new(), |size| {
        format!(" by {} or less", size.as_written())
    });
    RULE.finding(concession.rule.clone()).because(format!(
        "nothing of {}{only} is below{up_to}, so that the concession of {} ({}) concedes nothing: take it out, or look whether it is out of date",
        concession.rule, concession.agreed_by, concession.reference
    ))
}

fn wide(concession: &Concession, places: &[String]) -> Finding {
    RULE.finding(concession.rule.clone()).because(format!(
        "the concession of {} ({}) concedes {} findings, {}: `only` and `up_to` would narrow it to what was agreed",
        concession.agreed_by,
        concession.reference,
        places.len(),
        places.join(" and ")
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn concession(rule: &str, only: Option<&str>) -> Concession {
        Concession {
            rule: rule.into(),
            only: only.map(str::to_string),
            up_to: None,
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

    /// The sample is 1 in below: agreed up to 1 in it is conceded, up to 25 mm it is not, since that is 0.4 mm less.
    #[test]
    fn by_hand_a_concession_agrees_to_so_much() {
        for (up_to, verdict) in [
            ("1 in", "conceded"),
            ("25.4 mm", "conceded"),
            ("25 mm", "below"),
        ] {
            let mut findings = vec![below()];
            let mut agreed = concession("tube_ligament", None);
            agreed.up_to = Some(crate::units::Written::read(up_to).expect("a length"));
            concede(&mut findings, &[agreed]);
            assert_eq!(findings[0].verdict.name(), verdict, "{up_to}");
        }
    }

    #[test]
    fn holds_a_wide_concession_is_said_aloud() {
        let mut findings = vec![below(), below()];
        concede(&mut findings, &[concession("tube_ligament", None)]);
        assert!(
            findings[2].why.contains("concedes 2 findings"),
            "{}",
            findings[2].why
        );
    }
}
