//! Rules on whole small plates, each made for one: what stays, tubes and rivets give where the two demo plates have none of the sort.
//!
//! The figures expected were worked by hand from the sizes in the specs; the working stands beside each.

mod flanges;
mod gritstone;
mod limits;
mod plate_work;
mod readings;
mod repairs;
mod rivet_rows;
mod stays;
mod tubes;
mod weld_lines;

use centrepop::checks::{Finding, Verdict, run_checks};
use centrepop::design::{Design, set_out};
use centrepop::spec::{Faults, Spec, read_spec};

/// A round pressed plate of 1/2 in: flat to a radius of 20 − 1/2 − 1 = 18 1/2 in, three tubes on the level centre line.
const PLATE: &str = "\
job: {works: Coldwell Boiler Works, engine: Trial, drawing: T-1, revision: A, issued: \"2026-11-18\", units: inches}
plate:
  kind: smokebox tube plate
  view_from: smokebox
  thickness: 1/2 in
  material: {grade: P265GH, metal: steel, strength: 26 tonf/in2}
working_pressure: 100 psi
flange:
  pressed: {towards: smokebox, outside_diameter: 40 in, heel_radius_inside: 1 in, straight: 2 in, trim: 1/2 in}
tubes:
  - name: tubes
    tube: 2 in
    hole: 2 1/16 in
    pattern:
      points: [[-4 in, 0 in], [0 in, 0 in], [4 in, 0 in]]
holes: []
support: {flange_line: tangent, stays: true, tubes: true, above_tubes: {over_tubes: 2 in, inside_flange: 0 in}, origin: designer}
judged_by: [Indian Boiler Regulations 1950, 49 CFR Part 230, ASME Section I 2007, National Board proposal NB12-1201]
";

/// What comes of the plate with some of its words changed; every change must find its words.
#[track_caller]
fn judged(changes: &[(&str, &str)]) -> Vec<Finding> {
    designed(changes).1
}

/// The same, with the design that was judged.
#[track_caller]
fn designed(changes: &[(&str, &str)]) -> (Design, Vec<Finding>) {
    let mut text = PLATE.to_string();
    for (from, to) in changes {
        assert!(text.contains(from), "the plate does not hold `{from}`");
        text = text.replacen(from, to, 1);
    }
    let spec = read(&text).unwrap_or_else(|faults| panic!("{faults}"));
    let design = set_out(&spec).unwrap_or_else(|faults| panic!("{faults:?}"));
    let findings = run_checks(&spec, &design);
    (design, findings)
}

/// Reads a plate; one that is surveyed or repaired stands, so that it is kept and not trimmed.
fn read(text: &str) -> Result<Spec, Faults> {
    let stands = text.contains("repairs:") || text.contains("survey:");
    let text = match stands {
        true => text
            .replace(
                "  view_from: smokebox\n",
                "  view_from: smokebox\n  kept: true\n",
            )
            .replace("trim: 1/2 in", "trim: 0 in"),
        false => text.into(),
    };
    read_spec("plate.yaml", text.as_bytes())
}

/// The first finding of a rule whose source and place hold these words.
#[track_caller]
fn one<'a>(findings: &'a [Finding], rule: &str, source: &str, place: &str) -> &'a Finding {
    findings
        .iter()
        .find(|f| f.rule == rule && f.source.contains(source) && f.place.contains(place))
        .unwrap_or_else(|| panic!("no finding of {rule}, {source}, {place}"))
}

/// Verdict, figure provided and figure asked, to the places written; nothing is compared with an empty figure.
#[track_caller]
fn is(finding: &Finding, verdict: &str, provided: &str, asked: &str) {
    assert_eq!(finding.verdict.name(), verdict, "{finding:#?}");
    for (printed, figure) in [(provided, finding.provided), (asked, finding.required)] {
        if !printed.is_empty() {
            let figure = figure.expect("a figure");
            assert_eq!(to_places_of(printed, figure), printed, "{finding:#?}");
        }
    }
}

/// Not judged, for a reason that holds these words.
#[track_caller]
fn is_silent(finding: &Finding, words: &str) {
    assert_eq!(finding.verdict.name(), "not judged", "{finding:#?}");
    assert!(finding.why.contains(words), "{}", finding.why);
}

#[track_caller]
fn below_by(finding: &Finding, printed: &str) {
    match &finding.verdict {
        Verdict::Below { by } => assert_eq!(to_places_of(printed, *by), printed, "{finding:#?}"),
        other => panic!("{} is {}: {}", finding.rule, other.name(), finding.why),
    }
}

fn to_places_of(printed: &str, figure: f64) -> String {
    let places = printed.split_once('.').map_or(0, |(_, rest)| rest.len());
    format!("{figure:.places$}")
}
