//! What proves a heel or a rolled ring at the bench: the corner that a square makes, and the height of a chord.

use super::Pressed;
use crate::units::angle::sqrt;
use crate::units::{Length, Size};

/// Heel of a pressed plate as a square and a radius gauge prove it.
///
/// The theoretical corner is where the plate's outer face and the outside of the flange would meet without a bend.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeelGauge {
    /// Radius inside.
    pub inside: Length,
    /// Radius outside: inside and the thickness.
    pub outside: Length,
    /// From the theoretical corner to the tangent, along the face and along the flange alike.
    pub corner_to_tangent: Length,
    /// From the theoretical corner to the metal, across the corner at 45°.
    pub corner_to_heel: Length,
}

/// The gauge sizes of a heel on a plate of this thickness.
pub fn heel_gauge(heel: &Pressed, thickness: &Size) -> HeelGauge {
    let inside = heel.heel_radius.value();
    let outside = inside + thickness.value();
    HeelGauge {
        inside,
        outside,
        corner_to_tangent: outside,
        corner_to_heel: outside * (sqrt(2.0) - 1.0),
    }
}

/// Height of the arc of a circle above a chord; none where the chord is longer than the circle is wide.
pub fn chord_height(radius: Length, chord: Length) -> Option<Length> {
    let half = chord / 2.0;
    (half <= radius).then(|| {
        let (r, h) = (radius.to_mm(), half.to_mm());
        radius - Length::mm(sqrt(r * r - h * h))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A 3-4-5 triangle: half chord 4 on radius 5 leaves 5 − 3 = 2; a chord of twice the radius rises by the radius.
    #[test]
    fn by_hand_chord_of_a_3_4_5_triangle() {
        let (five, eight) = (Length::mm(5.0), Length::mm(8.0));
        assert!(chord_height(five, eight).unwrap().same_as(Length::mm(2.0)));
        assert!(chord_height(five, five * 2.0).unwrap().same_as(five));
        assert_eq!(chord_height(five, Length::mm(10.1)), None);
    }
}
