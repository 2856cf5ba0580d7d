//! The plate as it was made: the same holes at the sizes and places that were measured, and everything that follows from them.

use super::above_tubes::above_tubes;
use super::masses::figures;
use super::repair::measure_again;
use super::set_out::largest_circles;
use super::stay_area::stay_areas;
use super::{Design, Point, directions, lands, survey};
use crate::spec::Written;
use crate::units::{Length, Size};

/// One hole as it was measured.
#[derive(Clone, Debug)]
pub struct HoleMade {
    /// Index into [`Design::holes`].
    pub hole: usize,
    /// Whether its size was measured; where it was not, the designed one stands in its place.
    pub sized: bool,
    /// Its finished size in the first direction measured.
    pub first_way: Size,
    /// Its size across that, where it was measured.
    pub across: Option<Size>,
    /// Its centre, where it was measured.
    pub at: Option<Point>,
}

impl HoleMade {
    /// The larger of its two sizes: an oval hole takes metal as if it were round and as large as it is the long way.
    pub fn larger(&self) -> &Size {
        match &self.across {
            Some(across) if across.value() > self.first_way.value() => across,
            _ => &self.first_way,
        }
    }

    /// By how much one way is longer than the other; none where one way alone was measured.
    pub fn oval_by(&self) -> Option<Length> {
        let across = self.across.as_ref()?.value();
        let first = self.first_way.value();
        Some(first.max(across) - first.min(across))
    }

    /// By how much its larger size is over what was designed; negative where it is under.
    pub fn over(&self, design: &Design) -> Length {
        self.larger().value() - design.holes[self.hole].finish.value()
    }

    /// How far to the right and up it stands from where it was designed, mm; none where its place was not measured.
    pub fn off(&self, design: &Design) -> Option<Point> {
        Some(self.at? - design.holes[self.hole].at)
    }
}

/// The plate with these holes as they were measured, and the others as designed.
///
/// What stands between holes, to the lines of the plate, to weld repairs, round the supports and above the tubes is found again; so are the masses.
/// The pitch on which stays stand, the other plate's holes, the withdrawal and the rivets stay as designed. Nothing is refused: holes
/// that were made to meet have negative metal between them.
pub fn as_made(written: &Written, design: &Design, made: &[HoleMade]) -> Design {
    let mut plate = design.clone();
    for measured in made {
        take(&mut plate, measured);
    }
    for group in &mut plate.groups {
        // What a tolerance would leave, and what stands at each stage, was asked before the holes were made.
        group.largest = None;
        group.stages.drain(..group.stages.len() - 1);
    }
    let survey = survey(&plate.holes, &plate.groups);
    plate.least_ligaments = survey.least;
    plate.close_pairs = survey.close_pairs;
    plate.directions = directions(&plate.holes, &plate.groups);
    plate.lands = lands(&plate.holes, &plate.groups, &plate.lines);
    (plate.largest_circle, plate.largest_circle_without_tubes) = largest_circles(
        written,
        &plate.lines,
        &plate.holes,
        &plate.groups,
        &plate.stay_tubes,
    );
    for repair in &mut plate.repairs {
        measure_again(repair, &plate.holes, &plate.groups);
    }
    let flange = plate.flange.as_ref();
    plate.above_tubes = above_tubes(
        written,
        flange,
        &plate.holes,
        &plate.groups,
        &plate.stay_tubes,
    );
    plate.stay_areas = stay_areas(
        written,
        &plate.holes,
        &plate.groups,
        &plate.stay_pitches,
        plate.above_tubes.as_ref(),
        &plate.stay_tubes,
    );
    plate.figures = figures(
        written,
        &plate.edge,
        flange,
        &plate.holes,
        plate.rivets.as_ref(),
    );
    plate
}

