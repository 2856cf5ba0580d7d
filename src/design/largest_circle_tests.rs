//! The largest circle of plates worked by hand.

use super::{Edge, LargestCircle, Outline, Point, Step, Touch, Walk, largest_circle};
use crate::units::Length;
use crate::units::angle::sqrt;

fn points(places: &[(f64, f64)]) -> Vec<(usize, Point)> {
    places
        .iter()
        .map(|&(x, y)| Point::new(x, y))
        .enumerate()
        .collect()
}

fn inches(places: &[(f64, f64)]) -> Vec<(usize, Point)> {
    let mm = |v: f64| Length::inches(v).to_mm();
    points(
        &places
            .iter()
            .map(|&(x, y)| (mm(x), mm(y)))
            .collect::<Vec<_>>(),
    )
}

/// Diameter and centre as the scenarios print them.
fn in_inches(found: &LargestCircle) -> String {
    let at = |mm: f64| Length::mm(mm).to_inches();
    let (x, y) = (at(found.centre.x), at(found.centre.y));
    format!("{:.3} {x:.2} {y:.2}", found.diameter.to_inches())
}

/// A lattice of `count` × `count` supports, each row shifted by `slant` of the pitch on the last, in a frame that keeps the
/// line further off than any gap of it.
fn lattice(count: usize, pitch: (f64, f64), slant: f64) -> (Vec<(usize, Point)>, Outline) {
    let mut places = Vec::new();
    for row in 0..count {
        for column in 0..count {
            let shift = if row % 2 == 1 { slant } else { 0.0 };
            places.push(((column as f64 + shift) * pitch.0, row as f64 * pitch.1));
        }
    }
    let span = |p: f64| (count as f64 - 1.0) * p;
    let edge = [
        (0.0, 0.0),
        (span(pitch.0), 0.0),
        (span(pitch.0), span(pitch.1)),
        (0.0, span(pitch.1)),
    ];
    let at = |i: usize| Point::new(edge[i % 4].0, edge[i % 4].1);
    let line = (0..4).map(|i| Edge::Line {
        from: at(i),
        to: at(i + 1),
    });
    (points(&places), Outline::new(line.collect()).unwrap())
}

/// Largest circle by pattern: square p √2; rectangle √(a² + b²); equilateral 2 p/√3. Handbook identities, plain geometry:
/// half the diagonal, and two thirds of the height of the triangle, are the radii.
#[test]
fn by_hand_lattices() {
    let diameter = |(supports, line): (Vec<(usize, Point)>, Outline)| {
        largest_circle(&supports, &line).unwrap().diameter.to_mm()
    };
    assert!((diameter(lattice(5, (40.0, 40.0), 0.0)) - 40.0 * sqrt(2.0)).abs() < 1e-9);
    assert!(
        (diameter(lattice(5, (40.0, 60.0), 0.0)) - sqrt(40.0 * 40.0 + 60.0 * 60.0)).abs() < 1e-9
    );
    let (supports, _) = lattice(9, (40.0, 20.0 * sqrt(3.0)), 0.5);
    let line = Outline::circle(Point::new(170.0, 80.0 * sqrt(3.0)), 90.0);
    let found = largest_circle(&supports, &line).unwrap();
    assert!((found.diameter.to_mm() - 80.0 / sqrt(3.0)).abs() < 1e-9);
    assert_eq!(found.touches.len(), 3);
}

/// No support: the circle of the line itself. One at its centre: half as large, and of all those round the centre the one
/// furthest right. One 60 off centre in a radius of 100: (100 + 60)/2 = 80, centred 100 − 80 = 20 beyond the centre.
#[test]
fn by_hand_in_a_round_line() {
    let line = Outline::circle(Point::CENTRE, 100.0);
    let none = largest_circle(&[], &line).unwrap();
    assert!((none.diameter.to_mm() - 200.0).abs() < 1e-6 && none.centre.radius() < 1e-3);
    let middle = largest_circle(&points(&[(0.0, 0.0)]), &line).unwrap();
    assert!((middle.diameter.to_mm() - 100.0).abs() < 1e-6);
    assert!(
        middle.centre.distance(Point::new(50.0, 0.0)) < 0.5,
        "{:?}",
        middle.centre
    );
    let beside = largest_circle(&points(&[(60.0, 0.0)]), &line).unwrap();
    assert!((beside.diameter.to_mm() - 160.0).abs() < 1e-6);
    assert!(beside.centre.distance(Point::new(-20.0, 0.0)) < 1e-3);
}

fn marl_hen_tubes() -> Vec<(f64, f64)> {
    let columns = [
        (0, -11.672, 8),
        (1, -12.969, 8),
        (2, -14.266, 9),
        (3, -12.969, 8),
        (4, -11.672, 8),
        (5, -10.375, 7),
        (6, -6.484, 6),
    ];
    let mut tubes = Vec::new();
    for (k, low, count) in columns {
        for tube in 0..count {
            let y = low + 2.59375 * f64::from(tube);
            let x = 2.25 * f64::from(k);
            tubes.push((x, y));
            if k != 0 {
                tubes.push((-x, y));
            }
        }
    }
    tubes
}

const MARL_HEN_STAYS: [(f64, f64); 4] = [(5.75, 12.0), (-5.75, 12.0), (10.25, 9.0), (-10.25, 9.0)];

