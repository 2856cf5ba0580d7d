//! Pads and doubling rings: round parts of their own, their holes by the same policies as the plate's.

use super::clear_place::Field;
use super::hole_policy::Tally;
use super::part::{CutPart, Layer, PartKind, Shape};
use super::pressed::pop;
use super::stamp::{Inscription, identity, lay_marks};
use crate::design::cutter::Settings;
use crate::design::cutter::{Made, made};
use crate::design::{Outline, Point};
use crate::spec::{Cutting, Fault, HoleCut, Pad, Spec};
use crate::units::angle::PI;
use crate::units::print::millimetres;
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

/// Names that other parts of a job have.
const TAKEN: [&str; 6] = [
    "blank",
    "plate",
    "ring",
    "heel gauge",
    "former",
    "roll check",
];

/// A part for every pad of the spec, or every fault in them.
pub(super) fn pads(spec: &Spec, cutting: &Cutting) -> Result<Vec<CutPart>, Vec<Fault>> {
    let pads = &spec.written.pads;
    let mut faults = Vec::new();
    for (index, pad) in pads.iter().enumerate() {
        let path = format!("pads[{index}]");
        faults.extend(name_faults(pads, index, &path));
        faults.extend(size_faults(cutting, pad, &path));
        faults.extend(hole_faults(pad, &path));
    }
    match faults.is_empty() {
        true => Ok(pads.iter().map(|pad| part(spec, cutting, pad)).collect()),
        false => Err(faults),
    }
}

fn part(spec: &Spec, cutting: &Cutting, pad: &Pad) -> CutPart {
    let settings = Settings::of(cutting, Some(pad.thickness.value()));
    let dress = settings.dress_outside();
    let outside = radius_mm(&pad.diameter) + dress.as_ref().map_or(0.0, |d| d.value.to_mm());
    let bore = pad.bore.as_ref().map(radius_mm);
    let bore_cut = bore.map(|radius| radius - settings.dress_inside().to_mm());
    let circle = |radius: f64| Shape::Circle {
        centre: Point::CENTRE,
        radius,
    };
    let (mut marks, mut cuts, mut tally) = (Vec::new(), Vec::new(), Tally::default());
    let mut field = Field::inside(Outline::circle(Point::CENTRE, radius_mm(&pad.diameter)));
    for (id, hole, at) in holes(pad) {
        field.keep_clear_of(at, radius_mm(&hole.hole));
        let finish = hole.hole.value();
        match made(&settings, hole.purpose, finish) {
            Made::Cut(diameter, by) => {
                let radius = diameter.to_mm() / 2.0;
                cuts.push((Layer::CutInside, Shape::Circle { centre: at, radius }));
                tally.cut(&id, &hole.name, finish, (diameter, by));
            }
            Made::Pop(reason) => {
                marks.push((Layer::Pop, pop(cutting.pop, at)));
                tally.withhold(&id, "a pop", &reason);
            }
            Made::Nothing(reason) => tally.withhold(&id, "nothing", &reason),
        }
    }
    // Where metal is left for dressing, the finished edges are scribed, or nobody could dress to them.
    if dress.is_some() {
        marks.push((Layer::Scribe, circle(radius_mm(&pad.diameter))));
    }
    if let (Some(bore), Some(cut)) = (bore, bore_cut) {
        field.keep_clear_of(Point::CENTRE, bore);
        cuts.push((Layer::CutInside, circle(cut)));
    }
    let material = pad
        .material
        .clone()
        .or_else(|| spec.written.plate.material.clone());
    let area = PI * (outside * outside - bore_cut.map_or(0.0, |r| r * r));
    let volume = area * pad.thickness.value().to_mm();
    let density = material.as_ref().and_then(|m| m.density.as_ref());
    marks.extend(cuts);
    marks.push((Layer::CutOutside, circle(outside)));
    let mut part = CutPart {
        name: pad.name.clone(),
        kind: PartKind::Pad,
        number_off: pad.number_off.unwrap_or(1),
        process: cutting.process,
        thickness: Some(pad.thickness.clone()),
        inscriptions: Vec::new(),
        mass_kg: density.map(|density| density.value().mass_kg(volume)),
        material,
        lies: "FACE UP IS THE FACE SEEN WHEN FITTED".into(),
        shapes: marks,
        holes_cut: tally.cut,
        withheld: tally.withheld,
        places: holes(pad).map(|(id, _, at)| (id, at)).collect(),
        remarks: remarks(pad, bore_cut),
    };
    let near = Point::new(0.0, radius_mm(&pad.diameter));
    let foot = Point::new(0.0, -near.y);
    let inscriptions = [
        Inscription::anywhere([identity(spec), pad.name.to_uppercase()], near),
        Inscription::heat_number(foot),
    ];
    lay_marks(&mut part, spec, &inscriptions, field);
    part
}

fn remarks(pad: &Pad, bore_cut: Option<f64>) -> Vec<String> {
    let mut remarks = vec![format!("Finished to {} across.", pad.diameter)];
    if let (Some(bore), Some(cut)) = (&pad.bore, bore_cut) {
        remarks.push(format!(
            "Bore cut to {} mm, finished to {bore}.",
            millimetres(Length::mm(2.0 * cut))
        ));
    }
    remarks.extend(pad.remarks.clone());
    remarks
}

