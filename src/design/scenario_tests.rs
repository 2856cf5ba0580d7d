//! The two worked plates in `specs/`, set out and compared with figures worked by hand.

use std::path::Path;

use super::{Design, Fabricated, FlangeDesign, NestLine, Pressed, RivetMade, set_out};
use crate::spec::{Fault, Spec, read_spec, read_spec_file};
use crate::units::print::decimal;
use crate::units::{KG_PER_LB, Length, NEWTONS_PER_LBF};

const MARL_HEN: &str = "specs/marl-hen-smokebox.yaml";
const HOBTHRUSH: &str = "specs/hobthrush-smokebox.yaml";

fn spec(file: &str) -> Spec {
    read_spec_file(Path::new(file)).unwrap_or_else(|faults| panic!("{faults}"))
}

fn design(file: &str) -> Design {
    set_out(&spec(file)).unwrap_or_else(|faults| panic!("{faults:#?}"))
}

/// The spec of a file with one passage written otherwise.
fn changed(file: &str, from: &str, to: &str) -> Spec {
    let text = std::fs::read_to_string(file).unwrap();
    assert!(text.contains(from), "{from}");
    let text = text.replacen(from, to, 1);
    read_spec(file, text.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"))
}

fn faults_of(file: &str, from: &str, to: &str) -> Vec<Fault> {
    set_out(&changed(file, from, to)).expect_err("the spec is contradictory")
}

fn inches(length: Length, places: usize) -> String {
    decimal(length.to_inches(), places)
}

fn mm(length: Length, places: usize) -> String {
    decimal(length.to_mm(), places)
}

fn pressed(design: &Design) -> &Pressed {
    match design.flange.as_ref() {
        Some(FlangeDesign::Pressed(pressed)) => pressed,
        _ => panic!("not pressed"),
    }
}

fn fabricated(design: &Design) -> &Fabricated {
    match design.flange.as_ref() {
        Some(FlangeDesign::Fabricated(ring)) => ring,
        _ => panic!("not fabricated"),
    }
}

/// x, lowest y, highest y and count of each column, inches to three places.
fn column_row(line: &NestLine) -> (String, String, String, usize) {
    let inch = |mm| inches(Length::mm(mm), 3);
    (
        inch(line.offset),
        inch(line.first),
        inch(line.last),
        line.holes.len(),
    )
}

/// Columns 2 1/4 apart, y = 1 19/64 + 2 19/32 (j or j + 1/2); centres within 16.875 − 1/2 − 59/64 = 15.453 of the middle and
/// below 6.6. Column 0: y from 1.296875 − 6 × 2.59375 = −14.265625 (left out for the plug) to 1.296875 + 2 × 2.59375 = 6.484,
/// and so 8 with the lowest at −11.672. Column 6, x 13.5: |y| ≤ √(15.453² − 13.5²) = 7.52, so −6.484 to 6.484, 6.
#[test]
fn by_hand_marl_hen_columns() {
    let design = design(MARL_HEN);
    let half = [
        ("0.000", "-11.672", "6.484", 8),
        ("2.250", "-12.969", "5.188", 8),
        ("4.500", "-14.266", "6.484", 9),
        ("6.750", "-12.969", "5.188", 8),
        ("9.000", "-11.672", "6.484", 8),
        ("11.250", "-10.375", "5.188", 7),
        ("13.500", "-6.484", "6.484", 6),
    ];
    assert_eq!(design.nest_lines.len(), 13);
    for line in &design.nest_lines {
        let (x, low, high, count) = half[line.number.unsigned_abs() as usize];
        let x = if line.number < 0 {
            format!("-{x}")
        } else {
            x.into()
        };
        assert_eq!(
            column_row(line),
            (x, low.to_string(), high.to_string(), count)
        );
    }
    let tubes = design.holes.iter().filter(|hole| hole.id.starts_with('T'));
    assert_eq!(tubes.count(), 100);
    assert_eq!(design.omissions.len(), 1);
}

/// Numbered by columns from the left, each from low to high: T1 is the lowest of column −6, T100 the highest of column 6.
/// Column −6 has 6 and column −5 has 7, so column −4 begins with T14.
#[test]
fn by_hand_marl_hen_numbers() {
    let design = design(MARL_HEN);
    let ids: Vec<&str> = design.holes.iter().map(|hole| hole.id.as_str()).collect();
    assert_eq!((ids[0], ids[99], ids[100]), ("T1", "T100", "P1"));
    assert_eq!(
        ids[101..],
        ["W1", "S1", "S2", "S3", "S4"],
        "plug, then stays, each stay before its opposite hand"
    );
    assert_eq!(design.nest_lines[2].holes[0], "T14");
    let (first, last) = (&design.holes[0], &design.holes[99]);
    assert_eq!(inches(Length::mm(first.at.x), 1), "-13.5");
    assert_eq!(inches(Length::mm(last.at.y), 3), "6.484");
}

/// 38/2 − 5/8 − 1 1/2 = 16.875; depth 2 1/4 + 1 1/2 + 5/8 = 4.375. ρ = 1.8125, mean radius 18.6875.
/// Mid line 2(16.875 + 1.8125 π/2 + 2.25) = 43.94; equal area 2 √(16.875² + π 16.875 × 1.8125 + 2 × 1.8125² + 2 × 18.6875 ×
/// 2.25) = 43.43. Heel 0.3125/1.8125 = 17.2 %; rim 1 − 37.375/43.944 = 14.9 %.
#[test]
fn by_hand_marl_hen_flange() {
    let design = design(MARL_HEN);
    let flange = pressed(&design);
    assert_eq!(inches(flange.tangent_radius, 3), "16.875");
    assert_eq!(inches(flange.depth, 3), "4.375");
    assert_eq!(inches(flange.blank_mid_line, 2), "43.94");
    assert_eq!(inches(flange.blank_equal_area, 2), "43.43");
    assert_eq!(inches(flange.blank_cut, 2), "45.00");
    assert_eq!(decimal(100.0 * flange.heel_strain, 1), "17.2");
    assert_eq!(decimal(100.0 * flange.rim_shrink, 1), "14.9");
}

/// 360/56 = 6.4286°; π 38/56 = 2.1318 and π 39/56 = 2.1879; chords 38 sin(180°/56) = 2.1307 and 39 sin(180°/56) = 2.1867.
/// Between holes: the first stands half a step clockwise of bottom centre, at 180 + 3.2143°. Head room 1.5 × 15/16 + 1.4/2 +
/// 1/8 = 2.231 of 2.25. Every fourth for a tack bolt: 14.
#[test]
fn by_hand_marl_hen_rivets() {
    let design = design(MARL_HEN);
    let line = design.rivets.as_ref().unwrap();
    assert_eq!(line.rivets.len(), 56);
    assert_eq!(decimal(line.step_deg, 4), "6.4286");
    assert_eq!(inches(line.pitch_bore, 4), "2.1318");
    assert_eq!(inches(line.pitch_outside, 4), "2.1879");
    assert_eq!(inches(line.chord_bore, 4), "2.1307");
    assert_eq!(inches(line.chord_outside, 4), "2.1867");
    assert_eq!(decimal(line.rivets[0].angle_deg, 4), "183.2143");
    assert_eq!(inches(line.rivets[0].run, 4), "1.0659");
    let room = line.head_room.as_ref().unwrap();
    assert_eq!(
        (inches(room.needed, 3), inches(room.given, 2)),
        ("2.231".into(), "2.25".into())
    );
    let tacks = line.rivets.iter().filter(|r| r.made == RivetMade::Tack);
    assert_eq!(tacks.count(), 14);
}

/// Marl Hen, 56 rivets of 6.42857° from half a pitch past the bottom, every fourth a tack: 3.214° + 25.714° k. Nearest to 0°, 90°, 180°
/// and 270° past the bottom are k = 0 (3.21°), 3 (80.36°; 4 is 16.07° off), 7 (183.21°) and 10 (260.36°): R1, R13, R29, R41. Pinder's Oak,
/// 62 of 5.80645° from the bottom: 23.226° k, so k = 0, 4 (92.9°), 8 (185.8°) and 12 (278.7°; 11 is 14.5° off): R1, R17, R33, R49.
/// Hobthrush has no tack hole.
#[test]
fn by_hand_tacks_nearest_the_quarters() {
    for (job, wanted) in [
        (MARL_HEN, vec!["R1", "R13", "R29", "R41"]),
        (
            "specs/pinders-oak-smokebox.yaml",
            vec!["R1", "R17", "R33", "R49"],
        ),
        (HOBTHRUSH, Vec::new()),
    ] {
        let line = design(job).rivets.expect("rivets");
        let found = line.tacks_at_quarters();
        let ids: Vec<&str> = found.iter().map(|r| r.id.as_str()).collect();
        assert_eq!(ids, wanted, "{job}");
    }
}

/// At 7850 kg/m³: plain 262.6 lb (disc of the equal area blank, π/4 × 43.43² × 5/8 = 925.9 in³ of 0.2836 lb), finished 203.6
/// lb, blank π/4 × 45² × 5/8 = 994.0 in³, 281.9 lb. End load 160 × π/4 × 38² = 181,458 lb.
#[test]
fn by_hand_marl_hen_masses() {
    let figures = design(MARL_HEN).figures;
    let lb = |kg: Option<f64>| decimal(kg.unwrap() / KG_PER_LB, 1);
    assert_eq!(lb(figures.plate_plain_kg), "262.6");
    assert_eq!(lb(figures.plate_mass_kg), "203.6");
    assert_eq!(lb(figures.blank_mass_kg), "281.9");
    let pounds = figures.end_load_n.unwrap() / NEWTONS_PER_LBF;
    assert_eq!(decimal(pounds, 0), "181458");
}

/// Rows j −7 … 3 at y = 49 j, 56.5 apart; centres within 392 − 12 − 19.5 = 360.5. Row 0: 56.5 k ≤ 360.5 gives k −6 … 6, 13.
/// Row −7: y −343, half width √(360.5² − 343²) = 110.97, odd, so ±28.25, ±84.75: 4.
#[test]
fn by_hand_hobthrush_rows() {
    let design = design(HOBTHRUSH);
    let counts: Vec<usize> = design.nest_lines.iter().map(|l| l.holes.len()).collect();
    assert_eq!(counts, [4, 7, 10, 11, 12, 13, 12, 13, 12, 13, 12]);
    assert_eq!(design.nest_lines[0].number, -7);
    let tubes = design.holes.iter().filter(|hole| hole.id.starts_with('T'));
    assert_eq!(tubes.count(), 119);
}

/// Ring OD 840 × 16 with 12 mm legs: toes at 420 − 16 − 12 = 392 and 420 + 12 = 432; strip π × 824 = 2588.7; 29.3 kg of
/// 2588.7 × 90 × 16. Rivets 48, 36 from the edge: pitch π 840/48 = 54.98; 90 − 36 − 12 = 42 from the toe, 1.5 × 23 = 34.5.
#[test]
fn by_hand_hobthrush_ring_and_rivets() {
    let design = design(HOBTHRUSH);
    let ring = fabricated(&design);
    assert_eq!(mm(ring.inner_toe_radius, 1), "392.0");
    assert_eq!(mm(ring.outer_toe_radius, 1), "432.0");
    assert_eq!(mm(ring.strip_net, 1), "2588.7");
    let line = design.rivets.as_ref().unwrap();
    assert_eq!(mm(line.pitch_bore, 2), "54.98");
    assert_eq!(decimal(line.rivets[0].angle_deg, 6), "180.000000");
    let room = line.head_room.as_ref().unwrap();
    assert_eq!(
        (mm(room.needed, 1), mm(room.given, 1)),
        ("34.5".into(), "42.0".into())
    );
}

/// Disc R 470 with a leg 720 wide to y −690 and 60 mm corners: 889,353 mm², 3,625.4 mm, in a box 940 × 1160.
/// 889,353 × 16 × 7850e-9 = 111.7 kg; less 119 of 39, 4 of 33 and one of 110, 92.2 kg; ring 29.3 kg.
/// End load 1.034 × π/4 × 840² = 573.0 kN.
#[test]
fn by_hand_hobthrush_areas_and_masses() {
    let figures = design(HOBTHRUSH).figures;
    assert_eq!(decimal(figures.outline_area_mm2, 0), "889353");
    assert_eq!(mm(figures.outline_perimeter, 1), "3625.4");
    let (width, height) = figures.outline_box;
    assert_eq!(
        (mm(width, 1), mm(height, 1)),
        ("940.0".into(), "1160.0".into())
    );
    assert_eq!(decimal(figures.plate_plain_kg.unwrap(), 1), "111.7");
    assert_eq!(decimal(figures.plate_mass_kg.unwrap(), 1), "92.2");
    assert_eq!(decimal(figures.ring_mass_kg.unwrap(), 1), "29.3");
    assert_eq!(decimal(figures.end_load_n.unwrap() / 1000.0, 1), "573.0");
}

/// Sc1 with the steam pipe lowered to y 8 1/2: radii 2.5 + 59/64 = 3.421875; to tube (0, 6.484375) 2.015625, so 1.40625 over;
/// to tubes (±2.25, 5.1875) √(2.25² + 3.3125²) = 4.00439, so 0.5825 of metal.
#[test]
fn refuses_steam_pipe_on_a_tube() {
    let faults = faults_of(MARL_HEN, "[0 in, 11 1/4 in]", "[0 in, 8 1/2 in]");
    let [fault] = &faults[..] else {
        panic!("{faults:#?}")
    };
    assert_eq!(fault.path, "holes[0].at[0]");
    assert_eq!(
        fault.fact,
        "steam pipe P1 at (0, 8.5) in overlaps tube T54 at (0, 6.484) in by 1.406 in; it leaves only 0.583 in to tube T46 at \
         (-2.25, 5.188) in and 0.583 in to tube T62 at (2.25, 5.188) in"
    );
    assert_eq!(
        fault.remedy,
        "omit this tube, T54, by exception, or move the steam pipe?"
    );
    assert_eq!(fault.also[0].0, "tubes[0].pattern.columns");
}

/// Two stays 0.3 mm apart; both are mirrored, and one fault tells of both hands.
#[test]
fn refuses_the_same_stay_twice() {
    let faults = faults_of(
        HOBTHRUSH,
        "[[150 mm, 270 mm], [265 mm, 215 mm]]",
        "[[150 mm, 270 mm], [265 mm, 215 mm], [150.3 mm, 270 mm]]",
    );
    let [fault] = &faults[..] else {
        panic!("{faults:#?}")
    };
    assert_eq!(fault.path, "holes[1].at[2]");
    assert!(
        fault.fact.starts_with("duplicate: stay S"),
        "{}",
        fault.fact
    );
    assert!(fault.fact.contains("0.3 mm apart"), "{}", fault.fact);
    assert_eq!(fault.also[0].0, "holes[1].at[0]");
}

/// Every fault at once: a stay hole on two tubes' pattern, a pipe over the weld (110/2 + 345 − 392 = 8 over), and a ring whose
/// rivets are too many (840 π / 23 = 114.7).
#[test]
fn refuses_everything_at_once() {
    let text = std::fs::read_to_string(HOBTHRUSH).unwrap();
    let text = text
        .replacen("[0 mm, 285 mm]", "[0 mm, 345 mm]", 1)
        .replacen("[265 mm, 215 mm]", "[265 mm, 150 mm]", 1)
        .replacen("count: 48", "count: 120", 1);
    let faults = set_out(&read_spec(HOBTHRUSH, text.as_bytes()).unwrap()).unwrap_err();
    let facts: Vec<&str> = faults.iter().map(|f| f.fact.as_str()).collect();
    assert!(
        facts
            .iter()
            .any(|f| f.contains("steam pipe P1 at (0, 345) mm runs 8 mm over the inner weld toe")),
        "{facts:#?}"
    );
    assert_eq!(
        facts
            .iter()
            .filter(|f| f.starts_with("stay S") && f.contains("overlaps tube T"))
            .count(),
        2
    );
    assert!(
        facts
            .iter()
            .any(|f| f.contains("120 holes of 23 mm are more than the girth of the bore holds")),
        "{facts:#?}"
    );
}

/// A tube added at (0, 400) of a plate whose weld toe is at 392: 400 + 19.5 − 392 = 27.5 over.
#[test]
fn refuses_a_tube_over_the_weld() {
    let faults = faults_of(
        HOBTHRUSH,
        "    within:",
        "    exceptions: [{add: [0 mm, 400 mm], reason: trial}, {add: [0 mm, -600 mm], reason: trial}]\n    within:",
    );
    let facts: Vec<&str> = faults.iter().map(|f| f.fact.as_str()).collect();
    assert_eq!(
        facts,
        [
            "tube T120 at (0, 400) mm runs 27.5 mm over the inner weld toe",
            "tube T121 at (0, -600) mm stands outside the ring"
        ]
    );
    assert_eq!(faults[0].path, "tubes[0].exceptions[0]");
}

/// The place of tube (0, −14.266) written half a hole and more too far to the right: 1 in against 59/64.
#[test]
fn refuses_an_exception_where_no_hole_is() {
    let faults = faults_of(
        MARL_HEN,
        "omit: [0 in, -14 17/64 in]",
        "omit: [1 in, -14 17/64 in]",
    );
    let fault = &faults[0];
    assert_eq!(fault.path, "tubes[0].exceptions[0]");
    assert_eq!(
        fault.fact,
        "no hole of tubes stands at (1, -14.266) in; the nearest is at (0, -14.266) in, 1 in away"
    );
    assert!(
        faults.iter().any(|f| f.fact.contains("washout plug")
            || f.fact.starts_with("plug W1") && f.fact.contains("overlaps tube")),
        "the tube that was to go now stands where the plug does: {faults:#?}"
    );
}

/// 43.94 in of net blank are not to be had from 43 1/2: 0.444 short; with 1/2 trim all round 44.944.
#[test]
fn refuses_a_blank_too_small() {
    let faults = faults_of(
        MARL_HEN,
        "blank_diameter: 45 in",
        "blank_diameter: 43 1/2 in",
    );
    assert_eq!(
        faults[0].fact,
        "a blank of 43 1/2 in is 0.444 in smaller than the flange takes, 43.944 in, before any trim"
    );
    assert_eq!(
        faults[0].remedy,
        "order 44.944 in or more, which leaves the trim all round"
    );
}

/// Midway between two tubes of a column there is no tube: half a pitch, 1.297 in, to either.
#[test]
fn refuses_a_former_pin_off_the_tubes() {
    let faults = faults_of(MARL_HEN, "[9 in, -1 19/64 in]", "[11 1/4 in, -1 19/64 in]");
    assert_eq!(faults[0].path, "cutting.former_pins[1]");
    assert!(
        faults[0].fact.contains("1.297 in away"),
        "{}",
        faults[0].fact
    );
}

/// The last stage of the tube holes left out: they end bored to 1 13/16, and the finished hole is 1 27/32.
#[test]
fn refuses_stages_that_stop_short() {
    let faults = faults_of(MARL_HEN, "      - {name: ream, size: 1 27/32 in}\n", "");
    assert_eq!(faults[0].path, "tubes[0].stages[1]");
    assert_eq!(
        faults[0].fact,
        "the last stage, bore, leaves 1 13/16 in, and the finished hole is 1 27/32 in"
    );
}

/// Ligaments of Marl Hen: column 2.59375 − 1.84375 = 0.7500; diagonal √(2.25² + 1.296875²) − 1.84375 = 0.7532; plug to tube
/// 0.781, stay to tube 1.247, pipe to tube 1.344; tube to tangent 0.649.
#[test]
fn by_hand_marl_hen_ligaments() {
    use crate::spec::Purpose::*;
    let design = design(MARL_HEN);
    let least = |between| {
        let found = design.least_ligaments.iter().find(|l| l.between == between);
        inches(found.unwrap().ligament.metal, 3)
    };
    assert_eq!(least((Tube, Plug)), "0.781");
    assert_eq!(least((Tube, Stay)), "1.247");
    assert_eq!(least((Tube, SteamPipe)), "1.344");
    let metal = |direction| {
        let found = design.directions.iter().find(|d| d.direction == direction);
        inches(found.unwrap().ligament.metal, 4)
    };
    assert_eq!(metal("column"), "0.7500");
    assert_eq!(metal("diagonal"), "0.7532");
    let land = design.lands.iter().find(|l| l.purpose == Tube).unwrap();
    assert_eq!(inches(land.metal, 3), "0.649");
}

/// Hobthrush: row 56.5 − 39 = 17.500; diagonal √(49² + 28.25²) − 39 = 17.560; stay to tube 32.8, pipe to tube 66.4; land to
/// the weld toe 19.2.
#[test]
fn by_hand_hobthrush_ligaments() {
    use crate::spec::{NamedLine, Purpose::*};
    let design = design(HOBTHRUSH);
    let least = |between| {
        let found = design.least_ligaments.iter().find(|l| l.between == between);
        mm(found.unwrap().ligament.metal, 1)
    };
    assert_eq!(least((Tube, Stay)), "32.8");
    assert_eq!(least((Tube, SteamPipe)), "66.4");
    let metal = |direction| {
        let found = design.directions.iter().find(|d| d.direction == direction);
        mm(found.unwrap().ligament.metal, 3)
    };
    assert_eq!(metal("row"), "17.500");
    assert_eq!(metal("diagonal"), "17.560");
    let land = design
        .lands
        .iter()
        .find(|l| l.purpose == Tube && l.line == NamedLine::InnerWeldToe);
    assert_eq!(mm(land.unwrap().metal, 1), "19.2");
}

/// Four exceptions on Hobthrush: tube (0, 0) out, (56.5, 0) 2 mm up, (−56.5, 0) to 40 mm, one more at (0, 196), above
/// row 3. 119 − 1 + 1 tubes; row 0 keeps 11 on its line; the added tube is numbered last.
#[test]
fn by_hand_exceptions() {
    let design = set_out(&changed(
        HOBTHRUSH,
        "    within:",
        "    exceptions:
      - {omit: [0 mm, 0 mm], reason: one}
      - {move: [56.5 mm, 0 mm], to: [56.5 mm, 2 mm], reason: two}
      - {resize: [-56.5 mm, 0 mm], hole: 40 mm, reason: three}
      - {add: [0 mm, 196 mm], reason: four}
    within:",
    ))
    .unwrap_or_else(|faults| panic!("{faults:#?}"));
    let tubes: Vec<_> = design
        .holes
        .iter()
        .filter(|h| h.id.starts_with('T'))
        .collect();
    assert_eq!(tubes.len(), 119);
    let row = design.nest_lines.iter().find(|l| l.number == 0).unwrap();
    assert_eq!(row.holes.len(), 11);
    let by_reason = |reason: &str| {
        let found = tubes
            .iter()
            .find(|h| h.exception.as_deref() == Some(reason));
        *found.unwrap()
    };
    assert_eq!(by_reason("two").at, super::Point::new(56.5, 2.0));
    assert_eq!(by_reason("two").line, None);
    assert_eq!(by_reason("three").finish.as_written(), "40 mm");
    assert_eq!(mm(by_reason("three").ligament_hole, 1), "40.0");
    assert_eq!(by_reason("three").path, "tubes[0].exceptions[2]");
    assert_eq!(by_reason("four").id, "T119");
    assert_eq!(design.omissions[0].reason, "one");
    let resized = by_reason("three");
    let stages = design.groups[resized.group].stages_of(resized);
    let last = stages.last().unwrap().size.as_ref().unwrap();
    assert_eq!(last.as_written(), "40 mm");
}

/// The same hole twice an exception; a hole moved nowhere; two things at once.
#[test]
fn refuses_exceptions_that_say_too_much_or_too_little() {
    let faults = faults_of(
        HOBTHRUSH,
        "    within:",
        "    exceptions:
      - {omit: [0 mm, 0 mm], reason: one}
      - {omit: [5 mm, 0 mm], reason: again}
      - {move: [56.5 mm, 0 mm], reason: two}
      - {omit: [56.5 mm, 0 mm], add: [0 mm, -350 mm], reason: three}
    within:",
    );
    let facts: Vec<(&str, &str)> = faults
        .iter()
        .map(|f| (f.path.as_str(), f.fact.as_str()))
        .collect();
    assert_eq!(
        facts,
        [
            (
                "tubes[0].exceptions[1]",
                "the hole at (0, 0) mm is already an exception"
            ),
            (
                "tubes[0].exceptions[2]",
                "a hole is to be moved, and nothing says where to"
            ),
            (
                "tubes[0].exceptions[3]",
                "an exception does exactly one thing to one hole"
            ),
        ]
    );
}

/// Two nests with one letter: the second goes on where the first stopped. Two flues of 60 mm listed by place.
#[test]
fn by_hand_numbers_run_on_through_a_second_nest() {
    let design = set_out(&changed(
        HOBTHRUSH,
        "\nholes:",
        "
  - name: flues
    purpose: flue
    letter: T
    tube: 58 mm
    hole: 60 mm
    pattern: {points: [[-60 mm, 205 mm], [60 mm, 205 mm]]}

holes:",
    ))
    .unwrap_or_else(|faults| panic!("{faults:#?}"));
    let flues: Vec<&str> = design
        .holes
        .iter()
        .filter(|h| h.group == 1)
        .map(|h| h.id.as_str())
        .collect();
    assert_eq!(flues, ["T120", "T121"]);
    assert_eq!(design.holes[119].path, "tubes[1].pattern.points[0]");
    let mut ids: Vec<&str> = design.holes.iter().map(|h| h.id.as_str()).collect();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), design.holes.len());
}

