//! The parts of the two demo specs, against their hand workings, and what is refused of them.

use super::*;
use crate::design::{Point, set_out};
use crate::spec::read_spec;

const PRESSED: &str = include_str!("../../specs/marl-hen-smokebox.yaml");
const FABRICATED: &str = include_str!("../../specs/hobthrush-smokebox.yaml");
const LARGE: &str = include_str!("../../specs/tallow-moor-smokebox.yaml");
const STAYED: &str = include_str!("../../specs/pinders-oak-smokebox.yaml");

/// The parts of a spec with some of its words changed.
fn parts(text: &str, changes: &[(&str, &str)]) -> Result<(Spec, Vec<CutPart>), Vec<Fault>> {
    let mut text = bare(text);
    for (from, to) in changes {
        assert!(text.contains(from), "{from}");
        text = text.replacen(from, to, 1);
    }
    parts_of(&text)
}

/// A demo without its pads and without a place for the ring's joint: the tests write their own.
fn bare(text: &str) -> String {
    let without = |text: String, head: &str, foot: &str| match text.split_once(head) {
        Some((before, rest)) => {
            let (_, after) = rest.split_once(foot).expect("the block ends");
            format!("{before}{foot}{after}")
        }
        None => text,
    };
    let text = without(text.to_string(), "\npads:", "\n\n");
    let text = without(text, "\n    pad: {", "\n");
    without(text, "\n    joint:", "\n\n")
}

/// The parts of a spec as it is written.
fn parts_of(text: &str) -> Result<(Spec, Vec<CutPart>), Vec<Fault>> {
    let spec = read_spec("changed.yaml", text.as_bytes()).map_err(|faults| faults.faults)?;
    let design = set_out(&spec)?;
    let parts = cut_parts(&spec, &design)?;
    Ok((spec, parts))
}

fn shapes(part: &CutPart, layer: Layer) -> Vec<&Shape> {
    let on = part.shapes.iter().filter(|(l, _)| *l == layer);
    on.map(|(_, shape)| shape).collect()
}

fn radii(part: &CutPart, layer: Layer) -> Vec<f64> {
    let circles = shapes(part, layer).into_iter().filter_map(|s| match s {
        Shape::Circle { radius, .. } => Some(*radius),
        _ => None,
    });
    circles.collect()
}

fn pops(part: &CutPart) -> Vec<Point> {
    let crosses = shapes(part, Layer::Pop).into_iter().map(|s| match s {
        Shape::Cross { at, .. } | Shape::Dot(at) => *at,
        other => panic!("{other:?} is no pop"),
    });
    crosses.collect()
}

fn fact_of(text: &str, changes: &[(&str, &str)]) -> String {
    let faults = parts(text, changes).expect_err("it is refused");
    assert_eq!(faults.len(), 1, "{faults:?}");
    format!("{}: {}", faults[0].path, faults[0].fact)
}

/// 45 in across is 571.5 mm to the edge; the tangent stands at 16 7/8 in, 428.625 mm; the net blanks are 43.94 in by the mid
/// line and 43.43 in by equal area, worked by hand. The pins stand at 9 in, 228.6 mm, and 1 19/64 in, 32.940625 mm.
#[test]
fn by_hand_blank_has_its_edge_three_scribed_circles_and_two_pops() {
    let (spec, parts) = parts(PRESSED, &[]).expect("it is cut");
    let [blank] = &parts[..] else {
        panic!("one part");
    };
    assert_eq!(file_name(&spec, blank), "mh-tp1-a-blank-plasma-mm.dxf");
    assert_eq!(radii(blank, Layer::CutOutside), [571.5]);
    assert!(shapes(blank, Layer::CutInside).is_empty());
    let scribed: Vec<String> = radii(blank, Layer::Scribe)
        .into_iter()
        .map(|mm| format!("{:.2}", 2.0 * mm / crate::units::MM_PER_INCH))
        .collect();
    assert_eq!(scribed, ["33.75", "43.94", "43.43"]);
    for (pop, x) in pops(blank).into_iter().zip([-228.6, 228.6]) {
        assert!(pop.distance(Point::new(x, -32.940625)) <= 1e-6, "{pop:?}");
    }
    // 100 tubes, a pipe, a plug and four stays, less the two pins; two pins; 56 rivets.
    let withheld: Vec<(usize, &str)> = blank
        .withheld
        .iter()
        .map(|w| (w.ids.len(), w.instead))
        .collect();
    assert_eq!(withheld, [(104, "nothing"), (2, "a pop"), (56, "nothing")]);
}

