//! Cut files and results, judged by readers that are not ours: ezdxf, shapely and scipy.
//!
//! `CENTREPOP_PYTHON` names an interpreter that has `tests/requirements.txt`; without it that is `python3`. Where it lacks
//! them these tests say so and judge nothing; with `CENTREPOP_OUTSIDE=1` a missing reader is a failure.

mod common;

use std::path::{Path, PathBuf};
use std::process::Command;

use common::{Drawn, draw, draw_changed, results_of, specs};
use serde_json::Value;

/// Nearer than this two lengths are one, mm: the last digit of a cut file.
const SAME_MM: f64 = 1e-6;

/// The interpreter, if it has every module that the scripts import.
fn python() -> Option<PathBuf> {
    let wanted = std::env::var_os("CENTREPOP_OUTSIDE").is_some_and(|set| set == "1");
    let named = std::env::var_os("CENTREPOP_PYTHON");
    let python = PathBuf::from(named.unwrap_or_else(|| "python3".into()));
    let has_all = |python: &PathBuf| {
        let mut command = Command::new(python);
        command.args(["-c", "import ezdxf, numpy, scipy, shapely"]);
        command.output().is_ok_and(|run| run.status.success())
    };
    let found = Some(python).filter(has_all);
    if found.is_none() {
        let words = "there is no interpreter with tests/requirements.txt";
        assert!(!wanted, "{words}");
        eprintln!("skipped, since {words}");
    }
    found
}

/// What a script of `tests/outside/` makes of these files.
fn ask(python: &Path, script: &str, files: &[PathBuf]) -> Value {
    let run = Command::new(python)
        .arg(Path::new("tests/outside").join(script))
        .args(files)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("the interpreter runs");
    assert!(
        run.status.success(),
        "{script}: {}",
        String::from_utf8_lossy(&run.stderr)
    );
    serde_json::from_slice(&run.stdout).expect("the script answers in JSON")
}

/// Every spec of the repository, and the fabricated one again with every setting of `cutting` turned.
fn drawn_specs() -> Vec<Drawn> {
    let mut drawn: Vec<Drawn> = specs().into_iter().map(draw).collect();
    drawn.push(draw_changed(
        "specs/hobthrush-smokebox.yaml",
        &[
            (
                "process: waterjet",
                "process: plasma\n  dress_outside: 3 mm\n  pop: point\n  least_hole: 30 mm",
            ),
            (
                "purpose: tube, cut: undersize, under: 2 mm",
                "purpose: tube, cut: undersize, under: 6 mm",
            ),
            (
                "purpose: stay, cut: undersize, under: 2 mm",
                "purpose: stay, cut: undersize, under: 6 mm",
            ),
            ("how: in place", "how: in place\n  tack_every: 4"),
        ],
    ));
    for one in &drawn {
        assert_eq!(one.status(), 0, "{}{}", one.screen(), one.errors());
    }
    drawn
}

fn number(value: &Value) -> f64 {
    value
        .as_f64()
        .unwrap_or_else(|| panic!("{value} is no number"))
}

fn numbers(value: &Value) -> Vec<f64> {
    value
        .as_array()
        .expect("a list")
        .iter()
        .map(number)
        .collect()
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= SAME_MM
}

/// Each cut file of a pack, with its measurement and its entry in `results.json`.
fn measured(python: &Path, drawn: &Drawn) -> Vec<(String, Value, Value)> {
    let results = results_of(&drawn.pack);
    let entries = results["cut_files"].as_array().expect("cut files").clone();
    let paths: Vec<PathBuf> = entries
        .iter()
        .map(|entry| drawn.pack.join(entry["file"].as_str().expect("a path")))
        .collect();
    assert!(!paths.is_empty(), "{}", drawn.screen());
    let answers = ask(python, "cut_file.py", &paths);
    entries
        .into_iter()
        .zip(answers.as_array().expect("a list").clone())
        .map(|(entry, answer)| {
            let file = entry["file"].as_str().expect("a path").to_string();
            (file, entry, answer)
        })
        .collect()
}

#[test]
fn holds_cut_files_are_read_strictly_with_nothing_to_mend() {
    let Some(python) = python() else { return };
    for drawn in drawn_specs() {
        for (file, _, read) in measured(&python, &drawn) {
            let version = if file.contains("/r12/") {
                "AC1009"
            } else {
                "AC1015"
            };
            assert_eq!(read["version"], version, "{file}");
            assert_eq!(read["errors"], Value::Array(vec![]), "{file}");
            assert_eq!(read["fixes"], Value::Array(vec![]), "{file}");
            assert_eq!(
                (&read["insunits"], &read["measurement"]),
                (&4.into(), &1.into())
            );
            assert_eq!(read["pure_ascii"], true, "{file}");
            assert_eq!(read["bare_newlines"], 0, "{file}");
            for layer in read["polyline_layers"].as_array().expect("layers") {
                assert!(
                    layer == "CUT-OUTSIDE" || layer == "REFERENCE" || layer == "SCRIBE",
                    "{layer}"
                );
            }
        }
    }
}

