//! A piece let in at the bottom of a kept plate, with fourteen readings: figures worked independently by hand.
//!
//! Theoretical corner: on the ray 33 3/4° from the bottom, 11.875 tan 33.75° = 7.935 out, at radius 11.875/cos 33.75° = 14.282; the turn
//! there is 90 − 33.75 = 56.25°, and 3 tan 28.125° = 1.604 of each leg is rounded off, so that the arc ends at 15.885 on the ray,
//! short of the tangent at 16.125, and begins at x = 7.935 − 1.604 = 6.331.

use centrepop::checks::{Finding, run_checks};
use centrepop::design::{Design, Edge, PieceSize, RepairWork, set_out};
use centrepop::spec::read_spec;

use super::{below_by, is, one, to_places_of};

const SPEC: &str = include_str!("gritstone.yaml");

#[track_caller]
fn gritstone(changes: &[(&str, &str)]) -> (Design, Vec<Finding>) {
    let mut text = SPEC.to_string();
    for (from, to) in changes {
        assert!(text.contains(from), "the spec does not hold `{from}`");
        text = text.replacen(from, to, 1);
    }
    let spec = read_spec("gritstone.yaml", text.as_bytes()).unwrap_or_else(|f| panic!("{f}"));
    let design = set_out(&spec).unwrap_or_else(|faults| panic!("{faults:?}"));
    let findings = run_checks(&spec, &design);
    (design, findings)
}

fn printed(inches: f64, as_printed: &str) {
    assert_eq!(to_places_of(as_printed, inches), as_printed);
}

/// Rows of 9, 10, 11, 12, 13, 12, 13 and 12 are 92.
#[test]
fn by_hand_the_plate_itself() {
    let (design, _) = gritstone(&[]);
    let tubes = design.holes.iter().filter(|h| h.id.starts_with('T'));
    assert_eq!(tubes.count(), 92);
    let rows: Vec<usize> = design.nest_lines.iter().map(|l| l.holes.len()).collect();
    assert_eq!(rows, [9, 10, 11, 12, 13, 12, 13, 12]);
}

/// Bottom line 2 × 6.331 = 12.662, arcs 2 × 3 × 0.98175 = 5.890: 18.552 to the arc ends; with 2 × 0.240 to the tangent 19.032; with
/// heel 2 × (π/2 × 1.5625) = 4.909 and 2 × 2 of flange 27.941.
#[test]
fn by_hand_the_weld_line() {
    let (design, _) = gritstone(&[]);
    let repair = &design.repairs[0];
    let edges = &repair.weld;
    // Over the flange, to the arc, the arc, the bottom line, the arc, to the tangent, over the flange.
    assert_eq!(edges.len(), 7);
    let inches = |mm: f64| mm / 25.4;
    let (arc, bottom) = (&edges[2], &edges[3]);
    printed(inches(bottom.from().x), "-6.331");
    printed(inches(bottom.to().x), "6.331");
    printed(inches(bottom.to().y), "-11.875");
    assert!(matches!(arc, Edge::Arc { radius, .. } if (radius - 76.2).abs() < 1e-9));
    printed(arc.sweep().to_degrees().abs(), "56.25");
    printed(inches(arc.from().radius()), "15.885");
    printed(inches(arc.from().x), "-8.825");
    printed(inches(arc.from().y), "-13.208");
    let to_arc_ends: f64 = edges[2..5].iter().map(Edge::length_mm).sum();
    printed(inches(to_arc_ends), "18.55");
    printed(repair.flat_length.to_inches(), "19.03");
    printed(repair.length.to_inches(), "27.94");
    printed(inches(edges[0].from().radius()), "18.000");
    assert!(matches!(repair.work, RepairWork::Line { let_in: true }));
}

