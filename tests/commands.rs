//! The commands as a drawing office runs them: what is written, what is said, and how they end.

mod common;

use std::path::Path;
use std::process::{Command, Stdio};

use common::{centrepop, draw, draw_changed, draw_into, files_below, pack_of, results_of};
use serde_json::Value;
use sha2::{Digest, Sha256};

const MARL_HEN: &str = "specs/marl-hen-smokebox.yaml";
/// Every command, in the order of the help.
const COMMANDS: &[&str] = &[
    "draw", "check", "explain", "compare", "propose", "asmade", "new", "schema",
];
const HOBTHRUSH: &str = "specs/hobthrush-smokebox.yaml";

#[test]
fn holds_a_pack_is_whole_and_its_manifest_answers_for_every_file() {
    for spec in common::specs() {
        let files = files_below(&pack_of(&spec));
        let manifest: Value = serde_json::from_slice(&files["manifest.json"]).unwrap();
        let listed: Vec<(&str, &str, u64)> = manifest["files"]
            .as_array()
            .unwrap()
            .iter()
            .map(|file| {
                (
                    file["path"].as_str().unwrap(),
                    file["sha256"].as_str().unwrap(),
                    file["bytes"].as_u64().unwrap(),
                )
            })
            .collect();
        let found: Vec<(&str, String, u64)> = files
            .iter()
            .filter(|(path, _)| *path != "manifest.json")
            .map(|(path, bytes)| (path.as_str(), sha256(bytes), bytes.len() as u64))
            .collect();
        let found: Vec<(&str, &str, u64)> =
            found.iter().map(|(p, s, b)| (*p, s.as_str(), *b)).collect();
        assert_eq!(listed, found, "{}", spec.display());
        let spec_sha256 = sha256(&std::fs::read(&spec).unwrap());
        assert_eq!(manifest["spec_sha256"], Value::from(spec_sha256.clone()));
        assert_eq!(manifest["fingerprint"], Value::from(&spec_sha256[..10]));
    }
}

fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

/// One fingerprint stands in every file that is made of words, so that two papers can be told to carry the same figures.
#[test]
fn holds_the_fingerprint_stands_in_every_file_of_words() {
    let fingerprint = sha256(&std::fs::read(MARL_HEN).unwrap())[..10].to_string();
    for (path, bytes) in files_below(&pack_of(MARL_HEN)) {
        let of_words = [".html", ".json", ".dxf", ".txt", ".csv"]
            .iter()
            .any(|end| path.ends_with(end));
        if of_words {
            let text = String::from_utf8_lossy(&bytes);
            assert!(text.contains(&fingerprint), "{path}");
        }
    }
}

#[test]
fn holds_the_same_spec_gives_the_same_bytes() {
    for spec in common::specs() {
        let again = files_below(&draw(&spec).pack);
        let first = files_below(&pack_of(&spec));
        let differ: Vec<&String> = first
            .keys()
            .filter(|path| first.get(*path) != again.get(*path))
            .collect();
        assert!(differ.is_empty(), "{}: {differ:?}", spec.display());
        assert_eq!(first.len(), again.len());
    }
}

#[test]
fn holds_drawing_again_replaces_the_pack_and_keeps_a_filled_in_record() {
    let out = tempfile::tempdir().unwrap();
    draw_into(Path::new(MARL_HEN), out.path());
    let pack = out.path().join("MH-TP1-A");
    let first = files_below(&pack);
    let record = pack.join("record/inspection.csv");
    std::fs::write(&record, "T1, 46.9").unwrap();
    let again = draw_into(Path::new(MARL_HEN), out.path());
    assert_eq!(files_below(&pack), first);
    let kept = out.path().join("MH-TP1-A.kept/record/inspection.csv");
    assert_eq!(std::fs::read_to_string(kept).unwrap(), "T1, 46.9");
    let screen = String::from_utf8(again.stdout).unwrap();
    assert!(screen.contains("MH-TP1-A.kept"), "{screen}");
}

