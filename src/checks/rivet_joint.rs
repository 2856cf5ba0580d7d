//! Strength of the flange's riveted joint as a percentage of the barrel's.
//!
//! ```text
//! plate    100 (P − D)/P                     P   pitch along the bore, in       D, A  diameter and area of the hole, in and in²
//! rivets   100 A N C S1/(P T S)              N   rivets in a pitch              C     1 in single shear, 1.875 in double
//! combined 100 (P − 2D)/P + 100 A C S1/(P T S)   T   barrel's thickness, in     S, S1 strengths of plate and rivets, tonf/in²
//! crushing 100 N D T1 f/(P T S)              f   crushing strength      T1  the thinner of barrel and flange, in
//! Board of Trade: rivets × F/4                   F   factor of safety of the seam
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 177.
//! Covers:  rivets in single shear through barrel and flange, in one row or in rows of as many each, so that a pitch has one rivet
//!          of every row; the barrel is the plate whose strength is shared. The least governs. Where rows stand closer than
//!          regulation 184 prescribes, the plate percentage is 100 [P − (2 − actual/prescribed) D]/P (see `rivet_rows`).
//!          The combined form holds only where inner rows have twice the rivets of the outer.
//!          Crushing, which this source does not ask, is reckoned on the thinner of barrel and flange where the spec gives
//!          `rivets.crushing_strength` with its origin.
//! Leaves:  tightness. The percentages are judged by `end_seam`.

use super::measure::{Unit, figure, rounded};
use super::rivet_rows::{plate_percent_at_gap, prescribed_gap};
use super::{Finding, Rule, source};
use crate::design::{Design, FlangeDesign, RivetHoleMade, RivetLine};
use crate::spec::Written;
use crate::units::angle::PI;
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "rivet_joint",
    asks: "strength of the flange's riveted joint",
    source: &source::IBR_177,
    run,
    page: include_str!("rivet_joint.rs"),
};

/// What a rivet in double shear is worth beside one in single, regulation 177. (United States rules count it twice.)
pub const DOUBLE_SHEAR: f64 = 1.875;

/// The plate of a joint, for its sums.
#[derive(Clone, Copy, Debug)]
pub struct JointPlate {
    /// Pitch of the outer row.
    pub pitch: Length,
    /// Thickness.
    pub thickness: Length,
    /// Tensile strength.
    pub strength: Stress,
}

/// The rivets of a joint, for its sums.
#[derive(Clone, Copy, Debug)]
pub struct JointRivets {
    /// Finished hole, which the driven rivet fills.
    pub hole: Length,
    /// Rivets in one pitch.
    pub in_a_pitch: f64,
    /// 1 in single shear, [`DOUBLE_SHEAR`] in double.
    pub shear: f64,
    /// Shear strength.
    pub strength: Stress,
}

impl JointRivets {
    /// Area of one rivet, mm².
    pub fn area_mm2(&self) -> f64 {
        PI / 4.0 * self.hole.to_mm() * self.hole.to_mm()
    }
}

/// Plate left between holes, %.
pub fn plate_percent(pitch: Length, hole: Length) -> f64 {
    100.0 * (pitch - hole) / pitch
}

/// Plate percentage of a flange's rivets: lowered where their rows stand closer than regulation 184 prescribes.
pub(super) fn plate_percent_of(line: &RivetLine) -> f64 {
    plate_percent_at(line, line.hole.value())
}

/// The same with holes of another size.
fn plate_percent_at(line: &RivetLine, hole: Length) -> f64 {
    let pitch = line.pitch_bore;
    match &line.rows {
        Some(rows) => {
            let prescribed = prescribed_gap(rows.arrangement, pitch, hole);
            plate_percent_at_gap(pitch, hole, rows.apart.value(), prescribed)
        }
        None => plate_percent(pitch, hole),
    }
}

/// Shear strength of the rivets over tensile strength of the solid plate, %.
pub fn rivet_percent(plate: JointPlate, rivets: JointRivets) -> f64 {
    100.0 * rivets_n(rivets) / solid_plate_n(plate)
}

/// Plate between the doubled inner rivets and one outer rivet sheared, %; inner rows with twice the rivets of the outer.
pub fn combined_percent(plate: JointPlate, rivets: JointRivets) -> f64 {
    let one = JointRivets {
        in_a_pitch: 1.0,
        ..rivets
    };
    100.0 * (plate.pitch - 2.0 * rivets.hole) / plate.pitch + rivet_percent(plate, one)
}

