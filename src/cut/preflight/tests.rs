//! A sound part, and one planted fault at a time.

use super::*;
use crate::cut::entity::Vertex;

fn at(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

fn circle(x: f64, y: f64, radius: f64) -> Entity {
    Entity::Circle {
        centre: at(x, y),
        radius,
    }
}

fn line(from: Point, to: Point) -> Entity {
    Entity::Line { from, to }
}

fn path(corners: &[(f64, f64, f64)], closed: bool) -> Entity {
    Entity::Polyline {
        vertices: corners
            .iter()
            .map(|&(x, y, bulge)| Vertex {
                at: at(x, y),
                bulge,
            })
            .collect(),
        closed,
    }
}

/// A box 400 by 300 with a round top, two holes, a pop, a letter and a line beside it.
fn sound() -> Vec<(Layer, Entity)> {
    vec![
        (Layer::Pop, line(at(197.0, 150.0), at(203.0, 150.0))),
        (Layer::Scribe, line(at(200.0, 5.0), at(200.0, 25.0))),
        (Layer::Stamp, line(at(300.0, 250.0), at(310.0, 260.0))),
        (Layer::CutInside, circle(100.0, 100.0, 20.0)),
        (Layer::CutInside, circle(150.0, 100.0, 20.0)),
        (
            Layer::CutOutside,
            path(
                &[
                    (0.0, 0.0, 0.0),
                    (400.0, 0.0, 0.0),
                    (400.0, 300.0, 1.0),
                    (0.0, 300.0, 0.0),
                ],
                true,
            ),
        ),
        (Layer::Reference, line(at(500.0, 0.0), at(600.0, 0.0))),
    ]
}

fn only_fact(entities: &[(Layer, Entity)], limits: Limits) -> String {
    let found = judge(entities, limits).expect_err("it is unfit");
    assert_eq!(found.len(), 1, "{found:?}");
    found[0].to_string()
}

fn with(layer: Layer, entity: Entity) -> String {
    let mut entities = sound();
    entities.push((layer, entity));
    only_fact(&entities, Limits::default())
}

#[test]
fn holds_a_sound_part_is_fit() {
    let limits = Limits {
        least_hole_mm: Some(40.0),
        least_web_mm: Some(10.0),
        ..Limits::default()
    };
    assert_eq!(judge(&sound(), limits), Ok(()));
}

#[test]
fn refuses_a_contour_left_open() {
    let open = path(
        &[(10.0, 200.0, 0.0), (50.0, 200.0, 0.0), (50.0, 240.0, 0.0)],
        false,
    );
    assert_eq!(
        with(Layer::CutInside, open),
        "a polyline on CUT-INSIDE is not closed, near (10 mm, 200 mm)"
    );
}

#[test]
fn refuses_a_line_alone_on_a_cut_layer() {
    let alone = line(at(10.0, 200.0), at(50.0, 200.0));
    assert_eq!(
        with(Layer::CutInside, alone),
        "a line on CUT-INSIDE stands alone and closes nothing, near (10 mm, 200 mm)"
    );
}

#[test]
fn refuses_a_hole_drawn_twice() {
    assert_eq!(
        with(Layer::CutInside, circle(100.0, 100.0, 20.0)),
        "one contour is drawn twice and would be cut twice, near (100 mm, 100 mm)"
    );
}

/// Centres 30 mm apart, radii 20 and 5: they still stand 5 mm apart; at 24 mm they would overlap by 1.
#[test]
fn refuses_holes_that_overlap_and_a_hole_within_a_hole() {
    let words = "two inside cuts meet or lie in one another, near ";
    assert_eq!(
        with(Layer::CutInside, circle(100.0, 124.0, 5.0)),
        format!("{words}(100 mm, 100 mm)")
    );
    assert_eq!(
        with(Layer::CutInside, circle(100.0, 100.0, 5.0)),
        format!("{words}(100 mm, 100 mm)")
    );
    let mut apart = sound();
    apart.push((Layer::CutInside, circle(100.0, 130.0, 5.0)));
    assert_eq!(judge(&apart, Limits::default()), Ok(()));
}

#[test]
fn refuses_entities_of_no_size() {
    assert_eq!(
        with(Layer::Scribe, line(at(9.0, 9.0), at(9.0, 9.0))),
        "a line of no size on SCRIBE, near (9 mm, 9 mm)"
    );
    assert_eq!(
        with(Layer::CutInside, circle(200.0, 200.0, 0.0)),
        "a circle of no size on CUT-INSIDE, near (200 mm, 200 mm)"
    );
    let doubled = path(
        &[
            (10.0, 200.0, 0.0),
            (10.0, 200.0, 0.0),
            (50.0, 200.0, 0.0),
            (50.0, 240.0, 0.0),
        ],
        true,
    );
    assert!(with(Layer::CutInside, doubled).contains("has an edge of no length"));
}

#[test]
fn refuses_a_contour_that_crosses_itself() {
    let bow = path(
        &[
            (10.0, 200.0, 0.0),
            (50.0, 240.0, 0.0),
            (50.0, 200.0, 0.0),
            (10.0, 240.0, 0.0),
        ],
        true,
    );
    assert_eq!(
        with(Layer::CutInside, bow),
        "a closed polyline on CUT-INSIDE crosses itself, near (30 mm, 220 mm)"
    );
}

#[test]
fn refuses_an_arc_of_more_than_half_a_turn() {
    let fat = path(&[(10.0, 200.0, 1.5), (50.0, 200.0, 0.0)], true);
    assert!(with(Layer::CutInside, fat).contains("has an arc of more than half a turn"));
}

#[test]
fn refuses_a_cut_off_the_part_and_one_through_its_edge() {
    let words = "an inside cut meets the edge or lies outside it";
    assert!(with(Layer::CutInside, circle(700.0, 100.0, 20.0)).starts_with(words));
    assert!(with(Layer::CutInside, circle(15.0, 200.0, 20.0)).starts_with(words));
    let slot = path(
        &[
            (390.0, 100.0, 0.0),
            (410.0, 100.0, 0.0),
            (410.0, 120.0, 0.0),
            (390.0, 120.0, 0.0),
        ],
        true,
    );
    assert!(with(Layer::CutInside, slot).starts_with(words));
}

#[test]
fn refuses_a_second_edge_and_none() {
    assert_eq!(
        with(Layer::CutOutside, circle(900.0, 0.0, 20.0)),
        "2 contours lie on CUT-OUTSIDE, and a part has one edge, near (900 mm, 0 mm)"
    );
    let mut none = sound();
    none.retain(|(layer, _)| *layer != Layer::CutOutside);
    assert_eq!(
        only_fact(&none, Limits::default()),
        "0 contours lie on CUT-OUTSIDE, and a part has one edge"
    );
}

#[test]
fn refuses_marks_off_the_part_or_in_a_hole() {
    assert!(
        with(Layer::Stamp, line(at(390.0, 100.0), at(410.0, 100.0)))
            .starts_with("a mark on STAMP lies off the part")
    );
    assert!(
        with(Layer::Pop, Entity::Dot(at(100.0, 100.0)))
            .starts_with("a mark on POP lies in a hole that is cut")
    );
}

#[test]
fn refuses_a_pop_struck_twice() {
    let mut entities = sound();
    entities.push(entities[0].clone());
    assert!(only_fact(&entities, Limits::default()).starts_with("a pop is struck twice"));
}

#[test]
fn refuses_a_reference_line_on_the_part() {
    assert!(
        with(Layer::Reference, line(at(350.0, 50.0), at(500.0, 50.0)))
            .starts_with("a line that is not to be cut lies on the part")
    );
}

/// The two holes stand 50 mm apart and are 40 mm across: 10 mm is left. From the first to the edge are 80 mm.
#[test]
fn refuses_less_metal_than_the_process_leaves_sound() {
    let limits = Limits {
        least_hole_mm: None,
        least_web_mm: Some(10.1),
        ..Limits::default()
    };
    assert_eq!(
        only_fact(&sound(), limits),
        "10 mm is left between two cuts, and the process leaves no less than 10.1 mm sound, near (100 mm, 100 mm)"
    );
}

#[test]
fn refuses_a_hole_smaller_than_the_process_makes_clean() {
    let limits = Limits {
        least_hole_mm: Some(40.5),
        least_web_mm: None,
        ..Limits::default()
    };
    let found = judge(&sound(), limits).expect_err("both are too small");
    assert_eq!(found.len(), 2);
    assert_eq!(
        found[0].to_string(),
        "a hole of 40 mm is below the least that the process makes clean, 40.5 mm, near (100 mm, 100 mm)"
    );
}

/// The same box begun at another corner is the same cut.
#[test]
fn refuses_a_contour_drawn_twice_from_another_corner() {
    let corners = [
        (200.0, 50.0, 0.0),
        (250.0, 50.0, 0.0),
        (250.0, 90.0, 0.0),
        (200.0, 90.0, 0.0),
    ];
    let mut turned = corners;
    turned.rotate_left(2);
    let mut entities = sound();
    entities.push((Layer::CutInside, path(&corners, true)));
    entities.push((Layer::CutInside, path(&turned, true)));
    assert!(only_fact(&entities, Limits::default()).starts_with("one contour is drawn twice"));
}

/// Two openings that share a side overlap there.
#[test]
fn refuses_openings_that_share_a_side() {
    let opening = |x: f64| {
        path(
            &[
                (x, 50.0, 0.0),
                (x + 20.0, 50.0, 0.0),
                (x + 20.0, 90.0, 0.0),
                (x, 90.0, 0.0),
            ],
            true,
        )
    };
    let mut entities = sound();
    entities.push((Layer::CutInside, opening(200.0)));
    entities.push((Layer::CutInside, opening(220.0)));
    assert!(only_fact(&entities, Limits::default()).starts_with("two inside cuts meet"));
}

/// A step of a ten-millionth of a millimetre is none when six places are written.
#[test]
fn refuses_a_step_that_rounds_away() {
    let mut entities = sound();
    let corners = [
        (200.0, 50.0, 0.0),
        (250.0, 50.0, 0.0),
        (250.000_000_1, 50.0, 0.0),
        (250.0, 90.0, 0.0),
    ];
    entities.push((Layer::CutInside, path(&corners, true)));
    assert!(only_fact(&entities, Limits::default()).contains("has an edge of no length"));
}

/// A hole of radius 20 as 48 straight pieces; an octagon is a shape of its own.
#[test]
fn refuses_an_arc_in_facets() {
    let polygon = |sides: usize| {
        let corner = |i: usize| {
            let angle = 2.0 * crate::units::angle::PI * i as f64 / sides as f64;
            let (x, y) = (
                crate::units::angle::cos(angle),
                crate::units::angle::sin(angle),
            );
            (300.0 + 20.0 * x, 100.0 + 20.0 * y, 0.0)
        };
        path(&(0..sides).map(corner).collect::<Vec<_>>(), true)
    };
    let mut entities = sound();
    entities.push((Layer::CutInside, polygon(48)));
    assert!(
        only_fact(&entities, Limits::default())
            .starts_with("an arc on CUT-INSIDE is drawn in short straight pieces")
    );
    entities.pop();
    entities.push((Layer::CutInside, polygon(8)));
    assert_eq!(judge(&entities, Limits::default()), Ok(()));
}

#[test]
fn refuses_stray_points_and_things_far_off() {
    assert!(
        with(Layer::Scribe, Entity::Dot(at(50.0, 50.0))).starts_with("a stray point on SCRIBE")
    );
    let far = line(at(90_000.0, 0.0), at(90_010.0, 0.0));
    assert!(with(Layer::Reference, far).starts_with("a line on REFERENCE lies far off the part"));
}

#[test]
fn refuses_a_line_scribed_twice_either_way() {
    let again = line(at(200.0, 25.0), at(200.0, 5.0));
    assert!(with(Layer::Scribe, again).starts_with("a line on SCRIBE is drawn twice"));
}

/// The sound part scribes x 200 from y 5 to 25: a line from 15 to 35 goes over it for 10 mm, one from 25 on only touches its end,
/// and one 1 mm to the side runs beside it.
#[test]
fn refuses_a_line_scribed_over_part_of_another() {
    let over = line(at(200.0, 35.0), at(200.0, 15.0));
    assert!(with(Layer::Scribe, over).starts_with("two lines on SCRIBE lie along one another"));
    for clear in [
        line(at(200.0, 25.0), at(200.0, 35.0)),
        line(at(201.0, 35.0), at(201.0, 15.0)),
    ] {
        let mut entities = sound();
        entities.push((Layer::Scribe, clear));
        assert_eq!(judge(&entities, Limits::default()), Ok(()));
    }
}

/// 80 mm are left from the first hole to the left edge and to the foot.
#[test]
fn refuses_a_hole_too_near_the_edge() {
    let limits = Limits {
        least_edge_mm: Some(80.1),
        ..Limits::default()
    };
    let found = judge(&sound(), limits).expect_err("both stand 80 mm from the foot");
    assert_eq!(found.len(), 2);
    assert!(
        found[0]
            .fact
            .starts_with("80 mm is left between a hole and the edge")
    );
}

/// The part is 400 by 300 + 200 = 500: it fits 500 by 400 turned, and not 499 by 401.
#[test]
fn refuses_a_part_larger_than_its_stock() {
    let on = |w: f64, h: f64| {
        let limits = Limits {
            stock_mm: Some([w, h]),
            ..Limits::default()
        };
        judge(&sound(), limits)
    };
    assert_eq!(on(500.0, 400.0), Ok(()));
    let found = on(499.0, 401.0).expect_err("too long");
    assert!(found[0].fact.starts_with("the part is 400 mm by 500 mm, and the plate named as its stock has room for 499 mm by 401 mm"));
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig {
        rng_seed: proptest::test_runner::RngSeed::Fixed(1831), cases: 60, failure_persistence: None, ..Default::default()
    })]

    /// A plate with a grid of holes that leave each other and the edge enough is fit, wherever it lies.
    #[test]
    fn holds_a_good_plate_is_fit(
        wide in 300.0..1500.0_f64, tall in 300.0..1500.0_f64, hole in 10.0..40.0_f64, web in 5.0..30.0_f64, x in -900.0..900.0_f64,
    ) {
        let pitch = hole + web;
        let mut entities = vec![(Layer::CutOutside, path(&[(x, 0.0, 0.0), (x + wide, 0.0, 0.0), (x + wide, tall, 1.0), (x, tall, 0.0)], true))];
        let (columns, rows) = ((wide / pitch) as usize - 1, (tall / pitch) as usize - 1);
        for (i, j) in (0..columns).flat_map(|i| (0..rows).map(move |j| (i, j))) {
            entities.push((Layer::CutInside, circle(x + pitch * (i as f64 + 1.0), pitch * (j as f64 + 1.0), hole / 2.0)));
        }
        let limits = Limits {
            least_hole_mm: Some(hole),
            least_web_mm: Some(web),
            least_edge_mm: Some(web),
            ..Limits::default()
        };
        proptest::prop_assert_eq!(judge(&entities, limits), Ok(()));
    }
}
