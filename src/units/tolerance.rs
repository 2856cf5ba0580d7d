//! Every tolerance of the program: each with its unit and the reason for its size.
//!
//! A workshop allowance (trim, clearance, thermal edge) is not a tolerance: it belongs in the spec.

/// Two computed lengths nearer than this are one length, mm.
///
/// Far above the rounding of any sum across a 20 m plate, and the last digit that a cut file carries.
pub const SAME_LENGTH_MM: f64 = 1e-6;

/// Two edges that follow one another are not looked at for a crossing nearer than this to their joint, mm.
///
/// Ends are joined across [`SAME_LENGTH_MM`]; on a smooth joint that shifts the second meeting of line and arc by a few times
/// as much. Far below anything that can be cut.
pub const SAME_JOINT_MM: f64 = 1e-5;

/// Two computed angles nearer than this are one angle, degrees.
///
/// On a 2 m radius it is a tenth of [`SAME_LENGTH_MM`] of arc.
pub const SAME_ANGLE_DEG: f64 = 1e-9;

/// Two stresses or pressures nearer than this, as a share of the larger, are one.
///
/// Far above the rounding of a formula, far below any printed digit.
pub const SAME_SHARE: f64 = 1e-9;

/// The largest unsupported circle is proven to be no more than this above the diameter reported, mm.
pub const LARGEST_CIRCLE_MM: f64 = 0.001;

/// Two bulges of a cut file (tangents of a quarter of the arc) nearer than this are one.
///
/// The last digit written; on a chord of 1 m it moves the crown of the arc by a thousandth of [`SAME_LENGTH_MM`].
pub const SAME_BULGE: f64 = 1e-12;

/// Distances from a computed middle that are meant to be equal differ by no more than this, mm.
///
/// The rounding of the middle's sum on a 20 m plate; it is added to every bound in which it is used.
pub const SAME_MIDDLE_MM: f64 = 1e-9;

/// The climb to the top of a hill of circles ends when its steps are shorter than this, mm.
///
/// A ten-thousandth of what a cut file can carry.
pub const SHORTEST_STEP_MM: f64 = 1e-10;

/// A circle larger by no more than this is no step upwards, mm.
///
/// Along a level ridge rounding alone would otherwise lead on for ever.
pub const NO_RISE_MM: f64 = 1e-12;

/// Ends of lines in somebody else's cut file that are nearer than this are joined, in units of the file's drawing turned to mm.
///
/// What a drawing program loses when it writes two places of a millimetre. A torch bridges it; a true gap is wider than a kerf.
pub const JOINED_ENDS_MM: f64 = 0.01;

/// A file that came back differs from the part where the two lie further apart than this, unless another figure is asked for, mm.
///
/// Two places of a millimetre, or three and a half of an inch: what is lost in saving again. No plate is cut so fine.
pub const SAVED_AGAIN_MM: f64 = 0.01;

/// Scales nearer to one another than this share are one.
///
/// A tenth of [`SAVED_AGAIN_MM`] on 10 m; areas of two files that hold one edge agree far closer.
pub const SAME_SCALE: f64 = 1e-7;

/// Two edges that meet at an angle whose sine is less than this run smoothly into one another.
///
/// Far above what joining ends across [`SAME_LENGTH_MM`] turns an edge a few millimetres long, far below what a torch can follow.
pub const SMOOTH_JOINT: f64 = 1e-4;

/// A figure printed in a record agrees with the design where the two are no further apart than this, mm.
///
/// Half the third place, to which records are printed, and a little for a spreadsheet that drops a nought.
pub const RECORD_LAST_DIGIT_MM: f64 = 0.000_6;
