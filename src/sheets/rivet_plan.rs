//! The rivet circle as seen from the declared side: every hole as a tick, tack holes and quarter lines named.
//!
//! Rows lie over one another when seen along the barrel; here the row nearest the flange's edge is drawn outermost and each further
//! row within the one before it.

use super::board::{Board, PaperBox};
use super::clear::is_clear;
use super::dimension::arrow;
use super::kept::pieces;
use super::letter_size::{NOTES, TABLE};
use super::particulars::view_words;
use super::set::Set;
use super::view::Stroke;
use super::weld_numbers::weld_letter;
use super::{Hang, PaperPoint, Pattern, Pen, Role, at, face};
use crate::design::{Rivet, RivetLine, RivetMade, ring_joint};
use crate::units::angle::{cos, from_top_clockwise, sin};
use crate::units::print;

/// From the circle of one row to that of the next as drawn, mm; less where several have to share [`ALL_ROWS_IN`].
const NEXT_ROW_IN: f64 = 3.6;
/// From the outermost circle to the innermost at most, mm.
const ALL_ROWS_IN: f64 = 7.2;
/// Left free within the rows at bottom centre for a number, mm.
const NUMBER_ROOM: f64 = 3.0;

/// Puts the plan into a box, not to scale.
pub fn put_rivet_plan(board: &mut Board, set: &Set<'_>, line: &RivetLine, room: &PaperBox) {
    let centre = at(room.middle().x, (room.top + room.bottom - 6.0) / 2.0);
    let radius = (room.width().min(room.height() - 6.0) / 2.0 - 9.0).max(15.0);
    let spaces = f64::from(line.row_count() - 1).max(1.0);
    let next_in = NEXT_ROW_IN.min(ALL_ROWS_IN / spaces);
    let radius_of = |row: u32| radius - f64::from(row - 1) * next_in;
    let innermost = radius_of(line.row_count());
    for row in 1..=line.row_count() {
        let (pen, pattern) = (Pen::Narrow, Pattern::Chain);
        board.circle(centre, radius_of(row), pen, pattern, Role::Centre);
    }
    let on = |angle: f64, r: f64| {
        let a = from_top_clockwise(angle);
        at(centre.x + r * cos(a), centre.y - r * sin(a))
    };
    for rivet in &line.rivets {
        put_rivet(board, rivet, &on, radius_of(rivet.row));
    }
    for rivet in &line.rivets {
        if is_named(line, rivet) {
            match rivet.row {
                1 => put_name(board, rivet, &on, (radius, 1.0)),
                _ => put_name(board, rivet, &on, (innermost, -1.0)),
            }
        }
    }
    for mark in joint_marks(set) {
        let (from, to) = (on(mark.deg, innermost - 2.5), on(mark.deg, radius + 2.5));
        board.line(
            from,
            to,
            mark.stroke.pen,
            mark.stroke.pattern,
            mark.stroke.role,
        );
        put_words_beyond(board, &mark.words, (mark.deg, radius), &on);
    }
    // The first rivet of row 2 stands on bottom centre or next to it.
    let number_room = line.rows.as_ref().map_or(0.0, |_| NUMBER_ROOM);
    for (words, angle) in [
        ("TOP", 0.0),
        ("RIGHT", 90.0),
        ("BOTTOM", 180.0),
        ("LEFT", 270.0),
    ] {
        board.centre_line(on(angle, innermost - 3.0), on(angle, radius + 3.0));
        let further = if words == "BOTTOM" { number_room } else { 0.0 };
        let p = on(angle, innermost - 6.5 - further);
        let wide = face::width(words, TABLE, false);
        let p = match angle as i32 {
            90 => at(p.x + 2.5 - wide / 2.0, p.y),
            270 => at(p.x - 2.5 + wide / 2.0, p.y),
            _ => p,
        };
        board.text(at(p.x, p.y + TABLE / 2.0), words, TABLE, Hang::Middle);
    }
    put_direction(board, &on, innermost - 5.0 - number_room);
    put_welds(board, set, &on, (innermost, radius));
    put_middle_words(board, line, centre);
    let which = match line.rows {
        Some(_) => "ROW 1 OUTERMOST, ",
        None => "",
    };
    let title = format!(
        "RIVET CIRCLE, NOT TO SCALE, {which}{}",
        view_words(set.design.view_from)
    );
    let height = super::letter_size::fitting_height(&title, room.width(), NOTES, true);
    for (i, part) in super::letter_size::wrap(&title, room.width(), height, true)
        .iter()
        .enumerate()
    {
        board.bold(
            at(centre.x, room.bottom - 4.0 + i as f64 * 4.2),
            part,
            height,
            Hang::Middle,
        );
    }
}

