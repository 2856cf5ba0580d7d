//! Dimensions that find a row for themselves: the nearest to the object in which neither words nor lines meet what is there.

use super::board::Board;
use super::clear::touches;
use super::dimension::{
    ABOVE, ARROW, FIRST_ROW, NEXT_ROW, Says, double_arrow, extension, outside_arrows,
};
use super::letter_size::FIGURES;
use super::text_box::{rise_and_fall, text_box};
use super::{Hang, Mark, PaperPoint, Role, at, face};

/// The nearest row to an object, mm, as beside a whole view.
const NEAREST: f64 = FIRST_ROW;
/// Rows tried before the last is taken whatever is there.
const ROWS: u8 = 12;
/// Clear paper round lettering, mm.
const CLEAR: f64 = 0.6;
/// Dimension lines of one way stand at least so far apart where they run beside one another, mm.
const APART: f64 = 4.5;

/// Where words stand on their dimension line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Words {
    Between,
    /// Beyond the end with the greater x or y.
    After,
    /// Beyond the other end.
    Before,
}

/// A dimension across, in the first free row below or above a level of the paper.
pub fn across_free(
    board: &mut Board,
    (a, b): (PaperPoint, PaperPoint),
    from_y: f64,
    below: bool,
    says: Says<'_>,
) {
    let (a, b) = if a.x <= b.x { (a, b) } else { (b, a) };
    let way = if below { 1.0 } else { -1.0 };
    let rows = (0..ROWS).map(|row| from_y + way * (NEAREST + f64::from(row) * NEXT_ROW));
    put_first_free(
        board,
        rows,
        Way::Level,
        (b.x - a.x, &says),
        |board, y, words| {
            level(board, a, b, y, words, &says);
        },
    );
}

/// A dimension upwards, in the first free column right or left of an x of the paper.
pub fn upwards_free(
    board: &mut Board,
    (a, b): (PaperPoint, PaperPoint),
    from_x: f64,
    to_right: bool,
    says: Says<'_>,
) {
    let (low, high) = if a.y >= b.y { (a, b) } else { (b, a) };
    let way = if to_right { 1.0 } else { -1.0 };
    let columns = (0..ROWS).map(|row| from_x + way * (NEAREST + f64::from(row) * NEXT_ROW));
    put_first_free(
        board,
        columns,
        Way::Upright,
        (low.y - high.y, &says),
        |board, x, words| {
            upright(board, low, high, x, words, &says);
        },
    );
}

fn put_first_free(
    board: &mut Board,
    rows: impl Iterator<Item = f64>,
    way: Way,
    (long, says): (f64, &Says<'_>),
    put: impl Fn(&mut Board, f64, Words),
) {
    let fits = long >= face::width(says.words, FIGURES, false) + 2.0;
    let places: &[Words] = if fits {
        &[Words::Between]
    } else {
        &[Words::After, Words::Before]
    };
    let trials: Vec<Board> = rows
        .flat_map(|row| places.iter().map(move |&words| (row, words)))
        .map(|(row, words)| {
            let mut trial = Board::new("", "", board.room);
            put(&mut trial, row, words);
            trial
        })
        .collect();
    // An extension line that cannot but pass words is broken beside them when the sheet is done.
    let free = |extensions| trials.iter().find(|t| is_free(board, t, way, extensions));
    let found = free(Extensions::Clear).or_else(|| free(Extensions::Broken));
    if let Some(trial) = found.or(trials.last()) {
        board.take(trial, 0.0, 0.0);
    }
}

/// Whether extension lines are to keep clear of words, or are broken beside them.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Extensions {
    Clear,
    Broken,
}

