//! What became of the holes and the figures of a plate from one design to the next. Compares; never judges.
//!
//! Holes are matched within the group of the same name: first those at one place, then those of one number, then the nearest within
//! a bound. A hole that has only another number has not changed, but every sheet and record calls it otherwise, so it is told.

use super::{Design, Hole, HoleIndex, Point};
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

/// A hole that was moved is looked for no further off than this many of its own diameters.
const BOUND: f64 = 1.0;

/// What became of one hole.
#[derive(Clone, Debug)]
pub enum HoleChange {
    /// In the new design and not in the old one.
    Added(HoleAt),
    /// In the old design and not in the new one.
    Omitted(HoleAt),
    /// Elsewhere, of another size, or both.
    Altered {
        /// As it was.
        old: HoleAt,
        /// As it is.
        new: HoleAt,
    },
    /// The same hole under another number.
    Renumbered {
        /// As it was.
        old: HoleAt,
        /// As it is.
        new: HoleAt,
    },
}

/// A hole in one of the designs.
#[derive(Clone, Debug)]
pub struct HoleAt {
    /// Its number there.
    pub id: String,
    /// Name of its group.
    pub group: String,
    /// Its centre.
    pub at: Point,
    /// Finished hole.
    pub finish: Size,
}

impl HoleAt {
    /// Whether another hole lies at the same place.
    pub fn same_place(&self, other: &HoleAt) -> bool {
        self.at.distance(other.at) <= SAME_LENGTH_MM
    }

    /// Whether another hole has the same size.
    pub fn same_size(&self, other: &HoleAt) -> bool {
        self.finish.value().same_as(other.finish.value())
    }
}

/// How many holes a group has, in either design; none where there is no such group.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GroupCount {
    /// Name of the group.
    pub group: String,
    /// In the old design.
    pub old: Option<usize>,
    /// In the new design.
    pub new: Option<usize>,
}

/// A figure of the plate, in mm, mm², kg or degrees; none where the design has no such figure.
#[derive(Clone, Debug, PartialEq)]
pub struct FigureChange {
    /// What it is.
    pub name: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// In the old design.
    pub old: Option<f64>,
    /// In the new design.
    pub new: Option<f64>,
}

/// A least metal that differs.
#[derive(Clone, Debug)]
pub struct MetalChange {
    /// Between what: "stay to tangent".
    pub between: String,
    /// As it was; none where no such holes were neighbours.
    pub old: Option<Length>,
    /// As it is.
    pub new: Option<Length>,
}

/// Everything that differs between two designs.
#[derive(Clone, Debug, Default)]
pub struct Changes {
    /// Holes, in the order of the old design, then those added.
    pub holes: Vec<HoleChange>,
    /// Groups whose count differs.
    pub counts: Vec<GroupCount>,
    /// Figures that differ.
    pub figures: Vec<FigureChange>,
    /// Least metals that differ, of neighbours only.
    pub metals: Vec<MetalChange>,
    /// Places of the new edge that lie off the old one, where the edge differs: the furthest, with its distance in mm.
    pub edge: Option<(Point, f64)>,
}

impl Changes {
    /// Whether nothing differs.
    pub fn is_empty(&self) -> bool {
        self.holes.is_empty()
            && self.counts.is_empty()
            && self.figures.is_empty()
            && self.metals.is_empty()
            && self.edge.is_none()
    }

    /// Numbers that became others, those that went on side by side as one run.
    pub fn renumbered(&self) -> Vec<Renumbered> {
        let mut runs: Vec<Renumbered> = Vec::new();
        for change in &self.holes {
            let HoleChange::Renumbered { old, new } = change else {
                continue;
            };
            let one = || (old.id.clone(), new.id.clone());
            match runs.last_mut() {
                Some(run) if follows(&run.last.0, &old.id) && follows(&run.last.1, &new.id) => {
                    run.last = one();
                }
                _ => runs.push(Renumbered {
                    first: one(),
                    last: one(),
                }),
            }
        }
        runs
    }
}

/// A run of numbers that became another: each the old one and the new.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Renumbered {
    /// The first of the run.
    pub first: (String, String),
    /// The last of it, the first again where it is one hole.
    pub last: (String, String),
}

/// Whether a number comes right after another: T6 after T5.
fn follows(id: &str, next: &str) -> bool {
    let split = |id: &str| -> (String, Option<u32>) {
        let letters = id.trim_end_matches(|c: char| c.is_ascii_digit());
        (letters.to_string(), id[letters.len()..].parse().ok())
    };
    match (split(id), split(next)) {
        ((letter, Some(a)), (other, Some(b))) => letter == other && b == a + 1,
        _ => false,
    }
}

/// What differs from the old design to the new one.
pub fn changes(old: &Design, new: &Design) -> Changes {
    Changes {
        holes: holes(old, new),
        counts: counts(old, new),
        figures: figures(old, new),
        metals: metals(old, new),
        edge: edge(old, new),
    }
}

