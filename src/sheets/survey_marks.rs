//! Marks of the survey on the face, told apart without colour: readings by their form, welds by the width of their line.

use super::board::{Board, PaperBox};
use super::clear::{crosses_lettering, is_clear, line_through};
use super::dimension::leader;
use super::face_view::loose_holes;
use super::letter_size::{NOTES, TABLE};
use super::set::Set;
use super::view::{PlateBox, Stroke, View};
use super::weld_numbers::repair_number;
use super::{Hang, Mark, PaperPoint, Pattern, Pen, Role, at, face};
use crate::design::{Reading, Repair, RepairWork};
use crate::units::angle::{PI, cos, hypot, sin};

/// Height of the key below the view, mm.
pub const KEY: f64 = 16.0;
/// Half the size of a reading's mark, mm.
const MARK: f64 = 1.1;
/// Rings of places tried round a reading for its words.
const RINGS: u32 = 7;
/// Clear paper round words, mm: half the widest line, and what a copy closes up.
pub const CLEAR: f64 = 0.6;
/// Places tried on each ring.
const ROUND: u32 = 16;

/// A weld line or a crack.
const WELD: Stroke = Stroke {
    pen: Pen::Frame,
    pattern: Pattern::Continuous,
    role: Role::Object,
};

/// The edge of a built-up area.
const AREA: Stroke = Stroke {
    pen: Pen::Middle,
    pattern: Pattern::Dashed,
    role: Role::Object,
};

/// A side shorter than this has no room for the dashes of the usual pen, mm of paper: the narrow one has them shorter.
const SHORT_SIDE: f64 = 8.0;

/// How a reading stands to what is required.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stands {
    /// As thick as required.
    Sound,
    /// Below, and new metal takes its place.
    Covered,
    /// Below, and nothing covers it.
    Low,
    /// Nothing is required of it.
    Open,
}

impl Stands {
    fn of(reading: &Reading) -> Stands {
        match (&reading.required, reading.short) {
            (None, _) => Stands::Open,
            (Some(_), None) => Stands::Sound,
            (Some(_), Some(_)) if reading.covered.is_some() => Stands::Covered,
            (Some(_), Some(_)) => Stands::Low,
        }
    }
}

/// Welds and areas of every repair.
pub fn put_repairs(board: &mut Board, set: &Set<'_>, view: &View) {
    for repair in &set.design.repairs {
        let mut stroke = stroke_of(repair);
        let sides = repair.weld.iter().map(|edge| edge.length_mm() * view.scale);
        if stroke.pattern == AREA.pattern && sides.fold(f64::INFINITY, f64::min) < SHORT_SIDE {
            stroke.pen = Pen::Narrow;
        }
        for edge in &repair.weld {
            view.edge(board, edge, stroke);
        }
    }
}

/// The number of every repair beside the plate, with a leader to its weld.
pub fn put_repair_numbers(board: &mut Board, set: &Set<'_>, view: &View, edge: &PlateBox) {
    for (i, repair) in set.design.repairs.iter().enumerate() {
        put_number(board, set, view, edge, (i, repair));
    }
}

/// The number of every repair close by its weld, where it touches nothing.
pub fn put_weld_names(board: &mut Board, set: &Set<'_>, view: &View) {
    for (i, repair) in set.design.repairs.iter().enumerate() {
        let words = repair_number(set, i);
        let half = face::width(&words, NOTES, true) / 2.0;
        let places = (0..12).flat_map(|ring| {
            let away = NOTES / 2.0 + half + 0.6 + f64::from(ring) * 0.8;
            let shares = [0.5, 0.35, 0.65, 0.2, 0.8];
            let tips = shares.map(|share| repair.weld.iter().map(move |e| e.at_share(share)));
            tips.into_iter().flatten().flat_map(move |tip| {
                let c = view.place(tip);
                [(0.0, 1.0), (0.0, -1.0), (1.0, 0.0), (-1.0, 0.0)]
                    .map(|(x, y)| at(c.x + x * away, c.y + y * away))
            })
        });
        let round = |p: &PaperPoint| {
            let tall = NOTES / 2.0;
            PaperBox::new(p.x - half, p.y - tall, p.x + half, p.y + tall)
        };
        let mut places = places;
        if let Some(p) = places.find(|p| is_clear(board, &round(p), CLEAR)) {
            board.bold(at(p.x, p.y + NOTES / 2.0), &words, NOTES, Hang::Middle);
        }
    }
}

