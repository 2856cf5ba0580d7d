//! Marks of the survey on the face, told apart without colour: readings by their form, welds by the width of their line.

use super::board::{Board, PaperBox};
use super::clear::{
    crosses_hole, crosses_leader, crosses_lettering, is_clear, line_through, no_lettering_in,
};
use super::dimension::leader;
use super::face_view::loose_holes;
use super::kept::weld_corners;
use super::letter_size::{NOTES, TABLE};
use super::marking_tables::{From, with_hand};
use super::set::Set;
use super::view::{PlateBox, Stroke, View};
use super::weld_numbers::repair_number;
use super::{Hang, Mark, PaperPoint, Pattern, Pen, Role, at, face};
use crate::design::{Covered, Point, Reading, Repair, RepairWork};
use crate::spec::NamedLine;
use crate::units::Length;
use crate::units::angle::{PI, cos, from_top_clockwise, hypot, sin};

/// Height of the key below the view, mm.
pub const KEY: f64 = 16.0;
/// Half the size of a reading's mark, mm.
const MARK: f64 = 1.1;
/// Rings of places tried round a reading for its words.
const RINGS: u32 = 7;
/// Clear paper round words, mm: half the widest line, and what a copy closes up.
pub const CLEAR: f64 = 0.6;
/// Clear paper between two figures on one level, mm.
const END_TO_END: f64 = 2.2;
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

/// The number of every repair: that of a weld line close by it, others beside the plate with a leader to the weld.
pub fn put_repair_numbers(board: &mut Board, set: &Set<'_>, view: &View, edge: &PlateBox) {
    put_repair_names(board, set, (view, edge), &|i| repair_number(set, i));
}

/// The same by names that hold more than their numbers.
pub fn put_repair_names(
    board: &mut Board,
    set: &Set<'_>,
    (view, edge): (&View, &PlateBox),
    name: &dyn Fn(usize) -> String,
) {
    for (i, repair) in set.design.repairs.iter().enumerate() {
        let is_line = matches!(repair.work, RepairWork::Line { .. });
        if is_line && put_name_close_by(board, view, &name(i), repair) {
            continue;
        }
        put_number(board, view, edge, (&name(i), repair));
    }
}

/// The number of every repair close by its weld, where it touches nothing.
pub fn put_weld_names(board: &mut Board, set: &Set<'_>, view: &View) {
    for (i, repair) in set.design.repairs.iter().enumerate() {
        put_name_close_by(board, view, &repair_number(set, i), repair);
    }
}

/// Tells whether a place was found.
fn put_name_close_by(board: &mut Board, view: &View, words: &str, repair: &Repair) -> bool {
    const SHARES: [f64; 5] = [0.5, 0.35, 0.65, 0.2, 0.8];
    let half = face::width(words, NOTES, true) / 2.0;
    let tips = SHARES.map(|share| repair.weld.iter().map(move |edge| edge.at_share(share)));
    let tips: Vec<PaperPoint> = tips.into_iter().flatten().map(|p| view.place(p)).collect();
    let places = (0..12).flat_map(|ring| {
        let away = NOTES / 2.0 + half + 0.6 + f64::from(ring) * 0.8;
        let about = move |c: &PaperPoint| {
            [(0.0, 1.0), (0.0, -1.0), (1.0, 0.0), (-1.0, 0.0)]
                .map(|(x, y)| at(c.x + x * away, c.y + y * away))
        };
        tips.iter().flat_map(about)
    });
    let tall = NOTES / 2.0;
    let round = |p: &PaperPoint| PaperBox::new(p.x - half, p.y - tall, p.x + half, p.y + tall);
    let mut clear = places.filter(|p| is_clear(board, &round(p), CLEAR));
    let Some(p) = clear.next() else {
        return false;
    };
    drop(clear);
    board.bold(at(p.x, p.y + tall), words, NOTES, Hang::Middle);
    true
}

fn stroke_of(repair: &Repair) -> Stroke {
    match repair.work {
        RepairWork::BuildUp { .. } => AREA,
        _ => WELD,
    }
}

