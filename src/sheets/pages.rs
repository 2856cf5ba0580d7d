//! Blocks over as many sheets as they need, in columns.

use super::board::{Board, PaperBox};
use super::flow::{Block, flow_in_columns};
use super::set::Set;
use super::table::Table;

/// Clear strip between columns, mm.
pub const GAP: f64 = 8.0;

/// Clear strip at the head, below the centring mark, mm.
const CENTRING: f64 = 3.5;

/// Sheets of one name and title, each with so many columns, until every block is down.
pub fn pages(
    set: &Set<'_>,
    name: &str,
    title: &str,
    columns: usize,
    blocks: Vec<Block>,
) -> Vec<Board> {
    continued(set, Vec::new(), (name, title), columns, blocks)
}

/// The same behind sheets already drawn.
pub fn continued(
    set: &Set<'_>,
    mut boards: Vec<Board>,
    (name, title): (&str, &str),
    columns: usize,
    mut blocks: Vec<Block>,
) -> Vec<Board> {
    while !blocks.is_empty() {
        let mut board = set.board(name, title);
        // The centring mark reaches into the middle of the head, where a column may stand.
        let mut room = board.room;
        room.top += CENTRING;
        let (blocks_before, rows_before) = (blocks.len(), down(&blocks));
        blocks = flow_in_columns(&mut board, &room, columns, GAP, blocks);
        let stuck = blocks.len() == blocks_before && down(&blocks) == rows_before;
        boards.push(board);
        if stuck {
            // A block taller than a whole sheet cannot be put down at all; no sheet of words is so long.
            break;
        }
    }
    boards
}

/// One table alone over as many sheets as it needs, in columns of one length, each at most so many to a sheet.
pub fn in_equal_columns(
    set: &Set<'_>,
    (name, title): (&str, &str),
    table: &Table,
    across: usize,
) -> Vec<Board> {
    let across = across.max(1);
    let room = set.room();
    let fit = table.rows_that_fit(0, room.height() - CENTRING).max(1);
    let sheets = table.rows.len().div_ceil(fit * across).max(1);
    let rows = table.rows.len().div_ceil(sheets * across).max(1);
    // Columns are as wide as the table, and stand in the middle of the sheet together.
    let wide = across as f64 * (table.width() + GAP) - GAP;
    let aside = ((room.width() - wide) / 2.0).max(0.0);
    let mut boards = Vec::new();
    let mut from = 0;
    while from < table.rows.len() {
        let mut board = set.board(name, title);
        for column in 0..across {
            let left = room.left + aside + column as f64 * (table.width() + GAP);
            let until = (from + rows).min(table.rows.len());
            if from == until {
                break;
            }
            let mut part = table.clone();
            part.rows.truncate(until);
            let place = PaperBox::new(left, room.top + CENTRING, room.right, room.bottom);
            from = part.put(&mut board, &place, from).0;
        }
        boards.push(board);
    }
    boards
}

/// How far the first block has been put down.
fn down(blocks: &[Block]) -> usize {
    match blocks.first() {
        Some(Block::Table(_, next) | Block::Notes(_, next)) => *next,
        Some(Block::Caution(..) | Block::NextColumn) | None => 0,
    }
}
