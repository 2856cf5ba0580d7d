//! The shop's drilling machine, as far as the plate must leave it room.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::units::Size;

/// The drilling machine that goes on the plate.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Drilling {
    /// From its spindle to the outside of its body: a hole nearer to the flange than this is drilled from the plain side.
    pub body_radius: Size,
    /// Who says so.
    pub origin: String,
}
