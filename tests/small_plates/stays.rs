//! Stays of every kind.

use centrepop::checks::Finding;
use centrepop::design::Piece;
use centrepop::units::SQUARE_MM_PER_SQUARE_INCH;

use centrepop::spec::read_spec;

use super::{PLATE, below_by, designed, is, is_silent, judged, one};

/// Six stays, columns 6 in apart and rows 5 in; the corners of the upper row are wanting.
const ON_A_PITCH: &str = "\
holes:
  - name: stays
    purpose: stay
    hole: 1 9/32 in
    at: [[3 in, 8 in], [9 in, 8 in], [3 in, 13 in]]
    mirrored: true
    stay: {kind: longitudinal, diameter: 1 1/4 in, threads_per_inch: 11, metal: steel, ends: nuts, strength: 28 tonf/in2}
";

fn with(stays: &str, changes: &[(&str, &str)]) -> Vec<Finding> {
    let mut all = vec![("holes: []\n", stays)];
    all.extend(changes);
    judged(&all)
}

/// S 26 × 2240/4 = 14,560 psi. Larger pitch 6: 0.5² × 14,560 × 2.5/6² = 252.8 psi; oblong 2 × 0.25 × 14,560 × 2.5/(36 + 25) = 298.4.
#[test]
fn by_hand_a_surface_stayed_on_a_pitch() {
    let found = with(ON_A_PITCH, &[]);
    let square = one(&found, "stayed_surface", "PG-46", "stays");
    is(square, "meets", "252.8", "100");
    assert!(
        square.why.contains("4 columns and 2 rows of stay centres"),
        "{}",
        square.why
    );
    let oblong = one(&found, "stayed_surface_rectangular", "S2.10", "stays");
    is(oblong, "meets", "298.4", "100");
    assert!(oblong.why.contains("kinder"), "{}", oblong.why);
    // At 5 in both ways the two are one: 0.25 × 14,560 × 2.5/25 = 364.0.
    let even = ON_A_PITCH.replace(
        "[3 in, 8 in], [9 in, 8 in], [3 in, 13 in]",
        "[2 1/2 in, 8 in], [2 1/2 in, 13 in]",
    );
    let found = with(&even, &[]);
    is(one(&found, "stayed_surface", "", ""), "meets", "364.0", "");
    let oblong = one(&found, "stayed_surface_rectangular", "", "");
    is(oblong, "meets", "364.0", "");
    assert!(oblong.why.contains("a square"), "{}", oblong.why);
}

/// Of a plate that is kept, the least reading among the stays: 0.4² × 14,560 × 2.5/6² = 161.8 psi. One of 0.3 in below them is not among
/// them; with that alone nothing is judged.
#[test]
fn by_hand_a_surface_by_the_reading_among_its_stays() {
    let survey = |readings: &str| {
        format!(
            "survey: {{date: \"2026-11-02\", instrument: gauge 7, readings: [{readings}]}}\n{ON_A_PITCH}"
        )
    };
    let below = "{at: [0 in, -10 in], thickness: 0.3 in}";
    let among = "{at: [0 in, 10 in], thickness: 0.4 in}, {at: [1 in, 11 in], thickness: 0.45 in}";
    let found = with(&survey(&format!("{below}, {among}")), &[]);
    let square = one(&found, "stayed_surface", "PG-46", "stays");
    is(square, "meets", "161.8", "100");
    let said = "t as found: reading 2, 0.4 in, the least among these stays";
    assert!(
        square.working.iter().any(|line| line == said),
        "{square:#?}"
    );
    let found = with(&survey(below), &[]);
    let square = one(&found, "stayed_surface", "PG-46", "stays");
    is_silent(square, "no reading of the survey stands among these stays");
}

