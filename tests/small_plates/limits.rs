//! Ligaments and sizes that differ over a plate, and what is only noted.

use centrepop::checks::Finding;

use super::{below_by, designed, is, is_silent, judged, one};

const POINTS: &str = "points: [[-4 in, 0 in], [0 in, 0 in], [4 in, 0 in]]";

/// Two nests: a pair of small holes and a pair of large ones, with so much metal between each.
fn two_nests(small: (&str, &str), large: (&str, &str), more: &[(&str, &str)]) -> Vec<Finding> {
    let nests = format!(
        "points: [[-4 in, 0 in], [{}, 0 in]]\n  - name: large tubes\n    tube: {}\n    hole: {}\n    pattern:\n      points: [[-4 in, -9 in], [{}, -9 in]]",
        small.1, large.0, large.0, large.1
    );
    let mut all = vec![(POINTS, nests.as_str())];
    let (tube, hole) = (format!("tube: {}", small.0), format!("hole: {}", small.0));
    all.push(("tube: 2 in", &tube));
    all.push(("hole: 2 1/16 in", &hole));
    all.extend(more);
    judged(&all)
}

/// Small holes of 1 1/2 in at 2.18: metal 0.68, asked 0.6875, 0.0075 short. Large of 2 in at 2.72: metal 0.72, asked 0.75, 0.03 short: the worse, though it has more metal and
/// more is asked of it, and named first.
#[test]
fn by_hand_the_worst_margin_is_judged() {
    let found = two_nests(("1 1/2 in", "-1.82 in"), ("2 in", "-1.28 in"), &[]);
    let worst = one(&found, "tube_ligament", "580", "");
    below_by(worst, "0.03");
    assert!(worst.place.contains("T3–T4"), "{}", worst.place);
    assert!(
        worst.why.contains("2 pairs below: T3–T4, T1–T2"),
        "{}",
        worst.why
    );
    // With metal enough between the small ones the others are not spoken of.
    let found = two_nests(("1 1/2 in", "-1.7 in"), ("2 in", "-1.28 in"), &[]);
    let worst = one(&found, "tube_ligament", "580", "");
    assert!(worst.why.contains("the one pair below"), "{}", worst.why);
    let found = two_nests(("1 1/2 in", "-1.7 in"), ("2 in", "-1.2 in"), &[]);
    let worst = one(&found, "tube_ligament", "580", "");
    is(worst, "meets", "0.80", "0.75");
    assert!(!worst.why.contains("below"), "{}", worst.why);
    // The same of the largest holes: small 1.5 to 1.51, metal 0.67, asked 0.68875; large 2 to 2.01, 0.71 and 0.75125, 0.04125 short.
    let largest = &[
        (
            "hole: 1 1/2 in\n",
            "hole: 1 1/2 in\n    hole_largest: 1.51 in\n",
        ),
        ("hole: 2 in\n", "hole: 2 in\n    hole_largest: 2.01 in\n"),
    ];
    let found = two_nests(("1 1/2 in", "-1.82 in"), ("2 in", "-1.28 in"), largest);
    below_by(
        one(
            &found,
            "hole_growth",
            "580",
            "T3–T4, row, at the largest hole",
        ),
        "0.04125",
    );
}

/// Plate 1/2 in. Holes of 1 in with 0.44 in between: section 0.22 in², asked 0.195, 0.025 over. Of 4 in with 1.51: 0.755, asked 0.705, 0.05 over, though in proportion less. The
/// tightest is the first, whichever nest stands first.
#[test]
fn by_hand_the_tightest_section() {
    let named = &[(
        "judged_by: [Indian Boiler Regulations 1950",
        "judged_by: [tube_ligament_alternative",
    )];
    let found = two_nests(("1 in", "-2.56 in"), ("4 in", "1.51 in"), named);
    let section = one(&found, "tube_ligament_alternative", "", "section");
    is(section, "meets", "0.220", "0.195");
    let found = two_nests(("4 in", "1.51 in"), ("1 in", "-2.56 in"), named);
    is(
        one(&found, "tube_ligament_alternative", "", "section"),
        "meets",
        "0.220",
        "0.195",
    );
    // Of 1 1/2 in with 0.68: 0.34, asked 0.28; of 2 in with 0.72: 0.36, asked 0.365, 0.005 short, though more is there.
    let short = two_nests(("1 1/2 in", "-1.82 in"), ("2 in", "-1.28 in"), named);
    let section = one(&short, "tube_ligament_alternative", "", "section");
    below_by(section, "0.005");
    let thickness = one(&found, "tube_ligament_alternative", "", "thickness");
    is(thickness, "below", "0.5", "0.7");
}

