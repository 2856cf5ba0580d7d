//! Built-up areas, cracks and repairs of the flange's joint, each limit at itself and a hair beyond.

use centrepop::checks::Finding;
use centrepop::design::{AmongStays, HoleMade, LeftBy, RepairWork, as_made, set_out};
use centrepop::spec::Fault;
use centrepop::units::Size;

use super::{PLATE, below_by, designed, is, is_silent, judged, one};

const NAMED: (&str, &str) = ("judged_by: [", "judged_by: [46 CFR Part 59, ");

/// Eight stays, columns 6 in apart and rows 5 in: the stayed area is 18 × 5 in, from (−9, 8) to (9, 13).
const STAYS: &str = "\
holes:
  - {name: stays, purpose: stay, hole: 1 in, at: [[3 in, 8 in], [9 in, 8 in], [3 in, 13 in], [9 in, 13 in]], mirrored: true}
";

/// A plate of 100 in with four stays 40 in apart: the stayed area is 40 × 40 in.
const LARGE: [(&str, &str); 2] = [
    ("outside_diameter: 40 in", "outside_diameter: 100 in"),
    (
        "holes: []\n",
        "holes:\n  - {name: stays, purpose: stay, hole: 1 in, at: [[20 in, -20 in], [20 in, 20 in]], mirrored: true}\n",
    ),
];

fn repairs(list: &[String]) -> String {
    format!("repairs:\n{}holes: []\n", list.concat())
}

fn crack(name: &str, from: (f64, f64), to: (f64, f64)) -> String {
    format!(
        "  - {{name: {name}, weld: {{crack: {{from: [{} in, {} in], to: [{} in, {} in]}}}}}}\n",
        from.0, from.1, to.0, to.1
    )
}

fn area(name: &str, at: (f64, f64), words: &str) -> String {
    format!(
        "  - {{name: {name}, weld: {{build_up: {{at: [{} in, {} in], {words}}}}}}}\n",
        at.0, at.1
    )
}

/// What is found on the plate with its eight stays.
fn among_stays(list: &[String]) -> Vec<Finding> {
    let repairs = repairs(list);
    judged(&[("holes: []\n", &repairs), ("holes: []\n", STAYS), NAMED])
}

fn of(findings: &[Finding], source: &str) -> Vec<Finding> {
    let of = findings
        .iter()
        .filter(|f| f.rule == "weld_repair" && f.source.contains(source));
    of.cloned().collect()
}

/// 46 CFR 59.10: two of the least pitch, 5 in, are 10. Cracks of 4 and 6 are 10 in all and meet; 4 and 6 1/2 are 0.5 over, though
/// neither alone is.
#[test]
fn published_cracks_of_a_stayed_area_together() {
    let with = |end: f64| {
        among_stays(&[
            crack("upper", (-2.0, 12.0), (2.0, 12.0)),
            crack("lower", (-3.0, 10.0), (end, 10.0)),
        ])
    };
    let found = with(3.0);
    let all = one(&found, "weld_repair", "59.10", "upper, lower within stays");
    is(all, "meets", "10.0", "10.0");
    assert_eq!(all.working, ["2 p = 2 × 5 = 10 in", "cracks 4 + 6 = 10 in"]);
    for name in ["upper", "lower"] {
        let row = one(
            &found,
            "weld_repair",
            "59.10",
            &format!("{name}, outer row"),
        );
        is(row, "meets", "0", "0");
    }
    below_by(
        one(&with(3.5), "weld_repair", "59.10", "within stays"),
        "0.5",
    );
}

/// A crack that runs out over the outer row crosses it once, one right through twice, and is not counted with those inside.
#[test]
fn published_a_crack_across_the_outer_row() {
    let found = among_stays(&[crack("out", (0.0, 10.0), (0.0, 14.0))]);
    let row = one(&found, "weld_repair", "59.10", "out, outer row of stays");
    below_by(row, "1");
    assert!(
        row.why
            .contains("the outer row of stays; it must lie wholly inside"),
        "{}",
        row.why
    );
    assert!(!found.iter().any(|f| f.place.contains("within stays")));
    let found = among_stays(&[crack("through", (0.0, 6.0), (0.0, 14.0))]);
    below_by(one(&found, "weld_repair", "59.10", "through, outer"), "2");
}

