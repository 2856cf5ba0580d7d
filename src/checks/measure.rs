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

    /// Whether anything of a length is seen when it is printed to the places of [`Unit::text`].
    pub fn shows(self, length: Length) -> bool {
        self.text(length.abs()) != self.text(Length::ZERO)
    }

    /// A difference with its unit and its sign; without a sign where nothing of it is seen.
    pub fn signed(self, length: Length) -> String {
        let sign = match length {
            _ if !self.shows(length) => "",
            _ if length < Length::ZERO => "−",
            _ => "+",
        };
        format!("{sign}{}", self.text(length.abs()))
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

/// Places to which a figure of this unit is shown.
pub(super) fn places_of(unit: &str) -> usize {
    match unit {
        "in" => 4,
        "bar" | "m2" => 2,
        "%" | "mm2" | "kN" => 1,
        "psi" | "lb" | "ft2" => 0,
        _ => 3,
    }
}

/// A figure with its unit, as a table shows it.
pub fn shown(value: f64, unit: &str) -> String {
    with_unit(rounded(value, places_of(unit)), unit)
}

/// Two compared figures, with as many places as it takes to see that they differ: rounding must not hide a shortfall.
pub fn shown_apart(required: f64, provided: f64, unit: &str) -> (String, String) {
    const MOST_PLACES: usize = 7;
    let mut places = places_of(unit);
    while places < MOST_PLACES
        && required != provided
        && rounded(required, places) == rounded(provided, places)
    {
        places += 1;
    }
    let text = |value| with_unit(rounded(value, places), unit);
    // Two figures still alike are one, but for the rounding of their sums.
    if rounded(required, places) == rounded(provided, places) {
        return (shown(required, unit), shown(provided, unit));
    }
    (text(required), text(provided))
}

pub(super) fn with_unit(figure: String, unit: &str) -> String {
    match unit {
        "" => figure,
        "in2" => format!("{figure} in²"),
        "N/mm2" => format!("{figure} N/mm²"),
        "ft2" => format!("{figure} ft²"),
        "mm2" => format!("{figure} mm²"),
        "m2" => format!("{figure} m²"),
        _ => format!("{figure} {unit}"),
    }
}

/// Parts the thousands of a written number, and writes a minus as print does.
fn parted(text: &str) -> String {
    let (sign, digits) = text
        .strip_prefix('-')
        .map_or(("", text), |rest| ("−", rest));
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
        assert_eq!(rounded(-1_234_567.0, 0), "−1,234,567");
        assert_eq!(rounded(999.96, 1), "1,000.0");
    }

    #[test]
    fn by_hand_figures_with_their_units() {
        let all = [
            (1.84375, "in"),
            (17.5754, "mm"),
            (1.10316, "N/mm2"),
            (173.5288, "in2"),
            (56.0229, "%"),
            (6876.8, "psi"),
            (181_458.4, "lb"),
            (15.708, "ft2"),
            (645.16, "mm2"),
            (1.4593, "m2"),
            (10.9754, ""),
            (23.0, "tonf/in2"),
        ];
        let shown = all.map(|(value, unit)| shown(value, unit));
        assert_eq!(
            shown,
            [
                "1.8438 in",
                "17.575 mm",
                "1.103 N/mm²",
                "173.529 in²",
                "56.0 %",
                "6,877 psi",
                "181,458 lb",
                "16 ft²",
                "645.2 mm²",
                "1.46 m²",
                "10.975",
                "23.000 tonf/in2",
            ]
        );
    }

    #[test]
    fn by_hand_rounding_hides_no_shortfall() {
        let pair = |a: &str, b: &str| (a.to_string(), b.to_string());
        assert_eq!(
            shown_apart(0.73046875, 0.75, "in"),
            pair("0.7305 in", "0.7500 in")
        );
        assert_eq!(
            shown_apart(17.575, 17.57496, "mm"),
            pair("17.57500 mm", "17.57496 mm")
        );
        assert_eq!(shown_apart(38.0, 38.0, "%"), pair("38.0 %", "38.0 %"));
        for hair in [1e-12, 2e-8] {
            assert_eq!(
                shown_apart(1.4, 1.4 + hair, "in"),
                pair("1.4000 in", "1.4000 in")
            );
        }
        assert_eq!(
            shown_apart(1.40625, 1.40625 + 1e-16, "in"),
            // A half is rounded away from nought: 1.40625 is 1.4063.
            pair("1.4063 in", "1.4063 in")
        );
    }
}