/// 119 tubes of 39 mm, a pipe of 110 and four stays of 33, each 2 mm under.
#[test]
fn by_hand_plate_holes_are_cut_two_millimetres_under() {
    let (spec, parts) = parts(FABRICATED, &[]).expect("it is cut");
    assert_eq!(
        file_name(&spec, &parts[0]),
        "hb-tp1-a-plate-waterjet-mm.dxf"
    );
    assert_eq!(file_name(&spec, &parts[1]), "hb-tp1-a-ring-waterjet-mm.dxf");
    let mut cut: Vec<(usize, f64)> = parts[0]
        .holes_cut
        .iter()
        .map(|holes| (holes.ids.len(), holes.cut.to_mm()))
        .collect();
    cut.sort_by_key(|(count, _)| std::cmp::Reverse(*count));
    assert_eq!(cut, [(119, 37.0), (4, 31.0), (1, 108.0)]);
    assert!(pops(&parts[0]).is_empty());
}

/// A rivet stands on bottom centre and so on top; 48 stand 7.5° apart, so the joint is 3.75° past the top. The ring
/// stands away from the viewer of the plate, so clockwise runs to the left along its inside: bottom centre is (180 - 3.75)/360 of
/// π × 824 from the right, 1267.37 of 2588.67 mm, and its tack 36 mm below the free edge at 90.
#[test]
fn by_hand_ring_tacks_lie_by_angle_from_the_joint() {
    let changes = [("how: in place", "how: in place\n  tack_every: 4")];
    let (_, parts) = parts(FABRICATED, &changes).expect("it is cut");
    let ring = &parts[1];
    assert!(
        ring.lies
            .ends_with("JOINT 3.75 DEGREES CLOCKWISE FROM TOP CENTRE SEEN FROM THE SMOKEBOX")
    );
    let pops = pops(ring);
    assert_eq!(pops.len(), 12);
    assert_eq!(
        format!("{:.2} {:.2}", pops[0].x, pops[0].y),
        "1321.30 54.00"
    );
    // R5, 30° clockwise from the bottom, lies a twelfth of the girth to the left of it.
    assert_eq!(format!("{:.2}", pops[1].x - pops[0].x), "-215.72");
}

#[test]
fn refuses_any_hole_finished_by_heat() {
    let changes = [
        ("process: waterjet", "process: plasma"),
        (
            "purpose: steam pipe, cut: undersize, under: 2 mm",
            "purpose: steam pipe, cut: finish",
        ),
    ];
    let fact = fact_of(FABRICATED, &changes);
    let words = "cutting.holes[2].cut: steam pipe holes are not finished by plasma";
    assert!(fact.starts_with(words), "{fact}");
}

#[test]
fn refuses_a_former_pin_that_stands_on_no_tube() {
    let faults = parts(PRESSED, &[("[-9 in, -1 19/64 in]", "[-9 in, 0 in]")]);
    let faults = faults.expect_err("it is refused");
    assert_eq!(faults[0].path, "cutting.former_pins[0]");
    assert!(faults[0].fact.contains("is not on the centre of a tube"));
}

