//! The edge of a plate walked corner by corner: straight lines, arcs by radius or through a place, and rounded corners.

use std::fmt;

use super::edges_meet::{circle_meets_circle, line_meets_circle, line_meets_line};
use super::{Edge, NotAnOutline, Outline, Point};
use crate::units::angle::sqrt;
use crate::units::tolerance::{SAME_JOINT_MM, SAME_LENGTH_MM};

/// How a step of the walk goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Walk {
    /// Straight.
    Straight,
    /// Along the arc through this place.
    Through(Point),
    /// Along the arc of this radius, mm, the shorter way, bulging to the right hand of the walk.
    Radius(f64),
}

/// One step of the walk.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// Where it ends.
    pub to: Point,
    /// How it goes there.
    pub walk: Walk,
    /// Radius, mm, to which the corner at its end is rounded off; 0 for a sharp one.
    pub corner_radius: f64,
}

/// Why a walk makes no edge of a plate.
#[derive(Clone, Debug, PartialEq)]
pub enum ImpossiblePath {
    /// One step is at fault, counted from 0.
    Step(usize, BadStep),
    /// The last step does not come back to the start: how far off it ends, mm.
    NotClosed(f64),
    /// The whole does not stand as an outline.
    NotAnOutline(NotAnOutline),
}

/// What is wrong with a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BadStep {
    /// It ends where it starts.
    NoLength,
    /// A place or a size is not a number, or a size is less than nothing.
    NotASize,
    /// The arc's three places lie on one line.
    ThroughOnTheLine,
    /// The radius is less than half the distance between the ends.
    RadiusTooSmall,
    /// The corner at its end has no room for its radius.
    CornerHasNoRoom,
    /// The edges at its end run smoothly into one another, so there is no corner to round.
    NoCorner,
}

impl fmt::Display for BadStep {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            BadStep::NoLength => "the step ends where it starts",
            BadStep::NotASize => "a place or a radius of the step is not a size that can be drawn",
            BadStep::ThroughOnTheLine => {
                "the start, the place to go through and the end lie on one line, so no arc goes through them"
            }
            BadStep::RadiusTooSmall => "the radius is less than half the distance from start to end",
            BadStep::CornerHasNoRoom => "the corner radius does not fit between the edges that meet there",
            BadStep::NoCorner => {
                "the edges run smoothly into one another, so there is no corner to round off"
            }
        })
    }
}

impl fmt::Display for ImpossiblePath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ImpossiblePath::Step(step, fault) => write!(f, "step {}: {fault}", step + 1),
            ImpossiblePath::NotClosed(gap) => {
                write!(
                    f,
                    "the last step ends {gap:.3} mm from the start, so the edge does not close"
                )
            }
            ImpossiblePath::NotAnOutline(fault) => fault.fmt(f),
        }
    }
}

impl std::error::Error for ImpossiblePath {}

impl Outline {
    /// The edge walked from a start by steps, either way round; the last comes back to the start.
    pub fn path(start: Point, steps: &[Step]) -> Result<Outline, ImpossiblePath> {
        let edges = walk(start, steps)?;
        let end = steps.last().map_or(start, |s| s.to);
        if end.distance(start) > SAME_LENGTH_MM {
            return Err(ImpossiblePath::NotClosed(end.distance(start)));
        }
        let radii: Vec<f64> = steps.iter().map(|s| s.corner_radius).collect();
        Outline::new(round_corners(&edges, &radii)?).map_err(ImpossiblePath::NotAnOutline)
    }

    /// The outline with the corner at the end of each edge rounded off to the radius of its number, mm; 0 leaves a corner as it
    /// is. There is a radius for every edge.
    pub fn with_corners_rounded(&self, radii: &[f64]) -> Result<Outline, ImpossiblePath> {
        let edges = round_corners(self.edges(), radii)?;
        Outline::new(edges).map_err(ImpossiblePath::NotAnOutline)
    }
}

/// The edges walked from a start by steps that need not come back to it. The last step ends without a corner.
pub(super) fn open_walk(start: Point, steps: &[Step]) -> Result<Vec<Edge>, ImpossiblePath> {
    let edges = walk(start, steps)?;
    let radii: Vec<f64> = steps.iter().map(|s| s.corner_radius).collect();
    round_corners(&edges, &radii)
}