/// The largest hole of the tubes alone grows, the stay's does not: stay at (0, 3), tubes of 2 1/16 at (0, 0) grown to 2 1/8: 3 − (2.125 + 1)/2 = 1.4375 in; asked 2.125/8 + 0.5 = 0.765625.
#[test]
fn by_hand_a_tube_grows_beside_a_stay() {
    let stay = "holes:\n  - {name: stays, purpose: stay, hole: 1 in, at: [[0 in, 3 in]]}\n";
    let found = judged(&[
        ("holes: []\n", stay),
        (
            "hole: 2 1/16 in\n",
            "hole: 2 1/16 in\n    hole_largest: 2 1/8 in\n",
        ),
    ]);
    is(
        one(&found, "hole_growth", "580", "S1"),
        "meets",
        "1.4375",
        "0.765625",
    );
}

/// How far holes may grow: pitch 4, (4 − 0.5)/1.125 = 3.111111, 1.048611 over 2 1/16. At a pitch of 2 3/4, 2.0 in: 0.0625 too large already. The shorter of row and column counts, and each nest by
/// itself.
#[test]
fn by_hand_the_life_of_holes() {
    let life = |points: &str| {
        let found = judged(&[(POINTS, points)]);
        let life = found
            .iter()
            .find(|f| f.rule == "hole_growth" && f.place.starts_with("tubes"));
        life.expect("a life").clone()
    };
    let plain = life(POINTS);
    is(&plain, "note", "3.1111", "");
    assert!(
        plain.why.contains("may still grow 1.0486 in"),
        "{}",
        plain.why
    );
    let close = life("points: [[0 in, 0 in], [2 3/4 in, 0 in]]");
    is(&close, "note", "2.0000", "");
    assert!(
        close.why.contains("0.0625 in larger already"),
        "{}",
        close.why
    );
    for shorter in ["row", "column"] {
        let (x, y) = if shorter == "row" { (3, 4) } else { (4, 3) };
        let both = life(&format!(
            "points: [[0 in, 0 in], [{x} in, 0 in], [0 in, {y} in]]"
        ));
        is(&both, "note", "2.2222", "");
        assert_eq!(both.place, format!("tubes, {shorter}"));
    }
    let found = two_nests(("1 1/2 in", "-1.7 in"), ("2 in", "-1.2 in"), &[]);
    let lives: Vec<String> = found
        .iter()
        .filter(|f| f.rule == "hole_growth" && f.verdict.name() == "note")
        .map(|f| format!("{}: {:.4}", f.place, f.provided.expect("a hole")))
        .collect();
    // (2.3 − 0.5)/1.125 = 1.6 and (2.8 − 0.5)/1.125 = 2.0444.
    assert_eq!(lives, ["tubes, row: 1.6000", "large tubes, row: 2.0444"]);
}

/// A flue of 4 1/16 in 5 in under a tube of 2 1/16: metal 5 − 3.0625 = 1.9375; on the larger 4.0625/8 + 0.5 = 1.0078 in, on the mean 3.0625/8 + 0.5 = 0.8828. A second flue further off, at
/// (4, −5.5), has 2.4375 to its tube and is not the tightest, whichever is written first.
#[test]
fn by_hand_a_flue_beside_a_tube() {
    for flues in [
        "[[0 in, -5 in], [6 in, -5 1/2 in]]",
        "[[6 in, -5 1/2 in], [0 in, -5 in]]",
    ] {
        let nest = format!(
            "{POINTS}\n  - name: flues\n    purpose: flue\n    tube: 4 in\n    hole: 4 1/16 in\n    pattern: {{points: {flues}}}"
        );
        let found = judged(&[(POINTS, &nest)]);
        let mixed = one(&found, "mixed_holes", "580", "T2–F");
        is(mixed, "note", "1.9375", "");
        assert!(
            mixed
                .why
                .contains("on the larger hole 1.0078 in is asked, on the mean 0.8828 in"),
            "{}",
            mixed.why
        );
        assert_eq!(
            mixed.working,
            [
                "on the larger: 4.0625/8 + 0.5 = 1.007813 in",
                "on the mean: 3.0625/8 + 0.5 = 0.882813 in"
            ]
        );
    }
    assert!(!judged(&[]).iter().any(|f| f.rule == "mixed_holes"));
}