/// Hobthrush filled as far as it goes: without a first and last row, rows −7 to 7 have a centre within 360.5 of the middle
/// (49 × 7 = 343, 49 × 8 = 392). Kept below y 160 and off a box from (−20, −20) to (20, 20) that loses the one tube at (0, 0), and
/// made symmetrical: row 0 has 12, and the rows above 3 are those below mirrored until the limit.
#[test]
fn by_hand_as_many_lines_as_fit() {
    let text = std::fs::read_to_string(HOBTHRUSH).unwrap();
    let text: String = text
        .lines()
        .filter(|line| !line.trim().starts_with("first: -7") && !line.trim().starts_with("last: 3"))
        .map(|line| format!("{line}\n"))
        .collect();
    let text = text.replacen(
        "    within:\n",
        "    within:
      top: 160 mm
      symmetrical: true
      keep_out: [{from: [-20 mm, -20 mm], to: [20 mm, 20 mm], reason: trial}]\n",
        1,
    );
    let design = set_out(&read_spec(HOBTHRUSH, text.as_bytes()).unwrap())
        .unwrap_or_else(|faults| panic!("{faults:#?}"));
    let counts: Vec<usize> = design.nest_lines.iter().map(|l| l.holes.len()).collect();
    assert_eq!(counts, [4, 7, 10, 11, 12, 13, 12, 12, 12, 13, 12]);
}

