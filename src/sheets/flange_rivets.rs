//! Sheet: flange and rivets. Section of the flange, rivet circle, flange unrolled, and every rivet with its angle and runs.

use super::board::{Board, PaperBox};
use super::flange_detail::put_flange_detail;
use super::flange_strip::put_flange_strip;
use super::flow::{Block, flow_in_columns};
use super::letter_size::TABLE;
use super::rivet_plan::put_rivet_plan;
use super::rivet_tables::{rivet_figures, rivet_table};
use super::set::Set;
use super::standing_notes::flange_notes;

/// Width of a column of tables, mm.
const COLUMN: f64 = 100.0;
/// Height of the strip at the foot, mm.
const STRIP: f64 = 27.0;

/// Flange and rivets over as many sheets as the table needs; none where the plate has no flange.
pub fn flange_and_rivets(set: &Set<'_>) -> Vec<Board> {
    if set.design.flange.is_none() {
        return Vec::new();
    }
    let mut board = set.board("flange-rivets", "Flange and rivets");
    let room = board.room;
    let tables = PaperBox::new(
        room.right - 2.0 * COLUMN - 6.0,
        room.top + 3.0,
        room.right,
        room.bottom - STRIP,
    );
    let views = PaperBox::new(room.left, room.top, tables.left - 6.0, room.bottom - STRIP);
    let detail_foot = views.top + views.height() * 0.53;
    let detail = PaperBox::new(views.left, views.top, views.right, detail_foot);
    if let Some(scale) = put_flange_detail(&mut board, set, &detail) {
        board.scale_words = scale;
    }
    let mut blocks = Vec::new();
    if let Some(line) = &set.design.rivets {
        let plan = PaperBox::new(views.left, detail_foot + 3.0, views.right, views.bottom);
        put_rivet_plan(&mut board, set, line, &plan);
        let strip = PaperBox::new(room.left, room.bottom - STRIP, room.right, room.bottom);
        put_flange_strip(&mut board, set, line, &strip);
        blocks.push(Block::Table(rivet_figures(set, line), 0));
        blocks.push(Block::Notes(flange_notes(set).at_height(TABLE), 0));
        blocks.push(Block::Table(rivet_table(set, line), 0));
    } else {
        blocks.push(Block::Notes(flange_notes(set), 0));
    }
    blocks = flow_in_columns(&mut board, &tables, 2, 6.0, blocks);
    let mut boards = vec![board];
    while !blocks.is_empty() && boards.len() < 20 {
        let mut more = set.board("rivets", "Rivets");
        let mut room = more.room;
        room.top += 3.0;
        blocks = flow_in_columns(&mut more, &room, 3, 8.0, blocks);
        boards.push(more);
    }
    boards
}
