//! A finding's figures as they are read on the screen, the sheets and the page: in the job's units, whatever the source works in.
//!
//! The working of a rule stays in its source's own units, so that it can be repeated line by line; so do `results.json` and
//! `explain`. Only what is laid beside what, required beside provided, is told in the unit that the shop measures in.

use super::measure::{Unit, figure, places_of, rounded, shown, with_unit};
use super::{Finding, Verdict};
use crate::spec::Written;

use crate::units::{Length, NEWTONS_PER_LBF, SQUARE_MM_PER_SQUARE_INCH, Stress};

/// The units in which a job's figures are read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ReadIn {
    length: Unit,
    pressure: &'static str,
}

impl ReadIn {
    /// Lengths, areas, stresses and forces go by the job's unit; pressures by the unit that the working pressure was written in.
    pub fn of_job(written: &Written) -> ReadIn {
        let length = Unit::of_job(written);
        let usual = match length {
            Unit::Inch => "psi",
            Unit::Mm => "bar",
        };
        let pressure = written.working_pressure.as_ref().map_or(usual, |pressure| {
            let as_written = pressure.as_written();
            let own = ["psi", "bar", "N/mm2"];
            own.into_iter()
                .find(|unit| as_written.contains(unit))
                .unwrap_or(usual)
        });
        ReadIn { length, pressure }
    }

    /// A pressure in psi, and behind it in the unit that the job reads pressures in where that is another.
    pub(super) fn pressure_beside_psi(self, pressure: Stress) -> String {
        let psi = format!("{} psi", rounded(pressure.to_psi(), 1));
        let (value, unit) = self.turn(pressure.to_psi(), "psi", true);
        match unit {
            "psi" => psi,
            _ => format!("{psi} ({})", shown(value, unit)),
        }
    }

    /// A figure of this unit as the job reads it; a figure that is no measure, and one that no other unit is known for, stays.
    fn turn(self, value: f64, unit: &'static str, is_pressure: bool) -> (f64, &'static str) {
        let square_inch = SQUARE_MM_PER_SQUARE_INCH;
        let square_foot = 144.0 * square_inch;
        let to = |wanted: &'static str, value: f64| (value, wanted);
        let stress = match unit {
            "psi" => Some(Stress::psi(value)),
            "N/mm2" => Some(Stress::n_mm2(value)),
            _ => None,
        };
        if let Some(stress) = stress {
            let wanted = match (is_pressure, self.length) {
                (true, _) => self.pressure,
                (false, Unit::Inch) => "psi",
                (false, Unit::Mm) => "N/mm2",
            };
            return match wanted {
                same if same == unit => (value, unit),
                "bar" => to("bar", stress.to_bar()),
                "psi" => to("psi", stress.to_psi()),
                _ => to("N/mm2", stress.to_n_mm2()),
            };
        }
        match (self.length, unit) {
            (Unit::Mm, "in") => to("mm", Length::inches(value).to_mm()),
            (Unit::Inch, "mm") => to("in", Length::mm(value).to_inches()),
            (Unit::Mm, "in2") => to("mm2", value * square_inch),
            (Unit::Inch, "mm2") => to("in2", value / square_inch),
            (Unit::Mm, "ft2") => to("m2", value * square_foot / 1e6),
            (Unit::Mm, "lb") => to("kN", value * NEWTONS_PER_LBF / 1e3),
            _ => (value, unit),
        }
    }
}

/// The figures of a finding as a table shows them, each with its unit; none where the finding has no such figure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AsRead {
    /// What the rule asks, without its bound.
    pub required: Option<String>,
    /// What the plate has.
    pub provided: Option<String>,
    /// What it has over, with its sign; a shortfall is never nought.
    pub margin: Option<String>,
}

impl Finding {
    /// The same, read in the units of a job.
    pub fn read_in(mut self, units: ReadIn) -> Finding {
        self.read_in = Some(units);
        self
    }

    /// A last line of working that restates what came of it in the units of its job, where it was worked in others; none where they
    /// are the same or where nothing was worked.
    pub fn restated(&self) -> Option<String> {
        let units = self.read_in?;
        let provided = self.provided.filter(|_| !self.working.is_empty())?;
        let turned = |value: f64| units.turn(value, self.unit, self.is_pressure);
        let unit = turned(provided).1;
        // A length may be reported in the job's unit and worked in the source's inches.
        let in_inches = unit == "mm" && self.working.iter().any(|line| line.ends_with(" in"));
        if unit == self.unit && !in_inches {
            return None;
        }
        let as_read = self.as_read();
        let both = |value: f64, read: Option<String>| {
            let read = read.unwrap_or_default();
            match unit == self.unit {
                true => read,
                false => format!("{} = {read}", with_unit(figure(value), self.unit)),
            }
        };
        let has = both(provided, as_read.provided);
        Some(match self.required {
            Some(required) => {
                let bound = if self.at_most { "at most" } else { "at least" };
                let asked = both(required, as_read.required);
                format!("in {}: {bound} {asked}; has {has}", spelt(unit))
            }
            None => format!("in {}: {has}", spelt(unit)),
        })
    }

