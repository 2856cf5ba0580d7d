//! The dashes of a line: how long each dash and gap is, so that a line begins and ends on a full dash.

use super::mark::{Pattern, Pen};
use crate::units::angle;

impl Pen {
    /// Width of the line, mm (ISO 128 series).
    pub fn width(self) -> f64 {
        match self {
            Pen::Frame => 0.7,
            Pen::Wide => 0.5,
            Pen::Middle => 0.35,
            Pen::Narrow => 0.25,
        }
    }
}

/// Dashes and gaps in turn, mm, and how far into the first dash the line begins.
#[derive(Clone, Debug, PartialEq)]
pub struct Dashes {
    /// Dash, gap, dash, gap …
    pub lengths: Vec<f64>,
    /// How much of the first dash is skipped at the start, mm.
    pub skip: f64,
}

/// One repeat of the pattern in line widths, from the long dash on (ISO 128-20: long dash 24, dash 12, gap 3, dot 0.5).
fn repeat(pattern: Pattern) -> &'static [f64] {
    match pattern {
        Pattern::Continuous => &[],
        Pattern::Dashed => &[12.0, 3.0],
        Pattern::Chain => &[24.0, 3.0, 0.5, 3.0],
        Pattern::DoubleChain => &[24.0, 3.0, 0.5, 3.0, 0.5, 3.0],
    }
}

/// Shorter than this share of one repeat and its closing dash, a line is drawn unbroken: its gaps would close up in print.
const LEAST_SCALE: f64 = 0.5;

/// Dashes of an open line of this length, mm: it begins and ends on a full long dash. Nothing where it is unbroken.
pub fn open(pattern: Pattern, pen: Pen, length: f64) -> Option<Dashes> {
    let units = repeat(pattern);
    let first = units.first()? * pen.width();
    let whole = units.iter().sum::<f64>() * pen.width();
    let count = ((length - first) / whole).round().max(1.0);
    let scale = length / (count * whole + first);
    (scale >= LEAST_SCALE).then(|| Dashes {
        lengths: scaled(units, pen, scale),
        skip: 0.0,
    })
}

/// Dashes of a full circle of this radius, mm: where there is room for it a long dash lies on each of the four quarters, so
/// that the centre lines cross it dash on dash. On a short circle the long dashes are shorter and the gaps are not: one of which
/// few gaps could be seen would read as an unbroken line.
pub fn closed(pattern: Pattern, pen: Pen, radius: f64) -> Option<Dashes> {
    let units = repeat(pattern);
    let first = units.first()? * pen.width();
    let girth = 2.0 * angle::PI * radius;
    let whole = units.iter().sum::<f64>() * pen.width();
    let quarters = (girth / whole / 4.0).round();
    if quarters * 4.0 >= FEWEST[0] {
        let lengths = scaled(units, pen, girth / (quarters * 4.0 * whole));
        return Some(starting_mid_dash(lengths));
    }
    let dash = FEWEST
        .into_iter()
        .map(|count| girth / count - (whole - first))
        .find(|dash| *dash >= LEAST_DASH * first)?;
    let mut lengths = scaled(units, pen, 1.0);
    lengths[0] = dash;
    Some(starting_mid_dash(lengths))
}

/// Repeats round a short circle, as many as there is room for.
const FEWEST: [f64; 4] = [8.0, 4.0, 2.0, 1.0];

/// The long dash of a short circle is no shorter than this share of its length.
const LEAST_DASH: f64 = 0.35;

fn starting_mid_dash(lengths: Vec<f64>) -> Dashes {
    let skip = lengths[0] / 2.0;
    Dashes { lengths, skip }
}

fn scaled(units: &[f64], pen: Pen, scale: f64) -> Vec<f64> {
    units
        .iter()
        .map(|unit| unit * pen.width() * scale)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Element lengths of ISO 128-20 at 0.25 mm: 6, 0.75, 0.125, 0.75; a line of three repeats and a dash takes them unscaled.
    #[test]
    fn published_chain_at_a_quarter_millimetre() {
        let dashes = open(Pattern::Chain, Pen::Narrow, 3.0 * 7.625 + 6.0).unwrap();
        assert_eq!(dashes.lengths, [6.0, 0.75, 0.125, 0.75]);
        let dashes = open(Pattern::Dashed, Pen::Middle, 5.0 * 5.25 + 4.2).unwrap();
        assert!((dashes.lengths[0] - 4.2).abs() < 1e-12);
        assert!((dashes.lengths[1] - 1.05).abs() < 1e-12);
    }

    #[test]
    fn holds_that_a_line_ends_on_a_long_dash() {
        for tenths in 70..3000 {
            let length = f64::from(tenths) / 10.0;
            for pattern in [Pattern::Dashed, Pattern::Chain, Pattern::DoubleChain] {
                let Some(dashes) = open(pattern, Pen::Narrow, length) else {
                    continue;
                };
                let whole: f64 = dashes.lengths.iter().sum();
                let left_over = (length - dashes.lengths[0]) / whole;
                assert!((left_over - left_over.round()).abs() < 1e-9, "{length}");
            }
        }
    }

    #[test]
    fn holds_that_a_circle_closes_on_its_pattern() {
        for radius in 5..400 {
            let dashes = closed(Pattern::Chain, Pen::Narrow, f64::from(radius)).unwrap();
            let turns = 2.0 * angle::PI * f64::from(radius) / dashes.lengths.iter().sum::<f64>();
            assert!((turns / 4.0 - (turns / 4.0).round()).abs() < 1e-9);
        }
    }

    /// A circle however short closes on its pattern, begins in the middle of a dash, and has gaps two pens wide, so
    /// that it does not read as unbroken.
    #[test]
    fn holds_that_a_short_circle_keeps_its_gaps() {
        for tenths in 20..60 {
            let radius = f64::from(tenths) / 10.0;
            for pattern in [Pattern::Dashed, Pattern::Chain, Pattern::DoubleChain] {
                let dashes = closed(pattern, Pen::Narrow, radius).unwrap();
                let turns = 2.0 * angle::PI * radius / dashes.lengths.iter().sum::<f64>();
                assert!((turns - turns.round()).abs() < 1e-9, "{radius}");
                assert!(
                    turns.round() >= 2.0 && dashes.lengths[1] > 0.5,
                    "{radius} {turns}"
                );
                assert_eq!(dashes.skip, dashes.lengths[0] / 2.0);
            }
        }
    }

    #[test]
    fn holds_that_a_short_line_is_unbroken() {
        assert_eq!(open(Pattern::Chain, Pen::Narrow, 4.0), None);
        assert_eq!(open(Pattern::Continuous, Pen::Wide, 400.0), None);
    }
}
