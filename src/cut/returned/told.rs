//! Words on the whole drawing: how it lies, what strange things it holds, what became of its layers.

use std::collections::{BTreeMap, BTreeSet};

use super::super::part::Layer;
use super::super::reader::FileUnit;
use super::deviation::{Deviation, DeviationKind, counted, place};
use super::flatten::Flat;
use super::placing::Placing;
use crate::units::MM_PER_INCH;
use crate::units::angle::PI;
use crate::units::print::trimmed;
use crate::units::tolerance::{SAME_ANGLE_DEG, SAME_SCALE};

/// How the drawing lies, where it does not lie as the part does.
pub(super) fn placing(placing: &Placing, unit: FileUnit, within: f64) -> Vec<Deviation> {
    let motion = &placing.motion;
    let of_drawing = |kind, by, fact| Deviation {
        kind,
        what: "the drawing".into(),
        at: None,
        by,
        fact,
    };
    let mut found = Vec::new();
    if (motion.scale - 1.0).abs() > SAME_SCALE {
        let fact = scaled(motion.scale, unit);
        found.push(of_drawing(DeviationKind::Scaled, Some(motion.scale), fact));
    }
    let upside_down =
        motion.mirrored && (motion.turn.abs() - PI).abs() <= SAME_ANGLE_DEG.to_radians();
    if motion.mirrored {
        let ways = match upside_down {
            true => "top for bottom",
            false => "left for right",
        };
        let fact = format!("is mirrored, {ways}: a plate cut from it is of the other hand");
        found.push(of_drawing(DeviationKind::Mirrored, None, fact));
    }
    if motion.turn != 0.0 && !upside_down {
        let turn = motion.turn_deg();
        let way = match turn > 0.0 {
            true => "anticlockwise",
            false => "clockwise",
        };
        let fact = format!("is turned {way} by {} degrees", trimmed(turn.abs(), 4));
        found.push(of_drawing(DeviationKind::Turned, Some(turn), fact));
    }
    if motion.shift.radius() > within * motion.scale.max(1.0) {
        let fact = format!(
            "lies elsewhere: the origin of the part is at {} in the file",
            place(motion.shift)
        );
        found.push(of_drawing(
            DeviationKind::Shifted,
            Some(motion.shift.radius()),
            fact,
        ));
    }
    found
}

fn scaled(scale: f64, unit: FileUnit) -> String {
    let is = |known: f64| (scale / known - 1.0).abs() <= SAME_SCALE;
    let times = |scale: f64| trimmed(scale, 6);
    if is(MM_PER_INCH) {
        let why = match unit {
            FileUnit::Inches => "the file says inches, and its numbers are millimetres",
            _ => "its millimetres were taken for inches and turned into millimetres once more",
        };
        return format!(
            "is {} times too large: inches and millimetres mixed up ({why})",
            times(MM_PER_INCH)
        );
    }
    if is(1.0 / MM_PER_INCH) {
        let why = match unit {
            FileUnit::Unstated => "the file states no unit, and its numbers are inches",
            _ => "the file says millimetres, and its numbers are inches",
        };
        return format!(
            "is {} times too small: inches and millimetres mixed up ({why})",
            times(MM_PER_INCH)
        );
    }
    match scale > 1.0 {
        true => format!("is scaled: {} times its true size", times(scale)),
        false => format!("is scaled: {} of its true size", times(scale)),
    }
}

/// Entities that no cut file holds: "3 splines on layer 0".
pub(super) fn foreign(flat: &Flat) -> Vec<String> {
    let tell = |((kind, layer), count): (&(String, String), &usize)| {
        format!("{count} × {kind} on layer {layer}")
    };
    flat.foreign.iter().map(tell).collect()
}