/// What the solid plate of one pitch carries, N.
pub fn solid_plate_n(plate: JointPlate) -> f64 {
    plate.pitch.to_mm() * plate.thickness.to_mm() * plate.strength.to_n_mm2()
}

/// What the plate left between holes carries, N.
pub fn plate_n(plate: JointPlate, hole: Length) -> f64 {
    solid_plate_n(JointPlate {
        pitch: plate.pitch - hole,
        ..plate
    })
}

/// What the rivets of one pitch carry in shear, N.
pub fn rivets_n(rivets: JointRivets) -> f64 {
    rivets.area_mm2() * rivets.in_a_pitch * rivets.shear * rivets.strength.to_n_mm2()
}

/// What the rivets of one pitch carry before they or the plate behind them are crushed, N. Regulation 177 does not ask it.
pub fn crushing_n(thickness: Length, rivets: JointRivets, crushing: Stress) -> f64 {
    rivets.in_a_pitch * rivets.hole.to_mm() * thickness.to_mm() * crushing.to_n_mm2()
}

/// Rivet percentage in the Board of Trade's form, by the factor of safety of the seam.
pub fn board_of_trade_rivet_percent(
    plate: JointPlate,
    rivets: JointRivets,
    seam_factor: f64,
) -> f64 {
    rivet_percent(plate, rivets) * seam_factor / 4.0
}

/// The joint of the flange in its barrel, or the keys that are wanting.
pub(super) fn joint(
    written: &Written,
    rivets: &RivetLine,
) -> Result<(JointPlate, JointRivets), String> {
    let mut wanting = Vec::new();
    let barrel = written.barrel.as_ref();
    let strength = barrel
        .and_then(|b| b.material.as_ref())
        .and_then(|m| m.strength.as_ref());
    let shear = written
        .rivets
        .as_ref()
        .and_then(|r| r.shear_strength.as_ref());
    if barrel.is_none() {
        wanting.push("`barrel`");
    } else if strength.is_none() {
        wanting.push("`barrel.material.strength`");
    }
    if shear.is_none() {
        wanting.push("`rivets.shear_strength`");
    }
    match (barrel, strength, shear) {
        (Some(barrel), Some(strength), Some(shear)) => Ok((
            JointPlate {
                pitch: rivets.pitch_bore,
                thickness: barrel.thickness.value(),
                strength: strength.value(),
            },
            JointRivets {
                hole: rivets.hole.value(),
                in_a_pitch: f64::from(rivets.row_count()),
                shear: 1.0,
                strength: shear.value(),
            },
        )),
        _ => Err(format!("not given: {}", wanting.join(" and "))),
    }
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(line) = &design.rivets else {
        return Vec::new();
    };
    let mut findings = vec![plate_between(line), rivets_sheared(written, line)];
    if let (Some(crushing), Ok(joint)) = (crushing(written, design), joint(written, line)) {
        findings.push(crushed(&crushing, joint));
    }
    findings
}

fn plate_between(line: &RivetLine) -> Finding {
    let (pitch, hole) = (line.pitch_bore, line.hole.value());
    let finding = RULE
        .finding("plate between the holes")
        .with_length("pitch at bore", "P", pitch, Unit::Inch)
        .with_length("rivet hole", "D", hole, Unit::Inch)
        .provides(plate_percent_of(line), "%")
        .because("judged under end_seam");
    let finding = finding.work_all(plate_lines(line));
    match closer_rows(line) {
        Some((apart, prescribed)) => finding
            .with_length("row to row", "", apart, Unit::Inch)
            .with_length("prescribed", "", prescribed, Unit::Inch)
            .also("lowered by regulation 184, since the rows stand closer than it prescribes"),
        None => finding,
    }
}

/// How far apart rows stand and how far regulation 184 prescribes, where they stand closer than that.
fn closer_rows(line: &RivetLine) -> Option<(Length, Length)> {
    let rows = line.rows.as_ref()?;
    let apart = rows.apart.value();
    let prescribed = prescribed_gap(rows.arrangement, line.pitch_bore, line.hole.value());
    apart.shortfall(prescribed).map(|_| (apart, prescribed))
}

