//! How a length reads on a sheet of this job: inch fractions or millimetres.

use crate::spec::{Spec, Units};
use crate::units::{Length, Size, print};

/// The unit habit of a job's sheets.
#[derive(Clone, Copy, Debug)]
pub struct Figures {
    units: Units,
    both: bool,
}

impl Figures {
    /// The habit of this job; a job that declares no unit is drawn in millimetres, and says so in its title block.
    pub fn of(spec: &Spec) -> Figures {
        Figures {
            units: spec.written.job.units.unwrap_or(Units::Millimetres),
            both: spec.written.sheets.both_units,
        }
    }

    /// Whether sheets are in inches.
    pub fn in_inches(self) -> bool {
        self.units == Units::Inches
    }

    /// Words for the title block.
    pub fn unit_words(self) -> &'static str {
        match (self.units, self.both) {
            (Units::Inches, false) => "INCHES UNLESS STATED",
            (Units::Inches, true) => "INCHES, MILLIMETRES IN [ ]",
            (Units::Millimetres, false) => "MILLIMETRES UNLESS STATED",
            (Units::Millimetres, true) => "MILLIMETRES, INCHES IN [ ]",
        }
    }

    /// A length in the job's unit: `{1 13/16}` stacked, `~` where it is rounded to the 64th, or millimetres.
    pub fn short(self, length: Length) -> String {
        match self.units {
            Units::Inches => stacked(&print::inches(length)),
            Units::Millimetres => print::millimetres(length),
        }
    }

    /// A size from what was written: a decimal that was written stays a decimal.
    pub fn size(self, size: &Size) -> String {
        self.with_other(self.size_short(size), size.value())
    }

    /// A size from what was written, in the job's unit alone.
    pub fn size_short(self, size: &Size) -> String {
        let rounded = self.short(size.value());
        let written = size.as_written().trim_end_matches(" in").trim();
        let decimal = written.parse::<f64>().is_ok() && size.as_written().ends_with("in");
        if self.in_inches() && rounded.starts_with('~') && decimal {
            written.to_string()
        } else {
            rounded
        }
    }

    /// A diameter for a drawing, the sign of rounding before that of the diameter.
    pub fn diameter(self, length: Length) -> String {
        let words = self.short(length);
        match words.strip_prefix('~') {
            Some(rounded) => format!("~⌀{rounded}"),
            None => format!("⌀{words}"),
        }
    }

    /// For tables: in inches a fraction and its decimal, or its millimetres where the job asks for both; else millimetres.
    pub fn table(self, length: Length) -> String {
        match self.units {
            Units::Inches => {
                let fraction = stacked(&print::inches(length));
                if self.both {
                    format!("{fraction} [{}]", print::millimetres(length))
                } else if fraction.contains('/') {
                    format!("{fraction} = {}", self.decimal(length))
                } else {
                    fraction
                }
            }
            Units::Millimetres => print::millimetres(length),
        }
    }

    /// A length for the cutter, who works in millimetres: after inches they stand in [ ], whatever the job's other sheets do.
    pub fn for_cutter(self, length: Length) -> String {
        self.with_mm(self.short(length), length)
    }

    /// A size for the cutter.
    pub fn size_for_cutter(self, size: &Size) -> String {
        self.with_mm(self.size_short(size), size.value())
    }

    /// A diameter for the cutter.
    pub fn diameter_for_cutter(self, length: Length) -> String {
        self.with_mm(self.diameter(length), length)
    }

    fn with_mm(self, words: String, length: Length) -> String {
        match self.units {
            Units::Inches => format!("{words} [{}]", print::millimetres(length)),
            Units::Millimetres => words,
        }
    }

    /// A decimal of the job's unit: three places of an inch, two of a millimetre.
    pub fn decimal(self, length: Length) -> String {
        match self.units {
            Units::Inches => print::decimal(length.to_inches(), 3),
            Units::Millimetres => print::decimal(length.to_mm(), 2),
        }
    }

    /// The unit's sign for heads of tables.
    pub fn unit_sign(self) -> &'static str {
        match self.units {
            Units::Inches => "in",
            Units::Millimetres => "mm",
        }
    }

    /// A mass in the unit that the job's people lift by.
    pub fn mass(self, kg: f64) -> String {
        match self.units {
            Units::Inches => format!(
                "{} lb ({} kg)",
                print::decimal(kg / crate::units::KG_PER_LB, 1),
                print::decimal(kg, 1)
            ),
            Units::Millimetres => format!("{} kg", print::decimal(kg, 1)),
        }
    }

    fn with_other(self, short: String, length: Length) -> String {
        match (self.both, self.units) {
            (false, _) => short,
            (true, Units::Inches) => format!("{short} [{}]", print::millimetres(length)),
            (true, Units::Millimetres) => {
                format!("{short} [{}]", stacked(&print::inches(length)))
            }
        }
    }
}

/// The nearest 64th of an inch, stacked, `~` where it is rounded.
pub fn stacked_inches(length: Length) -> String {
    stacked(&print::inches(length))
}

/// Puts a fraction in braces, so that the face stacks it; the sign of rounding stays outside.
fn stacked(inches: &str) -> String {
    let (sign, rest) = match inches.strip_prefix('~') {
        Some(rest) => ("~", rest),
        None => ("", inches),
    };
    let (minus, rest) = match rest.strip_prefix('-') {
        Some(rest) => ("-", rest),
        None => ("", rest),
    };
    if rest.contains('/') {
        format!("{sign}{minus}{{{rest}}}")
    } else {
        format!("{sign}{minus}{rest}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCHES: Figures = Figures {
        units: Units::Inches,
        both: false,
    };

    /// 1.8125 in is 1 13/16 exactly; 14.266 in lies near 14 17/64 (14.265625) and is marked as rounded.
    #[test]
    fn by_hand_fractions_are_stacked_and_rounding_is_told() {
        assert_eq!(INCHES.short(Length::inches(1.8125)), "{1 13/16}");
        assert_eq!(INCHES.short(Length::inches(14.266)), "~{14 17/64}");
        assert_eq!(INCHES.short(Length::inches(38.0)), "38");
        assert_eq!(INCHES.short(Length::inches(-0.5)), "-{1/2}");
    }

    /// 43 15/16 in is 1116.0125 mm, and 1116.01 to two places; a job in millimetres has no need of a second figure.
    #[test]
    fn by_hand_the_cutter_reads_millimetres() {
        let length = Length::inches(43.9375);
        assert_eq!(INCHES.for_cutter(length), "{43 15/16} [1116.01]");
        assert_eq!(INCHES.diameter_for_cutter(length), "⌀{43 15/16} [1116.01]");
        let metric = Figures {
            units: Units::Millimetres,
            both: true,
        };
        assert_eq!(metric.for_cutter(length), "1116.01");
    }

    /// A decimal that the office wrote is not turned into a rounded fraction.
    #[test]
    fn by_hand_written_decimal_stays() {
        let size = Size::read("1.4 in").expect("a decimal of an inch");
        assert_eq!(INCHES.size(&size), "1.4");
    }
}
