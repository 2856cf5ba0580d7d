//! Thickness as found: readings at their places, and what the works requires there.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::plate::{At, ViewFrom};
use crate::units::Size;

/// Thickness readings of a kept plate.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Survey {
    /// Day of the readings, `2026-11-16`.
    pub date: String,
    /// What they were taken with: kind and number of the instrument.
    pub instrument: String,
    /// Who took them.
    pub by: Option<String>,
    /// Side of the plate on which the instrument stood.
    pub face: Option<ViewFrom>,
    /// Thickness required, region by region; a reading takes the first region that holds it.
    #[serde(default)]
    pub required: Vec<RequiredThickness>,
    /// Readings, numbered on the sheets in this order.
    pub readings: Vec<ReadingSpec>,
}

/// Thickness that the works requires of a region: a box between two corners, or everywhere where no corner is written.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RequiredThickness {
    /// What the region is called.
    pub region: String,
    /// Thickness required.
    pub thickness: Size,
    /// Who says so.
    pub origin: String,
    /// One corner of the region; with `to`.
    pub from: Option<At>,
    /// The opposite corner.
    pub to: Option<At>,
}

/// One reading.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReadingSpec {
    /// Where.
    pub at: At,
    /// Thickness read.
    pub thickness: Size,
    /// Side of the plate on which the instrument stood, where it is not the survey's.
    pub face: Option<ViewFrom>,
    /// What it was taken with, where it is not the survey's.
    pub instrument: Option<String>,
}
