//! Holes other than tubes: stays, pipes, plugs, fittings and bolts, each at its written place.

use std::collections::BTreeMap;

use super::HoleGroup;
use super::amount::point;
use super::hole::stages_of_group;
use super::numbering::{PlacedGroup, PlacedHole};
use crate::spec::{Fault, HoleSet};
use crate::units::tolerance::SAME_LENGTH_MM;

/// Places the holes of one set, each followed by its opposite hand where the set is mirrored. `path` is `holes[2]`.
pub(super) fn place_hole_set(set: &HoleSet, path: &str, faults: &mut Vec<Fault>) -> PlacedGroup {
    let group = HoleGroup {
        name: set.name.clone(),
        purpose: set.purpose,
        finish: set.hole.clone(),
        ligament_hole: set.hole.value(),
        largest: None,
        next_rebore: None,
        tube_end: None,
        needs_clear: set.needs_clear.clone(),
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
