//! What is said of a finding on the page, on the screen and in the results: one sentence, wherever it is read.

use crate::checks::{Finding, Verdict};
use crate::units::print;

/// What was compared or noted; what is missing where nothing was; who agreed to what where it is conceded.
pub(super) fn why(finding: &Finding) -> String {
    match &finding.verdict {
        Verdict::NotJudged { why } => joined(why, &finding.why),
        Verdict::Conceded { concession, .. } => joined(
            &finding.why,
            &format!(
                "conceded by {}, {}: {}",
                concession.agreed_by, concession.reference, concession.reason
            ),
        ),
        Verdict::Meets | Verdict::Below { .. } | Verdict::Note => finding.why.clone(),
    }
}

/// Both, or the one that says something.
fn joined(first: &str, second: &str) -> String {
    match (first.is_empty(), second.is_empty() || first == second) {
        (true, _) => second.to_string(),
        (_, true) => first.to_string(),
        _ => format!("{first}; {second}"),
    }
}

/// A figure of a finding with its unit, to the places that its unit is read to.
pub(super) fn figure(value: f64, unit: &str) -> String {
    let places = match unit {
        "in" => 4,
        "mm" | "in2" | "" => 3,
        _ => 1,
    };
    format!("{} {unit}", print::decimal(value, places))
        .trim_end()
        .to_string()
}
