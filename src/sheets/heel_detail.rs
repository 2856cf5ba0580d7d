//! The heel of a pressed plate with every size that proves it: radii, tangents and the theoretical corner.

use super::board::{Board, PaperBox};
use super::break_line::put_break;
use super::details::FLAT_SHOWN;
use super::dimension::{FIRST_ROW, NEXT_ROW, across, leader, saying, upwards};
use super::free_row::{across_free, upwards_free};
use super::hatch::{Lean, hatch};
use super::letter_size::FIGURES;
use super::section::{
    SectionView, flange_is_near, half_shape, put_rivet_edges, rivet_gaps, rivet_openings,
};
use super::set::Set;
use super::side_names::{First, put_side_names};
use super::view::Stroke;
use super::{PaperPoint, Pattern, Pen, Role};
use crate::design::{FlangeDesign, Pressed, heel_gauge};
use crate::units::angle::{cos, sin};

/// Words of the inside radius stand so far below its centre, mm of paper.
const BELOW_CENTRE: f64 = 12.0;
/// And those of the outside radius so far above the corner and beside it.
const ABOVE_CORNER: f64 = 9.0;

/// Puts the heel down in a box that holds the section itself; nothing where the flange is not pressed.
pub fn put_heel_detail(board: &mut Board, set: &Set<'_>, b: &PaperBox, scale: f64) {
    let Some(FlangeDesign::Pressed(p)) = &set.design.flange else {
        return;
    };
    let near = flange_is_near(set.design);
    let t = set.design.thickness.value().to_mm();
    let outer = p.tangent_radius.to_mm() + p.heel_radius.value().to_mm() + t;
    let s = SectionView {
        scale,
        face_x: if near { b.left + t * scale } else { b.right },
        centre_y: b.top + outer * scale,
        near,
        thickness: t,
    };
    put_metal(board, set, &s, p);
    put_corner(board, set, &s, p);
    put_radii(board, set, &s, p);
    put_lengths(board, set, &s, p);
    let low = p.tangent_radius.to_mm() - FLAT_SHOWN;
    let heights = (s.place(0.0, low + FLAT_SHOWN).y, s.place(0.0, low).y);
    put_side_names(board, set, &s, heights, (None, First::Beside));
}

fn put_metal(board: &mut Board, set: &Set<'_>, s: &SectionView, p: &Pressed) {
    let t = s.thickness;
    let low = p.tangent_radius.to_mm() - FLAT_SHOWN;
    let mut profile = vec![(t, low), (0.0, low)];
    profile.extend(half_shape(set.design));
    let paper: Vec<PaperPoint> = profile.iter().map(|&(u, y)| s.place(u, y)).collect();
    let openings = rivet_openings(set.design, 0.0);
    let mut metal = vec![paper];
    metal.extend(rivet_gaps(s, set.design, &openings, 1.0));
    hatch(board, &metal, 2.5, Lean::Right);
    put_rivet_edges(board, s, set.design, &openings, (1.0, 4.0));
    let (r, tangent) = (p.heel_radius.value().to_mm(), p.tangent_radius.to_mm());
    let depth = p.depth.to_mm();
    for u in [0.0, t] {
        board.edge_line(s.place(u, low), s.place(u, tangent));
    }
    put_break(board, s.place(0.0, low), s.place(t, low));
    for radius in [r, r + t] {
        let start = if s.near { 180.0 } else { 270.0 };
        board.arc(
            s.place(t + r, tangent),
            radius * s.scale,
            start,
            90.0,
            Pen::Wide,
            Pattern::Continuous,
            Role::Object,
        );
    }
    for y in [tangent + r, tangent + r + t] {
        board.edge_line(s.place(t + r, y), s.place(depth, y));
    }
    board.edge_line(s.place(depth, tangent + r), s.place(depth, tangent + r + t));
}

