//! Blocks over as many sheets as they need, in columns.

use super::board::{Board, PaperBox};
use super::flow::{Block, flow_in_columns};
use super::paper_size::{in_a4, is_upright};
use super::set::Set;
use super::table::Table;

/// Clear strip between columns, mm.
pub const GAP: f64 = 8.0;

/// Clear strip at the head, below the centring mark, mm.
const CENTRING: f64 = 3.5;

/// More sheets than these are left as they come: one nearly empty among many is no waste.
const MOST_EVENED: usize = 4;
/// How often the height is halved: to a few millimetres.
const EVENINGS: usize = 5;
/// A last sheet filled to less than this share is nearly empty.
const LEAST_FILLED: f64 = 0.28;

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

/// The same behind sheets already drawn, on A3 or A4 as takes less paper. Columns are counted on A3; A4 holds half as many,
/// rounded down so that nothing is squeezed.
pub fn continued(
    set: &Set<'_>,
    mut boards: Vec<Board>,
    name: (&str, &str),
    columns: usize,
    blocks: Vec<Block>,
) -> Vec<Board> {
    let mut drawn = least_paper(set, |on| {
        let columns = match is_upright(on.paper) {
            true => (columns / 2).max(1),
            false => columns,
        };
        evened(on, name, columns, blocks.clone())
    });
    boards.append(&mut drawn);
    boards
}

/// Sheets of words on A3 or A4, whichever takes less paper; of equally much, the fewer sheets.
pub fn least_paper(set: &Set<'_>, draw: impl Fn(&Set<'_>) -> Vec<Board>) -> Vec<Board> {
    let papers = set.papers_of_words().iter();
    let drawn = papers.map(|&paper| draw(&set.on(paper)));
    drawn
        .min_by_key(|boards| paper_of(boards))
        .unwrap_or_default()
}

/// How much paper, in sheets of A4, and on how many sheets; of what runs over its room, more than there is.
fn paper_of(boards: &[Board]) -> (usize, usize) {
    match boards.iter().all(Board::is_within_room) {
        true => (boards.iter().map(|b| in_a4(b.paper)).sum(), boards.len()),
        false => (usize::MAX, 0),
    }
}

/// Sheets of one paper, each filled down to its foot. Where that leaves the last nearly empty, they are filled a little less, so that a
/// quarter of it is used.
fn evened(set: &Set<'_>, name: (&str, &str), columns: usize, mut blocks: Vec<Block>) -> Vec<Board> {
    if columns == 1 {
        blocks.retain(|block| !matches!(block, Block::NextColumn));
    }
    let full = set.room().height() - CENTRING;
    let (mut drawn, _) = filled_to(set, name, columns, full, blocks.clone());
    // One table on one sheet is shared out alike over its columns.
    let alone = drawn.len() == 1 && columns > 1 && blocks.len() == 1;
    let few = (2..=MOST_EVENED).contains(&drawn.len());
    if !(alone || few && last_filled(&drawn) < LEAST_FILLED) {
        return drawn;
    }
    let (mut short, mut long) = (full / 2.0, full);
    for _ in 0..EVENINGS {
        let height = (short + long) / 2.0;
        let (trial, all) = filled_to(set, name, columns, height, blocks.clone());
        let holds = all && trial.len() == drawn.len();
        let enough = holds && last_filled(&trial) >= LEAST_FILLED;
        if holds && (alone || enough) {
            drawn = trial;
        }
        // Columns of one table are as short as they may be; else the foot is as low as leaves the last sheet its share.
        match holds && (alone || !enough) {
            true => long = height,
            false => short = height,
        }
    }
    drawn
}

/// How much of the height of the last sheet is taken, as a share.
fn last_filled(boards: &[Board]) -> f64 {
    let last = boards.last();
    let taken = last.and_then(|board| Some((board.extent(|_| true)?, board.room)));
    taken.map_or(1.0, |(all, room)| (all.bottom - room.top) / room.height())
}

/// Sheets filled down to a height, mm, and whether every block is down.
fn filled_to(
    set: &Set<'_>,
    (name, title): (&str, &str),
    columns: usize,
    height: f64,
    mut blocks: Vec<Block>,
) -> (Vec<Board>, bool) {
    let mut boards = Vec::new();
    while !blocks.is_empty() {
        let mut board = set.board(name, title);
        // The centring mark reaches into the middle of the head, where a column may stand.
        let mut room = board.room;
        room.top += CENTRING;
        room.bottom = room.top + height;
        let (blocks_before, rows_before) = (blocks.len(), down(&blocks));
        blocks = flow_in_columns(&mut board, &room, columns, GAP, blocks);
        let stuck = blocks.len() == blocks_before && down(&blocks) == rows_before;
        boards.push(board);
        if stuck {
            // A block taller than a whole sheet cannot be put down at all; no sheet of words is so long.
            return (boards, false);
        }
    }
    (boards, true)
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