/// Clear of stays: from a tube hole it may be welded and is noted; else no limit is known. T3 at (4, 0) has its edge at 5.03125.
#[test]
fn published_a_crack_clear_of_stays() {
    let found = among_stays(&[crack("free", (-3.0, -6.0), (3.0, -6.0))]);
    is_silent(
        one(&found, "weld_repair", "59.10", "free"),
        "no limit known to this program",
    );
    for start in [5.03125, 5.046, 5.016] {
        let found = among_stays(&[crack("ligament", (start, 0.0), (7.0, 0.0))]);
        let note = one(&found, "weld_repair", "59.10", "ligament");
        is(note, "note", "", "");
        assert!(note.why.ends_with("ground flush after: T3"), "{}", note.why);
    }
    let (design, _) = designed(&[(
        "holes: []\n",
        &repairs(&[crack("ligament", (5.03125, 0.0), (7.0, 0.0))]),
    )]);
    let repair = &design.repairs[0];
    assert_eq!(repair.holes_in_it, [2]);
    // The hole it starts from is left out of what it keeps clear of: T2 is next, 5.03125 − 1.03125 off. It ends 11 1/2 from the tangent.
    let (_, hole, metal) = repair.nearest[0];
    assert_eq!(
        (
            design.holes[hole].id.as_str(),
            format!("{:.4}", metal.to_inches())
        ),
        ("T2", "4.0000".into())
    );
    let (line, metal) = repair.to_end_of_flat.expect("a tangent");
    assert_eq!(
        (line.name(), format!("{:.3}", metal.to_inches())),
        ("tangent", "11.500".into())
    );
    assert_eq!(repair.among_stays, AmongStays::Clear);
}

/// Plate 1/2 in: 0.3 left is 40 % lost and meets, 0.29 is 42 %; `loss: 0.2 in` says the same as 0.3 left.
#[test]
fn published_loss_of_a_stayed_sheet() {
    let lost = |words: &str| {
        let found = among_stays(&[area(
            "wasted",
            (6.0, 10.5),
            &format!("width: 2 in, height: 3 in, {words}"),
        )]);
        one(&found, "weld_repair", "59.10", "wasted, thickness lost").clone()
    };
    is(&lost("metal_left: 0.3 in"), "meets", "40.0", "40.0");
    is(&lost("loss: 0.2 in"), "meets", "40.0", "40.0");
    below_by(&lost("metal_left: 0.29 in"), "2.0");
    assert_eq!(lost("loss: 0.2 in").working, ["(0.5 − 0.3)/0.5 = 40 %"]);
    let bare = among_stays(&[area("wasted", (6.0, 10.5), "width: 2 in, height: 3 in")]);
    is_silent(
        one(&bare, "weld_repair", "59.10", "thickness lost"),
        "`repairs[0].weld.build_up.metal_left` is not given, and no reading",
    );
    // 49 CFR 230.33 leaves it to practice.
    let note = &of(&bare, "230.33")[0];
    assert_eq!(
        (note.verdict.name(), note.place.as_str()),
        ("note", "wasted")
    );
    assert!(note.why.contains("no figure"), "{}", note.why);
}

