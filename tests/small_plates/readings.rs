//! Thickness readings: regions, what is below, what covers it, and readings that no plate has.

use centrepop::checks::Finding;
use centrepop::design::{Design, Reading, set_out};
use centrepop::spec::Fault;

use super::{PLATE, below_by, designed, is, is_silent, one};

const HEAD: &str = "survey:\n  date: \"2026-11-02\"\n  instrument: gauge 7\n";

fn survey(required: &str, readings: &[(&str, &str)]) -> String {
    let lines: String = readings
        .iter()
        .map(|(at, rest)| format!("    - {{at: [{at}], thickness: {rest}}}\n"))
        .collect();
    let readings = if lines.is_empty() {
        "  readings: []\n".into()
    } else {
        format!("  readings:\n{lines}")
    };
    format!("{HEAD}  required: [{required}]\n{readings}holes: []\n")
}

const FLAT: &str = "{region: flat, thickness: 0.45 in, origin: works' designer}";

fn with(required: &str, readings: &[(&str, &str)]) -> (Design, Vec<Finding>) {
    designed(&[("holes: []\n", &survey(required, readings))])
}

/// Of 0.50 and 0.46 in the least is 0.46, 0.01 over; equal meets; 0.44 is 0.01 below, and so is 0.43, 0.02, which is named first.
#[test]
fn by_hand_readings_against_what_is_required() {
    let of = |readings: &[(&str, &str)]| {
        let (_, found) = with(FLAT, readings);
        one(
            &found,
            "thickness_readings",
            "works' own limit: works' designer",
            "flat",
        )
        .clone()
    };
    let sound = of(&[("0 in, -5 in", "0.50 in"), ("0 in, -9 in", "0.46 in")]);
    is(&sound, "meets", "0.46", "0.45");
    assert_eq!(sound.place, "flat, reading 2");
    assert_eq!(sound.why, "the least of 2 readings that stay as they are");
    assert_eq!(sound.working, ["reading 2 0.46 in, required 0.45 in"]);
    let equal = of(&[("0 in, -5 in", "0.45 in")]);
    is(&equal, "meets", "0.45", "0.45");
    assert!(equal.why.contains("of 1 reading that"), "{}", equal.why);
    let low = of(&[
        ("0 in, -5 in", "0.44 in"),
        ("0 in, -9 in", "0.43 in"),
        ("0 in, -7 in", "0.5 in"),
    ]);
    below_by(&low, "0.02");
    assert_eq!(low.place, "flat, reading 2");
    assert_eq!(
        low.why,
        "below and covered by no repair: 1 (0.44 in), 2 (0.43 in)"
    );
}

/// A reading takes the first region that holds it, the region's sides among it; the corners may stand either way.
#[test]
fn by_hand_regions() {
    let regions = "{region: bottom, thickness: 0.4 in, origin: works, from: [10 in, -5 in], to: [-10 in, -18 in]}, {region: rest, thickness: 0.48 in, origin: works}";
    let (design, found) = with(
        regions,
        &[
            ("0 in, -5 in", "0.41 in"),
            ("10 in, -6 in", "0.42 in"),
            ("10.1 in, -6 in", "0.47 in"),
            ("0 in, -4.9 in", "0.49 in"),
        ],
    );
    let regions: Vec<Option<usize>> = design.readings.iter().map(|r| r.region).collect();
    assert_eq!(regions, [Some(0), Some(0), Some(1), Some(1)]);
    is(
        one(&found, "thickness_readings", "works", "bottom, reading 1"),
        "meets",
        "0.41",
        "0.40",
    );
    below_by(
        one(&found, "thickness_readings", "works", "rest, reading 3"),
        "0.01",
    );
    // Without the region of all the rest two readings are judged by nothing.
    let one_region = "{region: bottom, thickness: 0.4 in, origin: works, from: [10 in, -5 in], to: [-10 in, -18 in]}";
    let (_, found) = with(
        one_region,
        &[("0 in, -5 in", "0.41 in"), ("0 in, -4.9 in", "0.2 in")],
    );
    let open = one(&found, "thickness_readings", "", "readings 2 (0.2 in)");
    is_silent(open, "no region of `survey.required` holds them");
}

