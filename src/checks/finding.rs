//! What a rule found.

use super::as_read::ReadIn;
use super::measure::Unit;
use crate::spec::Concession;
use crate::units::tolerance::SAME_SHARE;
use crate::units::{Length, Stress};

/// A published rule, or a limit of the works.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    /// As cited on the sheet: "Indian Boiler Regulations 1950, regulation 580".
    pub cite: &'static str,
    /// The rule set it belongs to, as `judged_by` names it: "Indian Boiler Regulations 1950".
    pub set: &'static str,
    /// How far the text could be read: printed in DEVELOPERS and `explain`, not on the sheet.
    pub standing: Standing,
}

/// How a source's figure was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// In the source or an official copy.
    Read,
    /// In someone else's restatement.
    Restated,
    /// Entered by the works in the spec.
    Works,
    /// Plain geometry or mechanics; nothing to cite.
    Geometry,
}

/// A figure that went into a comparison, in the unit the rule works in.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// The trade's name for it: "finished hole".
    pub name: String,
    /// Its symbol in the rule's formula, empty where it has none.
    pub symbol: &'static str,
    /// Its value.
    pub value: f64,
    /// The unit of the value: "in", "mm", "psi", "tonf/in2", "" for a plain number.
    pub unit: &'static str,
}

/// What came of a comparison.
#[derive(Clone, Debug)]
pub enum Verdict {
    /// As much as the rule asks, or more.
    Meets,
    /// Less than the rule asks, by this much in the finding's unit.
    Below {
        /// The shortfall.
        by: f64,
    },
    /// Less than the rule asks, and somebody has agreed to it.
    Conceded {
        /// The shortfall.
        by: f64,
        /// Who agreed to what.
        concession: Concession,
    },
    /// Not judged: a figure is missing, or no rule that judges this job covers it.
    NotJudged {
        /// What is missing, with the key that would settle it.
        why: String,
    },
    /// Worth saying; judges nothing.
    Note,
}

impl Verdict {
    /// As printed and as `results.json` has it.
    pub fn name(&self) -> &'static str {
        match self {
            Verdict::Meets => "meets",
            Verdict::Below { .. } => "below",
            Verdict::Conceded { .. } => "conceded",
            Verdict::NotJudged { .. } => "not judged",
            Verdict::Note => "note",
        }
    }
}

/// One comparison of the design with one rule.
#[derive(Clone, Debug)]
pub struct Finding {
    /// Name of the rule: `tube_ligament`.
    pub rule: &'static str,
    /// What it asks, in words: "metal between tube holes".
    pub asks: &'static str,
    /// Where the rule comes from, as printed.
    pub source: String,
    /// The rule set that the source belongs to, as `judged_by` names it; [`super::source::WORKS_SET`] for a limit of the works'
    /// own, which always judges; empty for a figure that no rule set can be asked to judge.
    pub set: &'static str,
    /// Where on the plate: "T12–T19, diagonal".
    pub place: String,
    /// What went in.
    pub inputs: Vec<Input>,
    /// What the rule requires, in `unit`.
    pub required: Option<f64>,
    /// What the plate provides, in `unit`.
    pub provided: Option<f64>,
    /// Unit of both.
    pub unit: &'static str,
    /// Whether `required` is the most allowed rather than the least.
    pub at_most: bool,
    /// Whether both are pressures rather than stresses, which are read in another unit.
    pub is_pressure: bool,
    /// The units that its job reads figures in; the rule's own where nothing is said.
    pub read_in: Option<ReadIn>,
    /// What came of it.
    pub verdict: Verdict,
    /// A sentence for the sheet: what was compared, or what the note says.
    pub why: String,
    /// The arithmetic line by line, in the source's own units, so that it can be repeated by hand.
    pub working: Vec<String>,
}

impl Finding {
    /// The same, with a figure that went in.
    pub fn with(
        mut self,
        name: impl Into<String>,
        symbol: &'static str,
        value: f64,
        unit: &'static str,
    ) -> Finding {
        self.inputs.push(Input {
            name: name.into(),
            symbol,
            value,
            unit,
        });
        self
    }

    /// The same, with a length that went in, in this unit.
    pub fn with_length(
        self,
        name: impl Into<String>,
        symbol: &'static str,
        length: Length,
        unit: Unit,
    ) -> Finding {
        self.with(name, symbol, unit.of(length), unit.name())
    }

    /// The same, with a further line of working.
    pub fn work(mut self, line: impl Into<String>) -> Finding {
        self.working.push(line.into());
        self
    }

    /// The same, with several more.
    pub fn work_all(mut self, lines: impl IntoIterator<Item = String>) -> Finding {
        self.working.extend(lines);
        self
    }

    /// The same, with the sentence for the sheet.
    pub fn because(mut self, why: impl Into<String>) -> Finding {
        self.why = why.into();
        self
    }

