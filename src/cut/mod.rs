//! Parts for the profile cutter, and the files they travel in. Knows no sheet and no check.
//!
//! A part is made by [`cut_parts`], written by [`write()`], judged by [`preflight`] and read back by [`read_back`].

mod centre_line;
mod clear_place;
mod cut_edge;
mod dxf;
mod entity;
mod fabricated;
mod file_name;
mod hole_policy;
mod lettering;
mod measured_back;
mod order_note;
mod pad;
mod part;
mod preflight;
mod pressed;
mod read_back;
mod reader;
mod reference;
mod returned;
mod ring;
mod stamp;
mod summary;
mod template;

pub use dxf::{Heading, Unwritable, Version, write};
pub use entity::Extent;
pub use file_name::{file_name, heading};
pub use measured_back::{Between, LongSize, long_sizes};
pub use order_note::order_note;
pub use part::{CutPart, HolesCut, Layer, PartKind, Shape, Withheld};
pub use preflight::{Unfit, preflight};
pub use read_back::{Difference, read_back};
pub use reference::PROVING_SQUARE_MM;
pub use returned::{Comparison, Deviation, DeviationKind, Uncompared, compare_returned};
pub use summary::{LayerCount, Summary, summary};

use crate::design::{Design, FlangeDesign};
use crate::spec::{Fault, Spec};

/// The pieces that the contractor cuts: a blank, or a plate with its ring; then pads, and templates where they are asked for.
/// None where the spec orders no cutting.
///
/// Refused is what the cutter must not make: holes in a blank before it is formed, one former pin or more than two, policies
/// that contradict the stages or leave nothing of a hole, and a part that [`preflight`] finds unfit.
pub fn cut_parts(spec: &Spec, design: &Design) -> Result<Vec<CutPart>, Vec<Fault>> {
    let Some(cutting) = &spec.written.cutting else {
        return Ok(Vec::new());
    };
    let faults = hole_policy::refused(cutting, design);
    if !faults.is_empty() {
        return Err(faults);
    }
    let mut parts = match &design.flange {
        Some(FlangeDesign::Pressed(flange)) => {
            vec![pressed::blank(spec, cutting, design, flange)?]
        }
        Some(FlangeDesign::Fabricated(ring)) => vec![
            fabricated::plate(spec, cutting, design)?,
            ring::strip(spec, cutting, design, ring)?,
        ],
        None => vec![fabricated::plate(spec, cutting, design)?],
    };
    parts.extend(pad::pads(spec, cutting)?);
    parts.extend(template::templates(spec, cutting, design)?);
    let unfit: Vec<Fault> = parts
        .iter()
        .filter_map(|part| Some((part, preflight(cutting, part).err()?)))
        .flat_map(|(part, unfit)| unfit.into_iter().map(|u| unfit_to_cut(part, &u)))
        .collect();
    if unfit.is_empty() {
        Ok(parts)
    } else {
        Err(unfit)
    }
}

fn unfit_to_cut(part: &CutPart, unfit: &Unfit) -> Fault {
    Fault::new(
        "cutting",
        format!("the {} cannot be cut so: {unfit}", part.name),
        "look again at the policies and limits of `cutting`, and at the holes named",
    )
}

#[cfg(test)]
mod scenario_tests;