/// Weld to tube: row 0 at y −9.5 less 0.8125 is −10.3125, and −11.875 lies 1.5625 below; to plug: −13.75 + 0.875 = −12.875, 1.000 above
/// it. Rivets at 7 1/2°: 33 3/4° lies midway, 18 × 3.75° = 1.178 along the bore, less 0.4375: 0.741. Rivets at 0 to ±30° are 9.
#[test]
fn by_hand_what_lies_near_the_weld() {
    let (design, found) = gritstone(&[]);
    let repair = &design.repairs[0];
    let near = |purpose: &str| {
        let one = repair.nearest.iter().find(|one| one.0.name() == purpose);
        one.expect("a hole").2.to_inches()
    };
    printed(near("tube"), "1.5625");
    printed(near("plug"), "1.0000");
    assert_eq!(repair.rivets_in_it.len(), 9);
    let ids: Vec<&str> = repair
        .holes_in_it
        .iter()
        .map(|h| design.holes[*h].id.as_str())
        .collect();
    assert_eq!(ids, ["W1", "W2"]);
    assert_eq!(repair.crossings.len(), 2);
    for crossing in &repair.crossings {
        printed((crossing.angle_deg - 180.0).abs(), "33.75");
        assert!(
            crossing.off_square_deg < 0.01,
            "{}",
            crossing.off_square_deg
        );
        printed(
            crossing.rivet.as_ref().expect("a rivet").1.to_inches(),
            "0.741",
        );
    }
    let hole = one(&found, "weld_repair", "geometry", "to W");
    is(hole, "note", "1.0000", "");
    assert!(hole.why.contains("tube T"), "{}", hole.why);
    assert!(hole.why.contains("1.5625 in, plug W"), "{}", hole.why);
    let rivets: Vec<&Finding> = found
        .iter()
        .filter(|f| f.rule == "weld_repair" && f.place.contains("over the flange at"))
        .collect();
    assert_eq!(rivets.len(), 2);
    is(rivets[0], "note", "0.741", "");
    assert!(
        rivets[0].why.contains("0.0° off square"),
        "{}",
        rivets[0].why
    );
}

/// Readings 2 to 7 are below 12.7 mm, and all lie inside; nearest to the weld is 7, 1.55 in. Of the sound ones outside 11 is nearest:
/// −11.2 + 11.875 = 0.675; 12 and 13 are 0.775 off.
#[test]
fn by_hand_the_patch_covers_the_low_readings() {
    let (design, found) = gritstone(&[]);
    let low: Vec<usize> = design
        .readings
        .iter()
        .filter(|r| r.short.is_some())
        .map(|r| r.number)
        .collect();
    assert_eq!(low, [2, 3, 4, 5, 6, 7]);
    assert!(!design.readings.iter().any(|r| r.is_left_low()));
    let to_weld = |number: usize| {
        let (repair, away) = design.readings[number - 1].nearest_weld.expect("a weld");
        assert_eq!(repair, 0);
        away.to_inches()
    };
    printed(to_weld(7), "1.55");
    printed(to_weld(11), "0.675");
    printed(to_weld(12), "0.775");
    printed(to_weld(13), "0.775");
    let inside = design.readings[6].covered.expect("covered");
    assert_eq!(inside.repair, 0);
    printed(inside.inside.to_inches(), "1.55");
    assert!(design.readings[8].covered.is_none());
    let covered = one(
        &found,
        "thickness_readings",
        "works' designer",
        "within bottom patch",
    );
    assert_eq!(covered.verdict.name(), "note");
    assert_eq!(
        covered.why,
        "6 readings below 12.7 mm, in metal that is renewed: 2 (12.4 mm), 3 (10.2 mm), 4 (12.1 mm), 5 (10.6 mm), 6 (10.9 mm), \
         7 (12.6 mm); nearest to the weld is 7, 1.5532 in"
    );
    let outside = one(
        &found,
        "thickness_readings",
        "geometry",
        "outside bottom patch, reading 11",
    );
    is(outside, "note", "0.675", "");
    // The least that stays is 14.2 mm.
    let left = one(
        &found,
        "thickness_readings",
        "works' designer",
        "flat, reading 9",
    );
    assert_eq!(left.verdict.name(), "meets");
    assert!(
        left.why.contains("the least of 6 readings that stay"),
        "{}",
        left.why
    );
}

