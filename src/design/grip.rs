//! What a rivet of the flange goes through, and lengths round a circle.

use super::{Design, FlangeDesign};
use crate::spec::Barrel;
use crate::units::Length;
use crate::units::angle::PI;

/// Metal between the heads of a flange rivet: the flange, or the ring, and the barrel. None where there is no flange.
pub fn grip(design: &Design, barrel: &Barrel) -> Option<Length> {
    let flange = match design.flange.as_ref()? {
        FlangeDesign::Pressed(_) => design.thickness.value(),
        FlangeDesign::Fabricated(ring) => ring.ring_thickness.value(),
    };
    Some(flange + barrel.thickness.value())
}

/// Length round a circle of this diameter.
pub fn girth(diameter: Length) -> Length {
    PI * diameter
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::design::set_out;
    use crate::spec::read_spec_file;

    /// Marl Hen: 5/8 flange and 1/2 barrel, 1 1/8 in; Hobthrush: 16 mm ring and 12.7 mm barrel, 28.7 mm.
    #[test]
    fn by_hand_grips() {
        for (file, expected) in [
            ("specs/marl-hen-smokebox.yaml", Length::inches(1.125)),
            ("specs/hobthrush-smokebox.yaml", Length::mm(28.7)),
        ] {
            let spec = read_spec_file(Path::new(file)).expect("a sound spec");
            let design = set_out(&spec).expect("a sound plate");
            let barrel = spec.written.barrel.as_ref().expect("a barrel");
            assert!(
                grip(&design, barrel).is_some_and(|g| g.same_as(expected)),
                "{file}"
            );
        }
    }
}
