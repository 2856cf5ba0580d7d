//! Specs that cannot be read, each with the whole message that a drawing office sees.
//!
//! A case in `tests/refused/` says what it is about, then how it departs from `base.yaml` (`-` a stretch taken out, `+` the
//! lines put in its place), then, below `===`, the message. The messages are written by hand, not copied from a run.

use std::path::{Path, PathBuf};

use centrepop::spec::{Fault, Faults, read_spec};

/// One departure from the base and the message it must bring.
struct Case {
    name: String,
    changes: Vec<(String, String)>,
    message: String,
}

fn cases() -> Vec<Case> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/refused");
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder)
        .expect("the cases are in the repository")
        .map(|entry| entry.expect("a case can be listed").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "txt"))
        .collect();
    files.sort();
    files.iter().map(|path| case(path)).collect()
}

fn case(path: &Path) -> Case {
    let text = std::fs::read_to_string(path).expect("a case is text");
    let (head, message) = text.split_once("===\n").expect("a case has a message");
    let mut changes: Vec<(String, String)> = Vec::new();
    for line in head.lines() {
        if let Some(old) = line.strip_prefix('-') {
            changes.push((old.into(), String::new()));
        } else if let Some(new) = line.strip_prefix('+') {
            let (_, text) = changes.last_mut().expect("a + follows a -");
            if !text.is_empty() {
                text.push('\n');
            }
            text.push_str(new);
        }
    }
    Case {
        name: path
            .file_stem()
            .unwrap_or_default()
            .to_string_lossy()
            .into_owned(),
        changes,
        message: message.into(),
    }
}

fn base() -> &'static str {
    include_str!("refused/base.yaml")
}

fn refused(source: &str) -> Option<Faults> {
    read_spec("base.yaml", source.as_bytes()).err()
}

#[test]
fn holds_the_base_reads() {
    if let Some(faults) = refused(base()) {
        panic!("{faults}");
    }
}

#[test]
fn refuses_with_the_whole_message() {
    let mut wrong = Vec::new();
    for case in cases() {
        let mut source = base().to_string();
        for (old, new) in &case.changes {
            assert_eq!(
                source.matches(old.as_str()).count(),
                1,
                "{}: `{old}`",
                case.name
            );
            source = source.replace(old.as_str(), new);
        }
        let report = refused(&source).map_or("read without fault\n".into(), |faults| faults.report);
        if report != case.message {
            wrong.push(format!(
                "{}\n--- wanted\n{}--- came\n{report}",
                case.name, case.message
            ));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn holds_both_specs_read() {
    for spec in [
        "specs/marl-hen-smokebox.yaml",
        "specs/hobthrush-smokebox.yaml",
    ] {
        let bytes = std::fs::read(spec).expect("the spec is in the repository");
        if let Err(faults) = read_spec(spec, &bytes) {
            panic!("{faults}");
        }
    }
}

/// A fault found when the plate is set out points at the nearest thing that is written: `holes[0].at` has
/// one place, so for `holes[0].at[7]` the list is shown.
#[test]
fn refuses_a_design_fault_at_the_nearest_written_key() {
    let spec = read_spec("base.yaml", base().as_bytes()).expect("held by another test");
    let fault = Fault::new("holes[0].at[7]", "two holes meet", "move one")
        .and("tubes[0].hole", "the other");
    assert_eq!(
        spec.refuse(vec![fault]).report,
        "\
refused: two holes meet
  --> base.yaml:28:54
   |
24 |     hole: 1 27/32 in
   |           ---------- the other
...
28 |   - {name: washout plug, purpose: plug, hole: 1 3/4, at: [[6, -14 1/4]]}
   |                                                      ^^ holes[0].at[7]
   |
   = remedy: move one

base.yaml: refused for 1 fault; nothing was written
"
    );
    assert_eq!(spec.line_of("tubes[0].pattern.columns.pitch"), 26);
    assert_eq!(spec.line_of("nothing.like.it"), 1);
}

/// A file saved on another system, with a byte-order mark and its own line ends, says the same and has the same lines.
#[test]
fn holds_line_ends_of_any_system() {
    for end in ["\r\n", "\r"] {
        let good = format!("\u{feff}{}", base().replace('\n', end));
        assert!(read_spec("base.yaml", good.as_bytes()).is_ok());
        let bad = good.replace("thickness: 5/8 in", "thickness: 16");
        let report = refused(&bad).expect("held by a case of its own").report;
        assert!(report.contains("--> base.yaml:11:14"), "{report}");
    }
}
