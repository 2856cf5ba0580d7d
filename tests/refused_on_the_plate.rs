//! Specs that read well and cannot be set out: holes on one another, a hole written twice, each with the whole message.

use centrepop::design::set_out;
use centrepop::spec::read_spec;

/// Marl Hen's nest, pipe and stays, one key a line where a message names it.
const BASE: &str = "\
job: {works: Coldwell Boiler Works, engine: Marl Hen, drawing: MH-TP1, revision: A, issued: \"2026-11-16\", units: inches}
plate: {kind: smokebox tube plate, view_from: smokebox, thickness: 5/8}
flange:
  pressed: {towards: smokebox, outside_diameter: 38, heel_radius_inside: 1 1/2, straight: 2 1/4, trim: 1/2}
tubes:
  - name: tubes
    tube: 1 3/4
    hole: 1 27/32
    pattern:
      columns: {through: [0, 1 19/64], spacing: 2 1/4, pitch: 2 19/32, first: -6, last: 6}
    within: {land: [{to: tangent, at_least: 1/2}], top: 6.6}
holes:
  - {name: steam pipe, purpose: steam pipe, hole: 5, at: [[0, 11 1/4]]}
  - name: stays
    purpose: stay
    hole: 1 9/32
    at:
      - [5 3/4, 12]
      - [10 1/4, 9]
";

fn message(from: &str, to: &str) -> String {
    assert_eq!(BASE.matches(from).count(), 1, "{from}");
    let text = BASE.replace(from, to);
    let spec = match read_spec("plate.yaml", text.as_bytes()) {
        Ok(spec) => spec,
        Err(faults) => panic!("{faults}"),
    };
    match set_out(&spec) {
        Ok(_) => "set out without fault\n".into(),
        Err(faults) => spec.refuse(faults).report,
    }
}

#[test]
fn holds_the_base_can_be_set_out() {
    assert_eq!(message("hole: 5,", "hole: 5,"), "set out without fault\n");
}

/// The pipe lowered to y 8 1/2: 2.5 + 0.921875 − (8.5 − 6.484375) = 1.406 over tube (0, 6.484); √(2.25² + 3.3125²) − 3.421875 =
/// 0.583 to the two beside it. Column −6 has 6 tubes, −5 has 7, −4 8, −3 8, −2 9, −1 8, and with the lowest left in 9 in the
/// middle: T55 is the highest of the middle column.
#[test]
fn refuses_a_pipe_on_a_tube() {
    assert_eq!(
        message("[[0, 11 1/4]]", "[[0, 8 1/2]]"),
        "\
refused: steam pipe P1 at (0, 8.5) in overlaps tube T55 at (0, 6.484) in by 1.406 in; it leaves only 0.583 in to tube T46 at \
         (-2.25, 5.188) in and 0.583 in to tube T63 at (2.25, 5.188) in
  --> plate.yaml:13:59
   |
10 |       columns: {through: [0, 1 19/64], spacing: 2 1/4, pitch: 2 19/32, first: -6, last: 6}
   |       ------- where tube T55 comes from
...
13 |   - {name: steam pipe, purpose: steam pipe, hole: 5, at: [[0, 8 1/2]]}
   |                                                           ^ holes[0].at[0]
   |
   = remedy: omit this tube, T55, by exception, or move the steam pipe?

plate.yaml: refused for 1 fault; nothing was written
"
    );
}

/// A stay written again a hundredth of an inch to the right.
#[test]
fn refuses_a_stay_written_twice() {
    assert_eq!(
        message(
            "      - [10 1/4, 9]\n",
            "      - [10 1/4, 9]\n      - [5.76, 12]\n",
        ),
        "\
refused: duplicate: stay S1 at (5.75, 12) in and stay S3 at (5.76, 12) in are the same hole written twice, 0.01 in apart; the \
         contractor would cut it twice
  --> plate.yaml:20:9
   |
18 |       - [5 3/4, 12]
   |         - the same hole
19 |       - [10 1/4, 9]
20 |       - [5.76, 12]
   |         ^ holes[1].at[2]
   |
   = remedy: take one of the two out

plate.yaml: refused for 1 fault; nothing was written
"
    );
}

/// Hobthrush's plate with its ring the wrong way: 470 mm of plate about an 840 mm bore, so the ring could reach no barrel.
#[test]
fn refuses_a_ring_that_stands_outside_its_barrel() {
    let text = std::fs::read_to_string("specs/hobthrush-smokebox.yaml").expect("the spec is there");
    assert_eq!(text.matches("    towards: firebox").count(), 1);
    let text = text.replace("    towards: firebox", "    towards: smokebox");
    let spec = read_spec("plate.yaml", text.as_bytes()).expect("it reads well");
    let faults = set_out(&spec).expect_err("the ring is the wrong way");
    let paths: Vec<&str> = faults.iter().map(|fault| fault.path.as_str()).collect();
    assert_eq!(paths, ["flange.fabricated.towards"]);
    assert!(
        faults[0].remedy.starts_with("write `towards: firebox`"),
        "{}",
        faults[0].remedy
    );
}
