//! What tilt would let a tube pass the door whose edge it fouls, and what stands against that tilt. Indicated, never judged.
//!
//! ```text
//! tilt wanted    tan θ = w/a               w  from the tube's hole to where its axis must cross the door, square to the plate
//!                                          a  from the middle of the plate's thickness to the door
//! hole gives     H cos θ = d + t sin θ     H  finished hole    d  body of the tube    t  thickness of the plate
//! other end      (l − a/cos θ) sin θ       l  length of the tube: how far its other end stands aside of the hole's axis
//! ```
//!
//! The tube is drawn straight until its other end is out of its own hole, then along one tilted line through the middle of its hole
//! here, leaning towards the door's centre, its end just clear of the edge. Its front end is out of the hole, so the body alone
//! is in it. A tilted end takes 1/cos θ of its radius across the door. The tubes beside it are not reckoned, nor a barrel that tapers.

use super::{Point, RoadForm, TubeLength};
use crate::units::Length;
use crate::units::angle::{acos, atan, atan2, cos, hypot, sin};
use crate::units::tolerance::SAME_LENGTH_MM;

/// A tube drawn at a tilt.
#[derive(Clone, Copy, Debug)]
pub struct Tilt {
    /// From square to the plate, degrees.
    pub wanted_deg: f64,
    /// The most that the clearance of the tube in its hole gives, degrees.
    pub hole_gives_deg: f64,
    /// How far its other end then stands aside of the axis of its hole; none where the length of the tube is not known.
    pub other_end_aside: Option<Length>,
    /// What stands against it.
    pub against: Option<Against>,
}

/// What stands against a tilt: the first that is found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Against {
    /// The hole does not give so much.
    Hole,
    /// An obstruction of this index, in the road of the tilted tube.
    Obstruction(usize),
    /// The other end is still in its own hole when the front end comes to the door.
    OtherHole,
    /// The other end would stand so far beyond the bore of the barrel.
    Barrel(Length),
    /// Whether the other end clears is not known: the length of the tube, or the barrel, is not written.
    NotKnown,
}

/// A tube, its hole and the door, mm.
pub(super) struct ToTilt<'a> {
    /// Centre of its hole.
    pub hole_at: Point,
    /// Where its axis crosses the door when it is drawn straight.
    pub straight_at: Point,
    /// Radius of its larger end.
    pub end_radius: f64,
    /// Radius of the door less the clearance wanted.
    pub free_radius: f64,
    /// Clearance wanted.
    pub clearance: f64,
    /// Centre of the door.
    pub door_centre: Point,
    /// From the face of this plate to the door.
    pub distance: f64,
    /// Thickness of this plate.
    pub thickness: f64,
    /// Diameter of the finished hole here.
    pub hole: f64,
    /// Diameter of the tube's body.
    pub body: f64,
    /// Length of the tube, where every part of it is written.
    pub length: TubeLength,
    /// How far it is drawn before its other end is out of its hole, where that is written.
    pub in_other_hole: Option<f64>,
    /// Radius of its other end.
    pub other_end_radius: f64,
    /// Radius of the bore.
    pub bore_radius: Option<f64>,
    /// What stands in the road.
    pub road: &'a [RoadForm],
}

/// The tilt at which a tube passes the door's edge; none where its end is larger than the door.
pub(super) fn tilt(tube: &ToTilt<'_>) -> Option<Tilt> {
    let arm = tube.distance + tube.thickness / 2.0;
    let inwards = (tube.door_centre - tube.straight_at).unit();
    let away = tube.straight_at.distance(tube.door_centre);
    let mut angle = 0.0;
    let mut crosses_at = tube.straight_at;
    // The end takes more of the door the more it tilts, by a share that falls off as the square of the angle: this settles at once.
    for _ in 0..30 {
        let across = tube.end_radius / cos(angle);
        let over = away + across - tube.free_radius;
        if across > tube.free_radius {
            return None;
        }
        crosses_at = tube.straight_at + inwards * over;
        angle = atan(crosses_at.distance(tube.hole_at) / arm);
    }
    let hole_gives = hole_gives(tube.hole, tube.body, tube.thickness);
    let aside = match tube.length {
        TubeLength::Known(length) => {
            Some((length.to_mm() - arm / cos(angle)).max(0.0) * sin(angle))
        }
        TubeLength::Wants(_) => None,
    };
    Some(Tilt {
        wanted_deg: angle.to_degrees(),
        hole_gives_deg: hole_gives.to_degrees(),
        other_end_aside: aside.map(Length::mm),
        against: against(tube, angle, hole_gives, crosses_at, aside),
    })
}

/// The steepest that a round bar lies in a round hole through a plate.
fn hole_gives(hole: f64, body: f64, thickness: f64) -> f64 {
    if body >= hole {
        return 0.0;
    }
    acos(body / hypot(hole, thickness)) - atan2(thickness, hole)
}

