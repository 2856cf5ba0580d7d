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

/// A number to so many places, never `-0.0`. Half of the last place goes away from nought, as by hand: 66.675 is 66.68 although the
/// nearest number that a machine holds lies a hair under it.
pub fn decimal(value: f64, places: usize) -> String {
    decimal_by_integers(value, places).unwrap_or_else(|| decimal_in_general(value, places))
}

fn decimal_in_general(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    match text.strip_prefix('-') {
        Some(digits) if digits.chars().all(|c| c == '0' || c == '.') => digits.to_string(),
        _ => text,
    }
}

/// The figure by way of whole numbers: as people round, and quick for the hundred thousand places that a large sheet holds. Nothing
/// where the number is too large for it; there no half of a last place can be told from what is beside it.
fn decimal_by_integers(value: f64, places: usize) -> Option<String> {
    const MOST: f64 = 1e9;
    // Scaling and what went before err by some MOST × 2⁻⁵³, a ten-millionth of the last place.
    const NEAR_THE_MIDDLE: f64 = 1e-6;
    let scale = 10_u64.checked_pow(u32::try_from(places).ok()?)?;
    let scaled = value.abs() * scale as f64;
    if scaled.is_nan() || scaled >= MOST {
        return None;
    }
    let count = (scaled + NEAR_THE_MIDDLE).round() as u64;
    let mut text = String::with_capacity(places + 12);
    if value < 0.0 && count > 0 {
        text.push('-');
    }
    let (whole, mut rest) = (count / scale, count % scale);
    push_whole(&mut text, whole);
    if places > 0 {
        text.push('.');
    }
    let mut unit = scale / 10;
    while unit > 0 {
        text.push(digit(rest / unit));
        rest %= unit;
        unit /= 10;
    }
    Some(text)
}

fn push_whole(text: &mut String, whole: u64) {
    let mut unit = 1;
    while whole / unit >= 10 {
        unit *= 10;
    }
    while unit > 0 {
        text.push(digit(whole / unit % 10));
        unit /= 10;
    }
}

fn digit(value: u64) -> char {
    char::from(b'0' + value as u8)
}

/// A number to so many places at most, trailing noughts left off.
pub fn trimmed(value: f64, places: usize) -> String {
    let mut text = decimal(value, places);
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    text
}

/// Millimetres to two places at most, trailing noughts left off. No unit.
pub fn millimetres(length: Length) -> String {
    trimmed(length.to_mm(), 2)
}

/// A stress as it was typed, with the signs that print has: "23 tonf/in²" of "23 tonf/in2".
pub fn stress_as_printed(written: &str) -> String {
    written.replace("mm2", "mm²").replace("in2", "in²")
}

