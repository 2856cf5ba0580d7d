//! Lengths as people read them. No figure is rounded before it comes here, and each kind is rounded here alone.

use super::Length;
use super::tolerance::SAME_LENGTH_MM;

/// A length as whole inches and 64ths reduced to lowest terms, with what the fraction leaves over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InchFraction {
    /// Whether the length is below nothing.
    pub negative: bool,
    /// Whole inches.
    pub whole: i64,
    /// Over …
    pub numerator: i64,
    /// … this; 1 where there is no fraction.
    pub denominator: i64,
    /// Length less the fraction: nothing where it is exact.
    pub remainder: Length,
}

/// The nearest 64th of an inch, with its remainder.
pub fn inch_fraction(length: Length) -> InchFraction {
    let count = (length.abs().to_inches() * 64.0).round() as i64;
    let negative = length < Length::ZERO && count > 0;
    let signed = if negative { -count } else { count };
    let (whole, mut numerator, mut denominator) = (count / 64, count % 64, 64);
    while numerator % 2 == 0 && denominator > 1 {
        numerator /= 2;
        denominator /= 2;
    }
    InchFraction {
        negative,
        whole,
        numerator,
        denominator,
        remainder: length - Length::sixty_fourths(signed),
    }
}

/// Inches as a mixed fraction, `1 13/16`; `~1 13/16` where it is rounded to the 64th. No unit.
pub fn inches(length: Length) -> String {
    let f = inch_fraction(length);
    let mut text = String::new();
    if f.remainder.abs().to_mm() > SAME_LENGTH_MM {
        text.push('~');
    }
    if f.negative {
        text.push('-');
    }
    match (f.whole, f.numerator) {
        (whole, 0) => text.push_str(&whole.to_string()),
        (0, n) => text.push_str(&format!("{n}/{}", f.denominator)),
        (whole, n) => text.push_str(&format!("{whole} {n}/{}", f.denominator)),
    }
    text
}

/// A number to so many places, never `-0.0`.
pub fn decimal(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    match text.strip_prefix('-') {
        Some(digits) if digits.chars().all(|c| c == '0' || c == '.') => digits.to_string(),
        _ => text,
    }
}

/// A number to so many places at most, trailing noughts left off.
pub fn trimmed(value: f64, places: usize) -> String {
    let text = decimal(value, places);
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_string(),
        false => text,
    }
}

/// Millimetres to two places at most, trailing noughts left off. No unit.
pub fn millimetres(length: Length) -> String {
    trimmed(length.to_mm(), 2)
}
