//! How the holes of the flat begin: as holes that the cutter has left, as pops with a pilot to come, or as pops alone. What the shop
//! is told to count, to prove and to leave alone follows from it.

use std::collections::BTreeSet;

use super::set::Set;
use crate::cut::{HolesCut, PartKind};
use crate::design::Hole;
use crate::spec::StagePlace;
use crate::units::Length;

/// How many holes begin in each way.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Beginning {
    /// The cutter leaves a hole.
    pub cut: usize,
    /// Popped at the works, a pilot through it first.
    pub piloted: usize,
    /// Popped at the works, and no pilot among its stages.
    pub popped: usize,
}

impl Beginning {
    /// Of these holes of the plate, by their indices.
    pub fn of(set: &Set<'_>, holes: impl Iterator<Item = usize>) -> Beginning {
        let cut: BTreeSet<&str> = cut_ids(set).collect();
        let mut found = Beginning::default();
        // What stands in a plate that is kept begins in no way.
        let made = holes.filter(|hole| set.design.is_made(*hole));
        for hole in made.map(|hole| &set.design.holes[hole]) {
            let stages = &set.design.groups[hole.group].stages;
            let by_cutter = stages.iter().any(|s| s.place == StagePlace::Cut);
            if by_cutter || cut.contains(hole.id.as_str()) {
                found.cut += 1;
            } else if stages.iter().any(|s| is_pilot(&s.name)) {
                found.piloted += 1;
            } else {
                found.popped += 1;
            }
        }
        found
    }

    /// Of every hole of a group.
    pub fn of_group(set: &Set<'_>, group: usize) -> Beginning {
        let holes = 0..set.design.holes.len();
        Beginning::of(
            set,
            holes.filter(|&hole| set.design.holes[hole].group == group),
        )
    }

    /// Of every hole in the flat.
    pub fn of_plate(set: &Set<'_>) -> Beginning {
        Beginning::of(set, 0..set.design.holes.len())
    }

    /// How many there are.
    pub fn all(self) -> usize {
        self.cut + self.pops()
    }

    /// How many are popped at the works.
    pub fn pops(self) -> usize {
        self.piloted + self.popped
    }

    /// How far the holes may be taken before the count is signed: "NO HOLE BEYOND ITS PILOT".
    pub fn no_further(self) -> String {
        let bounds = [
            (self.cut, "SIZE AS CUT"),
            (self.piloted, "PILOT"),
            (self.popped, "POP"),
        ];
        let bounds = bounds.into_iter().filter(|(off, _)| *off > 0);
        let bounds: Vec<&str> = bounds.map(|(_, words)| words).collect();
        match bounds.is_empty() {
            true => "NO HOLE BEYOND ITS POP".into(),
            false => format!("NO HOLE BEYOND ITS {}", bounds.join(" OR ")),
        }
    }
}

/// The sizes that the cutter leaves of a group's holes; empty where none of them is cut.
pub fn cut_sizes(set: &Set<'_>, group: usize) -> Vec<String> {
    let holes = set.design.holes.iter().filter(|h| h.group == group);
    let ids: BTreeSet<&str> = holes.map(|h| h.id.as_str()).collect();
    let plates = set.parts.iter().filter(|part| part.kind == PartKind::Plate);
    let cuts = plates.flat_map(|p| &p.holes_cut);
    let mut sizes: Vec<String> = cuts
        .filter(|c| c.ids.iter().any(|id| ids.contains(id.as_str())))
        .map(|c| set.figures.short(c.cut))
        .collect();
    sizes.dedup();
    sizes
}

/// The hole that is open already where the datum lines cross, so that no trammel finds a foot there without a bridge: one that the
/// cutter has left, or that stands in a plate that is kept.
pub fn open_at_the_centre<'a>(set: &Set<'a>) -> Option<&'a Hole> {
    let design = set.design;
    let plates = set.parts.iter().filter(|part| part.kind == PartKind::Plate);
    let cuts: Vec<&HolesCut> = plates.flat_map(|part| &part.holes_cut).collect();
    let open_to = |index: usize| {
        let hole = &design.holes[index];
        let cut = cuts.iter().find(|cut| cut.ids.contains(&hole.id));
        match (design.is_made(index), cut) {
            (false, _) => Some(hole.finish.value()),
            (true, cut) => cut.map(|cut| cut.cut),
        }
    };
    let mut indices = 0..design.holes.len();
    let found = indices.find(|&index| {
        let away = Length::mm(design.holes[index].at.radius());
        open_to(index).is_some_and(|diameter| away < diameter / 2.0)
    });
    found.map(|index| &design.holes[index])
}

fn is_pilot(stage: &str) -> bool {
    stage.to_lowercase().contains("pilot")
}

fn cut_ids<'a>(set: &Set<'a>) -> impl Iterator<Item = &'a str> {
    let plates = set.parts.iter().filter(|part| part.kind == PartKind::Plate);
    let cuts = plates.flat_map(|part| &part.holes_cut);
    cuts.flat_map(|cut| &cut.ids).map(String::as_str)
}

#[cfg(test)]
mod tests {
    use super::super::sample_jobs::{jobs, with_set};
    use super::*;

    /// Every hole begins in one way, and a group's holes are the plate's.
    #[test]
    fn holds_every_hole_begins_once() {
        for job in jobs() {
            with_set(&job, |set| {
                let all = Beginning::of_plate(set);
                assert_eq!(
                    all.cut + all.pops(),
                    set.design.holes_made().count(),
                    "{job}"
                );
                let groups = 0..set.design.groups.len();
                let by_group = groups.map(|group| Beginning::of_group(set, group));
                let cut: usize = by_group.map(|one| one.cut).sum();
                assert_eq!(cut, all.cut, "{job}");
            });
        }
    }

    /// Marl Hen's blank is pressed and no hole is cut in it; its 100 tube holes have a pilot, its pipe, plug and four stays none.
    #[test]
    fn by_hand_a_pressed_plate_is_popped() {
        with_set("specs/marl-hen-smokebox.yaml", |set| {
            let wanted = Beginning {
                cut: 0,
                piloted: 100,
                popped: 6,
            };
            assert_eq!(Beginning::of_plate(set), wanted);
            assert_eq!(wanted.no_further(), "NO HOLE BEYOND ITS PILOT OR POP");
        });
    }

    /// Of Hobthrush the waterjet cuts every hole: none is popped, and none has a pilot.
    #[test]
    fn by_hand_a_cut_plate_has_no_pilots() {
        with_set("specs/hobthrush-smokebox.yaml", |set| {
            let found = Beginning::of_plate(set);
            assert_eq!(found.pops(), 0);
            assert_eq!(found.no_further(), "NO HOLE BEYOND ITS SIZE AS CUT");
        });
    }

    /// A row of Hobthrush stands on the barrel's centre with a hole in its middle, which the contractor cuts to 37: no trammel finds
    /// a foot there. Marl Hen is cut from a plain blank, so nothing is open when it is marked out.
    #[test]
    fn by_hand_what_is_open_at_the_centre() {
        with_set("specs/hobthrush-smokebox.yaml", |set| {
            let hole = open_at_the_centre(set).expect("the middle hole of the row");
            assert!(hole.at.radius() < 1e-9, "{}", hole.id);
        });
        with_set("specs/marl-hen-smokebox.yaml", |set| {
            assert!(open_at_the_centre(set).is_none());
        });
    }
}
