//! Tubes, stays, pipes, plugs and rivets as written.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::fitted::{Bead, JointFace, Nut, PadAt, PlugSpec, Washer};
use super::plate::At;
use crate::units::{Size, Strength};

/// A nest of tubes of one size; a plate may have several (tubes and flues).
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Nest {
    /// What the group is called on the sheets.
    pub name: String,
    /// Tubes or flues.
    #[serde(default)]
    pub purpose: NestPurpose,
    /// Letter that opens the numbers of its holes; T for tubes and F for flues where nothing is written.
    pub letter: Option<String>,
    /// Outside diameter of the tube's body.
    pub tube: Size,
    /// Outside diameter of the tube where it sits in this plate (enlarged or swaged); the body's where nothing is written.
    pub tube_end: Option<Size>,
    /// Wall of the tube, for its bore.
    pub wall: Option<Size>,
    /// Finished hole.
    pub hole: Size,
    /// Largest finished hole that the tolerance lets through.
    pub hole_largest: Option<Size>,
    /// Hole after the next re-bore that the works foresees.
    pub next_rebore: Option<Size>,
    /// Hole through which ligaments are judged where a bush is fitted: the bush's outside.
    pub bush: Option<Size>,
    /// Radius on the edges of each hole, both sides of the plate.
    pub edge_radius: Option<Size>,
    /// The bead of the tube on this plate.
    pub bead: Option<Bead>,
    /// How the holes lie.
    pub pattern: Pattern,
    /// What the filling keeps clear of.
    #[serde(default)]
    pub within: Within,
    /// Holes that depart from the pattern, each with its reason.
    #[serde(default)]
    pub exceptions: Vec<Exception>,
    /// The sizes a hole goes through before it is finished.
    #[serde(default)]
    pub stages: Vec<StageSpec>,
    /// Length between the two tube plates, for the tube order and heating surface.
    pub between_plates: Option<Size>,
    /// Thickness of the tube plate at the other end, for the tube order.
    pub other_plate: Option<Size>,
    /// How far the tube stands out past the outer face of this plate, before it is beaded, for the tube order.
    pub projection: Option<Size>,
    /// How far it stands out past the other plate.
    pub other_projection: Option<Size>,
    /// The holes of these tubes in the plate at the other end.
    pub other_end: Option<super::tube_ends::OtherEnd>,
    /// In a plate that is kept: whether new tubes go into the holes that stand. Not told where nothing is written.
    pub renewed: Option<bool>,
    /// Tubes of the nest that are screwed into both plates, and so hold them.
    pub stay_tubes: Option<StayTubes>,
}

/// Tubes that are screwed into both plates. A tube that is only expanded is none.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StayTubes {
    /// Which tubes of the nest they are.
    pub which: WhichTubes,
    /// Diameter over the threads.
    pub over_threads: Size,
    /// Threads to the inch, Whitworth form.
    pub threads_per_inch: f64,
    /// Bore under the thread.
    pub bore: Size,
}

/// Which tubes of a nest.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum WhichTubes {
    /// Every tube of it.
    Every,
    /// The tubes at these places.
    At(Vec<At>),
}

/// What a nest is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum NestPurpose {
    /// Ordinary tubes.
    #[default]
    Tube,
    /// Large flues for a superheater.
    Flue,
}

/// How the holes of a nest lie.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Pattern {
    /// Vertical columns; odd columns half a pitch up where staggered.
    Columns(Lines),
    /// Horizontal rows; odd rows half a pitch to the right where staggered.
    Rows(Lines),
    /// Square: columns and rows at one pitch.
    Square(Square),
    /// Every hole by its place.
    Points(Vec<At>),
}

/// A pattern of parallel lines of holes.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Lines {
    /// The place of hole 0 of line 0; it need not be a hole that is drilled.
    pub through: At,
    /// From one line to the next.
    pub spacing: Size,
    /// From hole to hole along a line.
    pub pitch: Size,
    /// Whether odd lines lie half a pitch on.
    #[serde(default = "yes")]
    pub staggered: bool,
    /// Number of the first line, line 0 passing through `through`; as many as fit where nothing is written.
    pub first: Option<i32>,
    /// Number of the last line.
    pub last: Option<i32>,
}

fn yes() -> bool {
    true
}

/// A square pattern.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Square {
    /// The place of one hole.
    pub through: At,
    /// Pitch both ways.
    pub pitch: Size,
}

