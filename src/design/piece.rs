//! The new metal of a piece let in: how large it is before it is flanged, and what it weighs.
//!
//! ```text
//! over heel and flange:  area = flat + θ (π/2 a + ρ) ρ + θ (a + ρ) s
//!     θ  angle between the two welds on the flange    a  radius of the flat to the tangent
//!     ρ  radius of the heel on mid thickness          s  straight
//! ```

use super::repair::{Repair, Site};
use super::{FlangeDesign, Point, Pressed};
use crate::spec::WeldLineSpec;
use crate::units::angle::PI;
use crate::units::{Length, Size};

/// What a piece let in is ordered as.
#[derive(Clone, Debug)]
pub struct PieceLetIn {
    /// Thickness ordered; none where the spec does not give it.
    pub thickness: Option<Size>,
    /// Area of its mid surface, no hole out, mm².
    pub area_mm2: f64,
    /// Its size before it is flanged, with nothing added for fitting.
    pub size: PieceSize,
    /// Mass, no hole out, kg; none where thickness or density is not given.
    pub mass_kg: Option<f64>,
}

/// The size of a piece let in, weld to weld.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PieceSize {
    /// On the flat: the box round it, across and up.
    Flat(Length, Length),
    /// Over heel and flange.
    Flanged {
        /// Round the bore from weld to weld.
        round: Length,
        /// From the weld where it is nearest the barrel centre straight out to the edge of the flange, on mid thickness.
        out: Length,
    },
}

/// The piece that a line lets in; none where it lets none in.
pub(super) fn piece_let_in(
    site: &Site<'_>,
    line: &WeldLineSpec,
    repair: &Repair,
) -> Option<PieceLetIn> {
    let renews = repair.renews.as_ref()?;
    let written = line.piece.as_ref();
    let thickness = written.and_then(|piece| piece.thickness.clone());
    let flanged = match (&site.form.flange, &repair.crossings[..]) {
        (Some(FlangeDesign::Pressed(pressed)), [a, b]) => {
            Some((pressed, between_deg(a.angle_deg, b.angle_deg).to_radians()))
        }
        _ => None,
    };
    let (area_mm2, size) = match flanged {
        Some((pressed, angle)) => (
            renews.area_mm2() + flange_area(pressed, angle),
            PieceSize::Flanged {
                round: pressed.outside_diameter.value() / 2.0 * angle,
                out: out_from(repair, pressed),
            },
        ),
        None => {
            let (low, high) = renews.bounds();
            let size = PieceSize::Flat(Length::mm(high.x - low.x), Length::mm(high.y - low.y));
            (renews.area_mm2(), size)
        }
    };
    let material = written.and_then(|piece| piece.material.as_ref());
    let density = material.and_then(|m| m.density.as_ref());
    let mass_kg = thickness.as_ref().zip(density).map(|(thickness, density)| {
        density
            .value()
            .mass_kg(area_mm2 * thickness.value().to_mm())
    });
    Some(PieceLetIn {
        thickness,
        area_mm2,
        size,
        mass_kg,
    })
}

/// The lesser angle between two directions: the piece is the smaller part of the plate.
fn between_deg(a: f64, b: f64) -> f64 {
    let turn = (a - b).abs() % 360.0;
    turn.min(360.0 - turn)
}

/// Radius of the heel on mid thickness, mm.
fn mid_heel(pressed: &Pressed) -> f64 {
    (pressed.outside_diameter.value() / 2.0 - pressed.tangent_radius).to_mm() / 2.0
        + pressed.heel_radius.value().to_mm() / 2.0
}

/// What heel and flange of a sector are larger than the face shows of them, mm².
fn flange_area(pressed: &Pressed, angle: f64) -> f64 {
    let a = pressed.tangent_radius.to_mm();
    let outside = pressed.outside_diameter.value().to_mm() / 2.0;
    let (rho, straight) = (mid_heel(pressed), pressed.straight.value().to_mm());
    let heel = (PI / 2.0 * a + rho) * rho;
    let flange = (a + rho) * straight;
    let shown = (outside * outside - a * a) / 2.0;
    angle * (heel + flange - shown)
}

fn out_from(repair: &Repair, pressed: &Pressed) -> Length {
    let nearest = repair.weld.iter().map(|edge| edge.distance(Point::CENTRE));
    let nearest = nearest.fold(f64::INFINITY, f64::min);
    let heel = PI / 2.0 * mid_heel(pressed);
    pressed.tangent_radius + Length::mm(heel - nearest) + pressed.straight.value()
}
