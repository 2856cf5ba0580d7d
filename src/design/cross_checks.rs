//! Long lengths that prove the marking-out: measured straight across before anything is popped deep.

use super::{Design, Hole, Point};
use crate::spec::Barrel;
use crate::units::Length;
use crate::units::angle::{PI, sin};

/// One long length and what it should be.
#[derive(Clone, Debug)]
pub struct CrossCheck {
    /// What is measured: "low corners of the nest apart".
    pub what: String,
    /// Numbers of the two holes.
    pub ids: (String, String),
    /// Centre to centre.
    pub length: Length,
}

/// So many checks are enough for a plate; more are not made.
const ENOUGH: usize = 14;

/// The checks of a plate, the nest's first, then holes off the nest, then the rivet circle.
pub fn cross_checks(design: &Design, barrel: Option<&Barrel>) -> Vec<CrossCheck> {
    let mut list = List::default();
    let corners = corners(design);
    if let Some([low_left, high_left, low_right, high_right]) = corners {
        list.take("low corners of the nest apart", low_left, low_right);
        list.take("high corners of the nest apart", high_left, high_right);
        list.take("corners, slanting up to the right", low_left, high_right);
        list.take("corners, slanting up to the left", low_right, high_left);
        list.take("left corners of the nest apart", low_left, high_left);
        list.take("right corners of the nest apart", low_right, high_right);
    }
    if let Some((first, last)) = longest_line(design) {
        list.take("longest line, end to end", first, last);
    }
    if let Some((left, right)) = lowest_pair(design) {
        list.take("lowest holes apart", left, right);
    }
    for hole in loose_holes(design) {
        let opposite = loose_holes(design).find(|o| same_place(o.at, hole.at.opposite_hand()));
        if let Some(opposite) = opposite.filter(|_| hole.at.x < 0.0) {
            list.take("opposite hands apart", hole, opposite);
        }
    }
    let quarters = rivet_quarters(design, barrel);
    for hole in loose_holes(design) {
        let furthest = corners
            .into_iter()
            .flatten()
            .max_by(|a, b| a.at.distance(hole.at).total_cmp(&b.at.distance(hole.at)));
        if let Some(corner) = furthest.filter(|_| list.0.len() + quarters.len() < ENOUGH) {
            list.take("nest to a hole off it", hole, corner);
        }
    }
    list.0.extend(quarters);
    list.0
}

#[derive(Default)]
struct List(Vec<CrossCheck>);

impl List {
    /// Adds a length, unless it is nothing or stands there already.
    fn take(&mut self, what: &str, a: &Hole, b: &Hole) {
        let known = self.0.iter().any(|c| {
            let (p, q) = (c.ids.0.as_str(), c.ids.1.as_str());
            (p, q) == (a.id.as_str(), b.id.as_str()) || (q, p) == (a.id.as_str(), b.id.as_str())
        });
        if a.id != b.id && !known {
            self.0.push(CrossCheck {
                what: what.into(),
                ids: (a.id.clone(), b.id.clone()),
                length: Length::mm(a.at.distance(b.at)),
            });
        }
    }
}

/// The four corners of the nest: the ends of its outermost lines, or of holes in no lines those furthest out on the slant.
/// In order low left, high left, low right, high right.
fn corners(design: &Design) -> Option<[&Hole; 4]> {
    let group = design.line_way.first().map(|(group, _)| *group);
    let lines = || {
        design
            .nest_lines
            .iter()
            .filter(|line| Some(line.group) == group)
    };
    let ends = |line: &super::NestLine| {
        Some([
            by_id(design, line.holes.first()?)?,
            by_id(design, line.holes.last()?)?,
        ])
    };
    let first = lines().min_by(|a, b| a.offset.total_cmp(&b.offset));
    let last = lines().max_by(|a, b| a.offset.total_cmp(&b.offset));
    if let (Some(first), Some(last)) = (first.and_then(ends), last.and_then(ends)) {
        let mut four = [first[0], first[1], last[0], last[1]];
        // Ends of rows come left then right of the low row, then of the high one: low left, low right, high left, high right.
        if design.line_way.first().map(|(_, way)| *way) == Some(super::LineWay::Rows) {
            four.swap(1, 2);
        }
        return Some(four);
    }
    let furthest = |sx: f64, sy: f64| {
        nest_holes(design)
            .max_by(|a, b| (sx * a.at.x + sy * a.at.y).total_cmp(&(sx * b.at.x + sy * b.at.y)))
    };
    Some([
        furthest(-1.0, -1.0)?,
        furthest(-1.0, 1.0)?,
        furthest(1.0, -1.0)?,
        furthest(1.0, 1.0)?,
    ])
}

fn longest_line(design: &Design) -> Option<(&Hole, &Hole)> {
    let line = design.nest_lines.iter().max_by(|a, b| {
        (a.last - a.first)
            .total_cmp(&(b.last - b.first))
            // Of several the one nearest the datum, so that the check runs through the middle.
            .then(b.offset.abs().total_cmp(&a.offset.abs()))
    })?;
    Some((
        by_id(design, line.holes.first()?)?,
        by_id(design, line.holes.last()?)?,
    ))
}

