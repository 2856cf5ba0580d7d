//! Lettering in single strokes, for stamping and for notes beside the part: straight lines only.
//!
//! Each letter stands on a grid four wide and six high. A nought carries a stroke and a one a flag and a foot, so that
//! neither is taken for a letter. `^` is an arrow upwards.

use crate::design::Point;

/// Width of a letter and the gap to the next, as shares of the height.
const ADVANCE: f64 = 1.0;
/// Width of a letter alone, as a share of the height.
const LETTER: f64 = 4.0 / 6.0;

/// Chains of grid places, two figures each (across, up), a space between chains.
const LETTERS: [(char, &str); 42] = [
    ('A', "0004264440 0343"),
    ('B', "00063645443342413000 0333"),
    ('C', "4536160501103041"),
    ('D', "00062644422000"),
    ('E', "46060040 0333"),
    ('F', "460600 0333"),
    ('G', "45361605011030414323"),
    ('H', "0006 4046 0343"),
    ('I', "1030 2026 1636"),
    ('J', "0110304146"),
    ('K', "0006 4602 1340"),
    ('L', "060040"),
    ('M', "0006234640"),
    ('N', "00064046"),
    ('O', "100105163645413010"),
    ('P', "00063645443303"),
    ('Q', "100105163645413010 2240"),
    ('R', "00063645443303 2340"),
    ('S', "453616050413334241301001"),
    ('T', "0646 2026"),
    ('U', "060110304146"),
    ('V', "062046"),
    ('W', "0610233046"),
    ('X', "0046 0640"),
    ('Y', "062346 2320"),
    ('Z', "06460040"),
    ('0', "100105163645413010 0145"),
    ('1', "152620 1030"),
    ('2', "05163645440040"),
    ('3', "0516364544334241301001 1333"),
    ('4', "30360242"),
    ('5', "460603334241301001"),
    ('6', "4536160501103041423303"),
    ('7', "064610"),
    ('8', "13040516364544331302011030414233"),
    ('9', "4313040516364541301001"),
    ('-', "1333"),
    ('.', "2021"),
    ('/', "0046"),
    (':', "2122 2425"),
    ('^', "2026 142634"),
    (' ', ""),
];

/// How wide a line of lettering is, from the first letter's left to the last one's right.
pub fn width(text: &str, height: f64) -> f64 {
    match text.chars().count() {
        0 => 0.0,
        count => height * ((count - 1) as f64 * ADVANCE + LETTER),
    }
}

/// The strokes of one line of lettering whose lower left corner is at `at`.
///
/// Small letters are made large. A character outside the table leaves its place empty.
pub fn strokes(text: &str, at: Point, height: f64) -> Vec<(Point, Point)> {
    let unit = height / 6.0;
    let mut lines = Vec::new();
    for (place, letter) in text.chars().enumerate() {
        let left = at.x + place as f64 * ADVANCE * height;
        for chain in chains(letter.to_ascii_uppercase()) {
            let corners: Vec<Point> = chain
                .as_bytes()
                .chunks_exact(2)
                .map(|pair| {
                    Point::new(
                        left + f64::from(pair[0] - b'0') * unit,
                        at.y + f64::from(pair[1] - b'0') * unit,
                    )
                })
                .collect();
            lines.extend(corners.windows(2).map(|ends| (ends[0], ends[1])));
        }
    }
    lines
}

fn chains(letter: char) -> impl Iterator<Item = &'static str> {
    LETTERS
        .iter()
        .find(|(name, _)| *name == letter)
        .map_or("", |(_, chains)| chains)
        .split_whitespace()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn holds_every_letter_stands_on_its_grid() {
        for (letter, chains) in LETTERS {
            for chain in chains.split_whitespace() {
                assert!(chain.len() % 2 == 0 && chain.len() >= 4, "{letter}");
                for pair in chain.as_bytes().chunks_exact(2) {
                    assert!(pair[0] <= b'4' && pair[1] <= b'6', "{letter}");
                }
            }
        }
    }

    #[test]
    fn holds_no_two_letters_are_drawn_alike() {
        for (i, (a, drawn)) in LETTERS.iter().enumerate() {
            for (b, other) in &LETTERS[i + 1..] {
                assert_ne!(drawn, other, "{a} and {b}");
            }
        }
    }

    /// Six high, "II": the first letter's stem is at 2, the second's at 2 + 6; feet from 1 to 3 and 7 to 9.
    #[test]
    fn by_hand_two_letters() {
        let drawn = strokes("ii", Point::new(10.0, 20.0), 6.0);
        assert_eq!(drawn.len(), 6);
        assert_eq!(drawn[0], (Point::new(11.0, 20.0), Point::new(13.0, 20.0)));
        assert_eq!(drawn[4], (Point::new(18.0, 20.0), Point::new(18.0, 26.0)));
        assert_eq!(width("II", 6.0), 10.0);
    }
}
