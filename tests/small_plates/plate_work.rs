//! Mouths turned out of the plate, and roof girders that bear on it.

use centrepop::checks::{Finding, run_checks};
use centrepop::cut::cut_parts;
use centrepop::design::set_out;
use centrepop::spec::{Faults, RoofGirders, SidePlates, Spec, ViewFrom, read_spec};
use centrepop::units::{Size, Strength};

use super::{PLATE, below_by, is, is_silent, judged, one};

const MOUTH: &str = "\
holes:
  - {name: mouth, purpose: fitting, hole: 12 in, at: [[0 in, 10 in]], flanged_mouth: {towards: firebox, depth: 2 1/2 in}}
";

/// √(0.5 × 12) = 2.449490 in: 2 1/2 is 0.0505 in over, 2.4 is 0.0495 short. The figure is that of `by_hand_twelve_inch_mouth`.
#[test]
fn by_hand_a_mouth_in_a_plate() {
    let found = judged(&[("holes: []\n", MOUTH)]);
    let mouth = one(&found, "flanged_mouth", "201", "mouth X1");
    is(mouth, "meets", "2.5000", "2.4495");
    assert_eq!(
        mouth.working,
        [
            "depth ≥ √(T W) = √(0.5 × 12) = 2.44949 in",
            "provided 2.5 in"
        ]
    );
    let shallow = MOUTH.replace("2 1/2 in", "2.4 in");
    let found = judged(&[("holes: []\n", &shallow)]);
    below_by(one(&found, "flanged_mouth", "", ""), "0.0495");
    // The thickness as written: less an allowance of 1/8 it would ask √(0.375 × 12) = 2.1213 in only.
    let lost = "thickness: 1/2 in\n  corrosion_allowance: {size: 1/8 in, origin: works}";
    let found = judged(&[("holes: []\n", MOUTH), ("thickness: 1/2 in", lost)]);
    is(one(&found, "flanged_mouth", "", ""), "meets", "", "2.4495");
}

/// Without its depth the mouth is not judged; a plate without a mouth is not spoken of.
#[test]
fn holds_a_mouth_names_the_key_that_it_wants() {
    let bare = MOUTH.replace(", depth: 2 1/2 in", "");
    let found = judged(&[("holes: []\n", &bare)]);
    is_silent(
        one(&found, "flanged_mouth", "", ""),
        "`holes[0].flanged_mouth.depth`",
    );
    let plain = MOUTH.replace(", flanged_mouth: {towards: firebox, depth: 2 1/2 in}", "");
    let found = judged(&[("holes: []\n", &plain)]);
    assert!(!found.iter().any(|f| f.rule == "flanged_mouth"));
}

fn faults_of(text: &str) -> Faults {
    read_spec("plate.yaml", text.as_bytes()).expect_err("a contradiction")
}

#[test]
fn refuses_a_mouth_of_no_depth_or_round_a_stay() {
    for depth in ["0 in", "-2 in"] {
        let text = PLATE.replace("holes: []\n", &MOUTH.replace("2 1/2 in", depth));
        let faults = faults_of(&text).faults;
        assert_eq!(faults[0].path, "holes[0].flanged_mouth.depth");
        assert_eq!(
            faults[0].fact,
            format!("{depth} is no depth of a mouth: it is not above nothing")
        );
    }
    for purpose in ["stay", "bolt"] {
        let text = PLATE.replace("holes: []\n", &MOUTH.replace("fitting", purpose));
        let faults = faults_of(&text).faults;
        assert_eq!(faults.len(), 1, "{faults:?}");
        assert_eq!(
            (faults[0].path.as_str(), faults[0].fact.clone()),
            (
                "holes[0].flanged_mouth",
                format!("a mouth is turned out round an opening, and this is a {purpose} hole")
            )
        );
        assert_eq!(
            faults[0].remedy,
            "leave out the mouth, or look again at the purpose"
        );
    }
}

const FLAT: [(&str, &str); 1] = [(
    "flange:\n  pressed: {towards: smokebox, outside_diameter: 40 in, heel_radius_inside: 1 in, straight: 2 in, trim: 1/2 in}\n",
    "outline: {round: {diameter: 40 in}}\ncutting: {process: waterjet, origin: works, holes: [{purpose: fitting, cut: undersize, under: 2 mm}, {purpose: tube, cut: undersize, under: 2 mm}]}\n",
)];