/// A pipe of 4 in at (0, 8) between stays at (±3, 8) and (±3, 13): 3 − (4 + 1.28125)/2 = 0.3594 in, the least; stays 5 − 1.28125 = 3.71875 apart. No tube is among them, and no rule for
/// tubes speaks of two stays; a former pin is gone when its tube is drilled.
#[test]
fn by_hand_holes_with_no_tube_in_them() {
    let holes = "holes:
  - {name: stays, purpose: stay, hole: 1 9/32 in, at: [[3 in, 8 in], [3 in, 13 in]], mirrored: true}
  - {name: pipe, purpose: steam pipe, hole: 4 in, at: [[0 in, 8 in]]}
  - {name: pins, purpose: former pin, hole: 1/2 in, at: [[2 in, 0 in], [0 in, 5 in]]}
";
    let found = judged(&[("holes: []\n", holes)]);
    let others: Vec<&Finding> = found
        .iter()
        .filter(|f| f.rule == "other_ligaments")
        .collect();
    assert_eq!(others.len(), 1);
    is(others[0], "note", "0.359375", "");
    assert!(others[0].place.contains("P1"), "{}", others[0].place);
    assert_eq!(others[0].working.len(), 2);
    assert_eq!(
        others[0].working[0],
        "stay and stay, S1–S3: 5 − (1.28125 + 1.28125)/2 = 3.71875 in"
    );
    let of_tubes = found.iter().filter(|f| f.rule == "tube_ligament");
    for finding in of_tubes {
        assert!(
            finding.place.contains('T') && !finding.place.contains('N'),
            "{}",
            finding.place
        );
    }
}

/// A plug beside a tube is no second tube, and is named; a flue is, as another tube is. Where neither takes a tube there is no tube hole
/// to speak of.
#[test]
fn holds_the_place_of_a_ligament_says_what_is_beside_a_tube() {
    let others = "  - {name: flue, purpose: flue, tube: 2 in, hole: 2 1/8 in, pattern: {points: [[0 in, -4 in]]}}\nholes:\n  - {name: plugs, purpose: plug, hole: 2 in, at: [[0 in, 4 in], [4 in, 4 in]]}\n";
    let found = judged(&[("holes: []\n", others)]);
    let places = |rule: &str| -> Vec<&str> {
        let own = found.iter().filter(|f| f.rule == rule);
        own.map(|f| f.place.as_str()).collect()
    };
    let of_tubes = [
        "T1–T2, row",
        "T2–F1, column",
        "T2–W1, column, tube hole to plug",
    ];
    assert_eq!(places("tube_ligament"), of_tubes);
    assert_eq!(places("other_ligaments"), ["W1–W2, row"]);
}

/// Land: the stay at (9, 8) is √145 = 12.041595 from the centre, 18.5 − 12.041595 = 6.458405 less 0.640625: 5.8178 in; the tubes have 13.46875.
#[test]
fn by_hand_the_least_land() {
    let stay = "holes:\n  - {name: stays, purpose: stay, hole: 1 9/32 in, at: [[9 in, 8 in]]}\n";
    let found = judged(&[("holes: []\n", stay)]);
    let land = one(&found, "land", "geometry", "S1 to tangent");
    is(land, "note", "5.8178", "");
    assert_eq!(
        land.working,
        [
            "T1: land = 14.5 − 2.0625/2 = 13.46875 in",
            "S1: land = 6.458405 − 1.28125/2 = 5.81778 in"
        ]
    );
    assert_eq!(
        land.why,
        "the least of all; `own_limits.land` would set one limit to every hole"
    );
}

