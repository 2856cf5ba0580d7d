//! Tables of the repairs: what is welded and what lies near it, and every weld line corner by corner.

use super::Hang;
use super::kept::point;
use super::marking_tables::{From, with_hand};
use super::set::Set;
use super::table::Table;
use super::weld_numbers::repair_number;
use crate::design::{Edge, FlangeCrossing, LeftBy, Point, Repair, RepairWork};
use crate::spec::{RepairWeld, WeldLineSpec};
use crate::units::Length;

/// Every repair by the number of its weld; none where nothing is repaired.
pub fn repair_table(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "REPAIRS; CLEAR METAL FROM THE LINE OF THE WELD, ITS WIDTH NOT COUNTED",
        &[
            ("WELD", 11.0, Hang::Middle),
            ("WHAT", 42.0, Hang::Start),
            ("LENGTH OF WELD", 34.0, Hang::Start),
            ("CLEAR TO HOLES", 26.0, Hang::Start),
            ("OVER THE FLANGE", 35.0, Hang::Start),
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
    if !repair.rivets_in_it.is_empty() {
        words.push(format!("{} rivets in it", repair.rivets_in_it.len()));
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
    let words: Vec<String> = repair
        .crossings
        .iter()
        .map(|crossing| {
            let angle = crate::units::print::decimal(crossing.angle_deg, 2);
            let metal = metal_beside(set, crossing);
            match metal.is_empty() {
                true => format!("weld crosses at {angle}°"),
                false => format!("weld crosses at {angle}°: {metal}"),
            }
        })
        .collect();
    if words.is_empty() {
        "–".into()
    } else {
        words.join("; ")
    }
}

/// Metal from a weld over the flange to the rivet on each hand: "0.741 to R5 and R6".
fn metal_beside(set: &Set<'_>, crossing: &FlangeCrossing) -> String {
    let fig = set.figures;
    let metal = crossing.beside.iter().map(|(_, metal)| fig.decimal(*metal));
    let metal: Vec<String> = metal.collect();
    match (&crossing.beside[..], &metal[..]) {
        ([a, b], [to_a, to_b]) if to_a == to_b => format!("{to_a} to {} and {}", a.0, b.0),
        _ => {
            let each = crossing.beside.iter().zip(&metal);
            let each = each.map(|((id, _), metal)| format!("{metal} to {id}"));
            each.collect::<Vec<_>>().join(", ")
        }
    }
}

/// A table for each weld line: its corners as written, before they are rounded off, and the ends of the arcs that round them.
pub fn lines_tables(set: &Set<'_>) -> Vec<Table> {
    let repairs = set.spec.written.repairs.iter().enumerate();
    repairs
        .filter_map(|(i, repair)| match &repair.weld {
            RepairWeld::Line(line) => Some(line_table(set, (i, &repair_number(set, i)), line)),
            _ => None,
        })
        .collect()
}

fn line_table(set: &Set<'_>, (index, number): (usize, &str), line: &WeldLineSpec) -> Table {
    let fig = set.figures;
    let mut table = Table::new(
        &format!("WELD LINE {number}: CORNERS TO STRIKE, AND THE ENDS OF THEIR ARCS"),
        &[
            ("CORNER", 20.0, Hang::Middle),
            ("FROM A", 33.0, Hang::End),
            ("FROM B", 37.0, Hang::End),
            ("ROUNDED", 18.0, Hang::Middle),
            ("REACHED BY", 40.0, Hang::Start),
        ],
    );
    let over = line.over_flange.as_ref();
    let over = over.map(|over| format!("square over heel, {} of flange", over.as_written()));
    let [x, y] = place(set, point(&line.start));
    let from = over
        .as_ref()
        .map_or("–".into(), |over| format!("from the tangent: {over}"));
    table.row(vec!["start".into(), x, y, "–".into(), from]);
    let last = line.steps.len().saturating_sub(1);
    for (i, step) in line.steps.iter().enumerate() {
        let corner = point(&step.to);
        let [x, y] = place(set, corner);
        let mut by = match (&step.through, &step.radius) {
            (Some(through), _) => {
                let [x, y] = place(set, point(through));
                format!("arc through {x}, {y}")
            }
            (None, Some(radius)) => format!("arc of radius {}", fig.size_short(radius)),
            (None, None) => "straight".into(),
        };
        if let Some(over) = over.as_ref().filter(|_| i == last) {
            by = format!("{by}, then {over}");
        }
        let rounded = step.corner_radius.as_ref();
        let words = rounded.map_or("–".into(), |r| format!("R{}", fig.size_short(r)));
        table.row(vec![(i + 1).to_string(), x, y, words, by]);
        let arc = rounded.and_then(|r| rounding(set, index, corner, r.value()));
        for (end, name) in arc.into_iter().flatten().zip(["from", "to"]) {
            let [x, y] = place(set, end);
            table.row(vec![format!("arc {name}"), x, y]);
        }
    }
    table
}

/// A place by its running sizes from the two datum lines, the decimal beside the nearest 64th.
fn place(set: &Set<'_>, at: Point) -> [String; 2] {
    [(at.x, From::A), (at.y, From::B)].map(|(mm, from)| {
        let length = Length::mm(mm);
        let words = with_hand(set, length, from);
        match set.figures.in_inches() && !length.same_as(Length::ZERO) {
            true => format!("{words} = {}", set.figures.decimal(length.abs())),
            false => words,
        }
    })
}

/// The ends of the arc that rounds a corner off; none where the corner is sharp.
fn rounding(set: &Set<'_>, repair: usize, corner: Point, radius: Length) -> Option<[Point; 2]> {
    let weld = set.design.repairs[repair].weld.iter();
    let arcs = weld.filter(|edge| match edge {
        Edge::Arc { radius: arc, .. } => Length::mm(*arc).same_as(radius),
        Edge::Line { .. } => false,
    });
    let arc = arcs.min_by(|a, b| a.distance(corner).total_cmp(&b.distance(corner)))?;
    Some([arc.from(), arc.to()])
}