fn stroke_of(repair: &Repair) -> Stroke {
    match repair.work {
        RepairWork::BuildUp { .. } => AREA,
        _ => WELD,
    }
}

/// The number of a weld outside the plate, with a leader to it from where it lies nearest.
fn put_number(
    board: &mut Board,
    set: &Set<'_>,
    view: &View,
    edge: &PlateBox,
    (i, repair): (usize, &Repair),
) {
    if repair.weld.is_empty() {
        return;
    }
    let plate = view.paper_box(edge);
    let words = repair_number(set, i);
    let wide = face::width(&words, NOTES, true);
    let mut best: Option<(f64, PaperPoint, PaperPoint, f64)> = None;
    for piece in &repair.weld {
        for share in [0.5, 0.3, 0.7, 0.15, 0.85] {
            let tip = view.place(piece.at_share(share));
            for side in [-1.0, 1.0] {
                let x = if side < 0.0 {
                    plate.left - 3.0
                } else {
                    plate.right + 3.0
                };
                for lift in -12..=12 {
                    let knee = at(x, tip.y + f64::from(lift) * 3.0);
                    let beyond = knee.x + side * (4.0 + wide);
                    let round = PaperBox::new(
                        knee.x.min(beyond),
                        knee.y - NOTES,
                        knee.x.max(beyond),
                        knee.y + NOTES,
                    );
                    let mut run = hypot(knee.x - tip.x, knee.y - tip.y);
                    if crosses_hole(board, tip, knee) {
                        run += THROUGH_HOLE;
                    }
                    let shorter = best.as_ref().is_none_or(|b| run < b.0);
                    if shorter
                        && is_clear(board, &round, 0.5)
                        && !crosses_lettering(board, tip, knee)
                    {
                        best = Some((run, tip, knee, side));
                    }
                }
            }
        }
    }
    if let Some((_, tip, knee, _)) = best {
        leader(board, tip, knee, &[words], NOTES);
    }
}

/// The mark of every reading.
pub fn put_marks(board: &mut Board, set: &Set<'_>, view: &View) {
    for reading in &set.design.readings {
        put_mark(board, view.place(reading.at), Stands::of(reading));
    }
}

/// The number of every reading and what was found, beside its mark or at the end of a leader.
pub fn put_readings(board: &mut Board, set: &Set<'_>, view: &View, edge: &PlateBox) {
    let plate = view.paper_box(edge);
    let design = set.design;
    let readings = design.readings.iter().map(|r| (view.place(r.at), 0.0));
    let loose = loose_holes(design).map(|h| (view.place(h.at), h.finish.value().to_mm() / 2.0));
    let loose = loose.map(|(c, radius)| (c, radius * view.scale));
    let marks: Vec<(PaperPoint, f64)> = readings.chain(loose).collect();
    let unit = unit_of_readings(set);
    for reading in &design.readings {
        let (found, own) = split_unit(reading.thickness.as_written());
        // One unit for all is told in the title of the view.
        let words = match (unit, own) {
            (None, Some(own)) => format!("{}: {found} {own}", reading.number),
            (Some(_), _) | (None, None) => format!("{}: {found}", reading.number),
        };
        put_words(board, (view.place(reading.at), &words), &marks, &plate);
    }
}

/// A thickness as written, without its unit and the unit alone; none where it is written bare.
fn split_unit(written: &str) -> (&str, Option<&'static str>) {
    for unit in ["mm", "in"] {
        if let Some(number) = written.strip_suffix(unit) {
            return (number.trim(), Some(unit));
        }
    }
    (written, None)
}