/// The tubes have 18.5 − 4 − 1.03125 = 13.46875 in to the tangent, judged by their own 10 in: what is noted leaves them out, and is the
/// second nest's, at (0, −17), 18.5 − 17 − 0.53125 = 0.96875 in, with the stay's 5.8178 in. On a plate with a ring a limit to the edge
/// judges no land to the weld; where every hole has its limit, nothing is noted.
#[test]
fn by_hand_the_least_land_that_no_limit_judges() {
    let points = "points: [[-4 in, 0 in], [0 in, 0 in], [4 in, 0 in]]\n";
    let within =
        |to: &str| format!("{points}    within: {{land: [{{to: {to}, at_least: 10 in}}]}}\n");
    let second =
        "  - {name: small, tube: 1 in, hole: 1 1/16 in, pattern: {points: [[0 in, -17 in]]}}\n";
    let stay = "holes:\n  - {name: stays, purpose: stay, hole: 1 9/32 in, at: [[9 in, 8 in]]}\n";
    let holes = format!("{second}{stay}");
    let to_tangent = within("tangent");
    let found = judged(&[(points, &to_tangent), ("holes: []\n", &holes)]);
    let land = one(&found, "land", "geometry", "T4 to tangent");
    is(land, "note", "0.9688", "");
    assert_eq!(
        land.working,
        [
            "T4: land = 1.5 − 1.0625/2 = 0.96875 in",
            "S1: land = 6.458405 − 1.28125/2 = 5.81778 in"
        ]
    );
    assert_eq!(
        land.why,
        "the least of the holes that no `within.land` judges; `own_limits.land` would set one limit to every hole"
    );
    let to_edge = within("edge");
    let ring = [
        (
            "flange:\n  pressed: {towards: smokebox, outside_diameter: 40 in, heel_radius_inside: 1 in, straight: 2 in, trim: 1/2 in}",
            "outline: {round: {diameter: 46 in}}\nflange:\n  fabricated: {towards: firebox, ring_outside_diameter: 40 in, ring_thickness: 1/2 in, ring_width: 3 in, weld_leg_inside: 3/8 in, weld_leg_outside: 3/8 in}",
        ),
        ("flange_line: tangent", "flange_line: inner weld toe"),
    ];
    let found = judged(&[ring[0], ring[1], (points, &to_edge), ("holes: []\n", stay)]);
    let land = one(&found, "land", "geometry", "S1 to inner weld toe");
    assert_eq!(land.working.len(), 2);
    assert!(land.why.starts_with("the least of all;"), "{}", land.why);
    let found = judged(&[(points, &to_tangent)]);
    assert!(
        !found
            .iter()
            .any(|f| f.rule == "land" && f.source.contains("geometry"))
    );
}

/// Half an inch for 5/8: (0.5/0.625)² = 64 %; for 7/16, (8/7)² = 131 %. Holes and tubes are told where they differ.
#[test]
fn by_hand_against_the_original() {
    let old = |words: &str| {
        let original = format!("thickness: 1/2 in\n  original: {{source: drawing 7, {words}}}");
        let found = judged(&[("thickness: 1/2 in", &original)]);
        found
            .into_iter()
            .filter(|f| f.rule == "old_sizes")
            .map(|f| f.why)
            .collect::<Vec<_>>()
    };
    let all = old("thickness: 5/8 in, tube_hole: 2 in, tube_count: 4");
    assert_eq!(all.len(), 3);
    assert!(
        all[0].contains("thinner than the original by 0.1250 in, and 64 %"),
        "{}",
        all[0]
    );
    assert!(
        all[1].contains("2 1/16 in for the original 2 in"),
        "{}",
        all[1]
    );
    assert!(all[2].contains("3 tubes for the original 4"), "{}", all[2]);
    assert!(
        old("thickness: 7/16 in")[0].contains("thicker than the original by 0.0625 in, and 131 %")
    );
    let same = old("thickness: 0.5 in, tube_hole: 2 1/16 in, tube_count: 3");
    assert_eq!(same.len(), 1);
    assert!(same[0].contains("as thick as the original"), "{}", same[0]);
}

/// Material, tube and metal between tubes are told where they differ and where they do not are not: a tube of 2 in for one of
/// 1 5/8 in is 3/8 in too large for the old hole; 4 in from tube to tube less a hole of 2 1/16 in leaves 1 15/16 in. Small letters are no
/// other material.
#[test]
fn by_hand_every_figure_of_the_original() {
    let old = |words: &str| {
        let original = format!("thickness: 1/2 in\n  original: {{source: drawing 7, {words}}}");
        let found = judged(&[("thickness: 1/2 in", &original)]).into_iter();
        found
            .filter(|f| f.rule == "old_sizes")
            .map(|f| format!("{}: {}", f.place, f.why))
            .collect::<Vec<_>>()
    };
    let all = old("material: wrought iron, tube: 1 5/8 in, tube_hole: 1 5/8 in, ligament: 1 in");
    assert_eq!(
        all,
        [
            "material: P265GH for the original wrought iron (drawing 7)",
            "tube: 2 in for the original 1 5/8 in: it does not go into the original's hole, 1 5/8 in (drawing 7)",
            "tube hole: 2 1/16 in for the original 1 5/8 in (drawing 7)",
            "least metal between tube holes: 1.9375 in for the original 1 in (drawing 7)"
        ]
    );
    assert_eq!(
        old("ligament: 2 in"),
        [
            "least metal between tube holes: 1.9375 in for the original 2 in, less metal than the original (drawing 7)"
        ]
    );
    // A larger tube that the old hole takes yet, and one that fills it.
    for hole in ["2 1/16 in", "2 in"] {
        let tube = format!("tube: 1 3/4 in, tube_hole: {hole}");
        assert_eq!(
            old(&tube)[0],
            "tube: 2 in for the original 1 3/4 in (drawing 7)"
        );
    }
    assert!(old("tube: 2 in, tube_hole: 2 1/16 in, tube_count: 3, material: p265gh").is_empty());
}

