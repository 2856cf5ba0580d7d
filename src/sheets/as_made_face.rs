//! The face of a plate as it was made: every hole where and as large as it was found, what is off marked so that a photocopy shows it.
//!
//! A *residual arrow* runs from where a hole was designed towards where it was found, enlarged by one factor for the whole view.

use super::board::{Board, PaperBox};
use super::clear::is_clear;
use super::face_view::{
    flange_rim, number_height, number_words, put_number_beside, put_plate, put_rivet_ticks,
};
use super::letter_size::{FIGURES, LEAST_NUMBER, LINE_PITCH, TABLE, fitting_height, wrap};
use super::particulars::view_words;
use super::proving_bar::put_residual_bar;
use super::scale::largest_scale;
use super::set::{AsMade, Set};
use super::text_box::rise_and_fall;
use super::view::{PlateBox, Stroke, View};
use super::{Hang, PaperPoint, Pattern, Pen, Role, at, face};
use crate::design::{Deviation, Hole, Point};
use crate::units::angle::{cos, from_top_clockwise, hypot, sin};

/// Room beside the face for the numbers of rivet holes, mm.
const ASIDE: f64 = 13.0;
/// Room over and under it, mm.
const OVER: f64 = 7.0;
/// Room below it for its title, mm.
const TITLE: f64 = 9.0;
/// From one line of the key to the next, mm.
const KEY_LINE: f64 = 6.0;
/// From the bar of the residual arrows to the words about it, mm.
const BESIDE_BAR: f64 = 14.0;

/// So many times a residual may be enlarged beyond the scale of the view.
const FACTORS: [f64; 19] = [
    1000.0, 800.0, 600.0, 500.0, 400.0, 300.0, 200.0, 150.0, 100.0, 80.0, 60.0, 50.0, 40.0, 30.0,
    20.0, 10.0, 5.0, 2.0, 1.0,
];
/// Share of the metal beside its hole into which an arrow may reach.
const INTO_METAL: f64 = 0.6;
/// Longest head of a residual arrow, mm, and its share of a shorter arrow.
const HEAD: (f64, f64) = (1.8, 0.6);
/// Half the width of a head, as a share of its length.
const HEAD_HALF_WIDTH: f64 = 0.24;
/// Radius of the dot where a hole was designed, mm.
const DOT: f64 = 0.4;
/// Width of the band of a heavy ring, mm, outwards from the rim.
const BAND: f64 = 0.6;
/// Height of the ears of an oval hole, mm.
const EAR: f64 = 1.4;
/// Half the side of the square of a remark, mm.
const SQUARE: f64 = 0.7;
/// A number keeps this far from the rim to every side, half the rim's line included, mm.
const CLEAR: f64 = 0.5;
/// And from the dot and the head of an arrow.
const CLEAR_OF_ARROW: f64 = 0.21;
/// Clear paper round a number that stands beside its hole, mm, and on how many rings about the hole a place is looked for: further away
/// it would be read as another hole's.
const BESIDE: (f64, u32) = (0.6, 3);

/// A hole that was not recorded.
const NOT_RECORDED: Stroke = Stroke {
    pen: Pen::Middle,
    pattern: Pattern::Dashed,
    role: Role::Object,
};

/// What the marks of the view say, in the order of the key.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Says {
    Size,
    Oval,
    Off,
    Remark,
    Rivet,
    NotRecorded,
    AsDesigned,
}

