//! Findings whose verdict is another one than before.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use super::Finding;

/// A finding whose verdict changed; none where there is no such finding.
#[derive(Clone, Debug, Serialize)]
pub struct VerdictChange {
    pub rule: &'static str,
    #[serde(rename = "where")]
    pub place: String,
    pub old: Option<String>,
    pub new: Option<String>,
}

impl VerdictChange {
    /// In words: "tube_ligament, T1–T2: below, was meets".
    pub fn words(&self) -> String {
        let absent = |verdict: &Option<String>| verdict.clone().unwrap_or("no finding".into());
        format!(
            "{}, {}: {}, was {}",
            self.rule,
            self.place,
            absent(&self.new),
            absent(&self.old)
        )
    }
}

/// Findings of one rule by one source: where both designs have as many they are taken in order, since the place of a finding names
/// holes and may change with them; otherwise by place.
pub fn verdict_changes(old: &[Finding], new: &[Finding]) -> Vec<VerdictChange> {
    let mut found = Vec::new();
    for (rule, (old, new)) in paired(old, new) {
        let verdict = |f: Option<&Finding>| f.map(|f| f.verdict.name().to_string());
        if verdict(old) != verdict(new) {
            let place = new.or(old).map_or(String::new(), |f| f.place.clone());
            found.push(VerdictChange {
                rule,
                place,
                old: verdict(old),
                new: verdict(new),
            });
        }
    }
    found
}

/// A finding as it was and as it is.
pub(super) type Pair<'a> = (Option<&'a Finding>, Option<&'a Finding>);

/// The findings of every rule, each beside what it was.
pub(super) fn paired<'a>(old: &'a [Finding], new: &'a [Finding]) -> Vec<(&'static str, Pair<'a>)> {
    let (was, is) = (by_rule(old), by_rule(new));
    let rules: BTreeSet<_> = was.keys().chain(is.keys()).collect();
    let none = Vec::new();
    let mut found = Vec::new();
    for rule in rules {
        let old = was.get(rule).unwrap_or(&none);
        let new = is.get(rule).unwrap_or(&none);
        let pairs: Vec<Pair> = match old.len() == new.len() {
            true => old
                .iter()
                .zip(new)
                .map(|(o, n)| (Some(*o), Some(*n)))
                .collect(),
            false => by_place(old, new),
        };
        found.extend(pairs.into_iter().map(|pair| (rule.0, pair)));
    }
    found
}

fn by_rule(findings: &[Finding]) -> BTreeMap<(&'static str, &str), Vec<&Finding>> {
    let mut by: BTreeMap<(&'static str, &str), Vec<&Finding>> = BTreeMap::new();
    for finding in findings {
        by.entry((finding.rule, &finding.source))
            .or_default()
            .push(finding);
    }
    by
}

fn by_place<'a>(old: &[&'a Finding], new: &[&'a Finding]) -> Vec<Pair<'a>> {
    let at = |list: &[&'a Finding], place: &str| list.iter().copied().find(|f| f.place == place);
    let mut pairs: Vec<_> = old.iter().map(|o| (Some(*o), at(new, &o.place))).collect();
    let added = new.iter().filter(|n| at(old, &n.place).is_none());
    pairs.extend(added.map(|n| (None, Some(*n))));
    pairs
}