/// A heel that is still pressed is told beside the original's where radii are compared, once; one that is gone is told here.
#[test]
fn holds_the_heel_of_the_original_is_told_once() {
    let original = (
        "thickness: 1/2 in",
        "thickness: 1/2 in\n  original: {source: drawing 7, heel_radius_inside: 3/4 in}",
    );
    let told = |changes: &[(&str, &str)]| {
        let found = judged(changes).into_iter();
        found
            .filter(|f| f.why.contains("drawing 7"))
            .map(|f| (f.rule, f.why))
            .collect::<Vec<_>>()
    };
    let pressed = told(&[original]);
    assert_eq!(pressed.len(), 1, "{pressed:?}");
    assert_eq!(pressed[0].0, "flange_radius");
    assert_eq!(
        told(&[original, FLAT, AT_THE_EDGE]),
        [(
            "old_sizes",
            "none: no flange is written for the original 3/4 in (drawing 7)".to_string()
        )]
    );
}

const FLAT: (&str, &str) = (
    "flange:\n  pressed: {towards: smokebox, outside_diameter: 40 in, heel_radius_inside: 1 in, straight: 2 in, trim: 1/2 in}\n",
    "outline: {round: {diameter: 40 in}}\n",
);
const AT_THE_EDGE: (&str, &str) = ("flange_line: tangent", "flange_line: edge");

/// Tubes 4 in apart: cut 2 mm under 2 1/16 in, 4 − 2.0625 + 2/25.4 = 2.01624 in stand between the cuts. Cut to size, the metal is that of
/// the finished hole, which is no stage on the way to it.
#[test]
fn by_hand_metal_between_holes_as_cut() {
    let stages = |cut: &str| {
        let cutting = format!(
            "{}cutting: {{process: waterjet, origin: works, holes: [{{purpose: tube, {cut}}}]}}\n",
            FLAT.1
        );
        let found = judged(&[(FLAT.0, &cutting), AT_THE_EDGE]).into_iter();
        found
            .filter(|f| f.rule == "ligament_at_stage")
            .collect::<Vec<_>>()
    };
    let under = stages("cut: undersize, under: 2 mm");
    assert_eq!(under.len(), 1);
    assert!(under[0].place.ends_with("as cut"), "{}", under[0].place);
    is(&under[0], "note", "2.0162", "");
    assert!(stages("cut: finish").is_empty());
}

/// 2 1/16 − 2 = 1/16 in exactly is what was usual; 1/64 more is more; a tube that fills its hole is not too large for it.
#[test]
fn by_hand_clearance_of_tubes() {
    let said = |hole: &str| {
        let found = judged(&[("hole: 2 1/16 in", &format!("hole: {hole}"))]);
        one(&found, "tube_hole_clearance", "", "tubes").why.clone()
    };
    assert!(said("2 1/16 in").contains("within the 1/16 in"));
    assert!(said("2 5/64 in").contains("more than the 1/16 in"));
    assert!(said("2 in").contains("within the 1/16 in"));
}

/// A washer of 3 in round a stay at (0, 16), 2.5 in from the tangent: 2.5 − 1.5 = 1 in. Of 6 in: 0.5 in too little.
#[test]
fn by_hand_a_washer_beside_the_heel() {
    let with = |washer: &str| {
        let stay = format!(
            "holes:\n  - {{name: stays, purpose: stay, hole: 1 in, at: [[0 in, 16 in]], needs_clear: {washer}}}\n"
        );
        judged(&[("holes: []\n", &stay)])
    };
    is(
        one(&with("3 in"), "washer_room", "", "S1 beside the tangent"),
        "meets",
        "1.0000",
        "0",
    );
    below_by(
        one(&with("6 in"), "washer_room", "", "S1 beside the tangent"),
        "0.5000",
    );
}

