//! A record that is filled in and read back: what was made otherwise than designed, and the checks on the plate as made.

mod common;

use std::path::PathBuf;
use std::process::Output;

use common::{centrepop, pack_of};
use serde_json::Value;
use tempfile::TempDir;

const MARL_HEN: &str = "specs/marl-hen-smokebox.yaml";

/// A filled-in copy of a plate's record.
struct Record {
    folder: TempDir,
    text: String,
}

impl Record {
    /// The record of the pack, nothing filled in.
    fn blank(spec: &str) -> Record {
        let printed = pack_of(spec).join("record/inspection.csv");
        Record {
            folder: TempDir::new().expect("a folder"),
            text: std::fs::read_to_string(printed).expect("a pack has a record"),
        }
    }

    /// Fills cells of one row in: columns counted from 0, as printed.
    fn fill(mut self, item: &str, cells: &[(usize, &str)]) -> Record {
        let fill = |line: &str| {
            let mut row: Vec<String> = line.split(',').map(String::from).collect();
            if row[0] == item {
                for (column, word) in cells {
                    row[*column] = word.to_string();
                }
            }
            row.join(",")
        };
        self.text = self.text.lines().map(|line| fill(line) + "\n").collect();
        self
    }

    fn replace(mut self, from: &str, to: &str) -> Record {
        assert!(self.text.contains(from), "{from}");
        self.text = self.text.replace(from, to);
        self
    }

    fn file(&self) -> PathBuf {
        let file = self.folder.path().join("filled.csv");
        std::fs::write(&file, &self.text).expect("it is written");
        file
    }

    fn read_back(&self, spec: &str, more: &[&str]) -> Output {
        let file = self.file();
        let arguments = [&["asmade", spec, file.to_str().expect("a name")], more].concat();
        centrepop().args(arguments).output().expect("it runs")
    }

    fn json(&self, spec: &str) -> Value {
        serde_json::from_slice(&self.read_back(spec, &["--json"]).stdout).expect("JSON")
    }

    /// What is said of a record that is refused, the file's own name left out.
    fn refused(&self, spec: &str) -> String {
        let output = self.read_back(spec, &[]);
        assert_eq!(output.status.code(), Some(2));
        assert!(output.stdout.is_empty());
        let said = String::from_utf8(output.stderr).expect("words");
        said.replace(&self.file().display().to_string(), "filled.csv")
    }
}

const FIRST: usize = 6;
const ACROSS: usize = 7;
const X: usize = 8;
const Y: usize = 9;
const REMARKS: usize = 10;

fn finding<'a>(report: &'a Value, rule: &str, verdict: &str) -> &'a Value {
    let findings = report["findings"].as_array().expect("findings");
    findings
        .iter()
        .find(|f| f["rule"] == rule && f["verdict"] == verdict)
        .unwrap_or_else(|| panic!("no {rule} is {verdict}"))
}

fn near(value: &Value, wanted: f64) -> bool {
    (value.as_f64().expect("a number") - wanted).abs() < 1e-6
}