    /// Its figures in the units of its job. Two that differ are written to as many places as it takes to see it.
    pub fn as_read(&self) -> AsRead {
        let turn = |value: f64| match self.read_in {
            Some(units) => units.turn(value, self.unit, self.is_pressure),
            None => (value, self.unit),
        };
        let unit = turn(0.0).1;
        let one = |value: f64| shown(turn(value).0, unit);
        let (Some(required), Some(provided)) = (self.required, self.provided) else {
            return AsRead {
                required: self.required.map(one),
                provided: self.provided.map(one),
                margin: None,
            };
        };
        let (required, provided) = (turn(required).0, turn(provided).0);
        // A shortfall is a difference: no unit here has its nought elsewhere, so it turns like any figure.
        let short = match self.verdict {
            Verdict::Below { by } | Verdict::Conceded { by, .. } => Some(turn(by).0),
            Verdict::Meets | Verdict::NotJudged { .. } | Verdict::Note => None,
        };
        let places = places_apart(required, provided, unit, short.is_some());
        let text = |value: f64, places: usize| with_unit(rounded(value, places), unit);
        let margin = match short {
            Some(by) => format!("−{}", text(by, places_apart(by, 0.0, unit, true))),
            None => {
                let over = if self.at_most {
                    required - provided
                } else {
                    provided - required
                };
                match text(over, places_of(unit)) {
                    words if words.starts_with('−') => words,
                    words => format!("+{words}"),
                }
            }
        };
        AsRead {
            required: Some(text(required, places)),
            provided: Some(text(provided, places)),
            margin: Some(margin),
        }
    }
}

/// Places at which two figures of this unit are seen to differ: rounding must not hide a shortfall. Two that are still alike at
/// seven places are one but for the rounding of their sums, unless one is known to fall short of the other.
fn places_apart(one: f64, other: f64, unit: &str, differ: bool) -> usize {
    let most = if differ { 15 } else { 7 };
    let usual = places_of(unit);
    let alike = |places: &usize| rounded(one, *places) == rounded(other, *places);
    (usual..=most)
        .find(|places| !alike(places))
        .unwrap_or(usual)
}

/// A unit as a word of a sentence.
fn spelt(unit: &str) -> String {
    match unit {
        "in" => "inches".into(),
        _ => with_unit(String::new(), unit).trim().into(),
    }
}

#[cfg(test)]
mod tests {
    use super::super::{breathing_space, longitudinal_stay, stay_stress, tube_ligament};
    use super::*;

    const METRIC: ReadIn = ReadIn {
        length: Unit::Mm,
        pressure: "bar",
    };
    const IMPERIAL: ReadIn = ReadIn {
        length: Unit::Inch,
        pressure: "psi",
    };

    fn words(finding: Finding) -> [String; 3] {
        let read = finding.as_read();
        [read.required, read.provided, read.margin].map(Option::unwrap_or_default)
    }

    /// 1 in is 25.4 mm; 1.2222 in is 31.044 mm, 5.644 over. 40 mm is 1.5748 in; 70.47 mm is 2.7744 in; 1.1996 over.
    #[test]
    fn by_hand_lengths_stand_in_the_unit_of_the_job() {
        let stay = longitudinal_stay::RULE
            .finding("stays")
            .at_least(1.0, 1.2222, "in");
        let space = breathing_space::RULE
            .finding("rim")
            .at_least(40.0, 70.47, "mm");
        assert_eq!(
            words(stay.clone().read_in(METRIC)),
            ["25.400 mm", "31.044 mm", "+5.644 mm"]
        );
        assert_eq!(
            words(stay.read_in(IMPERIAL)),
            ["1.0000 in", "1.2222 in", "+0.2222 in"]
        );
        assert_eq!(
            words(space.read_in(IMPERIAL)),
            ["1.5748 in", "2.7744 in", "+1.1996 in"]
        );
    }

    /// 1 psi is 0.0689476 bar and 0.00689476 N/mm²: 180 psi is 12.41 bar, 228 psi 15.72 bar, 3.31 over; a stress of 8,174 psi is
    /// 56.358 N/mm² and 9,000 psi 62.053, 5.695 under it.
    #[test]
    fn by_hand_a_pressure_is_no_stress() {
        let psi = Stress::psi;
        let pressure = longitudinal_stay::RULE
            .finding("stays")
            .at_least_pressure(psi(180.0), psi(228.0), "psi")
            .read_in(METRIC);
        assert_eq!(words(pressure), ["12.41 bar", "15.72 bar", "+3.31 bar"]);
        let stress = stay_stress::RULE
            .finding("stays")
            .at_most(9000.0, 8174.0, "psi")
            .read_in(METRIC);
        assert_eq!(
            words(stress),
            ["62.053 N/mm²", "56.358 N/mm²", "+5.695 N/mm²"]
        );
    }