#[test]
fn holds_readings_name_the_key_that_they_want() {
    let (design, found) = with("", &[("0 in, -5 in", "0.3 in")]);
    is_silent(
        one(&found, "thickness_readings", "", "readings 1 (0.3 in)"),
        "`survey.required` is not given",
    );
    assert!(design.readings[0].short.is_none() && !design.readings[0].is_left_low());
    // A survey that holds no reading yet, and a plate that was not surveyed, say nothing.
    for text in [survey(FLAT, &[]), "holes: []\n".into()] {
        let (_, found) = designed(&[("holes: []\n", &text)]);
        assert!(!found.iter().any(|f| f.rule == "thickness_readings"));
    }
}

const BUILT_UP: &str = "repairs:\n  - {name: wasted, weld: {build_up: {at: [0 in, -10 in], width: 4 in, height: 2 in}}}\n  - {name: crack, weld: {crack: {from: [0 in, -14 in], to: [4 in, -14 in]}}}\n";

/// The area reaches from −2 to 2 and −11 to −9: a low reading in its middle is covered, 1 in inside; one on its edge, and one beyond
/// near the crack, are not.
#[test]
fn by_hand_what_a_build_up_covers() {
    let text = BUILT_UP.to_string()
        + &survey(
            FLAT,
            &[
                ("0 in, -10 in", "0.3 in"),
                ("2 in, -10 in", "0.31 in"),
                ("3 in, -13.5 in", "0.32 in"),
                ("0 in, -8.5 in", "0.5 in"),
            ],
        );
    let (design, found) = designed(&[("holes: []\n", &text)]);
    let said = |r: &Reading| {
        let covered = r
            .covered
            .map(|c| (c.repair, format!("{:.3}", c.inside.to_inches())));
        let (weld, away) = r.nearest_weld.expect("a weld");
        (covered, weld, format!("{:.3}", away.to_inches()))
    };
    let all: Vec<_> = design.readings.iter().map(said).collect();
    assert_eq!(all[0], (Some((0, "1.000".into())), 0, "1.000".into()));
    assert_eq!(all[1], (None, 0, "0.000".into()));
    assert_eq!(all[2], (None, 1, "0.500".into()));
    let left: Vec<bool> = design.readings.iter().map(Reading::is_left_low).collect();
    assert_eq!(left, [false, true, true, false]);
    let low = one(&found, "thickness_readings", "works", "flat, reading 2");
    below_by(low, "0.14");
    assert!(
        low.why
            .contains("reading 2 lies 0.0000 in from the weld of wasted"),
        "{}",
        low.why
    );
    let covered = one(&found, "thickness_readings", "works", "flat, within wasted");
    assert_eq!(
        covered.why,
        "1 reading below 0.45 in, in metal that is renewed: 1 (0.3 in); nearest to the weld is 1, 1.0000 in"
    );
    assert!(!found.iter().any(|f| f.place == "flat, within crack"));
    let outside = one(
        &found,
        "thickness_readings",
        "geometry",
        "outside wasted, reading 4",
    );
    is(outside, "note", "0.500", "");
    // To the tangent at 18 1/2.
    let end = design.readings[0].to_end_of_flat.expect("a tangent");
    assert_eq!(format!("{:.3}", end.to_inches()), "8.500");
}

/// The area reaches from −2 to 2 and −11 to −9. Nearer to its weld than the sound reading 4, 2 in to the right of it, are one within the
/// new metal (0.75 in), one that is low (1 in) and one of which nothing is required (1.25 in): none of them is sound metal outside.
#[test]
fn by_hand_sound_metal_outside_is_sound_and_outside() {
    let bottom = "{region: bottom, thickness: 0.45 in, origin: works, from: [10 in, -5 in], to: [-10 in, -12 in]}";
    let text = BUILT_UP.to_string()
        + &survey(
            bottom,
            &[
                ("0 in, -10.25 in", "0.47 in"),
                ("0 in, -8 in", "0.3 in"),
                ("0 in, -12.25 in", "0.5 in"),
                ("4 in, -10 in", "0.5 in"),
            ],
        );
    let (_, found) = designed(&[("holes: []\n", &text)]);
    let outside = one(&found, "thickness_readings", "geometry", "outside wasted");
    assert_eq!(outside.place, "outside wasted, reading 4");
    is(outside, "note", "2.000", "");
}

