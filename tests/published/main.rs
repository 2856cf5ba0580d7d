//! Rows of published tables and worked examples, each with its source, against the formulae of the rules.
//!
//! A row is compared to the precision that its source prints. Where a source prints a misprint, the row says so and what was meant;
//! where it cuts its figures off instead of rounding them, the row is compared with the figure cut off.

mod flats_and_stays;
mod ligaments;
mod rivets;
mod tubes;

use centrepop::units::{Length, Stress};

/// A length in inches.
fn inches(inches: f64) -> Length {
    Length::inches(inches)
}

/// A length in millimetres.
fn mm(mm: f64) -> Length {
    Length::mm(mm)
}

/// A pressure or stress in psi.
fn psi(psi: f64) -> Stress {
    Stress::psi(psi)
}

/// Holds a figure against its printed form, rounded to as many places as the source prints.
#[track_caller]
fn prints(printed: &str, computed: f64, source: &str) {
    let places = printed
        .split_once('.')
        .map_or(0, |(_, places)| places.len());
    assert_eq!(format!("{computed:.places$}"), printed, "{source}");
}

/// Holds a figure against a printed one within so much.
#[track_caller]
fn within(printed: f64, computed: f64, tolerance: f64, source: &str) {
    assert!(
        (printed - computed).abs() <= tolerance,
        "{source}: printed {printed}, computed {computed}"
    );
}
