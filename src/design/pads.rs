//! Pads where they lie on the plate: round which hole, on which face, and the metal between their welds and the holes near them.

use super::numbering::Numbered;
use super::{Design, Point};
use crate::spec::{Pad, PadHole, ViewFrom, Written};
use crate::units::{Length, Size};

/// A pad in its place. Its middle is the middle of its hole, wherever that is made.
#[derive(Clone, Debug)]
pub struct PlacedPad {
    /// Its place in the spec's list of pads.
    pub part: usize,
    /// Index of the hole that it lies round.
    pub hole: usize,
    /// The face of the plate that it lies on.
    pub side: ViewFrom,
    /// Outside diameter.
    pub diameter: Length,
    /// Thickness.
    pub thickness: Length,
    /// Diameter of the opening in its middle: its own bore, a hole drilled or tapped there, or the plate's hole.
    pub opening: Length,
    /// Leg of the weld round its edge; none where it is not welded on.
    pub weld_leg: Option<Size>,
    /// Its other holes, from its middle as the plate is seen in the face view, with their diameters.
    pub holes: Vec<(Point, Length)>,
}

impl PlacedPad {
    /// Where its middle lies.
    pub fn at(&self, design: &Design) -> Point {
        design.holes[self.hole].at
    }

    /// Whether it lies on the face that one looks at.
    pub fn is_near(&self, design: &Design) -> bool {
        self.side == design.view_from
    }

    /// Radius of its weld's toe on the plate, or of its edge where it is not welded.
    pub fn toe_radius(&self) -> Length {
        let leg = self.weld_leg.as_ref().map_or(Length::ZERO, Size::value);
        self.diameter / 2.0 + leg
    }

    /// The hole whose edge comes nearest to the toe of its weld, and the metal between; a hole that opens within the pad is the
    /// pad's own and is not measured. None where no other hole stands in the plate.
    pub fn nearest_hole(&self, design: &Design) -> Option<(usize, Length)> {
        let middle = self.at(design);
        let aside = design.holes.iter().enumerate().filter_map(|(index, hole)| {
            let away = Length::mm(hole.at.distance(middle));
            let is_its_own = index == self.hole || away < self.diameter / 2.0;
            (!is_its_own).then(|| {
                let metal = away - self.toe_radius() - hole.ligament_hole / 2.0;
                (index, metal)
            })
        });
        aside.min_by(|a, b| a.1.total_cmp(&b.1))
    }
}

/// A pad for every hole that names one, in the order of the holes.
pub(super) fn place_pads(written: &Written, numbered: &Numbered) -> Vec<PlacedPad> {
    let mut placed = Vec::new();
    for (index, hole) in numbered.holes.iter().enumerate() {
        let path = &numbered.groups[hole.group].path;
        let sets = written.holes.iter().enumerate();
        let mut of_hole = sets.filter(|(i, _)| *path == format!("holes[{i}]"));
        let Some(at) = of_hole.find_map(|(_, set)| set.pad.as_ref()) else {
            continue;
        };
        let Some(part) = written.pads.iter().position(|pad| pad.name == at.name) else {
            continue;
        };
        let pad = &written.pads[part];
        placed.push(PlacedPad {
            part,
            hole: index,
            side: at.side,
            diameter: pad.diameter.value(),
            thickness: pad.thickness.value(),
            opening: opening(pad).unwrap_or(hole.finish.value()),
            weld_leg: at.weld_leg.clone(),
            holes: holes_aside(pad, at.side == written.plate.view_from),
        });
    }
    placed
}

/// The opening in the middle of a pad; none where it is a full disc.
fn opening(pad: &Pad) -> Option<Length> {
    let bore = pad.bore.as_ref().map(Size::value);
    bore.or_else(|| {
        let mut holes = pad.holes.iter();
        holes.find_map(|hole| {
            let in_the_middle = places(hole).any(|at| opens_the_middle(hole, at));
            in_the_middle.then(|| hole.hole.value())
        })
    })
}

