//! Holes other than tubes: stays, pipes, plugs, fittings and bolts, each at its written place.

use std::collections::BTreeMap;

use super::amount::point;
use super::hole::stages_of_group;
use super::numbering::{PlacedGroup, PlacedHole};
use super::tapped::Tapped;
use super::{HoleGroup, TakesUp};
use crate::spec::{Fault, HoleSet, Nut, Pad, ViewFrom};
use crate::units::angle::{PI, cos};
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

/// What a group takes up on each face of the plate: the largest diameter of all that is written of it there.
fn takes_up(set: &HoleSet, pads: &[Pad]) -> TakesUp {
    let largest = |face| sizes_on(face, set, pads).into_iter().reduce(Length::max);
    TakesUp {
        smokebox: largest(ViewFrom::Smokebox),
        firebox: largest(ViewFrom::Firebox),
    }
}

/// Every diameter that is written of a group on one face. What is needed clear is written of no face, and counts on both.
fn sizes_on(face: ViewFrom, set: &HoleSet, pads: &[Pad]) -> Vec<Length> {
    let mut sizes: Vec<Length> = set.needs_clear.iter().map(Size::value).collect();
    if let Some(stay) = &set.stay {
        let (nut, washer) = match face {
            ViewFrom::Smokebox => (&stay.outside_nut, &stay.outside_washer),
            ViewFrom::Firebox => (&stay.inside_nut, &stay.inside_washer),
        };
        sizes.extend(nut.as_ref().map(across_corners));
        sizes.extend(washer.as_ref().map(|washer| washer.diameter.value()));
    }
    // A pipe is jointed and a plug screwed in from the smokebox.
    if face == ViewFrom::Smokebox {
        sizes.extend(set.joint_face.iter().map(|face| face.diameter.value()));
        sizes.extend(set.plug.iter().map(|plug| plug.large_end.value()));
    }
    if let Some(at) = set.pad.as_ref().filter(|at| at.side == face) {
        let pad = pads.iter().find(|pad| pad.name == at.name);
        let leg = at.weld_leg.as_ref().map_or(Length::ZERO, Size::value);
        sizes.extend(pad.map(|pad| pad.diameter.value() + 2.0 * leg));
    }
    sizes
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
    let tapped = Tapped::of_hole_set(set);
    let stages = stages_of_group(&set.stages, &set.hole, path, faults);
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
        stages: match &tapped {
            Some(tapped) => tapped.staged(stages),
            None => stages,
        },
        tapped,
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