/// Round plate, tangent radius 16 7/8 in, 100 tubes and four stays: hand search of the gap round the pipe gave 10.407 in at
/// (±0.56, 11.66); with the tubes not counted, 29.94 in at (0, −1.91).
#[test]
fn by_hand_marl_hen() {
    let tubes = marl_hen_tubes();
    assert_eq!(tubes.len(), 100);
    let line = Outline::circle(Point::CENTRE, Length::inches(16.875).to_mm());
    let all = inches(&[&tubes[..], &MARL_HEN_STAYS[..]].concat());
    let print = |found: &LargestCircle| {
        let at = |mm: f64| Length::mm(mm).to_inches();
        (
            at(found.centre.x),
            at(found.centre.y),
            found.diameter.to_inches(),
        )
    };
    let (x, y, diameter) = print(&largest_circle(&all, &line).unwrap());
    assert_eq!(format!("{diameter:.3} {x:.2} {y:.2}"), "10.407 0.56 11.66");
    let (x, y, diameter) = print(&largest_circle(&inches(&MARL_HEN_STAYS), &line).unwrap());
    assert_eq!(
        format!("{diameter:.2} {:.2} {y:.2}", x.abs()),
        "29.94 0.00 -1.91"
    );
}

/// Keyhole plate, inner weld toe radius 392 mm, 119 tubes and four stays: held by the two middle tubes of the top row,
/// (±28.25, 147), and the weld toe. (392 − y)² = 28.25² + (y − 147)² gives y = (392² − 28.25² − 147²)/490 = 267.87, and
/// 2 × (392 − 267.87) = 248.3.
#[test]
fn by_hand_hobthrush() {
    let counts = [4, 7, 10, 11, 12, 13, 12, 13, 12, 13, 12];
    let mut supports = vec![
        (150.0, 270.0),
        (-150.0, 270.0),
        (265.0, 215.0),
        (-265.0, 215.0),
    ];
    for (row, count) in (-7..=3).zip(counts) {
        let first = -56.5 * f64::from(count - 1) / 2.0;
        supports.extend((0..count).map(|i| (first + 56.5 * f64::from(i), 49.0 * f64::from(row))));
    }
    assert_eq!(supports.len(), 123);
    let line = Outline::circle(Point::CENTRE, 392.0);
    let found = largest_circle(&points(&supports), &line).unwrap();
    assert_eq!(format!("{:.1}", found.diameter.to_mm()), "248.3");
    assert!(found.centre.x.abs() < 0.05);
    assert_eq!(format!("{:.1}", found.centre.y), "267.9");
}

fn outline_in_inches(corners: &[(f64, f64)]) -> Outline {
    let at = |(x, y): (f64, f64)| Point::new(Length::inches(x).to_mm(), Length::inches(y).to_mm());
    let straight = |&to: &(f64, f64)| Step {
        to: at(to),
        walk: Walk::Straight,
        corner_radius: 0.0,
    };
    let steps: Vec<Step> = corners[1..]
        .iter()
        .chain(&corners[..1])
        .map(straight)
        .collect();
    Outline::path(at(corners[0]), &steps).unwrap()
}

/// Firebox plate of the same boiler: 100 tubes drawn together and lowered, 21 stays below, palms at (±8 1/2, −16 3/4) and
/// (0, −17); side tangent 14 7/8. 7.274 in at (±11.24, −14.36) with the palms as points; 9.740 without.
#[test]
fn by_hand_marl_hen_firebox() {
    let place = |(x, y): (f64, f64)| (x * 2.1875 / 2.25, (y - 1.296875) * 2.5 / 2.59375 + 0.796875);
    let mut supports: Vec<(f64, f64)> = marl_hen_tubes().into_iter().map(place).collect();
    for y in [-21.0, -24.75, -28.5] {
        supports.extend((-3..=3).map(|k| (3.875 * f64::from(k), y)));
    }
    assert_eq!(supports.len(), 121);
    let line = outline_in_inches(&[
        (-14.875, -31.5),
        (14.875, -31.5),
        (14.875, 9.125),
        (-14.875, 9.125),
    ]);
    let without = largest_circle(&inches(&supports), &line).unwrap();
    assert_eq!(format!("{:.3}", without.diameter.to_inches()), "9.740");
    supports.extend([(8.5, -16.75), (-8.5, -16.75), (0.0, -17.0)]);
    let found = largest_circle(&inches(&supports), &line).unwrap();
    assert_eq!(in_inches(&found), "7.274 11.24 -14.36");
}

/// Throat plate: flat between the side tangents, 18 15/16 from the centre line, below the saddle's tangent radius of 21 9/16 and
/// above y −35 1/2; 33 stays. 5.845 in at (±9.45, −22.59).
#[test]
fn by_hand_old_ninepence_throat_plate() {
    let mut stays = Vec::new();
    for y in [-25.125, -29.0, -32.875] {
        stays.extend((-4..=4).map(|k| (4.0 * f64::from(k), y)));
    }
    for (x, y) in [(12.25, -21.75), (16.0, -21.25), (16.5, -17.375)] {
        stays.extend([(x, y), (-x, y)]);
    }
    assert_eq!(stays.len(), 33);
    let mm = |x: f64, y: f64| Point::new(Length::inches(x).to_mm(), Length::inches(y).to_mm());
    let saddle = -sqrt(21.5625 * 21.5625 - 18.9375 * 18.9375);
    let step = |to: Point, walk: Walk| Step {
        to,
        walk,
        corner_radius: 0.0,
    };
    let line = Outline::path(
        mm(-18.9375, -35.5),
        &[
            step(mm(18.9375, -35.5), Walk::Straight),
            step(mm(18.9375, saddle), Walk::Straight),
            step(mm(-18.9375, saddle), Walk::Through(mm(0.0, -21.5625))),
            step(mm(-18.9375, -35.5), Walk::Straight),
        ],
    );
    let found = largest_circle(&inches(&stays), &line.unwrap()).unwrap();
    assert_eq!(in_inches(&found), "5.845 9.45 -22.59");
    assert!(
        found
            .touches
            .iter()
            .any(|touch| matches!(touch, Touch::FlangeLine(_)))
    );
}
