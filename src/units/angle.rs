//! Angles, and the sines and roots that come out the same on every machine.
//!
//! The system's own mathematics differs in the last bit from machine to machine; these functions go through `libm`, so
//! that one spec gives one set of bytes everywhere. Nothing else in the program calls `f64::sin` and its kin.

/// The ratio of a circle's girth to its diameter.
pub use std::f64::consts::PI;

/// Sine of an angle in radians.
pub fn sin(radians: f64) -> f64 {
    libm::sin(radians)
}

/// Cosine of an angle in radians.
pub fn cos(radians: f64) -> f64 {
    libm::cos(radians)
}

/// Tangent of an angle in radians.
pub fn tan(radians: f64) -> f64 {
    libm::tan(radians)
}

/// Angle in radians whose sine is given, −π/2 to π/2.
pub fn asin(sine: f64) -> f64 {
    libm::asin(sine)
}

/// Angle in radians whose cosine is given, 0 to π.
pub fn acos(cosine: f64) -> f64 {
    libm::acos(cosine)
}

/// Angle in radians whose tangent is given, −π/2 to π/2.
pub fn atan(tangent: f64) -> f64 {
    libm::atan(tangent)
}

/// Angle in radians of the direction (x, y), −π to π, anticlockwise from x.
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// Square root.
pub fn sqrt(square: f64) -> f64 {
    libm::sqrt(square)
}

/// Length of the longest side of a right-angled triangle.
pub fn hypot(a: f64, b: f64) -> f64 {
    libm::hypot(a, b)
}

/// Logarithm to base 10.
pub fn log10(number: f64) -> f64 {
    libm::log10(number)
}

/// A sheet angle (clockwise from the top, degrees, as seen from the declared side) as the mathematician's angle
/// (anticlockwise from x, radians).
pub fn from_top_clockwise(degrees: f64) -> f64 {
    (90.0 - degrees).to_radians()
}

/// The sheet angle, 0 to 360 degrees clockwise from the top, of the direction (x, y).
pub fn to_top_clockwise(x: f64, y: f64) -> f64 {
    let degrees = 90.0 - atan2(y, x).to_degrees();
    if degrees < 0.0 {
        degrees + 360.0
    } else {
        degrees
    }
}
