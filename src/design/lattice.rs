//! The regular places of a nest: parallel lines of holes, filled as far as the room goes.
//!
//! Every place is worked from the place the pattern runs through, never from its neighbour, so that nothing adds up.

use super::room::Room;
use super::{LineWay, Point};
use crate::units::angle::hypot;

/// Parallel lines of places. Line 0 has a place at `through`; odd lines lie half a pitch on where staggered.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lattice {
    pub way: LineWay,
    pub through: Point,
    /// From one line to the next, mm.
    pub spacing: f64,
    /// From place to place along a line, mm.
    pub pitch: f64,
    pub staggered: bool,
    /// Number of the first line; as many as fit where there is none.
    pub first: Option<i32>,
    /// Number of the last line.
    pub last: Option<i32>,
}

/// A place of the pattern.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Site {
    pub line: i32,
    pub at: Point,
}

/// More places than a plate ever held: beyond it the pitch is a slip of the pen, and filling would not end.
pub(super) const MOST_PLACES: f64 = 2_000_000.0;

impl Lattice {
    /// The place numbered `number` along the line numbered `line`.
    pub(super) fn place(&self, line: i32, number: i64) -> Point {
        let along = (number as f64 + self.half_step(line)) * self.pitch;
        match self.way {
            LineWay::Columns => Point::new(self.offset(line), self.through.y + along),
            LineWay::Rows => Point::new(self.through.x + along, self.offset(line)),
        }
    }

    /// x of a column or y of a row, mm.
    pub(super) fn offset(&self, line: i32) -> f64 {
        let across = f64::from(line) * self.spacing;
        match self.way {
            LineWay::Columns => self.through.x + across,
            LineWay::Rows => self.through.y + across,
        }
    }

    /// The least distance between two places, mm.
    pub(super) fn least_distance(&self) -> f64 {
        let next_line = if self.staggered {
            hypot(self.spacing, self.pitch / 2.0).min(2.0 * self.spacing)
        } else {
            self.spacing
        };
        next_line.min(self.pitch)
    }

    /// Every place that the room admits: line by line in the order of their places on the plate (left to right, low to high),
    /// and low to high or left to right along each. Nothing where the room is not bounded; an error, with how many places
    /// would have to be looked at, where they are more than [`MOST_PLACES`].
    pub(super) fn fill(&self, room: &Room) -> Result<Vec<Site>, f64> {
        let Some(span) = room.span() else {
            return Ok(Vec::new());
        };
        let (across, along) = match self.way {
            LineWay::Columns => ((span.low.x, span.high.x), (span.low.y, span.high.y)),
            LineWay::Rows => ((span.low.y, span.high.y), (span.low.x, span.high.x)),
        };
        let (across_from, along_from) = match self.way {
            LineWay::Columns => (self.through.x, self.through.y),
            LineWay::Rows => (self.through.y, self.through.x),
        };
        let places =
            (across.1 - across.0) / self.spacing * ((along.1 - along.0) / self.pitch).max(1.0);
        if places > MOST_PLACES {
            return Err(places);
        }
        // One line and one place more at each end than the box holds; `admits` has the last word.
        let (low, high) = steps(across, across_from, self.spacing);
        let lines = (low as i32).max(self.first.unwrap_or(i32::MIN))
            ..=(high as i32).min(self.last.unwrap_or(i32::MAX));
        let (low, high) = steps(along, along_from, self.pitch);
        let on_line = |line| {
            (low..=high).map(move |number| Site {
                line,
                at: self.place(line, number),
            })
        };
        Ok(lines
            .flat_map(on_line)
            .filter(|site| room.admits(site.at))
            .collect())
    }

    fn half_step(&self, line: i32) -> f64 {
        if self.staggered && line.rem_euclid(2) == 1 {
            0.5
        } else {
            0.0
        }
    }
}

