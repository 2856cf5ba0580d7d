//! Sheet: tube record. A line for every tube and flue by the number of its hole: what it is made of, how long, who expanded it.

use super::Hang;
use super::board::Board;
use super::flow::Block;
use super::hole_record::LISTED;
use super::letter_size::TABLE;
use super::notes::Notes;
use super::pages::pages;
use super::set::Set;
use super::signed::signed_table;
use super::table::Table;
use crate::design::{TubeLength, tube_length};

/// Tubes for which paper has a line each; of more, the works keeps its own list.
const MOST_ON_PAPER: usize = 600;

/// The record over as many sheets as it needs; none where there is no tube, or more of them than paper holds.
pub fn tube_record(set: &Set<'_>) -> Vec<Board> {
    let table = tubes(set);
    if table.rows.is_empty() || table.rows.len() > MOST_ON_PAPER {
        return Vec::new();
    }
    let blocks = vec![
        Block::Notes(how(set), 0),
        Block::Table(table, 0),
        Block::Table(signed_table(), 0),
    ];
    pages(set, "tube-record", "Tube record", 3, blocks)
}

fn how(set: &Set<'_>) -> Notes {
    let mut steps = vec![
        "A TUBE GOES BY THE NUMBER OF ITS HOLE. LENGTH AS CUT, FROM END TO END.".to_string(),
        "HOLE THERE: THE SAME TUBE'S HOLE IN THE OTHER PLATE; ITS HOLE HERE IS IN THE RECORD OF HOLES."
            .into(),
        "DONE BY: WHO EXPANDED IT. BEAD: TURNED OVER, OR LEFT.".into(),
        "ORDER: 1 FOR THE TUBE EXPANDED FIRST. WRITE UNDER REMARKS WHICH TUBES WERE EXPANDED AGAIN."
            .into(),
    ];
    let written = &set.spec.written;
    for nest in &written.tubes {
        if let TubeLength::Known(length) = tube_length(nest, &written.plate) {
            steps.push(format!(
                "LENGTH CALLED FOR, {}: {}.",
                nest.name.to_uppercase(),
                set.figures.table(length)
            ));
        }
    }
    Notes::new("HOW TO FILL IN", steps).at_height(TABLE)
}

fn tubes(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "TUBES",
        &[
            ("NO.", 12.0, Hang::Start),
            ("LENGTH", 17.0, Hang::Middle),
            ("HEAT, LOT", 17.0, Hang::Middle),
            ("HOLE THERE", 15.0, Hang::Middle),
            ("DONE BY", 13.0, Hang::Middle),
            ("ORDER", 14.0, Hang::Middle),
            ("BEAD", 12.0, Hang::Middle),
            ("REMARKS", 21.0, Hang::Start),
        ],
    );
    table.least_row = LISTED;
    let groups = &set.design.groups;
    let nests = set.spec.written.tubes.iter().enumerate();
    let standing: Vec<String> = nests
        .filter(|(_, nest)| nest.renewed == Some(false))
        .map(|(i, _)| format!("tubes[{i}]"))
        .collect();
    for hole in &set.design.holes {
        let group = &groups[hole.group];
        if group.purpose.takes_a_tube() && !standing.contains(&group.path) {
            table.row(vec![hole.id.clone()]);
        }
    }
    table
}

#[cfg(test)]
mod tests {
    use super::super::sample_jobs::{jobs, with_set};
    use super::*;

    /// Every tube hole has one line, and nothing but its number is filled in.
    #[test]
    fn holds_a_line_for_every_tube() {
        for job in jobs() {
            with_set(&job, |set| {
                let groups = set.design.groups.iter().enumerate();
                let off: usize = groups
                    .filter(|(_, group)| group.purpose.takes_a_tube())
                    .map(|(i, _)| set.number_off(i))
                    .sum();
                let table = tubes(set);
                assert_eq!(table.rows.len(), off, "{job}");
                assert!(
                    table
                        .rows
                        .iter()
                        .all(|row| row[1..].iter().all(String::is_empty))
                );
            });
        }
    }
}
