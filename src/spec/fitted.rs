//! What is fitted to a hole: nuts and washers of a stay, a plug, a joint face, a pad, the bead of a tube.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::plate::ViewFrom;
use crate::units::Size;

/// A hexagon nut.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Nut {
    /// Across its flats.
    pub across_flats: Size,
    /// Thickness along the stay.
    pub thickness: Size,
}

/// A round washer.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Washer {
    /// Outside diameter.
    pub diameter: Size,
    /// Thickness along the stay.
    pub thickness: Size,
    /// Hole for the stay.
    pub hole: Option<Size>,
}

/// A taper plug. The `hole` of its group is then the diameter over the threads at the plate's smokebox face.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PlugSpec {
    /// Diameter over the threads at the large end.
    pub large_end: Size,
    /// Threads to the inch, Whitworth form.
    pub threads_per_inch: f64,
    /// Taper on the diameter, one in so many: 12 for an inch to the foot.
    pub taper_one_in: f64,
    /// Length of the threaded part, from the large end.
    pub length: Option<Size>,
    /// Square on its head, across the flats.
    pub square: Option<Size>,
    /// How taper, threads and large end were gauged on the old plug, or who says so.
    pub origin: String,
}

/// The face that a flange is jointed on.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct JointFace {
    /// Its outside diameter.
    pub diameter: Size,
    /// Name of the group of holes that its studs stand in.
    pub studs: Option<String>,
}

/// A pad of the `pads` list that thickens the plate round each hole.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PadAt {
    /// Its name in the `pads` list.
    pub name: String,
    /// The face of the plate that it lies on.
    pub side: ViewFrom,
    /// Leg of the weld round its edge, as the works gives it, where it is welded on.
    pub weld_leg: Option<Size>,
}

/// The bead of a tube, turned over on the plate.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Bead {
    /// Its outside diameter.
    pub diameter: Size,
    /// How far it stands out from the plate.
    pub stands_out: Size,
}

/// How the end of a ring is prepared for its welds, as the works gives it: nothing here works a weld out.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WeldPreparation {
    /// Bevel on the inside of the ring's end; none where nothing is written.
    pub bevel_inside: Option<Bevel>,
    /// Bevel on the outside of the ring's end.
    pub bevel_outside: Option<Bevel>,
    /// Gap between ring and plate at the root.
    pub root_gap: Option<Size>,
    /// Number of the welding procedure.
    pub procedure: Option<String>,
    /// Who says so.
    pub origin: String,
}

/// A bevel taken off the end of a ring.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Bevel {
    /// Between the bevel and the face of the plate, degrees.
    pub angle: f64,
    /// How deep it goes into the ring's thickness.
    pub depth: Size,
}
