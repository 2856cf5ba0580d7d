//! Numbers of tables, through the whole set: a table that runs on keeps its number.
//!
//! A table is put down before it is known what stands before it, so its title leaves room for a number, which is filled in when
//! all boards are there.

use super::board::Board;
use super::{Mark, Text};

/// What stands before a title until its number is known: as wide as any number that a set comes to.
const TO_COME: &str = "TABLE 00: ";

/// The same before the title of a table that runs on.
const KEPT: &str = "TABLE 0O: ";

/// The title of a table, or of what runs on of it, with room for its number.
pub fn title_to_number(title: &str, runs_on: bool) -> String {
    match runs_on {
        false => format!("{TO_COME}{title}"),
        true => format!("{KEPT}{title} (CONTINUED)"),
    }
}

/// Numbers every table, in the order of the boards and of the marks on each.
pub fn number_tables(boards: &mut [Board]) {
    // The first line of each title: a long one goes over several.
    let mut titles: Vec<String> = Vec::new();
    for board in boards {
        for text in board.marks.iter_mut().filter_map(lettering) {
            let (title, number) = if let Some(title) = text.words.strip_prefix(TO_COME) {
                titles.push(title.to_string());
                (title, titles.len())
            } else if let Some(title) = text.words.strip_prefix(KEPT) {
                let begun = |first: &String| title.starts_with(first) || first.starts_with(title);
                (title, titles.iter().rposition(begun).unwrap_or(0) + 1)
            } else {
                continue;
            };
            text.words = format!("TABLE {number}: {title}");
        }
    }
}

fn lettering(mark: &mut Mark) -> Option<&mut Text> {
    match mark {
        Mark::Text(text) => Some(text),
        _ => None,
    }
}
