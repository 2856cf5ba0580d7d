//! A pressure hole is never finished by heat: the edge is hard and tapered, and a tube set in it leaks and cracks.

use crate::spec::{Cutting, Fault, HoleCut, Purpose, Written};
use crate::units::print::millimetres;
use crate::units::{Length, Size};

pub(super) fn finished_by_heat(written: &Written, faults: &mut Vec<Fault>) {
    let Some(cutting) = &written.cutting else {
        return;
    };
    if !cutting.process.is_thermal() {
        return;
    }
    for (i, policy) in cutting.holes.iter().enumerate() {
        if policy.cut != HoleCut::Finish {
            continue;
        }
        let mut fault = Fault::new(
            format!("cutting.holes[{i}].cut"),
            format!(
                "{} holes are not finished by {}, which leaves a hard, tapered edge",
                policy.purpose.name(),
                cutting.process.name()
            ),
            remedy(cutting, policy.purpose, written),
        )
        .and("cutting.process", "the process");
        if let Some((path, _)) = hole_of(written, policy.purpose) {
            fault = fault.and(path, "the finished hole");
        }
        faults.push(fault);
    }
}

/// Names the largest hole that may be cut, where the works has said anywhere how much is left in a hole.
fn remedy(cutting: &Cutting, purpose: Purpose, written: &Written) -> String {
    let under = cutting
        .holes
        .iter()
        .filter_map(|policy| policy.under.as_ref());
    let most = under.max_by(|a, b| a.value().total_cmp(&b.value()));
    match (most, hole_of(written, purpose)) {
        (Some(under), Some((_, hole))) if hole.value() - under.value() > Length::ZERO => format!(
            "write `cut: undersize` with `under: {under}`, which is a hole of {} mm at most, or `cut: pop`",
            millimetres(hole.value() - under.value())
        ),
        _ => "write `cut: undersize`, with the metal that the works bores out in `under`, or `cut: pop`".into(),
    }
}

/// The first group of this purpose: where its hole is written, and the hole.
fn hole_of(written: &Written, purpose: Purpose) -> Option<(String, &Size)> {
    let nests = written
        .tubes
        .iter()
        .enumerate()
        .find(|(_, nest)| match nest.purpose {
            crate::spec::NestPurpose::Tube => purpose == Purpose::Tube,
            crate::spec::NestPurpose::Flue => purpose == Purpose::Flue,
        });
    if let Some((i, nest)) = nests {
        return Some((format!("tubes[{i}].hole"), &nest.hole));
    }
    let sets = written
        .holes
        .iter()
        .enumerate()
        .find(|(_, set)| set.purpose == purpose);
    sets.map(|(i, set)| (format!("holes[{i}].hole"), &set.hole))
}