/// The number of a weld outside the plate, with a leader to it from where it lies nearest.
fn put_number(board: &mut Board, view: &View, edge: &PlateBox, (words, repair): (&str, &Repair)) {
    if repair.weld.is_empty() {
        return;
    }
    let plate = view.paper_box(edge);
    let wide = face::width(words, NOTES, true);
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
                    if crosses_hole(board, tip, knee) || crosses_leader(board, tip, knee) {
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
        leader(board, tip, knee, &[words.to_string()], NOTES);
    }
}

/// The numbers of the rivets on both hands of every weld over the flange, outside the plate.
pub fn put_rivets_beside(board: &mut Board, set: &Set<'_>, view: &View, edge: &PlateBox) {
    let radius = view.paper_box(edge).width() / 2.0;
    let rivets = set.design.rivets.iter().flat_map(|line| &line.rivets);
    let crossings = set.design.repairs.iter().flat_map(|r| &r.crossings);
    let beside: Vec<&str> = crossings
        .flat_map(|c| c.beside.iter().map(|(id, _)| id.as_str()))
        .collect();
    for rivet in rivets.filter(|rivet| beside.contains(&rivet.id.as_str())) {
        let wide = face::width(&rivet.id, TABLE, false);
        let away = radius + 3.0 + wide / 2.0;
        let a = from_top_clockwise(rivet.angle_deg);
        let c = at(view.centre.x + away * cos(a), view.centre.y - away * sin(a));
        board.text(at(c.x, c.y + TABLE / 2.0), &rivet.id, TABLE, Hang::Middle);
    }
}

/// Where the corners of every weld line stand, from the two datum lines, in the paper beside the plate: said once for both hands.
/// One that finds no room there stands in the table of the line.
pub fn put_corners(board: &mut Board, set: &Set<'_>, view: &View, room: &PaperBox) {
    let corners = weld_corners(set);
    // Two places read to the nearest 64th are one where they are no further apart.
    let same = Length::sixty_fourths(1).to_mm();
    let other_hand = |p: Point| {
        let mut others = corners.iter();
        others.any(|o| o.at.distance(p.opposite_hand()) < same)
    };
    for corner in &corners {
        put_cross(board, view.place(corner.at));
    }
    for corner in &corners {
        let both = other_hand(corner.at) && corner.at.x.abs() > same;
        if both && corner.at.x > 0.0 {
            continue;
        }
        let (x, y) = (Length::mm(corner.at.x), Length::mm(corner.at.y));
        // Unstacked: two lines of fractions over one another would run together.
        let lines = [
            match both {
                true => format!("L AND R {}", set.figures.short(x.abs())),
                false => with_hand(set, x, From::A),
            },
            with_hand(set, y, From::B),
        ]
        .map(|line| line.replace(['{', '}'], ""));
        let hands = [corner.at, corner.at.opposite_hand()];
        let hands = &hands[..if both { 2 } else { 1 }];
        // Past every other leader on either hand, before across one.
        let places = [true, false].map(|past| hands.iter().map(move |&hand| (hand, past)));
        for (hand, past) in places.into_iter().flatten() {
            if put_corner_words(board, view, (hand, past), &lines, room) {
                break;
            }
        }
    }
}

/// A small cross, where two lines that are rounded off would meet.
fn put_cross(board: &mut Board, c: PaperPoint) {
    for (x, y) in [(MARK, 0.0), (0.0, MARK)] {
        let (a, b) = (at(c.x - x, c.y - y), at(c.x + x, c.y + y));
        board.line(a, b, Pen::Narrow, Pattern::Continuous, Role::Centre);
    }
}

