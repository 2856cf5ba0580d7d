//! What changed since the former issue, line by line: for the sheet and for the page.

use super::Hang;
use super::figure::Figures;
use super::table::Table;
use crate::design::{Design, FigureChange, HoleAt, HoleChange, Point, Since};
use crate::spec::Spec;
use crate::units::{Length, print};

/// Figures that follow from others in the list, or that the holes tell.
const TOLD_BY_OTHERS: [&str; 3] = ["holes", "area inside the edge", "length of the edge"];

/// One line of the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ChangeRow {
    /// What changed.
    pub what: String,
    /// As it was at the former issue; a dash where there was none.
    pub was: String,
    /// As it is; a dash where there is none.
    pub now: String,
}

/// Which issue is compared with, and every change since; none where the spec names no former issue.
pub fn change_rows(spec: &Spec, design: &Design) -> Option<(String, Vec<ChangeRow>)> {
    let since = design.since.as_ref()?;
    let title = format!(
        "Changes since revision {} (spec {})",
        since.revision, since.fingerprint
    );
    Some((title, rows(since, Figures::of(spec))))
}

/// The list as a table; a line that says so where nothing changed.
pub fn change_table(spec: &Spec, design: &Design) -> Option<Table> {
    let since = design.since.as_ref()?;
    let mut table = Table::new(
        &format!(
            "CHANGES SINCE REVISION {} (SPEC {}), LENGTHS IN {}",
            since.revision,
            since.fingerprint,
            Figures::of(spec).unit_sign()
        ),
        &[
            ("WHAT", 46.0, Hang::Start),
            ("WAS", 36.0, Hang::Start),
            ("NOW", 36.0, Hang::Start),
        ],
    );
    for row in rows(since, Figures::of(spec)) {
        table.row(vec![row.what, row.was, row.now]);
    }
    Some(table)
}

fn rows(since: &Since, fig: Figures) -> Vec<ChangeRow> {
    let dash = |value: Option<String>| value.unwrap_or("–".into());
    let mut rows = hole_rows(since, fig);
    rows.extend(since.changes.renumbered().iter().map(|run| {
        let span = |first: &str, last: &str| match first == last {
            true => first.to_string(),
            false => format!("{first}–{last}"),
        };
        ChangeRow {
            what: "numbered anew".into(),
            was: span(&run.first.0, &run.last.0),
            now: span(&run.first.1, &run.last.1),
        }
    }));
    rows.extend(since.changes.counts.iter().map(|count| ChangeRow {
        what: format!("{}, number off", count.group),
        was: dash(count.old.map(|n| n.to_string())),
        now: dash(count.new.map(|n| n.to_string())),
    }));
    if let Some((place, off)) = since.changes.edge {
        rows.push(ChangeRow {
            what: "edge, furthest off the former one".into(),
            was: "–".into(),
            now: format!("{} at {}", fig.table(Length::mm(off)), at_place(place, fig)),
        });
    }
    let figures = since.changes.figures.iter();
    // Before its flange is turned, a pressed plate is as wide and as high as its blank.
    let blank = since
        .changes
        .figures
        .iter()
        .any(|f| f.name == "blank as cut");
    let told = figures.filter(|figure| {
        let told = TOLD_BY_OTHERS.contains(&figure.name);
        !(told || blank && figure.name.ends_with("over all"))
    });
    rows.extend(told.map(|figure| ChangeRow {
        what: figure.name.into(),
        was: dash(figure.old.map(|value| in_unit(figure, value, fig))),
        now: dash(figure.new.map(|value| in_unit(figure, value, fig))),
    }));
    let metal = |metal: Option<Length>| dash(metal.map(|metal| fig.table(metal)));
    rows.extend(since.changes.metals.iter().map(|change| ChangeRow {
        what: format!("least metal, {}", change.between),
        was: metal(change.old),
        now: metal(change.new),
    }));
    rows.extend(since.written.iter().map(|change| ChangeRow {
        what: change.key.clone(),
        was: dash(change.old.clone()),
        now: dash(change.new.clone()),
    }));
    if rows.is_empty() {
        rows.push(ChangeRow {
            what: "nothing that this compares".into(),
            was: "–".into(),
            now: "–".into(),
        });
    }
    rows
}

/// Holes that were added, left out, moved or resized. Those of one group that changed alike stand in one line.
fn hole_rows(since: &Since, fig: Figures) -> Vec<ChangeRow> {
    let mut alike: Vec<Vec<&HoleChange>> = Vec::new();
    for change in &since.changes.holes {
        if matches!(change, HoleChange::Renumbered { .. }) {
            continue;
        }
        match alike.last_mut() {
            Some(run) if changed_alike(run[run.len() - 1], change) => run.push(change),
            _ => alike.push(vec![change]),
        }
    }
    // Where only a few changed alike, the place of each is worth a line.
    let lines = alike.into_iter().flat_map(|run| match run.len() {
        0..=MOST_SINGLY => run.into_iter().map(|one| vec![one]).collect(),
        _ => vec![run],
    });
    let mut rows = Vec::new();
    let mut by_group: Vec<(&str, Vec<Vec<&HoleChange>>)> = Vec::new();
    for line in lines {
        let group = group_of(line[0]);
        match by_group.iter_mut().find(|(name, _)| *name == group) {
            Some((_, lines)) => lines.push(line),
            None => by_group.push((group, vec![line])),
        }
    }
    for (group, lines) in by_group {
        if lines.len() <= MOST_LINES {
            rows.extend(lines.iter().map(|run| hole_row(run, fig)));
        } else {
            rows.push(whole_group_row(group, &lines.concat(), fig));
        }
    }
    rows
}

