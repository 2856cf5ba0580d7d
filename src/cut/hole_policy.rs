//! What no cutter may make of a hole, and the holes gathered by what is made of them.

use super::part::{HolesCut, Withheld};
use crate::design::cutter::{Made, Settings, made_of};
use crate::design::{Design, HoleGroup};
use crate::spec::{Cutting, Fault, StagePlace};
use crate::units::Length;
use crate::units::print::millimetres;

/// Every fault of the policies against the plate; what contradicts itself, or would finish a hole by heat, was refused in
/// the spec.
pub(super) fn refused(cutting: &Cutting, design: &Design) -> Vec<Fault> {
    let settings = Settings::of(cutting, Some(design.thickness.value()));
    let mut faults = Vec::new();
    for group in &design.groups {
        faults.extend(size_fault(cutting, &settings, group));
        faults.extend(stage_fault(&settings, group));
    }
    faults
}

fn size_fault(cutting: &Cutting, settings: &Settings<'_>, group: &HoleGroup) -> Option<Fault> {
    let under = settings.policy(group.purpose)?.under?;
    let path = match cutting
        .holes
        .iter()
        .position(|p| p.purpose == group.purpose)
    {
        Some(index) if cutting.holes[index].under.is_some() => {
            format!("cutting.holes[{index}].under")
        }
        Some(index) => format!("cutting.holes[{index}].cut"),
        None => "cutting.starting_figures".into(),
    };
    (group.finish.value() <= under.value).then(|| {
        let fact = format!(
            "{} leaves nothing of {}, {}",
            under.words, group.name, group.finish
        );
        Fault::new(path, fact, "write less, or cut a pop for this purpose")
            .and(&*group.path, "the hole")
    })
}

/// A stage that the contractor makes must be the one the policy makes, or the sheets and the cut file would disagree.
fn stage_fault(settings: &Settings<'_>, group: &HoleGroup) -> Option<Fault> {
    let stage = group.stages.iter().find(|s| s.place == StagePlace::Cut)?;
    let size = stage.size.as_ref()?;
    let fact = match made_of(settings, group, group.finish.value()) {
        Made::Cut(cut, _) if cut.same_as(size.value()) => return None,
        Made::Cut(cut, _) => format!(
            "the stage `{}` is cut to {size}, and `cutting.holes` cuts {} mm",
            stage.name,
            millimetres(cut)
        ),
        Made::Pop(why) | Made::Nothing(why) => format!(
            "the stage `{}` is cut to {size}, and `cutting` lets nothing be cut of {} holes: {why}",
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
    pub(super) fn cut(&mut self, id: &str, name: &str, finish: Length, cut: (Length, String)) {
        let (diameter, by) = cut;
        let same = |c: &&mut HolesCut| {
            c.name == name && c.cut.same_as(diameter) && c.finish.same_as(finish)
        };
        match self.cut.iter_mut().find(same) {
            Some(holes) => holes.ids.push(id.into()),
            None => self.cut.push(HolesCut {
                ids: vec![id.into()],
                name: name.into(),
                cut: diameter,
                finish,
                by,
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
