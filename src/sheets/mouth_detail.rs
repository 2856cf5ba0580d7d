//! The section through a hole whose mouth is turned out of the plate.
//!
//! The bend is the former's and no figure of it is given: it is drawn at half the thickness inside, and no size is put to it.

use super::set::Set;
use crate::spec::{MouthSpec, ViewFrom};
use crate::units::angle::{PI, cos, sin};

/// Straight pieces that a quarter of the bend is drawn in.
const STEPS: u32 = 12;

/// Half of the section, above the middle of the hole: depth runs from the boiler side, nothing, to the smokebox side.
pub struct MouthSection {
    thickness: f64,
    hole: f64,
    bend: f64,
    depth: f64,
    towards: ViewFrom,
}

impl MouthSection {
    /// The section of a mouth in a hole of this radius; none where its depth is not given. All in mm of plate.
    pub fn of(mouth: &MouthSpec, thickness: f64, hole: f64) -> Option<MouthSection> {
        let depth = mouth.depth.as_ref()?.value().to_mm();
        Some(MouthSection {
            thickness,
            hole,
            bend: (thickness / 2.0).min(depth / 2.0),
            depth,
            towards: mouth.towards,
        })
    }

    /// Height at which the flat plate begins again.
    pub fn flat_from(&self) -> f64 {
        self.hole + self.thickness + self.bend
    }

    /// Depths of the rim, and of the face that the mouth is turned towards.
    pub fn rim_and_face(&self) -> (f64, f64) {
        (
            self.across(self.thickness + self.depth),
            self.across(self.thickness),
        )
    }

    /// Height of the mouth's outside.
    pub fn outside(&self) -> f64 {
        self.hole + self.thickness
    }

    /// Depth and height of every corner of the metal, from the far face's end round the mouth to the near face's, up to a height.
    pub fn corners(&self, end: f64) -> Vec<(f64, f64)> {
        let (t, middle) = (
            self.thickness,
            (self.thickness + self.bend, self.flat_from()),
        );
        let quarter = |radius: f64, step: u32| {
            let angle = PI + f64::from(step) / f64::from(STEPS) * PI / 2.0;
            (
                middle.0 + radius * cos(angle),
                middle.1 + radius * sin(angle),
            )
        };
        let mut corners = vec![(0.0, end)];
        corners.extend((0..=STEPS).map(|step| quarter(self.bend + t, step)));
        corners.extend([
            (t + self.depth, self.hole),
            (t + self.depth, self.outside()),
        ]);
        corners.extend((0..=STEPS).rev().map(|step| quarter(self.bend, step)));
        corners.push((t, end));
        for corner in &mut corners {
            corner.0 = self.across(corner.0);
        }
        corners
    }

    /// A depth counted from the face that the mouth is turned away from, counted from the boiler side.
    fn across(&self, depth: f64) -> f64 {
        match self.towards {
            ViewFrom::Smokebox => depth,
            ViewFrom::Firebox => self.thickness - depth,
        }
    }
}

/// What a group's mouth says in a table: "mouth flanged towards smokebox, depth 2"; nothing where it has none.
pub fn mouth_words(set: &Set<'_>, mouth: Option<&MouthSpec>) -> Option<String> {
    let mouth = mouth?;
    let depth = match &mouth.depth {
        Some(depth) => format!("depth {}", set.figures.size_short(depth)),
        None => "depth not given".into(),
    };
    let towards = mouth.towards.name();
    Some(format!(
        "mouth flanged towards {towards}, {depth}; not cut to size"
    ))
}

#[cfg(test)]
mod tests {
    use super::super::audit::audit;
    use super::super::details::details;
    use super::super::hole_schedule::hole_schedule;
    use super::super::sample_jobs::with_changed_set;
    use super::super::{Mark, finish};
    use super::*;
    use crate::spec::Spec;
    use crate::units::Size;

    /// Plate 10, hole 100, depth 30: bend 5 inside and 15 outside about (15, 65); rim at 40, outside at 60, flat from 65. Turned
    /// the other way the rim stands at 10 − 40 = −30.
    #[test]
    fn by_hand_corners_of_a_mouth() {
        let mouth = |towards| MouthSpec {
            towards,
            depth: Some(Size::read("30 mm").expect("a size")),
        };
        let section = MouthSection::of(&mouth(ViewFrom::Smokebox), 10.0, 50.0).expect("a mouth");
        assert_eq!(section.rim_and_face(), (40.0, 10.0));
        assert_eq!((section.outside(), section.flat_from()), (60.0, 65.0));
        let corners = section.corners(80.0);
        let near = |place: (f64, f64), (u, y): (f64, f64)| {
            (place.0 - u).abs() < 1e-9 && (place.1 - y).abs() < 1e-9
        };
        for place in [
            (0.0, 80.0),
            (0.0, 65.0),
            (15.0, 50.0),
            (40.0, 50.0),
            (40.0, 60.0),
            (15.0, 60.0),
            (10.0, 65.0),
            (10.0, 80.0),
        ] {
            assert!(
                corners.iter().any(|c| near(place, *c)),
                "{place:?}: {corners:?}"
            );
        }
        let away = MouthSection::of(&mouth(ViewFrom::Firebox), 10.0, 50.0).expect("a mouth");
        assert_eq!(away.rim_and_face(), (-30.0, 0.0));
    }

    /// The schedule and the detail say the mouth, towards either side, and neither sheet has a defect.
    #[test]
    fn holds_schedule_and_detail_say_the_mouth() {
        for towards in [ViewFrom::Smokebox, ViewFrom::Firebox] {
            for depth in [Some("42 mm"), None] {
                let mouth = MouthSpec {
                    towards,
                    depth: depth.map(|d| Size::read(d).expect("a size")),
                };
                let change =
                    |spec: &mut Spec| spec.written.holes[0].flanged_mouth = Some(mouth.clone());
                with_changed_set("specs/hobthrush-smokebox.yaml", change, |set| {
                    let row = hole_schedule(set).rows.swap_remove(1).join("|");
                    let depth = depth.map_or("depth not given".into(), |_| "depth 42".to_string());
                    let words = format!(
                        "mouth flanged towards {}, {depth}; not cut to size",
                        towards.name()
                    );
                    assert!(row.contains(&words), "{row}");
                    let sheets = finish(set, details(set, 4));
                    let words: Vec<&str> = sheets
                        .iter()
                        .flat_map(|sheet| &sheet.marks)
                        .filter_map(|mark| match mark {
                            Mark::Text(text) => Some(text.words.as_str()),
                            _ => None,
                        })
                        .collect();
                    let said = words
                        .iter()
                        .any(|w| w.contains("MOUTH TURNED OUT OF THE PLATE"));
                    assert!(said);
                    assert_eq!(words.contains(&"42"), mouth.depth.is_some());
                    for sheet in &sheets {
                        let defects: Vec<String> =
                            audit(sheet).iter().map(ToString::to_string).collect();
                        assert!(defects.is_empty(), "{defects:?}");
                    }
                });
            }
        }
    }
}
