//! Weld lines: how they run, what they cut off, and what they may not run through.

use centrepop::design::{Design, Edge, Repair, set_out};
use centrepop::spec::Fault;

use super::{PLATE, below_by, is, judged, one};

/// The plate flat, its edge at 20 in.
const FLAT: [(&str, &str); 2] = [
    (
        "flange:\n  pressed: {towards: smokebox, outside_diameter: 40 in, heel_radius_inside: 1 in, straight: 2 in, trim: 1/2 in}\n",
        "outline: {round: {diameter: 40 in}}\n",
    ),
    ("flange_line: tangent", "flange_line: edge"),
];

/// 60 rivets at 6°, in a row 3/4 in from where the straight begins.
const RIVETS: &str = "barrel: {bore: 40 in, thickness: 1/2 in}\nrivets: {rivet: 3/4 in, hole: 13/16 in, count: 60, from_edge: 1 1/4 in, bottom_centre: on a hole}\n";

fn a_line(start: &str, steps: &[&str], more: &str) -> String {
    let steps: String = steps
        .iter()
        .map(|step| format!("          - {{{step}}}\n"))
        .collect();
    let steps = if steps.is_empty() {
        "          []\n".into()
    } else {
        steps
    };
    format!(
        "repairs:\n  - name: line\n    weld:\n      line:\n        start: [{start}]\n        steps:\n{steps}{more}"
    )
}

fn set_out_with(changes: &[(&str, &str)], line: &str) -> Result<Design, Vec<Fault>> {
    let mut text = PLATE.to_string();
    for (from, to) in changes {
        assert!(text.contains(from), "the plate does not hold `{from}`");
        text = text.replacen(from, to, 1);
    }
    text.push_str(line);
    let spec = super::read(&text).unwrap_or_else(|f| panic!("{f}"));
    set_out(&spec)
}

#[track_caller]
fn laid(changes: &[(&str, &str)], line: &str) -> Repair {
    let design = set_out_with(changes, line).unwrap_or_else(|faults| panic!("{faults:?}"));
    design.repairs[0].clone()
}

#[track_caller]
fn refused(changes: &[(&str, &str)], line: &str, path: &str, fact: &str) -> Fault {
    let faults = set_out_with(changes, line).expect_err(fact);
    assert_eq!(faults.len(), 1, "{faults:?}");
    let path = format!("repairs[0].weld.line{path}");
    assert_eq!(
        (faults[0].path.as_str(), faults[0].fact.as_str()),
        (path.as_str(), fact)
    );
    faults[0].clone()
}

fn inches(repair: &Repair) -> (String, String) {
    let print = |inches: f64| format!("{inches:.3}");
    (
        print(repair.flat_length.to_inches()),
        print(repair.length.to_inches()),
    )
}

fn area(repair: &Repair) -> String {
    let mm2 = repair.renews.as_ref().map_or(0.0, |area| area.area_mm2());
    format!("{:.3}", mm2 / 645.16)
}

const BOX: [&str; 4] = [
    "to: [4 in, -10 in], corner_radius: 1 in",
    "to: [4 in, -4 in], corner_radius: 1 in",
    "to: [-4 in, -4 in], corner_radius: 1 in",
    "to: [-4 in, -10 in], corner_radius: 1 in",
];
const LET_IN: &str = "        let_in: true\n";

/// 8 × 6 with corners of 1: area 48 − (4 − π) = 47.142, girth 28 − 8 + 2π = 26.283. To T1 to T3 at y 0, radius 1.03125: 4 − 1.03125.
#[test]
fn by_hand_a_closed_line() {
    let repair = laid(&[], &a_line("-4 in, -10 in", &BOX, LET_IN));
    assert_eq!(area(&repair), "47.142");
    assert_eq!(inches(&repair), ("26.283".into(), "26.283".into()));
    assert!(repair.crossings.is_empty() && repair.rivets_in_it.is_empty());
    assert_eq!(format!("{:.4}", repair.nearest[0].2.to_inches()), "2.9688");
    // Its lower corners' arcs are furthest out: centre (3, −9), √90 + 1 = 10.487: 18.5 − 10.487.
    let (_, metal) = repair.to_end_of_flat.expect("a tangent");
    assert_eq!(format!("{:.3}", metal.to_inches()), "8.013");
    // Without a piece let in it is a weld, and renews nothing.
    let repair = laid(&[], &a_line("-4 in, -10 in", &BOX, ""));
    assert!(repair.renews.is_none());
    assert_eq!(inches(&repair).0, "26.283");
}

