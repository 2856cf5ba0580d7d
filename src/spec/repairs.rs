//! What is to be welded on a plate that is kept.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::plate::{At, Material, PathStep, ViewFrom};
use crate::units::Size;

/// One weld repair of a kept plate.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Repair {
    /// What it is called on the sheets.
    pub name: String,
    /// What is welded.
    pub weld: RepairWeld,
    /// Printed in the table of repairs.
    pub remarks: Option<String>,
}

/// What is welded.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum RepairWeld {
    /// A wasted area of the flat, built up with weld metal.
    BuildUp(BuildUpSpec),
    /// A crack, cut out and welded.
    Crack(CrackSpec),
    /// A run of lines and arcs, such as the edge of a let-in piece.
    Line(WeldLineSpec),
    /// Cracks from rivet hole to rivet hole of the flange's joint.
    GirthCracks(GirthCracksSpec),
    /// The wasted caulking edge of the flange, built up.
    CaulkingEdge(CaulkingEdgeSpec),
}

/// A wasted area: a box of `width` and `height`, or a round one of `diameter`.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BuildUpSpec {
    /// Its middle.
    pub at: At,
    /// Width of a box.
    pub width: Option<Size>,
    /// Height of a box.
    pub height: Option<Size>,
    /// Diameter of a round area.
    pub diameter: Option<Size>,
    /// Least metal left in it; the least reading of the survey inside it where neither this nor `loss` is written.
    pub metal_left: Option<Size>,
    /// Most metal lost in it, in place of `metal_left`: what is left is the plate's thickness less this.
    pub loss: Option<Size>,
}

/// A crack, as found: from end to end.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CrackSpec {
    /// One end; at the edge of a hole where the crack starts from it.
    pub from: At,
    /// The other end.
    pub to: At,
}

/// A weld line: it closes on its start, or ends at the edge of a flat plate, or runs on over the heel and the flange.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WeldLineSpec {
    /// Where it starts.
    pub start: At,
    /// Each step to the next corner.
    pub steps: Vec<PathStep>,
    /// Both ends run on to the tangent, and from there square over the heel and so far along the straight of a pressed flange; of a piece
    /// let in, to its edge.
    pub over_flange: Option<Size>,
    /// The line is the edge of a piece let in: what it cuts off of the plate, the smaller part, is new metal.
    #[serde(default)]
    pub let_in: bool,
    /// What the piece let in is ordered as.
    pub piece: Option<PieceSpec>,
}

/// The new metal of a piece let in. What is not written is told as not given: it is not taken from the old plate.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PieceSpec {
    /// Thickness ordered.
    pub thickness: Option<Size>,
    /// What it is made of.
    pub material: Option<Material>,
    /// Face on which it lies flush with the old metal.
    pub flush_on: Option<ViewFrom>,
}

/// Cracks of a riveted joint, by count.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GirthCracksSpec {
    /// Cracks one after another from hole to hole, the longest run of them.
    pub longest_run: u32,
    /// Cracks from hole to hole in all.
    pub in_all: u32,
}

/// A stretch of caulking edge.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CaulkingEdgeSpec {
    /// Its length along the edge.
    pub length: Size,
    /// Least metal left between the rivet holes and the edge.
    pub metal_left: Option<Size>,
}
