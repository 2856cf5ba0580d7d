//! What the works has decided: support, rules, limits, concessions, cutting and paper.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::holes::{NamedLine, Purpose};
use crate::units::{Size, Strength};

/// What counts as support of the flat plate. The works' statement; nothing is assumed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Support {
    /// The line along which the flange supports the flat.
    pub flange_line: NamedLine,
    /// Whether stays count.
    pub stays: bool,
    /// Whether tubes count.
    pub tubes: bool,
    /// Whether flues count.
    #[serde(default)]
    pub flues: bool,
    /// Allowances of the flat above the tubes that needs staying.
    pub above_tubes: Option<AboveTubes>,
    /// Who says so.
    pub origin: String,
}

impl Support {
    /// Whether holes of this purpose are taken to hold the plate.
    pub fn counts(&self, purpose: Purpose) -> bool {
        match purpose {
            Purpose::Stay => self.stays,
            Purpose::Tube => self.tubes,
            Purpose::Flue => self.flues,
            // A pipe, a plug, a fitting or a bolt holds the plate nowhere.
            Purpose::SteamPipe
            | Purpose::Plug
            | Purpose::Fitting
            | Purpose::Bolt
            | Purpose::FormerPin => false,
        }
    }
}

/// The band of plate above the tubes that needs staying.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AboveTubes {
    /// Height above the centres of the highest tubes that the tubes support.
    pub over_tubes: Size,
    /// Width inside the flange line that the flange supports.
    pub inside_flange: Size,
}

/// Limits of the works' own, each with its origin. They judge as the named rules do.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OwnLimits {
    /// Least ligament: a share of the hole, and so much more.
    pub tube_ligament: Option<LigamentLimit>,
    /// Least ratio of metal to pitch, 0.28 or so.
    pub ligament_efficiency: Option<RatioLimit>,
    /// Most clearance of a tube in its hole, on the diameter.
    pub tube_hole_clearance: Option<SizeLimit>,
    /// Least clear metal from hole edge to the flange line.
    pub land: Option<SizeLimit>,
    /// Least clear metal from a weld repair to the edge of a hole.
    pub weld_to_hole: Option<SizeLimit>,
    /// Least inside radius of the heel.
    pub flange_radius: Option<SizeLimit>,
    /// Least factor on the end load carried by the flange rivets.
    pub end_load_factor: Option<RatioLimit>,
    /// Most stress on the plate and constant of the largest-circle rule, from the code that the works holds.
    pub largest_circle: Option<CircleLimit>,
    /// Greatest pitch of rivets: so many thicknesses and so much more.
    pub rivet_pitch: Option<PitchLimit>,
}

/// Least ligament as `share_of_hole` × hole + `plus`.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LigamentLimit {
    /// Multiplies the finished hole.
    pub share_of_hole: f64,
    /// Added to that.
    pub plus: Size,
    /// Who says so.
    pub origin: String,
}

/// A limit on a length.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SizeLimit {
    /// The limit.
    pub limit: Size,
    /// Who says so.
    pub origin: String,
}

/// A limit on a plain number.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RatioLimit {
    /// The limit.
    pub limit: f64,
    /// Who says so.
    pub origin: String,
}

/// Constants of the largest-circle rule.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CircleLimit {
    /// The constant C by kind of support.
    pub constant: f64,
    /// Stress allowed.
    pub stress: Strength,
    /// Thickness left out of the sum.
    pub thickness_allowance: Size,
    /// Who says so.
    pub origin: String,
}

/// Greatest pitch as `thicknesses` × t + `plus`.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PitchLimit {
    /// Multiplies the plate's thickness.
    pub thicknesses: f64,
    /// Added to that.
    pub plus: Size,
    /// Who says so.
    pub origin: String,
}

/// A departure from a rule that somebody with the right to do so has agreed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Concession {
    /// The rule whose finding it concerns, as printed on the design check sheet.
    pub rule: String,
    /// Only the finding whose source or place holds these words; every one of the rule where nothing is written.
    pub only: Option<String>,
    /// The largest shortfall agreed, where the finding is a length: one that is further below stays below.
    pub up_to: Option<Size>,
    /// Who agreed.
    pub agreed_by: String,
    /// Letter or minute in which.
    pub reference: String,
    /// Why.
    pub reason: String,
}

/// Paper and habit of the sheets.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetWishes {
    /// Paper of the sheets that show the plate. Sheets of words and records go on A3 or A4, whichever takes less
    /// paper; on A4 alone where this is A4.
    #[serde(default)]
    pub paper: Paper,
    /// Millimetres as well as the job's inches in the tables.
    #[serde(default)]
    pub both_units: bool,
    /// Notes of the works, printed numbered on the general arrangement.
    #[serde(default)]
    pub notes: Vec<String>,
    /// Points at which work stops until somebody has signed.
    #[serde(default)]
    pub hold_points: Vec<String>,
    /// Full-size templates of the face, in tiles of the job's paper.
    #[serde(default)]
    pub templates: bool,
}

/// Size of paper: A4 upright, the larger ones landscape.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Paper {
    /// 210 × 297 mm, upright: every sheet of a small plate goes on it.
    A4,
    /// 420 × 297 mm.
    #[default]
    A3,
    /// 594 × 420 mm.
    A2,
    /// 841 × 594 mm.
    A1,
    /// 1189 × 841 mm.
    A0,
}
