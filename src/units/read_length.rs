//! Reads a length as the trade writes it, or says what was wrong and what may have been meant.

use super::Length;
use super::number::Ratio;
use super::slip::{Slip, slip_of_the_pen};
use super::spelling::{Piece, evened, pieces};
use super::written::{Quantity, Unread};

/// The units of length that are read, each with its spellings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Unit {
    Inch,
    Foot,
    Millimetre,
    Centimetre,
    Metre,
}

/// Every accepted spelling of a unit of length.
const UNITS: &[(&str, Unit)] = &[
    ("in", Unit::Inch),
    ("in.", Unit::Inch),
    ("ins", Unit::Inch),
    ("inch", Unit::Inch),
    ("inches", Unit::Inch),
    ("\"", Unit::Inch),
    ("ft", Unit::Foot),
    ("ft.", Unit::Foot),
    ("foot", Unit::Foot),
    ("feet", Unit::Foot),
    ("'", Unit::Foot),
    ("mm", Unit::Millimetre),
    ("millimetre", Unit::Millimetre),
    ("millimetres", Unit::Millimetre),
    ("cm", Unit::Centimetre),
    ("m", Unit::Metre),
    ("metre", Unit::Metre),
    ("metres", Unit::Metre),
];

/// Denominators that a rule carries.
const DENOMINATORS: [u64; 7] = [2, 4, 8, 16, 32, 64, 128];

impl Quantity for Length {
    const FORMAT: &'static str = "length";

    fn read(text: &str) -> Result<Length, Unread> {
        let plain = evened(text);
        let (negative, unsigned) = sign_and_rest(&plain);
        match read_unsigned(unsigned) {
            Ok(length) if negative => Ok(-length),
            Ok(length) => Ok(length),
            Err(slip) => Err(unread(text.trim(), slip, negative)),
        }
    }
}

fn read_unsigned(plain: &str) -> Result<Length, Slip> {
    if let Some(slip) = slip_of_the_pen(plain) {
        return Err(slip);
    }
    let pieces = pieces(plain);
    match split_feet(&pieces) {
        Some((feet, inches)) => feet_and_inches(feet, inches),
        None => {
            let (number, unit) = amount_and_unit(&pieces)?;
            Ok(in_unit(number, unit))
        }
    }
}

/// The refusal, with those of the slip's readings that can themselves be read, a unit added where it is wanting.
fn unread(text: &str, slip: Slip, negative: bool) -> Unread {
    let sign = if negative { "-" } else { "" };
    let readings: Vec<String> = slip
        .readings
        .iter()
        .flat_map(|reading| {
            [
                reading.clone(),
                format!("{reading} in"),
                format!("{reading} mm"),
            ]
        })
        .filter(|reading| read_unsigned(reading).is_ok())
        .map(|reading| format!("{sign}{reading}"))
        .collect();
    slip.unread(
        text,
        &readings,
        "write it as 1 13/16 in, 46.04 mm or 3 ft 0 1/2 in",
    )
}

/// A leading sign, and the rest.
fn sign_and_rest(plain: &str) -> (bool, &str) {
    match plain.strip_prefix('-') {
        Some(rest) => (true, rest.trim_start()),
        None => (false, plain.strip_prefix('+').unwrap_or(plain)),
    }
}

fn unit_of(word: &str) -> Option<Unit> {
    UNITS
        .iter()
        .find(|(spelling, _)| *spelling == word)
        .map(|(_, unit)| *unit)
}

/// Parts `3 ft 0 1/2 in` after the feet, where both feet and something more are written.
fn split_feet<'p, 't>(pieces: &'p [Piece<'t>]) -> Option<(&'p [Piece<'t>], &'p [Piece<'t>])> {
    let place = pieces
        .iter()
        .position(|piece| matches!(piece, Piece::Word(w) if unit_of(w) == Some(Unit::Foot)))?;
    let (feet, rest) = (&pieces[..place], &pieces[place + 1..]);
    match rest {
        [] => None,
        [Piece::Hyphen { .. }, inches @ ..] => Some((feet, inches)),
        inches => Some((feet, inches)),
    }
}

fn feet_and_inches(feet: &[Piece], inches: &[Piece]) -> Result<Length, Slip> {
    let whole_feet = amount(feet, "ft")?;
    if !matches!(inches.last(), Some(Piece::Word(_))) {
        let reading = format!("{} ft {} in", spelt(feet), spelt(inches));
        return Err(Slip::new("the inches have no unit", &[&reading]));
    }
    let (number, unit) = amount_and_unit(inches)?;
    if unit != Unit::Inch {
        return Err(Slip::new("only inches follow feet", &[]));
    }
    if !whole_feet.is_whole() {
        return Err(Slip::new("a part of a foot is written in inches", &[]));
    }
    let together = whole_feet.times(12).plus(number);
    let length = in_unit(together, Unit::Inch);
    if number.to_f64() >= 12.0 {
        let reading = format!("{} in", super::print::inches(length));
        return Err(Slip::new(
            "twelve inches or more stand after the feet",
            &[&reading],
        ));
    }
    Ok(length)
}

fn amount_and_unit(pieces: &[Piece]) -> Result<(Ratio, Unit), Slip> {
    let (word, before) = match pieces.split_last() {
        Some((Piece::Word(word), before)) => (*word, before),
        _ => return Err(Slip::new("it has no unit", &[&spelt(pieces)])),
    };
    let unit = unit_of(word).ok_or_else(|| unknown_unit(before, word))?;
    let number = amount(before, word)?;
    let is_fraction = matches!(before.last(), Some(Piece::Fraction(..)));
    if is_fraction && !matches!(unit, Unit::Inch | Unit::Foot) {
        let decimal = super::print::trimmed(number.to_f64(), 4);
        return Err(Slip::new(
            "a fraction belongs to inches; a metric size is a decimal",
            &[
                &format!("{decimal} {word}"),
                &format!("{} in", spelt(before)),
            ],
        ));
    }
    Ok((number, unit))
}

