//! A hole in section with what goes into it: a tube with its end, a stay, or the bare hole of a plug or a pipe.

use super::board::{Board, PaperBox};
use super::dimension::{FIRST_ROW, Says, across, saying, upwards};
use super::face_view::in_nest;
use super::hatch::{Lean, hatch};
use super::letter_size::{FIGURES, TABLE};
use super::mouth_detail::MouthSection;
use super::set::Set;
use super::view::{Stroke, View};
use super::{Hang, PaperPoint, Pattern, Pen, Role, at, face};
use crate::design::Point;
use crate::spec::{Nest, Purpose, ViewFrom};
use crate::units::Size;

/// Plate shown beyond the hole, above and below, mm of plate.
const METAL: f64 = 8.0;
/// Length of tube or stay shown beyond either face, mm of plate.
const BEYOND: f64 = 24.0;

/// What is said of a mouth below its detail.
const MOUTH_WORDS: [&str; 3] = [
    "MOUTH TURNED OUT OF THE PLATE",
    "BEND TO THE WORKS' FORMER",
    "NOT CUT TO SIZE IN THE BLANK",
];

/// Plate shown and room round it: left, above, right, below.
pub fn hole_extent(set: &Set<'_>, group: usize) -> ((f64, f64), [f64; 4]) {
    let design = set.design;
    let t = design.thickness.value().to_mm();
    let hole = design.groups[group].finish.value().to_mm();
    let clear = design.groups[group].needs_clear.as_ref();
    let clear = clear.map_or(0.0, |c| c.value().to_mm());
    let mut high = clear.max(hole + 2.0 * METAL);
    // A size too short for its own figures is put into words, on a line more.
    let mut below = if is_short("⌀{0 00/00} HOLE", hole) {
        22.0 + 3.0 * TABLE
    } else {
        22.0
    };
    let (mut beyond, mut above) = (BEYOND, 8.0);
    let mouth = design.groups[group].mouth.as_ref();
    if mouth.is_some() {
        below += MOUTH_WORDS.len() as f64 * 1.5 * TABLE;
    }
    if let Some(mouth) = mouth.and_then(|m| MouthSection::of(m, t, hole / 2.0)) {
        let (rim, _) = mouth.rim_and_face();
        high = high.max(2.0 * (mouth.flat_from() + METAL));
        beyond = beyond.max(rim.abs().max((rim - t).abs()));
        above += FIRST_ROW;
    }
    ((t + 2.0 * beyond, high), [16.0, above, 24.0, below])
}

/// Whether a dimension upwards this long on paper has no room for its figures.
fn is_short(words: &str, on_paper: f64) -> bool {
    on_paper < face::width(words, FIGURES, false) + 2.0
}

/// A diameter upwards, or, where there is no room for its figures, among the words.
struct Diameters {
    short: Vec<String>,
}

impl Diameters {
    fn put(
        &mut self,
        board: &mut Board,
        (a, b): (PaperPoint, PaperPoint),
        line_x: f64,
        says: Says<'_>,
    ) {
        if is_short(says.words, (a.y - b.y).abs()) {
            self.short.push(says.words.into());
        } else {
            upwards(board, a, b, line_x, says);
        }
    }
}

/// The hole's plate: depth runs from the boiler side (nothing) to the smokebox side (the thickness).
struct Seat<'a, 'b> {
    set: &'a Set<'b>,
    view: View,
    /// 1 where the smokebox side lies to the right.
    side: f64,
    t: f64,
    hole: f64,
    mouth: Option<MouthSection>,
}

impl Seat<'_, '_> {
    fn at(&self, depth: f64, y: f64) -> Point {
        Point::new((depth - self.t / 2.0) * self.side, y)
    }

    fn line(&self, board: &mut Board, a: (f64, f64), b: (f64, f64), stroke: Stroke) {
        self.view
            .line(board, self.at(a.0, a.1), self.at(b.0, b.1), stroke);
    }
}

