//! A hole in section with what goes into it: a tube with its end, a stay with its nuts, a plug, a pipe's joint face, or the bare hole.

use super::board::Board;
use super::dimension::leader;
use super::hatch::{Lean, hatch};
use super::letter_size::{FIGURES, TABLE, wrap};
use super::mouth_detail::MouthSection;
use super::pad_detail::{pad_of, past_the_toe, put_pad};
use super::pipe_joint::put_pipe_joint;
use super::plug_detail::put_plug;
use super::seat::{HATCHING, METAL, Seat, metal};
use super::set::Set;
use super::stay_end::put_stay_end;
use super::text_box::rise_and_fall;
use super::tube_seat::put_tube_seat;
use super::{Hang, PaperPoint, at, face};
use crate::spec::{HoleSet, MouthSpec, Purpose};
use crate::units::Length;

/// Least width that words below a detail are wrapped to, mm.
const LEAST_WORDS: f64 = 76.0;

/// What is said of a mouth below its detail.
const MOUTH_WORDS: [&str; 3] = [
    "MOUTH TURNED OUT OF THE PLATE",
    "BEND TO THE WORKS' FORMER",
    "NOT CUT TO SIZE IN THE BLANK",
];

/// The detail of a group about the origin of an empty board: plate, what goes into the hole, sizes, and words below.
pub fn put_hole_detail(board: &mut Board, set: &Set<'_>, group: usize, scale: f64) {
    let seat = Seat::new(set, group, scale);
    let written = &set.spec.written;
    let nests = written.tubes.len();
    let mut words = if set.design.groups[group].purpose.takes_a_tube() {
        let Some(nest) = written.tubes.get(group) else {
            return;
        };
        put_tube_seat(board, &seat, nest)
    } else {
        let Some(one) = written.holes.get(group - nests) else {
            return;
        };
        put_other(board, &seat, one)
    };
    if !words.iter().any(|line| line.starts_with("EDGES")) {
        words.push("SHARP EDGES OFF, BOTH SIDES".into());
    }
    seat.name_sides(board);
    put_words(board, &words);
}

fn put_other(board: &mut Board, seat: &Seat<'_, '_>, one: &HoleSet) -> Vec<String> {
    let mouth = seat.set.design.groups[seat.group].mouth.as_ref();
    if let Some(mouth) = mouth {
        return put_mouth(board, seat, mouth);
    }
    match one.purpose {
        Purpose::Stay if one.stay.is_some() => put_stay_end(board, seat, one),
        Purpose::Plug if one.plug.is_some() => put_plug(board, seat, one),
        _ if one.joint_face.is_some() => put_pipe_joint(board, seat, one),
        _ => put_bare_hole(board, seat, one),
    }
}

/// The hole with nothing in it: what goes in is given nowhere.
fn put_bare_hole(board: &mut Board, seat: &Seat<'_, '_>, one: &HoleSet) -> Vec<String> {
    let clear = one.needs_clear.as_ref().map(|size| size.value());
    let clear_radius = clear.map_or(0.0, |size| size.to_mm() / 2.0);
    let pad = pad_of(seat, one);
    let end = (seat.hole + METAL)
        .max(clear_radius + METAL)
        .max(pad.map_or(0.0, past_the_toe));
    seat.plate(board, end);
    seat.rims(board, &[0.0, seat.t], seat.hole);
    seat.axis(board, -METAL, seat.t + METAL);
    let mut words = put_pad(board, seat, one, &|_| None);
    seat.along(board, (0.0, seat.t), end, &thickness(seat));
    put_hole_size(board, seat);
    if let Some(clear) = &one.needs_clear {
        let says = format!("⌀{} KEPT CLEAR", seat.set.figures.size_short(clear));
        seat.across(board, 0.0, false, clear.value(), &says);
    }
    words.push(
        match one.purpose {
            Purpose::Plug => "TAPER AND THREADS BY GAUGE OF THE OLD PLUG",
            Purpose::Stay => "NUTS AND WASHERS TO THE WORKS' STANDARD",
            Purpose::SteamPipe => "JOINT FACE TO THE PIPE'S OWN DRAWING",
            Purpose::Tube
            | Purpose::Flue
            | Purpose::Fitting
            | Purpose::Bolt
            | Purpose::FormerPin => "",
        }
        .into(),
    );
    words
}

