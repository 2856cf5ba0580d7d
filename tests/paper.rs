//! A small plate on every paper from A4 to A0: nothing on a sheet runs into anything, and every file has the size of its paper.

mod common;

use std::fs;

use centrepop::checks::run_checks;
use centrepop::cut::cut_parts;
use centrepop::design::set_out;
use centrepop::sheets::audit::audit;
use centrepop::sheets::{Sheet, draw_sheets, pdf, png, svg};
use centrepop::spec::read_spec;

/// ISO 216 sizes, mm, as they lie: A4 upright, the others landscape (ISO 5457).
const PAPERS: [(&str, f64, f64); 5] = [
    ("A4", 210.0, 297.0),
    ("A3", 420.0, 297.0),
    ("A2", 594.0, 420.0),
    ("A1", 841.0, 594.0),
    ("A0", 1189.0, 841.0),
];

/// A launch boiler's plate, 12 in across, with a dozen tubes.
const LAUNCH: &str = "job: {works: Small Works, engine: Launch No. 3, drawing: LN3-TP, revision: A, issued: 2026-11-16, units: inches}
plate:
  kind: smokebox tube plate
  view_from: smokebox
  thickness: 9/16 in
  material: {grade: P265GH to EN 10028-2, metal: steel, strength: 28 tonf/in2, density: 7850 kg/m3}
barrel: {bore: 12 in, thickness: 1/4 in}
working_pressure: 100 psi
flange: {pressed: {towards: firebox, outside_diameter: 12 in, heel_radius_inside: 3/4 in, straight: 1 1/4 in, trim: 1/4 in}}
tubes:
  - name: tubes
    tube: 1 in
    hole: 1 1/32 in
    pattern: {rows: {through: [0 in, 0 in], spacing: 1 3/4 in, pitch: 2 in}}
    within: {land: [{to: tangent, at_least: 1/2 in}], top: 2 in}
holes:
  - {name: stay, purpose: stay, hole: 5/8 in, at: [[1 1/2 in, 3 3/4 in]], mirrored: true}