/// 1 19/64 in is half of 2 19/32; written as 1 9/32 it is 1/64 in off, and as 1 17/64 it is 2/64.
#[test]
fn by_hand_a_pin_within_a_64th_of_a_tube_stands_on_it() {
    let (_, parts) =
        parts(PRESSED, &[("[-9 in, -1 19/64 in]", "[-9 in, -1 9/32 in]")]).expect("near enough");
    assert!(pops(&parts[0])[0].distance(Point::new(-228.6, -32.940625)) <= 1e-6);
    let said = parts[0]
        .withheld
        .iter()
        .find(|w| w.reason.contains("taken to stand on"));
    let reason = &said.expect("it is said").reason;
    assert!(reason.contains("written 0.397 mm from"), "{reason}");
    let further = [("[-9 in, -1 19/64 in]", "[-9 in, -1 17/64 in]")];
    assert!(self::parts(PRESSED, &further).is_err());
}

#[test]
fn refuses_one_former_pin() {
    let changes = [(
        "[[-9 in, -1 19/64 in], [9 in, -1 19/64 in]]",
        "[[9 in, -1 19/64 in]]",
    )];
    assert!(
        fact_of(PRESSED, &changes)
            .starts_with("cutting.former_pins: the number of former pins is 1")
    );
}

#[test]
fn refuses_holes_in_a_blank_before_it_is_formed() {
    let holes = "process: plasma\n  holes: [{purpose: tube, cut: undersize, under: 6 mm}]";
    assert_eq!(
        fact_of(PRESSED, &[("process: plasma", holes)]),
        "cutting.holes[0].cut: tube holes are wanted in the blank of a pressed plate: they would come out oval and out of place"
    );
}

#[test]
fn refuses_cut_holes_where_the_process_only_drills() {
    let changes = [("process: waterjet", "process: drill only")];
    let faults = parts(FABRICATED, &changes).expect_err("it is refused");
    assert_eq!(faults.len(), 3);
    assert!(faults[0].fact.starts_with("tube holes are to be cut"));
}

/// Tubes cut to 37 mm stand 56.5 mm apart in a row, so 19.5 mm is left between two cuts.
#[test]
fn refuses_less_metal_between_cuts_than_the_process_leaves_sound() {
    let fits = [(
        "process: waterjet",
        "process: waterjet\n  least_web: 19.5 mm",
    )];
    assert!(parts(FABRICATED, &fits).is_ok());
    let thin = [(
        "process: waterjet",
        "process: waterjet\n  least_web: 19.6 mm",
    )];
    let faults = parts(FABRICATED, &thin).expect_err("it is refused");
    let thin = |fault: &Fault| fault.fact.contains("19.5 mm is left between two cuts");
    assert!(faults.iter().any(thin), "{faults:?}");
}

/// 33 less 6 is 27 mm, below 30.
#[test]
fn by_hand_a_hole_below_the_least_becomes_a_pop_with_its_reason() {
    let changes = [
        ("process: waterjet", "process: plasma"),
        ("least_hole: 5 mm", "least_hole: 30 mm"),
        (
            "purpose: stay, cut: undersize, under: 2 mm",
            "purpose: stay, cut: undersize, under: 6 mm",
        ),
    ];
    let (_, parts) = parts(FABRICATED, &changes).expect("it is cut");
    assert_eq!(pops(&parts[0]).len(), 4);
    assert_eq!(
        parts[0].withheld,
        [Withheld {
            ids: ["S1", "S2", "S3", "S4"].map(String::from).to_vec(),
            instead: "a pop",
            reason: "27 mm is below the least hole that plasma makes clean, 30 mm".into(),
        }]
    );
}

#[test]
fn holds_a_purpose_with_no_policy_becomes_a_pop() {
    let changes = [("    - {purpose: stay, cut: undersize, under: 2 mm}\n", "")];
    let (_, parts) = parts(FABRICATED, &changes).expect("it is cut");
    assert_eq!(pops(&parts[0]).len(), 4);
    assert_eq!(
        parts[0].withheld[0].reason,
        "the order gives no size to cut it to: the works drills it"
    );
}