/// Least metals of the old design that are others in the new one, then those between holes that were no neighbours before.
fn metals(old: &Design, new: &Design) -> Vec<MetalChange> {
    let (was, is) = (metals_of(old), metals_of(new));
    let of = |list: &[(String, Length)], between: &str| {
        let mut found = list.iter().filter(|(name, _)| name == between);
        found.next().map(|(_, metal)| *metal)
    };
    let added = is.iter().filter(|(name, _)| of(&was, name).is_none());
    was.iter()
        .chain(added)
        .map(|(between, _)| MetalChange {
            between: between.clone(),
            old: of(&was, between),
            new: of(&is, between),
        })
        .filter(|change| match (change.old, change.new) {
            (Some(old), Some(new)) => !old.same_as(new),
            _ => true,
        })
        .collect()
}

/// The least metal of every two purposes and from every purpose to every line, no further than the hole is wide.
fn metals_of(design: &Design) -> Vec<(String, Length)> {
    let size = |hole: usize| design.holes[hole].finish.value();
    let between = design.least_ligaments.iter().filter_map(|least| {
        let (a, b) = least.ligament.holes;
        let near = least.ligament.metal <= size(a).max(size(b));
        let name = format!("{} and {}", least.between.0.name(), least.between.1.name());
        near.then_some((name, least.ligament.metal))
    });
    let lands = design.lands.iter().filter_map(|land| {
        let name = format!("{} to {}", land.purpose.name(), land.line.name());
        (land.metal <= size(land.hole)).then_some((name, land.metal))
    });
    between.chain(lands).collect()
}

fn hole_at(design: &Design, hole: &Hole) -> HoleAt {
    HoleAt {
        id: hole.id.clone(),
        group: design.groups[hole.group].name.clone(),
        at: hole.at,
        finish: hole.finish.clone(),
    }
}

fn holes(old: &Design, new: &Design) -> Vec<HoleChange> {
    let all = |design: &Design| -> Vec<HoleAt> {
        let holes = design.holes.iter();
        holes.map(|hole| hole_at(design, hole)).collect()
    };
    let (was, is) = (all(old), all(new));
    let matched = matched(&was, &is);
    let mut found = Vec::new();
    let mut taken = vec![false; is.len()];
    for (old, new) in was.iter().zip(&matched) {
        let Some(number) = *new else {
            found.push(HoleChange::Omitted(old.clone()));
            continue;
        };
        taken[number] = true;
        let (old, new) = (old.clone(), is[number].clone());
        match (
            old.same_place(&new) && old.same_size(&new),
            old.id == new.id,
        ) {
            (true, true) => {}
            (true, false) => found.push(HoleChange::Renumbered { old, new }),
            (false, _) => found.push(HoleChange::Altered { old, new }),
        }
    }
    let added = is.into_iter().zip(taken).filter(|(_, taken)| !taken);
    found.extend(added.map(|(hole, _)| HoleChange::Added(hole)));
    found
}

/// For each old hole, the new one that it became.
fn matched(old: &[HoleAt], new: &[HoleAt]) -> Vec<Option<usize>> {
    let index = HoleIndex::of_places(new.iter().map(|h| h.at).enumerate());
    let mut matched: Vec<Option<usize>> = vec![None; old.len()];
    let mut taken = vec![false; new.len()];
    let mut pairs = Vec::new();
    for (number, hole) in old.iter().enumerate() {
        let bound = hole.finish.value().to_mm() * BOUND;
        for other in index.within(hole.at, bound) {
            if new[other].group == hole.group {
                let off = new[other].at.distance(hole.at);
                // Rounding decides nothing: places that are one are equally near.
                let off = if off <= SAME_LENGTH_MM { 0.0 } else { off };
                pairs.push((off, hole.id != new[other].id, number, other));
            }
        }
    }
    // One place first, then one number, then the nearest.
    pairs.sort_by(|a, b| {
        let here = |off: f64| off > 0.0;
        (here(a.0), a.1)
            .cmp(&(here(b.0), b.1))
            .then(a.0.total_cmp(&b.0))
            .then((a.2, a.3).cmp(&(b.2, b.3)))
    });
    for (_, _, number, other) in pairs {
        if matched[number].is_none() && !taken[other] {
            matched[number] = Some(other);
            taken[other] = true;
        }
    }
    matched
}

fn counts(old: &Design, new: &Design) -> Vec<GroupCount> {
    let mut names: Vec<&str> = old.groups.iter().map(|g| g.name.as_str()).collect();
    names.extend(new.groups.iter().map(|g| g.name.as_str()));
    let mut seen: Vec<&str> = Vec::new();
    names.retain(|name| {
        !seen.contains(name) && {
            seen.push(name);
            true
        }
    });
    let count = |design: &Design, name: &str| {
        let group = |g: usize| design.groups[g].name == name;
        let there = (0..design.groups.len()).any(group);
        there.then(|| design.holes.iter().filter(|h| group(h.group)).count())
    };
    let of = |name: &str| GroupCount {
        group: name.to_string(),
        old: count(old, name),
        new: count(new, name),
    };
    let counts = names.into_iter().map(of);
    counts.filter(|count| count.old != count.new).collect()
}