/// A pad's holes off its middle. They are written as seen on the pad's own face: on the far side that is the other hand.
fn holes_aside(pad: &Pad, near: bool) -> Vec<(Point, Length)> {
    let mut aside = Vec::new();
    for hole in &pad.holes {
        let off_the_middle = places(hole).filter(|&at| !opens_the_middle(hole, at));
        aside.extend(off_the_middle.map(|at| {
            let at = if near { at } else { at.opposite_hand() };
            (at, hole.hole.value())
        }));
    }
    aside
}

fn places(hole: &PadHole) -> impl Iterator<Item = Point> + '_ {
    hole.at
        .iter()
        .map(|(x, y)| Point::new(x.value().to_mm(), y.value().to_mm()))
}

/// Whether a hole leaves no metal between itself and the pad's middle.
fn opens_the_middle(hole: &PadHole, at: Point) -> bool {
    at.radius() <= hole.hole.value().to_mm() / 2.0
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::super::set_out;
    use super::*;
    use crate::spec::read_spec_file;
    use crate::units::print::decimal;

    fn design(spec: &str) -> Design {
        set_out(&read_spec_file(Path::new(spec)).unwrap()).unwrap()
    }

    /// Marl Hen, round the plug at (0, −14 1/4): pad 2 1/2 across and a leg of 1/4, so the toe is at 1 1/2. The nearest tube of the
    /// middle column is five pitches below its first: 1 19/64 − 5 × 2 19/32 = −11 43/64, which is 2 37/64 off. Hole 1 27/32:
    /// 2 37/64 − 1 1/2 − 59/64 = 5/32.
    #[test]
    fn by_hand_metal_beside_the_pad_of_marl_hen() {
        let design = design("specs/marl-hen-smokebox.yaml");
        let [pad] = &design.pads[..] else {
            panic!("{} pads", design.pads.len())
        };
        assert!(!pad.is_near(&design));
        assert_eq!(decimal(pad.toe_radius().to_inches(), 4), "1.5000");
        assert_eq!(decimal(pad.opening.to_inches(), 4), "1.7500");
        let (hole, metal) = pad.nearest_hole(&design).unwrap();
        assert_eq!(decimal(metal.to_inches(), 5), "0.15625");
        assert_eq!(
            decimal(Length::mm(design.holes[hole].at.y).to_inches(), 4),
            "-11.6719"
        );
    }

    /// Hobthrush: a ring 180 across with its weld of 10 has its toe at 100 from (0, 285). Stays at (±150, 270), holes of 33: 150.748 −
    /// 100 − 16.5 = 34.248. Tubes of the row at 3 × 49 = 147, an odd row, half of 56.5 aside: √(28.25² + 138²) = 140.862, less 100 and
    /// half of 39 is 21.362, the least. Its six studs stand on the face looked at, as written.
    #[test]
    fn by_hand_metal_beside_the_ring_of_hobthrush() {
        let design = design("specs/hobthrush-smokebox.yaml");
        let [pad] = &design.pads[..] else {
            panic!("{} pads", design.pads.len())
        };
        assert!(pad.is_near(&design));
        assert_eq!((pad.opening.to_mm(), pad.holes.len()), (110.0, 6));
        let (_, metal) = pad.nearest_hole(&design).unwrap();
        assert_eq!(decimal(metal.to_mm(), 3), "21.362");
    }

    /// On the far side a pad's holes are seen the other hand.
    #[test]
    fn holds_the_far_side_is_the_other_hand() {
        let mut spec = read_spec_file(Path::new("specs/hobthrush-smokebox.yaml")).unwrap();
        let near = set_out(&spec).unwrap().pads[0].holes.clone();
        let pad = spec.written.holes[0].pad.as_mut().expect("a pad");
        pad.side = ViewFrom::Firebox;
        let far = set_out(&spec).unwrap().pads[0].holes.clone();
        for ((a, _), (b, _)) in near.iter().zip(&far) {
            assert_eq!((a.x, a.y), (-b.x, b.y));
        }
    }
}
