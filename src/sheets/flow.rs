//! Blocks of tables, notes and cautions put down one under another, over as many columns and sheets as they need.

use super::at;
use super::board::{Board, PaperBox};
use super::letter_size::TABLE;
use super::notes::{Notes, caution_height, put_caution};
use super::table::Table;

/// From one block to the next, mm.
const BETWEEN: f64 = 3.5;
/// The same where a sheet is saved by it, mm.
const CLOSE: f64 = 1.2;
/// A table of so few rows goes over in one piece: who measured and who saw it are not to be torn apart.
const FEW_ROWS: usize = 3;
/// Lists no higher than this are kept in one piece, mm.
const KEPT_WHOLE: f64 = 60.0;

/// One block.
#[derive(Clone, Debug)]
pub enum Block {
    /// A table, from a row on.
    Table(Table, usize),
    /// Notes, from a note on.
    Notes(Notes, usize),
    /// A boxed caution and the height of its lettering.
    Caution(String, f64),
    /// What follows begins the next column; nothing at the head of one.
    NextColumn,
}

/// Puts blocks down in a box from the top; tells what did not fit, in order, and the y reached.
pub fn flow(board: &mut Board, room: &PaperBox, blocks: Vec<Block>) -> (Vec<Block>, f64) {
    flow_apart(board, room, BETWEEN, blocks)
}

/// The same, everything closer together, and notes as small as tables, where that saves a sheet for the last few lines.
pub fn flow_or_close_up(
    board: &mut Board,
    room: &PaperBox,
    blocks: Vec<Block>,
) -> (Vec<Block>, f64) {
    let small = blocks.iter().cloned().map(|block| match block {
        Block::Notes(notes, from) => Block::Notes(notes.at_height(TABLE), from),
        other => other,
    });
    let small = small.collect();
    for (between, blocks) in [(BETWEEN, blocks.clone()), (CLOSE, small)] {
        let mut trial = board.clone();
        let (left_over, reached) = flow_apart(&mut trial, room, between, blocks);
        if left_over.is_empty() {
            *board = trial;
            return (left_over, reached);
        }
    }
    flow(board, room, blocks)
}

fn flow_apart(
    board: &mut Board,
    room: &PaperBox,
    between: f64,
    blocks: Vec<Block>,
) -> (Vec<Block>, f64) {
    let mut y = room.top;
    let mut left_over = Vec::new();
    let mut ended = false;
    for block in blocks {
        if ended || !left_over.is_empty() {
            left_over.push(block);
            continue;
        }
        let rest = PaperBox::new(room.left, y, room.right, room.bottom);
        match block {
            Block::Table(table, from) => {
                let table = table.widened_to(room.width());
                let is_torn = from == 0 && table.full_height() > rest.height();
                if is_torn && y > room.top && table.rows.len() <= FEW_ROWS {
                    left_over.push(Block::Table(table, from));
                    continue;
                }
                let (next, foot) = table.put(board, &rest, from);
                if next > from || table.rows.is_empty() {
                    y = foot + between;
                }
                if next < table.rows.len() {
                    left_over.push(Block::Table(table, next));
                }
            }
            Block::Notes(notes, 0)
                if y > room.top && is_kept_whole(&notes, room.width(), rest.height()) =>
            {
                left_over.push(Block::Notes(notes, 0));
            }
            Block::Notes(notes, from) => {
                let (next, foot) = notes.put(board, &rest, from);
                if next > from {
                    y = foot + between;
                }
                if next < notes.notes.len() {
                    left_over.push(Block::Notes(notes, next));
                }
            }
            Block::NextColumn => ended = y > room.top,
            Block::Caution(words, height) => {
                if caution_height(room.width(), &words, height) <= rest.height() {
                    y = put_caution(board, at(room.left, y), room.width(), &words, height)
                        + between;
                } else {
                    left_over.push(Block::Caution(words, height));
                }
            }
        }
    }
    (left_over, y)
}

/// Whether a short list that does not fit goes over in one piece: the working of a figure is not to be torn in two. Numbered
/// notes may be.
fn is_kept_whole(notes: &Notes, width: f64, room: f64) -> bool {
    let high = notes.full_height(width);
    !notes.numbered && high > room && high <= KEPT_WHOLE
}

/// Puts blocks down over so many columns of a box, side by side; tells what did not fit.
pub fn flow_in_columns(
    board: &mut Board,
    room: &PaperBox,
    columns: usize,
    gap: f64,
    mut blocks: Vec<Block>,
) -> Vec<Block> {
    let wide = (room.width() - gap * (columns as f64 - 1.0)) / columns as f64;
    for i in 0..columns {
        if blocks.is_empty() {
            break;
        }
        let left = room.left + i as f64 * (wide + gap);
        let column = PaperBox::new(left, room.top, left + wide, room.bottom);
        blocks = flow(board, &column, blocks).0;
    }
    blocks
}
