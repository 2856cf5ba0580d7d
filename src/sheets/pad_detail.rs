//! A pad on the plate round a hole, with its weld or its rivets.

use super::Role;
use super::board::Board;
use super::hatch::Lean;
use super::seat::Seat;
use super::view::Stroke;
use crate::spec::{HoleSet, Pad, PadAt, PadHole, ViewFrom};
use crate::units::angle::hypot;

/// The pad of a group and where it lies, where there is one.
pub fn pad_of<'a>(seat: &'a Seat<'_, '_>, one: &'a HoleSet) -> Option<(&'a Pad, &'a PadAt)> {
    let at = one.pad.as_ref()?;
    let pads = &seat.set.spec.written.pads;
    Some((pads.iter().find(|pad| pad.name == at.name)?, at))
}

/// From the pad's centre to the nearest hole of a set, and that hole's radius, mm.
fn nearest(holes: &PadHole) -> Option<(f64, f64)> {
    let radii = holes.at.iter();
    let radii = radii.map(|(x, y)| hypot(x.value().to_mm(), y.value().to_mm()));
    let nearest = radii.min_by(f64::total_cmp)?;
    Some((nearest, holes.hole.value().to_mm() / 2.0))
}

/// Whether a hole leaves metal between itself and the pad's centre: one that does not is the pad's bore.
fn holds_aside(r: f64, half: f64) -> bool {
    r > half
}

/// Radius of the opening in the middle of the pad, mm: its bore, or a hole drilled or tapped there.
fn bore_of(pad: &Pad) -> Option<f64> {
    let bore = pad.bore.as_ref().map(|bore| bore.value().to_mm() / 2.0);
    let mut holes = pad.holes.iter().filter_map(nearest);
    let tapped = |(r, half)| (!holds_aside(r, half)).then_some(half);
    bore.or_else(|| holes.find_map(tapped))
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
    let bore = bore_of(pad).unwrap_or(seat.hole);
    let aside = |(r, half)| holds_aside(r, half).then_some((r - half, r + half));
    let rivets = pad.holes.iter().filter_map(nearest).find_map(aside);
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
        if let Some((r, half)) = nearest(hole).filter(|&(r, half)| holds_aside(r, half)) {
            for edge in [r - half, r + half] {
                seat.twice(board, (face, edge), (end, edge), Stroke::SEEN);
            }
            let (a, b) = (
                face.min(end).min(0.0) - 4.0,
                face.max(end).max(seat.t) + 4.0,
            );
            seat.twice(board, (a, r), (b, r), Stroke::CENTRE);
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

#[cfg(test)]
mod tests {
    use super::super::Mark;
    use super::super::sample_jobs::{jobs, with_set};
    use super::*;

    /// Where a pad has its hole there is no metal to hatch, be it bored or tapped with the plate.
    #[test]
    fn holds_no_metal_is_hatched_in_the_hole_of_a_pad() {
        let mut pads = 0;
        for job in jobs() {
            with_set(&job, |set| {
                let written = &set.spec.written;
                for (i, one) in written.holes.iter().enumerate() {
                    let seat = Seat::new(set, written.tubes.len() + i, 1.0);
                    let Some((pad, _)) = pad_of(&seat, one) else {
                        continue;
                    };
                    let mut board = set.board("details", "Details");
                    put_pad(&mut board, &seat, one);
                    let axis = seat.place(0.0, 0.0).y;
                    let bore = bore_of(pad).unwrap_or(seat.hole);
                    let mut lines = 0;
                    for mark in &board.marks {
                        if let Mark::Line {
                            from,
                            to,
                            role: Role::Hatch,
                            ..
                        } = mark
                        {
                            lines += 1;
                            for y in [from.y - axis, to.y - axis] {
                                assert!(y.abs() > bore - 0.01, "{job}: {} at {y}", one.name);
                            }
                        }
                    }
                    assert!(lines > 4, "{job}: {} is not hatched", one.name);
                    pads += 1;
                }
            });
        }
        assert!(pads >= 2);
    }
}
