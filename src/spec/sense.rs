//! Contradictions that can be seen without geometry: in the title block, in single sizes, in the choice of process.
//!
//! What needs a place on the plate (overlaps, exceptions, the flange's own sums) is found when it is set out.

mod cutting;
mod fitted;
mod job;
mod kept_plate;
mod limits;
mod plate_work;
mod sizes;
mod tubes;

use super::{Fault, Written};

/// Every contradiction in what was written; none where it makes sense as far as words and single sizes go.
pub(super) fn contradictions(written: &Written) -> Vec<Fault> {
    let mut faults = Vec::new();
    job::title_block(&written.job, &mut faults);
    sizes::wrong_unit(written, &mut faults);
    sizes::above_nothing(written, &mut faults);
    sizes::strengths_above_nothing(written, &mut faults);
    sizes::too_large(written, &mut faults);
    tubes::tube_in_its_hole(written, &mut faults);
    tubes::stays_and_rivets(written, &mut faults);
    tubes::one_name_each(written, &mut faults);
    fitted::fitted(written, &mut faults);
    limits::shares_and_ratios(written, &mut faults);
    plate_work::girders_on_another_plate(written, &mut faults);
    plate_work::mouths(written, &mut faults);
    kept_plate::kept(written, &mut faults);
    kept_plate::survey(written, &mut faults);
    kept_plate::repairs(written, &mut faults);
    cutting::hole_policies(written, &mut faults);
    cutting::settings(written, &mut faults);
    faults
}
