//! What changed since the former issue: in the plate, and in what the office wrote of it.

use std::collections::{BTreeMap, BTreeSet};

use super::changes::{Changes, changes};
use super::{Design, set_out};
use crate::spec::{Fault, Former, Spec};

/// Everything that differs from the former issue.
#[derive(Clone, Debug)]
pub struct Since {
    /// Revision of the former issue.
    pub revision: String,
    /// Fingerprint of its spec, as sheets show it.
    pub fingerprint: String,
    /// Holes and figures of the plate.
    pub changes: Changes,
    /// What the office wrote otherwise, that does not show in a hole's place or size.
    pub written: Vec<WrittenChange>,
}

impl Since {
    /// Whether the two issues are of one plate, as far as this compares them.
    pub fn is_nothing(&self) -> bool {
        self.changes.is_empty() && self.written.is_empty()
    }
}

/// A word of the spec that is another one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrittenChange {
    /// Its key in words, the name of its group before it: "tubes: next re-bore".
    pub key: String,
    /// As it was; none where nothing was written.
    pub old: Option<String>,
    /// As it is; none where nothing is written.
    pub new: Option<String>,
}

/// What changed since the former issue that a spec names; none where it names none.
pub(super) fn since(spec: &Spec, design: &Design) -> Result<Option<Since>, Vec<Fault>> {
    let Some(Former { spec: former, path }) = &spec.former else {
        return Ok(None);
    };
    let old = set_out(former).map_err(|faults| {
        let first = faults.first().map_or("", |fault| fault.fact.as_str());
        vec![Fault::new(
            path,
            format!(
                "the former issue, `{}`, cannot be set out: {first}",
                former.file
            ),
            format!(
                "run `centrepop check {}` to see every fault of it, and mend it there",
                former.file
            ),
        )]
    })?;
    Ok(Some(Since {
        revision: former.written.job.revision.clone(),
        fingerprint: former.short_fingerprint().to_string(),
        changes: changes(&old, design),
        written: written_changes(former, spec),
    }))
}

/// Words that differ, in the order of the former spec, then those that are new.
fn written_changes(old: &Spec, new: &Spec) -> Vec<WrittenChange> {
    let (was, is) = (words(old), words(new));
    let by_key =
        |list: &[(String, String)]| -> BTreeMap<String, String> { list.iter().cloned().collect() };
    let (before, now) = (by_key(&was), by_key(&is));
    let mut told = BTreeSet::new();
    let keys = was.iter().chain(&is).map(|(key, _)| key);
    keys.filter(|key| told.insert(key.as_str()))
        .map(|key| WrittenChange {
            key: key.clone(),
            old: before.get(key).cloned(),
            new: now.get(key).cloned(),
        })
        .filter(|change| change.old != change.new)
        .collect()
}

/// Keys in words and what is written there, but for the title block and for what the holes and figures tell themselves.
fn words(spec: &Spec) -> Vec<(String, String)> {
    let told_otherwise = |path: &str| {
        let group = path.starts_with("tubes[") || path.starts_with("holes[");
        let key = path.split('.').nth(1).unwrap_or("");
        let key = key.split('[').next().unwrap_or("");
        path.starts_with("job.")
            || path == "plate.thickness"
            || group && matches!(key, "name" | "hole" | "at" | "mirrored" | "pattern")
            || group && key == "exceptions" && !path.ends_with(".reason")
    };
    let words = spec.words().into_iter();
    words
        .filter(|(path, ..)| !told_otherwise(path))
        .map(|(path, word, _)| (in_words(spec, &path), word.to_string()))
        .collect()
}

/// `tubes[0].next_rebore` as "tubes: next re-bore", by the name of the group: its number may be another one in the other issue.
fn in_words(spec: &Spec, path: &str) -> String {
    let (head, rest) = path.split_once('.').unwrap_or((path, ""));
    let number = |list: &str| -> Option<usize> {
        head.strip_prefix(list)?
            .strip_prefix('[')?
            .strip_suffix(']')?
            .parse()
            .ok()
    };
    let written = &spec.written;
    let nest = number("tubes")
        .and_then(|i| written.tubes.get(i))
        .map(|nest| &nest.name);
    let set = number("holes")
        .and_then(|i| written.holes.get(i))
        .map(|set| &set.name);
    let head = nest.or(set).map_or(head, String::as_str);
    let words = |path: &str| {
        let steps: Vec<String> = path.split('.').map(step_in_words).collect();
        steps.join(", ")
    };
    match rest {
        "" => words(head),
        rest => format!("{}: {}", words(head), words(rest)),
    }
}

/// One step of a path in the trade's words: `exceptions[0]` is "exception 1", `next_rebore` "next re-bore".
fn step_in_words(step: &str) -> String {
    let (name, number) = match step.trim_end_matches(']').split_once('[') {
        Some((name, number)) => (name, number.parse::<usize>().ok()),
        None => (step, None),
    };
    let name = match (name, number) {
        ("next_rebore", _) => "next re-bore".to_string(),
        ("withdrawn", Some(_)) => "withdrawn issue".to_string(),
        // A list is named by what it holds many of, one of them by the same word without its s.
        (list, Some(_)) => list.strip_suffix('s').unwrap_or(list).replace('_', " "),
        (name, None) => name.replace('_', " "),
    };
    match number {
        Some(number) => format!("{name} {}", number + 1),
        None => name,
    }
}