/// 0.25 × 14,560/36 = 101.111: × 2.2 riveted over 222.4, × 2.8 formed heads 283.1, × 3.2 washers 323.6 of 0.4 × 6 = 2.4 in. At 7/16 in
/// riveted over still takes 2.1: 162.6; so does 1/2 in less an allowance of 1/16. At 260 psi nuts are 7.2 short.
#[test]
fn by_hand_a_surface_by_the_ends_of_its_stays() {
    for (ends, psi, words) in [
        ("riveted over", "222.4", ""),
        ("formed heads", "283.1", "1.3 diameters"),
        (
            "nuts and washers",
            "323.6",
            "2.4000 in or more across, 0.5000 in thick",
        ),
    ] {
        let found = with(
            &ON_A_PITCH.replace("ends: nuts", &format!("ends: {ends}")),
            &[],
        );
        let finding = one(&found, "stayed_surface", "", "");
        is(finding, "meets", psi, "");
        assert!(finding.why.contains(words), "{}", finding.why);
    }
    let riveted = ON_A_PITCH.replace("ends: nuts", "ends: riveted over");
    let found = with(&riveted, &[("thickness: 1/2 in", "thickness: 7/16 in")]);
    is(one(&found, "stayed_surface", "", ""), "meets", "162.6", "");
    let lost = "thickness: 1/2 in\n  corrosion_allowance: {size: 1/16 in, origin: works}";
    let found = with(&riveted, &[("thickness: 1/2 in", lost)]);
    is(one(&found, "stayed_surface", "", ""), "meets", "162.6", "");
    let found = with(ON_A_PITCH, &[("100 psi", "260 psi")]);
    below_by(one(&found, "stayed_surface", "", ""), "7.2");
}

/// Nothing of the formula is guessed: the key that is wanting is named.
#[test]
fn holds_a_stayed_surface_names_the_key_that_it_wants() {
    let wants = |stays: &str, changes: &[(&str, &str)], key: &str| {
        let found = with(stays, changes);
        is_silent(one(&found, "stayed_surface", "", ""), key);
        is_silent(one(&found, "stayed_surface_rectangular", "", ""), key);
    };
    wants(
        &ON_A_PITCH.replace(" ends: nuts,", ""),
        &[],
        "`holes[0].stay.ends`",
    );
    let bare = ON_A_PITCH.lines().filter(|line| !line.contains("stay: {"));
    wants(
        &(bare.collect::<Vec<_>>().join("\n") + "\n"),
        &[],
        "`holes[0].stay` is",
    );
    wants(
        ON_A_PITCH,
        &[(", strength: 26 tonf/in2", "")],
        "`plate.material.strength`",
    );
    wants(
        ON_A_PITCH,
        &[("working_pressure: 100 psi\n", "")],
        "`working_pressure`",
    );
    wants(
        ON_A_PITCH,
        &[("metal: steel, strength: 26", "metal: copper, strength: 26")],
        "copper",
    );
    // Two levels of two, the outer lower, stand on no pitch: the rule that was named says nothing of the plate, and that is said.
    let levels = ON_A_PITCH.replace(
        "[3 in, 8 in], [9 in, 8 in], [3 in, 13 in]",
        "[3 in, 13 in], [9 in, 8 in]",
    );
    let found = with(&levels, &[]);
    assert!(!found.iter().any(|f| f.rule == "stayed_surface"));
    is_silent(
        one(&found, "judged_by", "", "ASME Section I 2007"),
        "nothing of this plate",
    );
}