/// A line by itself: 3 straight, a half circle of radius 2 through (5, −6): 3 + 2π.
#[test]
fn by_hand_an_open_line() {
    let steps = [
        "to: [3 in, -4 in]",
        "to: [3 in, -8 in], through: [5 in, -6 in]",
    ];
    let repair = laid(&[], &a_line("0 in, -4 in", &steps, ""));
    assert_eq!(inches(&repair).0, "9.283");
    assert_eq!(repair.weld.len(), 2);
    assert!(matches!(repair.weld[1], Edge::Arc { .. }));
}

/// Level at y −12 from edge to edge of a disc of 20: chord 2 × 16 = 32; the segment below it, 20² × acos 0.6 − 12 × 16 = 400 × 0.927295
/// − 192 = 178.918 in². Ends written a hair inside and outside are taken to the edge.
#[test]
fn by_hand_a_piece_let_in_at_the_edge_of_a_flat_plate() {
    for (start, end) in [("-16", "16"), ("-15.99", "16.01")] {
        let steps = [format!("to: [{end} in, -12 in]")];
        let repair = laid(
            &FLAT,
            &a_line(&format!("{start} in, -12 in"), &[&steps[0]], LET_IN),
        );
        assert_eq!(inches(&repair).0, "32.000");
        assert_eq!(area(&repair), "178.918");
        assert_eq!(repair.weld.len(), 1);
    }
    // Walked the other way it cuts off the same.
    let repair = laid(
        &FLAT,
        &a_line("16 in, -12 in", &["to: [-16 in, -12 in]"], LET_IN),
    );
    assert_eq!(area(&repair), "178.918");
    // The smaller part is new, above the line too.
    let repair = laid(
        &FLAT,
        &a_line("16 in, 12 in", &["to: [-16 in, 12 in]"], LET_IN),
    );
    assert_eq!(area(&repair), "178.918");
    assert!(
        repair
            .renews
            .as_ref()
            .expect("new metal")
            .depth(centrepop::design::Point::new(0.0, 400.0))
            > 0.0
    );
    // A quarter of the disc off: 1/4 of it is on either hand of the right angle, and the corner is the centre's: T2 stands there.
    let corner = laid(
        &[FLAT[0], FLAT[1], ("[0 in, 0 in], ", "")],
        &a_line(
            "0 in, -20 in",
            &["to: [0 in, 0 in]", "to: [20 in, 0 in]"].map(|s| {
                if s.contains("20 in, 0") {
                    "to: [14.142136 in, -14.142136 in]"
                } else {
                    s
                }
            }),
            LET_IN,
        ),
    );
    // An eighth: 400 π/8.
    assert_eq!(area(&corner), "157.080");
}

/// An end that is an arc is carried on by a straight hair: 20 in from the centre at the bottom, written 1/128 in short.
#[test]
fn by_hand_an_arc_ends_at_the_edge() {
    let steps = ["to: [0 in, -19.9922 in], through: [-2 in, -16 in]"];
    let faults = set_out_with(&FLAT, &a_line("0 in, -12 in", &steps, LET_IN))
        .expect_err("no end at an edge");
    assert!(
        faults[0]
            .fact
            .contains("the line ends at (0, -12) in, 8 in from the edge"),
        "{}",
        faults[0].fact
    );
    let steps = [
        "to: [0 in, -12 in]",
        "to: [0 in, -19.9922 in], through: [-3.9961 in, -15.9961 in]",
    ];
    let steps = [
        steps[0].replace("to: [0 in, -12 in]", "to: [8 in, -12 in]"),
        "to: [0 in, -12 in]".into(),
        steps[1].to_string(),
    ];
    let steps: Vec<&str> = steps.iter().map(String::as_str).collect();
    let repair = laid(&FLAT, &a_line("16 in, -12 in", &steps, LET_IN));
    // 16 straight, half a circle of radius 3.996, and 1/128.
    assert_eq!(
        inches(&repair).0,
        format!("{:.3}", 16.0 + std::f64::consts::PI * 3.9961 + 0.0078125)
    );
    assert_eq!(repair.weld.len(), 4);
}

