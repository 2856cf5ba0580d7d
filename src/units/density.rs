//! Mass for volume, held in kg/m³.

use super::length::MM_PER_INCH;

/// Kilograms in a pound, by definition.
pub const KG_PER_LB: f64 = 0.453_592_37;

/// The mass of a cubic metre of metal.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Density {
    kg_m3: f64,
}

impl Density {
    /// Kilograms for the cubic metre.
    pub const fn kg_m3(kg_m3: f64) -> Density {
        Density { kg_m3 }
    }

    /// Pounds for the cubic inch.
    pub fn lb_in3(lb_in3: f64) -> Density {
        Density {
            kg_m3: lb_in3 * KG_PER_LB / (MM_PER_INCH * MM_PER_INCH * MM_PER_INCH) * 1e9,
        }
    }

    /// In kg/m³.
    pub const fn to_kg_m3(self) -> f64 {
        self.kg_m3
    }

    /// The mass of this many cubic millimetres, kg.
    pub fn mass_kg(self, cubic_mm: f64) -> f64 {
        self.kg_m3 * cubic_mm / 1e9
    }
}
