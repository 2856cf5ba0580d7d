//! The parts of a plate that is made of several: their list, and the numbers in circles by which views point to them.

use super::board::{Board, PaperBox};
use super::clear::{crosses_lettering, is_clear};
use super::letter_size::FIGURES;
use super::section::{SectionView, rivet_openings};
use super::set::Set;
use super::table::Table;
use super::view::{PlateBox, View};
use super::{Hang, PaperPoint, Pattern, Pen, Role, at};
use crate::design::{FlangeDesign, Hole, Point};
use crate::spec::Flange;
use crate::units::angle::{PI, cos, sin};

/// Radius of the circle round a number, mm.
const CIRCLE: f64 = 3.4;
/// Radius of the dot in the part, mm.
const DOT: f64 = 0.6;
/// Nearest and furthest that a circle stands from its dot, mm.
const REACH: (f64, f64) = (7.0, 32.0);
/// Clear paper round a circle, mm.
const CLEAR: f64 = 0.8;
/// Directions tried for a circle about its dot.
const DIRECTIONS: i32 = 24;

/// One part.
struct Part {
    name: String,
    number_off: u32,
    size: String,
    material: String,
    shows: Shows,
}

/// Where a part is seen.
enum Shows {
    Plate,
    Ring,
    /// The pads made of this part of the spec's list.
    Pad(usize),
}

/// The parts in the order of their numbers; none where the plate is the only one.
fn parts(set: &Set<'_>) -> Vec<Part> {
    let written = &set.spec.written;
    let fig = set.figures;
    let off = |number: Option<u32>| number.unwrap_or(1);
    let number_off = off(written.cutting.as_ref().and_then(|c| c.order.number_off));
    let plate = &written.plate;
    let not_given = || "not given".to_string();
    let material = plate.material.as_ref();
    let mut parts = vec![Part {
        name: "plate".into(),
        number_off,
        size: format!("{} thick", fig.size_short(&plate.thickness)),
        material: material.map_or_else(not_given, |m| m.grade.clone()),
        shows: Shows::Plate,
    }];
    if let Some(FlangeDesign::Fabricated(ring)) = &set.design.flange {
        let of_ring = written.flange.as_ref().and_then(|flange| match flange {
            Flange::Fabricated(ring) => ring.material.as_ref(),
            Flange::Pressed(_) => None,
        });
        parts.push(Part {
            name: "ring".into(),
            number_off,
            size: format!(
                "{} × {}, rolled",
                fig.size_short(&ring.ring_width),
                fig.size_short(&ring.ring_thickness)
            ),
            material: of_ring.map_or_else(|| "as the plate".into(), |m| m.grade.clone()),
            shows: Shows::Ring,
        });
    }
    for (i, pad) in written.pads.iter().enumerate() {
        let material = pad.material.as_ref();
        parts.push(Part {
            name: pad.name.clone(),
            number_off: off(pad.number_off),
            size: format!(
                "⌀{} × {}",
                fig.size_short(&pad.diameter),
                fig.size_short(&pad.thickness)
            ),
            material: material.map_or_else(|| "as the plate".into(), |m| m.grade.clone()),
            shows: Shows::Pad(i),
        });
    }
    match parts.len() {
        1 => Vec::new(),
        _ => parts,
    }
}

/// Whether the plate is made of several parts.
pub fn has_parts(set: &Set<'_>) -> bool {
    !parts(set).is_empty()
}

/// The list of parts under a title; none where the plate is the only one.
pub fn parts_list(set: &Set<'_>, title: &str) -> Option<Table> {
    let parts = parts(set);
    let mut table = Table::new(
        title,
        &[
            ("PART", 9.0, Hang::Middle),
            ("WHAT", 28.0, Hang::Start),
            ("OFF", 9.0, Hang::Middle),
            ("SIZE", 28.0, Hang::Start),
            ("OF", 33.0, Hang::Start),
        ],
    );
    for (i, part) in parts.iter().enumerate() {
        table.row(vec![
            (i + 1).to_string(),
            part.name.clone(),
            part.number_off.to_string(),
            part.size.clone(),
            part.material.clone(),
        ]);
    }
    (!parts.is_empty()).then_some(table)
}

/// Puts the number of every part into a circle with a line to the part, wherever that touches nothing; tells which found no place.
pub fn put_balloons(
    board: &mut Board,
    set: &Set<'_>,
    view: &View,
    section: &SectionView,
) -> Vec<usize> {
    let mut missed = Vec::new();
    for (i, part) in parts(set).iter().enumerate() {
        let tips = match part.shows {
            Shows::Plate => on_plate(set, section),
            Shows::Ring => on_ring(set, section),
            Shows::Pad(pad) => on_pad(set, view, pad),
        };
        let number = (i + 1).to_string();
        if !tips.into_iter().any(|tip| put_balloon(board, tip, &number)) {
            missed.push(i + 1);
        }
    }
    missed
}

/// The middle of the plate's thickness in section, where no hole is cut through it, from above the centre line downwards.
fn on_plate(set: &Set<'_>, s: &SectionView) -> Vec<PaperPoint> {
    let top = PlateBox::round(&set.design.edge).top;
    let heights = (1..40).map(|i| top * (1.0 - f64::from(i) / 20.0));
    let solid = |y: &f64| {
        let clear = |hole: &Hole| {
            let half = hole.finish.value().to_mm() / 2.0 + s.thickness / 2.0;
            hole.at.x.abs() > half || (hole.at.y - y).abs() > half
        };
        set.design.holes.iter().all(clear)
    };
    heights
        .filter(solid)
        .map(|y| s.place(s.thickness / 2.0, y))
        .collect()
}

