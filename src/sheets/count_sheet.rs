//! Sheet: count. How many holes are called for, and how many were popped, piloted and finished; a second person counts again.

use super::Hang;
use super::board::Board;
use super::flow::Block;
use super::kept::rivets_made;
use super::notes::Notes;
use super::pages::pages;
use super::particulars::view_words;
use super::set::Set;
use super::table::Table;
use crate::design::runs;

/// Height of that lettering, mm.
const HOLD: f64 = 5.0;
/// What stands over every count.
pub const NO_FURTHER: &str =
    "NO HOLE BEYOND ITS PILOT UNTIL BOTH COUNTS AGREE AND BOTH HAVE SIGNED";

/// The count over as many sheets as it needs; none for a plate without holes.
pub fn count_sheet(set: &Set<'_>) -> Vec<Board> {
    if set.design.holes_made().next().is_none() {
        return Vec::new();
    }
    let mut blocks = vec![
        Block::Caution(NO_FURTHER.into(), HOLD),
        Block::Table(by_group(set), 0),
        Block::Table(signatures(), 0),
        Block::Notes(how(set), 0),
    ];
    blocks.push(Block::NextColumn);
    blocks.extend(by_line(set).map(|t| Block::Table(t, 0)));
    pages(set, "count", "Count of holes", 2, blocks)
}

fn how(set: &Set<'_>) -> Notes {
    Notes::new(
        "HOW TO COUNT",
        vec![
            format!("STAND {}.", view_words(set.design.view_from)),
            "COUNT EVERY LINE AND EVERY GROUP. CHALK EACH LINE AS IT IS COUNTED.".into(),
            "THE SECOND COUNT IS MADE BY ANOTHER PERSON, WHO HAS NOT SEEN THE FIRST.".into(),
            "WHERE A COUNT AND WHAT IS CALLED DIFFER, STOP: A POP COSTS NOTHING TO MOVE.".into(),
        ],
    )
}

/// A line for each group, one for the rivets, and the total of holes in the flat.
fn by_group(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "COUNT BY GROUP",
        &[
            ("HOLES", 42.0, Hang::Start),
            ("NUMBERS", 24.0, Hang::Start),
            ("HOLE", 26.0, Hang::Middle),
            ("CALLED", 17.0, Hang::Middle),
            ("POPPED", 17.0, Hang::Middle),
            ("PILOTED", 17.0, Hang::Middle),
            ("FINISHED", 19.0, Hang::Middle),
        ],
    )
    .filled_in();
    for (index, group) in set.design.groups_made() {
        table.row(vec![
            group.name.clone(),
            set.numbers_made(index),
            set.figures.size_short(&group.finish),
            set.made_off(index).to_string(),
        ]);
    }
    table.row(vec![
        match set.design.kept {
            true => "ALL NEW HOLES IN THE FLAT".into(),
            false => "ALL HOLES IN THE FLAT".into(),
        },
        String::new(),
        String::new(),
        set.design.holes_made().count().to_string(),
    ]);
    table.loud.push(table.rows.len() - 1);
    let rivets = set.design.rivets_made();
    if let Some(line) = set.design.rivets.as_ref().filter(|_| rivets > 0) {
        let numbers = match (line.rivets.first(), line.rivets.last()) {
            _ if set.design.kept => rivets_made(set),
            (Some(a), Some(b)) => format!("{}–{}", a.id, b.id),
            _ => String::new(),
        };
        table.row(vec![
            match &line.rows {
                Some(rows) => format!("rivet holes on the flange, {} rows", rows.number),
                None => "rivet holes on the flange".into(),
            },
            numbers,
            set.figures.size_short(&line.hole),
            rivets.to_string(),
        ]);
    }
    table
}

/// Who counted, and when.
fn signatures() -> Table {
    let mut table = Table::new(
        "SIGNED",
        &[
            ("COUNT", 40.0, Hang::Start),
            ("TOTAL FOUND", 28.0, Hang::Middle),
            ("SIGNATURE", 60.0, Hang::Middle),
            ("DATE", 34.0, Hang::Middle),
        ],
    )
    .filled_in();
    table.least_row = 9.0;
    for who in [
        "first count of pops",
        "second count of pops",
        "count of pilots",
        "count of finished holes",
    ] {
        table.row(vec![who.into()]);
    }
    table
}

/// A line for each run of the nest; none where no nest lies in lines.
fn by_line(set: &Set<'_>) -> Option<Table> {
    let runs = runs(&set.design.as_made_now());
    let head = match runs.first()?.way {
        crate::design::LineWay::Columns => "COLUMN",
        crate::design::LineWay::Rows => "ROW",
    };
    let mut table = Table::new(
        &format!("COUNT OF THE NEST BY {head}"),
        &[
            (head, 18.0, Hang::Middle),
            ("NUMBERS", 34.0, Hang::Start),
            ("CALLED", 17.0, Hang::Middle),
            ("POPPED", 17.0, Hang::Middle),
            ("AGAIN", 17.0, Hang::Middle),
            ("PILOTED", 17.0, Hang::Middle),
            ("FINISHED", 19.0, Hang::Middle),
        ],
    )
    .filled_in();
    for run in &runs {
        let numbers = match run.count {
            1 => run.ids.0.clone(),
            _ => format!("{}–{}", run.ids.0, run.ids.1),
        };
        let line = run.line.to_string().replace('-', "−");
        table.row(vec![line, numbers, run.count.to_string()]);
    }
    let total: usize = runs.iter().map(|r| r.count).sum();
    table.row(vec![String::new(), "TOTAL".into(), total.to_string()]);
    table.loud.push(table.rows.len() - 1);
    Some(table)
}

#[cfg(test)]
mod tests {
    use super::super::sample_jobs::{jobs, with_set};
    use super::*;

    /// What is called by group adds up to the holes in the flat; what is called by line to the holes of the lines.
    #[test]
    fn holds_what_is_called_adds_up() {
        for job in jobs() {
            with_set(&job, |set| {
                let called = |t: &Table, column: usize| -> Vec<usize> {
                    t.rows
                        .iter()
                        .filter_map(|r| r[column].parse().ok())
                        .collect()
                };
                let groups = called(&by_group(set), 3);
                let off = set.design.groups_made().count();
                assert_eq!(groups[..off].iter().sum::<usize>(), groups[off], "{job}");
                if let Some(lines) = by_line(set).map(|t| called(&t, 2)) {
                    let (total, each) = lines.split_last().expect("a total");
                    assert_eq!(each.iter().sum::<usize>(), *total, "{job}");
                }
            });
        }
    }
}
