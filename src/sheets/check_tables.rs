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
    // A fraction is one number, and no whole one: "1/16" does not tell 1.000.
    says.split(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '−' | '/')))
        .filter(|number| !number.contains('/'))
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
            in_words(set, &f.source, Keys::LeftOut),
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
                in_words(set, &f.source, Keys::LeftOut),
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
            in_words(set, &f.source, Keys::LeftOut),
            in_words(set, &f.place, Keys::LeftOut),
            note_words(f, &in_words(set, &f.why, Keys::LeftOut)),
        ]);
    }
    (!table.rows.is_empty()).then_some(table)
}

/// Whether a finding lies nearer its limit than another: by the share of what is required; by what is over where nothing is required
/// of one of them, since every figure is beyond all shares of nothing.
fn is_nearer(f: &Finding, other: &Finding) -> bool {
    let share = |f: &Finding| match (f.required?, f.provided?) {
        (0.0, _) => None,
        (r, p) if f.at_most => Some(r / p),
        (r, p) => Some(p / r),
    };
    let over = |f: &Finding| match (f.required, f.provided) {
        (Some(r), Some(p)) if f.at_most => r - p,
        (Some(r), Some(p)) => p - r,
        _ => f64::INFINITY,
    };
    match (share(f), share(other)) {
        (Some(share), Some(other)) => share < other,
        _ => over(f) < over(other),
    }
}

/// The working of the finding that lies nearest its limit under each judged rule, and of everything that is not met.
pub fn working(set: &Set<'_>) -> Vec<Notes> {
    let mut governing: Vec<&Finding> = Vec::new();
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
            Some(g) if is_nearer(f, g) => *g = f,
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
                in_words(set, &f.source, Keys::LeftOut)
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

#[cfg(test)]
mod tests {
    use super::super::sample_jobs::{jobs, with_set};
    use super::*;

    /// The key of a limit is for the program's reader: on paper the limit is named in words, in every table and every working.
    #[test]
    fn holds_no_source_shows_a_key() {
        for job in jobs() {
            with_set(&job, |set| {
                let tables = [not_judged_table(set), notes_table(set)];
                let tables = tables.into_iter().flatten().chain([findings_table(set)]);
                let sources = tables
                    .flat_map(|t| t.rows)
                    .map(|mut row| row.swap_remove(1));
                let heads = working(set).into_iter().map(|mut w| w.notes.swap_remove(0));
                for words in sources.chain(heads) {
                    assert!(!words.contains('`'), "{job}: {words}");
                }
            });
        }
    }

    fn over_nothing(provided: f64) -> Finding {
        Finding {
            required: Some(0.0),
            provided: Some(provided),
            ..with_figures(10.0, 20.0)
        }
    }

    fn with_figures(required: f64, provided: f64) -> Finding {
        crate::checks::REGISTER[0]
            .finding_of_works("test", "here")
            .at_least(required, provided, "mm")
    }

    /// Nothing is required of either: 1.218 mm is nearer than 13.979. Of two that ask something the share counts: 20 of 10 is nearer
    /// than 300 of 100, though more is over.
    #[test]
    fn by_hand_nearer_its_limit() {
        assert!(is_nearer(&over_nothing(1.218), &over_nothing(13.979)));
        assert!(!is_nearer(&over_nothing(13.979), &over_nothing(1.218)));
        assert!(is_nearer(
            &with_figures(10.0, 20.0),
            &with_figures(100.0, 300.0)
        ));
        assert!(is_nearer(
            &with_figures(100.0, 150.0),
            &with_figures(10.0, 20.0)
        ));
    }

    /// A sixteenth is not one.
    #[test]
    fn by_hand_a_fraction_tells_no_whole_number() {
        assert!(!tells("the source asks 1/16 in at the least", "1.000 mm"));
        assert!(tells("it has 1.00 mm", "1.000 mm"));
    }
}
