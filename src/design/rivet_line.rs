//! The line of rivets on the flange.

use crate::spec::RivetHow;
use crate::units::{Length, Size};

/// How one rivet hole is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RivetMade {
    /// To the drawing.
    Drawn,
    /// Through the barrel or marked from it.
    InPlace,
    /// To the drawing, for a tack bolt; the rest are made in place.
    Tack,
}

impl RivetMade {
    /// As `results.json` has it.
    pub fn name(self) -> &'static str {
        match self {
            RivetMade::Drawn => "drawn",
            RivetMade::InPlace => "in place",
            RivetMade::Tack => "tack",
        }
    }
}

/// One rivet hole.
#[derive(Clone, Debug)]
pub struct Rivet {
    /// Its number, R1 nearest bottom centre and then clockwise as seen from the declared side.
    pub id: String,
    /// Degrees clockwise from the top, as seen from the declared side.
    pub angle_deg: f64,
    /// Running length along the bore from bottom centre, clockwise.
    pub run: Length,
    /// How it is made.
    pub made: RivetMade,
}

/// A line of rivets round the flange, in one row.
///
/// *Pitch at bore* is the arc along the barrel's bore, where flange and barrel meet; *at outside* along the barrel's outside;
/// *at flange face* along the flange's inside face. Holes are drilled radially, so the angle carries and the pitch does not.
#[derive(Clone, Debug)]
pub struct RivetLine {
    /// Its name in records: R.
    pub line: String,
    /// Rivet, cold, as written.
    pub rivet: Size,
    /// Finished hole as written.
    pub hole: Size,
    /// Hole centres to flange edge as written.
    pub from_edge: Size,
    /// The rivets in order of their numbers.
    pub rivets: Vec<Rivet>,
    /// Angle from one to the next, degrees.
    pub step_deg: f64,
    /// Arc pitch along the bore.
    pub pitch_bore: Length,
    /// Arc pitch along the barrel's outside.
    pub pitch_outside: Length,
    /// Arc pitch along the flange's inside face.
    pub pitch_flange_face: Length,
    /// Chord at bore.
    pub chord_bore: Length,
    /// Chord at the barrel's outside.
    pub chord_outside: Length,
    /// Girth of the flange outside, and of the barrel's bore.
    pub girth_flange: Length,
    /// Girth of the bore.
    pub girth_bore: Length,
    /// How the spec says holes are made.
    pub how: RivetHow,
    /// Straight flange that edge, head and clearance together need (pressed), or from outer weld toe to hole centre
    /// (fabricated), with what there is.
    pub head_room: Option<HeadRoom>,
}

/// Room for the rivet head beside the heel or the weld.
#[derive(Clone, Debug)]
pub struct HeadRoom {
    /// Length needed.
    pub needed: Length,
    /// Length there is.
    pub given: Length,
    /// What is measured, in words for the sheet.
    pub words: String,
}
