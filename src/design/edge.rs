//! One straight or round piece of an edge.

use super::Point;
use crate::units::angle::{PI, atan2, cos, sin, tan};
use crate::units::tolerance::SAME_LENGTH_MM;

/// One straight or round piece of an edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Edge {
    /// A straight line.
    Line {
        /// Start.
        from: Point,
        /// End.
        to: Point,
    },
    /// A circular arc; of half a turn or less wherever it belongs to an [`super::Outline`].
    Arc {
        /// Start.
        from: Point,
        /// End.
        to: Point,
        /// Centre of its circle.
        centre: Point,
        /// Its radius, mm.
        radius: f64,
        /// Whether it runs anticlockwise.
        anticlockwise: bool,
    },
}

impl Edge {
    /// An arc about a centre from one angle to another, radians anticlockwise from x, less than a full turn apart; it runs
    /// clockwise where the end is the lesser.
    pub fn arc(centre: Point, radius: f64, start: f64, end: f64) -> Edge {
        let at = |angle: f64| centre + Point::new(radius * cos(angle), radius * sin(angle));
        Edge::Arc {
            from: at(start),
            to: at(end),
            centre,
            radius,
            anticlockwise: end > start,
        }
    }

    /// Where it starts.
    pub fn from(&self) -> Point {
        match *self {
            Edge::Line { from, .. } | Edge::Arc { from, .. } => from,
        }
    }

    /// Where it ends.
    pub fn to(&self) -> Point {
        match *self {
            Edge::Line { to, .. } | Edge::Arc { to, .. } => to,
        }
    }

    /// The angle an arc turns through, radians, positive anticlockwise, less than a full turn; 0 for a line.
    pub fn sweep(&self) -> f64 {
        match *self {
            Edge::Line { .. } => 0.0,
            Edge::Arc {
                from,
                to,
                centre,
                anticlockwise,
                ..
            } => {
                let turn = turn_between(from - centre, to - centre);
                match (anticlockwise, turn < 0.0) {
                    (true, true) => turn + 2.0 * PI,
                    (false, false) => turn - 2.0 * PI,
                    _ => turn,
                }
            }
        }
    }

    /// What a polyline vertex of a cut file carries: the tangent of a quarter of the sweep, 0 for a line, 1 for half a turn
    /// anticlockwise.
    pub fn bulge(&self) -> f64 {
        tan(self.sweep() / 4.0)
    }

    /// Its length along the curve, mm.
    pub fn length_mm(&self) -> f64 {
        match *self {
            Edge::Line { from, to } => from.distance(to),
            Edge::Arc { radius, .. } => radius * self.sweep().abs(),
        }
    }

    /// The place half way along it.
    pub fn midpoint(&self) -> Point {
        self.at_share(0.5)
    }

    /// The place at a share of its length, 0 at the start and 1 at the end.
    pub fn at_share(&self, share: f64) -> Point {
        match *self {
            Edge::Line { from, to } => from + (to - from) * share,
            Edge::Arc { from, centre, .. } => from.turned_about(centre, self.sweep() * share),
        }
    }

    /// Direction of the walk where it starts, 1 mm long.
    pub fn direction_at_start(&self) -> Point {
        self.direction_at(self.from())
    }

    /// Direction of the walk where it ends, 1 mm long.
    pub fn direction_at_end(&self) -> Point {
        self.direction_at(self.to())
    }

    fn direction_at(&self, place: Point) -> Point {
        match *self {
            Edge::Line { from, to } => (to - from).unit(),
            Edge::Arc {
                centre,
                anticlockwise,
                ..
            } => {
                let left = (place - centre).unit().left();
                if anticlockwise { left } else { -left }
            }
        }
    }

    /// The same edge walked the other way.
    pub fn reversed(&self) -> Edge {
        match *self {
            Edge::Line { from, to } => Edge::Line { from: to, to: from },
            Edge::Arc {
                from,
                to,
                centre,
                radius,
                anticlockwise,
            } => Edge::Arc {
                from: to,
                to: from,
                centre,
                radius,
                anticlockwise: !anticlockwise,
            },
        }
    }