/// TOP at the foot of a plate would turn it over.
#[test]
fn holds_top_stands_in_the_upper_half_and_marks_come_before_cuts() {
    for text in [PRESSED, FABRICATED] {
        let (_, parts) = parts(text, &[]).expect("it is cut");
        let first = shapes(&parts[0], Layer::Stamp)[0];
        assert!(
            matches!(first, Shape::Line { from, .. } if from.y > 0.0),
            "{first:?}"
        );
        for part in &parts {
            let cut = part.shapes.iter().position(|(layer, _)| layer.is_cut());
            let late = part.shapes[cut.expect("it is cut")..].iter();
            assert!(
                late.into_iter()
                    .all(|(layer, _)| layer.is_cut() || *layer == Layer::Reference)
            );
        }
    }
}

const PAD: &str = "pads:
  - name: mud door ring
    diameter: 300 mm
    bore: 120 mm
    thickness: 12 mm
    holes:
      - {name: studs, purpose: bolt, hole: 20.5 mm, at: [[100 mm, 0 mm], [0 mm, 100 mm], [-100 mm, 0 mm], [0 mm, -100 mm]]}
    number_off: 2

judged_by:";

/// 300 + 2 × 3 across, bore 120 - 2 × 1. Studs of 20.5 less 5 are 15.5 mm, below 1.5 × 12 = 18: four pops, and one bore cut. Mass
/// π/4 × (306² - 118²) × 12 × 7.85e-6 = 5.897 kg.
#[test]
fn by_hand_a_doubling_ring_is_a_part_of_its_own() {
    let changes = [
        ("judged_by:", PAD),
        (
            "process: waterjet",
            "process: plasma\n  dress_outside: 3 mm\n  dress_inside: 1 mm\n  least_hole_thicknesses: 1.5\n  hole_allowance: {edge: 1.5 mm, taper: 0.5 mm, position: 0.5 mm, origin: works}",
        ),
        (
            "purpose: stay, cut: undersize, under: 2 mm}",
            "purpose: bolt, cut: undersize}",
        ),
    ];
    let (spec, parts) = parts(FABRICATED, &changes).expect("it is cut");
    let pad = &parts[2];
    assert_eq!(
        file_name(&spec, pad),
        "hb-tp1-a-mud-door-ring-plasma-mm.dxf"
    );
    assert_eq!((pad.number_off, pad.withheld.len()), (2, 1));
    assert_eq!(radii(pad, Layer::CutOutside), [153.0]);
    assert_eq!(radii(pad, Layer::CutInside), [59.0]);
    assert_eq!(pops(pad).len(), 4);
    assert!(pad.withheld[0].reason.starts_with("15.5 mm is below"));
    assert_eq!(format!("{:.3}", pad.mass_kg.expect("a density")), "5.897");
}

#[test]
fn refuses_pads_that_are_none() {
    for (from, to, fact) in [
        (
            "bore: 120 mm",
            "bore: 300 mm",
            "a bore of 300 mm leaves nothing of a ring 300 mm across",
        ),
        (
            "mud door ring",
            "Ring",
            "`Ring` is the name of another part",
        ),
        (
            "[100 mm, 0 mm]",
            "[145 mm, 0 mm]",
            "studs 1 of mud door ring runs out through the edge",
        ),
        (
            "[100 mm, 0 mm]",
            "[65 mm, 0 mm]",
            "studs 1 of mud door ring runs into the bore",
        ),
        (
            "[100 mm, 0 mm]",
            "[10 mm, 99 mm]",
            "studs 1 and studs 2 of mud door ring overlap",
        ),
    ] {
        let pad = PAD.replace(from, to);
        let faults = parts(FABRICATED, &[("judged_by:", &pad)]).expect_err(fact);
        assert_eq!(faults[0].fact, fact);
    }
}

