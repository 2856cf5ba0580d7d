//! Tables of the repairs: what is welded and what lies near it, and every weld line corner by corner.

use super::Hang;
use super::set::Set;
use super::table::Table;
use super::weld_numbers::repair_number;
use crate::design::{LeftBy, Repair, RepairWork};
use crate::spec::{RepairWeld, WeldLineSpec};
use crate::units::Length;

/// Every repair by the number of its weld; none where nothing is repaired.
pub fn repair_table(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "REPAIRS; CLEAR METAL FROM THE LINE OF THE WELD, ITS WIDTH NOT COUNTED",
        &[
            ("WELD", 11.0, Hang::Middle),
            ("WHAT", 52.0, Hang::Start),
            ("LENGTH OF WELD", 24.0, Hang::Start),
            ("CLEAR TO HOLES", 32.0, Hang::Start),
            ("TO RIVET HOLES", 28.0, Hang::Start),
        ],
    );
    for (i, repair) in set.design.repairs.iter().enumerate() {
        table.rows.push(vec![
            repair_number(set, i),
            what(set, (i, repair)),
            lengths(set, repair),
            clear(set, repair),
            rivets(set, repair),
        ]);
    }
    (!table.rows.is_empty()).then_some(table)
}

fn what(set: &Set<'_>, (index, repair): (usize, &Repair)) -> String {
    let fig = set.figures;
    let ids: Vec<&str> = repair
        .holes_in_it
        .iter()
        .map(|hole| set.design.holes[*hole].id.as_str())
        .collect();
    let mut words = vec![repair.name.clone()];
    match &repair.work {
        RepairWork::BuildUp { sizes, left, .. } => {
            words.push(match repair.renews.as_ref().and_then(|r| r.as_circle()) {
                Some(_) => format!("built up, ⌀{}", fig.size_short(&sizes.0)),
                None => format!(
                    "built up, {} × {}",
                    fig.size_short(&sizes.0),
                    fig.size_short(&sizes.1)
                ),
            });
            words.push(match left {
                None => "metal left not given".into(),
                Some((left, LeftBy::Spec)) => format!("{} left", fig.decimal(*left)),
                Some((left, LeftBy::Reading(number))) => {
                    format!("{} left by reading {number}", fig.decimal(*left))
                }
            });
        }
        RepairWork::Crack => words.push("crack cut out and welded".into()),
        RepairWork::Line { let_in: true } => words.push("piece let in".into()),
        RepairWork::Line { let_in: false } => words.push("weld".into()),
        RepairWork::GirthCracks(cracks) => words.push(format!(
            "cracks from rivet hole to rivet hole, {} in all, {} in the longest run",
            cracks.in_all, cracks.longest_run
        )),
        RepairWork::CaulkingEdge(_) => words.push("caulking edge built up".into()),
    }
    if !ids.is_empty() {
        let what = if matches!(repair.work, RepairWork::Crack) {
            "starts from"
        } else {
            "holes in it:"
        };
        words.push(format!("{what} {}", ids.join(", ")));
    }
    if repair.rivets_in_it > 0 {
        words.push(format!("{} rivets in it", repair.rivets_in_it));
    }
    words.extend(set.spec.written.repairs[index].remarks.clone());
    words.join("; ")
}

fn lengths(set: &Set<'_>, repair: &Repair) -> String {
    let fig = set.figures;
    match repair.crossings.is_empty() {
        false => format!(
            "{} on the flat, {} with heel and flange",
            fig.decimal(repair.flat_length),
            fig.decimal(repair.length)
        ),
        true if repair.length > Length::ZERO => fig.decimal(repair.length),
        true => "–".into(),
    }
}

/// Sorts of holes whose least metal is told, the nearest first; the findings tell them all.
const SHOWN: usize = 2;

fn clear(set: &Set<'_>, repair: &Repair) -> String {
    let fig = set.figures;
    let mut nearest: Vec<_> = repair.nearest.iter().collect();
    nearest.sort_by(|a, b| a.2.total_cmp(&b.2));
    let mut words: Vec<String> = nearest
        .into_iter()
        .take(SHOWN)
        .map(|(_, hole, metal)| {
            format!("{} to {}", fig.decimal(*metal), set.design.holes[*hole].id)
        })
        .collect();
    if let Some((line, metal)) = repair.to_end_of_flat {
        words.push(format!("{} to {}", fig.decimal(metal), line.name()));
    }
    if words.is_empty() {
        "–".into()
    } else {
        words.join("; ")
    }
}

fn rivets(set: &Set<'_>, repair: &Repair) -> String {
    let fig = set.figures;
    let words: Vec<String> = repair
        .crossings
        .iter()
        .filter_map(|crossing| {
            let (id, metal) = crossing.rivet.as_ref()?;
            let angle = crate::units::print::decimal(crossing.angle_deg, 2);
            Some(format!("{} to {id} at {angle}°", fig.decimal(*metal)))
        })
        .collect();
    if words.is_empty() {
        "–".into()
    } else {
        words.join("; ")
    }
}

/// A table for each weld line: its corners as written, before they are rounded off, which can be struck.
pub fn lines_tables(set: &Set<'_>) -> Vec<Table> {
    let repairs = set.spec.written.repairs.iter().enumerate();
    repairs
        .filter_map(|(i, repair)| match &repair.weld {
            RepairWeld::Line(line) => Some(line_table(set, &repair_number(set, i), line)),
            _ => None,
        })
        .collect()
}

fn line_table(set: &Set<'_>, number: &str, line: &WeldLineSpec) -> Table {
    let fig = set.figures;
    let unit = fig.unit_sign();
    let (x, y) = (format!("x, {unit}"), format!("y, {unit}"));
    let mut table = Table::new(
        &format!("WELD LINE {number}: THEORETICAL CORNERS"),
        &[
            ("CORNER", 18.0, Hang::Middle),
            (&x, 18.0, Hang::End),
            (&y, 18.0, Hang::End),
            ("ROUNDED TO", 24.0, Hang::End),
            ("REACHED BY", 69.0, Hang::Start),
        ],
    );
    let place = |at: &crate::spec::At| [fig.decimal(at.0.value()), fig.decimal(at.1.value())];
    let over = line.over_flange.as_ref();
    let over = over.map(|over| {
        format!(
            "square over the heel and {} of flange",
            fig.size_short(over)
        )
    });
    let [x, y] = place(&line.start);
    let from = over
        .as_ref()
        .map_or("–".into(), |over| format!("from the tangent, {over}"));
    table.row(vec!["start".into(), x, y, "–".into(), from]);
    let last = line.steps.len().saturating_sub(1);
    for (i, step) in line.steps.iter().enumerate() {
        let [x, y] = place(&step.to);
        let mut by = match (&step.through, &step.radius) {
            (Some(through), _) => {
                let [x, y] = place(through);
                format!("arc through ({x}, {y})")
            }
            (None, Some(radius)) => format!("arc of radius {}", fig.size_short(radius)),
            (None, None) => "straight".into(),
        };
        if let Some(over) = over.as_ref().filter(|_| i == last) {
            by = format!("{by}, then {over}");
        }
        let rounded = step.corner_radius.as_ref();
        let rounded = rounded.map_or("–".into(), |r| format!("R{}", fig.size_short(r)));
        table.row(vec![(i + 1).to_string(), x, y, rounded, by]);
    }
    table
}
