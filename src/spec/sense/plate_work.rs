//! What is said of the plate's own metal: mouths turned out of it, and girders that press it down.

use crate::spec::{Fault, Kind, Purpose, Written};
use crate::units::Length;

/// Roof girders stand in the firebox, so that they bear on no other tube plate than the firebox's.
pub(super) fn girders_on_another_plate(written: &Written, faults: &mut Vec<Fault>) {
    if written.roof_girders.is_none() {
        return;
    }
    match written.plate.kind {
        Kind::SmokeboxTubePlate => faults.push(
            Fault::new(
                "roof_girders",
                "roof girders stand in the firebox and bear on its tube plate, and this is a smokebox tube plate",
                "leave `roof_girders` out of this spec",
            )
            .and("plate.kind", "the plate"),
        ),
    }
}

/// A mouth has a depth above nothing and stands round a hole through which nothing is screwed or expanded.
pub(super) fn mouths(written: &Written, faults: &mut Vec<Fault>) {
    for (i, set) in written.holes.iter().enumerate() {
        let Some(mouth) = &set.flanged_mouth else {
            continue;
        };
        let path = format!("holes[{i}].flanged_mouth");
        if let Some(depth) = &mouth.depth
            && depth.value() <= Length::ZERO
        {
            faults.push(Fault::new(
                format!("{path}.depth"),
                format!("{depth} is no depth of a mouth: it is not above nothing"),
                "write how far the rim stands out from the face, without a sign",
            ));
        }
        if matches!(
            set.purpose,
            Purpose::Stay | Purpose::Bolt | Purpose::FormerPin
        ) {
            faults.push(
                Fault::new(
                    path,
                    format!(
                        "a mouth is turned out round an opening, and this is a {} hole",
                        set.purpose.name()
                    ),
                    "leave out the mouth, or look again at the purpose",
                )
                .and(format!("holes[{i}].purpose"), "the purpose"),
            );
        }
    }
}