/// The heel gauge is a square of 38.1 + 60 = 98.1 mm with a corner of 38.1 off. The former is 38 - 2 × 5/8 = 36 3/4 in,
/// 933.45 mm, and 1.2 % of it: 944.6514 mm.
#[test]
fn by_hand_templates_of_a_pressed_plate() {
    let hot = "trim: 1/2 in\n    former_hot_allowance: {share: 0.012, origin: works}";
    let changes = [
        ("process: plasma", "process: plasma\n  templates: true"),
        ("trim: 1/2 in", hot),
    ];
    let (spec, parts) = parts(PRESSED, &changes).expect("it is cut");
    let names: Vec<String> = parts.iter().map(|part| file_name(&spec, part)).collect();
    assert_eq!(
        names[1..],
        [
            "mh-tp1-a-heel-gauge-plasma-mm.dxf",
            "mh-tp1-a-former-plasma-mm.dxf"
        ]
    );
    let [Shape::Closed(gauge)] = shapes(&parts[1], Layer::CutOutside)[..] else {
        panic!("one edge");
    };
    let area = 98.1 * 98.1 - (1.0 - std::f64::consts::PI / 4.0) * 38.1 * 38.1;
    assert!((gauge.area_mm2() - area).abs() < 1e-6);
    let former = 2.0 * radii(&parts[2], Layer::CutOutside)[0];
    assert_eq!(format!("{former:.4}"), "944.6514");
}

#[test]
fn holds_without_the_works_allowance_for_heat_no_former_is_drawn_and_that_is_said() {
    let changes = [("process: plasma", "process: plasma\n  templates: true")];
    let (_, parts) = parts(PRESSED, &changes).expect("it is cut");
    assert_eq!(parts.len(), 2);
    assert!(parts[1].remarks[1].starts_with("No former outline is drawn"));
}

/// Inside radius 420 - 16 = 404; chord 0.8 × 404 = 323.2; height 404 - sqrt(404² - 161.6²) = 404 - 370.267 = 33.733.
#[test]
fn by_hand_the_roll_check_has_its_chord_and_height() {
    let changes = [("process: waterjet", "process: waterjet\n  templates: true")];
    let (_, parts) = parts(FABRICATED, &changes).expect("it is cut");
    let [Shape::Closed(check)] = shapes(&parts[2], Layer::CutOutside)[..] else {
        panic!("one edge");
    };
    let (low, high) = check.bounds();
    assert_eq!(
        format!("{:.2} {:.2}", high.x - low.x, high.y),
        "323.20 33.73"
    );
    assert!(parts[2].remarks[0].ends_with("chord 323.20 mm, height over the chord 33.73 mm."));
}

/// π × 824 = 2,588.67 net, 3 and 80 at each end: 2,754.7 mm. The joint at 3.75° lies midway: π × 840 × 3.75/360 = 27.49 mm from either
/// rivet, and 90° of π × 840 from the seam, 659.73 mm.
#[test]
fn by_hand_the_strip_is_made_up_of_its_parts_and_the_joint_has_a_place() {
    let ends = "ring_width: 90 mm\n    strip_preparation: {size: 3 mm, origin: works}\n    strip_roll_waste: {size: 80 mm, origin: works}\n    joint: {angle: 3.75, barrel_seam: 93.75, clear_of_seam: 300 mm, origin: works}";
    let changes = [("ring_width: 90 mm", ends)];
    let (_, cut) = parts(FABRICATED, &changes).expect("it is cut");
    assert_eq!(format!("{:.1}", summary(&cut[1]).extent_mm[0]), "2754.7");
    let said = cut[1].remarks.join(" ");
    for words in [
        "2588.67 mm net on mid thickness, 3 mm at each end for the weld preparation of the joint, 80 mm at each end of roll-end waste",
        "27.49 mm from the middle of rivet hole",
        "659.73 mm from the joint",
    ] {
        assert!(said.contains(words), "{said}");
    }
    for (from, to, fact) in [
        ("angle: 3.75", "angle: 7.5", "runs through rivet hole"),
        (
            "barrel_seam: 93.75",
            "barrel_seam: 10",
            "from the barrel's lengthwise seam",
        ),
    ] {
        let changed = ends.replace(from, to);
        let fact_found = fact_of(FABRICATED, &[("ring_width: 90 mm", &changed)]);
        assert!(fact_found.contains(fact), "{fact_found}");
    }
}

