//! Both ends of every tube: where it sits in the plate at the other end, how far it drifts and how much it slopes.
//!
//! Drift is the displacement from the hole in this plate to the hole in the other, in the axes of this plate.

use super::amount::{Amounts, point};
use super::numbering::Numbered;
use super::{Hole, Omission, Point};
use crate::spec::{At, Fault, Nest, OtherEnd, OtherLines, OtherPlaces, Pattern, Written};
use crate::units::angle::atan;
use crate::units::{Length, Size};

/// The other end of a nest, tube by tube.
#[derive(Clone, Debug)]
pub struct OtherEndOfNest {
    /// Index into [`super::Design::groups`].
    pub group: usize,
    /// Finished hole at the other end as written.
    pub hole: Size,
    /// Outside of the tube where it sits there as written.
    pub tube_end: Size,
    /// Between the plates, where the spec says.
    pub between: Option<Length>,
    /// Every tube of the nest, in the order of the numbers.
    pub tubes: Vec<TubeEnds>,
}

/// One tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TubeEnds {
    /// Index into [`super::Design::holes`].
    pub hole: usize,
    /// Where it sits in this plate.
    pub here: Point,
    /// Where it sits in the other, in the axes of this plate.
    pub there: Point,
}

impl TubeEnds {
    /// From the hole here to the hole there, as displaced.
    pub fn drift(&self) -> Point {
        self.there - self.here
    }

    /// How far the two are apart across the boiler.
    pub fn drift_length(&self) -> Length {
        Length::mm(self.drift().radius())
    }

    /// Angle between the tube and the axis of the boiler over this length, degrees.
    pub fn slope_deg(&self, between: Length) -> f64 {
        atan(self.drift_length() / between).to_degrees()
    }
}

impl OtherEndOfNest {
    /// The tube that drifts furthest; of several, the first by number. None where the nest has no tube.
    pub fn furthest(&self) -> Option<&TubeEnds> {
        self.tubes.iter().reduce(|most, tube| {
            match most.drift_length().shortfall(tube.drift_length()) {
                Some(_) => tube,
                None => most,
            }
        })
    }
}

/// The other end of every nest that tells of one; faults where tubes and holes do not agree.
pub(super) fn other_ends(
    written: &Written,
    numbered: &Numbered,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> Vec<OtherEndOfNest> {
    let mut ends = Vec::new();
    for (group, nest) in written.tubes.iter().enumerate() {
        let Some(other) = &nest.other_end else {
            continue;
        };
        let places = Places {
            nest,
            group,
            numbered,
            amounts,
            path: format!("tubes[{group}].other_end"),
        };
        refuse_tube_too_large(nest, other, &places.path, faults);
        let Some(there) = places.of(&other.places, faults) else {
            continue;
        };
        let tubes = places
            .holes()
            .zip(there)
            .map(|((hole, at), there)| TubeEnds {
                hole,
                here: at.at,
                there,
            })
            .collect();
        ends.push(OtherEndOfNest {
            group,
            hole: other.hole.clone(),
            tube_end: end_of(nest, other).clone(),
            between: nest.between_plates.as_ref().map(Size::value),
            tubes,
        });
    }
    ends
}

fn end_of<'a>(nest: &'a Nest, other: &'a OtherEnd) -> &'a Size {
    other.tube_end.as_ref().unwrap_or(&nest.tube)
}

fn refuse_tube_too_large(nest: &Nest, other: &OtherEnd, path: &str, faults: &mut Vec<Fault>) {
    let end = end_of(nest, other);
    if other.hole.value().shortfall(end.value()).is_some() {
        let key = match other.tube_end {
            Some(_) => format!("{path}.tube_end"),
            None => path.replace(".other_end", ".tube"),
        };
        faults.push(
            Fault::new(
                format!("{path}.hole"),
                format!(
                    "a tube of {end} does not go into a hole of {} at the other end",
                    other.hole
                ),
                "write the finished hole there, or `tube_end` for a tube that is swaged down",
            )
            .and(key, "the tube there"),
        );
    }
}

/// What the places of the other end are told from.
struct Places<'a> {
    nest: &'a Nest,
    group: usize,
    numbered: &'a Numbered,
    amounts: Amounts,
    path: String,
}

impl<'a> Places<'a> {
    fn holes(&self) -> impl Iterator<Item = (usize, &'a Hole)> {
        let group = self.group;
        let holes = self.numbered.holes.iter().enumerate();
        holes.filter(move |(_, hole)| hole.group == group)
    }

