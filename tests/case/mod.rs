//! Cases written as files: what a spec is changed in, and what is to come of it.
//!
//! A case says what it is about; then, where it departs from another spec than the `base.yaml` beside it, which (`from: `);
//! then how it departs (`-` a stretch taken out, `+` the lines put in its place); then, below `===`, what is expected.

use std::path::{Path, PathBuf};

/// One departure from a spec and what must come of it.
pub struct Case {
    /// The file's name without its ending.
    pub name: String,
    /// The name of the spec departed from, for messages.
    pub file: String,
    /// The changed spec.
    pub source: String,
    /// What stands below `===`.
    pub expected: String,
}

/// Every case of a folder, by name.
pub fn cases(folder: &str) -> Vec<Case> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder)
        .expect("the cases are in the repository")
        .map(|entry| entry.expect("a case can be listed").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "txt"))
        .collect();
    files.sort();
    files.iter().map(|path| case(path)).collect()
}

fn case(path: &Path) -> Case {
    let name = path.file_stem().unwrap_or_default();
    let name = name.to_string_lossy().into_owned();
    let text = std::fs::read_to_string(path).expect("a case is text");
    let (head, expected) = text
        .split_once("===\n")
        .expect("a case says what is expected");
    let base = head.lines().find_map(|line| line.strip_prefix("from: "));
    let base = match base {
        Some(file) => Path::new(env!("CARGO_MANIFEST_DIR")).join(file),
        None => path.with_file_name("base.yaml"),
    };
    let mut source = std::fs::read_to_string(&base).expect("the spec departed from");
    for (old, new) in changes(head) {
        assert_eq!(source.matches(old).count(), 1, "{name}: `{old}`");
        source = source.replace(old, &new);
    }
    let file = base.file_name().unwrap_or_default();
    Case {
        name,
        file: file.to_string_lossy().into_owned(),
        source,
        expected: expected.into(),
    }
}

fn changes(head: &str) -> Vec<(&str, String)> {
    let mut changes: Vec<(&str, String)> = Vec::new();
    for line in head.lines() {
        if let Some(old) = line.strip_prefix('-') {
            changes.push((old, String::new()));
        } else if let Some(new) = line.strip_prefix('+') {
            let (_, text) = changes.last_mut().expect("a + follows a -");
            if !text.is_empty() {
                text.push('\n');
            }
            text.push_str(new);
        }
    }
    changes
}
