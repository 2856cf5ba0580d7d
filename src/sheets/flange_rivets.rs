//! Sheet: flange and rivets. Section of the flange, rivet circle, flange unrolled, and every rivet with its angle and runs.

use super::board::{Board, PaperBox};
use super::flange_detail::put_flange_detail;
use super::flange_strip::put_flange_strip;
use super::flow::{Block, flow, flow_in_columns};
use super::letter_size::TABLE;
use super::pages::{in_equal_columns, pages};
use super::paper_size::is_upright;
use super::rivet_plan::put_rivet_plan;
use super::rivet_tables::{rivet_figures, rivet_table};
use super::set::Set;
use super::standing_notes::flange_notes;
use super::table::Table;
use crate::design::RivetLine;

/// Width of the figures and notes of the line, mm.
const FIGURES: f64 = 88.0;
/// Clear strip between columns, mm.
const GAP: f64 = 6.0;
/// Least width of the views, mm.
const LEAST_VIEWS: f64 = 128.0;
/// Columns are evened out by steps of this, mm.
const STEP: f64 = 4.5;
/// Height of the strip at the foot, mm.
const STRIP: f64 = 25.0;
/// Shares of the height that the section may take on upright paper.
const UPRIGHT_SECTIONS: [f64; 4] = [0.6, 0.55, 0.5, 0.45];
/// The same where rows ask for a deeper flange and are to be told apart, mm.
const STRIP_OF_ROWS: f64 = 36.0;
/// Clear strip at the head, below the centring mark, mm.
const CENTRING: f64 = 3.0;

/// Flange and rivets; none where the plate has no flange.
///
/// The rivets stand beside the views where there is room for every one of them; else the views grow, and the rivets have
/// sheets of their own in columns of one length.
pub fn flange_and_rivets(set: &Set<'_>) -> Vec<Board> {
    if set.design.flange.is_none() {
        return Vec::new();
    }
    let Some(line) = &set.design.rivets else {
        return flange_beside(set, None, Vec::new(), 1, FIGURES).0;
    };
    let table = rivet_table(set, line);
    let wide = table.width();
    let beside = vec![
        Block::Table(rivet_figures(set, line), 0),
        Block::Notes(flange_notes(set).at_height(TABLE), 0),
    ];
    let mut with_rivets = beside.clone();
    with_rivets.push(Block::Table(table.clone(), 0));
    if is_upright(set.paper) {
        return upright(set, line, beside, &table);
    }
    let most = ((set.room().width() - LEAST_VIEWS) / (wide + GAP)) as usize;
    let enough = (1..=most).find(|&columns| {
        let room = tables_room(set, columns, wide);
        let mut trial = set.board("", "");
        flow_in_columns(&mut trial, &room, columns, GAP, with_rivets.clone()).is_empty()
    });
    if let Some(columns) = enough {
        return flange_beside(set, Some(line), with_rivets, columns, wide).0;
    }
    let (mut boards, rest) = flange_beside(set, Some(line), beside, 1, FIGURES);
    boards.extend(pages(set, "flange-rivets", "Flange and rivets", 2, rest));
    let across = ((set.room().width() + GAP) / (wide + GAP)) as usize;
    boards.extend(in_equal_columns(set, ("rivets", "Rivets"), &table, across));
    boards
}

