//! The lines struck on the plate, as one looks at it: datum lines, lines of the nest, pops, witness and trammel circles.

use super::beginning::Beginning;
use super::board::{Board, PaperBox};
use super::clear::{clear_of_all_but_lines, crosses_lettering, is_clear};
use super::cloud::put_clouds;
use super::dimension::{FIRST_ROW, have_room, running_across, running_room, running_upwards};
use super::kept::weld_corners;
use super::letter_size::{FIGURES, NOTES, TABLE};
use super::line_names::{Ends, put_line_names};
use super::proving_bar::put_scale_bar;
use super::route::{Feature, Line, Rows, Side};
use super::scale::{Scale, largest_scale};
use super::set::Set;
use super::survey_marks::{put_repairs, put_weld_names};
use super::view::{PlateBox, Stroke, View};
use super::{Hang, PaperPoint, Pattern, Pen, Role, at, face};
use crate::design::{Design, Hole, LineWay, Point, pop_circle, quarter_pops, runs};
use crate::spec::{BottomCentre, Purpose};
use crate::units::Length;
use crate::units::angle::{cos, from_top_clockwise, hypot, sin};

/// A number stands so many times nearer to its own hole than to any other.
const PLAINLY_NEARER: f64 = 1.5;
/// Where lines are dense a number cuts them rather than stand further from its hole than this, mm.
const NEAR: f64 = 3.0;
/// How far datum lines run past the pop circle, mm of paper.
const DATUM_OVER: f64 = 4.0;
/// How far a struck line runs past its outermost pops, mm of paper.
const LINE_OVER: f64 = 3.0;
/// Half the tick of a pop, mm of paper.
const TICK: f64 = 1.2;
/// Radius of a quarter pop as drawn, mm.
const POP: f64 = 0.8;
/// Room below the view for datum letter, rivet mark, title and scale bar, mm.
const FOOT: f64 = 22.0;
/// What of the plate the view shows: the flat within the pop circle, and every hole outside it.
fn drawn_box(set: &Set<'_>) -> PlateBox {
    let mut b = PlateBox::NONE;
    b.take(Point::CENTRE, pop_circle(set.design).to_mm());
    for hole in &set.design.holes {
        b.take(hole.at, hole.finish.value().to_mm() / 2.0);
    }
    b
}

/// Puts the view at the left of a box, the holes of the whole plate that stand as thin circles; tells how far right it reaches on the paper.
pub fn put_struck_view(board: &mut Board, set: &Set<'_>, whole: &Design, room: &PaperBox) -> f64 {
    let shown = drawn_box(set);
    // The nest's lines below and the rest above, each row with half the values, unless that costs a scale.
    let apart = Plan::of(set, room, &shown, &[Side::Foot, Side::Top]);
    let together = Plan::of(set, room, &shown, &[Side::Top]);
    let plan = match apart.scale.factor() < together.scale.factor() {
        true => together,
        false => apart,
    };
    let f = plan.scale.factor();
    let spare = (plan.space.1 - shown.height() * f).max(0.0);
    board.scale_words = plan.scale.words();
    let view = View {
        scale: f,
        centre: at(
            room.left + plan.left - shown.left * f,
            room.top + plan.head + spare / 2.0 + shown.top * f,
        ),
    };
    let paper = view.paper_box(&shown);
    put_datum_lines(board, set, &view);
    put_standing_holes(board, whole, &view);
    put_nest_lines(board, set, &view);
    put_loose_holes(board, set, &view);
    put_repairs(board, set, &view);
    put_corners(board, set, &view);
    put_running(board, &view, &paper, &plan.rows);
    put_rivet_mark(board, set, &view, plan.foot_row);
    put_pop_names(board, set, &view);
    // Title and bar stand under their view, however high the room is.
    let y = (paper.bottom + plan.foot_row + FOOT - 4.5).min(room.bottom - 4.5);
    let bar = put_scale_bar(board, at(room.left + 3.0, y), f, set.figures);
    // The bar's own figure stands half beyond its end.
    let title = at(room.left + (bar + 15.0).max(68.0), y + 2.0);
    put_loose_numbers(board, set, &view);
    put_weld_names(board, set, &view);
    let all = |_: &Hole| true;
    let ends = Ends {
        shown: &all,
        reach: &|_| LINE_OVER,
    };
    put_line_names(board, set, &view, &ends);
    put_circle_name(board, set, &view);
    let around = PaperBox::new(room.left, room.top, paper.right + plan.right, y - NOTES);
    let clouded = put_clouds(board, set, &view, &around, |place| shown.holds(place)) > 0;
    let what = match Beginning::of_plate(set).pops() {
        0 => "STRUCK LINES AND HOLES AS CUT",
        _ => "STRUCK LINES AND POPS",
    };
    let mut words = format!("{what}, SCALE {}", plan.scale.words());
    if let Some(since) = set.design.since.as_ref().filter(|_| clouded) {
        words.push_str(&format!(
            "; CLOUDED: CHANGED SINCE REVISION {}",
            since.revision
        ));
    }
    board.bold(title, &words, NOTES, Hang::Start);
    paper.right + plan.right
}