/// A smaller piece, its ends at 26 1/4°, midway between rivets again, leaves 7 outside: its straight end runs on the ray, which passes
/// (−7.4, −13.9) at 7.4 cos 26.25° − 13.9 sin 26.25° = 6.637 − 6.148 = 0.489 in. Rivets at 0 to ±22 1/2° are 7.
#[test]
fn by_hand_a_smaller_patch_leaves_one_reading_low() {
    let (design, found) = gritstone(&[
        (
            "start: [-8.95857 in, -13.40745 in]",
            "start: [-7.13190 in, -14.46205 in]",
        ),
        (
            "{to: [-7.934621 in, -11 7/8 in], corner_radius: 3 in}",
            "{to: [-5.856130 in, -11 7/8 in], corner_radius: 3 in}",
        ),
        (
            "{to: [7.934621 in, -11 7/8 in], corner_radius: 3 in}",
            "{to: [5.856130 in, -11 7/8 in], corner_radius: 3 in}",
        ),
        (
            "{to: [8.95857 in, -13.40745 in]}",
            "{to: [7.13190 in, -14.46205 in]}",
        ),
    ]);
    let left: Vec<usize> = design
        .readings
        .iter()
        .filter(|r| r.is_left_low())
        .map(|r| r.number)
        .collect();
    assert_eq!(left, [7]);
    let low = one(
        &found,
        "thickness_readings",
        "works' designer",
        "flat, reading 7",
    );
    // 12.7 − 12.6 mm.
    match low.unit {
        "mm" => below_by(low, "0.1"),
        _ => below_by(low, "0.0039"),
    }
    assert!(
        low.why
            .contains("below and covered by no repair: 7 (12.6 mm)"),
        "{}",
        low.why
    );
    assert!(low.why.contains("reading 7 lies 0.489"), "{}", low.why);
    // Ends at 26 1/4° stand midway too.
    printed(
        design.repairs[0].crossings[0]
            .rivet
            .as_ref()
            .expect("a rivet")
            .1
            .to_inches(),
        "0.741",
    );
    assert_eq!(design.repairs[0].rivets_in_it.len(), 7);
}

/// Without a limit of the works the clearance is a note; with one of 1 in it meets, with 1 1/16 it is 0.0625 below.
#[test]
fn by_hand_the_works_own_clearance() {
    let limit = |size: &str| {
        let own = format!(
            "own_limits: {{weld_to_hole: {{limit: {size}, origin: shop book}}}}\njudged_by:"
        );
        let (_, found) = gritstone(&[("judged_by:", &own)]);
        one(&found, "weld_repair", "shop book", "bottom patch to W").clone()
    };
    is(&limit("1 in"), "meets", "1.0000", "1.0000");
    below_by(&limit("1 1/16 in"), "0.0625");
}

/// 46 CFR Part 59 has no limit for it, and a plain word where it is named; 49 CFR 230.33 lets in no patch of any size without leave, and
/// leave is a concession.
#[test]
fn published_a_flush_patch_wants_leave() {
    let (design, found) = gritstone(&[("[Indian Boiler Regulations 1950]", "[49 CFR Part 230]")]);
    let area = design.repairs[0]
        .renews
        .as_ref()
        .expect("new metal")
        .area_mm2()
        / 645.16;
    let patch = one(
        &found,
        "weld_repair",
        "230.33",
        "bottom patch, let in without leave",
    );
    is(patch, "below", "", "0");
    assert!((patch.provided.expect("an area") - area).abs() < 1e-9);
    let leave = "[49 CFR Part 230]\nconcessions: [{rule: weld_repair, only: let in without leave, agreed_by: M. Thorley, reference: letter 7, reason: leave given}]";
    let (_, found) = gritstone(&[("[Indian Boiler Regulations 1950]", leave)]);
    let patch = one(
        &found,
        "weld_repair",
        "230.33",
        "bottom patch, let in without leave",
    );
    assert_eq!(patch.verdict.name(), "conceded");
    let note = one(&found, "weld_repair", "59.10", "bottom patch");
    assert_eq!(note.verdict.name(), "note");
    assert!(
        note.why.ends_with("holes in the new piece: W1, W2"),
        "{}",
        note.why
    );
}

/// Area as the face shows it: the sector of 2 × 33.75° on 18 in, 18²/2 × 1.178097 = 190.852, less the triangle above the bottom line
/// to the centre, 11.875² tan 33.75° = 94.224, less what the corners round off, 2 × 3² (tan 28.125° − 28.125° in radians 0.490874)
/// = 18 × 0.043673 = 0.786: 95.842 in².
#[test]
fn by_hand_the_area_let_in() {
    let (design, _) = gritstone(&[]);
    let area = design.repairs[0]
        .renews
        .as_ref()
        .expect("new metal")
        .area_mm2()
        / 645.16;
    printed(area, "95.84");
}

