//! The flange: heel, tangent, straight and blank of a pressed plate; ring, strip and weld toes of a fabricated one.

use super::amount::Amounts;
use super::bend::{
    MID_LINE, blank_by_area, blank_by_length, din_6935, fibre_strain, right_angle_arc,
};
use crate::spec::{Allowance, BendAllowance, FabricatedFlange, Fault, PressedFlange, ViewFrom};
use crate::units::angle::PI;
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
    /// What is cut: the diameter that the spec orders, else the larger net blank and the trim all round.
    pub blank_cut: Length,
    /// Arc length of the heel along the line reckoned with.
    pub heel_arc: Length,
    /// Strain of the outer fibre of the heel if it were bent cold, as a share: half the thickness over the radius of the
    /// mid line.
    pub heel_strain: f64,
    /// By how much the rim shrinks in girth in forming, as a share: from the blank by length to the mean diameter of the
    /// finished flange.
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
    /// Metal at each end for the weld preparation of the joint.
    pub strip_preparation: Length,
    /// Metal beyond it at each end, cut off after rolling.
    pub strip_roll_waste: Length,
    /// Length of the strip as cut: net and the works' allowance.
    pub strip_cut: Length,
    /// Radius of the inner weld toe on the plate.
    pub inner_toe_radius: Length,
    /// Radius of the outer weld toe on the plate.
    pub outer_toe_radius: Length,
    /// From the plate's face to the outer weld toe on the ring's outside, measured along the ring.
    pub toe_on_ring: Length,
}