/// 25 × 16 is 400 in² and meets, 25 × 16.1 is 2.5 over; 30 in one way meets, 30.1 is over by 0.1, whichever way it is.
#[test]
fn published_size_of_a_built_up_area() {
    let of_size = |width: f64, height: f64, what: &str| {
        let list = repairs(&[area(
            "wasted",
            (0.0, -10.0),
            &format!("width: {width} in, height: {height} in"),
        )]);
        let found = judged(&[("holes: []\n", &list), LARGE[0], LARGE[1], NAMED]);
        one(&found, "weld_repair", "59.10", &format!("wasted, {what}")).clone()
    };
    let size = of_size(25.0, 16.0, "area");
    is(&size, "meets", "400.0", "400.0");
    assert_eq!(size.working, ["area = 25 × 16 = 400 in²"]);
    below_by(&of_size(25.0, 16.1, "area"), "2.5");
    is(&of_size(30.0, 10.0, "one way"), "meets", "30.0", "30.0");
    below_by(&of_size(30.1, 10.0, "one way"), "0.1");
    let up = repairs(&[area("wasted", (-15.0, 0.0), "width: 4 in, height: 30.1 in")]);
    let found = judged(&[("holes: []\n", &up), LARGE[0], LARGE[1], NAMED]);
    below_by(one(&found, "weld_repair", "59.10", "one way"), "0.1");
}

/// Two areas of 2 in, from −16 to 14 is 30 in and meets, to 13.9 is 0.1 short; a third is one too many.
#[test]
fn published_built_up_areas_of_one_plate() {
    let with = |second: f64, third: bool| {
        let mut list = vec![
            area("left", (-17.0, -15.0), "width: 2 in, height: 2 in"),
            area("right", (second, -15.0), "width: 2 in, height: 2 in"),
        ];
        if third {
            list.push(area("upper", (15.0, 18.0), "width: 2 in, height: 2 in"));
        }
        judged(&[("holes: []\n", &repairs(&list)), LARGE[0], LARGE[1], NAMED])
    };
    let found = with(15.0, false);
    is(
        one(&found, "weld_repair", "59.10", "left to right"),
        "meets",
        "30.0",
        "30.0",
    );
    is(
        one(&found, "weld_repair", "59.10", "built-up areas"),
        "meets",
        "2",
        "2",
    );
    below_by(
        one(&with(14.9, false), "weld_repair", "59.10", "left to right"),
        "0.1",
    );
    let found = with(15.0, true);
    below_by(one(&found, "weld_repair", "59.10", "built-up areas"), "1");
    // Corner to corner: 30 across and from −14 to 17 up is 31: 43.139. Right to upper: 31 straight up.
    is(
        one(&found, "weld_repair", "59.10", "left to upper"),
        "meets",
        "43.139",
        "30.0",
    );
    is(
        one(&found, "weld_repair", "59.10", "right to upper"),
        "meets",
        "31.0",
        "30.0",
    );
    // Each two once, and none beside itself: three areas have three pairs.
    let pairs: Vec<&str> = found
        .iter()
        .filter(|f| f.why == "clear metal between two built-up areas")
        .map(|f| f.place.as_str())
        .collect();
    assert_eq!(pairs, ["left to right", "left to upper", "right to upper"]);
    // One alone is not counted, and an area clear of stays is no stayed sheet.
    let alone = judged(&[
        (
            "holes: []\n",
            &repairs(&[area("left", (-17.0, -15.0), "width: 2 in, height: 2 in")]),
        ),
        LARGE[0],
        LARGE[1],
    ]);
    assert!(
        !alone
            .iter()
            .any(|f| f.place == "built-up areas of stayed sheet")
    );
    let clear = [
        area("in", (0.0, -15.0), "width: 2 in, height: 2 in"),
        area("out", (0.0, -30.0), "width: 2 in, height: 2 in"),
    ];
    let found = judged(&[("holes: []\n", &repairs(&clear)), LARGE[0], LARGE[1]]);
    assert!(
        !found
            .iter()
            .any(|f| f.place == "built-up areas of stayed sheet" || f.place == "in to out")
    );
}