/// More holes than this that changed alike stand in one line.
const MOST_SINGLY: usize = 4;
/// A group that takes more lines than this is told in one: `centrepop compare` tells every hole.
const MOST_LINES: usize = 16;

fn group_of(change: &HoleChange) -> &str {
    match change {
        HoleChange::Added(hole) | HoleChange::Omitted(hole) => &hole.group,
        HoleChange::Altered { new, .. } | HoleChange::Renumbered { new, .. } => &new.group,
    }
}

/// How many of a group changed in each way, and the one that moved furthest.
fn whole_group_row(group: &str, changes: &[&HoleChange], fig: Figures) -> ChangeRow {
    let (mut added, mut omitted, mut moved, mut resized) = (0, 0, 0, 0);
    let mut furthest: Option<(f64, &HoleAt)> = None;
    for change in changes {
        match change {
            HoleChange::Added(_) => added += 1,
            HoleChange::Omitted(_) => omitted += 1,
            HoleChange::Altered { old, new } => {
                moved += usize::from(!old.same_place(new));
                resized += usize::from(!old.same_size(new));
                let by = old.at.distance(new.at);
                if furthest.is_none_or(|(most, _)| by > most) {
                    furthest = Some((by, new));
                }
            }
            HoleChange::Renumbered { .. } => {}
        }
    }
    let counts = [
        (moved, "moved"),
        (resized, "resized"),
        (added, "added"),
        (omitted, "left out"),
    ];
    let words = counts.iter().filter(|(count, _)| *count > 0);
    let words: Vec<String> = words.map(|(count, how)| format!("{count} {how}")).collect();
    let furthest = furthest
        .filter(|_| moved > 0)
        .map(|(by, hole)| format!("{} furthest, by {}", hole.id, fig.table(Length::mm(by))));
    ChangeRow {
        what: format!("{group}: {}", words.join(", ")),
        was: "each hole: centrepop compare".into(),
        now: furthest.unwrap_or("–".into()),
    }
}

fn changed_alike(one: &HoleChange, other: &HoleChange) -> bool {
    let same_finish = |a: &HoleAt, b: &HoleAt| a.group == b.group && a.same_size(b);
    match (one, other) {
        (HoleChange::Added(a), HoleChange::Added(b))
        | (HoleChange::Omitted(a), HoleChange::Omitted(b)) => same_finish(a, b),
        (HoleChange::Altered { old: a, new: b }, HoleChange::Altered { old: c, new: d }) => {
            let (by, also) = (b.at - a.at, d.at - c.at);
            same_finish(a, c)
                && same_finish(b, d)
                && Length::mm(by.distance(also)).same_as(Length::ZERO)
        }
        _ => false,
    }
}

fn hole_row(run: &[&HoleChange], fig: Figures) -> ChangeRow {
    let (first, last) = (run[0], run[run.len() - 1]);
    let name = |hole: &HoleAt, end: &HoleAt| match hole.id == end.id {
        true => hole.id.clone(),
        false => format!("{} … {}, {} off", hole.id, end.id, run.len()),
    };
    let told = |hole: &HoleAt| match run.len() {
        1 => format!(
            "{} at {}",
            fig.diameter(hole.finish.value()),
            at_place(hole.at, fig)
        ),
        _ => fig.diameter(hole.finish.value()),
    };
    match (first, last) {
        (HoleChange::Added(new), HoleChange::Added(end)) => ChangeRow {
            what: format!("{} added ({})", name(new, end), new.group),
            was: "–".into(),
            now: told(new),
        },
        (HoleChange::Omitted(old), HoleChange::Omitted(end)) => ChangeRow {
            what: format!("{} left out ({})", name(old, end), old.group),
            was: told(old),
            now: "–".into(),
        },
        (
            HoleChange::Altered { old, new },
            HoleChange::Altered {
                old: old_end,
                new: end,
            },
        ) => {
            let sort = match (old.same_place(new), old.same_size(new)) {
                (false, true) => "moved",
                (true, _) => "resized",
                (false, false) => "moved and resized",
            };
            let was = match old.id == new.id {
                true => String::new(),
                false => format!(", was {}", name(old, old_end)),
            };
            let same_size = old.same_size(new);
            let (before, now) = match (old.same_place(new), run.len()) {
                (true, _) => (
                    fig.diameter(old.finish.value()),
                    fig.diameter(new.finish.value()),
                ),
                (false, 1) if same_size => (at_place(old.at, fig), at_place(new.at, fig)),
                (false, 1) => (told(old), told(new)),
                (false, _) => {
                    let by = format!("by {}", at_place(new.at - old.at, fig));
                    match same_size {
                        true => ("–".into(), by),
                        false => (told(old), format!("{}, {by}", told(new))),
                    }
                }
            };
            ChangeRow {
                what: format!("{} {sort} ({}){was}", name(new, end), new.group),
                was: before,
                now,
            }
        }
        // A run is of one sort.
        _ => unreachable!("holes that changed otherwise do not stand in one line"),
    }
}

/// "x 330, y −365" from the datums.
fn at_place(place: Point, fig: Figures) -> String {
    let short = |mm: f64| fig.short(Length::mm(mm));
    format!("x {}, y {}", short(place.x), short(place.y))
}

fn in_unit(figure: &FigureChange, value: f64, fig: Figures) -> String {
    match figure.unit {
        "mm" => fig.table(Length::mm(value)),
        "kg" => fig.mass(value),
        unit => format!("{} {unit}", print::trimmed(value, 2))
            .trim_end()
            .to_string(),
    }
}
