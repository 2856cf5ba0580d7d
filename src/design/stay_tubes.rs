//! Which tubes are screwed into both plates and hold them.

use super::amount::{Amounts, point};
use super::numbering::Numbered;
use crate::spec::{Fault, WhichTubes, Written};
use crate::units::tolerance::SAME_LENGTH_MM;

/// The tubes that the spec says are screwed into both plates, in the order of the holes.
pub(super) fn stay_tubes(
    written: &Written,
    numbered: &Numbered,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> Vec<usize> {
    let mut found = Vec::new();
    for (index, nest) in written.tubes.iter().enumerate() {
        let Some(stay_tubes) = &nest.stay_tubes else {
            continue;
        };
        let nest_path = format!("tubes[{index}]");
        let own = |hole: &usize| numbered.groups[numbered.holes[*hole].group].path == nest_path;
        let tubes: Vec<usize> = (0..numbered.holes.len()).filter(own).collect();
        let WhichTubes::At(places) = &stay_tubes.which else {
            found.extend(tubes);
            continue;
        };
        for (place, written_at) in places.iter().enumerate() {
            let at = point(written_at);
            let is_here = |tube: &&usize| numbered.holes[**tube].at.distance(at) <= SAME_LENGTH_MM;
            match tubes.iter().find(is_here) {
                Some(tube) => found.push(*tube),
                None => faults.push(Fault::new(
                    format!("{nest_path}.stay_tubes.which.at[{place}]"),
                    format!(
                        "no tube of {} has its centre at {}",
                        nest.name,
                        amounts.place(at)
                    ),
                    "write the centre of a tube of this nest",
                )),
            }
        }
    }
    found.sort_unstable();
    found.dedup();
    found
}