/// Rectangle 6 × 5 = 30 in². Segment of radius 18.5 above y 2: 18.5² acos(2/18.5) − 2 √(18.5² − 4) = 463.75 in², 77.2916 for each of six; above
/// y 11: 156.05, 26.01 each. Core 1.25 − 1.28/11 = 1.133636 in, 1.285131 squared, 1.009340 in². C 8,640: 8,640 × 1.285131/77.2916 = 143.7 psi
/// where the share is more; /30 = 370.1 where the rectangle is.
#[test]
fn by_hand_a_longitudinal_stay_holds_the_larger_of_rectangle_and_share() {
    let by_pressure = |found: &[Finding]| {
        found
            .iter()
            .find(|f| f.rule == "longitudinal_stay" && f.unit == "psi")
            .cloned()
            .expect("a pressure")
    };
    let shared = by_pressure(&with(ON_A_PITCH, &[]));
    is(&shared, "meets", "143.7", "100");
    assert!(
        shared
            .why
            .contains("more than the 30.00 in² of the pitches"),
        "{}",
        shared.why
    );
    let high = &[("over_tubes: 2 in", "over_tubes: 11 in")];
    let found = with(ON_A_PITCH, high);
    is(&by_pressure(&found), "meets", "370.1", "100");
    assert!(by_pressure(&found).why.contains("pitches"));
    // 46,374.9 lb on six cores: 7,657.6 psi; 100 × 30/1.009340 = 2,972.2 psi, where a share of the higher segment would be 2,576.8.
    is(
        one(&with(ON_A_PITCH, &[]), "stay_stress", "230.25", "6 stays"),
        "meets",
        "7657.6",
        "9000",
    );
    let by_pitch = one(&found, "stay_stress", "230.25", "stays");
    is(by_pitch, "meets", "2972.2", "9000");
    assert!(by_pitch.why.contains("pitches"), "{}", by_pitch.why);
}

/// A pipe of 4 in between the two lower stays takes half itself out of their rectangles, 23.72 in²; the others hold 30, and the largest counts for all.
#[test]
fn by_hand_the_largest_piece_of_a_set_counts() {
    let pipe = format!(
        "{ON_A_PITCH}  - {{name: pipe, purpose: steam pipe, hole: 4 in, at: [[0 in, 8 in]]}}\n"
    );
    let found = with(&pipe, &[("over_tubes: 2 in", "over_tubes: 11 in")]);
    let stay = found
        .iter()
        .find(|f| f.rule == "longitudinal_stay" && f.unit == "psi");
    is(stay.expect("a pressure"), "meets", "370.1", "");
}

/// The core of a stay line by line: 1.25 − 1.28/11 = 1.133636; 0.785398 × 1.133636² = 1.009340; less 0.785398 × 0.1875² = 0.027612: 0.981728.
#[test]
fn by_hand_the_core_of_a_stay() {
    let told = ON_A_PITCH.replace("ends: nuts", "ends: nuts, telltale: 3/16 in");
    let found = with(&told, &[]);
    let lines = &one(&found, "stay_stress", "", "").working[..3];
    assert_eq!(
        lines,
        [
            "core = D − 1.28/N = 1.25 − 1.28/11 = 1.133636 in",
            "area = 0.785398 × 1.133636² = 1.00934 in²",
            "less telltale 0.785398 × 0.1875²; net 0.981728 in²",
        ]
    );
    // Telltales are asked of firebox stays only.
    assert!(!found.iter().any(|f| f.rule == "telltale"));
    let stress = one(&found, "stay_stress", "230.25", "");
    assert!(
        stress.why.contains("the core less its tell-tale hole"),
        "{}",
        stress.why
    );
    assert!(
        one(&found, "stay_stress", "", "")
            .why
            .contains("9,000 psi is the lower")
    );
}

/// Two of a set above the tubes and four below: the load is on the two, 46,374.9/(2 × 1.009340) = 22,972.9 psi, and the others, of whose
/// piece of flat nothing is known, are not judged. One at the very height of the highest tubes does not stand above them.
#[test]
fn by_hand_some_stays_of_a_set_stand_below() {
    for low in [
        "[9 in, -8 in], [5 in, -12 in]",
        "[10 in, 0 in], [13 in, -5 in]",
    ] {
        let levels = ON_A_PITCH.replace(
            "[3 in, 8 in], [9 in, 8 in], [3 in, 13 in]",
            &format!("[3 in, 13 in], {low}"),
        );
        let (design, found) = designed(&[("holes: []\n", &levels)]);
        assert_eq!(design.stay_areas.len(), 2);
        let stress = one(&found, "stay_stress", "230.25", "2 stays");
        is(stress, "below", "22972.9", "9000");
        let beside = found
            .iter()
            .find(|f| f.rule == "stay_stress" && f.place == "stays");
        is_silent(
            beside.expect("the others"),
            "4 of 6 stays do not stand above",
        );
    }
}