/// How the view and its running dimensions share their room.
struct Plan {
    rows: Rows,
    scale: Scale,
    /// Room for the shown part of the plate, mm.
    space: (f64, f64),
    left: f64,
    right: f64,
    head: f64,
    /// What the running dimensions below take.
    foot_row: f64,
}

impl Plan {
    fn of(set: &Set<'_>, room: &PaperBox, shown: &PlateBox, nest_lines_at: &[Side]) -> Plan {
        let rows = running_rows(set, nest_lines_at);
        let row = |side: Side| {
            let words = rows.words(side);
            match words.is_empty() {
                true => 0.0,
                false => FIRST_ROW + running_room(&words),
            }
        };
        let (left, head, foot_row) = (row(Side::Left), row(Side::Top), row(Side::Foot));
        let head = head.max(DATUM_OVER);
        let right = row(Side::Right).max(FIRST_ROW + DATUM_OVER);
        let space = (
            room.width() - left - right,
            room.height() - head - FOOT - foot_row,
        );
        let inches = set.figures.in_inches();
        Plan {
            scale: largest_scale(shown.width(), shown.height(), space, inches),
            rows,
            space,
            left,
            right,
            head,
            foot_row,
        }
    }
}

/// Datum lines with their letters, the pop circle and its four pops.
fn put_datum_lines(board: &mut Board, set: &Set<'_>, view: &View) {
    let r = pop_circle(set.design).to_mm();
    view.circle(board, Point::CENTRE, r, Stroke::TANGENT);
    let c = view.centre;
    let reach = r * view.scale + DATUM_OVER;
    board.centre_line(at(c.x, c.y - reach), at(c.x, c.y + reach));
    board.centre_line(at(c.x - reach, c.y), at(c.x + reach, c.y));
    board.bold(at(c.x + 1.5, c.y + reach), "A", FIGURES, Hang::Start);
    board.bold(
        // Above its line, clear of the little circle that running dimensions start with.
        at(c.x + reach + 0.8, c.y - 1.8),
        "B",
        FIGURES,
        Hang::Start,
    );
    for pop in quarter_pops(set.design) {
        let p = view.place(pop.at);
        disc(board, p, POP);
    }
}

