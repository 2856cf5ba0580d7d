//! What the cutter makes of each hole, by purpose, and what no cutter may make.
//!
//! The figures are the works' settings, in `cutting.holes` of the spec. What stands here are the rules above them:
//! a hole smaller than the process makes clean becomes a pop, and a purpose with no policy becomes a pop.

use super::part::{HolesCut, Withheld};
use crate::design::{Design, Hole, HoleGroup};
use crate::spec::{Cutting, Fault, HoleCut, HolePolicy, Purpose, StagePlace};
use crate::units::Length;
use crate::units::print::millimetres;

/// What is done to a hole by the cutter.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Made {
    /// Cut to this diameter.
    Cut(Length),
    /// A centre pop, with the reason why no more.
    Pop(String),
    /// Nothing at all, with the reason.
    Nothing(String),
}

/// What the policy makes of one hole. Only for a policy that [`refused`] finds no fault in.
pub(super) fn made(cutting: &Cutting, purpose: Purpose, hole: &Hole) -> Made {
    let finish = hole.finish.value();
    let Some(policy) = policy_for(cutting, purpose) else {
        return Made::Pop(format!(
            "no cutting policy is written for {} holes",
            purpose.name()
        ));
    };
    match policy.cut {
        HoleCut::Undersize => {
            let under = policy.under.as_ref().map_or(Length::ZERO, |s| s.value());
            cut_or_pop(cutting, finish - under)
        }
        HoleCut::Finish => cut_or_pop(cutting, finish),
        HoleCut::Pop => Made::Pop(format!(
            "the works drills {} holes from a pop",
            purpose.name()
        )),
        HoleCut::Nothing => Made::Nothing(format!(
            "the works leaves {} holes to be marked out",
            purpose.name()
        )),
    }
}

fn cut_or_pop(cutting: &Cutting, diameter: Length) -> Made {
    match &cutting.least_hole {
        Some(least) if diameter.shortfall(least.value()).is_some() => Made::Pop(format!(
            "{} mm is below the least hole that {} makes clean, {least}",
            millimetres(diameter),
            cutting.process.name()
        )),
        _ => Made::Cut(diameter),
    }
}

fn policy_for(cutting: &Cutting, purpose: Purpose) -> Option<&HolePolicy> {
    cutting.holes.iter().find(|p| p.purpose == purpose)
}

/// Every fault of the policies against the plate; what contradicts itself, or would finish a hole by heat, was refused in
/// the spec.
pub(super) fn refused(cutting: &Cutting, design: &Design) -> Vec<Fault> {
    let mut faults = Vec::new();
    for group in &design.groups {
        faults.extend(size_fault(cutting, group));
        faults.extend(stage_fault(cutting, group));
    }
    faults
}

fn size_fault(cutting: &Cutting, group: &HoleGroup) -> Option<Fault> {
    let index = cutting
        .holes
        .iter()
        .position(|p| p.purpose == group.purpose)?;
    let policy = &cutting.holes[index];
    let under = policy
        .under
        .as_ref()
        .filter(|_| policy.cut == HoleCut::Undersize)?;
    (group.finish.value() <= under.value()).then(|| {
        Fault::new(
            format!("cutting.holes[{index}].under"),
            format!(
                "{under} under leaves nothing of {}, {}",
                group.name, group.finish
            ),
            "write less, or cut a pop for this purpose",
        )
        .and(&*group.path, "the hole")
    })
}

/// A stage that the contractor makes must be the one the policy makes, or the sheets and the cut file would disagree.
fn stage_fault(cutting: &Cutting, group: &HoleGroup) -> Option<Fault> {
    let stage = group.stages.iter().find(|s| s.place == StagePlace::Cut)?;
    let size = stage.size.as_ref()?;
    let policy = policy_for(cutting, group.purpose);
    let cut = policy.and_then(|p| match p.cut {
        HoleCut::Undersize => p.under.as_ref().map(|u| group.finish.value() - u.value()),
        HoleCut::Finish => Some(group.finish.value()),
        HoleCut::Pop | HoleCut::Nothing => None,
    });
    let fact = match cut {
        Some(cut) if cut.same_as(size.value()) => return None,
        Some(cut) => format!(
            "the stage `{}` is cut to {size}, and `cutting.holes` cuts {} mm",
            stage.name,
            millimetres(cut)
        ),
        None => format!(
            "the stage `{}` is cut to {size}, and `cutting.holes` lets nothing be cut of {} holes",
            stage.name,
            group.purpose.name()
        ),
    };
    Some(
        Fault::new(format!("{}.stages", group.path), fact, "make the two agree")
            .and("cutting.holes", "the policy"),
    )
}

/// Holes by what is made of them, gathered for the order note.
#[derive(Default)]
pub(super) struct Tally {
    pub(super) cut: Vec<HolesCut>,
    pub(super) withheld: Vec<Withheld>,
}

impl Tally {
    /// Notes a hole that is cut.
    pub(super) fn cut(&mut self, group: &HoleGroup, hole: &Hole, diameter: Length) {
        let finish = hole.finish.value();
        let same = |c: &&mut HolesCut| {
            c.name == group.name && c.cut.same_as(diameter) && c.finish.same_as(finish)
        };
        match self.cut.iter_mut().find(same) {
            Some(holes) => holes.ids.push(hole.id.clone()),
            None => self.cut.push(HolesCut {
                ids: vec![hole.id.clone()],
                name: group.name.clone(),
                cut: diameter,
                finish,
            }),
        }
    }

    /// Notes a hole that is not cut.
    pub(super) fn withhold(&mut self, id: &str, instead: &'static str, reason: &str) {
        let same = |w: &&mut Withheld| w.instead == instead && w.reason == reason;
        match self.withheld.iter_mut().find(same) {
            Some(holes) => holes.ids.push(id.into()),
            None => self.withheld.push(Withheld {
                ids: vec![id.into()],
                instead,
                reason: reason.into(),
            }),
        }
    }
}
