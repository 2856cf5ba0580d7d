//! Areas and masses of the plate, its blank and its ring, and the pressure on its end.
//!
//! ```text
//! pressed, no hole out:  V = π a² t + 2π(π a ρ t/2 + (ρₒ³ − ρᵢ³)/3) + 2π R s t
//!     a  radius of the flat to the tangent, t  thickness, s  straight, ρᵢ = r, ρₒ = r + t, ρ = r + t/2, R = a + ρ
//! ```
//!
//! The heel is a quarter of a ring of metal turned about the axis; its volume is the integral of 2π (a + ρ sin θ) over it,
//! which is exact and a little more than area of mid surface × thickness. A hole takes out its circle × thickness, a rivet
//! hole likewise.

use super::{Figures, FlangeDesign, Hole, Outline, Pressed, RivetLine};
use crate::spec::{Flange, Written};
use crate::units::angle::PI;
use crate::units::{Density, Length};

/// Areas always; masses where the spec gives a density, the end load where it gives a pressure and a bore.
pub(super) fn figures(
    written: &Written,
    edge: &Outline,
    flange: Option<&FlangeDesign>,
    holes: &[Hole],
    rivets: Option<&RivetLine>,
) -> Figures {
    let t = written.plate.thickness.value().to_mm();
    let cut = match flange {
        Some(FlangeDesign::Pressed(pressed)) => {
            Outline::circle(super::Point::CENTRE, pressed.blank_cut.to_mm() / 2.0)
        }
        Some(FlangeDesign::Fabricated(_)) | None => edge.clone(),
    };
    let (low, high) = cut.bounds();
    let blank_mm3 = cut.area_mm2() * t;
    let plain_mm3 = match flange {
        Some(FlangeDesign::Pressed(pressed)) => pressed_volume(pressed, t),
        Some(FlangeDesign::Fabricated(_)) | None => blank_mm3,
    };
    let out_mm3 = t * (holes_area(holes) + flange_holes_area(flange, rivets));
    let density = written
        .plate
        .material
        .as_ref()
        .and_then(|m| m.density.as_ref());
    let density = density.map(|written| written.value());
    Figures {
        outline_area_mm2: cut.area_mm2(),
        outline_perimeter: cut.perimeter(),
        outline_box: (Length::mm(high.x - low.x), Length::mm(high.y - low.y)),
        plate_plain_kg: density.map(|density| density.mass_kg(plain_mm3)),
        plate_mass_kg: density.map(|density| density.mass_kg(plain_mm3 - out_mm3)),
        ring_mass_kg: ring_mass(written, flange, density),
        // A plate that is kept has no blank any more.
        blank_mass_kg: density
            .filter(|_| !written.plate.kept)
            .map(|density| density.mass_kg(blank_mm3)),
        end_load_n: end_load(written),
    }
}

/// Volume of a pressed plate without a hole, mm³.
fn pressed_volume(pressed: &Pressed, t: f64) -> f64 {
    let (a, r, s) = (
        pressed.tangent_radius.to_mm(),
        pressed.heel_radius.value().to_mm(),
        pressed.straight.value().to_mm(),
    );
    let (rho, outer) = (r + t / 2.0, r + t);
    let flat = PI * a * a * t;
    let heel = 2.0 * PI * (PI * a * rho * t / 2.0 + (outer * outer * outer - r * r * r) / 3.0);
    let straight = 2.0 * PI * (a + rho) * s * t;
    flat + heel + straight
}

/// Area of every hole in the flat, mm².
fn holes_area(holes: &[Hole]) -> f64 {
    holes.iter().map(|hole| circle(hole.finish.value())).sum()
}

/// Area of the rivet holes that are in the plate's own metal, mm²: those of a pressed flange. A ring is weighed apart.
fn flange_holes_area(flange: Option<&FlangeDesign>, rivets: Option<&RivetLine>) -> f64 {
    match (flange, rivets) {
        (Some(FlangeDesign::Pressed(_)), Some(line)) => {
            line.rivets.len() as f64 * circle(line.hole.value())
        }
        _ => 0.0,
    }
}

fn circle(diameter: Length) -> f64 {
    PI * diameter.to_mm() * diameter.to_mm() / 4.0
}

/// Mass of the net strip, without a hole.
fn ring_mass(
    written: &Written,
    flange: Option<&FlangeDesign>,
    plate_density: Option<Density>,
) -> Option<f64> {
    let Some(FlangeDesign::Fabricated(ring)) = flange else {
        return None;
    };
    let own_density = match &written.flange {
        Some(Flange::Fabricated(written)) => written
            .material
            .as_ref()
            .map(|m| m.density.as_ref().map(|d| d.value())),
        _ => None,
    };
    // A ring of a material of its own, whose density is not given, is not weighed by the plate's.
    let density = own_density.unwrap_or(plate_density)?;
    Some(density.mass_kg(
        ring.strip_net.to_mm()
            * ring.ring_width.value().to_mm()
            * ring.ring_thickness.value().to_mm(),
    ))
}

/// Working pressure on the full circle of the bore.
fn end_load(written: &Written) -> Option<f64> {
    let bore = written.barrel.as_ref()?.bore.value();
    let pressure = written.working_pressure.as_ref()?.value();
    Some(pressure.to_n_mm2() * circle(bore))
}
