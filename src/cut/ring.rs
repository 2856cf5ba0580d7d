//! The strip from which the ring of a fabricated flange is rolled.
//!
//! It lies with the face up that will be the inside of the ring and the free edge at the top. Its ends meet midway between
//! the two rivets next to top centre, so that no rivet goes through the joint, or where the spec puts the joint. Rivets lie along it by angle on mid
//! thickness, where the net length is true.

use super::centre_line::{TICK_GAP_MM, TICK_MM};
use super::clear_place::Field;
use super::file_name::side;
use super::part::{CutPart, Layer, PartKind, Shape, Withheld};
use super::pressed::pop;
use super::reference::rectangle;
use super::stamp::{Inscription, identity, lay_marks};
use crate::design::cutter::Settings;
use crate::design::{Design, Fabricated, JointPlace, Outline, Point, Rivet, RivetMade, ring_joint};
use crate::spec::{Cutting, Fault, Flange, Spec, ViewFrom};
use crate::units::print::{decimal, millimetres, trimmed};
use crate::units::tolerance::SAME_ANGLE_DEG;
use crate::units::{Length, Size};

/// The strip, or the fault in its sizes.
pub(super) fn strip(
    spec: &Spec,
    cutting: &Cutting,
    design: &Design,
    ring: &Fabricated,
) -> Result<CutPart, Vec<Fault>> {
    let (length, width) = (ring.strip_cut.to_mm(), ring.ring_width.value().to_mm());
    let settings = Settings::of(cutting, Some(ring.ring_thickness.value()));
    let dress = settings.dress_outside().map_or(0.0, |d| d.value.to_mm());
    let edge = strip_edge(length, width, 0.0)?;
    let cut = strip_edge(length, width, dress)?;
    let joint = ring_joint(spec, design).expect("what has a strip has a fabricated flange");
    let faults = joint_faults(design, &joint);
    if !faults.is_empty() {
        return Err(faults);
    }
    let joint_deg = joint.angle_deg;
    let place = |angle_deg: f64| along(ring, design, joint_deg, angle_deg);
    let rivets = rivet_places(design, ring, joint_deg);
    let mut shapes: Vec<(Layer, Shape)> = rivets
        .iter()
        .filter(|(rivet, _)| rivet.made == RivetMade::Tack)
        .map(|(_, at)| (Layer::Pop, pop(cutting.pop, *at)))
        .collect();
    let quarters = quarters(ring, place);
    shapes.extend(quarters.iter().flat_map(|(_, x)| ticks(*x, width)));
    shapes.extend(end_ticks(ring, width));
    if dress > 0.0 {
        shapes.push((Layer::Scribe, Shape::Closed(edge.clone())));
    }
    shapes.push((Layer::CutOutside, Shape::Closed(cut.clone())));
    let mut part = CutPart {
        name: "ring".into(),
        kind: PartKind::Ring,
        number_off: cutting.order.number_off.unwrap_or(1),
        process: cutting.process,
        thickness: Some(ring.ring_thickness.clone()),
        material: material(spec),
        lies: format!(
            "FACE UP IS THE INSIDE OF THE RING, FREE EDGE AT THE TOP, JOINT {}",
            joint_words(joint_deg, design.view_from)
        ),
        shapes,
        holes_cut: Vec::new(),
        withheld: withheld(&rivets),
        places: rivets
            .iter()
            .map(|(rivet, at)| (rivet.id.clone(), *at))
            .collect(),
        remarks: remarks(ring, &joint, &quarters, &settings),
        inscriptions: Vec::new(),
        by_hand: Vec::new(),
        quarters: quarters
            .iter()
            .map(|(quarter, x)| (quarter.name, *x))
            .collect(),
        mass_kg: design
            .figures
            .ring_mass_kg
            .map(|kg| kg * cut.area_mm2() / (ring.strip_net.to_mm() * width)),
    };
    let near = |x: f64| Point::new(x, width / 2.0);
    let at_centres = quarters.iter().filter_map(|(quarter, x)| {
        let words = format!("{} CENTRE", quarter.name.to_uppercase());
        quarter
            .is_named_on_the_strip
            .then(|| Inscription::anywhere([words], near(*x)))
    });
    let mut inscriptions: Vec<Inscription> = at_centres.collect();
    inscriptions.extend([
        Inscription::anywhere([format!("{} RING", identity(spec))], near(length / 4.0)),
        Inscription::anywhere(["INSIDE OF RING - FREE EDGE ^".into()], near(length * 0.75)),
        Inscription::heat_number(near(length * 0.375)),
    ]);
    let field = field(spec, ring, &rivets, edge);
    lay_marks(&mut part, spec, &inscriptions, field);
    Ok(part)
}