/// How many holes, how they are counted, and which of them are black.
fn put_middle_words(board: &mut Board, line: &RivetLine, centre: PaperPoint) {
    let step = print::decimal(line.step_deg, 4);
    let mut lines = match &line.rows {
        None => vec![
            (-10.0, format!("{} HOLES, {step}° APART", line.rivets.len())),
            (-5.7, "COUNT CLOCKWISE FROM R1".into()),
        ],
        Some(rows) => vec![
            (
                -10.0,
                format!(
                    "{} ROWS OF {}, {}",
                    rows.number,
                    line.in_a_row(),
                    rows.arrangement.name().to_uppercase()
                ),
            ),
            (-5.7, format!("{step}° APART")),
        ],
    };
    if line.rivets.iter().any(|r| r.made == RivetMade::Tack) {
        // LEFT and RIGHT stand on the middle line, between this and what is above it.
        lines.push((7.6, "BLACK: TACK HOLES".into()));
    }
    for (down, words) in lines {
        board.text(at(centre.x, centre.y + down), &words, TABLE, Hang::Middle);
    }
}

/// R1, every tack hole, and where there is none of them every fourth; of row 2 the first.
pub fn is_named(line: &RivetLine, rivet: &Rivet) -> bool {
    let any_tack = line.rivets.iter().any(|r| r.made == RivetMade::Tack);
    let index = line
        .rivets
        .iter()
        .filter(|r| r.row == rivet.row)
        .position(|r| r.id == rivet.id)
        .unwrap_or(0);
    (index == 0 && rivet.row <= 2)
        || rivet.made == RivetMade::Tack
        || (!any_tack && rivet.row == 1 && index % 4 == 0)
}

fn put_rivet(board: &mut Board, rivet: &Rivet, on: &dyn Fn(f64, f64) -> PaperPoint, radius: f64) {
    let c = on(rivet.angle_deg, radius);
    let r = match rivet.made {
        RivetMade::Tack => 1.3,
        RivetMade::Drawn => 1.2,
        RivetMade::InPlace => 1.0,
    };
    put_sign(board, rivet.made, c, r);
}

/// The sign of a rivet hole by how it is made, on the circle and on the flange unrolled alike: black is drilled to the drawing for a
/// tack bolt.
pub fn put_sign(board: &mut Board, made: RivetMade, c: PaperPoint, r: f64) {
    match made {
        RivetMade::Tack => {
            // A filled disc as a polygon: the mark that says "drill this one".
            let corners = (0..16)
                .map(|i| {
                    let a = f64::from(i) * std::f64::consts::PI / 8.0;
                    at(c.x + r * cos(a), c.y + r * sin(a))
                })
                .collect();
            board.filled(corners, Role::Object);
        }
        RivetMade::Drawn => {
            board.circle(c, r, Pen::Middle, Pattern::Continuous, Role::Object);
        }
        RivetMade::InPlace => {
            board.circle(c, r, Pen::Narrow, Pattern::Continuous, Role::Object);
        }
    }
}

/// A line across the rivets where something else stands.
pub struct JointMark {
    /// Degrees clockwise from the top.
    pub deg: f64,
    /// What stands there.
    pub words: String,
    /// How it is drawn.
    pub stroke: Stroke,
}

/// The joint of the ring and the barrel's lengthwise seam, where the plate has a ring.
pub fn joint_marks(set: &Set<'_>) -> Vec<JointMark> {
    let Some(joint) = ring_joint(set.spec, set.design) else {
        return Vec::new();
    };
    let own = JointMark {
        deg: joint.angle_deg,
        words: format!("JOINT {}3", weld_letter(set)),
        stroke: Stroke {
            pen: Pen::Wide,
            pattern: Pattern::Continuous,
            role: Role::Centre,
        },
    };
    let seam = joint.seam.map(|(deg, _)| JointMark {
        deg,
        words: "SEAM".into(),
        stroke: Stroke {
            pen: Pen::Wide,
            pattern: Pattern::Chain,
            role: Role::Centre,
        },
    });
    std::iter::once(own).chain(seam).collect()
}

