//! A pad on the plate round a hole, with its weld or its rivets.

use super::Role;
use super::board::Board;
use super::figure::Figures;
use super::hatch::Lean;
use super::seat::{METAL, Seat};
use super::view::Stroke;
use super::weld_numbers::pad_weld_numbers;
use crate::design::{PlacedPad, Point};
use crate::spec::{HoleSet, PadHole, Purpose, ViewFrom};
use crate::units::angle::{cos, from_top_clockwise, sin};
use crate::units::{Length, Size};

/// The pad of a group, where there is one.
pub fn pad_of<'a>(seat: &Seat<'a, '_>, one: &HoleSet) -> Option<&'a PlacedPad> {
    one.pad.as_ref()?;
    let design = seat.set.design;
    let mut pads = design.pads.iter();
    pads.find(|pad| design.holes[pad.hole].group == seat.group)
}

/// How far from the axis the plate is shown round a pad: past the toe of its weld, mm.
pub fn past_the_toe(pad: &PlacedPad) -> f64 {
    pad.toe_radius().to_mm() + METAL
}

/// Depths of a pad's face on the plate and of its own face.
pub fn pad_faces(seat: &Seat<'_, '_>, pad: &PlacedPad) -> (f64, f64) {
    let thick = pad.thickness.to_mm();
    match pad.side {
        ViewFrom::Smokebox => (seat.t, seat.t + thick),
        ViewFrom::Firebox => (0.0, -thick),
    }
}

/// The nearest of the pad's own holes to its middle: that distance and the hole's radius, mm.
fn nearest_hole(pad: &PlacedPad) -> Option<(f64, f64)> {
    let holes = pad.holes.iter();
    let apart = holes.map(|(at, wide)| (at.radius(), wide.to_mm() / 2.0));
    apart.min_by(|a, b| a.0.total_cmp(&b.0))
}

/// Puts the pad down with its sizes; tells what is said of it. Nothing where there is none.
///
/// `tapped` is the radius at a depth of a hole that is tapped through plate and pad together; none where the pad has an opening of
/// its own.
pub fn put_pad(
    board: &mut Board,
    seat: &Seat<'_, '_>,
    one: &HoleSet,
    tapped: &dyn Fn(f64) -> Option<f64>,
) -> Vec<String> {
    let Some(pad) = pad_of(seat, one) else {
        return Vec::new();
    };
    let written = &seat.set.spec.written.pads[pad.part];
    let fig = seat.set.figures;
    let (face, end) = pad_faces(seat, pad);
    let outer = pad.diameter.to_mm() / 2.0;
    let opening = |depth: f64| match written.bore {
        Some(_) => pad.opening.to_mm() / 2.0,
        None => tapped(depth).unwrap_or(pad.opening.to_mm() / 2.0),
    };
    put_metal(board, seat, pad, &opening);
    let mut words = vec![format!(
        "{}: A PART OF ITS OWN",
        written.name.to_uppercase()
    )];
    if let Some(leg) = &pad.weld_leg {
        put_weld(board, seat, (face, end, outer), leg);
        let of_group = |id: &str| {
            let mut holes = seat.set.design.holes.iter();
            holes.any(|hole| hole.group == seat.group && hole.id == id)
        };
        words.push(format!(
            "WELD {} ALL ROUND, LEG {} AS THE WORKS GIVES IT",
            pad_weld_numbers(seat.set, of_group).join(", "),
            fig.size_short(leg)
        ));
    }
    if let Some((r, _)) = nearest_hole(pad) {
        let (a, b) = (
            face.min(end).min(0.0) - 4.0,
            face.max(end).max(seat.t) + 4.0,
        );
        seat.twice(board, (a, r), (b, r), Stroke::CENTRE);
    }
    // The hole of a plug is tapped with the plate's: its size is given at the plate's face, and nobody is to drill to it.
    let drilled = written.holes.iter();
    let drilled = drilled.filter(|holes| holes.purpose != Purpose::Plug);
    words.extend(drilled.map(|holes| holes_of_pad(fig, holes)));
    words.extend(written.remarks.as_ref().map(|words| words.to_uppercase()));
    let (low, high) = (face.min(end), face.max(end));
    seat.along(
        board,
        (low, high),
        outer,
        &fig.size_short(&written.thickness),
    );
    let says = format!("⌀{} PAD", fig.size_short(&written.diameter));
    let outwards = matches!(pad.side, ViewFrom::Smokebox);
    seat.across(board, end, outwards, pad.diameter, &says);
    words
}

/// How many holes of a size a pad has, what they are for, and the circle that they stand on.
fn holes_of_pad(fig: Figures, holes: &PadHole) -> String {
    let off = match holes.at.len() {
        1 => "1 HOLE".into(),
        n => format!("{n} HOLES"),
    };
    let size = fig.size_short(&holes.hole);
    let circle = circle_of_holes(holes, |wide| fig.diameter(wide));
    let on = circle.map_or(String::new(), |circle| format!(", ON {circle}"));
    let spaced = match is_evenly_spaced(holes) {
        true => ", EQUALLY SPACED, ONE AT TOP",
        false => "",
    };
    format!(
        "{off} ⌀{size} FOR {}{on}{spaced}",
        holes.name.to_uppercase()
    )
}

/// Places this near to even spacing are written to so many figures, mm.
const AS_WRITTEN: f64 = 0.02;

