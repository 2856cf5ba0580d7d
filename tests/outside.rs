//! Cut files, results and drawings, judged by readers that are not ours: ezdxf, GDAL, PyMuPDF, shapely and scipy.
//!
//! `CENTREPOP_PYTHON` names an interpreter that has `tests/requirements.txt`; without it that is `python3`. Where it lacks
//! them these tests say so and judge nothing; with `CENTREPOP_OUTSIDE=1` a missing reader is a failure.

mod common;

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;

use centrepop::units::angle::hypot;
use common::{draw, draw_into, pack_of, results_of, specs, the_pack_in};
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
        command.args([
            "-c",
            "import ezdxf, numpy, pymupdf, pyogrio, scipy, shapely",
        ]);
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

/// A pack drawn for every test of this file.
struct Pack {
    folder: PathBuf,
    results: Value,
}

impl Pack {
    /// The cut file whose path ends so.
    fn file(&self, name: &str) -> PathBuf {
        self.folder.join(name)
    }

    fn entries(&self) -> &[Value] {
        self.results["cut_files"].as_array().expect("cut files")
    }
}

/// A doubling ring, added to those there are.
const PAD: &str = "pads:
  - name: mud door ring
    diameter: 300 mm
    bore: 120 mm
    thickness: 12 mm
    holes:
      - {name: studs, purpose: bolt, hole: 20.5 mm, at: [[100 mm, 0 mm], [0 mm, 100 mm], [-100 mm, 0 mm], [0 mm, -100 mm]]}
";

/// A name, a spec, and words of it with what stands in their place.
type Changed = (
    &'static str,
    &'static str,
    &'static [(&'static str, &'static str)],
);

/// Specs with some words changed: every setting of `cutting`, every sort of part.
const CHANGED: [Changed; 3] = [
    (
        "hot",
        "hobthrush",
        &[
            (
                "process: waterjet",
                "process: plasma\n  dress_outside: 3 mm\n  pop: point",
            ),
            ("least_hole: 5 mm", "least_hole: 30 mm"),
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
    ),
    (
        "with every part",
        "hobthrush",
        &[
            ("pads:\n", PAD),
            ("least_web_thicknesses: 1 ", "least_web_thicknesses: 0.6 "),
            (
                "process: waterjet",
                "process: waterjet\n  starting_figures: waterjet\n  dress_inside: 1 mm\n  templates: true\n  rolling: across",
            ),
            (
                "    - {purpose: tube, cut: undersize, under: 2 mm}\n",
                "    - {purpose: tube, cut: undersize, allowance: {edge: 0 mm, taper: 0.25 mm, position: 0.25 mm, origin: works}}\n",
            ),
            (
                "ring_width: 90 mm",
                "ring_width: 90 mm\n    strip_preparation: {size: 3 mm, origin: works}\n    strip_roll_waste: {size: 80 mm, origin: works}",
            ),
        ],
    ),
    (
        "with templates",
        "marl-hen",
        &[
            (
                "process: plasma",
                "process: plasma\n  templates: true\n  rolling: upright",
            ),
            (
                "trim: 1/2 in",
                "trim: 1/2 in\n    former_hot_allowance: {share: 0.012, origin: works}",
            ),
        ],
    ),
];

/// Every spec of the repository, then the changed ones: drawn once for all tests of this file, in a folder that is cleared at the
/// next run.
fn packs() -> &'static [Pack] {
    static PACKS: OnceLock<Vec<Pack>> = OnceLock::new();
    PACKS.get_or_init(|| {
        let top = Path::new(env!("CARGO_TARGET_TMPDIR")).join("outside");
        let _ = std::fs::remove_dir_all(&top);
        let mut all: Vec<(PathBuf, PathBuf)> = Vec::new();
        for spec in specs() {
            let name = spec.file_stem().expect("a name").to_os_string();
            all.push((spec, top.join(name)));
        }
        for (name, spec, changes) in CHANGED {
            let out = top.join(name);
            std::fs::create_dir_all(&out).expect("a folder");
            let changed = top.join(format!("{name}.yaml"));
            std::fs::write(&changed, changed_spec(spec, changes)).expect("a spec written");
            all.push((changed, out));
        }
        let drawn = all.into_iter().map(|(spec, out)| {
            let run = draw_into(&spec, &out);
            let errors = String::from_utf8_lossy(&run.stderr);
            assert!(run.status.success(), "{}: {errors}", spec.display());
            let folder = the_pack_in(&out);
            let results = results_of(&folder);
            Pack { folder, results }
        });
        drawn.collect()
    })
}

fn changed_spec(spec: &str, changes: &[(&str, &str)]) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("specs/{spec}-smokebox.yaml"));
    let mut text = std::fs::read_to_string(path).expect("a spec");
    for (from, to) in changes {
        assert!(text.contains(from), "{spec} has no {from:?}");
        text = text.replacen(from, to, 1);
    }
    text
}