    /// The same edge with other ends, which lie on it or a rounding away.
    pub fn between(&self, start: Point, end: Point) -> Edge {
        let mut edge = *self;
        match &mut edge {
            Edge::Line { from, to } | Edge::Arc { from, to, .. } => (*from, *to) = (start, end),
        }
        edge
    }

    /// The place of the edge nearest to a place.
    pub fn nearest(&self, place: Point) -> Point {
        match *self {
            Edge::Line { from, to } => {
                let along = to - from;
                let share = (place - from).dot(along) / along.dot(along);
                from + along * share.clamp(0.0, 1.0)
            }
            Edge::Arc { centre, radius, .. } if self.faces(place) && place != centre => {
                centre + (place - centre).unit() * radius
            }
            Edge::Arc { from, to, .. } => {
                if place.distance(from) <= place.distance(to) {
                    from
                } else {
                    to
                }
            }
        }
    }

    /// Distance from a place to the edge, mm.
    pub fn distance(&self, place: Point) -> f64 {
        match *self {
            Edge::Arc { centre, radius, .. } if self.faces(place) => {
                (place.distance(centre) - radius).abs()
            }
            _ => place.distance(self.nearest(place)),
        }
    }

    /// Whether a ray from an arc's centre through a place meets the arc. Always so for the centre itself.
    fn faces(&self, place: Point) -> bool {
        let Edge::Arc {
            from,
            to,
            centre,
            anticlockwise,
            ..
        } = *self
        else {
            return false;
        };
        let (start, end) = if anticlockwise {
            (from - centre, to - centre)
        } else {
            (to - centre, from - centre)
        };
        let ray = place - centre;
        if start.cross(end) >= 0.0 {
            start.cross(ray) >= 0.0 && ray.cross(end) >= 0.0
        } else {
            start.cross(ray) >= 0.0 || ray.cross(end) >= 0.0
        }
    }

    /// How far along the edge, in mm from its start, its place nearest to a place lies.
    pub fn run_to(&self, place: Point) -> f64 {
        match *self {
            Edge::Line { from, .. } => from.distance(self.nearest(place)),
            Edge::Arc { .. } => {
                let near = self.nearest(place);
                if near.distance(self.from()) <= SAME_LENGTH_MM {
                    0.0
                } else {
                    self.between(self.from(), near).length_mm()
                }
            }
        }
    }

    /// Lower left and upper right corner of the box round it, the bulge of an arc included.
    pub fn bounds(&self) -> (Point, Point) {
        let (a, b) = (self.from(), self.to());
        let mut low = Point::new(a.x.min(b.x), a.y.min(b.y));
        let mut high = Point::new(a.x.max(b.x), a.y.max(b.y));
        if let Edge::Arc { centre, radius, .. } = *self {
            let reach = |x: f64, y: f64| centre + Point::new(x * radius, y * radius);
            for place in [
                reach(1.0, 0.0),
                reach(0.0, 1.0),
                reach(-1.0, 0.0),
                reach(0.0, -1.0),
            ] {
                if self.faces(place) {
                    low = Point::new(low.x.min(place.x), low.y.min(place.y));
                    high = Point::new(high.x.max(place.x), high.y.max(place.y));
                }
            }
        }
        (low, high)
    }

    /// Area between an arc and its chord, mm²; positive where it lies to the right of the walk, which is outside the chord
    /// of an edge walked anticlockwise.
    pub fn area_beyond_chord_mm2(&self) -> f64 {
        match *self {
            Edge::Line { .. } => 0.0,
            Edge::Arc { radius, .. } => {
                let sweep = self.sweep();
                radius * radius * (sweep - sin(sweep)) / 2.0
            }
        }
    }

