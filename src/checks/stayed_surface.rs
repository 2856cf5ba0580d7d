//! Pressure that a flat plate carries between stays set in a square.
//!
//! ```text
//! P = t² S C/p²        t  thickness, in        S  stress allowed, psi        p  greatest pitch between lines of stays, in
//! C = 2.1  welded, or screwed and riveted over, t up to 7/16 in      2.2  the same, thicker
//!     2.5  one nut outside, or nuts both sides without washers       2.8  formed heads of 1.3 diameters, bearing truly
//!     3.2  nuts both sides, washers outside of 0.4 p and of the plate's thickness
//! ```
//!
//! Source:  ASME Section I 2007, PG-46.1, as restated; the form and its step at 7/16 in also in National Board proposal NB12-1201.
//! Covers:  any flat whose stays stand in rows and columns, on the greatest pitch between neighbouring lines of stay centres, either
//!          way. C follows from `stay.ends`; S is a quarter of `plate.material.strength`; t is less the corrosion allowance: none
//!          of them is guessed. Of a plate that is kept, t is the least reading among the stays, in metal that stays; with none there
//!          it is not judged.
//! Leaves:  stays that stand in no rows and columns, and the flat beyond the outermost, both of which `largest_circle` looks at;
//!          oblong patterns, for which `stayed_surface_rectangular` is kinder. Do not mix with the constants 112 to 175, which go
//!          with sixteenths of an inch.

use super::measure::{Unit, figure, rounded};
use super::metal_there::reckoned;
use super::stay_core::{StayGroup, stay_groups};
use super::{Finding, Rule, source, why_not_steel};
use crate::design::{Design, StayPitch};
use crate::spec::{StayEnds, Written};
use crate::units::{Length, Strength, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "stayed_surface",
    asks: "flat plate between stays set in a square",
    source: &source::PG_46,
    run,
    page: include_str!("stayed_surface.rs"),
};

/// The constant C for stays with such ends in a plate of this thickness.
pub fn constant(ends: StayEnds, thickness: Length) -> f64 {
    match ends {
        StayEnds::RivetedOver => {
            let thin = Length::inches(7.0 / 16.0).shortfall(thickness).is_none();
            if thin { 2.1 } else { 2.2 }
        }
        StayEnds::Nuts => 2.5,
        StayEnds::FormedHeads => 2.8,
        StayEnds::NutsAndWashers => 3.2,
    }
}

/// The stress allowed: a quarter of the least tensile strength.
pub fn stress_allowed(strength: Stress) -> Stress {
    Stress::n_mm2(strength.to_n_mm2() / 4.0)
}

/// Pressure on a plate of this thickness with stays at this pitch both ways.
pub fn square_pitch_pressure(
    thickness: Length,
    allowed: Stress,
    constant: f64,
    pitch: Length,
) -> Stress {
    let ratio = thickness / pitch;
    Stress::n_mm2(ratio * ratio * allowed.to_n_mm2() * constant)
}

/// What a stayed surface is reckoned with, for each set of stays on a pitch.
pub(super) struct Stayed<'a> {
    /// What the stays are called.
    pub place: String,
    /// Greatest pitch across and up.
    pub pitches: (Length, Length),
    /// How the pitches were found.
    pub found: String,
    /// The constant, stress and thickness, with the pressure, or what is wanting.
    pub terms: Result<Terms<'a>, String>,
}

/// The terms of the formula that do not depend on the pitch.
pub(super) struct Terms<'a> {
    /// The constant C.
    pub constant: f64,
    /// The stress allowed, a quarter of the plate's least tensile strength.
    pub allowed: Stress,
    /// Thickness, less what is to be taken as lost.
    pub thickness: Length,
    /// Which reading it is, where the plate is kept.
    pub as_found: Option<String>,
    /// How the stays' ends are made.
    pub ends: StayEnds,
    /// Working pressure.
    pub pressure: &'a Strength,
}

/// Every set of stays that stands on a pitch.
pub(super) fn stayed<'a>(written: &'a Written, design: &Design) -> Vec<Stayed<'a>> {
    let of_pitch = |pitch: &StayPitch| {
        let groups = stay_groups(written, design);
        let group = groups.into_iter().find(|g| g.index() == pitch.group)?;
        Some(Stayed {
            place: group.group.name.clone(),
            pitches: pitch.greatest(),
            found: format!(
                "{} columns and {} rows of stay centres",
                pitch.across.len() + 1,
                pitch.up.len() + 1
            ),
            terms: terms(written, design, &group),
        })
    };
    design.stay_pitches.iter().filter_map(of_pitch).collect()
}