/// The working of the plate percentage, from the barrel's bore on.
pub(super) fn plate_lines(line: &RivetLine) -> Vec<String> {
    let (pitch, hole) = (line.pitch_bore, line.hole.value());
    let (p, d) = (figure(pitch.to_inches()), figure(hole.to_inches()));
    let mut lines = vec![
        format!(
            "P = 3.141593 × bore/rivets in a row = 3.141593 × {}/{} = {p} in",
            figure((line.girth_bore / PI).to_inches()),
            line.in_a_row()
        ),
        format!(
            "plate: 100 (P − D)/P = 100 × ({p} − {d})/{p} = {} %",
            rounded(plate_percent(pitch, hole), 2)
        ),
    ];
    if let Some((apart, prescribed)) = closer_rows(line) {
        lines.push(format!(
            "rows closer: 100 [P − (2 − actual/prescribed) D]/P = 100 × [{p} − (2 − {}/{}) × {d}]/{p} = {} %",
            figure(apart.to_inches()),
            figure(prescribed.to_inches()),
            rounded(plate_percent_of(line), 2)
        ));
    }
    lines
}

/// The working of the rivet percentage.
pub(super) fn rivet_lines(plate: JointPlate, rivets: JointRivets) -> Vec<String> {
    let (d, t) = (rivets.hole.to_inches(), plate.thickness.to_inches());
    let (s1, s) = (rivets.strength.to_tonf_in2(), plate.strength.to_tonf_in2());
    let area = PI / 4.0 * d * d;
    vec![
        format!(
            "S = {} tonf/in² ({} N/mm²), S1 = {} tonf/in² ({} N/mm²)",
            figure(s),
            figure(plate.strength.to_n_mm2()),
            figure(s1),
            figure(rivets.strength.to_n_mm2())
        ),
        format!("A = 0.785398 × {}² = {} in²", figure(d), figure(area)),
        format!(
            "rivets: 100 A N C S1/(P T S) = 100 × {} × {} × 1 × {}/({} × {} × {}) = {} %",
            figure(area),
            figure(rivets.in_a_pitch),
            figure(s1),
            figure(plate.pitch.to_inches()),
            figure(t),
            figure(s),
            rounded(rivet_percent(plate, rivets), 2)
        ),
    ]
}

/// A note on the plate percentage at the largest rivet hole that was measured, beside that at the designed hole, which is judged.
pub(super) fn plate_as_made(line: &RivetLine, largest: &RivetHoleMade) -> Finding {
    let (pitch, hole) = (line.pitch_bore, largest.made.value());
    let (p, d) = (figure(pitch.to_inches()), figure(hole.to_inches()));
    let percent = plate_percent_at(line, hole);
    let finding = RULE
        .finding(format!("plate between the holes, as made: {}", largest.id))
        .with_length("pitch at bore", "P", pitch, Unit::Inch)
        .with_length("largest rivet hole recorded", "D", hole, Unit::Inch)
        .provides(percent, "%")
        .because(format!(
            "{} % at the largest rivet hole recorded, {} {}; {} % at the designed {}, at which the joint is judged",
            rounded(percent, 2),
            largest.id,
            largest.made,
            rounded(plate_percent_of(line), 2),
            largest.designed
        ));
    match &line.rows {
        // Rows that stand close lower it, as the working of the designed hole shows.
        Some(_) => finding,
        None => finding.work(format!(
            "100 (P − D)/P = 100 × ({p} − {d})/{p} = {} %",
            rounded(percent, 2)
        )),
    }
}

/// What crushing of the joint is reckoned with.
pub(super) struct Crushing<'a> {
    /// Crushing strength, as the spec gives it.
    pub strength: Stress,
    /// Who says so.
    pub origin: &'a str,
    /// The thinner of barrel and flange.
    pub thickness: Length,
}

/// Crushing of the joint, where the spec gives a strength for it.
pub(super) fn crushing<'a>(written: &'a Written, design: &Design) -> Option<Crushing<'a>> {
    let given = written.rivets.as_ref()?.crushing_strength.as_ref()?;
    let flange = match design.flange.as_ref()? {
        FlangeDesign::Pressed(_) => design.thickness.value(),
        FlangeDesign::Fabricated(ring) => ring.ring_thickness.value(),
    };
    Some(Crushing {
        strength: given.stress.value(),
        origin: &given.origin,
        thickness: flange.min(written.barrel.as_ref()?.thickness.value()),
    })
}

