//! A taper plug in its hole: taper and thread as gauged, how far its large end stands out, and the square on its head.

use super::board::Board;
use super::hole_detail::{hole_words, put_hole_leader, thickness};
use super::pad_detail::{pad_of, past_the_toe, put_pad};
use super::seat::{BROKEN, METAL, ROOT, Seat};
use super::view::Stroke;
use crate::spec::{HoleSet, PlugSpec};
use crate::units::print::trimmed;
use crate::units::{Length, whitworth_core};

/// Square of the head shown where it is broken off, mm.
const HEAD: f64 = 14.0;
/// Thread shown beyond the plate where its length is not given, mm.
const BEYOND: f64 = 8.0;

/// Puts plug and plate down; tells what is said in words.
pub fn put_plug(board: &mut Board, seat: &Seat<'_, '_>, one: &HoleSet) -> Vec<String> {
    let Some(plug) = &one.plug else {
        return Vec::new();
    };
    let pad = pad_of(seat, one).map_or(0.0, past_the_toe);
    let end = (plug.large_end.value().to_mm() / 2.0 + METAL).max(pad);
    let tapped = |depth: f64| seat.hole - (seat.t - depth) / plug.taper_one_in / 2.0;
    put_plate(board, seat, end, &tapped);
    let (large, small) = put_body(board, seat, plug);
    put_head(board, seat, plug, large);
    let out = plug.square.as_ref().map_or(0.0, |_| HEAD);
    seat.axis(board, small, large + out);
    let mut words = put_pad(board, seat, one, &|depth| Some(tapped(depth)));
    put_sizes(board, seat, plug, (large, small), end);
    words.extend(words_of(seat, plug));
    words
}

/// The plate, its hole tapered as it is tapped.
fn put_plate(board: &mut Board, seat: &Seat<'_, '_>, end: f64, tapped: &dyn Fn(f64) -> f64) {
    let inner = (tapped(0.0), tapped(seat.t));
    seat.cut_between(board, (0.0, seat.t), (inner, (end, end)), seat.lean);
    for (u, r) in [(0.0, inner.0), (seat.t, inner.1)] {
        seat.twice(board, (u, r), (u, end), Stroke::SEEN);
    }
    seat.twice(board, (0.0, inner.0), (seat.t, inner.1), Stroke::SEEN);
    seat.break_plate(board, end);
}

/// How far the large end stands out from the smokebox face: the hole is as wide as the plug there.
fn stands_out(seat: &Seat<'_, '_>, plug: &PlugSpec) -> Length {
    let hole = seat.set.design.groups[seat.group].finish.value();
    plug.taper_one_in * (plug.large_end.value() - hole)
}

/// The tapered thread from its large end inwards; tells the depths of both ends.
fn put_body(board: &mut Board, seat: &Seat<'_, '_>, plug: &PlugSpec) -> (f64, f64) {
    let large = seat.t + stands_out(seat, plug).to_mm();
    let known = plug
        .length
        .as_ref()
        .map(|length| large - length.value().to_mm());
    let small = known.unwrap_or(-BEYOND);
    let radius = |depth: f64| {
        plug.large_end.value().to_mm() / 2.0 - (large - depth) / plug.taper_one_in / 2.0
    };
    let core = |depth: f64| {
        whitworth_core(Length::mm(2.0 * radius(depth)), plug.threads_per_inch).to_mm() / 2.0
    };
    seat.twice(
        board,
        (large, radius(large)),
        (small, radius(small)),
        Stroke::SEEN,
    );
    seat.twice(board, (large, core(large)), (small, core(small)), ROOT);
    seat.line(
        board,
        (large, radius(large)),
        (large, -radius(large)),
        Stroke::SEEN,
    );
    match known {
        Some(_) => {
            let ends = ((small, radius(small)), (small, -radius(small)));
            seat.line(board, ends.0, ends.1, Stroke::SEEN);
        }
        None => seat.break_across(board, small, radius(small)),
    }
    (large, small)
}

/// The square, its flat side crossed by two narrow lines, broken off: its length is given nowhere.
fn put_head(board: &mut Board, seat: &Seat<'_, '_>, plug: &PlugSpec, large: f64) {
    let Some(square) = &plug.square else { return };
    let r = square.value().to_mm() / 2.0;
    let end = large + HEAD;
    seat.twice(board, (large, r), (end, r), Stroke::SEEN);
    seat.break_across(board, end, r);
    for hand in [1.0, -1.0] {
        seat.line(board, (large, r * hand), (end, -r * hand), BROKEN);
    }
}

fn put_sizes(
    board: &mut Board,
    seat: &Seat<'_, '_>,
    plug: &PlugSpec,
    (large, small): (f64, f64),
    end: f64,
) {
    let fig = seat.set.figures;
    let at_face = [
        format!("⌀{} OVER THREADS", hole_words(seat)),
        "AT THIS FACE".to_string(),
    ];
    put_hole_leader(board, seat, seat.t, &at_face);
    seat.along(board, (0.0, seat.t), end, &thickness(seat));
    let out = stands_out(seat, plug);
    let edge = plug.large_end.value().to_mm() / 2.0;
    if out > Length::ZERO {
        seat.along(board, (seat.t, large), edge, &fig.short(out));
    }
    if let Some(length) = &plug.length {
        seat.along(
            board,
            (small, large),
            edge,
            &format!("{} THREAD", fig.size_short(length)),
        );
    }
    if let Some(square) = &plug.square {
        let words = format!("□{}", fig.size_short(square));
        seat.across(board, large + HEAD, true, square.value(), &words);
    }
    let words = format!("⌀{} LARGE END", fig.size_short(&plug.large_end));
    seat.across(board, large, true, plug.large_end.value(), &words);
}

fn words_of(seat: &Seat<'_, '_>, plug: &PlugSpec) -> Vec<String> {
    let fig = seat.set.figures;
    let mut words = vec![format!(
        "TAPER ONE IN {} ON THE DIAMETER, {} THREADS PER INCH, WHITWORTH FORM",
        trimmed(plug.taper_one_in, 4),
        trimmed(plug.threads_per_inch, 2)
    )];
    words.push(format!("GAUGED: {}", plug.origin.to_uppercase()));
    let out = stands_out(seat, plug);
    if out > Length::ZERO {
        words.push(format!(
            "LARGE END STANDS OUT {}, RECKONED FROM HOLE AND TAPER",
            fig.short(out)
        ));
    }
    if plug.square.is_none() {
        words.push("HEAD TO THE WORKS' STANDARD".into());
    }
    words
}
