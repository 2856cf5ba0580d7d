//! Sheet: count. How many holes are called for, and how many were popped, piloted and finished; a second person counts again.

use super::Hang;
use super::beginning::Beginning;
use super::board::Board;
use super::flow::Block;
use super::kept::rivets_made;
use super::notes::Notes;
use super::pages::pages;
use super::particulars::view_words;
use super::set::Set;
use super::table::Table;
use super::tapped_words::finish_short;
use crate::design::runs;

/// Height of that lettering, mm.
const HOLD: f64 = 5.0;
/// What stands over every count.
pub fn no_further(set: &Set<'_>) -> String {
    format!(
        "{} UNTIL BOTH COUNTS AGREE AND BOTH HAVE SIGNED",
        Beginning::of_plate(set).no_further()
    )
}

/// What is counted: a column each, as far as any hole of the plate has it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Counted {
    Cut,
    Popped,
    Again,
    Piloted,
    Finished,
}

impl Counted {
    /// The columns that a plate wants whose holes begin so.
    fn wanted(all: Beginning) -> Vec<Counted> {
        let columns = [
            (Counted::Cut, all.cut),
            (Counted::Popped, all.pops()),
            (Counted::Again, 1),
            (Counted::Piloted, all.piloted),
            (Counted::Finished, 1),
        ];
        let wanted = columns.into_iter().filter(|(_, off)| *off > 0);
        wanted.map(|(column, _)| column).collect()
    }

    fn head(self) -> (&'static str, f64, Hang) {
        match self {
            Counted::Cut => ("CUT", 17.0, Hang::Middle),
            Counted::Popped => ("POPPED", 17.0, Hang::Middle),
            Counted::Again => ("AGAIN", 17.0, Hang::Middle),
            Counted::Piloted => ("PILOTED", 17.0, Hang::Middle),
            Counted::Finished => ("FINISHED", 19.0, Hang::Middle),
        }
    }

    /// A blank to write in, with its number where some of these holes alone have it, or a dash where none has.
    fn cell(self, begin: Beginning) -> String {
        let counted = match self {
            Counted::Cut => begin.cut,
            Counted::Popped => begin.pops(),
            Counted::Piloted => begin.piloted,
            Counted::Again if begin == Beginning::default() => 0,
            Counted::Again | Counted::Finished => begin.all(),
        };
        match (counted, self) {
            (_, Counted::Finished) => String::new(),
            (0, _) => "–".into(),
            _ if counted == begin.all() => String::new(),
            _ => format!("of {counted}"),
        }
    }
}

/// The count over as many sheets as it needs; none for a plate without holes.
pub fn count_sheet(set: &Set<'_>) -> Vec<Board> {
    if set.design.holes_made().next().is_none() {
        return Vec::new();
    }
    let mut blocks = vec![
        Block::Caution(no_further(set), HOLD),
        Block::Table(by_group(set), 0),
        Block::Table(signatures(set), 0),
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
            match Beginning::of_plate(set).pops() {
                0 => "WHERE A COUNT AND WHAT IS CALLED DIFFER, STOP, AND ASK THE DRAWING OFFICE."
                    .into(),
                _ => "WHERE A COUNT AND WHAT IS CALLED DIFFER, STOP: A POP COSTS NOTHING TO MOVE."
                    .into(),
            },
        ],
    )
}

/// A line for each group, one for the rivets, and the total of holes in the flat.
fn by_group(set: &Set<'_>) -> Table {
    let all = Beginning::of_plate(set);
    let counted = Counted::wanted(all);
    let mut columns = vec![
        ("HOLES", 42.0, Hang::Start),
        ("NUMBERS", 24.0, Hang::Start),
        ("HOLE", 26.0, Hang::Middle),
        ("CALLED", 17.0, Hang::Middle),
    ];
    columns.extend(counted.iter().map(|c| c.head()));
    let cells = |begin: Beginning| counted.iter().map(move |c| c.cell(begin));
    let mut table = Table::new("COUNT BY GROUP", &columns).filled_in();
    for (index, group) in set.design.groups_made() {
        let mut row = vec![
            group.name.clone(),
            set.numbers_made(index),
            finish_short(set, index),
            set.made_off(index).to_string(),
        ];
        row.extend(cells(Beginning::of_group(set, index)));
        table.row(row);
    }
    let mut row = vec![
        match set.design.kept {
            true => "ALL NEW HOLES IN THE FLAT".into(),
            false => "ALL HOLES IN THE FLAT".into(),
        },
        String::new(),
        String::new(),
        set.design.holes_made().count().to_string(),
    ];
    row.extend(cells(all));
    table.row(row);
    table.loud.push(table.rows.len() - 1);
    let rivets = set.design.rivets_made();
    if let Some(line) = set.design.rivets.as_ref().filter(|_| rivets > 0) {
        let numbers = match (line.rivets.first(), line.rivets.last()) {
            _ if set.design.kept => rivets_made(set),
            (Some(a), Some(b)) => format!("{}–{}", a.id, b.id),
            _ => String::new(),
        };
        let mut row = vec![
            match &line.rows {
                Some(rows) => format!("rivet holes on the flange, {} rows", rows.number),
                None => "rivet holes on the flange".into(),
            },
            numbers,
            set.figures.size_short(&line.hole),
            rivets.to_string(),
        ];
        // They are drilled through the barrel or to the angles of their table, and never counted as pops of the flat.
        row.extend(cells(Beginning::default()));
        table.row(row);
    }
    table
}

/// Who counted, and when.
fn signatures(set: &Set<'_>) -> Table {
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
    let all = Beginning::of_plate(set);
    let what = match (all.cut, all.pops()) {
        (0, _) => "pops",
        (_, 0) => "holes as cut",
        _ => "cut holes and pops",
    };
    table.row(vec![format!("first count of {what}")]);
    table.row(vec![format!("second count of {what}")]);
    if all.piloted > 0 {
        table.row(vec!["count of pilots".into()]);
    }
    table.row(vec!["count of finished holes".into()]);
    table
}

/// A line for each run of the nest; none where no nest lies in lines.
fn by_line(set: &Set<'_>) -> Option<Table> {
    let runs = runs(&set.design.as_made_now());
    let head = match runs.first()?.way {
        crate::design::LineWay::Columns => "COLUMN",
        crate::design::LineWay::Rows => "ROW",
    };
    let in_runs = |group: usize| runs.iter().any(|run| run.group == group);
    let holes = 0..set.design.holes.len();
    let nest = holes.filter(|&hole| in_runs(set.design.holes[hole].group));
    let counted = Counted::wanted(Beginning::of(set, nest));
    let mut columns = vec![
        ("LINE", 18.0, Hang::Middle),
        ("NUMBERS", 34.0, Hang::Start),
        ("CALLED", 17.0, Hang::Middle),
    ];
    columns.extend(counted.iter().map(|c| c.head()));
    let mut table = Table::new(&format!("COUNT OF THE NEST BY {head}"), &columns).filled_in();
    for run in &runs {
        let numbers = match run.count {
            1 => run.ids.0.clone(),
            _ => format!("{}–{}", run.ids.0, run.ids.1),
        };
        table.row(vec![run.line.clone(), numbers, run.count.to_string()]);
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