/// Leftmost and rightmost of the lowest holes of the nest.
fn lowest_pair(design: &Design) -> Option<(&Hole, &Hole)> {
    let lowest = nest_holes(design).min_by(|a, b| a.at.y.total_cmp(&b.at.y))?;
    let level =
        || nest_holes(design).filter(|h| Length::mm(h.at.y).same_as(Length::mm(lowest.at.y)));
    let left = level().min_by(|a, b| a.at.x.total_cmp(&b.at.x))?;
    let right = level().max_by(|a, b| a.at.x.total_cmp(&b.at.x))?;
    Some((left, right))
}

/// Chords over a quarter of the rivets of a row from the first, on the barrel's outside and in its bore.
fn rivet_quarters(design: &Design, barrel: Option<&Barrel>) -> Vec<CrossCheck> {
    let (Some(line), Some(barrel)) = (&design.rivets, barrel) else {
        return Vec::new();
    };
    let spaces = line.in_a_row() / 4;
    let Some(end) = line.rivets.get(spaces).filter(|_| spaces > 0) else {
        return Vec::new();
    };
    let half_angle = (line.step_deg * spaces as f64 / 2.0) * PI / 180.0;
    let bore = barrel.bore.value();
    [
        ("barrel outside", bore + 2.0 * barrel.thickness.value()),
        ("bore", bore),
    ]
    .map(|(surface, diameter)| CrossCheck {
        what: format!("rivet circle over {spaces} spaces, chord on {surface}"),
        ids: (line.rivets[0].id.clone(), end.id.clone()),
        length: diameter * sin(half_angle),
    })
    .to_vec()
}

fn nest_holes(design: &Design) -> impl Iterator<Item = &Hole> {
    design
        .holes
        .iter()
        .filter(|hole| design.groups[hole.group].purpose.takes_a_tube())
}

fn loose_holes(design: &Design) -> impl Iterator<Item = &Hole> {
    design
        .holes
        .iter()
        .filter(|hole| !design.groups[hole.group].purpose.takes_a_tube())
}

fn by_id<'a>(design: &'a Design, id: &str) -> Option<&'a Hole> {
    design.holes.iter().find(|hole| hole.id == id)
}

fn same_place(a: Point, b: Point) -> bool {
    Length::mm(a.distance(b)).same_as(Length::ZERO)
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::design::set_out;
    use crate::spec::read_spec_file;

    fn checks(file: &str) -> Vec<CrossCheck> {
        let spec = read_spec_file(Path::new(file)).expect("a sound spec");
        let design = set_out(&spec).expect("a sound plate");
        cross_checks(&design, spec.written.barrel.as_ref())
    }

    /// Columns at ±13 1/2 are 27 apart; from their low end −6.484375 up to 6.484375 on the other hand √(27² + 12.96875²) =
    /// 29.953 in. A quarter of 56 rivets is 14 spaces, 90°: 39 sin 45° = 27.577, 38 sin 45° = 26.870 in.
    #[test]
    fn by_hand_long_lengths_of_marl_hen() {
        let checks = checks("specs/marl-hen-smokebox.yaml");
        let inches: Vec<String> = checks
            .iter()
            .map(|c| format!("{:.3}", c.length.to_inches()))
            .collect();
        for expected in ["27.000", "29.953", "27.577", "26.870"] {
            assert!(
                inches.iter().any(|i| i == expected),
                "{expected} in {inches:?}"
            );
        }
    }

    /// Stays at ±150 and ±265 are 300 and 530 mm apart; 48 rivets: 12 spaces, 865.4 sin 45° = 611.930, 840 sin 45° = 593.970.
    #[test]
    fn by_hand_long_lengths_of_hobthrush() {
        let checks = checks("specs/hobthrush-smokebox.yaml");
        let mm: Vec<String> = checks
            .iter()
            .map(|c| format!("{:.2}", c.length.to_mm()))
            .collect();
        for expected in ["300.00", "530.00", "611.93", "593.97"] {
            assert!(mm.iter().any(|i| i == expected), "{expected} in {mm:?}");
        }
    }

    /// About a dozen, none twice.
    #[test]
    fn holds_about_twelve_and_none_twice() {
        for file in [
            "specs/marl-hen-smokebox.yaml",
            "specs/hobthrush-smokebox.yaml",
        ] {
            let checks = checks(file);
            assert!(
                (10..=ENOUGH).contains(&checks.len()),
                "{file}: {}",
                checks.len()
            );
            for (i, a) in checks.iter().enumerate() {
                assert!(a.length > Length::ZERO);
                assert!(
                    checks
                        .iter()
                        .skip(i + 1)
                        .all(|b| (&a.ids, &a.what) != (&b.ids, &b.what))
                );
            }
        }
    }
}