/// The names of the quarter pops, each beside its pop where nothing but struck lines stands.
fn put_pop_names(board: &mut Board, set: &Set<'_>, view: &View) {
    for pop in quarter_pops(set.design) {
        let p = view.place(pop.at);
        let wide = face::width(pop.name, TABLE, false);
        // Inwards first, along the datum line on either side of it; outwards where a hole stands there.
        let beside = [2.0, -2.0 - wide];
        let places: Vec<PaperPoint> = match pop.name {
            "TOP" => beside.map(|x| at(p.x + x, p.y + 5.5)).to_vec(),
            "BOTTOM" => beside.map(|x| at(p.x + x, p.y - 3.0)).to_vec(),
            "RIGHT" => [-1.2, 1.2 + TABLE]
                .map(|y| at(p.x - 1.8 - wide, p.y + y))
                .to_vec(),
            _ => [-1.2, 1.2 + TABLE].map(|y| at(p.x + 1.8, p.y + y)).to_vec(),
        };
        let out = match pop.name {
            "TOP" => beside.map(|x| at(p.x + x, p.y - 1.2)).to_vec(),
            "BOTTOM" => beside.map(|x| at(p.x + x, p.y + 1.2 + TABLE)).to_vec(),
            "RIGHT" => [-1.2, 1.2 + TABLE].map(|y| at(p.x + 1.2, p.y + y)).to_vec(),
            _ => [-1.2, 1.2 + TABLE]
                .map(|y| at(p.x - 1.2 - wide, p.y + y))
                .to_vec(),
        };
        let clear = |c: &PaperPoint| {
            let b = PaperBox::new(c.x, c.y - TABLE, c.x + wide, c.y);
            clear_of_all_but_lines(board, &b)
        };
        let all: Vec<PaperPoint> = places.into_iter().chain(out).collect();
        let place = all.iter().copied().find(|c| clear(c)).unwrap_or(all[0]);
        board.text(place, pop.name, TABLE, Hang::Start);
    }
}

/// Holes that stand in a plate that is kept: nothing is struck at them.
fn put_standing_holes(board: &mut Board, whole: &Design, view: &View) {
    for (i, hole) in whole.holes.iter().enumerate() {
        if !whole.is_made(i) {
            let radius = hole.finish.value().to_mm() / 2.0;
            view.circle(board, hole.at, radius, Stroke::TANGENT);
        }
    }
}

/// A cross at every corner of a weld line, where it is popped.
fn put_corners(board: &mut Board, set: &Set<'_>, view: &View) {
    for corner in weld_corners(set) {
        let p = view.place(corner.at);
        for (x, y) in [(TICK, 0.0), (0.0, TICK)] {
            let (a, b) = (at(p.x - x, p.y - y), at(p.x + x, p.y + y));
            board.line(a, b, Pen::Middle, Pattern::Continuous, Role::Centre);
        }
    }
}

/// The name and radius of the pop circle, on a leader where it stands clear of everything.
fn put_circle_name(board: &mut Board, set: &Set<'_>, view: &View) {
    let r = pop_circle(set.design);
    let words = format!("POP CIRCLE R{}", set.figures.short(r));
    let wide = face::width(&words, TABLE, false);
    let on = |deg: f64, out: f64| {
        let reach = r.to_mm() * view.scale + out;
        let a = from_top_clockwise(deg);
        at(
            view.centre.x + reach * cos(a),
            view.centre.y - reach * sin(a),
        )
    };
    for deg in [
        45.0, 315.0, 60.0, 300.0, 30.0, 330.0, 135.0, 225.0, 120.0, 240.0,
    ] {
        let (tip, knee) = (on(deg, 0.0), on(deg, 7.0));
        let right = deg < 180.0;
        let left = if right { knee.x } else { knee.x - wide - 3.0 };
        let round = PaperBox::new(
            left,
            knee.y - TABLE - 1.0,
            left + wide + 3.0,
            knee.y + TABLE,
        );
        let clear = is_clear(board, &round, 0.5) && !crosses_lettering(board, tip, knee);
        if clear && board.room.holds(&round) {
            super::dimension::leader(board, tip, knee, &[words], TABLE);
            return;
        }
    }
}