/// Where the strip may be stamped: on its net length, since the rest goes with the scrap; above the weld to the plate; beside the
/// rivets and their heads.
fn field(spec: &Spec, ring: &Fabricated, rivets: &[(&Rivet, Point)], whole: Outline) -> Field {
    let beyond = ((ring.strip_cut - ring.strip_net) / 2.0).to_mm();
    let weld = ring.weld_leg_inside.value().to_mm();
    let width = ring.ring_width.value().to_mm();
    let wide = ring.strip_net.to_mm();
    let net = rectangle(Point::new(beyond, weld), wide, width - weld);
    let mut field = Field::inside(net.unwrap_or(whole));
    let taken_up = spec.written.rivets.as_ref().map_or(Length::ZERO, |line| {
        let head = line.head_diameter.as_ref().map(Size::value);
        line.hole.value().max(head.unwrap_or(Length::ZERO))
    });
    for (_, at) in rivets {
        field.keep_clear_of(*at, taken_up.to_mm() / 2.0);
    }
    field
}

/// A quarter of the round on which the strip carries a tick.
struct Quarter {
    name: &'static str,
    /// Degrees clockwise from the top, seen from the side that the plate is viewed from.
    angle_deg: f64,
    is_named_on_the_strip: bool,
}

/// Top and bottom are stamped by name: with them the other two are known.
const QUARTERS: [Quarter; 4] = [
    Quarter {
        name: "top",
        angle_deg: 0.0,
        is_named_on_the_strip: true,
    },
    Quarter {
        name: "right",
        angle_deg: 90.0,
        is_named_on_the_strip: false,
    },
    Quarter {
        name: "bottom",
        angle_deg: 180.0,
        is_named_on_the_strip: true,
    },
    Quarter {
        name: "left",
        angle_deg: 270.0,
        is_named_on_the_strip: false,
    },
];

/// The quarters that lie on the strip, each with its distance from the left end, mm: all four but one on which the joint stands.
fn quarters(ring: &Fabricated, place: impl Fn(f64) -> f64) -> Vec<(&'static Quarter, f64)> {
    let beyond = ((ring.strip_cut - ring.strip_net) / 2.0).to_mm();
    let on_the_strip = beyond + TICK_GAP_MM..ring.strip_cut.to_mm() - beyond - TICK_GAP_MM;
    let placed = QUARTERS.iter().map(|q| (q, place(q.angle_deg)));
    placed.filter(|(_, x)| on_the_strip.contains(x)).collect()
}

/// Where each rivet lies on the strip.
fn rivet_places<'a>(
    design: &'a Design,
    ring: &Fabricated,
    joint_deg: f64,
) -> Vec<(&'a Rivet, Point)> {
    let width = ring.ring_width.value().to_mm();
    design
        .rivets
        .iter()
        .flat_map(|line| line.rivets.iter().map(move |rivet| (line, rivet)))
        .map(|(line, rivet)| {
            let x = along(ring, design, joint_deg, rivet.angle_deg);
            let y = width - line.from_edge_of(rivet.row).to_mm();
            (rivet, Point::new(x, y))
        })
        .collect()
}

