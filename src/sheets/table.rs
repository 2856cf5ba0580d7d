//! Tables: ruled, heads repeated wherever they flow to.

use super::at;
use super::board::{Board, PaperBox};
use super::letter_size::{LABEL, LINE_PITCH, TABLE, fitting_height, words_of, wrap};
use super::symbols::put_signed_hole;
use super::table_numbers::title_to_number;
use super::text_box::rise_and_fall;
use super::{Hang, Pen, face};

/// Clear strip beside the lettering of a cell, mm.
const PADDING: f64 = 1.2;
/// Clear between a stacked fraction and the line above or below it, as a share of the lettering's height.
const BETWEEN_LINES: f64 = 0.2;
/// Clear between capitals and the rules above and below them, as shares of their height: tails take some of that below.
const BESIDE_PLAIN: (f64, f64) = (0.3, 0.5);
/// Clear between a stacked fraction and such rules, as shares of the lettering's height: as much more below as beside capitals.
const BESIDE_STACKED: (f64, f64) = (0.17, 0.37);
/// How far tails of letters reach below the base line, as a share of the height.
const TAILS: f64 = 0.25;

/// Radius of a sign in a cell, mm.
const SIGN: f64 = 1.7;
/// Least height of a row with a sign in it, mm.
pub const SIGNED_ROW: f64 = 4.6;

/// A column of a table.
#[derive(Clone, Debug)]
pub struct Column {
    /// Its head.
    pub head: String,
    /// Its width, mm.
    pub width: f64,
    /// Where its cells hang.
    pub hang: Hang,
}

/// A table to be put down, in one piece or several.
#[derive(Clone, Debug)]
pub struct Table {
    /// Its title.
    pub title: String,
    /// Columns from the left.
    pub columns: Vec<Column>,
    /// Rows from the top, a cell for each column.
    pub rows: Vec<Vec<String>>,
    /// Height of its lettering, mm.
    pub height: f64,
    /// Rows that stand out in bold.
    pub loud: Vec<usize>,
    /// Signs of groups that stand in the first column, by row; none beyond the last.
    pub signs: Vec<Option<usize>>,
    /// Rows are at least this high, mm: more where they are filled in by hand.
    pub least_row: f64,
}

/// Clear paper below each line of a title, mm.
const TITLE_GAP: f64 = 1.5;

/// Height of a row that is filled in by hand, mm.
pub const FILLED_IN: f64 = 8.0;

/// A cell laid out: words of a row share a base line, whatever reaches below it.
struct Cell {
    /// Its lines, each with its base line below the top of the cell, mm.
    lines: Vec<(String, f64)>,
    /// Height of the cell, mm.
    high: f64,
}

impl Cell {
    /// Lines of this height over one another, as close as plain and stacked lettering allow.
    fn of(lines: Vec<String>, height: f64) -> Cell {
        let mut placed: Vec<(String, f64)> = Vec::new();
        let (mut base, mut foot) = (0.0, 0.0);
        for line in lines {
            let stacked = line.contains('{');
            // A capital stands in the middle of a fraction, so that both are centred in a row on one base line.
            let (rise, fall) = match stacked {
                true => rise_and_fall(&line, height),
                false => (height, 0.0),
            };
            let beside_rule = height
                * if stacked {
                    BESIDE_STACKED.0
                } else {
                    BESIDE_PLAIN.0
                };
            base = match placed.is_empty() {
                true => beside_rule + rise,
                false => (base + height * LINE_PITCH).max(foot + BETWEEN_LINES * height + rise),
            };
            foot = base + fall.max(TAILS * height);
            placed.push((line, base));
        }
        let last = placed.last().is_some_and(|(line, _)| line.contains('{'));
        let high = match last {
            true => foot + BESIDE_STACKED.1 * height,
            false => base + BESIDE_PLAIN.1 * height,
        };
        Cell {
            lines: placed,
            high,
        }
    }
}

impl Table {
    /// A table of no rows yet.
    pub fn new(title: &str, columns: &[(&str, f64, Hang)]) -> Table {
        Table {
            title: title.into(),
            columns: columns
                .iter()
                .map(|(head, width, hang)| Column {
                    head: (*head).into(),
                    width: *width,
                    hang: *hang,
                })
                .collect(),
            rows: Vec::new(),
            height: TABLE,
            loud: Vec::new(),
            signs: Vec::new(),
            least_row: 0.0,
        }
    }

    /// The same with rows high enough to write in.
    pub fn filled_in(mut self) -> Table {
        self.least_row = FILLED_IN;
        self
    }

    /// Adds a row of cells, and blanks in the columns that they leave.
    pub fn row(&mut self, cells: Vec<String>) {
        let mut row = cells;
        row.resize(self.columns.len(), String::new());
        self.rows.push(row);
    }

