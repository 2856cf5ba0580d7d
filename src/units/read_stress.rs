//! Reads a pressure, a stress or a density as the trade writes it.

use super::number::Ratio;
use super::slip::{Slip, slip_of_the_pen};
use super::spelling::{Piece, evened, pieces};
use super::written::{Quantity, Unread};
use super::{Density, Stress};

/// Spellings of units, each with what it makes of a number.
type Units<Q> = [(&'static str, fn(f64) -> Q)];

/// Every accepted spelling of a unit of pressure or stress, and what it makes of a number.
const STRESS_UNITS: &Units<Stress> = &[
    ("psi", Stress::psi),
    ("lbf/in2", Stress::psi),
    ("lb/in2", Stress::psi),
    ("lb/sq in", Stress::psi),
    ("tonf/in2", Stress::tonf_in2),
    ("ton/in2", Stress::tonf_in2),
    ("tons/in2", Stress::tonf_in2),
    ("tons/sq in", Stress::tonf_in2),
    ("bar", Stress::bar),
    ("kPa", |n| Stress::n_mm2(n / 1000.0)),
    ("MPa", Stress::n_mm2),
    ("N/mm2", Stress::n_mm2),
    ("kgf/cm2", Stress::kgf_cm2),
];

/// Every accepted spelling of a unit of mass for volume.
const DENSITY_UNITS: &Units<Density> = &[
    ("kg/m3", Density::kg_m3),
    ("lb/in3", Density::lb_in3),
    ("lb/cu in", Density::lb_in3),
];

impl Quantity for Stress {
    const FORMAT: &'static str = "stress";

    fn read(text: &str) -> Result<Stress, Unread> {
        read_by(
            text,
            STRESS_UNITS,
            "write it as 160 psi, 11 bar, 28 tonf/in2 or 432 N/mm2",
        )
    }
}

impl Quantity for Density {
    const FORMAT: &'static str = "density";

    fn read(text: &str) -> Result<Density, Unread> {
        read_by(
            text,
            DENSITY_UNITS,
            "write it as 7850 kg/m3 or 0.2836 lb/in3",
        )
    }
}

fn read_by<Q>(text: &str, units: &Units<Q>, otherwise: &str) -> Result<Q, Unread> {
    read_plain(&evened(text), units).map_err(|slip| {
        let readings: Vec<String> = slip
            .readings
            .iter()
            .filter(|reading| read_plain(reading, units).is_ok())
            .cloned()
            .collect();
        slip.unread(text.trim(), &readings, otherwise)
    })
}

fn read_plain<Q>(plain: &str, units: &Units<Q>) -> Result<Q, Slip> {
    if let Some(slip) = slip_of_the_pen(plain) {
        return Err(slip);
    }
    let pieces = pieces(plain);
    let (first, words) = match pieces.split_first() {
        Some((Piece::Number(number), words)) => (number, words),
        Some((Piece::Hyphen { .. }, _)) => return Err(Slip::new("it is below nothing", &[])),
        Some((Piece::Fraction(..), _)) => {
            return Err(Slip::new("it is written as a decimal, not a fraction", &[]));
        }
        _ => return Err(Slip::new("it has no number", &[])),
    };
    let number = Ratio::decimal(first).ok_or_else(|| {
        Slip::new(
            format!("`{first}` is not a number of at most six figures each side of the point"),
            &[],
        )
    })?;
    let unit = unit_words(words)?;
    let found = units.iter().find(|(spelling, _)| *spelling == unit);
    let (_, make) = found.ok_or_else(|| unknown_unit(first, &unit, units))?;
    Ok(make(number.to_f64()))
}

fn unit_words(pieces: &[Piece]) -> Result<String, Slip> {
    let mut words = Vec::new();
    for piece in pieces {
        match piece {
            Piece::Word(word) => words.push(*word),
            _ => return Err(Slip::new("it is not one number and a unit", &[])),
        }
    }
    match words.is_empty() {
        true => Err(Slip::new("it has no unit", &[])),
        false => Ok(words.join(" ")),
    }
}

fn unknown_unit<Q>(number: &str, unit: &str, units: &Units<Q>) -> Slip {
    let readings: Vec<String> = units
        .iter()
        .filter(|(spelling, _)| spelling.eq_ignore_ascii_case(unit))
        .map(|(spelling, _)| format!("{number} {spelling}"))
        .collect();
    let readings: Vec<&str> = readings.iter().map(String::as_str).collect();
    Slip::new(
        format!("`{unit}` is not a unit that is read here"),
        &readings,
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// 28 tonf/in² × 2,240 = 62,720 psi; 160 psi; 10.34 bar = 1.034 N/mm²; 1 kgf/cm² = 0.0980665 N/mm².
    #[test]
    fn by_hand_accepted_pressures() {
        for (text, psi) in [
            ("28 tonf/in2", 62_720.0),
            ("28 tons/in²", 62_720.0),
            ("160 psi", 160.0),
            ("160 lbf/in2", 160.0),
            ("160lb/sq in", 160.0),
        ] {
            let read = Stress::read(text).unwrap_or_else(|e| panic!("{text}: {}", e.fact));
            assert_eq!(decimal(read.to_psi(), 9), format!("{psi:.9}"), "{text}");
        }
        for (text, n_mm2) in [
            ("10.34 bar", 1.034),
            ("1034 kPa", 1.034),
            ("1.034 MPa", 1.034),
            ("1.034 N/mm²", 1.034),
            ("1 kgf/cm2", 0.0980665),
        ] {
            let read = Stress::read(text).unwrap_or_else(|e| panic!("{text}: {}", e.fact));
            assert_eq!(
                decimal(read.to_n_mm2(), 12),
                format!("{n_mm2:.12}"),
                "{text}"
            );
        }
    }

    #[test]
    fn refuses_pressures_and_offers_the_nearest() {
        const AS: &str = "write it as 160 psi, 11 bar, 28 tonf/in2 or 432 N/mm2";
        for (text, fact, remedy) in [
            ("160", "it has no unit", AS),
            (
                "160 PSI",
                "`PSI` is not a unit that is read here",
                "write 160 psi if that is meant",
            ),
            (
                "160 mpa",
                "`mpa` is not a unit that is read here",
                "write 160 MPa if that is meant",
            ),
            ("160 in", "`in` is not a unit that is read here", AS),
            ("-3 bar", "it is below nothing", AS),
            (
                "10,34 bar",
                "a comma is not read; the decimal mark is a point",
                "write 10.34 bar if that is meant",
            ),
            ("1/2 bar", "it is written as a decimal, not a fraction", AS),
        ] {
            let unread = Stress::read(text).expect_err(text);
            assert_eq!(unread.fact, format!("`{text}`: {fact}"));
            assert_eq!(unread.remedy, remedy, "{text}");
        }
    }

    /// 0.2836 lb × 0.45359237 = 0.12863880 kg; ÷ 16.387064 cm³ in a cubic inch = 0.00785002 kg/cm³.
    #[test]
    fn by_hand_densities() {
        assert_eq!(
            Density::read("7850 kg/m³").map(Density::to_kg_m3),
            Ok(7850.0)
        );
        let pounds = Density::read("0.2836 lb/in3").map(Density::to_kg_m3);
        assert_eq!(pounds.map(|d| format!("{d:.2}")), Ok("7850.02".into()));
        assert!(Density::read("7850").is_err());
    }
}
