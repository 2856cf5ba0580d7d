//! What is cut of each purpose of hole: one policy a purpose, that does not contradict itself.
//!
//! A pressure hole is never finished by heat: the edge is hard and tapered, and a tube set in it leaks and cracks.

use crate::spec::{
    CornerShape, Cutting, Fault, Flange, HoleCut, HolePolicy, Process, Purpose, Written,
};
use crate::units::print::millimetres;
use crate::units::{Length, Size};

/// Figures of the works for the process: none below nothing, and starting figures of the process that cuts.
pub(super) fn settings(written: &Written, faults: &mut Vec<Fault>) {
    let Some(cutting) = &written.cutting else {
        return;
    };
    faults.extend(rivets_before_forming(cutting, written));
    if let Some(named) = cutting.starting_figures
        && named != cutting.process
    {
        faults.push(
            Fault::new(
                "cutting.starting_figures",
                format!(
                    "starting figures for {} are named, and the process is {}",
                    named.name(),
                    cutting.process.name()
                ),
                "name those of the process that cuts",
            )
            .and("cutting.process", "the process"),
        );
    }
    for (path, size) in sizes(cutting) {
        if size.value() < Length::ZERO {
            let fact = format!("{size} is below nothing");
            faults.push(Fault::new(path, fact, "write it without the sign"));
        }
    }
    for (key, times) in [
        ("least_hole_thicknesses", cutting.least_hole_thicknesses),
        ("least_web_thicknesses", cutting.least_web_thicknesses),
        ("least_edge_thicknesses", cutting.least_edge_thicknesses),
    ] {
        if let Some(times) = times.filter(|times| *times < 0.0 || !times.is_finite()) {
            let fact = format!("{times} thicknesses is below nothing");
            faults.push(Fault::new(
                format!("cutting.{key}"),
                fact,
                "write a number above nothing",
            ));
        }
    }
    faults.extend(corner(cutting));
}

/// Every size of the settings, by its path.
fn sizes(cutting: &Cutting) -> Vec<(String, &Size)> {
    let own = [
        ("dress_inside", &cutting.dress_inside),
        ("least_hole", &cutting.least_hole),
        ("least_web", &cutting.least_web),
        ("least_edge", &cutting.least_edge),
        ("stock_margin", &cutting.stock_margin),
        ("template_thickness", &cutting.template_thickness),
    ];
    let mut sizes: Vec<(String, &Size)> = own
        .into_iter()
        .filter_map(|(key, size)| Some((format!("cutting.{key}"), size.as_ref()?)))
        .collect();
    let of_policies = cutting.holes.iter().enumerate();
    let allowances = of_policies
        .filter_map(|(i, policy)| {
            Some((
                format!("cutting.holes[{i}].allowance"),
                policy.allowance.as_ref()?,
            ))
        })
        .chain(
            cutting
                .hole_allowance
                .iter()
                .map(|a| ("cutting.hole_allowance".into(), a)),
        );
    for (path, allowance) in allowances {
        sizes.push((format!("{path}.edge"), &allowance.edge));
        sizes.push((format!("{path}.taper"), &allowance.taper));
        sizes.push((format!("{path}.position"), &allowance.position));
    }
    sizes
}

/// A radius or a relief has a size, and nothing has none.
fn corner(cutting: &Cutting) -> Option<Fault> {
    let relief = cutting.corner_relief.as_ref()?;
    let path = "cutting.corner_relief.radius";
    match (relief.shape, &relief.radius) {
        (CornerShape::Radius | CornerShape::Relief, Some(radius)) => {
            (radius.value() <= Length::ZERO).then(|| {
                let fact = format!("{radius} rounds nothing");
                Fault::new(path, fact, "write a radius above nothing")
            })
        }
        (CornerShape::Radius | CornerShape::Relief, None) => Some(Fault::new(
            "cutting.corner_relief",
            "sharp corners are to be relieved, and `radius` does not say by how much",
            "write `radius:`",
        )),
        (CornerShape::None, None) => None,
        (CornerShape::None, Some(radius)) => Some(Fault::new(
            path,
            format!("`radius: {radius}` has no meaning where nothing is made of sharp corners"),
            "take it out, or write `shape: radius`",
        )),
    }
}

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
        faults.extend(undersize(&path, policy, cutting));
        faults.extend(under_or_allowance(&path, policy));
        faults.extend(cut_without_a_cutter(&path, policy, cutting.process));
        faults.extend(finished_by_heat(&path, policy, cutting, written));
    }
}

/// A rivet hole cut while its metal is still flat moves with the flange.
fn rivets_before_forming(cutting: &Cutting, written: &Written) -> Option<Fault> {
    let (fact, drilled, flange) = match (cutting.rivets?, &written.flange) {
        (HoleCut::Nothing, _) => return None,
        (_, Some(Flange::Pressed(_))) => (
            "rivet holes are wanted in the blank of a pressed plate: they lie in the moving zone, and would come out \
             oval and out of place",
            "after forming",
            "flange.pressed",
        ),
        (_, Some(Flange::Fabricated(_))) => (
            "rivet holes are wanted in the bar of the ring: rolling it would draw them oval, and they would not close on \
             the barrel's",
            "once the ring is welded",
            "flange.fabricated",
        ),
        (_, None) => {
            let fact = "rivet holes are wanted, and the plate has no flange to rivet";
            return Some(Fault::new("cutting.rivets", fact, "take it out"));
        }
    };
    let remedy = format!("take it out; the holes are drilled {drilled}");
    Some(Fault::new("cutting.rivets", fact, remedy).and(flange, "the flange"))
}

/// `under` and `cut: undersize` come together.
fn undersize(path: &str, policy: &HolePolicy, cutting: &Cutting) -> Option<Fault> {
    let name = policy.purpose.name();
    let said_elsewhere = policy.allowance.is_some()
        || cutting.hole_allowance.is_some()
        || cutting.starting_figures.is_some();
    match (policy.cut, &policy.under) {
        (HoleCut::Undersize, None) if said_elsewhere => None,
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

/// `under` is the whole, `allowance` its parts: both would be two answers to one question.
fn under_or_allowance(path: &str, policy: &HolePolicy) -> Option<Fault> {
    let allowance = policy.allowance.as_ref()?;
    let of = policy.purpose.name();
    if policy.cut != HoleCut::Undersize {
        let fact =
            format!("an allowance for {of} holes has no meaning unless they are cut undersize");
        let remedy = "take it out, or write `cut: undersize`";
        return Some(Fault::new(format!("{path}.allowance"), fact, remedy));
    }
    policy.under.as_ref()?;
    let each_side = allowance.edge.value() + allowance.taper.value() + allowance.position.value();
    let fact = format!(
        "`under` and `allowance` both say how much is left in {of} holes; the allowance comes to {} mm on the diameter",
        millimetres(2.0 * each_side)
    );
    Some(
        Fault::new(format!("{path}.allowance"), fact, "write one of the two")
            .and(format!("{path}.under"), "the other"),
    )
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
