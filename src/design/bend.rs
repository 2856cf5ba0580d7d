//! Length of metal round a bend of a right angle, and the blanks that a round flange takes.
//!
//! ```text
//! arc = (π/2)(r + K t)                               r  inside radius, t  thickness, K  place of the line that keeps its
//! K = 1/2 on the mid line                               length, as a share of the thickness from the inside face
//! K = k/2, k = 0.65 + 1/2 log10(r/t), at most 1      DIN 6935, which is a rule for cold bending
//! blank by that line   D = 2(a + arc + s)            a  radius of the flat to the tangent, s  straight
//! blank by equal area  D = 2 √(a² + π a ρ + 2 ρ² + 2 R s)   ρ = r + t/2, R = a + ρ  mean radius of the flange
//! ```
//!
//! The second keeps the area of the mid surface: the flat is π a², the heel a quarter of a torus turned about the axis,
//! 2π(π a ρ/2 + ρ²), the straight a cylinder, 2π R s. It takes no change of thickness; the first takes no hoop shortening.

use crate::units::Length;
use crate::units::angle::{PI, log10, sqrt};

/// Place of the mid line.
pub(super) const MID_LINE: f64 = 0.5;

/// Place of the line that keeps its length by DIN 6935; nothing where the bend is so sharp that the rule gives a place outside
/// the metal (below r/t = 0.05), or a size is not above nothing.
pub(super) fn din_6935(radius: Length, thickness: Length) -> Option<f64> {
    let ratio = radius / thickness;
    if !(ratio > 0.0 && ratio.is_finite()) {
        return None;
    }
    let k = if ratio > 5.0 {
        1.0
    } else {
        (0.65 + 0.5 * log10(ratio)).min(1.0)
    };
    (k >= 0.0).then_some(k / 2.0)
}

/// Length of the line at this share of the thickness round a bend of a right angle.
pub(super) fn right_angle_arc(radius: Length, thickness: Length, share: f64) -> Length {
    PI / 2.0 * (radius + share * thickness)
}

/// Diameter of the blank of a round flange by the length of a line: flat, heel and straight laid out.
pub(super) fn blank_by_length(tangent: Length, arc: Length, straight: Length) -> Length {
    2.0 * (tangent + arc + straight)
}

/// Diameter of the blank of a round flange by the area of its mid surface.
pub(super) fn blank_by_area(
    tangent: Length,
    heel_radius: Length,
    thickness: Length,
    straight: Length,
) -> Length {
    let (a, s) = (tangent.to_mm(), straight.to_mm());
    let rho = (heel_radius + thickness / 2.0).to_mm();
    let mean = a + rho;
    Length::mm(2.0 * sqrt(a * a + PI * a * rho + 2.0 * rho * rho + 2.0 * mean * s))
}

