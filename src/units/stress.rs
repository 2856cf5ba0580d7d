//! Force on area: working pressures and the strength of metal alike, held in N/mm².

use std::fmt;

/// Newtons in a pound-force: 0.45359237 kg × 9.80665 m/s², both exact by definition.
pub const NEWTONS_PER_LBF: f64 = 0.453_592_37 * 9.806_65;

/// Pounds in a long ton, the ton of British plate and rivet figures.
pub const LBF_PER_TONF: f64 = 2240.0;

/// A pressure or a stress.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Stress {
    n_mm2: f64,
}

impl Stress {
    /// Newtons on a square millimetre, the same as MPa.
    pub const fn n_mm2(n_mm2: f64) -> Stress {
        Stress { n_mm2 }
    }

    /// Pounds-force on a square inch.
    pub fn psi(psi: f64) -> Stress {
        Stress {
            n_mm2: psi * NEWTONS_PER_LBF / SQUARE_MM_PER_SQUARE_INCH,
        }
    }

    /// Bar: a tenth of a newton on a square millimetre.
    pub fn bar(bar: f64) -> Stress {
        Stress { n_mm2: bar / 10.0 }
    }

    /// Long tons-force on a square inch; 28 tonf/in² is 62,720 psi.
    pub fn tonf_in2(tonf: f64) -> Stress {
        Stress::psi(tonf * LBF_PER_TONF)
    }

    /// Kilograms-force on a square centimetre: 9.80665 N on 100 mm².
    pub fn kgf_cm2(kgf: f64) -> Stress {
        Stress {
            n_mm2: kgf * 9.806_65 / 100.0,
        }
    }

    /// In N/mm².
    pub const fn to_n_mm2(self) -> f64 {
        self.n_mm2
    }

    /// In psi.
    pub fn to_psi(self) -> f64 {
        self.n_mm2 * SQUARE_MM_PER_SQUARE_INCH / NEWTONS_PER_LBF
    }

    /// In bar.
    pub fn to_bar(self) -> f64 {
        self.n_mm2 * 10.0
    }

    /// In long tons-force on the square inch.
    pub fn to_tonf_in2(self) -> f64 {
        self.to_psi() / LBF_PER_TONF
    }
}

/// Square millimetres in a square inch.
pub const SQUARE_MM_PER_SQUARE_INCH: f64 = super::length::MM_PER_INCH * super::length::MM_PER_INCH;

/// For messages to programmers.
impl fmt::Display for Stress {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} N/mm2", self.n_mm2)
    }
}
