//! The page of a pack, printed by a browser: a sheet comes out at its true size.
//!
//! Runs where `CENTREPOP_CHROMIUM` names a Chromium, and says elsewhere that it was left out. `CENTREPOP_PYTHON` names an
//! interpreter that has `tests/requirements.txt`; without it that is `python3`.

mod common;

use std::path::Path;
use std::process::{Command, Output};

use common::draw;
use serde_json::Value;

/// A browser sets a picture down on whole dots of 1/96 in; over the 420 mm of a sheet that is 0.03 %, and on the bar 0.03 mm.
const NEAR_MM: f64 = 0.1;

/// Has the browser print a page, with nothing of its own round it.
fn print(chromium: &Path, page: &Path, to: &Path, profile: &Path) -> Output {
    Command::new(chromium)
        .args([
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-dev-shm-usage",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--no-pdf-header-footer",
        ])
        .arg(format!("--user-data-dir={}", profile.display()))
        .arg(format!("--print-to-pdf={}", to.display()))
        .arg(page)
        .output()
        .expect("the browser runs")
}

/// Every page of a PDF with its straight strokes, mm, as another reader measures them.
fn pages_of(pdf: &Path) -> Vec<Value> {
    let python = std::env::var_os("CENTREPOP_PYTHON").unwrap_or_else(|| "python3".into());
    let read = Command::new(python)
        .arg("tests/outside/pdf_marks.py")
        .arg(pdf)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("the interpreter runs");
    let words = String::from_utf8_lossy(&read.stderr);
    assert!(read.status.success(), "{words}");
    serde_json::from_slice(&read.stdout).expect("the script answers in JSON")
}

/// The proving bar at the foot of every sheet is 100 mm from tick to tick, and 4 in, which are 101.6 mm, from end to end.
#[test]
fn by_hand_the_page_prints_a_sheet_at_its_true_size() {
    let Some(chromium) = std::env::var_os("CENTREPOP_CHROMIUM") else {
        eprintln!("left out: the page is printed only where CENTREPOP_CHROMIUM names a browser");
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    let drawn = draw("specs/marl-hen-smokebox.yaml");
    let printed = folder.path().join("page.pdf");
    let run = print(
        Path::new(&chromium),
        &drawn.pack.join("index.html"),
        &printed,
        &folder.path().join("profile"),
    );
    let words = String::from_utf8_lossy(&run.stderr);
    assert!(run.status.success() && printed.exists(), "{words}");
    let near = |value: f64, wanted: f64| (value - wanted).abs() < NEAR_MM;
    let has_bar = |page: &Value| {
        let strokes: Vec<[f64; 5]> =
            serde_json::from_value(page["strokes"].clone()).expect("strokes");
        let level = |s: &&[f64; 5]| near(s[1], s[3]);
        strokes
            .iter()
            .filter(level)
            .any(|s| near((s[2] - s[0]).abs(), 101.6))
    };
    let pages = pages_of(&printed);
    let wide = |page: &Value| page["width"].as_f64().expect("a width");
    let sheets = widths_of_sheets(&drawn.pack.join("sheets"));
    // A3 lies and A4 stands, to the whole dots that a browser makes of them. Words of the page itself may stand on A4 too, and
    // have no bar.
    for width in [420.0, 210.0] {
        let wanted = sheets.iter().filter(|w| near(**w, width)).count();
        assert!(wanted > 0, "no sheet is {width} mm wide");
        let of_width = |page: &&Value| (wide(page) - width).abs() < 0.3;
        let found = pages.iter().filter(of_width).filter(|page| has_bar(page));
        assert_eq!(
            found.count(),
            wanted,
            "each sheet on a page of its own size, {width} mm, its bar true"
        );
    }
}

/// Width of every sheet, mm, as its picture says.
fn widths_of_sheets(folder: &Path) -> Vec<f64> {
    let width = |file: std::fs::DirEntry| -> f64 {
        let picture = std::fs::read_to_string(file.path()).expect("a picture");
        let (_, after) = picture.split_once("width=\"").expect("a width");
        let (mm, _) = after.split_once("mm\"").expect("in mm");
        mm.parse().expect("a number")
    };
    std::fs::read_dir(folder)
        .expect("the sheets")
        .map(|file| width(file.expect("a sheet")))
        .collect()
}