/// Numbers of the steps from `origin` that reach just beyond a span.
fn steps(span: (f64, f64), origin: f64, step: f64) -> (i64, i64) {
    (
        ((span.0 - origin) / step).floor() as i64 - 1,
        ((span.1 - origin) / step).ceil() as i64 + 1,
    )
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::design::Outline;
    use crate::units::angle::{PI, sqrt};
    use crate::units::tolerance::SAME_LENGTH_MM;

    const PITCH: f64 = 50.0;

    /// Places of a lattice about `through`, moved from its place 0, whose centres lie within a circle about the barrel centre.
    fn count(lattice: Lattice, radius: f64) -> usize {
        let line = Outline::circle(Point::CENTRE, radius);
        let mut room = Room::default();
        room.keep_within(&line, 0.0);
        lattice.fill(&room).unwrap().len()
    }

    /// A triangular lattice in rows, one place of it at (x, y) pitches.
    fn triangular(x: f64, y: f64) -> Lattice {
        Lattice {
            way: LineWay::Rows,
            through: Point::new(x * PITCH, y * PITCH),
            spacing: PITCH * sqrt(3.0) / 2.0,
            pitch: PITCH,
            staggered: true,
            first: None,
            last: None,
        }
    }

    fn square(x: f64, y: f64) -> Lattice {
        Lattice {
            spacing: PITCH,
            staggered: false,
            way: LineWay::Columns,
            ..triangular(x, y)
        }
    }

    /// Triangular lattice points in a circle of diameter n pitches about a lattice point: OEIS A053416, n = 1 …18.
    #[test]
    fn published_triangular_counts_about_a_place() {
        let counts = [
            1, 7, 7, 19, 19, 37, 43, 61, 73, 91, 109, 127, 151, 187, 199, 241, 253, 301,
        ];
        for (n, count_there) in (1..).zip(counts) {
            let radius = f64::from(n) * PITCH / 2.0;
            assert_eq!(count(triangular(0.0, 0.0), radius), count_there, "{n}");
        }
    }

    /// The same about the middle of an edge: OEIS A053417, n = 1 … 12.
    #[test]
    fn published_triangular_counts_about_an_edge() {
        let counts = [2, 4, 10, 14, 24, 30, 48, 60, 76, 92, 110, 130];
        for (n, count_there) in (1..).zip(counts) {
            let radius = f64::from(n) * PITCH / 2.0;
            assert_eq!(count(triangular(0.5, 0.0), radius), count_there, "{n}");
        }
    }

    /// And about the centre of a triangle: OEIS A053479, n = 1 … 12.
    #[test]
    fn published_triangular_counts_about_a_triangle() {
        let counts = [0, 3, 6, 12, 21, 30, 42, 54, 69, 90, 102, 129];
        let below = sqrt(3.0) / 6.0;
        for (n, count_there) in (1..).zip(counts) {
            let radius = f64::from(n) * PITCH / 2.0;
            assert_eq!(count(triangular(0.5, -below), radius), count_there, "{n}");
        }
    }

    /// Square lattice points in a circle of radius n pitches: OEIS A000328, n = 1 … 10; of diameter n: OEIS A053411, n = 1 … 12.
    #[test]
    fn published_square_counts() {
        for (n, count_there) in (1..).zip([5, 13, 29, 49, 81, 113, 149, 197, 253, 317]) {
            let radius = f64::from(n) * PITCH;
            assert_eq!(count(square(0.0, 0.0), radius), count_there, "radius {n}");
        }
        for (n, count_there) in (1..).zip([1, 5, 9, 13, 21, 29, 37, 49, 69, 81, 97, 113]) {
            let radius = f64::from(n) * PITCH / 2.0;
            assert_eq!(count(square(0.0, 0.0), radius), count_there, "diameter {n}");
        }
    }

    /// Heat exchanger tube counts, 3/4 in tubes on 1 in triangular pitch, one pass, by shell bore in inches: Ray and Das,
    /// *Process Equipment and Plant Design*, page 93. They leave metal at the shell and books differ by up to 13 %, so they are
    /// a loose floor: a nest that fills the whole bore, about the better of a place and a triangle, holds no fewer.
    #[test]
    fn published_exchanger_counts_are_a_floor() {
        for (bore, tubes) in [
            (8.0, 37),
            (10.0, 61),
            (12.0, 92),
            (13.25, 109),
            (15.25, 151),
            (17.25, 203),
            (19.25, 262),
            (21.25, 316),
            (23.25, 384),
            (25.0, 470),
        ] {
            let radius = (bore - 0.75) / 2.0 * PITCH;
            let below = sqrt(3.0) / 6.0;
            let about_place = count(triangular(0.0, 0.0), radius);
            let about_triangle = count(triangular(0.5, -below), radius);
            let about_edge = count(triangular(0.5, 0.0), radius);
            let most = about_place.max(about_triangle).max(about_edge);
            assert!(most >= tubes, "{bore}: {most}");
        }
    }

    /// Gritstone 7, inches: rows 2 1/16 apart from y −9 1/2, pitch 2 3/8, hole 1 5/8, land 3/4 to the tangent at 16 1/8, so centres
    /// within 16.125 − 0.75 − 0.8125 = 14.5625. Row 0: √(14.5625² − 9.5²) = 11.04, ±4 × 2.375 = 9.5 fits and 11.875 does not: 9.
    #[test]
    fn by_hand_gritstone_rows() {
        let lattice = Lattice {
            way: LineWay::Rows,
            through: Point::new(0.0, -9.5),
            spacing: 2.0625,
            pitch: 2.375,
            staggered: true,
            first: Some(0),
            last: Some(7),
        };
        let tangent = Outline::circle(Point::CENTRE, 16.125);
        let mut room = Room::default();
        room.keep_within(&tangent, 0.75 + 1.625 / 2.0);
        let sites = lattice.fill(&room).unwrap();
        let counts: Vec<usize> = (0..8)
            .map(|row| sites.iter().filter(|site| site.line == row).count())
            .collect();
        assert_eq!(counts, [9, 10, 11, 12, 13, 12, 13, 12]);
        assert_eq!(sites.len(), 92);
    }

    fn lattices() -> impl Strategy<Value = Lattice> {
        (
            (-80.0..80.0, -80.0..80.0),
            (20.0..90.0, 20.0..90.0),
            any::<bool>(),
            any::<bool>(),
            (proptest::option::of(-6..3), proptest::option::of(3..9)),
        )
            .prop_map(
                |((x, y), (spacing, pitch), columns, staggered, (first, last))| Lattice {
                    way: if columns {
                        LineWay::Columns
                    } else {
                        LineWay::Rows
                    },
                    through: Point::new(x, y),
                    spacing,
                    pitch,
                    staggered,
                    first,
                    last,
                },
            )
    }

    /// A room with a round line, a limit on the height, and a box and a circle kept clear.
    fn furnish(room: &mut Room, shift: Point) {
        room.keep_off_circle(Point::new(120.0 + shift.x, 40.0 + shift.y), 60.0);
        room.keep_off_box(
            Point::new(-200.0 + shift.x, -90.0 + shift.y),
            Point::new(-100.0 + shift.x, -150.0 + shift.y),
            15.0,
        );
        room.limit(Some(210.0 + shift.y), None, None);
    }

    proptest! {
        /// The filler finds what looking at every place far beyond the room finds, in its own order.
        #[test]
        fn holds_filler_equals_brute_force(lattice in lattices(), radius in 30.0..400.0_f64) {
            let line = Outline::circle(Point::CENTRE, radius);
            let mut room = Room::default();
            room.keep_within(&line, 0.0);
            furnish(&mut room, Point::CENTRE);
            let filled = lattice.fill(&room).unwrap();
            let mut brute = Vec::new();
            for number in lattice.first.unwrap_or(-40)..=lattice.last.unwrap_or(40) {
                for along in -40..=40 {
                    let at = lattice.place(number, along);
                    let inside = at.radius() <= radius + SAME_LENGTH_MM;
                    let off_circle = at.distance(Point::new(120.0, 40.0)) >= 60.0 - SAME_LENGTH_MM;
                    let (dx, dy) = ((-200.0 - at.x).max(at.x + 100.0).max(0.0), (-150.0 - at.y).max(at.y + 90.0).max(0.0));
                    let off_box = dx * dx + dy * dy >= (15.0 - SAME_LENGTH_MM) * (15.0 - SAME_LENGTH_MM);
                    if inside && off_circle && off_box && at.y <= 210.0 + SAME_LENGTH_MM {
                        brute.push(Site { line: number, at });
                    }
                }
            }
            prop_assert_eq!(filled, brute);
        }

        /// No more places than Oler's bound: (2/√3) π R²/p² + π R/p + 1 for places no nearer than p within radius R.
        #[test]
        fn holds_oler_bound(x in 0.0..1.0, y in 0.0..1.0, radius in 10.0..600.0_f64) {
            let ratio = radius / PITCH;
            let most = 2.0 / sqrt(3.0) * PI * ratio * ratio + PI * ratio + 1.0;
            prop_assert!(count(triangular(x, y), radius) as f64 <= most);
            prop_assert!(count(square(x, y), radius) as f64 <= most);
        }

        /// A pattern and its room moved together hold the same places, moved.
        #[test]
        fn holds_shift(lattice in lattices(), dx in -300.0..300.0, dy in -300.0..300.0, radius in 30.0..400.0_f64) {
            let by = Point::new(dx, dy);
            let (here, there) = (Outline::circle(Point::CENTRE, radius), Outline::circle(by, radius));
            let (mut room, mut moved_room) = (Room::default(), Room::default());
            room.keep_within(&here, 0.0);
            furnish(&mut room, Point::CENTRE);
            moved_room.keep_within(&there, 0.0);
            furnish(&mut moved_room, by);
            let moved = Lattice { through: Point::new(lattice.through.x + dx, lattice.through.y + dy), ..lattice };
            let (sites, moved_sites) = (lattice.fill(&room).unwrap(), moved.fill(&moved_room).unwrap());
            prop_assert_eq!(sites.len(), moved_sites.len());
            for (a, b) in sites.iter().zip(&moved_sites) {
                prop_assert!(Point::new(a.at.x + dx, a.at.y + dy).distance(b.at) < SAME_LENGTH_MM);
            }
        }

        /// Seen from the other side, a pattern of columns holds the same places at the opposite hand.
        #[test]
        fn holds_mirror(lattice in lattices(), radius in 30.0..400.0_f64) {
            let lattice = Lattice { way: LineWay::Columns, first: None, last: None, ..lattice };
            let line = Outline::circle(Point::CENTRE, radius);
            let mut room = Room::default();
            room.keep_within(&line, 0.0);
            let mirrored = Lattice { through: lattice.through.opposite_hand(), ..lattice };
            let mut sites = lattice.fill(&room).unwrap();
            let mut opposite = mirrored.fill(&room).unwrap();
            let key = |p: &Point| (p.x * 1e4).round() as i64;
            for site in &mut opposite { site.at = site.at.opposite_hand(); }
            for list in [&mut sites, &mut opposite] {
                list.sort_by(|a, b| key(&a.at).cmp(&key(&b.at)).then(a.at.y.total_cmp(&b.at.y)));
            }
            prop_assert_eq!(sites.len(), opposite.len());
            for (a, b) in sites.iter().zip(&opposite) {
                prop_assert!(a.at.distance(b.at) < SAME_LENGTH_MM);
            }
        }
    }
}