/// The number of a rivet beyond a circle: outside it, or with a way of −1 inside.
fn put_name(
    board: &mut Board,
    rivet: &Rivet,
    on: &dyn Fn(f64, f64) -> PaperPoint,
    (radius, way): (f64, f64),
) {
    let wide = face::width(&rivet.id, TABLE, false);
    let places = [4.0, 5.0, 6.0, 7.5, 9.0]
        .map(|out| on(rivet.angle_deg, radius + way * (out + wide * 0.35)));
    let found = places.into_iter().find(|p| {
        let b = PaperBox::new(
            p.x - wide / 2.0,
            p.y - TABLE / 2.0,
            p.x + wide / 2.0,
            p.y + TABLE / 2.0,
        );
        is_clear(board, &b, 0.5)
    });
    let p = found.unwrap_or(on(rivet.angle_deg, radius + way * 9.0));
    board.text(at(p.x, p.y + TABLE / 2.0), &rivet.id, TABLE, Hang::Middle);
}

/// A stroke across the rows where the weld of a piece let in runs over the flange, with its number.
fn put_welds(
    board: &mut Board,
    set: &Set<'_>,
    on: &dyn Fn(f64, f64) -> PaperPoint,
    (innermost, outermost): (f64, f64),
) {
    for (number, repair, _) in pieces(set) {
        let wide = face::width(&number, NOTES, true);
        for crossing in &repair.crossings {
            let deg = crossing.angle_deg;
            board.line(
                on(deg, innermost - 2.5),
                on(deg, outermost + 2.5),
                Pen::Frame,
                Pattern::Continuous,
                Role::Object,
            );
            let outside = (0..8).map(|i| outermost + 5.0 + f64::from(i));
            let inside = (0..12).map(|i| innermost - 5.0 - f64::from(i));
            // Inside, away from the numbers of the rivets, where it would be read as one of them.
            let places = inside.chain(outside).map(|r| on(deg, r));
            let round = |p: &PaperPoint| {
                let (half, tall) = (wide / 2.0, NOTES / 2.0);
                PaperBox::new(p.x - half, p.y - tall, p.x + half, p.y + tall)
            };
            let place = places.into_iter().find(|p| is_clear(board, &round(p), 1.0));
            if let Some(p) = place {
                board.bold(at(p.x, p.y + NOTES / 2.0), &number, NOTES, Hang::Middle);
            }
        }
    }
}

/// Words beyond the circle at an angle, as near to it as is clear; left out where no place is.
fn put_words_beyond(
    board: &mut Board,
    words: &str,
    (deg, radius): (f64, f64),
    on: &dyn Fn(f64, f64) -> PaperPoint,
) {
    let wide = face::width(words, TABLE, false);
    for out in [4.0, 5.5, 7.0, 9.0, 12.0, 15.0] {
        let p = on(deg, radius + out);
        let a = from_top_clockwise(deg);
        // The nearer end of the words stands on the line from the centre.
        let x = p.x + cos(a) * wide / 2.0;
        let round = PaperBox::new(
            x - wide / 2.0,
            p.y - TABLE / 2.0,
            x + wide / 2.0,
            p.y + TABLE / 2.0,
        );
        if is_clear(board, &round, 0.7) {
            let base = at(x, p.y + TABLE / 2.0);
            return board.text(base, words, TABLE, Hang::Middle);
        }
    }
}

/// A curved arrow the way the holes are counted, from bottom centre.
fn put_direction(board: &mut Board, on: &dyn Fn(f64, f64) -> PaperPoint, radius: f64) {
    if radius < 12.0 {
        return;
    }
    let centre_to = |angle: f64| on(angle, radius);
    let centre = {
        let (a, b) = (on(0.0, radius), on(180.0, radius));
        at((a.x + b.x) / 2.0, (a.y + b.y) / 2.0)
    };
    // 202 to 240 degrees from the top is 112 to 150 degrees on paper.
    board.arc(
        centre,
        radius,
        95.0,
        50.0,
        Pen::Narrow,
        Pattern::Continuous,
        Role::Dimension,
    );
    let tip = centre_to(240.0);
    arrow(board, tip, 240.0);
}