/// Pitch up the column 2 19/32 in. T1 made 1 7/8 by 1 29/32 for 1 27/32: with T2 as designed, 2.59375 − (1.90625 + 1.84375)/2 =
/// 0.71875 in is left, and 1.90625/8 + 0.5 = 0.73828 asked: 0.01953 in below.
#[test]
fn by_hand_an_oval_hole_brings_its_ligament_below() {
    let record = Record::blank(MARL_HEN).fill(
        "T1",
        &[
            (FIRST, "1 7/8 in"),
            (ACROSS, "1 29/32 in"),
            (REMARKS, "scored"),
        ],
    );
    let report = record.json(MARL_HEN);
    let below = finding(&report, "tube_ligament", "below");
    assert!(near(&below["provided"], 0.71875), "{below}");
    assert!(near(&below["required"], 0.73828125), "{below}");
    let hole = &report["holes"][0];
    assert_eq!(hole["id"], "T1");
    assert!(near(&hole["over_mm"], 1.5875));
    assert!(near(&hole["oval_by_mm"], 0.79375));
    assert_eq!(hole["remarks"], "scored");
    let output = record.read_back(MARL_HEN, &[]);
    assert_eq!(output.status.code(), Some(1));
    let screen = String::from_utf8(output.stdout).expect("words");
    for said in [
        "Recorded: 1 of 106 holes in the flat, 0 of 56 rivet holes.",
        "Not recorded, and taken below as designed: T2-T100, P1, W1, S1-S4.",
        "T1 (tubes): 1 29/32 in for 1 27/32 in, +0.0625 in; oval by 0.0313 in; remarked: scored",
        "tube_ligament, T1–T2, column: below, was meets",
    ] {
        let said = said.replace(' ', "");
        assert!(
            screen.replace([' ', '\n'], "").contains(&said),
            "{said}\n{screen}"
        );
    }
}

/// T2 found 0.5 mm nearer to T1 than 2 19/32 in: 0.75 in is 19.05 mm, less 0.5 is 18.55 mm, 0.730315 in, and 0.730469 asked.
#[test]
fn by_hand_a_hole_off_its_place_takes_metal_too() {
    let record = Record::blank(MARL_HEN).fill("T2", &[(X, "-342.9"), (Y, "-99.3219")]);
    let report = record.json(MARL_HEN);
    let below = finding(&report, "tube_ligament", "below");
    assert!((below["provided"].as_f64().expect("metal") - 0.730315).abs() < 2e-6);
    assert!(near(&report["holes"][0]["off_x_mm"], 0.0));
    assert!((report["holes"][0]["off_y_mm"].as_f64().expect("mm") + 0.5).abs() < 1e-4);
}

/// A record with nothing in it, or with `within` for every size, is the plate as designed, finding for finding.
#[test]
fn holds_nothing_measured_or_all_within_is_the_design() {
    for spec in [MARL_HEN, "specs/pinders-oak-smokebox.yaml"] {
        let blank = Record::blank(spec);
        let report = blank.json(spec);
        assert_eq!(report["verdicts_changed"], Value::from(Vec::<Value>::new()));
        let all = report["not_recorded"].as_array().expect("numbers").len();
        assert!(all > 100);
        let items: Vec<String> = blank
            .text
            .lines()
            .skip_while(|line| !line.starts_with("item"))
            .skip(1)
            .filter_map(|line| line.split(',').next().map(String::from))
            .collect();
        let within = items.iter().fold(blank, |record, item| {
            record.fill(item, &[(FIRST, "within")])
        });
        let filled = within.json(spec);
        assert_eq!(filled["not_recorded"], Value::from(Vec::<Value>::new()));
        assert_eq!(filled["holes"].as_array().expect("holes").len(), all);
        assert_eq!(filled["findings"], report["findings"]);
    }
}

/// A spreadsheet may part cells by semicolons, end lines as it likes, put a mark of its own first and columns of the works' last.
#[test]
fn holds_as_a_spreadsheet_saves_it() {
    let plain = Record::blank(MARL_HEN).fill("T3", &[(FIRST, "46.90")]);
    let wanted = plain.json(MARL_HEN);
    let saved = plain
        .replace(",remarks,by,date", ",remarks,by,date,seat")
        .replace(",", ";");
    let saved = Record {
        text: format!("\u{feff}{}", saved.text.replace('\n', "\r\n")),
        ..saved
    };
    let report = saved.json(MARL_HEN);
    assert_eq!(report["holes"], wanted["holes"]);
    assert_eq!(report["findings"], wanted["findings"]);
    let output = saved.read_back(MARL_HEN, &[]);
    let screen = String::from_utf8(output.stdout).expect("words");
    assert!(screen.contains("Not read: the columns seat."), "{screen}");
}

