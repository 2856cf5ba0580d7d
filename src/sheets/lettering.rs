//! Lettering laid out once: glyphs, signs of our own and stacked fractions, each in its place.
//!
//! All three writers draw these pieces and nothing else, so that they cannot disagree about a figure. Places are in capital
//! heights along the base line, x right and y **down** (above the line is negative), as on the paper.

use kurbo::Affine;

use super::face;
use super::mark::{Hang, Text};

/// Digits of a stacked fraction, as a share of the whole figures (drawing practice: about 0.7), where that leaves them high enough.
const FRACTION: f64 = 0.7;
/// Digits of a fraction are no lower than this beside figures of this height and more, mm.
const LEAST_DIGITS: f64 = 2.5;
/// Clear space above and below the bar of a fraction, to the digits.
const BAR_GAP: f64 = 0.12;
/// How far the bar runs past the wider digits.
const BAR_OVERHANG: f64 = 0.05;
/// Space left and right of a fraction.
const FRACTION_SPACE: f64 = 0.12;
/// Stroke of the signs we draw ourselves: that of the face's own stems.
const STROKE: f64 = 0.11;
const BOLD_STROKE: f64 = 0.17;

/// A piece of laid lettering.
#[derive(Clone, Debug, PartialEq)]
pub enum Piece {
    /// A glyph of the face.
    Glyph {
        /// Its number in the face.
        number: u32,
        /// Where its origin stands.
        x: f64,
        /// Down from the base line.
        y: f64,
        /// Size against the line's own.
        size: f64,
        /// Whether it is a digit of a stacked fraction.
        in_fraction: bool,
    },
    /// A straight stroke with square ends.
    Stroke {
        /// One end.
        from: (f64, f64),
        /// Other end.
        to: (f64, f64),
        /// Its width.
        width: f64,
    },
    /// A ring.
    Ring {
        /// Its centre.
        centre: (f64, f64),
        /// Radius to the middle of the stroke.
        radius: f64,
        /// Width of the stroke.
        width: f64,
    },
}

/// A character that is read, for search and copying.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Read {
    /// The character.
    pub character: char,
    /// Its glyph in the face.
    pub number: u32,
    /// Where its room begins along the base line.
    pub x: f64,
    /// Width against the face's own at which its glyph fills its room.
    pub stretch: f64,
    /// Whether its glyph is also what is seen there; else a fraction or a sign of ours is.
    pub seen: bool,
}

/// A laid line of lettering, all in capital heights.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Laid {
    /// What is seen, in reading order. A space is seen nowhere and has no piece.
    pub pieces: Vec<Piece>,
    /// How long the line is.
    pub width: f64,
    /// Highest it reaches above the base line.
    pub above: f64,
    /// Lowest it reaches below the base line.
    pub below: f64,
    /// What is read, as one would type it: `1 13/16`, without braces.
    pub reads: Vec<Read>,
    /// The first character that can be neither lettered nor drawn; an empty box stands in its place.
    pub missing: Option<char>,
}

impl Laid {
    /// What is read, as one would type it.
    pub fn words(&self) -> String {
        self.reads.iter().map(|read| read.character).collect()
    }
}

/// Height of the digits of a stacked fraction beside figures of this capital height, as a share of it.
fn fraction_share(height: f64) -> f64 {
    (LEAST_DIGITS / height).clamp(FRACTION, 1.0)
}

/// How high a stacked fraction stands beside figures of this capital height, as a share of it.
pub fn stacked(height: f64) -> f64 {
    2.0 * (fraction_share(height) + BAR_GAP) + STROKE
}

/// Lays out a line of lettering, in capital heights from its start.
pub fn lay(text: &Text) -> Laid {
    lay_words(&text.words, text.height, text.bold)
}

/// Lays out words of this capital height, mm, in capital heights.
pub fn lay_words(words: &str, height: f64, bold: bool) -> Laid {
    let mut line = Line {
        laid: Laid {
            above: 1.0,
            ..Laid::default()
        },
        bold,
        fraction: fraction_share(height),
    };
    let mut rest = words;
    while let Some(open) = rest.find('{') {
        let Some((inside, length)) = braced(&rest[open..]) else {
            line.plain(&rest[..=open]);
            rest = &rest[open + 1..];
            continue;
        };
        line.plain(&rest[..open]);
        line.mixed_number(inside);
        rest = &rest[open + length..];
    }
    line.plain(rest);
    line.laid
}

