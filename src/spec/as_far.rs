//! How far a faulty spec can be read: the model with stand-ins where a value could not be taken, so that one run tells the
//! faults of every part that the others leave untouched.
//!
//! A fault that only follows from another is never told: whatever rests on a stand-in, or on a value at fault already, is
//! left out of the model or its faults are dropped.

use super::fault::{Placed, report};
use super::read::placed_in;
use super::{Fault, Faults, Pattern, Spec};

/// A spec with faults, read as far as it goes.
#[derive(Clone, Debug)]
pub(super) struct AsFar {
    spec: Spec,
    placed: Vec<Placed>,
    /// Paths whose values are not to be rested on.
    suspect: Vec<String>,
}

/// What the plate's own form rests on; with any of it in doubt nothing can be set out.
const FORM: [&str; 4] = ["plate.kind", "plate.thickness", "flange", "outline"];

/// What the row of rivets rests on.
const RIVETS: [&str; 2] = ["rivets", "barrel"];

/// Keys of a group of holes that move no hole.
const MOVE_NOTHING: [&str; 15] = [
    "name",
    "stages",
    "wall",
    "between_plates",
    "hole_largest",
    "next_rebore",
    "stay",
    "plug",
    "joint_face",
    "pad",
    "bead",
    "edge_radius",
    "remarks",
    "needs_clear",
    "flanged_mouth",
];

impl AsFar {
    /// `suspect` are the paths of stand-ins and of values that contradict one another.
    pub(super) fn new(spec: Spec, placed: Vec<Placed>, suspect: Vec<String>) -> AsFar {
        AsFar {
            spec,
            placed,
            suspect,
        }
    }

    /// Looks for more faults in what can be rested on, and tells them with the others.
    pub(super) fn look(mut self, look: impl FnOnce(&Spec) -> Vec<Fault>) -> Faults {
        let (file, source) = (self.spec.file.clone(), self.spec.source());
        if !self.rests_on_doubt(&FORM) {
            self.leave_out();
            let more: Vec<Fault> = look(&self.spec);
            let more = more
                .into_iter()
                .filter(|fault| rests_on_none(fault, &self.suspect));
            let more: Vec<Placed> = more
                .map(|fault| placed_in(self.spec.tree(), fault))
                .collect();
            self.placed.extend(more);
        }
        report(&file, &source, self.placed)
    }

    fn rests_on_doubt(&self, parts: &[&str]) -> bool {
        let doubted = |part: &&str| self.suspect.iter().any(|path| related(path, part));
        parts.iter().any(doubted)
    }

    /// Takes out of the model what cannot be set out, and puts the whole of each such part in doubt.
    fn leave_out(&mut self) {
        if self.rests_on_doubt(&RIVETS) {
            self.spec.written.rivets = None;
            self.suspect.push("rivets".into());
        }
        let mut a_nest_in_doubt =
            self.rests_on_doubt(&["tubes"]) && self.spec.written.tubes.is_empty();
        for (index, nest) in self.spec.written.tubes.iter_mut().enumerate() {
            let path = format!("tubes[{index}]");
            if moves_holes(&self.suspect, &path) {
                nest.pattern = Pattern::Points(Vec::new());
                nest.exceptions.clear();
                self.suspect.push(path);
                a_nest_in_doubt = true;
            }
        }
        for (index, set) in self.spec.written.holes.iter_mut().enumerate() {
            let path = format!("holes[{index}]");
            if moves_holes(&self.suspect, &path) {
                set.at.clear();
                self.suspect.push(path);
            }
        }
        if a_nest_in_doubt {
            self.suspect.push("cutting.former_pins".into());
        }
    }
}

/// Drops each fault that speaks of a path in doubt.
pub(super) fn rests_on_none(fault: &Fault, suspect: &[String]) -> bool {
    // What concerns the whole file rests on no one key.
    let mut paths = named(fault).filter(|path| !path.is_empty());
    !paths.any(|path| suspect.iter().any(|doubt| related(doubt, path)))
}

/// The paths that a fault names.
pub(super) fn named(fault: &Fault) -> impl Iterator<Item = &str> {
    let also = fault.also.iter().map(|(path, _)| path.as_str());
    std::iter::once(fault.path.as_str()).chain(also)
}

/// Whether one path is the other or lies beneath it.
fn related(a: &str, b: &str) -> bool {
    let (short, long) = if a.len() <= b.len() { (a, b) } else { (b, a) };
    match long.strip_prefix(short) {
        Some(rest) => rest.is_empty() || rest.starts_with(['.', '[']),
        None => false,
    }
}

/// Whether anything in doubt under a group of holes could move one, or make it another size.
fn moves_holes(suspect: &[String], group: &str) -> bool {
    let within = suspect.iter().filter(|path| related(path, group));
    within
        .map(|path| {
            path.strip_prefix(group)
                .unwrap_or("")
                .trim_start_matches('.')
        })
        .map(|below| below.split(['.', '[']).next().unwrap_or(""))
        .any(|key| !MOVE_NOTHING.contains(&key))
}