/// With 1 in held by the flange the segment has a radius of 17.5: 17.5² acos(2/17.5) − 2 √(17.5² − 4) = 306.25 × 1.456248 − 34.771 = 411.2 in².
#[test]
fn by_hand_what_the_flange_holds_comes_off() {
    let found = with(
        ON_A_PITCH,
        &[("inside_flange: 0 in", "inside_flange: 1 in")],
    );
    let area = one(&found, "area_above_tubes", "", "");
    is(area, "note", "411.2", "");
    assert!(area.why.contains("on 6 stays"), "{}", area.why);
}

/// A flue at (0, 6) holds the flat only where `support` counts it. Above y 2: 18.5² acos(2/18.5) − 2 √(18.5² − 4) = 463.75 in²; above
/// the flue's centre and 2 in, y 8: 342.25 acos(8/18.5) − 8 √(342.25 − 64) = 251.11 in². Where neither tubes nor flues count there is
/// no such flat, and the keys are named.
#[test]
fn by_hand_a_flue_holds_the_flat_where_it_is_counted() {
    let nest = (
        "holes: []\n",
        "  - {name: flue, purpose: flue, tube: 5 in, hole: 5 1/8 in, pattern: {points: [[0 in, 6 in]]}}\nholes: []\n",
    );
    for (counts, area, lines) in [
        ("tubes: true", "463.7", "h = 18.5 − 2 = 16.5 in"),
        (
            "tubes: true, flues: true",
            "251.1",
            "h = 18.5 − 8 = 10.5 in",
        ),
        (
            "tubes: false, flues: true",
            "251.1",
            "h = 18.5 − 8 = 10.5 in",
        ),
    ] {
        let found = judged(&[nest, ("tubes: true", counts)]);
        let finding = one(&found, "area_above_tubes", "geometry", "");
        is(finding, "note", area, "");
        assert_eq!(finding.working[0], lines);
        assert_eq!(finding.working.len(), 3);
    }
    let found = judged(&[nest, ("tubes: true", "tubes: false")]);
    is_silent(
        one(&found, "area_above_tubes", "", ""),
        "no tube or flue of the plate is counted as support (`support.tubes`, `support.flues`)",
    );
}

/// What the circle on the stays alone leaves out is said of what the plate has: tubes, flues, or both.
#[test]
fn holds_what_the_circle_on_the_stays_leaves_out_is_named() {
    let flue = (
        "holes: []\n",
        "  - {name: flue, purpose: flue, tube: 5 in, hole: 5 1/8 in, pattern: {points: [[0 in, 6 in]]}}\nholes: []\n",
    );
    let flues_only = ("    tube: 2 in\n", "    purpose: flue\n    tube: 2 in\n");
    let both_count = ("tubes: true", "tubes: true, flues: true");
    for (changes, words) in [
        (vec![], "tubes not counted: diameter 37.000 in, touching "),
        (
            vec![flue],
            "neither tubes nor flues counted: diameter 37.000 in",
        ),
        (vec![flues_only, both_count], "flues not counted: diameter"),
    ] {
        let found = judged(&changes);
        let circle = one(&found, "largest_circle", "geometry", "");
        assert!(circle.why.starts_with(words), "{}", circle.why);
    }
}

