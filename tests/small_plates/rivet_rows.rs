//! Flanges with two rows of rivets and more: where the rivets stand, what the rules make of them, and what is refused.

use centrepop::checks::Finding;
use centrepop::cut::cut_parts;
use centrepop::design::{Design, RivetMade, changes, cross_checks, set_out, welds};
use centrepop::spec::{Fault, read_spec};
use centrepop::units::Length;

use super::{PLATE, below_by, designed, is, is_silent, one};

/// A barrel of 40 in bore with 40 rivets of 7/8 in to a row in it, so that the pitch is π in; straight flange for three rows.
const BARREL: &str = "working_pressure: 100 psi
barrel: {bore: 40 in, thickness: 1/2 in, material: {grade: P265GH, metal: steel, strength: 28 tonf/in2}}
rivets: {rivet: 7/8 in, hole: 15/16 in, count: 40, from_edge: 1 13/32 in, rows: {number: 2, arrangement: zig-zag, apart: 1 11/16 in}, bottom_centre: on a hole, shear_strength: 23 tonf/in2}
";
const DEEP: (&str, &str) = ("straight: 2 in", "straight: 6 in");
const ZIG_ZAG: &str = "arrangement: zig-zag, apart: 1 11/16 in";
const ONE_ROW: (&str, &str) = (
    "rows: {number: 2, arrangement: zig-zag, apart: 1 11/16 in}, ",
    "",
);
const SHEAR: &str = "shear_strength: 23 tonf/in2";

/// A ring 6 in wide in the place of the pressed flange, with legs of 3/8 in.
const RING: [(&str, &str); 2] = [
    (
        "flange:\n  pressed: {towards: smokebox, outside_diameter: 40 in, heel_radius_inside: 1 in, straight: 6 in, trim: 1/2 in}",
        "outline: {round: {diameter: 44 in}}\nflange:\n  fabricated: {towards: firebox, ring_outside_diameter: 40 in, ring_thickness: 1/2 in, ring_width: 6 in, weld_leg_inside: 3/8 in, weld_leg_outside: 3/8 in}",
    ),
    ("flange_line: tangent", "flange_line: inner weld toe"),
];

fn rows_of<'a>(changes: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let mut all = vec![("working_pressure: 100 psi\n", BARREL), DEEP];
    all.extend(changes);
    all
}

#[track_caller]
fn plate(changes: &[(&str, &str)]) -> Design {
    designed(&rows_of(changes)).0
}

#[track_caller]
fn judged(changes: &[(&str, &str)]) -> Vec<Finding> {
    designed(&rows_of(changes)).1
}