/// What the filling of a pattern keeps within.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Within {
    /// Least clear metal from the hole's edge to named lines.
    #[serde(default)]
    pub land: Vec<LandSpec>,
    /// No hole centre above this y.
    pub top: Option<Size>,
    /// No hole centre below this y.
    pub bottom: Option<Size>,
    /// No hole centre further than this from the vertical centre line.
    pub half_width: Option<Size>,
    /// Places that no hole edge may come into.
    #[serde(default)]
    pub keep_out: Vec<KeepOut>,
    /// Drop a hole whose opposite hand about the vertical centre line is not in the nest.
    #[serde(default)]
    pub symmetrical: bool,
}

/// Least clear metal from hole edge to a line.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LandSpec {
    /// The line.
    pub to: NamedLine,
    /// Clear metal between it and the hole's edge.
    pub at_least: Size,
}

/// A line on the plate that metal is measured to.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
pub enum NamedLine {
    /// Where the flat of a pressed plate meets the bend of its heel.
    #[serde(rename = "tangent")]
    Tangent,
    /// The edge of the weld on the flat, inside the ring.
    #[serde(rename = "inner weld toe")]
    InnerWeldToe,
    /// The edge of the weld on the flat, outside the ring.
    #[serde(rename = "outer weld toe")]
    OuterWeldToe,
    /// The edge of the plate.
    #[serde(rename = "edge")]
    Edge,
}

impl NamedLine {
    /// As printed.
    pub fn name(self) -> &'static str {
        match self {
            NamedLine::Tangent => "tangent",
            NamedLine::InnerWeldToe => "inner weld toe",
            NamedLine::OuterWeldToe => "outer weld toe",
            NamedLine::Edge => "edge",
        }
    }
}

/// A place that no hole edge may come into: a circle, or a box between two corners.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct KeepOut {
    /// Centre of a circle; with `diameter`.
    pub centre: Option<At>,
    /// Diameter of the circle.
    pub diameter: Option<Size>,
    /// One corner of a box; with `to`.
    pub from: Option<At>,
    /// The opposite corner of the box.
    pub to: Option<At>,
    /// What is there.
    pub reason: String,
}

/// One hole that departs from the pattern: exactly one of `omit`, `move`, `resize` and `add`.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Exception {
    /// Leave out the hole whose place in the pattern is nearest to this (within half its diameter).
    pub omit: Option<At>,
    /// Move the hole at this place, `to` another.
    #[serde(rename = "move")]
    pub shift: Option<At>,
    /// Where it is moved to.
    pub to: Option<At>,
    /// Give the hole at this place another finished size, `hole`.
    pub resize: Option<At>,
    /// Drill one more hole, here.
    pub add: Option<At>,
    /// Finished size of a resized or added hole.
    pub hole: Option<Size>,
    /// Why. Printed on the sheet.
    pub reason: String,
}

/// One stage in the making of a hole.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StageSpec {
    /// What is done: pilot, drill, bore, ream, tap …
    pub name: String,
    /// Size it leaves.
    pub size: Option<Size>,
    /// To drawing on the bench, or in place with the parts assembled.
    #[serde(rename = "where", default)]
    pub place: StagePlace,
}

/// Where a stage is done.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum StagePlace {
    /// By the cutting contractor.
    #[serde(rename = "cut")]
    Cut,
    /// At the works, to the drawing.
    #[default]
    #[serde(rename = "to drawing")]
    ToDrawing,
    /// At the works, with the parts assembled.
    #[serde(rename = "in place")]
    InPlace,
}

impl StagePlace {
    /// As printed.
    pub fn name(self) -> &'static str {
        match self {
            StagePlace::Cut => "cut",
            StagePlace::ToDrawing => "to drawing",
            StagePlace::InPlace => "in place",
        }
    }
}

