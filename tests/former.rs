//! The former issue that a spec names: read, compared, or refused in words.

mod common;

use std::fs;
use std::path::{Path, PathBuf};

use centrepop::design::{HoleChange, Renumbered, set_out};
use centrepop::spec::read_spec_file;

const NAME: &str = "specs/tallow-moor-smokebox.yaml";
const FORMER: &str = "specs/former/tallow-moor-smokebox-a.yaml";

/// The demo order and its former issue in a folder of their own, something written otherwise in either.
fn both(here: [(&str, &str); 1], there: [(&str, &str); 1]) -> (tempfile::TempDir, PathBuf) {
    let folder = tempfile::tempdir().expect("a folder");
    let top = Path::new(env!("CARGO_MANIFEST_DIR"));
    let copy = |from: &str, to: &str, [(old, new)]: [(&str, &str); 1]| {
        let text = fs::read_to_string(top.join(from)).expect("a demo spec");
        assert!(text.contains(old), "{from} does not hold `{old}`");
        let path = folder.path().join(to);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        fs::write(&path, text.replacen(old, new, 1)).expect("a file");
        path
    };
    copy(FORMER, "former/tallow-moor-smokebox-a.yaml", there);
    let spec = copy(NAME, "tm.yaml", here);
    (folder, spec)
}

const AS_IT_IS: [(&str, &str); 1] = [("job:", "job:")];

/// The one fact that is told, and its remedy.
#[track_caller]
fn refused(here: [(&str, &str); 1], there: [(&str, &str); 1]) -> (String, String) {
    let (_folder, spec) = both(here, there);
    let faults = match read_spec_file(&spec) {
        Err(faults) => faults,
        Ok(spec) => spec.refuse(set_out(&spec).expect_err("it is refused")),
    };
    assert_eq!(faults.faults.len(), 1, "{faults}");
    let fault = &faults.faults[0];
    assert_eq!(fault.path, "job.revisions[0].spec");
    assert!(faults.report.contains("tm.yaml:17:"), "{faults}");
    (fault.fact.clone(), fault.remedy.clone())
}

/// P1 was 136 mm and is 140 mm; S3 and S4 stood 370 − 352 = 18 mm lower; a tube was left out at (0, −36), the last of the middle
/// column, T43 to T49: what came after it, T49 to T90, is one further on.
#[test]
fn by_hand_what_became_of_tallow_moor() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(NAME);
    let spec = read_spec_file(&path).unwrap_or_else(|faults| panic!("{faults}"));
    let design = set_out(&spec).expect("it is set out");
    let since = design.since.expect("it names its former issue");
    assert_eq!(since.revision, "A");
    let (mut added, mut moved, mut resized) = (Vec::new(), Vec::new(), Vec::new());
    for change in &since.changes.holes {
        match change {
            HoleChange::Added(new) => added.push(new.id.as_str()),
            HoleChange::Altered { old, new } if old.same_size(new) => {
                let by = new.at - old.at;
                assert!((by.x.abs() < 1e-9) && (by.y - 18.0).abs() < 1e-9);
                moved.push(new.id.as_str());
            }
            HoleChange::Altered { old, new } => {
                assert_eq!(
                    (old.finish.as_written(), new.finish.as_written()),
                    ("136 mm", "140 mm")
                );
                resized.push(new.id.as_str());
            }
            HoleChange::Omitted(old) => panic!("{} was not left out", old.id),
            HoleChange::Renumbered { .. } => {}
        }
    }
    assert_eq!(
        (added, moved, resized),
        (vec!["T49"], vec!["S3", "S4"], vec!["P1"])
    );
    let pair = |a: &str, b: &str| (a.to_string(), b.to_string());
    assert_eq!(
        since.changes.renumbered(),
        [Renumbered {
            first: pair("T49", "T50"),
            last: pair("T90", "T91")
        }]
    );
    let blank = since
        .changes
        .figures
        .iter()
        .find(|f| f.name == "blank as cut")
        .expect("the blank grew");
    // Two trims of 2 mm more.
    assert!((blank.new.unwrap() - blank.old.unwrap() - 4.0).abs() < 1e-9);
    // The outer stays stood at (330, 352) and stand at (330, 370) now: 530 − √(330² + 352²) − 17.5 = 30.00 mm to the tangent, and
    // 530 − √(330² + 370²) − 17.5 = 16.72.
    let metal = |between: &str| {
        let mut metals = since.changes.metals.iter();
        metals.find(|change| change.between == between)
    };
    let stay = metal("stay to tangent").expect("the stays moved");
    let mm = |length: Option<centrepop::units::Length>| format!("{:.2}", length.unwrap().to_mm());
    assert_eq!(
        (mm(stay.old), mm(stay.new)),
        ("30.00".into(), "16.72".into())
    );
    assert!(metal("tube to tangent").is_none(), "no outer tube moved");
    let written = |key: &str| since.written.iter().find(|change| change.key == key);
    let rebore = written("tubes: next re-bore").expect("it was not written before");
    assert_eq!(
        (rebore.old.as_deref(), rebore.new.as_deref()),
        (None, Some("49 mm"))
    );
    let told: Vec<&str> = since
        .written
        .iter()
        .map(|change| change.key.as_str())
        .collect();
    assert_eq!(
        told,
        [
            "flange: pressed, trim",
            "tubes: exception 1, reason",
            "tubes: next re-bore",
            "cutting: order, withdrawn issue 1"
        ],
        "a key that is no change of the second issue stands in the former issue too: write it in {FORMER}"
    );
}