/// The strip and so much all round it.
fn strip_edge(length: f64, width: f64, dress: f64) -> Result<Outline, Vec<Fault>> {
    let corner = Point::new(-dress, -dress);
    rectangle(corner, length + 2.0 * dress, width + 2.0 * dress).ok_or_else(|| {
        vec![Fault::new(
            "flange.fabricated.ring_width",
            "the strip of the ring has no length or no width",
            "look again at the ring's sizes",
        )]
    })
}

/// How the length is made up, and where the joint lies beside rivets and the barrel's seam.
fn remarks(
    ring: &Fabricated,
    joint: &JointPlace,
    quarters: &[(&Quarter, f64)],
    settings: &Settings<'_>,
) -> Vec<String> {
    let mm = millimetres;
    let mut made_up = format!(
        "Length made up: {} mm net on mid thickness",
        mm(ring.strip_net)
    );
    for (length, what) in [
        (
            ring.strip_preparation,
            "for the weld preparation of the joint",
        ),
        (
            ring.strip_roll_waste,
            "of roll-end waste, cut off after rolling",
        ),
    ] {
        if length > Length::ZERO {
            made_up.push_str(&format!(", {} mm at each end {what}", mm(length)));
        }
    }
    let told_apart = ring.strip_net + 2.0 * (ring.strip_preparation + ring.strip_roll_waste);
    if ring.strip_cut.shortfall(told_apart).is_none() && !ring.strip_cut.same_as(told_apart) {
        let rest = ring.strip_cut - told_apart;
        made_up.push_str(&format!(
            ", {} mm for preparation and waste in all",
            mm(rest)
        ));
    }
    if let Some(dress) = settings.dress_outside() {
        made_up.push_str(&format!(", and {} all round for dressing", dress.words));
    }
    let mut remarks = vec![format!("{made_up}.")];
    let mut ticks: Vec<&(&Quarter, f64)> = quarters.iter().collect();
    ticks.sort_by(|a, b| a.1.total_cmp(&b.1));
    let ticks = ticks
        .into_iter()
        .map(|(quarter, x)| format!("{} {} mm", quarter.name, mm(Length::mm(*x))));
    remarks.push(format!(
        "Quarter ticks from the left end: {}.",
        ticks.collect::<Vec<_>>().join(", ")
    ));
    if let Some((rivet, away)) = &joint.nearest_rivet {
        remarks.push(format!(
            "The joint lies {} mm from the middle of rivet hole {rivet}, round the outside of the ring.",
            mm(*away)
        ));
    }
    if let Some((seam, away)) = joint.seam {
        remarks.push(format!(
            "The barrel's lengthwise seam stands at {} degrees clockwise from the top, {} mm from the joint.",
            trimmed(seam, 3),
            mm(away)
        ));
    }
    remarks
}

/// Refused: a joint that runs through a rivet hole, or stands too near the barrel's seam.
fn joint_faults(design: &Design, joint: &JointPlace) -> Vec<Fault> {
    const PATH: &str = "flange.fabricated.joint";
    let mut faults = Vec::new();
    let radius = design.rivets.as_ref().map(|line| line.hole.value() / 2.0);
    let in_the_way = match (&joint.nearest_rivet, radius) {
        (Some((id, away)), Some(radius)) if *away <= radius => Some(id),
        _ => None,
    };
    if !joint.written {
        faults.extend(in_the_way.map(|id| {
            Fault::new(
                "rivets.rows",
                format!(
                    "the joint of the ring finds no way between the rivets: next to top centre it runs through hole {id}"
                ),
                "set the rows in chain, have fewer rivets in a row, or give the joint a place with `flange.fabricated.joint`",
            )
        }));
        return faults;
    }
    if let Some(id) = in_the_way {
        faults.push(Fault::new(
            format!("{PATH}.angle"),
            format!("the joint of the ring runs through rivet hole {id}"),
            "put it midway between two rivets",
        ));
    }
    if let Some((_, away)) = joint.seam {
        let least = joint.clear_of_seam.unwrap_or(Length::ZERO);
        if away <= Length::ZERO || away.shortfall(least).is_some() {
            faults.push(
                Fault::new(
                    format!("{PATH}.angle"),
                    format!(
                        "the joint of the ring lies {} mm from the barrel's lengthwise seam",
                        decimal(away.to_mm(), 1)
                    ),
                    "turn the joint away from the seam",
                )
                .and(format!("{PATH}.barrel_seam"), "the seam"),
            );
        }
    }
    faults
}