/// Over the flange of the pressed plate: tangent 18 1/2, heel π/2 × 1 1/4 = 1.963 on mid thickness. Straight down at x 0 and along the
/// right: ends at (0, −18.5) and (18.5, 0). Each 18.5 − 6 from the corner at (6, −6)? The line: from (0, −12) by (0, −6) to (12, −6)
/// is not radial: it comes to the tangent at (17.5, −6), 18.925° off square.
#[test]
fn by_hand_over_the_flange() {
    let steps = ["to: [0 in, -6 in]", "to: [12 in, -6 in]"];
    let over = "        over_flange: 2 in\n        let_in: true\n";
    let repair = laid(&[], &a_line("0 in, -12 in", &steps, over));
    // 12.5 down, 17.5 across; with 2 × (1.963495 + 2).
    assert_eq!(inches(&repair), ("30.000".into(), "37.927".into()));
    let [down, across] = &repair.crossings[..] else {
        panic!("two crossings");
    };
    let print = |degrees: f64| format!("{degrees:.3}");
    assert_eq!(
        (print(down.angle_deg), print(down.off_square_deg)),
        ("180.000".into(), "0.000".into())
    );
    assert_eq!(
        (print(across.angle_deg), print(across.off_square_deg)),
        ("108.925".into(), "18.925".into())
    );
    // The weld ends on the rim, and runs square from the tangent.
    assert_eq!(repair.weld.len(), 4);
    assert_eq!(
        format!("{:.3}", repair.weld[0].from().radius() / 25.4),
        "20.000"
    );
    assert!(repair.to_end_of_flat.is_none());
    // An end written 1/128 beyond the tangent is drawn in.
    let repair = laid(&[], &a_line("0 in, -18.5078 in", &steps, over));
    assert_eq!(inches(&repair).0, "30.000");
    // Without a piece let in nothing is new.
    let repair = laid(
        &[],
        &a_line("0 in, -12 in", &steps, "        over_flange: 0 in\n"),
    );
    assert!(repair.renews.is_none());
    assert_eq!(inches(&repair).1, "33.927");
}

/// Rivets at 6°, one on bottom centre, 20 in radius: 3° is 1.0472 in, less 0.40625. The row lies 2 − 1.25 = 0.75 along the straight: a
/// weld that ends 0.25 along it passes the rivet on its own ray 0.5 off, 0.09375 from its hole; one that reaches the row is through.
#[test]
fn by_hand_the_metal_to_a_rivet() {
    // Ends on rays at 177° and 111°, both midway; 18.5 × sin and cos of 3° and 21° from the axes.
    let steps = [
        "to: [0.5 in, -8 in]",
        "to: [10 in, -4 in]",
        "to: [17.271238 in, -6.629807 in]",
    ];
    let metal = |over: &str, start: &str| {
        let more = format!("        over_flange: {over}\n");
        let repair = laid(&[("holes: []\n", RIVETS)], &a_line(start, &steps, &more));
        let rivet = |at: usize| {
            let (id, metal) = repair.crossings[at].rivet.clone().expect("a rivet");
            (id, format!("{:.5}", metal.to_inches()))
        };
        (rivet(0), rivet(1))
    };
    let midway = metal("1 1/2 in", "0.968216 in, -18.474646 in");
    assert_eq!(midway.0.1, "0.64095");
    assert_eq!(midway.1.1, "0.64095");
    let on_a_ray = metal("1/4 in", "0 in, -18.5 in");
    assert_eq!(on_a_ray.0, ("R1".into(), "0.09375".into()));
    let fault = refused(
        &[("holes: []\n", RIVETS)],
        &a_line("0 in, -18.5 in", &steps, "        over_flange: 1 in\n"),
        "",
        "the weld runs over the flange through rivet R1, 0.406 in into its hole",
    );
    assert_eq!(
        fault.remedy,
        "take it over the flange midway between two rivets"
    );
    assert_eq!(fault.also[0].0, "rivets");
}