#[test]
fn holds_cut_files_hold_what_results_say_of_them() {
    let Some(python) = python() else { return };
    for drawn in drawn_specs() {
        for (file, entry, read) in measured(&python, &drawn) {
            let circles =
                |layer: &str| entry["layers"][layer]["circles"].as_u64().expect("a count");
            let marks = entry["layers"]["POP"]["marks"].as_u64().expect("a count");
            let kinds =
                |layer: &str, kind: &str| read["entities"][layer][kind].as_u64().unwrap_or(0);
            assert_eq!(
                circles("CUT-INSIDE"),
                kinds("CUT-INSIDE", "CIRCLE"),
                "{file}"
            );
            assert_eq!(
                circles("CUT-INSIDE"),
                read["inside"].as_array().expect("a list").len() as u64
            );
            assert_eq!(
                marks,
                kinds("POP", "LINE") / 2 + kinds("POP", "POINT"),
                "{file}"
            );
            let [outside] = &read["outside"].as_array().expect("a list")[..] else {
                panic!("{file} has one edge");
            };
            let edge = numbers(&outside["box"]);
            let extent = numbers(&entry["extent_mm"]);
            assert!(
                same(edge[2] - edge[0], extent[0]) && same(edge[3] - edge[1], extent[1]),
                "{file}"
            );
            for header in ["header_box", "limits"] {
                let pairs = numbers(&read[header]).into_iter().zip(edge.clone());
                assert!(pairs.clone().all(|(a, b)| same(a, b)), "{file} {header}");
            }
        }
    }
}

#[test]
fn holds_cut_files_are_closed_simple_and_nested_and_carry_their_proving_square() {
    let Some(python) = python() else { return };
    for drawn in drawn_specs() {
        for (file, _, read) in measured(&python, &drawn) {
            for contour in read["outside"].as_array().expect("a list") {
                if contour["circle"].is_null() {
                    assert_eq!(contour["closed"], true, "{file}");
                    assert_eq!(contour["simple"], true, "{file}");
                    assert!(number(&contour["bulge_most"]) <= 1.0, "{file}");
                }
            }
            assert_eq!(read["inside_all_within"], true, "{file}");
            assert_eq!(read["marks_all_within"], true, "{file}");
            assert_eq!(read["reference_clear"], true, "{file}");
            let squares = read["proving_square"].as_array().expect("a list");
            assert_eq!(squares.len(), 1, "{file}");
            let square = numbers(&squares[0]);
            assert!(same(square[2] - square[0], 100.0) && same(square[3] - square[1], 100.0));
        }
    }
}

/// The blank is a disc 45 in across: π × 571.5² = 1,026,082.6 mm². The keyhole plate by the sums of its circle, leg and
/// fillets: 889,353 mm² and 3,625.4 mm round. The strip is π × 824 = 2,588.7 mm by 90.
#[test]
fn by_hand_areas_and_lengths_of_the_edges() {
    let Some(python) = python() else { return };
    let wanted = [
        ("mh-tp1-a-blank", "1026083", "3590.8"),
        ("hb-tp1-a-plate-waterjet", "889353", "3625.4"),
        ("hb-tp1-a-ring", "232981", "5357.3"),
    ];
    let mut seen = 0;
    for drawn in specs().into_iter().map(draw) {
        for (file, _, read) in measured(&python, &drawn) {
            for (name, area, length) in wanted.iter().filter(|(name, ..)| file.contains(name)) {
                let edge = &read["outside"][0];
                assert_eq!(format!("{:.0}", number(&edge["area"])), *area, "{name}");
                assert_eq!(format!("{:.1}", number(&edge["length"])), *length, "{name}");
                seen += 1;
            }
        }
    }
    assert_eq!(seen, 6, "three parts in two versions");
}

