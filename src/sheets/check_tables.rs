//! Tables of the design check: what was judged, what was not and why, notes, and the working of what governs.

use super::Hang;
use super::letter_size::TABLE;
use super::notes::Notes;
use super::set::Set;
use super::table::Table;
use crate::checks::{Finding, Verdict, legend};

/// A figure, or a dash where there is none.
fn figure(words: Option<String>) -> String {
    words.unwrap_or("–".into())
}

/// Whether a finding was judged.
fn is_judged(f: &Finding) -> bool {
    match f.verdict {
        Verdict::Meets | Verdict::Below { .. } | Verdict::Conceded { .. } => true,
        Verdict::NotJudged { .. } | Verdict::Note => false,
    }
}

/// Every judged finding.
pub fn findings_table(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "FINDINGS",
        &[
            ("WHAT IS ASKED (RULE)", 62.0, Hang::Start),
            ("SOURCE", 50.0, Hang::Start),
            ("WHERE", 38.0, Hang::Start),
            ("REQUIRED", 26.0, Hang::End),
            ("PROVIDED", 27.0, Hang::End),
            ("MARGIN", 29.0, Hang::End),
            ("VERDICT", 18.0, Hang::Start),
        ],
    );
    for f in set.findings.iter().filter(|f| is_judged(f)) {
        let verdict = match &f.verdict {
            Verdict::Below { .. } => "BELOW".to_string(),
            other => other.name().to_string(),
        };
        if !matches!(f.verdict, Verdict::Meets) {
            table.loud.push(table.rows.len());
        }
        let most = if f.at_most { "at most " } else { "" };
        let read = f.as_read();
        table.rows.push(vec![
            format!("{} ({})", f.asks, f.rule),
            f.source.clone(),
            f.place.clone(),
            format!("{most}{}", figure(read.required)),
            figure(read.provided),
            figure(read.margin),
            verdict,
        ]);
    }
    table
}

/// What was not judged, and why.
pub fn not_judged_table(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "NOT JUDGED, AND WHY",
        &[
            ("WHAT WAS ASKED (RULE)", 62.0, Hang::Start),
            ("SOURCE", 50.0, Hang::Start),
            ("WHERE", 40.0, Hang::Start),
            ("WHY, AND WHAT WOULD SETTLE IT", 98.0, Hang::Start),
        ],
    );
    for f in set.findings {
        if let Verdict::NotJudged { why } = &f.verdict {
            table.rows.push(vec![
                format!("{} ({})", f.asks, f.rule),
                f.source.clone(),
                f.place.clone(),
                if f.why.is_empty() {
                    why.clone()
                } else {
                    f.why.clone()
                },
            ]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}

/// Notes: worth saying, judging nothing.
pub fn notes_table(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "NOTES: THEY JUDGE NOTHING",
        &[
            ("ON WHAT (RULE)", 56.0, Hang::Start),
            ("SOURCE", 38.0, Hang::Start),
            ("WHERE", 27.0, Hang::Start),
            ("NOTE", 63.0, Hang::Start),
        ],
    );
    for f in set
        .findings
        .iter()
        .filter(|f| matches!(f.verdict, Verdict::Note))
    {
        let read = f.as_read();
        let figures = match (read.required, read.provided) {
            (Some(required), Some(provided)) => {
                let word = if f.at_most { "at most" } else { "at least" };
                format!("{word} {required}, has {provided}; ")
            }
            _ => String::new(),
        };
        table.rows.push(vec![
            format!("{} ({})", f.asks, f.rule),
            f.source.clone(),
            f.place.clone(),
            format!("{figures}{}", f.why),
        ]);
    }
    (!table.rows.is_empty()).then_some(table)
}

/// The working of the finding that lies nearest its limit under each judged rule, and of everything that is not met.
pub fn working(set: &Set<'_>) -> Vec<Notes> {
    let mut governing: Vec<&Finding> = Vec::new();
    let share = |f: &Finding| match (f.required, f.provided) {
        (Some(r), Some(p)) if f.at_most => r / p,
        (Some(r), Some(p)) => p / r,
        _ => f64::INFINITY,
    };
    for f in set
        .findings
        .iter()
        .filter(|f| is_judged(f) && !f.working.is_empty())
    {
        match governing
            .iter_mut()
            // A rule that asks for a size and for a pressure is two sums.
            .find(|g| (g.rule, &g.source, g.unit) == (f.rule, &f.source, f.unit))
        {
            Some(g) if share(f) < share(g) => *g = f,
            Some(_) => {}
            None => governing.push(f),
        }
    }
    governing
        .into_iter()
        .map(|f| Notes {
            title: format!("WORKING: {}, {}", f.rule, f.place),
            notes: std::iter::once(f.source.clone())
                .chain(f.working.iter().cloned())
                .collect(),
            height: TABLE,
            numbered: false,
        })
        .collect()
}

/// What each verdict says.
pub fn verdict_legend() -> Notes {
    let words = legend()
        .verdicts
        .iter()
        .map(|(v, says)| format!("{v}: {says}"));
    Notes {
        title: "VERDICTS".into(),
        notes: words.collect(),
        height: TABLE,
        numbered: false,
    }
}

/// What only people can judge, and what no rule here covers.
pub fn not_covered() -> Vec<Notes> {
    let list = |title: &str, words: &[&str]| Notes {
        title: title.into(),
        notes: words.iter().map(|w| (*w).to_string()).collect(),
        height: TABLE,
        numbered: false,
    };
    let l = legend();
    vec![
        list("FOR THE INSPECTOR", l.for_the_inspector),
        list("NOT COVERED BY ANY RULE HERE", l.not_covered),
    ]
}