/// The pack of a changed spec.
fn changed(name: &str) -> &'static Pack {
    let index = CHANGED.iter().position(|(n, ..)| *n == name);
    let from_the_end = CHANGED.len() - index.expect("a name of the table");
    &packs()[packs().len() - from_the_end]
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

/// A cut file, its entry in `results.json`, and what a reader made of it.
struct Read {
    pack: &'static Pack,
    file: String,
    entry: &'static Value,
    read: Value,
}

/// Every cut file of every pack, as one run of a script measures them all.
fn measured(python: &Path, script: &str) -> Vec<Read> {
    let all: Vec<(&'static Pack, &'static Value)> = packs()
        .iter()
        .flat_map(|pack| pack.entries().iter().map(move |entry| (pack, entry)))
        .collect();
    let path = |entry: &Value| entry["file"].as_str().expect("a path").to_string();
    let paths: Vec<PathBuf> = all
        .iter()
        .map(|(pack, entry)| pack.file(&path(entry)))
        .collect();
    let answers = ask(python, script, &paths);
    let answers = answers.as_array().expect("a list").clone();
    assert_eq!(answers.len(), all.len());
    all.into_iter()
        .zip(answers)
        .map(|((pack, entry), read)| Read {
            pack,
            file: path(entry),
            entry,
            read,
        })
        .collect()
}

/// What ezdxf makes of every cut file, asked once for all tests.
fn read_by_ezdxf(python: &Path) -> &'static [Read] {
    static READ: OnceLock<Vec<Read>> = OnceLock::new();
    READ.get_or_init(|| measured(python, "cut_file.py"))
}