/// Every line of the nest past its outermost pops, and a tick across it at each pop.
fn put_nest_lines(board: &mut Board, set: &Set<'_>, view: &View) {
    let over = LINE_OVER / view.scale;
    for run in runs(set.design) {
        let (o, a, b) = (
            run.offset.to_mm(),
            run.first.to_mm() - over,
            run.last.to_mm() + over,
        );
        let (from, to) = match run.way {
            LineWay::Columns => (Point::new(o, a), Point::new(o, b)),
            LineWay::Rows => (Point::new(a, o), Point::new(b, o)),
        };
        view.line(board, from, to, Stroke::TANGENT);
    }
    for hole in &set.design.holes {
        if set.design.groups[hole.group].purpose.takes_a_tube() {
            put_tick(board, set, view, hole);
        }
    }
}

/// A pop of the nest: a short stroke across its line, or a cross where it stands on none.
fn put_tick(board: &mut Board, set: &Set<'_>, view: &View, hole: &Hole) {
    let p = view.place(hole.at);
    let way = set
        .design
        .line_way
        .iter()
        .find(|(group, _)| *group == hole.group && hole.line.is_some())
        .map(|(_, way)| *way);
    let level = (at(p.x - TICK, p.y), at(p.x + TICK, p.y));
    let upright = (at(p.x, p.y - TICK), at(p.x, p.y + TICK));
    let strokes = match way {
        Some(LineWay::Columns) => vec![level],
        Some(LineWay::Rows) => vec![upright],
        None => vec![level, upright],
    };
    for (a, b) in strokes {
        board.line(a, b, Pen::Wide, Pattern::Continuous, Role::Centre);
    }
    if hole.exception.is_some() {
        board.circle(
            p,
            2.0 * TICK,
            Pen::Narrow,
            Pattern::Continuous,
            Role::Centre,
        );
    }
}

/// Witness circles of the holes off the nest, each with its cross.
fn put_loose_holes(board: &mut Board, set: &Set<'_>, view: &View) {
    for hole in loose(set) {
        let radius = hole.finish.value().to_mm() / 2.0;
        view.circle(board, hole.at, radius, Stroke::SEEN);
        let p = view.place(hole.at);
        let reach = (radius * view.scale).max(1.5) + 1.5;
        board.line(
            at(p.x - reach, p.y),
            at(p.x + reach, p.y),
            Pen::Narrow,
            Pattern::Continuous,
            Role::Centre,
        );
        board.line(
            at(p.x, p.y - reach),
            at(p.x, p.y + reach),
            Pen::Narrow,
            Pattern::Continuous,
            Role::Centre,
        );
    }
}

/// The number of every hole off the nest and of every flue, whose pops stand among those of the tubes, where nothing stands in its way.
fn put_loose_numbers(board: &mut Board, set: &Set<'_>, view: &View) {
    let is_flue = |h: &&Hole| set.design.groups[h.group].purpose == Purpose::Flue;
    let flues = || set.design.holes.iter().filter(is_flue);
    let numbered = || loose(set).chain(flues());
    // Of a flue the pop alone is drawn.
    let drawn = |h: &Hole| match is_flue(&h) {
        true => TICK,
        false => h.finish.value().to_mm() / 2.0 * view.scale,
    };
    for hole in numbered() {
        let (c, radius) = (view.place(hole.at), drawn(hole));
        let wide = face::width(&hole.id, FIGURES, true);
        let places = (0..10).flat_map(|ring| {
            let reach = radius.max(1.5) + 1.0 + f64::from(ring) * 1.2;
            [
                (0.71, -0.71),
                (-0.71, -0.71),
                (0.71, 0.71),
                (-0.71, 0.71),
                (1.0, -0.3),
                (-1.0, -0.3),
            ]
            .map(|(x, y)| {
                at(
                    c.x + x * (reach + wide / 2.0),
                    c.y + y * (reach + FIGURES / 2.0),
                )
            })
        });
        // A number is read with the hole that it stands nearest to.
        let apart = |h: &Hole, p: &PaperPoint| {
            let c = view.place(h.at);
            hypot(p.x - c.x, p.y - c.y) - drawn(h)
        };
        let own = |p: &PaperPoint| {
            numbered()
                .filter(|o| o.id != hole.id)
                .all(|o| apart(hole, p) * PLAINLY_NEARER < apart(o, p))
        };
        let round = |p: &PaperPoint| {
            PaperBox::new(
                p.x - wide / 2.0,
                p.y - FIGURES / 2.0,
                p.x + wide / 2.0,
                p.y + FIGURES / 2.0,
            )
        };
        let places: Vec<PaperPoint> = places.filter(own).collect();
        let near = |p: &&PaperPoint| apart(hole, p) <= NEAR + wide;
        let found = places
            .iter()
            .filter(near)
            .find(|p| is_clear(board, &round(p), 0.5))
            .or_else(|| {
                places
                    .iter()
                    .find(|p| clear_of_all_but_lines(board, &round(p)))
            });
        let p = found
            .copied()
            .unwrap_or(at(c.x + radius + wide, c.y - radius - FIGURES));
        board.bold(
            at(p.x, p.y + FIGURES / 2.0),
            &hole.id,
            FIGURES,
            Hang::Middle,
        );
    }
}

