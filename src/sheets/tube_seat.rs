//! The seat of a tube: hole with its edge radii, the tube's end as expanded, its bead dashed.

use super::board::Board;
use super::dimension::leader;
use super::hatch::hatch;
use super::hole_detail::{put_hole_size, thickness};
use super::letter_size::FIGURES;
use super::seat::{HATCHING, METAL, Seat};
use super::view::Stroke;
use super::{PaperPoint, Pattern, Pen, Role, at};
use crate::spec::{Bead, Nest};
use crate::units::angle::{PI, cos, sin};

/// Length of tube shown on the boiler side, mm of tube.
const SHOWN: f64 = 24.0;

/// Puts the seat down; tells what it says in words.
pub fn put_tube_seat(board: &mut Board, seat: &Seat<'_, '_>, nest: &Nest) -> Vec<String> {
    let bead = nest.bead.as_ref();
    let bead_radius = bead.map_or(0.0, |b| b.diameter.value().to_mm() / 2.0);
    let end = (seat.hole + METAL).max(bead_radius + METAL / 2.0);
    put_plate(board, seat, nest, end);
    put_tube(board, seat, nest);
    if let Some(bead) = bead {
        put_bead(board, seat, nest, bead);
    }
    put_sizes(board, seat, nest, end);
    words(seat, nest)
}

/// The plate, its edges at the hole rounded where the spec says by how much.
fn put_plate(board: &mut Board, seat: &Seat<'_, '_>, nest: &Nest, end: f64) {
    let Some(radius) = &nest.edge_radius else {
        seat.plate(board, end);
        return;
    };
    let (r, hole, t) = (radius.value().to_mm(), seat.hole, seat.t);
    for hand in [1.0, -1.0] {
        let rounded = |centre: f64, way: f64| {
            (0..=6).map(move |i| {
                let a = PI / 2.0 * f64::from(if way < 0.0 { 6 - i } else { i }) / 6.0;
                (centre + way * r * sin(a), hole + r - r * cos(a))
            })
        };
        let mut profile: Vec<(f64, f64)> = vec![(t, end), (0.0, end)];
        profile.extend(rounded(r, -1.0));
        profile.extend(rounded(t - r, 1.0));
        let paper: Vec<PaperPoint> = profile
            .iter()
            .map(|&(u, y)| seat.place(u, y * hand))
            .collect();
        hatch(board, std::slice::from_ref(&paper), HATCHING, seat.lean);
        for pair in paper[1..].windows(2) {
            board.edge_line(pair[0], pair[1]);
        }
        board.edge_line(paper[paper.len() - 1], paper[0]);
    }
    seat.break_plate(board, end);
}

/// The tube: body on the boiler side, its end in the hole and standing out where the spec says by how much.
fn put_tube(board: &mut Board, seat: &Seat<'_, '_>, nest: &Nest) {
    let (body, in_hole, last) = profile_of(seat, nest);
    let wall = nest.wall.as_ref().map(|w| w.value().to_mm());
    let profile = [
        (-SHOWN, body),
        (-0.5 * SHOWN, body),
        (-0.2 * SHOWN, in_hole),
        (last, in_hole),
    ];
    let stroke = Stroke {
        pen: Pen::Middle,
        ..Stroke::SEEN
    };
    for less in [Some(0.0), wall].into_iter().flatten() {
        for pair in profile.windows(2) {
            let (a, b) = ((pair[0].0, pair[0].1 - less), (pair[1].0, pair[1].1 - less));
            seat.twice(board, a, b, stroke);
        }
    }
    seat.line(board, (last, in_hole), (last, -in_hole), stroke);
    seat.break_across(board, -SHOWN, body);
    seat.axis(board, -SHOWN, last);
}

/// Radius of the body, radius in the hole, and the depth at which the end stands before it is beaded.
fn profile_of(seat: &Seat<'_, '_>, nest: &Nest) -> (f64, f64, f64) {
    let end = nest.tube_end.as_ref().unwrap_or(&nest.tube);
    let out = nest.projection.as_ref().map_or(0.0, |p| p.value().to_mm());
    (
        nest.tube.value().to_mm() / 2.0,
        end.value().to_mm() / 2.0,
        seat.t + out,
    )
}