/// A nut 1 1/2 in across its flats is 1.5/cos 30° = 1.73205 in across its corners, more than a washer of 1 5/8 in: half of it is
/// 0.8660, and 2.5 − 0.8660 = 1.6340 in of room to the tangent for a stay at (0, 16).
#[test]
fn by_hand_a_nut_takes_more_room_across_its_corners() {
    let stay = "holes:\n  - {name: stays, purpose: stay, hole: 1 in, at: [[0 in, 16 in]], stay: {kind: longitudinal, diameter: 15/16 in, threads_per_inch: 11, outside_nut: {across_flats: 1 1/2 in, thickness: 1 in}, outside_washer: {diameter: 1 5/8 in, thickness: 1/4 in}}}\n";
    let found = judged(&[("holes: []\n", stay)]);
    is(
        one(&found, "washer_room", "", "S1 beside the tangent"),
        "meets",
        "1.6340",
        "0",
    );
}

/// Three fittings 4 in apart, each 2 in clear: 4 − 1 − 1 = 2 in between the middle one and either of the others. Of several as tight the first
/// is named, beside the first.
#[test]
fn by_hand_of_rooms_alike_the_first_is_named() {
    let fittings = "holes:\n  - {name: studs, purpose: fitting, hole: 1 in, at: [[0 in, 10 in], [-4 in, 10 in], [4 in, 10 in]], needs_clear: 2 in}\n";
    let (design, found) = designed(&[("holes: []\n", fittings)]);
    let room = one(&found, "washer_room", "", "");
    is(room, "meets", "2.0000", "0");
    let of_group: Vec<&str> = design
        .holes
        .iter()
        .filter(|hole| design.groups[hole.group].name == "studs")
        .map(|hole| hole.id.as_str())
        .collect();
    assert_eq!(
        room.place,
        format!("{} beside {}, both faces", of_group[0], of_group[1])
    );
    assert_eq!(
        (design.holes[3].at.x, design.holes[3].id.as_str()),
        (0.0, of_group[0])
    );
}

/// A nut in the smokebox and a larger washer on the boiler side of a stay at (0, 16), 2.5 in from the tangent: 2.5 − 2/2/cos 30° =
/// 1.3453 in on the one, 2.5 − 3/2 = 1 in on the other.
#[test]
fn by_hand_each_face_has_its_own_nut_and_washer() {
    let stay = "holes:\n  - {name: stays, purpose: stay, hole: 1 in, at: [[0 in, 16 in]], stay: {kind: longitudinal, diameter: 15/16 in, threads_per_inch: 11, outside_nut: {across_flats: 2 in, thickness: 1 in}, inside_washer: {diameter: 3 in, thickness: 1/4 in}}}\n";
    let found = judged(&[("holes: []\n", stay)]);
    for (face, room) in [("smokebox face", "1.3453"), ("firebox face", "1.0000")] {
        let finding = one(&found, "washer_room", "", face);
        is(finding, "meets", room, "0");
        assert_eq!(finding.why, "the tightest of stays");
    }
}

/// A stud hole of 1/2 in, 2 in off, leaves 2 − 0.5 − 0.25 = 1.25 in beside a washer of 1 in; a pipe of 8 in, twice as far off and
/// more, leaves 5 − 0.5 − 4 = 0.5, and is what counts.
#[test]
fn by_hand_a_large_hole_further_off_leaves_less_room() {
    let holes = "holes:\n  - {name: washers, purpose: fitting, hole: 1/2 in, at: [[-7 in, 10 in]], needs_clear: 1 in}\n  - {name: stud, purpose: bolt, hole: 1/2 in, at: [[-9 in, 10 in]]}\n  - {name: pipe, purpose: steam pipe, hole: 8 in, at: [[-2 in, 10 in]]}\n";
    let found = judged(&[("holes: []\n", holes)]);
    is(
        one(&found, "washer_room", "", "beside P1"),
        "meets",
        "0.5000",
        "0",
    );
}