fn unknown_unit(before: &[Piece], word: &str) -> Slip {
    let small = word.to_lowercase();
    match unit_of(&small) {
        Some(_) => Slip::new(
            format!("`{word}` is not a unit; units are written small"),
            &[&format!("{} {small}", spelt(before))],
        ),
        None => Slip::new(format!("`{word}` is not a unit of length"), &[]),
    }
}

/// The amount before a unit: a whole number, a decimal, a fraction, or a whole number and a fraction.
fn amount(pieces: &[Piece], unit: &str) -> Result<Ratio, Slip> {
    let at_unit = |number: String| format!("{number} {unit}");
    match pieces {
        [] => Err(Slip::new("it has no number", &[])),
        [Piece::Number(number)] => plain_number(number, unit),
        [Piece::Fraction(top, bottom)] => fraction(None, top, bottom, unit),
        [Piece::Number(whole), Piece::Fraction(top, bottom)]
        | [
            Piece::Number(whole),
            Piece::Hyphen {
                spaced_before: false,
                spaced_after: false,
            },
            Piece::Fraction(top, bottom),
        ] => fraction(Some(whole), top, bottom, unit),
        [
            Piece::Number(whole),
            Piece::Hyphen { .. },
            Piece::Fraction(top, bottom),
        ] => Err(Slip::new(
            "a spaced hyphen may mean less, or from one to another",
            &[&at_unit(format!("{whole} {top}/{bottom}"))],
        )),
        other => Err(Slip::new(
            "it is not one number",
            &[&at_unit(spelt(other).replace(" /", "/").replace("/ ", "/"))],
        )),
    }
}

fn plain_number(number: &str, unit: &str) -> Result<Ratio, Slip> {
    Ratio::decimal(number).ok_or_else(|| {
        let tidy = number.trim_end_matches('.');
        Slip::new(
            format!("`{number}` is not a number of at most six figures each side of the point"),
            &[&format!("{tidy} {unit}")],
        )
    })
}

fn fraction(whole: Option<&str>, top: &str, bottom: &str, unit: &str) -> Result<Ratio, Slip> {
    if let (None, Some((whole, part))) = (whole, top.split_once('.')) {
        return Err(Slip::new(
            format!("`{top}/{bottom}` mixes a decimal with a fraction"),
            &[&format!("{whole} {part}/{bottom} {unit}")],
        ));
    }
    let count = |digits: &str| {
        Ratio::decimal(digits)
            .filter(|n| n.bottom == 1)
            .map(|n| n.top)
    };
    let (Some(w), Some(t), Some(b)) = (count(whole.unwrap_or("0")), count(top), count(bottom))
    else {
        return Err(Slip::new("it mixes a decimal with a fraction", &[]));
    };
    if b == 0 {
        return Err(Slip::new(format!("{t}/0 is not a size"), &[]));
    }
    if !DENOMINATORS.contains(&b) {
        return Err(off_the_rule(w, t, b, unit));
    }
    if t >= b {
        return Err(too_much(whole, top, t, b, w, unit));
    }
    Ok(Ratio::mixed(w, t, b))
}

fn off_the_rule(whole: u64, top: u64, bottom: u64, unit: &str) -> Slip {
    let near = DENOMINATORS
        .iter()
        .copied()
        .min_by_key(|rule| rule.abs_diff(bottom))
        .unwrap_or(16);
    let decimal = super::print::trimmed(Ratio::mixed(whole, top, bottom).to_f64(), 4);
    let lead = if whole > 0 {
        format!("{whole} ")
    } else {
        String::new()
    };
    Slip::new(
        format!("{top}/{bottom} is not a fraction that a rule carries"),
        &[
            &format!("{lead}{top}/{near} {unit}"),
            &format!("{decimal} {unit}"),
        ],
    )
}

fn too_much(whole: Option<&str>, top: &str, t: u64, b: u64, w: u64, unit: &str) -> Slip {
    let carried = match (w + t / b, t % b) {
        (all, 0) => format!("{all} {unit}"),
        (all, left) => format!("{all} {left}/{b} {unit}"),
    };
    let mut readings = Vec::new();
    if whole.is_none() && top.len() > 1 {
        // The space between whole number and fraction lost: 113/16 for 1 13/16.
        readings.push(format!("{} {}/{b} {unit}", &top[..1], &top[1..]));
    }
    readings.push(carried);
    let readings: Vec<&str> = readings.iter().map(String::as_str).collect();
    Slip::new(format!("{t}/{b} is not less than one"), &readings)
}

/// The pieces with single spaces between.
fn spelt(pieces: &[Piece]) -> String {
    let words: Vec<String> = pieces
        .iter()
        .map(|piece| match piece {
            Piece::Number(number) => number.to_string(),
            Piece::Fraction(top, bottom) => format!("{top}/{bottom}"),
            Piece::Hyphen { .. } => "-".into(),
            Piece::Word(word) => word.to_string(),
        })
        .collect();
    words.join(" ")
}

fn in_unit(number: Ratio, unit: Unit) -> Length {
    match unit {
        Unit::Inch => Length::inch_ratio(number.top, number.bottom),
        Unit::Foot => Length::inch_ratio(number.times(12).top, number.bottom),
        Unit::Millimetre => Length::mm(number.to_f64()),
        Unit::Centimetre => Length::mm(number.times(10).to_f64()),
        Unit::Metre => Length::mm(number.times(1000).to_f64()),
    }
}
