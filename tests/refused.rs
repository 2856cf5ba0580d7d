//! Specs that cannot be read or set out, each with the whole message that a drawing office sees.
//!
//! Below `===` in a case stands the message. The messages are written by hand, not copied from a run.

mod case;

use case::{Case, cases};
use centrepop::commands::set_out_or_faults;
use centrepop::spec::{Fault, Faults, read_spec};

fn base() -> &'static str {
    include_str!("refused/base.yaml")
}

fn refused(source: &str) -> Option<Faults> {
    read_spec("base.yaml", source.as_bytes()).err()
}

/// What `check` would say of a spec that it refuses: the faults of reading and of setting out, in one report.
fn whole_report(case: &Case) -> String {
    let read = read_spec(&case.file, case.source.as_bytes());
    let refused = match read {
        Err(faults) => {
            Some(faults.and_beyond(|spec| set_out_or_faults(spec).err().unwrap_or_default()))
        }
        Ok(spec) => set_out_or_faults(&spec)
            .err()
            .map(|faults| spec.refuse(faults)),
    };
    refused.map_or("read without fault\n".into(), |faults| faults.report)
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
    for case in cases("tests/refused") {
        let report = whole_report(&case);
        if report != case.expected {
            wrong.push(format!(
                "{}\n--- wanted\n{}--- came\n{report}",
                case.name, case.expected
            ));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn holds_the_specs_read() {
    for spec in [
        "specs/marl-hen-smokebox.yaml",
        "specs/hobthrush-smokebox.yaml",
        "specs/tallow-moor-smokebox.yaml",
        "specs/gritstone-smokebox.yaml",
        "specs/pinders-oak-smokebox.yaml",
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
