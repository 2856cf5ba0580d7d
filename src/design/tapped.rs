//! The thread that is cut in a hole into which something is screwed: a taper plug, a stay, a stay tube.
//!
//! A hole that is tapped is never opened to its size over the threads: no metal would be left for them.

use super::{Design, Stage};
use crate::spec::{HoleSet, Nest, StagePlace, StayKind, StayTubes};
use crate::units::Size;

/// A thread in a hole.
#[derive(Clone, Debug)]
pub struct Tapped {
    /// Diameter over the threads; of a taper thread, at the smokebox face.
    pub over_threads: Size,
    /// Threads to the inch.
    pub per_inch: f64,
    /// Taper on the diameter, one in so many; none of a parallel thread.
    pub taper_one_in: Option<f64>,
}

impl Tapped {
    /// The thread of a hole of this set; none where nothing is screwed into the plate there.
    ///
    /// A stay whose thread is as wide as its hole or wider cannot go through clear, and so is screwed in. A palm or a diagonal stay is
    /// held by its foot, whose holes are plain.
    pub(super) fn of_hole_set(set: &HoleSet) -> Option<Tapped> {
        if let Some(plug) = &set.plug {
            return Some(Tapped {
                over_threads: set.hole.clone(),
                per_inch: plug.threads_per_inch,
                taper_one_in: Some(plug.taper_one_in),
            });
        }
        let stay = set.stay.as_ref()?;
        let goes_through = match stay.kind {
            StayKind::Firebox | StayKind::Longitudinal => {
                stay.diameter.value().shortfall(set.hole.value()).is_some()
            }
            StayKind::Palm | StayKind::Diagonal => true,
        };
        (!goes_through).then(|| Tapped {
            over_threads: stay.diameter.clone(),
            per_inch: stay.threads_per_inch,
            taper_one_in: None,
        })
    }

    /// The thread of those tubes of a nest that are screwed in; none where every tube is only expanded.
    pub(super) fn of_nest(nest: &Nest) -> Option<Tapped> {
        let StayTubes {
            over_threads,
            threads_per_inch,
            ..
        } = nest.stay_tubes.as_ref()?;
        Some(Tapped {
            over_threads: over_threads.clone(),
            per_inch: *threads_per_inch,
            taper_one_in: None,
        })
    }

    /// Whether the last of these stages is the tapping itself: it leaves the size over the threads.
    pub fn ends(&self, stages: &[Stage]) -> bool {
        let last = stages.last().and_then(|stage| stage.size.as_ref());
        last.is_some_and(|size| size.value().same_as(self.over_threads.value()))
    }

    /// The hole that is opened before the tap goes through, as the stages have it; none where the works has still to give it.
    pub fn opening<'a>(&self, stages: &'a [Stage]) -> Option<&'a Size> {
        let before = match self.ends(stages) {
            true => &stages[..stages.len() - 1],
            false => stages,
        };
        before.iter().rev().find_map(|stage| stage.size.as_ref())
    }

    /// The stages of a tapped hole with the tap as the last of them, where they end with the hole that is tapped.
    pub fn with_tap(&self, stages: &[Stage]) -> Vec<Stage> {
        let mut all = stages.to_vec();
        if !self.ends(stages) {
            all.push(Stage {
                name: "tap".into(),
                size: Some(self.over_threads.clone()),
                place: StagePlace::default(),
            });
        }
        all
    }

    /// Stages of a tapped hole as they are made: the last of them is the tap, whatever it was called.
    pub(super) fn staged(&self, mut stages: Vec<Stage>) -> Vec<Stage> {
        if self.ends(&stages)
            && let Some(last) = stages.last_mut()
            && !last.name.to_lowercase().contains("tap")
        {
            last.name = "tap".into();
        }
        stages
    }
}

impl Design {
    /// The thread that is cut in a hole; none where it stays plain.
    pub fn tapped(&self, hole: usize) -> Option<&Tapped> {
        let group = &self.groups[self.holes[hole].group];
        let screwed = !group.purpose.takes_a_tube() || self.stay_tubes.binary_search(&hole).is_ok();
        group.tapped.as_ref().filter(|_| screwed)
    }

    /// The thread of a group of which every hole is tapped.
    pub fn all_tapped(&self, group: usize) -> Option<&Tapped> {
        let mut own = (0..self.holes.len()).filter(|&hole| self.holes[hole].group == group);
        let every = own.all(|hole| self.tapped(hole).is_some());
        self.groups[group].tapped.as_ref().filter(|_| every)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stage(name: &str, size: &str) -> Stage {
        Stage {
            name: name.into(),
            size: Some(Size::read(size).expect("a size")),
            place: StagePlace::default(),
        }
    }

    fn plug(over_threads: &str) -> Tapped {
        Tapped {
            over_threads: Size::read(over_threads).expect("a size"),
            per_inch: 11.0,
            taper_one_in: Some(12.0),
        }
    }

    /// A plug of 1 3/4 in over the threads: nothing is opened before the tap where the stages do not say so; and 1 5/8 in where they
    /// do. Whatever the last stage is called, it is tapped.
    #[test]
    fn by_hand_opening_before_tapping() {
        let tapped = plug("1 3/4 in");
        let bare = tapped.staged(vec![stage("finish", "1 3/4 in")]);
        assert_eq!(bare[0].name, "tap");
        assert!(tapped.opening(&bare).is_none());
        let staged = [stage("drill", "1 5/8 in"), stage("tap", "1 3/4 in")];
        let opening = tapped.opening(&staged).expect("the drill's");
        assert_eq!(opening.as_written(), "1 5/8 in");
    }

    /// A stay of 1 1/4 in written with its tapping hole of 1 1/8 in: the hole is the opening, and no stage of it is renamed.
    #[test]
    fn by_hand_a_tapping_hole_is_the_opening() {
        let tapped = plug("1 1/4 in");
        let stages = tapped.staged(vec![stage("finish", "1 1/8 in")]);
        assert_eq!(stages[0].name, "finish");
        let opening = tapped.opening(&stages).expect("the hole");
        assert_eq!(opening.as_written(), "1 1/8 in");
        let all = tapped.with_tap(&stages);
        let names: Vec<&str> = all.iter().map(|stage| stage.name.as_str()).collect();
        assert_eq!(names, ["finish", "tap"]);
    }
}
