//! Time to set a plate out, by the number of its tubes: from a spec that is read to a design. Not a test: nothing is judged.
//!
//! `cargo bench --bench set_out`

use centrepop::design::{directions, lands, largest_circle, set_out, survey};
use centrepop::spec::{Spec, read_spec};

fn main() {
    divan::main();
}

/// A flat round plate filled with rows of 39 mm tubes, 56.5 by 49 mm, that has about so many.
fn plate_of(tubes: u32) -> Spec {
    let diameter =
        2.0 * centrepop::units::angle::sqrt(f64::from(tubes) * 49.0 * 56.5 / std::f64::consts::PI);
    let text = format!(
        "job: {{works: Coldwell Boiler Works, engine: Trial, drawing: TRIAL, revision: A, issued: \"2026-11-16\", units: millimetres}}
plate: {{kind: smokebox tube plate, view_from: smokebox, thickness: {:.0} mm}}
outline: {{round: {{diameter: {:.0} mm}}}}
tubes:
  - name: tubes
    tube: 38.1 mm
    hole: 39 mm
    pattern:
      rows: {{through: [0 mm, 0 mm], spacing: 49 mm, pitch: 56.5 mm}}
support: {{flange_line: edge, stays: true, tubes: true, origin: trial}}
",
        // In proportion: a thin sheet of this size would be taken for a slip of the pen.
        diameter / 40.0,
        diameter + 40.0
    );
    read_spec("trial.yaml", text.as_bytes()).expect("the trial spec is readable")
}

#[divan::bench(args = [120, 1_000, 10_000, 100_000], sample_count = 10)]
fn set_out_plate(bencher: divan::Bencher, tubes: u32) {
    let spec = plate_of(tubes);
    bencher.bench(|| set_out(divan::black_box(&spec)).expect("the trial plate can be set out"));
}

/// The steps of setting out that look at every hole and its neighbours, each by itself.
#[divan::bench(args = ["survey", "directions", "lands", "largest circle"])]
fn step_of_10_000(bencher: divan::Bencher, step: &str) {
    let design = set_out(&plate_of(10_000)).expect("the trial plate can be set out");
    let (holes, groups) = (&design.holes, &design.groups);
    match step {
        "survey" => bencher.bench(|| drop(survey(holes, groups))),
        "directions" => bencher.bench(|| drop(directions(holes, groups))),
        "lands" => bencher.bench(|| drop(lands(holes, groups, &design.lines))),
        _ => {
            let supports: Vec<_> = holes.iter().map(|hole| hole.at).enumerate().collect();
            bencher.bench(|| drop(largest_circle(&supports, &design.edge)));
        }
    }
}
