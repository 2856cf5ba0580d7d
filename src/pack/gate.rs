//! The gate on cut files: a plate with anything judged below its rule, and not conceded, is not sent to be cut.

use std::fmt;

use super::finding_words::{figures, why};
use crate::checks::{Finding, Verdict};

/// How many findings came to each verdict.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// As much as their rule asks.
    pub meets: usize,
    /// Less than their rule asks.
    pub below: usize,
    /// Less, and agreed to.
    pub conceded: usize,
    /// Without a figure or a rule to judge them by.
    pub not_judged: usize,
    /// Worth saying.
    pub notes: usize,
}

impl Counts {
    /// Counts the findings.
    pub fn of(findings: &[Finding]) -> Counts {
        let mut counts = Counts::default();
        for finding in findings {
            *match finding.verdict {
                Verdict::Meets => &mut counts.meets,
                Verdict::Below { .. } => &mut counts.below,
                Verdict::Conceded { .. } => &mut counts.conceded,
                Verdict::NotJudged { .. } => &mut counts.not_judged,
                Verdict::Note => &mut counts.notes,
            } += 1;
        }
        counts
    }
}

/// One line for the screen and the page; what is not judged stands last, so that it is read.
impl fmt::Display for Counts {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (meet, note) = (
            if self.meets == 1 { "meets" } else { "meet" },
            if self.notes == 1 { "note" } else { "notes" },
        );
        write!(
            f,
            "{} {meet}, {} below, {} conceded, {} {note}, {} not judged",
            self.meets, self.below, self.conceded, self.notes, self.not_judged
        )
    }
}

/// Whether cut files may leave the house.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Gate {
    /// Nothing judged is below its rule, or all of it is conceded.
    Open,
    /// Something is; one line for each such finding.
    Shut(Vec<String>),
}

impl Gate {
    /// Looks through the findings.
    pub fn of(findings: &[Finding]) -> Gate {
        let reasons: Vec<String> = findings
            .iter()
            .filter_map(|finding| match finding.verdict {
                Verdict::Below { .. } => Some(reason(finding)),
                _ => None,
            })
            .collect();
        if reasons.is_empty() {
            Gate::Open
        } else {
            Gate::Shut(reasons)
        }
    }

    /// Whether it is shut.
    pub fn is_shut(&self) -> bool {
        matches!(self, Gate::Shut(_))
    }
}

/// "tube_ligament at T1–T2, row: 17.500 mm, at least 17.575 mm by …".
fn reason(finding: &Finding) -> String {
    let place = match finding.place.as_str() {
        "" => String::new(),
        place => format!(" at {place}"),
    };
    let (required, provided) = figures(finding);
    let why = match why(finding) {
        words if words.is_empty() => words,
        words => format!("; {words}"),
    };
    format!(
        "{}{place}: {provided}, {required} by {}{why}",
        finding.rule, finding.source
    )
}
