//! The flat above the tubes that stays have to hold, and the steam's load on it.
//!
//! ```text
//! area = R² acos(1 − h/R) − (R − h) √(2 R h − h²)       R  flange line's radius, less what the flange is taken to hold, in
//! load = area × p                                       h  from what the tubes are taken to hold to the top of that circle, in
//! ```
//!
//! Source:  geometry; the two allowances are the works' (`support.above_tubes`). N. Hawkins takes 2 in above the tubes and 3 in
//!          inside the shell of a stationary boiler, and his table of areas tests the formula.
//! Covers:  a round flange line about the barrel centre. The height above the tubes is measured from the centres of the highest
//!          tubes, not from their top edges: the larger area, which loads the stays more. Tubes and flues that `support` does not
//!          count hold nothing, and the flat among them is counted as flat. Holes within it are not taken off.
//! Leaves:  the flat below or beside the tubes; how the load is shared among unequal stays.

use super::measure::{Unit, figure, rounded};
use super::stay_core::{StayGroup, stay_groups};
use super::{Finding, Rule, source};
use crate::design::{Design, Hole, circle_segment_area};
use crate::spec::{Support, Written};
use crate::units::print::decimal;
use crate::units::{Length, SQUARE_MM_PER_SQUARE_INCH, Strength, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "area_above_tubes",
    asks: "flat above the tubes that stays hold",
    source: &source::GEOMETRY,
    run,
    page: include_str!("area_above_tubes.rs"),
};

/// Area of the segment of a circle, in²; nothing where its height is nothing, the whole circle where it is the diameter or more.
pub fn segment_in2(radius: Length, height: Length) -> f64 {
    circle_segment_area(radius, height) / SQUARE_MM_PER_SQUARE_INCH
}

/// Load of a pressure on an area, lb.
pub fn load_lb(area_in2: f64, pressure: Stress) -> f64 {
    area_in2 * pressure.to_psi()
}

/// The flat above the tubes, with its load and the stays that stand in it.
pub(super) struct AboveTheTubes<'a> {
    pub radius: Length,
    pub base: Length,
    pub highest: Length,
    pub area_in2: f64,
    pub pressure: &'a Strength,
    pub load_lb: f64,
    pub stays: Vec<(StayGroup<'a>, usize)>,
}

impl AboveTheTubes<'_> {
    /// The working of its area.
    pub fn area_lines(&self) -> Vec<String> {
        area_lines(self.radius, self.base, self.area_in2)
    }

    /// The working of its load.
    pub fn load_line(&self) -> String {
        let (area, psi, load) = load_figures(self.area_in2, self.pressure.value().to_psi());
        format!("load = {area} in² × {psi} psi = {load} lb")
    }
}

/// An area in in², a pressure in psi and the load of the one on the other in lb, the first two to as few places, from two up, as
/// multiply out to the pound of the load.
fn load_figures(area_in2: f64, psi: f64) -> (String, String, String) {
    const FEWEST: usize = 2;
    const MOST: usize = 8;
    let load = rounded(area_in2 * psi, 0);
    let read = |places: usize, value: f64| decimal(value, places).parse().unwrap_or(value);
    let multiply_out = |places: &usize| {
        let product: f64 = read(*places, area_in2) * read(*places, psi);
        rounded(product, 0) == load
    };
    let places = (FEWEST..MOST).find(multiply_out).unwrap_or(MOST);
    (rounded(area_in2, places), figure(read(places, psi)), load)
}

/// The working of the area of the segment of a circle about the barrel centre, above a level line.
pub(super) fn area_lines(radius: Length, base: Length, area_in2: f64) -> Vec<String> {
    let (r, b) = (radius.to_inches(), base.to_inches());
    vec![
        format!("h = {} − {} = {} in", figure(r), figure(b), figure(r - b)),
        format!(
            "area = {r}² × acos({b}/{r}) − {b} × √({r}² − {b}²) = {area} in² (acos in radians)",
            r = figure(r),
            b = figure(b),
            area = rounded(area_in2, 2)
        ),
    ]
}

/// The flat above the tubes, or what is wanting to reckon it.
pub(super) fn above_the_tubes<'a>(
    written: &'a Written,
    design: &'a Design,
) -> Result<AboveTheTubes<'a>, String> {
    let support = written.support.as_ref().ok_or("`support` is not given")?;
    if support.above_tubes.is_none() {
        return Err("`support.above_tubes` is not given".into());
    }
    let pressure = written
        .working_pressure
        .as_ref()
        .ok_or("`working_pressure` is not given")?;
    if !has_tubes(design) {
        return Err("the plate has no tubes".into());
    }
    if !has_counted_tubes(support, design) {
        return Err(
            "no tube or flue of the plate is counted as support (`support.tubes`, `support.flues`)"
                .into(),
        );
    }
    let above = design.above_tubes.as_ref().ok_or(
        "the flange line of `support.flange_line` is not a circle about the barrel centre",
    )?;
    let area_in2 = above.area_mm2 / SQUARE_MM_PER_SQUARE_INCH;
    let load_lb = load_lb(area_in2, pressure.value());
    Ok(AboveTheTubes {
        radius: above.radius,
        base: above.base,
        highest: above.highest,
        area_in2,
        pressure,
        load_lb,
        stays: stays_above(written, design, &above.stays),
    })
}