fn walk(start: Point, steps: &[Step]) -> Result<Vec<Edge>, ImpossiblePath> {
    let mut from = start;
    let mut edges = Vec::new();
    for (number, step) in steps.iter().enumerate() {
        edges.push(take_step(from, step).map_err(|fault| ImpossiblePath::Step(number, fault))?);
        from = step.to;
    }
    Ok(edges)
}

fn take_step(from: Point, step: &Step) -> Result<Edge, BadStep> {
    let to = step.to;
    let sized = |mm: f64| mm.is_finite() && mm >= 0.0;
    if !(from.is_finite() && to.is_finite() && sized(step.corner_radius)) {
        return Err(BadStep::NotASize);
    }
    if from.distance(to) <= SAME_LENGTH_MM {
        return Err(BadStep::NoLength);
    }
    match step.walk {
        Walk::Straight => Ok(Edge::Line { from, to }),
        Walk::Through(place) => arc_through(from, place, to),
        Walk::Radius(radius) => arc_of_radius(from, to, radius),
    }
}

/// The arc from a place through another to a third; it may be more than half a turn.
fn arc_through(from: Point, place: Point, to: Point) -> Result<Edge, BadStep> {
    if !place.is_finite() {
        return Err(BadStep::NotASize);
    }
    let (a, b) = (place - from, to - from);
    let twice_area = a.cross(b);
    // How far the middle place stands off the line from start to end.
    if twice_area.abs() <= SAME_LENGTH_MM * b.radius() {
        return Err(BadStep::ThroughOnTheLine);
    }
    let (aa, bb) = (a.dot(a), b.dot(b));
    let arm = Point::new(b.y * aa - a.y * bb, a.x * bb - b.x * aa) * (0.5 / twice_area);
    let centre = from + arm;
    Ok(Edge::Arc {
        from,
        to,
        centre,
        radius: arm.radius(),
        anticlockwise: twice_area > 0.0,
    })
}

fn arc_of_radius(from: Point, to: Point, radius: f64) -> Result<Edge, BadStep> {
    if !radius.is_finite() || radius <= SAME_LENGTH_MM {
        return Err(BadStep::NotASize);
    }
    let half = to.midway(from) - from;
    if half.radius() > radius + SAME_LENGTH_MM {
        return Err(BadStep::RadiusTooSmall);
    }
    // An arc that bulges to the right has its centre on the left.
    let rise = sqrt((radius * radius - half.dot(half)).max(0.0));
    Ok(Edge::Arc {
        from,
        to,
        centre: from + half + half.unit().left() * rise,
        radius,
        anticlockwise: true,
    })
}

/// Puts an arc of its radius into the corner at the end of every step that has one, and shortens the edges it touches.
fn round_corners(edges: &[Edge], radii: &[f64]) -> Result<Vec<Edge>, ImpossiblePath> {
    let count = edges.len();
    let mut corners = Vec::new();
    for (number, &radius) in radii.iter().enumerate() {
        let rounded = radius > SAME_LENGTH_MM;
        let corner = rounded.then(|| fillet(&edges[number], &edges[(number + 1) % count], radius));
        corners.push(
            corner
                .transpose()
                .map_err(|fault| ImpossiblePath::Step(number, fault))?,
        );
    }
    let mut all = Vec::new();
    for (number, edge) in edges.iter().enumerate() {
        let before: &Option<Edge> = &corners[(number + count - 1) % count];
        let start = before.map_or(edge.from(), |arc| arc.to());
        let end = corners[number].map_or(edge.to(), |arc| arc.from());
        let left = edge.run_to(end) - edge.run_to(start);
        if left < -SAME_LENGTH_MM {
            return Err(ImpossiblePath::Step(number, BadStep::CornerHasNoRoom));
        }
        if start.distance(end) > SAME_LENGTH_MM {
            all.push(edge.between(start, end));
        }
        all.extend(corners[number]);
    }
    Ok(all)
}