/// Without its concession the inch form of the ligament rule stands: 39/8 + 12.7 = 17.575 mm asked, 17.500 mm in the row.
#[test]
fn holds_below_and_not_conceded_writes_no_cut_file() {
    let text = std::fs::read_to_string(HOBTHRUSH).unwrap();
    let from = text.find("concessions:").unwrap();
    let to = text.find("cutting:").unwrap();
    let drawn = draw_changed(HOBTHRUSH, &[(&text[from..to], "")]);
    assert_eq!(drawn.status(), 1);
    let files = files_below(&drawn.pack);
    assert!(
        !files.keys().any(|path| path.starts_with("cut")),
        "{:?}",
        files.keys()
    );
    for (path, bytes) in files.iter().filter(|(path, _)| path.starts_with("sheets/")) {
        let svg = String::from_utf8_lossy(bytes);
        assert!(svg.contains("NOT FOR CUTTING"), "{path}");
    }
    assert_eq!(results_of(&drawn.pack)["cut_files"], serde_json::json!([]));
    let screen = drawn.screen();
    let last = screen.lines().last().unwrap();
    assert!(last.starts_with("no cut file was written"), "{screen}");
    assert!(last.contains("not judged"), "{screen}");
}

#[test]
fn refuses_a_spec_and_leaves_the_old_pack_as_it_was() {
    let out = tempfile::tempdir().unwrap();
    draw_into(Path::new(MARL_HEN), out.path());
    let before = files_below(out.path());
    let folder = tempfile::tempdir().unwrap();
    let bad = folder.path().join("bad.yaml");
    let text = std::fs::read_to_string(MARL_HEN).unwrap();
    std::fs::write(&bad, text.replacen("view_from:", "seen_from:", 1)).unwrap();
    let refused = draw_into(&bad, out.path());
    assert_eq!(refused.status.code(), Some(2));
    assert_eq!(refused.stdout, b"");
    let said = String::from_utf8(refused.stderr).unwrap();
    assert!(
        said.contains("seen_from") && said.contains("view_from"),
        "{said}"
    );
    assert_eq!(files_below(out.path()), before);
}

#[test]
fn refuses_a_spec_and_writes_no_folder() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("output");
    let refused = draw_into(&folder.path().join("none.yaml"), &out);
    assert_eq!(refused.status.code(), Some(2));
    let said = String::from_utf8(refused.stderr).unwrap();
    assert!(said.contains("none.yaml"), "{said}");
    assert!(!out.exists());
}

#[test]
fn refuses_to_write_where_it_cannot() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("output");
    std::fs::write(&out, "a file, not a folder").unwrap();
    let refused = draw_into(Path::new(MARL_HEN), &out);
    assert_eq!(refused.status.code(), Some(2));
    let said = String::from_utf8(refused.stderr).unwrap();
    assert!(said.starts_with("cannot create"), "{said}");
    assert_eq!(
        std::fs::read_to_string(&out).unwrap(),
        "a file, not a folder"
    );
}

/// `centrepop draw … | head -1` is no fault of the drawing.
#[test]
fn holds_a_reader_that_leaves_early_does_no_harm() {
    let out = tempfile::tempdir().unwrap();
    let mut child = Command::new(assert_cmd::cargo::cargo_bin!("centrepop"))
        .args(["draw", MARL_HEN, "--out"])
        .arg(out.path())
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let ended = child.wait_with_output().unwrap();
    assert_eq!(ended.status.code(), Some(0));
    assert_eq!(String::from_utf8(ended.stderr).unwrap(), "");
    assert!(out.path().join("MH-TP1-A/manifest.json").exists());
}

#[test]
fn holds_help_shows_every_command_with_an_example() {
    let help = |arguments: &[&str]| {
        let output = centrepop().args(arguments).output().unwrap();
        assert_eq!(output.status.code(), Some(0));
        String::from_utf8(output.stdout).unwrap()
    };
    let all = help(&["--help"]);
    for command in COMMANDS {
        assert!(all.contains(command), "{all}");
        let one = help(&[command, "--help"]);
        assert!(one.contains(&format!("centrepop {command}")), "{one}");
        assert!(one.contains("Example"), "{one}");
    }
}

