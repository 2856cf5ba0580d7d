//! The edge of a flat plate from what the spec says of it.

use super::amount::{Amounts, point};
use super::keyhole::ImpossibleKeyhole;
use super::path::{BadStep, ImpossiblePath, Step, Walk};
use super::{NotAnOutline, Outline, Point};
use crate::spec::{Fault, KeyholeOutline, OutlineSpec, PathOutline, PathStep, RoundOutline};
use crate::units::Length;

/// The edge, or nothing and the fault that says why there is none.
pub(super) fn outline_of(
    written: &OutlineSpec,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> Option<Outline> {
    let outline = match written {
        OutlineSpec::Round(round) => disc(round),
        OutlineSpec::Keyhole(keyhole) => keyhole_plate(keyhole),
        OutlineSpec::Path(path) => walked(path, amounts),
    };
    outline.map_err(|fault| faults.push(fault)).ok()
}

fn disc(round: &RoundOutline) -> Result<Outline, Fault> {
    let diameter = &round.diameter;
    if diameter.value() > Length::ZERO {
        Ok(Outline::circle(
            Point::CENTRE,
            diameter.value().to_mm() / 2.0,
        ))
    } else {
        Err(Fault::new(
            "outline.round.diameter",
            format!("{diameter} is no diameter of a plate"),
            "write a diameter above nothing",
        ))
    }
}

fn keyhole_plate(keyhole: &KeyholeOutline) -> Result<Outline, Fault> {
    Outline::keyhole(
        keyhole.radius.value().to_mm(),
        keyhole.leg_width.value().to_mm(),
        keyhole.foot.value().to_mm(),
        keyhole.corner_radius.value().to_mm(),
        keyhole.foot_radius.as_ref().map(|r| r.value().to_mm()),
    )
    .map_err(|impossible| {
        let key = match impossible {
            ImpossibleKeyhole::NoSize | ImpossibleKeyhole::NotAnOutline => "",
            ImpossibleKeyhole::LegTooWide => ".leg_width",
            ImpossibleKeyhole::FootInsideDisc => ".foot",
            ImpossibleKeyhole::NegativeRadius | ImpossibleKeyhole::CornerTooLarge => {
                ".corner_radius"
            }
            ImpossibleKeyhole::FootRadiusTooWide | ImpossibleKeyhole::FootRadiusTooHigh => {
                ".foot_radius"
            }
        };
        Fault::new(
            format!("outline.keyhole{key}"),
            impossible.to_string(),
            "look again at radius, leg_width, foot and the corner radii",
        )
    })
}

fn walked(path: &PathOutline, amounts: Amounts) -> Result<Outline, Fault> {
    let steps = steps_of(&path.steps, "outline.path")?;
    Outline::path(point(&path.start), &steps).map_err(|impossible| match impossible {
        ImpossiblePath::Step(index, bad) => bad_step("outline.path", index, bad),
        ImpossiblePath::NotClosed(gap) => Fault::new(
            "outline.path.steps",
            format!(
                "the last step ends {} from the start, so the edge does not close",
                amounts.mm(gap)
            ),
            "end the last step at the start",
        ),
        ImpossiblePath::NotAnOutline(NotAnOutline::Crosses(place)) => Fault::new(
            "outline.path",
            format!(
                "the edge crosses or touches itself near {}",
                amounts.place(place)
            ),
            "look again at the steps that meet there",
        ),
        ImpossiblePath::NotAnOutline(other) => {
            Fault::new("outline.path", other.to_string(), "look again at the steps")
        }
    })
}

/// The steps of a walk that stands at this path of the spec.
pub(super) fn steps_of(steps: &[PathStep], path: &str) -> Result<Vec<Step>, Fault> {
    steps
        .iter()
        .enumerate()
        .map(|(index, one)| step(&format!("{path}.steps[{index}]"), one))
        .collect()
}

/// The fault of a step that cannot be walked.
pub(super) fn bad_step(path: &str, index: usize, bad: BadStep) -> Fault {
    Fault::new(
        format!("{path}.steps[{index}]"),
        bad.to_string(),
        "look again at this step and the one before it",
    )
}

fn step(path: &str, step: &PathStep) -> Result<Step, Fault> {
    let walk = match (&step.through, &step.radius) {
        (None, None) => Walk::Straight,
        (Some(through), None) => Walk::Through(point(through)),
        (None, Some(radius)) => Walk::Radius(radius.value().to_mm()),
        (Some(_), Some(_)) => {
            return Err(Fault::new(
                path,
                "an arc goes through a place or has a radius, and this step says both",
                "write one of through and radius",
            ));
        }
    };
    Ok(Step {
        to: point(&step.to),
        walk,
        corner_radius: step
            .corner_radius
            .as_ref()
            .map_or(0.0, |r| r.value().to_mm()),
    })
}
