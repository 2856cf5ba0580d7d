//! The matrix of groups and stages: what size every hole is to be after each stage, and what it is made with.

use super::Hang;
use super::beginning::cut_sizes;
use super::set::Set;
use super::table::Table;
use super::tapped_words::{BLANK, tapping_tools};
use crate::cut::{CutPart, PartKind};
use crate::design::{HoleGroup, RivetMade, Stage, Tapped, number_runs};
use crate::spec::{RivetHow, StagePlace};

/// Names of the stages in working order over all groups; a stage that a group goes through twice stands twice.
pub fn stage_names(set: &Set<'_>) -> Vec<String> {
    let mut order: Vec<String> = Vec::new();
    for (_, group) in set.design.groups_made() {
        let mut next = 0;
        let names = names_of(&stages_of(group));
        for (i, name) in names.iter().cloned().enumerate() {
            match order.iter().skip(next).position(|o| *o == name) {
                Some(found) => next += found + 1,
                None => {
                    // It stands before the next of this group's stages that the matrix has, or last of all.
                    let later = |o: &String| names[i + 1..].contains(o);
                    let place = order.iter().skip(next).position(later);
                    next = place.map_or(order.len(), |p| next + p);
                    order.insert(next, name);
                    next += 1;
                }
            }
        }
    }
    order
}

/// The stages of a group; of a tapped one, the tap is the last.
fn stages_of(group: &HoleGroup) -> Vec<Stage> {
    match &group.tapped {
        Some(tapped) => tapped.with_tap(&group.stages),
        None => group.stages.clone(),
    }
}

fn names_of(stages: &[Stage]) -> Vec<String> {
    stages.iter().map(|s| s.name.to_uppercase()).collect()
}

/// A line for each group: stages with their sizes, the go and no-go sizes, and who has done it.
pub fn stage_matrix(set: &Set<'_>) -> Table {
    let names = stage_names(set);
    let cut = |p: &CutPart| p.kind == PartKind::Plate && !p.holes_cut.is_empty();
    let as_cut = set.parts.iter().any(cut);
    let mut columns: Vec<(&str, f64, Hang)> = vec![
        ("HOLES", 42.0, Hang::Start),
        ("NUMBERS", 26.0, Hang::Start),
        ("OFF", 12.0, Hang::Middle),
    ];
    columns.push(match as_cut {
        true => ("CUTTER LEAVES", 24.0, Hang::Middle),
        false => ("FIRST", 26.0, Hang::Middle),
    });
    columns.push(("COUNT SIGNED", 24.0, Hang::Middle));
    columns.extend(names.iter().map(|n| (n.as_str(), 27.0, Hang::Middle)));
    columns.extend([
        ("GO", 24.0, Hang::Middle),
        ("NO-GO", 24.0, Hang::Middle),
        ("DONE BY", 22.0, Hang::Middle),
        ("DATE", 20.0, Hang::Middle),
    ]);
    let mut table = Table::new("GROUPS AND STAGES: SIZE, WHERE IT IS DONE", &columns);
    table.least_row = 9.0;
    for (index, group) in set.design.groups_made() {
        let mut row = vec![
            group.name.clone(),
            set.numbers_made(index),
            set.made_off(index).to_string(),
            first(set, index),
            String::new(),
        ];
        row.extend(cells(set, index, &names));
        row.extend(gauges(set, index));
        table.row(row);
    }
    rivet_rows(set, &mut table, &names);
    table
}

/// What a hole of the group is before the works' own stages: what the cutter leaves, or a pop.
fn first(set: &Set<'_>, group: usize) -> String {
    let sizes = cut_sizes(set, group);
    match sizes.is_empty() {
        true => "pop".into(),
        false => sizes.join(", "),
    }
}

/// What a finished hole must let through and what it must not: of a tapped one, its thread's own gauge.
fn gauges(set: &Set<'_>, group: usize) -> [String; 2] {
    if set.design.all_tapped(group).is_some() {
        return ["thread gauge".into(), "–".into()];
    }
    let own = &set.design.groups[group];
    let over = own
        .largest
        .as_ref()
        .map(|largest| format!("over {}", set.figures.size_short(largest)));
    [
        set.figures.size_short(&own.finish),
        over.unwrap_or_else(|| "not given".into()),
    ]
}