/// The theoretical corner, its sides carried on, and the tangents.
fn put_corner(board: &mut Board, set: &Set<'_>, s: &SectionView, p: &Pressed) {
    let gauge = heel_gauge(p, &set.design.thickness);
    let tangent = p.tangent_radius.to_mm();
    let to_tangent = gauge.corner_to_tangent.to_mm();
    let outer = tangent + to_tangent;
    let construction = Stroke {
        pen: Pen::Narrow,
        pattern: Pattern::DoubleChain,
        role: Role::Centre,
    };
    let line = |board: &mut Board, a: (f64, f64), b: (f64, f64)| {
        board.line(
            s.place(a.0, a.1),
            s.place(b.0, b.1),
            construction.pen,
            construction.pattern,
            construction.role,
        );
    };
    let corner = (0.0, outer);
    line(board, corner, (0.0, tangent));
    line(board, corner, (to_tangent, outer));
    let centre = (to_tangent, tangent);
    line(board, corner, centre);
    for end in [(0.0, tangent), (to_tangent, outer)] {
        line(board, centre, end);
    }
}

fn put_radii(board: &mut Board, set: &Set<'_>, s: &SectionView, p: &Pressed) {
    let fig = set.figures;
    let gauge = heel_gauge(p, &set.design.thickness);
    let (t, r) = (s.thickness, p.heel_radius.value().to_mm());
    let tangent = p.tangent_radius.to_mm();
    let side = if s.near { 1.0 } else { -1.0 };
    let on_arc = |radius: f64, lean_deg: f64| {
        let lean = lean_deg.to_radians();
        s.place(t + r - radius * cos(lean), tangent + radius * sin(lean))
    };
    // Below the radius centre and the lines that meet in it.
    let tip = on_arc(r, 12.0);
    let knee = super::at(tip.x + side * 12.0, s.place(0.0, tangent).y + BELOW_CENTRE);
    let words = vec![
        format!("R{} INSIDE,", fig.size_short(&p.heel_radius)),
        "TO GAUGE".into(),
    ];
    leader(board, tip, knee, &words, FIGURES);
    // Along the diagonal, on which the corner stands off.
    let tip = on_arc(r + t, 45.0);
    let corner = s.place(0.0, tangent + gauge.corner_to_tangent.to_mm());
    let knee = super::at(corner.x - side * ABOVE_CORNER, corner.y - ABOVE_CORNER);
    let words = vec![
        format!("R{} OUTSIDE,", fig.short(gauge.outside)),
        format!("{} FROM", fig.short(gauge.corner_to_heel)),
        "CORNER".into(),
    ];
    leader(board, tip, knee, &words, FIGURES);
}

fn put_lengths(board: &mut Board, set: &Set<'_>, s: &SectionView, p: &Pressed) {
    let fig = set.figures;
    let gauge = heel_gauge(p, &set.design.thickness);
    let (t, r) = (s.thickness, p.heel_radius.value().to_mm());
    let (tangent, depth) = (p.tangent_radius.to_mm(), p.depth.to_mm());
    let (inner, outer) = (tangent + r, tangent + r + t);
    let low = tangent - FLAT_SHOWN;
    let says = saying(s.scale);
    let top = s.place(0.0, outer).y;
    let to_tangent = fig.short(gauge.corner_to_tangent);
    across(
        board,
        s.place(0.0, outer),
        s.place(t + r, outer),
        top - FIRST_ROW,
        says(&to_tangent, gauge.corner_to_tangent),
    );
    across(
        board,
        s.place(0.0, outer),
        s.place(depth, outer),
        // In brackets: it follows from the two others.
        top - FIRST_ROW - NEXT_ROW,
        says(&format!("({})", fig.short(p.depth)), p.depth),
    );
    let outwards = if s.near { -1.0 } else { 1.0 };
    upwards_free(
        board,
        (s.place(0.0, outer), s.place(0.0, tangent)),
        s.x(0.0),
        outwards > 0.0,
        says(&to_tangent, gauge.corner_to_tangent),
    );
    across_free(
        board,
        (s.place(t + r, inner), s.place(depth, inner)),
        s.place(0.0, inner).y,
        true,
        says(&fig.size_short(&p.straight), p.straight.value()),
    );
    let thickness = &set.design.thickness;
    across_free(
        board,
        (s.place(0.0, low), s.place(t, low)),
        // Clear of the zigzag where the plate is broken off.
        s.place(0.0, low).y + 2.0,
        true,
        says(&fig.size_short(thickness), thickness.value()),
    );
    upwards(
        board,
        s.place(depth, inner),
        s.place(depth, outer),
        s.x(depth) - outwards * FIRST_ROW,
        says(&fig.size_short(thickness), thickness.value()),
    );
}