/// Tells whether there was room; `past` asks that the leader cross no other.
fn put_corner_words(
    board: &mut Board,
    view: &View,
    (corner, past): (Point, bool),
    lines: &[String; 2],
    room: &PaperBox,
) -> bool {
    let tip = view.place(corner);
    let way = if corner.x > 0.0 { 1.0 } else { -1.0 };
    let width = |line: &String| face::width(line, TABLE, false);
    let wide = width(&lines[0]).max(width(&lines[1])) + 4.0;
    for down in 0..60 {
        // Down first, then as far up.
        let turn = if down % 2 == 0 { 1.0 } else { -1.0 };
        for out in 0..40 {
            let knee = at(
                tip.x + way * (6.0 + f64::from(out) * 2.0),
                tip.y + turn * f64::from((down + 1) / 2) * 2.0,
            );
            let end = knee.x + way * wide;
            let round = PaperBox::new(
                knee.x.min(end),
                knee.y - 2.0 * TABLE,
                knee.x.max(end),
                knee.y + 3.5 * TABLE,
            );
            let inside = round.left >= room.left && round.right <= room.right;
            let inside = inside && round.bottom <= room.bottom;
            let barred = crosses_lettering(board, tip, knee)
                || past && (crosses_leader(board, tip, knee) || crosses_hole(board, tip, knee));
            if inside && !barred && is_clear(board, &round, 0.8) {
                leader(board, tip, knee, lines, TABLE);
                return true;
            }
        }
    }
    false
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
    let mut outside = Vec::new();
    for reading in &design.readings {
        let (found, own) = split_unit(reading.thickness.as_written());
        // One unit for all is told in the title of the view.
        let words = match (unit, own) {
            (None, Some(own)) => format!("{}: {found} {own}", reading.number),
            (Some(_), _) | (None, None) => format!("{}: {found}", reading.number),
        };
        let place = ReadingPlace {
            c: view.place(reading.at),
            radius: radius_of(Stands::of(reading)),
            flat: flat_about(set, view, reading),
            ends: ends_of_welds(set, view),
        };
        if !put_words(board, (&place, &words), &marks) {
            outside.push((place, words));
        }
    }
    // Those nearest to the edge first: the leaders of the others go past them.
    let from_middle = |place: &ReadingPlace| (place.c.x - plate.middle().x).abs();
    outside.sort_by(|a, b| from_middle(&b.0).total_cmp(&from_middle(&a.0)));
    for (place, words) in &outside {
        let mark = (place.c, place.radius + 0.1);
        put_words_outside(board, mark, words, (&plate, &place.ends));
    }
}

/// A reading on paper.
struct ReadingPlace {
    c: PaperPoint,
    /// Radius of its mark, mm.
    radius: f64,
    /// Centre and radius of the flat it stands on; none for a reading on the heel or on a plate that is not round.
    flat: Option<(PaperPoint, f64)>,
    /// Where welds end.
    ends: Vec<PaperPoint>,
}

/// How far the mark of a reading reaches, mm.
fn radius_of(stands: Stands) -> f64 {
    match stands {
        Stands::Low => MARK * 2.0,
        Stands::Covered => MARK * 1.25,
        Stands::Sound => MARK * 0.8,
        Stands::Open => MARK * 1.4,
    }
}

fn flat_about(set: &Set<'_>, view: &View, reading: &Reading) -> Option<(PaperPoint, f64)> {
    let ends = set.design.lines.iter();
    let mut tangent = ends.filter(|(name, _)| *name == NamedLine::Tangent);
    let (centre, radius) = tangent.next()?.1.as_circle()?;
    let on_flat = reading
        .to_end_of_flat
        .is_some_and(|metal| metal >= Length::ZERO);
    on_flat.then(|| (view.place(centre), radius * view.scale))
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

/// The words beside the mark; tells whether there was room where they would stand as near to no other mark.
fn put_words(
    board: &mut Board,
    (place, words): (&ReadingPlace, &str),
    marks: &[(PaperPoint, f64)],
) -> bool {
    let c = place.c;
    let wide = face::width(words, TABLE, false);
    // A reading of the flat is lettered on the flat, and no figure stands end to end with another.
    let on_flat = |b: &PaperBox| {
        let Some((centre, radius)) = place.flat else {
            return true;
        };
        let corners = [
            (b.left, b.top),
            (b.left, b.bottom),
            (b.right, b.top),
            (b.right, b.bottom),
        ];
        let mut away = corners
            .into_iter()
            .map(|(x, y)| hypot(x - centre.x, y - centre.y));
        away.all(|away| away < radius)
    };
    let apart = |board: &Board, b: &PaperBox| {
        let beside = PaperBox::new(b.left - END_TO_END, b.top, b.right + END_TO_END, b.bottom);
        no_lettering_in(board, &beside)
    };
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
            let fits = is_its_own(&room) && on_flat(&room) && apart(board, &room);
            if fits && is_clear(board, &room, CLEAR) {
                board.text(at(x, y + TABLE / 2.0), words, TABLE, Hang::Middle);
                return true;
            }
        }
    }
    false
}

