//! Which holes stand so near the wall of the flange that a magnetic drill does not get between.

use super::{Design, FlangeDesign};
use crate::units::Length;

/// A hole within reach of the wall.
#[derive(Clone, Copy, Debug)]
pub struct NearWall {
    /// Index into [`Design::holes`].
    pub hole: usize,
    /// From the hole's centre to the nearest wall of the flange.
    pub to_wall: Length,
}

/// Holes whose centre is nearer to the wall of the flange than the drill's body is wide from its spindle, nearest first.
/// None where there is no flange.
pub fn near_wall(design: &Design, body_radius: Length) -> Vec<NearWall> {
    let Some((inside, outside)) = wall(design) else {
        return Vec::new();
    };
    let mut near: Vec<NearWall> = design
        .holes
        .iter()
        .enumerate()
        .map(|(index, hole)| {
            let radius = Length::mm(hole.at.radius());
            NearWall {
                hole: index,
                to_wall: if radius < inside {
                    inside - radius
                } else {
                    radius - outside
                },
            }
        })
        .filter(|near| near.to_wall.shortfall(body_radius).is_some())
        .collect();
    near.sort_by(|a, b| a.to_wall.total_cmp(&b.to_wall).then(a.hole.cmp(&b.hole)));
    near
}

/// Inside and outside radius of the upstanding flange.
fn wall(design: &Design) -> Option<(Length, Length)> {
    let (outside, thickness) = match design.flange.as_ref()? {
        FlangeDesign::Pressed(pressed) => {
            (pressed.outside_diameter.value(), design.thickness.value())
        }
        FlangeDesign::Fabricated(ring) => (
            ring.ring_outside_diameter.value(),
            ring.ring_thickness.value(),
        ),
    };
    Some((outside / 2.0 - thickness, outside / 2.0))
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::design::set_out;
    use crate::spec::read_spec_file;

    /// Marl Hen, wall inside at 19 − 5/8 = 18.375 in, body 3 1/2: holes beyond radius 14.875. (13.5, ±6.484) lie at 14.977,
    /// (4.5, −14.266) at 14.959, (11.25, −10.375) at 15.304, each on both hands: 8. (9, −11.672) at 14.739 is clear.
    #[test]
    fn by_hand_eight_tubes_of_marl_hen() {
        let spec = read_spec_file(Path::new("specs/marl-hen-smokebox.yaml")).expect("a sound spec");
        let design = set_out(&spec).expect("a sound plate");
        let near = near_wall(&design, Length::inches(3.5));
        assert_eq!(near.len(), 8);
        assert!(
            near.iter()
                .all(|n| design.holes[n.hole].id.starts_with('T'))
        );
        assert_eq!(format!("{:.3}", near[0].to_wall.to_inches()), "3.071");
    }
}