/// A pattern half a pitch and a quarter off the vertical centre line has no hole at the opposite hand of another: symmetrical
/// leaves nothing of it.
#[test]
fn by_hand_nothing_symmetrical_off_centre() {
    let text = std::fs::read_to_string(HOBTHRUSH).unwrap();
    let text = text
        .replacen("    within:\n", "    within:\n      symmetrical: true\n", 1)
        .replacen("through: [0 mm, 0 mm]", "through: [10 mm, 0 mm]", 1);
    let design = set_out(&read_spec(HOBTHRUSH, text.as_bytes()).unwrap())
        .unwrap_or_else(|faults| panic!("{faults:#?}"));
    assert!(design.nest_lines.is_empty());
}

/// π 840/55 = 47.98, so 48 rivets, at a true pitch of 54.98.
#[test]
fn by_hand_rivets_by_pitch() {
    let design = set_out(&changed(HOBTHRUSH, "count: 48", "pitch: 55 mm"))
        .unwrap_or_else(|faults| panic!("{faults:#?}"));
    let line = design.rivets.unwrap();
    assert_eq!(line.rivets.len(), 48);
    assert_eq!(mm(line.pitch_bore, 2), "54.98");
}

/// Marl Hen's heel by DIN 6935: r/t = 2.4, k = 0.840, line at 0.420 t; arc (π/2)(1.5 + 0.2625) = 2.769; blank
/// 2(16.875 + 2.769 + 2.25) = 43.79. The equal area blank does not change.
#[test]
fn by_hand_blank_by_din_6935() {
    let design = set_out(&changed(
        MARL_HEN,
        "    blank_diameter: 45 in",
        "    bend_allowance: din6935\n    blank_diameter: 45 in",
    ))
    .unwrap_or_else(|faults| panic!("{faults:#?}"));
    let flange = pressed(&design);
    assert_eq!(inches(flange.blank_mid_line, 2), "43.79");
    assert_eq!(inches(flange.blank_equal_area, 2), "43.43");
}

