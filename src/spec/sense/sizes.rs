//! Single sizes: a slip of unit that no plate could have, and sizes that must be above nothing.

use crate::spec::{Fault, Flange, Material, OutlineSpec, Written};
use crate::units::print::{inches, trimmed};
use crate::units::{Length, MM_PER_INCH, Size};

/// No plate or barrel is thicker than this share of the bore: far beyond any boiler made, so only a slip of unit goes past.
const THICKEST_SHARE: f64 = 0.125;

/// Nor thinner than this.
const THINNEST_SHARE: f64 = 0.002;

/// Asks about a thickness that can only be in the wrong unit. The size is never changed.
pub(super) fn wrong_unit(written: &Written, faults: &mut Vec<Fault>) {
    let Some((across_path, across, name_across)) = across(written) else {
        return;
    };
    let mut thicknesses = vec![("plate.thickness", "plate", &written.plate.thickness)];
    if let Some(barrel) = &written.barrel {
        thicknesses.push(("barrel.thickness", "barrel", &barrel.thickness));
    }
    if let Some(Flange::Fabricated(ring)) = &written.flange {
        thicknesses.push((
            "flange.fabricated.ring_thickness",
            "ring",
            &ring.ring_thickness,
        ));
    }
    for (path, name, size) in thicknesses {
        let share = size.value() / across.value();
        let no_boiler = share > THICKEST_SHARE || (share > 0.0 && share < THINNEST_SHARE);
        if no_boiler && across.value() > Length::ZERO {
            faults.push(
                Fault::new(
                    path,
                    format!("a {name} {size} thick in a {across} {name_across}"),
                    format!("did you mean {}?", other_unit(size)),
                )
                .and(across_path, format!("the {name_across}")),
            );
        }
    }
}

/// What thicknesses are held against: the bore, or the size across the plate where no barrel is written.
fn across(written: &Written) -> Option<(&'static str, &Size, &'static str)> {
    if let Some(barrel) = &written.barrel {
        return Some(("barrel.bore", &barrel.bore, "bore"));
    }
    match (&written.outline, &written.flange) {
        (Some(OutlineSpec::Round(round)), _) => {
            Some(("outline.round.diameter", &round.diameter, "plate"))
        }
        (_, Some(Flange::Pressed(pressed))) => Some((
            "flange.pressed.outside_diameter",
            &pressed.outside_diameter,
            "plate",
        )),
        (Some(OutlineSpec::Keyhole(_) | OutlineSpec::Path(_)) | None, _) => None,
    }
}

/// The same figure in the other unit, and the nearest size in the written one's company: `16 mm or 5/8 in`.
pub(super) fn other_unit(size: &Size) -> String {
    let value = size.value();
    let in_millimetres = size.as_written().ends_with('m');
    if in_millimetres {
        // 0.625 mm for 0.625 in.
        let meant = Length::mm(value.to_mm() * MM_PER_INCH);
        return format!(
            "{} in or {} mm",
            trimmed(value.to_mm(), 4),
            trimmed(meant.to_mm(), 2)
        );
    }
    // 16 in for 16 mm.
    let figure = value.to_inches();
    let meant = Length::mm(figure);
    let sixteenth = Length::inches((meant.to_inches() * 16.0).round() / 16.0);
    format!("{} mm or {} in", trimmed(figure, 4), inches(sixteenth))
}

