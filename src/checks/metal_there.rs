//! The thickness that a rule reckons with: as ordered, or, of a plate that is kept, the least reading where the rule asks for metal.
//!
//! The thickness as made says nothing of what is left. Readings in metal that a repair renews are not reckoned with, and none is carried
//! over from another part of the plate: where none stands, the rule is not judged.

use crate::design::{Design, MetalThere};
use crate::spec::Written;
use crate::units::Length;

/// A thickness to reckon with.
#[derive(Clone, Debug)]
pub struct Reckoned {
    /// As ordered, or as read.
    pub thickness: Length,
    /// The same, less what the works says is to be taken as lost.
    pub left: Length,
    /// Which reading it is; nothing for a plate that is to be made.
    pub as_found: Option<String>,
}

/// The thickness among the tubes.
pub fn among_tubes(written: &Written, design: &Design) -> Result<Reckoned, String> {
    let metal = design.metal_among(|hole| design.groups[hole.group].purpose.takes_a_tube());
    reckoned(written, metal, "among the tubes")
}

/// The thickness with which a rule reckons at this metal; `there` says where it is, or why it cannot be judged.
pub fn reckoned(written: &Written, metal: MetalThere<'_>, there: &str) -> Result<Reckoned, String> {
    let allowance = written.plate.corrosion_allowance.as_ref();
    let lost = allowance.map_or(Length::ZERO, |allowance| allowance.size.value());
    let of = |thickness: Length, as_found: Option<String>| Reckoned {
        thickness,
        left: thickness - lost,
        as_found,
    };
    match metal {
        MetalThere::AsWritten => Ok(of(written.plate.thickness.value(), None)),
        MetalThere::AsFound(reading) => {
            let words = format!(
                "as found: reading {}, {}, the least {there}",
                reading.number,
                reading.thickness.as_written()
            );
            Ok(of(reading.thickness.value(), Some(words)))
        }
        MetalThere::NotFound => Err(format!(
            "the plate is kept, and no reading of the survey stands {there} in metal that stays"
        )),
    }
}