/// The sums of the load above the tubes stand in the working of the stress that follows from it: 463.75 in² at 100 psi, 46,374.94 lb on
/// six cores of 1.00934 in², 6.056039.
#[test]
fn by_hand_the_stress_shows_how_its_load_comes() {
    let found = with(ON_A_PITCH, &[]);
    let lines = &one(&found, "stay_stress", "230.25", "6 stays").working;
    let area = &one(&found, "area_above_tubes", "geometry", "").working;
    assert_eq!(area[2], "load = 463.75 in² × 100 psi = 46,375 lb");
    let from = lines
        .iter()
        .position(|line| *line == area[0])
        .expect("its area");
    assert_eq!(lines[from..from + 3], area[..]);
    assert_eq!(
        lines[from + 4],
        "stress = 46,375 lb/6.056039 in² = 7,658 psi"
    );
    let pressure = found
        .iter()
        .find(|f| f.rule == "longitudinal_stay" && f.unit == "psi")
        .expect("a pressure");
    assert_eq!(pressure.working[1..3], area[..2]);
    assert!(pressure.working[3].starts_with("A = 463.75/6 = 77.29"));
    let high = with(ON_A_PITCH, &[("over_tubes: 2 in", "over_tubes: 11 in")]);
    let lines = &one(&high, "stay_stress", "230.25", "stays").working;
    let sum = lines.last().expect("a sum");
    assert!(
        sum.starts_with("stress = 100 psi × 30 in²/1.00934") && sum.ends_with(" in² = 2,972 psi"),
        "{sum}"
    );
}

/// A plate of stays without a tube has no flat above the tubes, and says so; nothing is noted of such a flat.
#[test]
fn holds_a_plate_without_tubes() {
    let tubes = "tubes:\n  - name: tubes\n    tube: 2 in\n    hole: 2 1/16 in\n    pattern:\n      points: [[-4 in, 0 in], [0 in, 0 in], [4 in, 0 in]]\n";
    let levels = ON_A_PITCH.replace(
        "[3 in, 8 in], [9 in, 8 in], [3 in, 13 in]",
        "[3 in, 13 in], [9 in, 8 in]",
    );
    let found = with(&levels, &[(tubes, "")]);
    is_silent(one(&found, "stay_stress", "", ""), "the plate has no tubes");
    assert!(!found.iter().any(|f| f.rule == "area_above_tubes"));
}

/// Without the allowances of the flat above the tubes a stay on a pitch is still judged by its rectangle; one on none is not judged.
#[test]
fn by_hand_stays_without_the_flat_above_the_tubes() {
    let bare = &[(", above_tubes: {over_tubes: 2 in, inside_flange: 0 in}", "")];
    let found = with(ON_A_PITCH, bare);
    is(
        one(&found, "stay_stress", "", "stays"),
        "meets",
        "2972.2",
        "9000",
    );
    let stay = found
        .iter()
        .find(|f| f.rule == "longitudinal_stay" && f.unit == "psi");
    is(stay.expect("a pressure"), "meets", "370.1", "");
    let levels = ON_A_PITCH.replace(
        "[3 in, 8 in], [9 in, 8 in], [3 in, 13 in]",
        "[3 in, 13 in], [9 in, 8 in]",
    );
    let found = with(&levels, bare);
    is_silent(one(&found, "stay_stress", "", ""), "`support.above_tubes`");
    let silent = found
        .iter()
        .filter(|f| f.rule == "longitudinal_stay" && f.why.contains("no even pitch"));
    assert_eq!(silent.count(), 1);
    let below = levels.replace("13 in", "-13 in").replace("8 in", "-8 in");
    let found = with(&below, &[]);
    is_silent(
        one(&found, "stay_stress", "", ""),
        "4 of 4 stays do not stand above the tubes",
    );
    let silent = found.iter().filter(|f| {
        f.rule == "longitudinal_stay" && f.why.contains("none of them stands above the tubes")
    });
    assert_eq!(silent.count(), 1);
}

