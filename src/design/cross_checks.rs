//! Long lengths that prove the marking-out: measured straight across before anything is popped deep.

use super::{Design, Hole, Point, RivetLine, RivetMade};
use crate::spec::{Barrel, Purpose};
use crate::units::Length;
use crate::units::angle::{PI, sin};
use crate::units::tolerance::SAME_LENGTH_MM;

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
const ENOUGH: usize = 16;

/// The checks of a plate: the first nest's own, then from its corners to other nests and to holes off it, opposite hands, and last
/// the rivet circle.
pub fn cross_checks(design: &Design, barrel: Option<&Barrel>) -> Vec<CrossCheck> {
    let mut list = List::default();
    let corners = corners(design);
    if let Some(corners) = &corners {
        take_corners(&mut list, corners);
    }
    if let Some((first, last)) = longest_line(design) {
        list.take("longest line, end to end", first, last);
    }
    if let Some((left, right)) = lowest_pair(design) {
        list.take("lowest holes apart", left, right);
    }
    let quarters = rivet_quarters(design, barrel);
    list.most = ENOUGH - quarters.len();
    if let Some(corners) = &corners {
        take_from_corners(&mut list, design, corners);
    }
    for (left, right) in opposite_hands(design) {
        list.take("opposite hands apart", left, right);
    }
    list.checks.extend(quarters);
    list.checks
}

/// Everything that the four corners of a nest prove among themselves.
fn take_corners(list: &mut List, corners: &[&Hole; 4]) {
    let [low_left, high_left, low_right, high_right] = *corners;
    list.take("low corners of the nest apart", low_left, low_right);
    list.take("high corners of the nest apart", high_left, high_right);
    list.take("corners, slanting up to the right", low_left, high_right);
    list.take("corners, slanting up to the left", low_right, high_left);
    list.take("left corners of the nest apart", low_left, high_left);
    list.take("right corners of the nest apart", low_right, high_right);
}

/// From the nest to every other group of holes: the longest length from a corner to a hole of it, and the same on the other hand.
fn take_from_corners(list: &mut List, design: &Design, corners: &[&Hole; 4]) {
    for (index, group) in design.groups.iter().enumerate() {
        let is_other = index != corners[0].group && group.purpose != Purpose::FormerPin;
        let holes = design.holes.iter().filter(|hole| hole.group == index);
        let longest = holes.filter(|_| is_other).max_by(|a, b| {
            let length = |hole: &Hole| hole.at.distance(furthest(corners, hole).at);
            length(a).total_cmp(&length(b))
        });
        let Some(hole) = longest else { continue };
        let what = format!("nest to {}", group.name);
        list.take(&what, hole, furthest(corners, hole));
        let other_hand = design
            .holes
            .iter()
            .find(|other| other.group == index && same_place(other.at, hole.at.opposite_hand()));
        if let Some(opposite) = other_hand.filter(|opposite| opposite.id != hole.id) {
            list.take(&what, opposite, furthest(corners, opposite));
        }
    }
}

/// The corner that is furthest from a hole.
fn furthest<'a>(corners: &[&'a Hole; 4], hole: &Hole) -> &'a Hole {
    let [first, rest @ ..] = corners;
    rest.iter().fold(first, |best, corner| {
        if corner.at.distance(hole.at) > best.at.distance(hole.at) {
            corner
        } else {
            best
        }
    })
}

/// Holes off the nests with their opposite hands, those furthest apart first.
fn opposite_hands(design: &Design) -> Vec<(&Hole, &Hole)> {
    let opposite = |hole: &Hole| {
        let place = hole.at.opposite_hand();
        loose_holes(design).find(|other| same_place(other.at, place))
    };
    let left = loose_holes(design).filter(|hole| hole.at.x < 0.0);
    let mut pairs: Vec<_> = left
        .filter_map(|hole| Some((hole, opposite(hole)?)))
        .collect();
    pairs.sort_by(|a, b| a.0.at.x.total_cmp(&b.0.at.x));
    pairs
}

struct List {
    checks: Vec<CrossCheck>,
    /// No more are taken.
    most: usize,
}

impl Default for List {
    fn default() -> List {
        List {
            checks: Vec::new(),
            most: ENOUGH,
        }
    }
}