/// The faults of a plate that cannot be set out.
#[track_caller]
fn refused(changes: &[(&str, &str)]) -> Vec<Fault> {
    let mut text = PLATE.to_string();
    for (from, to) in rows_of(changes) {
        assert!(text.contains(from), "the plate does not hold `{from}`");
        text = text.replacen(from, to, 1);
    }
    let spec = read_spec("plate.yaml", text.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"));
    set_out(&spec).expect_err("it cannot be set out")
}

/// Number, row, degrees and inches along the bore of a rivet.
fn told(design: &Design, index: usize) -> String {
    let rivet = &design.rivets.as_ref().unwrap().rivets[index];
    let (deg, run) = (rivet.angle_deg, rivet.run.to_inches());
    format!("{} row {} {deg:.3} {run:.4}", rivet.id, rivet.row)
}

/// 40 to the row, 9° apart, π in along the bore. On a hole: row 1 begins on bottom centre and row 2 half a step on, 4.5° and
/// π/2. Between holes: row 1 half a step on, and row 2 on bottom centre, the first on or after it. Chain: both alike. Numbers
/// go on from row to row: R1–R40, R41–R80.
#[test]
fn by_hand_where_the_rivets_of_two_rows_stand() {
    let zig_zag = plate(&[]);
    let line = zig_zag.rivets.as_ref().unwrap();
    assert_eq!(
        (line.rivets.len(), line.in_a_row(), line.row_count()),
        (80, 40, 2)
    );
    assert_eq!(told(&zig_zag, 0), "R1 row 1 180.000 0.0000");
    assert_eq!(told(&zig_zag, 1), "R2 row 1 189.000 3.1416");
    assert_eq!(told(&zig_zag, 39), "R40 row 1 171.000 122.5221");
    assert_eq!(told(&zig_zag, 40), "R41 row 2 184.500 1.5708");
    assert_eq!(told(&zig_zag, 79), "R80 row 2 175.500 124.0929");
    // 41 in across outside: π × 41/40/2 = 1.6101.
    let outside = line.rivets[40].run_outside.to_inches();
    assert_eq!(format!("{outside:.4}"), "1.6101");

    let between = plate(&[("on a hole", "between holes")]);
    assert_eq!(told(&between, 0), "R1 row 1 184.500 1.5708");
    assert_eq!(told(&between, 40), "R41 row 2 180.000 0.0000");

    let chain = plate(&[("arrangement: zig-zag", "arrangement: chain")]);
    assert_eq!(told(&chain, 40), "R41 row 2 180.000 0.0000");
    let chain = plate(&[
        ("arrangement: zig-zag", "arrangement: chain"),
        ("on a hole", "between holes"),
    ]);
    assert_eq!(told(&chain, 40), "R41 row 2 184.500 1.5708");

    // The third row of a zig-zag stands in line with the first.
    let three = plate(&[("number: 2", "number: 3")]);
    assert_eq!(told(&three, 80), "R81 row 3 180.000 0.0000");
    assert_eq!(told(&three, 119), "R120 row 3 171.000 122.5221");
}

/// 1 13/32 and 1 11/16 in: row 2 at 3.09375, row 3 at 4.78125 in from the edge. Diagonal pitch √(1.6875² + 1.570796²) =
/// 2.305441, in chain the gap itself.
#[test]
fn by_hand_how_far_in_each_row_lies() {
    let three = plate(&[("number: 2", "number: 3")]);
    let line = three.rivets.as_ref().unwrap();
    let rows: Vec<(u32, String, String)> = line
        .each_row()
        .map(|(row, rivets)| {
            assert!(rivets.iter().all(|rivet| rivet.row == row));
            (
                row,
                rivets[0].id.clone(),
                format!("{:.5}", line.from_edge_of(row).to_inches()),
            )
        })
        .collect();
    let of = |row, id: &str, from_edge: &str| (row, id.to_string(), from_edge.to_string());
    assert_eq!(
        rows,
        [
            of(1, "R1", "1.40625"),
            of(2, "R41", "3.09375"),
            of(3, "R81", "4.78125")
        ]
    );
    assert!(line.inner_row_from_edge().same_as(Length::inches(4.78125)));
    let diagonal = |design: &Design| {
        let rows = design.rivets.as_ref().unwrap().rows.as_ref().unwrap();
        format!("{:.6}", rows.diagonal_bore.to_inches())
    };
    assert_eq!(diagonal(&three), "2.305441");
    assert_eq!(
        diagonal(&plate(&[("arrangement: zig-zag", "arrangement: chain")])),
        "1.687500"
    );
    // Seen along the barrel the third row lies behind the first, and the rows of a chain behind one another.
    assert_eq!(line.places_round().len(), 80);
    let chain = plate(&[("arrangement: zig-zag", "arrangement: chain")]);
    assert_eq!(chain.rivets.unwrap().places_round().len(), 40);
    // One row lies where it is written.
    let single = plate(&[ONE_ROW]);
    let line = single.rivets.as_ref().unwrap();
    assert_eq!(
        (line.row_count(), line.in_a_row(), line.places_round().len()),
        (1, 40, 40)
    );
    assert!(line.inner_row_from_edge().same_as(Length::inches(1.40625)));
}

/// Every fourth of row 1 takes a tack bolt, 10 of 40, and none of row 2.
#[test]
fn by_hand_tack_bolts_stand_in_row_1() {
    let design = plate(&[(SHEAR, "how: in place, tack_every: 4")]);
    let line = design.rivets.as_ref().unwrap();
    let tacks = line
        .rivets
        .iter()
        .filter(|rivet| rivet.made == RivetMade::Tack);
    let ids: Vec<&str> = tacks.map(|rivet| rivet.id.as_str()).collect();
    assert_eq!(
        ids,
        [
            "R1", "R5", "R9", "R13", "R17", "R21", "R25", "R29", "R33", "R37"
        ]
    );
    let drawn = plate(&[(SHEAR, "how: drawn, tack_every: 4")]);
    let line = drawn.rivets.as_ref().unwrap();
    assert!(
        line.rivets
            .iter()
            .all(|rivet| rivet.made == RivetMade::Drawn)
    );
}

/// 40 more holes of 15/16 in through 1/2 in at 7,850 kg/m³: 40 × 0.690291 × 0.5 = 13.8058 in³, 226.237 cm³, 1.7760 kg less. A
/// quarter of a row of 40 is ten spaces, 90°, however many rows there are: 41 sin 45° = 28.991 in.
#[test]
fn by_hand_masses_and_long_checks() {
    let dense = (
        "grade: P265GH, metal: steel, strength: 26",
        "density: 7850 kg/m3, grade: P265GH, metal: steel, strength: 26",
    );
    let single = plate(&[dense, ONE_ROW]);
    let double = plate(&[dense]);
    let kg = |design: &Design| design.figures.plate_mass_kg.unwrap();
    assert_eq!(format!("{:.4}", kg(&single) - kg(&double)), "1.7760");

    let spec = read_spec(
        "plate.yaml",
        PLATE
            .replace("working_pressure: 100 psi\n", BARREL)
            .as_bytes(),
    )
    .unwrap();
    let barrel = spec.written.barrel.as_ref();
    // Drilled in place and without tacks there is nothing to measure over.
    let over_rivets = |design: &Design| {
        let mut checks = cross_checks(design, barrel).into_iter();
        checks.any(|check| check.what.contains("rivet circle"))
    };
    assert!(!over_rivets(&double));
    let drawn = plate(&[(SHEAR, "how: drawn")]);
    let checks = cross_checks(&drawn, barrel);
    let quarter = checks
        .iter()
        .find(|check| check.what.contains("barrel outside"))
        .unwrap();
    assert_eq!(quarter.ids, ("R1".to_string(), "R11".to_string()));
    assert_eq!(format!("{:.3}", quarter.length.to_inches()), "28.991");
}

/// One row and two compared: 1.40625 in is 35.71875 mm, and 1.6875 more 78.58125 mm.
#[test]
fn by_hand_rows_that_change_are_told() {
    let single = plate(&[ONE_ROW]);
    let found = changes(&single, &plate(&[])).figures;
    let told = |name: &str| {
        let change = found.iter().find(|change| change.name == name);
        change.map(|change| (change.old, change.new))
    };
    assert_eq!(told("rivets"), Some((Some(40.0), Some(80.0))));
    assert_eq!(told("rows of rivets"), Some((Some(1.0), Some(2.0))));
    let (old, new) = told("inner row of rivets to the flange's edge").expect("it moved");
    assert_eq!(
        format!("{:.5} {:.5}", old.unwrap(), new.unwrap()),
        "35.71875 78.58125"
    );
    assert_eq!(told("rivet pitch at the bore"), None);
}

/// Pitch π: 0.33 × 3.141593 + 0.67 × 0.9375 = 1.664851 in, 0.0226 less than the 1.6875 there are. Board of Trade √(38.307519 × 6.891593)/10 = 1.624807, and diagonally
/// (6 × 3.141593 + 3.75)/10 = 2.259956.
#[test]
fn by_hand_gaps_of_zig_zag_rows() {
    let found = judged(&[]);
    let ibr = one(&found, "rivet_rows", "184", "zig-zag rows 1 and 2");
    is(ibr, "meets", "1.687500", "1.664851");
    assert_eq!(
        ibr.working,
        [
            "0.33 P + 0.67 D = 0.33 × 3.141593 + 0.67 × 0.9375 = 1.664851 in",
            "provided = 1.6875 in"
        ]
    );
    assert!(!ibr.why.contains("closer"), "{}", ibr.why);
    let trade = one(
        &found,
        "rivet_rows",
        "Board of Trade",
        "zig-zag rows 1 and 2",
    );
    is(trade, "note", "1.687500", "1.624807");
    assert_eq!(
        trade.working,
        [
            "√((11 p + 4 d)(p + 4 d))/10 = √(38.307519 × 6.891593)/10 = 1.624807 in",
            "diagonal pitch (6 p + 4 d)/10 = 2.259956, provided 2.305441 in"
        ]
    );
    // Named, it judges: 1.6 is 0.0248 short.
    let named = judged(&[
        (ZIG_ZAG, "arrangement: zig-zag, apart: 1.6 in"),
        ("judged_by: [", "judged_by: [Board of Trade rules, "),
    ]);
    below_by(
        one(&named, "rivet_rows", "Board of Trade", "rows 1 and 2"),
        "0.0248",
    );
    let three = judged(&[("number: 2", "number: 3")]);
    is(
        one(&three, "rivet_rows", "184", "zig-zag rows 1 to 3"),
        "meets",
        "1.6875",
        "1.664851",
    );
    let single = judged(&[ONE_ROW]);
    assert!(!single.iter().any(|f| f.rule == "rivet_rows"));
}

/// Chain: 2 × 0.9375 = 1.875 in by both, better (4 × 0.9375 + 1)/2 = 2.375 in by the Board of Trade.
#[test]
fn by_hand_gaps_of_chain_rows() {
    let chain = |apart: &str| {
        let words = format!("arrangement: chain, apart: {apart}");
        judged(&[(ZIG_ZAG, &words)])
    };
    let found = chain("1 7/8 in");
    let ibr = one(&found, "rivet_rows", "184", "chain rows 1 and 2");
    is(ibr, "meets", "1.8750", "1.8750");
    assert_eq!(
        ibr.working,
        ["2 D = 2 × 0.9375 = 1.875 in", "provided = 1.875 in"]
    );
    let trade = one(&found, "rivet_rows", "Board of Trade", "chain");
    is(trade, "note", "1.8750", "1.8750");
    assert!(
        trade.why.contains("the plate has what it asks"),
        "{}",
        trade.why
    );
    assert!(
        trade.why.contains("better 2.3750 in, by (4 d + 1)/2 in"),
        "{}",
        trade.why
    );
    assert_eq!(trade.working, ["2 d = 2 × 0.9375 = 1.875 in"]);
    is(
        one(&found, "rivet_joint", "177", "plate"),
        "note",
        "70.16",
        "",
    );
    // 1.8: 2 − 1.8/1.875 = 1.04 holes lost, 100 (3.141593 − 0.975)/3.141593 = 68.96 %.
    let closer = chain("1.8 in");
    let ibr = one(&closer, "rivet_rows", "184", "chain");
    is(ibr, "note", "1.800", "1.875");
    assert!(ibr.why.contains("closer by 0.0750 in"), "{}", ibr.why);
    assert!(ibr.why.contains("to 68.96 %"), "{}", ibr.why);
    is(
        one(&closer, "rivet_joint", "177", "plate"),
        "note",
        "68.965",
        "",
    );
}

/// Two rivets in a pitch: 100 × 0.690291 × 2 × 23/(3.141593 × 0.5 × 28) = 72.20 %, twice that of one row; plate as in one row,
/// 70.16 %, and the least. End load 125,664 lb on 80 holes: 2,275.6 psi, factor 51,520/2,275.6 = 22.64. Three rows: 108.29 %.
#[test]
fn by_hand_the_joint_of_two_rows_and_three() {
    let found = judged(&[]);
    let rivets = one(&found, "rivet_joint", "177", "rivets");
    is(rivets, "note", "72.196", "");
    assert_eq!(
        rivets.working[2],
        "rivets: 100 A N C S1/(P T S) = 100 × 0.690291 × 2 × 1 × 23/(3.141593 × 0.5 × 28) = 72.20 %"
    );
    assert!(
        rivets
            .inputs
            .iter()
            .any(|input| input.symbol == "N" && input.value == 2.0)
    );
    let plate = one(&found, "rivet_joint", "177", "plate");
    is(plate, "note", "70.16", "");
    assert_eq!(plate.working.len(), 2);
    let seam = one(&found, "end_seam", "104", "");
    is(seam, "meets", "70.16", "38");
    assert!(seam.why.starts_with("plate least"), "{}", seam.why);
    assert_eq!(seam.working[4], rivets.working[2]);
    let load = one(&found, "end_load", "49 CFR", "80 rivets");
    is(load, "meets", "22.64", "4");
    assert_eq!(
        load.working[2],
        "stress = 125,664 lb/(80 × 0.690291 in²) = 2,275.6 psi"
    );

    let three = judged(&[("number: 2", "number: 3")]);
    is(
        one(&three, "rivet_joint", "177", "rivets"),
        "note",
        "108.29",
        "",
    );
    is(
        one(&three, "end_load", "49 CFR", "120 rivets"),
        "meets",
        "33.96",
        "4",
    );
}

/// Rows 1.2 in apart where 1.664851 is prescribed: 2 − 1.2/1.664851 = 1.279215 holes lost, 100 (3.141593 − 1.199264)/3.141593 =
/// 61.83 %, which the seam takes, and on half the thickness twice that, 123.65 against 144.39 by the rivets. In chain the same
/// gap leaves 100 [3.141593 − (2 − 1.2/1.875) 0.9375]/3.141593 = 59.42 %.
#[test]
fn by_hand_rows_closer_than_prescribed() {
    let closer = (ZIG_ZAG, "arrangement: zig-zag, apart: 1.2 in");
    let found = judged(&[closer]);
    let gap = one(&found, "rivet_rows", "184", "zig-zag rows 1 and 2");
    is(gap, "note", "1.2000", "1.664851");
    assert!(
        gap.why.contains("closer by 0.4649 in than is prescribed")
            && gap.why.contains("to 61.83 %: judged under end_seam"),
        "{}",
        gap.why
    );
    let plate = one(&found, "rivet_joint", "177", "plate");
    is(plate, "note", "61.826", "");
    assert!(
        plate.why.contains("lowered by regulation 184"),
        "{}",
        plate.why
    );
    assert_eq!(
        plate.working[2],
        "rows closer: 100 [P − (2 − actual/prescribed) D]/P = 100 × [3.141593 − (2 − 1.2/1.664851) × 0.9375]/3.141593 = 61.83 %"
    );
    let seam = one(&found, "end_seam", "104", "");
    is(seam, "meets", "61.826", "38");
    assert_eq!(seam.working[2], plate.working[2]);
    let required = judged(&[
        closer,
        (
            "thickness: 1/2 in, material",
            "thickness: 1/2 in, thickness_required: 1/4 in, material",
        ),
    ]);
    is(
        one(&required, "end_seam", "104", ""),
        "meets",
        "123.65",
        "38",
    );
    let chain = judged(&[(ZIG_ZAG, "arrangement: chain, apart: 1.2 in")]);
    is(
        one(&chain, "rivet_joint", "177", "plate"),
        "note",
        "59.42",
        "",
    );
}

/// Crushing 30 tonf/in² on 1/2 in: 100 × 2 × 0.9375 × 0.5 × 30/(3.141593 × 0.5 × 28) = 63.95 %, twice that of one rivet, and the least.
#[test]
fn by_hand_crushing_of_two_rows() {
    let words =
        "shear_strength: 23 tonf/in2, crushing_strength: {stress: 30 tonf/in2, origin: shop book}";
    let found = judged(&[(SHEAR, words)]);
    let crushing = one(&found, "rivet_joint", "shop book", "crushing");
    is(crushing, "note", "63.946", "");
    assert_eq!(
        crushing.working,
        [
            "crushing: 100 N D T1 f/(P T S) = 100 × 2 × 0.9375 × 0.5 × 30/(3.141593 × 0.5 × 28) = 63.95 %"
        ]
    );
    let seam = one(&found, "end_seam", "104", "");
    is(seam, "meets", "63.946", "38");
    assert!(seam.why.starts_with("crushing least"), "{}", seam.why);
}

/// Pressed: 1.40625 + 1.6875 + 1.5/2 + 0.1 = 3.94375 in, 0.05625 more than 3.8875. Ring: 4.4 − 1.40625 − 1.6875 − 0.375 =
/// 0.93125 in from weld to the inner row's centres, where the lap asks 1.40625, 0.475 short; to the edge of a hole 0.46875
/// less, 0.4625 in.
#[test]
fn by_hand_room_beside_the_inner_row() {
    let head = "head_diameter: 1.5 in, head_clearance: {size: 0.1 in, origin: shop book}";
    let found = judged(&[("straight: 6 in", "straight: 3.8875 in"), (SHEAR, head)]);
    let room = one(&found, "head_room", "shop book", "flange");
    below_by(room, "0.05625");
    assert!(
        room.why
            .starts_with("straight flange for edge distance, rows,"),
        "{}",
        room.why
    );
    assert_eq!(
        room.working,
        [
            "needed = edge + rows + half head + clearance = 1.40625 + 1 × 1.6875 + 1.5/2 + 0.1 = 3.94375 in",
            "given = straight = 3.8875 in"
        ]
    );
    // Three rows ask one gap more of the six inches: 5.63125.
    let three = judged(&[("number: 2", "number: 3"), (SHEAR, head)]);
    is(
        one(&three, "head_room", "shop book", "flange"),
        "meets",
        "6.00000",
        "5.63125",
    );

    let narrow =
        RING.map(|(from, to)| (from, to.replace("ring_width: 6 in", "ring_width: 4.4 in")));
    let narrow = [
        (narrow[0].0, narrow[0].1.as_str()),
        (narrow[1].0, narrow[1].1.as_str()),
    ];
    let found = judged(&narrow);
    let room = one(&found, "head_room", "regulation 184", "ring");
    below_by(room, "0.47500");
    assert_eq!(
        room.working[1],
        "given = ring − edge − rows − weld = 4.4 − 1.40625 − 1 × 1.6875 − 0.375 = 0.93125 in"
    );
    let near = welds(&plate(&narrow), Some(Length::inches(1.5)));
    for weld in &near[..2] {
        assert!(weld.to_rivet_hole.unwrap().same_as(Length::inches(0.4625)));
        assert!(weld.to_rivet_head.unwrap().same_as(Length::inches(0.18125)));
    }
}

/// C of a lap seam is known for one rivet in a pitch alone; the works' own limit, 4 × 1/2 + 1 = 3 in, is 0.2201 less than π ×
/// 41/40 = 3.2201.
#[test]
fn by_hand_greatest_pitch_of_two_rows() {
    let named = ("judged_by: [", "judged_by: [rivet_pitch, ");
    let found = judged(&[named]);
    is_silent(
        one(&found, "rivet_pitch", "C t + 41.28", ""),
        "C for 2 rivets in a pitch of a lap seam is known from no source: give `own_limits.rivet_pitch`",
    );
    let own = (
        "judged_by: [",
        "own_limits: {rivet_pitch: {thicknesses: 4, plus: 1 in, origin: shop book}}\njudged_by: [rivet_pitch, ",
    );
    let found = judged(&[own]);
    below_by(one(&found, "rivet_pitch", "shop book", ""), "0.2201");
    is_silent(
        one(&found, "rivet_pitch", "C t + 41.28", ""),
        "stands alone",
    );
    // One row is compared as ever: 1.31 × 12.7 + 41.28 = 57.917 mm.
    let single = judged(&[named, ONE_ROW]);
    let pitch = one(&single, "rivet_pitch", "C t + 41.28", "");
    assert_eq!(
        pitch.working[0],
        "1.31 t + 41.28 = 1.31 × 12.7 + 41.28 = 57.917 mm"
    );
}

/// J. Rose, Modern Machine-Shop Practice: pitch 3, hole 7/8 in, diagonal pitch 2.15 in. On a flange of 42 rivets in 40.107 in,
/// 3 × 42/π, with rows at the gap that follows, 1.5403 in. Regulation 184 asks 1.57625 there; at 1.2 in 63.9 % of the plate is
/// left (worked, not printed there).
#[test]
fn published_rose_zig_zag_on_a_flange() {
    let rose = |apart: &str| {
        let rows = format!(
            "rivet: 13/16 in, hole: 7/8 in, count: 42, from_edge: 1 13/32 in, rows: {{number: 2, arrangement: zig-zag, apart: {apart}}}"
        );
        judged(&[
            ("outside_diameter: 40 in", "outside_diameter: 40.107 in"),
            ("bore: 40 in", "bore: 40.107 in"),
            (
                "rivet: 7/8 in, hole: 15/16 in, count: 40, from_edge: 1 13/32 in, rows: {number: 2, arrangement: zig-zag, apart: 1 11/16 in}",
                &rows,
            ),
        ])
    };
    let found = rose("1.5403 in");
    let trade = one(&found, "rivet_rows", "Board of Trade", "zig-zag");
    is(trade, "note", "1.5403", "1.5403");
    let diagonal = trade
        .inputs
        .iter()
        .find(|input| input.symbol == "pd")
        .unwrap();
    assert_eq!(format!("{:.2}", diagonal.value), "2.15");
    is(
        one(&found, "rivet_rows", "184", "zig-zag"),
        "note",
        "1.5403",
        "1.5762",
    );
    is(
        one(&rose("1.2 in"), "rivet_joint", "177", "plate"),
        "note",
        "63.9",
        "",
    );
    is(
        one(&rose("1.58 in"), "rivet_joint", "177", "plate"),
        "note",
        "70.8",
        "",
    );
}

/// Riveted-joint chapter of a machine-design textbook, example 9.5: rows 46 mm apart at pitch 100, rivets 19 (45.73, rounded
/// up). 32 rivets in 32 × 100/π = 1,018.592 mm.
#[test]
fn published_textbook_row_pitch_on_a_flange() {
    let rows = "rivet: 18 mm, hole: 19 mm, count: 32, from_edge: 36 mm, rows: {number: 2, arrangement: zig-zag, apart: 46 mm}";
    let found = judged(&[
        ("outside_diameter: 40 in", "outside_diameter: 1018.592 mm"),
        ("bore: 40 in", "bore: 1018.592 mm"),
        (
            "rivet: 7/8 in, hole: 15/16 in, count: 40, from_edge: 1 13/32 in, rows: {number: 2, arrangement: zig-zag, apart: 1 11/16 in}",
            rows,
        ),
        ("units: inches", "units: millimetres"),
    ]);
    is(
        one(&found, "rivet_rows", "184", "zig-zag"),
        "meets",
        "46.00",
        "45.73",
    );
    // A whole millimetre less is too close.
    assert_eq!(
        one(&found, "rivet_rows", "184", "").required.map(f64::ceil),
        Some(46.0)
    );
}

/// The same chapter, example 9.1: plate 15 mm, rivets 25, pitch 75, two rivets in a pitch; 400, 320 and 640 N/mm². Tearing 300,
/// shearing 314.16 and crushing 480 kN of the solid plate's 75 × 15 × 400 = 450 kN: 66.7, 69.8 and 106.7 %. 32 rivets to a row
/// in 32 × 75/π = 763.944 mm.
#[test]
fn published_textbook_double_riveted_lap_on_a_flange() {
    let rows = "rivet: 24 mm, hole: 25 mm, count: 32, from_edge: 40 mm, rows: {number: 2, arrangement: zig-zag, apart: 45 mm}";
    let found = judged(&[
        ("outside_diameter: 40 in", "outside_diameter: 763.944 mm"),
        (
            "bore: 40 in, thickness: 1/2 in",
            "bore: 763.944 mm, thickness: 15 mm",
        ),
        ("thickness: 1/2 in\n", "thickness: 16 mm\n"),
        ("strength: 28 tonf/in2", "strength: 400 N/mm2"),
        (
            "rivet: 7/8 in, hole: 15/16 in, count: 40, from_edge: 1 13/32 in, rows: {number: 2, arrangement: zig-zag, apart: 1 11/16 in}",
            rows,
        ),
        (
            SHEAR,
            "shear_strength: 320 N/mm2, crushing_strength: {stress: 640 N/mm2, origin: textbook}",
        ),
    ]);
    let kilonewtons = |place: &str| {
        let found = found
            .iter()
            .find(|f| f.rule == "rivet_joint" && f.place.contains(place));
        found.unwrap().provided.unwrap() / 100.0 * 450.0
    };
    assert_eq!(format!("{:.0}", kilonewtons("plate")), "300");
    assert_eq!(format!("{:.2}", kilonewtons("rivets")), "314.16");
    assert_eq!(format!("{:.0}", kilonewtons("crushing")), "480");
    is(one(&found, "end_seam", "104", ""), "meets", "66.7", "38");
}

/// Two rows 1.7 in apart need 1.40625 + 1.7 + 0.46875 = 3.575 in clear of heel or weld. Straight for 3 1/2 in: 0.075 over. A
/// ring of 3 7/8 in has 3.5 clear of its legs, and must be 3.95 wide; the larger leg counts, whichever side it is on.
#[test]
fn refuses_an_inner_row_on_heel_or_weld() {
    let apart = (ZIG_ZAG, "arrangement: zig-zag, apart: 1.7 in");
    let faults = refused(&[apart, ("straight: 6 in", "straight: 3 1/2 in")]);
    let [fault] = &faults[..] else {
        panic!("{faults:#?}")
    };
    assert_eq!(fault.path, "rivets.rows");
    assert_eq!(
        fault.fact,
        "the holes of row 2 run 0.075 in onto the heel: 2 rows need 3.575 in of straight flange, and there is 3.5 in"
    );
    assert_eq!(
        fault.remedy,
        "make `flange.pressed.straight` 3.575 in or more, or have fewer rows or closer ones"
    );
    assert_eq!(fault.also[0].0, "flange.pressed.straight");
    // Exactly as much as they need is enough.
    plate(&[apart, ("straight: 6 in", "straight: 3.575 in")]);

    for legs in [
        "ring_width: 3 7/8 in, weld_leg_inside: 3/8 in, weld_leg_outside: 1/4 in",
        "ring_width: 3 7/8 in, weld_leg_inside: 1/4 in, weld_leg_outside: 3/8 in",
    ] {
        let to = RING[0].1.replace(
            "ring_width: 6 in, weld_leg_inside: 3/8 in, weld_leg_outside: 3/8 in",
            legs,
        );
        let faults = refused(&[apart, (RING[0].0, &to), RING[1]]);
        let [fault] = &faults[..] else {
            panic!("{faults:#?}")
        };
        assert_eq!(
            fault.fact,
            "the holes of row 2 run 0.075 in into the weld: 2 rows need 3.575 in of ring clear of its welds, and there is 3.5 in"
        );
        assert_eq!(
            fault.remedy,
            "make `flange.fabricated.ring_width` 3.95 in or more, or have fewer rows or closer ones"
        );
        assert_eq!(fault.also[0].0, "flange.fabricated.ring_width");
    }
}

/// On the flange's inside, 39 in across, half a step is 39 sin 2.25° = 1.5312 in. Chain rows 0.9 in apart: 0.0375 over; 15/16
/// touch and are let be. Zig-zag rows 0.45 in apart are 1.596 from hole to hole, but a third row stands 0.9 from the first. At
/// 64 rivets of a row half a step is 0.957 in, and at 80 0.7657: rows 0.4 apart then leave √(0.7657² + 0.4²) = 0.8639, 0.0736
/// over.
#[test]
fn refuses_rows_whose_holes_meet() {
    let fact = |changes: &[(&str, &str)]| {
        let faults = refused(changes);
        let [fault] = &faults[..] else {
            panic!("{faults:#?}")
        };
        assert_eq!(fault.path, "rivets.rows.apart");
        assert_eq!(fault.also[0].0, "rivets.hole");
        fault.fact.clone()
    };
    assert_eq!(
        fact(&[(ZIG_ZAG, "arrangement: chain, apart: 0.9 in")]),
        "rivet holes of 15/16 in in rows 1 and 2 overlap by 0.038 in: their centres stand 0.9 in from one another at the flange's inside face"
    );
    plate(&[(ZIG_ZAG, "arrangement: chain, apart: 15/16 in")]);
    plate(&[(ZIG_ZAG, "arrangement: zig-zag, apart: 0.45 in")]);
    let three = (
        "number: 2, arrangement: zig-zag, apart: 1 11/16 in",
        "number: 3, arrangement: zig-zag, apart: 0.45 in",
    );
    assert!(fact(&[three]).contains("in rows 1 and 3 overlap by 0.038 in"));
    let dense = [
        ("count: 40", "count: 80"),
        (ZIG_ZAG, "arrangement: zig-zag, apart: 0.4 in"),
    ];
    assert!(
        fact(&dense).contains("in rows 1 and 2 overlap by 0.074 in: their centres stand 0.864 in")
    );
    // In a chain of three the next row is the nearest.
    let chain = (
        "number: 2, arrangement: zig-zag, apart: 1 11/16 in",
        "number: 3, arrangement: chain, apart: 0.6125 in",
    );
    assert!(fact(&[chain]).contains("in rows 1 and 2 overlap by 0.325 in"));
    // However many rows, none is set out that cannot stand.
    let many = (
        "number: 2, arrangement: zig-zag, apart: 1 11/16 in",
        "number: 1000000, arrangement: zig-zag, apart: 0.000001 in",
    );
    assert!(fact(&[many]).contains("in rows 1 and 3"));
}

/// The ring's joint runs across every row. 40 to a row of a zig-zag leave a quarter of 9°, 2.25° of 40 in across, 0.785 in from
/// the nearest centre. At 72 to a row a quarter step is 0.436 in, less than half a hole: no way through, save in chain.
#[test]
fn by_hand_the_joint_of_the_ring_between_two_rows() {
    let parts = |changes: &[(&str, &str)]| {
        let mut text = PLATE.to_string() + "cutting: {process: waterjet, origin: works}\n";
        let mut all = rows_of(&RING);
        all.push((SHEAR, "how: in place, tack_every: 4"));
        all.extend(changes);
        for (from, to) in all {
            assert!(text.contains(from), "{from}");
            text = text.replacen(from, to, 1);
        }
        let spec =
            read_spec("plate.yaml", text.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"));
        let design = set_out(&spec).unwrap_or_else(|faults| panic!("{faults:?}"));
        cut_parts(&spec, &design)
    };
    let cut = parts(&[]).expect("it is cut");
    let ring = &cut[1];
    // 0.7854 in is 19.95 mm.
    assert!(
        ring.remarks
            .iter()
            .any(|said| said.contains("lies 19.95 mm from the middle of rivet hole R21")),
        "{:?}",
        ring.remarks
    );
    // Free edge at the top: 6 in less 1.40625 is 116.68125 mm, less 1.6875 more 73.81875.
    let y = |id: &str| ring.places.iter().find(|(at, _)| at == id).unwrap().1.y;
    assert_eq!(
        (format!("{:.3}", y("R1")), format!("{:.3}", y("R41"))),
        ("116.681".into(), "73.819".into())
    );
    let off: Vec<(usize, &str)> = ring
        .withheld
        .iter()
        .map(|w| (w.ids.len(), w.instead))
        .collect();
    assert_eq!(off, [(10, "a pop"), (70, "nothing")]);
    let faults = parts(&[("count: 40", "count: 72")]).expect_err("no way through");
    assert_eq!(faults[0].path, "rivets.rows");
    assert!(
        faults[0].fact.contains("finds no way between the rivets"),
        "{}",
        faults[0].fact
    );
    let chain = [
        ("count: 40", "count: 72"),
        (ZIG_ZAG, "arrangement: chain, apart: 2 in"),
    ];
    assert!(parts(&chain).is_ok());
}