/// Face and instrument are the survey's unless the reading has its own.
#[test]
fn holds_a_reading_has_its_own_instrument() {
    let text = survey(
        FLAT,
        &[
            ("0 in, -5 in", "0.5 in"),
            ("0 in, -7 in", "0.5 in, face: firebox, instrument: calipers"),
        ],
    )
    .replace(
        "  instrument: gauge 7\n",
        "  instrument: gauge 7\n  face: smokebox\n",
    );
    let (design, _) = designed(&[("holes: []\n", &text)]);
    let said: Vec<(&str, &str)> = design
        .readings
        .iter()
        .map(|r| (r.face.expect("a face").name(), r.instrument.as_str()))
        .collect();
    assert_eq!(said, [("smokebox", "gauge 7"), ("firebox", "calipers")]);
}

fn faults(text: &str) -> Vec<Fault> {
    let text = PLATE.replace("holes: []\n", text);
    match super::read(&text) {
        Err(faults) => faults.faults,
        Ok(spec) => set_out(&spec)
            .map(|_| Vec::new())
            .unwrap_or_else(|faults| faults),
    }
}

#[track_caller]
fn says(text: &str, path: &str, fact: &str) -> Fault {
    let faults = faults(text);
    assert_eq!(faults.len(), 1, "{faults:?}");
    assert_eq!(
        (faults[0].path.as_str(), faults[0].fact.as_str()),
        (path, fact)
    );
    faults[0].clone()
}

/// The plate's edge stands at 20 in, T3's at 4 ± 1.03125: on the edge of either there is metal still.
#[test]
fn refuses_readings_where_there_is_no_metal() {
    let at = |place: &str| survey(FLAT, &[("0 in, -5 in", "0.5 in"), (place, "0.5 in")]);
    says(
        &at("0 in, -20.25 in"),
        "survey.readings[1].at",
        "a reading at (0, -20.25) in stands 0.25 in off the plate",
    );
    let fault = says(
        &at("4.5 in, 0 in"),
        "survey.readings[1].at",
        "a reading at (4.5, 0) in stands in tube T3, where there is no metal",
    );
    assert_eq!(fault.also[0].1, "the hole");
    for place in ["0 in, -20 in", "5.03125 in, 0 in", "0 in, -19 in"] {
        assert!(faults(&at(place)).is_empty(), "{place}");
    }
}

#[test]
fn refuses_a_survey_that_contradicts_itself() {
    let good = survey(FLAT, &[("0 in, -5 in", "0.5 in")]);
    assert!(faults(&good).is_empty());
    says(
        &good.replace("2026-11-02", "2026-02-30"),
        "survey.date",
        "`2026-02-30` is not a day of the calendar",
    );
    says(
        &good.replace("instrument: gauge 7", "instrument: ' '"),
        "survey.instrument",
        "`instrument` is empty, and a reading is worth no more than what it was taken with",
    );
    let fault = says(
        &good.replace("thickness: 0.5 in", "thickness: 12.4 in"),
        "survey.readings[0].thickness",
        "12.4 in of metal in a plate that was made 1/2 in thick",
    );
    assert_eq!(fault.remedy, "did you mean 12.4 mm or 1/2 in?");
    says(
        &good.replace("thickness: 0.45 in", "thickness: 11.4 in"),
        "survey.required[0].thickness",
        "11.4 in of metal in a plate that was made 1/2 in thick",
    );
    says(
        &good.replace("thickness: 0.5 in", "thickness: 0 in"),
        "survey.readings[0].thickness",
        "0 in is no thickness: it is not above nothing",
    );
    // One and a half times the plate may be, a hair more not.
    assert!(faults(&good.replace("thickness: 0.5 in", "thickness: 0.75 in")).is_empty());
    assert_eq!(
        faults(&good.replace("thickness: 0.5 in", "thickness: 0.76 in")).len(),
        1
    );
    let two = |first: &str| {
        survey(
            &format!("{{region: a, thickness: 0.4 in, origin: works{first}}}, {FLAT}"),
            &[],
        )
    };
    says(
        &two(", from: [0 in, 0 in]"),
        "survey.required[0].from",
        "a region between two corners has one corner only",
    );
    says(
        &two(", to: [0 in, 0 in]"),
        "survey.required[0].to",
        "a region between two corners has one corner only",
    );
    says(
        &two(""),
        "survey.required[0]",
        "`a` holds the whole plate, so that no reading comes to the regions after it",
    );
    assert!(faults(&two(", from: [0 in, 0 in], to: [1 in, 1 in]")).is_empty());
}