/// Whether several holes stand evenly spaced about the pad's middle, one of them at the top.
fn is_evenly_spaced(holes: &PadHole) -> bool {
    let place = |(x, y): &(Size, Size)| Point::new(x.value().to_mm(), y.value().to_mm());
    let places: Vec<Point> = holes.at.iter().map(place).collect();
    let radius = places.iter().map(|p| p.radius()).fold(0.0, f64::max);
    let even = (0..places.len()).map(|i| {
        let a = from_top_clockwise(360.0 * i as f64 / places.len() as f64);
        Point::new(radius * cos(a), radius * sin(a))
    });
    let taken = |wanted: Point| places.iter().any(|p| p.distance(wanted) < AS_WRITTEN);
    places.len() > 1 && even.into_iter().all(taken)
}

/// The circle about the pad's middle that several holes stand on, as it prints: places are written to so many figures, and what
/// prints alike is one circle. None where they do not stand on one.
pub fn circle_of_holes(holes: &PadHole, print: impl Fn(Length) -> String) -> Option<String> {
    let circle_of = |(x, y): &(Size, Size)| {
        let radius = Point::new(x.value().to_mm(), y.value().to_mm()).radius();
        print(Length::mm(2.0 * radius))
    };
    let mut circles = holes.at.iter().map(circle_of);
    let one = circles.next()?;
    let is_one = holes.at.len() > 1 && circles.all(|circle| circle == one);
    is_one.then_some(one)
}

/// The pad's metal above and below the axis, its edges and those of its nearest hole.
fn put_metal(
    board: &mut Board,
    seat: &Seat<'_, '_>,
    pad: &PlacedPad,
    opening: &dyn Fn(f64) -> f64,
) {
    let (face, end) = pad_faces(seat, pad);
    let outer = pad.diameter.to_mm() / 2.0;
    let (at_face, at_end) = (opening(face), opening(end));
    let inner = (at_face, at_end);
    match nearest_hole(pad) {
        Some((r, half)) => {
            let (from, to) = (r - half, r + half);
            seat.cut_between(board, (face, end), (inner, (from, from)), Lean::Left);
            seat.cut_between(board, (face, end), ((to, to), (outer, outer)), Lean::Left);
            for edge in [from, to] {
                seat.twice(board, (face, edge), (end, edge), Stroke::SEEN);
            }
        }
        None => seat.cut_between(board, (face, end), (inner, (outer, outer)), Lean::Left),
    }
    seat.twice(board, (face, outer), (end, outer), Stroke::SEEN);
    seat.twice(board, (face, at_face), (end, at_end), Stroke::SEEN);
    seat.twice(board, (end, at_end), (end, outer), Stroke::SEEN);
}

/// The weld round the pad's edge.
fn put_weld(
    board: &mut Board,
    seat: &Seat<'_, '_>,
    (face, end, outer): (f64, f64, f64),
    leg: &Size,
) {
    let z = leg.value().to_mm();
    let way = if end > face { z } else { -z };
    for hand in [1.0, -1.0] {
        let corners = [(face, outer), (face, outer + z), (face + way, outer)];
        let weld = corners.map(|(u, y)| seat.place(u, y * hand)).to_vec();
        board.filled(weld, Role::Object);
    }
}

#[cfg(test)]
mod tests {
    use super::super::Mark;
    use super::super::sample_jobs::{jobs, with_set};
    use super::*;

    fn pad_holes(at: &[[&str; 2]]) -> PadHole {
        let words =
            serde_json::json!({"name": "studs", "purpose": "bolt", "hole": "12 mm", "at": at});
        serde_json::from_value(words).expect("holes of a pad")
    }

    /// Six holes of a regular hexagon of 70 mm, 70 sin 60° = 60.622: evenly spaced. Half a millimetre off, turned so that none is at
    /// the top, or one alone: nothing is said of spacing.
    #[test]
    fn holds_even_spacing_is_said_only_of_even_places() {
        let x = "60.622 mm";
        let back = "-60.622 mm";
        let (half, half_down) = ("35 mm", "-35 mm");
        let hexagon = [
            ["0 mm", "70 mm"],
            [x, half],
            [x, half_down],
            ["0 mm", "-70 mm"],
            [back, half_down],
            [back, half],
        ];
        assert!(is_evenly_spaced(&pad_holes(&hexagon)));
        let mut off = hexagon;
        off[0] = ["0.5 mm", "70 mm"];
        assert!(!is_evenly_spaced(&pad_holes(&off)));
        let turned = hexagon.map(|[x, y]| [y, x]);
        assert!(!is_evenly_spaced(&pad_holes(&turned)));
        assert!(!is_evenly_spaced(&pad_holes(&hexagon[..1])));
    }

    /// Where a pad has its hole there is no metal to hatch, be it bored or tapped with the plate.
    #[test]
    fn holds_no_metal_is_hatched_in_the_hole_of_a_pad() {
        let mut pads = 0;
        for job in jobs() {
            with_set(&job, |set| {
                let written = &set.spec.written;
                for (i, one) in written.holes.iter().enumerate() {
                    let seat = Seat::new(set, written.tubes.len() + i, 1.0);
                    let Some(pad) = pad_of(&seat, one) else {
                        continue;
                    };
                    let mut board = set.board("details", "Details");
                    put_pad(&mut board, &seat, one, &|_| None);
                    let axis = seat.place(0.0, 0.0).y;
                    let bore = pad.opening.to_mm() / 2.0;
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
