//! What always holds of edges, ligaments and circles: under a turn, a shift and a change of hand, and against slow ways of
//! working the same thing out.

use std::collections::BTreeMap;

use centrepop::checks::rivet_rows::{board_of_trade_diagonal, board_of_trade_gap};
use centrepop::design::{
    Edge, Hole, HoleGroup, LargestCircle, Ligament, Outline, Point, Rivet, RivetLine, Step,
    TakesUp, Touch, Walk, lands, largest_circle, set_out, survey,
};
use centrepop::spec::{Fault, NamedLine, Purpose, read_spec};
use centrepop::units::angle::{PI, atan2, cos, sin, sqrt};
use centrepop::units::tolerance::{LARGEST_CIRCLE_MM, SAME_LENGTH_MM};
use centrepop::units::{Length, Size};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// The same cases every time.
fn cases(count: u32) -> ProptestConfig {
    ProptestConfig {
        cases: count,
        rng_seed: RngSeed::Fixed(1831),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

/// Keyhole plates of every sort that can be made: radius 100 to 1,000 mm, leg from narrow to nearly the disc's width.
fn keyhole() -> impl Strategy<Value = Outline> {
    let share = || 0.05..0.95f64;
    (
        100.0..1000.0f64,
        share(),
        0.0..1.0f64,
        share(),
        share(),
        any::<bool>(),
    )
        .prop_map(|(radius, width, corner, drop, foot, rounded)| {
            let half = radius * width;
            let corner_radius = radius * corner;
            let corner_y = sqrt(
                (radius + corner_radius) * (radius + corner_radius)
                    - (half + corner_radius) * (half + corner_radius),
            );
            let side = radius * drop;
            let foot_y = -(corner_y.max(radius) + side);
            let foot_radius = rounded.then_some(foot * half.min(side));
            Outline::keyhole(radius, 2.0 * half, foot_y, corner_radius, foot_radius)
                .expect("such a plate can be made")
        })
}

/// Any place near a plate.
fn place() -> impl Strategy<Value = Point> {
    (-1200.0..1200.0f64, -2500.0..1200.0f64).prop_map(|(x, y)| Point::new(x, y))
}

/// Places along an outline, a few to every edge.
fn along(outline: &Outline) -> Vec<Point> {
    let shares = [0.0, 0.13, 0.5, 0.77];
    let edges = outline.edges().iter();
    edges
        .flat_map(|e| shares.map(|share| e.at_share(share)))
        .collect()
}

proptest! {
    #![proptest_config(cases(200))]

    #[test]
    fn holds_area_through_a_turn_a_shift_and_the_other_hand(
        plate in keyhole(), pivot in place(), angle in -7.0..7.0f64,
    ) {
        let turned = plate.turned_about(pivot, angle);
        let shifted = plate.shifted(pivot);
        let other = plate.opposite_hand();
        for moved in [&turned, &shifted, &other] {
            prop_assert!((moved.area_mm2() / plate.area_mm2() - 1.0).abs() < 1e-9);
            prop_assert!((moved.perimeter() - plate.perimeter()).abs().to_mm() < 1e-7);
            let edges = moved.edges().to_vec();
            let again = Outline::new(edges).expect("a moved outline stands");
            prop_assert!(again.area_mm2() > 0.0);
        }
        // A keyhole plate is its own other hand.
        prop_assert_eq!(plate.contains(pivot), other.contains(pivot));
        prop_assert!((plate.distance(pivot) - other.distance(pivot)).abs() < 1e-9);
    }

    #[test]
    fn holds_a_walk_the_wrong_way_is_turned_round(plate in keyhole()) {
        let backwards = plate.edges().iter().rev().map(Edge::reversed).collect();
        let again = Outline::new(backwards).expect("the same plate");
        prop_assert!((again.area_mm2() - plate.area_mm2()).abs() < 1e-6);
    }

    /// Inside and outside as told by the whole turns of a fine polygon round the place.
    #[test]
    fn holds_inside_agrees_with_turns_of_a_polygon(plate in keyhole(), at in place()) {
        prop_assume!(plate.distance(at) > 0.1);
        let corners: Vec<Point> = plate
            .edges()
            .iter()
            .flat_map(|e| (0..400).map(|i| e.at_share(f64::from(i) / 400.0)))
            .collect();
        let turn = |i: usize| {
            let (a, b) = (corners[i] - at, corners[(i + 1) % corners.len()] - at);
            atan2(a.cross(b), a.dot(b))
        };
        let turns: f64 = (0..corners.len()).map(turn).sum::<f64>() / (2.0 * PI);
        prop_assert_eq!(plate.contains(at), turns.round() == 1.0);
    }

    #[test]
    fn holds_the_box_touches_and_holds_everything(plate in keyhole()) {
        let (low, high) = plate.bounds();
        let mut reached = [f64::INFINITY; 4];
        for edge in plate.edges() {
            for i in 0..=200 {
                let p = edge.at_share(f64::from(i) / 200.0);
                let clear = [p.x - low.x, p.y - low.y, high.x - p.x, high.y - p.y];
                for (least, clear) in reached.iter_mut().zip(clear) {
                    prop_assert!(clear > -SAME_LENGTH_MM);
                    *least = least.min(clear);
                }
            }
        }
        // A sampled arc comes within its sagitta of the box: radius 1,000, half a turn in 200 steps, 0.12 mm at most.
        prop_assert!(reached.iter().all(|&least| least < 0.15), "{:?}", reached);
    }

    /// Every place of a parallel line is at its distance, and every place that deep or deeper is inside one of them.
    #[test]
    fn holds_an_offset_lies_at_its_distance(
        plate in keyhole(), by in -600.0..300.0f64, probes in prop::collection::vec(place(), 40),
    ) {
        prop_assume!(by.abs() > 0.01);
        let parallel = plate.offset(Length::mm(by)).expect("an offset");
        for line in &parallel {
            for p in along(line) {
                prop_assert!((plate.distance(p) - by.abs()).abs() < SAME_LENGTH_MM);
                prop_assert_eq!(plate.contains(p), by < 0.0);
            }
        }
        for p in probes {
            let depth = plate.depth(p);
            if (depth + by).abs() > 0.01 {
                let inside = parallel.iter().filter(|line| line.contains(p)).count();
                prop_assert_eq!(inside, usize::from(depth > -by), "depth {} at {:?}", depth, p);
            }
        }
    }

    /// Going out rounds what is sharp and coming in sharpens it again, as long as no hollow corner has closed up.
    #[test]
    fn holds_out_and_in_again_is_the_same_plate(plate in keyhole(), share in 0.01..0.9f64) {
        let hollow = plate.edges().iter().filter_map(|e| match e {
            Edge::Arc { radius, anticlockwise: false, .. } => Some(*radius),
            _ => None,
        });
        let by = Length::mm(share * hollow.fold(300.0, f64::min));
        prop_assume!(by.to_mm() > 0.01);
        let out = plate.offset(by).expect("outwards");
        prop_assert_eq!(out.len(), 1);
        let back = out[0].offset(-by).expect("inwards");
        prop_assert_eq!(back.len(), 1);
        prop_assert!((back[0].area_mm2() - plate.area_mm2()).abs() < 1e-3);
        for p in along(&back[0]) {
            prop_assert!(plate.distance(p) < 2.0 * SAME_LENGTH_MM);
        }
    }

    /// A keyhole walked as a path with rounded corners is the keyhole.
    #[test]
    fn holds_a_keyhole_walked_as_a_path(
        radius in 100.0..900.0f64, width in 0.1..0.8f64, corner in 0.02..0.3f64, foot in 0.01..0.2f64,
    ) {
        let (half, corner, foot) = (radius * width, radius * corner, radius * width * foot);
        let bottom = -2.2 * radius;
        let meet = -sqrt(radius * radius - half * half);
        let step = |x: f64, y: f64, walk: Walk, corner_radius: f64| Step { to: Point::new(x, y), walk, corner_radius };
        let steps = [
            step(half, bottom, Walk::Straight, foot),
            step(half, meet, Walk::Straight, corner),
            step(-half, meet, Walk::Through(Point::new(0.0, radius)), corner),
            step(-half, bottom, Walk::Straight, foot),
        ];
        let walked = Outline::path(Point::new(-half, bottom), &steps).expect("a path");
        let plate = Outline::keyhole(radius, 2.0 * half, bottom, corner, Some(foot)).expect("a keyhole");
        prop_assert!((walked.area_mm2() / plate.area_mm2() - 1.0).abs() < 1e-9);
        prop_assert!((walked.perimeter() - plate.perimeter()).abs().to_mm() < 1e-6);
    }
}

/// A hole of a plate made for a test, its group by purpose.
fn hole(group: usize, at: Point, diameter: f64) -> Hole {
    let finish = Size::read("10 mm").expect("a size");
    Hole {
        id: String::new(),
        group,
        at,
        finish,
        ligament_hole: Length::mm(diameter),
        exception: None,
        line: None,
        path: String::new(),
    }
}

fn groups() -> Vec<HoleGroup> {
    [Purpose::Tube, Purpose::Flue, Purpose::Stay]
        .map(|purpose| HoleGroup {
            name: String::new(),
            purpose,
            finish: Size::read("10 mm").expect("a size"),
            ligament_hole: Length::mm(10.0),
            largest: None,
            next_rebore: None,
            tube_end: None,
            needs_clear: None,
            takes_up: TakesUp::default(),
            mouth: None,
            tapped: None,
            stages: Vec::new(),
            remarks: None,
            path: String::new(),
        })
        .into()
}

/// Plates of up to sixty holes of mixed sizes and purposes, some overlapping, some in places where others stand.
fn plate_of_holes() -> impl Strategy<Value = Vec<Hole>> {
    let any_place = (-300.0..300.0f64, -300.0..300.0f64);
    let on_a_grid =
        (-4..5i32, -4..5i32).prop_map(|(x, y)| (60.0 * f64::from(x), 60.0 * f64::from(y)));
    let at = prop_oneof![any_place, on_a_grid].prop_map(|(x, y)| Point::new(x, y));
    let size = prop_oneof![Just(40.0), Just(40.0), 5.0..140.0f64];
    let one = (0..3usize, at, size).prop_map(|(group, at, size)| hole(group, at, size));
    prop::collection::vec(one, 0..60)
}

/// Every pair, the slow way.
fn every_pair(holes: &[Hole]) -> Vec<Ligament> {
    let pairs = (0..holes.len()).flat_map(|a| (a + 1..holes.len()).map(move |b| (a, b)));
    pairs.map(|(a, b)| Ligament::between(holes, a, b)).collect()
}

proptest! {
    #![proptest_config(cases(300))]

    #[test]
    fn holds_the_survey_is_every_pair_looked_at(holes in plate_of_holes()) {
        let groups = groups();
        let found = survey(&holes, &groups);
        let mut least: BTreeMap<(Purpose, Purpose), f64> = BTreeMap::new();
        let mut close = Vec::new();
        for pair in every_pair(&holes) {
            let (a, b) = (&holes[pair.holes.0], &holes[pair.holes.1]);
            let (p, q) = (groups[a.group].purpose, groups[b.group].purpose);
            let metal = pair.metal.to_mm();
            let entry = least.entry((p.min(q), p.max(q))).or_insert(metal);
            *entry = entry.min(metal);
            if pair.metal <= a.ligament_hole.max(b.ligament_hole) {
                close.push(pair.holes);
            }
        }
        let listed: Vec<_> = found.close_pairs.iter().map(|pair| pair.holes).collect();
        prop_assert!(close.iter().all(|pair| listed.contains(pair)));
        prop_assert!(listed.is_sorted());
        prop_assert_eq!(found.least.len(), least.len());
        for (one, (between, metal)) in found.least.iter().zip(&least) {
            prop_assert_eq!(one.between, *between);
            prop_assert!((one.ligament.metal.to_mm() - metal).abs() <= SAME_LENGTH_MM);
            prop_assert!(listed.contains(&one.ligament.holes));
        }
    }

    /// Of pairs alike the survey names the one with the lowest indices.
    #[test]
    fn holds_of_pairs_alike_the_first_is_named(holes in plate_of_holes()) {
        let groups = groups();
        for one in survey(&holes, &groups).least {
            let alike = |pair: &Ligament| {
                let purposes = [pair.holes.0, pair.holes.1].map(|h| groups[holes[h].group].purpose);
                let between = (purposes[0].min(purposes[1]), purposes[0].max(purposes[1]));
                between == one.between && pair.metal <= one.ligament.metal
            };
            let first = every_pair(&holes).into_iter().filter(alike).map(|pair| pair.holes).min();
            prop_assert!(first >= Some(one.ligament.holes));
        }
    }

    #[test]
    fn holds_ligaments_through_a_turn_and_the_other_hand(
        holes in plate_of_holes(), angle in -7.0..7.0f64, pivot in place(),
    ) {
        let groups = groups();
        let least = |holes: &[Hole]| -> Vec<f64> {
            survey(holes, &groups).least.iter().map(|one| one.ligament.metal.to_mm()).collect()
        };
        let moved = |motion: &dyn Fn(Point) -> Point| -> Vec<Hole> {
            holes.iter().map(|h| Hole { at: motion(h.at), ..h.clone() }).collect()
        };
        let before = least(&holes);
        for after in [
            least(&moved(&|p| p.turned_about(pivot, angle))),
            least(&moved(&Point::opposite_hand)),
            least(&moved(&|p| p + pivot)),
        ] {
            prop_assert_eq!(before.len(), after.len());
            prop_assert!(before.iter().zip(&after).all(|(a, b)| (a - b).abs() < 1e-9));
        }
    }

    /// Land to a round line is its radius less the hole's distance from its centre and the hole's own radius; a weld's outer toe
    /// counts only the holes that stand beyond the inner.
    #[test]
    fn holds_lands_to_round_lines(holes in plate_of_holes()) {
        let groups = groups();
        let round = |radius: f64| Outline::circle(Point::CENTRE, radius);
        let lines = [
            (NamedLine::Edge, round(500.0)),
            (NamedLine::InnerWeldToe, round(150.0)),
            (NamedLine::OuterWeldToe, round(200.0)),
        ];
        let found = lands(&holes, &groups, &lines);
        for (name, _) in &lines {
            for purpose in [Purpose::Tube, Purpose::Flue, Purpose::Stay] {
                let of_it = holes.iter().filter(|h| groups[h.group].purpose == purpose);
                let metal = |h: &Hole| {
                    let (out, radius) = (h.at.radius(), h.ligament_hole.to_mm() / 2.0);
                    match name {
                        NamedLine::InnerWeldToe => (out < 200.0).then_some(150.0 - out - radius),
                        NamedLine::OuterWeldToe => (out > 150.0).then_some(out - 200.0 - radius),
                        _ => Some(500.0 - out - radius),
                    }
                };
                let least = of_it.filter_map(metal).reduce(f64::min);
                let land = found.iter().find(|l| l.line == *name && l.purpose == purpose);
                prop_assert_eq!(least.is_some(), land.is_some());
                if let (Some(least), Some(land)) = (least, land) {
                    prop_assert!((least - land.metal.to_mm()).abs() <= 2.0 * SAME_LENGTH_MM);
                }
            }
        }
    }
}

/// Up to forty supports, by chance, on a grid, or at both hands.
fn supports() -> impl Strategy<Value = Vec<(usize, Point)>> {
    let chance = prop::collection::vec((-900.0..900.0f64, -1500.0..900.0f64), 0..40);
    let grid = prop::collection::vec(
        (-9..10i32, -15..10i32).prop_map(|(x, y)| (100.0 * f64::from(x), 100.0 * f64::from(y))),
        0..40,
    );
    prop_oneof![chance, grid].prop_map(|places| {
        places
            .into_iter()
            .map(|(x, y)| Point::new(x, y))
            .enumerate()
            .collect()
    })
}

/// The largest radius about a place, the slow way.
fn radius_at(at: Point, supports: &[(usize, Point)], line: &Outline) -> f64 {
    let nearest = supports
        .iter()
        .map(|(_, s)| s.distance(at))
        .fold(f64::INFINITY, f64::min);
    nearest.min(line.depth(at))
}

fn radius(found: &LargestCircle) -> f64 {
    found.diameter.to_mm() / 2.0
}

proptest! {
    #![proptest_config(cases(60))]

    /// No circle about any of 20,000 places by chance, nor about places close to the one found, is larger than the bound allows.
    #[test]
    fn holds_no_probe_beats_the_largest_circle(supports in supports(), line in keyhole(), seed in any::<u64>()) {
        let found = largest_circle(&supports, &line).expect("a circle");
        let bound = radius(&found) + LARGEST_CIRCLE_MM / 2.0;
        let (low, high) = line.bounds();
        let mut state = seed;
        let mut chance = || {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 11) as f64 / (1u64 << 53) as f64
        };
        for probe in 0..20_000 {
            let (u, v) = (chance(), chance());
            let at = if probe % 4 == 0 {
                let (turn, out) = (2.0 * PI * u, v * v * v * 20.0);
                found.centre + Point::new(out * cos(turn), out * sin(turn))
            } else {
                Point::new(low.x + u * (high.x - low.x), low.y + v * (high.y - low.y))
            };
            // The quick part first: one support inside is enough.
            if supports.iter().all(|(_, s)| (*s - at).dot(*s - at) > bound * bound) {
                prop_assert!(radius_at(at, &supports, &line) <= bound, "{:?} beats {:?}", at, found);
            }
        }
    }

    #[test]
    fn holds_the_largest_circle_holds_no_support(supports in supports(), line in keyhole()) {
        let found = largest_circle(&supports, &line).expect("a circle");
        let fits = radius_at(found.centre, &supports, &line);
        prop_assert!((fits - radius(&found)).abs() < 1e-9);
        prop_assert!(!found.touches.is_empty());
        for touch in &found.touches {
            let place = match touch {
                Touch::Hole(hole) => supports[*hole].1,
                Touch::FlangeLine(place) => {
                    prop_assert!(line.distance(*place) < SAME_LENGTH_MM);
                    *place
                }
            };
            prop_assert!((place.distance(found.centre) - radius(&found)).abs() <= 2.0 * LARGEST_CIRCLE_MM);
        }
    }

    #[test]
    fn holds_the_largest_circle_through_a_turn_a_shift_and_the_other_hand(
        supports in supports(), line in keyhole(), pivot in place(), angle in -7.0..7.0f64,
    ) {
        let found = largest_circle(&supports, &line).expect("a circle");
        let moved = |motion: &dyn Fn(Point) -> Point| -> Vec<(usize, Point)> {
            supports.iter().map(|(hole, s)| (*hole, motion(*s))).collect()
        };
        for (supports, line) in [
            (moved(&|p| p.turned_about(pivot, angle)), line.turned_about(pivot, angle)),
            (moved(&|p| p + pivot), line.shifted(pivot)),
            (moved(&Point::opposite_hand), line.opposite_hand()),
        ] {
            let again = largest_circle(&supports, &line).expect("a circle");
            prop_assert!((again.diameter - found.diameter).abs().to_mm() <= LARGEST_CIRCLE_MM);
        }
    }

    /// On a plate alike at both hands the circle at the right is named.
    #[test]
    fn holds_of_circles_alike_the_right_hand_one(half in supports(), line in keyhole()) {
        let other = half.iter().map(|(hole, s)| (hole + half.len(), s.opposite_hand()));
        let both: Vec<_> = half.iter().copied().chain(other).collect();
        let found = largest_circle(&both, &line).expect("a circle");
        prop_assert!(found.centre.x >= -LARGEST_CIRCLE_MM, "{:?}", found);
    }
}

/// A flange of this bore with so many rivets to a row, its straight deep enough for anything below.
fn riveted(count: u32, rows: u32, arrangement: &str, apart: f64, hole: f64) -> String {
    format!(
        "job: {{works: W, engine: E, drawing: D, revision: A, issued: \"2026-11-16\", units: millimetres}}
plate: {{kind: smokebox tube plate, view_from: smokebox, thickness: 12 mm}}
barrel: {{bore: 800 mm, thickness: 12 mm}}
flange: {{pressed: {{towards: smokebox, outside_diameter: 800 mm, heel_radius_inside: 30 mm, straight: 700 mm, trim: 10 mm}}}}
rivets: {{rivet: 10 mm, hole: {hole:.3} mm, count: {count}, from_edge: 60 mm, rows: {{number: {rows}, arrangement: {arrangement}, apart: {apart:.3} mm}}, bottom_centre: between holes}}
"
    )
}

/// Centres of the rivet holes on a cylinder of this diameter: across, up, and in from the flange's edge.
fn on_cylinder(line: &RivetLine, diameter: f64) -> Vec<[f64; 3]> {
    let place = |rivet: &Rivet| {
        let a = rivet.angle_deg * PI / 180.0;
        let radius = diameter / 2.0;
        [
            radius * sin(a),
            radius * cos(a),
            line.from_edge_of(rivet.row).to_mm(),
        ]
    };
    line.rivets.iter().map(place).collect()
}

fn apart(a: &[f64; 3], b: &[f64; 3]) -> f64 {
    sqrt((0..3).map(|i| (a[i] - b[i]) * (a[i] - b[i])).sum())
}

fn read_rivets(text: &str) -> Result<RivetLine, Vec<Fault>> {
    let spec = read_spec("rows.yaml", text.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"));
    set_out(&spec).map(|design| design.rivets.expect("rivets"))
}

proptest! {
    #![proptest_config(cases(48))]

    /// Rows are refused where any two of their holes, every pair looked at, would meet on the flange's inside, and only there.
    #[test]
    fn holds_rows_are_refused_where_two_holes_meet(
        count in 12u32..60, rows in 2u32..5, chain in any::<bool>(), gap in 8.0..60.0f64, hole in 12.0..40.0f64,
    ) {
        let arrangement = if chain { "chain" } else { "zig-zag" };
        // Set out with holes too small to meet, and measured; then asked with the holes meant.
        let small = read_rivets(&riveted(count, rows, arrangement, gap, 10.5).replace("rivet: 10 mm", "rivet: 1 mm"));
        prop_assume!(small.is_ok());
        let places = on_cylinder(&small.unwrap(), 800.0 - 24.0);
        let mut nearest = f64::INFINITY;
        for (i, a) in places.iter().enumerate() {
            for b in &places[i + 1..] {
                nearest = nearest.min(apart(a, b));
            }
        }
        prop_assume!((nearest - hole).abs() > 0.01);
        let asked = read_rivets(&riveted(count, rows, arrangement, gap, hole));
        prop_assert_eq!(asked.is_ok(), nearest > hole, "{} nearest, {} hole: {:?}", nearest, hole, asked.err());
    }

    /// Numbers run on without a gap; every row has the same step, in chain the same angles, in zig-zag those midway; a row
    /// starts at the first rivet on or after bottom centre.
    #[test]
    fn holds_rows_are_numbered_and_spaced_alike(
        count in 12u32..60, rows in 2u32..5, chain in any::<bool>(), on_a_hole in any::<bool>(),
    ) {
        let arrangement = if chain { "chain" } else { "zig-zag" };
        let mut text = riveted(count, rows, arrangement, 40.0, 12.0);
        if on_a_hole {
            text = text.replace("between holes", "on a hole");
        }
        let line = read_rivets(&text).unwrap_or_else(|faults| panic!("{faults:?}"));
        let step = 360.0 / f64::from(count);
        let ids: Vec<String> = line.rivets.iter().map(|rivet| rivet.id.clone()).collect();
        let wanted: Vec<String> = (1..=rows * count).map(|number| format!("R{number}")).collect();
        prop_assert_eq!(ids, wanted);
        for (row, rivets) in line.each_row() {
            prop_assert_eq!(rivets.len(), count as usize);
            let from_bottom = |rivet: &Rivet| (rivet.angle_deg - 180.0).rem_euclid(360.0);
            let half_over = on_a_hole == (!chain && row % 2 == 0);
            let first = if half_over { step / 2.0 } else { 0.0 };
            for (i, rivet) in rivets.iter().enumerate() {
                prop_assert_eq!(rivet.row, row);
                prop_assert!((from_bottom(rivet) - first - step * i as f64).abs() < 1e-9);
                let run = PI * 800.0 * from_bottom(rivet) / 360.0;
                prop_assert!((rivet.run.to_mm() - run).abs() < SAME_LENGTH_MM);
            }
            let from_edge = 60.0 + 40.0 * f64::from(row - 1);
            prop_assert!((line.from_edge_of(row).to_mm() - from_edge).abs() < SAME_LENGTH_MM);
        }
    }

    /// Board of Trade: rows at its zig-zag gap stand its diagonal pitch apart, on a flange as in the formula.
    #[test]
    fn holds_rows_at_the_board_of_trade_gap_stand_its_diagonal_apart(count in 20u32..60, hole in 12.0..25.0f64) {
        let pitch = Length::mm(PI * 800.0 / f64::from(count));
        let hole = Length::mm((hole * 1000.0).round() / 1000.0);
        let gap = board_of_trade_gap(pitch, hole);
        let line = read_rivets(&riveted(count, 2, "zig-zag", gap.to_mm(), hole.to_mm()));
        let line = line.unwrap_or_else(|faults| panic!("{faults:?}"));
        let stands = line.rows.expect("rows").diagonal_bore;
        // The gap is written to a thousandth of a millimetre.
        prop_assert!((stands - board_of_trade_diagonal(pitch, hole)).abs().to_mm() < 0.001);
    }
}