/// TOP stands on the centre line where that is clear, however near the pipe's hole; a joint face on it leaves no room there.
#[test]
fn holds_top_stands_on_the_centre_line() {
    let no_face = [("joint_face: {diameter: 165 mm}", "")];
    for (text, changes) in [(STAYED, &[][..]), (FABRICATED, &no_face[..])] {
        let (_, parts) = parts(text, changes).expect("it is cut");
        let first: Vec<&Shape> = shapes(&parts[0], Layer::Stamp)
            .into_iter()
            .take(10)
            .collect();
        let xs = first.iter().filter_map(|s| match s {
            Shape::Line { from, .. } => Some(from.x),
            _ => None,
        });
        assert!(xs.fold(0.0_f64, |far, x| far.max(x.abs())) <= 30.0);
    }
}

/// With nothing written, the plate has a box for the arrow that the cutter stamps; with it, an arrow of five lines.
#[test]
fn holds_rolling_direction_is_marked() {
    let scribed = |text: &str, changes: &[(&str, &str)]| {
        let (_, parts) = parts(text, changes).expect("it is cut");
        shapes(&parts[0], Layer::Scribe).len()
    };
    let arrow = [("process: plasma", "process: plasma\n  rolling: upright")];
    assert_eq!(scribed(PRESSED, &arrow), scribed(PRESSED, &[]) - 1 + 5);
}

/// A contractor who has to telephone has a bad note: nothing that the demo orders leave unsaid. The standard of thermal cuts is named
/// for the waterjet alone, which it does not cover.
#[test]
fn holds_the_demo_orders_leave_nothing_to_ask() {
    for (text, waterjet) in [(PRESSED, false), (FABRICATED, true)] {
        let (spec, parts) = parts_of(text).expect("it is cut");
        let design = set_out(&spec).expect("it is set out");
        let note = order_note(&spec, &design, &parts, 0).join("\n");
        assert!(!note.contains("not stated"), "{note}");
        assert_eq!(note.contains("ISO 9013"), waterjet);
    }
}

/// From a place to the nearest and to the furthest point of a box, mm.
fn reach(inscribed: &part::Inscribed, from: Point) -> (f64, f64) {
    let (low, high) = (inscribed.low, inscribed.high);
    let nearest = Point::new(from.x.clamp(low.x, high.x), from.y.clamp(low.y, high.y));
    let corners = [low.x, high.x].map(|x| [low.y, high.y].map(|y| Point::new(x, y)));
    let furthest = corners.iter().flatten().map(|c| c.distance(from));
    (nearest.distance(from), furthest.fold(0.0, f64::max))
}

/// Every diameter that the spec writes of what stands round a hole of a group, mm, read from the spec and not from the design.
fn written_round(spec: &Spec, path: &str) -> Vec<f64> {
    let written = &spec.written;
    let index = |of: &str| {
        path.strip_prefix(of)?
            .trim_matches(['[', ']'])
            .parse::<usize>()
            .ok()
    };
    let mm = |size: &crate::units::Size| size.value().to_mm();
    if let Some(nest) = index("tubes") {
        return written.tubes[nest]
            .bead
            .iter()
            .map(|bead| mm(&bead.diameter))
            .collect();
    }
    let set = &written.holes[index("holes").expect("tubes or holes")];
    let mut round: Vec<f64> = set.needs_clear.iter().map(mm).collect();
    round.extend(set.joint_face.iter().map(|face| mm(&face.diameter)));
    if let Some(stay) = &set.stay {
        let washers = [&stay.outside_washer, &stay.inside_washer];
        round.extend(washers.into_iter().flatten().map(|w| mm(&w.diameter)));
        let nuts = [&stay.outside_nut, &stay.inside_nut];
        // Across the corners of a hexagon: 2/√3 of its flats.
        round.extend(
            nuts.into_iter()
                .flatten()
                .map(|n| mm(&n.across_flats) * 2.0 / crate::units::angle::sqrt(3.0)),
        );
    }
    if let Some(at) = &set.pad {
        let pad = written.pads.iter().find(|pad| pad.name == at.name);
        let pad = pad.expect("the pad is written");
        round.push(mm(&pad.diameter) + 2.0 * at.weld_leg.as_ref().map_or(0.0, mm));
    }
    round
}