/// Puts the running dimensions of every line and level down, from the datum lines alone, where there is room for their figures.
fn put_running(board: &mut Board, view: &View, paper: &PaperBox, rows: &Rows) {
    let c = view.centre;
    for (side, line_y) in [
        (Side::Top, paper.top - FIRST_ROW),
        (Side::Foot, paper.bottom + FIRST_ROW),
    ] {
        let values = rows.running(view, side);
        if have_room(&values, paper.width()) {
            running_across(board, c, line_y, view.scale, &values);
        }
    }
    for (side, line_x) in [
        (Side::Left, paper.left - FIRST_ROW),
        (Side::Right, paper.right + FIRST_ROW),
    ] {
        let values = rows.running(view, side);
        if have_room(&values, paper.height()) {
            running_upwards(board, c, line_x, view.scale, &values);
        }
    }
}

/// Running dimensions: upright lines of the nest on the sides asked for, both hands, the holes off it above; level lines of the
/// nest at the left and the heights of the other holes at the right.
fn running_rows(set: &Set<'_>, nest_lines_at: &[Side]) -> Rows {
    // Flues that stand by their places among the lines of the tubes are told apart from them.
    let on_a_line = |h: &&Hole| {
        set.design.groups[h.group].purpose.takes_a_tube()
            && (h.line.is_some() || set.design.nest_lines.is_empty())
    };
    let nest = || set.design.holes.iter().filter(on_a_line);
    let of_tubes = |h: &&Hole| set.design.groups[h.group].purpose.takes_a_tube();
    let tubes = || set.design.holes.iter().filter(of_tubes);
    let off_lines = || set.design.holes.iter().filter(move |h| !on_a_line(h));
    let in_the_way: Vec<PlateBox> = loose(set).map(|h| Feature::hole(h).around()).collect();
    // A hole off the nest is measured from the side that it lies on: its line is struck short, and never along those of the nest.
    let upper = || off_lines().filter(|h| h.at.y >= 0.0);
    let lower = || off_lines().filter(|h| h.at.y < 0.0);
    let places = |holes: &mut dyn Iterator<Item = &Hole>, along: fn(&Hole) -> f64| {
        holes.map(|h| Length::mm(along(h))).collect()
    };
    let mut rows = Rows::default();
    for (lines, sides) in [
        (
            lines(set, places(&mut nest(), |h| h.at.x), nest(), |h| h.at.x),
            nest_lines_at,
        ),
        (
            lines(set, places(&mut upper(), |h| h.at.x), upper(), |h| h.at.x),
            &[Side::Top],
        ),
        (
            lines(set, places(&mut lower(), |h| h.at.x), lower(), |h| h.at.x),
            &[Side::Foot],
        ),
        (
            lines(set, places(&mut tubes(), |h| h.at.y), tubes(), |h| h.at.y),
            &[Side::Left],
        ),
        (
            lines(set, places(&mut loose(set), |h| h.at.y), loose(set), |h| {
                h.at.y
            }),
            &[Side::Right],
        ),
        (corner_lines(set, |p| p.x), &[Side::Foot]),
        (corner_lines(set, |p| p.y), &[Side::Left]),
    ] {
        rows.route(&lines, &in_the_way, sides);
    }
    rows
}