impl List {
    /// Adds a length, unless it is nothing, stands there already, or there are enough.
    fn take(&mut self, what: &str, a: &Hole, b: &Hole) {
        let known = self.checks.iter().any(|c| {
            let (p, q) = (c.ids.0.as_str(), c.ids.1.as_str());
            (p, q) == (a.id.as_str(), b.id.as_str()) || (q, p) == (a.id.as_str(), b.id.as_str())
        });
        if a.id != b.id && !known && self.checks.len() < self.most {
            self.checks.push(CrossCheck {
                what: what.into(),
                ids: (a.id.clone(), b.id.clone()),
                length: Length::mm(a.at.distance(b.at)),
            });
        }
    }
}

/// The four corners of the first nest: the holes furthest out on the slant, which a round nest has not at the ends of its outermost
/// lines. In order low left, high left, low right, high right.
fn corners(design: &Design) -> Option<[&Hole; 4]> {
    let nest = nest_holes(design).next()?.group;
    let corner = |way: Point| {
        let own = nest_holes(design).filter(|hole| hole.group == nest);
        own.reduce(|best, hole| {
            let further = Length::mm(hole.at.dot(way) - best.at.dot(way));
            // Of several as far out the one furthest from the level centre line, so that both hands have the same.
            let steeper = hole.at.y.abs() > best.at.y.abs();
            if further > Length::mm(SAME_LENGTH_MM) || (further.same_as(Length::ZERO) && steeper) {
                hole
            } else {
                best
            }
        })
    };
    Some([
        corner(Point::new(-1.0, -1.0))?,
        corner(Point::new(-1.0, 1.0))?,
        corner(Point::new(1.0, -1.0))?,
        corner(Point::new(1.0, 1.0))?,
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

/// Chords over about a quarter of the rivets of a row, on the barrel's outside and in its bore: between two tack holes, which alone
/// are drilled from the drawing, where there are any.
fn rivet_quarters(design: &Design, barrel: Option<&Barrel>) -> Vec<CrossCheck> {
    let (Some(line), Some(barrel)) = (&design.rivets, barrel) else {
        return Vec::new();
    };
    let Some((from, to)) = about_a_quarter(line) else {
        return Vec::new();
    };
    let spaces = to - from;
    let half_angle = (line.step_deg * spaces as f64 / 2.0) * PI / 180.0;
    let bore = barrel.bore.value();
    [
        ("barrel outside", bore + 2.0 * barrel.thickness.value()),
        ("bore", bore),
    ]
    .map(|(surface, diameter)| CrossCheck {
        what: format!("rivet circle over {spaces} spaces, chord on {surface}"),
        ids: (line.rivets[from].id.clone(), line.rivets[to].id.clone()),
        length: diameter * sin(half_angle),
    })
    .to_vec()
}

/// Two rivets of the first row about a quarter of it apart, of two as near the further: tack holes where there are at least two. None of
/// a line that is drilled in place: it has no hole to measure from until the plate stands in its barrel.
fn about_a_quarter(line: &RivetLine) -> Option<(usize, usize)> {
    let row = &line.rivets[..line.in_a_row()];
    let tacks: Vec<usize> = (0..row.len())
        .filter(|&i| row[i].made == RivetMade::Tack)
        .collect();
    let ends = match tacks.len() {
        0 | 1 => (0..row.len())
            .filter(|&i| row[i].made != RivetMade::InPlace)
            .collect(),
        _ => tacks,
    };
    let (first, rest) = ends.split_first()?;
    let quarter = row.len() / 4;
    let off = |to: &&usize| (**to - first).abs_diff(quarter);
    let to = rest.iter().rev().min_by_key(off)?;
    Some((*first, *to))
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
    use crate::spec::{RivetHow, Spec, read_spec_file};

    fn checks(file: &str) -> Vec<CrossCheck> {
        let spec = read_spec_file(Path::new(file)).expect("a sound spec");
        let design = set_out(&spec).expect("a sound plate");
        cross_checks(&design, spec.written.barrel.as_ref())
    }

    /// The low corners stand in the columns at ±11 1/4, 22.5 apart, at −10.375; the high ones at (±13 1/2, 6.484375): the diagonals
    /// are √(24.75² + 16.859375²) = 29.947 in. Tack holes stand every fourth of 56, so that 16 spaces are as near a quarter as 12,
    /// 102.857°: 39 sin 51.4286° = 30.491, 38 sin 51.4286° = 29.710 in.
    #[test]
    fn by_hand_long_lengths_of_marl_hen() {
        let checks = checks("specs/marl-hen-smokebox.yaml");
        let inches: Vec<String> = checks
            .iter()
            .map(|c| format!("{:.3}", c.length.to_inches()))
            .collect();
        for expected in ["22.500", "27.000", "29.947", "30.491", "29.710"] {
            assert!(
                inches.iter().any(|i| i == expected),
                "{expected} in {inches:?}"
            );
        }
    }

    const PLATES: [&str; 5] = [
        "specs/marl-hen-smokebox.yaml",
        "specs/hobthrush-smokebox.yaml",
        "specs/pinders-oak-smokebox.yaml",
        "specs/tallow-moor-smokebox.yaml",
        "specs/gritstone-smokebox.yaml",
    ];

    /// No hole of the first nest lies further out on the slant than its corner, and on a nest that is alike at both hands the four
    /// are two opposite hands, so that the diagonals are alike.
    #[test]
    fn holds_that_the_corners_are_furthest_out_on_the_slant() {
        for file in PLATES {
            let spec = read_spec_file(Path::new(file)).expect("a sound spec");
            let design = set_out(&spec).expect("a sound plate");
            let corners = corners(&design).expect("a nest");
            let ways = [(-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (1.0, 1.0)];
            for (corner, (x, y)) in corners.iter().zip(ways) {
                let out = |hole: &Hole| x * hole.at.x + y * hole.at.y;
                let own = nest_holes(&design).filter(|hole| hole.group == corners[0].group);
                let mut own = own.map(out);
                assert!(own.all(|other| other <= out(corner) + 1e-6), "{file}");
            }
            let [low_left, high_left, low_right, high_right] = corners;
            assert!(
                same_place(low_left.at, low_right.at.opposite_hand()),
                "{file}"
            );
            assert!(
                same_place(high_left.at, high_right.at.opposite_hand()),
                "{file}"
            );
        }
    }

    /// Every group of holes off the first nest is tied to it, stays and flues among them, and the chord over the rivets runs between
    /// tack holes where any are drilled from the drawing.
    #[test]
    fn holds_that_every_group_is_tied_to_the_nest() {
        for file in PLATES {
            let spec = read_spec_file(Path::new(file)).expect("a sound spec");
            let design = set_out(&spec).expect("a sound plate");
            let checks = cross_checks(&design, spec.written.barrel.as_ref());
            let nest = nest_holes(&design).next().expect("a nest").group;
            for (index, group) in design.groups.iter().enumerate() {
                if index == nest || group.purpose == Purpose::FormerPin {
                    continue;
                }
                let is = |id: &str, wanted: usize| {
                    by_id(&design, id).is_some_and(|hole| hole.group == wanted)
                };
                let ties = |c: &CrossCheck| is(&c.ids.0, index) && is(&c.ids.1, nest);
                assert!(checks.iter().any(ties), "{file}: {}", group.name);
            }
            let line = design.rivets.as_ref().expect("rivets");
            let tacks = line.rivets.iter().filter(|r| r.made == RivetMade::Tack);
            let tacks: Vec<&str> = tacks.map(|rivet| rivet.id.as_str()).collect();
            let chords = checks.iter().filter(|c| c.what.contains("rivet circle"));
            for chord in chords.filter(|_| !tacks.is_empty()) {
                let ends = [chord.ids.0.as_str(), chord.ids.1.as_str()];
                assert!(
                    ends.iter().all(|end| tacks.contains(end)),
                    "{file}: {ends:?}"
                );
            }
        }
    }

    /// Stays at ±150 and ±265 are 300 and 530 mm apart. Its 48 rivets are drilled through the barrel without a tack hole, so that no
    /// length over them can be taken before; drilled from the drawing, 12 spaces are 865.4 sin 45° = 611.930, 840 sin 45° = 593.970.
    #[test]
    fn by_hand_long_lengths_of_hobthrush() {
        let mut spec = read_spec_file(Path::new("specs/hobthrush-smokebox.yaml")).expect("sound");
        let lengths = |spec: &Spec| -> Vec<String> {
            let design = set_out(spec).expect("a sound plate");
            let checks = cross_checks(&design, spec.written.barrel.as_ref());
            let mm = checks.iter().map(|c| format!("{:.2}", c.length.to_mm()));
            mm.collect()
        };
        let in_place = lengths(&spec);
        spec.written.rivets.as_mut().expect("rivets").how = RivetHow::Drawn;
        let drawn = lengths(&spec);
        for expected in ["300.00", "530.00"] {
            assert!(in_place.iter().any(|i| i == expected), "{in_place:?}");
        }
        for expected in ["611.93", "593.97"] {
            assert!(!in_place.iter().any(|i| i == expected), "{in_place:?}");
            assert!(drawn.iter().any(|i| i == expected), "{drawn:?}");
        }
    }

    /// About a dozen, none twice.
    #[test]
    fn holds_about_twelve_and_none_twice() {
        for file in PLATES {
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
