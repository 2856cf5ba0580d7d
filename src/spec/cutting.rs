//! What the contractor cuts, how, and by whose figures.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::units::Size;

/// How the contractor cuts, and what the works lets him cut.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Cutting {
    /// The process.
    pub process: Process,
    /// Where the settings below come from.
    pub origin: String,
    /// Starting figures of this process for whatever is not written here: printed as such wherever they are used, and to be
    /// confirmed by the works. None is taken unless it is named.
    pub starting_figures: Option<Process>,
    /// What is cut of each purpose of hole; a pop where nothing is written.
    #[serde(default)]
    pub holes: Vec<HolePolicy>,
    /// What is cut of the flange's rivet holes: nothing, since they are drilled once the flange has its form.
    pub rivets: Option<HoleCut>,
    /// Metal left in every hole cut undersize whose policy gives no figure of its own.
    pub hole_allowance: Option<HoleAllowance>,
    /// Metal left on outside edges for dressing.
    pub dress_outside: Option<Size>,
    /// Metal left on inside edges other than holes: the bore of a pad.
    pub dress_inside: Option<Size>,
    /// What is made of a sharp corner that points into the metal: no process leaves one.
    pub corner_relief: Option<CornerRelief>,
    /// How a centre pop is drawn in the cut file.
    #[serde(default)]
    pub pop: PopMark,
    /// Least hole that the process makes clean.
    pub least_hole: Option<Size>,
    /// The same in thicknesses of the plate; where both are written the larger holds.
    pub least_hole_thicknesses: Option<f64>,
    /// Least metal that the process leaves sound between two cuts.
    pub least_web: Option<Size>,
    /// The same in thicknesses of the plate; where both are written the larger holds.
    pub least_web_thicknesses: Option<f64>,
    /// Least metal that the process leaves sound between a hole and the edge; that between two cuts where nothing is written.
    pub least_edge: Option<Size>,
    /// The same in thicknesses of the plate; where both are written the larger holds.
    pub least_edge_thicknesses: Option<f64>,
    /// Where the two former pins go: centres of tubes that will later be drilled there.
    #[serde(default)]
    pub former_pins: Vec<super::plate::At>,
    /// Width and height of the plate that the blank or the plate is cut from.
    pub stock: Option<super::plate::At>,
    /// Metal kept all round the part on that plate.
    pub stock_margin: Option<Size>,
    /// Which way the plate was rolled, as the part lies in its file; where nothing is written the cutter stamps an
    /// arrow as he finds it.
    pub rolling: Option<Rolling>,
    /// Templates as parts of their own: heel gauge and former outline, or the check of the ring's curve.
    #[serde(default)]
    pub templates: bool,
    /// Thickness of the sheet that the templates are cut from.
    pub template_thickness: Option<Size>,
    /// What the contractor is told besides.
    #[serde(default)]
    pub order: Order,
}

/// Metal left in a hole that is cut undersize: three figures that add up, each on one side of the hole, with their origin.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HoleAllowance {
    /// Edge to be removed: what the process has hardened or torn.
    pub edge: Size,
    /// Taper of the cut.
    pub taper: Size,
    /// How far off its place the cut may stand.
    pub position: Size,
    /// Who says so.
    pub origin: String,
}

/// What is made of a sharp corner that points into the metal.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CornerRelief {
    /// What is made there.
    pub shape: CornerShape,
    /// Its radius; with `radius` and `relief`.
    pub radius: Option<Size>,
    /// Who says so.
    pub origin: String,
}

/// What is made of a sharp corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum CornerShape {
    /// The corner is rounded, and metal left in it.
    Radius,
    /// A round notch about the corner, cut into the metal.
    Relief,
    /// Nothing: a plate with such a corner is refused.
    None,
}

/// The way a plate was rolled, as the part lies in its file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Rolling {
    /// From bottom to top.
    Upright,
    /// From left to right.
    Across,
}

/// What the order note tells the contractor besides the part itself. What is not written is printed as not stated.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Order {
    /// How many of each part; one where nothing is written.
    pub number_off: Option<u32>,
    /// Least thickness of the plate supplied.
    pub thickness_least: Option<Size>,
    /// Least thickness of the bar that the ring is rolled from, as supplied.
    pub ring_thickness_least: Option<Size>,
    /// Least thickness of the plate that pads and doubling rings are cut from, as supplied.
    pub pad_thickness_least: Option<Size>,
    /// Class of tolerance on thickness, and flatness, as ordered.
    pub plate_tolerance: Option<String>,
    /// Condition of the cut edges: quality class, dross, what is ground.
    pub edges: Option<String>,
    /// Tolerance of the outline.
    pub outline_tolerance: Option<String>,
    /// Tolerance of holes, on the size as cut.
    pub hole_tolerance: Option<String>,
    /// Tolerance of pops and scribed lines.
    pub mark_tolerance: Option<String>,
    /// How the parts are packed and delivered.
    pub delivery: Option<String>,
    /// Whom to ask.
    pub contact: Option<String>,
    /// Earlier issues of this drawing that are withdrawn.
    #[serde(default)]
    pub withdrawn: Vec<String>,
}

/// A cutting process.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Process {
    /// Plasma arc.
    #[serde(rename = "plasma")]
    Plasma,
    /// Oxygen and fuel gas.
    #[serde(rename = "oxy-fuel")]
    OxyFuel,
    /// Laser.
    #[serde(rename = "laser")]
    Laser,
    /// Abrasive waterjet.
    #[serde(rename = "waterjet")]
    Waterjet,
    /// Nothing is cut but by drilling at the works.
    #[serde(rename = "drill only")]
    DrillOnly,
}

impl Process {
    /// As printed and as file names have it.
    pub fn name(self) -> &'static str {
        match self {
            Process::Plasma => "plasma",
            Process::OxyFuel => "oxy-fuel",
            Process::Laser => "laser",
            Process::Waterjet => "waterjet",
            Process::DrillOnly => "drill only",
        }
    }

    /// Whether it cuts by heat, and so leaves a hardened edge.
    pub fn is_thermal(self) -> bool {
        match self {
            Process::Plasma | Process::OxyFuel | Process::Laser => true,
            Process::Waterjet | Process::DrillOnly => false,
        }
    }
}

/// What is cut of one purpose of hole.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HolePolicy {
    /// Holes of this purpose.
    pub purpose: super::holes::Purpose,
    /// What is cut.
    pub cut: HoleCut,
    /// With `undersize`: how much smaller on the diameter.
    pub under: Option<Size>,
    /// With `undersize`, instead of `under`: the metal left on each side, figure by figure.
    pub allowance: Option<HoleAllowance>,
    /// Guide pin of the cutter that makes these holes: a pilot larger than it is worse than none, and becomes a pop.
    pub guide_pin: Option<Size>,
}

/// What the contractor makes of a hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum HoleCut {
    /// Cut smaller, to be bored or reamed at the works.
    Undersize,
    /// Cut to its finished size.
    Finish,
    /// A centre pop only.
    Pop,
    /// Nothing.
    Nothing,
}

/// How a pop is drawn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum PopMark {
    /// A small cross of two lines.
    #[default]
    Cross,
    /// A point, for machines that take one.
    Point,
}
