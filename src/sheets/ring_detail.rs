//! Ring and welds in section: legs as the works gives them, weld numbers, and the weld symbol. No weld is sized here.

use super::board::{Board, PaperBox};
use super::break_line::put_break;
use super::detail_letters::{Shows, lettered};
use super::dimension::{FIRST_ROW, across, arrow, leader, saying, upwards};
use super::hatch::{Lean, hatch};
use super::letter_size::{FIGURES, TABLE};
use super::preparation_detail::{bevel_sizes, preparation_of};
use super::section::{SectionView, flange_is_near, put_rivet_edges, rivet_gaps, rivet_openings};
use super::set::Set;
use super::side_names::{First, put_side_names};
use super::weld_numbers::weld_letter;
use super::{Hang, PaperPoint, Pattern, Pen, Role, at};
use crate::design::{Fabricated, FlangeDesign};
use crate::units::Length;
use crate::units::angle::atan2;

/// Flat plate shown inside the ring's weld and outside it, mm of plate.
pub const FLAT_SHOWN: f64 = 20.0;

/// Puts ring, plate and welds into a box that holds the section itself; nothing where the flange is not fabricated.
pub fn put_ring_detail(board: &mut Board, set: &Set<'_>, b: &PaperBox, scale: f64) {
    let Some(FlangeDesign::Fabricated(r)) = &set.design.flange else {
        return;
    };
    let near = flange_is_near(set.design);
    let t = set.design.thickness.value().to_mm();
    let outer = r.ring_outside_diameter.value().to_mm() / 2.0;
    let high = outer + r.weld_leg_outside.value().to_mm() + FLAT_SHOWN;
    let s = SectionView {
        scale,
        face_x: if near { b.left + t * scale } else { b.right },
        centre_y: b.top + high * scale,
        near,
        thickness: t,
    };
    put_metal(board, set, (&s, r), high);
    put_sizes(board, set, &s, r);
    put_welds(board, set, &s, r);
    let low = low_of(r);
    let heights = (s.place(0.0, low + FLAT_SHOWN).y, s.place(0.0, low).y);
    put_side_names(board, set, &s, heights, (None, First::Beside));
}

fn inner_of(r: &Fabricated) -> f64 {
    r.ring_outside_diameter.value().to_mm() / 2.0 - r.ring_thickness.value().to_mm()
}

fn low_of(r: &Fabricated) -> f64 {
    r.inner_toe_radius.to_mm() - FLAT_SHOWN
}

fn put_metal(board: &mut Board, set: &Set<'_>, (s, r): (&SectionView, &Fabricated), high: f64) {
    let (t, low) = (s.thickness, low_of(r));
    let outer = r.ring_outside_diameter.value().to_mm() / 2.0;
    let inner = inner_of(r);
    let edge = t + r.ring_width.value().to_mm();
    let polygon = |corners: &[(f64, f64)]| -> Vec<PaperPoint> {
        corners.iter().map(|&(u, y)| s.place(u, y)).collect()
    };
    let plate = polygon(&[(0.0, low), (t, low), (t, high), (0.0, high)]);
    hatch(board, std::slice::from_ref(&plate), 2.5, Lean::Right);
    let ring = polygon(&[(t, inner), (edge, inner), (edge, outer), (t, outer)]);
    let openings = rivet_openings(set.design, 0.0);
    let mut ring_metal = vec![ring.clone()];
    ring_metal.extend(rivet_gaps(s, set.design, &openings, 1.0));
    hatch(board, &ring_metal, 2.5, Lean::Left);
    put_rivet_edges(board, s, set.design, &openings, (1.0, 4.0));
    for i in 0..4 {
        board.edge_line(ring[i], ring[(i + 1) % 4]);
    }
    for u in [0.0, t] {
        board.edge_line(s.place(u, low), s.place(u, high));
    }
    for y in [low, high] {
        put_break(board, s.place(0.0, y), s.place(t, y));
    }
    for (root, side, leg) in [
        (inner, -1.0, &r.weld_leg_inside),
        (outer, 1.0, &r.weld_leg_outside),
    ] {
        let leg = leg.value().to_mm();
        let weld = polygon(&[(t, root), (t, root + side * leg), (t + leg, root)]);
        board.filled(weld, Role::Object);
    }
    let [inside, outside] = preparation_of(set).map_or([(0.0, 0.0); 2], bevel_sizes);
    for (root, side, (deep, back)) in [(inner, 1.0, inside), (outer, -1.0, outside)] {
        if deep > 0.0 {
            let bevel = polygon(&[(t, root), (t, root + side * deep), (t + back, root)]);
            board.filled(bevel, Role::Object);
        }
    }
}

fn put_sizes(board: &mut Board, set: &Set<'_>, s: &SectionView, r: &Fabricated) {
    let fig = set.figures;
    let t = s.thickness;
    let edge = t + r.ring_width.value().to_mm();
    let (inner, low) = (inner_of(r), low_of(r));
    let outer = r.ring_outside_diameter.value().to_mm() / 2.0;
    let says = saying(s.scale);
    across(
        board,
        s.place(t, inner),
        s.place(edge, inner),
        s.place(0.0, low).y + FIRST_ROW,
        says(&fig.size_short(&r.ring_width), r.ring_width.value()),
    );
    let thickness = &set.design.thickness;
    let high = outer + r.weld_leg_outside.value().to_mm() + FLAT_SHOWN;
    across(
        board,
        s.place(0.0, high),
        s.place(t, high),
        // Clear of the zigzag where the plate is broken off.
        s.place(0.0, high).y - FIRST_ROW - 2.0,
        says(&fig.size_short(thickness), thickness.value()),
    );
    let outwards = if s.near { 1.0 } else { -1.0 };
    upwards(
        board,
        s.place(edge, inner),
        s.place(edge, outer),
        s.x(edge) + outwards * FIRST_ROW,
        says(&fig.size_short(&r.ring_thickness), r.ring_thickness.value()),
    );
    let toe = s.place(t, r.inner_toe_radius.to_mm());
    let knee = at(toe.x + outwards * 10.0, toe.y + 12.0 * s.scale + 6.0);
    let diameter = 2.0 * r.inner_toe_radius;
    let words = vec![format!("INNER TOE ⌀{}", fig.short(diameter))];
    leader(board, toe, knee, &words, FIGURES);
}