/// The arc of this radius that runs smoothly out of one edge and into the next.
fn fillet(edge: &Edge, next: &Edge, radius: f64) -> Result<Edge, BadStep> {
    let corner = edge.to();
    let turn = edge.direction_at_end().cross(next.direction_at_start());
    let onward = edge.direction_at_end().dot(next.direction_at_start()) > 0.0;
    if turn.abs() * radius <= SAME_JOINT_MM && onward {
        return Err(BadStep::NoCorner);
    }
    let left = turn > 0.0;
    let side = if left { radius } else { -radius };
    let (first, second) = (Carrier::beside(edge, side), Carrier::beside(next, side));
    let (first, second) = first.zip(second).ok_or(BadStep::CornerHasNoRoom)?;
    let mut best: Option<Edge> = None;
    for centre in first.meets(&second) {
        let arc = Edge::Arc {
            from: edge.nearest(centre),
            to: next.nearest(centre),
            centre,
            radius,
            anticlockwise: left,
        };
        let touches = |p: Point| (p.distance(centre) - radius).abs() <= SAME_LENGTH_MM;
        let nearer = best.is_none_or(|b| arc.from().distance(corner) < b.from().distance(corner));
        if touches(arc.from()) && touches(arc.to()) && nearer {
            best = Some(arc);
        }
    }
    best.ok_or(BadStep::CornerHasNoRoom)
}

/// The endless line or full circle that runs beside an edge.
enum Carrier {
    Line(Point, Point),
    Circle(Point, f64),
}

impl Carrier {
    /// This far to the left of the edge, or to the right where negative; none where a circle would have no radius.
    fn beside(edge: &Edge, left: f64) -> Option<Carrier> {
        match *edge {
            Edge::Line { from, to } => {
                let along = to - from;
                Some(Carrier::Line(from + along.unit().left() * left, along))
            }
            Edge::Arc {
                centre,
                radius,
                anticlockwise,
                ..
            } => {
                let radius = if anticlockwise {
                    radius - left
                } else {
                    radius + left
                };
                (radius > SAME_LENGTH_MM).then_some(Carrier::Circle(centre, radius))
            }
        }
    }