/// What is cut of the plate, and what is not and why.
fn cut_and_withheld(changes: &[(&str, &str)]) -> (Vec<String>, Vec<(String, String)>) {
    let mut text = PLATE.replace(
        "support: {flange_line: tangent",
        "support: {flange_line: edge",
    );
    for (from, to) in FLAT.iter().chain(changes) {
        assert!(text.contains(from), "{from}");
        text = text.replacen(from, to, 1);
    }
    let spec = read_spec("plate.yaml", text.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"));
    let design = set_out(&spec).unwrap_or_else(|faults| panic!("{faults:?}"));
    let parts = cut_parts(&spec, &design).unwrap_or_else(|faults| panic!("{faults:?}"));
    let cut = parts[0]
        .holes_cut
        .iter()
        .flat_map(|holes| holes.ids.clone());
    let not = parts[0].withheld.iter();
    (
        cut.collect(),
        not.map(|w| (w.ids.join(" "), format!("{}: {}", w.instead, w.reason)))
            .collect(),
    )
}

/// The same hole is cut where it has no mouth, and popped where it has one; tubes beside it are cut either way.
#[test]
fn holds_a_mouth_is_not_cut_to_size() {
    let (cut, not) = cut_and_withheld(&[("holes: []\n", MOUTH)]);
    assert_eq!(cut, ["T1", "T2", "T3"]);
    assert_eq!(not.len(), 1);
    assert_eq!(not[0].0, "X1");
    assert!(
        not[0].1.starts_with("a pop: its mouth is turned out"),
        "{not:?}"
    );
    let plain = MOUTH.replace(", flanged_mouth: {towards: firebox, depth: 2 1/2 in}", "");
    let (cut, not) = cut_and_withheld(&[("holes: []\n", &plain)]);
    assert_eq!((cut.len(), not.len()), (4, 0));
    // A policy that leaves such holes alone leaves the mouth alone too.
    let nothing = (
        "cut: undersize, under: 2 mm}, {purpose: tube",
        "cut: nothing}, {purpose: tube",
    );
    let (_, not) = cut_and_withheld(&[("holes: []\n", MOUTH), nothing]);
    assert!(not[0].1.starts_with("nothing: the works leaves"), "{not:?}");
}

/// A pressed blank has no hole at all; a mouth is told apart in the reason.
#[test]
fn holds_a_mouth_in_a_pressed_blank_has_its_own_reason() {
    let text = PLATE.replace("holes: []\n", MOUTH) + "cutting: {process: plasma, origin: works}\n";
    let spec = read_spec("plate.yaml", text.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"));
    let design = set_out(&spec).unwrap_or_else(|faults| panic!("{faults:?}"));
    assert_eq!(
        design.groups[1].mouth.as_ref().expect("a mouth").towards,
        ViewFrom::Firebox
    );
    let parts = cut_parts(&spec, &design).unwrap_or_else(|faults| panic!("{faults:?}"));
    let reasons: Vec<(String, bool)> = parts[0]
        .withheld
        .iter()
        .map(|w| (w.ids.join(" "), w.reason.contains("flanged after forming")))
        .collect();
    assert_eq!(
        reasons,
        [("T1 T2 T3".to_string(), false), ("X1".to_string(), true)]
    );
}

#[test]
fn refuses_roof_girders_on_a_smokebox_plate() {
    let text = PLATE.to_string() + "roof_girders: {firebox_length: 36 in, origin: old drawing}\n";
    let faults = faults_of(&text);
    let fault = &faults.faults[0];
    assert_eq!(fault.path, "roof_girders");
    assert!(
        fault.fact.ends_with("and this is a smokebox tube plate"),
        "{}",
        fault.fact
    );
    assert_eq!(fault.remedy, "leave `roof_girders` out of this spec");
    assert_eq!(fault.also[0].0, "plate.kind");
    assert_eq!(faults.faults.len(), 1);
}

/// Three tubes in a row at 2 1/2 in, 2 in outside with a wall of 1/4: bore 1 1/2; plate 5/8.
const NEST: [(&str, &str); 4] = [
    (
        "points: [[-4 in, 0 in], [0 in, 0 in], [4 in, 0 in]]",
        "points: [[-2 1/2 in, 0 in], [0 in, 0 in], [2 1/2 in, 0 in]]",
    ),
    (
        "    hole: 2 1/16 in",
        "    hole: 2 1/16 in\n    wall: 1/4 in",
    ),
    ("thickness: 1/2 in", "thickness: 5/8 in"),
    ("judged_by: [", "judged_by: [roof_girders, "),
];

/// What the rule finds on a plate on which roof girders are said to bear, past the sense that refuses them on this kind of plate.
fn under_girders(girders: RoofGirders, changes: &[(&str, &str)]) -> Vec<Finding> {
    let mut text = PLATE.to_string();
    for (from, to) in NEST.iter().chain(changes) {
        assert!(text.contains(from), "the plate does not hold `{from}`");
        text = text.replacen(from, to, 1);
    }
    let mut spec: Spec =
        read_spec("plate.yaml", text.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"));
    spec.written.roof_girders = Some(girders);
    let design = set_out(&spec).unwrap_or_else(|faults| panic!("{faults:?}"));
    let found = run_checks(&spec, &design).into_iter();
    found.filter(|f| f.rule == "roof_girders").collect()
}

fn girders() -> RoofGirders {
    RoofGirders {
        firebox_length: Size::read("36 in").expect("a length"),
        origin: "old drawing".into(),
        side_plates: None,
    }
}

/// 875 × (2.5 − 1.5) × 20/(36 × 2.5) = 194.4 psi, as beside the formula. At 200 psi it is 5.6 short.
#[test]
fn by_hand_a_plate_under_roof_girders() {
    let found = under_girders(girders(), &[]);
    assert_eq!(found.len(), 1);
    is(&found[0], "meets", "194.4", "100");
    assert_eq!(
        found[0].working,
        [
            "t = 0.625 × 32 = 20 32nds",
            "WP = 875 (P − D) t/(L P) = 875 × (2.5 − 1.5) × 20/(36 × 2.5) = 194.4 psi",
        ]
    );
    assert_eq!(
        found[0].why,
        "girders bear on the plate by old drawing; pitch along the row"
    );
    let found = under_girders(girders(), &[("100 psi", "200 psi")]);
    below_by(&found[0], "5.6");
    // Less an allowance of 1/16 the plate is 18 32nds: 175.0.
    let lost = "thickness: 5/8 in\n  corrosion_allowance: {size: 1/16 in, origin: works}";
    let found = under_girders(girders(), &[("thickness: 5/8 in", lost)]);
    is(&found[0], "meets", "175.0", "");
    // A firebox half as long again, 54 in: 129.6.
    let long = RoofGirders {
        firebox_length: Size::read("54 in").expect("a length"),
        ..girders()
    };
    is(&under_girders(long, &[])[0], "meets", "129.6", "");
}

/// Zig-zag: rows at 2 1/2 in with one hole 2 in above midway: the slant is √(1.25² + 2²) = 2.358495; 875 × 0.858495 × 20/(36 ×
/// 2.358495) = 176.9. A hole straight above at 2 1/4 is no pitch of the rule's: 194.4. One tube stands in no row.
#[test]
fn by_hand_the_smaller_pitch() {
    let points = |more: &str| format!("points: [[-2 1/2 in, 0 in], [0 in, 0 in], {more}]]");
    let with = |more: &str| {
        let all = points(more);
        under_girders(
            girders(),
            &[(
                "points: [[-2 1/2 in, 0 in], [0 in, 0 in], [2 1/2 in, 0 in]]",
                all.as_str(),
            )],
        )
    };
    let slant = with("[1.25 in, 2 in");
    is(&slant[0], "meets", "176.9", "");
    assert!(
        slant[0].why.ends_with("pitch along the diagonal"),
        "{}",
        slant[0].why
    );
    is(&with("[0 in, 2 1/4 in")[0], "meets", "194.4", "");
    let found = under_girders(
        girders(),
        &[(
            "points: [[-2 1/2 in, 0 in], [0 in, 0 in], [2 1/2 in, 0 in]]",
            "points: [[0 in, 0 in]]",
        )],
    );
    is_silent(&found[0], "stand in no row");
}

/// Nothing of the formula is guessed: what is wanting is named. Flues and other metals are not the rule's.
#[test]
fn holds_roof_girders_name_the_key_that_they_want() {
    for (change, key) in [
        (("\n    wall: 1/4 in", ""), "`tubes[0].wall`"),
        (
            ("working_pressure: 100 psi\n", ""),
            "pressure not given: `working_pressure`",
        ),
        (
            ("metal: steel", "metal: copper"),
            "`plate.material.metal` is copper",
        ),
        (
            ("  - name: tubes\n", "  - name: tubes\n    purpose: flue\n"),
            "these are flues",
        ),
    ] {
        is_silent(&under_girders(girders(), &[change])[0], key);
    }
    // Not among the job's rules it is a note.
    let unnamed = [
        ("judged_by: [roof_girders, ", "judged_by: ["),
        ("Indian Boiler Regulations 1950, ", ""),
    ];
    is(&under_girders(girders(), &unnamed)[0], "note", "194.4", "");
}

/// 14,000 psi at most: the limit itself meets, 1 psi more is below; the pressure has nothing to say, so that it may be wanting.
#[test]
fn published_compression_where_side_plates_share() {
    let shared = |compression: Option<&str>| RoofGirders {
        side_plates: Some(SidePlates {
            compression: compression.map(|psi| Strength::read(psi).expect("a stress")),
            origin: "works' designer".into(),
        }),
        ..girders()
    };
    let found = under_girders(
        shared(Some("14000 psi")),
        &[("working_pressure: 100 psi\n", "")],
    );
    assert_eq!(found.len(), 1);
    is(&found[0], "meets", "14000", "14000");
    assert_eq!(
        found[0].working,
        ["nominal compression 14000 psi = 14,000 psi, at most 14,000 psi"]
    );
    below_by(&under_girders(shared(Some("14001 psi")), &[])[0], "1");
    is_silent(
        &under_girders(shared(None), &[])[0],
        "`roof_girders.side_plates.compression`",
    );
    is_silent(
        &under_girders(
            shared(Some("12000 psi")),
            &[("metal: steel", "metal: copper")],
        )[0],
        "copper",
    );
}
