//! What was wrong with a written quantity, and the readings to offer; none is ever taken.

use super::written::Unread;

/// What was wrong, with other readings that the writer may have meant.
pub(super) struct Slip {
    pub(super) fact: String,
    pub(super) readings: Vec<String>,
}

impl Slip {
    pub(super) fn new(fact: impl Into<String>, readings: &[&str]) -> Slip {
        Slip {
            fact: fact.into(),
            readings: readings.iter().map(|text| text.to_string()).collect(),
        }
    }

    /// The refusal of `text`: offers the readings that hold, or says how such a quantity is written.
    pub(super) fn unread(self, text: &str, readings: &[String], otherwise: &str) -> Unread {
        Unread {
            fact: format!("`{text}`: {}", self.fact),
            remedy: match readings {
                [] => otherwise.into(),
                [one] => format!("write {one} if that is meant"),
                [some @ .., last] => {
                    format!("write {} or {last}, whichever is meant", some.join(", "))
                }
            },
        }
    }
}

/// Signs that do not belong in a quantity: a decimal comma, a clock's colon, an exponent, full-width digits, no number at all.
pub(super) fn slip_of_the_pen(text: &str) -> Option<Slip> {
    if text.is_empty() {
        return Some(Slip::new("nothing is written", &[]));
    }
    if text.contains(is_wide) {
        let narrow: String = text.chars().map(narrow_digit).collect();
        return Some(Slip::new(
            "its digits are full-width characters",
            &[&narrow],
        ));
    }
    if text.contains(',') {
        return Some(comma(text));
    }
    if text.contains(':') {
        return Some(Slip::new(
            "a colon belongs to the time of day",
            &[&text.replace(':', ".")],
        ));
    }
    let no_number = ["nan", ".nan", "inf", ".inf", "infinity"];
    if no_number.iter().any(|word| text.eq_ignore_ascii_case(word)) {
        return Some(Slip::new("that is not a number", &[]));
    }
    match text.contains(['e', 'E']) {
        true => exponent(&text.to_lowercase()),
        false => None,
    }
}

fn is_wide(c: char) -> bool {
    ('０'..='９').contains(&c)
}

fn narrow_digit(c: char) -> char {
    match c {
        '０'..='９' => char::from(b'0' + (c as u32 - '０' as u32) as u8),
        other => other,
    }
}

fn comma(text: &str) -> Slip {
    let point = text.replacen(',', ".", 1);
    let after = text.split(',').nth(1).unwrap_or("");
    let three_figures = after.chars().take_while(char::is_ascii_digit).count() == 3;
    let fact = "a comma is not read; the decimal mark is a point";
    match three_figures {
        true => Slip::new(fact, &[&point, &text.replacen(',', "", 1)]),
        false => Slip::new(fact, &[&point]),
    }
}

fn exponent(small: &str) -> Option<Slip> {
    let (before, after) = small.split_once('e')?;
    let is_exponent = before.ends_with(|c: char| c.is_ascii_digit() || c == '.')
        && after.starts_with(|c: char| c.is_ascii_digit() || c == '-' || c == '+');
    if !is_exponent {
        return None;
    }
    let end = after
        .find(|c: char| !c.is_ascii_digit() && c != '-' && c != '+')
        .unwrap_or(after.len());
    let (power, unit) = after.split_at(end);
    let number: f64 = format!("{before}e{power}").parse().unwrap_or(f64::NAN);
    let plain = super::print::trimmed(number, 6);
    Some(Slip::new(
        "a power of ten is not read",
        &[&format!("{plain}{unit}")],
    ))
}
