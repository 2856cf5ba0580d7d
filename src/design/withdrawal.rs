//! Which tubes do not come out through the smokebox door, by how much, and what would let them.
//!
//! A tube is drawn straight along its own axis: a circle of its larger end and the clearance all round must pass within the
//! door's circle and beside every obstruction. The tilt that would let a tube pass the door is indicated beside that.

use super::Point;
use super::amount::point;
use super::numbering::Numbered;
use super::tilt::{Tilt, ToTilt, tilt};
use super::tube_ends::OtherEndOfNest;
use super::tube_length::tube_length;
use crate::spec::{Fault, Obstruction, Withdrawal, Written};
use crate::units::angle::sqrt;
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

/// Every tube against the door.
#[derive(Clone, Debug)]
pub struct DrawnOut {
    /// Centre of the door's opening.
    pub door_centre: Point,
    /// Its diameter as written.
    pub door: Size,
    /// Clear strip round the tube's end as written.
    pub clearance: Size,
    /// What stands in the road, in the order of the spec.
    pub obstructions: Vec<InTheRoad>,
    /// Every tube, in the order of the numbers.
    pub tubes: Vec<DrawnTube>,
    /// Tubes that foul the door or something else, worst first.
    pub fouls: Vec<Fouling>,
    /// How far the door must go down, at its diameter, for every tube to pass its edge; below nothing, up. None where no
    /// height of it would do. Obstructions stand aside.
    pub lower_by: Option<Length>,
    /// The diameter at which every tube passes the door's edge, where it stands.
    pub open_to: Length,
    /// Whether the distance of the door is written, without which no tilt is indicated.
    pub distance_is_known: bool,
}

impl DrawnOut {
    /// The steepest tilt that any tube wants to pass the door's edge, degrees; none unless each that fouls it has one against which
    /// nothing stands that is reckoned.
    pub fn tilt_for_all(&self) -> Option<f64> {
        let of_the_door = self.fouls.iter().filter(|foul| foul.obstruction.is_none());
        let tilts: Option<Vec<f64>> = of_the_door
            .map(|foul| {
                let tilt = foul.tilt.filter(|tilt| tilt.against.is_none())?;
                Some(tilt.wanted_deg)
            })
            .collect();
        tilts?.into_iter().reduce(f64::max)
    }
}

/// A tube where it passes the door.
#[derive(Clone, Copy, Debug)]
pub struct DrawnTube {
    /// Index into [`super::Design::holes`].
    pub hole: usize,
    /// Where its axis passes.
    pub at: Point,
    /// Radius of its larger end, clearance not counted, mm.
    pub radius: f64,
}

/// A tube that does not pass.
#[derive(Clone, Debug)]
pub struct Fouling {
    /// Index into [`super::Design::holes`].
    pub hole: usize,
    /// Which obstruction, an index into [`DrawnOut::obstructions`]; none for the door's edge.
    pub obstruction: Option<usize>,
    /// How far the tube's end and its clearance reach over.
    pub by: Length,
    /// The tilt at which it would pass the edge of the door; none for an obstruction, where the distance of the door is not written,
    /// and where no tilt would do.
    pub tilt: Option<Tilt>,
}

/// Something in the road, in place.
#[derive(Clone, Debug)]
pub struct InTheRoad {
    /// What it is.
    pub name: String,
    /// Where it is.
    pub form: RoadForm,
}

/// A circle, or an upright box.
#[derive(Clone, Copy, Debug)]
pub enum RoadForm {
    /// A circle by its centre and radius, mm.
    Circle(Point, f64),
    /// A box by its lower left and upper right corners.
    Box(Point, Point),
}

impl RoadForm {
    /// From a place to its edge, mm; nothing for a place within.
    pub(super) fn distance(&self, from: Point) -> f64 {
        match *self {
            RoadForm::Circle(centre, radius) => (from.distance(centre) - radius).max(0.0),
            RoadForm::Box(low, high) => {
                let dx = (low.x - from.x).max(from.x - high.x).max(0.0);
                let dy = (low.y - from.y).max(from.y - high.y).max(0.0);
                Point::new(dx, dy).radius()
            }
        }
    }
}

