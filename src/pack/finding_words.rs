//! What is said of a finding on the page, on the screen and in the results: one sentence, wherever it is read.

use crate::checks::{Finding, Verdict};

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

/// What is required and what is provided, as they are read: with its bound, and apart where they differ. Blank where there is none.
pub(super) fn figures(finding: &Finding) -> (String, String) {
    let bound = if finding.at_most {
        "at most"
    } else {
        "at least"
    };
    let read = finding.as_read();
    (
        read.required
            .map_or(String::new(), |required| format!("{bound} {required}")),
        read.provided.unwrap_or_default(),
    )
}
