//! `check`: the findings alone, worst first, on the screen or for machines.

use std::cmp::Ordering;
use std::path::Path;

use serde::Serialize;

use super::wrapped::wrapped;
use super::{Outcome, Said, Status, read_and_set_out};
use crate::checks::{Finding, Verdict, run_checks};
use crate::design::Design;
use crate::pack::{Counts, Gate};
use crate::spec::Spec;

/// Checks the plate of a spec and says what came of it; as JSON for machines, else as a table for a screen of this width.
pub fn check(spec_file: &Path, json: bool, width: usize) -> Outcome {
    let (spec, design) = read_and_set_out(spec_file)?;
    let findings = run_checks(&spec, &design);
    let words = if json {
        as_json(&spec, &findings)
    } else {
        on_screen(&spec, &design, &findings, width)
    };
    let status = match Gate::of(&findings) {
        Gate::Open => Status::Done,
        Gate::Shut(_) => Status::Below,
    };
    Ok(Said { words, status })
}

/// The findings for a screen: those that judge, worst first; then notes; then what was not judged and why; the counts last.
pub fn on_screen(spec: &Spec, design: &Design, findings: &[Finding], width: usize) -> String {
    let mut text = wrapped(
        "",
        &format!(
            "{} {}, {}: compared with {}. It approves nothing.",
            spec.written.job.drawing,
            spec.written.job.revision,
            design.kind.name(),
            judges(spec)
        ),
        width,
    );
    text.push('\n');
    text.push_str(&table(findings, width));
    text.push_str(&list(
        "Notes",
        &of(findings, |v| matches!(v, Verdict::Note)),
        width,
    ));
    text.push_str(&list(
        "Not judged",
        &of(findings, |v| matches!(v, Verdict::NotJudged { .. })),
        width,
    ));
    text.push_str(&format!("{}\n", Counts::of(findings)));
    text
}

fn judges(spec: &Spec) -> String {
    match spec.written.judged_by.as_slice() {
        [] => "no rule, since `judged_by` names none".to_string(),
        names => names.join(", "),
    }
}

fn of(findings: &[Finding], is: impl Fn(&Verdict) -> bool) -> Vec<&Finding> {
    findings.iter().filter(|f| is(&f.verdict)).collect()
}

/// How bad a verdict is: the worst first.
fn rank(verdict: &Verdict) -> u8 {
    match verdict {
        Verdict::Below { .. } => 0,
        Verdict::Conceded { .. } => 1,
        Verdict::Meets => 2,
        Verdict::NotJudged { .. } => 3,
        Verdict::Note => 4,
    }
}

/// Margin over what is required, as a share of it; negative where it falls short. No figure counts as no margin.
fn margin(finding: &Finding) -> f64 {
    let (Some(required), Some(provided)) = (finding.required, finding.provided) else {
        return 0.0;
    };
    let over = if finding.at_most {
        required - provided
    } else {
        provided - required
    };
    over / required.abs().max(f64::MIN_POSITIVE)
}

fn worst_first(a: &&Finding, b: &&Finding) -> Ordering {
    rank(&a.verdict)
        .cmp(&rank(&b.verdict))
        .then_with(|| margin(a).total_cmp(&margin(b)))
}

/// One row of the table: verdict, rule, and three figures; place, source and reason stand below it.
struct Row<'a> {
    finding: &'a Finding,
    cells: [String; 5],
}

const HEADINGS: [&str; 5] = ["verdict", "rule", "has", "asks", "margin"];

fn table(findings: &[Finding], width: usize) -> String {
    let mut judged = of(findings, |v| rank(v) <= 2);
    if judged.is_empty() {
        return "Nothing was judged.\n\n".to_string();
    }
    judged.sort_by(worst_first);
    let rows: Vec<Row> = judged.into_iter().map(row).collect();
    let widths: [usize; 5] = std::array::from_fn(|i| {
        let cells = rows.iter().map(|row| row.cells[i].chars().count());
        cells.max().unwrap_or(0).max(HEADINGS[i].len())
    });
    let mut text = line(HEADINGS.map(str::to_string), widths);
    for row in rows {
        text.push_str(&line(row.cells, widths));
        text.push_str(&wrapped("          ", &below_the_row(row.finding), width));
    }
    text.push('\n');
    text
}

fn row(finding: &Finding) -> Row<'_> {
    let read = finding.as_read();
    let limit = if finding.at_most { "≤" } else { "≥" };
    let asks = read.required.map(|asks| format!("{limit} {asks}"));
    let cells = [
        finding.verdict.name().to_string(),
        finding.rule.to_string(),
        read.provided.unwrap_or_default(),
        asks.unwrap_or_default(),
        read.margin.unwrap_or_default(),
    ];
    Row { finding, cells }
}

/// Figures to the right, words to the left.
fn line(cells: [String; 5], widths: [usize; 5]) -> String {
    let mut text = String::new();
    for (i, cell) in cells.iter().enumerate() {
        let pad = " ".repeat(widths[i].saturating_sub(cell.chars().count()));
        let cell = if i < 2 {
            format!("{cell}{pad}")
        } else {
            format!("{pad}{cell}")
        };
        if i > 0 {
            text.push_str("  ");
        }
        text.push_str(&cell);
    }
    format!("{}\n", text.trim_end())
}

fn below_the_row(finding: &Finding) -> String {
    let mut words = format!("{}. {}", finding.place, finding.source);
    if !finding.why.is_empty() {
        words.push_str(&format!(". {}", finding.why));
    }
    if let Verdict::Conceded { concession, .. } = &finding.verdict {
        words.push_str(&format!(
            ". Conceded by {}, {}: {}",
            concession.agreed_by, concession.reference, concession.reason
        ));
    }
    words
}

