//! Figures in the unit that a job or a source works in, and how they are written in a line of working.

use crate::spec::{Units, Written};
use crate::units::Length;
use crate::units::print::decimal;

/// The unit in which lengths are compared and reported.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Inches.
    Inch,
    /// Millimetres.
    Mm,
}

impl Unit {
    /// The unit that the job is drawn in; that of the plate's thickness where the job declares none.
    pub fn of_job(written: &Written) -> Unit {
        match written.job.units {
            Some(Units::Inches) => Unit::Inch,
            Some(Units::Millimetres) => Unit::Mm,
            None => Unit::as_written(written.plate.thickness.as_written()),
        }
    }

    /// The unit that a size was written in.
    pub fn as_written(text: &str) -> Unit {
        if text.contains("mm") {
            Unit::Mm
        } else {
            Unit::Inch
        }
    }

    /// A length in this unit.
    pub fn of(self, length: Length) -> f64 {
        match self {
            Unit::Inch => length.to_inches(),
            Unit::Mm => length.to_mm(),
        }
    }

    /// As printed.
    pub fn name(self) -> &'static str {
        match self {
            Unit::Inch => "in",
            Unit::Mm => "mm",
        }
    }

    /// A length with its unit, to the fourth place of an inch or the third of a millimetre.
    pub fn text(self, length: Length) -> String {
        match self {
            Unit::Inch => format!("{} in", decimal(length.to_inches(), 4)),
            Unit::Mm => format!("{} mm", decimal(length.to_mm(), 3)),
        }
    }
}

/// A figure for a line of working: six places at most, trailing noughts off, thousands parted.
pub fn figure(value: f64) -> String {
    let places = if value.abs() >= 1000.0 { 2 } else { 6 };
    let text = decimal(value, places);
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    parted(text)
}

/// A figure to so many places, thousands parted: 181,458.
pub fn rounded(value: f64, places: usize) -> String {
    parted(&decimal(value, places))
}

/// Parts the thousands of a written number.
fn parted(text: &str) -> String {
    let (sign, digits) = text
        .strip_prefix('-')
        .map_or(("", text), |rest| ("-", rest));
    let (whole, rest) = digits
        .split_once('.')
        .map_or((digits, None), |(w, r)| (w, Some(r)));
    let mut out = String::from(sign);
    for (i, digit) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i) % 3 == 0 {
            out.push(',');
        }
        out.push(digit);
    }
    if let Some(rest) = rest {
        out.push('.');
        out.push_str(rest);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn by_hand_figures_are_parted_and_trimmed() {
        assert_eq!(figure(181_458.391_68), "181,458.39");
        assert_eq!(figure(1.84375), "1.84375");
        assert_eq!(figure(0.5), "0.5");
        assert_eq!(figure(100.0), "100");
        assert_eq!(rounded(-1_234_567.0, 0), "-1,234,567");
        assert_eq!(rounded(999.96, 1), "1,000.0");
    }
}