    /// 1 in² is 645.16 mm² and 1 ft² 0.09290304 m², both exact; 1 lbf is 4.4482216 N; 1 N/mm² is 145.03774 psi and 10 bar (NIST SP 811,
    /// appendix B.8). 10 and 12 in²: 6,451.60 and 7,741.92 mm², 1,290.32 over; 1,290.32 and 645.16 mm²: 2 and 1 in². 100 and 150 ft²:
    /// 9.290 and 13.935 m², 4.645 over. 10,000 and 15,000 lbf: 44.48 and 66.72 kN, 22.24 over.
    #[test]
    fn published_areas_and_forces_in_the_other_unit() {
        let read = |required, provided, unit, units| {
            words(
                stay_stress::RULE
                    .finding("stays")
                    .at_least(required, provided, unit)
                    .read_in(units),
            )
        };
        assert_eq!(
            read(10.0, 12.0, "in2", METRIC),
            ["6,451.6 mm²", "7,741.9 mm²", "+1,290.3 mm²"]
        );
        assert_eq!(
            read(645.16, 1290.32, "mm2", IMPERIAL),
            ["1.000 in²", "2.000 in²", "+1.000 in²"]
        );
        assert_eq!(
            read(100.0, 150.0, "ft2", METRIC),
            ["9.29 m²", "13.94 m²", "+4.65 m²"]
        );
        assert_eq!(
            read(10_000.0, 15_000.0, "lb", METRIC),
            ["44.5 kN", "66.7 kN", "+22.2 kN"]
        );
        assert_eq!(
            read(100.0, 150.0, "ft2", IMPERIAL),
            ["100 ft²", "150 ft²", "+50 ft²"]
        );
    }

    /// A stress of 50 N/mm² is 7,252 psi and one of 60 is 8,702; a pressure of 1.2 N/mm² is 12 bar or 174 psi, and one of 1.6 is 16 bar
    /// or 232 psi: 145.03774 psi to the N/mm² (NIST SP 811, appendix B.8).
    #[test]
    fn published_newtons_in_pounds_and_bar() {
        let stress = stay_stress::RULE
            .finding("stays")
            .at_least(50.0, 60.0, "N/mm2")
            .read_in(IMPERIAL);
        assert_eq!(words(stress), ["7,252 psi", "8,702 psi", "+1,450 psi"]);
        let pressure = longitudinal_stay::RULE.finding("stays").at_least_pressure(
            Stress::n_mm2(1.2),
            Stress::n_mm2(1.6),
            "N/mm2",
        );
        assert_eq!(
            words(pressure.clone().read_in(IMPERIAL)),
            ["174 psi", "232 psi", "+58 psi"]
        );
        assert_eq!(
            words(pressure.read_in(METRIC)),
            ["12.00 bar", "16.00 bar", "+4.00 bar"]
        );
    }

    /// What stands in the job's own unit already is not turned there and back: every figure keeps its last digit.
    #[test]
    fn unchanged_figures_of_the_jobs_own_unit() {
        for tenths in 1..5000 {
            let value = f64::from(tenths) / 10.0;
            for (units, unit, is_pressure) in [
                (IMPERIAL, "psi", true),
                (IMPERIAL, "psi", false),
                (METRIC, "N/mm2", false),
            ] {
                assert_eq!(units.turn(value, unit, is_pressure), (value, unit));
            }
        }
    }

    /// A plate of 20 mm for 25.4 where nothing judges it: 5.4 under, said once with one sign.
    #[test]
    fn by_hand_a_note_that_falls_short_has_one_sign() {
        let mut note = tube_ligament::RULE
            .finding("here")
            .at_least(25.4, 20.0, "mm");
        note.verdict = Verdict::Note;
        assert_eq!(words(note), ["25.400 mm", "20.000 mm", "−5.400 mm"]);
    }

    /// A ten-thousandth of a millimetre short, 0.0000039 in: 17.575/25.4 = 0.6919291 and 17.5749/25.4 = 0.6919252, which are alike at
    /// the usual fourth place of an inch, and at the fifth.
    #[test]
    fn by_hand_a_shortfall_shows_in_the_other_unit() {
        let short = tube_ligament::RULE
            .finding("T1–T2")
            .at_least(17.575, 17.5749, "mm")
            .read_in(IMPERIAL);
        assert_eq!(words(short), ["0.691929 in", "0.691925 in", "−0.000004 in"]);
    }

    /// Whatever falls short by a part in a thousand million never prints the figure that it falls short of, in any unit.
    #[test]
    fn holds_no_shortfall_prints_equal_figures() {
        for (unit, required) in [
            ("in", 0.73046875),
            ("mm", 17.575),
            ("psi", 180.0),
            ("in2", 0.286),
        ] {
            for share in [1e-3, 1e-6, 1e-8] {
                for units in [METRIC, IMPERIAL] {
                    let finding = tube_ligament::RULE
                        .finding("here")
                        .at_least(required, required * (1.0 - share), unit)
                        .read_in(units);
                    assert!(finding.is_below());
                    let [asks, has, margin] = words(finding);
                    assert_ne!(asks, has, "{unit}, {share}");
                    assert!(
                        margin.starts_with('−') && margin.contains(|c| ('1'..='9').contains(&c))
                    );
                }
            }
        }
    }
}