#[test]
fn refuses_what_cannot_have_been_measured_all_at_once() {
    let record = Record::blank(MARL_HEN)
        .fill("T1", &[(FIRST, "468.3")])
        .fill("T2", &[(FIRST, "1.84")])
        .fill("T4", &[(X, "-342.9")])
        .fill("T5", &[(X, "342.9"), (Y, "98.822")])
        .fill("T6", &[(FIRST, "46;9")])
        .replace("T8,tubes", "T7,tubes");
    let said = record.refused(MARL_HEN);
    let facts: Vec<&str> = said
        .lines()
        .filter_map(|line| line.strip_prefix("refused: filled.csv, "))
        .collect();
    assert_eq!(
        facts[..4],
        [
            "line 10, made_first_way_mm: 468.3 is no size of a hole that was to be 1 27/32 in",
            "line 11, made_first_way_mm: 1.84 is no size of a hole that was to be 1 27/32 in",
            "line 13, made_y_mm: one figure of two is filled in, and a place has both",
            "line 14, made_x_mm: (342.9, 98.822) mm is 685.8 mm from where the hole was to be, more than its own diameter",
        ]
    );
    assert!(
        facts[4].starts_with("line 15, made_first_way_mm: "),
        "{}",
        facts[4]
    );
    assert_eq!(facts[5..], ["line 17, item: T7 stands in line 16 already"]);
}

#[test]
fn refuses_the_record_of_another_drawing() {
    let record = Record::blank("specs/pinders-oak-smokebox.yaml");
    let said = record.refused(MARL_HEN);
    assert!(
        said.starts_with("refused: filled.csv, line 1, drawing: the record is of drawing PO-TP1, and the spec is of MH-TP1\n   = remedy: give the spec for which the record was printed\n"),
        "{said}"
    );
    let said = Record::blank(MARL_HEN)
        .replace("made_first_way_mm", "made_frist_way_mm")
        .refused(MARL_HEN);
    assert!(
        said.contains("line 9, made_first_way_mm: there is no column made_first_way_mm"),
        "{said}"
    );
    let empty = Record {
        text: String::new(),
        ..Record::blank(MARL_HEN)
    };
    assert!(
        empty
            .refused(MARL_HEN)
            .contains("no row begins with `item`")
    );
}

/// Cells that would be read as others than were meant, or that a screen would obey, and a file without an end.
#[test]
fn refuses_cells_out_of_their_columns_and_marks_that_are_not_seen() {
    let record = Record::blank(MARL_HEN)
        .replace("T1,tubes", "T1\u{0},tubes")
        .fill("T2", &[(FIRST, "46,9")])
        .replace("T3,tubes", ",tubes")
        .fill("T4", &[(FIRST, &"9".repeat(60))])
        // One cell further on: what a rivet hole is has a comma in it.
        .fill("R1", &[(X + 1, "5")])
        .fill("R2", &[(5, "99")]);
    let said = record.refused(MARL_HEN);
    for fact in [
        "line 10, item: the plate has no hole T1\\u{0}\n",
        "line 11: T2 has 14 cells, and the heading 13\n",
        "line 12, item: the row does not say which hole it is of\n",
        ": R1 is a rivet hole, of which no place on the face is read\n",
        ": R2 has 99 here, and 23.81",
    ] {
        assert!(said.contains(fact), "{fact} in {said}");
    }
    assert!(!said.contains(&"9".repeat(41)), "{said}");
    assert!(!said.contains('\u{0}'));
}

#[test]
fn holds_a_record_without_its_fingerprint_says_so() {
    let record = Record::blank(MARL_HEN);
    let line = record
        .text
        .lines()
        .find(|line| line.starts_with("fingerprint,"));
    let line = line.expect("it is printed").to_string();
    let output = record
        .replace(&line, "fingerprint,")
        .read_back(MARL_HEN, &[]);
    let screen = String::from_utf8(output.stdout).expect("words");
    assert!(
        screen.contains("The record does not say for which spec it was printed"),
        "{screen}"
    );
}
