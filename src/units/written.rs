//! Quantities as the trade writes them: what was meant, beside the text that was written.
//!
//! A size is printed from what was written, never from a converted decimal.

use std::borrow::Cow;
use std::fmt;
use std::sync::Arc;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

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

impl Quantity for Length {
    const FORMAT: &'static str = "length";

    fn read(text: &str) -> Result<Length, Unread> {
        let unread = || Unread {
            fact: format!("`{text}` is not a length"),
            remedy: "write it as 1 13/16 in, 46 mm or 3 ft 0 1/2 in".into(),
        };
        let (number, in_inches) = match text.trim() {
            t if t.ends_with(" in") => (&t[..t.len() - 3], true),
            t if t.ends_with(" mm") => (&t[..t.len() - 3], false),
            _ => return Err(unread()),
        };
        let negative = number.trim().starts_with('-');
        let mut total = 0.0;
        for part in number.trim().trim_start_matches('-').split_whitespace() {
            total += match part.split_once('/') {
                Some((n, d)) => {
                    n.parse::<f64>().map_err(|_| unread())?
                        / d.parse::<f64>().map_err(|_| unread())?
                }
                None => part.parse::<f64>().map_err(|_| unread())?,
            };
        }
        let total = if negative { -total } else { total };
        Ok(if in_inches {
            Length::inches(total)
        } else {
            Length::mm(total)
        })
    }
}

impl Quantity for Stress {
    const FORMAT: &'static str = "stress";

    fn read(text: &str) -> Result<Stress, Unread> {
        let unread = || Unread {
            fact: format!("`{text}` is not a pressure or a stress"),
            remedy: "write it as 160 psi, 11 bar, 28 tonf/in2 or 432 N/mm2".into(),
        };
        let (number, unit) = text.trim().split_once(' ').ok_or_else(unread)?;
        let number: f64 = number.parse().map_err(|_| unread())?;
        match unit {
            "psi" => Ok(Stress::psi(number)),
            "bar" => Ok(Stress::bar(number)),
            "kPa" => Ok(Stress::n_mm2(number / 1000.0)),
            "N/mm2" | "MPa" => Ok(Stress::n_mm2(number)),
            "tonf/in2" => Ok(Stress::tonf_in2(number)),
            _ => Err(unread()),
        }
    }
}

impl Quantity for Density {
    const FORMAT: &'static str = "density";

    fn read(text: &str) -> Result<Density, Unread> {
        let unread = || Unread {
            fact: format!("`{text}` is not a mass for volume"),
            remedy: "write it as 7850 kg/m3 or 0.2836 lb/in3".into(),
        };
        let (number, unit) = text.trim().split_once(' ').ok_or_else(unread)?;
        let number: f64 = number.parse().map_err(|_| unread())?;
        match unit {
            "kg/m3" => Ok(Density::kg_m3(number)),
            "lb/in3" => Ok(Density::lb_in3(number)),
            _ => Err(unread()),
        }
    }
}