fn material(spec: &Spec) -> Option<crate::spec::Material> {
    let own = match &spec.written.flange {
        Some(Flange::Fabricated(ring)) => ring.material.clone(),
        _ => None,
    };
    own.or_else(|| spec.written.plate.material.clone())
}

fn joint_words(joint_deg: f64, view_from: ViewFrom) -> String {
    let turn = match joint_deg {
        deg if deg.abs() <= SAME_ANGLE_DEG => return "AT TOP CENTRE".into(),
        deg if deg > 0.0 => "CLOCKWISE",
        _ => "ANTICLOCKWISE",
    };
    format!(
        "{} DEGREES {turn} FROM TOP CENTRE SEEN FROM THE {}",
        trimmed(joint_deg.abs(), 3),
        side(view_from).to_uppercase()
    )
}

/// Where along the strip an angle (clockwise from the top) falls, mm from its left end.
///
/// Looking at the inside of the ring from within, free edge up, one sees clockwise running to the right where the ring
/// stands towards the side that one views the plate from, and to the left where it stands away.
fn along(ring: &Fabricated, design: &Design, joint_deg: f64, angle_deg: f64) -> f64 {
    let (net, cut) = (ring.strip_net.to_mm(), ring.strip_cut.to_mm());
    let run = (angle_deg - joint_deg).rem_euclid(360.0) / 360.0 * net;
    let from_end = (cut - net) / 2.0 + run;
    match ring.towards == design.view_from {
        true => from_end,
        false => cut - from_end,
    }
}

/// Ticks inside both long edges.
fn ticks(x: f64, width: f64) -> [(Layer, Shape); 2] {
    let tick = TICK_MM.min(width / 4.0);
    let line = |low: f64, high: f64| {
        let (from, to) = (Point::new(x, low), Point::new(x, high));
        (Layer::Scribe, Shape::Line { from, to })
    };
    [
        line(TICK_GAP_MM, tick),
        line(width - tick, width - TICK_GAP_MM),
    ]
}

/// Where the net length ends and where the roll-end waste begins, as far as they are not one with the end.
fn end_ticks(ring: &Fabricated, width: f64) -> Vec<(Layer, Shape)> {
    let cut = ring.strip_cut;
    let from_end = [(cut - ring.strip_net) / 2.0, ring.strip_roll_waste];
    let mut marked: Vec<f64> = Vec::new();
    for from_end in from_end.map(Length::to_mm) {
        if from_end > TICK_GAP_MM && !marked.contains(&from_end) {
            marked.push(from_end);
        }
    }
    let both_ends = marked.into_iter().flat_map(|x| [x, cut.to_mm() - x]);
    both_ends.flat_map(|x| ticks(x, width)).collect()
}

fn withheld(rivets: &[(&Rivet, Point)]) -> Vec<Withheld> {
    let of = |tack: bool, instead, reason: &str| Withheld {
        ids: rivets
            .iter()
            .filter(|(rivet, _)| (rivet.made == RivetMade::Tack) == tack)
            .map(|(rivet, _)| rivet.id.clone())
            .collect(),
        instead,
        reason: reason.into(),
    };
    [
        of(
            true,
            "a pop",
            "tack reference in the flat strip, opened after rolling and welding",
        ),
        of(
            false,
            "nothing",
            "drilled after the ring is rolled and welded",
        ),
    ]
    .into_iter()
    .filter(|withheld| !withheld.ids.is_empty())
    .collect()
}
