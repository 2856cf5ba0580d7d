//! A pad on the plate round a hole, with its weld or its rivets.

use super::Role;
use super::board::Board;
use super::hatch::Lean;
use super::seat::Seat;
use super::view::Stroke;
use crate::spec::{HoleSet, Pad, PadAt, ViewFrom};
use crate::units::angle::hypot;

/// The pad of a group and where it lies, where there is one.
pub fn pad_of<'a>(seat: &'a Seat<'_, '_>, one: &'a HoleSet) -> Option<(&'a Pad, &'a PadAt)> {
    let at = one.pad.as_ref()?;
    let pads = &seat.set.spec.written.pads;
    Some((pads.iter().find(|pad| pad.name == at.name)?, at))
}

/// Puts the pad down with its sizes; tells what is said of it. Nothing where there is none.
pub fn put_pad(board: &mut Board, seat: &Seat<'_, '_>, one: &HoleSet) -> Vec<String> {
    let Some((pad, at)) = pad_of(seat, one) else {
        return Vec::new();
    };
    let fig = seat.set.figures;
    let thick = pad.thickness.value().to_mm();
    let (face, end) = match at.side {
        ViewFrom::Smokebox => (seat.t, seat.t + thick),
        ViewFrom::Firebox => (0.0, -thick),
    };
    let outer = pad.diameter.value().to_mm() / 2.0;
    let bore = pad
        .bore
        .as_ref()
        .map_or(seat.hole, |bore| bore.value().to_mm() / 2.0);
    let rivets = pad.holes.first().and_then(|hole| {
        let radii = hole.at.iter();
        let radii = radii.map(|(x, y)| hypot(x.value().to_mm(), y.value().to_mm()));
        let (r, half) = (
            radii.min_by(f64::total_cmp)?,
            hole.hole.value().to_mm() / 2.0,
        );
        Some((r - half, r + half))
    });
    seat.cut_round(board, (face, end), (bore, outer), (Lean::Left, rivets));
    for y in [bore, outer] {
        seat.twice(board, (face, y), (end, y), Stroke::SEEN);
    }
    seat.twice(board, (end, bore), (end, outer), Stroke::SEEN);
    let mut words = vec![format!("{}: A PART OF ITS OWN", pad.name.to_uppercase())];
    if let Some(leg) = &at.weld_leg {
        let z = leg.value().to_mm();
        let way = if end > face { 1.0 } else { -1.0 };
        for hand in [1.0, -1.0] {
            let corners = [(face, outer), (face, outer + z), (face + way * z, outer)];
            let weld = corners.map(|(u, y)| seat.place(u, y * hand)).to_vec();
            board.filled(weld, Role::Object);
        }
        words.push(format!(
            "WELDED ALL ROUND, LEG {} AS THE WORKS GIVES IT",
            fig.size_short(leg)
        ));
    }
    for hole in &pad.holes {
        let half = hole.hole.value().to_mm() / 2.0;
        let mut radii: Vec<f64> = hole
            .at
            .iter()
            .map(|(x, y)| hypot(x.value().to_mm(), y.value().to_mm()))
            .collect();
        radii.sort_by(f64::total_cmp);
        if let Some(r) = radii.first() {
            for edge in [r - half, r + half] {
                seat.twice(board, (face, edge), (end, edge), Stroke::SEEN);
            }
            let (a, b) = (
                face.min(end).min(0.0) - 4.0,
                face.max(end).max(seat.t) + 4.0,
            );
            seat.twice(board, (a, *r), (b, *r), Stroke::CENTRE);
        }
        words.push(format!(
            "{} {} ⌀{}",
            hole.at.len(),
            hole.name.to_uppercase(),
            fig.size_short(&hole.hole)
        ));
    }
    let (low, high) = (face.min(end), face.max(end));
    seat.along(board, (low, high), outer, &fig.size_short(&pad.thickness));
    let says = format!("⌀{} PAD", fig.size_short(&pad.diameter));
    let outwards = matches!(at.side, ViewFrom::Smokebox);
    seat.across(board, end, outwards, pad.diameter.value(), &says);
    words
}
