//! Firebox tube plate pressed down by the girders of the roof.
//!
//! ```text
//! WP = 875 (P − D) t/(L P)        t  thickness in 32nds of an inch       P  pitch of the tubes (the smaller), in
//!                                 D  bore of the plain tubes, in         L  inside length of the firebox at the top, in
//! nominal compression ≤ 14,000 psi where side plates share the load
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 582, in a copy of unknown standing.
//! Covers:  a firebox tube plate on which `roof_girders` says that girders bear, nest by nest, by the tube's *bore*, not its hole, and
//!          by the smaller of the pitch along a row and on the slant. Where side plates share the load, the compression that the
//!          works has worked out is compared with 14,000 psi: 875 is 2 × 14,000/32, so that the pressure above is the same limit
//!          with no share taken by anything else.
//! Leaves:  boxes whose roof is stayed direct to the shell, or whose girders do not bear on the tube plate; smokebox plates, which
//!          refuse the key; flues, of which the regulation does not speak; what share the side plates carry.

use super::measure::{figure, rounded};
use super::metal_there::among_tubes;
use super::{Finding, Rule, source, why_not_steel};
use crate::design::Design;
use crate::spec::{Nest, NestPurpose, RoofGirders, SidePlates, Written};
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "roof_girders",
    asks: "firebox tube plate under roof girders",
    source: &source::IBR_582,
    run,
    page: include_str!("roof_girders.rs"),
};

/// Most nominal compression where side plates share the load.
pub fn most_compression() -> Stress {
    Stress::psi(14_000.0)
}

/// Working pressure of the plate. `bore` is the inside of the plain tubes.
pub fn girder_pressure(thickness: Length, pitch: Length, bore: Length, firebox: Length) -> Stress {
    let t_32nds = thickness.to_inches() * 32.0;
    Stress::psi(875.0 * ((pitch - bore) / pitch) * t_32nds / firebox.to_inches())
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(girders) = &written.roof_girders else {
        return Vec::new();
    };
    if let Some(side_plates) = &girders.side_plates {
        return vec![shared(written, side_plates)];
    }
    let nests = written.tubes.iter().enumerate();
    nests
        .map(|(index, nest)| of_nest(written, design, girders, (index, nest)))
        .collect()
}

/// The compression that is left where side plates share the load, as the works gives it.
fn shared(written: &Written, side_plates: &SidePlates) -> Finding {
    let finding = RULE.finding("the plate, side plates sharing the load");
    if let Some(why) = why_not_steel(written) {
        return finding.not_judged(why);
    }
    let Some(compression) = &side_plates.compression else {
        return finding.not_judged("`roof_girders.side_plates.compression` is not given");
    };
    let (most, psi) = (most_compression().to_psi(), compression.value().to_psi());
    finding
        .at_most(most, psi, "psi")
        .because(format!(
            "nominal compression by {}, with the side plates' share taken off",
            side_plates.origin
        ))
        .work(format!(
            "nominal compression {} = {} psi, at most {} psi",
            compression.as_written(),
            figure(psi),
            figure(most)
        ))
}

fn of_nest(
    written: &Written,
    design: &Design,
    girders: &RoofGirders,
    (index, nest): (usize, &Nest),
) -> Finding {
    let finding = RULE.finding(nest.name.clone());
    match terms(written, design, (index, nest)) {
        Err(why) => finding.not_judged(why),
        Ok(terms) => compared(finding, girders, &terms),
    }
}

/// What the formula is worked with, the firebox's length apart.
struct Terms {
    pressure: Stress,
    thickness: Length,
    bore: Length,
    pitch: Length,
    along: &'static str,
}

fn terms(
    written: &Written,
    design: &Design,
    (index, nest): (usize, &Nest),
) -> Result<Terms, String> {
    if nest.purpose == NestPurpose::Flue {
        return Err("regulation 582 speaks of plain tubes, and these are flues".into());
    }
    if let Some(why) = why_not_steel(written) {
        return Err(why);
    }
    let wall = nest.wall.as_ref().ok_or(format!(
        "`tubes[{index}].wall` is not given, and with it the bore of the tubes"
    ))?;
    let pressure = written
        .working_pressure
        .as_ref()
        .ok_or("`working_pressure` is not given")?;
    let (pitch, along) = smaller_pitch(design, index).ok_or(format!(
        "{} stand in no row and no zig-zag, so that they have no pitch to reckon with",
        nest.name
    ))?;
    Ok(Terms {
        pressure: pressure.value(),
        thickness: among_tubes(written, design)?.left,
        bore: nest.tube.value() - 2.0 * wall.value(),
        pitch,
        along,
    })
}

/// The pitch along a row, or on the slant where that is smaller; girders press the plate down, so that holes one above the other do
/// not count.
fn smaller_pitch(design: &Design, group: usize) -> Option<(Length, &'static str)> {
    let ways = design.directions.iter();
    ways.filter(|way| way.group == group && way.direction != "column")
        .map(|way| (way.ligament.pitch, way.direction))
        .min_by(|a, b| a.0.to_mm().total_cmp(&b.0.to_mm()))
}

fn compared(finding: Finding, girders: &RoofGirders, terms: &Terms) -> Finding {
    let firebox = girders.firebox_length.value();
    let inches = Length::to_inches;
    let t_32nds = inches(terms.thickness) * 32.0;
    let allowed = girder_pressure(terms.thickness, terms.pitch, terms.bore, firebox);
    finding
        .with(
            "pitch of the tubes, the smaller",
            "P",
            inches(terms.pitch),
            "in",
        )
        .with("bore of the plain tubes", "D", inches(terms.bore), "in")
        .with("thickness in 32nds", "t", t_32nds, "")
        .with(
            "length of the firebox at the top",
            "L",
            inches(firebox),
            "in",
        )
        .at_least(terms.pressure.to_psi(), allowed.to_psi(), "psi")
        .because(format!(
            "girders bear on the plate by {}; pitch along the {}",
            girders.origin, terms.along
        ))
        .work(format!(
            "t = {} × 32 = {} 32nds",
            figure(inches(terms.thickness)),
            figure(t_32nds)
        ))
        .work(format!(
            "WP = 875 (P − D) t/(L P) = 875 × ({} − {}) × {}/({} × {}) = {} psi",
            figure(inches(terms.pitch)),
            figure(inches(terms.bore)),
            figure(t_32nds),
            figure(inches(firebox)),
            figure(inches(terms.pitch)),
            rounded(allowed.to_psi(), 1)
        ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// Regulation 582: 14,000 psi.
    #[test]
    fn published_most_compression() {
        assert_eq!(decimal(most_compression().to_psi(), 0), "14000");
    }

    /// 875 × (2.5 − 1.5) × 20/(36 × 2.5) = 194.4 psi. On the 1 3/4 in hole in place of the 1 1/2 in bore it would be 145.8: the
    /// bore is what the regulation names.
    #[test]
    fn by_hand_on_the_bore() {
        let wp = |d: f64| {
            let inches = Length::inches;
            decimal(
                girder_pressure(inches(0.625), inches(2.5), inches(d), inches(36.0)).to_psi(),
                1,
            )
        };
        assert_eq!(
            (wp(1.5), wp(1.75)),
            ("194.4".to_string(), "145.8".to_string())
        );
    }
}
