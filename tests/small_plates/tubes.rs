//! Stay tubes, and the surface of tubes.

use centrepop::design::{Piece, Rectangle, set_out};
use centrepop::spec::read_spec;
use centrepop::units::Length;

use super::{PLATE, designed, is, is_silent, judged, one};

const POINTS: &str = "points: [[-4 in, 0 in], [0 in, 0 in], [4 in, 0 in]]";
const NEST: &str = "square: {through: [0 in, 0 in], pitch: 3 in}\n    within: {land: [{to: tangent, at_least: 1 in}], top: 6 in}";

fn stay_tubes(pattern: &str, which: &str) -> String {
    format!(
        "{pattern}\n    stay_tubes: {{which: {which}, over_threads: 2 1/4 in, threads_per_inch: 11, bore: 1 3/4 in}}"
    )
}

/// D 2.25 − 1.28/11 = 2.133636; 5,900 × (2.133636² − 1.75²) = 5,900 × 1.489904 = 8,790.43 lb; on 3 × 3 = 9 in² 976.7 psi.
#[test]
fn by_hand_every_tube_a_stay_tube() {
    let nest = stay_tubes(NEST, "every");
    let (design, found) = designed(&[(POINTS, &nest)]);
    is(
        one(&found, "stay_tube", "581", "tubes"),
        "meets",
        "976.7",
        "100",
    );
    assert_eq!(design.stay_tubes.len(), design.holes.len());
    // Stay tubes hold the plate though expanded ones were not to count.
    let bare = judged(&[(POINTS, NEST), ("tubes: true", "tubes: false")]);
    let held = judged(&[(POINTS, &nest), ("tubes: true", "tubes: false")]);
    let across = |found: &[centrepop::checks::Finding]| {
        one(found, "largest_circle", "", "")
            .provided
            .expect("a circle")
    };
    assert!(across(&held) < across(&bare) / 2.0);
    // So they hold the flat up to them, unless stays do not count either.
    is(
        one(&held, "area_above_tubes", "geometry", ""),
        "note",
        "",
        "",
    );
    is_silent(one(&bare, "area_above_tubes", "", ""), "`support.flues`");
    let neither = [
        ("stays: true", "stays: false"),
        ("tubes: true", "tubes: false"),
    ];
    let neither = judged(&[(POINTS, &nest), neither[0], neither[1]]);
    is_silent(one(&neither, "area_above_tubes", "", ""), "`support.flues`");
    // Columns 2 1/2 in apart at a pitch of 3 1/2, and rows of the same: 8,790.43/8.75 = 1,004.6 psi.
    for way in ["columns", "rows"] {
        let lines = format!(
            "{way}: {{through: [0 in, 0 in], spacing: 2 1/2 in, pitch: 3 1/2 in}}\n    within: {{land: [{{to: tangent, at_least: 1 in}}], top: 6 in}}"
        );
        let (design, found) = designed(&[(POINTS, &stay_tubes(&lines, "every"))]);
        is(
            one(&found, "stay_tube", "581", "tubes"),
            "meets",
            "1004.6",
            "100",
        );
        let Piece::Rectangle(Rectangle { across, up, .. }) = design.stay_areas[0].piece else {
            panic!("a rectangle")
        };
        let hand = if way == "columns" {
            (2.5, 3.5)
        } else {
            (3.5, 2.5)
        };
        assert!(
            across.same_as(Length::inches(hand.0)) && up.same_as(Length::inches(hand.1)),
            "{way}"
        );
    }
}

/// Stays on a pitch of their own, 30 in² each, have no part in the stay tubes' 9 in².
#[test]
fn by_hand_stay_tubes_beside_stays() {
    let nest = stay_tubes(NEST, "every").replace("top: 6 in", "top: 4 in");
    let stays = "holes:\n  - {name: stays, purpose: stay, hole: 1 9/32 in, at: [[3 in, 8 in], [9 in, 8 in], [3 in, 13 in]], mirrored: true}\n";
    let found = judged(&[(POINTS, &nest), ("holes: []\n", stays)]);
    is(
        one(&found, "stay_tube", "581", "tubes"),
        "meets",
        "976.7",
        "100",
    );
}