/// The pieces of flat: a pipe of 4 in at (0, 8) takes half itself, 2 π = 6.2832 in², out of either rectangle beside it: 23.7168 in²; the
/// other four hold 30. The stay's own hole is not taken off.
#[test]
fn by_hand_the_piece_of_flat_that_each_stay_holds() {
    let pipe = format!(
        "{ON_A_PITCH}  - {{name: pipe, purpose: steam pipe, hole: 4 in, at: [[0 in, 8 in]]}}\n"
    );
    let (design, _) = designed(&[("holes: []\n", &pipe)]);
    let held: Vec<String> = design
        .stay_areas
        .iter()
        .map(|area| {
            let at = design.holes[area.hole].at;
            assert!(matches!(area.piece, Piece::Rectangle { .. }));
            format!(
                "{:.0},{:.0}: {:.4}",
                at.x / 25.4,
                at.y / 25.4,
                area.area_mm2 / SQUARE_MM_PER_SQUARE_INCH
            )
        })
        .collect();
    assert_eq!(
        held,
        [
            "3,8: 23.7168",
            "-3,8: 23.7168",
            "9,8: 30.0000",
            "-9,8: 30.0000",
            "3,13: 30.0000",
            "-3,13: 30.0000"
        ]
    );
}

/// Four stays on a pitch of 6 × 5 and a pipe of 4 in beside them, its centre 1 in beyond the rectangle of the stay at (3, 8): the segment 2² acos 0.5 −
/// 1 × √3 = 2.4567 in² comes off, 27.5433 in².
#[test]
fn by_hand_a_hole_whose_centre_lies_beyond_the_piece() {
    let four = ON_A_PITCH.replace(
        "[3 in, 13 in]]\n    mirrored: true",
        "[3 in, 13 in], [9 in, 13 in]]",
    );
    let pipe =
        format!("{four}  - {{name: pipe, purpose: steam pipe, hole: 4 in, at: [[-1 in, 8 in]]}}\n");
    let (design, _) = designed(&[("holes: []\n", &pipe)]);
    let held = design.stay_areas[0].area_mm2 / SQUARE_MM_PER_SQUARE_INCH;
    assert_eq!(format!("{held:.4}"), "27.5433");
}

/// Stays of two sets share the flat above the tubes: two more of 1 in, of 0.613249 in² each, off the pitch of the six. 46,374.9 lb/(6 × 1.009340 + 2 ×
/// 0.613249) = 46,374.9/7.282538 = 6,368.0 psi; of eight shares each is 57.97 in².
#[test]
fn by_hand_two_sets_share_the_flat() {
    let two = format!(
        "{ON_A_PITCH}  - name: small stays\n    purpose: stay\n    hole: 1 1/16 in\n    at: [[12 in, 5 in]]\n    mirrored: true\n    stay: {{kind: longitudinal, diameter: 1 in, threads_per_inch: 11, metal: steel, strength: 28 tonf/in2}}\n"
    );
    let (design, found) = designed(&[("holes: []\n", &two)]);
    is(
        one(&found, "stay_stress", "", "2 small stays"),
        "meets",
        "6368.0",
        "9000",
    );
    // Every stay stands above the tubes, and none is spoken of as beside them.
    assert_eq!(found.iter().filter(|f| f.rule == "stay_stress").count(), 2);
    let share = design.stay_areas.last().expect("a share");
    assert!(matches!(share.piece, Piece::Share { among: 8 }));
    assert_eq!(
        format!("{:.2}", share.area_mm2 / SQUARE_MM_PER_SQUARE_INCH),
        "57.97"
    );
    // On a higher base 156.05/8 = 19.507 in² each, though the others' rectangles are 30: 8,640 × 0.780813/19.507 = 345.8 psi.
    let high = with(&two, &[("over_tubes: 2 in", "over_tubes: 11 in")]);
    let small = high
        .iter()
        .find(|f| f.place == "small stays" && f.unit == "psi" && f.rule == "longitudinal_stay");
    is(small.expect("a pressure"), "meets", "345.8", "");
    // The pitch is that of the first set, and it is the first set that the surface is named after, in whichever order they stand.
    assert_eq!(one(&found, "stayed_surface", "", "").place, "stays");
    let (first, second) = two.split_once("  - name: small").expect("two sets");
    let turned = format!(
        "holes:\n  - name: small{second}{}",
        first.trim_start_matches("holes:\n")
    );
    let found = with(&turned, &[]);
    let surfaces: Vec<&str> = found
        .iter()
        .filter(|f| f.rule == "stayed_surface")
        .map(|f| f.place.as_str())
        .collect();
    assert_eq!(surfaces, ["stays"]);
    // A core of 0.883636 in is less than the 1 in that regulation 587 asks of any part.
    below_by(
        one(&found, "longitudinal_stay", "587", "small stays, least"),
        "0.1164",
    );
    // A set whose stay is not given takes a share that nobody knows.
    let bare = two.replace("    stay: {kind: longitudinal, diameter: 1 in, threads_per_inch: 11, metal: steel, strength: 28 tonf/in2}\n", "");
    let found = with(&bare, &[]);
    is_silent(
        one(&found, "stay_stress", "", "small stays"),
        "`holes[1].stay` is not given",
    );
}

