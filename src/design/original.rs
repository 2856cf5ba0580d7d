//! What a plate departs from its original in: each figure that the spec gives of the original beside that of this plate.

use super::{Design, FlangeDesign, MetalThere};
use crate::spec::{NestPurpose, Purpose, Written};
use crate::units::{Length, Size};

/// A figure of the original and the same of this plate.
#[derive(Clone, Debug)]
pub struct BesideOriginal {
    /// Which figure.
    pub what: OriginalFigure,
    /// As the original had it.
    pub was: Told,
    /// As this plate has it.
    pub now: Told,
}

/// A figure that a spec may give of the original.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OriginalFigure {
    /// Thickness of the plate.
    Thickness,
    /// What the plate is made of.
    Material,
    /// Inside radius of the heel.
    HeelRadius,
    /// Outside diameter of the tubes.
    Tube,
    /// Finished tube hole.
    TubeHole,
    /// Tubes and flues together.
    TubeCount,
    /// Least metal between two tube holes.
    Ligament,
}

impl OriginalFigure {
    /// As it is printed.
    pub fn name(self) -> &'static str {
        match self {
            OriginalFigure::Thickness => "thickness",
            OriginalFigure::Material => "material",
            OriginalFigure::HeelRadius => "heel radius",
            OriginalFigure::Tube => "tube",
            OriginalFigure::TubeHole => "tube hole",
            OriginalFigure::TubeCount => "number of tubes",
            OriginalFigure::Ligament => "least metal between tube holes",
        }
    }
}

/// How a figure is told.
#[derive(Clone, Debug)]
pub enum Told {
    /// A size as written.
    Size(Size),
    /// A length that was worked out.
    Length(Length),
    /// How many.
    Count(usize),
    /// In words.
    Words(String),
    /// This plate has no such thing, or the spec does not say.
    Nothing(&'static str),
}

impl Told {
    /// Its length, where it is one.
    pub fn length(&self) -> Option<Length> {
        match self {
            Told::Size(size) => Some(size.value()),
            Told::Length(length) => Some(*length),
            Told::Count(_) | Told::Words(_) | Told::Nothing(_) => None,
        }
    }

    fn same_as(&self, other: &Told) -> bool {
        match (self, other) {
            (Told::Count(a), Told::Count(b)) => a == b,
            (Told::Words(a), Told::Words(b)) => {
                let plain = |text: &str| {
                    text.split_whitespace()
                        .collect::<Vec<_>>()
                        .join(" ")
                        .to_lowercase()
                };
                plain(a) == plain(b)
            }
            _ => match (self.length(), other.length()) {
                (Some(a), Some(b)) => a.same_as(b),
                _ => false,
            },
        }
    }
}

impl BesideOriginal {
    /// Whether this plate has it otherwise.
    pub fn departs(&self) -> bool {
        !self.was.same_as(&self.now)
    }
}

/// As ordered; of a plate that is kept, the least reading that stays.
fn thickness_now(design: &Design) -> Told {
    match design.metal_there(|_| true) {
        MetalThere::AsWritten => Told::Size(design.thickness.clone()),
        MetalThere::AsFound(reading) => Told::Size(reading.thickness.clone()),
        MetalThere::NotFound => Told::Nothing("not known: no reading of the survey"),
    }
}

/// Every figure that the spec gives of the original, beside this plate's; in the order of a description of a plate.
pub fn beside_original(written: &Written, design: &Design) -> Vec<BesideOriginal> {
    let Some(original) = &written.plate.original else {
        return Vec::new();
    };
    let size = |size: &Option<Size>| size.clone().map(Told::Size);
    let tubes = written
        .tubes
        .iter()
        .find(|nest| nest.purpose == NestPurpose::Tube)
        .or(written.tubes.first());
    let metal = design
        .least_ligaments
        .iter()
        .find(|least| least.between == (Purpose::Tube, Purpose::Tube))
        .map(|least| Told::Length(least.ligament.metal));
    let heel = match &design.flange {
        Some(FlangeDesign::Pressed(flange)) => Told::Size(flange.heel_radius.clone()),
        Some(FlangeDesign::Fabricated(_)) => Told::Nothing("none: the flange is a welded ring"),
        None => Told::Nothing("none: no flange is written"),
    };
    let material = written.plate.material.as_ref();
    let no_tubes = || Told::Nothing("none: no tubes are written");
    let all = [
        (
            OriginalFigure::Thickness,
            size(&original.thickness),
            thickness_now(design),
        ),
        (
            OriginalFigure::Material,
            original.material.clone().map(Told::Words),
            material.map_or(Told::Nothing("not given"), |material| {
                Told::Words(material.grade.clone())
            }),
        ),
        (
            OriginalFigure::HeelRadius,
            size(&original.heel_radius_inside),
            heel,
        ),
        (
            OriginalFigure::Tube,
            size(&original.tube),
            tubes.map_or_else(no_tubes, |nest| Told::Size(nest.tube.clone())),
        ),
        (
            OriginalFigure::TubeHole,
            size(&original.tube_hole),
            tubes.map_or_else(no_tubes, |nest| Told::Size(nest.hole.clone())),
        ),
        (
            OriginalFigure::TubeCount,
            original.tube_count.map(|count| Told::Count(count as usize)),
            Told::Count(
                design
                    .holes
                    .iter()
                    .filter(|h| design.groups[h.group].purpose.takes_a_tube())
                    .count(),
            ),
        ),
        (
            OriginalFigure::Ligament,
            size(&original.ligament),
            metal.unwrap_or(Told::Nothing("none: no two tubes stand side by side")),
        ),
    ];
    let given = all.into_iter().filter_map(|(what, was, now)| {
        Some(BesideOriginal {
            what,
            was: was?,
            now,
        })
    });
    given.collect()
}
