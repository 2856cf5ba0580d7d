//! The edge of an extended plate: a disc about the barrel centre with a leg carried down below the barrel.
//!
//! ```text
//!      disc of radius R about (0, 0); leg from x = −w to x = w (w half its width), foot at y = f
//!      corner of radius r where leg meets disc:  centre (±(w + r), −√((R + r)² − (w + r)²)),
//!      touching the disc at R/(R + r) of that, and the leg at its own height
//! ```

use std::fmt;

use super::{Edge, NotAnOutline, Outline, Point};
use crate::units::angle::sqrt;
use crate::units::tolerance::SAME_LENGTH_MM;

/// Why there is no plate of these sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ImpossibleKeyhole {
    /// A radius of the disc or a width of the leg that is nothing, less than nothing or not a number.
    NoSize,
    /// A corner or foot radius less than nothing.
    NegativeRadius,
    /// The leg is as wide as the disc.
    LegTooWide,
    /// The foot does not reach below the disc.
    FootInsideDisc,
    /// The foot is above the end of the corner between leg and disc.
    CornerTooLarge,
    /// The radii of the foot's two corners are more than half the leg's width.
    FootRadiusTooWide,
    /// The foot's corners begin above the corner between leg and disc.
    FootRadiusTooHigh,
    /// The figure crosses itself.
    NotAnOutline,
}

impl fmt::Display for ImpossibleKeyhole {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            ImpossibleKeyhole::NoSize => {
                "the radius of the disc and the width of the leg must be more than nothing"
            }
            ImpossibleKeyhole::NegativeRadius => "a corner radius is less than nothing",
            ImpossibleKeyhole::LegTooWide => {
                "the leg is as wide as the disc or wider, so there is no corner between them"
            }
            ImpossibleKeyhole::FootInsideDisc => "the foot of the leg does not come below the disc",
            ImpossibleKeyhole::CornerTooLarge => {
                "the corner between leg and disc is so large that it ends below the foot of the leg"
            }
            ImpossibleKeyhole::FootRadiusTooWide => {
                "the two corners of the foot together are wider than the leg"
            }
            ImpossibleKeyhole::FootRadiusTooHigh => {
                "the corners of the foot run into the corners between leg and disc"
            }
            ImpossibleKeyhole::NotAnOutline => "the edge would cross itself",
        })
    }
}

impl std::error::Error for ImpossibleKeyhole {}

impl Outline {
    /// The edge of an extended plate, mm: disc of this radius about the barrel centre, leg of this width down to `foot_y`
    /// (negative), a corner of this radius between the two (0 for a sharp one), and a radius on the foot's corners where there
    /// is one.
    pub fn keyhole(
        radius: f64,
        leg_width: f64,
        foot_y: f64,
        corner_radius: f64,
        foot_radius: Option<f64>,
    ) -> Result<Outline, ImpossibleKeyhole> {
        let (half, foot_radius) = (leg_width / 2.0, foot_radius.unwrap_or(0.0));
        refuse_impossible(radius, half, foot_y, corner_radius, foot_radius)?;
        let (reach, out) = (radius + corner_radius, half + corner_radius);
        let corner = Point::new(out, -sqrt(reach * reach - out * out));
        let leg_top = Point::new(half, corner.y);
        if leg_top.y - foot_y < -SAME_LENGTH_MM {
            return Err(ImpossibleKeyhole::CornerTooLarge);
        }
        if leg_top.y - (foot_y + foot_radius) < -SAME_LENGTH_MM {
            return Err(ImpossibleKeyhole::FootRadiusTooHigh);
        }
        let right = right_half(radius, corner, corner_radius, leg_top, foot_y, foot_radius);
        Outline::new(with_left_half(right)).map_err(|fault| match fault {
            NotAnOutline::NotANumber => ImpossibleKeyhole::NoSize,
            _ => ImpossibleKeyhole::NotAnOutline,
        })
    }
}

fn refuse_impossible(
    radius: f64,
    half: f64,
    foot_y: f64,
    corner_radius: f64,
    foot_radius: f64,
) -> Result<(), ImpossibleKeyhole> {
    let size = |mm: f64| mm.is_finite() && mm > SAME_LENGTH_MM;
    if !(size(radius) && size(half) && foot_y.is_finite()) {
        return Err(ImpossibleKeyhole::NoSize);
    }
    if !(corner_radius >= 0.0 && foot_radius >= 0.0) {
        return Err(ImpossibleKeyhole::NegativeRadius);
    }
    if half > radius - SAME_LENGTH_MM {
        return Err(ImpossibleKeyhole::LegTooWide);
    }
    if foot_y > -radius - SAME_LENGTH_MM {
        return Err(ImpossibleKeyhole::FootInsideDisc);
    }
    if foot_radius > half + SAME_LENGTH_MM {
        return Err(ImpossibleKeyhole::FootRadiusTooWide);
    }
    Ok(())
}

