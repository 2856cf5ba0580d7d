//! Pads and doubling rings: round pieces that thicken a plate round a hole.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::holes::Purpose;
use super::plate::{At, Material};
use crate::units::Size;

/// A round piece with or without a bore, cut as a part of its own.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Pad {
    /// What it is called, on the part and in the name of its file.
    pub name: String,
    /// Outside diameter, finished.
    pub diameter: Size,
    /// Bore of a ring, finished; a full disc where nothing is written.
    pub bore: Option<Size>,
    /// Thickness.
    pub thickness: Size,
    /// What it is made of; the plate's metal where nothing is written.
    pub material: Option<Material>,
    /// Holes in it.
    #[serde(default)]
    pub holes: Vec<PadHole>,
    /// How many are wanted; one where nothing is written.
    pub number_off: Option<u32>,
    /// Printed in the order note.
    pub remarks: Option<String>,
}

/// Holes of a pad, alike in size and purpose.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PadHole {
    /// What they are called.
    pub name: String,
    /// What they are for: `cutting.holes` says what is cut of them.
    pub purpose: Purpose,
    /// Finished hole.
    pub hole: Size,
    /// Where they are, from the middle of the pad, as seen on the face that is up.
    pub at: Vec<At>,
}
