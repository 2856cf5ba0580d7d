//! How long `check` and `draw` take on a nest of 120 tubes and of 10,000: the whole process, started from cold.
//!
//! Run by `cargo bench`. Nothing is held to a time here; `plain.py` beside it does the same work in plain Python for comparison.

use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::sync::OnceLock;

use centrepop::units::angle::{PI, sqrt};
use tempfile::TempDir;

fn main() {
    divan::main();
}

/// A pressed plate just wide enough for so many tubes at 57 × 66 mm.
fn spec_of(tubes: usize) -> String {
    // Each tube has 57 × 66 mm of the flat; the rim of it, where only part of that fits, is reckoned at 40 mm.
    let tangent = sqrt(tubes as f64 * 57.0 * 66.0 / PI) + 40.0;
    let outside = 2.0 * (tangent + 16.0 + 38.0).ceil();
    let barrel = (outside / 70.0).ceil();
    let rivets = (outside * PI / 55.0).round();
    format!(
        "\
job: {{works: Bench, engine: Bench, drawing: BENCH-{tubes}, revision: A, issued: \"2026-01-01\", units: millimetres}}
plate:
  kind: smokebox tube plate
  view_from: smokebox
  thickness: 16 mm
  material: {{grade: P265GH, metal: steel, strength: 28 tonf/in2, density: 7850 kg/m3}}
barrel: {{bore: {outside} mm, thickness: {barrel} mm}}
working_pressure: 160 psi
flange:
  pressed: {{towards: smokebox, outside_diameter: {outside} mm, heel_radius_inside: 38 mm, straight: 58 mm, trim: 13 mm}}
tubes:
  - name: tubes
    tube: 44.5 mm
    hole: 46.8 mm
    pattern:
      columns: {{through: [0 mm, 0 mm], spacing: 57 mm, pitch: 66 mm}}
    within:
      land: [{{to: tangent, at_least: 12.7 mm}}]
rivets: {{rivet: 22 mm, hole: 23.8 mm, count: {rivets}, from_edge: 36 mm, bottom_centre: between holes, how: in place}}
support: {{flange_line: tangent, stays: true, tubes: true, origin: bench}}
judged_by: [Indian Boiler Regulations 1950]
cutting: {{process: plasma, origin: bench}}
"
    )
}

/// The folder of the bench specs; packs are drawn beside them.
fn folder() -> &'static TempDir {
    static FOLDER: OnceLock<TempDir> = OnceLock::new();
    FOLDER.get_or_init(|| tempfile::tempdir().expect("a folder"))
}

fn spec_file(tubes: usize) -> PathBuf {
    let path = folder().path().join(format!("bench-{tubes}.yaml"));
    std::fs::write(&path, spec_of(tubes)).expect("a spec written");
    path
}

fn run(command: &mut Command) {
    let status = command.stdout(Stdio::null()).status().expect("it runs");
    assert!(status.code().is_some_and(|code| code < 2), "{status}");
}

#[divan::bench(args = [120, 10_000], sample_count = 20)]
fn draw(bencher: divan::Bencher, tubes: usize) {
    let spec = spec_file(tubes);
    bencher.bench(|| {
        run(Command::new(env!("CARGO_BIN_EXE_centrepop"))
            .arg("draw")
            .arg(&spec)
            .arg("--out")
            .arg(folder().path()))
    });
}

#[divan::bench(args = [120, 10_000], sample_count = 20)]
fn check(bencher: divan::Bencher, tubes: usize) {
    let spec = spec_file(tubes);
    bencher.bench(|| {
        run(Command::new(env!("CARGO_BIN_EXE_centrepop"))
            .arg("check")
            .arg(&spec))
    });
}