/// The middle of the metal between weld and rivet hole of the ring's section, at the foot and at the top.
fn on_ring(set: &Set<'_>, s: &SectionView) -> Vec<PaperPoint> {
    let Some(FlangeDesign::Fabricated(ring)) = &set.design.flange else {
        return Vec::new();
    };
    let middle = (ring.ring_outside_diameter.value() - ring.ring_thickness.value()).to_mm() / 2.0;
    let edge = s.thickness + ring.ring_width.value().to_mm();
    let on_hand = |(hand, deg): (f64, f64)| {
        let openings = rivet_openings(set.design, deg);
        let opens = openings.iter().map(|gap| gap.0).fold(edge, f64::min);
        s.place((s.thickness + opens) / 2.0, hand * middle)
    };
    [(-1.0, 180.0), (1.0, 0.0)].map(on_hand).to_vec()
}

/// Half-way between the opening of each pad of this part and its edge, where no hole of its own stands.
fn on_pad(set: &Set<'_>, view: &View, part: usize) -> Vec<PaperPoint> {
    let design = set.design;
    let mut tips = Vec::new();
    for pad in design.pads.iter().filter(|pad| pad.part == part) {
        let middle = pad.at(design);
        let r = (pad.opening + pad.diameter).to_mm() / 4.0;
        for turn in 0..DIRECTIONS {
            let a = 2.0 * PI * f64::from(turn) / f64::from(DIRECTIONS);
            let off = Point::new(r * cos(a), r * sin(a));
            let mut holes = pad.holes.iter();
            if !holes.any(|(at, wide)| at.distance(off) < wide.to_mm()) {
                tips.push(view.place(Point::new(middle.x + off.x, middle.y + off.y)));
            }
        }
    }
    tips
}

/// One circle with its number, as near to its dot as it goes; false where it goes nowhere.
fn put_balloon(board: &mut Board, tip: PaperPoint, number: &str) -> bool {
    let mut off = REACH.0;
    while off <= REACH.1 {
        for turn in 0..DIRECTIONS {
            let a = 2.0 * PI * f64::from(turn) / f64::from(DIRECTIONS);
            let c = at(tip.x + off * cos(a), tip.y + off * sin(a));
            let round = PaperBox::new(c.x - CIRCLE, c.y - CIRCLE, c.x + CIRCLE, c.y + CIRCLE);
            let near = at(
                tip.x + (off - CIRCLE) * cos(a),
                tip.y + (off - CIRCLE) * sin(a),
            );
            if !board.room.holds(&round)
                || !is_clear(board, &round, CLEAR)
                || crosses_lettering(board, tip, near)
            {
                continue;
            }
            let dot = (0..12).map(|i| {
                let b = PI * f64::from(i) / 6.0;
                at(tip.x + DOT * cos(b), tip.y + DOT * sin(b))
            });
            board.filled(dot.collect(), Role::Dimension);
            board.dimension_line(tip, near);
            board.circle(c, CIRCLE, Pen::Narrow, Pattern::Continuous, Role::Dimension);
            board.bold(at(c.x, c.y + FIGURES / 2.0), number, FIGURES, Hang::Middle);
            return true;
        }
        off += 1.5;
    }
    false
}

#[cfg(test)]
mod tests {
    use super::super::Mark;
    use super::super::sample_jobs::with_set;
    use super::*;

    fn numbers_in_circles(board: &Board) -> Vec<String> {
        let circle_at = |place: PaperPoint| {
            board.marks.iter().any(|mark| {
                matches!(mark, Mark::Circle { centre, radius, .. }
                    if *radius == CIRCLE && (centre.x - place.x).abs() < 0.1
                        && (centre.y + FIGURES / 2.0 - place.y).abs() < 0.1)
            })
        };
        let texts = board.marks.iter().filter_map(|mark| match mark {
            Mark::Text(text) if circle_at(text.at) => Some(text.words.clone()),
            _ => None,
        });
        texts.collect()
    }

    /// The dot of the ring stands in its metal: in no rivet hole that the section cuts.
    #[test]
    fn holds_the_dot_of_a_ring_stands_in_no_rivet_hole() {
        with_set("specs/hobthrush-smokebox.yaml", |set| {
            let section = SectionView {
                scale: 1.0,
                face_x: 0.0,
                centre_y: 0.0,
                near: false,
                thickness: set.design.thickness.value().to_mm(),
            };
            let tips = on_ring(set, &section);
            assert_eq!(tips.len(), 2);
            for (tip, deg) in tips.iter().zip([180.0, 0.0]) {
                for (from, to) in rivet_openings(set.design, deg) {
                    let (a, b) = (section.x(from), section.x(to));
                    let clear = tip.x + DOT < a.min(b) || tip.x - DOT > a.max(b);
                    assert!(clear, "{} between {a} and {b}", tip.x);
                }
            }
        });
    }

    /// A plate with a ring and a doubling ring has three parts, each with its circle on the general arrangement; a plate alone none.
    #[test]
    fn holds_every_part_is_pointed_to() {
        for (spec, wanted) in [
            ("specs/hobthrush-smokebox.yaml", vec!["1", "2", "3"]),
            ("specs/marl-hen-smokebox.yaml", vec!["1", "2"]),
            ("specs/pinders-oak-smokebox.yaml", vec![]),
        ] {
            with_set(spec, |set| {
                let boards = super::super::general::general(set);
                assert_eq!(numbers_in_circles(&boards[0]), wanted, "{spec}");
                let listed = parts_list(set, "PARTS").map_or(0, |table| table.rows.len());
                assert_eq!(listed, wanted.len(), "{spec}");
            });
        }
    }
}
