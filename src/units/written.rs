//! Quantities as the trade writes them: what was meant, beside the text that was written.
//!
//! A size is printed from what was written, never from a converted decimal.

use std::borrow::Cow;
use std::fmt;
use std::sync::Arc;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::print::trimmed;
use super::{Density, Length, Stress};

/// A kind of quantity that a spec can hold: how it is read, and what the JSON Schema calls it.
pub trait Quantity: Copy + fmt::Debug {
    /// The word by which the schema marks a value of this kind (`format`).
    const FORMAT: &'static str;

    /// Reads one written value, with its unit. The error is the fact alone: the place and the remedy are the reader's.
    fn read(text: &str) -> Result<Self, Unread>;
}

/// Why a written value could not be read, and the nearest sensible reading where there is one (offered, never taken).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unread {
    /// What is wrong with the text, in a few words: "1 7/15 in: 7/15 is not a fraction of an inch that a rule carries".
    pub fact: String,
    /// What to write instead.
    pub remedy: String,
}

/// A quantity together with the text it was written as, unit included.
#[derive(Clone, Debug, PartialEq)]
pub struct Written<Q> {
    value: Q,
    text: Arc<str>,
}

/// A length as written.
pub type Size = Written<Length>;
/// A pressure or strength as written.
pub type Strength = Written<Stress>;
/// Mass for volume as written.
pub type Heaviness = Written<Density>;

impl<Q: Quantity> Written<Q> {
    /// Reads a written value.
    pub fn read(text: &str) -> Result<Written<Q>, Unread> {
        Ok(Written {
            value: Q::read(text)?,
            text: text.trim().into(),
        })
    }

    /// What was meant.
    pub fn value(&self) -> Q {
        self.value
    }

    /// The text as written, with its unit.
    pub fn as_written(&self) -> &str {
        &self.text
    }
}

impl Size {
    /// A length that was worked out and not written: its value is exact, and its text to the sixth place of a millimetre.
    pub fn reckoned(length: Length) -> Size {
        Written {
            value: length,
            text: format!("{} mm", trimmed(length.to_mm(), 6)).into(),
        }
    }
}

impl<Q: Quantity> fmt::Display for Written<Q> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

impl<'de, Q: Quantity> Deserialize<'de> for Written<Q> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Written::read(&text).map_err(|unread| {
            serde::de::Error::custom(format!("{}; {}", unread.fact, unread.remedy))
        })
    }
}

impl<Q: Quantity> Serialize for Written<Q> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.text)
    }
}

impl<Q: Quantity> schemars::JsonSchema for Written<Q> {
    fn schema_name() -> Cow<'static, str> {
        Q::FORMAT.into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": ["string", "number"], "format": Q::FORMAT })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What is accepted: each row is read, and comes to this many millimetres exactly. Worked from 25.4 mm to the inch.
    const ACCEPTED: &[(&str, f64)] = &[
        ("1 13/16 in", 46.0375),
        ("1-13/16 in", 46.0375),
        ("1-13/16\"", 46.0375),
        ("1 13/16\"", 46.0375),
        ("1 13/16 inches", 46.0375),
        ("1.8125 in", 46.0375),
        ("1.8125in", 46.0375),
        ("46.0375 mm", 46.0375),
        ("4.60375 cm", 46.0375),
        ("1 in", 25.4),
        ("1 in.", 25.4),
        ("1 inch", 25.4),
        ("1.75 in", 44.45),
        ("1¾ in", 44.45),
        ("1 ¾ in", 44.45),
        ("1-¾″", 44.45),
        ("1³⁄₄ in", 44.45),
        ("1 3\u{2044}4 in", 44.45),
        ("½ in", 12.7),
        ("⅞\"", 22.225),
        ("⅛”", 3.175),
        ("7/8\"", 22.225),
        ("0.5 in", 12.7),
        (".5 in", 12.7),
        ("2/4 in", 12.7),
        ("1/128 in", 0.1984375),
        ("3 ft 0 1/2 in", 927.1),
        ("3 ft. 0 1/2 in.", 927.1),
        ("3ft 0½in", 927.1),
        ("3'-0 1/2\"", 927.1),
        ("3' 0 1/2\"", 927.1),
        ("3′0½″", 927.1),
        ("3’ 0 1/2’’", 927.1),
        ("3 ft-0.5 in", 927.1),
        ("3 ft", 914.4),
        ("3'", 914.4),
        ("2 1/2 ft", 762.0),
        ("9 feet", 2743.2),
        ("1 foot 6 in", 457.2),
        ("46 mm", 46.0),
        ("46mm", 46.0),
        ("  46  mm ", 46.0),
        ("46\u{a0}mm", 46.0),
        ("0.84 m", 840.0),
        ("84 cm", 840.0),
        ("0 mm", 0.0),
        ("0 in", 0.0),
        ("-14 17/64 in", -362.346875),
        ("−14 17/64 in", -362.346875),
        ("- 14 17/64 in", -362.346875),
        ("-1-1/2 in", -38.1),
        ("-3 ft 6 in", -1066.8),
        ("+60 mm", 60.0),
    ];

