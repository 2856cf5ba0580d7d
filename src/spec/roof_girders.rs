//! Girders of a firebox roof that bear on the tube plate.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::units::{Size, Strength};

/// Roof girders whose ends bear on this plate and press it down. The works' statement; nothing is assumed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RoofGirders {
    /// Length of the firebox inside, at the top.
    pub firebox_length: Size,
    /// Who says that they bear here, and where the length comes from.
    pub origin: String,
    /// Where the side plates carry a share of the load.
    pub side_plates: Option<SidePlates>,
}

/// Side plates that carry a share of the roof girders' load.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SidePlates {
    /// Nominal compression that is left on the tube plate, as the works has worked it out.
    pub compression: Option<Strength>,
    /// Who says so.
    pub origin: String,
}
