//! The hole schedule: a line for each group, and one for the rivets.

use super::Hang;
use super::kept::rivets_made;
use super::mouth_detail::mouth_words;
use super::set::Set;
use super::symbols::signs_of;
use super::table::{Column, SIGNED_ROW, Table};
use super::tapped_words::{finish_short, stages_in_line, thread_remark};
use crate::design::RivetLine;
use crate::spec::RivetHow;

/// Every group with its numbers, number off, finished size, what size it is now and how it is made.
pub fn hole_schedule(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "HOLE SCHEDULE",
        &[
            ("NUMBERS", 18.0, Hang::Start),
            ("HOLES", 22.0, Hang::Start),
            ("OFF", 9.0, Hang::Middle),
            ("FINISH", 19.0, Hang::Middle),
            ("STAGES; REMARKS", 39.0, Hang::Start),
        ],
    );
    let nests = set
        .design
        .groups
        .iter()
        .filter(|g| g.purpose.takes_a_tube());
    let signed = nests.count() > 1;
    if signed {
        table.columns.insert(0, sign_column());
        table.least_row = SIGNED_ROW;
    }
    let signs = signs_of(set.design);
    for (i, group) in set.design.groups.iter().enumerate() {
        let largest = group.largest.as_ref().map_or(String::new(), |l| {
            format!(", {} at most", set.figures.size_short(l))
        });
        table
            .signs
            .push((signed && group.purpose.takes_a_tube()).then_some(signs[i]));
        table.rows.push(vec![
            set.numbers(i),
            group.name.clone(),
            set.number_off(i).to_string(),
            match set.design.all_tapped(i) {
                Some(_) => finish_short(set, i),
                None => format!("{}{largest}", set.figures.size(&group.finish)),
            },
            [
                what_is_done(set, i),
                mouth_words(set, group.mouth.as_ref()),
                group.remarks.clone(),
            ]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join("; "),
        ]);
    }
    if let Some(line) = &set.design.rivets {
        let numbers = match (line.rivets.first(), line.rivets.last()) {
            (Some(a), Some(b)) => format!("{}–{}", a.id, b.id),
            _ => String::new(),
        };
        let how = match line.how {
            RivetHow::Drawn => "to drawing",
            RivetHow::InPlace => "IN PLACE",
        };
        table.rows.push(vec![
            numbers,
            format!("flange rivets {}", set.figures.size_short(&line.rivet)),
            line.rivets.len().to_string(),
            set.figures.size(&line.hole),
            rivet_remarks(set, line, how),
        ]);
    }
    if signed {
        for row in &mut table.rows {
            row.insert(0, String::new());
        }
    }
    table
}

/// The stages of a group; in a plate that is kept only of what is new in it.
fn what_is_done(set: &Set<'_>, index: usize) -> Option<String> {
    let words = [thread_remark(set, index), stages_in_line(set, index)];
    let words: Vec<String> = words.into_iter().flatten().collect();
    let done = (!words.is_empty()).then(|| words.join("; "));
    if !set.design.kept {
        return done;
    }
    let done = |new: String| match &done {
        Some(words) => format!("{new}: {words}"),
        None => new,
    };
    let made = set.made_off(index);
    Some(match set.number_off(index) {
        _ if made == 0 => "STAND".into(),
        off if made == off => done("new".into()),
        _ => format!(
            "{}; the rest STAND",
            done(format!("new {}", set.numbers_made(index)))
        ),
    })
}

fn rivet_remarks(set: &Set<'_>, line: &RivetLine, how: &str) -> String {
    let rows = line.rows.as_ref().map_or(String::new(), |rows| {
        format!("{} rows, {}, ", rows.number, rows.arrangement.name())
    });
    let made = set.design.rivets_made();
    if made == line.rivets.len() {
        return format!("{rows}{how}");
    }
    match made {
        0 => format!("{rows}STAND"),
        _ => format!("{rows}new {}, {how}; the rest STAND", rivets_made(set)),
    }
}

/// Where more than one nest stands in the plate, each bears a sign here and on the face; other holes are told by the letter
/// of their numbers.
fn sign_column() -> Column {
    Column {
        head: String::new(),
        width: 5.5,
        hang: Hang::Middle,
    }
}