/// 33 3/4° each way is 1.178097 rad. Round the bore 18 × 1.178097 = 21.206; from the line at 11.875 to the tangent 4.25, the heel
/// π/2 × 1.5625 = 2.4544 and 2 of flange: 8.704. On mid thickness: flat ½ × 16.125² × 1.178097 = 153.163, less the triangle to the corners
/// 7.9346 × 11.875 = 94.224 and two roundings of 9 (tan 28.125° − 0.490874) = 0.393: 58.154; heel 1.178097 × 1.5625 × (π/2 × 16.125 +
/// 1.5625) = 49.501; flange 1.178097 × 17.6875 × 2 = 41.675; 149.33 in². × 5/8 in is 93.33 in³ = 1529.4 cm³, × 7.85 = 12.01 kg.
#[test]
fn by_hand_the_piece() {
    let (design, _) = gritstone(&[]);
    let piece = design.repairs[0].piece.as_ref().expect("a piece");
    let PieceSize::Flanged { round, out } = piece.size else {
        panic!("{:?}", piece.size);
    };
    printed(round.to_inches(), "21.206");
    printed(out.to_inches(), "8.704");
    printed(piece.area_mm2 / 645.16, "149.33");
    printed(piece.mass_kg.expect("a mass"), "12.01");
    let (design, _) = gritstone(&[(", density: 7850 kg/m3", "")]);
    let piece = design.repairs[0].piece.as_ref().expect("a piece");
    assert!(piece.mass_kg.is_none());
    let (design, _) = gritstone(&[(
        "thickness: 5/8 in, material: {grade: P265GH, metal",
        "material: {grade: P265GH, metal",
    )]);
    let piece = design.repairs[0].piece.as_ref().expect("a piece");
    assert!(piece.mass_kg.is_none() && piece.thickness.is_none());
}

/// Only what lies in the piece is made: the two plugs, and the nine rivets at 0 to ±30° of the bottom, R1 to R5 and R45 to R48.
#[test]
fn by_hand_what_is_made() {
    let (design, _) = gritstone(&[]);
    let made: Vec<&str> = design.holes_made().map(|hole| hole.id.as_str()).collect();
    assert_eq!(made, ["W1", "W2"]);
    let groups: Vec<&str> = design.groups_made().map(|(_, g)| g.name.as_str()).collect();
    assert_eq!(groups, ["washout plugs"]);
    let rivets = &design.rivets.as_ref().expect("rivets").rivets;
    let made = (0..rivets.len()).filter(|i| design.rivet_is_made(*i));
    let made: Vec<&str> = made.map(|i| rivets[i].id.as_str()).collect();
    assert_eq!(
        made,
        ["R1", "R2", "R3", "R4", "R5", "R45", "R46", "R47", "R48"]
    );
    assert_eq!(design.rivets_made(), 9);
}

/// Of sixteen places round the flange, 22 1/2° apart, three lie within 33 3/4° of the bottom; the welds themselves are its ends.
#[test]
fn by_hand_what_of_the_flange_is_new() {
    let (design, _) = gritstone(&[]);
    let takes_in = |deg: f64| design.repairs[0].takes_in(deg);
    let places: Vec<f64> = (0..16).map(|i| f64::from(i) * 22.5).collect();
    let new: Vec<f64> = places.into_iter().filter(|deg| takes_in(*deg)).collect();
    assert_eq!(new, [157.5, 180.0, 202.5]);
    assert!(takes_in(146.26) && takes_in(213.74) && takes_in(540.0));
    assert!(!takes_in(146.24) && !takes_in(213.76) && !takes_in(0.0));
}

/// Readings 9 to 14 stay, none of them among the tubes, whose outermost rows stand at −9.5 and 4.9375.
#[test]
fn by_hand_no_reading_stands_among_the_tubes() {
    let (_, found) = gritstone(&[]);
    let thickness = one(&found, "tube_plate_thickness", "regulation 580", "T1");
    assert_eq!(thickness.verdict.name(), "not judged");
    assert_eq!(thickness.provided, None);
    assert!(
        thickness
            .why
            .contains("no reading of the survey stands among the tubes in metal that stays"),
        "{}",
        thickness.why
    );
    let other = one(&found, "tube_ligament_alternative", "alternative", "tubes");
    assert_eq!(other.verdict.name(), "note");
    assert!(other.why.contains("among the tubes"), "{}", other.why);
}