fn terms<'a>(
    written: &'a Written,
    design: &Design,
    group: &StayGroup,
) -> Result<Terms<'a>, String> {
    if let Some(why) = why_not_steel(written) {
        return Err(why);
    }
    let path = &group.group.path;
    let stay = group.stay.ok_or(format!("`{path}.stay` is not given"))?;
    let ends = stay
        .ends
        .ok_or(format!("`{path}.stay.ends` is not given"))?;
    let material = written.plate.material.as_ref();
    let strength = material
        .and_then(|m| m.strength.as_ref())
        .ok_or("`plate.material.strength` is not given")?;
    let pressure = written
        .working_pressure
        .as_ref()
        .ok_or("`working_pressure` is not given")?;
    let metal = design.metal_among(|hole| hole.group == group.index());
    let reckoned = reckoned(written, metal, "among these stays")?;
    let thickness = reckoned.left;
    Ok(Terms {
        constant: constant(ends, thickness),
        allowed: stress_allowed(strength.value()),
        thickness,
        as_found: reckoned.as_found,
        ends,
        pressure,
    })
}

impl Terms<'_> {
    /// A finding with the terms, compared with the working pressure.
    pub(super) fn compare(&self, finding: Finding, allowed: Stress) -> Finding {
        let found = self.as_found.iter().map(|words| format!("t {words}"));
        found
            .fold(finding, Finding::work)
            .with_length("thickness", "t", self.thickness, Unit::Inch)
            .with("stress allowed", "S", self.allowed.to_psi(), "psi")
            .with("constant", "C", self.constant, "")
            .at_least_pressure(self.pressure.value(), allowed, "psi")
            .work(format!(
                "S = {}/4 = {} psi",
                figure(self.allowed.to_psi() * 4.0),
                figure(self.allowed.to_psi())
            ))
    }
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    stayed(written, design)
        .iter()
        .map(by_larger_pitch)
        .collect()
}

fn by_larger_pitch(stayed: &Stayed) -> Finding {
    let pitch = stayed.pitches.0.max(stayed.pitches.1);
    let finding =
        RULE.finding(stayed.place.clone())
            .with_length("greatest pitch", "p", pitch, Unit::Inch);
    let terms = match &stayed.terms {
        Ok(terms) => terms,
        Err(why) => return finding.not_judged(why.clone()),
    };
    let allowed = square_pitch_pressure(terms.thickness, terms.allowed, terms.constant, pitch);
    terms
        .compare(finding, allowed)
        .because(format!(
            "greatest pitch of {}{}",
            stayed.found,
            asked_of(terms.ends, terms.thickness, pitch)
        ))
        .work(format!(
            "P = t² S C/p² = {}² × {} × {}/{}² = {} psi",
            figure(terms.thickness.to_inches()),
            figure(terms.allowed.to_psi()),
            figure(terms.constant),
            figure(pitch.to_inches()),
            rounded(allowed.to_psi(), 1)
        ))
}

/// What the constant asks of the ends besides, which the spec does not give.
fn asked_of(ends: StayEnds, thickness: Length, pitch: Length) -> String {
    match ends {
        StayEnds::RivetedOver | StayEnds::Nuts => String::new(),
        StayEnds::FormedHeads => {
            "; C holds for heads of 1.3 diameters or more that bear truly".into()
        }
        StayEnds::NutsAndWashers => format!(
            "; C holds for outside washers of {} or more across, {} thick",
            Unit::Inch.text(pitch * 0.4),
            Unit::Inch.text(thickness)
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::largest_circle::circle_pressure;
    use crate::units::angle::sqrt;

    /// The step lies above 7/16 in, and 7/16 in itself still takes 2.1.
    #[test]
    fn by_hand_the_constant_steps_above_seven_sixteenths() {
        assert_eq!(constant(StayEnds::RivetedOver, Length::mm(11.1125)), 2.1);
        assert_eq!(constant(StayEnds::RivetedOver, Length::inches(0.44)), 2.2);
        assert_eq!(
            constant(StayEnds::NutsAndWashers, Length::inches(0.375)),
            3.2
        );
    }

    proptest::proptest! {
        /// The largest circle of a square is p √2, so that 574 with C behaves as a square pitch with 1/(2 C²).
        #[test]
        fn holds_circle_and_square_agree(t in 6.0..30.0f64, p in 60.0..200.0f64, c in 0.2..0.6f64) {
            let (t, p, f) = (Length::mm(t), Length::mm(p), Stress::n_mm2(100.0));
            let circle = circle_pressure(f, t, Length::ZERO, c, p * sqrt(2.0)).to_n_mm2();
            let square = square_pitch_pressure(t, f, 1.0 / (2.0 * c * c), p).to_n_mm2();
            proptest::prop_assert!((circle - square).abs() < 1e-9 * square);
        }
    }
}