/// A pitch of 1 13/16 for holes of 1 27/32, said where the pitch stands, with the hole.
#[test]
fn refuses_a_pitch_below_the_hole() {
    let faults = faults_of(MARL_HEN, "pitch: 2 19/32 in", "pitch: 1 13/16 in");
    assert_eq!(faults[0].path, "tubes[0].pattern.columns.pitch");
    assert_eq!(
        faults[0].fact,
        "the pitch, 1.813 in, is not more than the hole, 1 27/32 in, so neighbouring holes would meet"
    );
    assert_eq!(faults[0].also[0].0, "tubes[0].hole");
}

/// Bushes of 2.8 in fit no pitch of 2 19/32: it is the bush's outside that is cut in the plate.
#[test]
fn refuses_bushes_that_meet() {
    let faults = faults_of(
        MARL_HEN,
        "    hole: 1 27/32 in",
        "    bush: 2.8 in\n    hole: 1 27/32 in",
    );
    assert_eq!(faults[0].also[0].0, "tubes[0].bush");
}

/// A land to the tangent of a plate that has none.
#[test]
fn refuses_a_land_to_no_line() {
    let faults = faults_of(HOBTHRUSH, "to: inner weld toe", "to: tangent");
    assert_eq!(faults[0].path, "tubes[0].within.land[0].to");
    assert_eq!(
        faults[0].remedy,
        "name a line that it has: inner weld toe, outer weld toe, edge"
    );
}

/// Marl Hen: 10.407 in about (±0.56, 11.66), of two alike the one to the right; tubes not counted, 29.94 in about (0, −1.91).
/// Hobthrush: 248.3 mm about (0, 267.9).
#[test]
fn by_hand_largest_circles() {
    let marl_hen = design(MARL_HEN);
    let circle = marl_hen.largest_circle.unwrap();
    assert_eq!(inches(circle.diameter, 3), "10.407");
    let at = |p: super::Point| (inches(Length::mm(p.x), 2), inches(Length::mm(p.y), 2));
    assert_eq!(at(circle.centre), ("0.56".into(), "11.66".into()));
    let circle = marl_hen.largest_circle_without_tubes.unwrap();
    assert_eq!(inches(circle.diameter, 2), "29.94");
    assert_eq!(at(circle.centre), ("0.00".into(), "-1.91".into()));
    let circle = design(HOBTHRUSH).largest_circle.unwrap();
    assert_eq!(mm(circle.diameter, 1), "248.3");
    assert_eq!(mm(Length::mm(circle.centre.y), 1), "267.9");
}