/// From a line's own capital heights to mm of paper: set to height, hung, turned and put in its place.
pub fn placing(text: &Text, width: f64) -> Affine {
    let back = match text.hang {
        Hang::Start => 0.0,
        Hang::Middle => width / 2.0,
        Hang::End => width,
    };
    // Anticlockwise as one reads is a negative turn where y runs down.
    let (sin, cos) = quarter_true_sin_cos(-text.turn_deg);
    let h = text.height;
    Affine::new([cos * h, sin * h, -sin * h, cos * h, text.at.x, text.at.y])
        * Affine::translate((-back, 0.0))
}

/// Sine and cosine of an angle in degrees, exact at quarter turns: lettering that reads from the right stands truly upright.
fn quarter_true_sin_cos(degrees: f64) -> (f64, f64) {
    match degrees.rem_euclid(360.0) {
        0.0 => (0.0, 1.0),
        90.0 => (1.0, 0.0),
        180.0 => (0.0, -1.0),
        270.0 => (-1.0, 0.0),
        turned => {
            let radians = turned.to_radians();
            (
                crate::units::angle::sin(radians),
                crate::units::angle::cos(radians),
            )
        }
    }
}

/// A mixed number within braces.
struct MixedNumber<'a> {
    before: &'a str,
    numerator: &'a str,
    denominator: &'a str,
}

/// What stands in the braces at the start of this, where it ends in a fraction; and how long it is with its braces.
fn braced(text: &str) -> Option<(MixedNumber<'_>, usize)> {
    let close = text.find('}')?;
    let inside = &text[1..close];
    let (left, denominator) = inside.rsplit_once('/')?;
    let digits = left.bytes().rev().take_while(u8::is_ascii_digit).count();
    let (before, numerator) = left.split_at(left.len() - digits);
    let whole_digits = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
    (whole_digits(numerator) && whole_digits(denominator)).then_some((
        MixedNumber {
            before,
            numerator,
            denominator,
        },
        close + 1,
    ))
}

/// A line while it is laid out.
struct Line {
    laid: Laid,
    bold: bool,
    /// Digits of a fraction, as a share of the capital height.
    fraction: f64,
}

impl Line {
    fn plain(&mut self, words: &str) {
        let mut before = None;
        let mut characters = words.chars().peekable();
        while let Some(character) = characters.next() {
            let in_a_word = [before, characters.peek().copied()]
                .into_iter()
                .flatten()
                .any(char::is_alphabetic);
            before = Some(character);
            match character {
                '⌀' => self.diameter(),
                // The slashed o of a name keeps its letter; before a figure it is the diameter sign.
                'ø' if !in_a_word => self.diameter(),
                '□' => self.square(),
                _ => self.letter(character),
            }
        }
    }

    fn letter(&mut self, character: char) {
        let Some(glyph) = face::glyph(character, self.bold) else {
            self.laid.missing.get_or_insert(character);
            self.empty_box();
            return;
        };
        if glyph.inked {
            self.glyph(glyph, (self.laid.width, 0.0), 1.0, false);
        }
        self.laid.above = self.laid.above.max(glyph.above);
        self.laid.below = self.laid.below.max(glyph.below);
        self.read(character, glyph.advance, true);
    }

    fn glyph(&mut self, glyph: face::Glyph, (x, y): (f64, f64), size: f64, in_fraction: bool) {
        self.laid.pieces.push(Piece::Glyph {
            number: glyph.number,
            x,
            y,
            size,
            in_fraction,
        });
    }