/// Draws every tube out; nothing where the spec tells of no door.
pub(super) fn draw_out(
    written: &Written,
    numbered: &Numbered,
    other_ends: &[OtherEndOfNest],
    faults: &mut Vec<Fault>,
) -> Option<DrawnOut> {
    let wanted = written.withdrawal.as_ref()?;
    let obstructions = in_the_road(wanted, faults);
    let tubes = drawn_tubes(written, numbered, other_ends, wanted);
    let door_centre = point(&wanted.door.centre);
    let door_radius = wanted.door.diameter.value().to_mm() / 2.0;
    let clearance = wanted.clearance.size.value().to_mm();
    let over_edge =
        |tube: &DrawnTube| tube.at.distance(door_centre) + tube.radius + clearance - door_radius;
    let mut fouls: Vec<Fouling> = Vec::new();
    for tube in &tubes {
        let mut foul = |obstruction, by: f64| {
            if by > SAME_LENGTH_MM {
                fouls.push(Fouling {
                    hole: tube.hole,
                    obstruction,
                    by: Length::mm(by),
                    tilt: match obstruction {
                        None => tilted(written, numbered, other_ends, wanted, &obstructions, tube),
                        Some(_) => None,
                    },
                });
            }
        };
        foul(None, over_edge(tube));
        for (index, road) in obstructions.iter().enumerate() {
            let reach = tube.radius + clearance;
            foul(Some(index), reach - road.form.distance(tube.at));
        }
    }
    fouls.sort_by(|a, b| b.by.total_cmp(&a.by).then(a.hole.cmp(&b.hole)));
    let most_over = tubes.iter().map(over_edge).fold(-door_radius, f64::max);
    Some(DrawnOut {
        door_centre,
        door: wanted.door.diameter.clone(),
        clearance: wanted.clearance.size.clone(),
        obstructions,
        lower_by: lower_by(&tubes, door_centre, door_radius - clearance),
        open_to: Length::mm(2.0 * (door_radius + most_over)),
        distance_is_known: wanted.door.distance.is_some(),
        tubes,
        fouls,
    })
}

/// The tilt that would let a tube pass the edge of the door.
fn tilted(
    written: &Written,
    numbered: &Numbered,
    other_ends: &[OtherEndOfNest],
    wanted: &Withdrawal,
    road: &[InTheRoad],
    tube: &DrawnTube,
) -> Option<Tilt> {
    let hole = &numbered.holes[tube.hole];
    let nest = written.tubes.get(hole.group)?;
    let other_end = other_ends.iter().find(|end| end.group == hole.group);
    let other_end = other_end.map_or(&nest.tube, |end| &end.tube_end);
    let mm = |size: &Size| size.value().to_mm();
    let clearance = mm(&wanted.clearance.size);
    let in_other_hole = match (&nest.other_plate, &nest.other_projection) {
        (Some(plate), Some(projection)) => Some(mm(plate) + mm(projection)),
        _ => None,
    };
    let road: Vec<RoadForm> = road.iter().map(|one| one.form).collect();
    tilt(&ToTilt {
        hole_at: hole.at,
        straight_at: tube.at,
        end_radius: tube.radius,
        free_radius: mm(&wanted.door.diameter) / 2.0 - clearance,
        clearance,
        door_centre: point(&wanted.door.centre),
        distance: mm(wanted.door.distance.as_ref()?),
        thickness: mm(&written.plate.thickness),
        hole: mm(&hole.finish),
        body: mm(&nest.tube),
        length: tube_length(nest, &written.plate),
        in_other_hole,
        other_end_radius: mm(other_end) / 2.0,
        bore_radius: written.barrel.as_ref().map(|barrel| mm(&barrel.bore) / 2.0),
        road: &road,
    })
}

fn in_the_road(wanted: &Withdrawal, faults: &mut Vec<Fault>) -> Vec<InTheRoad> {
    let mut all = Vec::new();
    for (index, one) in wanted.obstructions.iter().enumerate() {
        match form_of(one) {
            Some(form) => all.push(InTheRoad {
                name: one.name.clone(),
                form,
            }),
            None => faults.push(Fault::new(
                format!("withdrawal.obstructions[{index}]"),
                "an obstruction is a circle or a box, and this is neither or both",
                "write centre and diameter, or from and to",
            )),
        }
    }
    all
}

fn form_of(one: &Obstruction) -> Option<RoadForm> {
    match (&one.centre, &one.diameter, &one.from, &one.to) {
        (Some(centre), Some(diameter), None, None) => Some(RoadForm::Circle(
            point(centre),
            diameter.value().to_mm() / 2.0,
        )),
        (None, None, Some(from), Some(to)) => {
            let (a, b) = (point(from), point(to));
            Some(RoadForm::Box(
                Point::new(a.x.min(b.x), a.y.min(b.y)),
                Point::new(a.x.max(b.x), a.y.max(b.y)),
            ))
        }
        _ => None,
    }
}