#[test]
fn refuses_a_line_through_a_hole() {
    let fault = refused(
        &[],
        &a_line(
            "2 in, -6 in",
            &["to: [2 in, 0.5 in]", "to: [10 in, 0.5 in]"],
            "",
        ),
        "",
        "the weld runs through tube T3 at (4, 0) in, 0.531 in into it",
    );
    assert!(fault.remedy.starts_with("lay it clear of every hole"));
    // Touching the edge is no metal, and no cut.
    laid(
        &[],
        &a_line("2 in, -1.03125 in", &["to: [10 in, -1.03125 in]"], ""),
    );
}

#[test]
fn refuses_lines_that_contradict_the_plate() {
    let level = ["to: [5 in, -6 in]"];
    let over = |size: &str| format!("        over_flange: {size}\n");
    refused(
        &[],
        &a_line("0 in, -6 in", &[], ""),
        "",
        "the weld line has no step, so that it goes nowhere",
    );
    refused(
        &[],
        &a_line("-4 in, -10 in", &BOX, &over("1 in")),
        ".over_flange",
        "the line closes on its start, so that nothing of it runs over the flange",
    );
    refused(
        &[],
        &a_line(
            "0 in, -6 in",
            &["to: [5 in, -6 in], corner_radius: 1 in"],
            "",
        ),
        ".steps[0].corner_radius",
        "the line ends here, so that there is no corner to round off",
    );
    refused(
        &[],
        &a_line("0 in, -6 in", &level, LET_IN),
        "",
        "a piece is let in, and the line neither closes nor runs over the flange",
    );
    refused(
        &FLAT,
        &a_line("0 in, -6 in", &level, &over("1 in")),
        ".over_flange",
        "the line is to run over the flange, and this plate has none that is pressed from it",
    );
    let fault = refused(
        &[],
        &a_line("0 in, -6 in", &level, &over("2 1/16 in")),
        ".over_flange",
        "the line is to run 2 1/16 in along the straight of the flange, which is 2 in long",
    );
    assert_eq!(fault.also[0].0, "flange.pressed.straight");
    let fault = refused(
        &[],
        &a_line("0 in, -6 in", &level, &(over("1 1/2 in") + LET_IN)),
        ".over_flange",
        "a piece is let in, and its weld stops 0.5 in short of the edge of the flange, so that the piece is not cut free",
    );
    assert_eq!(fault.also[0].0, "flange.pressed.straight");
    refused(
        &[],
        &a_line("0 in, -6 in", &level, &over("-1 in")),
        ".over_flange",
        "the line is to run -1 in along the straight of the flange, which is 2 in long",
    );
    refused(
        &[],
        &a_line(
            "0 in, -19 in",
            &["to: [0 in, -6 in]", "to: [12 in, -6 in]"],
            &over("1 in"),
        ),
        "",
        "the line ends beyond the tangent, or runs past it without meeting it",
    );
    refused(
        &[],
        &a_line("0 in, -6 in", &["to: [0 in, -19 in]"], ""),
        "",
        "the weld line runs onto the heel, by 0.5 in, where the face shows no true length",
    );
    refused(
        &[],
        &a_line("0 in, -6 in", &["to: [0 in, -20.5 in]"], ""),
        "",
        "the weld line runs off the plate, by 0.5 in",
    );
    refused(
        &[],
        &a_line(
            "0 in, -6 in",
            &[
                "to: [5 in, -6 in]",
                "to: [3 in, -9 in]",
                "to: [3 in, -4 in]",
            ],
            "",
        ),
        "",
        "the weld line crosses or touches itself or the edge of the plate near (3, -6) in",
    );
    refused(
        &[],
        &a_line(
            "-4 in, -10 in",
            &[
                "to: [4 in, -10 in]",
                "to: [-4 in, -4 in]",
                "to: [4 in, -4 in]",
                "to: [-4 in, -10 in]",
            ],
            "",
        ),
        "",
        "the weld line crosses or touches itself or the edge of the plate near (0, -7) in",
    );
    refused(
        &[],
        &a_line("0 in, -6 in", &["to: [5 in, -6 in], radius: 1 in"], ""),
        ".steps[0]",
        "the radius is less than half the distance from start to end",
    );
    refused(
        &[],
        &a_line(
            "0 in, -6 in",
            &["to: [5 in, -6 in], radius: 9 in, through: [1 in, -7 in]"],
            "",
        ),
        ".steps[0]",
        "an arc goes through a place or has a radius, and this step says both",
    );
    // An arc that bulges onto the heel between ends that do not.
    refused(
        &[],
        &a_line(
            "-2 in, -18 in",
            &["to: [2 in, -18 in], through: [0 in, -19 in]"],
            "",
        ),
        "",
        "the weld line runs onto the heel, by 0.5 in, where the face shows no true length",
    );
}