/// Studs at 3 in from the middle of a pipe stand in its joint face of 7 in, and are not judged against it; a stay at (0, 16) is:
/// 6 − 3.5 − 0.5 = 2 in from a pipe at (0, 10).
#[test]
fn by_hand_studs_stand_in_their_joint_face() {
    let holes = "holes:\n  - {name: pipe, purpose: steam pipe, hole: 4 in, at: [[0 in, 10 in]], joint_face: {diameter: 7 in, studs: studs}}\n  - {name: studs, purpose: bolt, hole: 5/8 in, at: [[0 in, 13 in], [0 in, 7 in]]}\n  - {name: stay, purpose: stay, hole: 1 in, at: [[0 in, 16 in]]}\n";
    let found = judged(&[("holes: []\n", holes)]);
    is(
        one(&found, "washer_room", "", "P1 beside S1"),
        "meets",
        "2.0000",
        "0",
    );
}

/// On a flat plate with a ring the nearer weld toe counts: at 21 in from the centre, beyond the ring's outer toe at 20 3/8, 0.625 − 0.25 = 0.375 in; within it at 17, 19.125 − 17 − 0.25 = 1.875.
#[test]
fn by_hand_a_washer_beside_a_ring() {
    let ring = [
        (
            "flange:\n  pressed: {towards: smokebox, outside_diameter: 40 in, heel_radius_inside: 1 in, straight: 2 in, trim: 1/2 in}",
            "outline: {round: {diameter: 46 in}}\nflange:\n  fabricated: {towards: firebox, ring_outside_diameter: 40 in, ring_thickness: 1/2 in, ring_width: 3 in, weld_leg_inside: 3/8 in, weld_leg_outside: 3/8 in}",
        ),
        ("flange_line: tangent", "flange_line: inner weld toe"),
    ];
    for (y, toe, room, lands) in [
        ("21 in", "outer weld toe", "0.3750", 1),
        ("17 in", "inner weld toe", "1.8750", 2),
    ] {
        let fitting = format!(
            "holes:\n  - {{name: studs, purpose: fitting, hole: 1/4 in, at: [[0 in, {y}]], needs_clear: 1/2 in}}\n"
        );
        let found = judged(&[ring[0], ring[1], ("holes: []\n", &fitting)]);
        let on_ring = format!("{toe}, firebox face");
        is(one(&found, "washer_room", "", &on_ring), "meets", room, "0");
        // Land is measured to the line that holds the flat and to no other: one figure for tubes, and one for a
        // stud that stands within it.
        assert_eq!(one(&found, "land", "geometry", "").working.len(), lands);
    }
}

/// The toes of a ring towards the smokebox are on the smokebox face; behind them the boiler face is flat as far as the edge, 20 1/2 in from
/// the centre: 20.5 − 17 − 0.25 = 3.25 in beside a clear face of 1/2 in, where the toe, at 19.5 − 0.5 − 0.375 = 18.625, leaves 1.375;
/// and the other way about.
#[test]
fn by_hand_a_weld_toe_counts_on_the_face_of_its_ring() {
    for (towards, other) in [("smokebox", "firebox"), ("firebox", "smokebox")] {
        let ring = format!(
            "outline: {{round: {{diameter: 41 in}}}}\nflange:\n  fabricated: {{towards: {towards}, ring_outside_diameter: 39 in, ring_thickness: 1/2 in, ring_width: 3 in, weld_leg_inside: 3/8 in, weld_leg_outside: 3/8 in}}"
        );
        let changes = [
            (
                "flange:\n  pressed: {towards: smokebox, outside_diameter: 40 in, heel_radius_inside: 1 in, straight: 2 in, trim: 1/2 in}",
                ring.as_str(),
            ),
            ("flange_line: tangent", "flange_line: inner weld toe"),
            (
                "holes: []\n",
                "holes:\n  - {name: studs, purpose: fitting, hole: 1/4 in, at: [[0 in, 17 in]], needs_clear: 1/2 in}\n",
            ),
        ];
        let found = judged(&changes);
        let rooms: Vec<(&str, f64)> = found
            .iter()
            .filter(|f| f.rule == "washer_room")
            .map(|f| (f.place.as_str(), f.provided.expect("a room")))
            .collect();
        let expected = [
            (format!("beside the inner weld toe, {towards} face"), 1.375),
            (format!("beside the edge, {other} face"), 3.25),
        ];
        assert_eq!(rooms.len(), 2, "{rooms:?}");
        for (place, room) in expected {
            let there = |(at, _): &&(&str, f64)| at.ends_with(&place);
            let (_, has) = rooms
                .iter()
                .find(there)
                .unwrap_or_else(|| panic!("{rooms:?}"));
            assert!((has - room).abs() < 1e-9, "{place}: {has}");
        }
    }
}

