//! Records of finished holes and of rivets, a line for each number, to be filled in at the plate.

use super::Hang;
use super::set::Set;
use super::table::Table;
use super::tapped_words::hole_short;

/// Holes for which paper has a line each: a dozen sheets. The record as a table of the pack has a line for every hole there is.
pub const MOST_ON_PAPER: usize = 1_200;

/// Height of a line of a long list, mm: a figure or initials are written in each cell, never words on two lines.
pub const LISTED: f64 = 7.5;

/// Whether paper has a line for every hole, and not only for those that depart from their group.
pub fn is_whole(set: &Set<'_>) -> bool {
    set.design.holes.len() <= MOST_ON_PAPER
}

/// Every hole in the flat by its number, with the finished size called for and blanks for what is measured; of more than
/// [`MOST_ON_PAPER`], those that depart from their group. In a plate that is kept the new holes stand apart from those that are only
/// measured.
pub fn hole_records(set: &Set<'_>) -> impl Iterator<Item = Table> {
    let records = match set.design.kept {
        false => vec![hole_record(set, ("FINISHED HOLES", "CALLED"), true)],
        true => vec![
            hole_record(set, ("NEW HOLES, FINISHED", "CALLED"), true),
            hole_record(
                set,
                ("HOLES THAT STAND: MEASURED, NOT MADE", "DRAWN"),
                false,
            ),
        ],
    };
    records.into_iter().filter(|table| !table.rows.is_empty())
}

fn hole_record(set: &Set<'_>, (title, size): (&str, &str), made: bool) -> Table {
    let mut table = Table::new(
        title,
        &[
            ("NO.", 15.0, Hang::Start),
            (size, 22.0, Hang::Middle),
            ("FIRST WAY", 20.0, Hang::Middle),
            ("ACROSS IT", 20.0, Hang::Middle),
            ("OVAL", 15.0, Hang::Middle),
            ("SEAT", 15.0, Hang::Middle),
            ("BY", 13.0, Hang::Middle),
        ],
    );
    table.least_row = LISTED;
    let whole = is_whole(set);
    let holes = set.design.holes.iter().enumerate();
    let holes = holes.filter(|(i, _)| set.design.is_made(*i) == made);
    for (index, hole) in holes.filter(|(_, hole)| whole || hole.exception.is_some()) {
        table.row(vec![hole.id.clone(), hole_short(set, index)]);
        if hole.exception.is_some() {
            table.loud.push(table.rows.len() - 1);
        }
    }
    table
}

/// Every rivet that is closed, by its number; none where there is none.
pub fn rivet_record(set: &Set<'_>) -> Option<Table> {
    let line = set.design.rivets.as_ref()?;
    if set.design.rivets_made() == 0 {
        return None;
    }
    let columns = match line.rows {
        None => vec![
            ("NO.", 13.0, Hang::Start),
            ("CALLED", 15.0, Hang::Middle),
            ("REAMED", 16.0, Hang::Middle),
            ("OUT BY", 14.0, Hang::Middle),
            ("LENGTH", 15.0, Hang::Middle),
            ("CLOSED BY", 16.0, Hang::Middle),
            ("SOUND", 14.0, Hang::Middle),
            ("CAULKED", 17.0, Hang::Middle),
        ],
        // As wide as the other, with room for the row.
        Some(_) => vec![
            ("NO.", 11.0, Hang::Start),
            ("ROW", 10.0, Hang::Middle),
            ("CALLED", 15.0, Hang::Middle),
            ("REAMED", 15.0, Hang::Middle),
            ("OUT BY", 10.0, Hang::Middle),
            ("LENGTH", 15.0, Hang::Middle),
            ("CLOSED BY", 14.0, Hang::Middle),
            ("SOUND", 13.0, Hang::Middle),
            ("CAULKED", 17.0, Hang::Middle),
        ],
    };
    let mut table = Table::new("RIVETS", &columns);
    table.least_row = LISTED;
    let rivets = line.rivets.iter().enumerate();
    for (_, rivet) in rivets.filter(|(i, _)| set.design.rivet_is_made(*i)) {
        let row = line.rows.iter().map(|_| rivet.row.to_string());
        let cells = [rivet.id.clone()].into_iter().chain(row);
        table.row(cells.chain([set.figures.size_short(&line.hole)]).collect());
    }
    Some(table)
}

/// Least metal of each kind as designed, and blanks for the worst that is found.
pub fn ligament_record(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "WORST LIGAMENT AS MADE, WORKED OUT AGAIN FROM THE READINGS",
        &[
            ("BETWEEN", 40.0, Hang::Start),
            ("DESIGNED LEAST", 34.0, Hang::End),
            ("AT", 26.0, Hang::Start),
            ("AS MADE", 26.0, Hang::Middle),
            ("AT", 26.0, Hang::Middle),
            ("BY", 18.0, Hang::Middle),
        ],
    )
    .filled_in();
    for least in &set.design.least_ligaments {
        let (a, b) = least.ligament.holes;
        let larger = set.design.holes[a]
            .finish
            .value()
            .max(set.design.holes[b].finish.value());
        // Holes further apart than the larger of them is wide are no neighbours.
        if least.ligament.metal > larger {
            continue;
        }
        table.row(vec![
            format!("{} and {}", least.between.0.name(), least.between.1.name()),
            set.figures.table(least.ligament.metal),
            format!("{}–{}", set.design.holes[a].id, set.design.holes[b].id),
        ]);
    }
    table
}