    /// Compares two lengths, the provided one to be no less; both reported in `unit`. Equal meets.
    pub fn at_least_length(mut self, required: Length, provided: Length, unit: Unit) -> Finding {
        self.required = Some(unit.of(required));
        self.provided = Some(unit.of(provided));
        self.unit = unit.name();
        self.verdict = verdict_of(provided.shortfall(required).map(|by| unit.of(by)));
        self
    }

    /// Compares two lengths, the provided one to be no more; both reported in `unit`. Equal meets.
    pub fn at_most_length(mut self, most: Length, provided: Length, unit: Unit) -> Finding {
        self.required = Some(unit.of(most));
        self.provided = Some(unit.of(provided));
        self.unit = unit.name();
        self.at_most = true;
        self.verdict = verdict_of(most.shortfall(provided).map(|by| unit.of(by)));
        self
    }

    /// Compares two figures that are not lengths, the provided one to be no less. Equal meets.
    pub fn at_least(mut self, required: f64, provided: f64, unit: &'static str) -> Finding {
        self.required = Some(required);
        self.provided = Some(provided);
        self.unit = unit;
        self.verdict = verdict_of(short_by(provided, required));
        self
    }

    /// Compares two pressures, the provided one to be no less; both reported in the rule's unit, psi or N/mm2. Equal meets.
    pub fn at_least_pressure(
        self,
        required: Stress,
        provided: Stress,
        unit: &'static str,
    ) -> Finding {
        let of = |pressure: Stress| match unit {
            "psi" => pressure.to_psi(),
            _ => pressure.to_n_mm2(),
        };
        let mut finding = self.at_least(of(required), of(provided), unit);
        finding.is_pressure = true;
        finding
    }

    /// Compares two figures that are not lengths, the provided one to be no more. Equal meets.
    pub fn at_most(mut self, most: f64, provided: f64, unit: &'static str) -> Finding {
        self.required = Some(most);
        self.provided = Some(provided);
        self.unit = unit;
        self.at_most = true;
        self.verdict = verdict_of(short_by(most, provided));
        self
    }

    /// Not judged, for want of a figure or of a rule. What was said before stands first.
    pub fn not_judged(mut self, why: impl Into<String>) -> Finding {
        self.why = join(&self.why, &why.into());
        self.verdict = Verdict::NotJudged {
            why: self.why.clone(),
        };
        self
    }

    /// The same, with one more thing to say.
    pub fn also(mut self, word: impl AsRef<str>) -> Finding {
        self.why = join(&self.why, word.as_ref());
        self
    }

    /// A note: a figure that nothing is compared with.
    pub fn provides(mut self, provided: f64, unit: &'static str) -> Finding {
        self.provided = Some(provided);
        self.unit = unit;
        self.verdict = Verdict::Note;
        self
    }

    /// A note on a length.
    pub fn provides_length(self, provided: Length, unit: Unit) -> Finding {
        self.provides(unit.of(provided), unit.name())
    }

    /// Whether it keeps the cut files back.
    pub fn is_below(&self) -> bool {
        matches!(self.verdict, Verdict::Below { .. })
    }
}

/// Two sentences, the first of which may be empty.
fn join(first: &str, second: &str) -> String {
    if first.is_empty() {
        second.to_string()
    } else {
        format!("{first}; {second}")
    }
}

fn verdict_of(short: Option<f64>) -> Verdict {
    match short {
        None => Verdict::Meets,
        Some(by) => Verdict::Below { by },
    }
}

/// By how much a figure falls short of another; nothing where it is equal, as far as the rounding of a formula can tell.
fn short_by(provided: f64, required: f64) -> Option<f64> {
    let short = required - provided;
    (short > SAME_SHARE * required.abs().max(provided.abs())).then_some(short)
}

#[cfg(test)]
mod tests {
    use crate::checks::tube_ligament::RULE;

    /// Equal meets, nought with nought among it, and so does what only the rounding of a sum sets apart: 1,000,000 and a
    /// hundred-thousandth less. A thousandth of the figure is no rounding.
    #[test]
    fn holds_equal_meets() {
        let least =
            |required: f64, provided: f64| RULE.finding("here").at_least(required, provided, "psi");
        for (required, provided) in [(0.0, 0.0), (160.0, 160.0), (1e6, 1e6 - 1e-5), (1e-3, 2e-3)] {
            let finding = least(required, provided);
            assert!(
                !finding.is_below() && finding.verdict.name() == "meets",
                "{required}"
            );
        }
        for (required, provided) in [(160.0, 159.84), (1e-3, 0.999e-3), (0.0, -1.0)] {
            assert!(least(required, provided).is_below(), "{required}");
        }
        let most = |most: f64, provided: f64| RULE.finding("here").at_most(most, provided, "psi");
        assert!(most(160.0, 160.16).is_below() && !most(160.0, 159.0).is_below());
    }
}