/// Every second tube of every second row: 6 × 6 in, less four half holes and four quarters, three whole holes of 2 1/16 in: 36 − 3 × 3.341010 =
/// 25.97697 in²; 8,790.43/25.97697 = 338.4 psi.
#[test]
fn by_hand_some_tubes_stay_tubes() {
    let at = "{at: [[3 in, 0 in], [-3 in, 0 in], [3 in, -6 in], [-3 in, -6 in]]}";
    let found = judged(&[(POINTS, &stay_tubes(NEST, at))]);
    is(
        one(&found, "stay_tube", "581", "tubes"),
        "meets",
        "338.4",
        "100",
    );
    let found = judged(&[
        (POINTS, &stay_tubes(NEST, at)),
        ("working_pressure: 100 psi\n", ""),
    ]);
    is_silent(one(&found, "stay_tube", "", ""), "`working_pressure`");
    let row = "{at: [[3 in, 0 in], [-3 in, 0 in]]}";
    let found = judged(&[(POINTS, &stay_tubes(NEST, row))]);
    is_silent(
        one(&found, "stay_tube", "", ""),
        "`tubes[0].stay_tubes.which` stand on no even pitch",
    );
    // Listed places have no pattern of their own, so that a row of three stands on no pitch either.
    let found = judged(&[(POINTS, &stay_tubes(POINTS, "every"))]);
    is_silent(one(&found, "stay_tube", "", ""), "no even pitch");
}

#[test]
fn refuses_a_stay_tube_where_no_tube_is() {
    let text = PLATE.replacen(
        POINTS,
        &stay_tubes(POINTS, "{at: [[4 in, 0 in], [4 in, 1 in]]}"),
        1,
    );
    let spec = read_spec("plate.yaml", text.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"));
    let faults = set_out(&spec).expect_err("no tube at (4, 1)");
    assert_eq!(faults.len(), 1);
    assert_eq!(faults[0].path, "tubes[0].stay_tubes.which.at[1]");
    assert_eq!(
        faults[0].fact,
        "no tube of tubes has its centre at (4, 1) in"
    );
}

/// 3 × π × 2 × 120/144 = 15.708 ft² outside, 3 × π × 1.8 × 120/144 = 14.137 inside; 3 × π/4 × 1.8²/144 = 0.05301 ft² for the gas; 120/2 = 60 diameters.
#[test]
fn by_hand_surface_and_gas_area() {
    let long = format!("{POINTS}\n    between_plates: 120 in");
    let found = judged(&[(POINTS, &long)]);
    let outside = one(&found, "heating_surface", "", "tubes");
    is(outside, "note", "15.708", "");
    assert!(outside.why.contains("16 ft² on the outside; the inside is not known, since `wall` of tubes is not given; length 60.0 diameters"), "{}", outside.why);
    let walled = format!("{POINTS}\n    between_plates: 120 in\n    wall: 0.1 in");
    let found = judged(&[(POINTS, &walled)]);
    let both = one(&found, "heating_surface", "", "tubes");
    is(both, "note", "15.708", "");
    assert!(
        both.why
            .contains("14 ft² on the inside; gas area 0.05 ft²; length 60.0 diameters"),
        "{}",
        both.why
    );
    assert_eq!(
        both.working,
        [
            "outside: 3 × 3.141593 × 2 × 120/144 = 15.7 ft²",
            "inside: 3 × 3.141593 × 1.8 × 120/144 = 14.1 ft²",
            "gas: 3 × 0.785398 × 1.8²/144 = 0.053 ft²",
            "L/d = 60.00",
        ]
    );
    // Two nests, each told by itself.
    let two = format!(
        "{long}\n  - name: flues\n    purpose: flue\n    tube: 4 in\n    hole: 4 1/16 in\n    pattern: {{points: [[0 in, -8 in]]}}\n    between_plates: 120 in"
    );
    let found = judged(&[(POINTS, &two)]);
    is(
        one(&found, "heating_surface", "", "flues"),
        "note",
        "10.472",
        "",
    );
    is(
        one(&found, "heating_surface", "", "tubes"),
        "note",
        "15.708",
        "",
    );
    assert!(!judged(&[]).iter().any(|f| f.rule == "heating_surface"));
}

/// D 2 1/4 less 1.28/11 leaves 2.1336: a bore of 2 1/8 in leaves a little, one of 2 1/7 or so nothing.
#[test]
fn refuses_a_stay_tube_bored_into_its_thread() {
    let read = |bore: &str| {
        let nest = stay_tubes(NEST, "every").replace("bore: 1 3/4 in", &format!("bore: {bore}"));
        read_spec("plate.yaml", PLATE.replacen(POINTS, &nest, 1).as_bytes())
    };
    assert!(read("2 1/8 in").is_ok());
    let refused = read("2.14 in").expect_err("no metal");
    assert_eq!(refused.faults[0].path, "tubes[0].stay_tubes.bore");
    assert_eq!(
        refused.faults[0].fact,
        "a bore of 2.14 in leaves nothing under a thread of 2 1/4 in"
    );
}
