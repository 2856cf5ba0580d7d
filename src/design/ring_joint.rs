//! Where the two ends of a ring's bar meet, and what stands near: the next rivets and the barrel's lengthwise seam.
//!
//! Ways are measured round the outside of the ring, the shorter way. Nothing is judged here: how far a joint must stand from a
//! seam is the works' own, and what is written wrong is refused where the ring is cut.

use super::{Design, Fabricated, FlangeDesign};
use crate::spec::{Flange, Spec};
use crate::units::Length;
use crate::units::angle::PI;
use crate::units::tolerance::SAME_ANGLE_DEG;

/// The joint of a ring, in its place.
#[derive(Clone, Debug)]
pub struct JointPlace {
    /// Degrees clockwise from the top.
    pub angle_deg: f64,
    /// Whether the spec puts it there; else it lies midway between the rivets next to top centre.
    pub written: bool,
    /// The rivet next to it and the way to the middle of its hole; none where there are no rivets.
    pub nearest_rivet: Option<(String, Length)>,
    /// Angle of the barrel's lengthwise seam and the way to it; none where the spec does not say where that stands.
    pub seam: Option<(f64, Length)>,
    /// The least way to the seam that the works asks for.
    pub clear_of_seam: Option<Length>,
}

/// The joint of a fabricated ring; none of any other flange.
pub fn ring_joint(spec: &Spec, design: &Design) -> Option<JointPlace> {
    let Some(FlangeDesign::Fabricated(ring)) = &design.flange else {
        return None;
    };
    let joint = match &spec.written.flange {
        Some(Flange::Fabricated(flange)) => flange.joint.as_deref(),
        Some(Flange::Pressed(_)) | None => None,
    };
    let angle_deg = joint.map_or_else(|| between_rivets(design), |joint| joint.angle);
    let seam = joint.and_then(|joint| joint.barrel_seam);
    let rivets = design.rivets.iter().flat_map(|line| &line.rivets);
    let ways = rivets.map(|r| (r.id.clone(), way_round(ring, angle_deg, r.angle_deg)));
    Some(JointPlace {
        angle_deg,
        written: joint.is_some(),
        nearest_rivet: ways.min_by(|a, b| a.1.total_cmp(&b.1)),
        seam: seam.map(|deg| (deg, way_round(ring, angle_deg, deg))),
        clear_of_seam: joint.and_then(|joint| Some(joint.clear_of_seam.as_ref()?.value())),
    })
}

/// The shorter way round the outside of the ring between two angles.
fn way_round(ring: &Fabricated, a: f64, b: f64) -> Length {
    let apart = (a - b).rem_euclid(360.0);
    apart.min(360.0 - apart) / 360.0 * PI * ring.ring_outside_diameter.value()
}

/// Where the ends meet if the spec does not say, degrees clockwise from the top: the middle of the gap between rivets that holds top
/// centre, or of the next one clockwise where a rivet stands on it. Rows that zig-zag leave gaps of half a pitch.
fn between_rivets(design: &Design) -> f64 {
    let rivets = design.rivets.iter().flat_map(|line| &line.rivets);
    // A rivet on top centre counts as the last before it, whichever way its angle was rounded.
    let before_top = |deg: f64| match deg.rem_euclid(360.0) {
        turn if turn > 360.0 - SAME_ANGLE_DEG => turn - 360.0,
        turn => turn,
    };
    let angles: Vec<f64> = rivets.map(|rivet| before_top(rivet.angle_deg)).collect();
    let after = |deg: &f64| *deg > SAME_ANGLE_DEG;
    let first = angles.iter().copied().filter(after).reduce(f64::min);
    let last = angles
        .iter()
        .map(|deg| if after(deg) { deg - 360.0 } else { *deg })
        .reduce(f64::max);
    match (first, last) {
        (Some(first), Some(last)) => (last + first) / 2.0,
        _ => 0.0,
    }
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::super::set_out;
    use super::*;
    use crate::spec::read_spec_file;
    use crate::units::print::decimal;

    /// Hobthrush: 48 rivets, 7.5° apart with one on bottom centre. The joint at 71.25° lies half a space from the next, π × 840 × 3.75/360 =
    /// 27.49 mm; the seam at 20° is 51.25° away, π × 840 × 51.25/360 = 375.68 mm.
    #[test]
    fn by_hand_joint_of_hobthrush() {
        let spec = read_spec_file(Path::new("specs/hobthrush-smokebox.yaml")).unwrap();
        let joint = ring_joint(&spec, &set_out(&spec).unwrap()).unwrap();
        assert!(joint.written);
        let (_, away) = joint.nearest_rivet.unwrap();
        assert_eq!(decimal(away.to_mm(), 2), "27.49");
        let (seam, away) = joint.seam.unwrap();
        assert_eq!((seam, decimal(away.to_mm(), 2).as_str()), (20.0, "375.68"));
    }
}