/// Numbers at both welds, and the weld symbol with its arrow at the outer root.
fn put_welds(board: &mut Board, set: &Set<'_>, s: &SectionView, r: &Fabricated) {
    let t = s.thickness;
    let letter = weld_letter(set);
    let outwards = if s.near { 1.0 } else { -1.0 };
    let outer = r.ring_outside_diameter.value().to_mm() / 2.0;
    let inner = inner_of(r);
    let (inside, outside) = (
        r.weld_leg_inside.value().to_mm(),
        r.weld_leg_outside.value().to_mm(),
    );
    for (number, y, side, leg) in [(1, inner, -1.0, inside), (2, outer, 1.0, outside)] {
        let tip = s.place(t + leg * 0.5, y + side * leg * 0.5);
        let knee = at(tip.x + outwards * 22.0, tip.y - side * 6.0);
        leader(
            board,
            tip,
            knee,
            &[format!("WELD {letter}{number}")],
            FIGURES,
        );
    }
    let tip = s.place(t + outside * 0.2, outer + outside * 0.8);
    put_symbol(board, set, r, tip, outwards);
}

/// Fillet both sides all round (ISO 2553, system A). The arrow side, on the solid line, is the outside; where both legs are
/// alike there is no dashed line.
fn put_symbol(board: &mut Board, set: &Set<'_>, r: &Fabricated, tip: PaperPoint, outwards: f64) {
    let alike = r
        .weld_leg_inside
        .value()
        .same_as(r.weld_leg_outside.value());
    let elbow = at(tip.x + outwards * 12.0, tip.y - 14.0);
    let run = 30.0;
    let end = elbow.x + outwards * run;
    arrow(
        board,
        tip,
        atan2(tip.y - elbow.y, tip.x - elbow.x).to_degrees(),
    );
    board.dimension_line(tip, elbow);
    board.dimension_line(elbow, at(end, elbow.y));
    let (pen, pattern) = (Pen::Narrow, Pattern::Continuous);
    board.circle(elbow, 1.5, pen, pattern, Role::Dimension);
    if !alike {
        let y = elbow.y + 1.0;
        let dashed = Pattern::Dashed;
        board.line(at(elbow.x, y), at(end, y), pen, dashed, Role::Dimension);
    }
    let left = elbow.x.min(end) + 20.0;
    for (side, leg, gap) in [
        (-1.0, &r.weld_leg_outside, 0.0),
        (1.0, &r.weld_leg_inside, if alike { 0.0 } else { 1.0 }),
    ] {
        let y = elbow.y + gap;
        let corners = [at(left, y), at(left, y + side * 4.5), at(left + 4.5, y)];
        for i in 0..3 {
            board.dimension_line(corners[i], corners[(i + 1) % 3]);
        }
        let words = format!("z {}", set.figures.size_short(leg));
        let (rise, fall) = super::text_box::rise_and_fall(&words, FIGURES);
        let base = if side < 0.0 {
            y - 1.0 - fall
        } else {
            y + 1.0 + rise
        };
        board.text(at(left - 1.5, base), &words, FIGURES, Hang::End);
    }
    put_procedure(board, set, at(end, elbow.y), outwards);
}

/// What the works' procedure says and this sheet does not, at the tail of the symbol.
fn put_procedure(board: &mut Board, set: &Set<'_>, tail: PaperPoint, outwards: f64) {
    for side in [-1.0, 1.0] {
        board.dimension_line(tail, at(tail.x + outwards * 3.0, tail.y + side * 3.0));
    }
    let hang = if outwards > 0.0 {
        Hang::Start
    } else {
        Hang::End
    };
    let preparation = preparation_of(set);
    let procedure = preparation.and_then(|p| p.procedure.clone());
    let procedure = procedure.unwrap_or_else(|| "..............".into());
    let letters = lettered(set);
    let detail = letters
        .iter()
        .find(|(_, shows)| *shows == Shows::Preparation);
    let gap = preparation.and_then(|p| p.root_gap.as_ref());
    let gap = gap.filter(|gap| gap.value() > Length::ZERO);
    let close_up = gap.map(|gap| {
        let gap = set.figures.size_short(gap);
        format!("RING DRAWN CLOSE UP, ROOT GAP {gap} NOT COUNTED.")
    });
    let lines = [
        "LEGS z AS THE WORKS GIVES THEM.".to_string(),
        match detail.and_then(|(letter, _)| letter.as_ref()) {
            Some(letter) => format!("PREPARATION: DETAIL {letter}. ROOT AND RUNS:"),
            None => "PREPARATION, ROOT AND RUNS:".into(),
        },
        format!("TO PROCEDURE No. {}", procedure.to_uppercase()),
    ];
    let above = close_up.iter().len() as f64;
    for (i, words) in close_up.iter().chain(&lines).enumerate() {
        let y = tail.y - 2.5 + (i as f64 - above) * TABLE * 1.5;
        board.text(at(tail.x + outwards * 5.0, y), words, TABLE, hang);
    }
}
