//! The other way that regulation 580 allows: a thicker plate and a full section of metal, in place of the least ligament.
//!
//! ```text
//! t ≥ 0.125 D + 0.2 in                 t  thickness         D  finished hole, in
//! section ≥ 0.17 D + 0.025 in²         section = ligament × thickness
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 580, its alternative.
//! Covers:  the same pairs as `tube_ligament`. It judges only where `judged_by` names it, never because the regulations are named:
//!          choosing it is an engineer's decision. `tube_ligament` then becomes a note.
//!          Of a plate that is kept, t is the least reading among the tubes, in metal that stays; with none there it is not judged.
//! Leaves:  what `tube_ligament` leaves.

use super::measure::{Unit, figure};
use super::metal_there::among_tubes;
use super::pairs::{Pair, beside_tubes};
use super::{Finding, Rule, source, why_not_steel};
use crate::design::Design;
use crate::spec::Written;
use crate::units::{Length, SQUARE_MM_PER_SQUARE_INCH};

/// The rule.
pub const RULE: Rule = Rule {
    name: "tube_ligament_alternative",
    asks: "thickness, and section of the metal between tube holes",
    source: &source::IBR_580_ALTERNATIVE,
    run,
    page: include_str!("tube_ligament_alternative.rs"),
};

/// Least thickness of the plate with holes of this diameter.
pub fn least_thickness(hole: Length) -> Length {
    hole * 0.125 + Length::inches(0.2)
}

/// Least section of metal between holes of this diameter, in².
pub fn least_section_in2(hole: Length) -> f64 {
    0.17 * hole.to_inches() + 0.025
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let pairs: Vec<Pair> = beside_tubes(design).into_values().flatten().collect();
    if pairs.is_empty() {
        return Vec::new();
    }
    let reckoned = match among_tubes(written, design) {
        Ok(reckoned) => reckoned,
        Err(why) => return vec![RULE.finding("tubes").not_judged(why)],
    };
    let found = [
        by_thickness(written, &pairs, reckoned.left),
        by_section(&pairs, reckoned.left),
    ];
    let said = reckoned.as_found.as_deref().unwrap_or_default();
    let said = found.map(|finding| finding.because(said));
    said.map(|finding| not_unless_steel(finding, written))
        .into()
}

fn by_thickness(written: &Written, pairs: &[Pair], thickness: Length) -> Finding {
    let unit = Unit::of_job(written);
    let largest = pairs
        .iter()
        .copied()
        .reduce(larger_hole)
        .expect("a list of pairs is never empty");
    let d = largest.tube_hole();
    RULE.finding(format!("thickness, {}", largest.place()))
        .with_length("hole", "D", d, unit)
        .at_least_length(least_thickness(d), thickness, unit)
        .work(format!(
            "0.125 D + 0.2 = 0.125 × {} + 0.2 = {} in",
            figure(d.to_inches()),
            figure(least_thickness(d).to_inches())
        ))
        .work(format!("provided = {} in", figure(thickness.to_inches())))
}

fn by_section(pairs: &[Pair], thickness: Length) -> Finding {
    let section = |pair: &Pair| pair.metal.to_mm() * thickness.to_mm() / SQUARE_MM_PER_SQUARE_INCH;
    let margin = |pair: &Pair| section(pair) - least_section_in2(pair.tube_hole());
    let worst = pairs
        .iter()
        .copied()
        .reduce(|a, b| if margin(&b) < margin(&a) { b } else { a })
        .expect("a list of pairs is never empty");
    let (d, least) = (worst.tube_hole(), least_section_in2(worst.tube_hole()));
    RULE.finding(format!("section, {}", worst.place()))
        .with("hole", "D", d.to_inches(), "in")
        .with("ligament", "", worst.metal.to_inches(), "in")
        .with("thickness", "t", thickness.to_inches(), "in")
        .at_least(least, section(&worst), "in2")
        .work(format!(
            "0.17 D + 0.025 = 0.17 × {} + 0.025 = {} in²",
            figure(d.to_inches()),
            figure(least)
        ))
        .work(format!(
            "provided = {} × {} = {} in²",
            figure(worst.metal.to_inches()),
            figure(thickness.to_inches()),
            figure(section(&worst))
        ))
}

/// The pair with the larger hole; of two with holes alike that with less metal, and of two alike in both the first.
fn larger_hole<'a>(a: Pair<'a>, b: Pair<'a>) -> Pair<'a> {
    let (hole_a, hole_b) = (a.tube_hole(), b.tube_hole());
    let tighter = hole_a.same_as(hole_b) && b.metal.shortfall(a.metal).is_some();
    if hole_a.shortfall(hole_b).is_some() || tighter {
        b
    } else {
        a
    }
}

fn not_unless_steel(finding: Finding, written: &Written) -> Finding {
    match why_not_steel(written) {
        Some(why) => finding.not_judged(why),
        None => finding,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// 0.125 × 1.75 + 0.2 = 0.41875 in; 0.17 × 1.75 + 0.025 = 0.3225 in².
    #[test]
    fn by_hand_1_3_4_hole() {
        let hole = Length::inches(1.75);
        assert_eq!(decimal(least_thickness(hole).to_inches(), 5), "0.41875");
        assert_eq!(decimal(least_section_in2(hole), 4), "0.3225");
    }
}