    fn meets(&self, other: &Carrier) -> Vec<Point> {
        match (self, other) {
            (Carrier::Line(p, a), Carrier::Line(q, b)) => line_meets_line(*p, *a, *q, *b),
            (Carrier::Line(p, a), Carrier::Circle(c, r))
            | (Carrier::Circle(c, r), Carrier::Line(p, a)) => line_meets_circle(*p, *a, *c, *r),
            (Carrier::Circle(c, r), Carrier::Circle(d, s)) => circle_meets_circle(*c, *r, *d, *s),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::angle::PI;

    fn step(x: f64, y: f64, walk: Walk, corner_radius: f64) -> Step {
        Step {
            to: Point::new(x, y),
            walk,
            corner_radius,
        }
    }

    fn straight(x: f64, y: f64, corner_radius: f64) -> Step {
        step(x, y, Walk::Straight, corner_radius)
    }

    /// Rectangle 300 × 200 with corners of 40, the last at the start: area 60,000 − (4 − π) × 1,600, girth 1,000 − 320 + 80 π.
    #[test]
    fn by_hand_rounded_rectangle() {
        let steps = [
            straight(300.0, 0.0, 40.0),
            straight(300.0, 200.0, 40.0),
            straight(0.0, 200.0, 40.0),
            straight(0.0, 0.0, 40.0),
        ];
        let plate = Outline::path(Point::CENTRE, &steps).unwrap();
        assert!((plate.area_mm2() - (60_000.0 - (4.0 - PI) * 1600.0)).abs() < 1e-8);
        assert!((plate.perimeter().to_mm() - (680.0 + 80.0 * PI)).abs() < 1e-9);
        assert_eq!(plate.edges().len(), 8);
    }

    /// Half a disc of radius 100: by radius, by a place on the arc, and walked clockwise: 5,000 π. With the flat corners rounded
    /// to 20, the arc's centre stands 20 above the flat and 80 from the middle, so √(80² − 20²) = 77.46 out.
    #[test]
    fn by_hand_half_disc() {
        let right = Point::new(100.0, 0.0);
        let flat = |corner| straight(100.0, 0.0, corner);
        let by_radius = [step(-100.0, 0.0, Walk::Radius(100.0), 0.0), flat(0.0)];
        let through = [
            step(-100.0, 0.0, Walk::Through(Point::new(60.0, 80.0)), 0.0),
            flat(0.0),
        ];
        let clockwise = [
            straight(-100.0, 0.0, 0.0),
            step(100.0, 0.0, Walk::Through(Point::new(0.0, 100.0)), 0.0),
        ];
        for steps in [by_radius, through, clockwise] {
            let half = Outline::path(right, &steps).unwrap();
            assert!((half.area_mm2() - 5000.0 * PI).abs() < 1e-8);
        }
        let rounded = [step(-100.0, 0.0, Walk::Radius(100.0), 20.0), flat(20.0)];
        let rounded = Outline::path(right, &rounded).unwrap();
        let corners = rounded.edges().iter().filter_map(|e| match e {
            Edge::Arc {
                centre,
                radius: 20.0,
                ..
            } => Some(*centre),
            _ => None,
        });
        let corners: Vec<Point> = corners.collect();
        assert_eq!(corners.len(), 2);
        for corner in corners {
            assert!((corner.y - 20.0).abs() < 1e-9 && (corner.x.abs() - sqrt(6000.0)).abs() < 1e-9);
        }
    }

    /// Through (100, 0), (0, 100) and (−60, −80), all on the circle of radius 100: more than half a turn.
    #[test]
    fn by_hand_arc_of_more_than_half_a_turn() {
        let steps = [
            step(-60.0, -80.0, Walk::Through(Point::new(0.0, 100.0)), 0.0),
            straight(100.0, 0.0, 0.0),
        ];
        let plate = Outline::path(Point::new(100.0, 0.0), &steps).unwrap();
        let (low, high) = plate.bounds();
        assert!(high.distance(Point::new(100.0, 100.0)) < 1e-9);
        assert!(low.distance(Point::new(-100.0, -80.0)) < 1e-9);
        assert_eq!(plate.edges().len(), 3);
    }

    #[test]
    fn refuses_steps_that_cannot_be_walked() {
        let square = |second: Step| {
            let steps = [
                straight(100.0, 0.0, 0.0),
                second,
                straight(0.0, 100.0, 0.0),
                straight(0.0, 0.0, 0.0),
            ];
            Outline::path(Point::CENTRE, &steps)
                .map(|_| ())
                .unwrap_err()
                .to_string()
        };
        let to_corner = |walk, radius| square(step(100.0, 100.0, walk, radius));
        assert_eq!(
            to_corner(Walk::Radius(40.0), 0.0),
            "step 2: the radius is less than half the distance from start to end"
        );
        assert_eq!(
            to_corner(Walk::Through(Point::new(100.0, 30.0)), 0.0),
            "step 2: the start, the place to go through and the end lie on one line, so no arc goes through them"
        );
        assert_eq!(
            to_corner(Walk::Straight, 101.0),
            "step 2: the corner radius does not fit between the edges that meet there"
        );
        assert_eq!(
            square(straight(100.0, 0.0, 0.0)),
            "step 2: the step ends where it starts"
        );
        assert_eq!(
            to_corner(Walk::Straight, f64::NAN),
            "step 2: a place or a radius of the step is not a size that can be drawn"
        );
        let open = [straight(100.0, 0.0, 0.0), straight(100.0, 100.0, 0.0)];
        assert!(matches!(
            Outline::path(Point::CENTRE, &open),
            Err(ImpossiblePath::NotClosed(_))
        ));
        assert!(Outline::path(Point::CENTRE, &[]).is_err());
        let in_line = [
            straight(50.0, 0.0, 5.0),
            straight(100.0, 0.0, 0.0),
            straight(0.0, 90.0, 0.0),
            straight(0.0, 0.0, 0.0),
        ];
        assert_eq!(
            Outline::path(Point::CENTRE, &in_line).unwrap_err(),
            ImpossiblePath::Step(0, BadStep::NoCorner)
        );
    }

    /// Two corners of 60 on a side of 100 have no room for each other.
    #[test]
    fn refuses_corners_that_run_into_one_another() {
        let steps = [
            straight(300.0, 0.0, 60.0),
            straight(300.0, 100.0, 60.0),
            straight(0.0, 100.0, 0.0),
            straight(0.0, 0.0, 0.0),
        ];
        let refused = Outline::path(Point::CENTRE, &steps).unwrap_err();
        assert_eq!(refused, ImpossiblePath::Step(1, BadStep::CornerHasNoRoom));
    }
}