/// Sizes of metal and holes are above nothing; what may be nothing is not below it.
pub(super) fn above_nothing(written: &Written, faults: &mut Vec<Fault>) {
    let mut sizes: Vec<(String, &Size)> =
        vec![("plate.thickness".into(), &written.plate.thickness)];
    let mut may_be_nothing: Vec<(String, &Size)> = Vec::new();
    if let Some(barrel) = &written.barrel {
        sizes.push(("barrel.bore".into(), &barrel.bore));
        sizes.push(("barrel.thickness".into(), &barrel.thickness));
    }
    match &written.flange {
        Some(Flange::Pressed(pressed)) => {
            let path = |key: &str| format!("flange.pressed.{key}");
            sizes.push((path("heel_radius_inside"), &pressed.heel_radius_inside));
            may_be_nothing.push((path("trim"), &pressed.trim));
        }
        Some(Flange::Fabricated(ring)) => {
            let path = |key: &str| format!("flange.fabricated.{key}");
            may_be_nothing.push((path("weld_leg_inside"), &ring.weld_leg_inside));
            may_be_nothing.push((path("weld_leg_outside"), &ring.weld_leg_outside));
        }
        None => {}
    }
    for (i, nest) in written.tubes.iter().enumerate() {
        let path = |key: &str| format!("tubes[{i}].{key}");
        sizes.push((path("tube"), &nest.tube));
        sizes.push((path("hole"), &nest.hole));
        sizes.extend(nest.tube_end.iter().map(|end| (path("tube_end"), end)));
        sizes.extend(nest.wall.iter().map(|wall| (path("wall"), wall)));
        let length = nest.between_plates.iter();
        sizes.extend(length.map(|length| (path("between_plates"), length)));
    }
    for (i, set) in written.holes.iter().enumerate() {
        sizes.push((format!("holes[{i}].hole"), &set.hole));
        if let Some(stay) = &set.stay {
            sizes.push((format!("holes[{i}].stay.diameter"), &stay.diameter));
        }
    }
    if let Some(rivets) = &written.rivets {
        sizes.push(("rivets.rivet".into(), &rivets.rivet));
        sizes.push(("rivets.hole".into(), &rivets.hole));
        let head = rivets.head_diameter.iter();
        sizes.extend(head.map(|head| ("rivets.head_diameter".into(), head)));
        let apart = rivets.rows.iter().map(|rows| &rows.apart);
        sizes.extend(apart.map(|apart| ("rivets.rows.apart".into(), apart)));
        let clearance = rivets.head_clearance.iter();
        may_be_nothing
            .extend(clearance.map(|one| ("rivets.head_clearance.size".into(), &one.size)));
    }
    for (path, size) in sizes {
        if size.value() <= Length::ZERO {
            faults.push(Fault::new(
                path,
                format!("{size} is no size: it is not above nothing"),
                "write the size itself, without a sign",
            ));
        }
    }
    for (path, size) in may_be_nothing {
        if size.value() < Length::ZERO {
            let fact = format!("{size} is below nothing");
            faults.push(Fault::new(path, fact, "write it without the sign"));
        }
    }
}

/// A pressure or a strength that is no more than nothing: every factor on it would come out without end.
pub(super) fn strengths_above_nothing(written: &Written, faults: &mut Vec<Fault>) {
    let of =
        |material: Option<&'_ Material>| material.and_then(|material| material.strength.clone());
    let barrel = written.barrel.as_ref();
    let rivets = written.rivets.as_ref();
    let strengths = [
        ("working_pressure", written.working_pressure.clone()),
        (
            "plate.material.strength",
            of(written.plate.material.as_ref()),
        ),
        (
            "barrel.material.strength",
            of(barrel.and_then(|barrel| barrel.material.as_ref())),
        ),
        (
            "rivets.shear_strength",
            rivets.and_then(|rivets| rivets.shear_strength.clone()),
        ),
        (
            "rivets.crushing_strength.stress",
            rivets.and_then(|rivets| Some(rivets.crushing_strength.as_ref()?.stress.clone())),
        ),
    ];
    let written = strengths
        .into_iter()
        .filter_map(|(path, strength)| Some((path, strength?)));
    for (path, strength) in written {
        if strength.value().to_psi() <= 0.0 {
            faults.push(Fault::new(
                path,
                format!("{strength} is not above nothing"),
                "write the figure itself, or leave the key out: what rests on it is then not judged",
            ));
        }
    }
}

/// The blank of a pressed plate is larger than the plate by its flange, and never twice as large.
const LARGEST_BLANK: f64 = 2.0;

/// Asks about a size that is far too large to belong to this plate.
pub(super) fn too_large(written: &Written, faults: &mut Vec<Fault>) {
    let Some((across_path, across, name_across)) = across(written) else {
        return;
    };
    let mut sizes: Vec<(String, &Size, f64)> = Vec::new();
    match &written.flange {
        Some(Flange::Pressed(pressed)) => {
            sizes.push(("flange.pressed.trim".into(), &pressed.trim, 1.0));
            let blank = pressed.blank_diameter.iter();
            let path = "flange.pressed.blank_diameter";
            sizes.extend(blank.map(|blank| (path.into(), blank, LARGEST_BLANK)));
        }
        Some(Flange::Fabricated(ring)) => {
            sizes.push(("flange.fabricated.ring_width".into(), &ring.ring_width, 1.0));
        }
        None => {}
    }
    for (i, nest) in written.tubes.iter().enumerate() {
        sizes.push((format!("tubes[{i}].tube"), &nest.tube, 1.0));
    }
    if let Some(head) = written
        .rivets
        .as_ref()
        .and_then(|one| one.head_diameter.as_ref())
    {
        sizes.push(("rivets.head_diameter".into(), head, 1.0));
    }
    for (path, size, times) in sizes {
        if across.value() > Length::ZERO && size.value() > across.value() * times {
            let fact = format!("{size} is far too large for a {across} {name_across}");
            let fault = Fault::new(path, fact, "look again at its figures and its unit");
            faults.push(fault.and(across_path, format!("the {name_across}")));
        }
    }
}