    /// Width of all columns, mm.
    pub fn width(&self) -> f64 {
        self.columns.iter().map(|c| c.width).sum()
    }

    /// Widens or narrows every column in proportion, but none to less than its longest word wants.
    pub fn widened_to(mut self, width: f64) -> Table {
        let mut least = vec![0.0; self.columns.len()];
        if width < self.width() {
            least = (0..least.len()).map(|i| self.least_width(i)).collect();
        }
        let mut kept = vec![false; least.len()];
        loop {
            let sum = |kept: &[bool], wanted: bool| -> f64 {
                let columns = self.columns.iter().zip(kept);
                columns
                    .filter(|(_, k)| **k == wanted)
                    .map(|(c, _)| c.width)
                    .sum()
            };
            let share = (width - sum(&kept, true)) / sum(&kept, false).max(f64::MIN_POSITIVE);
            let narrow = |i: usize| share < 1.0 && self.columns[i].width * share < least[i];
            let short = (0..least.len()).find(|&i| !kept[i] && narrow(i));
            match short {
                Some(i) => {
                    kept[i] = true;
                    self.columns[i].width = least[i].min(self.columns[i].width);
                }
                None => {
                    for (c, _) in self.columns.iter_mut().zip(&kept).filter(|(_, k)| !**k) {
                        c.width *= share;
                    }
                    return self;
                }
            }
        }
    }

    /// Least width of a column at which every word of it is lettered at its height, mm.
    fn least_width(&self, column: usize) -> f64 {
        let head = self.columns[column].head.split(' ');
        let heads = head.map(|word| face::width(word, LABEL, true));
        let cells = self.rows.iter().enumerate().flat_map(|(i, row)| {
            let words = words_of(&row[column]);
            let bold = self.loud.contains(&i);
            words
                .into_iter()
                .map(move |word| face::width(&word, self.height, bold))
        });
        heads.chain(cells).fold(0.0, f64::max) + 2.0 * PADDING
    }

    /// Height of title and heads, mm.
    pub fn head_height(&self) -> f64 {
        self.head_height_of(false)
    }

    fn head_height_of(&self, runs_on: bool) -> f64 {
        self.title_height(runs_on) + self.cells_height(&self.heads(), true)
    }

    /// Height of the whole table in one piece, mm.
    pub fn full_height(&self) -> f64 {
        self.head_height()
            + (0..self.rows.len())
                .map(|r| self.row_height(r))
                .sum::<f64>()
    }

    /// How many rows from this one on fit a height, heads included.
    pub fn rows_that_fit(&self, from: usize, height: f64) -> usize {
        let mut used = self.head_height_of(from > 0);
        let mut count = 0;
        for r in from..self.rows.len() {
            used += self.row_height(r);
            if used > height {
                break;
            }
            count += 1;
        }
        count
    }

    /// Puts down rows from `from` within a box, heads first; tells the next row and the y below the last rule.
    /// Where not even one row fits, nothing is put down.
    pub fn put(&self, board: &mut Board, room: &PaperBox, from: usize) -> (usize, f64) {
        let count = self.rows_that_fit(from, room.height());
        if count == 0 && from < self.rows.len() {
            return (from, room.top);
        }
        let mut y = room.top;
        let (lines, height) = self.title_lines(from > 0);
        for line in lines {
            let base = y + self.title_size();
            board.bold(at(room.left, base), &line, height, Hang::Start);
            y = base + TITLE_GAP;
        }
        let top = y;
        let edge = |b: &mut Board, y: f64, pen: Pen| {
            b.rule(at(room.left, y), at(room.left + self.width(), y), pen);
        };
        edge(board, y, Pen::Middle);
        y = self.put_cells(board, room.left, y, &self.heads(), true, 0.0);
        edge(board, y, Pen::Middle);
        for r in from..from + count {
            let bold = self.loud.contains(&r);
            let head = y;
            y = self.put_cells(board, room.left, y, &self.rows[r], bold, self.least_row);
            if let Some(Some(sign)) = self.signs.get(r) {
                let c = at(room.left + self.columns[0].width / 2.0, (head + y) / 2.0);
                put_signed_hole(board, c, SIGN, *sign);
            }
            let last = r + 1 == from + count;
            edge(board, y, if last { Pen::Middle } else { Pen::Narrow });
        }
        let mut x = room.left;
        board.rule(at(x, top), at(x, y), Pen::Middle);
        for (i, c) in self.columns.iter().enumerate() {
            x += c.width;
            let last = i + 1 == self.columns.len();
            board.rule(
                at(x, top),
                at(x, y),
                if last { Pen::Middle } else { Pen::Narrow },
            );
        }
        (from + count, y)
    }

    fn heads(&self) -> Vec<String> {
        self.columns.iter().map(|c| c.head.clone()).collect()
    }

