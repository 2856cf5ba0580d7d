//! `explain`: what a rule asks and where it comes from; with a spec, this plate's figures put in line by line.

use std::path::Path;

use super::wrapped::wrapped;
use super::{Outcome, Refused, Said, Status, read_and_set_out};
use crate::checks::measure::{figure, shown_apart};
use crate::checks::{
    Finding, REGISTER, Rule, Standing, Verdict, legend, rule_or_nearest, run_checks,
};

/// Explains a rule, or lists them all where none is named; with a spec, works it out for its plate.
///
/// A spec may stand alone: `explain plate.yaml` works everything out.
pub fn explain(rule: Option<&str>, spec_file: Option<&Path>, width: usize) -> Outcome {
    let (rule, spec_file) = match (rule, spec_file) {
        (Some(file), None) if file.ends_with(".yaml") || file.ends_with(".yml") => {
            (None, Some(Path::new(file)))
        }
        given => given,
    };
    let rule = rule.map(named).transpose()?;
    let findings = match spec_file {
        None => None,
        Some(file) => {
            let (spec, design) = read_and_set_out(file)?;
            Some(run_checks(&spec, &design))
        }
    };
    let words = match (rule, findings) {
        (None, None) => list_of_rules(width),
        (None, Some(findings)) => worked(&findings, width),
        (Some(rule), None) => page_of(rule, width),
        (Some(rule), Some(findings)) => {
            let here: Vec<Finding> = findings
                .into_iter()
                .filter(|f| f.rule == rule.name)
                .collect();
            format!(
                "{}\nOn this plate\n\n{}",
                page_of(rule, width),
                worked(&here, width)
            )
        }
    };
    Ok(Said {
        words,
        status: Status::Done,
    })
}

fn named(name: &str) -> Result<&'static Rule, Refused> {
    rule_or_nearest(name).map_err(|nearest| Refused {
        report: format!(
            "there is no rule `{name}`\n  the nearest is `{nearest}`; `centrepop explain` lists them all"
        ),
    })
}

/// Room beside the names of the rules below which what they ask goes under them.
const LEAST_ROOM: usize = 40;

/// Every rule with what it asks and its source; then what no rule covers.
pub fn list_of_rules(width: usize) -> String {
    let longest = REGISTER
        .iter()
        .map(|rule| rule.name.len())
        .max()
        .unwrap_or(0);
    let title = "Rules, as `judged_by` and `concessions` name them:";
    let mut text = format!("{}\n", wrapped("", title, width));
    for rule in REGISTER {
        let first = format!("  {:longest$}  ", rule.name);
        let words = format!("{} ({})", rule.asks, rule.source.cite);
        if first.len() + LEAST_ROOM <= width {
            text.push_str(&wrapped(&first, &words, width));
        } else {
            text.push_str(&format!("  {}\n", rule.name));
            text.push_str(&wrapped("      ", &words, width));
        }
    }
    text.push_str("\nNot covered by any of them:\n");
    for words in legend().not_covered {
        text.push_str(&wrapped("  - ", words, width));
    }
    text.push_str("\nFor the inspector:\n");
    for words in legend().for_the_inspector {
        text.push_str(&wrapped("  - ", words, width));
    }
    text
}

/// The first page of a rule: formula, symbols, source, what it covers and leaves.
pub fn page_of(rule: &Rule, width: usize) -> String {
    let mut text = format!("{}\n\n", rule.name);
    let mut paragraph = String::new();
    let mut in_formula = false;
    for line in rule.page.lines().map_while(|line| line.strip_prefix("//!")) {
        let line = line.strip_prefix(' ').unwrap_or(line);
        if line.starts_with("```") {
            in_formula = !in_formula;
        } else if in_formula {
            text.push_str(&formula(line, width));
        } else if line.is_empty() || starts_a_heading(line) {
            text.push_str(&flushed(&mut paragraph, width));
            if line.is_empty() {
                text.push('\n');
            }
            paragraph.push_str(line);
        } else {
            paragraph.push(' ');
            paragraph.push_str(line.trim());
        }
    }
    text.push_str(&flushed(&mut paragraph, width));
    text.push_str(&wrapped(
        "Standing: ",
        standing(rule.source.standing),
        width,
    ));
    text
}

/// A line of a formula, in its columns where they fit; else each column of it on a line of its own, under the first.
fn formula(line: &str, width: usize) -> String {
    let whole = format!("    {line}");
    if whole.chars().count() <= width {
        return format!("{}\n", whole.trim_end());
    }
    let goes_on = line.starts_with(' ');
    let mut text = String::new();
    for (i, column) in line
        .split("   ")
        .map(str::trim)
        .filter(|c| !c.is_empty())
        .enumerate()
    {
        let first = if i == 0 && !goes_on {
            "    "
        } else {
            "        "
        };
        text.push_str(&wrapped(first, column, width));
    }
    text
}

