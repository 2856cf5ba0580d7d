//! Sheet: design check. Every finding with its rule, source and figures; what governs, worked; what was not judged, and why.

use super::board::{Board, PaperBox};
use super::check_figure::{figure_width, put_check_figure};
use super::check_tables::{
    findings_table, not_covered, not_judged_table, notes_table, verdict_legend, working,
};
use super::flow::{Block, flow, flow_in_columns};
use super::letter_size::TABLE;
use super::pages::{GAP, continued};
use super::paper_size::is_upright;
use super::set::Set;

/// Width of the figure's column, mm.
const FIGURE: f64 = 118.0;
/// And where it gains a scale by it, mm.
const WIDEST_FIGURE: f64 = 134.0;

/// Words are begun below the tables where this much height is left, mm.
const LEAST_WORDS: f64 = 25.0;

/// The design check over as many sheets as its tables need.
pub fn design_check(set: &Set<'_>) -> Vec<Board> {
    let mut board = set.board("design-check", "Design check");
    let room = board.room;
    if is_upright(set.paper) {
        return upright(set, board);
    }
    let wide = figure_width(set, FIGURE, WIDEST_FIGURE);
    let figure = PaperBox::new(room.left, room.top, room.left + wide, room.bottom);
    let foot = put_check_figure(&mut board, set, &figure);
    let below = PaperBox::new(figure.left, foot + 3.0, figure.right, figure.bottom);
    let caution = Block::Caution(comparison_words(set), TABLE);
    let legend = Block::Notes(verdict_legend(), 0);
    let mut rest = flow(&mut board, &below, vec![caution, legend]).0;
    let tables = PaperBox::new(figure.right + 6.0, room.top + 3.0, room.right, room.bottom);
    let mut blocks = vec![Block::Table(findings_table(set), 0)];
    blocks.extend(not_judged_table(set).map(|t| Block::Table(t, 0)));
    let (mut blocks, y) = flow(&mut board, &tables, blocks);
    let mut words: Vec<Block> = not_covered()
        .into_iter()
        .map(|n| Block::Notes(n, 0))
        .collect();
    words.append(&mut rest);
    words.extend(working(set).into_iter().map(|n| Block::Notes(n, 0)));
    let mut boards = vec![board];
    let mut below = PaperBox { top: y, ..tables };
    while !blocks.is_empty() && boards.len() < 20 {
        let mut more = set.board("design-check", "Design check");
        let whole = PaperBox {
            top: more.room.top + 3.0,
            ..more.room
        };
        (blocks, below.top) = flow(&mut more, &whole, blocks);
        below = PaperBox {
            top: below.top,
            ..whole
        };
        boards.push(more);
    }
    if let Some(last) = boards.last_mut().filter(|_| below.height() > LEAST_WORDS) {
        words = flow_in_columns(last, &below, 2, GAP, words);
    }
    // Its columns want the half of a whole sheet.
    words.extend(notes_table(set).map(|t| Block::Table(t, 0)));
    continued(
        set,
        boards,
        ("design-check-working", "Design check, notes and working"),
        2,
        words,
    )
}

/// The same on upright paper: the figure, and everything else one under another behind it.
fn upright(set: &Set<'_>, mut board: Board) -> Vec<Board> {
    let room = board.room;
    let figure = PaperBox::new(room.left, room.top, room.left + FIGURE, room.bottom);
    let foot = put_check_figure(&mut board, set, &figure);
    let below = PaperBox {
        top: foot + 3.0,
        ..room
    };
    let mut blocks = vec![
        Block::Caution(comparison_words(set), TABLE),
        Block::Notes(verdict_legend(), 0),
        Block::Table(findings_table(set), 0),
    ];
    blocks.extend(not_judged_table(set).map(|t| Block::Table(t, 0)));
    blocks.extend(not_covered().into_iter().map(|n| Block::Notes(n, 0)));
    blocks.extend(working(set).into_iter().map(|n| Block::Notes(n, 0)));
    blocks.extend(notes_table(set).map(|t| Block::Table(t, 0)));
    let rest = flow(&mut board, &below, blocks).0;
    let name = ("design-check", "Design check");
    continued(set, vec![board], name, 1, rest)
}

/// Against what the design was compared, and with whom acceptance rests.
fn comparison_words(set: &Set<'_>) -> String {
    let rules = &set.spec.written.judged_by;
    let named = if rules.is_empty() {
        "NO NAMED RULES".into()
    } else {
        rules.join("; ").to_uppercase()
    };
    let what = match set.made {
        None => "COMPARED",
        Some(_) => "THE PLATE AS IT WAS MADE, AND NOT THE DESIGN, COMPARED",
    };
    format!(
        "{what} WITH {named} AND THE WORKS' OWN LIMITS. NOTHING HERE APPROVES ANYTHING: ACCEPTANCE RESTS WITH THE INSPECTING BODY."
    )
}