/// Stays in the area are renewed, other holes reamed; a plug stands in it too. One that has the outer row in it lies across.
#[test]
fn holds_holes_in_a_built_up_area_are_told() {
    let plug =
        STAYS.to_string() + "  - {name: plug, purpose: plug, hole: 1 in, at: [[0 in, 10 in]]}\n";
    let list = repairs(&[area("wasted", (0.0, 10.5), "width: 8 in, height: 4.5 in")]);
    let found = judged(&[("holes: []\n", &list), ("holes: []\n", &plug), NAMED]);
    let size = one(&found, "weld_repair", "59.10", "wasted, area");
    assert_eq!(
        size.why,
        "stays in it are renewed: S1, S2, S5, S6; holes are reamed after welding: W1"
    );
    // 8.25 lies 0.39 inside the stays' edges at 8.5; at 8.75 they are clear, so that only the plug is in it.
    let list = repairs(&[area("wasted", (0.0, 10.5), "width: 8 in, height: 3.5 in")]);
    let found = judged(&[("holes: []\n", &list), ("holes: []\n", &plug), NAMED]);
    let size = one(&found, "weld_repair", "59.10", "wasted, area");
    assert_eq!(size.why, "holes are reamed after welding: W1");
    for words in ["width: 4 in, height: 4 in", "width: 20 in, height: 7 in"] {
        let at = if words.starts_with("width: 4") {
            (9.0, 10.5)
        } else {
            (0.0, 10.5)
        };
        let found = among_stays(&[area("wasted", at, words)]);
        is_silent(
            one(&found, "weld_repair", "59.10", "wasted"),
            "across the outer row of stays",
        );
        assert!(
            found
                .iter()
                .any(|f| f.place == "wasted, area, without leave")
        );
    }
}

const SURVEY: &str = "survey:\n  date: \"2026-11-02\"\n  instrument: gauge 7\n  required: [{region: flat, thickness: 0.4 in, origin: works}]\n  readings: []\n";

/// What 49 CFR 230.33 has to say of an area below the tubes.
fn unstayed(words: &str, survey: &str) -> Vec<Finding> {
    let list = survey.to_string() + &repairs(&[area("wasted", (0.0, -10.0), words)]);
    of(&judged(&[("holes: []\n", &list), NAMED]), "230.33")
}

/// 10 × 10 is 100 in²; a quarter of 0.4 in is 0.1 to be laid, 0.5 − 0.4; 0.6 × 0.4 = 0.24 must be left. Each limit meets; 0.1 in wider,
/// 0.01 less left, 0.2 left are over.
#[test]
fn published_a_built_up_unstayed_area() {
    let found = unstayed("width: 10 in, height: 10 in, metal_left: 0.4 in", SURVEY);
    is(&found[0], "meets", "100.0", "100.0");
    is(&found[1], "meets", "0.100", "0.100");
    is(&found[2], "meets", "0.400", "0.240");
    assert_eq!(
        found[1].working,
        [
            "smaller of 0.25 × 0.4 = 0.1 in and 0.5 in",
            "laid 0.5 − 0.4 = 0.1 in"
        ]
    );
    assert_eq!(found[2].working, ["0.60 × 0.4 = 0.24 in; left 0.4 in"]);
    let found = unstayed("width: 10 in, height: 10.1 in, metal_left: 0.39 in", SURVEY);
    below_by(&found[0], "1.0");
    below_by(&found[1], "0.01");
    let found = unstayed("width: 10 in, height: 10 in, metal_left: 0.2 in", SURVEY);
    below_by(&found[2], "0.04");
    // π/4 × 4² = 12.566.
    let round = unstayed("diameter: 4 in, metal_left: 0.4 in", SURVEY);
    is(&round[0], "meets", "12.566", "100");
    assert!(
        round[0].working[0].starts_with("area = π/4 × 4² = 12.566"),
        "{:?}",
        round[0].working
    );
    // 46 CFR 59.10 is for stayed sheet.
    let list = repairs(&[area("wasted", (0.0, -10.0), "diameter: 4 in")]);
    let found = judged(&[("holes: []\n", &list), NAMED]);
    is_silent(
        one(&found, "weld_repair", "59.10", "wasted"),
        "limits are those of a stayed sheet",
    );
}