#[test]
fn holds_least_ligaments_are_those_of_a_tree_over_results_and_over_the_cut_files() {
    let Some(python) = python() else { return };
    for drawn in drawn_specs() {
        let results = results_of(&drawn.pack);
        let json = drawn.pack.join("results.json");
        let mut questions = vec![vec![json.clone()]];
        for entry in results["cut_files"].as_array().expect("cut files") {
            if entry["layers"]["CUT-INSIDE"]["circles"] != 0 {
                let file = entry["file"].as_str().expect("a path");
                questions.push(vec![json.clone(), drawn.pack.join(file)]);
            }
        }
        for files in questions {
            let answer = ask(&python, "ligaments.py", &files);
            assert_eq!(answer["strays"], Value::Array(vec![]), "{files:?}");
            let ours = results["ligaments"]["least"].as_array().expect("a list");
            let theirs = answer["least"].as_array().expect("a list");
            assert_eq!(ours.len(), theirs.len(), "{files:?}");
            for least in theirs {
                let found = ours.iter().find(|o| {
                    let mut between: Vec<&str> = o["between"]
                        .as_array()
                        .expect("two")
                        .iter()
                        .map(|p| p.as_str().expect("a purpose"))
                        .collect();
                    between.sort_unstable();
                    Value::from(between) == least["between"]
                });
                let found = found.unwrap_or_else(|| panic!("{least} is not in results"));
                // Two places to the sixth decimal may each be half a unit out, both ways.
                let near = (number(&found["mm"]) - number(&least["mm"])).abs() <= 2.0 * SAME_MM;
                assert!(near, "{found} and {least}");
            }
        }
    }
}

/// Waterjet takes 2 mm off every hole; plasma 6 mm off tubes and stays, 2 mm off the pipe, and of stays, 33 - 6 = 27 mm is
/// below the least clean hole of 30 mm, so that they become pops.
#[test]
fn by_hand_holes_are_cut_by_so_much_under() {
    let Some(python) = python() else { return };
    let under = |drawn: &Drawn, file: &str| {
        let files = [drawn.pack.join("results.json"), drawn.pack.join(file)];
        ask(&python, "ligaments.py", &files)["under"].clone()
    };
    let cold = draw("specs/hobthrush-smokebox.yaml");
    let under_cold = under(&cold, "cut/hb-tp1-a-plate-waterjet-mm.dxf");
    for purpose in ["tube", "stay", "steam pipe"] {
        for figure in numbers(&under_cold[purpose]) {
            assert!(same(figure, 2.0), "{purpose}: {figure}");
        }
    }
    let hot = drawn_specs().pop().expect("the changed one");
    let under_hot = under(&hot, "cut/hb-tp1-a-plate-plasma-mm.dxf");
    assert!(
        numbers(&under_hot["tube"])
            .into_iter()
            .all(|figure| same(figure, 6.0))
    );
    assert!(
        numbers(&under_hot["steam pipe"])
            .into_iter()
            .all(|figure| same(figure, 2.0))
    );
    assert!(under_hot["stay"].is_null(), "{under_hot}");
}

/// Cut files written again by another program, unaltered in many forms and altered in one way each: `compare` finds what was
/// altered, and nothing where nothing was.
#[test]
fn holds_compare_finds_what_another_program_altered_and_nothing_else() {
    let Some(python) = python() else { return };
    let files = [
        ("hobthrush", "cut/hb-tp1-a-plate-waterjet-mm.dxf"),
        ("hobthrush", "cut/r12/hb-tp1-a-plate-waterjet-mm.dxf"),
        ("marl-hen", "cut/mh-tp1-a-blank-plasma-mm.dxf"),
    ];
    let mut wrong = Vec::new();
    for (name, cut) in files {
        let spec = PathBuf::from(format!("specs/{name}-smokebox.yaml"));
        let drawn = draw(spec.clone());
        let folder = tempfile::tempdir().expect("a folder");
        let question = [drawn.pack.join(cut), folder.path().to_path_buf()];
        let written = ask(&python, "rewrite.py", &question);
        let written = written.as_array().expect("a list");
        assert!(written.len() > 30, "{cut}");
        for one in written {
            let file = one["file"].as_str().expect("a path");
            let mut command = common::centrepop();
            command.arg("compare").arg(&spec).arg(file).arg("--json");
            let run = command.output().expect("it runs");
            let report: Value = serde_json::from_slice(&run.stdout).unwrap_or_default();
            let differences = report["differences"].as_array().cloned();
            let mut kinds: Vec<Value> = differences
                .unwrap_or_default()
                .iter()
                .map(|d| d["kind"].clone())
                .collect();
            kinds.sort_by_key(Value::to_string);
            kinds.dedup();
            let status = run.status.code();
            if Value::Array(kinds.clone()) != one["wants"]
                || status != Some(i32::from(!kinds.is_empty()))
            {
                wrong.push(format!(
                    "{cut} {file}: {kinds:?}, not {}; {status:?}",
                    one["wants"]
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
