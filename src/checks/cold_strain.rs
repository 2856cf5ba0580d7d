//! Strain of the heel if it were bent cold, and the least cold radius that steel makers recommend.
//!
//! ```text
//! strain = t/2/(r + t/2)                outer fibre, about the mid line        t  thickness, mm       r  inside radius, mm
//! least r by thickness                  EN 10025-2 table for bends to 90°, S275 with the bend across the rolling direction
//! ```
//!
//! Source:  geometry; EN 10025-2, recommended values for cold flanging, as restated by a steel user's guide.
//! Covers:  pressed flanges, as guidance: boiler flanges are turned hot. Plates above 5 mm and up to 30 mm.
//! Leaves:  boiler plate steels, for which that table is not written; heat treatment after forming, which is the works' procedure.

use super::measure::{figure, rounded};
use super::{Finding, Rule, source};
use crate::design::{Design, FlangeDesign};
use crate::spec::Written;
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "cold_strain",
    asks: "strain of the heel, were it bent cold",
    source: &source::EN_10025_2,
    run,
    page: include_str!("cold_strain.rs"),
};

/// Thickness up to which each line holds, and the least cold radius, mm: S275 across the rolling direction.
const LEAST_COLD_RADIUS_MM: [(f64, f64); 11] = [
    (6.0, 10.0),
    (7.0, 12.0),
    (8.0, 16.0),
    (10.0, 20.0),
    (12.0, 25.0),
    (14.0, 28.0),
    (16.0, 32.0),
    (18.0, 40.0),
    (20.0, 45.0),
    (25.0, 55.0),
    (30.0, 70.0),
];

/// Least inside radius for cold flanging; none where the table does not reach.
pub fn least_cold_radius(thickness: Length) -> Option<Length> {
    let holds = |up_to: f64| Length::mm(up_to).shortfall(thickness).is_none();
    // The table begins above 5 mm.
    Length::mm(5.0).shortfall(thickness)?;
    LEAST_COLD_RADIUS_MM
        .iter()
        .find(|(up_to, _)| holds(*up_to))
        .map(|(_, radius)| Length::mm(*radius))
}

fn run(_: &Written, design: &Design) -> Vec<Finding> {
    let Some(FlangeDesign::Pressed(pressed)) = &design.flange else {
        return Vec::new();
    };
    let (t, r) = (design.thickness.value(), pressed.heel_radius.value());
    let percent = 100.0 * pressed.heel_strain;
    let cold = match least_cold_radius(t) {
        Some(least) => format!(
            "; EN 10025-2 recommends {} mm or more for cold flanging of S275 steel",
            figure(least.to_mm())
        ),
        None => String::new(),
    };
    vec![
        RULE.finding("heel")
            .with("thickness", "t", t.to_mm(), "mm")
            .with("inside radius", "r", r.to_mm(), "mm")
            .provides(percent, "%")
            .because(format!(
                "{} % at the outer fibre if bent cold, rim shrunk {} %{cold}: boiler flanges are turned hot, and heat treatment is the works' procedure",
                rounded(percent, 1),
                rounded(100.0 * pressed.rim_shrink, 1)
            ))
            .work(format!(
                "t/2/(r + t/2) = {}/({} + {}) = {} %",
                figure(t.to_mm() / 2.0),
                figure(r.to_mm()),
                figure(t.to_mm() / 2.0),
                rounded(percent, 2)
            )),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// EN 10025-2 as restated: over 12 to 14 mm, S275 across the rolling direction, 28 mm; over 14 to 16 mm, 32 mm.
    #[test]
    fn published_cold_radii() {
        let least = |mm: f64| least_cold_radius(Length::mm(mm)).map(|r| r.to_mm());
        assert_eq!(
            [
                least(5.0),
                least(6.0),
                least(12.7),
                least(16.0),
                least(30.0),
                least(31.0)
            ],
            [None, Some(10.0), Some(28.0), Some(32.0), Some(70.0), None]
        );
    }
}
