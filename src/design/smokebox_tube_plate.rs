//! The smokebox tube plate: its edge, the lines that end its flat, and its flange.

use super::amount::Amounts;
use super::flange::{fabricate_flange, press_flange};
use super::outline_of_spec::outline_of;
use super::{FlangeDesign, Outline, Point};
use crate::spec::{FabricatedFlange, Fault, Flange, NamedLine, ViewFrom, Written};
use crate::units::Length;

/// The shape of a plate before any hole is in it.
#[derive(Clone, Debug)]
pub(super) struct Form {
    /// Edge of the finished plate in the face view.
    pub edge: Outline,
    /// The lines that metal is measured to.
    pub lines: Vec<(NamedLine, Outline)>,
    /// The flange, where there is one.
    pub flange: Option<FlangeDesign>,
}

impl Form {
    /// A line of this plate by its name.
    pub(super) fn line(&self, name: NamedLine) -> Option<&Outline> {
        self.lines
            .iter()
            .find(|(line, _)| *line == name)
            .map(|(_, outline)| outline)
    }

    /// The lines within which every tube and flue stands: the tangent, the inner weld toe, and the edge of a flat plate.
    pub(super) fn ends_of_flat(&self) -> impl Iterator<Item = (NamedLine, &Outline)> {
        self.lines.iter().filter_map(|(name, line)| match name {
            NamedLine::Tangent | NamedLine::InnerWeldToe | NamedLine::Edge => Some((*name, line)),
            NamedLine::OuterWeldToe => None,
        })
    }

    /// The fault of naming a line that this plate has not.
    pub(super) fn no_such_line(&self, name: NamedLine, path: String) -> Fault {
        let has: Vec<&str> = self.lines.iter().map(|(line, _)| line.name()).collect();
        Fault::new(
            path,
            format!("this plate has no {} to measure to", name.name()),
            format!("name a line that it has: {}", has.join(", ")),
        )
    }
}

/// Edge, lines and flange of the plate; nothing where the spec gives no plate to put holes in, with the faults that say why.
pub(super) fn form(written: &Written, amounts: Amounts, faults: &mut Vec<Fault>) -> Option<Form> {
    let thickness = &written.plate.thickness;
    match (&written.flange, &written.outline) {
        (Some(Flange::Pressed(_)), Some(_)) => {
            faults.push(
                Fault::new(
                    "outline",
                    "the edge of a pressed plate follows from its flange, and an outline is written as well",
                    "leave out the outline, or the pressed flange",
                )
                .and("flange.pressed", "the flange"),
            );
            None
        }
        (Some(Flange::Pressed(flange)), None) => {
            let pressed = press_flange(flange, thickness, amounts, faults)?;
            let circle = |radius| Outline::circle(Point::CENTRE, radius);
            Some(Form {
                edge: circle(flange.outside_diameter.value().to_mm() / 2.0),
                lines: vec![(NamedLine::Tangent, circle(pressed.tangent_radius.to_mm()))],
                flange: Some(FlangeDesign::Pressed(pressed)),
            })
        }
        (Some(Flange::Fabricated(flange)), Some(outline)) => {
            let edge = outline_of(outline, amounts, faults);
            let fabricated = fabricate_flange(flange, amounts, faults);
            let (edge, fabricated) = (edge?, fabricated?);
            let circle = |radius: Length| Outline::circle(Point::CENTRE, radius.to_mm());
            let outer_toe = circle(fabricated.outer_toe_radius);
            weld_stays_on_plate(&edge, fabricated.outer_toe_radius, amounts, faults);
            ring_enters_the_barrel(written, flange, &edge, faults);
            Some(Form {
                lines: vec![
                    (NamedLine::InnerWeldToe, circle(fabricated.inner_toe_radius)),
                    (NamedLine::OuterWeldToe, outer_toe),
                    (NamedLine::Edge, edge.clone()),
                ],
                edge,
                flange: Some(FlangeDesign::Fabricated(fabricated)),
            })
        }
        (None, Some(outline)) => {
            let edge = outline_of(outline, amounts, faults)?;
            Some(Form {
                lines: vec![(NamedLine::Edge, edge.clone())],
                edge,
                flange: None,
            })
        }
        (flange, None) => {
            let fact = match flange {
                Some(_) => {
                    "a ring is to be welded to the plate, and nothing says where the plate ends"
                }
                None => "nothing says where the plate ends",
            };
            faults.push(Fault::new(
                "",
                fact,
                "write its outline, or a pressed flange",
            ));
            None
        }
    }
}

/// A plate carried out beyond the bore stops the barrel's end, so its ring goes in from the smokebox, towards the firebox.
fn ring_enters_the_barrel(
    written: &Written,
    flange: &FabricatedFlange,
    edge: &Outline,
    faults: &mut Vec<Fault>,
) {
    let Some(barrel) = &written.barrel else {
        return;
    };
    let (low, high) = edge.bounds();
    let reach = (-low.x).max(-low.y).max(high.x).max(high.y);
    if flange.towards == ViewFrom::Smokebox && reach > barrel.bore.value().to_mm() / 2.0 {
        faults.push(
            Fault::new(
                "flange.fabricated.towards",
                "the plate is wider than the bore, so a ring towards the smokebox would stand outside the barrel that it is to be \
                 riveted in",
                "write `towards: firebox`: the ring goes into the barrel from the smokebox",
            )
            .and("barrel.bore", "the bore"),
        );
    }
}

/// The weld outside the ring lies on the plate all the way round.
fn weld_stays_on_plate(
    edge: &Outline,
    outer_toe: Length,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) {
    let reach = Length::mm(if edge.contains(Point::CENTRE) {
        edge.distance(Point::CENTRE)
    } else {
        0.0
    });
    if let Some(short) = reach.shortfall(outer_toe) {
        faults.push(
            Fault::new(
                "flange.fabricated.weld_leg_outside",
                format!(
                    "the weld outside the ring runs {} over the edge of the plate",
                    amounts.length(short)
                ),
                "look again at the ring, the weld leg and the outline",
            )
            .and("outline", "the edge"),
        );
    }
}