/// The lines wanted, each with the pops that stand on it.
fn lines<'a>(
    set: &Set<'_>,
    mut wanted: Vec<Length>,
    holes: impl Iterator<Item = &'a Hole>,
    along: impl Fn(&Hole) -> f64,
) -> Vec<Line> {
    wanted.sort_by(Length::total_cmp);
    wanted.dedup_by(|a, b| a.same_as(*b));
    let holes: Vec<&Hole> = holes.collect();
    wanted
        .into_iter()
        .filter(|v| !v.same_as(Length::ZERO))
        .map(|v| {
            let on_line = holes.iter().filter(|h| Length::mm(along(h)).same_as(v));
            let pop = |h: &&Hole| Feature {
                half: 0.0,
                ..Feature::hole(h)
            };
            Line {
                length: v,
                words: set.figures.short(v.abs()),
                features: on_line.map(pop).collect(),
            }
        })
        .collect()
}

/// A line for each distance at which a weld line has a corner.
fn corner_lines(set: &Set<'_>, along: impl Fn(Point) -> f64) -> Vec<Line> {
    let corners = weld_corners(set);
    let mut places: Vec<Length> = corners.iter().map(|c| Length::mm(along(c.at))).collect();
    places.sort_by(Length::total_cmp);
    places.dedup_by(|a, b| a.same_as(*b));
    places.retain(|v| !v.same_as(Length::ZERO));
    let of = |v: Length| Line {
        length: v,
        words: set.figures.short(v.abs()),
        features: corners
            .iter()
            .filter(|c| Length::mm(along(c.at)).same_as(v))
            .cloned()
            .collect(),
    };
    places.into_iter().map(of).collect()
}

/// Bottom centre of the rivet circle below the view and its running dimensions.
fn put_rivet_mark(board: &mut Board, set: &Set<'_>, view: &View, foot_row: f64) {
    let (Some(line), Some(spec)) = (&set.design.rivets, &set.spec.written.rivets) else {
        return;
    };
    // Of several rows the first, which `bottom_centre` speaks of.
    let Some((_, [first, .., last])) = line.each_row().next() else {
        return;
    };
    let of_row = if line.rows.is_some() { " OF ROW 1" } else { "" };
    let words = match spec.bottom_centre {
        BottomCentre::OnAHole => format!("RIVET {}{of_row} COMES ON BOTTOM CENTRE", first.id),
        BottomCentre::BetweenHoles => {
            format!(
                "BOTTOM CENTRE FALLS MIDWAY BETWEEN RIVETS {} AND {}{of_row}",
                first.id, last.id
            )
        }
    };
    let foot = drawn_box(set).bottom.min(-pop_circle(set.design).to_mm());
    let y = match foot_row > 0.0 {
        true => view.y(foot) + foot_row + 1.5,
        false => view.y(-pop_circle(set.design).to_mm()) + DATUM_OVER + 1.5,
    };
    let c = view.centre.x;
    board.filled(
        vec![at(c, y), at(c - 1.2, y + 2.4), at(c + 1.2, y + 2.4)],
        Role::Centre,
    );
    board.text(at(c, y + 2.4 + TABLE + 1.0), &words, TABLE, Hang::Middle);
}

fn loose<'a>(set: &Set<'a>) -> impl Iterator<Item = &'a Hole> + use<'a> {
    let design = set.design;
    design
        .holes
        .iter()
        .filter(|h| !design.groups[h.group].purpose.takes_a_tube())
}

/// A filled disc.
fn disc(board: &mut Board, c: PaperPoint, radius: f64) {
    let corners = (0..16)
        .map(|i| {
            let a = f64::from(i) * std::f64::consts::PI / 8.0;
            at(c.x + radius * cos(a), c.y + radius * sin(a))
        })
        .collect();
    board.filled(corners, Role::Centre);
}
