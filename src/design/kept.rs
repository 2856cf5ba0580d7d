//! What of a plate is made on this job: all of it, or, of one that is kept, only what lies in the pieces let in.

use super::stay_field::round_outermost;
use super::{Design, Hole, HoleGroup, LineWay, Point, Reading, Repair};
use crate::units::tolerance::SAME_LENGTH_MM;

/// What is known of the metal that stands somewhere on a plate.
#[derive(Clone, Copy, Debug)]
pub enum MetalThere<'a> {
    /// The plate is to be made: as thick as written.
    AsWritten,
    /// The plate is kept, and this is its least reading there, in metal that stays.
    AsFound(&'a Reading),
    /// The plate is kept, and no reading of the survey stands there in metal that stays.
    NotFound,
}

impl Design {
    /// The pieces let in, with their places in the list of repairs.
    pub fn pieces(&self) -> impl Iterator<Item = (usize, &Repair)> {
        let repairs = self.repairs.iter().enumerate();
        repairs.filter(|(_, repair)| repair.piece.is_some())
    }

    /// Whether a hole of the flat is made on this job; every other stands.
    pub fn is_made(&self, hole: usize) -> bool {
        !self.kept || self.pieces().any(|(_, p)| p.holes_in_it.contains(&hole))
    }

    /// Whether a rivet is closed on this job; every other stands.
    pub fn rivet_is_made(&self, rivet: usize) -> bool {
        !self.kept || self.pieces().any(|(_, p)| p.rivets_in_it.contains(&rivet))
    }

    /// How many rivets are closed on this job.
    pub fn rivets_made(&self) -> usize {
        let rivets = self.rivets.iter().flat_map(|line| &line.rivets);
        let numbers = 0..rivets.count();
        numbers.filter(|rivet| self.rivet_is_made(*rivet)).count()
    }

    /// The holes made on this job, in the order of their numbers.
    pub fn holes_made(&self) -> impl Iterator<Item = &Hole> {
        let holes = self.holes.iter().enumerate();
        holes.filter(|(i, _)| self.is_made(*i)).map(|(_, h)| h)
    }

    /// The groups of which a hole is made on this job, with their places in [`Design::groups`].
    pub fn groups_made(&self) -> impl Iterator<Item = (usize, &HoleGroup)> {
        let groups = self.groups.iter().enumerate();
        groups.filter(|(i, _)| !self.kept || self.holes_made().any(|hole| hole.group == *i))
    }

    /// The plate with nothing in its flat but the holes made on this job, for what is struck and counted on it.
    ///
    /// Numbers, groups and repairs are the same. What was found out about the holes together (metal between them, circles, areas of
    /// stays) is that of the whole plate still.
    pub fn as_made_now(&self) -> Design {
        let mut plate = self.clone();
        if !self.kept {
            return plate;
        }
        let made: Vec<usize> = (0..self.holes.len()).filter(|i| self.is_made(*i)).collect();
        let number = |hole: &usize| made.binary_search(hole).ok();
        plate.holes = made.iter().map(|&i| self.holes[i].clone()).collect();
        let (holes, ways) = (&plate.holes, &plate.line_way);
        plate.nest_lines.retain_mut(|line| {
            let way = ways.iter().find(|(group, _)| *group == line.group);
            let along = |hole: &Hole| match way {
                Some((_, LineWay::Columns)) => hole.at.y,
                Some((_, LineWay::Rows)) | None => hole.at.x,
            };
            let on_it = holes.iter().filter(|hole| line.holes.contains(&hole.id));
            let places: Vec<f64> = on_it.clone().map(along).collect();
            let ids: Vec<String> = on_it.map(|hole| hole.id.clone()).collect();
            line.holes.retain(|id| ids.contains(id));
            line.first = places.iter().copied().fold(f64::INFINITY, f64::min);
            line.last = places.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            !line.holes.is_empty()
        });
        for repair in &mut plate.repairs {
            repair.holes_in_it = repair.holes_in_it.iter().filter_map(number).collect();
        }
        plate
    }

    /// The metal that stands among some holes: within the straight lines from centre to centre of the outermost of them. Readings
    /// among holes that all lie on one line are not found.
    pub fn metal_among(&self, is_one: impl Fn(&Hole) -> bool) -> MetalThere<'_> {
        let holes = self.holes.iter().filter(|hole| is_one(hole));
        let within = round_outermost(holes.map(|hole| hole.at).collect());
        self.metal_there(|at| {
            let depth = within.as_ref().map(|outline| outline.depth(at));
            depth.is_some_and(|depth| depth >= -SAME_LENGTH_MM)
        })
    }

    /// The metal that stands wherever a place is told to be there.
    pub fn metal_there(&self, is_there: impl Fn(Point) -> bool) -> MetalThere<'_> {
        if !self.kept {
            return MetalThere::AsWritten;
        }
        let stays = self.readings.iter().filter(|r| r.covered.is_none());
        let least = stays
            .filter(|r| is_there(r.at))
            .min_by(|a, b| a.thickness.value().total_cmp(&b.thickness.value()));
        least.map_or(MetalThere::NotFound, MetalThere::AsFound)
    }
}
