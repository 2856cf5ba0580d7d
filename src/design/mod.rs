//! Every edge and hole in place: mm, y up, side stated. Never judges; knows no paper, YAML or DXF.

mod above_tubes;
mod amount;
mod as_made;
mod bend;
mod changes;
mod circle_climb;
mod circle_measures;
mod cross_checks;
mod crowd;
pub mod cutter;
mod direction;
mod drill_access;
mod edge;
mod edges_meet;
mod exception;
mod filled_record;
mod flange;
mod gap;
mod gauges;
mod grip;
mod hole;
mod hole_index;
mod hole_set;
mod kept;
mod keyhole;
mod land;
mod largest_circle;
#[cfg(test)]
mod largest_circle_tests;
mod lattice;
mod ligament;
mod line_names;
mod masses;
mod nest;
mod number_runs;
mod numbering;
mod original;
mod outline;
mod outline_of_spec;
mod outline_offset;
mod overlap;
mod pads;
mod path;
mod piece;
mod point;
mod reading;
mod repair;
mod repair_line;
mod ring_joint;
mod rivet_line;
mod rivet_rows;
mod room;
#[cfg(test)]
mod scenario_tests;
mod set_out;
mod since;
mod smokebox_tube_plate;
mod stay_area;
mod stay_field;
mod stay_pitch;
mod stay_tubes;
mod struck_lines;
mod support_field;
mod tapped;
mod tilt;
mod trammels;
mod tube_ends;
mod tube_length;
mod varied;
mod welds;
mod withdrawal;

pub use above_tubes::AboveTubes;
pub use as_made::{HoleMade, as_made};
pub use changes::{
    Changes, FigureChange, GroupCount, HoleAt, HoleChange, MetalChange, Renumbered, changes,
};
pub use circle_measures::{chord, circle_in_rectangle, circle_segment_area};
pub use cross_checks::{CrossCheck, cross_checks};
pub use direction::{DirectionLigament, directions};
pub use drill_access::{NearWall, near_wall};
pub use edge::Edge;
pub use filled_record::{Deviation, FilledRecord, RivetHoleMade, deviations};
pub use flange::{Fabricated, FlangeDesign, Pressed, ring_length};
pub use gauges::{HeelGauge, chord_height, heel_gauge};
pub use grip::{girth, grip};
pub use hole::{Hole, HoleGroup, LineWay, NestLine, Omission, Stage, TakesUp};
pub use hole_index::HoleIndex;
pub use hole_set::across_corners;
pub use kept::MetalThere;
pub use keyhole::ImpossibleKeyhole;
pub use land::{Land, land_of, lands};
pub use largest_circle::{LargestCircle, Touch, largest_circle};
pub use ligament::{LeastLigament, Ligament, Survey, pairs_within, survey};
pub use number_runs::number_runs;
pub use original::{BesideOriginal, OriginalFigure, Told, beside_original};
pub use outline::{NotAnOutline, Outline};
pub use outline_offset::OffsetFailed;
pub use pads::PlacedPad;
pub use path::{BadStep, ImpossiblePath, Step, Walk};
pub use piece::{PieceLetIn, PieceSize};
pub use point::Point;
pub use reading::{Covered, Reading};
pub use repair::{AmongStays, FlangeCrossing, LeftBy, Repair, RepairWork, between_areas};
pub use ring_joint::{JointPlace, ring_joint};
pub use rivet_line::{HeadRoom, Rivet, RivetLine, RivetMade};
pub use rivet_rows::RivetRows;
pub use set_out::set_out;
pub use since::{Since, WrittenChange};
pub use stay_area::{Piece, Rectangle, StayArea, largest_rectangle};
pub use stay_pitch::StayPitch;
pub use struck_lines::{Run, runs};
pub use tapped::Tapped;
pub use tilt::{Against, Tilt};
pub use trammels::{QuarterPop, Strike, pop_circle, quarter_chord, quarter_pops, strikes};
pub use tube_ends::{OtherEndOfNest, TubeEnds};
pub use tube_length::{TubeLength, tube_length};
pub use varied::Varied;
pub use welds::{Weld, WeldPart, heel_quarter, nearest_to_heel, welds};
pub use withdrawal::{DrawnOut, DrawnTube, Fouling, InTheRoad, RoadForm};

use crate::spec::{Kind, NamedLine, ViewFrom};
use crate::units::{Length, Size};

