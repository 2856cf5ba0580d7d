//! What the drawing office wrote, and the faults in it: never computes geometry, never fills in a strength figure.

mod as_far;
mod cutting;
mod drilling;
mod fault;
mod fitted;
mod former;
mod holes;
mod job;
mod judged;
mod nearest;
mod node;
mod pads;
mod plate;
mod read;
mod remedies;
mod repairs;
mod respell;
mod roof_girders;
mod sense;
mod shape;
mod survey;
mod tube_ends;
mod typed;
mod understand;
mod yaml;

pub use cutting::*;
pub use drilling::Drilling;
pub use fault::{Fault, Faults};
pub use fitted::*;
pub use former::Former;
pub use holes::*;
pub use job::{Job, Revision, Units};
pub use judged::*;
pub use pads::*;
pub use plate::*;
pub use read::{Spec, read_spec, read_spec_file, spec_schema};
pub use repairs::*;
pub use roof_girders::{RoofGirders, SidePlates};
pub use survey::*;
pub use tube_ends::{Door, Obstruction, OtherEnd, OtherLines, OtherPlaces, Withdrawal};

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::units::Strength;

/// A boiler plate and everything its making needs, as the drawing office writes it.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Written {
    /// Title block.
    pub job: Job,
    /// The plate.
    pub plate: Plate,
    /// The barrel it goes into.
    pub barrel: Option<Barrel>,
    /// Working pressure; strength lines are not judged without it.
    pub working_pressure: Option<Strength>,
    /// Its flange.
    pub flange: Option<Flange>,
    /// The edge of a flat plate; a pressed plate's edge follows from its flange.
    pub outline: Option<OutlineSpec>,
    /// Tubes and flues.
    #[serde(default)]
    pub tubes: Vec<Nest>,
    /// Every other hole in the flat.
    #[serde(default)]
    pub holes: Vec<HoleSet>,
    /// How tubes are drawn out through the smokebox.
    pub withdrawal: Option<Withdrawal>,
    /// Pads and doubling rings, cut as parts of their own.
    #[serde(default)]
    pub pads: Vec<Pad>,
    /// Rivets of the flange.
    pub rivets: Option<RivetLineSpec>,
    /// Thickness readings of a plate that is kept.
    pub survey: Option<Survey>,
    /// What is to be welded on a plate that is kept.
    #[serde(default)]
    pub repairs: Vec<Repair>,
    /// What supports the flat.
    pub support: Option<Support>,
    /// Girders of the firebox roof, where they bear on this plate: a firebox tube plate's only.
    pub roof_girders: Option<RoofGirders>,
    /// Rules and rule sets that judge; anything else worth saying is a note.
    #[serde(default)]
    pub judged_by: Vec<String>,
    /// Limits of the works' own.
    #[serde(default)]
    pub own_limits: OwnLimits,
    /// Departures agreed.
    #[serde(default)]
    pub concessions: Vec<Concession>,
    /// What is cut by the contractor.
    pub cutting: Option<Cutting>,
    /// The shop's drilling machine, for the side to drill from.
    pub drilling: Option<Drilling>,
    /// Paper and notes.
    #[serde(default)]
    pub sheets: SheetWishes,
}
