//! Flanges, their rivets, and the shell beside them.

use centrepop::checks::Finding;

use super::{below_by, is, judged, one};

/// A barrel of 40 in bore with 40 rivets of 7/8 in in it.
const RIVETED: &str = "working_pressure: 100 psi
barrel: {bore: 40 in, thickness: 1/2 in, material: {grade: P265GH, metal: steel, strength: 28 tonf/in2}}
rivets: {rivet: 7/8 in, hole: 15/16 in, count: 40, from_edge: 1 13/32 in, bottom_centre: on a hole, shear_strength: 23 tonf/in2}
";

fn riveted(changes: &[(&str, &str)]) -> Vec<Finding> {
    let mut all = vec![("working_pressure: 100 psi\n", RIVETED)];
    all.extend(changes);
    judged(&all)
}

/// The same plate flat and 44 in across, with a ring 3 in wide and 1/2 in thick of 40 in welded on with legs of 3/8 in.
const RING: (&str, &str) = (
    "flange:\n  pressed: {towards: smokebox, outside_diameter: 40 in, heel_radius_inside: 1 in, straight: 2 in, trim: 1/2 in}",
    "outline: {round: {diameter: 44 in}}\nflange:\n  fabricated: {towards: firebox, ring_outside_diameter: 40 in, ring_thickness: 1/2 in, ring_width: 3 in, weld_leg_inside: 3/8 in, weld_leg_outside: 3/8 in}",
);
const RING_LINE: (&str, &str) = ("flange_line: tangent", "flange_line: inner weld toe");

fn ringed(rivets: &str) -> Vec<Finding> {
    riveted(&[RING, RING_LINE, ("shear_strength: 23 tonf/in2", rivets)])
}

/// Pitch π × 40/40 = 3.141593 in. Crushing 40 tonf/in² on the thinner of 1/2 and 1/2 in: 100 × 0.9375 × 0.5 × 40/(3.141593 × 0.5 × 28) = 42.63 %; 30 tonf/in²
/// 31.97 %, 6.03 short of 38. Rivets 100 × 0.690291 × 23/(3.141593 × 0.5 × 28) = 36.10 %, plate 70.16. A plate of 3/8 in: 40 tonf/in² 31.97 %.
#[test]
fn by_hand_crushing() {
    let crushed = |tons: &str, more: &[(&str, &str)]| {
        let words = format!(
            "shear_strength: 30 tonf/in2, crushing_strength: {{stress: {tons} tonf/in2, origin: shop book}}"
        );
        let mut all = vec![("shear_strength: 23 tonf/in2", words.as_str())];
        all.extend(more);
        riveted(&all)
    };
    let found = crushed("40", &[]);
    let crushing = one(&found, "rivet_joint", "shop book", "crushing");
    is(crushing, "note", "42.63", "");
    assert_eq!(
        crushing.working,
        [
            "crushing: 100 N D T1 f/(P T S) = 100 × 1 × 0.9375 × 0.5 × 40/(3.141593 × 0.5 × 28) = 42.63 %"
        ]
    );
    // Rivets of 30 tonf/in² shear at 100 × 0.690291 × 30/43.982297 = 47.08 %, so that crushing is the least.
    let seam = one(&found, "end_seam", "104", "");
    is(seam, "meets", "42.63", "38");
    assert!(seam.why.starts_with("crushing least"), "{}", seam.why);
    assert_eq!(seam.working[5], crushing.working[0]);
    assert_eq!(seam.working.len(), 7);
    let seam = crushed("30", &[]);
    below_by(one(&seam, "end_seam", "104", ""), "6.03");
    let thin = crushed(
        "40",
        &[(
            "thickness: 1/2 in\n  material",
            "thickness: 3/8 in\n  material",
        )],
    );
    is(
        one(&thin, "rivet_joint", "shop book", "crushing"),
        "note",
        "31.97",
        "",
    );
    let plain = riveted(&[]);
    below_by(one(&plain, "end_seam", "104", ""), "1.90");
    assert!(
        one(&plain, "end_seam", "104", "")
            .why
            .starts_with("rivets least")
    );
    assert!(!plain.iter().any(|f| f.place == "crushing"));
    // On the thickness required, half of that fitted, every percentage is twice as much: 2 × 42.6308 = 85.26.
    let required = crushed(
        "40",
        &[(
            "thickness: 1/2 in, material",
            "thickness: 1/2 in, thickness_required: 1/4 in, material",
        )],
    );
    is(
        one(&required, "end_seam", "104", ""),
        "meets",
        "85.26",
        "38",
    );
    // A ring of 1/2 in on the plate of 3/8: the ring is what the rivets go through.
    let words =
        "shear_strength: 30 tonf/in2, crushing_strength: {stress: 40 tonf/in2, origin: shop book}";
    let ring = riveted(&[
        RING,
        RING_LINE,
        ("shear_strength: 23 tonf/in2", words),
        (
            "thickness: 1/2 in\n  material",
            "thickness: 3/8 in\n  material",
        ),
    ]);
    is(
        one(&ring, "rivet_joint", "shop book", "crushing"),
        "note",
        "42.63",
        "",
    );
}