/// A plate with every edge and hole in its place. Everything a sheet, a cut file or a rule needs to know is here, worked out once.
#[derive(Clone, Debug)]
pub struct Design {
    /// Which plate it is.
    pub kind: Kind,
    /// The side one looks from.
    pub view_from: ViewFrom,
    /// Whether the plate stands and is kept, so that only what lies in its pieces let in is made.
    pub kept: bool,
    /// Thickness as written; of a plate that is kept, as it was made.
    pub thickness: Size,
    /// Edge of the finished plate in the face view: the outside of a pressed flange, or the edge of a flat plate.
    pub edge: Outline,
    /// The lines that metal is measured to, each a closed outline.
    pub lines: Vec<(NamedLine, Outline)>,
    /// The flange, where there is one.
    pub flange: Option<FlangeDesign>,
    /// Groups of holes, in the order of the spec.
    pub groups: Vec<HoleGroup>,
    /// Every hole in the flat, by group, in the order of their numbers.
    pub holes: Vec<Hole>,
    /// Columns or rows of the nests.
    pub nest_lines: Vec<NestLine>,
    /// Whether they are columns or rows, for each group that has any.
    pub line_way: Vec<(usize, LineWay)>,
    /// Holes left out of a pattern.
    pub omissions: Vec<Omission>,
    /// The tubes on whose centres the former pins stand, as indices into `holes`.
    pub former_pins: Vec<usize>,
    /// The other end of every nest that the spec tells of one.
    pub other_ends: Vec<OtherEndOfNest>,
    /// Tubes drawn out through the smokebox door, where the spec tells of one.
    pub withdrawal: Option<DrawnOut>,
    /// Pads on the plate, in the order of the holes that they lie round.
    pub pads: Vec<PlacedPad>,
    /// Rivets of the flange.
    pub rivets: Option<RivetLine>,
    /// What is to be welded on a plate that is kept, in the order of the spec.
    pub repairs: Vec<Repair>,
    /// Thickness readings of a plate that is kept, in the order of the spec.
    pub readings: Vec<Reading>,
    /// Least ligament for every pair of purposes that has one.
    pub least_ligaments: Vec<LeastLigament>,
    /// Ligaments of each nest by direction.
    pub directions: Vec<DirectionLigament>,
    /// Every pair with no more metal between them than the diameter of the larger hole, and the least of every two purposes: what
    /// a rule may have to list.
    pub close_pairs: Vec<Ligament>,
    /// Least land of each purpose of hole to each line.
    pub lands: Vec<Land>,
    /// Largest unsupported circle with what the spec counts as support.
    pub largest_circle: Option<LargestCircle>,
    /// The same, tubes and flues not counted.
    pub largest_circle_without_tubes: Option<LargestCircle>,
    /// The flat above the tubes that stays have to hold, where the spec says what tubes and flange hold of it.
    pub above_tubes: Option<AboveTubes>,
    /// The pitches of each set of stays that stand in rows and columns.
    pub stay_pitches: Vec<StayPitch>,
    /// The tubes that are screwed into both plates, as indices into `holes`.
    pub stay_tubes: Vec<usize>,
    /// The piece of flat that each stay or stay tube carries, in the order of the holes; none for a stay of which that is not known.
    pub stay_areas: Vec<StayArea>,
    /// Masses and areas.
    pub figures: Figures,
    /// What changed since the former issue, where the spec names one.
    pub since: Option<Since>,
}

/// Areas and masses. Masses are there where the spec gives a density.
#[derive(Clone, Debug, Default)]
pub struct Figures {
    /// Area inside the edge of a flat plate, holes not out, mm²; for a pressed plate, of the blank as cut.
    pub outline_area_mm2: f64,
    /// Length of that edge.
    pub outline_perimeter: Length,
    /// Width and height of the box round it.
    pub outline_box: (Length, Length),
    /// Finished plate, no hole out, ring excluded, kg.
    pub plate_plain_kg: Option<f64>,
    /// Finished plate, every hole out, rivet holes included, ring excluded, kg.
    pub plate_mass_kg: Option<f64>,
    /// Ring, net strip, kg.
    pub ring_mass_kg: Option<f64>,
    /// Blank as cut, no hole out, kg.
    pub blank_mass_kg: Option<f64>,
    /// Working pressure on the full circle of the bore, N.
    pub end_load_n: Option<f64>,
}
