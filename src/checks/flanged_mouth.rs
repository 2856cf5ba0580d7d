//! Depth of a flanged mouth that makes a flat plate count as if it were not pierced.
//!
//! ```text
//! depth ≥ √(T W)        T  thickness, in        W  minor axis of the opening, in
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 201, equation 38. T is in inches here, though t is in 32nds elsewhere in it.
//! Covers:  firehole mouths and other round openings turned out of a flat plate, wherever `flanged_mouth` is written. T is the
//!          thickness as written: an allowance for corrosion would ask for less depth. The depth is how far the rim stands out from
//!          the face that it is turned towards, which is the least that can be meant.
//! Leaves:  openings that are not flanged; the radius of the bend and the metal round it; what the opening is cut to before it is
//!          turned, which the works decides.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::{Design, HoleGroup};
use crate::spec::{MouthSpec, Written};
use crate::units::Length;
use crate::units::angle::sqrt;

/// The rule.
pub const RULE: Rule = Rule {
    name: "flanged_mouth",
    asks: "depth of a flanged mouth",
    source: &source::IBR_201,
    run,
    page: include_str!("flanged_mouth.rs"),
};

/// Least depth of the mouth.
pub fn least_depth(thickness: Length, minor_axis: Length) -> Length {
    Length::mm(sqrt(thickness.to_mm() * minor_axis.to_mm()))
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mouths = design.groups.iter().enumerate();
    mouths
        .filter_map(|(index, group)| {
            let mouth = group.mouth.as_ref()?;
            let holes = design.holes.iter().filter(|hole| hole.group == index);
            let ids: Vec<&str> = holes.map(|hole| hole.id.as_str()).collect();
            let place = format!("{} {}", group.name, ids.join(", "));
            Some(compared(written, design, group, mouth, place.trim_end()))
        })
        .collect()
}

fn compared(
    written: &Written,
    design: &Design,
    group: &HoleGroup,
    mouth: &MouthSpec,
    place: &str,
) -> Finding {
    let (thickness, opening) = (design.thickness.value(), group.finish.value());
    let finding = RULE
        .finding(place)
        .with_length("thickness", "T", thickness, Unit::Inch)
        .with_length("minor axis of the opening", "W", opening, Unit::Inch);
    let Some(depth) = &mouth.depth else {
        return finding.not_judged(format!("`{}.flanged_mouth.depth` is not given", group.path));
    };
    let least = least_depth(thickness, opening);
    finding
        .at_least_length(least, depth.value(), Unit::of_job(written))
        .because("the depth stands out from the face that the mouth is turned towards")
        .work(format!(
            "depth ≥ √(T W) = √({} × {}) = {} in",
            figure(thickness.to_inches()),
            figure(opening.to_inches()),
            figure(least.to_inches())
        ))
        .work(format!("provided {} in", figure(depth.value().to_inches())))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// √(0.5 × 12) = 2.449 in, in inches or millimetres alike.
    #[test]
    fn by_hand_twelve_inch_mouth() {
        assert_eq!(
            decimal(
                least_depth(Length::inches(0.5), Length::inches(12.0)).to_inches(),
                3
            ),
            "2.449"
        );
        assert!(
            least_depth(Length::mm(12.7), Length::mm(304.8))
                .same_as(least_depth(Length::inches(0.5), Length::inches(12.0)))
        );
    }
}