/// No letter and no box lies under a washer, a nut, a joint face, a bead or a pad with its weld, in a hole, on the heel or in a weld;
/// and every stamped stroke stands in one of the boxes that the sheet draws.
#[test]
fn holds_nothing_is_stamped_where_something_is_fitted_or_welded() {
    let mut fitted = 0;
    for text in [PRESSED, FABRICATED, LARGE, STAYED] {
        let (spec, parts) = parts_of(text).expect("it is cut");
        let design = set_out(&spec).expect("it is set out");
        let plate = &parts[0];
        assert!(!plate.inscriptions.is_empty());
        for inscribed in &plate.inscriptions {
            for hole in &design.holes {
                let round = written_round(&spec, &design.groups[hole.group].path);
                fitted += round.len();
                let widest = round
                    .into_iter()
                    .fold(hole.finish.value().to_mm(), f64::max);
                let (nearest, _) = reach(inscribed, hole.at);
                assert!(
                    nearest > widest / 2.0,
                    "{} on {}",
                    inscribed.says[0],
                    hole.id
                );
            }
            let (nearest, furthest) = reach(inscribed, Point::CENTRE);
            match design.flange.as_ref().expect("each has a flange") {
                FlangeDesign::Pressed(p) => assert!(furthest < p.tangent_radius.to_mm()),
                FlangeDesign::Fabricated(f) => {
                    let weld = (f.inner_toe_radius.to_mm(), f.outer_toe_radius.to_mm());
                    assert!(
                        furthest < weld.0 || nearest > weld.1,
                        "{}",
                        inscribed.says[0]
                    );
                }
            }
        }
        for part in &parts {
            for stroke in shapes(part, Layer::Stamp) {
                let Shape::Line { from, to } = stroke else {
                    panic!("{stroke:?} is no stroke");
                };
                let boxed = |p: &Point| part.inscriptions.iter().any(|i| reach(i, *p).0 <= 1e-6);
                assert!(boxed(from) && boxed(to), "{stroke:?}");
            }
        }
    }
    assert!(fitted > 0);
}

/// Hobthrush's ring has a weld leg of 12 mm inside: nothing is stamped below 12 mm from the edge that is welded, and half the ring's
/// 16 mm is left clear above it.
#[test]
fn holds_nothing_is_stamped_where_the_ring_is_welded() {
    let (_, parts) = parts_of(FABRICATED).expect("it is cut");
    assert!(parts[1].inscriptions.len() >= 4);
    for inscribed in &parts[1].inscriptions {
        assert!(inscribed.low.y >= 12.0 + 8.0, "{}", inscribed.says[0]);
    }
}

/// Hobthrush's ring stands on the firebox face and its plate is cut with the smokebox face up: a line of the ring there would put the
/// ring on the wrong face. Where it stands on the face that is up the line is there, 840 mm across.
#[test]
fn holds_the_line_of_the_ring_is_scribed_on_its_own_face_alone() {
    let (_, parts) = parts_of(FABRICATED).expect("it is cut");
    assert!(radii(&parts[0], Layer::Scribe).is_empty());
    let said = parts[0].remarks.join(" ");
    assert!(
        said.contains("stands on the firebox face") && said.contains("840 mm across"),
        "{said}"
    );
    let from_firebox = [("view_from: smokebox", "view_from: firebox")];
    let (_, parts) = self::parts(FABRICATED, &from_firebox).expect("it is cut");
    assert_eq!(radii(&parts[0], Layer::Scribe), [420.0]);
    assert!(parts[0].remarks.is_empty());
}

/// The steam pipe is jointed on the ring that thickens the plate, 165 mm across: what is stamped there would leak or be faced away, so
/// that the ring has a tick for its top outside the joint and the rest is asked for by hand.
#[test]
fn holds_nothing_is_stamped_on_a_joint_face_of_a_pad() {
    let (_, parts) = parts_of(FABRICATED).expect("it is cut");
    let pad = &parts[2];
    for inscribed in &pad.inscriptions {
        assert!(reach(inscribed, Point::CENTRE).0 > 82.5);
    }
    let [Shape::Line { from, to }] = shapes(pad, Layer::Scribe)[..] else {
        panic!("one tick");
    };
    assert!(from.y > 82.5 && to.y < 90.0 && from.x == 0.0);
    let heat = "(BOX FOR THE HEAT NUMBER)".to_string();
    assert!(pad.by_hand.contains(&heat), "{:?}", pad.by_hand);
}