    /// The place of every tube there, in the order of the numbers.
    fn of(&self, places: &OtherPlaces, faults: &mut Vec<Fault>) -> Option<Vec<Point>> {
        match places {
            OtherPlaces::Pattern(lines) => self.by_pattern(lines, faults),
            OtherPlaces::Lowered(by) => {
                let down = Point::new(0.0, by.value().to_mm());
                Some(self.holes().map(|(_, hole)| hole.at - down).collect())
            }
            OtherPlaces::Points(points) => self.by_points(points, faults),
        }
    }

    fn by_pattern(&self, there: &OtherLines, faults: &mut Vec<Fault>) -> Option<Vec<Point>> {
        let ratio = |there: &Option<Size>, here: &Size| {
            there
                .as_ref()
                .map_or(1.0, |there| there.value() / here.value())
        };
        let (through, across, up) = match &self.nest.pattern {
            Pattern::Columns(here) => (
                &here.through,
                ratio(&there.spacing, &here.spacing),
                ratio(&there.pitch, &here.pitch),
            ),
            Pattern::Rows(here) => (
                &here.through,
                ratio(&there.pitch, &here.pitch),
                ratio(&there.spacing, &here.spacing),
            ),
            Pattern::Square(here) => (
                &here.through,
                ratio(&there.spacing, &here.pitch),
                ratio(&there.pitch, &here.pitch),
            ),
            Pattern::Points(_) => {
                faults.push(Fault::new(
                    format!("{}.places.pattern", self.path),
                    "this end lists its places one by one, so there is no pattern to set out again",
                    "list the places of the other end too, or write `lowered`",
                ));
                return None;
            }
        };
        let (from, to) = (point(through), point(&there.through));
        let place = |at: Point| {
            let arm = at - from;
            Point::new(to.x + arm.x * across, to.y + arm.y * up)
        };
        Some(self.holes().map(|(_, hole)| place(hole.at)).collect())
    }

    /// Each place belongs to the tube nearest to it. Two that claim one tube, and a tube that none claims, are refused.
    fn by_points(&self, points: &[At], faults: &mut Vec<Fault>) -> Option<Vec<Point>> {
        let before = faults.len();
        let holes: Vec<(usize, &Hole)> = self.holes().collect();
        let mut claimed: Vec<Option<(usize, Point, f64)>> = vec![None; holes.len()];
        let mut left_over = Vec::new();
        for (index, at) in points.iter().enumerate() {
            let at = point(at);
            let nearest = holes
                .iter()
                .enumerate()
                .map(|(k, (_, hole))| (k, hole.at.distance(at)))
                .min_by(|a, b| a.1.total_cmp(&b.1));
            let Some((k, away)) = nearest else { continue };
            match claimed[k] {
                Some((_, _, nearer)) if nearer <= away => left_over.push((index, at)),
                earlier => {
                    left_over.extend(earlier.map(|(index, at, _)| (index, at)));
                    claimed[k] = Some((index, at, away));
                }
            }
        }
        for &(index, at) in &left_over {
            faults.push(self.no_hole_here(index, at, points.len(), holes.len()));
        }
        for ((_, hole), _) in holes.iter().zip(&claimed).filter(|(_, c)| c.is_none()) {
            faults.push(Fault::new(
                format!("{}.places.points", self.path),
                format!(
                    "the other end has {} places and this end {} tubes: none of them is nearest to {} at {}",
                    points.len(),
                    holes.len(),
                    hole.id,
                    self.amounts.place(hole.at)
                ),
                "list the place of this tube at the other end, or omit the tube here",
            ));
        }
        (faults.len() == before)
            .then(|| claimed.into_iter().flatten().map(|(_, at, _)| at).collect())
    }

    fn no_hole_here(&self, index: usize, at: Point, there: usize, here: usize) -> Fault {
        let omitted = self.omission_at(at);
        let why = omitted.map_or(String::new(), |o| format!(" (left out: {})", o.reason));
        Fault::new(
            format!("{}.places.points[{index}]", self.path),
            format!(
                "the other end has {there} places and this end {here} tubes: the tube at {} has no hole in this plate{why}",
                self.amounts.place(at)
            ),
            "take this place out of the list, or give it a hole in this plate",
        )
    }

