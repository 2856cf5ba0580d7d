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