/// Inches to the nearest 64th with what that leaves over, where it leaves anything: `1 31/32 in less 0.006 mm`.
pub fn inches_with_remainder(length: Length) -> String {
    let remainder = inch_fraction(length).remainder;
    let fraction = inches(length);
    let over = remainder.abs().to_mm();
    if over <= SAME_LENGTH_MM {
        return format!("{fraction} in");
    }
    let word = match remainder > Length::ZERO {
        true => "and",
        false => "less",
    };
    let over = match over < 0.000_5 {
        true => "under 0.001".into(),
        false => decimal(over, 3),
    };
    format!("{fraction} in {word} {over} mm")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 50 mm = 1.968504 in = 125.984 64ths, so 126: 1 31/32 in = 50.00625 mm, which is 0.006 too much.
    /// 12 mm = 30.236 64ths, so 30: 15/32 in = 11.90625 mm, 0.094 too little. 0.1 mm = 0.252 64ths: nothing, 0.100 left.
    #[test]
    fn by_hand_conversions_say_their_remainder() {
        let said = |mm| inches_with_remainder(Length::mm(mm));
        assert_eq!(said(50.0), "~1 31/32 in less 0.006 mm");
        assert_eq!(said(12.0), "~15/32 in and 0.094 mm");
        assert_eq!(said(0.1), "~0 in and 0.100 mm");
        assert_eq!(said(44.45), "1 3/4 in");
        assert_eq!(said(-12.0), "~-15/32 in less 0.094 mm");
    }

    /// 46.0375 mm is 1 13/16 in; half a 64th is 0.198 mm.
    #[test]
    fn by_hand_fractions_in_lowest_terms() {
        assert_eq!(inches(Length::mm(46.0375)), "1 13/16");
        assert_eq!(inches(Length::mm(-46.0375)), "-1 13/16");
        assert_eq!(inches(Length::mm(12.7)), "1/2");
        assert_eq!(inches(Length::mm(25.4)), "1");
        assert_eq!(inches(Length::mm(0.0)), "0");
        assert_eq!(inches(Length::mm(-0.1)), "~0");
    }

    #[test]
    fn by_hand_decimals() {
        assert_eq!(decimal(-0.004, 2), "0.00");
        assert_eq!(decimal(-0.006, 2), "-0.01");
        assert_eq!(trimmed(46.50, 2), "46.5");
        assert_eq!(trimmed(100.0, 2), "100");
        assert_eq!(trimmed(100.0, 0), "100");
        assert_eq!(millimetres(Length::mm(46.0375)), "46.04");
    }

    /// A half is rounded away from nought whichever side of it the machine's number lies: 2 5/8 in is 66.675 mm, 4 5/8 in 117.475 mm,
    /// 1 1/8 in 28.575 mm, 3 5/16 in 3.3125 and 1/16 in 0.0625.
    #[test]
    fn by_hand_halves_go_away_from_nought() {
        let inches = |inches: f64| decimal(inches * 25.4, 2);
        assert_eq!(inches(2.625), "66.68");
        assert_eq!(inches(4.625), "117.48");
        assert_eq!(inches(1.125), "28.58");
        assert_eq!(decimal(3.3125, 3), "3.313");
        assert_eq!(decimal(0.0625, 3), "0.063");
        assert_eq!(decimal(-0.0625, 3), "-0.063");
        assert_eq!(decimal(224.5, 0), "225");
        assert_eq!(decimal(225.5, 0), "226");
        for step in 0..40_000_u32 {
            let middle = f64::from(step) + 0.5;
            for value in [middle, middle.next_up(), middle.next_down()] {
                assert_eq!(decimal(value, 0), (step + 1).to_string(), "{value:e}");
            }
        }
    }

    /// Away from the middles both ways give the same figure, and the general way alone takes what is large or no number.
    #[test]
    fn holds_both_ways_to_a_decimal_agree() {
        let mut by_integers = 0;
        for step in -40_000..=40_000_i32 {
            let middle = f64::from(step) * 0.000_5;
            for value in [
                middle + 0.000_01,
                middle - 0.000_01,
                middle * 997.3 + 0.000_03,
            ] {
                let told = decimal_by_integers(value, 3);
                by_integers += usize::from(told.is_some());
                assert!(
                    told.is_none_or(|told| told == decimal_in_general(value, 3)),
                    "{value:e}"
                );
            }
        }
        assert!(by_integers > 100_000);
        for value in [f64::NAN, f64::INFINITY, 1e300, -1e300, 123_456_789.123_456] {
            assert_eq!(decimal_by_integers(value, 6), None);
        }
    }

    /// The fraction and its remainder make the length again, and the remainder is never over half a 64th, 0.1984375 mm.
    #[test]
    fn holds_fraction_and_remainder_make_the_length() {
        for step in -50_000..=50_000 {
            let length = Length::mm(f64::from(step) * 0.017_3);
            let f = inch_fraction(length);
            let count = (f.whole * f.denominator + f.numerator) * 64 / f.denominator;
            let signed = if f.negative { -count } else { count };
            assert!((Length::sixty_fourths(signed) + f.remainder).same_as(length));
            assert!(f.remainder.abs().to_mm() <= 0.198_437_5 + SAME_LENGTH_MM);
        }
    }
}
