//! A length, held in millimetres; the only place that knows how long an inch is.

use std::cmp::Ordering;
use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

use super::tolerance::SAME_LENGTH_MM;

/// Millimetres in an inch, exactly (the international inch of 1959).
pub const MM_PER_INCH: f64 = 25.4;

/// A length or a signed offset along a line. Always finite where it came from a spec.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Length {
    mm: f64,
}

impl Length {
    /// No length at all.
    pub const ZERO: Length = Length { mm: 0.0 };

    /// A length of this many millimetres.
    pub const fn mm(mm: f64) -> Length {
        Length { mm }
    }

    /// A length of this many inches, which need not be a fraction that the trade would write.
    pub fn inches(inches: f64) -> Length {
        // One division only: 1.75 × 25.4 is not 44.45 in floating point, 1.75 × 127 / 5 is.
        Length {
            mm: inches * 127.0 / 5.0,
        }
    }

    /// So many parts of an inch, `top` over `bottom`, with one division: 175/100 in is exactly 44.45 mm.
    pub fn inch_ratio(top: u64, bottom: u64) -> Length {
        Length {
            mm: (top * 127) as f64 / (bottom * 5) as f64,
        }
    }

    /// This many 64ths of an inch.
    pub fn sixty_fourths(count: i64) -> Length {
        Length {
            mm: count as f64 * 127.0 / 320.0,
        }
    }

    /// In millimetres.
    pub const fn to_mm(self) -> f64 {
        self.mm
    }

    /// In inches.
    pub fn to_inches(self) -> f64 {
        self.mm / MM_PER_INCH
    }

    /// The length without its sign.
    pub fn abs(self) -> Length {
        Length { mm: self.mm.abs() }
    }

    /// The shorter of the two.
    pub fn min(self, other: Length) -> Length {
        Length {
            mm: self.mm.min(other.mm),
        }
    }

    /// The longer of the two.
    pub fn max(self, other: Length) -> Length {
        Length {
            mm: self.mm.max(other.mm),
        }
    }

    /// Whether the two are one length, as far as a cut file can tell.
    pub fn same_as(self, other: Length) -> bool {
        (self.mm - other.mm).abs() <= SAME_LENGTH_MM
    }

    /// By how much this falls short of what is required; nothing where it is equal or more.
    ///
    /// ```
    /// use centrepop::units::Length;
    /// assert!(Length::mm(44.45).shortfall(Length::inches(1.75)).is_none());
    /// assert!(Length::mm(44.44).shortfall(Length::inches(1.75)).is_some());
    /// ```
    pub fn shortfall(self, required: Length) -> Option<Length> {
        let short = required - self;
        (short.mm > SAME_LENGTH_MM).then_some(short)
    }

    /// Order of two lengths; both finite.
    pub fn total_cmp(&self, other: &Length) -> Ordering {
        self.mm.total_cmp(&other.mm)
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length {
            mm: self.mm + other.mm,
        }
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Length) {
        self.mm += other.mm;
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length {
            mm: self.mm - other.mm,
        }
    }
}

impl SubAssign for Length {
    fn sub_assign(&mut self, other: Length) {
        self.mm -= other.mm;
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length { mm: -self.mm }
    }
}

impl Mul<f64> for Length {
    type Output = Length;
    fn mul(self, times: f64) -> Length {
        Length {
            mm: self.mm * times,
        }
    }
}

impl Mul<Length> for f64 {
    type Output = Length;
    fn mul(self, length: Length) -> Length {
        Length {
            mm: self * length.mm,
        }
    }
}

impl Div<f64> for Length {
    type Output = Length;
    fn div(self, parts: f64) -> Length {
        Length {
            mm: self.mm / parts,
        }
    }
}

/// How many of one length go into another: a plain number.
impl Div<Length> for Length {
    type Output = f64;
    fn div(self, other: Length) -> f64 {
        self.mm / other.mm
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(Length::ZERO, Add::add)
    }
}

/// For messages to programmers; what a person reads is printed by [`super::print`].
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} mm", self.mm)
    }
}
