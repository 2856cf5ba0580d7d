//! Numbered notes and boxed cautions, in the imperative.

use super::at;
use super::board::{Board, PaperBox};
use super::letter_size::{LINE_PITCH, NOTES, fitting_height, wrap};
use super::lettering::stacked;
use super::text_box::rise_and_fall;
use super::{Hang, PaperPoint, Pen};

/// Width kept for the number of a note, as a share of the lettering's height.
const NUMBER: f64 = 3.0;

/// Clear between stacked fractions of two lines, as a share of the lettering's height.
const BETWEEN_STACKED: f64 = 0.2;

/// From line to line of these words, as a share of their height.
fn pitch_of(words: &str, height: f64) -> f64 {
    if words.contains('{') {
        stacked(height) + BETWEEN_STACKED
    } else {
        LINE_PITCH
    }
}

/// From the top of a note to the base line of its first line, as a share of its height: a fraction reaches above the figures beside it.
fn first_base(words: &str, height: f64) -> f64 {
    if words.contains('{') {
        (1.0 + stacked(height) + BETWEEN_STACKED) / 2.0
    } else {
        1.0
    }
}

/// A titled list of notes.
#[derive(Clone, Debug)]
pub struct Notes {
    /// Title above.
    pub title: String,
    /// The notes.
    pub notes: Vec<String>,
    /// Height of lettering, mm.
    pub height: f64,
    /// Whether they are numbered.
    pub numbered: bool,
}

impl Notes {
    /// Numbered notes at the usual height.
    pub fn new(title: &str, notes: Vec<String>) -> Notes {
        Notes {
            title: title.into(),
            notes,
            height: NOTES,
            numbered: true,
        }
    }

    /// The same in lettering of another height.
    pub fn at_height(mut self, height: f64) -> Notes {
        self.height = height;
        self
    }

    /// Puts down notes from `from` on within a box; tells the next note that did not fit and the y below the last.
    pub fn put(&self, board: &mut Board, room: &PaperBox, from: usize) -> (usize, f64) {
        let mut y = room.top;
        if from >= self.notes.len()
            || room.height()
                < self.title_height() + self.note_height(&self.notes[from], room.width())
        {
            return (from, y);
        }
        let title = if from > 0 {
            format!("{} (CONTINUED)", self.title)
        } else {
            self.title.clone()
        };
        let height = fitting_height(&title, room.width(), self.height * 1.15, true);
        board.bold(
            at(room.left, y + self.height * 1.15),
            &title,
            height,
            Hang::Start,
        );
        y += self.title_height();
        for (i, note) in self.notes.iter().enumerate().skip(from) {
            let high = self.note_height(note, room.width());
            if y + high > room.bottom + 0.01 {
                return (i, y);
            }
            let mark = if self.numbered {
                format!("{}.", i + 1)
            } else {
                "–".into()
            };
            board.text(
                at(room.left, y + self.height * first_base(note, self.height)),
                &mark,
                self.height,
                Hang::Start,
            );
            for (k, line) in self.lines(note, room.width()).iter().enumerate() {
                let lines_above =
                    first_base(note, self.height) + k as f64 * pitch_of(note, self.height);
                let base = y + self.height * lines_above;
                board.text(
                    at(room.left + self.number_width(), base),
                    line,
                    self.height,
                    Hang::Start,
                );
            }
            y += high;
        }
        (self.notes.len(), y)
    }

    /// Height of the whole list, mm.
    pub fn full_height(&self, width: f64) -> f64 {
        let notes = self.notes.iter();
        self.title_height() + notes.map(|n| self.note_height(n, width)).sum::<f64>()
    }

    fn number_width(&self) -> f64 {
        if self.numbered {
            self.height * NUMBER
        } else {
            self.height * 1.5
        }
    }

    fn title_height(&self) -> f64 {
        self.height * 1.15 + 2.5
    }

    fn lines(&self, note: &str, width: f64) -> Vec<String> {
        wrap(note, width - self.number_width(), self.height, false)
    }

    fn note_height(&self, note: &str, width: f64) -> f64 {
        self.height * (self.lines(note, width).len() as f64 * pitch_of(note, self.height) + 0.3)
    }
}

/// A boxed caution; tells the y below the box.
pub fn put_caution(
    board: &mut Board,
    corner: PaperPoint,
    width: f64,
    words: &str,
    height: f64,
) -> f64 {
    let (left, top) = (corner.x, corner.y);
    let lines = wrap(words, width - 4.0, height, true);
    let high = caution_height(width, words, height);
    board.ruled_box(
        PaperBox::new(left, top, left + width, top + high),
        Pen::Frame,
    );
    let (rise, _) = rise_and_fall(words, height);
    for (i, line) in lines.iter().enumerate() {
        let base = top + CAUTION_PADDING + rise + i as f64 * caution_pitch(words, height);
        board.bold(at(left + width / 2.0, base), line, height, Hang::Middle);
    }
    top + high
}

/// Clear strip within the box of a caution, mm.
const CAUTION_PADDING: f64 = 1.6;

/// From line to line of a caution, mm.
fn caution_pitch(words: &str, height: f64) -> f64 {
    height * pitch_of(words, height)
}

/// Height that such a box takes, mm.
pub fn caution_height(width: f64, words: &str, height: f64) -> f64 {
    let lines = wrap(words, width - 4.0, height, true).len() as f64;
    let (rise, fall) = rise_and_fall(words, height);
    (lines - 1.0) * caution_pitch(words, height) + rise + fall + 2.0 * CAUTION_PADDING
}
