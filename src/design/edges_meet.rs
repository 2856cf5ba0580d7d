//! Where two edges cross or touch.

use super::{Edge, Point};
use crate::units::angle::sqrt;
use crate::units::tolerance::{SAME_JOINT_MM, SAME_LENGTH_MM};

/// A place within [`SAME_LENGTH_MM`] of both edges, if there is one.
pub(super) fn edges_meet(a: &Edge, b: &Edge) -> Option<Point> {
    let ends = [a.from(), a.to(), b.from(), b.to()];
    ends.into_iter()
        .chain(meetings_of_carriers(a, b))
        .find(|&place| on_both(a, b, place))
}

/// A place besides their common joint where two edges that follow one another cross or touch.
///
/// A fillet runs smoothly into its line: looked for like any other, the meeting at such a joint is found smeared over a
/// tenth of a millimetre. So the joint is taken as known, and the only other meeting is its reflection in the line that
/// joins the centres.
pub(super) fn edges_meet_again(a: &Edge, b: &Edge, joints: &[Point]) -> Option<Point> {
    let ends = [a.from(), a.to(), b.from(), b.to()];
    ends.into_iter()
        .chain(
            joints
                .iter()
                .filter_map(|&joint| other_meeting(a, b, joint)),
        )
        .filter(|place| joints.iter().all(|j| j.distance(*place) > SAME_JOINT_MM))
        .find(|&place| on_both(a, b, place))
}

fn on_both(a: &Edge, b: &Edge, place: Point) -> bool {
    a.distance(place) <= SAME_LENGTH_MM && b.distance(place) <= SAME_LENGTH_MM
}

/// Given one place where the endless line or full circle of both edges meet, the other one.
fn other_meeting(a: &Edge, b: &Edge, joint: Point) -> Option<Point> {
    // Both carriers are symmetrical about the line through the centres; a straight edge counts as having its centre
    // endlessly far off square to itself.
    let axis = match (a, b) {
        (Edge::Line { .. }, Edge::Line { .. }) => return None,
        (Edge::Line { from, to }, Edge::Arc { centre, .. })
        | (Edge::Arc { centre, .. }, Edge::Line { from, to }) => (*centre, (*to - *from).left()),
        (Edge::Arc { centre: one, .. }, Edge::Arc { centre: two, .. }) => (*one, *two - *one),
    };
    let along = axis.1.unit();
    let arm = joint - axis.0;
    (along != Point::default()).then(|| axis.0 + along * (2.0 * arm.dot(along)) - arm)
}

/// Every place where the endless lines or full circles of two edges meet; where they just miss, the place between.
pub(super) fn meetings_of_carriers(a: &Edge, b: &Edge) -> Vec<Point> {
    match (*a, *b) {
        (Edge::Line { from: p, to: q }, Edge::Line { from: r, to: s }) => {
            line_meets_line(p, q - p, r, s - r)
        }
        (Edge::Line { from, to }, Edge::Arc { centre, radius, .. })
        | (Edge::Arc { centre, radius, .. }, Edge::Line { from, to }) => {
            line_meets_circle(from, to - from, centre, radius)
        }
        (
            Edge::Arc {
                centre: one,
                radius: r1,
                ..
            },
            Edge::Arc {
                centre: two,
                radius: r2,
                ..
            },
        ) => circle_meets_circle(one, r1, two, r2),
    }
}

pub(super) fn line_meets_line(p: Point, along: Point, q: Point, other: Point) -> Vec<Point> {
    let turn = along.unit().cross(other.unit());
    if turn.abs() < f64::EPSILON {
        return Vec::new();
    }
    vec![p + along * ((q - p).cross(other) / along.cross(other))]
}

pub(super) fn line_meets_circle(p: Point, along: Point, centre: Point, radius: f64) -> Vec<Point> {
    let unit = along.unit();
    let foot = p + unit * (centre - p).dot(unit);
    let clear = foot.distance(centre);
    if clear > radius + SAME_LENGTH_MM {
        return Vec::new();
    }
    let half = sqrt((radius * radius - clear * clear).max(0.0));
    vec![foot - unit * half, foot + unit * half]
}

pub(super) fn circle_meets_circle(one: Point, r1: f64, two: Point, r2: f64) -> Vec<Point> {
    let apart = one.distance(two);
    if apart == 0.0 || apart > r1 + r2 + SAME_LENGTH_MM || apart + SAME_LENGTH_MM < (r1 - r2).abs()
    {
        return Vec::new();
    }
    let along = (two - one).unit();
    let run = (apart * apart + r1 * r1 - r2 * r2) / (2.0 * apart);
    let half = sqrt((r1 * r1 - run * run).max(0.0));
    let foot = one + along * run;
    vec![foot - along.left() * half, foot + along.left() * half]
}
