//! Areas and chords of circles, exactly: what handbooks print as tables.

use crate::units::Length;
use crate::units::angle::{PI, acos, sin, sqrt};

/// Area of the segment of this height cut from a circle of this radius, mm².
///
/// ```text
/// A = R² acos((R − h)/R) − (R − h) √(2 R h − h²)        h from 0 to 2 R; beyond, none of the circle or the whole
/// ```
pub fn circle_segment_area(radius: Length, height: Length) -> f64 {
    let r = radius.to_mm();
    let h = height.to_mm().clamp(0.0, 2.0 * r);
    if r <= 0.0 {
        return 0.0;
    }
    r * r * acos((r - h) / r) - (r - h) * sqrt((2.0 * r - h) * h)
}

/// The straight distance from one to the next of `count` places evenly round a circle: D sin(180°/n). Nothing for a count of 0.
pub fn chord(diameter: Length, count: u32) -> Length {
    if count == 0 {
        return Length::ZERO;
    }
    diameter * sin(PI / f64::from(count))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::SQUARE_MM_PER_SQUARE_INCH;

    fn segment_in2(radius: f64, height: f64) -> f64 {
        let area = circle_segment_area(Length::inches(radius), Length::inches(height));
        area / SQUARE_MM_PER_SQUARE_INCH
    }

    /// Half a disc of radius 10: 50 π. A quarter turn's segment: 100 (π/2 − 1)/2 = 28.5398, of height 10 − 10/√2.
    #[test]
    fn by_hand_segments() {
        let mm = |r, h| circle_segment_area(Length::mm(r), Length::mm(h));
        assert!((mm(10.0, 10.0) - 50.0 * PI).abs() < 1e-9);
        assert_eq!(
            format!("{:.4}", mm(10.0, 10.0 - 10.0 / sqrt(2.0))),
            "28.5398"
        );
        assert!((mm(10.0, 20.0) - 100.0 * PI).abs() < 1e-9 && mm(10.0, 0.0) == 0.0);
    }

    /// Hawkins, worked example: head 54 in, top of tubes to shell 25 in; flange supports 3 in and tubes 2 in: 714 in², by a
    /// closed approximation whose sum is 713.95. The exact segment of radius 24 and height 20 is 713.67, which also prints 714.
    #[test]
    fn published_hawkins_head_of_54_in() {
        assert_eq!(format!("{:.0}", segment_in2(24.0, 20.0)), "714");
        assert_eq!(format!("{:.2}", segment_in2(24.0, 20.0)), "713.67");
    }

    /// Hawkins, table of areas to be braced, in² (shell diameter; top of tubes to shell), 42 of its 52 cells: a segment of
    /// radius D/2 − 3 and height H − 5. The printed whole inches are within 1 of the exact segment, except that 48 in by 19 is
    /// printed 316, a misprint for 366: the book's own next table has 6.2 braces there, and 6.2 of 58.9 in² carry 365.
    #[test]
    fn published_hawkins_areas_to_be_braced() {
        const SHELLS: [f64; 7] = [36.0, 42.0, 48.0, 54.0, 60.0, 66.0, 72.0];
        const ROWS: [(f64, usize, &[f64]); 17] = [
            (15.0, 0, &[206.0]),
            (16.0, 0, &[235.0]),
            (17.0, 0, &[264.0, 297.0]),
            (18.0, 1, &[331.0, 365.0, 396.0]),
            (19.0, 1, &[366.0, 404.0, 439.0]),
            (21.0, 2, &[485.0, 528.0, 568.0]),
            (22.0, 2, &[526.0, 574.0, 618.0]),
            (23.0, 3, &[620.0, 668.0, 714.0]),
            (24.0, 3, &[667.0, 720.0, 769.0]),
            (26.0, 3, &[761.0, 824.0, 882.0, 937.0]),
            (27.0, 3, &[809.0, 877.0, 940.0, 998.0]),
            (28.0, 4, &[930.0, 998.0, 1061.0]),
            (30.0, 4, &[1037.0, 1115.0, 1187.0]),
            (31.0, 5, &[1174.0, 1252.0]),
            (32.0, 5, &[1234.0, 1317.0]),
            (33.0, 6, &[1382.0]),
            (34.0, 6, &[1447.0]),
        ];
        for (height, first, printed) in ROWS {
            for (shell, area) in SHELLS[first..].iter().zip(printed) {
                let exact = segment_in2(shell / 2.0 - 3.0, height - 5.0);
                assert!(
                    (exact - area).abs() <= 1.0,
                    "shell {shell}, height {height}: {exact}"
                );
            }
        }
    }

    /// A published four-figure table of chord factors, sin(180°/n). Its entry for n = 15, 0.2070, is wrong (sin 12° is
    /// 0.2079) and that for 17 is out in the last digit (0.1838 for 0.1837); both are kept here as they should be.
    #[test]
    fn published_chord_factors() {
        for (count, printed) in [(7, "0.4339"), (24, "0.1305"), (40, "0.0785")] {
            assert_eq!(
                format!("{:.4}", chord(Length::mm(1.0), count).to_mm()),
                printed
            );
        }
        assert_eq!(
            format!("{:.4}", chord(Length::mm(1.0), 15).to_mm()),
            "0.2079"
        );
        assert_eq!(
            format!("{:.4}", chord(Length::mm(1.0), 17).to_mm()),
            "0.1837"
        );
    }

    /// 44 rivets on 28.25 in: 28.25 sin(180°/44) = 2.01533 in. 40 holes on 700 mm: 700 sin 4.5° = 54.921 mm.
    #[test]
    fn by_hand_chords() {
        let rivets = chord(Length::inches(28.25), 44).to_inches();
        assert_eq!(format!("{rivets:.5}"), "2.01533");
        assert_eq!(
            format!("{:.3}", chord(Length::mm(700.0), 40).to_mm()),
            "54.921"
        );
    }
}