/// A cell for every stage of the matrix; a dash where the group has no such stage.
fn cells(set: &Set<'_>, group: usize, names: &[String]) -> Vec<String> {
    let stages = stages_of(&set.design.groups[group]);
    let mut row = vec!["–".to_string(); names.len()];
    let mut next = 0;
    for (i, stage) in stages.iter().enumerate() {
        let name = stage.name.to_uppercase();
        let Some(found) = names.iter().skip(next).position(|n| *n == name) else {
            continue;
        };
        let size = match &set.design.groups[group].tapped {
            Some(tapped) if i + 1 == stages.len() => tap_cell(set, group, tapped),
            _ => stage
                .size
                .as_ref()
                .map_or("no size".into(), |s| set.figures.size_short(s)),
        };
        row[next + found] = match stage.place {
            StagePlace::ToDrawing => size,
            StagePlace::Cut => format!("{size} BY CUTTER"),
            StagePlace::InPlace => format!("{size} IN PLACE"),
        };
        next += found + 1;
    }
    row
}

/// The tapping: what is opened before it where no stage says so, and which tubes where not all are screwed in.
fn tap_cell(set: &Set<'_>, group: usize, tapped: &Tapped) -> String {
    let size = set.figures.size_short(&tapped.over_threads);
    let which = match set.design.all_tapped(group) {
        Some(_) => "",
        None => "stay tubes ",
    };
    match tapped.opening(&set.design.groups[group].stages) {
        Some(_) => format!("{which}{size} over threads"),
        None => format!("open to {BLANK}, tap {which}{size}"),
    }
}

/// Rivet holes, those for tack bolts apart. The spec gives no drill for them: they are reamed to size, or finished where nothing in the
/// flat is reamed.
fn rivet_rows(set: &Set<'_>, table: &mut Table, names: &[String]) {
    let Some(line) = &set.design.rivets else {
        return;
    };
    let called = |wanted: &str| names.iter().find(|name| name.contains(wanted));
    let finishing = called("REAM").or_else(|| called("FINISH"));
    let kinds = [
        (RivetMade::Drawn, "rivets", "to drawing"),
        (RivetMade::Tack, "rivets, tack bolts", "to drawing"),
        (
            RivetMade::InPlace,
            "rivets, the rest",
            "IN PLACE, through the barrel",
        ),
    ];
    for (made, name, how) in kinds {
        let ids: Vec<String> = line
            .rivets
            .iter()
            .enumerate()
            .filter(|(i, r)| r.made == made && set.design.rivet_is_made(*i))
            .map(|(_, r)| r.id.clone())
            .collect();
        let (Some(a), Some(b)) = (ids.first(), ids.last()) else {
            continue;
        };
        let name = match (made, line.how) {
            (RivetMade::InPlace, RivetHow::InPlace) if ids.len() == set.design.rivets_made() => {
                "rivets"
            }
            (RivetMade::Tack, _) if line.rows.is_some() => "rivets, tack bolts, row 1",
            _ => name,
        };
        // Bolts stand every so many holes: a run from first to last would name the rest as well.
        let numbers = match made {
            RivetMade::Tack => tack_numbers(&ids),
            RivetMade::Drawn | RivetMade::InPlace if set.design.kept => {
                number_runs(&ids).replace('-', "–")
            }
            RivetMade::InPlace if ids.len() < line.rivets.len() => {
                format!("{a}–{b} less the tacks")
            }
            RivetMade::Drawn | RivetMade::InPlace => format!("{a}–{b}"),
        };
        let mut row = vec![name.into(), numbers, ids.len().to_string(), how.into()];
        row.push(String::new());
        let size = set.figures.size_short(&line.hole);
        row.extend(names.iter().map(|n| match Some(n) == finishing {
            true => size.clone(),
            false => "–".to_string(),
        }));
        row.push(set.figures.size_short(&line.hole));
        row.push("not given".into());
        table.row(row);
    }
}

fn tack_numbers(ids: &[String]) -> String {
    match ids {
        [a, b, .., last] => format!("{a}, {b} … {last}"),
        [a, b] => format!("{a}, {b}"),
        _ => ids.join(""),
    }
}

