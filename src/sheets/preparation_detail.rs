//! The end of a ring before it is welded: bevels and gap as the works gives them. No weld is worked out here.

use super::board::Board;
use super::break_line::put_break;
use super::dimension::{leader, saying};
use super::free_row::{across_free, upwards_free};
use super::hatch::{Lean, hatch};
use super::letter_size::{FIGURES, TABLE};
use super::seat::{HATCHING, metal};
use super::set::Set;
use super::{Hang, PaperPoint, at};
use crate::design::{Fabricated, FlangeDesign};
use crate::spec::{Bevel, Flange, WeldPreparation};
use crate::units::Length;
use crate::units::angle::tan;
use crate::units::print::trimmed;

use super::section::flange_is_near;

/// Ring shown, mm.
const SHOWN: f64 = 26.0;
/// Depth of plate shown, mm.
const PLATE: f64 = 5.0;
/// Plate shown above and below the ring, mm.
const ASIDE: f64 = 8.0;

/// The preparation as written, where the flange is a ring that has one.
pub fn preparation_of<'a>(set: &Set<'a>) -> Option<&'a WeldPreparation> {
    match &set.spec.written.flange {
        Some(Flange::Fabricated(ring)) => ring.weld_preparation.as_deref(),
        Some(Flange::Pressed(_)) | None => None,
    }
}

/// The bevels on the inside and the outside: depth into the ring, and how far each goes back along it, mm.
pub fn bevel_sizes(preparation: &WeldPreparation) -> [(f64, f64); 2] {
    [&preparation.bevel_inside, &preparation.bevel_outside].map(|bevel| {
        bevel.as_ref().map_or((0.0, 0.0), |b| {
            let depth = b.depth.value().to_mm();
            (depth, depth * tan(b.angle.to_radians()))
        })
    })
}

/// Puts the preparation about the origin of an empty board: the plate's face at x 0, the ring's inside at y 0.
pub fn put_preparation(board: &mut Board, set: &Set<'_>, scale: f64) {
    let (Some(preparation), Some(FlangeDesign::Fabricated(ring))) =
        (preparation_of(set), &set.design.flange)
    else {
        return;
    };
    let side = if flange_is_near(set.design) {
        1.0
    } else {
        -1.0
    };
    let place = |u: f64, y: f64| at(u * side * scale, -y * scale);
    let h = ring.ring_thickness.value().to_mm();
    let gap = preparation
        .root_gap
        .as_ref()
        .map_or(0.0, |g| g.value().to_mm());
    let [(in_deep, in_back), (out_deep, out_back)] = bevel_sizes(preparation);
    let far = gap + in_back.max(out_back) + SHOWN;
    let t = set.design.thickness.value().to_mm().min(PLATE);
    put_metal(
        board,
        &place,
        &[
            (gap + in_back, 0.0),
            (gap, in_deep),
            (gap, h - out_deep),
            (gap + out_back, h),
            (far, h),
            (far, 0.0),
        ],
        (t, h),
    );
    let says = saying(scale);
    let fig = set.figures;
    let all = metal(board);
    let thickness = &ring.ring_thickness;
    upwards_free(
        board,
        (place(far, 0.0), place(far, h)),
        if side > 0.0 { all.right } else { all.left },
        side > 0.0,
        says(&fig.size_short(thickness), thickness.value()),
    );
    let backs = (gap + in_back, gap, gap + out_back);
    put_depths(board, set, (ring, preparation), (&place, scale), backs);
    if let Some(gap) = &preparation.root_gap
        && gap.value() > Length::ZERO
    {
        across_free(
            board,
            (
                place(0.0, h - out_deep),
                place(gap.value().to_mm(), h - out_deep),
            ),
            all.top,
            false,
            says(&fig.size_short(gap), gap.value()),
        );
    }
    for (bevel, deep, back, y, up) in [
        (&preparation.bevel_outside, out_deep, out_back, h, 1.0),
        (&preparation.bevel_inside, in_deep, in_back, 0.0, -1.0),
    ] {
        if let Some(Bevel { angle, .. }) = bevel {
            let tip = place(gap + back / 2.0, y - up * deep / 2.0);
            // Steeper than the bevel, that the line is not taken for its edge.
            let knee = at(tip.x + side * 2.0, place(0.0, y).y - up * 8.0);
            leader(
                board,
                tip,
                knee,
                &[format!("{}°", trimmed(*angle, 2))],
                FIGURES,
            );
        }
    }
    put_names(board, preparation, side);
}

