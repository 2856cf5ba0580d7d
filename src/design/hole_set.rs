//! Holes other than tubes: stays, pipes, plugs, fittings and bolts, each at its written place.

use std::collections::BTreeMap;

use super::HoleGroup;
use super::amount::point;
use super::hole::stages_of_group;
use super::numbering::{PlacedGroup, PlacedHole};
use crate::spec::{Fault, HoleSet, Nut, Pad};
use crate::units::angle::{PI, cos};
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

/// What a group takes up on the faces of the plate: the largest diameter of all that is written of it.
fn takes_up(set: &HoleSet, pads: &[Pad]) -> Option<Length> {
    let mut sizes: Vec<Length> = set.needs_clear.iter().map(Size::value).collect();
    if let Some(stay) = &set.stay {
        let nuts = [&stay.outside_nut, &stay.inside_nut];
        sizes.extend(nuts.into_iter().flatten().map(across_corners));
        let washers = [&stay.outside_washer, &stay.inside_washer];
        sizes.extend(washers.into_iter().flatten().map(|w| w.diameter.value()));
    }
    sizes.extend(set.joint_face.iter().map(|face| face.diameter.value()));
    if let Some(at) = &set.pad {
        let pad = pads.iter().find(|pad| pad.name == at.name);
        let leg = at.weld_leg.as_ref().map_or(Length::ZERO, Size::value);
        sizes.extend(pad.map(|pad| pad.diameter.value() + 2.0 * leg));
    }
    sizes.into_iter().reduce(Length::max)
}

/// A hexagon nut across its corners.
pub fn across_corners(nut: &Nut) -> Length {
    nut.across_flats.value() / cos(PI / 6.0)
}

/// Places the holes of one set, each followed by its opposite hand where the set is mirrored. `path` is `holes[2]`.
pub(super) fn place_hole_set(
    set: &HoleSet,
    pads: &[Pad],
    path: &str,
    faults: &mut Vec<Fault>,
) -> PlacedGroup {
    let group = HoleGroup {
        name: set.name.clone(),
        purpose: set.purpose,
        finish: set.hole.clone(),
        ligament_hole: set.hole.value(),
        largest: None,
        next_rebore: None,
        tube_end: None,
        needs_clear: set.needs_clear.clone(),
        takes_up: takes_up(set, pads),
        mouth: set.flanged_mouth.clone(),
        stages: stages_of_group(&set.stages, &set.hole, path, faults),
        remarks: set.remarks.clone(),
        path: path.to_string(),
    };
    let mut holes = Vec::new();
    for (index, written) in set.at.iter().enumerate() {
        let hole = |at| PlacedHole {
            at,
            finish: set.hole.clone(),
            ligament_hole: set.hole.value(),
            exception: None,
            path: format!("{path}.at[{index}]"),
            line: None,
        };
        let at = point(written);
        holes.push(hole(at));
        if set.mirrored && at.x.abs() > SAME_LENGTH_MM {
            holes.push(hole(at.opposite_hand()));
        }
    }
    PlacedGroup {
        letter: set
            .letter
            .clone()
            .unwrap_or_else(|| set.purpose.letter().into()),
        group,
        holes,
        lines: None,
        line_offsets: BTreeMap::new(),
        omitted: Vec::new(),
        own_metal: None,
    }
}
