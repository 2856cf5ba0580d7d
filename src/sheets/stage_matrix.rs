//! The matrix of groups and stages: what size every hole is to be after each stage, and what it is made with.

use std::collections::BTreeSet;

use super::Hang;
use super::set::Set;
use super::table::Table;
use crate::cut::{CutPart, PartKind};
use crate::design::{RivetMade, Stage, number_runs};
use crate::spec::{RivetHow, StagePlace};

/// Names of the stages in working order over all groups; a stage that a group goes through twice stands twice.
pub fn stage_names(set: &Set<'_>) -> Vec<String> {
    let mut order: Vec<String> = Vec::new();
    for (_, group) in set.design.groups_made() {
        let mut next = 0;
        let names = names_of(&group.stages);
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
        row.extend(cells(set, &group.stages, &names));
        row.push(set.figures.size_short(&group.finish));
        row.push(match &group.largest {
            Some(largest) => format!("over {}", set.figures.size_short(largest)),
            None => "not given".into(),
        });
        table.row(row);
    }
    rivet_rows(set, &mut table, names.len());
    table
}

/// What a hole of the group is before the works' own stages: what the cutter leaves, or a pop.
fn first(set: &Set<'_>, group: usize) -> String {
    let holes = set.design.holes.iter().filter(|h| h.group == group);
    let ids: BTreeSet<&str> = holes.map(|h| h.id.as_str()).collect();
    let cuts = set.parts.iter().flat_map(|p| &p.holes_cut);
    let mut sizes: Vec<String> = cuts
        .filter(|c| c.ids.iter().any(|id| ids.contains(id.as_str())))
        .map(|c| set.figures.short(c.cut))
        .collect();
    sizes.dedup();
    if sizes.is_empty() {
        "pop".into()
    } else {
        sizes.join(", ")
    }
}

/// A cell for every stage of the matrix; a dash where the group has no such stage.
fn cells(set: &Set<'_>, stages: &[Stage], names: &[String]) -> Vec<String> {
    let mut row = vec!["–".to_string(); names.len()];
    let mut next = 0;
    for stage in stages {
        let name = stage.name.to_uppercase();
        let Some(found) = names.iter().skip(next).position(|n| *n == name) else {
            continue;
        };
        let size = stage
            .size
            .as_ref()
            .map_or("no size".into(), |s| set.figures.size_short(s));
        row[next + found] = match stage.place {
            StagePlace::ToDrawing => size,
            StagePlace::Cut => format!("{size} BY CUTTER"),
            StagePlace::InPlace => format!("{size} IN PLACE"),
        };
        next += found + 1;
    }
    row
}

/// Rivet holes, those for tack bolts apart.
fn rivet_rows(set: &Set<'_>, table: &mut Table, stages: usize) {
    let Some(line) = &set.design.rivets else {
        return;
    };
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
            RivetMade::Drawn | RivetMade::InPlace => format!("{a}–{b}"),
        };
        let mut row = vec![name.into(), numbers, ids.len().to_string(), how.into()];
        row.push(String::new());
        row.extend(vec!["–".to_string(); stages]);
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
        "DRILLS, CUTTERS, REAMERS, TAPS: MEASURE EACH BEFORE IT IS USED",
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
        for stage in group.stages.iter().filter(|s| s.place != StagePlace::Cut) {
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
    let rivets = set.design.rivets_made();
    if let Some(line) = set.design.rivets.as_ref().filter(|_| rivets > 0) {
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
                for group in &set.design.groups {
                    let filled = cells(set, &group.stages, &names);
                    let found = filled.iter().filter(|c| *c != "–").count();
                    assert_eq!(found, group.stages.len(), "{job}, {}", group.name);
                }
            });
        }
    }
}