const STAYS: &str = "\
holes:
  - {name: stays, purpose: stay, hole: 1 in, at: [[3 in, 8 in], [9 in, 8 in], [3 in, 13 in], [9 in, 13 in]], mirrored: true}
";

/// Wholly inside the outer row it meets; one that leaves it crosses once; one that goes in and out twice; clear of it, it is noted.
#[test]
fn published_a_weld_line_and_the_outer_row_of_stays() {
    let with = |start: &str, step: &str| {
        let line = a_line(start, &[step], "") + "holes: []\n";
        let named = ("judged_by: [", "judged_by: [46 CFR Part 59, ");
        judged(&[("holes: []\n", &line), ("holes: []\n", STAYS), named])
    };
    let found = with("-2 in, 10 in", "to: [2 in, 10 in]");
    is(
        one(&found, "weld_repair", "59.10", "line, outer row of stays"),
        "meets",
        "0",
        "0",
    );
    below_by(
        one(
            &with("0 in, 10 in", "to: [0 in, 14 in]"),
            "weld_repair",
            "59.10",
            "outer row",
        ),
        "1",
    );
    let arc = with("-2 in, 12 in", "to: [2 in, 12 in], through: [0 in, 14 in]");
    below_by(one(&arc, "weld_repair", "59.10", "outer row"), "2");
    let found = with("-2 in, -6 in", "to: [2 in, -6 in]");
    is(one(&found, "weld_repair", "59.10", "line"), "note", "", "");
    assert!(
        !found
            .iter()
            .any(|f| f.place.contains("let in without leave"))
    );
}

/// A piece let in within the stays: they are renewed, no leave is asked, and practice is named.
#[test]
fn published_a_piece_let_in_among_stays() {
    let steps = [
        "to: [2 in, 9 in]",
        "to: [2 in, 12 in]",
        "to: [-2 in, 12 in]",
        "to: [-2 in, 9 in]",
    ];
    let line = a_line("-2 in, 9 in", &steps, LET_IN) + "holes: []\n";
    let found = judged(&[("holes: []\n", &line), ("holes: []\n", STAYS)]);
    let note = one(&found, "weld_repair", "230.33", "line");
    assert!(note.why.contains("established practice"), "{}", note.why);
    // Across the outer row it is no stayed part.
    let steps = [
        "to: [2 in, 9 in]",
        "to: [2 in, 15 in]",
        "to: [-2 in, 15 in]",
        "to: [-2 in, 9 in]",
    ];
    let line = a_line("-2 in, 9 in", &steps, LET_IN) + "holes: []\n";
    let found = judged(&[("holes: []\n", &line), ("holes: []\n", STAYS)]);
    below_by(
        one(
            &found,
            "weld_repair",
            "230.33",
            "line, let in without leave",
        ),
        "24.0",
    );
}
