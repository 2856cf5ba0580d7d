//! Least strength of the seam that joins an end plate to its shell.
//!
//! ```text
//! least of plate %, rivet % and crushing % ≥ 38 %        of the shell of the thickness required
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 104.
//! Covers:  the flange rivets of a tube plate. The percentage is meant on the shell thickness that the regulations require; it is
//!          taken on `barrel.thickness_required` where the works gives it, else on the thickness fitted, which asks more; the
//!          finding says which.
//! Leaves:  how thick the shell must be; intermediate seams (42 %, and half the longitudinal seam's).

use super::measure::{figure, rounded};
use super::rivet_joint::{
    crushing, joint, plate_lines, plate_percent_of, rivet_lines, rivet_percent,
};
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::Written;
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "end_seam",
    asks: "strength of the seam to the barrel",
    source: &source::IBR_104,
    run,
    page: include_str!("end_seam.rs"),
};

/// Least strength of the seam, % of the solid shell.
pub const LEAST_PERCENT: f64 = 38.0;

/// A percentage of the shell as fitted, taken on a shell of another thickness.
pub fn taken_on(percent: f64, fitted: Length, reckoned_on: Length) -> f64 {
    fitted / reckoned_on * percent
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let finding = RULE.finding("flange rivets in the barrel");
    let Some(line) = &design.rivets else {
        let flanged = design.flange.is_some();
        let silent = || {
            finding.not_judged("`rivets` is not given, and no other seam to the barrel is covered")
        };
        return flanged.then(silent).into_iter().collect();
    };
    let (plate, rivets) = match joint(written, line) {
        Ok(joint) => joint,
        Err(why) => return vec![finding.not_judged(why)],
    };
    let required = written
        .barrel
        .as_ref()
        .and_then(|b| b.thickness_required.as_ref());
    let reckoned_on = required.map_or(plate.thickness, |size| size.value());
    let taken_there = |percent: f64| taken_on(percent, plate.thickness, reckoned_on);
    let by_plate = taken_there(plate_percent_of(line));
    let by_rivets = taken_there(rivet_percent(plate, rivets));
    let by_crushing =
        crushing(written, design).map(|crushing| taken_there(crushing.percent(plate, rivets)));
    let mut ways = vec![(by_plate, "plate"), (by_rivets, "rivets")];
    ways.extend(by_crushing.map(|percent| (percent, "crushing")));
    let (least, which) = least_of(&ways);
    let on = match required {
        Some(_) => "the thickness required",
        None => "the thickness fitted, since `barrel.thickness_required` is not given",
    };
    let mut finding = finding;
    for (percent, way) in &ways {
        finding = finding.with(*way, "", *percent, "%");
    }
    let finding = finding
        .with("thickness fitted", "", plate.thickness.to_inches(), "in")
        .with("thickness reckoned on", "", reckoned_on.to_inches(), "in")
        .at_least(LEAST_PERCENT, least, "%")
        .because(format!("{which} least; taken on {on}"));
    let crushing = crushing(written, design);
    let mut lines = plate_lines(line);
    lines.extend(rivet_lines(plate, rivets));
    lines.extend(crushing.map(|crushing| crushing.line(plate, rivets)));
    if !reckoned_on.same_as(plate.thickness) {
        let taken =
            |(percent, way): &(f64, &str)| taken_line(way, *percent, plate.thickness, reckoned_on);
        lines.extend(ways.iter().map(taken));
    }
    lines.push(format!(
        "least {} %; regulation 104 asks {} %",
        rounded(least, 2),
        figure(LEAST_PERCENT)
    ));
    vec![finding.work_all(lines)]
}

/// The weakest way for the seam to give; of several alike, the first.
fn least_of(ways: &[(f64, &'static str)]) -> (f64, &'static str) {
    let mut least = ways[0];
    for way in ways {
        if way.0 < least.0 {
            least = *way;
        }
    }
    least
}

/// A percentage taken on the thickness required, from that on the thickness fitted.
fn taken_line(way: &str, percent: f64, fitted: Length, taken: Length) -> String {
    format!(
        "{way} on the thickness required: {} × {}/{} = {} %",
        rounded(percent * (taken / fitted), 2),
        figure(fitted.to_inches()),
        figure(taken.to_inches()),
        rounded(percent, 2)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// On half the thickness the same seam is worth twice the percentage: 60 % becomes 120 %.
    #[test]
    fn by_hand_taken_on_the_thickness_required() {
        let on = |inches: f64| taken_on(60.0, Length::inches(0.5), Length::inches(inches));
        assert!((on(0.5) - 60.0).abs() < 1e-9 && (on(0.25) - 120.0).abs() < 1e-9);
    }

    /// A seam of 60 % in the plate and 60 % in the rivets gives way in the plate, which stands first; one of 59 % in the rivets does not.
    #[test]
    fn by_hand_the_weakest_way_and_of_two_alike_the_first() {
        assert_eq!(least_of(&[(60.0, "plate"), (60.0, "rivets")]).1, "plate");
        assert_eq!(
            least_of(&[(60.0, "plate"), (59.0, "rivets"), (61.0, "both")]),
            (59.0, "rivets")
        );
    }
}
