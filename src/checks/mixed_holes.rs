//! A large hole beside a small one: which of the two the least ligament is worked on.
//!
//! ```text
//! on the larger    D_large/8 + 1/2 in                  what `tube_ligament` judges on
//! on the mean      (D_large + D_small)/2/8 + 1/2 in    for comparison
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 580, which names one diameter only.
//! Covers:  neighbours that both take a tube or flue and differ in size: flues beside tubes, a re-bored hole beside a new one.
//! Leaves:  the choice, which is the inspecting body's; the stricter one is judged.

use super::measure::{Unit, figure};
use super::pairs::{Pair, beside_tubes};
use super::tube_ligament::least_ligament;
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::Written;

/// The rule.
pub const RULE: Rule = Rule {
    name: "mixed_holes",
    asks: "large and small tube holes side by side",
    source: &source::IBR_580,
    run,
    page: include_str!("mixed_holes.rs"),
};

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    beside_tubes(design)
        .values()
        .filter_map(|pairs| tightest(pairs))
        .map(|p| noted(written, &p))
        .collect()
}

/// The pair of unequal tube holes with the least metal.
fn tightest<'a>(pairs: &[Pair<'a>]) -> Option<Pair<'a>> {
    let unequal = pairs
        .iter()
        .copied()
        .filter(|p| !p.tube_hole().same_as(p.mean_tube_hole()));
    unequal.reduce(|a, b| if b.metal < a.metal { b } else { a })
}

fn noted(written: &Written, pair: &Pair) -> Finding {
    let unit = Unit::of_job(written);
    let (larger, mean) = (pair.tube_hole(), pair.mean_tube_hole());
    let (on_larger, on_mean) = (least_ligament(larger), least_ligament(mean));
    let line = |name: &str, hole: f64, least: f64| {
        format!(
            "on the {name}: {}/8 + 0.5 = {} in",
            figure(hole),
            figure(least)
        )
    };
    RULE.finding(pair.place())
        .with_length("larger hole", "D", larger, unit)
        .with_length("mean of the two", "", mean, unit)
        .provides_length(pair.metal, unit)
        .because(format!(
            "{} between them; on the larger hole {} is asked, on the mean {}; the larger is judged",
            unit.text(pair.metal),
            unit.text(on_larger),
            unit.text(on_mean)
        ))
        .work(line("larger", larger.to_inches(), on_larger.to_inches()))
        .work(line("mean", mean.to_inches(), on_mean.to_inches()))
}
