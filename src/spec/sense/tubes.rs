//! Tubes in their holes, stays and rivets in theirs, and groups that can be told apart.

use crate::spec::{Fault, Nest, Purpose, StayTubes, Written};
use crate::units::{Length, Size, whitworth_core};

/// A tube goes into its hole, and a hole only grows.
pub(super) fn tube_in_its_hole(written: &Written, faults: &mut Vec<Fault>) {
    for (i, nest) in written.tubes.iter().enumerate() {
        let path = format!("tubes[{i}]");
        let (end_key, end) = match &nest.tube_end {
            Some(end) => ("tube_end", end),
            None => ("tube", &nest.tube),
        };
        if nest.hole.value().shortfall(end.value()).is_some() {
            faults.push(
                Fault::new(
                    format!("{path}.hole"),
                    format!("a tube of {end} does not go into a hole of {}", nest.hole),
                    "write the finished hole, which is larger than the tube where it sits in this plate",
                )
                .and(format!("{path}.{end_key}"), "the tube here"),
            );
        }
        hole_only_grows(&path, nest, faults);
        if let Some(wall) = &nest.wall
            && nest.tube.value().shortfall(2.0 * wall.value()).is_some()
        {
            faults.push(
                Fault::new(
                    format!("{path}.wall"),
                    format!("two walls of {wall} are more than the tube, {}", nest.tube),
                    "write the thickness of the tube's metal",
                )
                .and(format!("{path}.tube"), "the tube"),
            );
        }
    }
}

fn hole_only_grows(path: &str, nest: &Nest, faults: &mut Vec<Fault>) {
    let later: [(&str, &Option<Size>, &str); 3] = [
        (
            "hole_largest",
            &nest.hole_largest,
            "the largest hole that the tolerance lets through",
        ),
        (
            "next_rebore",
            &nest.next_rebore,
            "the hole after its next re-bore",
        ),
        ("bush", &nest.bush, "the outside of a bush"),
    ];
    for (key, size, name) in later {
        let Some(size) = size else { continue };
        if size.value().shortfall(nest.hole.value()).is_some() {
            faults.push(
                Fault::new(
                    format!("{path}.{key}"),
                    format!("{name}, {size}, is less than the hole, {}", nest.hole),
                    format!("make it {} or more, or look again at the hole", nest.hole),
                )
                .and(format!("{path}.hole"), "the hole"),
            );
        }
    }
}

/// A stay belongs to stay holes and has threads; a rivet goes into its hole.
pub(super) fn stays_and_rivets(written: &Written, faults: &mut Vec<Fault>) {
    for (i, set) in written.holes.iter().enumerate() {
        let Some(stay) = &set.stay else { continue };
        if set.purpose != Purpose::Stay {
            faults.push(
                Fault::new(
                    format!("holes[{i}].stay"),
                    format!(
                        "a stay is written, and the holes are for a {}",
                        set.purpose.name()
                    ),
                    "write `purpose: stay`, or take the stay out",
                )
                .and(format!("holes[{i}].purpose"), "the purpose"),
            );
        }
        threads(
            &format!("holes[{i}].stay"),
            ("diameter", &stay.diameter),
            stay.threads_per_inch,
            faults,
        );
    }
    for (i, nest) in written.tubes.iter().enumerate() {
        if let Some(stay_tubes) = &nest.stay_tubes {
            stay_tube(&format!("tubes[{i}].stay_tubes"), stay_tubes, faults);
        }
    }
    let Some(rivets) = &written.rivets else {
        return;
    };
    if let Some(rows) = rivets.rows.as_ref().filter(|rows| rows.number < 2) {
        faults.push(Fault::new(
            "rivets.rows.number",
            format!("{} is no number of rows to set apart", rows.number),
            "write 2 or more, or leave `rows` out for one row",
        ));
    }
    if rivets
        .hole
        .value()
        .shortfall(rivets.rivet.value())
        .is_some()
    {
        faults.push(
            Fault::new(
                "rivets.hole",
                format!(
                    "a rivet of {} does not go into a hole of {}",
                    rivets.rivet, rivets.hole
                ),
                "write the finished hole, which is larger than the cold rivet",
            )
            .and("rivets.rivet", "the rivet, cold"),
        );
    }
}

/// A thread leaves a core.
fn threads(path: &str, (key, over): (&str, &Size), threads_per_inch: f64, faults: &mut Vec<Fault>) {
    if threads_per_inch <= 0.0 {
        faults.push(Fault::new(
            format!("{path}.threads_per_inch"),
            format!("{threads_per_inch} threads to the inch is no thread"),
            "count them against a gauge: 11 or 12 as a rule",
        ));
    } else if whitworth_core(over.value(), threads_per_inch) <= Length::ZERO {
        faults.push(
            Fault::new(
                format!("{path}.{key}"),
                format!("{threads_per_inch} threads to the inch leave no core of {over}"),
                "write the diameter over the threads",
            )
            .and(format!("{path}.threads_per_inch"), "the thread"),
        );
    }
}

/// A stay tube has metal between its bore and the root of its thread.
fn stay_tube(path: &str, tube: &StayTubes, faults: &mut Vec<Fault>) {
    let before = faults.len();
    let over = ("over_threads", &tube.over_threads);
    threads(path, over, tube.threads_per_inch, faults);
    let core = whitworth_core(tube.over_threads.value(), tube.threads_per_inch);
    if faults.len() == before && core <= tube.bore.value() {
        faults.push(
            Fault::new(
                format!("{path}.bore"),
                format!(
                    "a bore of {} leaves nothing under a thread of {}",
                    tube.bore, tube.over_threads
                ),
                "write the bore under the thread",
            )
            .and(format!("{path}.over_threads"), "over the threads"),
        );
    }
}

/// Two groups of one name cannot be told apart on a sheet.
pub(super) fn one_name_each(written: &Written, faults: &mut Vec<Fault>) {
    let nests = written.tubes.iter().enumerate();
    let sets = written.holes.iter().enumerate();
    let names: Vec<(String, &str)> = nests
        .map(|(i, nest)| (format!("tubes[{i}].name"), nest.name.as_str()))
        .chain(sets.map(|(i, set)| (format!("holes[{i}].name"), set.name.as_str())))
        .collect();
    let mut first = std::collections::BTreeMap::new();
    for (path, name) in &names {
        if name.trim().is_empty() {
            let fact = "the group has no name, and the sheets call it by that";
            faults.push(Fault::new(
                path,
                fact,
                "write a word or two: flues, palm stays",
            ));
        } else if let Some(earlier) = first.insert(*name, path) {
            faults.push(
                Fault::new(
                    path,
                    format!("two groups are called `{name}`"),
                    "give each its own name, since the sheets tell them apart by that",
                )
                .and(earlier, "the first"),
            );
        }
    }
}
