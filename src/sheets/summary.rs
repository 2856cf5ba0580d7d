//! Sheet: summary. Counts and sizes in letters for a chalk board, and what is ordered: tubes, rivets, stays.

use super::Hang;
use super::at;
use super::board::{Board, PaperBox};
use super::face;
use super::flow::{Block, flow};
use super::kept::kept_words;
use super::letter_size::{NOTES, TABLE};
use super::order_tables::{
    fitted_list, masses, piece_order, plate_sizes, rivet_order, stay_list, tube_order,
};
use super::pages::continued;
use super::set::Set;
use super::table::Table;
use super::tapped_words::{finish_short, tap_words};

const NAME: &str = "summary";
const TITLE: &str = "Counts, sizes and orders";
/// Heights that the big letters may have, mm; the largest at which all lines go on the sheet.
const HEIGHTS: [f64; 8] = [20.0, 17.0, 14.0, 12.0, 10.0, 8.0, 7.0, 5.0];
/// From one line of them to the next, as a share of their height: fractions are stacked.
const PITCH: f64 = 2.3;
/// Height of what a line is of, as a share of its figures.
const NAMES: f64 = 0.5;
/// Share of the height that they take at most on upright paper.
const VIEWS_ABOVE: f64 = 0.45;
/// Width of the orders beside them, mm.
const ORDERS: f64 = 168.0;

/// The summary, and a further sheet where its orders run over.
pub fn summary(set: &Set<'_>) -> Vec<Board> {
    let mut board = set.board(NAME, TITLE);
    let room = board.room;
    let (big, mut column) = set.shared(&room, ORDERS, 8.0, VIEWS_ABOVE);
    let foot = put_big_lines(&mut board, &big, &lines(set));
    if column.top > big.top {
        column.top = foot;
    }
    let tables = [
        piece_order(set),
        Some(plate_sizes(set)),
        tube_order(set),
        rivet_order(set),
        stay_list(set),
        fitted_list(set),
        masses(set),
    ];
    let blocks = |height: f64| -> Vec<Block> {
        let kept = kept_words(set).map(|words| Block::Caution(words, NOTES));
        let lettered = |table: &Table| Table {
            height,
            ..table.clone()
        };
        let tables = tables.iter().flatten().map(lettered);
        let tables = tables.map(|table| Block::Table(table, 0));
        kept.into_iter().chain(tables).collect()
    };
    // One page is worth smaller lettering in its tables.
    let mut trial = board.clone();
    let (left_over, _) = flow(&mut trial, &column, blocks(NOTES));
    let rest = match left_over.is_empty() {
        true => {
            board = trial;
            left_over
        }
        false => flow(&mut board, &column, blocks(TABLE)).0,
    };
    continued(set, vec![board], (NAME, TITLE), 2, rest)
}

/// Count and size of each group, and of the rivets: "100 × {1 27/32}" and "tubes T1–T100".
fn lines(set: &Set<'_>) -> Vec<(String, String)> {
    let kept = set.design.kept;
    let new = if kept { "NEW " } else { "" };
    let mut lines: Vec<(String, String)> = set
        .design
        .groups_made()
        .map(|(i, g)| {
            (
                format!("{} × {}", set.made_off(i), finish_short(set, i)),
                format!(
                    "{new}{} {}{}",
                    g.name.to_uppercase(),
                    set.numbers_made(i),
                    thread_of(set, i)
                ),
            )
        })
        .collect();
    // The total stands under what it adds up, before the rivets, which are not in the flat.
    let made = set.design.holes_made().count();
    lines.push((
        format!("{made} IN THE FLAT"),
        format!("{new}HOLES, RIVET HOLES APART"),
    ));
    if kept {
        let stand = set.design.holes.len() - made;
        lines.push((format!("{stand} STAND"), "HOLES IN THE FLAT".into()));
    }
    let rivets = set.design.rivets_made();
    if let Some(line) = set.design.rivets.as_ref().filter(|_| rivets > 0) {
        lines.push((
            format!("{rivets} × {}", set.figures.size_short(&line.hole)),
            match &line.rows {
                _ if kept => format!(
                    "NEW RIVET HOLES, RIVETS {}",
                    set.figures.size_short(&line.rivet)
                ),
                Some(rows) => format!(
                    "RIVET HOLES IN {} ROWS, RIVETS {}",
                    rows.number,
                    set.figures.size_short(&line.rivet)
                ),
                None => format!(
                    "RIVET HOLES, RIVETS {}",
                    set.figures.size_short(&line.rivet)
                ),
            },
        ));
    }
    lines
}

/// Behind the numbers of a tapped group: ", 1 IN 12, 11 T.P.I.".
fn thread_of(set: &Set<'_>, group: usize) -> String {
    let tapped = set.design.all_tapped(group);
    tapped.map_or(String::new(), |tapped| {
        format!(", {}", tap_words(tapped).to_uppercase())
    })
}

/// Tells the y below them.
fn put_big_lines(board: &mut Board, room: &PaperBox, lines: &[(String, String)]) -> f64 {
    // The name goes under its figures where it does not go beside them.
    let beside = |h: f64, (figures, name): &(String, String)| {
        face::width(figures, h, true) + 5.0 + face::width(name, h * NAMES, false) <= room.width()
    };
    let high = |h: f64| -> f64 {
        lines
            .iter()
            .map(|line| h * if beside(h, line) { PITCH } else { PITCH + 1.0 })
            .sum()
    };
    let fits = |h: &f64| high(*h) <= room.height();
    let height = HEIGHTS
        .into_iter()
        .find(fits)
        .unwrap_or(HEIGHTS[HEIGHTS.len() - 1]);
    let mut y = room.top;
    for line in lines {
        let (figures, name) = line;
        let base = y + height * 1.6;
        if y + height * PITCH > room.bottom {
            break;
        }
        board.bold(at(room.left, base), figures, height, Hang::Start);
        if beside(height, line) {
            let x = room.left + face::width(figures, height, true) + 5.0;
            board.text(at(x, base), name, height * NAMES, Hang::Start);
            y += height * PITCH;
        } else {
            board.text(
                at(room.left, base + height * 1.25),
                name,
                height * NAMES,
                Hang::Start,
            );
            y += height * (PITCH + 1.0);
        }
    }
    y
}