/// A pressed flange from what the spec says of it; nothing, with the faults, where its sizes contradict one another.
pub(super) fn press_flange(
    flange: &PressedFlange,
    thickness: &Size,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> Option<Pressed> {
    let (t, r, s) = (
        thickness.value(),
        flange.heel_radius_inside.value(),
        flange.straight.value(),
    );
    let tangent_radius = flange.outside_diameter.value() / 2.0 - t - r;
    let flat_is_there = flat_is_left(flange, thickness, tangent_radius, amounts, faults);
    let (share, allowance_words) = line_of_length(flange, thickness, faults)?;
    if !flat_is_there {
        return None;
    }
    let heel_arc = right_angle_arc(r, t, share);
    let blank_mid_line = blank_by_length(tangent_radius, heel_arc, s);
    let blank_equal_area = blank_by_area(tangent_radius, r, t, s);
    Some(Pressed {
        towards: flange.towards,
        outside_diameter: flange.outside_diameter.clone(),
        heel_radius: flange.heel_radius_inside.clone(),
        straight: flange.straight.clone(),
        trim: flange.trim.clone(),
        tangent_radius,
        depth: s + r + t,
        blank_mid_line,
        blank_equal_area,
        allowance_words,
        blank_cut: blank_to_cut(
            flange,
            blank_mid_line.max(blank_equal_area),
            amounts,
            faults,
        ),
        heel_arc,
        heel_strain: fibre_strain(r, t),
        rim_shrink: 1.0 - (flange.outside_diameter.value() - t) / blank_mid_line,
    })
}

/// Whether sizes are above nothing and leave a flat inside the heel.
fn flat_is_left(
    flange: &PressedFlange,
    thickness: &Size,
    tangent_radius: Length,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> bool {
    let before = faults.len();
    if thickness.value() <= Length::ZERO {
        faults.push(Fault::new(
            "plate.thickness",
            format!("a plate {thickness} thick is no plate"),
            "write the thickness ordered",
        ));
    }
    for (key, size) in [
        ("heel_radius_inside", &flange.heel_radius_inside),
        ("straight", &flange.straight),
        ("trim", &flange.trim),
    ] {
        if size.value() < Length::ZERO {
            faults.push(Fault::new(
                format!("flange.pressed.{key}"),
                format!("{size} is below nothing"),
                "write it without the sign",
            ));
        }
    }
    if tangent_radius <= Length::ZERO {
        faults.push(
            Fault::new(
                "flange.pressed.outside_diameter",
                format!(
                    "thickness and heel radius take up {} of the flange's outside radius, {}, so no flat is left",
                    amounts.length(thickness.value() + flange.heel_radius_inside.value()),
                    amounts.length(flange.outside_diameter.value() / 2.0)
                ),
                "look again at the units of the three",
            )
            .and("plate.thickness", "the thickness")
            .and("flange.pressed.heel_radius_inside", "the heel radius"),
        );
    }
    faults.len() == before
}

/// Where in the thickness the metal round the heel keeps its length, a share from the inside face, and the words for it.
fn line_of_length(
    flange: &PressedFlange,
    thickness: &Size,
    faults: &mut Vec<Fault>,
) -> Option<(f64, String)> {
    match flange.bend_allowance {
        BendAllowance::MidLine => Some((MID_LINE, "mid line".into())),
        BendAllowance::NeutralAxis(share) if (0.0..=1.0).contains(&share) => Some((
            share,
            format!("line at {share} of the thickness from the inside face"),
        )),
        BendAllowance::NeutralAxis(share) => {
            faults.push(Fault::new(
                "flange.pressed.bend_allowance.neutral_axis",
                format!("{share} of the thickness from the inside face is outside the metal"),
                "write a share from 0 to 1; the mid line is 0.5",
            ));
            None
        }
        BendAllowance::Din6935 => {
            let share = din_6935(flange.heel_radius_inside.value(), thickness.value());
            if share.is_none() {
                faults.push(
                    Fault::new(
                        "flange.pressed.bend_allowance",
                        format!(
                            "DIN 6935 has no figure for so sharp a bend as {} inside on {thickness}",
                            flange.heel_radius_inside
                        ),
                        "reckon on the mid line, or make the radius more than 1/20 of the thickness",
                    )
                    .and("flange.pressed.heel_radius_inside", "the heel radius"),
                );
            }
            share.map(|share| (share, "DIN 6935, a rule for cold bending".into()))
        }
    }
}

/// The blank as ordered, which cannot be smaller than what the flange takes.
fn blank_to_cut(
    flange: &PressedFlange,
    net: Length,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> Length {
    let Some(ordered) = &flange.blank_diameter else {
        return net + 2.0 * flange.trim.value();
    };
    if let Some(short) = ordered.value().shortfall(net) {
        faults.push(Fault::new(
            "flange.pressed.blank_diameter",
            format!(
                "a blank of {ordered} is {} smaller than the flange takes, {}, before any trim",
                amounts.length(short),
                amounts.length(net)
            ),
            format!(
                "order {} or more, which leaves the trim all round",
                amounts.length(net + 2.0 * flange.trim.value())
            ),
        ));
    }
    ordered.value()
}

/// A fabricated flange from what the spec says of it; nothing, with the faults, where its sizes contradict one another.
pub(super) fn fabricate_flange(
    flange: &FabricatedFlange,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> Option<Fabricated> {
    let outside = flange.ring_outside_diameter.value() / 2.0;
    let thickness = flange.ring_thickness.value();
    let inner_toe_radius = outside - thickness - flange.weld_leg_inside.value();
    let before = faults.len();
    for (key, size) in [
        ("ring_thickness", &flange.ring_thickness),
        ("ring_width", &flange.ring_width),
    ] {
        if size.value() <= Length::ZERO {
            faults.push(Fault::new(
                format!("flange.fabricated.{key}"),
                format!("{size} is no size of a bar"),
                "write a size above nothing",
            ));
        }
    }
    if inner_toe_radius <= Length::ZERO {
        faults.push(Fault::new(
            "flange.fabricated.ring_outside_diameter",
            format!(
                "ring and weld take up {} of the ring's outside radius, {}, so no flat is left",
                amounts.length(outside - inner_toe_radius),
                amounts.length(outside)
            ),
            "look again at the units of diameter, thickness and weld leg",
        ));
    }
    if faults.len() > before {
        return None;
    }
    let strip_net = ring_length(flange.ring_outside_diameter.value(), thickness);
    let added = |allowance: Option<&Allowance>| {
        let size = allowance.map(|allowance| allowance.size.value());
        size.unwrap_or(Length::ZERO)
    };
    let preparation = added(flange.strip_preparation.as_deref());
    let roll_waste = added(flange.strip_roll_waste.as_deref());
    Some(Fabricated {
        towards: flange.towards,
        ring_outside_diameter: flange.ring_outside_diameter.clone(),
        ring_thickness: flange.ring_thickness.clone(),
        ring_width: flange.ring_width.clone(),
        weld_leg_inside: flange.weld_leg_inside.clone(),
        weld_leg_outside: flange.weld_leg_outside.clone(),
        strip_net,
        strip_preparation: preparation,
        strip_roll_waste: roll_waste,
        strip_cut: strip_net
            + added(flange.strip_allowance.as_ref())
            + 2.0 * (preparation + roll_waste),
        inner_toe_radius,
        outer_toe_radius: outside + flange.weld_leg_outside.value(),
        // The leg of a fillet is the same up the ring as along the plate.
        toe_on_ring: flange.weld_leg_outside.value(),
    })
}

/// Length of the strip that makes a ring, along its mid thickness, which keeps its length in rolling.
pub fn ring_length(outside: Length, thickness: Length) -> Length {
    PI * (outside - thickness)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// TAFE NSW, lesson on mean diameter: OD 650, t 10 → 2011 mm.
    #[test]
    fn published_ring_650() {
        let length = ring_length(Length::mm(650.0), Length::mm(10.0));
        assert_eq!(decimal(length.to_mm(), 0), "2011");
    }

    /// Ring 30 in OD × 1/2: π × 29.5 = 92.677 in, 2353.995 mm.
    #[test]
    fn by_hand_ring_30_in() {
        let length = ring_length(Length::inches(30.0), Length::inches(0.5));
        assert_eq!(decimal(length.to_inches(), 3), "92.677");
        assert_eq!(decimal(length.to_mm(), 3), "2353.995");
    }
}
