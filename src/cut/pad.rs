//! Pads and doubling rings: round parts of their own, their holes and their bore by the same policies as the plate's.

use super::centre_line::{TICK_GAP_MM, TICK_MM, top_tick};
use super::clear_place::Field;
use super::hole_policy::Tally;
use super::part::{CutPart, Layer, PartKind, Shape};
use super::pressed::pop;
use super::stamp::{Inscription, identity, lay_marks};
use crate::design::cutter::{Figure, Made, Settings, in_mm, made};
use crate::design::{Outline, Point};
use crate::spec::{Cutting, Fault, HoleCut, HoleSet, Pad, Spec};
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
        faults.extend(size_faults(spec, cutting, pad, &path));
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
    let left = bore_left(spec, &settings, pad);
    let left_mm = left.as_ref().map_or(0.0, |left| left.value.to_mm());
    let bore_cut = bore.map(|radius| radius - left_mm / 2.0);
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
    let joint = joint_mm(spec, pad);
    if joint > 0.0 {
        field.keep_clear_of(Point::CENTRE, joint);
    }
    marks.extend(tick_at_top(pad, joint));
    // Where metal is left for dressing, the finished edges are scribed, or nobody could dress to them.
    if dress.is_some() {
        marks.push((Layer::Scribe, circle(radius_mm(&pad.diameter))));
    }
    if let (Some(bore), Some(cut)) = (bore, bore_cut) {
        field.keep_clear_of(Point::CENTRE, bore);
        cuts.push((Layer::CutInside, circle(cut)));
        if let Some(left) = &left {
            let (finish, cut) = (Length::mm(2.0 * bore), Length::mm(2.0 * cut));
            tally.cut("bore", "bore", finish, (cut, left.words.clone()));
        }
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
        by_hand: Vec::new(),
        quarters: Vec::new(),
        mass_kg: density.map(|density| density.value().mass_kg(volume)),
        material,
        lies: lies(pad).into(),
        shapes: marks,
        holes_cut: tally.cut,
        withheld: tally.withheld,
        places: holes(pad).map(|(id, _, at)| (id, at)).collect(),
        remarks: remarks(pad, left.is_some()),
    };
    let near = Point::new(0.0, radius_mm(&pad.diameter));
    let foot = Point::new(0.0, -near.y);
    let mut inscriptions = vec![
        Inscription::anywhere([identity(spec), pad.name.to_uppercase()], near),
        Inscription::heat_number(foot),
    ];
    if has_top(pad) {
        inscriptions.insert(0, Inscription::top(near, 0.0));
    }
    lay_marks(&mut part, spec, &inscriptions, field);
    part
}

/// The holes of the plate that the pad stands round.
fn stands_round<'a>(spec: &'a Spec, pad: &'a Pad) -> impl Iterator<Item = &'a HoleSet> {
    spec.written.holes.iter().filter(|set| {
        let at = set.pad.as_ref();
        at.is_some_and(|at| at.name == pad.name)
    })
}

/// Radius of the joint that is faced on the pad, mm: a stamp in it would leak, or be faced away. Nothing where there is none.
fn joint_mm(spec: &Spec, pad: &Pad) -> f64 {
    let faces = stands_round(spec, pad).filter_map(|set| set.joint_face.as_ref());
    faces
        .map(|face| radius_mm(&face.diameter))
        .fold(0.0, f64::max)
}

/// What is left in the bore for the works to take out, on the diameter: as much as in the holes of the plate that the pad stands
/// round, with which it is bored; the metal left on inside edges where that is more. None where neither leaves any.
fn bore_left(spec: &Spec, settings: &Settings<'_>, pad: &Pad) -> Option<Figure> {
    let stands_round = stands_round(spec, pad);
    let as_its_holes = stands_round.filter_map(|set| settings.policy(set.purpose)?.under);
    let dressed = 2.0 * settings.dress_inside();
    let dressed = (dressed > Length::ZERO).then(|| Figure {
        value: dressed,
        words: format!(
            "{} mm left all round for dressing",
            millimetres(settings.dress_inside())
        ),
    });
    let left = as_its_holes.chain(dressed);
    left.max_by(|a, b| a.value.total_cmp(&b.value))
}

/// Whether one way up differs from another: a hole stands off the middle.
fn has_top(pad: &Pad) -> bool {
    holes(pad).any(|(_, _, at)| at.radius() > SAME_LENGTH_MM)
}

fn lies(pad: &Pad) -> &'static str {
    match has_top(pad) {
        true => "FACE UP IS THE FACE SEEN WHEN FITTED, TOP UP",
        false => "FACE UP IS THE FACE SEEN WHEN FITTED",
    }
}

/// A tick inside the edge, outside every hole and the joint, at the top of a pad that has one; none where there is no room.
fn tick_at_top(pad: &Pad, joint_mm: f64) -> Option<(Layer, Shape)> {
    let reaches = holes(pad).map(|(_, hole, at)| at.radius() + radius_mm(&hole.hole));
    let bore = pad.bore.as_ref().map_or(0.0, radius_mm);
    let inner = reaches.fold(bore.max(joint_mm), f64::max);
    let outer = radius_mm(&pad.diameter) - TICK_GAP_MM;
    let long = TICK_MM.min(outer - TICK_GAP_MM - inner);
    (has_top(pad) && long > TICK_GAP_MM).then(|| top_tick(outer - long, outer))
}

fn remarks(pad: &Pad, bored_later: bool) -> Vec<String> {
    let mut remarks = vec![format!("Finished to {} across.", in_mm(&pad.diameter))];
    if let (Some(bore), false) = (&pad.bore, bored_later) {
        remarks.push(format!(
            "Bore as cut, {}: nothing is left in it for the works to take out.",
            in_mm(bore)
        ));
    }
    remarks.extend(pad.remarks.clone());
    remarks
}

fn radius_mm(diameter: &Size) -> f64 {
    diameter.value().to_mm() / 2.0
}

/// Every hole with its number, `bolts 1`, or its name alone where it is the only one, and its place.
fn holes(pad: &Pad) -> impl Iterator<Item = (String, &crate::spec::PadHole, Point)> {
    pad.holes.iter().flat_map(|hole| {
        hole.at.iter().enumerate().map(move |(i, (x, y))| {
            let at = Point::new(x.value().to_mm(), y.value().to_mm());
            let id = match hole.at.len() {
                1 => hole.name.clone(),
                _ => format!("{} {}", hole.name, i + 1),
            };
            (id, hole, at)
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

fn size_faults(spec: &Spec, cutting: &Cutting, pad: &Pad, path: &str) -> Vec<Fault> {
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
        let left = bore_left(spec, &settings, pad).map_or(Length::ZERO, |left| left.value);
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
        } else if bore.value() <= left {
            faults.push(
                Fault::new(
                    format!("{path}.bore"),
                    format!("the metal left for the works to take out closes a bore of {bore}"),
                    "leave the bore out and have it drilled, or leave less metal",
                )
                .and(
                    "cutting",
                    "the metal left: `dress_inside`, or `holes` for what the pad stands round",
                ),
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
