//! Evens out how a quantity may be typed, then parts it into numbers, fractions and words.

use std::borrow::Cow;

/// A piece of a written quantity.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Piece<'a> {
    /// Digits, perhaps with a decimal point: `56`, `1.8125`.
    Number(&'a str),
    /// Two numbers with a stroke and no space between: `13/16`, and `1.3/16` too.
    Fraction(&'a str, &'a str),
    /// A hyphen; `spaced` where a space stands before it.
    Hyphen {
        /// Whether a space stands before it.
        spaced_before: bool,
        /// Whether a space stands after it.
        spaced_after: bool,
    },
    /// A unit or any other run of letters and signs: `in`, `mm`, `"`, `lbf/in2`.
    Word(&'a str),
}

/// Vulgar-fraction characters of keyboards and word processors, as plain fractions.
const VULGAR: &[(char, &str)] = &[
    ('½', "1/2"),
    ('¼', "1/4"),
    ('¾', "3/4"),
    ('⅛', "1/8"),
    ('⅜', "3/8"),
    ('⅝', "5/8"),
    ('⅞', "7/8"),
    ('⅓', "1/3"),
    ('⅔', "2/3"),
    ('⅕', "1/5"),
    ('⅖', "2/5"),
    ('⅗', "3/5"),
    ('⅘', "4/5"),
    ('⅙', "1/6"),
    ('⅚', "5/6"),
    ('⅐', "1/7"),
    ('⅑', "1/9"),
    ('⅒', "1/10"),
];

const RAISED: &str = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const LOWERED: &str = "₀₁₂₃₄₅₆₇₈₉";

/// Typographic signs as the plain ones a keyboard has: `1½”` becomes `1 1/2"`.
///
/// Full-width digits stay as they are, so that they are refused with a reading offered.
pub(super) fn evened(text: &str) -> Cow<'_, str> {
    let text = text.trim();
    if text.is_ascii() && !text.contains('\t') && !text.contains("''") {
        return text.into();
    }
    let mut plain = String::with_capacity(text.len());
    let mut last_raised = false;
    for c in text.chars() {
        let raised = digit_in(RAISED, c);
        // A raised figure, or a fraction in one character, opens a fraction after a whole number.
        let opens_fraction =
            VULGAR.iter().any(|(sign, _)| *sign == c) || (raised.is_some() && !last_raised);
        if opens_fraction && plain.ends_with(|last: char| last.is_ascii_digit()) {
            plain.push(' ');
        }
        last_raised = raised.is_some();
        match c {
            '\u{2044}' | '\u{2215}' => plain.push('/'),
            '\u{2032}' | '\u{2018}' | '\u{2019}' => plain.push('\''),
            '\u{2033}' | '\u{201c}' | '\u{201d}' => plain.push('"'),
            '\u{2212}' | '\u{2010}' | '\u{2011}' | '\u{2013}' => plain.push('-'),
            '\u{a0}' | '\u{2009}' | '\u{202f}' | '\t' => plain.push(' '),
            '²' => plain.push('2'),
            '³' => plain.push('3'),
            other => match VULGAR.iter().find(|(sign, _)| *sign == other) {
                Some((_, fraction)) => plain.push_str(fraction),
                None => plain.push(raised.or(digit_in(LOWERED, other)).unwrap_or(other)),
            },
        }
    }
    plain.replace("''", "\"").into()
}

fn digit_in(row: &str, c: char) -> Option<char> {
    let place = row.chars().position(|digit| digit == c)?;
    char::from_digit(place as u32, 10)
}

/// Parts evened text into pieces. Anything that is neither number, fraction nor hyphen is a word.
pub(super) fn pieces(text: &str) -> Vec<Piece<'_>> {
    // Number, fraction and unit: few sizes have more.
    let mut pieces = Vec::with_capacity(4);
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let (piece, left) = match first {
            ' ' => {
                rest = &rest[1..];
                continue;
            }
            '-' => hyphen(text, rest),
            '0'..='9' | '.' => number_or_fraction(rest),
            '"' | '\'' => (Piece::Word(&rest[..1]), &rest[1..]),
            _ => word(rest),
        };
        pieces.push(piece);
        rest = left;
    }
    pieces
}

fn hyphen<'a>(text: &str, rest: &'a str) -> (Piece<'a>, &'a str) {
    let before = &text[..text.len() - rest.len()];
    let piece = Piece::Hyphen {
        spaced_before: before.ends_with(' '),
        spaced_after: rest[1..].starts_with(' '),
    };
    (piece, &rest[1..])
}

fn number_or_fraction(rest: &str) -> (Piece<'_>, &str) {
    let digits = |text: &str| {
        text.find(|c: char| !c.is_ascii_digit() && c != '.')
            .unwrap_or(text.len())
    };
    let end = digits(rest);
    let (top, left) = rest.split_at(end);
    if let Some(after) = left.strip_prefix('/') {
        let end = digits(after);
        if end > 0 {
            let (bottom, left) = after.split_at(end);
            return (Piece::Fraction(top, bottom), left);
        }
    }
    (Piece::Number(top), left)
}

fn word(rest: &str) -> (Piece<'_>, &str) {
    // A digit belongs to the word where it has begun as one: `lbf/in2`. A hyphen, a space or a mark ends it.
    let end = rest
        .find([' ', '-', '"', '\''])
        .filter(|end| *end > 0)
        .unwrap_or(rest.len());
    let (word, left) = rest.split_at(end);
    (Piece::Word(word), left)
}
