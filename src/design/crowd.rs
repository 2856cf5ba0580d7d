//! Holes heaped on one place, which are told at once and by one fault: every pair of a heap would be a fault of its own.

use super::amount::Amounts;
use super::hole_index::HoleIndex;
use super::numbering::Numbered;
use crate::spec::Fault;

/// More holes of one group than this with their centres inside another are a heap, not slips of the pen to be told one by one.
const MOST_ON_ONE: usize = 32;

/// The first heap, where there is one.
pub(super) fn heap(numbered: &Numbered, amounts: Amounts) -> Option<Fault> {
    let index = HoleIndex::new(&numbered.holes);
    let heaped = numbered.holes.iter().find(|hole| {
        let inside = index.within(hole.at, hole.ligament_hole.to_mm() / 2.0);
        let alike = inside.filter(|other| numbered.holes[*other].group == hole.group);
        alike.take(MOST_ON_ONE + 2).count() > MOST_ON_ONE + 1
    })?;
    let fact = format!(
        "more than {MOST_ON_ONE} holes have their centres inside {} at {}",
        heaped.id,
        amounts.place(heaped.at)
    );
    let remedy = "look again at the places, the hole and their units";
    Some(Fault::new(heaped.path.as_str(), fact, remedy))
}