/// Two readings between rows of the nest, 1.031 above a row and 1.571 from the next holes: 12.6 mm is the less, 12.6/25.4 = 0.49606 in,
/// 0.0039 under 1/2. Section 0.75 × 0.49606 = 0.37205 in²; asked are 0.125 × 1.625 + 0.2 = 0.40313 in and
/// 0.17 × 1.625 + 0.025 = 0.30125 in². One of 8 mm in the piece, which is renewed, and one of 9 mm on the lowest row's own line beyond its
/// last hole, at 9.5, are not among the tubes.
#[test]
fn by_hand_the_least_reading_among_the_tubes_counts() {
    let more = "readings:\n    - {at: [0 in, -8.46875 in], thickness: 12.6 mm}\n    \
        - {at: [0 in, -6.40625 in], thickness: 13 mm}\n    - {at: [1 in, -12.6 in], thickness: 8 mm}\n    \
        - {at: [10.6 in, -9.5 in], thickness: 9 mm}\n";
    let named = (
        "judged_by: [Indian Boiler Regulations 1950]",
        "judged_by: [Indian Boiler Regulations 1950, tube_ligament_alternative]",
    );
    let (_, found) = gritstone(&[("readings:\n", more), named]);
    let thickness = one(&found, "tube_plate_thickness", "regulation 580", "T1");
    is(thickness, "below", "0.4961", "0.5000");
    below_by(thickness, "0.0039");
    assert_eq!(
        thickness.why,
        "as found: reading 1, 12.6 mm, the least among the tubes"
    );
    let alternative = |place: &str| one(&found, "tube_ligament_alternative", "alternative", place);
    is(alternative("thickness"), "meets", "0.4961", "0.4031");
    is(alternative("section"), "meets", "0.3720", "0.3013");
    assert!(alternative("section").why.contains("reading 1, 12.6 mm"));
    // What is to be taken as lost comes off what was read: 12.6 − 1 = 11.6 mm.
    let lost = (
        "  thickness: 5/8 in\n",
        "  thickness: 5/8 in\n  corrosion_allowance: {size: 1 mm, origin: designer}\n",
    );
    let (_, found) = gritstone(&[("readings:\n", more), named, lost]);
    let thickness = one(&found, "tube_plate_thickness", "regulation 580", "T1");
    is(thickness, "below", "0.4567", "0.5000");
    assert!(
        thickness
            .why
            .ends_with("the least among the tubes; less the corrosion allowance of designer")
    );
}

/// The least reading that stays is 14.2 mm, number 9: (14.2/15.875)² = 0.8001, and 1.675 mm = 0.0659 in thinner. With no reading that
/// stays, nothing is known.
#[test]
fn by_hand_the_original_beside_what_is_left() {
    let original = (
        "  thickness: 5/8 in\n",
        "  thickness: 5/8 in\n  original: {source: old drawing, thickness: 5/8 in}\n",
    );
    let (_, found) = gritstone(&[original]);
    let thickness = one(&found, "old_sizes", "geometry", "thickness");
    is(thickness, "note", "0.5591", "");
    assert_eq!(
        thickness.why,
        "the least reading that stays, 14.2 mm for 5/8 in: thinner than the original by 0.0659 in, and 80 % of its strength in bending; \
         not like for like (old drawing)"
    );
    let survey = SPEC.find("  readings:\n").expect("readings");
    let end = SPEC.find("repairs:\n").expect("repairs");
    let (_, found) = gritstone(&[(&SPEC[survey..end], "  readings: []\n"), original]);
    let thickness = one(&found, "old_sizes", "geometry", "thickness");
    assert_eq!(
        (thickness.verdict.name(), thickness.provided),
        ("note", None)
    );
    assert!(thickness.why.contains("is not known"), "{}", thickness.why);
}