/// A changed pressure holds no hole and no figure of the plate, and is told all the same.
#[test]
fn by_hand_a_pressure_that_changed_is_told() {
    let (_folder, path) = both(
        AS_IT_IS,
        [("working_pressure: 12.4 bar", "working_pressure: 11 bar")],
    );
    let spec = read_spec_file(&path).unwrap_or_else(|faults| panic!("{faults}"));
    let since = set_out(&spec)
        .expect("it is set out")
        .since
        .expect("a former issue");
    let pressure = since
        .written
        .iter()
        .find(|change| change.key == "working pressure")
        .expect("it is told");
    assert_eq!(
        (pressure.old.as_deref(), pressure.new.as_deref()),
        (Some("11 bar"), Some("12.4 bar"))
    );
}

/// Without the key nothing is compared.
#[test]
fn holds_no_former_issue_no_change() {
    let (_folder, path) = both(
        [(", spec: former/tallow-moor-smokebox-a.yaml", "")],
        AS_IT_IS,
    );
    let spec = read_spec_file(&path).unwrap_or_else(|faults| panic!("{faults}"));
    assert!(set_out(&spec).expect("it is set out").since.is_none());
}

#[test]
fn refuses_a_former_issue_that_is_not_there() {
    let (fact, remedy) = refused([("spec: former/tallow", "spec: older/tallow")], AS_IT_IS);
    assert!(
        fact.starts_with(
            "revision A is in `older/tallow-moor-smokebox-a.yaml`, and the file cannot be read: "
        ),
        "{fact}"
    );
    assert_eq!(
        remedy,
        "put the former issue's spec there, or leave the key out"
    );
}

#[test]
fn refuses_a_former_issue_of_another_drawing_side_or_date() {
    let name = "former/tallow-moor-smokebox-a.yaml";
    for (there, fact) in [
        (
            ("drawing: TM-TP1 ", "drawing: TM-TP2 "),
            format!("`job.drawing` in `{name}` is TM-TP2, and TM-TP1 was looked for"),
        ),
        (
            ("view_from: smokebox", "view_from: firebox"),
            format!("`plate.view_from` in `{name}` is firebox, and smokebox was looked for"),
        ),
    ] {
        assert_eq!(refused(AS_IT_IS, [there]).0, fact);
    }
    let later = [("{index: A, date: 2026-11-18", "{index: A, date: 2026-11-17")];
    assert_eq!(
        refused(later, AS_IT_IS),
        (
            format!("`job.issued` in `{name}` is 2026-11-18, and 2026-11-17 was looked for"),
            "write the date of that issue on its line".to_string()
        )
    );
}

/// The issue in hand is no former issue, neither by its line nor by its index.
#[test]
fn refuses_the_issue_in_hand() {
    let (_folder, path) = both(
        [(
            "drawn_by: D. Office}\n\nplate",
            "drawn_by: D. Office, spec: tm.yaml}\n\nplate",
        )],
        AS_IT_IS,
    );
    let faults = read_spec_file(&path).expect_err("it is refused");
    assert_eq!(faults.faults[0].path, "job.revisions[1].spec");
    assert_eq!(
        faults.faults[0].fact,
        "revision B is the issue in hand, and its spec is this one"
    );
    let (_folder, path) = both(
        [("spec: former/tallow-moor-smokebox-a.yaml", "spec: tm.yaml")],
        AS_IT_IS,
    );
    let faults = read_spec_file(&path).expect_err("it is refused");
    let facts: Vec<&str> = faults
        .faults
        .iter()
        .map(|fault| fault.fact.as_str())
        .collect();
    assert_eq!(
        facts,
        [
            "`job.revision` in `tm.yaml` is B, and A was looked for",
            "`job.issued` in `tm.yaml` is 2026-11-23, and 2026-11-18 was looked for"
        ]
    );
}

#[test]
fn refuses_a_path_that_is_tied_to_one_machine() {
    let (fact, remedy) = refused(
        [("spec: former/tallow-moor", "spec: /former/tallow-moor")],
        AS_IT_IS,
    );
    assert_eq!(
        fact,
        "`/former/tallow-moor-smokebox-a.yaml` is not a path from the folder of this spec"
    );
    assert_eq!(remedy, "write it so: former/tp1-a.yaml");
}

/// A former issue that is itself refused, when it is read or when it is set out, is told with its first fault.
#[test]
fn refuses_a_former_issue_that_is_refused() {
    let (fact, remedy) = refused(AS_IT_IS, [("thickness: 20 mm", "thickness: twenty")]);
    assert!(
        fact.contains("and it is refused, for `plate.thickness` first: "),
        "{fact}"
    );
    assert!(remedy.starts_with("run `centrepop check "), "{remedy}");
    let (fact, _) = refused(AS_IT_IS, [("[330 mm, 352 mm]", "[185 mm, 410 mm]")]);
    assert!(fact.contains("cannot be set out: "), "{fact}");
}

/// The list stands on the page and on the sheets of the drawn pack, and in neither where there is no former issue.
#[test]
fn holds_the_list_is_in_the_pack() {
    let list = "Changes since revision A (spec ";
    let page = |spec: &str| {
        let pack = common::pack_of(spec);
        fs::read_to_string(pack.join("index.html")).expect("a page")
    };
    assert!(page(NAME).contains(list));
    assert!(!page("specs/hobthrush-smokebox.yaml").contains("Changes since"));
}