/// Puts one measured hole in the place of the designed one.
fn take(plate: &mut Design, measured: &HoleMade) {
    let hole = &mut plate.holes[measured.hole];
    let size = measured.larger();
    let bushed = !hole.ligament_hole.same_as(hole.finish.value());
    // The metal beside a bushed hole is taken to the bush's outside, which boring the bush does not alter.
    hole.ligament_hole = match bushed {
        true => hole.ligament_hole.max(size.value()),
        false => size.value(),
    };
    hole.finish = size.clone();
    hole.at = measured.at.unwrap_or(hole.at);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::set_out;
    use crate::spec::{Purpose, Spec, read_spec_file};
    use crate::units::print::decimal;

    fn marl_hen() -> (Spec, Design) {
        let path = std::path::Path::new("specs/marl-hen-smokebox.yaml");
        let spec = read_spec_file(path).expect("it reads");
        let design = set_out(&spec).expect("it sets out");
        (spec, design)
    }

    fn size(text: &str) -> Size {
        Size::read(text).expect("a size")
    }

    fn least(design: &Design) -> (String, String, String) {
        let tubes = (Purpose::Tube, Purpose::Tube);
        let found = design.least_ligaments.iter().find(|l| l.between == tubes);
        let ligament = &found.expect("tubes stand beside tubes").ligament;
        let (a, b) = ligament.holes;
        let metal = decimal(ligament.metal.to_inches(), 6);
        (
            design.holes[a].id.clone(),
            design.holes[b].id.clone(),
            metal,
        )
    }

    /// T1 and T2 stand 2 19/32 in apart up the column, 27/32 in of metal less 3/32: 0.75. T1 made 1 29/32 by 1 7/8 takes half of
    /// 1/16 in from it: 0.71875. T2 found 1/64 in nearer as well leaves 0.703125.
    #[test]
    fn by_hand_one_hole_large_and_another_off_its_place() {
        let (spec, design) = marl_hen();
        assert_eq!(least(&design).2, "0.750000");
        let oval = HoleMade {
            hole: 0,
            sized: true,
            first_way: size("1 7/8 in"),
            across: Some(size("1 29/32 in")),
            at: None,
        };
        let oval_by = oval.oval_by().expect("measured both ways");
        assert!(oval_by.same_as(Length::sixty_fourths(2)));
        let found = as_made(&spec.written, &design, std::slice::from_ref(&oval));
        assert_eq!(
            least(&found),
            ("T1".into(), "T2".into(), "0.718750".to_string())
        );
        let at = design.holes[1].at;
        let nearer = Point::new(at.x, at.y - Length::sixty_fourths(1).to_mm());
        let moved = HoleMade {
            hole: 1,
            sized: false,
            first_way: design.holes[1].finish.clone(),
            across: None,
            at: Some(nearer),
        };
        let found = as_made(&spec.written, &design, &[oval, moved]);
        assert_eq!(least(&found).2, "0.703125");
    }

    #[test]
    fn holds_as_designed_where_nothing_was_measured() {
        let (spec, mut design) = marl_hen();
        for group in &mut design.groups {
            group.largest = None;
            group.stages.drain(..group.stages.len() - 1);
        }
        let found = as_made(&spec.written, &design, &[]);
        assert_eq!(format!("{found:?}"), format!("{design:?}"));
    }

    /// Every hole made where and as it was designed is the design.
    #[test]
    fn holds_as_designed_where_all_was_made_so() {
        let (spec, design) = marl_hen();
        let made: Vec<HoleMade> = design
            .holes
            .iter()
            .enumerate()
            .map(|(hole, designed)| HoleMade {
                hole,
                sized: true,
                first_way: designed.finish.clone(),
                across: Some(designed.finish.clone()),
                at: Some(designed.at),
            })
            .collect();
        let found = as_made(&spec.written, &design, &made);
        assert_eq!(least(&found), least(&design));
        assert_eq!(
            found.figures.plate_mass_kg.map(|kg| decimal(kg, 9)),
            design.figures.plate_mass_kg.map(|kg| decimal(kg, 9))
        );
    }
}