#[test]
fn holds_every_spec_to_start_from_can_be_drawn() {
    let folder = tempfile::tempdir().unwrap();
    for kind in centrepop::commands::new::kinds() {
        let started = centrepop().args(["new", kind]).output().unwrap();
        assert_eq!(started.status.code(), Some(0));
        let spec = folder.path().join(format!("{kind}.yaml"));
        std::fs::write(&spec, started.stdout).unwrap();
        let drawn = draw(&spec);
        assert_eq!(drawn.status(), 0, "{kind}: {}", drawn.errors());
    }
}

#[test]
fn refuses_a_kind_of_spec_that_there_is_none_of() {
    let output = centrepop().args(["new", "kettle"]).output().unwrap();
    assert_eq!(
        (output.status.code(), output.stdout.as_slice()),
        (Some(2), &b""[..])
    );
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(
        said.contains("kettle") && said.contains("smokebox-tube-plate-pressed"),
        "{said}"
    );
}

/// The schema names every key at the top of the specs of the repository.
#[test]
fn holds_the_schema_knows_the_keys_of_the_specs() {
    let output = centrepop().arg("schema").output().unwrap();
    let schema: Value = serde_json::from_slice(&output.stdout).unwrap();
    let known = schema["properties"].as_object().unwrap();
    for spec in common::specs() {
        let text = std::fs::read_to_string(&spec).unwrap();
        let keys = text
            .lines()
            .filter_map(|line| line.split_once(':'))
            .map(|(key, _)| key);
        for key in keys.filter(|key| key.starts_with(|c: char| c.is_ascii_lowercase())) {
            assert!(known.contains_key(key), "{key} in {}", spec.display());
        }
    }
}

#[test]
fn holds_a_pack_has_all_its_parts() {
    let pack = pack_of(MARL_HEN);
    assert!(pack.ends_with("MH-TP1-A"));
    let files = files_below(&pack);
    for path in [
        "index.html",
        "drawing.pdf",
        "sheets/1-general.svg",
        "preview.png",
        "cut/mh-tp1-a-blank-plasma-mm.dxf",
        "cut/r12/mh-tp1-a-blank-plasma-mm.dxf",
        "cut/order-note.txt",
        "cut/order-note.pdf",
        "tables/holes.csv",
        "tables/rivets.csv",
        "tables/stays.csv",
        "tables/tubes.csv",
        "record/inspection.csv",
        "results.json",
        "manifest.json",
    ] {
        assert!(files.contains_key(path), "no {path}");
    }
}

#[test]
fn holds_a_conceded_finding_lets_the_cut_files_go_and_is_printed() {
    let files = files_below(&pack_of(HOBTHRUSH));
    assert!(files.keys().any(|path| path.ends_with(".dxf")));
    for path in ["index.html", "cut/order-note.txt"] {
        let words = String::from_utf8_lossy(&files[path]);
        assert!(words.contains("letter HB/114"), "{path}");
    }
}

/// Geometry and drawings are made without a pressure; what wants it is not judged, and says which key would settle it.
#[test]
fn holds_without_a_pressure_strength_is_not_judged() {
    let text = std::fs::read_to_string(MARL_HEN).unwrap();
    let line = text
        .lines()
        .find(|line| line.starts_with("working_pressure:"))
        .unwrap();
    let drawn = draw_changed(MARL_HEN, &[(line, "")]);
    assert_eq!(drawn.status(), 0, "{}", drawn.errors());
    let results = results_of(&drawn.pack);
    assert_eq!(results["figures"]["tube_count"], 100);
    assert_eq!(results["figures"]["end_load_n"], Value::Null);
    let wants: Vec<&Value> = results["findings"]
        .as_array()
        .unwrap()
        .iter()
        .filter(|finding| finding["verdict"] == "not judged")
        .filter(|finding| finding.to_string().contains("working_pressure"))
        .collect();
    assert!(!wants.is_empty());
    assert!(
        drawn
            .screen()
            .lines()
            .last()
            .unwrap()
            .contains("not judged")
    );
}