    fn mixed_number(&mut self, number: MixedNumber<'_>) {
        let before = number.before.trim_end();
        self.plain(before);
        if before.ends_with(|last: char| last.is_ascii_digit()) {
            self.read(' ', FRACTION_SPACE, false);
        } else {
            self.laid.width += FRACTION_SPACE;
        }
        let upper = self.natural_width(number.numerator) * self.fraction;
        let lower = self.natural_width(number.denominator) * self.fraction;
        let room = upper.max(lower) + 2.0 * BAR_OVERHANG;
        let start = self.laid.width;
        let stroke = self.stroke();
        // The bar lies at half the height of the whole figures.
        let bar = -0.5;
        let above = bar - stroke / 2.0 - BAR_GAP;
        let below = bar + stroke / 2.0 + BAR_GAP + self.fraction;
        self.small_digits(number.numerator, start + (room - upper) / 2.0, above);
        self.laid.pieces.push(Piece::Stroke {
            from: (start, bar),
            to: (start + room, bar),
            width: stroke,
        });
        self.small_digits(number.denominator, start + (room - lower) / 2.0, below);
        self.laid.above = self.laid.above.max(self.fraction - above);
        self.laid.below = self.laid.below.max(below);
        let words = format!("{}/{}", number.numerator, number.denominator);
        let stretch = room / self.natural_width(&words);
        for character in words.chars() {
            let room = self.natural_width(character.encode_utf8(&mut [0; 4])) * stretch;
            self.read(character, room, false);
            // One figure for all of them, to the last digit: what differs is another run of letters to a reader.
            if let Some(read) = self.laid.reads.last_mut() {
                read.stretch = stretch;
            }
        }
        self.laid.width = start + room + FRACTION_SPACE;
    }

    fn small_digits(&mut self, digits: &str, start: f64, y: f64) {
        let mut x = start;
        for digit in digits.chars() {
            let glyph = face::glyph(digit, self.bold).expect("the bundled face has every digit");
            self.glyph(glyph, (x, y), self.fraction, true);
            x += glyph.advance * self.fraction;
        }
    }

    /// A ring struck through at 60°, as tall as a capital.
    fn diameter(&mut self) {
        let (width, stroke) = (self.natural_width("ø"), self.stroke());
        let centre = (self.laid.width + width / 2.0, -0.5);
        self.laid.pieces.push(Piece::Ring {
            centre,
            radius: 0.34 - stroke / 2.0,
            width: stroke,
        });
        // 0.29 across for 0.5 up is 60° from the base line.
        self.laid.pieces.push(Piece::Stroke {
            from: (centre.0 - 0.29, centre.1 + 0.5),
            to: (centre.0 + 0.29, centre.1 - 0.5),
            width: stroke,
        });
        self.read('ø', width, false);
    }

    /// The sign for the side of a square, as tall as a capital less its stroke.
    fn square(&mut self) {
        let stroke = self.stroke();
        let (left, right) = (self.laid.width + 0.14, self.laid.width + 0.86);
        self.frame(left, right, -0.86, -0.14, stroke);
        self.read('□', 1.0, false);
    }

    /// Stands for a character that the face lacks.
    fn empty_box(&mut self) {
        let stroke = self.stroke();
        let (left, right) = (self.laid.width + 0.1, self.laid.width + 0.7);
        self.frame(left, right, -1.0 + stroke / 2.0, -stroke / 2.0, stroke);
        self.read(char::REPLACEMENT_CHARACTER, 0.8, false);
    }

    fn frame(&mut self, left: f64, right: f64, top: f64, foot: f64, width: f64) {
        let half = width / 2.0;
        for (from, to) in [
            ((left - half, top), (right + half, top)),
            ((left - half, foot), (right + half, foot)),
            ((left, top), (left, foot)),
            ((right, top), (right, foot)),
        ] {
            self.laid.pieces.push(Piece::Stroke { from, to, width });
        }
    }

    fn natural_width(&self, words: &str) -> f64 {
        words
            .chars()
            .filter_map(|character| face::glyph(character, self.bold))
            .map(|glyph| glyph.advance)
            .sum()
    }

    /// Takes room for a character that is read there.
    fn read(&mut self, character: char, room: f64, seen: bool) {
        // The face has no square sign; its empty box stands beneath the drawn one, so that the sign can be found.
        let standing = if character == '□' { '☐' } else { character };
        let glyph = face::glyph(standing, self.bold);
        let stretch = glyph.map_or(room, |glyph| room / glyph.advance);
        self.laid.reads.push(Read {
            character,
            number: glyph.map_or(0, |glyph| glyph.number),
            x: self.laid.width,
            stretch: if seen { 1.0 } else { stretch },
            seen,
        });
        self.laid.width += room;
    }

    fn stroke(&self) -> f64 {
        if self.bold { BOLD_STROKE } else { STROKE }
    }
}