/// 100 psi: 125 and 150 psi by factors, 200 by the first test that is twice the pressure. Without a pressure the key is named.
#[test]
fn by_hand_tests_side_by_side() {
    let found = judged(&[]);
    let test = one(&found, "test_pressure", "", "");
    assert_eq!(
        test.why,
        "125.0 psi by 49 CFR 230.36 (1.25 p); 125.0 psi by Indian Boiler Regulations 1950, regulation 379 (1.25 p, parts tested at the maker's); 150.0 psi by Indian Boiler Regulations 1950, regulation 379 (1.5 p, otherwise); 200.0 psi by Factories and Machinery (Steam Boiler and Unfired Pressure Vessel) Regulations 1970, regulation 72 (2 p, first test); none is chosen here, the inspecting body states it"
    );
    assert_eq!(
        test.source,
        "49 CFR 230.36; Indian Boiler Regulations 1950, regulation 379; Factories and Machinery (Steam Boiler and Unfired Pressure Vessel) Regulations 1970, regulation 72"
    );
    // 10 bar is 145.0 psi, a quarter over 181.3 psi and 12.5 bar.
    let metric = judged(&[("working_pressure: 100 psi", "working_pressure: 10 bar")]);
    let lines = &one(&metric, "test_pressure", "", "").working;
    assert_eq!(lines[0], "49 CFR 230.36: 1.25 p = 181.3 psi (12.50 bar)");
    let found = judged(&[("working_pressure: 100 psi\n", "")]);
    assert!(
        one(&found, "test_pressure", "", "")
            .why
            .contains("`working_pressure`")
    );
}

/// Strength that is not judged for want of a pressure stays not judged whichever rules are named, with the pressure first and once. Where the pressure is
/// given, or the rule needs none, what is not named is a note.
#[test]
fn holds_strength_without_a_pressure_is_never_a_note() {
    let stays = "holes:\n  - {name: stays, purpose: stay, hole: 1 9/32 in, at: [[3 in, 8 in], [3 in, 13 in]], mirrored: true, stay: {kind: firebox, diameter: 1 in, threads_per_inch: 11, metal: steel}}\n";
    let named = (
        "Indian Boiler Regulations 1950, 49 CFR Part 230, ASME Section I 2007, National Board proposal NB12-1201",
        "tube_plate_thickness",
    );
    let silent = judged(&[
        ("holes: []\n", stays),
        named,
        ("working_pressure: 100 psi\n", ""),
    ]);
    let screwed = one(&silent, "screwed_stay", "", "stays");
    assert_eq!(
        (screwed.verdict.name(), screwed.why.as_str()),
        ("not judged", "pressure not given: `working_pressure`")
    );
    let surface = one(&silent, "stayed_surface", "", "stays");
    assert_eq!(
        (surface.verdict.name(), surface.why.as_str()),
        (
            "not judged",
            "pressure not given: `working_pressure`; `holes[0].stay.ends` is not given"
        )
    );
    is(one(&silent, "telltale", "", "stays"), "note", "", "");
    let given = judged(&[("holes: []\n", stays), named]);
    is(one(&given, "stayed_surface", "", "stays"), "note", "", "");
    is(one(&given, "screwed_stay", "", "stays"), "note", "", "100");
}

/// A flat plate is not judged by rules for drums, and that is said; a rule named alone that judges is not idle.
#[test]
fn holds_what_is_said_of_rules_that_do_not_apply() {
    let found = judged(&[]);
    assert!(
        one(&found, "drum_ligaments", "", "")
            .why
            .contains("does not apply to a flat plate")
    );
    let named = "judged_by: [tube_plate_thickness]";
    let all = "judged_by: [Indian Boiler Regulations 1950, 49 CFR Part 230, ASME Section I 2007, National Board proposal NB12-1201]";
    let found = judged(&[(all, named)]);
    is(
        one(&found, "tube_plate_thickness", "580", ""),
        "below",
        "0.5",
        "0.5625",
    );
    // No rule set brings the constant of the largest circle: it stays open whichever is named.
    is_silent(
        one(&found, "largest_circle", "", "circle"),
        "`own_limits.largest_circle`",
    );
    assert!(
        !found.iter().any(|f| f.rule == "judged_by"),
        "a rule that judges is not idle"
    );
}
