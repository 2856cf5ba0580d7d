//! Metal between holes: every pair, of every purpose, on the diameter through which ligaments are judged.
//!
//! Holes of different sizes stand side by side, so the least metal need not lie between the nearest centres, and a net of
//! nearest neighbours can miss it. Every pair is found from its larger hole: metal of no more than *m* between a hole of radius
//! *r* and a hole no larger puts their centres no further apart than 2 *r* + *m*.

use std::cell::OnceCell;
use std::collections::BTreeMap;

use super::{Hole, HoleGroup, HoleIndex};
use crate::spec::Purpose;
use crate::units::Length;
use crate::units::tolerance::SAME_LENGTH_MM;

/// Clear metal between the edges of two holes.
#[derive(Clone, Debug)]
pub struct Ligament {
    /// Indices into [`super::Design::holes`], the lower first.
    pub holes: (usize, usize),
    /// Centre to centre.
    pub pitch: Length,
    /// Edge to edge, on the diameter through which ligaments are judged; negative where the holes overlap.
    pub metal: Length,
}

impl Ligament {
    /// Between two holes of a plate, in either order.
    pub fn between(holes: &[Hole], a: usize, b: usize) -> Ligament {
        let (a, b) = (a.min(b), a.max(b));
        let pitch = Length::mm(holes[a].at.distance(holes[b].at));
        Ligament {
            holes: (a, b),
            pitch,
            metal: pitch - (holes[a].ligament_hole + holes[b].ligament_hole) / 2.0,
        }
    }
}

/// The least ligament between holes of two purposes.
#[derive(Clone, Debug)]
pub struct LeastLigament {
    /// The purposes, in the order of [`Purpose`].
    pub between: (Purpose, Purpose),
    /// The pair.
    pub ligament: Ligament,
}

/// Every ligament of a plate that anybody may ask for.
#[derive(Clone, Debug, Default)]
pub struct Survey {
    /// The least of every pair of purposes of which the plate has two holes, in the order of [`Purpose`]. Of several alike, the
    /// pair with the lowest indices.
    pub least: Vec<LeastLigament>,
    /// Every pair with no more metal between them than the diameter of the larger hole, and every pair that stands in `least`;
    /// by index. Overlaps are among them, with negative metal.
    pub close_pairs: Vec<Ligament>,
}

/// Finds every close pair of holes, and the least ligament between every two purposes.
pub fn survey(holes: &[Hole], groups: &[HoleGroup]) -> Survey {
    let mut close_pairs = pairs_within(holes, |hole| hole.ligament_hole);
    let least = least_by_purpose(holes, groups, &close_pairs);
    let known = close_pairs.len();
    for found in &least {
        let place = close_pairs[..known].binary_search_by_key(&found.ligament.holes, |c| c.holes);
        if place.is_err() {
            close_pairs.push(found.ligament.clone());
        }
    }
    close_pairs.sort_unstable_by_key(|pair| pair.holes);
    Survey { least, close_pairs }
}

/// Every pair of holes with no more metal between them than `most` says of the larger of the two, by index; every overlap is
/// among them. Of two holes alike, the one with the lower index counts as the larger.
pub fn pairs_within(holes: &[Hole], most: impl Fn(&Hole) -> Length) -> Vec<Ligament> {
    let index = HoleIndex::new(holes);
    let mut pairs = Vec::new();
    for larger in 0..holes.len() {
        let hole = &holes[larger];
        let limit = most(hole).max(Length::ZERO);
        let reach = (hole.ligament_hole + limit).to_mm();
        for other in index.within(hole.at, reach) {
            if !is_larger(holes, larger, other) {
                continue;
            }
            let pair = Ligament::between(holes, larger, other);
            if pair.metal <= limit {
                pairs.push(pair);
            }
        }
    }
    pairs.sort_unstable_by_key(|pair| pair.holes);
    pairs
}

fn is_larger(holes: &[Hole], a: usize, b: usize) -> bool {
    let (one, two) = (holes[a].ligament_hole, holes[b].ligament_hole);
    one > two || (one == two && a < b)
}

fn least_by_purpose(
    holes: &[Hole],
    groups: &[HoleGroup],
    close_pairs: &[Ligament],
) -> Vec<LeastLigament> {
    let purpose = |hole: usize| groups[holes[hole].group].purpose;
    let mut by_purpose: BTreeMap<Purpose, Vec<usize>> = BTreeMap::new();
    for hole in 0..holes.len() {
        by_purpose.entry(purpose(hole)).or_default().push(hole);
    }
    let mut close: BTreeMap<(Purpose, Purpose), Vec<&Ligament>> = BTreeMap::new();
    for pair in close_pairs {
        let (a, b) = (purpose(pair.holes.0), purpose(pair.holes.1));
        close.entry((a.min(b), a.max(b))).or_default().push(pair);
    }
    let sets: Vec<(Purpose, HoleSet<'_>)> = by_purpose
        .into_iter()
        .map(|(purpose, members)| (purpose, HoleSet::new(holes, members)))
        .collect();
    let mut least = Vec::new();
    for (rank, (a, set_a)) in sets.iter().enumerate() {
        for (b, set_b) in &sets[rank..] {
            let between = (*a, *b);
            let known = close.get(&between).map_or(&[][..], Vec::as_slice);
            let found = least_between(holes, set_a, set_b, known);
            least.extend(found.map(|ligament| LeastLigament { between, ligament }));
        }
    }
    least
}

/// Holes of one purpose.
struct HoleSet<'a> {
    holes: &'a [Hole],
    members: Vec<usize>,
    /// Built when first wanted: a plate of tubes all alike needs none.
    index: OnceCell<HoleIndex>,
    /// Their size, where all are of one size.
    alike: Option<Length>,
}

