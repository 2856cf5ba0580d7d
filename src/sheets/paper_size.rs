//! Paper of the A series and the frame within it (ISO 216, ISO 5457): A4 upright, larger paper landscape.

use super::board::PaperBox;
use crate::spec::Paper;

/// Filing edge left of the frame, mm.
pub const FILING_EDGE: f64 = 20.0;
/// Margin on the other three sides, mm.
pub const MARGIN: f64 = 10.0;

/// Width and height of the paper, mm.
pub fn paper_size(paper: Paper) -> (f64, f64) {
    match paper {
        Paper::A4 => (210.0, 297.0),
        Paper::A3 => (420.0, 297.0),
        Paper::A2 => (594.0, 420.0),
        Paper::A1 => (841.0, 594.0),
        Paper::A0 => (1189.0, 841.0),
    }
}

/// Its name.
pub fn paper_name(paper: Paper) -> &'static str {
    match paper {
        Paper::A4 => "A4",
        Paper::A3 => "A3",
        Paper::A2 => "A2",
        Paper::A1 => "A1",
        Paper::A0 => "A0",
    }
}

/// Whether it stands upright, so that what goes side by side on other paper goes one above another.
pub fn is_upright(paper: Paper) -> bool {
    let (width, height) = paper_size(paper);
    height > width
}

/// How much paper it is, in sheets of A4.
pub fn in_a4(paper: Paper) -> usize {
    match paper {
        Paper::A4 => 1,
        Paper::A3 => 2,
        Paper::A2 => 4,
        Paper::A1 => 8,
        Paper::A0 => 16,
    }
}

/// The frame on that paper.
pub fn frame(paper: Paper) -> PaperBox {
    let (width, height) = paper_size(paper);
    PaperBox::new(FILING_EDGE, MARGIN, width - MARGIN, height - MARGIN)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 5457 drawing spaces: A4 upright 277 × 180, A3 277 × 390, A2 400 × 564, A1 574 × 811, A0 821 × 1159 mm.
    #[test]
    fn published_drawing_spaces() {
        for (paper, height, width) in [
            (Paper::A4, 277.0, 180.0),
            (Paper::A3, 277.0, 390.0),
            (Paper::A2, 400.0, 564.0),
            (Paper::A1, 574.0, 811.0),
            (Paper::A0, 821.0, 1159.0),
        ] {
            let f = frame(paper);
            assert_eq!((f.height(), f.width()), (height, width), "{paper:?}");
        }
    }
}