/// Strain of the outer fibre round a bend, a share: t/2 over the radius of the mid line.
pub(super) fn fibre_strain(radius: Length, thickness: Length) -> f64 {
    thickness / 2.0 / (radius + thickness / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    fn inches(n: f64) -> Length {
        Length::inches(n)
    }

    /// DIN 6935 table of k = 2K by r/s, as set out in bending tables that quote the standard: 0.65 → .556, 0.8 → .602,
    /// 1 → .65, 1.5 → .738, 2 → .801, 2.4 → .840, 3 → .889, 3.8 → .940, 5 → .999 (printed cut, not rounded, at 2 and 5
    /// by some), and 1 above 5.
    #[test]
    fn published_din_6935_k() {
        for (ratio, k) in [
            (0.65, 0.556),
            (0.8, 0.602),
            (1.0, 0.65),
            (1.5, 0.738),
            (2.0, 0.801),
            (2.4, 0.840),
            (3.0, 0.889),
            (3.8, 0.940),
            (5.0, 0.999),
            (5.5, 1.0),
        ] {
            let ours = 2.0 * din_6935(inches(ratio), inches(1.0)).unwrap();
            assert!((ours - k).abs() <= 0.0005 + 1e-12, "{ratio}: {ours}");
        }
    }

    /// k is below nothing where log10(r/s) < −1.3, r/s < 0.0501: the line would lie outside the metal.
    #[test]
    fn by_hand_din_6935_has_no_sharper_bend() {
        assert!(din_6935(inches(0.0502), inches(1.0)).is_some());
        assert!(din_6935(inches(0.0500), inches(1.0)).is_none());
        assert!(din_6935(Length::ZERO, inches(1.0)).is_none());
    }

    /// Soft steel, 90°: L = 0.64 T + 1.57 R, the rule of the engineers' handbooks: T 3/8, R 1 → 1.810; T 1/2, R 1 → 1.890;
    /// T 5/8, R 1 1/4 → 2.3625. The rule writes 1.57 for π/2, so ours may be more by 0.0008 R.
    #[test]
    fn published_soft_steel_right_angles() {
        let share = 0.64 / (PI / 2.0);
        for (thickness, radius, length) in [
            (0.375, 1.0, 1.810),
            (0.5, 1.0, 1.890),
            (0.625, 1.25, 2.3625),
        ] {
            let arc = right_angle_arc(inches(radius), inches(thickness), share).to_inches();
            let of_rounded_half_pi = arc - (PI / 2.0 - 1.57) * radius;
            assert!((of_rounded_half_pi - length).abs() < 1e-9, "{arc}");
        }
    }

    /// The same bends by DIN 6935 and on the mid line: T 3/8, R 1 → 1.825 and 1.865. k = 0.65 + 0.5 log10(2.667) = 0.8630;
    /// (π/2)(1 + 0.4315 × 0.375) = 1.8250; (π/2)(1.1875) = 1.8653.
    #[test]
    fn by_hand_other_lines_round_the_same_bend() {
        let arc = |share| {
            let arc = right_angle_arc(inches(1.0), inches(0.375), share);
            decimal(arc.to_inches(), 3)
        };
        assert_eq!(arc(din_6935(inches(1.0), inches(0.375)).unwrap()), "1.825");
        assert_eq!(arc(MID_LINE), "1.865");
    }

    /// A pan 24 in across and 18 in deep takes a disc of 24 in radius: *Sheet and Plate Metal Work*, chapter XXVIII.
    #[test]
    fn published_deep_pan() {
        let nothing = Length::ZERO;
        let disc = blank_by_area(inches(12.0), nothing, nothing, inches(18.0));
        assert_eq!(decimal(disc.to_inches() / 2.0, 3), "24.000");
    }

    /// Flange 3 in deep overall, t 1/2, r 1, so s = 1.5 and ρ = 1.25.
    /// OD 30: a = 13.5, R = 14.75; 2(13.5 + 1.9635 + 1.5) = 33.927; 2 √(182.25 + 53.014 + 3.125 + 44.25) = 33.624.
    /// OD 36: a = 16.5, R = 17.75; 39.927; 2 √(272.25 + 64.795 + 3.125 + 53.25) = 39.670.
    /// OD 760, t 12, r 25, 75 deep, mm: s = 38, ρ = 31, a = 343, R = 374; 2(343 + 48.695 + 38) = 859.39;
    /// 2 √(117,649 + 33,404.8 + 1,922 + 28,424) = 851.82. The first of each pair to three places, 1 in 2 mm for the last.
    #[test]
    fn by_hand_three_flanges() {
        let blanks = |od: Length, t: Length, r: Length, depth: Length| {
            let tangent = od / 2.0 - t - r;
            let straight = depth - r - t;
            let arc = right_angle_arc(r, t, MID_LINE);
            (
                blank_by_length(tangent, arc, straight),
                blank_by_area(tangent, r, t, straight),
            )
        };
        let inch = |od| {
            let (line, area) = blanks(inches(od), inches(0.5), inches(1.0), inches(3.0));
            (decimal(line.to_inches(), 3), decimal(area.to_inches(), 3))
        };
        assert_eq!(inch(30.0), ("33.927".into(), "33.624".into()));
        assert_eq!(inch(36.0), ("39.927".into(), "39.670".into()));
        let mm = Length::mm;
        let (line, area) = blanks(mm(760.0), mm(12.0), mm(25.0), mm(75.0));
        assert_eq!(decimal(line.to_mm(), 2), "859.39");
        assert_eq!(decimal(area.to_mm(), 2), "851.82");
    }

    /// The area of the mid surface summed ring by ring along its section, by the mid-point rule, is that of the disc.
    #[test]
    fn holds_equal_area_against_summing_the_surface() {
        let (a, r, t, s) = (16.875, 1.5, 0.625, 2.25);
        let rho = r + t / 2.0;
        let steps = 100_000;
        let step = PI / 2.0 / f64::from(steps);
        let heel: f64 = (0..steps)
            .map(|n| {
                let turned = (f64::from(n) + 0.5) * step;
                2.0 * PI * (a + rho * crate::units::angle::sin(turned)) * rho * step
            })
            .sum();
        let area = PI * a * a + heel + 2.0 * PI * (a + rho) * s;
        let disc = blank_by_area(inches(a), inches(r), inches(t), inches(s)).to_inches();
        assert!((PI * disc * disc / 4.0 - area).abs() < 1e-6 * area);
    }

    /// Marl Hen's heel, r 1 1/2 and t 5/8: 0.3125 / 1.8125 = 17.2 %.
    #[test]
    fn by_hand_heel_strain() {
        let strain = fibre_strain(inches(1.5), inches(0.625));
        assert_eq!(decimal(100.0 * strain, 1), "17.2");
    }
}