/// The joint stands at 71.25°, so all four quarters lie on the strip, 2588.67 mm long and seen from within the wrong way round: the top at
/// 71.25/360 of it, 512.34, then the left at 161.25/360, 1159.51, the bottom 1806.68 and the right 2453.85.
#[test]
fn by_hand_every_quarter_has_its_tick_on_the_strip() {
    let (_, cut) = parts_of(FABRICATED).expect("it is cut");
    let said = cut[1].remarks.join(" ");
    let ticks = "Quarter ticks from the left end: top 512.34 mm, left 1159.51 mm, bottom 1806.68 mm, right 2453.85 mm.";
    assert!(said.contains(ticks), "{said}");
    let stamped: Vec<&str> = cut[1]
        .inscriptions
        .iter()
        .map(|i| i.says[0].as_str())
        .collect();
    assert!(stamped.contains(&"TOP CENTRE") && stamped.contains(&"BOTTOM CENTRE"));
    assert_eq!(
        shapes(&cut[1], Layer::Scribe)
            .iter()
            .filter(|s| matches!(s, Shape::Line { .. }))
            .count(),
        8
    );
}

/// The pipe's hole is cut at 108 mm and bored to 110; the ring round it, which is bored with it, as well. Were nothing left in the
/// hole, the ring's bore would be cut to its 110 mm and the note says that it is final.
#[test]
fn by_hand_a_pad_is_bored_with_the_hole_it_stands_round() {
    let (spec, parts) = parts_of(FABRICATED).expect("it is cut");
    let pad = &parts[2];
    assert_eq!(radii(pad, Layer::CutInside), [54.0]);
    assert_eq!(pad.holes_cut[0].name, "bore");
    assert_eq!(
        format!(
            "{:.1} {:.1}",
            pad.holes_cut[0].cut.to_mm(),
            pad.holes_cut[0].finish.to_mm()
        ),
        "108.0 110.0"
    );
    let design = set_out(&spec).expect("it is set out");
    let note = order_note(&spec, &design, &parts, 0).join("\n");
    assert!(note.contains("Holes cut: 1 of 108 mm (bore), 2 mm under on the diameter; opened to 110 mm at the works\n"), "{note}");
    let final_size = FABRICATED.replacen(
        "{purpose: steam pipe, cut: undersize, under: 2 mm}",
        "{purpose: steam pipe, cut: finish}",
        1,
    );
    let (_, parts) = parts_of(&final_size).expect("it is cut");
    assert_eq!(radii(&parts[2], Layer::CutInside), [55.0]);
    assert!(parts[2].remarks.join(" ").contains("Bore as cut, 110 mm"));
}

/// π/4 × (180² − 108²) × 16 × 7.85e-6 = 2.05 kg, of which the bore is out; the plug's pad is a disc of 63.5 × 12.7 mm, 0.3 kg, and its only
/// hole bears no number.
#[test]
fn by_hand_small_parts_have_a_mass_and_say_what_is_out() {
    let (_, parts) = parts_of(FABRICATED).expect("it is cut");
    let words = |part: &CutPart| (part.mass_words().expect("a density"), part.mass_is_of());
    assert_eq!(
        words(&parts[2]),
        ("about 2.0 kg".into(), "its bore out, no other hole")
    );
    assert_eq!(words(&parts[0]).1, "no hole out");
    let (_, parts) = parts_of(PRESSED).expect("it is cut");
    assert_eq!(words(&parts[1]), ("about 0.3 kg".into(), "no hole out"));
    assert_eq!(parts[1].withheld[0].ids, ["plug"]);
}
