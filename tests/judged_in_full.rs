//! Specs that are drawn, and what is found in them: the cases of `tests/judged/`.
//!
//! Below `===` in a case stands how `draw` ends and whether cut files are written, then findings, one a line: verdict, rule, words
//! of its place, source or reason, and the figures it has and asks, to the places written. Worked by hand; the working is in the case.

mod case;

use case::{Case, cases};
use centrepop::checks::{Finding, run_checks};
use centrepop::design::set_out;
use centrepop::pack::Gate;
use centrepop::spec::read_spec;

#[test]
fn by_hand_cases_are_judged_as_they_say() {
    let mut wrong = Vec::new();
    for case in cases("tests/judged") {
        let mut lines = case.expected.lines();
        let findings = findings(&case);
        let ends = how_it_ends(&findings);
        if lines.next() != Some(ends) {
            wrong.push(format!("{}: {ends}", case.name));
        }
        for line in lines {
            if !findings.iter().any(|finding| answers(finding, line)) {
                let rule = line.split(" | ").nth(1).unwrap_or("");
                let of_rule = findings.iter().filter(|finding| finding.rule == rule);
                let came: Vec<String> = of_rule.map(|finding| format!("{finding:?}")).collect();
                wrong.push(format!("{}: {line}\n  {}", case.name, came.join("\n  ")));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

fn findings(case: &Case) -> Vec<Finding> {
    let spec =
        read_spec(&case.file, case.source.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"));
    let design = set_out(&spec).unwrap_or_else(|faults| panic!("{faults:?}"));
    run_checks(&spec, &design)
}

/// How `draw` would end; that it does so is held by the tests of the commands.
fn how_it_ends(findings: &[Finding]) -> &'static str {
    match Gate::of(findings) {
        Gate::Open => "exit 0, cut files written",
        Gate::Shut(_) => "exit 1, cut files withheld",
    }
}

/// Whether a finding has all that a line says of it.
fn answers(finding: &Finding, line: &str) -> bool {
    let mut pieces = line.split(" | ");
    let named =
        pieces.next() == Some(finding.verdict.name()) && pieces.next() == Some(finding.rule);
    let words = format!(
        "{:?} {} {} {}",
        finding.verdict, finding.place, finding.source, finding.why
    );
    named
        && pieces.all(|piece| match piece.split_once(' ') {
            Some(("has", figure)) => is(finding.provided, finding.unit, figure),
            Some(("asks", figure)) => is(finding.required, finding.unit, figure),
            _ => words.contains(piece),
        })
}

fn is(figure: Option<f64>, unit: &str, written: &str) -> bool {
    let number = written.split(' ').next().unwrap_or("");
    let places = number.split_once('.').map_or(0, |(_, places)| places.len());
    figure.is_some_and(|figure| format!("{figure:.places$} {unit}") == written)
}
