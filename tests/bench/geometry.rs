//! How long the survey of ligaments and the largest circle take on 300, 20,000 and 100,000 holes. Run by
//! `cargo bench --bench geometry`; nothing is held to a time here.

use centrepop::design::{
    Hole, HoleGroup, Outline, Point, Survey, TakesUp, directions, largest_circle, survey,
};
use centrepop::spec::Purpose;
use centrepop::units::angle::{PI, sqrt};
use centrepop::units::{Length, Size};
use divan::Bencher;

fn main() {
    divan::main();
}

const COUNTS: [usize; 3] = [300, 20_000, 100_000];

/// Pitch of the nests, mm.
const PITCH: f64 = 57.0;

/// Centres of a staggered nest of about so many holes in a round plate, and the plate's radius, mm.
fn nest(count: usize) -> (Vec<Point>, f64) {
    let row = PITCH * sqrt(3.0) / 2.0;
    let radius = sqrt(count as f64 * PITCH * row / PI);
    let steps = (radius / row) as i64 + 2;
    let mut places = Vec::new();
    for y in -steps..=steps {
        for x in -steps..=steps {
            let shift = if y % 2 == 0 { 0.0 } else { PITCH / 2.0 };
            let place = Point::new(x as f64 * PITCH + shift, y as f64 * row);
            if place.radius() <= radius {
                places.push(place);
            }
        }
    }
    (places, radius)
}

/// The holes of such a nest, every thirteenth a flue.
fn holes(count: usize) -> (Vec<Hole>, Vec<HoleGroup>) {
    let size = |text: &str| Size::read(text).expect("a size");
    let group = |purpose, text: &str| HoleGroup {
        name: String::new(),
        purpose,
        finish: size(text),
        ligament_hole: size(text).value(),
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
    };
    let groups = vec![group(Purpose::Tube, "39 mm"), group(Purpose::Flue, "44 mm")];
    let hole = |(number, at): (usize, Point)| {
        let group = usize::from(number.is_multiple_of(13));
        Hole {
            id: String::new(),
            group,
            at,
            finish: groups[group].finish.clone(),
            ligament_hole: groups[group].ligament_hole,
            exception: None,
            line: None,
            path: String::new(),
        }
    };
    (
        nest(count).0.into_iter().enumerate().map(hole).collect(),
        groups,
    )
}

#[divan::bench(args = COUNTS)]
fn survey_of_ligaments(bencher: Bencher, count: usize) {
    let (holes, groups) = holes(count);
    bencher.bench(|| -> Survey { survey(&holes, &groups) });
}

#[divan::bench(args = COUNTS)]
fn ligaments_by_direction(bencher: Bencher, count: usize) {
    let (holes, groups) = holes(count);
    bencher.bench(|| directions(&holes, &groups));
}

/// A nest with a clear band 60 mm wide between it and the line: the largest circle stands in the band.
#[divan::bench(args = COUNTS)]
fn largest_circle_beside_a_nest(bencher: Bencher, count: usize) {
    let (places, radius) = nest(count);
    let supports: Vec<_> = places.into_iter().enumerate().collect();
    let line = Outline::circle(Point::CENTRE, radius + 60.0);
    bencher.bench(|| largest_circle(&supports, &line));
}

/// A nest that runs over the line: every gap between three tubes is as large as every other.
#[divan::bench(args = COUNTS)]
fn largest_circle_of_gaps_all_alike(bencher: Bencher, count: usize) {
    let (places, radius) = nest(count);
    let supports: Vec<_> = places.into_iter().enumerate().collect();
    let line = Outline::circle(Point::CENTRE, radius - 2.0 * PITCH);
    bencher.bench(|| largest_circle(&supports, &line));
}

/// Supports by chance in a round plate.
#[divan::bench(args = COUNTS)]
fn largest_circle_by_chance(bencher: Bencher, count: usize) {
    let (_, radius) = nest(count);
    let mut state = 1831_u64;
    let mut chance = || {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((state >> 11) as f64 / (1u64 << 53) as f64 - 0.5) * 2.0 * radius
    };
    let supports: Vec<_> = (0..count)
        .map(|hole| (hole, Point::new(chance(), chance())))
        .collect();
    let line = Outline::circle(Point::CENTRE, radius);
    bencher.bench(|| largest_circle(&supports, &line));
}

/// The line 20 mm inside the edge of an extended plate.
#[divan::bench]
fn parallel_line_of_a_keyhole(bencher: Bencher) {
    let plate = Outline::keyhole(470.0, 720.0, -690.0, 60.0, None).expect("a plate");
    bencher.bench(|| plate.offset(Length::mm(-20.0)));
}
