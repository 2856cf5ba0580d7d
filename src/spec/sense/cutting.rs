//! What is cut of each purpose of hole: one policy a purpose, that does not contradict itself.
//!
//! A pressure hole is never finished by heat: the edge is hard and tapered, and a tube set in it leaks and cracks.

use crate::spec::{Cutting, Fault, HoleCut, HolePolicy, Process, Purpose, Written};
use crate::units::print::millimetres;
use crate::units::{Length, Size};

pub(super) fn hole_policies(written: &Written, faults: &mut Vec<Fault>) {
    let Some(cutting) = &written.cutting else {
        return;
    };
    for (i, policy) in cutting.holes.iter().enumerate() {
        let path = format!("cutting.holes[{i}]");
        if let Some(first) = (0..i).find(|j| cutting.holes[*j].purpose == policy.purpose) {
            let fact = format!("{} holes are spoken of twice", policy.purpose.name());
            faults.push(
                Fault::new(
                    format!("{path}.purpose"),
                    fact,
                    "write one policy a purpose",
                )
                .and(format!("cutting.holes[{first}].purpose"), "the first"),
            );
        }
        faults.extend(undersize(&path, policy));
        faults.extend(cut_without_a_cutter(&path, policy, cutting.process));
        faults.extend(finished_by_heat(&path, policy, cutting, written));
    }
}

/// `under` and `cut: undersize` come together.
fn undersize(path: &str, policy: &HolePolicy) -> Option<Fault> {
    let name = policy.purpose.name();
    match (policy.cut, &policy.under) {
        (HoleCut::Undersize, None) => Some(Fault::new(
            format!("{path}.cut"),
            format!("{name} holes are to be cut undersize, and `under` does not say by how much"),
            "write `under:` with the difference on the diameter",
        )),
        (HoleCut::Undersize, Some(under)) if under.value() <= Length::ZERO => Some(Fault::new(
            format!("{path}.under"),
            format!("{under} is not an undersize"),
            "write how much smaller on the diameter the hole is cut",
        )),
        (HoleCut::Finish | HoleCut::Pop | HoleCut::Nothing, Some(under)) => Some(
            Fault::new(
                format!("{path}.under"),
                format!("`under: {under}` has no meaning unless the hole is cut undersize"),
                "take it out, or write `cut: undersize`",
            )
            .and(format!("{path}.cut"), "what is cut"),
        ),
        (HoleCut::Undersize, Some(_))
        | (HoleCut::Finish | HoleCut::Pop | HoleCut::Nothing, None) => None,
    }
}

fn cut_without_a_cutter(path: &str, policy: &HolePolicy, process: Process) -> Option<Fault> {
    let is_cut = matches!(policy.cut, HoleCut::Undersize | HoleCut::Finish);
    (process == Process::DrillOnly && is_cut).then(|| {
        let fact = format!(
            "{} holes are to be cut, and nothing is cut but by drilling",
            policy.purpose.name()
        );
        let remedy = "write `pop` or `nothing`, or name the process that cuts them";
        Fault::new(format!("{path}.cut"), fact, remedy).and("cutting.process", "the process")
    })
}

fn finished_by_heat(
    path: &str,
    policy: &HolePolicy,
    cutting: &Cutting,
    written: &Written,
) -> Option<Fault> {
    if policy.cut != HoleCut::Finish || !cutting.process.is_thermal() {
        return None;
    }
    let fact = format!(
        "{} holes are not finished by {}, which leaves a hard, tapered edge",
        policy.purpose.name(),
        cutting.process.name()
    );
    let fault = Fault::new(
        format!("{path}.cut"),
        fact,
        remedy(cutting, policy.purpose, written),
    )
    .and("cutting.process", "the process");
    Some(match hole_of(written, policy.purpose) {
        Some((hole, _)) => fault.and(hole, "the finished hole"),
        None => fault,
    })
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