/// A group of holes other than tubes, alike in size and purpose.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HoleSet {
    /// What the group is called on the sheets.
    pub name: String,
    /// What the holes are for.
    pub purpose: Purpose,
    /// Letter that opens their numbers; by purpose where nothing is written.
    pub letter: Option<String>,
    /// Finished hole.
    pub hole: Size,
    /// Where they are.
    pub at: Vec<At>,
    /// Also at the opposite hand of every place off the vertical centre line.
    #[serde(default)]
    pub mirrored: bool,
    /// The stay itself, where they are stay holes.
    pub stay: Option<StaySpec>,
    /// The taper plug, where they are plug holes.
    pub plug: Option<PlugSpec>,
    /// The face that a pipe or a fitting is jointed on.
    pub joint_face: Option<JointFace>,
    /// The pad that thickens the plate here.
    pub pad: Option<PadAt>,
    /// Diameter that washers, nuts, heads or a joint face need clear round each hole.
    pub needs_clear: Option<Size>,
    /// The mouth turned out of the plate round each hole, where it is flanged.
    pub flanged_mouth: Option<MouthSpec>,
    /// The sizes a hole goes through before it is finished.
    #[serde(default)]
    pub stages: Vec<StageSpec>,
    /// Printed in the hole schedule.
    pub remarks: Option<String>,
}

/// A mouth turned out of the plate: the plate's own metal stands up round the hole.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MouthSpec {
    /// The side it stands towards.
    pub towards: super::plate::ViewFrom,
    /// How far its rim stands out from the face that it is turned towards.
    pub depth: Option<Size>,
}

/// What a hole is for.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
pub enum Purpose {
    /// An ordinary tube.
    #[serde(rename = "tube")]
    Tube,
    /// A superheater flue.
    #[serde(rename = "flue")]
    Flue,
    /// A stay of any kind.
    #[serde(rename = "stay")]
    Stay,
    /// The main steam pipe.
    #[serde(rename = "steam pipe")]
    SteamPipe,
    /// A washout or mud plug.
    #[serde(rename = "plug")]
    Plug,
    /// Any other fitting.
    #[serde(rename = "fitting")]
    Fitting,
    /// A bolt or stud.
    #[serde(rename = "bolt")]
    Bolt,
    /// A pin that holds the blank on the former, drilled where a tube will later be.
    #[serde(rename = "former pin")]
    FormerPin,
}

impl Purpose {
    /// Whether a tube or a flue goes through: holes of a nest.
    pub fn takes_a_tube(self) -> bool {
        match self {
            Purpose::Tube | Purpose::Flue => true,
            Purpose::Stay
            | Purpose::SteamPipe
            | Purpose::Plug
            | Purpose::Fitting
            | Purpose::Bolt
            | Purpose::FormerPin => false,
        }
    }

    /// As printed, and as `results.json` has it.
    pub fn name(self) -> &'static str {
        match self {
            Purpose::Tube => "tube",
            Purpose::Flue => "flue",
            Purpose::Stay => "stay",
            Purpose::SteamPipe => "steam pipe",
            Purpose::Plug => "plug",
            Purpose::Fitting => "fitting",
            Purpose::Bolt => "bolt",
            Purpose::FormerPin => "former pin",
        }
    }

    /// The letter that opens the numbers of its holes where the spec gives none.
    pub fn letter(self) -> &'static str {
        match self {
            Purpose::Tube => "T",
            Purpose::Flue => "F",
            Purpose::Stay => "S",
            Purpose::SteamPipe => "P",
            Purpose::Plug => "W",
            Purpose::Fitting => "X",
            Purpose::Bolt => "B",
            Purpose::FormerPin => "N",
        }
    }
}

/// The stay that goes through a stay hole.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StaySpec {
    /// What sort of stay it is.
    pub kind: StayKind,
    /// Diameter over the threads.
    pub diameter: Size,
    /// Threads to the inch, Whitworth form.
    pub threads_per_inch: f64,
    /// Its nut on the smokebox side of the plate.
    pub outside_nut: Option<Nut>,
    /// Its nut on the boiler side.
    pub inside_nut: Option<Nut>,
    /// Its washer on the smokebox side.
    pub outside_washer: Option<Washer>,
    /// Its washer on the boiler side.
    pub inside_washer: Option<Washer>,
    /// How far it stands out past the outside nut.
    pub stands_out: Option<Size>,
    /// Tell-tale hole drilled in its end.
    pub telltale: Option<Size>,
    /// What it is made of.
    pub metal: Option<super::plate::Metal>,
    /// Stress the works allows on the thread root, with its origin.
    pub allowed_stress: Option<AllowedStress>,
    /// How its ends are made, which sets the constant of the stayed flat surface.
    pub ends: Option<StayEnds>,
    /// Least tensile strength of its metal, which sets the constant of a longitudinal stay.
    pub strength: Option<Strength>,
    /// Whole length of a diagonal stay, along its slant.
    pub slant_length: Option<Size>,
    /// Length of a diagonal stay square to the plate.
    pub square_length: Option<Size>,
}

