//! The flat above the tubes: the segment of the flange line's circle that neither tubes nor flange are taken to hold.

use super::{FlangeDesign, Hole, HoleGroup, circle_segment_area};
use crate::spec::{NamedLine, Purpose, StayKind, Support, Written};
use crate::units::Length;

/// The segment of a circle about the barrel centre, above a level chord.
#[derive(Clone, Debug)]
pub struct AboveTubes {
    /// Radius: the flange line's, less what the flange is taken to hold.
    pub radius: Length,
    /// y of the chord: what the tubes are taken to hold ends there.
    pub base: Length,
    /// y of the highest centre of a tube or flue that is counted as support.
    pub highest: Length,
    /// Area of the segment, holes not taken off, mm².
    pub area_mm2: f64,
    /// The stays that stand above the tubes and hold it, as indices into [`super::Design::holes`]. Firebox stays, which hold a
    /// water space, are not among them.
    pub stays: Vec<usize>,
}

/// The flat above the tubes; nothing where the spec does not say what the tubes and the flange hold, or where the line along
/// which the flange supports the flat is no circle about the barrel centre.
pub(super) fn above_tubes(
    written: &Written,
    flange: Option<&FlangeDesign>,
    holes: &[Hole],
    groups: &[HoleGroup],
    stay_tubes: &[usize],
) -> Option<AboveTubes> {
    let support = written.support.as_ref()?;
    let allowances = support.above_tubes.as_ref()?;
    let line = match (support.flange_line, flange?) {
        (NamedLine::Tangent, FlangeDesign::Pressed(pressed)) => pressed.tangent_radius,
        (NamedLine::InnerWeldToe, FlangeDesign::Fabricated(ring)) => ring.inner_toe_radius,
        _ => return None,
    };
    let highest = highest_counted(support, holes, groups, stay_tubes)?;
    let base = highest + allowances.over_tubes.value();
    let radius = line - allowances.inside_flange.value();
    let above = |index: &usize| holes[*index].at.y > highest.to_mm();
    let stays = (0..holes.len())
        .filter(|index| holds_the_flat(written, &groups[holes[*index].group]))
        .filter(above)
        .collect();
    Some(AboveTubes {
        radius,
        base,
        highest,
        area_mm2: circle_segment_area(radius, radius - base),
        stays,
    })
}

/// Height of the highest centre of a tube or flue hole that holds the flat: one that is counted on nowhere holds nothing above
/// it either.
fn highest_counted(
    support: &Support,
    holes: &[Hole],
    groups: &[HoleGroup],
    stay_tubes: &[usize],
) -> Option<Length> {
    let is_stay_tube = |hole: usize| support.stays && stay_tubes.binary_search(&hole).is_ok();
    holes
        .iter()
        .enumerate()
        .filter(|(index, hole)| {
            let purpose = groups[hole.group].purpose;
            purpose.takes_a_tube() && (support.counts(purpose) || is_stay_tube(*index))
        })
        .map(|(_, hole)| Length::mm(hole.at.y))
        .reduce(Length::max)
}

/// Whether its holes take stays that are not firebox stays.
fn holds_the_flat(written: &Written, group: &HoleGroup) -> bool {
    group.purpose == Purpose::Stay && !firebox_stays(written, group)
}

fn firebox_stays(written: &Written, group: &HoleGroup) -> bool {
    let sets = written.holes.iter().enumerate();
    let mut own = sets.filter(|(i, _)| group.path == format!("holes[{i}]"));
    own.any(|(_, set)| {
        let kind = set.stay.as_ref().map(|stay| stay.kind);
        kind == Some(StayKind::Firebox)
    })
}