/// The bead, dashed: what the end is turned over to.
fn put_bead(board: &mut Board, seat: &Seat<'_, '_>, nest: &Nest, bead: &Bead) {
    let (_, in_hole, _) = profile_of(seat, nest);
    let (outer, out) = (
        bead.diameter.value().to_mm() / 2.0,
        bead.stands_out.value().to_mm(),
    );
    let round = out.min(outer - in_hole);
    let stroke = Stroke {
        pen: Pen::Narrow,
        pattern: Pattern::Dashed,
        role: Role::Object,
    };
    let t = seat.t;
    for hand in [1.0, -1.0] {
        let place = |u: f64, y: f64| seat.place(u, y * hand);
        seat.line(
            board,
            (t, outer * hand),
            (t + out - round, outer * hand),
            stroke,
        );
        let centre = place(t + out - round, outer - round);
        let start = match (seat.side > 0.0, hand > 0.0) {
            (true, true) => 270.0,
            (true, false) => 0.0,
            (false, true) => 180.0,
            (false, false) => 90.0,
        };
        let radius = round * seat.scale();
        board.arc(
            centre,
            radius,
            start,
            90.0,
            stroke.pen,
            stroke.pattern,
            stroke.role,
        );
        let inner = nest.wall.as_ref().map_or(0.0, |w| w.value().to_mm());
        let low = in_hole - inner;
        seat.line(
            board,
            (t + out, (outer - round) * hand),
            (t + out, low * hand),
            stroke,
        );
    }
}

fn put_sizes(board: &mut Board, seat: &Seat<'_, '_>, nest: &Nest, end: f64) {
    let fig = seat.set.figures;
    let (_, _, last) = profile_of(seat, nest);
    let tube_end = nest.tube_end.as_ref().unwrap_or(&nest.tube);
    seat.across(
        board,
        -SHOWN,
        false,
        nest.tube.value(),
        &format!("⌀{} TUBE", fig.size_short(&nest.tube)),
    );
    // An end that is neither enlarged nor swaged down has the tube's own size, which is said once.
    if !tube_end.value().same_as(nest.tube.value()) {
        let words = format!("⌀{} END", fig.size_short(tube_end));
        seat.across(board, last, true, tube_end.value(), &words);
    }
    put_hole_size(board, seat);
    if let Some(bead) = &nest.bead {
        let words = format!("⌀{} BEAD", fig.size_short(&bead.diameter));
        seat.across(board, seat.t, true, bead.diameter.value(), &words);
    }
    seat.along(board, (0.0, seat.t), end, &thickness(seat));
    if let Some(out) = &nest.projection {
        let (_, in_hole, _) = profile_of(seat, nest);
        seat.along(board, (seat.t, last), in_hole, &fig.size_short(out));
    }
    if let Some(radius) = &nest.edge_radius {
        let r = radius.value().to_mm();
        let lean = PI / 4.0;
        // On the boiler side, where no end and no bead stands before it.
        let tip = seat.place(r - r * cos(lean), seat.hole + r - r * sin(lean));
        let knee = at(tip.x - seat.side * 7.0, tip.y - 7.0);
        let words = [format!("R{}", fig.size_short(radius))];
        leader(board, tip, knee, &words, FIGURES);
    }
}

/// What the spec says of the tube's end, wall and edges.
fn words(seat: &Seat<'_, '_>, nest: &Nest) -> Vec<String> {
    let fig = seat.set.figures;
    let out = nest.projection.as_ref().map(|p| fig.size_short(p));
    let beaded = nest.bead.as_ref().map(|b| fig.size_short(&b.stands_out));
    let out = match (out, beaded) {
        (Some(out), Some(beaded)) => {
            format!("STANDS OUT {out} BEFORE BEADING, {beaded} BEADED (DASHED)")
        }
        (Some(out), None) => format!("STANDS OUT {out} BEFORE BEADING"),
        (None, Some(beaded)) => format!(
            "PROJECTION BEFORE BEADING NOT GIVEN: TUBE DRAWN FLUSH. BEAD, DASHED, STANDS OUT {beaded}"
        ),
        (None, None) => "PROJECTION AND BEAD NOT GIVEN: TUBE DRAWN FLUSH".into(),
    };
    let wall = nest.wall.as_ref().map_or_else(
        || "TUBE WALL NOT GIVEN".into(),
        |w| format!("TUBE WALL {}", fig.size_short(w)),
    );
    let edges = nest.edge_radius.as_ref();
    let edges = edges.map(|r| {
        format!(
            "EDGES OF EVERY TUBE HOLE R{}, BOTH SIDES",
            fig.size_short(r)
        )
    });
    [out, wall].into_iter().chain(edges).collect()
}