    /// What is refused, and what is offered in its place: never taken.
    const REFUSED: &[(&str, &str, &str)] = &[
        (
            "1 7/15 in",
            "7/15 is not a fraction that a rule carries",
            "write 1 7/16 in or 1.4667 in, whichever is meant",
        ),
        (
            "⅓ in",
            "1/3 is not a fraction that a rule carries",
            "write 1/2 in or 0.3333 in, whichever is meant",
        ),
        (
            "3/256 in",
            "3/256 is not a fraction that a rule carries",
            "write 3/128 in or 0.0117 in, whichever is meant",
        ),
        (
            "113/16 in",
            "113/16 is not less than one",
            "write 1 13/16 in or 7 1/16 in, whichever is meant",
        ),
        (
            "1 5/4 in",
            "5/4 is not less than one",
            "write 2 1/4 in if that is meant",
        ),
        (
            "16/16 in",
            "16/16 is not less than one",
            "write 1 6/16 in or 1 in, whichever is meant",
        ),
        (
            "3/0 in",
            "3/0 is not a size",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
        (
            "1.3/16 in",
            "`1.3/16` mixes a decimal with a fraction",
            "write 1 3/16 in if that is meant",
        ),
        (
            "1 3 / 4in",
            "it is not one number",
            "write 1 3/4 in if that is meant",
        ),
        (
            "1 3/ 4 in",
            "it is not one number",
            "write 1 3/4 in if that is meant",
        ),
        (
            "1 - 3/4 in",
            "a spaced hyphen may mean less, or from one to another",
            "write 1 3/4 in if that is meant",
        ),
        (
            "12:30",
            "a colon belongs to the time of day",
            "write 12.30 in or 12.30 mm, whichever is meant",
        ),
        (
            "12:30 in",
            "a colon belongs to the time of day",
            "write 12.30 in if that is meant",
        ),
        (
            "46,04 mm",
            "a comma is not read; the decimal mark is a point",
            "write 46.04 mm if that is meant",
        ),
        (
            "1,250 mm",
            "a comma is not read; the decimal mark is a point",
            "write 1.250 mm or 1250 mm, whichever is meant",
        ),
        (
            "1e3 mm",
            "a power of ten is not read",
            "write 1000 mm if that is meant",
        ),
        (
            "2.5E-1 in",
            "a power of ten is not read",
            "write 0.25 in if that is meant",
        ),
        (
            "NaN",
            "that is not a number",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
        (
            ".inf",
            "that is not a number",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
        (
            "１２ mm",
            "its digits are full-width characters",
            "write 12 mm if that is meant",
        ),
        (
            "1 13/16",
            "it has no unit",
            "write 1 13/16 in if that is meant",
        ),
        (
            "46",
            "it has no unit",
            "write 46 in or 46 mm, whichever is meant",
        ),
        (
            "46 MM",
            "`MM` is not a unit; units are written small",
            "write 46 mm if that is meant",
        ),
        (
            "46 furlongs",
            "`furlongs` is not a unit of length",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
        (
            "2 yd",
            "`yd` is not a unit of length",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
        (
            "5/8 mm",
            "a fraction belongs to inches; a metric size is a decimal",
            "write 0.625 mm or 5/8 in, whichever is meant",
        ),
        (
            "3 ft 14 in",
            "twelve inches or more stand after the feet",
            "write 50 in if that is meant",
        ),
        (
            "3 ft 0 1/2",
            "the inches have no unit",
            "write 3 ft 0 1/2 in if that is meant",
        ),
        (
            "3.5 ft 2 in",
            "a part of a foot is written in inches",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
        (
            "3 ft 20 mm",
            "only inches follow feet",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
        (
            "in",
            "it has no number",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
        (
            "",
            "nothing is written",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
        (
            "46. mm",
            "`46.` is not a number of at most six figures each side of the point",
            "write 46 mm if that is meant",
        ),
        (
            "1234567 mm",
            "`1234567` is not a number of at most six figures each side of the point",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
        (
            "1 2 3 in",
            "it is not one number",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
        (
            "--5 mm",
            "it is not one number",
            "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
        ),
    ];

    #[test]
    fn by_hand_accepted_spellings() {
        for (text, mm) in ACCEPTED {
            let read = Length::read(text).unwrap_or_else(|e| panic!("{text}: {}", e.fact));
            assert_eq!(read.to_mm(), *mm, "{text}");
        }
    }

    #[test]
    fn refuses_spellings_and_offers_the_nearest() {
        for (text, fact, remedy) in REFUSED {
            let unread = Length::read(text).expect_err(text);
            assert_eq!(unread.fact, format!("`{text}`: {fact}"));
            assert_eq!(unread.remedy, *remedy, "{text}");
        }
    }

    /// Every 64th up to 100 in, above and below nothing, is printed exactly and read back as the same length.
    #[test]
    fn holds_every_64th_round_trips() {
        for count in -6400..=6400 {
            let length = Length::sixty_fourths(count);
            let text = format!("{} in", super::super::print::inches(length));
            assert_eq!(Length::read(&text), Ok(length), "{text}");
        }
    }

    #[test]
    fn holds_the_text_as_written() {
        let size = Size::read(" 1-13/16\" ").expect("accepted above");
        assert_eq!(size.as_written(), "1-13/16\"");
        assert_eq!(size.value(), Length::sixty_fourths(116));
    }
}