impl Says {
    const ALL: [(Says, &'static str); 7] = [
        (Says::Size, "HEAVY: NOT THE DESIGNED SIZE"),
        (Says::Oval, "EARS: OVAL"),
        (Says::Off, "DOT AND ARROW: OFF ITS PLACE"),
        (Says::Remark, "SQUARE: REMARKED"),
        (Says::Rivet, "TRIANGLE: RIVET HOLE, SEE TABLE"),
        (Says::NotRecorded, "DASHED: NOT RECORDED"),
        (Says::AsDesigned, "PLAIN: AS DESIGNED, AS RECORDED"),
    ];

    /// Whether anything of the view says it.
    fn is_said(self, made: &AsMade<'_>) -> bool {
        let flat = |is: fn(&Deviation<'_>) -> bool| {
            let in_flat = made.deviations.iter().filter(|d| d.hole.is_some());
            in_flat.filter(|d| is(d)).count() > 0
        };
        match self {
            Says::Size => flat(|d| d.over.is_some()),
            Says::Oval => flat(|d| d.oval_by.is_some()),
            Says::Off => flat(|d| d.off.is_some()),
            Says::Remark => flat(|d| d.remark.is_some()),
            Says::Rivet => made.deviations.iter().any(|d| d.hole.is_none()),
            Says::NotRecorded => !made.record.blank.is_empty(),
            Says::AsDesigned => {
                let off = made.deviations.iter().filter_map(|d| d.hole);
                let off = off.filter(|hole| !made.record.blank.contains(hole)).count();
                off < made.record.holes.len()
            }
        }
    }
}

/// What the key has to say of a view that has been put down.
#[derive(Clone, Copy)]
pub struct Put {
    /// Millimetres of paper for a millimetre of plate.
    scale: f64,
    /// How much more the residuals are enlarged.
    factor: f64,
    /// Whether numbers stand in holes of a nest without their letter.
    bare: bool,
    /// Whether there was no room for some number.
    without_number: bool,
}

/// Puts the face into a box with its title below it.
pub fn put_made_face(board: &mut Board, set: &Set<'_>, made: &AsMade<'_>, room: &PaperBox) -> Put {
    let design = set.design;
    let edge = PlateBox::round(&design.edge);
    let inside = (
        room.width() - 2.0 * ASIDE,
        room.height() - 2.0 * OVER - TITLE,
    );
    let scale = largest_scale(edge.width(), edge.height(), inside, set.figures.in_inches());
    let f = scale.factor();
    board.scale_words = scale.words();
    let over = (room.height() - TITLE - edge.height() * f) / 2.0;
    let view = View {
        scale: f,
        centre: at(
            room.middle().x - (edge.left + edge.right) / 2.0 * f,
            room.top + over + edge.top * f,
        ),
    };
    put_plate(board, &view, design);
    put_rivet_ticks(board, &view, design);
    let mut put = Put {
        scale: f,
        factor: factor(set, made, &view),
        bare: false,
        without_number: false,
    };
    put_holes(board, set, made, &view, &mut put);
    put_rivet_holes(board, set, made, &view);
    let words = format!(
        "FACE AS MADE, {}, {}",
        view_words(design.view_from),
        scale.words()
    );
    let height = fitting_height(&words, room.width(), FIGURES, true);
    let base = room.bottom - 2.0;
    board.bold(at(room.middle().x, base), &words, height, Hang::Middle);
    put
}

/// How much the residuals are enlarged: as much as leaves every arrow short of the next hole.
fn factor(set: &Set<'_>, made: &AsMade<'_>, view: &View) -> f64 {
    let off = made
        .deviations
        .iter()
        .filter_map(|d| Some((d.hole?, d.off?)));
    let off: Vec<(f64, f64)> = off
        .map(|(hole, off)| (off.radius() * view.scale, reach(set, hole) * view.scale))
        .collect();
    let fits = |factor: &f64| off.iter().all(|(long, reach)| long * factor <= *reach);
    let least = FACTORS[FACTORS.len() - 1];
    FACTORS.into_iter().find(fits).unwrap_or(least)
}

/// How far from the middle of a hole its arrow may reach, mm of the plate.
fn reach(set: &Set<'_>, hole: usize) -> f64 {
    let holes = &set.design.holes;
    let radius = |hole: &Hole| hole.finish.value().to_mm() / 2.0;
    let (at, own) = (holes[hole].at, radius(&holes[hole]));
    let others = holes.iter().enumerate().filter(|(i, _)| *i != hole);
    let metal = others
        .map(|(_, other)| other.at.distance(at) - radius(other) - own)
        .fold(own, f64::min);
    own + metal.max(0.0) * INTO_METAL
}

/// Every hole with what is off of it; numbers last, so that they find their room.
fn put_holes(board: &mut Board, set: &Set<'_>, made: &AsMade<'_>, view: &View, put: &mut Put) {
    let holes = &set.design.holes;
    let mut recorded = vec![true; holes.len()];
    for &hole in &made.record.blank {
        recorded[hole] = false;
    }
    for (hole, recorded) in holes.iter().zip(recorded) {
        let stroke = if recorded { Stroke::SEEN } else { NOT_RECORDED };
        view.circle(board, hole.at, hole.finish.value().to_mm() / 2.0, stroke);
    }
    let mut arrows: Vec<Option<Point>> = vec![None; holes.len()];
    for deviation in &made.deviations {
        if let Some(hole) = deviation.hole {
            put_marks(board, set, (made, deviation, hole), view, put.factor);
            arrows[hole] = deviation.off;
        }
    }
    for (hole, arrow) in holes.iter().zip(arrows) {
        put_number(board, set, (hole, arrow), view, put);
    }
}

/// Whatever is off of one hole.
fn put_marks(
    board: &mut Board,
    set: &Set<'_>,
    (made, deviation, hole): (&AsMade<'_>, &Deviation<'_>, usize),
    view: &View,
    factor: f64,
) {
    let found = &set.design.holes[hole];
    let c = view.place(found.at);
    let r = found.finish.value().to_mm() / 2.0 * view.scale;
    if deviation.over.is_some() {
        put_band(board, c, r);
    }
    if deviation.oval_by.is_some() {
        put_ears(board, c, r);
    }
    if deviation.remark.is_some() {
        put_remark(board, c, r);
    }
    if let Some(off) = deviation.off {
        let designed = view.place(made.designed.holes[hole].at);
        put_residual(board, designed, off, view.scale * factor);
    }
}

/// The number of a hole within it, or beside it; where there is room for neither, none.
fn put_number(
    board: &mut Board,
    set: &Set<'_>,
    (hole, arrow): (&Hole, Option<Point>),
    view: &View,
    put: &mut Put,
) {
    let c = view.place(hole.at);
    let r = hole.finish.value().to_mm() / 2.0 * view.scale;
    let is_of_nest = set.design.groups[hole.group].purpose.takes_a_tube();
    let bare = number_words(&hole.id, is_of_nest && one_letter(set));
    let arrow = arrow.map(|off| (off.y > 0.0, off.y.abs() * view.scale));
    let within = [hole.id.as_str(), bare]
        .into_iter()
        .find_map(|words| Some((words, number_inside(words, r, arrow)?)));
    if let Some((words, (height, base))) = within {
        board.text(at(c.x, c.y + base), words, height, Hang::Middle);
        put.bare |= words != hole.id;
    } else if !put_number_beside(board, c, r + BAND, &hole.id, BESIDE) {
        put.without_number = true;
    }
}

/// Whether the holes of all nests are numbered by one letter, so that it may be left out.
fn one_letter(set: &Set<'_>) -> bool {
    let nests = set.design.holes.iter();
    let nests = nests.filter(|hole| set.design.groups[hole.group].purpose.takes_a_tube());
    let mut letters = nests.map(|hole| hole.id.trim_end_matches(|c: char| c.is_ascii_digit()));
    let first = letters.next();
    letters.all(|letter| Some(letter) == first)
}

/// Height of a number inside its hole and how far its base line lies below the middle: in the half away from an arrow, of which is told
/// whether it points up and how far below or above the middle it starts, mm. None where it has no room there.
fn number_inside(words: &str, radius: f64, arrow: Option<(bool, f64)>) -> Option<(f64, f64)> {
    let Some((points_up, aside)) = arrow else {
        return number_height(words, radius).map(|height| (height, height / 2.0));
    };
    // From the middle to the nearer edge of the number.
    let clear = aside + DOT.max(HEAD.0 * HEAD_HALF_WIDTH) + CLEAR_OF_ARROW;
    let fits = |height: f64| {
        let (rise, fall) = rise_and_fall(words, height);
        let half = face::width(words, height, false) / 2.0;
        hypot(half + CLEAR, clear + rise + fall + CLEAR) <= radius
    };
    let height = [TABLE, LEAST_NUMBER].into_iter().find(|&h| fits(h))?;
    let (rise, fall) = rise_and_fall(words, height);
    let base = if points_up {
        clear + rise
    } else {
        -clear - fall
    };
    Some((height, base))
}

/// A second ring against the outside of the rim.
fn put_band(board: &mut Board, c: PaperPoint, r: f64) {
    board.circle(c, r + BAND, Pen::Frame, Pattern::Continuous, Role::Object);
}

/// A dot where the hole was designed and an arrow towards where it was found; the dot alone where the arrow would be lost in it.
fn put_residual(board: &mut Board, from: PaperPoint, off: Point, scale: f64) {
    let corners = (0..16).map(|i| {
        let a = f64::from(i) * 22.5_f64.to_radians();
        at(from.x + DOT * cos(a), from.y + DOT * sin(a))
    });
    board.filled(corners.collect(), Role::Dimension);
    let long = off.radius() * scale;
    if long <= DOT {
        return;
    }
    // Paper's y runs down.
    let (ux, uy) = (off.x / off.radius(), -off.y / off.radius());
    let along = |d: f64, aside: f64| at(from.x + ux * d - uy * aside, from.y + uy * d + ux * aside);
    let head = HEAD.0.min(long * HEAD.1);
    let half = head * HEAD_HALF_WIDTH;
    board.line(
        from,
        along(long - head, 0.0),
        Pen::Middle,
        Pattern::Continuous,
        Role::Dimension,
    );
    board.filled(
        vec![
            along(long, 0.0),
            along(long - head, half),
            along(long - head, -half),
        ],
        Role::Dimension,
    );
}

/// Filled triangles outside the rim, left and right.
fn put_ears(board: &mut Board, c: PaperPoint, r: f64) {
    for side in [-1.0, 1.0] {
        let rim = c.x + side * (r + BAND);
        board.filled(
            vec![
                at(rim, c.y - EAR / 2.0),
                at(rim, c.y + EAR / 2.0),
                at(rim + side * EAR, c.y),
            ],
            Role::Object,
        );
    }
}

/// A filled square outside the rim, below on the left.
fn put_remark(board: &mut Board, c: PaperPoint, r: f64) {
    let away = (r + 1.0) * cos(45.0_f64.to_radians());
    let (x, y) = (c.x - away, c.y + away);
    board.filled(
        vec![
            at(x - SQUARE, y - SQUARE),
            at(x + SQUARE, y - SQUARE),
            at(x + SQUARE, y + SQUARE),
            at(x - SQUARE, y + SQUARE),
        ],
        Role::Object,
    );
}

/// A triangle outside the flange at every rivet hole that is off, pointing at it, and its number where there is room.
fn put_rivet_holes(board: &mut Board, set: &Set<'_>, made: &AsMade<'_>, view: &View) {
    let (Some(line), Some(flange)) = (&set.design.rivets, &set.design.flange) else {
        return;
    };
    let (outside, _) = flange_rim(set.design, flange);
    let rim = outside * view.scale;
    for deviation in made.deviations.iter().filter(|d| d.hole.is_none()) {
        let Some(rivet) = line.rivets.iter().find(|r| r.id == deviation.id) else {
            continue;
        };
        let a = from_top_clockwise(rivet.angle_deg);
        let along = |r: f64, aside: f64| {
            let (c, s) = (cos(a), sin(a));
            at(
                view.centre.x + r * c - aside * s,
                view.centre.y - r * s - aside * c,
            )
        };
        board.filled(
            vec![
                along(rim + 2.4, 0.0),
                along(rim + 4.2, 0.8),
                along(rim + 4.2, -0.8),
            ],
            Role::Object,
        );
        let wide = face::width(deviation.id, TABLE, false);
        let place = (0..6).map(|ring| along(rim + 4.8 + wide / 2.0 + f64::from(ring) * 1.5, 0.0));
        let round = |p: &PaperPoint| {
            PaperBox::new(
                p.x - wide / 2.0,
                p.y - TABLE / 2.0,
                p.x + wide / 2.0,
                p.y + TABLE / 2.0,
            )
        };
        let found = place.into_iter().find(|p| is_clear(board, &round(p), 0.5));
        if let Some(p) = found {
            board.text(
                at(p.x, p.y + TABLE / 2.0),
                deviation.id,
                TABLE,
                Hang::Middle,
            );
        }
    }
}

/// What the marks mean, in two columns, those alone that the view bears; then the bar of its arrows. Tells the y below them.
pub fn put_key(
    board: &mut Board,
    set: &Set<'_>,
    made: &AsMade<'_>,
    put: Put,
    room: &PaperBox,
) -> f64 {
    let said = Says::ALL.into_iter().filter(|(says, _)| says.is_said(made));
    let mut entries = 0;
    for (i, (says, words)) in said.enumerate() {
        let x = room.left + 4.0 + (i % 2) as f64 * room.width() / 2.0;
        let y = room.top + 3.0 + (i / 2) as f64 * KEY_LINE;
        put_sample(board, says, at(x, y));
        board.text(at(x + 6.0, y + TABLE / 2.0), words, TABLE, Hang::Start);
        entries = i + 1;
    }
    let mut y = room.top + f64::from(u32::try_from(entries).unwrap_or(0).div_ceil(2)) * KEY_LINE;
    let mut words = Vec::new();
    if put.bare {
        words.push("NUMBERS OF THE NEST MAY STAND WITHOUT THEIR LETTER.");
    }
    if put.without_number {
        words.push("NO NUMBER: NO ROOM BESIDE ITS MARKS; IT FOLLOWS ITS NEIGHBOUR'S.");
    }
    for line in wrap(&words.join(" "), room.width(), TABLE, false) {
        y += TABLE * LINE_PITCH;
        board.text(at(room.left, y), &line, TABLE, Hang::Start);
    }
    if made.deviations.iter().any(|d| d.off.is_some()) {
        y = put_bar(board, set, &PaperBox { top: y, ..*room }, put);
    }
    y + 4.0
}

fn put_sample(board: &mut Board, says: Says, c: PaperPoint) {
    const R: f64 = 1.9;
    let ring = |board: &mut Board, r: f64, stroke: Stroke| {
        board.circle(c, r, stroke.pen, stroke.pattern, stroke.role);
    };
    match says {
        Says::Size => {
            ring(board, R, Stroke::SEEN);
            put_band(board, c, R);
        }
        Says::Oval => {
            ring(board, R, Stroke::SEEN);
            put_ears(board, c, R);
        }
        Says::Off => put_residual(board, at(c.x - 2.5, c.y), Point::new(1.0, 0.0), 5.0),
        Says::Remark => {
            ring(board, R, Stroke::SEEN);
            put_remark(board, c, R);
        }
        Says::Rivet => board.filled(
            vec![
                at(c.x - 0.9, c.y),
                at(c.x + 0.9, c.y - 0.8),
                at(c.x + 0.9, c.y + 0.8),
            ],
            Role::Object,
        ),
        Says::NotRecorded => ring(board, R, NOT_RECORDED),
        Says::AsDesigned => ring(board, R, Stroke::SEEN),
    }
}

/// What the arrows are enlarged by, and the bar by which one is measured; tells the y below them.
fn put_bar(board: &mut Board, set: &Set<'_>, room: &PaperBox, put: Put) -> f64 {
    let left = at(room.left + 3.0, room.top + 6.0);
    let wide = put_residual_bar(board, left, put.scale * put.factor, set.figures);
    let words = format!(
        "ARROWS RUN FROM THE DESIGNED TO THE MADE PLACE, ENLARGED ×{} BEYOND THE SCALE OF THE VIEW: THE BAR MEASURES THEM. HOLES STAND WHERE THEY WERE FOUND.",
        put.factor
    );
    // Clear of the bar's last figure, which stands under its end.
    let x = left.x + wide + BESIDE_BAR;
    let lines = wrap(&words, room.right - x, TABLE, false);
    for (i, line) in lines.iter().enumerate() {
        let base = room.top + 3.0 + TABLE * (0.6 + LINE_PITCH * i as f64);
        board.text(at(x, base), line, TABLE, Hang::Start);
    }
    room.top + (TABLE * LINE_PITCH * lines.len() as f64 + 1.0).max(10.0)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::super::mark::Mark;
    use super::super::sample_jobs::with_set;
    use super::*;
    use crate::design::{FilledRecord, HoleMade, as_made, deviations};
    use crate::units::Length;

    /// T2 of Marl Hen found 0.5 mm low, on A3 at 1:5: 0.1 mm of paper. Its radius is 23.4156 mm, and T1 below stands 2 19/32 in, 65.8813
    /// mm, less 0.5 away: 18.55 mm of metal, so that an arrow may reach 23.4156 + 0.6 × 18.55 = 34.5456 mm of plate, 6.909 of paper. ×60
    /// makes it 6, ×80 would make it 8. One step of 0.02 in is 0.508/5 × 60 = 6.096 mm of paper, 0.01 in under 4.
    #[test]
    fn by_hand_arrow_and_bar_are_enlarged_alike() {
        with_set("specs/marl-hen-smokebox.yaml", |set| {
            let design = set.design;
            let t2 = (0..design.holes.len()).find(|&i| design.holes[i].id == "T2");
            let t2 = t2.expect("a number");
            let low = Point::new(design.holes[t2].at.x, design.holes[t2].at.y - 0.5);
            let record = FilledRecord {
                holes: vec![HoleMade {
                    hole: t2,
                    sized: false,
                    first_way: design.holes[t2].finish.clone(),
                    across: None,
                    at: Some(low),
                }],
                ..FilledRecord::default()
            };
            let plate = as_made(&set.spec.written, design, &record.holes);
            let made = AsMade {
                designed: design,
                record: &record,
                deviations: deviations(design, &record, |length| length.abs() > Length::mm(0.01)),
                effects: BTreeMap::new(),
                changed: &[],
            };
            let set = Set::as_made(set.spec, &plate, set.findings, &made);
            let mut board = set.board("as-made", "Plate");
            let room = PaperBox::new(0.0, 0.0, 240.0, 220.0);
            let put = put_made_face(&mut board, &set, &made, &room);
            assert_eq!((put.scale, put.factor), (0.2, 60.0));
            let arrows = board.marks.iter().filter_map(|mark| match mark {
                Mark::Line {
                    from,
                    to,
                    role: Role::Dimension,
                    ..
                } => Some((*from, *to)),
                _ => None,
            });
            let [(tail, neck)] = arrows.collect::<Vec<_>>()[..] else {
                panic!("one arrow");
            };
            // The line ends where the head begins, which is 1.8 long.
            assert!((neck.y - tail.y + HEAD.0 - 6.0).abs() < 1e-9);
            assert!((neck.x - tail.x).abs() < 1e-9);
            let before = board.stated.len();
            put_key(&mut board, &set, &made, put, &room);
            let bar = &board.stated[before];
            assert!(bar.length.same_as(Length::inches(0.1)));
            assert!((bar.to.x - bar.from.x - 5.0 * 6.096).abs() < 1e-9);
        });
    }
}