impl Crushing<'_> {
    /// Strength of the joint against crushing over the tensile strength of the solid plate, %.
    pub(super) fn percent(&self, plate: JointPlate, rivets: JointRivets) -> f64 {
        100.0 * crushing_n(self.thickness, rivets, self.strength) / solid_plate_n(plate)
    }

    /// Its working.
    pub(super) fn line(&self, plate: JointPlate, rivets: JointRivets) -> String {
        format!(
            "crushing: 100 N D T1 f/(P T S) = 100 × {} × {} × {} × {}/({} × {} × {}) = {} %",
            figure(rivets.in_a_pitch),
            figure(rivets.hole.to_inches()),
            figure(self.thickness.to_inches()),
            figure(self.strength.to_tonf_in2()),
            figure(plate.pitch.to_inches()),
            figure(plate.thickness.to_inches()),
            figure(plate.strength.to_tonf_in2()),
            rounded(self.percent(plate, rivets), 2)
        )
    }
}

fn crushed(crushing: &Crushing, (plate, rivets): (JointPlate, JointRivets)) -> Finding {
    RULE.finding_of_works(crushing.origin, "crushing")
        .with("rivet hole", "D", rivets.hole.to_inches(), "in")
        .with(
            "thinner of barrel and flange",
            "T1",
            crushing.thickness.to_inches(),
            "in",
        )
        .with(
            "crushing strength",
            "f",
            crushing.strength.to_tonf_in2(),
            "tonf/in2",
        )
        .provides(crushing.percent(plate, rivets), "%")
        .because("judged under end_seam")
        .work(crushing.line(plate, rivets))
}

fn rivets_sheared(written: &Written, line: &RivetLine) -> Finding {
    let finding = RULE.finding("rivets");
    let (plate, rivets) = match joint(written, line) {
        Ok(joint) => joint,
        Err(why) => return finding.not_judged(why),
    };
    let d = rivets.hole.to_inches();
    let finding = match &line.rows {
        Some(_) => finding.with("rivets in a pitch", "N", rivets.in_a_pitch, ""),
        None => finding,
    };
    let finding = finding
        .with("area of the hole", "A", PI / 4.0 * d * d, "in2")
        .with("pitch at bore", "P", plate.pitch.to_inches(), "in")
        .with("barrel's thickness", "T", plate.thickness.to_inches(), "in")
        .with(
            "strength of rivets",
            "S1",
            rivets.strength.to_tonf_in2(),
            "tonf/in2",
        )
        .with(
            "strength of barrel",
            "S",
            plate.strength.to_tonf_in2(),
            "tonf/in2",
        )
        .provides(rivet_percent(plate, rivets), "%")
        .because("single shear, on the hole; judged under end_seam");
    finding.work_all(rivet_lines(plate, rivets))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// P 1 7/8, D 3/4, T 5/16, 26 and 23 tonf/in²: plate 100 × 1.125/1.875 = 60.0 %; rivet area 0.441786, 100 × 0.441786 × 23/
    /// (1.875 × 0.3125 × 26) = 66.7 %. In double shear 1.875 times that and not twice: 125.1 %.
    #[test]
    fn by_hand_single_lap() {
        let plate = JointPlate {
            pitch: Length::inches(1.875),
            thickness: Length::inches(0.3125),
            strength: Stress::tonf_in2(26.0),
        };
        let rivets = JointRivets {
            hole: Length::inches(0.75),
            in_a_pitch: 1.0,
            shear: 1.0,
            strength: Stress::tonf_in2(23.0),
        };
        assert_eq!(rounded(plate_percent(plate.pitch, rivets.hole), 1), "60.0");
        assert_eq!(rounded(rivet_percent(plate, rivets), 1), "66.7");
        let double = JointRivets {
            shear: DOUBLE_SHEAR,
            ..rivets
        };
        assert_eq!(rounded(rivet_percent(plate, double), 1), "125.1");
        // 100 (1.875 − 1.5)/1.875 = 20.0 and one rivet in shear, 66.7.
        assert_eq!(rounded(combined_percent(plate, rivets), 1), "86.7");
        // However many rivets a pitch has, it is one of the outer row that shears.
        let three = JointRivets {
            in_a_pitch: 3.0,
            ..rivets
        };
        assert_eq!(rounded(combined_percent(plate, three), 1), "86.7");
    }
}