fn put_metal(
    board: &mut Board,
    place: &impl Fn(f64, f64) -> PaperPoint,
    ring: &[(f64, f64); 6],
    (t, h): (f64, f64),
) {
    let ring = ring.map(|(u, y)| place(u, y));
    hatch(board, &[ring.to_vec()], HATCHING, Lean::Left);
    for pair in [(0, 1), (1, 2), (2, 3), (3, 4), (5, 0)] {
        board.edge_line(ring[pair.0], ring[pair.1]);
    }
    put_break(board, ring[4], ring[5]);
    let (low, high) = (-ASIDE, h + ASIDE);
    let plate = [(0.0, low), (0.0, high), (-t, high), (-t, low)].map(|(u, y)| place(u, y));
    hatch(board, &[plate.to_vec()], HATCHING, Lean::Right);
    board.edge_line(plate[0], plate[1]);
    for i in 1..4 {
        put_break(board, plate[i], plate[(i + 1) % 4]);
    }
}

/// Depths of the bevels and the root face between them, one above the other beyond the plate.
fn put_depths(
    board: &mut Board,
    set: &Set<'_>,
    (ring, preparation): (&Fabricated, &WeldPreparation),
    (place, scale): (&impl Fn(f64, f64) -> PaperPoint, f64),
    (inner_back, nose, outer_back): (f64, f64, f64),
) {
    let fig = set.figures;
    let says = saying(scale);
    let h = ring.ring_thickness.value();
    let size = |bevel: &Option<Bevel>| bevel.as_ref().map_or(Length::ZERO, |b| b.depth.value());
    let (inside, outside) = (
        size(&preparation.bevel_inside),
        size(&preparation.bevel_outside),
    );
    let all = metal(board);
    let to_left = place(1.0, 0.0).x > 0.0;
    let x = if to_left { all.left } else { all.right };
    // Each line from the edge of the ring that it shows.
    for (from, to, at_from, at_to) in [
        (Length::ZERO, inside, inner_back, nose),
        (inside, h - outside, nose, nose),
        (h - outside, h, nose, outer_back),
    ] {
        let length = to - from;
        if length > Length::ZERO && !length.same_as(Length::ZERO) && length < h {
            let ends = (place(at_from, from.to_mm()), place(at_to, to.to_mm()));
            upwards_free(board, ends, x, !to_left, says(&fig.short(length), length));
        }
    }
}

fn put_names(board: &mut Board, preparation: &WeldPreparation, side: f64) {
    let Some(all) = board.extent(|_| true) else {
        return;
    };
    let hang = if side > 0.0 { Hang::End } else { Hang::Start };
    board.text(at(-side * 2.0, all.top - 3.0), "PLATE", TABLE, hang);
    let hang = if side > 0.0 { Hang::Start } else { Hang::End };
    board.text(at(side * 8.0, all.top - 3.0), "RING", TABLE, hang);
    let procedure = preparation
        .procedure
        .clone()
        .unwrap_or_else(|| "..............".into());
    let lines = [
        format!(
            "PREPARATION AS GIVEN: {}",
            preparation.origin.to_uppercase()
        ),
        format!("WELDING PROCEDURE {}", procedure.to_uppercase()),
    ];
    for (i, line) in lines.iter().enumerate() {
        let y = all.bottom + 6.0 + i as f64 * TABLE * 1.5;
        board.text(at(all.left, y), line, TABLE, Hang::Start);
    }
}
