//! The plate itself, its metal, the barrel it goes into, its flange and its outline.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::units::{Heaviness, Size, Strength};

/// A place on the face: x right and y up from the barrel centre, as seen from the declared side.
pub type At = (Size, Size);

/// The plate: to be made, or one that is kept.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Plate {
    /// Which plate of the boiler it is.
    pub kind: Kind,
    /// The side one looks from when x is to the right. Required: a symmetrical nest hides a mirrored plate.
    pub view_from: ViewFrom,
    /// The plate stands and is kept: only the pieces let in under `repairs`, and what lies in them, are new. Nothing of it is cut or
    /// formed, so that it takes no `cutting`, no trim and nothing of a blank; `survey` and `repairs` tell of such a plate alone.
    #[serde(default)]
    pub kept: bool,
    /// Thickness ordered; of a plate that is kept, as it was made: what is left of it stands under `survey`.
    pub thickness: Size,
    /// What the plate is made of; needed by every strength check.
    pub material: Option<Material>,
    /// Thickness to be taken as lost before the strength checks, with its origin. None is assumed.
    pub corrosion_allowance: Option<Allowance>,
    /// What the original was, so that departures from it can be listed.
    pub original: Option<Original>,
}

/// Which plate of the boiler.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Kind {
    /// The front tube plate, in the barrel's smokebox end.
    #[serde(rename = "smokebox tube plate")]
    SmokeboxTubePlate,
}

impl Kind {
    /// The trade's name for it, as it stands in the spec and in `results.json`.
    pub fn name(self) -> &'static str {
        match self {
            Kind::SmokeboxTubePlate => "smokebox tube plate",
        }
    }
}

/// The side one looks from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum ViewFrom {
    /// Standing in the smokebox, looking back at the plate.
    Smokebox,
    /// Inside the barrel, looking forward at the plate.
    Firebox,
}

impl ViewFrom {
    /// As written in the spec, and as `results.json` has it.
    pub fn name(self) -> &'static str {
        match self {
            ViewFrom::Smokebox => "smokebox",
            ViewFrom::Firebox => "firebox",
        }
    }
}

/// The metal of a plate or a ring.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Material {
    /// Grade and standard as ordered.
    pub grade: String,
    /// Its family, which decides which rules can apply.
    pub metal: Metal,
    /// Least tensile strength.
    pub strength: Option<Strength>,
    /// Mass for volume, for the masses on the sheets.
    pub density: Option<Heaviness>,
    /// Kind of certificate asked for.
    pub certificate: Option<String>,
}

/// Family of metal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Metal {
    /// Boiler steel.
    Steel,
    /// Wrought iron.
    Iron,
    /// Firebox copper.
    Copper,
}

impl Metal {
    /// As written in the spec and as printed.
    pub fn name(self) -> &'static str {
        match self {
            Metal::Steel => "steel",
            Metal::Iron => "iron",
            Metal::Copper => "copper",
        }
    }
}

/// An allowance and where it comes from.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Allowance {
    /// How much.
    pub size: Size,
    /// Who says so.
    pub origin: String,
}

/// What is known of the plate that this one replaces.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Original {
    /// Drawing or survey the figures come from.
    pub source: String,
    /// Thickness as made.
    pub thickness: Option<Size>,
    /// Inside heel radius as made.
    pub heel_radius_inside: Option<Size>,
    /// Finished tube hole as made.
    pub tube_hole: Option<Size>,
    /// Number of tubes as made, flues among them.
    pub tube_count: Option<u32>,
    /// Outside diameter of the tubes as made.
    pub tube: Option<Size>,
    /// Least metal between two tube holes as made.
    pub ligament: Option<Size>,
    /// What the plate was made of.
    pub material: Option<String>,
}

/// The barrel that the flange is riveted into.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Barrel {
    /// Inside diameter, by girth.
    pub bore: Size,
    /// Thickness fitted.
    pub thickness: Size,
    /// Thickness that the works says is required; the end seam is taken on it where it is given.
    pub thickness_required: Option<Size>,
    /// What the barrel is made of.
    pub material: Option<Material>,
}

/// How the flange is made.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
#[allow(
    clippy::large_enum_variant,
    reason = "a spec has one flange, which is never moved about in bulk"
)]
pub enum Flange {
    /// Turned from the plate itself over a former.
    Pressed(PressedFlange),
    /// A ring rolled from bar and welded to a flat plate.
    Fabricated(FabricatedFlange),
}