/// Whether what is tried meets nothing that is there: no words on lines, no dimension lines along other lines.
fn is_free(board: &Board, trial: &Board, way: Way, extensions: Extensions) -> bool {
    trial.marks.iter().all(|new| match new {
        Mark::Text(text) => {
            let round = text_box(text).grown(CLEAR);
            let meets = |old: &Mark| old.role() != Role::Centre && touches(old, &round);
            !board.marks.iter().any(meets)
        }
        _ => board.marks.iter().all(|old| match old {
            Mark::Text(_) if extensions == Extensions::Broken && new.role() == Role::Extension => {
                true
            }
            Mark::Text(text) => !touches(new, &text_box(text).grown(CLEAR)),
            _ => !run_along(old, new, way),
        }),
    })
}

/// Which way a dimension line runs; its extension lines run the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    Level,
    Upright,
}

/// Whether two lines of this way run beside one another too near.
fn run_along(old: &Mark, new: &Mark, way: Way) -> bool {
    let (Some((a, b, across)), Some((c, d, beside))) = (run_of(old, way), run_of(new, way)) else {
        return false;
    };
    (across - beside).abs() < APART && b.min(d) - a.max(c) > 0.01
}

/// Where a line of this way begins and ends, and where it lies across that; none for another mark.
fn run_of(mark: &Mark, way: Way) -> Option<(f64, f64, f64)> {
    let Mark::Line { from, to, .. } = mark else {
        return None;
    };
    let (a, b) = match way {
        Way::Level => (at(from.x, from.y), at(to.x, to.y)),
        Way::Upright => (at(from.y, from.x), at(to.y, to.x)),
    };
    ((a.y - b.y).abs() < 0.01).then(|| (a.x.min(b.x), a.x.max(b.x), a.y))
}

fn level(board: &mut Board, a: PaperPoint, b: PaperPoint, y: f64, words: Words, says: &Says<'_>) {
    extension(board, a, at(a.x, y));
    extension(board, b, at(b.x, y));
    let (left, right) = (at(a.x, y), at(b.x, y));
    board.state(left, right, says.scale, says.length, says.words);
    let wide = face::width(says.words, FIGURES, false);
    let (_, fall) = rise_and_fall(says.words, FIGURES);
    let base = y - ABOVE - fall;
    match words {
        Words::Between => {
            double_arrow(board, left, right);
            let middle = at((left.x + right.x) / 2.0, base);
            board.text(middle, says.words, FIGURES, Hang::Middle);
        }
        Words::After => {
            outside_arrows(board, left, right);
            let from = right.x + ARROW + 1.0;
            board.dimension_line(at(right.x + ARROW, y), at(from + wide, y));
            board.text(at(from, base), says.words, FIGURES, Hang::Start);
        }
        Words::Before => {
            outside_arrows(board, left, right);
            let from = left.x - ARROW - 1.0;
            board.dimension_line(at(from - wide, y), at(left.x - ARROW, y));
            board.text(at(from, base), says.words, FIGURES, Hang::End);
        }
    }
}

fn upright(
    board: &mut Board,
    low: PaperPoint,
    high: PaperPoint,
    x: f64,
    words: Words,
    says: &Says<'_>,
) {
    extension(board, low, at(x, low.y));
    extension(board, high, at(x, high.y));
    let (low, high) = (at(x, low.y), at(x, high.y));
    board.state(low, high, says.scale, says.length, says.words);
    let wide = face::width(says.words, FIGURES, false);
    let (_, fall) = rise_and_fall(says.words, FIGURES);
    let base = x - ABOVE - fall;
    let mut letter = |y: f64, hang: Hang| {
        board.lettering(at(base, y), says.words, FIGURES, hang, 90.0, false);
    };
    match words {
        Words::Between => {
            letter((low.y + high.y) / 2.0, Hang::Middle);
            double_arrow(board, low, high);
        }
        Words::Before => {
            let from = high.y - ARROW - 1.0;
            letter(from, Hang::Start);
            board.dimension_line(at(x, high.y - ARROW), at(x, from - wide));
            outside_arrows(board, low, high);
        }
        Words::After => {
            let from = low.y + ARROW + 1.0;
            letter(from, Hang::End);
            board.dimension_line(at(x, low.y + ARROW), at(x, from + wide));
            outside_arrows(board, low, high);
        }
    }
}