/// Each group of stays with how many of its holes are among those that stand above the tubes.
fn stays_above<'a>(
    written: &'a Written,
    design: &'a Design,
    above: &[usize],
) -> Vec<(StayGroup<'a>, usize)> {
    stay_groups(written, design)
        .into_iter()
        .map(|group| {
            let own =
                |hole: &&usize| design.groups[design.holes[**hole].group].path == group.group.path;
            (group, above.iter().filter(own).count())
        })
        .filter(|(_, count)| *count > 0)
        .collect()
}

fn has_tubes(design: &Design) -> bool {
    let is_tube = |hole: &Hole| design.groups[hole.group].purpose.takes_a_tube();
    design.holes.iter().any(is_tube)
}

/// Whether some tube or flue is counted as support, as a tube or as a stay tube.
fn has_counted_tubes(support: &Support, design: &Design) -> bool {
    let counts = |hole: &Hole| {
        let purpose = design.groups[hole.group].purpose;
        purpose.takes_a_tube() && support.counts(purpose)
    };
    design.holes.iter().any(counts) || (support.stays && !design.stay_tubes.is_empty())
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    if !has_tubes(design) {
        return Vec::new();
    }
    let finding = RULE.finding("above the tubes");
    let above = match above_the_tubes(written, design) {
        Ok(above) => above,
        Err(why) => {
            return vec![
                RULE.finding_by(&source::WORKS, "above the tubes")
                    .not_judged(why),
            ];
        }
    };
    let unit = Unit::of_job(written);
    let (r, b) = (above.radius.to_inches(), above.base.to_inches());
    let (psi, stays) = (
        above.pressure.value().to_psi(),
        above.stays.iter().map(|(_, n)| n).sum::<usize>(),
    );
    let (area, at, load) = load_figures(above.area_in2, psi);
    let finding = finding
        .with_length("centres of the highest tubes", "", above.highest, unit)
        .with("radius", "R", r, "in")
        .with("height of the segment", "h", r - b, "in")
        .with("working pressure", "p", psi, "psi")
        .provides(above.area_in2, "in2")
        .because(format!(
            "{area} in² at {at} psi: {load} lb on {stays} stays; holes in it not taken off"
        ));
    let lines = above.area_lines().into_iter().chain([above.load_line()]);
    vec![finding.work_all(lines)]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// R 16 7/8, base 6 31/64 + 2 = 8.484375, so h = 8.390625: 284.7656 × acos(0.502778) − 8.484375 × √(284.7656 − 71.9846)
    /// = 284.7656 × 1.043987 − 8.484375 × 14.58702 = 297.2916 − 123.7618 = 173.53 in².
    #[test]
    fn by_hand_two_inches_above_the_tubes() {
        let area = segment_in2(Length::inches(16.875), Length::inches(8.390625));
        assert_eq!(decimal(area, 2), "173.53");
    }

    /// Half a circle of 10 in radius: 50 π = 157.0796; the whole: 100 π.
    #[test]
    fn by_hand_half_and_whole_circle() {
        let r = Length::inches(10.0);
        assert_eq!(decimal(segment_in2(r, r), 4), "157.0796");
        assert_eq!(decimal(segment_in2(r, r * 2.0), 4), "314.1593");
        assert_eq!(segment_in2(r, Length::ZERO), 0.0);
    }

    /// 12.4 bar is 179.8468 psi: on 205.33915 in² it is 36,929.6 lb, and 205.34 × 179.85 = 36,930.4. 100 in² at 33.0049 psi are
    /// 3,300.49 lb, and at 33.00 as well; at 33.0051 they are 3,300.51, which 33.00 and 33.01 miss by a pound and 33.005 by a hair
    /// (3,300.5, half away from nought, is 3,301). 0.4444 × 9 = 3.9996; whole pounds of pressure have no noughts behind them.
    #[test]
    fn by_hand_the_figures_printed_multiply_out() {
        for (area, psi, printed) in [
            (205.33915, 179.8468, ["205.34", "179.85", "36,930"]),
            (100.0, 33.0049, ["100.00", "33", "3,300"]),
            (1000.0, 33.0051, ["1,000.000", "33.005", "33,005"]),
            (0.4444, 9.0, ["0.44", "9", "4"]),
        ] {
            let (a, p, load) = load_figures(area, psi);
            assert_eq!([a.as_str(), p.as_str(), load.as_str()], printed);
        }
    }
}
