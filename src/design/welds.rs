//! Welds of a fabricated flange, their lengths and what lies near them; and the heel of a pressed one, by quarters.
//!
//! No weld is sized here: legs are the works' own. Lengths are taken along the root.

use super::{Design, Fabricated, FlangeDesign, Hole};
use crate::spec::NamedLine;
use crate::units::Length;
use crate::units::angle::PI;

/// Which weld of a ring.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WeldPart {
    /// Between plate and ring, inside the ring.
    Inside,
    /// Between plate and ring, outside the ring.
    Outside,
    /// Where the two ends of the ring's bar meet.
    RingJoint,
}

/// One weld.
#[derive(Clone, Debug)]
pub struct Weld {
    /// Which.
    pub part: WeldPart,
    /// Length of its root.
    pub length: Length,
    /// Leg as the works gives it; none for the ring's own joint.
    pub leg: Option<Length>,
    /// Nearest hole in the plate and the metal from its edge to the weld's toe; none where no hole faces it.
    pub nearest_hole: Option<(usize, Length)>,
    /// From its toe on the ring to the edge of the rivet holes, the inner row's of several; none without rivets, and for the ring's own joint.
    pub to_rivet_hole: Option<Length>,
    /// From its toe on the ring to the edge of a rivet head; none where the spec gives no head.
    pub to_rivet_head: Option<Length>,
}

/// Every weld of a fabricated flange; none for any other plate. `head` is the diameter of a rivet's head, where the spec gives it.
pub fn welds(design: &Design, head: Option<Length>) -> Vec<Weld> {
    let Some(FlangeDesign::Fabricated(ring)) = &design.flange else {
        return Vec::new();
    };
    let outer = ring.ring_outside_diameter.value();
    let inner = outer - 2.0 * ring.ring_thickness.value();
    let fillet = |part, root: Length, leg: Length, toe: NamedLine| Weld {
        part,
        length: PI * root,
        leg: Some(leg),
        nearest_hole: nearest_hole(design, toe),
        to_rivet_hole: rivet_hole(design).and_then(|hole| to_rivet(design, ring, leg, hole)),
        to_rivet_head: head.and_then(|head| to_rivet(design, ring, leg, head)),
    };
    vec![
        fillet(
            WeldPart::Inside,
            inner,
            ring.weld_leg_inside.value(),
            NamedLine::InnerWeldToe,
        ),
        fillet(
            WeldPart::Outside,
            outer,
            ring.weld_leg_outside.value(),
            NamedLine::OuterWeldToe,
        ),
        Weld {
            part: WeldPart::RingJoint,
            length: ring.ring_width.value(),
            leg: None,
            nearest_hole: None,
            to_rivet_hole: None,
            to_rivet_head: None,
        },
    ]
}

fn nearest_hole(design: &Design, toe: NamedLine) -> Option<(usize, Length)> {
    let lands = design.lands.iter().filter(|land| land.line == toe);
    lands
        .min_by(|a, b| a.metal.total_cmp(&b.metal))
        .map(|land| (land.hole, land.metal))
}

fn rivet_hole(design: &Design) -> Option<Length> {
    Some(design.rivets.as_ref()?.hole.value())
}

/// From a weld's toe on the ring to the edge of a circle this wide round the centres of the rivets nearest to it.
fn to_rivet(design: &Design, ring: &Fabricated, leg: Length, across: Length) -> Option<Length> {
    let line = design.rivets.as_ref()?;
    Some(ring.ring_width.value() - line.inner_row_from_edge() - leg - across / 2.0)
}

/// Length of a quarter of the heel, along its tangent; none where the flange is not pressed.
pub fn heel_quarter(design: &Design) -> Option<Length> {
    match &design.flange {
        Some(FlangeDesign::Pressed(heel)) => Some(PI * heel.tangent_radius / 2.0),
        Some(FlangeDesign::Fabricated(_)) | None => None,
    }
}

/// The hole whose edge comes nearest to the tangent, and the metal between; none where the flange is not pressed.
pub fn nearest_to_heel(design: &Design) -> Option<(&Hole, Length)> {
    let (hole, metal) = nearest_hole(design, NamedLine::Tangent)?;
    Some((&design.holes[hole], metal))
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::super::set_out;
    use super::*;
    use crate::spec::read_spec_file;
    use crate::units::print::decimal;

    /// Hobthrush: roots at 840 − 32 = 808 and 840 mm, so π × 808 = 2,538.4 and π × 840 = 2,638.9 mm. Land of a tube to the inner
    /// toe 19.2 (the worked scenario). Rivets 36 from the edge of a 90 bar, hole 23, leg 12: 90 − 36 − 12 − 11.5 = 30.5.
    #[test]
    fn by_hand_welds_of_hobthrush() {
        let spec = read_spec_file(Path::new("specs/hobthrush-smokebox.yaml")).unwrap();
        let welds = welds(&set_out(&spec).unwrap(), None);
        let lengths: Vec<String> = welds.iter().map(|w| decimal(w.length.to_mm(), 1)).collect();
        assert_eq!(lengths, ["2538.4", "2638.9", "90.0"]);
        let (_, metal) = welds[0].nearest_hole.unwrap();
        assert_eq!(decimal(metal.to_mm(), 1), "19.2");
        let to_rivet = welds[1].to_rivet_hole.unwrap();
        assert_eq!(decimal(to_rivet.to_mm(), 1), "30.5");
    }
}
