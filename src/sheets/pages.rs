//! Blocks over as many sheets as they need, in columns.

use super::board::Board;
use super::flow::{Block, flow_in_columns};
use super::set::Set;

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

/// How far the first block has been put down.
fn down(blocks: &[Block]) -> usize {
    match blocks.first() {
        Some(Block::Table(_, next) | Block::Notes(_, next)) => *next,
        Some(Block::Caution(..) | Block::NextColumn) | None => 0,
    }
}
