//! Sheets of a plate as it was made: its face with what is off, what was recorded, and the table of deviations.

use super::as_made_face::{put_key, put_made_face};
use super::as_made_tables::{changed_table, deviation_table, in_numbers, record_notes};
use super::at;
use super::board::Board;
use super::flow::{Block, flow};
use super::letter_size::TABLE;
use super::notes::put_caution;
use super::pages::{GAP, continued};
use super::paper_size::is_upright;
use super::set::{AsMade, Set};
use super::signed::signed_by;
use crate::checks::cautions;

/// Width of the column of words beside the face, mm.
const COLUMN: f64 = 138.0;
/// Share of the height that the face takes on upright paper.
const FACE_ABOVE: f64 = 0.66;
/// Below the centring mark, which reaches into the middle of the head, mm.
const HEAD: f64 = 3.5;

const CAUTION: &str = "THE PLATE AS IT WAS MEASURED, AND NOT THE DESIGN. NOTHING HERE ACCEPTS IT: WHAT IS TO BE DONE ABOUT A DEVIATION RESTS WITH THE WORKS' ENGINEER AND THE INSPECTING BODY.";

/// Who signs for a plate as it was made.
const PEOPLE: [&str; 4] = [
    "measured by",
    "witness",
    "works' engineer",
    "inspecting body",
];

/// The face with its words, then the deviations over as many sheets as they need, and who signs for it all.
pub fn as_made(set: &Set<'_>, made: &AsMade<'_>) -> Vec<Board> {
    let mut board = set.board("as-made", "Plate");
    let room = board.room;
    let (face, mut words) = set.shared(&room, COLUMN, GAP, FACE_ABOVE);
    let view = put_made_face(&mut board, set, made, &face);
    if !is_upright(set.paper) {
        words.top += HEAD;
    }
    words.top = put_caution(
        &mut board,
        at(words.left, words.top),
        words.width(),
        CAUTION,
        TABLE,
    ) + 4.0;
    words.top = put_key(&mut board, set, made, view, &words);
    let mut blocks = vec![Block::Table(in_numbers(set, made), 0)];
    blocks.extend(changed_table(set, made).map(|table| Block::Table(table, 0)));
    blocks.push(Block::Notes(record_notes(set, made), 0));
    let mut left_over = flow(&mut board, &words, blocks).0;
    if !made.deviations.is_empty() {
        left_over.push(Block::Table(deviation_table(set, made), 0));
    }
    left_over.push(Block::Table(signed_by(&PEOPLE), 0));
    // The first two speak of comparing and of what is not judged; the others of cutting and of work in the yard.
    let cautions = cautions().iter().take(2).map(|c| c.to_uppercase());
    left_over.extend(cautions.map(|words| Block::Caution(words, TABLE)));
    continued(set, vec![board], ("deviations", "Deviations"), 1, left_over)
}
