//! The flange: heel, tangent, straight and blank of a pressed plate; ring, strip and weld toes of a fabricated one.

use crate::spec::ViewFrom;
use crate::units::{Length, Size};

/// A flange in place. Radii are from the barrel centre.
#[derive(Clone, Debug)]
pub enum FlangeDesign {
    /// Turned from the plate itself.
    Pressed(Pressed),
    /// A ring welded on.
    Fabricated(Fabricated),
}

/// A pressed flange.
#[derive(Clone, Debug)]
pub struct Pressed {
    /// The side it stands towards.
    pub towards: ViewFrom,
    /// Outside diameter as written.
    pub outside_diameter: Size,
    /// Inside radius of the heel as written.
    pub heel_radius: Size,
    /// Straight as written.
    pub straight: Size,
    /// Trim all round as written.
    pub trim: Size,
    /// Radius at which the flat meets the bend.
    pub tangent_radius: Length,
    /// Outer face of the plate to the edge of the flange, overall.
    pub depth: Length,
    /// Net blank by the length of the line that keeps its length (mid line unless the spec says otherwise), diameter.
    pub blank_mid_line: Length,
    /// Net blank by equal area of the mid surface, diameter.
    pub blank_equal_area: Length,
    /// How the first of the two was reckoned, in words for the sheet.
    pub allowance_words: String,
    /// What is cut: the larger net blank and the trim all round, rounded up as the drawing office would order it.
    pub blank_cut: Length,
    /// Arc length of the heel along the line reckoned with.
    pub heel_arc: Length,
    /// Strain of the outer fibre of the heel if it were bent cold, as a share.
    pub heel_strain: f64,
    /// By how much the rim shrinks in girth in forming, as a share.
    pub rim_shrink: f64,
}

/// A fabricated flange.
#[derive(Clone, Debug)]
pub struct Fabricated {
    /// The side the ring stands towards.
    pub towards: ViewFrom,
    /// Outside diameter of the ring as written.
    pub ring_outside_diameter: Size,
    /// Radial thickness of the ring as written.
    pub ring_thickness: Size,
    /// Width of the bar as written.
    pub ring_width: Size,
    /// Legs of the welds as written.
    pub weld_leg_inside: Size,
    /// The outside one.
    pub weld_leg_outside: Size,
    /// Net length of the strip, π × mean diameter.
    pub strip_net: Length,
    /// Length of the strip as cut: net and the works' allowance.
    pub strip_cut: Length,
    /// Radius of the inner weld toe on the plate.
    pub inner_toe_radius: Length,
    /// Radius of the outer weld toe on the plate.
    pub outer_toe_radius: Length,
    /// From the plate's face to the outer weld toe on the ring's outside, measured along the ring.
    pub toe_on_ring: Length,
}