/// Of two regions the least decides what may be laid, 0.25 × 0.4, and the most what must be left, 0.6 × 0.45. A region beside the area
/// decides nothing.
#[test]
fn by_hand_an_area_over_two_regions() {
    let regions = "[{region: left, thickness: 0.4 in, origin: works, from: [-20 in, -20 in], to: [0 in, 0 in]}, {region: right, thickness: 0.45 in, origin: works, from: [20 in, 0 in], to: [0 in, -20 in]}, {region: upper, thickness: 0.2 in, origin: works, from: [-20 in, 5 in], to: [20 in, 20 in]}]";
    let survey = SURVEY.replace(
        "[{region: flat, thickness: 0.4 in, origin: works}]",
        regions,
    );
    let found = unstayed("width: 2 in, height: 2 in, metal_left: 0.42 in", &survey);
    is(&found[1], "meets", "0.080", "0.100");
    is(&found[2], "meets", "0.420", "0.270");
    // Off to the right only the right one counts: 0.25 × 0.45.
    let list = survey
        + &repairs(&[area(
            "wasted",
            (3.0, -10.0),
            "width: 2 in, height: 2 in, metal_left: 0.42 in",
        )]);
    let found = of(&judged(&[("holes: []\n", &list)]), "230.33");
    is(&found[1], "meets", "0.080", "0.1125");
}

/// Without the required thickness, and without what is left, nothing is compared, and the key that would settle it is named. A reading
/// in the area tells what is left, the least of them.
#[test]
fn holds_a_built_up_area_names_the_key_that_it_wants() {
    let found = unstayed("diameter: 4 in, metal_left: 0.4 in", "");
    is_silent(&found[1], "`survey.required` says nothing");
    is_silent(&found[2], "`survey.required` says nothing");
    let found = unstayed("diameter: 4 in", SURVEY);
    is_silent(
        &found[1],
        "`repairs[0].weld.build_up.metal_left` is not given",
    );
    is_silent(&found[2], "no reading of the survey stands in the area");
    let readings = "readings:\n    - {at: [0 in, -11 in], thickness: 0.43 in}\n    - {at: [1 in, -10 in], thickness: 0.41 in}\n    - {at: [6 in, -10 in], thickness: 0.3 in}\n";
    let survey = SURVEY.replace("readings: []\n", readings);
    let found = unstayed("diameter: 4 in", &survey);
    is(&found[2], "meets", "0.410", "0.240");
    assert!(
        found[2].why.contains("by reading 2, the least in the area"),
        "{}",
        found[2].why
    );
    let list = survey + &repairs(&[area("wasted", (0.0, -10.0), "diameter: 4 in")]);
    let (design, _) = designed(&[("holes: []\n", &list)]);
    assert!(matches!(
        design.repairs[0].work,
        RepairWork::BuildUp {
            left: Some((_, LeftBy::Reading(2))),
            ..
        }
    ));
}

const RIVETS: &str = "barrel: {bore: 40 in, thickness: 1/2 in}\nrivets: {rivet: 3/4 in, hole: 13/16 in, count: 60, from_edge: 1 1/4 in, bottom_centre: on a hole}\n";

/// 46 CFR 59.10: three cracks in a run and six in all meet, four and seven are one too many.
#[test]
fn published_cracks_of_the_girth_joint() {
    let with = |run: u32, all: u32| {
        let list = repairs(&[format!(
            "  - {{name: joint, weld: {{girth_cracks: {{longest_run: {run}, in_all: {all}}}}}}}\n"
        )]);
        of(&judged(&[("holes: []\n", &list), NAMED]), "59.10")
    };
    let found = with(3, 6);
    assert_eq!(found.len(), 2);
    is(&found[0], "meets", "3", "3");
    is(&found[1], "meets", "6", "6");
    assert_eq!(
        (found[0].place.as_str(), found[1].place.as_str()),
        ("joint, longest run", "joint, in all")
    );
    let found = with(4, 7);
    below_by(&found[0], "1");
    below_by(&found[1], "1");
    assert_eq!(found[1].working, ["7 cracks, at most 6"]);
}