/// The unit in which every reading is written; none where they are not alike.
pub fn unit_of_readings(set: &Set<'_>) -> Option<&'static str> {
    let readings = set.design.readings.iter();
    let mut units = readings.map(|r| {
        let bare = set.figures.unit_sign();
        split_unit(r.thickness.as_written()).1.unwrap_or(bare)
    });
    let first = units.next()?;
    units.all(|unit| unit == first).then_some(first)
}

/// The mark alone: a ring where it is sound, a filled triangle where it is below, a second ring round one that nothing covers,
/// a cross where nothing is required.
fn put_mark(board: &mut Board, c: PaperPoint, stands: Stands) {
    let ring = |board: &mut Board, radius: f64, pen: Pen| {
        board.circle(c, radius, pen, Pattern::Continuous, Role::Object);
    };
    match stands {
        Stands::Sound => ring(board, MARK * 0.8, Pen::Middle),
        Stands::Covered => triangle(board, c),
        Stands::Low => {
            triangle(board, c);
            ring(board, MARK * 2.0, Pen::Middle);
        }
        Stands::Open => {
            for (dx, dy) in [(MARK, MARK), (MARK, -MARK)] {
                let (a, b) = (at(c.x - dx, c.y - dy), at(c.x + dx, c.y + dy));
                board.line(a, b, Pen::Middle, Pattern::Continuous, Role::Object);
            }
        }
    }
}

/// A filled triangle on its point.
fn triangle(board: &mut Board, c: PaperPoint) {
    let r = MARK * 1.25;
    let corner = |deg: f64| {
        at(
            c.x + r * cos(deg * PI / 180.0),
            c.y + r * sin(deg * PI / 180.0),
        )
    };
    board.filled(
        vec![corner(90.0), corner(210.0), corner(330.0)],
        Role::Object,
    );
}

/// From a box to a place on the paper, or to the rim of a circle about it, mm.
fn away(b: &PaperBox, (c, radius): (PaperPoint, f64)) -> f64 {
    let dx = (b.left - c.x).max(c.x - b.right).max(0.0);
    let dy = (b.top - c.y).max(c.y - b.bottom).max(0.0);
    (hypot(dx, dy) - radius).max(0.0)
}

/// The words beside the mark at `c`, or outside the plate where they would stand as near to another mark.
fn put_words(
    board: &mut Board,
    (c, words): (PaperPoint, &str),
    marks: &[(PaperPoint, f64)],
    plate: &PaperBox,
) {
    let wide = face::width(words, TABLE, false);
    let is_its_own = |b: &PaperBox| {
        let own = away(b, (c, 0.0));
        marks.iter().all(|&m| m.0 == c || away(b, m) > own)
    };
    let box_at = |x: f64, y: f64| {
        PaperBox::new(
            x - wide / 2.0,
            y - TABLE / 2.0,
            x + wide / 2.0,
            y + TABLE / 2.0,
        )
    };
    let start = MARK * 2.0 + 0.6;
    for ring in 0..RINGS {
        let reach = start + f64::from(ring) * 0.9;
        for step in 0..ROUND {
            let angle = f64::from(step) / f64::from(ROUND) * 2.0 * PI;
            let (x, y) = (
                c.x + cos(angle) * (reach + wide / 2.0),
                c.y - sin(angle) * (reach + TABLE / 2.0),
            );
            let room = box_at(x, y);
            if is_its_own(&room) && is_clear(board, &room, CLEAR) {
                board.text(at(x, y + TABLE / 2.0), words, TABLE, Hang::Middle);
                return;
            }
        }
    }
    put_words_outside(board, (c, MARK * 2.0 + 0.3), words, plate);
}

/// Further than this a leader goes round rather than through a hole, mm.
const THROUGH_HOLE: f64 = 60.0;

/// Whether a line would run through a circle of the object, which it neither comes from nor ends in.
fn crosses_hole(board: &Board, from: PaperPoint, to: PaperPoint) -> bool {
    // The rim of the plate and the circles of the flange are crossed once, from within.
    board.marks.iter().any(|mark| match mark {
        Mark::Circle {
            centre,
            radius,
            role: Role::Object,
            ..
        } => line_through(from, to, *centre, *radius).is_some(),
        _ => false,
    })
}

/// The words outside the plate with a leader, where there is no room beside the mark.
pub fn put_words_outside(
    board: &mut Board,
    (c, radius): (PaperPoint, f64),
    words: &str,
    plate: &PaperBox,
) {
    let wide = face::width(words, TABLE, false);
    let nearer_left = c.x < plate.middle().x;
    let sides = [nearer_left, !nearer_left];
    // Past every hole where that can be, on either side; else through one.
    for (past_holes, side) in [true, false]
        .into_iter()
        .flat_map(|past| sides.map(|side| (past, side)))
    {
        let (x, way) = if side {
            (plate.left - 3.0, -1.0)
        } else {
            (plate.right + 3.0, 1.0)
        };
        for lift in 0..40 {
            let turn = if lift % 2 == 0 { 1.0 } else { -1.0 };
            let knee = at(x, c.y + turn * f64::from((lift + 1) / 2) * 3.0);
            let beyond = knee.x + way * (4.0 + wide);
            let round = PaperBox::new(
                knee.x.min(beyond),
                knee.y - TABLE,
                knee.x.max(beyond),
                knee.y + TABLE,
            );
            let tip = tip_towards(c, knee, radius);
            if is_clear(board, &round, 0.5)
                && !crosses_lettering(board, tip, knee)
                && !(past_holes && crosses_hole(board, tip, knee))
            {
                leader(board, tip, knee, &[words.to_string()], TABLE);
                return;
            }
        }
    }
}

/// Where a leader ends: at the rim of the mark or the hole.
fn tip_towards(c: PaperPoint, knee: PaperPoint, radius: f64) -> PaperPoint {
    let run = hypot(knee.x - c.x, knee.y - c.y);
    let share = radius / run.max(radius * 2.0);
    at(c.x + (knee.x - c.x) * share, c.y + (knee.y - c.y) * share)
}

/// What the marks mean, in the order of urgency; only those that the view bears.
pub fn put_key(board: &mut Board, set: &Set<'_>, room: &PaperBox) {
    let design = set.design;
    let any = |stands: Stands| design.readings.iter().any(|r| Stands::of(r) == stands);
    let readings = [
        (Stands::Low, "BELOW, COVERED BY NOTHING"),
        (Stands::Covered, "BELOW, COVERED BY A REPAIR"),
        (Stands::Sound, "AS REQUIRED OR MORE"),
        (Stands::Open, "NOTHING REQUIRED: NOT JUDGED"),
    ];
    let mut entries: Vec<(Result<Stands, Stroke>, &str)> = readings
        .into_iter()
        .filter(|(stands, _)| any(*stands))
        .map(|(stands, words)| (Ok(stands), words))
        .collect();
    let areas = |wanted: bool| {
        let welds = design.repairs.iter().filter(|r| !r.weld.is_empty());
        welds
            .filter(|r| matches!(r.work, RepairWork::BuildUp { .. }) == wanted)
            .count()
            > 0
    };
    if areas(false) {
        entries.push((Err(WELD), "WELD LINE OR CRACK"));
    }
    if areas(true) {
        entries.push((Err(AREA), "AREA BUILT UP"));
    }
    let columns = 2;
    for (i, (mark, words)) in entries.into_iter().enumerate() {
        let x = room.left + 6.0 + (i % columns) as f64 * room.width() / columns as f64;
        let y = room.top + 3.0 + (i / columns) as f64 * 5.5;
        match mark {
            Ok(stands) => put_mark(board, at(x, y), stands),
            Err(stroke) => board.line(
                at(x - 5.0, y),
                at(x + 5.0, y),
                stroke.pen,
                stroke.pattern,
                stroke.role,
            ),
        }
        board.text(at(x + 8.0, y + TABLE / 2.0), words, TABLE, Hang::Start);
    }
}