    /// The hole left out of the pattern that lies nearest to a place of the other end, if no tube lies nearer.
    fn omission_at(&self, at: Point) -> Option<&'a Omission> {
        let nearest_hole = self
            .holes()
            .map(|(_, hole)| hole.at.distance(at))
            .fold(f64::INFINITY, f64::min);
        self.numbered
            .omissions
            .iter()
            .filter(|o| o.group == self.group && o.at.distance(at) < nearest_hole)
            .min_by(|a, b| a.at.distance(at).total_cmp(&b.at.distance(at)))
    }
}

#[cfg(test)]
mod tests {
    use super::super::set_out;
    use super::*;
    use crate::spec::read_spec;
    use crate::units::print::decimal;

    const MARL_HEN: &str = include_str!("../../specs/marl-hen-smokebox.yaml");
    const PATTERN: &str =
        "pattern: {through: [0 in, 51/64 in], spacing: 2 3/16 in, pitch: 2 1/2 in}";

    fn with_places(places: &str) -> Result<super::super::Design, Vec<Fault>> {
        assert!(MARL_HEN.contains(PATTERN));
        let text = MARL_HEN.replacen(PATTERN, places, 1);
        set_out(&read_spec("marl-hen.yaml", text.as_bytes()).unwrap_or_else(|f| panic!("{f}")))
    }

    /// The upper right tube stands at (6 × 2 1/4, 1 19/64 + 2 × 2 19/32) = (13.5, 6.484). There: 13.5 × 2.1875/2.25 = 13.125 and
    /// (6.484375 − 1.296875) × 2.5/2.59375 + 0.796875 = 5.796875. Apart √(0.375² + 0.6875²) = 0.7831; over 108 in that is
    /// atan 0.007251 = 0.4154°.
    #[test]
    fn by_hand_furthest_tube_of_marl_hen() {
        let design = with_places(PATTERN).unwrap();
        let nest = &design.other_ends[0];
        assert_eq!(nest.tubes.len(), 100);
        let furthest = nest.furthest().unwrap();
        let inches = |mm: f64| decimal(Length::mm(mm).to_inches(), 3);
        assert_eq!(inches(furthest.here.x.abs()), "13.500");
        assert_eq!(inches(furthest.here.y), "6.484");
        assert_eq!(inches(furthest.there.x.abs()), "13.125");
        assert_eq!(inches(furthest.there.y), "5.797");
        assert_eq!(inches(furthest.drift_length().to_mm()), "0.783");
        let between = nest.between.unwrap();
        assert_eq!(decimal(furthest.slope_deg(between), 3), "0.415");
    }

    /// A hundred places in any order find their own tubes again: the whole nest lowered by half an inch.
    #[test]
    fn holds_places_in_any_order_find_their_tubes() {
        let lowered = with_places("lowered: 1/2 in").unwrap();
        let mut places: Vec<String> = lowered.other_ends[0]
            .tubes
            .iter()
            .map(|t| format!("[{:.6} mm, {:.6} mm]", t.there.x, t.there.y))
            .collect();
        places.reverse();
        let listed = with_places(&format!("points: [{}]", places.join(", "))).unwrap();
        for (a, b) in lowered.other_ends[0]
            .tubes
            .iter()
            .zip(&listed.other_ends[0].tubes)
        {
            assert_eq!(a.hole, b.hole);
            assert!(a.there.distance(b.there) < 1e-5);
        }
    }

    /// A list of 101 against 100 tubes: the one more stands where the washout plug is.
    #[test]
    fn refuses_a_tube_that_has_no_hole_here() {
        let design = with_places("lowered: 0 in").unwrap();
        let mut places: Vec<String> = design.other_ends[0]
            .tubes
            .iter()
            .map(|t| format!("[{:.6} mm, {:.6} mm]", t.there.x, t.there.y))
            .collect();
        places.push("[0 in, -14.27 in]".into());
        let faults = with_places(&format!("points: [{}]", places.join(", "))).unwrap_err();
        assert_eq!(faults.len(), 1);
        assert_eq!(
            faults[0].fact,
            "the other end has 101 places and this end 100 tubes: the tube at (0, -14.27) in has no hole in this plate \
             (left out: a washout plug stands here)"
        );
        places.truncate(99);
        let faults = with_places(&format!("points: [{}]", places.join(", "))).unwrap_err();
        assert_eq!(faults.len(), 1);
        assert!(faults[0].fact.starts_with(
            "the other end has 99 places and this end 100 tubes: none of them is nearest to T100 at"
        ));
    }
}
