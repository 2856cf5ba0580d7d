//! The warning across the head of every sheet while something judged is below its rule and nobody has conceded it.

use super::at;
use super::board::{Board, PaperBox};
use super::furniture::BANNER;
use super::letter_size::{LINE_PITCH, fitting_height, wrap};
use super::paper_size::frame;
use super::warning::Warning;
use super::{Hang, Pen};
use crate::spec::Paper;

/// Puts the banner at the head of the sheet, what it is about beside it.
pub fn put_banner(board: &mut Board, paper: Paper, warning: &Warning) {
    let f = frame(paper);
    let b = PaperBox::new(f.left + 1.0, f.top + 1.0, f.right - 1.0, f.top + BANNER);
    board.ruled_box(b, Pen::Frame);
    let (loud, words) = (warning.loud, &warning.about);
    // The centring mark reaches into the middle of the head, so the lettering keeps to either side of it.
    let middle = f.middle().x;
    let left_room = middle - b.left - 8.0;
    let height = fitting_height(loud, left_room, 6.5, true);
    let base = |height: f64| (b.top + b.bottom + height) / 2.0;
    board.bold(at(b.left + 5.0, base(height)), loud, height, Hang::Start);
    let right_room = b.right - middle - 8.0;
    let height = fitting_height(words, right_room, 3.5, false);
    // On narrow paper the words go on two lines.
    let lines = wrap(words, right_room, height, false);
    let first = base(height) - (lines.len() as f64 - 1.0) * (height * LINE_PITCH / 2.0 + 0.4);
    for (i, line) in lines.iter().enumerate() {
        let y = first + i as f64 * height * LINE_PITCH;
        board.text(at(middle + 4.0, y), line, height, Hang::Start);
    }
}