fn against(
    tube: &ToTilt<'_>,
    angle: f64,
    hole_gives: f64,
    crosses_at: Point,
    aside: Option<f64>,
) -> Option<Against> {
    if angle > hole_gives {
        return Some(Against::Hole);
    }
    let reach = tube.end_radius / cos(angle) + tube.clearance;
    let in_the_road = |form: &RoadForm| reach - form.distance(crosses_at) > SAME_LENGTH_MM;
    if let Some(index) = tube.road.iter().position(in_the_road) {
        return Some(Against::Obstruction(index));
    }
    if tube
        .in_other_hole
        .is_some_and(|drawn| drawn > tube.distance)
    {
        return Some(Against::OtherHole);
    }
    let (Some(aside), Some(bore)) = (aside, tube.bore_radius) else {
        return Some(Against::NotKnown);
    };
    let outwards = (tube.hole_at - crosses_at).unit();
    let other_end = tube.hole_at + outwards * aside;
    let beyond = other_end.radius() + tube.other_end_radius - bore;
    (beyond > SAME_LENGTH_MM).then(|| Against::Barrel(Length::mm(beyond)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A hole of 100 in a plate of 75 has a diagonal of 125. A bar of 120 would lie at acos 0.96 − atan 0.75 = 16.2602 − 36.8699,
    /// less than nothing: it is larger than the hole. One of 100 lies square: acos 0.8 = 36.8699. One of 88 at
    /// acos 0.704 = 45.2525, less 36.8699: 8.3826. Put back: 100 cos 8.3826 = 98.9317 = 88 + 75 sin 8.3826 = 88 + 10.9340, to what
    /// four places of the sines leave.
    #[test]
    fn by_hand_what_a_hole_gives() {
        let gives = |body: f64| hole_gives(100.0, body, 75.0).to_degrees();
        assert_eq!(gives(120.0), 0.0);
        assert!(gives(100.0).abs() < 1e-9);
        assert!((gives(88.0) - 8.3826).abs() < 2e-3, "{}", gives(88.0));
    }

    /// A tube of 20 on the level line 100 to the right of a door of 200 that stands 290 from a plate of 20: its end of 10 reaches 10
    /// over the edge. The arm is 300: tan θ = 10/300, θ = 1.9092°, and the end's tilt takes 10 (1/cos θ − 1) = 0.0056 more: 1.9102°.
    /// The tube is 1,300 long: (1300 − 300.17) sin 1.9102° = 33.33 aside, to x = 133.33; with its radius 143.33, beyond a bore of
    /// 140 by 3.33, and clear of one of 150.
    #[test]
    fn by_hand_a_tube_at_a_tilt() {
        let tube = |bore: f64, road: &'static [RoadForm]| ToTilt {
            hole_at: Point::new(100.0, 0.0),
            straight_at: Point::new(100.0, 0.0),
            end_radius: 10.0,
            free_radius: 100.0,
            clearance: 0.0,
            door_centre: Point::CENTRE,
            distance: 290.0,
            thickness: 20.0,
            hole: 22.0,
            body: 20.0,
            length: TubeLength::Known(Length::mm(1300.0)),
            in_other_hole: Some(25.0),
            other_end_radius: 10.0,
            bore_radius: Some(bore),
            road,
        };
        let over = tilt(&tube(140.0, &[])).expect("it passes");
        assert!(
            (over.wanted_deg - 1.9102).abs() < 1e-3,
            "{}",
            over.wanted_deg
        );
        let aside = over.other_end_aside.expect("its length is known").to_mm();
        assert!((aside - 33.33).abs() < 0.02, "{aside}");
        match over.against {
            Some(Against::Barrel(beyond)) => assert!((beyond.to_mm() - 3.33).abs() < 0.02),
            other => panic!("{other:?}"),
        }
        assert_eq!(tilt(&tube(150.0, &[])).expect("it passes").against, None);
        const PIPE: &[RoadForm] = &[RoadForm::Circle(Point::CENTRE, 81.0)];
        let met = tilt(&tube(150.0, PIPE)).expect("it passes");
        assert_eq!(met.against, Some(Against::Obstruction(0)));
    }

    /// Drawn along the tilt that is told, the end lies just within the door: the far point of its ellipse touches the edge.
    #[test]
    fn holds_the_tilted_end_just_clears() {
        for (x, y) in [(95.0, 20.0), (60.0, 90.0), (-130.0, 5.0)] {
            let at = Point::new(x, y);
            let tube = ToTilt {
                hole_at: at,
                straight_at: at,
                end_radius: 12.0,
                free_radius: 97.0,
                clearance: 3.0,
                door_centre: Point::new(0.0, -10.0),
                distance: 400.0,
                thickness: 16.0,
                hole: 50.0,
                body: 20.0,
                length: TubeLength::Wants(vec!["between_plates"]),
                in_other_hole: None,
                other_end_radius: 10.0,
                bore_radius: None,
                road: &[],
            };
            let found = tilt(&tube).expect("it passes");
            let angle = found.wanted_deg.to_radians();
            let shift = (sin(angle) / cos(angle)) * 408.0;
            let from_centre = at.distance(tube.door_centre) - shift;
            assert!((from_centre + 12.0 / cos(angle) - 97.0).abs() < 1e-9);
            assert_eq!(found.against, Some(Against::NotKnown));
        }
    }
}