    /// Height of the lettering of a title, where it fits, mm.
    fn title_size(&self) -> f64 {
        self.height * 1.2
    }

    /// The title with room for its number, and the height of its lettering: on one line where it fits at the height of the cells or
    /// more.
    fn title_lines(&self, runs_on: bool) -> (Vec<String>, f64) {
        if self.title.is_empty() {
            return (Vec::new(), 0.0);
        }
        let words = title_to_number(&self.title, runs_on);
        let fitted = fitting_height(&words, self.width(), self.title_size(), true);
        match face::width(&words, fitted, true) <= self.width() {
            true => (vec![words], fitted),
            false => (wrap(&words, self.width(), self.height, true), self.height),
        }
    }

    fn title_height(&self, runs_on: bool) -> f64 {
        let lines = self.title_lines(runs_on).0.len() as f64;
        lines * (self.title_size() + TITLE_GAP)
    }

    fn row_height(&self, row: usize) -> f64 {
        self.cells_height(&self.rows[row], self.loud.contains(&row))
            .max(self.least_row)
    }

    fn lines(&self, column: usize, words: &str, bold: bool) -> Vec<String> {
        wrap(
            words,
            self.columns[column].width - 2.0 * PADDING,
            self.height,
            bold,
        )
    }

    /// Height of a line of lettering: the table's own, or less where one word is wider than its column.
    fn height_of(&self, column: usize, line: &str, bold: bool) -> f64 {
        fitting_height(
            line,
            self.columns[column].width - 2.0 * PADDING,
            self.height,
            bold,
        )
    }

    /// The lines of a cell, and how they stand over one another.
    fn cell(&self, column: usize, words: &str, bold: bool) -> Cell {
        Cell::of(self.lines(column, words, bold), self.height)
    }

    fn cells_height(&self, cells: &[String], bold: bool) -> f64 {
        let cells = cells.iter().enumerate();
        cells
            .map(|(i, words)| self.cell(i, words, bold).high)
            .fold(1.8 * self.height, f64::max)
    }

    fn put_cells(
        &self,
        board: &mut Board,
        left: f64,
        top: f64,
        cells: &[String],
        bold: bool,
        least: f64,
    ) -> f64 {
        let high = self.cells_height(cells, bold).max(least);
        let mut x = left;
        for (i, words) in cells.iter().enumerate() {
            let column = &self.columns[i];
            let cell = self.cell(i, words, bold);
            let above = top + (high - cell.high) / 2.0;
            for (line, base) in &cell.lines {
                let (place, hang) = match column.hang {
                    Hang::Start => (x + PADDING, Hang::Start),
                    Hang::Middle => (x + column.width / 2.0, Hang::Middle),
                    Hang::End => (x + column.width - PADDING, Hang::End),
                };
                let height = self.height_of(i, line, bold);
                board.lettering(at(place, above + base), line, height, hang, 0.0, bold);
            }
            x += column.width;
        }
        top + high
    }
}

#[cfg(test)]
mod tests {
    use super::super::lettering::lay_words;
    use super::*;

    /// Words of one line stand on one base line whether letters hang below it or a fraction reaches above and below.
    #[test]
    fn holds_words_of_a_row_share_a_base_line() {
        for height in [2.5, 3.5] {
            let base = |words: &str| {
                let cell = Cell::of(vec![words.to_string()], height);
                let (_, base) = cell.lines[0];
                base - cell.high / 2.0
            };
            for words in ["(jpg)", "1 {27/32}", "{5/8} [15.88]"] {
                let apart = base(words) - base("A");
                assert!(apart.abs() < 1e-9, "{words} stands {apart} mm off");
            }
        }
    }

    /// Lines of a cell keep off one another, and digits of a fraction are as high as the least lettering of a table.
    #[test]
    fn holds_lines_of_a_cell_keep_apart() {
        let lines = ["pilot {1/2}, bore", "1 {13/16}, ream", "to size (gauge)"];
        let cell = Cell::of(lines.map(str::to_string).to_vec(), TABLE);
        for pair in cell.lines.windows(2) {
            let (_, fall) = rise_and_fall(&pair[0].0, TABLE);
            let (rise, _) = rise_and_fall(&pair[1].0, TABLE);
            assert!(pair[1].1 - rise - (pair[0].1 + fall) > 0.0, "{pair:?}");
        }
        let fraction = lay_words("{7/8}", TABLE, false);
        let digit = |share: f64| share * TABLE;
        let sizes = fraction.pieces.iter().filter_map(|piece| match piece {
            super::super::lettering::Piece::Glyph { size, .. } => Some(digit(*size)),
            _ => None,
        });
        assert_eq!(sizes.collect::<Vec<_>>(), [2.5, 2.5]);
    }
}
