//! Limits of welded repair in stayed and tubed plates.
//!
//! ```text
//! crack in a stayed plate: wholly inside the stayed area, total ≤ 2 stay pitches
//! build-up of a stayed sheet: loss ≤ 40 %, area ≤ 400 in², ≤ 30 in one way, two areas a plate, ≥ 30 in apart
//! girth joint: cracks from hole to hole ≤ 3 in a run, ≤ 6 in all
//! caulking edge: metal left from hole to edge ≥ 1/4 of the hole, ≤ 30 in long
//! flat round a handhole: loss ≤ 40 %, ≤ 2 in from the edge
//! build-up of an unstayed area, without leave: ≤ 100 in², ≤ the smaller of 25 % of the required thickness and 1/2 in, never where
//!     less than 60 % of the required thickness is left
//! ```
//!
//! Source:  46 CFR 59.10 (marine boilers); the last line 49 CFR 230.33 (locomotives).
//! Covers:  limits as plain functions, for a patch or repair.
//! Leaves:  a new plate, which has none of these; procedure, welder and heat treatment. British limits were not to be had.

use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{Kind, Written};
use crate::units::Length;
use crate::units::tolerance::SAME_SHARE;

/// The rule.
pub const RULE: Rule = Rule {
    name: "weld_repair",
    asks: "limits of welded repair",
    source: &source::CFR_59_10,
    run,
    page: include_str!("weld_repair.rs"),
};

/// Most total length of a crack wholly inside a stayed area, 46 CFR 59.10.
pub fn longest_crack(stay_pitch: Length) -> Length {
    stay_pitch * 2.0
}

/// A wasted area of a stayed sheet that is to be built up.
#[derive(Clone, Copy, Debug)]
pub struct BuildUp {
    /// Share of the thickness lost, 0 to 1.
    pub loss: f64,
    /// Area, in².
    pub area_in2: f64,
    /// Its size the shorter way.
    pub one_way: Length,
}

/// Why build-up of a stayed sheet is outside 46 CFR 59.10; empty where it is within.
pub fn beyond_build_up(areas: &[BuildUp], apart: Option<Length>) -> Vec<&'static str> {
    let more = |value: f64, most: f64| value > most * (1.0 + SAME_SHARE);
    let limits = [
        (areas.len() > 2, "more than two areas in one plate"),
        (
            areas.iter().any(|a| more(a.loss, 0.40)),
            "more than 40 % of the thickness lost",
        ),
        (
            areas.iter().any(|a| more(a.area_in2, 400.0)),
            "more than 400 in²",
        ),
        (
            areas
                .iter()
                .any(|a| Length::inches(30.0).shortfall(a.one_way).is_some()),
            "more than 30 in one way",
        ),
        (
            areas.len() > 1
                && apart.is_none_or(|apart| apart.shortfall(Length::inches(30.0)).is_some()),
            "areas less than 30 in apart",
        ),
    ];
    limits
        .into_iter()
        .filter(|(beyond, _)| *beyond)
        .map(|(_, words)| words)
        .collect()
}

/// Whether cracks from hole to hole of a girth joint may be welded: the longest run and all of them, 46 CFR 59.10.
pub fn girth_cracks_within(longest_run: u32, all: u32) -> bool {
    longest_run <= 3 && all <= 6
}

/// Least metal from rivet hole to edge that may be built up at a caulking edge, 46 CFR 59.10.
pub fn least_caulking_metal(hole: Length) -> Length {
    hole / 4.0
}

/// Most build-up of an unstayed area without leave, by thickness, 49 CFR 230.33.
pub fn most_build_up_without_leave(required: Length) -> Length {
    (required * 0.25).min(Length::inches(0.5))
}

/// Whether an unstayed area may be built up at all, 49 CFR 230.33.
pub fn enough_left_to_build_up(left: Length, required: Length) -> bool {
    left.shortfall(required * 0.60).is_none()
}

fn run(written: &Written, _: &Design) -> Vec<Finding> {
    match written.plate.kind {
        // A new plate.
        Kind::SmokeboxTubePlate => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 46 CFR 59.10: each limit itself is within, a hair over it is not.
    #[test]
    fn published_limits_hold_at_the_limit() {
        let area = BuildUp {
            loss: 0.40,
            area_in2: 400.0,
            one_way: Length::inches(30.0),
        };
        assert!(beyond_build_up(&[area], None).is_empty());
        assert!(beyond_build_up(&[area, area], Some(Length::inches(30.0))).is_empty());
        assert_eq!(
            beyond_build_up(&[area, area], Some(Length::inches(29.9))),
            ["areas less than 30 in apart"]
        );
        let over = BuildUp {
            loss: 0.41,
            area_in2: 401.0,
            one_way: Length::inches(30.1),
        };
        assert_eq!(beyond_build_up(&[over], None).len(), 3);
        assert!(
            girth_cracks_within(3, 6) && !girth_cracks_within(4, 4) && !girth_cracks_within(3, 7)
        );
        assert!(longest_crack(Length::inches(4.0)).same_as(Length::inches(8.0)));
        assert!(least_caulking_metal(Length::mm(24.0)).same_as(Length::mm(6.0)));
    }

    /// 49 CFR 230.33: 25 % of 1 in is 1/4 in; of 3 in it is 3/4, so 1/2 in; 60 % of 1/2 in is 0.3 in.
    #[test]
    fn published_locomotive_limits() {
        assert!(most_build_up_without_leave(Length::inches(1.0)).same_as(Length::inches(0.25)));
        assert!(most_build_up_without_leave(Length::inches(3.0)).same_as(Length::inches(0.5)));
        assert!(enough_left_to_build_up(
            Length::inches(0.3),
            Length::inches(0.5)
        ));
        assert!(!enough_left_to_build_up(
            Length::inches(0.299),
            Length::inches(0.5)
        ));
    }
}