/// A flange pressed from the plate.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PressedFlange {
    /// The side it stands towards.
    pub towards: ViewFrom,
    /// Outside diameter; made to the girth of the barrel's bore.
    pub outside_diameter: Size,
    /// Inside radius of the heel.
    pub heel_radius_inside: Size,
    /// Parallel part beyond the heel.
    pub straight: Size,
    /// Metal left all round the blank to be trimmed after forming.
    pub trim: Size,
    /// Diameter of the blank as ordered; the larger net blank and the trim where nothing is written.
    pub blank_diameter: Option<Size>,
    /// How the length of metal round the heel is reckoned; the mid line where nothing is written.
    #[serde(default)]
    pub bend_allowance: BendAllowance,
    /// The works' allowance on the former for heat, as a share of its size.
    pub former_hot_allowance: Option<Share>,
}

/// A share with its origin, 0.012 or 1.2 %.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Share {
    /// As a fraction of one.
    pub share: f64,
    /// Who says so.
    pub origin: String,
}

/// Where in the thickness the metal round a bend keeps its length.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum BendAllowance {
    /// At half the thickness.
    #[default]
    MidLine,
    /// At this share of the thickness from the inside face.
    NeutralAxis(f64),
    /// By DIN 6935, which is a rule for cold bending.
    Din6935,
}

/// A flange made as a ring and welded on.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FabricatedFlange {
    /// The side the ring stands towards.
    pub towards: ViewFrom,
    /// Outside diameter of the ring.
    pub ring_outside_diameter: Size,
    /// Radial thickness of the ring.
    pub ring_thickness: Size,
    /// Width of the bar: how far the ring stands out from the plate.
    pub ring_width: Size,
    /// Leg of the weld inside the ring, as the works gives it: nothing here works out a weld size.
    pub weld_leg_inside: Size,
    /// Leg of the weld outside the ring.
    pub weld_leg_outside: Size,
    /// How the ring's end is prepared for its welds.
    pub weld_preparation: Option<Box<super::fitted::WeldPreparation>>,
    /// Metal added to the strip for preparation and roll-end waste, in all, where the two are not told apart.
    pub strip_allowance: Option<Allowance>,
    /// Metal at each end of the strip for the weld preparation of the joint.
    pub strip_preparation: Option<Box<Allowance>>,
    /// Metal beyond that at each end, which the rolls leave flat and which is cut off after rolling.
    pub strip_roll_waste: Option<Box<Allowance>>,
    /// Where the ends of the ring meet; midway between the rivets next to top centre where nothing is written.
    pub joint: Option<Box<RingJoint>>,
    /// What the ring is made of; the plate's metal where nothing is written.
    pub material: Option<Material>,
}

/// Where the ends of a ring meet. Angles run clockwise from the top, degrees, as seen from `view_from`.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RingJoint {
    /// Angle of the joint.
    pub angle: f64,
    /// Angle of the barrel's lengthwise seam, which the joint keeps away from.
    pub barrel_seam: Option<f64>,
    /// Least distance from the seam, round the outside of the ring.
    pub clear_of_seam: Option<Size>,
    /// Who says so.
    pub origin: String,
}

/// The edge of a flat plate.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum OutlineSpec {
    /// A disc about the barrel centre.
    Round(RoundOutline),
    /// A disc with a leg carried down below the barrel.
    Keyhole(KeyholeOutline),
    /// Any closed path of lines and arcs.
    Path(PathOutline),
}

/// A disc.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RoundOutline {
    /// Its diameter.
    pub diameter: Size,
}

/// A disc with a leg.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct KeyholeOutline {
    /// Radius of the disc about the barrel centre.
    pub radius: Size,
    /// Width of the leg, centred.
    pub leg_width: Size,
    /// y of the leg's foot: below the centre, so negative.
    pub foot: Size,
    /// Radius in the re-entrant corner where leg meets disc.
    pub corner_radius: Size,
    /// Radius on the two corners of the foot; sharp where nothing is written.
    pub foot_radius: Option<Size>,
}

/// A free path, walked anticlockwise or clockwise; it closes on its start.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PathOutline {
    /// Where it starts.
    pub start: At,
    /// Each step to the next corner; the last comes back to the start.
    pub steps: Vec<PathStep>,
}

/// One step of a free path.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PathStep {
    /// Where the step ends.
    pub to: At,
    /// A straight line where neither `through` nor `radius` is written; an arc through this place.
    pub through: Option<At>,
    /// An arc of this radius, the shorter way, bulging to the right hand of the walk.
    pub radius: Option<Size>,
    /// Round the corner at the end of this step off to this radius.
    pub corner_radius: Option<Size>,
}
