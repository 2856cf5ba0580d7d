//! What the contractor's cutter makes of the holes, decided once for cut files, checks and sheets.

mod made;
mod settings;
mod starting_figures;

pub use made::{Made, made, made_of};
pub use settings::{Figure, Policy, Settings, in_mm};

use super::{Design, FlangeDesign, Hole, HoleGroup};
use crate::spec::Written;
use crate::units::Length;

/// Diameter to which a hole of this group and finished size is cut by the contractor; none where it is not cut: no order to
/// cut, a pop, a policy that withholds it, or a plate that is pressed, whose holes all wait until it has its form.
pub fn cut_diameter(
    written: &Written,
    design: &Design,
    group: &HoleGroup,
    finish: Length,
) -> Option<Length> {
    if matches!(design.flange, Some(FlangeDesign::Pressed(_))) {
        return None;
    }
    let settings = Settings::of(written.cutting.as_ref()?, Some(design.thickness.value()));
    match made_of(&settings, group, finish) {
        Made::Cut(diameter, _) => Some(diameter),
        Made::Pop(_) | Made::Nothing(_) => None,
    }
}

/// The holes that the contractor cuts, each at the size that he leaves, through which their metal is then measured.
pub fn holes_as_cut(written: &Written, design: &Design) -> Vec<Hole> {
    let as_cut = |hole: &Hole| {
        let group = &design.groups[hole.group];
        let diameter = cut_diameter(written, design, group, hole.finish.value())?;
        Some(Hole {
            ligament_hole: diameter,
            ..hole.clone()
        })
    };
    design.holes.iter().filter_map(as_cut).collect()
}
