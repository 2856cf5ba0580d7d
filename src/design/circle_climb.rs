//! From a circle that fits to the top of the hill it stands on.
//!
//! Each support near the circle is taken as receding at its own direction, the best step within a square is found exactly, and
//! the square shrinks where the step did not help. At a circle held by three supports that is Newton's method; on a rounded ridge
//! it still comes to rest at the top.

use super::Point;
use super::largest_circle::Fitting;
use super::support_field::{SupportField, TO_CLIMB};
use crate::units::tolerance::{NO_RISE_MM, SHORTEST_STEP_MM};

/// Steps at most: far above what any plate has been seen to need, so that none can run for ever.
const MOST_STEPS: usize = 200;

/// How far off a support is, and how fast that changes.
#[derive(Clone, Copy)]
struct Slope {
    distance: f64,
    /// Towards the support, 1 mm long.
    way: Point,
}

/// The top that is reached from a circle by steps of this size, mm, at first; never smaller than the circle given.
pub(super) fn climb(field: &SupportField, from: Fitting, step: f64) -> Fitting {
    let (mut at, mut step) = (from, step);
    for _ in 0..MOST_STEPS {
        if step < SHORTEST_STEP_MM || at.radius <= 0.0 {
            break;
        }
        let centre = at.centre + best_step(&slopes(field, at.centre), step);
        let radius = field.radius_at(centre);
        if radius > at.radius + NO_RISE_MM {
            at = Fitting { centre, radius };
        } else {
            step /= 4.0;
        }
    }
    at
}

fn slopes(field: &SupportField, centre: Point) -> Vec<Slope> {
    let near = field.touching::<TO_CLIMB>(centre);
    let slope = |place: &Point| Slope {
        distance: place.distance(centre),
        way: (*place - centre).unit(),
    };
    near.places().iter().map(slope).collect()
}

/// The displacement within a square of this half side that leaves the nearest support furthest off, by the slopes.
fn best_step(slopes: &[Slope], half: f64) -> Point {
    let room = |d: Point| {
        let rooms = slopes.iter().map(|s| s.distance - s.way.dot(d));
        rooms.fold(f64::INFINITY, f64::min)
    };
    let mut best = (room(Point::default()), Point::default());
    let mut offer = |d: Point| {
        let inside = d.x.abs() <= half && d.y.abs() <= half;
        if inside && room(d) > best.0 {
            best = (room(d), d);
        }
    };
    for (x, y) in [(half, half), (half, -half), (-half, half), (-half, -half)] {
        offer(Point::new(x, y));
    }
    for (rank, a) in slopes.iter().enumerate() {
        for (second, b) in slopes[..rank].iter().enumerate() {
            let ab = level(a, b);
            for side in [-half, half] {
                offer(Point::new(side, (ab.1 - ab.0.x * side) / ab.0.y));
                offer(Point::new((ab.1 - ab.0.y * side) / ab.0.x, side));
            }
            for c in &slopes[..second] {
                let ac = level(a, c);
                let turn = ab.0.cross(ac.0);
                let x = (ab.1 * ac.0.y - ac.1 * ab.0.y) / turn;
                let y = (ab.0.x * ac.1 - ac.0.x * ab.1) / turn;
                offer(Point::new(x, y));
            }
        }
    }
    best.1
}

/// Where two supports are equally far off, by their slopes: the displacements d with n · d = k.
fn level(a: &Slope, b: &Slope) -> (Point, f64) {
    (a.way - b.way, a.distance - b.distance)
}