    /// Whether a place lies between an arc of half a turn or less and its chord; `right_of_chord` says on which side it is.
    pub(super) fn holds_beyond_chord(&self, place: Point, right_of_chord: bool) -> bool {
        match *self {
            Edge::Line { .. } => false,
            Edge::Arc {
                centre,
                radius,
                anticlockwise,
                ..
            } => {
                let arm = place - centre;
                anticlockwise == right_of_chord && arm.dot(arm) < radius * radius
            }
        }
    }

    /// The two halves of an arc, or the edge itself.
    pub(super) fn halves(&self) -> (Edge, Edge) {
        let middle = self.midpoint();
        (
            self.between(self.from(), middle),
            self.between(middle, self.to()),
        )
    }

    /// The edge after a quarter or any other turn of the plate about a centre, radians anticlockwise.
    pub fn turned_about(&self, pivot: Point, radians: f64) -> Edge {
        self.moved(|place| place.turned_about(pivot, radians), false)
    }

    /// Every place of the edge moved by a motion that keeps lengths; `turned_over` says whether it changes hands.
    pub(super) fn moved(&self, motion: impl Fn(Point) -> Point, turned_over: bool) -> Edge {
        self.carried(motion, 1.0, turned_over)
    }

    /// Every place of the edge carried by a motion that makes lengths `times` as long; `turned_over` says whether it changes hands.
    pub fn carried(&self, motion: impl Fn(Point) -> Point, times: f64, turned_over: bool) -> Edge {
        match *self {
            Edge::Line { from, to } => Edge::Line {
                from: motion(from),
                to: motion(to),
            },
            Edge::Arc {
                from,
                to,
                centre,
                radius,
                anticlockwise,
            } => Edge::Arc {
                from: motion(from),
                to: motion(to),
                centre: motion(centre),
                radius: radius * times,
                anticlockwise: anticlockwise != turned_over,
            },
        }
    }
}

/// The turn from one displacement to another, −π to π, positive anticlockwise.
fn turn_between(first: Point, second: Point) -> f64 {
    atan2(first.cross(second), first.dot(second))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Bulge is tan(sweep / 4): 90° 0.414214, 60° 0.267949, 180° 1, 270° 2.414214. Hand: tan 22.5°, tan 15°, tan 45°,
    /// tan 67.5°.
    #[test]
    fn by_hand_bulges() {
        for (degrees, printed) in [
            (90.0, "0.414214"),
            (60.0, "0.267949"),
            (180.0, "1.000000"),
            (270.0, "2.414214"),
        ] {
            let arc = Edge::arc(
                Point::new(3.0, -4.0),
                35.0,
                0.3,
                0.3 + f64::to_radians(degrees),
            );
            assert_eq!(format!("{:.6}", arc.bulge()), printed);
            assert_eq!(
                format!("{:.6}", arc.reversed().bulge()),
                format!("-{printed}")
            );
        }
    }

    /// 30° on radius 350: arc 350 π/6 = 183.26 mm; chord 700 sin 15° = 181.17 mm.
    #[test]
    fn by_hand_arc_and_chord() {
        let arc = Edge::arc(Point::CENTRE, 350.0, 0.0, PI / 6.0);
        assert_eq!(format!("{:.2}", arc.length_mm()), "183.26");
        assert_eq!(format!("{:.2}", arc.from().distance(arc.to())), "181.17");
    }

    /// A quarter arc of radius 100 from (100, 0) to (0, 100): the place nearest to the origin's far side is an end, that
    /// nearest to (30, 40) is (60, 80).
    #[test]
    fn by_hand_nearest_on_a_quarter() {
        let arc = Edge::arc(Point::CENTRE, 100.0, 0.0, PI / 2.0);
        assert!(
            arc.nearest(Point::new(30.0, 40.0))
                .distance(Point::new(60.0, 80.0))
                < 1e-12
        );
        assert!(
            arc.nearest(Point::new(-1.0, -50.0))
                .distance(Point::new(100.0, 0.0))
                < 1e-12
        );
        assert!((arc.distance(Point::new(30.0, 40.0)) - 50.0).abs() < 1e-12);
        assert!((arc.run_to(Point::new(5.0, 5.0)) - 25.0 * PI).abs() < 1e-9);
    }
}