impl HoleSet<'_> {
    fn new(holes: &[Hole], members: Vec<usize>) -> HoleSet<'_> {
        let size = holes[members[0]].ligament_hole;
        let alike = members.iter().all(|&m| holes[m].ligament_hole == size);
        HoleSet {
            holes,
            index: OnceCell::new(),
            alike: alike.then_some(size),
            members,
        }
    }

    fn index(&self) -> &HoleIndex {
        let places = || self.members.iter().map(|&m| (m, self.holes[m].at));
        self.index.get_or_init(|| HoleIndex::of_places(places()))
    }
}

/// The least ligament between two sets (or within one, given twice), starting from the close pairs already found between them.
fn least_between(
    holes: &[Hole],
    a: &HoleSet<'_>,
    b: &HoleSet<'_>,
    known: &[&Ligament],
) -> Option<Ligament> {
    let known_least = first_least(known.iter().copied());
    // Between holes all of one size and holes all of another, a pair that is not close has more metal than any that is.
    if known_least.is_some() && a.alike.is_some() && b.alike.is_some() {
        return known_least;
    }
    let bound = match known_least {
        Some(pair) => pair.metal,
        None => some_pair(holes, a, b)?.metal,
    };
    let within = pairs_no_wider(holes, a, b, bound);
    let closest = within
        .iter()
        .map(|pair| pair.metal)
        .fold(bound, Length::min);
    let alike = within
        .iter()
        .filter(|pair| pair.metal <= closest + Length::mm(SAME_LENGTH_MM));
    first_least(alike)
}

/// Of pairs alike within [`SAME_LENGTH_MM`], the one with the lowest indices.
fn first_least<'a>(pairs: impl Iterator<Item = &'a Ligament> + Clone) -> Option<Ligament> {
    let least = pairs
        .clone()
        .map(|pair| pair.metal)
        .min_by(Length::total_cmp)?;
    pairs
        .filter(|pair| pair.metal <= least + Length::mm(SAME_LENGTH_MM))
        .min_by_key(|pair| pair.holes)
        .cloned()
}

/// A pair to start from: the best of those between each hole of the smaller set and the hole of the other nearest to it.
fn some_pair(holes: &[Hole], a: &HoleSet<'_>, b: &HoleSet<'_>) -> Option<Ligament> {
    let (few, many) = if a.members.len() <= b.members.len() {
        (a, b)
    } else {
        (b, a)
    };
    few.members
        .iter()
        .filter_map(|&hole| {
            let other = many
                .index()
                .nearest_first(holes[hole].at)
                .find(|&other| other != hole)?;
            Some(Ligament::between(holes, hole, other))
        })
        .min_by(|one, two| one.metal.total_cmp(&two.metal))
}

/// Every pair between two sets with no more metal than a bound, each found from its larger hole.
fn pairs_no_wider(
    holes: &[Hole],
    a: &HoleSet<'_>,
    b: &HoleSet<'_>,
    bound: Length,
) -> Vec<Ligament> {
    let bound = bound + Length::mm(SAME_LENGTH_MM);
    let mut pairs = Vec::new();
    for (one, other) in [(a, b), (b, a)] {
        for &hole in &one.members {
            let reach = (holes[hole].ligament_hole + bound).to_mm();
            if reach < 0.0 {
                continue;
            }
            for near in other.index().within(holes[hole].at, reach) {
                let pair = Ligament::between(holes, hole, near);
                if is_larger(holes, hole, near) && pair.metal <= bound {
                    pairs.push(pair);
                }
            }
        }
        if std::ptr::eq(a, b) {
            break;
        }
    }
    pairs
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Point;
    use crate::units::Size;

    fn hole(x: f64, y: f64, diameter: &str) -> Hole {
        let finish = Size::read(diameter).unwrap();
        Hole {
            id: String::new(),
            group: 0,
            at: Point::new(x, y),
            ligament_hole: finish.value(),
            finish,
            exception: None,
            line: None,
            path: String::new(),
        }
    }

    /// A stay hole of 33 at (270, 190) beside a tube hole of 39 at (254.25, 147): √(15.75² + 43²) = 45.79, less 36 is 9.79.
    #[test]
    fn by_hand_stay_beside_a_tube() {
        let holes = [hole(270.0, 190.0, "33 mm"), hole(254.25, 147.0, "39 mm")];
        let pair = Ligament::between(&holes, 1, 0);
        assert_eq!(format!("{:.2}", pair.metal.to_mm()), "9.79");
        assert_eq!(pair.holes, (0, 1));
    }

    /// A flue of 140 between tubes of 40: its edge is 5 from the tube 95 off, and the tubes themselves are 30 apart: the least
    /// metal is not between the nearest centres. Two holes in one place overlap by the whole of the smaller radius and more.
    #[test]
    fn by_hand_mixed_sizes_and_overlap() {
        let holes = [
            hole(0.0, 0.0, "140 mm"),
            hole(95.0, 0.0, "40 mm"),
            hole(165.0, 0.0, "40 mm"),
            hole(95.0, 0.0, "20 mm"),
        ];
        let metal: Vec<_> = pairs_within(&holes, |_| Length::mm(5.0))
            .iter()
            .map(|pair| (pair.holes, pair.metal.to_mm()))
            .collect();
        assert_eq!(metal, [((0, 1), 5.0), ((1, 3), -30.0)]);
    }
}