/// The edge is walked at this many places of each of its pieces.
const PLACES: usize = 64;

fn edge(old: &Design, new: &Design) -> Option<(Point, f64)> {
    let furthest = |walked: &super::Outline, from: &super::Outline| {
        let places = walked
            .edges()
            .iter()
            .flat_map(|edge| (0..=PLACES).map(move |i| edge.at_share(i as f64 / PLACES as f64)));
        let off = places.map(|place| (place, from.distance(place)));
        off.fold((Point::CENTRE, 0.0), |best, one| {
            if one.1 > best.1 { one } else { best }
        })
    };
    let (out, back) = (
        furthest(&new.edge, &old.edge),
        furthest(&old.edge, &new.edge),
    );
    let most = if back.1 > out.1 { back } else { out };
    (most.1 > SAME_LENGTH_MM).then_some(most)
}

fn figures(old: &Design, new: &Design) -> Vec<FigureChange> {
    let (was, is) = (all_figures(old), all_figures(new));
    let pairs = was.into_iter().zip(is);
    let changes = pairs.map(|((name, unit, old), (_, _, new))| FigureChange {
        name,
        unit,
        old,
        new,
    });
    changes.filter(differs).collect()
}

fn differs(figure: &FigureChange) -> bool {
    match (figure.old, figure.new) {
        (Some(old), Some(new)) => (old - new).abs() > SAME_LENGTH_MM,
        (old, new) => old.is_some() != new.is_some(),
    }
}

type Figure = (&'static str, &'static str, Option<f64>);

/// The figures that a drawing office watches, in one order.
fn all_figures(design: &Design) -> Vec<Figure> {
    let mm = |length: Length| Some(length.to_mm());
    let least = design
        .least_ligaments
        .iter()
        .map(|l| l.ligament.metal.to_mm());
    let rivets = design.rivets.as_ref();
    let pressed = match &design.flange {
        Some(super::FlangeDesign::Pressed(flange)) => Some(flange),
        _ => None,
    };
    let ring = match &design.flange {
        Some(super::FlangeDesign::Fabricated(ring)) => Some(ring),
        _ => None,
    };
    let figures = &design.figures;
    vec![
        ("thickness", "mm", mm(design.thickness.value())),
        ("holes", "", Some(design.holes.len() as f64)),
        (
            "least metal between two holes",
            "mm",
            least.reduce(f64::min),
        ),
        ("width over all", "mm", mm(figures.outline_box.0)),
        ("height over all", "mm", mm(figures.outline_box.1)),
        (
            "area inside the edge",
            "mm2",
            Some(figures.outline_area_mm2),
        ),
        ("length of the edge", "mm", mm(figures.outline_perimeter)),
        ("blank as cut", "mm", pressed.and_then(|f| mm(f.blank_cut))),
        (
            "tangent radius",
            "mm",
            pressed.and_then(|f| mm(f.tangent_radius)),
        ),
        ("ring strip, net", "mm", ring.and_then(|r| mm(r.strip_net))),
        ("rivets", "", rivets.map(|r| r.rivets.len() as f64)),
        (
            "rows of rivets",
            "",
            rivets.map(|r| f64::from(r.row_count())),
        ),
        (
            "inner row of rivets to the flange's edge",
            "mm",
            rivets.and_then(|r| mm(r.inner_row_from_edge())),
        ),
        (
            "rivet pitch at the bore",
            "mm",
            rivets.and_then(|r| mm(r.pitch_bore)),
        ),
        (
            "largest unsupported circle",
            "mm",
            design.largest_circle.as_ref().and_then(|c| mm(c.diameter)),
        ),
        ("finished plate", "kg", figures.plate_mass_kg),
        ("ring", "kg", figures.ring_mass_kg),
        ("blank", "kg", figures.blank_mass_kg),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hole(id: &str, x: f64, size: &str) -> HoleAt {
        HoleAt {
            id: id.into(),
            group: "tubes".into(),
            at: Point::new(x, 0.0),
            finish: Size::read(size).expect("a size"),
        }
    }

    /// Three holes 50 apart; the first is left out and the others are numbered anew, the last of them moved by 2: the second became
    /// the first, the third the second.
    #[test]
    fn by_hand_a_hole_left_out_moves_the_numbers_and_not_the_holes() {
        let old = [
            hole("T1", 0.0, "40 mm"),
            hole("T2", 50.0, "40 mm"),
            hole("T3", 100.0, "40 mm"),
        ];
        let new = [hole("T1", 50.0, "40 mm"), hole("T2", 102.0, "40 mm")];
        assert_eq!(matched(&old, &new), [None, Some(0), Some(1)]);
    }

    /// A hole of another size at one place is that hole; one further off than its diameter is another.
    #[test]
    fn by_hand_bounds_of_a_match() {
        let old = [hole("T1", 0.0, "40 mm"), hole("T2", 100.0, "40 mm")];
        let new = [hole("T1", 0.0, "30 mm"), hole("T2", 141.0, "40 mm")];
        assert_eq!(matched(&old, &new), [Some(0), None]);
    }
}