/// The hole with its mouth turned out of the plate, and how far the mouth stands out; a bare hole where its depth is not given.
fn put_mouth(board: &mut Board, seat: &Seat<'_, '_>, mouth: &MouthSpec) -> Vec<String> {
    let mut words: Vec<String> = MOUTH_WORDS.map(String::from).into();
    let Some(section) = MouthSection::of(mouth, seat.t, seat.hole) else {
        let end = seat.hole + METAL;
        seat.plate(board, end);
        seat.axis(board, -METAL, seat.t + METAL);
        seat.along(board, (0.0, seat.t), end, &thickness(seat));
        put_hole_size(board, seat);
        words.push("DEPTH OF THE MOUTH NOT GIVEN".into());
        return words;
    };
    let end = section.flat_from() + METAL;
    let corners = section.corners(end);
    for hand in [1.0, -1.0] {
        let place = |&(u, y): &(f64, f64)| seat.place(u, y * hand);
        let polygon: Vec<PaperPoint> = corners.iter().map(place).collect();
        for pair in polygon.windows(2) {
            board.edge_line(pair[0], pair[1]);
        }
        hatch(board, &[polygon], HATCHING, seat.lean);
    }
    seat.break_plate(board, end);
    let (rim, face) = section.rim_and_face();
    seat.axis(board, rim.min(0.0), rim.max(seat.t));
    seat.along(board, (0.0, seat.t), end, &thickness(seat));
    let depth = Length::mm((rim - face).abs());
    let (low, high) = (rim.min(face), rim.max(face));
    seat.along(
        board,
        (low, high),
        section.outside(),
        &seat.set.figures.short(depth),
    );
    // A mouth's hole is measured at its rim, whichever side that stands on.
    let finish = seat.set.design.groups[seat.group].finish.value();
    let says = format!("⌀{} HOLE", hole_words(seat));
    seat.across(board, rim, rim > face, finish, &says);
    words
}

/// The plate's thickness as printed.
pub fn thickness(seat: &Seat<'_, '_>) -> String {
    let set = seat.set;
    let size = set.figures.size_short(&set.design.thickness);
    match set.design.kept && seat.lean == Lean::Right {
        // Old metal: what is left of it is told by the survey.
        true => format!("{size} AS MADE"),
        false => size,
    }
}

/// The finished hole as a dimension on the smokebox side: for a hole with nothing before it there.
pub fn put_hole_size(board: &mut Board, seat: &Seat<'_, '_>) {
    let finish = seat.set.design.groups[seat.group].finish.value();
    let words = format!("⌀{} HOLE", hole_words(seat));
    seat.across(board, seat.t, true, finish, &words);
}

/// The finished hole by a leader to its edge, from above the plate: for a hole that something stands before.
pub fn put_hole_leader(board: &mut Board, seat: &Seat<'_, '_>, depth: f64, words: &[String]) {
    let tip = seat.place(depth, seat.hole);
    let top = metal(board).top;
    let knee = at(tip.x + seat.side * 9.0, top - 5.0);
    leader(board, tip, knee, words, FIGURES);
}

/// The finished hole as printed.
pub fn hole_words(seat: &Seat<'_, '_>) -> String {
    let set = seat.set;
    set.figures
        .size_short(&set.design.groups[seat.group].finish)
}

/// Clear between lines of the words below a detail, mm.
const BETWEEN_LINES: f64 = 1.1;

/// Words below all that has been drawn, as wide as that; what goes on one line stands on one line.
fn put_words(board: &mut Board, words: &[String]) {
    let Some(all) = board.extent(|_| true) else {
        return;
    };
    let room = all.width().max(LEAST_WORDS);
    let left = all.middle().x - room / 2.0;
    let mut lines: Vec<String> = Vec::new();
    for sentence in words.iter().filter(|w| !w.is_empty()) {
        let joined = lines.last().map(|line| format!("{line}. {sentence}"));
        match joined {
            Some(joined) if face::width(&joined, TABLE, false) <= room => {
                lines.pop();
                lines.push(joined);
            }
            _ => lines.extend(wrap(sentence, room, TABLE, false)),
        }
    }
    let mut y = all.bottom + 2.5;
    for line in lines {
        // Stacked fractions reach further up and down.
        let (rise, fall) = rise_and_fall(&line, TABLE);
        y += rise + BETWEEN_LINES;
        board.text(at(left, y), &line, TABLE, Hang::Start);
        if line.contains('{') {
            y += fall;
        }
    }
}