fn radius_mm(diameter: &Size) -> f64 {
    diameter.value().to_mm() / 2.0
}

/// Every hole with its number, `bolts 1`, and its place.
fn holes(pad: &Pad) -> impl Iterator<Item = (String, &crate::spec::PadHole, Point)> {
    pad.holes.iter().flat_map(|hole| {
        hole.at.iter().enumerate().map(move |(i, (x, y))| {
            let at = Point::new(x.value().to_mm(), y.value().to_mm());
            (format!("{} {}", hole.name, i + 1), hole, at)
        })
    })
}

/// Names that would give two parts one file.
fn name_faults(pads: &[Pad], index: usize, path: &str) -> Option<Fault> {
    let plain = |name: &str| -> String {
        let letters = name.chars().map(|c| match c.is_ascii_alphanumeric() {
            true => c.to_ascii_lowercase(),
            false => ' ',
        });
        letters.collect()
    };
    let name = plain(&pads[index].name);
    let fault = |fact: String| {
        Some(Fault::new(
            format!("{path}.name"),
            fact,
            "write a name of its own: the part and its file are called by it",
        ))
    };
    if name.trim().is_empty() {
        return fault("a pad has no name that a file could have".into());
    }
    if TAKEN.contains(&name.as_str()) {
        return fault(format!(
            "`{}` is the name of another part",
            pads[index].name
        ));
    }
    match pads[..index].iter().any(|pad| plain(&pad.name) == name) {
        true => fault(format!("two pads are called `{}`", pads[index].name)),
        false => None,
    }
}

fn size_faults(cutting: &Cutting, pad: &Pad, path: &str) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (key, size) in [("diameter", &pad.diameter), ("thickness", &pad.thickness)] {
        if size.value() <= Length::ZERO {
            let fact = format!("{size} is no {key} of a pad");
            faults.push(Fault::new(
                format!("{path}.{key}"),
                fact,
                "write a size above nothing",
            ));
        }
    }
    let settings = Settings::of(cutting, Some(pad.thickness.value()));
    if let Some(bore) = &pad.bore {
        let left = bore.value() - 2.0 * settings.dress_inside();
        if bore.value() >= pad.diameter.value() {
            faults.push(
                Fault::new(
                    format!("{path}.bore"),
                    format!(
                        "a bore of {bore} leaves nothing of a ring {} across",
                        pad.diameter
                    ),
                    "look again at the two",
                )
                .and(format!("{path}.diameter"), "the ring"),
            );
        } else if left <= Length::ZERO {
            faults.push(
                Fault::new(
                    format!("{path}.bore"),
                    format!("the metal left for dressing closes a bore of {bore}"),
                    "leave the bore out and have it drilled, or leave less metal",
                )
                .and("cutting.dress_inside", "the metal left"),
            );
        }
    }
    for (i, hole) in pad.holes.iter().enumerate() {
        let path = format!("{path}.holes[{i}]");
        if hole.hole.value() <= Length::ZERO {
            let fact = format!("{} is no size of a hole", hole.hole);
            faults.push(Fault::new(
                format!("{path}.hole"),
                fact,
                "write a size above nothing",
            ));
        }
        faults.extend(policy_fault(&settings, hole, &path));
    }
    faults
}

/// A hole that would be finished by heat, or of which the policy leaves nothing.
fn policy_fault(settings: &Settings<'_>, hole: &crate::spec::PadHole, path: &str) -> Option<Fault> {
    let policy = settings.policy(hole.purpose)?;
    let under = policy.under.as_ref().map_or(Length::ZERO, |u| u.value);
    (policy.cut == HoleCut::Undersize && hole.hole.value() <= under).then(|| {
        let fact = format!(
            "{} mm under leaves nothing of {}",
            millimetres(under),
            hole.hole
        );
        Fault::new(format!("{path}.hole"), fact, "cut a pop for this purpose")
            .and("cutting.holes", "the policy")
    })
}

/// Finished holes that meet one another, the bore or the edge.
fn hole_faults(pad: &Pad, path: &str) -> Vec<Fault> {
    let all: Vec<_> = holes(pad).collect();
    let fault = |fact: String| {
        Fault::new(
            format!("{path}.holes"),
            fact,
            "look again at its place and size",
        )
    };
    let mut faults = Vec::new();
    for (i, (id, hole, at)) in all.iter().enumerate() {
        let radius = radius_mm(&hole.hole);
        if at.radius() + radius >= radius_mm(&pad.diameter) - SAME_LENGTH_MM {
            faults.push(fault(format!(
                "{id} of {} runs out through the edge",
                pad.name
            )));
        }
        let bore = pad.bore.as_ref().map_or(f64::NEG_INFINITY, radius_mm);
        if at.radius() - radius <= bore + SAME_LENGTH_MM {
            faults.push(fault(format!("{id} of {} runs into the bore", pad.name)));
        }
        for (other_id, other, other_at) in &all[..i] {
            if at.distance(*other_at) <= radius + radius_mm(&other.hole) + SAME_LENGTH_MM {
                faults.push(fault(format!(
                    "{other_id} and {id} of {} overlap",
                    pad.name
                )));
            }
        }
    }
    faults
}
