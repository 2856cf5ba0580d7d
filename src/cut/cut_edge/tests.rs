//! Dressing and relief of an L, by hand, and of random plates.

use proptest::prelude::*;

use super::*;
use crate::units::angle::PI;

fn polygon(corners: &[(f64, f64)]) -> Outline {
    let at = |i: usize| Point::new(corners[i % corners.len()].0, corners[i % corners.len()].1);
    let edges = (0..corners.len()).map(|i| Edge::Line {
        from: at(i),
        to: at(i + 1),
    });
    Outline::new(edges.collect()).expect("an outline")
}

/// An L of two legs, 300 long and 100 wide: 300 × 100 + 200 × 100 = 50,000 mm², its hollow corner at (100, 100).
fn ell() -> Outline {
    polygon(&[
        (0.0, 0.0),
        (300.0, 0.0),
        (300.0, 100.0),
        (100.0, 100.0),
        (100.0, 300.0),
        (0.0, 300.0),
    ])
}

fn cutting(relief: &str) -> Cutting {
    let words = format!(r#"{{"process": "plasma", "origin": "works"{relief}}}"#);
    serde_json::from_str(&words).expect("settings")
}

fn relief(shape: &str, radius: &str) -> String {
    format!(r#", "corner_relief": {{"shape": "{shape}", "radius": "{radius}", "origin": "works"}}"#)
}

/// A radius of 20 leaves (1 - π/4) × 400 mm² in the corner; a notch of 10 takes three quarters of a disc out of the metal.
#[test]
fn by_hand_a_hollow_corner_is_rounded_or_notched() {
    for (words, area) in [
        (
            relief("radius", "20 mm"),
            50_000.0 + 400.0 * (1.0 - PI / 4.0),
        ),
        (relief("relief", "10 mm"), 50_000.0 - 75.0 * PI),
    ] {
        let cut = cut_edge(&cutting(&words), &ell(), Length::ZERO, "").expect("relieved");
        assert!((cut.outline.area_mm2() - area).abs() < 1e-6, "{words}");
        assert_eq!(cut.remarks.len(), 1);
    }
}

/// Dressed by 5: 50,000 and the strip all round, 1,200 × 5, five quarters of a disc at the corners that stand out, and in the
/// hollow corner the two strips overlap by 25.
#[test]
fn by_hand_an_ell_dressed_and_then_rounded() {
    let cut = cut_edge(
        &cutting(&relief("radius", "8 mm")),
        &ell(),
        Length::mm(5.0),
        "",
    )
    .expect("cut");
    let area = 50_000.0 + 6_000.0 + 5.0 / 4.0 * 25.0 * PI - 25.0 + 64.0 * (1.0 - PI / 4.0);
    assert!((cut.outline.area_mm2() - area).abs() < 1e-6);
}

#[test]
fn refuses_a_sharp_corner_that_points_into_the_metal() {
    let none = r#", "corner_relief": {"shape": "none", "origin": "works"}"#;
    for words in [
        "".to_string(),
        none.to_string(),
        relief("radius", "500 mm"),
        relief("relief", "250 mm"),
    ] {
        let faults = cut_edge(&cutting(&words), &ell(), Length::ZERO, "").expect_err("refused");
        assert_eq!(faults[0].path, "cutting.corner_relief");
        assert!(
            faults[0].fact.contains("(100 mm, 100 mm)"),
            "{}",
            faults[0].fact
        );
    }
}

/// A hollow of radius 4 in the middle of a side is closed by 5 mm of dressing, and its sharp corners with it.
#[test]
fn by_hand_a_hollow_that_dressing_closes_is_reported() {
    let at = Point::new;
    let line = |from, to| Edge::Line { from, to };
    let plate = Outline::new(vec![
        line(at(0.0, 0.0), at(200.0, 0.0)),
        line(at(200.0, 0.0), at(200.0, 100.0)),
        line(at(200.0, 100.0), at(104.0, 100.0)),
        Edge::Arc {
            from: at(104.0, 100.0),
            to: at(96.0, 100.0),
            centre: at(100.0, 100.0),
            radius: 4.0,
            anticlockwise: false,
        },
        line(at(96.0, 100.0), at(0.0, 100.0)),
        line(at(0.0, 100.0), at(0.0, 0.0)),
    ])
    .expect("a plate");
    let words = relief("radius", "1 mm");
    let cut = cut_edge(&cutting(&words), &plate, Length::mm(5.0), "").expect("cut");
    assert!(
        cut.remarks[0].starts_with("The edge near (100 mm, 96 mm) does not show"),
        "{:?}",
        cut.remarks
    );
}

proptest! {
    #![proptest_config(ProptestConfig { rng_seed: proptest::test_runner::RngSeed::Fixed(1831), cases: 100, failure_persistence: None, ..ProptestConfig::default() })]

    /// Every place of a cut edge lies at the distance asked for from the finished edge, and the pieces stay lines and arcs.
    #[test]
    fn holds_a_dressed_edge_lies_at_its_distance(
        radius in 300.0..600.0_f64, share in 0.5..0.9_f64, foot in 1.2..1.8_f64, corner in 20.0..60.0_f64, dress in 0.5..10.0_f64,
    ) {
        let plate = Outline::keyhole(radius, 2.0 * radius * share, -radius * foot, corner, None);
        let Ok(plate) = plate else { return Ok(()) };
        let cut = cut_edge(&cutting(""), &plate, Length::mm(dress), "").expect("it is cut");
        prop_assert!(cut.remarks.is_empty());
        for edge in cut.outline.edges() {
            for i in 0..=16 {
                let place = edge.at_share(f64::from(i) / 16.0);
                prop_assert!((plate.distance(place) - dress).abs() < 1e-6);
                prop_assert!(!plate.contains(place));
            }
        }
        prop_assert!(cut.outline.edges().len() <= 2 * plate.edges().len());
    }
}