/// Puts the detail down: plate, what goes into the hole, sizes, and words below.
pub fn put_hole_detail(board: &mut Board, set: &Set<'_>, group: usize, b: &PaperBox, scale: f64) {
    let design = set.design;
    let (t, hole) = (
        design.thickness.value().to_mm(),
        design.groups[group].finish.value().to_mm() / 2.0,
    );
    let mouth = design.groups[group].mouth.as_ref();
    let seat = Seat {
        set,
        view: View {
            scale,
            centre: b.middle(),
        },
        side: match design.view_from {
            ViewFrom::Smokebox => 1.0,
            ViewFrom::Firebox => -1.0,
        },
        t,
        hole,
        mouth: mouth.and_then(|m| MouthSection::of(m, t, hole)),
    };
    match &seat.mouth {
        Some(mouth) => put_mouth(board, &seat, mouth, b),
        None => put_plate(board, &seat),
    }
    let written = &set.spec.written;
    let mut words = Vec::new();
    let mut sizes = Diameters { short: Vec::new() };
    if in_nest(design.groups[group].purpose) {
        if let Some(nest) = written.tubes.get(group) {
            put_tube(board, &seat, nest, b, &mut sizes);
            words.extend(tube_words(&seat, nest));
        }
    } else if let Some(one) = written.holes.get(group - written.tubes.len()) {
        if let Some(stay) = &one.stay {
            put_bar(board, &seat, &stay.diameter);
            words.push(format!(
                "STAY ⌀{}, {} THREADS PER INCH",
                set.figures.size_short(&stay.diameter),
                stay.threads_per_inch
            ));
        }
        if let Some(clear) = &one.needs_clear {
            put_clear(board, &seat, clear, b, &mut sizes);
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
    }
    if let Some(mouth) = mouth {
        words.extend(MOUTH_WORDS.map(String::from));
        if mouth.depth.is_none() {
            words.push("DEPTH OF THE MOUTH NOT GIVEN".into());
        }
    }
    words.push("SHARP EDGES OFF, BOTH SIDES".into());
    put_sizes(board, &seat, group, b, &mut sizes);
    words.insert(0, sizes.short.join(", "));
    put_words(board, &words, b);
}

/// The plate with its mouth, above and below the hole, broken off; and how far the mouth stands out.
fn put_mouth(board: &mut Board, seat: &Seat<'_, '_>, mouth: &MouthSection, b: &PaperBox) {
    let end = mouth.flat_from() + METAL;
    let corners = mouth.corners(end);
    for hand in [1.0, -1.0] {
        let polygon = corners
            .iter()
            .map(|&(u, y)| seat.view.place(seat.at(u, y * hand)))
            .collect();
        hatch(board, &[polygon], 2.5, Lean::Right);
        for pair in corners.windows(2) {
            let at = |(u, y): (f64, f64)| (u, y * hand);
            seat.line(board, at(pair[0]), at(pair[1]), Stroke::SEEN);
        }
        let broken = Stroke {
            pen: Pen::Narrow,
            ..Stroke::SEEN
        };
        seat.line(board, (0.0, end * hand), (seat.t, end * hand), broken);
    }
    let (rim, face) = mouth.rim_and_face();
    let reach = rim.abs().max((rim - seat.t).abs()) + 3.0;
    seat.line(board, (-reach, 0.0), (seat.t + reach, 0.0), Stroke::CENTRE);
    let depth = crate::units::Length::mm((rim - face).abs());
    let words = seat.set.figures.short(depth);
    let place = |u: f64, y: f64| seat.view.place(seat.at(u, y));
    let says = Says {
        words: &words,
        length: depth,
        scale: seat.view.scale,
    };
    let ends = (place(face, end), place(rim, mouth.outside()));
    across(board, ends.0, ends.1, b.top - FIRST_ROW, says);
}

/// Plate above and below the hole, broken off.
fn put_plate(board: &mut Board, seat: &Seat<'_, '_>) {
    let (r, end) = (seat.hole, seat.hole + METAL);
    for hand in [1.0, -1.0] {
        let corners = [(0.0, r), (seat.t, r), (seat.t, end), (0.0, end)];
        let polygon = corners
            .iter()
            .map(|&(u, y)| seat.view.place(seat.at(u, y * hand)))
            .collect();
        hatch(board, &[polygon], 2.5, Lean::Right);
        for u in [0.0, seat.t] {
            seat.line(board, (u, r * hand), (u, end * hand), Stroke::SEEN);
        }
        seat.line(board, (0.0, r * hand), (seat.t, r * hand), Stroke::SEEN);
        let broken = Stroke {
            pen: Pen::Narrow,
            pattern: Pattern::Continuous,
            role: Role::Object,
        };
        seat.line(board, (0.0, end * hand), (seat.t, end * hand), broken);
    }
    seat.line(
        board,
        (-BEYOND - 3.0, 0.0),
        (seat.t + BEYOND + 3.0, 0.0),
        Stroke::CENTRE,
    );
}

/// The tube: body on the boiler side, its end in the hole and standing out where the spec says by how much.
fn put_tube(
    board: &mut Board,
    seat: &Seat<'_, '_>,
    nest: &Nest,
    b: &PaperBox,
    sizes: &mut Diameters,
) {
    let fig = seat.set.figures;
    let end = nest.tube_end.as_ref().unwrap_or(&nest.tube);
    let (body, in_hole) = (nest.tube.value().to_mm() / 2.0, end.value().to_mm() / 2.0);
    let out = nest.projection.as_ref().map_or(0.0, |p| p.value().to_mm());
    let wall = nest.wall.as_ref().map(|w| w.value().to_mm());
    let profile = [
        (-BEYOND, body),
        (-0.5 * BEYOND, body),
        (-0.2 * BEYOND, in_hole),
        (seat.t + out, in_hole),
    ];
    let stroke = Stroke {
        pen: Pen::Middle,
        pattern: Pattern::Continuous,
        role: Role::Object,
    };
    for hand in [1.0, -1.0] {
        for less in [Some(0.0), wall].into_iter().flatten() {
            for pair in profile.windows(2) {
                let along = |p: (f64, f64)| (p.0, (p.1 - less) * hand);
                seat.line(board, along(pair[0]), along(pair[1]), stroke);
            }
        }
    }
    let last = seat.t + out;
    seat.line(board, (last, in_hole), (last, -in_hole), stroke);
    let says = saying(seat.view.scale);
    let place = |u: f64, y: f64| seat.view.place(seat.at(u, y));
    let text = format!("⌀{} TUBE", fig.size_short(&nest.tube));
    let x = if seat.side > 0.0 {
        b.left - 6.0
    } else {
        b.right + 6.0
    };
    sizes.put(
        board,
        (place(-BEYOND, body), place(-BEYOND, -body)),
        x,
        says(&text, nest.tube.value()),
    );
    let text = format!("⌀{} END", fig.size_short(end));
    let x = place(last, 0.0).x + seat.side * 9.0;
    sizes.put(
        board,
        (place(last, in_hole), place(last, -in_hole)),
        x,
        says(&text, end.value()),
    );
}

/// What the spec says of the tube's end and wall.
fn tube_words(seat: &Seat<'_, '_>, nest: &Nest) -> Vec<String> {
    let fig = seat.set.figures;
    let out = nest.projection.as_ref();
    let out = out.map(|p| format!("TUBE STANDS OUT {} BEFORE BEADING", fig.size_short(p)));
    let wall = nest.wall.as_ref().map_or_else(
        || "WALL OF THE TUBE NOT GIVEN".into(),
        |w| format!("WALL {}", fig.size_short(w)),
    );
    out.into_iter().chain([wall]).collect()
}

/// A stay's bar through the hole, broken off at both ends.
fn put_bar(board: &mut Board, seat: &Seat<'_, '_>, diameter: &Size) {
    let r = diameter.value().to_mm() / 2.0;
    let (a, b) = (-BEYOND, seat.t + BEYOND);
    let stroke = Stroke {
        pen: Pen::Middle,
        ..Stroke::SEEN
    };
    for hand in [1.0, -1.0] {
        seat.line(board, (a, r * hand), (b, r * hand), stroke);
    }
    for u in [a, b] {
        let broken = Stroke {
            pen: Pen::Narrow,
            ..stroke
        };
        seat.line(board, (u, r), (u, -r), broken);
    }
}

/// The circle that washers, heads or a joint face need clear: a chain line on both faces, and its size.
fn put_clear(
    board: &mut Board,
    seat: &Seat<'_, '_>,
    clear: &Size,
    b: &PaperBox,
    sizes: &mut Diameters,
) {
    let r = clear.value().to_mm() / 2.0;
    for u in [-5.0, seat.t + 5.0] {
        seat.line(board, (u, r), (u, -r), Stroke::ADJACENT);
    }
    let text = format!("⌀{} KEPT CLEAR", seat.set.figures.size_short(clear));
    let place = |y: f64| seat.view.place(seat.at(-5.0, y));
    let x = if seat.side > 0.0 {
        b.left - 6.0
    } else {
        b.right + 6.0
    };
    let says = Says {
        words: &text,
        length: clear.value(),
        scale: seat.view.scale,
    };
    sizes.put(board, (place(r), place(-r)), x, says);
}

/// Finished hole on the far right or left, thickness below.
fn put_sizes(
    board: &mut Board,
    seat: &Seat<'_, '_>,
    group: usize,
    b: &PaperBox,
    sizes: &mut Diameters,
) {
    let fig = seat.set.figures;
    let finish = &seat.set.design.groups[group].finish;
    let text = format!("⌀{} HOLE", fig.size_short(finish));
    let scale = seat.view.scale;
    let says = saying(scale);
    let place = |u: f64, y: f64| seat.view.place(seat.at(u, y));
    // A mouth's hole is measured at its rim, whichever side that stands on.
    let edge = seat.mouth.as_ref().map_or(seat.t, |m| m.rim_and_face().0);
    let x = if (seat.side > 0.0) == (edge > 0.0) {
        b.right + 8.0
    } else {
        b.left - 8.0
    };
    sizes.put(
        board,
        (place(edge, seat.hole), place(edge, -seat.hole)),
        x,
        says(&text, finish.value()),
    );
    let thickness = &seat.set.design.thickness;
    let metal_from = seat
        .mouth
        .as_ref()
        .map_or(seat.hole, MouthSection::flat_from);
    let low = -metal_from - METAL;
    let line_y = place(0.0, low).y + FIRST_ROW - 2.0;
    across(
        board,
        place(0.0, low),
        place(seat.t, low),
        line_y,
        says(&fig.size_short(thickness), thickness.value()),
    );
    let (boiler, smokebox) = if seat.side > 0.0 {
        (
            at(b.left - 12.0, b.top - 2.4),
            at(b.right + 20.0, b.top - 2.4),
        )
    } else {
        (
            at(b.right + 20.0, b.top - 2.4),
            at(b.left - 12.0, b.top - 2.4),
        )
    };
    let hang = |p: PaperPoint| {
        if p.x < b.middle().x {
            Hang::Start
        } else {
            Hang::End
        }
    };
    board.text(boiler, "BOILER", TABLE, hang(boiler));
    board.text(smokebox, "SMOKEBOX", TABLE, hang(smokebox));
}

fn put_words(board: &mut Board, words: &[String], b: &PaperBox) {
    let mut y = b.bottom + 10.0;
    for line in words.iter().filter(|w| !w.is_empty()) {
        // Stacked fractions reach further up and down.
        let stacked = line.contains('{');
        y += TABLE * if stacked { 1.9 } else { 1.45 };
        let room = b.width() + 38.0;
        let height = super::letter_size::fitting_height(line, room, TABLE, false);
        board.text(at(b.left - 15.0, y), line, height, Hang::Start);
        if stacked {
            y += TABLE * 0.5;
        }
    }
}