fn starts_a_heading(line: &str) -> bool {
    ["Source:", "Covers:", "Leaves:"]
        .iter()
        .any(|heading| line.starts_with(heading))
}

fn flushed(paragraph: &mut String, width: usize) -> String {
    let words = std::mem::take(paragraph);
    if words.trim().is_empty() {
        return String::new();
    }
    match words
        .split_once(':')
        .filter(|(heading, _)| starts_a_heading(&format!("{heading}:")))
    {
        Some((heading, rest)) => wrapped(&format!("{:10}", format!("{heading}:")), rest, width),
        None => wrapped("", &words, width),
    }
}

fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Read => "read in the source or an official copy of it",
        Standing::Restated => "read in someone else's restatement of the source",
        Standing::Works => "entered by the works",
        Standing::Geometry => "plain geometry or mechanics; nothing to cite",
    }
}

/// Each finding with what went in, the arithmetic line by line, and what came of it.
pub fn worked(findings: &[Finding], width: usize) -> String {
    if findings.is_empty() {
        return "The rule has nothing to say of this plate.\n".to_string();
    }
    findings
        .iter()
        .map(|finding| format!("{}\n", one_worked(finding, width)))
        .collect()
}

fn one_worked(finding: &Finding, width: usize) -> String {
    let mut text = wrapped(
        "",
        &format!("{}, {}. {}", finding.rule, finding.place, finding.source),
        width,
    );
    for input in &finding.inputs {
        let symbol = if input.symbol.is_empty() {
            String::new()
        } else {
            format!(" {}", input.symbol)
        };
        let unit = input.unit.replace("in2", "in²").replace("mm2", "mm²");
        let value = format!("{} {unit}", figure(input.value));
        text.push_str(&wrapped(
            "  ",
            &format!("{}{symbol} = {}", input.name, value.trim_end()),
            width,
        ));
    }
    for line in &finding.working {
        text.push_str(&wrapped("    ", line, width));
    }
    text.push_str(&wrapped("  → ", &conclusion(finding), width));
    text
}

fn conclusion(finding: &Finding) -> String {
    let compared = match (finding.required, finding.provided) {
        (Some(required), Some(provided)) => {
            let (asks, has) = shown_apart(required, provided, finding.unit);
            let word = if finding.at_most {
                "no more than"
            } else {
                "at least"
            };
            format!(": has {has}, asks {word} {asks}")
        }
        _ => String::new(),
    };
    let agreed = match &finding.verdict {
        Verdict::Conceded { concession, .. } => {
            format!(
                "; conceded by {}, {}: {}",
                concession.agreed_by, concession.reference, concession.reason
            )
        }
        _ => String::new(),
    };
    let why = if finding.why.is_empty() {
        String::new()
    } else {
        format!("; {}", finding.why)
    };
    format!("{}{compared}{why}{agreed}", finding.verdict.name())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The list, every page with its formulae, and both demo plates worked out fit a screen of 40 characters and any wider one.
    #[test]
    fn holds_pages_fit_the_screen() {
        let specs = concat!(env!("CARGO_MANIFEST_DIR"), "/specs");
        for width in [40, 60, 80, 120] {
            let mut said = list_of_rules(width);
            for rule in REGISTER {
                said += &page_of(rule, width);
            }
            for spec in ["marl-hen-smokebox.yaml", "hobthrush-smokebox.yaml"] {
                let spec = Path::new(specs).join(spec);
                said += &explain(None, Some(&spec), width).expect("a plate").words;
            }
            for line in said.lines() {
                assert!(line.chars().count() <= width, "{width}: {line}");
            }
        }
        // Where there is room a formula keeps its columns.
        let page = page_of(rule_or_nearest("stayed_surface").expect("a rule"), 140);
        assert!(
            page.contains(
                "    P = t² S C/p²        t  thickness, in        S  stress allowed, psi"
            ),
            "{page}"
        );
        for rule in REGISTER {
            let page = page_of(rule, 80);
            assert!(
                page.contains("Source:   ") && page.contains("Leaves:   "),
                "{}",
                rule.name
            );
        }
    }

    #[test]
    fn refuses_a_rule_that_there_is_not() {
        let refused = explain(Some("tube_ligamant"), None, 80).expect_err("no such rule");
        assert_eq!(
            refused.report,
            "there is no rule `tube_ligamant`\n  the nearest is `tube_ligament`; `centrepop explain` lists them all"
        );
    }
}