/// What cannot be compared, and so differs.
pub(super) fn strange(flat: &Flat, cut_short: bool) -> Vec<Deviation> {
    let of_file = |fact: String| Deviation {
        kind: DeviationKind::Foreign,
        what: "the file".into(),
        at: None,
        by: None,
        fact,
    };
    let mut found = Vec::new();
    if cut_short {
        found.push(of_file(
            "does not end with EOF: it may have been cut short".into(),
        ));
    }
    for words in foreign(flat) {
        found.push(of_file(format!("holds {words}, which cannot be compared")));
    }
    for block in flat.lost_blocks.iter().collect::<BTreeSet<_>>() {
        found.push(of_file(format!(
            "sets in a block, {block}, that it does not hold"
        )));
    }
    if flat.off_plane > 0 {
        let fact = format!(
            "holds {} off the plane of the drawing",
            counted(flat.off_plane, "entity", "entities")
        );
        found.push(of_file(fact));
    }
    found
}

/// What is odd and changes nothing that is cut.
pub(super) fn oddities(flat: &Flat, unit: FileUnit) -> Vec<String> {
    let mut notes = Vec::new();
    match unit {
        FileUnit::Millimetres => {}
        FileUnit::Unstated => {
            notes.push("the file states no unit: it is taken to be in millimetres".into())
        }
        FileUnit::Strange => notes.push(
            "the file states a unit in which no plate is drawn: it is taken to be in millimetres"
                .into(),
        ),
        FileUnit::Inches | FileUnit::Feet | FileUnit::Centimetres | FileUnit::Metres => {
            notes.push(format!("the file is in {}", unit_name(unit)));
        }
    }
    if flat.blocks > 0 {
        let blocks = counted(flat.blocks, "block was", "blocks were");
        notes.push(format!(
            "{blocks} opened; some cutting machines leave blocks out"
        ));
    }
    if flat.turned_over > 0 {
        let entities = counted(flat.turned_over, "entity is", "entities are");
        notes.push(format!("{entities} stored mirrored (extrusion -1); a machine that overlooks it cuts them left for right"));
    }
    if flat.on_paper > 0 {
        let entities = counted(flat.on_paper, "entity lies", "entities lie");
        notes.push(format!("{entities} in paper space, and was left out"));
    }
    notes
}

fn unit_name(unit: FileUnit) -> &'static str {
    match unit {
        FileUnit::Inches => "inches",
        FileUnit::Feet => "feet",
        FileUnit::Centimetres => "centimetres",
        FileUnit::Metres => "metres",
        FileUnit::Millimetres | FileUnit::Unstated | FileUnit::Strange => "millimetres",
    }
}

/// What is to be cut and lies among marks, or the reverse, in a file that still has our layers.
pub(super) fn strays(layers: &[(Layer, String, String)]) -> Vec<Deviation> {
    let strayed = |(ours, theirs, name): &&(Layer, String, String)| {
        !name.is_empty() && Layer::named(theirs).is_some_and(|l| l.is_cut() != ours.is_cut())
    };
    layers
        .iter()
        .filter(strayed)
        .map(|(ours, theirs, name)| Deviation {
            kind: DeviationKind::Layer,
            what: name.clone(),
            at: None,
            by: None,
            fact: format!("lies on layer {theirs}, and belongs on {}", ours.name()),
        })
        .collect()
}

/// Layers that are called otherwise, and those on which cuts and marks lie together.
pub(super) fn layers(layers: &[(Layer, String, String)]) -> Vec<String> {
    let mut names: BTreeMap<Layer, BTreeSet<&str>> = BTreeMap::new();
    let mut held: BTreeMap<&str, BTreeSet<bool>> = BTreeMap::new();
    for (ours, theirs, _) in layers {
        names.entry(*ours).or_default().insert(theirs);
        held.entry(theirs).or_default().insert(ours.is_cut());
    }
    let mut notes = Vec::new();
    for (ours, theirs) in names {
        let others: Vec<&str> = theirs
            .into_iter()
            .filter(|name| *name != ours.name())
            .collect();
        if !others.is_empty() {
            notes.push(format!(
                "what was on layer {} lies on {}",
                ours.name(),
                others.join(", ")
            ));
        }
    }
    for (layer, kinds) in held {
        if kinds.len() > 1 {
            notes.push(format!("cuts and marks lie together on layer {layer}: the file no longer tells one from the other"));
        }
    }
    notes
}