/// Firebox stays, 1 in × 11, on the pitch: 7,100 × 0.780813/30 = 184.8 psi in steel, 4,700 × 0.780813/30 = 122.3 in copper. Stress 100 × 30/0.613249 = 4,892.0
/// psi; with a telltale of 3/16 in, 0.027612 in², 5,122.6.
#[test]
fn by_hand_firebox_stays() {
    let stay = |words: &str| {
        ON_A_PITCH.replace("{kind: longitudinal, diameter: 1 1/4 in, threads_per_inch: 11, metal: steel, ends: nuts, strength: 28 tonf/in2}", &format!("{{kind: firebox, diameter: 1 in, threads_per_inch: 11{words}}}"))
    };
    let steel = with(&stay(", metal: steel"), &[]);
    is(
        one(&steel, "screwed_stay", "585", ""),
        "meets",
        "184.8",
        "100",
    );
    is(
        one(&steel, "stay_stress", "230.25", ""),
        "meets",
        "4892.0",
        "7500",
    );
    is_silent(
        one(&steel, "telltale", "230.38", ""),
        "`holes[0].stay.telltale`",
    );
    is(
        one(&with(&stay(", metal: iron"), &[]), "screwed_stay", "", ""),
        "meets",
        "184.8",
        "",
    );
    is(
        one(&with(&stay(", metal: copper"), &[]), "screwed_stay", "", ""),
        "meets",
        "122.3",
        "",
    );
    is_silent(
        one(&with(&stay(""), &[]), "screwed_stay", "", ""),
        "`holes[0].stay.metal`",
    );
    let no_pressure = with(
        &stay(", metal: steel"),
        &[("working_pressure: 100 psi\n", "")],
    );
    is_silent(
        one(&no_pressure, "screwed_stay", "", ""),
        "`working_pressure`",
    );
    let off = stay(", metal: steel").replace(
        "[3 in, 8 in], [9 in, 8 in], [3 in, 13 in]",
        "[3 in, 13 in], [9 in, 8 in]",
    );
    is_silent(
        one(&with(&off, &[]), "screwed_stay", "", ""),
        "no even pitch",
    );
    assert!(!steel.iter().any(|f| f.rule == "longitudinal_stay"));
    assert!(
        one(&steel, "stay_stress", "", "")
            .why
            .contains("7,500 psi is the lower")
    );
    // Firebox stays hold a water space: the flat above the tubes rests on the bars beside them, 463.75/2 = 231.9 in² each.
    let bars = format!(
        "{off}  - {{name: bars, purpose: stay, hole: 1 9/32 in, at: [[14 in, 4 in]], mirrored: true, stay: {{kind: longitudinal, diameter: 1 1/4 in, threads_per_inch: 11}}}}\n"
    );
    let found = with(&bars, &[]);
    assert!(
        one(&found, "area_above_tubes", "", "")
            .why
            .contains("on 2 stays")
    );
    is_silent(one(&found, "screwed_stay", "", ""), "no even pitch");
    let told = |size: &str| with(&stay(&format!(", metal: steel, telltale: {size}")), &[]);
    is(
        one(&told("3/16 in"), "stay_stress", "", ""),
        "meets",
        "5122.6",
        "7500",
    );
    is(
        one(&told("3/16 in"), "telltale", "", ""),
        "meets",
        "0.1875",
        "0.1875",
    );
    is(
        one(&told("7/32 in"), "telltale", "", ""),
        "meets",
        "0.21875",
        "",
    );
    below_by(one(&told("5/32 in"), "telltale", "", ""), "0.03125");
    let large = told("1/4 in");
    below_by(one(&large, "telltale", "", ""), "0.03125");
    is(one(&large, "telltale", "", ""), "below", "0.25", "0.21875");
}