/// Lines that can be repeated: 0.785398 × 0.9375² = 0.690291; plate 100 × (3.141593 − 0.9375)/3.141593 = 70.16 %; 0.785398 × 40² × 100 = 125,664 lb;
/// 125,664/(40 × 0.690291) = 4,551.1 psi; 51,520/4,551.1 = 11.32.
#[test]
fn by_hand_the_working_of_the_seam() {
    let found = riveted(&[]);
    let area = "A = 0.785398 × 0.9375² = 0.690291 in²";
    let joint = &one(&found, "rivet_joint", "177", "rivets").working;
    // 28 tonf/in² is 62,720 psi, 432.44 N/mm²; 23 is 51,520 psi, 355.22.
    assert!(
        joint[0].starts_with("S = 28 tonf/in² (432.43"),
        "{}",
        joint[0]
    );
    assert!(
        joint[0].contains("S1 = 23 tonf/in² (355.21"),
        "{}",
        joint[0]
    );
    let rivets = "rivets: 100 A N C S1/(P T S) = 100 × 0.690291 × 1 × 1 × 23/(3.141593 × 0.5 × 28) = 36.10 %";
    assert_eq!(joint[1..], [area, rivets]);
    let pitch = "P = 3.141593 × bore/rivets in a row = 3.141593 × 40/40 = 3.141593 in";
    let plate = "plate: 100 (P − D)/P = 100 × (3.141593 − 0.9375)/3.141593 = 70.16 %";
    let seam = &one(&found, "end_seam", "104", "").working;
    assert_eq!(
        *seam,
        [
            pitch,
            plate,
            &joint[0],
            area,
            rivets,
            "least 36.10 %; regulation 104 asks 38 %"
        ]
    );
    assert_eq!(
        one(&found, "rivet_joint", "177", "plate").working,
        [pitch, plate]
    );
    let load_line = "load = 0.785398 B² p = 0.785398 × 40² × 100 = 125,664 lb";
    assert_eq!(one(&found, "end_load", "geometry", "").working, [load_line]);
    let load = &one(&found, "end_load", "49 CFR", "40 rivets").working;
    assert_eq!(
        *load,
        [
            load_line,
            area,
            "stress = 125,664 lb/(40 × 0.690291 in²) = 4,551.1 psi",
            "factor = 51,520 psi/4,551.1 psi = 11.32"
        ]
    );
    // On half the thickness as required: 70.16 and 36.10 become 140.32 and 72.19 %.
    let thin = riveted(&[(
        "thickness: 1/2 in, material",
        "thickness: 1/2 in, thickness_required: 1/4 in, material",
    )]);
    let seam = &one(&thin, "end_seam", "104", "").working;
    assert_eq!(
        seam[5..],
        [
            "plate on the thickness required: 70.16 × 0.5/0.25 = 140.32 %",
            "rivets on the thickness required: 36.10 × 0.5/0.25 = 72.20 %",
            "least 72.20 %; regulation 104 asks 38 %"
        ]
    );
}