/// What is taken from the store: a line for each tool and size, and how many holes it makes.
pub fn tool_list(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        match set.design.groups.iter().any(|g| g.tapped.is_some()) {
            true => "DRILLS, CUTTERS, REAMERS, TAPS: MEASURE EACH BEFORE IT IS USED",
            false => "DRILLS, CUTTERS, REAMERS: MEASURE EACH BEFORE IT IS USED",
        },
        &[
            ("TOOL", 30.0, Hang::Start),
            ("SIZE", 26.0, Hang::Middle),
            ("HOLES", 16.0, Hang::Middle),
            ("FOR", 52.0, Hang::Start),
            ("MEASURED", 24.0, Hang::Middle),
            ("BY", 18.0, Hang::Middle),
        ],
    )
    .filled_in();
    let mut lines: Vec<(String, String, usize, Vec<String>)> = Vec::new();
    let mut take = |tool: String, size: String, off: usize, what: String| match lines
        .iter_mut()
        .find(|l| l.0 == tool && l.1 == size)
    {
        Some(line) => {
            line.2 += off;
            line.3.push(what);
        }
        None => lines.push((tool, size, off, vec![what])),
    };
    for (index, group) in set.design.groups_made() {
        let tap = group.tapped.as_ref().is_some_and(|t| t.ends(&group.stages));
        let plain = group.stages.len() - usize::from(tap);
        let stages = group.stages[..plain].iter();
        for stage in stages.filter(|s| s.place != StagePlace::Cut) {
            let Some(size) = &stage.size else {
                continue;
            };
            let what = format!("{}, {}", group.name, stage.name);
            take(
                tool_of(&stage.name),
                set.figures.size(size),
                set.made_off(index),
                what,
            );
        }
    }
    for (index, _) in set.design.groups_made() {
        let holes = 0..set.design.holes.len();
        let own = holes.filter(|&h| set.design.holes[h].group == index && set.design.is_made(h));
        let off = own.filter(|&h| set.design.tapped(h).is_some()).count();
        for (tool, size, what) in tapping_tools(set, index) {
            take(tool, size, off, what);
        }
    }
    let rivets = set.design.rivets_made();
    if let Some(line) = set.design.rivets.as_ref().filter(|_| rivets > 0) {
        take(
            "drill, rivet holes".into(),
            "not stated".into(),
            rivets,
            "rivets, before reaming".into(),
        );
        let size = set.figures.size(&line.hole);
        take(
            "reamer, rivet holes".into(),
            size,
            rivets,
            "rivets, parts pulled together".into(),
        );
    }
    for (tool, size, off, what) in lines {
        table.row(vec![tool, size, off.to_string(), what.join("; ")]);
    }
    table
}

/// The tool that makes a stage; its own name where the trade has no other.
fn tool_of(stage: &str) -> String {
    let words = stage.to_lowercase();
    let known = [
        ("pilot", "drill, pilot"),
        ("drill", "drill"),
        ("trepan", "cutter"),
        ("bore", "cutter or boring head"),
        ("ream", "reamer"),
        ("broach", "broach"),
        ("tap", "tap"),
        ("finish", "tool not stated"),
    ];
    known
        .iter()
        .find(|(stage, _)| words.contains(stage))
        .map_or(words.clone(), |(_, tool)| (*tool).into())
}

#[cfg(test)]
mod tests {
    use super::super::sample_jobs::{jobs, with_set};
    use super::*;

    /// Every stage of every group has its cell, in the group's own order.
    #[test]
    fn holds_no_stage_is_lost() {
        for job in jobs() {
            with_set(&job, |set| {
                let names = stage_names(set);
                for (i, group) in set.design.groups.iter().enumerate() {
                    let filled = cells(set, i, &names);
                    let found = filled.iter().filter(|c| *c != "–").count();
                    assert_eq!(found, stages_of(group).len(), "{job}, {}", group.name);
                }
            });
        }
    }

    /// Marl Hen's plug is 1 3/4 in over the threads and no tapping drill is written: no table may read as if a hole of that size were
    /// opened, and the store is asked for the tap and for the works' own opening.
    #[test]
    fn by_hand_a_plug_hole_is_tapped() {
        with_set("specs/marl-hen-smokebox.yaml", |set| {
            let matrix = stage_matrix(set);
            let row = matrix.rows.iter().find(|row| row[1] == "W1");
            let words = row.expect("the plug's line").join(" ");
            assert!(words.contains("tap {1 3/4}"), "{words}");
            assert!(
                words.contains(BLANK) && words.contains("thread gauge"),
                "{words}"
            );
            let tools = tool_list(set).rows;
            let plugs: Vec<&Vec<String>> =
                tools.iter().filter(|row| row[3].contains("plug")).collect();
            let [opening, tap] = plugs.as_slice() else {
                panic!("{plugs:?}");
            };
            assert_eq!(opening[1], format!("{BLANK} BY THE WORKS"));
            assert_eq!(tap[0], "taper tap, 1 in 12, 11 T.P.I.");
        });
    }

    /// Holes named in one line of the matrix are in no other: the tacks are taken out of the rest.
    #[test]
    fn holds_tacks_stand_in_one_line() {
        with_set("specs/marl-hen-smokebox.yaml", |set| {
            let matrix = stage_matrix(set);
            let rest = matrix.rows.last().expect("the rivets");
            assert_eq!(rest[1], "R2–R56 less the tacks");
        });
    }
}
