//! The face that a pipe is jointed on: its diameter, the studs that stand in it, and the pipe's flange as a neighbouring part.

use super::Pattern;
use super::board::Board;
use super::hole_detail::{hole_words, thickness};
use super::pad_detail::{pad_faces, pad_of, past_the_toe, put_pad};
use super::seat::{METAL, Seat};
use super::set::Set;
use super::view::Stroke;
use crate::design::Hole;
use crate::spec::{HoleSet, ViewFrom};
use crate::units::Length;

/// Thickness of the neighbouring flange as drawn, mm: it is the pipe's, and no size of this drawing.
const FLANGE: f64 = 12.0;

/// Short edges of the neighbouring part: a line of long dashes would not show them whole.
const SHORT_EDGE: Stroke = Stroke {
    pattern: Pattern::Continuous,
    ..Stroke::ADJACENT
};

/// Puts plate and joint face down; tells what is said in words.
pub fn put_pipe_joint(board: &mut Board, seat: &Seat<'_, '_>, one: &HoleSet) -> Vec<String> {
    let Some(face) = &one.joint_face else {
        return Vec::new();
    };
    let fig = seat.set.figures;
    let outer = face.diameter.value().to_mm() / 2.0;
    let pad = pad_of(seat, one);
    let end = pad.map_or(outer + METAL, |pad| past_the_toe(pad).max(outer + METAL));
    seat.plate_with_hole(board, end, stud_hole(seat, one, outer));
    // A pad on the smokebox side bears the joint.
    let on_pad = pad.filter(|pad| pad.side == ViewFrom::Smokebox);
    let joint = on_pad.map_or(seat.t, |pad| pad_faces(seat, pad).1);
    let flange = joint + FLANGE;
    put_flange(board, seat, (joint, flange), outer);
    seat.axis(board, -METAL, flange);
    let studs = put_studs(board, seat, one, (outer, flange));
    let mut words = put_pad(board, seat, one, &|_| None);
    seat.rims(board, &[0.0, joint], seat.hole);
    seat.along(board, (0.0, seat.t), end, &thickness(seat));
    let finish = seat.set.design.groups[seat.group].finish.value();
    let says = format!("⌀{} HOLE", hole_words(seat));
    seat.across(board, 0.0, false, finish, &says);
    let says = format!("⌀{} JOINT FACE", fig.size_short(&face.diameter));
    seat.across(board, joint, true, face.diameter.value(), &says);
    words.push("FLANGE SHOWN AS A NEIGHBOURING PART: TO THE PIPE'S OWN DRAWING".into());
    if pad.is_none_or(|pad| pad.holes.is_empty()) {
        words.push(studs);
    }
    words
}

/// The outline of the pipe's flange between two depths: its thickness and bore are the pipe's, and no sizes of this drawing.
fn put_flange(board: &mut Board, seat: &Seat<'_, '_>, (joint, end): (f64, f64), outer: f64) {
    for r in [outer, seat.hole] {
        seat.twice(board, (joint, r), (end, r), SHORT_EDGE);
    }
    seat.line(board, (end, outer), (end, -outer), Stroke::ADJACENT);
}

/// The studs of the face, by the holes that they stand in; tells what is said of them.
fn put_studs(
    board: &mut Board,
    seat: &Seat<'_, '_>,
    one: &HoleSet,
    (outer, flange): (f64, f64),
) -> String {
    let set = seat.set;
    let Some(name) = one.joint_face.as_ref().and_then(|face| face.studs.as_ref()) else {
        return "STUDS TO THE WORKS' STANDARD".into();
    };
    let group = set.design.groups.iter().position(|g| g.name == *name);
    let Some((group, radii)) = group.map(|g| (g, circle_of(set, seat, g, outer))) else {
        return String::new();
    };
    let finish = &set.design.groups[group].finish;
    let half = finish.value().to_mm() / 2.0;
    if let Some(&r) = radii.first() {
        for edge in [r - half, r + half] {
            seat.twice(board, (0.0, edge), (seat.t, edge), Stroke::SEEN);
        }
        seat.twice(board, (-4.0, r), (flange + 4.0, r), Stroke::CENTRE);
    }
    let alike = radii
        .windows(2)
        .all(|pair| Length::mm(pair[0]).same_as(Length::mm(pair[1])));
    let on = match (radii.first(), alike) {
        (Some(r), true) => {
            let circle = set.figures.diameter(Length::mm(2.0 * r));
            format!(" ON A CIRCLE OF {circle}")
        }
        _ => ", BY THEIR PLACES".into(),
    };
    format!(
        "{} STUD HOLES ⌀{}{on}, TURNED INTO THE SECTION",
        radii.len(),
        set.figures.size_short(finish)
    )
}

/// Between which radii a stud hole opens the plate; none where there are no studs.
fn stud_hole(seat: &Seat<'_, '_>, one: &HoleSet, outer: f64) -> Option<(f64, f64)> {
    let name = one.joint_face.as_ref()?.studs.as_ref()?;
    let groups = &seat.set.design.groups;
    let group = groups.iter().position(|g| g.name == *name)?;
    let half = groups[group].finish.value().to_mm() / 2.0;
    let r = *circle_of(seat.set, seat, group, outer).first()?;
    Some((r - half, r + half))
}

/// Distances of the stud holes from the middle of the hole that they stand round.
fn circle_of(set: &Set<'_>, seat: &Seat<'_, '_>, studs: usize, outer: f64) -> Vec<f64> {
    let Some(middle) = set.design.holes.iter().find(|h| h.group == seat.group) else {
        return Vec::new();
    };
    let apart = |hole: &Hole| hole.at.distance(middle.at);
    let round = set.design.holes.iter().filter(|h| h.group == studs);
    round.map(apart).filter(|&r| r < outer).collect()
}
