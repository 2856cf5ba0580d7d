//! What a rule found.

use crate::spec::Concession;

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
    /// What came of it.
    pub verdict: Verdict,
    /// A sentence for the sheet: what was compared, or what the note says.
    pub why: String,
    /// The arithmetic line by line, in the source's own units, so that it can be repeated by hand.
    pub working: Vec<String>,
}