/// A quarter of 13/16 is 0.203125 in: that left meets, 0.2 is 0.0031 short; 30 in long meets, 30.5 is half an inch over.
#[test]
fn published_a_caulking_edge() {
    let with = |words: &str, rivets: &str| {
        let list = rivets.to_string()
            + &repairs(&[format!(
                "  - {{name: edge, weld: {{caulking_edge: {{{words}}}}}}}\n"
            )]);
        of(&judged(&[("holes: []\n", &list), NAMED]), "59.10")
    };
    let found = with("length: 30 in, metal_left: 0.203125 in", RIVETS);
    is(&found[0], "meets", "30.0", "30.0");
    is(&found[1], "meets", "0.2031", "0.2031");
    assert_eq!(
        found[1].working,
        ["d/4 = 0.8125/4 = 0.203125 in; left 0.203125 in"]
    );
    let found = with("length: 30.5 in, metal_left: 0.2 in", RIVETS);
    below_by(&found[0], "0.5");
    below_by(&found[1], "0.0031");
    is_silent(
        &with("length: 30 in", RIVETS)[1],
        "`repairs[0].weld.caulking_edge.metal_left`",
    );
    is_silent(
        &with("length: 30 in, metal_left: 1/4 in", "")[1],
        "`rivets` is not given",
    );
}

/// Not among the job's rules its limits are notes; a plate without repairs is not spoken of.
#[test]
fn holds_limits_judge_only_where_they_are_named() {
    let list = repairs(&[crack("out", (0.0, 10.0), (0.0, 14.0))]);
    let found = judged(&[("holes: []\n", &list), ("holes: []\n", STAYS)]);
    assert_eq!(
        one(&found, "weld_repair", "59.10", "out").verdict.name(),
        "note"
    );
    assert!(!judged(&[]).iter().any(|f| f.rule == "weld_repair"));
}

/// The faults of a list of repairs, in reading or in setting out.
fn faults(list: &[String]) -> Vec<Fault> {
    let text = PLATE.replace("holes: []\n", &(RIVETS.to_string() + &repairs(list)));
    match super::read(&text) {
        Err(faults) => faults.faults,
        Ok(spec) => set_out(&spec)
            .map(|_| Vec::new())
            .unwrap_or_else(|faults| faults),
    }
}

fn says(list: &[String], path: &str, fact: &str) {
    let faults = faults(list);
    assert_eq!(faults.len(), 1, "{faults:?}");
    assert_eq!(
        (faults[0].path.as_str(), faults[0].fact.as_str()),
        (path, fact)
    );
    assert!(!faults[0].remedy.is_empty());
}

/// T3 at (4, 0) with a radius of 1.03125: a crack that ends 1/32 in inside is through it, 1/64 is as near as a place is read. Level at y
/// 0.5 it passes two holes, 0.53125 into each.
#[test]
fn refuses_a_crack_through_a_hole() {
    says(
        &[crack("c", (5.0, 0.0), (8.0, 0.0))],
        "repairs[0].weld.crack",
        "the weld runs through tube T3 at (4, 0) in, 0.031 in into it",
    );
    assert!(faults(&[crack("c", (5.016, 0.0), (8.0, 0.0))]).is_empty());
    says(
        &[crack("c", (-6.0, 0.5), (2.0, 0.5))],
        "repairs[0].weld.crack",
        "the weld runs through tube T1 at (-4, 0) in, 0.531 in into it, and 1 hole more",
    );
    says(
        &[crack("c", (-6.0, 0.5), (6.0, 0.5))],
        "repairs[0].weld.crack",
        "the weld runs through tube T1 at (-4, 0) in, 0.531 in into it, and 2 holes more",
    );
}

/// The flat ends at 18 1/2, the plate at 20.
#[test]
fn refuses_a_repair_off_the_flat() {
    says(
        &[crack("c", (0.0, -15.0), (0.0, -19.0))],
        "repairs[0].weld.crack",
        "the weld runs onto the heel, where the face shows no true length, by 0.5 in",
    );
    says(
        &[crack("c", (0.0, -15.0), (0.0, -21.0))],
        "repairs[0].weld.crack",
        "the weld runs off the plate, by 1 in",
    );
    says(
        &[area("a", (0.0, -16.0), "diameter: 6 in")],
        "repairs[0].weld.build_up",
        "the weld runs onto the heel, where the face shows no true length, by 0.5 in",
    );
    assert!(faults(&[area("a", (0.0, -15.5), "diameter: 6 in")]).is_empty());
    says(
        &[crack("c", (1.0, -5.0), (1.0, -5.0))],
        "repairs[0].weld.crack.to",
        "the crack ends where it starts",
    );
}

