//! Lengths and places in the words of a fault: the job's units, three places of an inch or two of a millimetre.

use super::Point;
use crate::spec::{At, Units};
use crate::units::{Length, print};

/// How the faults of one job speak of lengths.
#[derive(Clone, Copy, Debug)]
pub(super) struct Amounts {
    units: Units,
}

impl Amounts {
    /// For a job in these units; one that declares none is told in millimetres.
    pub(super) fn of(units: Option<Units>) -> Amounts {
        Amounts {
            units: units.unwrap_or(Units::Millimetres),
        }
    }

    /// "1.406 in" or "9.79 mm".
    pub(super) fn length(self, length: Length) -> String {
        format!("{} {}", self.bare(length), self.unit())
    }

    /// The same of a number of millimetres.
    pub(super) fn mm(self, mm: f64) -> String {
        self.length(Length::mm(mm))
    }

    /// "(0, 6.484) in".
    pub(super) fn place(self, at: Point) -> String {
        format!(
            "({}, {}) {}",
            self.bare(Length::mm(at.x)),
            self.bare(Length::mm(at.y)),
            self.unit()
        )
    }

    fn unit(self) -> &'static str {
        match self.units {
            Units::Inches => "in",
            Units::Millimetres => "mm",
        }
    }

    fn bare(self, length: Length) -> String {
        let text = match self.units {
            Units::Inches => print::decimal(length.to_inches(), 3),
            Units::Millimetres => print::decimal(length.to_mm(), 2),
        };
        text.trim_end_matches('0').trim_end_matches('.').to_string()
    }
}

/// A written place as a point.
pub(super) fn point(at: &At) -> Point {
    Point::new(at.0.value().to_mm(), at.1.value().to_mm())
}
