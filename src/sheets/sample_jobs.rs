//! Every spec that the repository ships, set out and checked, for tests of sheets.

use std::fs;
use std::path::Path;

use super::set::Set;
use crate::checks::run_checks;
use crate::cut::cut_parts;
use crate::design::set_out;
use crate::spec::{Spec, read_spec_file};

/// Paths of the shipped specs, in order.
pub fn jobs() -> Vec<String> {
    let mut found: Vec<String> = fs::read_dir("specs")
        .expect("the folder of specs")
        .filter_map(|entry| Some(entry.ok()?.path().to_str()?.to_string()))
        .filter(|path| path.ends_with(".yaml"))
        .collect();
    found.sort();
    assert!(!found.is_empty());
    found
}

/// Does something with what the sheets of a spec are drawn from.
pub fn with_set(path: &str, work: impl FnOnce(&Set<'_>)) {
    with_changed_set(path, |_| {}, work);
}

/// The same of a spec in which something is written otherwise.
pub fn with_changed_set(path: &str, change: impl FnOnce(&mut Spec), work: impl FnOnce(&Set<'_>)) {
    let mut spec = read_spec_file(Path::new(path)).unwrap_or_else(|faults| panic!("{faults}"));
    change(&mut spec);
    let design = set_out(&spec).unwrap_or_else(|faults| panic!("{faults:#?}"));
    let parts = cut_parts(&spec, &design).unwrap_or_else(|faults| panic!("{faults:#?}"));
    let findings = run_checks(&spec, &design);
    work(&Set::new(&spec, &design, &findings, &parts));
}