/// The circle between top row and flange holds reading 14 alone, 15.7 mm. With f1 1 N/mm², C 1 and nothing lost its pressure is
/// (15.7/d)²; with that reading gone none stands within it; one of 5 mm 8 in beside its centre, which is beyond its
/// radius of 5.66 in, is not within it.
#[test]
fn by_hand_the_circle_takes_the_reading_within_it() {
    let limit = (
        "judged_by:",
        "support: {flange_line: tangent, stays: true, tubes: true, origin: designer}\nown_limits:\n  largest_circle: {constant: 1, stress: 1 N/mm2, thickness_allowance: 0 mm, origin: designer}\njudged_by:",
    );
    let (design, found) = gritstone(&[limit]);
    let circle = one(&found, "largest_circle", "designer", "circle at");
    let d = design
        .largest_circle
        .as_ref()
        .expect("a circle")
        .diameter
        .to_mm();
    let carries = 15.7 * 15.7 / (d * d);
    let provided = circle.provided.expect("a pressure");
    assert!((provided - carries).abs() < 1e-9, "{circle:#?}");
    assert!(circle.why.contains("reading 14, 15.7 mm"), "{}", circle.why);
    let outside = (
        "readings:\n",
        "readings:\n    - {at: [8 in, 10.468 in], thickness: 5 mm}\n",
    );
    let (_, found) = gritstone(&[limit, outside]);
    let circle = one(&found, "largest_circle", "designer", "circle at");
    assert!(circle.why.contains("reading 15, 15.7 mm"), "{}", circle.why);
    let gone = ("    - {at: [0 in, 8 in], thickness: 15.7 mm}\n", "");
    let (_, found) = gritstone(&[limit, gone]);
    let circle = one(&found, "largest_circle", "designer", "circle at");
    assert_eq!(circle.verdict.name(), "not judged");
    assert!(circle.why.contains("within the circle"), "{}", circle.why);
}

/// What a plate that is kept cannot have, and what only such a plate has, each with its place.
#[test]
fn refuses_what_is_not_of_a_kept_plate() {
    let refused = |changes: &[(&str, &str)]| -> Vec<String> {
        let mut text = SPEC.to_string();
        for (from, to) in changes {
            assert!(text.contains(from), "the spec does not hold `{from}`");
            text = text.replacen(from, to, 1);
        }
        match read_spec("gritstone.yaml", text.as_bytes()) {
            Ok(_) => Vec::new(),
            Err(faults) => faults.faults.iter().map(|f| f.path.clone()).collect(),
        }
    };
    assert!(refused(&[]).is_empty());
    let cut = (
        "judged_by:",
        "cutting: {process: waterjet, origin: works}\njudged_by:",
    );
    assert_eq!(refused(&[cut]), ["cutting"]);
    let trimmed = (
        "trim: 0 in",
        "trim: 1/2 in, blank_diameter: 43 in, former_hot_allowance: {share: 0.01, origin: works}",
    );
    assert_eq!(
        refused(&[trimmed]),
        [
            "flange.pressed.trim",
            "flange.pressed.blank_diameter",
            "flange.pressed.former_hot_allowance"
        ]
    );
    assert_eq!(
        refused(&[("purpose: plug", "purpose: former pin")]),
        ["holes[0].purpose"]
    );
    let new = ("  kept: true\n", "");
    assert_eq!(refused(&[new]), ["survey", "repairs"]);
    let renewed = (
        "    tube: 1 1/2 in\n",
        "    tube: 1 1/2 in\n    renewed: true\n",
    );
    assert!(refused(&[renewed]).is_empty());
    assert_eq!(
        refused(&[new, renewed]),
        ["tubes[0].renewed", "survey", "repairs"]
    );
    assert_eq!(
        refused(&[("let_in: true", "let_in: false")]),
        ["repairs[0].weld.line.piece"]
    );
    assert_eq!(
        refused(&[("piece: {thickness: 5/8 in", "piece: {thickness: 0 in")]),
        ["repairs[0].weld.line.piece.thickness"]
    );
}

/// A weld that stops short of the edge leaves the piece hanging on the flange: 2 − 1 1/2 = 1/2 in.
#[test]
fn refuses_a_piece_that_is_not_cut_free() {
    let text = SPEC.replace("over_flange: 2 in", "over_flange: 1 1/2 in");
    let spec = read_spec("gritstone.yaml", text.as_bytes()).unwrap_or_else(|f| panic!("{f}"));
    let faults = set_out(&spec).expect_err("a piece that is not cut free");
    assert_eq!(faults[0].path, "repairs[0].weld.line.over_flange");
    assert!(
        faults[0].fact.contains("0.5 in short of the edge"),
        "{}",
        faults[0].fact
    );
}