/// From the middle of the foot up the right side to the top of the disc.
fn right_half(
    radius: f64,
    corner: Point,
    corner_radius: f64,
    leg_top: Point,
    foot_y: f64,
    foot_radius: f64,
) -> Vec<Edge> {
    let foot_corner = Point::new(leg_top.x - foot_radius, foot_y + foot_radius);
    let touch = corner * (radius / (radius + corner_radius));
    let foot = Edge::Line {
        from: Point::new(0.0, foot_y),
        to: Point::new(foot_corner.x, foot_y),
    };
    let side = Edge::Line {
        from: Point::new(leg_top.x, foot_corner.y),
        to: leg_top,
    };
    let foot_arc = Edge::Arc {
        from: foot.to(),
        to: side.from(),
        centre: foot_corner,
        radius: foot_radius,
        anticlockwise: true,
    };
    let corner_arc = Edge::Arc {
        from: leg_top,
        to: touch,
        centre: corner,
        radius: corner_radius,
        anticlockwise: false,
    };
    let disc = Edge::Arc {
        from: touch,
        to: Point::new(0.0, radius),
        centre: Point::CENTRE,
        radius,
        anticlockwise: true,
    };
    let all = [foot, foot_arc, side, corner_arc, disc];
    let has_length = |e: &Edge| e.from().distance(e.to()) > SAME_LENGTH_MM;
    all.into_iter().filter(has_length).collect()
}

/// The opposite hand of the right half, walked on; the two halves of the foot are one line.
fn with_left_half(right: Vec<Edge>) -> Vec<Edge> {
    let left = |e: &Edge| e.moved(Point::opposite_hand, true).reversed();
    let mut all = right.clone();
    all.extend(right.iter().rev().map(left));
    if let (Edge::Line { to, .. }, Some(Edge::Line { from, .. })) = (all[0], all.last().copied())
        && from.y == to.y
    {
        all.pop();
        all[0] = Edge::Line { from, to };
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Disc 470, leg 720 wide to −690, corners 60. Corner: centre 360 + 60 = 420 out and √(530² − 420²) = √104,500 = 323.26
    /// down; touches the disc at 470/530 of that, (372.45, −286.67), and the leg at (360, −323.26). The disc's arc turns
    /// 360° − 2 × 52.42° = 255.17° (4.453545), each corner 37.58° (0.65598).
    ///
    /// Area: leg 720 × 366.735 = 264,049.5; disc's sector 470² × 4.453545/2 = 491,894.1; triangle from the centre to the two
    /// touching places 372.45 × 286.67 = 106,770.5; trapezium below it (744.91 + 720)/2 × 36.596 = 26,804.8; less two
    /// segments of 60²/2 × (0.65598 − sin 0.65598) = 82.8, the corners being hollow: 889,353.
    ///
    /// Perimeter: 720 + 2 × 366.735 + 2 × 60 × 0.65598 + 470 × 4.453545 = 3,625.4. Box: 2 × 470 by 470 + 690.
    #[test]
    fn by_hand_hobthrush_plate() {
        let plate = Outline::keyhole(470.0, 720.0, -690.0, 60.0, None).unwrap();
        let corner = plate.edges().iter().find_map(|e| match e {
            Edge::Arc {
                centre,
                radius: 60.0,
                ..
            } if centre.x > 0.0 => Some((*centre, e.from(), e.to())),
            _ => None,
        });
        let (centre, leg, disc) = corner.unwrap();
        let print = |p: Point| format!("{:.2}, {:.2}", p.x, p.y);
        assert_eq!(print(centre), "420.00, -323.26");
        assert_eq!(print(disc), "372.45, -286.67");
        assert_eq!(print(leg), "360.00, -323.26");
        assert_eq!(format!("{:.0}", plate.area_mm2()), "889353");
        assert_eq!(format!("{:.1}", plate.perimeter().to_mm()), "3625.4");
        let (low, high) = plate.bounds();
        assert_eq!((high.x - low.x, high.y - low.y), (940.0, 1160.0));
    }

    /// A leg 720 wide with foot corners of 360: the foot is half a disc. A sharp corner meets the disc at √(470² − 360²) = 302.16.
    #[test]
    fn by_hand_round_foot_and_sharp_corner() {
        let plate = Outline::keyhole(470.0, 720.0, -690.0, 0.0, Some(360.0)).unwrap();
        let side = plate
            .edges()
            .iter()
            .find(|e| matches!(e, Edge::Line { to, .. } if to.x > 0.0));
        assert_eq!(format!("{:.2}", side.unwrap().to().y), "-302.16");
        assert_eq!(plate.bounds().0, Point::new(-470.0, -690.0));
        assert!(
            !plate
                .edges()
                .iter()
                .any(|e| matches!(e, Edge::Arc { radius: 0.0, .. }))
        );
    }

    #[test]
    fn refuses_plates_that_cannot_be() {
        let refused = |radius, width, foot_y, corner, foot| {
            Outline::keyhole(radius, width, foot_y, corner, foot).unwrap_err()
        };
        assert_eq!(
            refused(0.0, 720.0, -690.0, 60.0, None),
            ImpossibleKeyhole::NoSize
        );
        assert_eq!(
            refused(470.0, f64::NAN, -690.0, 60.0, None),
            ImpossibleKeyhole::NoSize
        );
        assert_eq!(
            refused(470.0, 720.0, -690.0, -1.0, None),
            ImpossibleKeyhole::NegativeRadius
        );
        assert_eq!(
            refused(470.0, 940.0, -690.0, 60.0, None),
            ImpossibleKeyhole::LegTooWide
        );
        assert_eq!(
            refused(470.0, 720.0, -400.0, 60.0, None),
            ImpossibleKeyhole::FootInsideDisc
        );
        assert_eq!(
            refused(470.0, 720.0, -690.0, 3000.0, None),
            ImpossibleKeyhole::CornerTooLarge
        );
        assert_eq!(
            refused(470.0, 720.0, -690.0, 60.0, Some(361.0)),
            ImpossibleKeyhole::FootRadiusTooWide
        );
        assert_eq!(
            refused(470.0, 100.0, -530.0, 60.0, Some(49.0)),
            ImpossibleKeyhole::FootRadiusTooHigh
        );
    }
}
