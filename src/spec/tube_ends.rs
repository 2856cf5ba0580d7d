//! The other end of the tubes, and the door through which they are drawn.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::plate::{Allowance, At};
use crate::units::Size;

/// The holes of a nest in the plate at the other end of the boiler, in the axes of this plate: the same x right and y up.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OtherEnd {
    /// Where they lie.
    pub places: OtherPlaces,
    /// Finished hole there.
    pub hole: Size,
    /// Outside diameter of the tube where it sits there (swaged or enlarged); the body's where nothing is written.
    pub tube_end: Option<Size>,
}

/// How the holes of the other end are told.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum OtherPlaces {
    /// The same lines and numbers as this end at another spacing and pitch.
    Pattern(OtherLines),
    /// As at this end, but lower by so much (higher where it is below nothing).
    Lowered(Size),
    /// Every hole by its place, in any order; each belongs to the tube of this end that is nearest.
    Points(Vec<At>),
}

/// The pattern of this end, set out at the other at another pitch.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OtherLines {
    /// Where the place that this end's pattern calls `through` lies at the other end.
    pub through: At,
    /// From one line to the next; as at this end where nothing is written.
    pub spacing: Option<Size>,
    /// From hole to hole along a line; as at this end where nothing is written.
    pub pitch: Option<Size>,
}

/// How tubes are drawn out through the smokebox.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Withdrawal {
    /// The door's opening.
    pub door: Door,
    /// Clear strip wanted all round the end of a tube as it is drawn out, scale and hands allowed for, with its origin.
    pub clearance: Allowance,
    /// What else stands in the road at the smokebox front: blast pipe, steam pipes, header.
    #[serde(default)]
    pub obstructions: Vec<Obstruction>,
}

/// A round opening.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Door {
    /// Its centre, in the axes of the plate.
    pub centre: At,
    /// Diameter of the clear opening.
    pub diameter: Size,
    /// From the face of this plate to the opening, for tubes that slope; where nothing is written tubes are taken to come out
    /// square to the plate.
    pub distance: Option<Size>,
}

/// Something in the road of the tubes: a circle, or a box between two corners.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Obstruction {
    /// What it is.
    pub name: String,
    /// Centre of a circle; with `diameter`.
    pub centre: Option<At>,
    /// Diameter of the circle.
    pub diameter: Option<Size>,
    /// One corner of a box; with `to`.
    pub from: Option<At>,
    /// The opposite corner of the box.
    pub to: Option<At>,
}