/// A stress allowed and where it comes from.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AllowedStress {
    /// How much.
    pub stress: Strength,
    /// Who says so.
    pub origin: String,
}

/// Sort of stay.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum StayKind {
    /// Screwed through both plates of a water space.
    Firebox,
    /// A bar from end to end of the boiler.
    Longitudinal,
    /// With a foot riveted or studded on.
    Palm,
    /// From plate to shell at a slant.
    Diagonal,
}

impl StayKind {
    /// As written in the spec and as printed.
    pub fn name(self) -> &'static str {
        match self {
            StayKind::Firebox => "firebox",
            StayKind::Longitudinal => "longitudinal",
            StayKind::Palm => "palm",
            StayKind::Diagonal => "diagonal",
        }
    }
}

/// How the ends of a stay are held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum StayEnds {
    /// Welded, or screwed and riveted over.
    #[serde(rename = "riveted over")]
    RivetedOver,
    /// One nut outside, or nuts both sides without washers.
    #[serde(rename = "nuts")]
    Nuts,
    /// Formed heads of 1.3 diameters or more, bearing truly.
    #[serde(rename = "formed heads")]
    FormedHeads,
    /// Nuts both sides and large washers outside.
    #[serde(rename = "nuts and washers")]
    NutsAndWashers,
}

/// The rivets that hold the flange in the barrel, in one row or in several.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RivetLineSpec {
    /// Diameter of the rivet, cold.
    pub rivet: Size,
    /// Finished hole; sums are made on it.
    pub hole: Size,
    /// How many in a row, evenly spaced.
    pub count: Option<u32>,
    /// Or the pitch aimed at along the bore; the nearest whole number of rivets is taken, and the true pitch printed.
    pub pitch: Option<Size>,
    /// Centre of the holes to the edge of the flange; of several rows, those of the row nearest the edge.
    pub from_edge: Size,
    /// Rows, where there are two or more; left out for one row.
    pub rows: Option<RowsSpec>,
    /// Whether a hole of the row nearest the edge stands on the bottom centre line or the line passes midway between two.
    pub bottom_centre: BottomCentre,
    /// Shape of the head.
    pub head: Option<String>,
    /// Diameter of the head, or of the snap that closes it.
    pub head_diameter: Option<Size>,
    /// Clear metal between the head and the tangent of the heel, with its origin.
    pub head_clearance: Option<super::plate::Allowance>,
    /// How the holes are made.
    #[serde(default)]
    pub how: RivetHow,
    /// Every so-many-th hole is drilled to the drawing for a tack bolt, the first on or after bottom centre; of several rows, in
    /// the row nearest the edge alone.
    pub tack_every: Option<u32>,
    /// Shear strength of the rivet metal.
    pub shear_strength: Option<Strength>,
    /// Strength of the joint against crushing of rivet or plate, with its origin.
    pub crushing_strength: Option<AllowedStress>,
}

/// Rows of rivets, each with as many as the others.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RowsSpec {
    /// How many rows, two or more.
    pub number: u32,
    /// How the rivets of one row stand to those of the next.
    pub arrangement: Arrangement,
    /// Centres of one row to centres of the next, along the barrel.
    pub apart: Size,
}

/// How the rivets of neighbouring rows stand to one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Arrangement {
    /// Midway between those of the next row.
    #[serde(rename = "zig-zag")]
    ZigZag,
    /// In line with those of the next row.
    #[serde(rename = "chain")]
    Chain,
}

impl Arrangement {
    /// As written in the spec and as printed.
    pub fn name(self) -> &'static str {
        match self {
            Arrangement::ZigZag => "zig-zag",
            Arrangement::Chain => "chain",
        }
    }
}

/// Where the bottom centre line falls.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum BottomCentre {
    /// On a hole.
    #[serde(rename = "on a hole")]
    OnAHole,
    /// Midway between two holes.
    #[serde(rename = "between holes")]
    BetweenHoles,
}

/// How rivet holes are made.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum RivetHow {
    /// To the drawing.
    #[serde(rename = "drawn")]
    Drawn,
    /// Through the barrel, or marked from it.
    #[default]
    #[serde(rename = "in place")]
    InPlace,
}