/// Diagonal stays 50 in long, 49 square to the plate: 1.009340 × 9,000 × (49/50)/77.2916 = 115.2 psi; at the works' own 8,000 psi 102.4. Palm stays and
/// stays without their lengths are not judged.
#[test]
fn by_hand_diagonal_and_palm_stays() {
    let stay = |words: &str| ON_A_PITCH.replace("kind: longitudinal", words);
    let named = &[("ASME Section I 2007", "diagonal_stay")];
    let lengths = "kind: diagonal, slant_length: 50 in, square_length: 49 in";
    let finding =
        |words: &str| one(&with(&stay(words), named), "diagonal_stay", "", "stays").clone();
    is(&finding(lengths), "meets", "115.2", "100");
    let own = format!("{lengths}, allowed_stress: {{stress: 8000 psi, origin: shop book}}");
    is(&finding(&own), "meets", "102.4", "100");
    assert!(finding(&own).why.contains("shop book"));
    let stress = with(&stay(&own), named);
    is(
        one(&stress, "stay_stress", "shop book", ""),
        "meets",
        "7657.6",
        "8000",
    );
    is_silent(
        &finding("kind: diagonal"),
        "`holes[0].stay.square_length` and `holes[0].stay.slant_length`",
    );
    is_silent(
        &finding("kind: diagonal, slant_length: 50 in"),
        "square_length",
    );
    is_silent(&finding("kind: palm"), "designer's statement");
    let mut unpressed = named.to_vec();
    unpressed.push(("working_pressure: 100 psi\n", ""));
    is_silent(
        one(&with(&stay(lengths), &unpressed), "diagonal_stay", "", ""),
        "`working_pressure`",
    );
    // Longitudinal stays are no business of this rule.
    assert!(
        !with(ON_A_PITCH, named)
            .iter()
            .any(|f| f.rule == "diagonal_stay")
    );
    let off = stay(lengths).replace(
        "[3 in, 8 in], [9 in, 8 in], [3 in, 13 in]",
        "[3 in, -13 in], [9 in, -8 in]",
    );
    is_silent(
        one(&with(&off, named), "diagonal_stay", "", ""),
        "no even pitch",
    );
}

/// 1.28/11 = 0.1164 in: a stay of 0.1 in has no core, and one of no threads none either.
#[test]
fn refuses_a_stay_without_a_core() {
    let fact = |from: &str, to: &str| {
        let text = PLATE.replacen("holes: []\n", &ON_A_PITCH.replace(from, to), 1);
        let refused = read_spec("plate.yaml", text.as_bytes()).expect_err("no core");
        refused.faults[0].fact.clone()
    };
    assert_eq!(
        fact("diameter: 1 1/4 in", "diameter: 0.1 in"),
        "11 threads to the inch leave no core of 0.1 in"
    );
    assert_eq!(
        fact("threads_per_inch: 11", "threads_per_inch: 0"),
        "0 threads to the inch is no thread"
    );
}