/// Where every tube passes the door: its axis carried on to the door's plane, where other end and distances are known.
fn drawn_tubes(
    written: &Written,
    numbered: &Numbered,
    other_ends: &[OtherEndOfNest],
    wanted: &Withdrawal,
) -> Vec<DrawnTube> {
    let distance = wanted.door.distance.as_ref().map(|d| d.value());
    let carried_on = |index: usize, at: Point, group: usize| {
        let share = other_ends.iter().find(|e| e.group == group).and_then(|e| {
            let tube = e.tubes.iter().find(|t| t.hole == index)?;
            Some(tube.drift() * -(distance? / e.between?))
        });
        at + share.unwrap_or_default()
    };
    let holes = numbered.holes.iter().enumerate();
    holes
        .filter_map(|(index, hole)| {
            let nest = written.tubes.get(hole.group)?;
            let end = nest.tube_end.as_ref().unwrap_or(&nest.tube);
            let largest = end.value().max(nest.tube.value());
            Some(DrawnTube {
                hole: index,
                at: carried_on(index, hole.at, hole.group),
                radius: largest.to_mm() / 2.0,
            })
        })
        .collect()
}

/// The least move down (up, where below nothing) of a circle that lets every tube pass; none where no move does.
fn lower_by(tubes: &[DrawnTube], centre: Point, free_radius: f64) -> Option<Length> {
    let (mut least, mut most) = (f64::NEG_INFINITY, f64::INFINITY);
    for tube in tubes {
        let reach = free_radius - tube.radius;
        let aside = tube.at.x - centre.x;
        let half = reach * reach - aside * aside;
        if reach < 0.0 || half < 0.0 {
            return None;
        }
        // The door's centre, lowered by d, lies within `half` above or below the tube.
        let level = centre.y - tube.at.y;
        least = least.max(level - sqrt(half));
        most = most.min(level + sqrt(half));
    }
    (least <= most).then(|| Length::mm(0.0_f64.clamp(least, most)))
}

#[cfg(test)]
mod tests {
    use super::super::{Design, set_out};
    use super::*;
    use crate::spec::read_spec;

    const MARL_HEN: &str = include_str!("../../specs/marl-hen-smokebox.yaml");

    /// Marl Hen with another door, tubes drawn square to the plate and nothing in the road.
    fn with_door(y: Length, diameter: Length) -> Design {
        let start = MARL_HEN.find("\nwithdrawal:").unwrap();
        let end = start + 1 + MARL_HEN[start + 1..].find("\n\n").unwrap();
        let door = format!(
            "\nwithdrawal:\n  door: {{centre: [0 in, {:.6} mm], diameter: {:.6} mm}}\n  clearance: {{size: 1/8 in, origin: trial}}\n",
            y.to_mm(),
            diameter.to_mm()
        );
        let text = format!("{}{door}{}", &MARL_HEN[..start], &MARL_HEN[end..]);
        set_out(&read_spec("marl-hen.yaml", text.as_bytes()).unwrap_or_else(|f| panic!("{f}")))
            .unwrap()
    }

    fn drawn(design: &Design) -> &DrawnOut {
        design.withdrawal.as_ref().unwrap()
    }

    /// A door of 31 in at y −2: free radius 15.5 − 0.90625 − 0.125 = 14.46875. The lowest tubes stand at (±4.5, −14.265625):
    /// √(4.5² + 12.265625²) = 13.0651, inside. The upper corners at (±13.5, 6.484375): √(13.5² + 8.484375²) = 15.9449, so
    /// 1.4762 over. Nothing lets a circle of 14.46875 pass both the corner tubes and the lowest at one height unless its centre
    /// lies within √(14.46875² − 13.5²) = 5.2053 of 6.484375 and √(14.46875² − 4.5²) = 13.7512 of −14.265625: 1.2791 to −0.5144,
    /// none. With 33 in: reach 15.46875, within √(15.46875² − 13.5²) = 7.5520 of 6.484375, so at or above −1.0676: up by 0.9324.
    #[test]
    fn by_hand_corner_tubes_foul_a_low_door() {
        let low = with_door(Length::inches(-2.0), Length::inches(31.0));
        let worst = &drawn(&low).fouls[0];
        assert_eq!(
            crate::units::print::decimal(worst.by.to_inches(), 3),
            "1.476"
        );
        assert_eq!(drawn(&low).lower_by, None);
        let wider = with_door(Length::inches(-2.0), Length::inches(33.0));
        let up = drawn(&wider).lower_by.unwrap();
        assert_eq!(crate::units::print::decimal(up.to_inches(), 3), "-0.932");
    }