#[test]
fn refuses_sizes_that_contradict_one_another() {
    let key = |key: &str| format!("repairs[0].weld.build_up{key}");
    let cases = [
        (
            "width: 2 in",
            "",
            "the area has no one size: a box has a width and a height, a round area a diameter",
        ),
        (
            "width: 2 in, height: 2 in, diameter: 2 in",
            "",
            "the area has no one size: a box has a width and a height, a round area a diameter",
        ),
        (
            "diameter: 0 in",
            ".diameter",
            "0 in is no size: it is not above nothing",
        ),
        (
            "width: -2 in, height: 2 in",
            ".width",
            "-2 in is no size: it is not above nothing",
        ),
        (
            "diameter: 2 in, loss: 0.1 in, metal_left: 0.4 in",
            ".loss",
            "both the metal left and the metal lost are written, and one follows from the other",
        ),
        (
            "diameter: 2 in, metal_left: 0.6 in",
            ".metal_left",
            "0.6 in of a plate that was made 1/2 in thick",
        ),
        (
            "diameter: 2 in, loss: 0.6 in",
            ".loss",
            "0.6 in of a plate that was made 1/2 in thick",
        ),
        (
            "diameter: 2 in, loss: -0.1 in",
            ".loss",
            "-0.1 in is below nothing",
        ),
    ];
    for (words, below, fact) in cases {
        says(&[area("a", (0.0, -10.0), words)], &key(below), fact);
    }
    assert!(faults(&[area("a", (0.0, -10.0), "diameter: 2 in, loss: 0.5 in")]).is_empty());
    let same = [
        crack("c", (0.0, -5.0), (1.0, -5.0)),
        crack("c", (0.0, -7.0), (1.0, -7.0)),
    ];
    says(&same, "repairs[1].name", "two repairs are called `c`");
    let weld = |words: &str| vec![format!("  - {{name: w, weld: {{{words}}}}}\n")];
    for (run, all) in [(0, 2), (3, 2)] {
        says(
            &weld(&format!(
                "girth_cracks: {{longest_run: {run}, in_all: {all}}}"
            )),
            "repairs[0].weld.girth_cracks.longest_run",
            &format!("the longest run is {run} of {all} cracks in all"),
        );
    }
    says(
        &weld("caulking_edge: {length: 0 in}"),
        "repairs[0].weld.caulking_edge.length",
        "0 in is no size: it is not above nothing",
    );
    says(
        &weld("caulking_edge: {length: 1 in, metal_left: -1 mm}"),
        "repairs[0].weld.caulking_edge.metal_left",
        "-1 mm is below nothing",
    );
}

/// T2 bored 1/4 in larger stands 1/8 in nearer: 4 − 0.125; the hole that the crack starts from is still left out.
#[test]
fn by_hand_a_repair_beside_holes_as_made() {
    let text = PLATE.replace(
        "holes: []\n",
        &repairs(&[crack("ligament", (5.03125, 0.0), (7.0, 0.0))]),
    );
    let spec = super::read(&text).unwrap_or_else(|f| panic!("{f}"));
    let design = set_out(&spec).unwrap_or_else(|faults| panic!("{faults:?}"));
    let made = HoleMade {
        hole: 1,
        sized: true,
        first_way: Size::read("2 5/16 in").expect("a size"),
        across: None,
        at: None,
    };
    let plate = as_made(&spec.written, &design, &[made]);
    let (_, hole, metal) = plate.repairs[0].nearest[0];
    assert_eq!(
        (hole, format!("{:.4}", metal.to_inches())),
        (1, "3.8750".into())
    );
}
