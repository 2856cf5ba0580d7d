//! The room that a line of lettering takes on paper.

use super::Text;
use super::board::PaperBox;
use super::lettering::lay_words;
use super::lettering_box::LetteringBox;

/// Upright box round a line of lettering, its turn taken in.
pub fn text_box(text: &Text) -> PaperBox {
    let b = LetteringBox::of(text).upright();
    PaperBox::new(b.x0, b.y0, b.x1, b.y1)
}

/// How far words of this height rise above their base line and fall below it, mm.
pub fn rise_and_fall(words: &str, height: f64) -> (f64, f64) {
    let laid = lay_words(words, height, false);
    (laid.above * height, laid.below * height)
}
