//! Other pitches, holes and lands, and what each would come to.

mod common;

use common::{centrepop, specs};
use serde_json::Value;

const MARL_HEN: &str = "specs/marl-hen-smokebox.yaml";
const HOBTHRUSH: &str = "specs/hobthrush-smokebox.yaml";

fn proposed(spec: &str, more: &[&str]) -> Value {
    let arguments = [&["propose", spec, "--json"], more].concat();
    let output = centrepop().args(arguments).output().expect("it runs");
    assert_eq!(output.status.code(), Some(0));
    serde_json::from_slice(&output.stdout).expect("JSON")
}

fn figure<'a>(report: &'a Value, name: &str) -> &'a Value {
    let figures = report["figures"].as_array().expect("figures");
    let found = figures.iter().find(|f| f["figure"] == name);
    found.unwrap_or_else(|| panic!("no {name}"))
}

fn other<'a>(figure: &'a Value, size: &str) -> &'a Value {
    let others = figure["others"].as_array().expect("others");
    let found = others.iter().find(|other| other["size"] == size);
    found.unwrap_or_else(|| panic!("no {size} in {figure}"))
}

fn inches(mm: &Value) -> String {
    format!("{:.4}", mm.as_f64().expect("a length") / 25.4)
}

/// Regulation 580 asks 1 27/32 ÷ 8 + 1/2 = 0.7305 in. Up a column of pitch p there is p − 1 27/32: 0.7344 at 2 37/64, 0.7188 at
/// 2 9/16. A hole of 1 55/64 leaves 0.7344 of the 0.7324 then asked; one of 1 7/8 leaves 0.7188 of 0.7344.
#[test]
fn by_hand_marl_hen_pitch_and_hole() {
    let report = proposed(MARL_HEN, &[]);
    let pitch = figure(&report, "pitch");
    let hole = figure(&report, "hole");
    for (figure, size, metal, below) in [
        (pitch, "2 37/64 in", "0.7344", 0),
        (pitch, "2 9/16 in", "0.7188", 1),
        (hole, "1 55/64 in", "0.7344", 0),
        (hole, "1 7/8 in", "0.7188", 1),
    ] {
        let came_to = &other(figure, size)["came_to"];
        assert_eq!(inches(&came_to["metal_mm"]), metal, "{size}");
        let found = came_to["below"].as_array().expect("a list").len();
        assert_eq!(found, below, "{size}");
    }
    assert_eq!(
        other(hole, "1 7/8 in")["came_to"]["below"][0]["rule"],
        "tube_ligament"
    );
    // Nothing is below as it is, so no way out is looked for.
    assert_eq!(pitch["nearest_larger"], Value::Null);
}

/// Land to the tangent 11/16 in: the tubes nearest to it have 0.649 in (a worked figure of the plate), and two of them go.
#[test]
fn by_hand_marl_hen_land_costs_two_tubes() {
    let report = proposed(MARL_HEN, &[]);
    let land = figure(&report, "land to tangent");
    for (size, tubes) in [("5/8 in", 100), ("11/16 in", 98)] {
        assert_eq!(other(land, size)["came_to"]["tubes"], Value::from(tubes));
    }
}

/// Without its concession the plate is below by 0.075 mm: D/8 + 12.7 = 17.575 mm. 57 mm along the row leaves 18, and the diagonal
/// √(28.5² + 49²) − 39 = 17.686 mm; 39 less half a millimetre asks 17.5125 and has 18.
#[test]
fn by_hand_the_nearest_that_meets() {
    let text = std::fs::read_to_string(HOBTHRUSH).expect("the spec");
    let (before, rest) = text.split_once("concessions:").expect("a concession");
    let (_, after) = rest.split_once("\n\n").expect("a blank line after it");
    let folder = tempfile::TempDir::new().expect("a folder");
    let spec = folder.path().join("none-conceded.yaml");
    std::fs::write(&spec, format!("{before}{after}")).expect("it is written");
    let spec = spec.to_str().expect("a name");
    let report = proposed(spec, &["--rule", "tube_ligament"]);
    let pitch = figure(&report, "pitch");
    assert_eq!(pitch["nearest_larger"]["size"], "57 mm");
    let metal = pitch["nearest_larger"]["came_to"]["metal_mm"].as_f64();
    assert_eq!(format!("{:.3}", metal.expect("metal")), "17.686");
    assert_eq!(pitch["nearest_smaller"], Value::Null);
    assert_eq!(
        figure(&report, "hole")["nearest_smaller"]["size"],
        "38.5 mm"
    );
    let output = centrepop()
        .args(["propose", spec])
        .output()
        .expect("it runs");
    let screen = String::from_utf8(output.stdout).expect("words");
    assert!(
        screen.contains("nearest with nothing below: 57 mm, and no tube less"),
        "{screen}"
    );
}

/// Whatever is proposed can be written into the spec: its figure is read as it is printed.
#[test]
fn holds_every_spec_has_proposals_that_are_sizes() {
    for spec in specs().iter().filter(|spec| spec.is_file()) {
        let report = proposed(spec.to_str().expect("a name"), &[]);
        let figures = report["figures"].as_array().expect("figures");
        assert!(!figures.is_empty(), "{}", spec.display());
        for other in figures
            .iter()
            .flat_map(|f| f["others"].as_array().expect("others"))
        {
            let text = other["size"].as_str().expect("a size");
            let size = centrepop::units::Size::read(text).expect("it reads");
            let mm = other["size_mm"].as_f64().expect("a length");
            assert!((size.value().to_mm() - mm).abs() < 1e-6, "{text}");
            assert_ne!(other["came_to"].is_null(), other["refused"].is_null());
        }
    }
}

#[test]
fn refuses_a_rule_that_is_none() {
    let output = centrepop()
        .args(["propose", MARL_HEN, "--rule", "tube_ligaments"])
        .output()
        .expect("it runs");
    assert_eq!(output.status.code(), Some(2));
    assert_eq!(
        String::from_utf8(output.stderr).expect("words"),
        "refused: there is no rule `tube_ligaments`\n   = remedy: did you mean `tube_ligament`? `centrepop explain` lists every rule\n"
    );
}