/// Further than this a leader goes round rather than through a hole, mm.
const THROUGH_HOLE: f64 = 60.0;

/// A leader keeps so far from where a weld ends, mm of paper: nearer it would be read as a part of it.
const FROM_END: f64 = 4.0;

/// Whether a line would run close by the end of a weld.
fn passes_an_end(ends: &[PaperPoint], from: PaperPoint, to: PaperPoint) -> bool {
    let mut ends = ends.iter();
    ends.any(|end| line_through(from, to, *end, FROM_END).is_some())
}

/// Where the welds of the repairs end.
pub fn ends_of_welds(set: &Set<'_>, view: &View) -> Vec<PaperPoint> {
    let welds = set.design.repairs.iter().map(|r| &r.weld);
    let ends = welds.filter_map(|weld| Some([weld.first()?.from(), weld.last()?.to()]));
    ends.flatten().map(|end| view.place(end)).collect()
}

/// Whether a line would run through the filled mark of a reading, which it neither comes from nor ends in.
fn crosses_mark(board: &Board, from: PaperPoint, to: PaperPoint) -> bool {
    board.marks.iter().any(|mark| match mark {
        Mark::Filled {
            corners,
            role: Role::Object,
        } => {
            let share = 1.0 / corners.len() as f64;
            let sum = |of: fn(&PaperPoint) -> f64| corners.iter().map(of).sum::<f64>() * share;
            let middle = at(sum(|p| p.x), sum(|p| p.y));
            line_through(from, to, middle, MARK * 1.25).is_some()
        }
        _ => false,
    })
}

/// Sides of the plate on which words may stand.
#[derive(Clone, Copy)]
enum Beside {
    Left,
    Right,
    Below,
}

/// Places tried on one side for the knee of a leader.
const KNEES: u32 = 40;
/// The same on each of two levels below the plate.
const IN_A_ROW: u32 = 4;

/// Knees of a leader from a place, those that make it the shortest first.
fn knees(c: PaperPoint, plate: &PaperBox, side: Beside) -> impl Iterator<Item = PaperPoint> {
    let plate = *plate;
    let outwards = if c.x < plate.middle().x { -1.0 } else { 1.0 };
    let tried = match side {
        Beside::Below => 2 * IN_A_ROW,
        Beside::Left | Beside::Right => KNEES,
    };
    (0..tried).map(move |i| {
        let turn = if i % 2 == 0 { 1.0 } else { -1.0 };
        let off = turn * f64::from(i.div_ceil(2)) * 3.0;
        match side {
            Beside::Left => at(plate.left - 3.0, c.y + off),
            Beside::Right => at(plate.right + 3.0, c.y + off),
            Beside::Below => {
                let (row, i) = (i / IN_A_ROW, i % IN_A_ROW);
                let aside = turn * f64::from(i.div_ceil(2) + 1) * 3.0;
                let down = 3.0 + f64::from(row) * 2.0 * TABLE;
                at(c.x + outwards * aside, plate.bottom + down)
            }
        }
    })
}