    /// Done again with either remedy, nothing fouls the door.
    #[test]
    fn holds_remedies_clear_the_door() {
        let (y, diameter) = (Length::inches(-2.0), Length::inches(33.0));
        let before = with_door(y, diameter);
        let drawn_before = drawn(&before);
        assert!(!drawn_before.fouls.is_empty());
        let lowered = with_door(y - drawn_before.lower_by.unwrap(), diameter);
        assert!(drawn(&lowered).fouls.is_empty());
        let opened = with_door(y, drawn_before.open_to);
        assert!(drawn(&opened).fouls.is_empty());
        let not_quite = with_door(y, drawn_before.open_to - Length::mm(0.01));
        assert!(!drawn(&not_quite).fouls.is_empty());
    }

    /// Marl Hen as it is written: T6 stands at (−13.5, 6.484375), its drift (0.375, −0.6875) in 108 in. At the door, 26 in off, its
    /// axis crosses (−13.590278, 6.649884), which is 16.813785 from the door's centre at (0, −3.25): 16.813785 + 0.90625 + 0.125 −
    /// 16.5 = 1.345035 over. Moved so far inwards and 0.000909 more for the tilted end, it crosses (−12.502381, 5.857396), which is
    /// 1.178247 from its hole: on an arm of 26 + 5/16 = 26.3125 that is a tilt of atan 0.044779 = 2.5640°. The hole of 1.84375 in 0.625
    /// gives a body of 1.75 acos (1.75/1.946803) − atan (0.625/1.84375) = 25.985 − 18.726 = 7.259°. The tube is 109.9375 long:
    /// (109.9375 − 26.339) × 0.044735 = 3.740 aside, at (−16.667, 8.474), 18.698 from the middle; with half of 1 5/8 that is 0.510
    /// beyond the bore of 38.
    #[test]
    fn by_hand_corner_tubes_of_marl_hen_at_a_tilt() {
        let spec =
            read_spec("marl-hen.yaml", MARL_HEN.as_bytes()).unwrap_or_else(|f| panic!("{f}"));
        let design = set_out(&spec).unwrap();
        let drawn = drawn(&design);
        let places = |length: Length| crate::units::print::decimal(length.to_inches(), 3);
        assert_eq!(drawn.fouls.len(), 2);
        for foul in &drawn.fouls {
            assert_eq!(places(foul.by), "1.345");
            let tilt = foul.tilt.expect("it would pass at a tilt");
            let degrees = |deg: f64| crate::units::print::decimal(deg, 2);
            assert_eq!(degrees(tilt.wanted_deg), "2.56");
            assert_eq!(degrees(tilt.hole_gives_deg), "7.26");
            assert_eq!(tilt.other_end_aside.map(places).as_deref(), Some("3.740"));
            match tilt.against {
                Some(super::super::Against::Barrel(by)) => assert_eq!(places(by), "0.510"),
                other => panic!("{other:?}"),
            }
        }
    }

    /// With the door 30 in off and its ring 33 1/2 in at y −3: the corner tubes' axes cross it at 13.5 + 0.375 × 30/108 = 13.604167 and
    /// 6.484375 + 0.6875 × 30/108 = 6.675347, so √(13.604167² + 9.675347²) + 0.90625 + 0.125 − 16.75 = 16.693747 − 15.71875 = 0.974997
    /// over. Moved inwards by that they cross at (12.809596, 6.110247), 0.785053 from their hole at (13.5, 6.484375): on an arm of
    /// 30.3125, atan 0.0259 = 1.48°; (109.9375 − 30.32) × 0.0259 = 2.06 aside brings them to (15.312, 7.466), 17.035 + 0.8125 from the
    /// middle, within the bore's 19. So a tilt is a remedy.
    #[test]
    fn by_hand_a_tilt_for_all() {
        let written = "door: {centre: [0 in, -3 1/4 in], diameter: 33 in, distance: 26 in}";
        assert!(MARL_HEN.contains(written));
        let text = MARL_HEN.replace(
            written,
            "door: {centre: [0 in, -3 in], diameter: 33 1/2 in, distance: 30 in}",
        );
        let spec = read_spec("marl-hen.yaml", text.as_bytes()).unwrap_or_else(|f| panic!("{f}"));
        let design = set_out(&spec).unwrap();
        let drawn = drawn(&design);
        assert_eq!(
            crate::units::print::decimal(drawn.fouls[0].by.to_inches(), 3),
            "0.975"
        );
        let tilt = drawn.tilt_for_all().expect("nothing stands against it");
        assert_eq!(crate::units::print::decimal(tilt, 2), "1.48");
    }

    /// Without the distance of the door no tilt is told; the fouling is.
    #[test]
    fn holds_no_distance_no_tilt() {
        let design = with_door(Length::inches(-2.0), Length::inches(33.0));
        let drawn = drawn(&design);
        assert!(!drawn.distance_is_known && !drawn.fouls.is_empty());
        assert!(drawn.fouls.iter().all(|foul| foul.tilt.is_none()));
    }
}