/// Pressed: 1.40625 + 1.5/2 + 0.1 = 2.25625 in of the 2 given, 0.25625 short. Ring: 3 − 1.40625 − 0.375 = 1.21875 in to the weld, 1.5 × 0.9375 = 1.40625 asked by the
/// lap, 0.1875 short; half a head of 1.5 in and 0.7 in of clearance ask 1.45, 0.23125 short, and 0.65625 of clearance exactly what the lap asks.
#[test]
fn by_hand_room_for_rivet_heads() {
    let head = |clearance: &str| {
        format!(
            "head_diameter: 1.5 in, head_clearance: {{size: {clearance}, origin: shop book}}, shear_strength: 23 tonf/in2"
        )
    };
    let pressed = riveted(&[("shear_strength: 23 tonf/in2", &head("0.1 in"))]);
    let room = one(&pressed, "head_room", "shop book", "flange");
    below_by(room, "0.25625");
    assert_eq!(
        room.working,
        [
            "needed = edge + half head + clearance = 1.40625 + 1.5/2 + 0.1 = 2.25625 in",
            "given = straight = 2 in"
        ]
    );
    assert!(!room.why.contains("not compared"), "{}", room.why);

    let lap = ringed("shear_strength: 23 tonf/in2");
    let room = one(&lap, "head_room", "regulation 184", "ring");
    below_by(room, "0.1875");
    assert_eq!(
        room.working,
        [
            "needed = 1.5 × 0.9375 = 1.40625 in",
            "given = ring − edge − weld = 3 − 1.40625 − 0.375 = 1.21875 in"
        ]
    );
    assert!(
        room.why
            .contains("the edge of the barrel's lap, clear of the outer weld toe")
            && room.why.contains("not compared"),
        "{}",
        room.why
    );
    // A small clearance leaves the lap to govern, and the head is compared with it.
    let small = ringed(&head("0.1 in"));
    let room = one(&small, "head_room", "regulation 184", "ring");
    below_by(room, "0.1875");
    assert!(!room.why.contains("not compared"), "{}", room.why);
    assert_eq!(
        room.working[0],
        "needed = the larger of 1.5 × 0.9375 and 1.5/2 + 0.1 = 1.40625 in"
    );
    let large = ringed(&head("0.7 in"));
    let room = one(&large, "head_room", "shop book", "flange");
    below_by(room, "0.23125");
    assert_eq!(
        room.working[0],
        "needed = the larger of 1.5 × 0.9375 and 1.5/2 + 0.7 = 1.45 in"
    );
    let equal = ringed(&head("0.65625 in"));
    below_by(one(&equal, "head_room", "shop book", "flange"), "0.1875");
}

/// Flat within the ring to 20 − 1/2 − 3/8 = 19.125 in: segment above y 2, 19.125² acos(2/19.125) − 2 √(19.125² − 4) = 365.7656 × 1.466027 − 38.0402 = 498.18 in².
#[test]
fn by_hand_the_flat_within_a_ring() {
    let found = ringed("shear_strength: 23 tonf/in2");
    is(
        one(&found, "area_above_tubes", "", ""),
        "note",
        "498.18",
        "",
    );
}

/// Bore 40 in is 1,016 mm: 508 − 101.6 − 52.3875/2 = 380.206 mm from either outer tube to the shell, of which the first is named; at 5 in to the right the third:
/// 508 − 127 − 26.19375 = 354.806. Regulation 590 asks 40 mm of shell boilers, and judges nothing here.
#[test]
fn by_hand_space_from_tubes_to_shell() {
    let found = riveted(&[]);
    let space = one(&found, "breathing_space", "590", "T1 ");
    is(space, "note", "380.206", "40");
    let found = riveted(&[("[4 in, 0 in]", "[5 in, 0 in]")]);
    is(
        one(&found, "breathing_space", "590", "T3 "),
        "note",
        "354.806",
        "40",
    );
}

/// t 12.7, r 25.4 mm: 6.35/(25.4 + 6.35) = 20.0 %; the table asks 28 mm of plates up to 14.
#[test]
fn by_hand_strain_of_the_heel() {
    let found = judged(&[]);
    let strain = one(&found, "cold_strain", "", "heel");
    is(strain, "note", "20.000", "");
    assert!(strain.why.contains("28 mm or more"), "{}", strain.why);
    assert!(
        !ringed("shear_strength: 23 tonf/in2")
            .iter()
            .any(|f| f.rule == "cold_strain")
    );
}
