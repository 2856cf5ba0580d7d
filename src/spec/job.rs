//! The job as the title block tells it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Who draws what for whom, at which issue.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Job {
    /// The works whose drawing this is: the legal owner in the title block.
    pub works: String,
    /// The engine or boiler the plate is for.
    pub engine: String,
    /// Drawing number, 16 characters at most: letters, figures and hyphens, since files are named by it.
    pub drawing: String,
    /// Revision index: A, B, C … without I and O.
    pub revision: String,
    /// What the plate is called in the title block; the kind of plate where nothing is written.
    pub title: Option<String>,
    /// Date of this issue, year-month-day. The program never reads a clock.
    pub issued: String,
    /// Who drew it.
    pub drawn_by: Option<String>,
    /// The unit of every bare number in the spec. A job that declares none accepts none.
    pub units: Option<Units>,
    /// Earlier and present issues, oldest first.
    #[serde(default)]
    pub revisions: Vec<Revision>,
}

/// The unit in which a job is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Units {
    /// Fractions of an inch on the sheets.
    Inches,
    /// Millimetres on the sheets.
    Millimetres,
}

/// One line of the revision table.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Revision {
    /// Its index.
    pub index: String,
    /// Its date, year-month-day.
    pub date: String,
    /// What changed.
    pub change: String,
    /// Who drew the change.
    pub drawn_by: Option<String>,
    /// The spec of that issue, by its path from the folder of this spec. What changed since the last issue so named is listed,
    /// and clouded on the sheets.
    pub spec: Option<String>,
}