/// The steam pipe moved by 1 mm and the tubes' lowest row, of four, left off: 119 less 4 is 115.
#[test]
fn by_hand_two_specs_are_compared_by_keys_and_holes() {
    let folder = tempfile::tempdir().unwrap();
    let new = folder.path().join("new.yaml");
    let text =
        std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(HOBTHRUSH)).unwrap();
    let changed = text
        .replacen("[[0 mm, 285 mm]]", "[[1 mm, 285 mm]]", 1)
        .replacen("first: -7", "first: -6", 1);
    std::fs::write(&new, changed).unwrap();
    let compare = |other: &Path, json: bool| {
        let mut command = centrepop();
        command.args(["compare", HOBTHRUSH]).arg(other);
        if json {
            command.arg("--json");
        }
        let run = command.output().unwrap();
        (run.status.code(), String::from_utf8(run.stdout).unwrap())
    };
    let (status, words) = compare(&new, false);
    assert_eq!(status, Some(1));
    for line in [
        "tubes[0].pattern.rows.first: -6, was -7",
        "holes[0].at[0][0]: 1 mm, was 0 mm",
        "tubes: 115 holes, were 119",
        "moved: P1 (steam pipe): from (0, 285) mm to (1, 285) mm, by 1 mm",
        "T5 to T119, now T1 to T115",
    ] {
        assert!(words.contains(line), "{line}\n{words}");
    }
    let report: Value = serde_json::from_str(&compare(&new, true).1).unwrap();
    let left_out = report["holes"].as_array().unwrap().iter();
    let left_out = left_out.filter(|hole| hole["change"] == "left out").count();
    assert_eq!(left_out, 4);
    let (status, words) = compare(Path::new(HOBTHRUSH), false);
    assert_eq!(status, Some(0));
    assert!(words.ends_with("No difference.\n"), "{words}");
}

/// A cut file of the pack has no difference; what is no cut file, and a part that is none, are refused.
#[test]
fn holds_a_cut_file_of_the_pack_is_as_the_spec_has_it() {
    let pack = pack_of(Path::new(HOBTHRUSH));
    let file = pack.join("cut/hb-tp1-a-plate-waterjet-mm.dxf");
    let run = |extra: &[&str], file: &Path| {
        let mut command = centrepop();
        command.args(["compare", HOBTHRUSH]).arg(file).args(extra);
        command.output().unwrap()
    };
    let same = run(&["--within", "0.001 mm"], &file);
    assert_eq!(same.status.code(), Some(0));
    assert!(
        String::from_utf8(same.stdout)
            .unwrap()
            .contains("No difference.")
    );
    for (extra, says) in [
        (&["--part", "lid"][..], "the spec cuts no part named lid"),
        (&["--within", "0 mm"][..], "is no distance"),
    ] {
        let refused = run(extra, &file);
        assert_eq!(refused.status.code(), Some(2));
        assert!(
            String::from_utf8(refused.stderr).unwrap().contains(says),
            "{says}"
        );
    }
    let refused = run(&[], &pack.join("cut/no-such-file.dxf"));
    assert_eq!(refused.status.code(), Some(2));
    assert!(
        String::from_utf8(refused.stderr)
            .unwrap()
            .contains("cannot be read")
    );
}

/// The spec that the README shows is the first that a newcomer copies: it can be checked as it stands, and nothing is below.
#[test]
fn holds_the_spec_of_the_readme_can_be_checked() {
    let readme =
        std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/README.md")).unwrap();
    let (_, after) = readme
        .split_once("```yaml\n")
        .expect("a spec in the README");
    let (spec, _) = after.split_once("```").expect("its end");
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("readme.yaml");
    std::fs::write(&file, spec).unwrap();
    let outcome = centrepop()
        .arg("check")
        .arg(&file)
        .output()
        .expect("it runs");
    let said = String::from_utf8_lossy(&outcome.stdout);
    assert_eq!(outcome.status.code(), Some(0), "{outcome:?}");
    assert!(said.contains(" 0 below"), "{said}");
}