rivets: {rivet: 3/8 in, hole: 7/16 in, count: 24, from_edge: 3/4 in, bottom_centre: between holes, how: in place}
support: {flange_line: tangent, stays: true, tubes: true, origin: works' designer}
judged_by: [Indian Boiler Regulations 1950]
";

fn on(paper: &str) -> String {
    format!("{LAUNCH}sheets: {{paper: {paper}, templates: true}}\n")
}

fn drawn(paper: &str) -> Vec<Sheet> {
    let spec = read_spec("launch.yaml", on(paper).as_bytes()).expect("a spec");
    let design = set_out(&spec).expect("it can be set out");
    let parts = cut_parts(&spec, &design).expect("nothing is cut, or can be");
    draw_sheets(&spec, &design, &run_checks(&spec, &design), &parts)
}

#[test]
fn holds_no_sheet_of_a_small_plate_has_a_defect_on_any_paper() {
    let mut found = Vec::new();
    for (paper, ..) in PAPERS {
        for sheet in drawn(paper) {
            let (number, name) = (sheet.number, sheet.name.clone());
            found.extend(
                audit(&sheet)
                    .iter()
                    .map(|d| format!("{paper}, {number} {name}: {d}")),
            );
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// The plate is shown on the paper asked for, and a job on A4 has nothing larger in it.
#[test]
fn published_sheets_have_the_sizes_of_iso_216() {
    for (paper, wide, high) in PAPERS {
        let sheets = drawn(paper);
        assert_eq!((sheets[0].width, sheets[0].height), (wide, high), "{paper}");
        for sheet in &sheets {
            let known = PAPERS
                .iter()
                .position(|p| (p.1, p.2) == (sheet.width, sheet.height));
            let asked = PAPERS
                .iter()
                .position(|p| p.0 == paper)
                .expect("it is listed");
            let most = if paper == "A4" { 0 } else { asked.max(1) };
            assert!(
                known.is_some_and(|known| known <= most),
                "{paper}: sheet {}",
                sheet.number
            );
        }
    }
}

/// The head of every SVG states its paper in millimetres, and its user units are millimetres.
#[test]
fn holds_svg_files_state_their_paper() {
    for (paper, ..) in PAPERS {
        for sheet in drawn(paper) {
            let written = svg::write(&sheet);
            let head = written
                .split('>')
                .find(|part| part.contains("<svg"))
                .expect("a head");
            for words in [
                format!("width=\"{}mm\"", sheet.width),
                format!("height=\"{}mm\"", sheet.height),
                format!("viewBox=\"0 0 {} {}\"", sheet.width, sheet.height),
            ] {
                assert!(head.contains(&words), "{paper}: {words} in {head}");
            }
        }
    }
}

/// A page of 210 mm is 210/25.4 × 72 = 595.2756 points wide; each page has the size of its own sheet.
#[test]
fn by_hand_pdf_pages_have_the_sizes_of_their_sheets() {
    for (paper, ..) in PAPERS {
        let sheets = drawn(paper);
        let bytes = pdf::write("Launch", &sheets).expect("a PDF");
        let text = String::from_utf8_lossy(&bytes);
        let boxes: Vec<[f64; 2]> = text
            .split("/MediaBox[")
            .skip(1)
            .map(|rest| {
                let numbers = rest.split(']').next().expect("it ends").split(' ');
                let numbers: Vec<f64> = numbers.map(|n| n.parse().expect("a number")).collect();
                assert_eq!(numbers[..2], [0.0, 0.0]);
                [numbers[2], numbers[3]]
            })
            .collect();
        assert_eq!(boxes.len(), sheets.len(), "{paper}");
        for (page, sheet) in boxes.iter().zip(&sheets) {
            // Points are written to four places.
            for (points, mm) in page.iter().zip([sheet.width, sheet.height]) {
                let off = (points - mm / 25.4 * 72.0).abs();
                assert!(off < 1e-3, "{paper}, sheet {}: {points}", sheet.number);
            }
        }
    }
}

/// At 100 dots to the inch A4 upright is 210/25.4 × 100 = 826.8 by 1169.3, drawn as 827 by 1169 dots; and the file says 3937 dots to the
/// metre, so that it prints at its size.
#[test]
fn by_hand_a_picture_has_the_dots_of_its_paper() {
    let sheet = &drawn("A4")[0];
    let bytes = png::write(sheet, 100.0).expect("a picture");
    let number = |at: usize| u32::from_be_bytes(bytes[at..at + 4].try_into().expect("four bytes"));
    assert_eq!((number(16), number(20)), (827, 1169));
    let phys = bytes
        .windows(4)
        .position(|four| four == b"pHYs")
        .expect("its resolution");
    assert_eq!((number(phys + 4), number(phys + 8)), (3937, 3937));
    assert_eq!(bytes[phys + 12], 1);
}

/// The page makes a printed page of each sheet's own size, upright ones too.
#[test]
fn holds_the_page_prints_each_sheet_on_its_own_paper() {
    let folder = tempfile::tempdir().expect("a folder");
    let spec = folder.path().join("launch.yaml");
    fs::write(&spec, on("A3")).expect("it is written");
    let run = common::centrepop()
        .args(["draw", spec.to_str().expect("a path"), "--out"])
        .arg(folder.path())
        .output()
        .expect("it runs");
    assert!(
        run.status.success(),
        "{}",
        String::from_utf8_lossy(&run.stderr)
    );
    let page = fs::read_to_string(folder.path().join("LN3-TP-A/index.html")).expect("the page");
    let sheets = drawn("A3");
    assert!(sheets.iter().any(|s| s.width < s.height) && sheets.iter().any(|s| s.width > s.height));
    for (i, sheet) in sheets.iter().enumerate() {
        let (w, h) = (sheet.width, sheet.height);
        for words in [
            format!("@page sheet{i} {{ size: {w}mm {h}mm; margin: 0 }}"),
            format!("#sheet{i} img {{ width: {w}mm; height: {h}mm }}"),
        ] {
            assert!(page.contains(&words), "{words}");
        }
    }
}

/// What does not go on its paper is refused, with the paper to take, and nothing is written.
fn refused(text: &str) -> String {
    let folder = tempfile::tempdir().expect("a folder");
    let spec = folder.path().join("refused.yaml");
    fs::write(&spec, text).expect("it is written");
    let out = folder.path().join("out");
    let run = common::centrepop()
        .args(["draw", spec.to_str().expect("a path"), "--out"])
        .arg(&out)
        .output()
        .expect("it runs");
    assert_eq!(run.status.code(), Some(2));
    assert!(!out.exists() || fs::read_dir(&out).expect("a folder").next().is_none());
    String::from_utf8(run.stderr).expect("words")
}

#[test]
fn refuses_a_large_plate_on_a4() {
    let demo = fs::read_to_string("specs/marl-hen-smokebox.yaml").expect("the demo");
    let said = refused(&demo.replace("\nsheets:\n", "\nsheets:\n  paper: A4\n"));
    assert!(said.contains("sheets.paper"), "{said}");
    assert!(
        said.contains("on A4 this plate is drawn so small that lettering runs into lines"),
        "{said}"
    );
    assert!(
        said.contains("write A3, or larger paper, at `sheets.paper`"),
        "{said}"
    );
}

/// A tile of A3 is 390 − 14 = 376 mm wide and 277 − 36 − 6 − 16 − 2 = 217 high, and shares 12 with its neighbour. A disc of 6 m with half a
/// millimetre round it takes (6001 − 12)/364 = 16.5 across and (6001 − 12)/205 = 29.2 down: 17 × 30 = 510.
#[test]
fn refuses_a_template_of_more_tiles_than_anybody_lays_out() {
    let said = refused(
        "job: {works: Small Works, engine: Tank, drawing: T1, revision: A, issued: 2026-11-16, units: millimetres}
plate: {kind: smokebox tube plate, view_from: smokebox, thickness: 20 mm}
outline: {round: {diameter: 6000 mm}}
holes: [{name: pipe, purpose: steam pipe, hole: 200 mm, at: [[0 mm, 0 mm]]}]
sheets: {templates: true}
",
    );
    assert!(said.contains("sheets.templates"), "{said}");
    assert!(
        said.contains("takes 17 × 30 = 510 tiles of A3, more than 400"),
        "{said}"
    );
    assert!(
        said.contains("write larger paper at `sheets.paper`, or leave the templates out"),
        "{said}"
    );
}