#[test]
fn holds_cut_files_are_read_strictly_with_nothing_to_mend() {
    let Some(python) = python() else { return };
    for Read { file, read, .. } in read_by_ezdxf(&python) {
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

#[test]
fn holds_cut_files_hold_what_results_say_of_them() {
    let Some(python) = python() else { return };
    for Read {
        file, entry, read, ..
    } in read_by_ezdxf(&python)
    {
        let circles = |layer: &str| entry["layers"][layer]["circles"].as_u64().expect("a count");
        let marks = entry["layers"]["POP"]["marks"].as_u64().expect("a count");
        let kinds = |layer: &str, kind: &str| read["entities"][layer][kind].as_u64().unwrap_or(0);
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

#[test]
fn holds_cut_files_are_closed_simple_and_nested_and_carry_their_proving_square() {
    let Some(python) = python() else { return };
    for Read { file, read, .. } in read_by_ezdxf(&python) {
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

/// The blank is a disc 45 in across: π × 571.5² = 1,026,082.6 mm². The keyhole plate by the sums of its circle, leg and
/// fillets: 889,353 mm² and 3,625.4 mm round. The strip is π × 824 = 2,588.7 mm by 90.
#[test]
fn by_hand_areas_and_lengths_of_the_edges() {
    let Some(python) = python() else { return };
    let wanted = [
        ("mh-tp1-a-blank", "1026083", "3590.8"),
        ("hb-tp1-a-plate-waterjet", "889353", "3625.4"),
        ("hb-tp1-a-ring-waterjet", "232981", "5357.3"),
    ];
    let mut seen = 0;
    for Read {
        pack, file, read, ..
    } in read_by_ezdxf(&python)
    {
        let as_it_stands = !pack.folder.to_string_lossy().contains("with ");
        for (name, area, length) in wanted
            .iter()
            .filter(|(name, ..)| as_it_stands && file.contains(name))
        {
            let edge = &read["outside"][0];
            assert_eq!(format!("{:.0}", number(&edge["area"])), *area, "{name}");
            assert_eq!(format!("{:.1}", number(&edge["length"])), *length, "{name}");
            seen += 1;
        }
    }
    assert_eq!(seen, 6, "three parts in two versions");
}

#[test]
fn holds_least_ligaments_are_those_of_a_tree_over_results_and_over_the_cut_files() {
    let Some(python) = python() else { return };
    let mut questions: Vec<(&Pack, Vec<PathBuf>)> = Vec::new();
    for pack in packs() {
        let json = pack.file("results.json");
        questions.push((pack, vec![json.clone()]));
        for entry in pack.entries() {
            let file = entry["file"].as_str().expect("a path");
            if file.contains("-plate-") && entry["layers"]["CUT-INSIDE"]["circles"] != 0 {
                questions.push((pack, vec![json.clone(), pack.file(file)]));
            }
        }
    }
    let words: Vec<Vec<PathBuf>> = questions.iter().map(|(_, files)| files.clone()).collect();
    let answers = ask(&python, "ligaments.py", &words.join(&PathBuf::from("+")));
    for ((pack, files), answer) in questions.iter().zip(answers.as_array().expect("a list")) {
        let results = &pack.results;
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

/// Waterjet takes 2 mm off every hole; plasma 6 mm off tubes and stays, 2 mm off the pipe, and of stays, 33 - 6 = 27 mm is
/// below the least clean hole of 30 mm, so that they become pops.
#[test]
fn by_hand_holes_are_cut_by_so_much_under() {
    let Some(python) = python() else { return };
    let under = |pack: &Pack, file: &str| {
        let files = [pack.file("results.json"), pack.file(file)];
        ask(&python, "ligaments.py", &files)[0]["under"].clone()
    };
    let hobthrush = |pack: &&Pack| pack.results["drawing"] == "HB-TP1";
    let cold = packs()
        .iter()
        .find(hobthrush)
        .expect("the spec as it stands");
    let under_cold = under(cold, "cut/hb-tp1-a-plate-waterjet-mm.dxf");
    for purpose in ["tube", "stay", "steam pipe"] {
        for figure in numbers(&under_cold[purpose]) {
            assert!(same(figure, 2.0), "{purpose}: {figure}");
        }
    }
    let under_hot = under(changed("hot"), "cut/hb-tp1-a-plate-plasma-mm.dxf");
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
    // 2 × (0 + 0.25 + 0.25) mm, and 2 mm of the starting figures for bolts only, which are the pad's.
    let under_allowed = under(
        changed("with every part"),
        "cut/hb-tp1-a-plate-waterjet-mm.dxf",
    );
    assert!(
        numbers(&under_allowed["tube"])
            .into_iter()
            .all(|figure| same(figure, 1.0))
    );
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

/// A second reader, which is none of ours and not the first: areas to a thousandth of a per cent, holes counted, contours valid,
/// circles as circles and arcs as arcs, and the least web from the places and sizes of `results.json`.
#[test]
fn holds_a_second_reader_finds_the_areas_the_holes_and_the_least_web() {
    let Some(python) = python() else { return };
    for (one, first) in measured(&python, "second_reader.py")
        .iter()
        .zip(read_by_ezdxf(&python))
    {
        let Read {
            pack,
            file,
            entry,
            read,
        } = one;
        assert_eq!(read["outside"], 1, "{file}");
        assert_eq!(
            read["inside"], entry["layers"]["CUT-INSIDE"]["circles"],
            "{file}"
        );
        assert_eq!(read["circles"], read["inside"], "{file}");
        assert_eq!(read["valid"], true, "{file}");
        for (theirs, ours) in [
            ("area_outside", "outside_area_mm2"),
            ("area_left", "area_mm2"),
        ] {
            let (theirs, ours) = (number(&read[theirs]), number(&entry[ours]));
            assert!(
                (theirs - ours).abs() <= 1e-5 * ours,
                "{file}: {theirs} and {ours}"
            );
        }
        if file.contains("-plate-") {
            let web = least_web(pack, entry);
            assert!(
                (number(&read["least_web"]) - web).abs() <= 4.0 * SAME_MM,
                "{file}: {web}"
            );
            assert!(number(&read["least_edge"]) > 0.0, "{file}");
        }
        // A true arc takes a few corners; the same in facets would take hundreds.
        for contour in first.read["outside"].as_array().expect("a list") {
            let corners = contour["corners"].as_u64().unwrap_or(0);
            assert!(corners <= 20, "{file} has {corners} corners");
        }
    }
}

/// The least metal between two holes as cut, every pair looked at.
fn least_web(pack: &Pack, entry: &Value) -> f64 {
    let place = |id: &Value| {
        let holes = pack.results["holes"].as_array().expect("holes");
        let hole = holes
            .iter()
            .find(|hole| hole["id"] == *id)
            .expect("it is numbered");
        (number(&hole["x_mm"]), number(&hole["y_mm"]))
    };
    let mut cut: Vec<((f64, f64), f64)> = Vec::new();
    for holes in entry["holes_cut"].as_array().expect("holes cut") {
        let ids = holes["ids"].as_array().expect("numbers");
        cut.extend(
            ids.iter()
                .map(|id| (place(id), number(&holes["cut_mm"]) / 2.0)),
        );
    }
    let mut least = f64::INFINITY;
    for (i, ((x, y), radius)) in cut.iter().enumerate() {
        for ((u, v), other) in &cut[..i] {
            least = least.min(hypot(x - u, y - v) - radius - other);
        }
    }
    least
}

/// Words of every page of every drawing, as another reader of PDF finds them: none over another, none out of the frame, none
/// lower than 2.5 mm, or 2 mm for a number in its hole, and every face in the file.
#[test]
fn holds_words_of_every_page_can_be_read() {
    let Some(python) = python() else { return };
    let drawings: Vec<PathBuf> = specs()
        .into_iter()
        .map(|spec| pack_of(spec).join("drawing.pdf"))
        .collect();
    let answers = ask(&python, "pdf_words.py", &drawings);
    for (drawing, answer) in drawings.iter().zip(answers.as_array().expect("a list")) {
        let name = drawing.display();
        assert_eq!(answer["defects"], Value::Array(vec![]), "{name}");
        assert_eq!(answer["fonts_left_out"], Value::Array(vec![]), "{name}");
        let counts = answer["words"].as_array().expect("a list");
        assert!(counts.iter().all(|words| number(words) > 100.0), "{name}");
    }
}