/// On upright paper: the section with its words, the rivet circle with the flange unrolled, and the rivets, a sheet each.
fn upright(set: &Set<'_>, line: &RivetLine, words: Vec<Block>, rivets: &Table) -> Vec<Board> {
    const NAME: (&str, &str) = ("flange-rivets", "Flange and rivets");
    let mut section = set.board(NAME.0, NAME.1);
    let room = section.room;
    // The section gives way to its words before they go over to another sheet.
    let below = |share: f64| set.shared(&room, 0.0, GAP, share);
    let holds = |share: &f64| {
        let mut trial = section.clone();
        flow(&mut trial, &below(*share).1, words.clone())
            .0
            .is_empty()
    };
    let share = UPRIGHT_SECTIONS.into_iter().find(holds);
    let (view, below) = below(share.unwrap_or(UPRIGHT_SECTIONS[0]));
    if let Some(scale) = put_flange_detail(&mut section, set, &view) {
        section.scale_words = scale;
    }
    let rest = flow(&mut section, &below, words).0;
    let mut circle = set.board(NAME.0, NAME.1);
    let (mut plan, strip) = set.shared(
        &room,
        0.0,
        GAP,
        1.0 - (strip_height(set) + GAP) / room.height(),
    );
    plan.top += CENTRING;
    put_rivet_plan(&mut circle, set, line, &plan);
    put_flange_strip(&mut circle, set, line, &strip);
    let mut boards = vec![section, circle];
    boards.extend(pages(set, NAME.0, NAME.1, 2, rest));
    let across = ((room.width() + GAP) / (rivets.width() + GAP)) as usize;
    boards.extend(in_equal_columns(set, ("rivets", "Rivets"), rivets, across));
    boards
}

fn strip_height(set: &Set<'_>) -> f64 {
    match set
        .design
        .rivets
        .as_ref()
        .and_then(|line| line.rows.as_ref())
    {
        Some(_) => STRIP_OF_ROWS,
        None => STRIP,
    }
}

/// The box of so many columns of tables, at the right.
fn tables_room(set: &Set<'_>, columns: usize, column: f64) -> PaperBox {
    let room = set.room();
    let wide = columns as f64 * (column + GAP) - GAP;
    PaperBox::new(
        room.right - wide,
        room.top + CENTRING,
        room.right,
        room.bottom - strip_height(set),
    )
}

/// The box cut off where its columns still hold everything, so that they end alike; the same box where they cannot.
fn as_low_as_needed(set: &Set<'_>, room: &PaperBox, columns: usize, blocks: &[Block]) -> PaperBox {
    let holds = |bottom: f64| {
        let lower = PaperBox { bottom, ..*room };
        let mut trial = set.board("", "");
        flow_in_columns(&mut trial, &lower, columns, GAP, blocks.to_vec()).is_empty()
    };
    let steps = (room.height() / STEP) as usize;
    let bottoms = (0..steps).map(|i| room.bottom - i as f64 * STEP);
    let lowest = bottoms.take_while(|&bottom| holds(bottom)).last();
    PaperBox {
        bottom: lowest.unwrap_or(room.bottom),
        ..*room
    }
}

/// The views of the flange, and so many columns of blocks beside them; tells the blocks that found no room.
fn flange_beside(
    set: &Set<'_>,
    line: Option<&RivetLine>,
    mut blocks: Vec<Block>,
    columns: usize,
    column: f64,
) -> (Vec<Board>, Vec<Block>) {
    let mut board = set.board("flange-rivets", "Flange and rivets");
    let room = board.room;
    let tables = tables_room(set, columns, column);
    let views = PaperBox::new(
        room.left,
        room.top,
        tables.left - GAP,
        room.bottom - strip_height(set),
    );
    let detail_foot = views.top + views.height() * 0.53;
    let detail = PaperBox::new(views.left, views.top, views.right, detail_foot);
    if let Some(scale) = put_flange_detail(&mut board, set, &detail) {
        board.scale_words = scale;
    }
    match line {
        Some(line) => {
            let plan = PaperBox::new(views.left, detail_foot + 3.0, views.right, views.bottom);
            put_rivet_plan(&mut board, set, line, &plan);
            let strip = PaperBox::new(
                room.left,
                room.bottom - strip_height(set),
                room.right,
                room.bottom,
            );
            put_flange_strip(&mut board, set, line, &strip);
        }
        None => blocks.push(Block::Notes(flange_notes(set), 0)),
    }
    let tables = as_low_as_needed(set, &tables, columns, &blocks);
    let rest = flow_in_columns(&mut board, &tables, columns, GAP, blocks);
    (vec![board], rest)
}
