//! Tables of the design check: what was judged, what was not and why, notes, and the working of what governs.

use super::Hang;
use super::key_words::{Keys, in_words};
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

/// What is required, with its bound: "1.0000 in", "at most 9,000 psi", "factor 4.000", "none".
fn required_words(f: &Finding, required: Option<String>) -> String {
    match (required, f.at_most) {
        (Some(_), true) if f.required == Some(0.0) => "none".into(),
        (Some(words), true) => format!("at most {words}"),
        (Some(words), false) if f.unit.is_empty() => format!("factor {words}"),
        (words, _) => figure(words),
    }
}

/// A note with its figures before what is said of them. A figure that the sentence tells itself, and a share that it tells in other
/// words, is not told twice.
fn note_words(f: &Finding, says: &str) -> String {
    let read = f.as_read();
    match (read.required, read.provided) {
        (Some(_), Some(provided)) if f.at_most && f.required == Some(0.0) => {
            format!("none is allowed, has {provided}; {says}")
        }
        (Some(required), Some(provided)) => {
            let bound = match (f.at_most, f.unit.is_empty()) {
                (true, _) => "at most",
                (false, true) => "a factor of at least",
                (false, false) => "at least",
            };
            format!("{bound} {required}, has {provided}; {says}")
        }
        (None, Some(provided)) if !f.unit.is_empty() && !tells(says, &provided) => {
            format!("{provided}: {says}")
        }
        (None, Some(_)) | (Some(_), None) | (None, None) => says.into(),
    }
}

/// Whether a sentence tells a figure already, to as many places or to one fewer.
fn tells(says: &str, figure: &str) -> bool {
    let digits = figure.split(' ').next().unwrap_or(figure);
    let whole = digits.split('.').next().unwrap_or(digits);
    says.split(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '−')))
        .map(|number| number.trim_end_matches(['.', ',']))
        .any(|number| number.split('.').next() == Some(whole) && !whole.is_empty() && whole != "0")
}

/// Every judged finding.
pub fn findings_table(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "FINDINGS",
        &[
            ("WHAT IS ASKED", 60.0, Hang::Start),
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
        let read = f.as_read();
        table.rows.push(vec![
            f.asks.to_string(),
            f.source.clone(),
            in_words(set, &f.place, Keys::LeftOut),
            required_words(f, read.required),
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
            ("WHAT WAS ASKED", 42.0, Hang::Start),
            ("SOURCE", 42.0, Hang::Start),
            ("WHERE", 36.0, Hang::Start),
            ("WHY, AND WHAT WOULD SETTLE IT", 130.0, Hang::Start),
        ],
    );
    for f in set.findings {
        if let Verdict::NotJudged { why } = &f.verdict {
            table.rows.push(vec![
                f.asks.to_string(),
                f.source.clone(),
                in_words(set, &f.place, Keys::LeftOut),
                // The drawing office has to know what to write: here alone the spec's own key stands behind the words.
                in_words(set, if f.why.is_empty() { why } else { &f.why }, Keys::Told),
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
            ("ON WHAT", 40.0, Hang::Start),
            ("SOURCE", 46.0, Hang::Start),
            ("WHERE", 24.0, Hang::Start),
            ("NOTE", 74.0, Hang::Start),
        ],
    );
    for f in set
        .findings
        .iter()
        .filter(|f| matches!(f.verdict, Verdict::Note))
    {
        table.rows.push(vec![
            f.asks.to_string(),
            f.source.clone(),
            in_words(set, &f.place, Keys::LeftOut),
            note_words(f, &in_words(set, &f.why, Keys::LeftOut)),
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
            title: format!("WORKING: {}", f.asks),
            notes: std::iter::once(format!(
                "{}; {}",
                in_words(set, &f.place, Keys::LeftOut),
                f.source
            ))
            .chain(
                f.working
                    .iter()
                    .map(|line| in_words(set, line, Keys::LeftOut)),
            )
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