/// The words outside the plate with a leader, where there is no room beside the mark.
pub fn put_words_outside(
    board: &mut Board,
    (c, radius): (PaperPoint, f64),
    words: &str,
    (plate, ends): (&PaperBox, &[PaperPoint]),
) {
    let wide = face::width(words, TABLE, false);
    let is_low = plate.bottom - c.y < plate.height() / 4.0;
    let below = is_low.then_some(Beside::Below);
    let (near, far) = match c.x < plate.middle().x {
        true => (Beside::Left, Beside::Right),
        false => (Beside::Right, Beside::Left),
    };
    let sides = || [below, Some(near), Some(far)].into_iter().flatten();
    // Past every hole, end of a weld, mark and leader where that can be, on any side; then past leaders alone; else across one.
    for (past_holes, past_leaders) in [(true, true), (false, true), (false, false)] {
        for knee in sides().flat_map(|side| knees(c, plate, side)) {
            let tip = tip_towards(c, knee, radius);
            let way = if knee.x >= tip.x { 1.0 } else { -1.0 };
            let beyond = knee.x + way * (4.0 + wide);
            let round = PaperBox::new(
                knee.x.min(beyond),
                knee.y - TABLE,
                knee.x.max(beyond),
                knee.y + TABLE,
            );
            let passes = || {
                crosses_hole(board, tip, knee)
                    || crosses_mark(board, tip, knee)
                    || passes_an_end(ends, tip, knee)
            };
            let is_barred = crosses_lettering(board, tip, knee)
                || past_leaders && crosses_leader(board, tip, knee)
                || past_holes && passes();
            if !is_barred && is_clear(board, &round, 0.5) {
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

/// What takes the place of low readings.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Covering {
    /// Pieces let in alone.
    Pieces,
    /// Some of each.
    Both,
    /// Areas built up alone, or nothing.
    BuildUps,
}

/// What takes the place of the readings that new metal covers.
pub fn covering(set: &Set<'_>) -> Covering {
    let covers = set.design.readings.iter().filter_map(|r| r.covered);
    let is_piece = |covered: Covered| set.design.repairs[covered.repair].piece.is_some();
    let (pieces, others): (Vec<_>, Vec<_>) = covers.partition(|c| is_piece(*c));
    match (pieces.is_empty(), others.is_empty()) {
        (false, true) => Covering::Pieces,
        (false, false) => Covering::Both,
        (true, _) => Covering::BuildUps,
    }
}

/// What the marks mean, in the order of urgency; only those that the view bears.
pub fn put_key(board: &mut Board, set: &Set<'_>, room: &PaperBox) {
    let design = set.design;
    let any = |stands: Stands| design.readings.iter().any(|r| Stands::of(r) == stands);
    let renewed = match covering(set) {
        Covering::Pieces => "BELOW, RENEWED BY A PIECE LET IN",
        Covering::Both => "BELOW, COVERED OR RENEWED BY A REPAIR",
        Covering::BuildUps => "BELOW, COVERED BY A REPAIR",
    };
    let readings = [
        (Stands::Low, "BELOW, COVERED BY NOTHING"),
        (Stands::Covered, renewed),
        (Stands::Sound, "AS REQUIRED OR MORE"),
        (Stands::Open, "NOTHING REQUIRED: NOT JUDGED"),
    ];
    let mut entries: Vec<(Result<Stands, Stroke>, &str)> = readings
        .into_iter()
        .filter(|(stands, _)| any(*stands))
        .map(|(stands, words)| (Ok(stands), words))
        .collect();
    let shown = || design.repairs.iter().filter(|r| !r.weld.is_empty());
    let lines = shown().any(|r| matches!(r.work, RepairWork::Line { .. }));
    let cracks = shown().any(|r| matches!(r.work, RepairWork::Crack));
    let of_welds = match (lines, cracks) {
        (true, true) => Some("WELD LINE OR CRACK"),
        (true, false) => Some("WELD LINE"),
        (false, true) => Some("CRACK"),
        (false, false) => None,
    };
    entries.extend(of_welds.map(|words| (Err(WELD), words)));
    if shown().any(|r| matches!(r.work, RepairWork::BuildUp { .. })) {
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