/// What the plate has, and what is asked, where a finding that does not judge has figures.
fn figures(finding: &Finding) -> String {
    let read = finding.as_read();
    match (read.required, read.provided) {
        (Some(_), Some(_)) => {
            let [_, _, has, asks, _] = row(finding).cells;
            format!("{has}, {asks}; ")
        }
        (None, Some(provided)) if !finding.why.contains(&provided) => format!("{provided}; "),
        _ => String::new(),
    }
}

fn list(heading: &str, findings: &[&Finding], width: usize) -> String {
    if findings.is_empty() {
        return String::new();
    }
    let mut text = format!("{heading}\n");
    for finding in findings {
        let words = format!(
            "{}, {}: {}{} ({})",
            finding.rule,
            finding.place,
            figures(finding),
            finding.why,
            finding.source
        );
        text.push_str(&wrapped("  ", &words, width));
    }
    text.push('\n');
    text
}

#[derive(Serialize)]
struct Report<'a> {
    version: &'static str,
    fingerprint: &'a str,
    drawing: &'a str,
    revision: &'a str,
    judged_by: &'a [String],
    findings: Vec<Reported<'a>>,
}

#[derive(Serialize)]
struct Reported<'a> {
    rule: &'static str,
    asks: &'static str,
    source: &'a str,
    #[serde(rename = "where")]
    place: &'a str,
    inputs: Vec<Given<'a>>,
    required: Option<f64>,
    provided: Option<f64>,
    at_most: bool,
    unit: &'static str,
    verdict: &'static str,
    by: Option<f64>,
    why: &'a str,
    working: &'a [String],
    conceded: Option<Agreed<'a>>,
}

#[derive(Serialize)]
struct Given<'a> {
    name: &'a str,
    symbol: &'static str,
    value: f64,
    unit: &'static str,
}

#[derive(Serialize)]
struct Agreed<'a> {
    agreed_by: &'a str,
    reference: &'a str,
    reason: &'a str,
}

/// The findings for machines, numbers unrounded.
pub fn as_json(spec: &Spec, findings: &[Finding]) -> String {
    let report = Report {
        version: env!("CARGO_PKG_VERSION"),
        fingerprint: &spec.fingerprint,
        drawing: &spec.written.job.drawing,
        revision: &spec.written.job.revision,
        judged_by: &spec.written.judged_by,
        findings: findings.iter().map(reported).collect(),
    };
    let mut text = serde_json::to_string_pretty(&report).expect("findings are plain JSON");
    text.push('\n');
    text
}

fn reported(finding: &Finding) -> Reported<'_> {
    let (by, conceded) = match &finding.verdict {
        Verdict::Below { by } => (Some(*by), None),
        Verdict::Conceded { by, concession } => (
            Some(*by),
            Some(Agreed {
                agreed_by: &concession.agreed_by,
                reference: &concession.reference,
                reason: &concession.reason,
            }),
        ),
        Verdict::Meets | Verdict::NotJudged { .. } | Verdict::Note => (None, None),
    };
    let inputs = finding.inputs.iter().map(|i| Given {
        name: &i.name,
        symbol: i.symbol,
        value: i.value,
        unit: i.unit,
    });
    Reported {
        rule: finding.rule,
        asks: finding.asks,
        source: &finding.source,
        place: &finding.place,
        inputs: inputs.collect(),
        required: finding.required,
        provided: finding.provided,
        at_most: finding.at_most,
        unit: finding.unit,
        verdict: finding.verdict.name(),
        by,
        why: &finding.why,
        working: &finding.working,
        conceded,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::{end_seam, tube_ligament};
    use crate::spec::Concession;

    fn sample() -> Vec<Finding> {
        let agreed = Concession {
            rule: "end_seam".into(),
            only: None,
            up_to: None,
            agreed_by: "A. Surveyor".into(),
            reference: "letter 12".into(),
            reason: "as the original".into(),
        };
        let mut conceded = end_seam::RULE.finding("seam").at_least(38.0, 37.0, "%");
        conceded.verdict = Verdict::Conceded {
            by: 1.0,
            concession: agreed,
        };
        vec![
            tube_ligament::RULE
                .finding("T1–T2")
                .at_least(0.73046875, 0.75, "in"),
            conceded,
            tube_ligament::RULE
                .finding("T3–T4")
                .at_least(0.73046875, 0.7, "in"),
        ]
    }

    /// 0.73046875 − 0.7 = 0.0305 in short; 0.75 − 0.73046875 = 0.0195 in over. Below stands first, then conceded, then meets.
    #[test]
    fn by_hand_the_worst_stands_first() {
        let expected = "\
verdict   rule                 has         asks      margin
below     tube_ligament  0.7000 in  ≥ 0.7305 in  −0.0305 in
          T3–T4. Indian Boiler Regulations 1950, regulation 580
conceded  end_seam          37.0 %     ≥ 38.0 %      −1.0 %
          seam. Indian Boiler Regulations 1950, regulation 104. Conceded by
          A. Surveyor, letter 12: as the original
meets     tube_ligament  0.7500 in  ≥ 0.7305 in  +0.0195 in
          T1–T2. Indian Boiler Regulations 1950, regulation 580

";
        assert_eq!(table(&sample(), 76), expected);
    }

    #[test]
    fn holds_nothing_judged_is_said() {
        assert_eq!(table(&[], 80), "Nothing was judged.\n\n");
    }
}
