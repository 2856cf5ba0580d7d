//! On which sheets the details and the list of parts stand, said where their letters and numbers point to them.

use super::board::{Board, PaperBox};
use super::clear::is_clear;
use super::letter_size::{LINE_PITCH, TABLE};
use super::{Hang, at, face};

/// Clear paper round the words, mm.
const CLEAR: f64 = 1.2;
/// From one place that is tried to the next, mm.
const STEP: f64 = 3.0;

/// "SHEET 4", "SHEETS 4 AND 5", "SHEETS 4 TO 6"; the numbers follow one another.
pub fn sheets(first: usize, count: usize) -> String {
    match count {
        0 | 1 => format!("SHEET {first}"),
        2 => format!("SHEETS {first} AND {}", first + 1),
        _ => format!("SHEETS {first} TO {}", first + count - 1),
    }
}

/// Puts lines of words on a sheet as low as they go beneath its views, from the left; left out where no place is clear.
pub fn put_reference(board: &mut Board, lines: &[String]) {
    let wide = lines.iter().map(|line| face::width(line, TABLE, false));
    let wide = wide.fold(0.0, f64::max);
    let high = (lines.len() as f64 - 1.0) * TABLE * LINE_PITCH + TABLE;
    let room = board.room;
    let (across, up) = (
        ((room.width() - wide) / STEP).max(0.0) as u32,
        ((room.height() - high) / STEP).max(0.0) as u32,
    );
    let places = (0..=up).flat_map(|row| (0..=across).map(move |column| (row, column)));
    let boxes = places.map(|(row, column)| {
        let bottom = room.bottom - 2.0 - STEP * f64::from(row);
        let left = room.left + STEP * f64::from(column);
        PaperBox::new(left, bottom - high, left + wide, bottom)
    });
    let free = boxes.into_iter().find(|b| is_clear(board, b, CLEAR));
    if let Some(b) = free {
        for (i, line) in lines.iter().enumerate() {
            let base = b.top + TABLE + i as f64 * TABLE * LINE_PITCH;
            board.text(at(b.left, base), line, TABLE, Hang::Start);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::Mark;
    use super::super::sample_jobs::{jobs, with_set};
    use super::*;

    #[test]
    fn by_hand_sheets_in_words() {
        assert_eq!(sheets(4, 1), "SHEET 4");
        assert_eq!(sheets(4, 2), "SHEETS 4 AND 5");
        assert_eq!(sheets(4, 3), "SHEETS 4 TO 6");
    }

    /// Where a sheet sends its reader, the details are: the first of the sheets named has the key, and all of them are details.
    #[test]
    fn holds_the_sheets_named_are_those_of_the_details() {
        for job in jobs() {
            with_set(&job, |set| {
                let boards = super::super::boards(set);
                let is_details = |b: &Board| b.name == "details";
                let first = boards.iter().position(is_details).expect("details") + 1;
                let count = boards.iter().filter(|b| is_details(b)).count();
                let words = format!("DETAILS IN LETTERED CIRCLES: {}", sheets(first, count));
                let said = |mark: &Mark| matches!(mark, Mark::Text(t) if t.words == words);
                assert!(boards[0].marks.iter().any(said), "{job}: {words}");
            });
        }
    }
}
