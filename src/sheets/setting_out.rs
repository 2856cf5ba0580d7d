//! Sheet: setting-out of the nest. Every hole with its number in it, running dimensions of its lines, tables and counts.

use super::board::{Board, PaperBox};
use super::cloud::put_clouds;
use super::dimension::{FIRST_ROW, have_room, running_across, running_room, running_upwards};
use super::face_view::{Wanted, number_height, number_words, put_hole, put_pads};
use super::flow::{Block, flow_or_close_up};
use super::letter_size::{FIGURES, LEAST_NUMBER, LINE_PITCH, NOTES, wrap};
use super::ligament_figures::{figures_height, put_ligament_figures};
use super::line_names::{Ends, put_line_names};
use super::nest_tables::{count_boxes, line_table, metal_table};
use super::pages::continued;
use super::particulars::view_words;
use super::proving_bar::put_scale_bar;
use super::route::{Feature, Line, Rows, Side};
use super::scale::{Scale, larger_scales, largest_scale};
use super::set::Set;
use super::standing_notes::{is_symmetrical, nest_notes};
use super::view::{PlateBox, View};
use super::{Hang, at};
use crate::design::{Hole, PlacedPad};
use crate::units::Length;

/// Width of the tables beside the view, mm.
const TABLES: f64 = 140.0;
/// Clear strip beside them, mm.
const BESIDE_TABLES: f64 = 6.0;
/// Share of the height that the view takes on upright paper.
const VIEWS_ABOVE: f64 = 0.6;
/// Room below the view for its title and scale bar, mm.
const FOOT: f64 = 12.0;
/// Width kept for the scale bar, mm.
const BAR: f64 = 74.0;
/// Numbers of the nest are read at arm's length beside the plate: none is under this where sheets enough can be had for it, mm.
pub(super) const READ_AT_ARM: f64 = 2.5;
/// A nest is cut up over so many sheets at most so that its numbers can be read; one that takes more is drawn whole without them.
const MOST_PARTS: usize = 12;
/// From the title, with the scale bar's figures below it, to the figures of least metal, mm.
const BELOW_TITLE: f64 = 5.0;
/// How far datum lines run past the nest, mm.
const DATUM_OVER: f64 = 7.0;
/// A pad may reach so far beyond the nest, mm of paper.
const PAD_OVER: f64 = 4.0;

/// The setting-out of the nest over as many sheets as its numbers need to be read; none where there is no nest.
pub fn setting_out(set: &Set<'_>) -> Vec<Board> {
    let nest = nest_box(set);
    if nest.width() <= 0.0 {
        return Vec::new();
    }
    let mut board = set.board("setting-out", "Setting-out of tubes");
    let room = board.room;
    let (scale, tiles) = plan(set, &nest, &room);
    let mut boards = Vec::new();
    let mut blocks = tables(set);
    for (i, tile) in tiles.iter().enumerate() {
        if i > 0 {
            board = set.board("setting-out", "Setting-out of tubes");
        }
        board.scale_words = scale.words();
        let (views, column) = set.shared(&room, TABLES, BESIDE_TABLES, VIEWS_ABOVE);
        let part = (tiles.len() > 1).then_some((i + 1, tiles.len()));
        let foot = put_nest(&mut board, set, &views, scale, tile, part);
        let (rest, reached) = flow_or_close_up(&mut board, &column, blocks);
        blocks = rest;
        if tiles.len() == 1 {
            let beside = match blocks.is_empty() {
                true => PaperBox::new(column.left, reached + 3.0, column.right, column.bottom),
                false => PaperBox::new(column.left, column.bottom, column.right, column.bottom),
            };
            let below = PaperBox::new(views.left, foot + BELOW_TITLE, views.right, views.bottom);
            put_ligament_figures(&mut board, set, &[below, beside]);
        }
        boards.push(board.clone());
    }
    let name = ("setting-out-tables", "Setting-out tables");
    continued(set, boards, name, 2, blocks)
}

fn tables(set: &Set<'_>) -> Vec<Block> {
    let counts = count_boxes(set).into_iter();
    let mut blocks: Vec<Block> = counts.map(|words| Block::Caution(words, 4.0)).collect();
    blocks.extend(line_table(set).map(|t| Block::Table(t, 0)));
    blocks.extend(metal_table(set).map(|t| Block::Table(t, 0)));
    blocks.push(Block::Notes(nest_notes(set), 0));
    blocks
}

/// The box round every hole of the nest.
fn nest_box(set: &Set<'_>) -> PlateBox {
    let mut b = PlateBox::NONE;
    for hole in nest_holes(set) {
        b.take(hole.at, hole.finish.value().to_mm() / 2.0);
    }
    b
}

fn nest_holes<'a>(set: &Set<'a>) -> impl Iterator<Item = &'a Hole> {
    let design = set.design;
    design
        .holes
        .iter()
        .filter(|h| design.groups[h.group].purpose.takes_a_tube())
}

/// Height at which every number of the nest can be read inside its hole at a scale, never under a least one, and whether they
/// must stand without their letter for it; none where even that does not do.
fn numbers_at(set: &Set<'_>, scale: Scale, at_least: f64) -> Option<(f64, bool)> {
    let least = |bare: bool| {
        let height = nest_holes(set).try_fold(f64::INFINITY, |least: f64, h| {
            let radius = h.finish.value().to_mm() / 2.0 * scale.factor();
            Some(least.min(number_height(number_words(&h.id, bare), radius)?))
        });
        height.filter(|h| *h >= at_least)
    };
    least(false)
        .map(|h| (h, false))
        .or_else(|| least(true).map(|h| (h, true)))
}

/// The scale, and the parts of the nest that go on a sheet each: one, unless its numbers would be too small to read.
fn plan(set: &Set<'_>, nest: &PlateBox, room: &PaperBox) -> (Scale, Vec<PlateBox>) {
    let around = Around::of(&running_rows(set, nest));
    let (views, _) = set.shared(room, TABLES, BESIDE_TABLES, VIEWS_ABOVE);
    let wide = views.width() - around.left - DATUM_OVER;
    let high = views.height() - around.head - FOOT - around.foot;
    let inches = set.figures.in_inches();
    let whole = largest_scale(nest.width(), nest.height(), (wide, high), inches);
    if numbers_at(set, whole, READ_AT_ARM).is_some() {
        return (whole, vec![*nest]);
    }
    let scale = larger_scales(whole, inches)
        .into_iter()
        .find(|&s| numbers_at(set, s, READ_AT_ARM).is_some())
        .unwrap_or(whole);
    let parts = parts_of(set, nest, wide / scale.factor(), high / scale.factor());
    if parts.across * parts.down > MOST_PARTS as f64 {
        return (whole, vec![*nest]);
    }
    (scale, cut_up(set, nest, parts))
}

/// Room round the nest for its running dimensions and its datum lines, mm.
struct Around {
    left: f64,
    head: f64,
    foot: f64,
}

impl Around {
    fn of(rows: &Rows) -> Around {
        let room = |side: Side| {
            let words = rows.words(side);
            match words.is_empty() {
                true => 0.0,
                false => FIRST_ROW + running_room(&words) + 1.0,
            }
        };
        Around {
            left: room(Side::Left) + 3.0,
            head: room(Side::Top).max(DATUM_OVER),
            foot: room(Side::Foot).max(DATUM_OVER),
        }
    }
}

/// How many parts a nest is cut into.
#[derive(Clone, Copy)]
struct Parts {
    across: f64,
    down: f64,
}

/// The fewest parts, none larger than this.
fn parts_of(set: &Set<'_>, nest: &PlateBox, wide: f64, high: f64) -> Parts {
    let largest = nest_holes(set)
        .map(|h| h.finish.value().to_mm())
        .fold(0.0, f64::max);
    // A hole belongs to the part that its centre is in, so a part may stand out by half a hole on either side.
    let count = |extent: f64, room: f64| match room > largest {
        true => (extent / (room - largest)).ceil().max(1.0),
        false => f64::INFINITY,
    };
    Parts {
        across: count(nest.width(), wide),
        down: count(nest.height(), high),
    }
}

/// Parts of a nest, each with at least one hole, row by row from the top left.
fn cut_up(set: &Set<'_>, nest: &PlateBox, Parts { across, down }: Parts) -> Vec<PlateBox> {
    let (w, h) = (nest.width() / across, nest.height() / down);
    let mut parts = Vec::new();
    for row in 0..down as usize {
        for column in 0..across as usize {
            let left = nest.left + column as f64 * w;
            let top = nest.top - row as f64 * h;
            let part = PlateBox {
                left,
                top,
                right: left + w,
                bottom: top - h,
            };
            if nest_holes(set).any(|hole| part.holds(hole.at)) {
                parts.push(part);
            }
        }
    }
    parts
}

/// Puts a part of the nest down with its title; tells how far down the title reaches.
fn put_nest(
    board: &mut Board,
    set: &Set<'_>,
    views: &PaperBox,
    scale: Scale,
    part: &PlateBox,
    which: Option<(usize, usize)>,
) -> f64 {
    let mut shown = PlateBox::NONE;
    for hole in nest_holes(set).filter(|h| part.holds(h.at)) {
        shown.take(hole.at, hole.finish.value().to_mm() / 2.0);
    }
    let f = scale.factor();
    let rows = running_rows(set, part);
    let around = Around::of(&rows);
    let high = shown.height() * f;
    let figures = if which.is_none() {
        figures_height(set)
    } else {
        0.0
    };
    let spare = (views.height() - around.head - high - FOOT - around.foot - figures).max(0.0);
    let spare_wide = (views.width() - around.left - shown.width() * f - DATUM_OVER).max(0.0);
    let view = View {
        scale: f,
        centre: at(
            views.left + around.left + spare_wide / 2.0 - shown.left * f,
            views.top + around.head + spare / 3.0 + shown.top * f,
        ),
    };
    let numbers =
        numbers_at(set, scale, READ_AT_ARM).or_else(|| numbers_at(set, scale, LEAST_NUMBER));
    let wanted = Wanted {
        tube_numbers: numbers,
        other_numbers: true,
        edge: false,
        rivets: false,
        signs: false,
    };
    for hole in &set.design.holes {
        let nest = set.design.groups[hole.group].purpose.takes_a_tube();
        if part.holds(hole.at) || (!nest && shown.holds(hole.at)) {
            put_hole(board, &view, set.design, hole, wanted);
        }
    }
    // A pad that reaches out of the nest would stand among its dimensions.
    let within = |pad: &PlacedPad| {
        let mut with_it = shown;
        with_it.take(pad.at(set.design), pad.toe_radius().to_mm() - PAD_OVER / f);
        with_it == shown
    };
    put_pads(board, &view, set.design, within);
    let paper = view.paper_box(&shown);
    let in_view = |place| part.holds(place) || shown.holds(place);
    put_datum_lines(board, &view, &paper);
    // Where a part does not reach the datum, the values still run from it: the line is drawn from the part's side.
    let datum = at(
        view.centre.x.clamp(paper.left - 6.0, paper.right + 6.0),
        view.centre.y.clamp(paper.top - 6.0, paper.bottom + 6.0),
    );
    let whole_x = (datum.x - view.centre.x).abs() < 1e-9;
    let whole_y = (datum.y - view.centre.y).abs() < 1e-9;
    let mut all_fit = true;
    for (side, line_y) in [
        (Side::Top, paper.top - FIRST_ROW),
        (Side::Foot, paper.bottom + FIRST_ROW),
    ] {
        let across = rows.running(&view, side);
        match have_room(&across, paper.width()) {
            true => running_across(board, datum, line_y, if whole_x { f } else { 0.0 }, &across),
            false => all_fit = false,
        }
    }
    let (left, up) = (paper.left - FIRST_ROW, rows.running(&view, Side::Left));
    match have_room(&up, paper.height()) {
        true => running_upwards(board, datum, left, if whole_y { f } else { 0.0 }, &up),
        false => all_fit = false,
    }
    let shown = |hole: &Hole| part.holds(hole.at);
    let ends = Ends {
        shown: &shown,
        reach: &|hole| hole.finish.value().to_mm() / 2.0 * f,
    };
    put_line_names(board, set, &view, &ends);
    let round = PaperBox::new(
        views.left,
        views.top,
        views.right,
        paper.bottom + DATUM_OVER,
    );
    let clouded = put_clouds(board, set, &view, &round, in_view) > 0;
    let mut words = match which {
        Some((i, of)) => format!(
            "SETTING-OUT OF TUBES, PART {i} OF {of}, {}",
            view_words(set.design.view_from)
        ),
        None => format!("SETTING-OUT OF TUBES, {}", view_words(set.design.view_from)),
    };
    let bare = numbers.is_some_and(|(_, bare)| bare);
    if bare {
        words.push_str("; LETTERS OF THE NUMBERS LEFT OUT");
    }
    if let Some(since) = set.design.since.as_ref().filter(|_| clouded) {
        words.push_str(&format!(
            "; CLOUDED: CHANGED SINCE REVISION {}",
            since.revision
        ));
    }
    if numbers.is_none() {
        words.push_str("; NUMBERS GO LINE BY LINE AS THE TABLE SAYS, AND TABLES/HOLES.CSV HAS THE PLACE OF EACH");
    }
    if !all_fit {
        words.push_str("; RUNNING SIZES STAND IN THE MARKING-OUT TABLES");
    }
    let title_y = paper.bottom + around.foot + NOTES + 1.5;
    let lines = wrap(&words, views.width() - BAR, NOTES, true);
    let base = |i: usize| title_y + i as f64 * NOTES * LINE_PITCH;
    for (i, line) in lines.iter().enumerate() {
        board.bold(at(views.left, base(i)), line, NOTES, Hang::Start);
    }
    put_scale_bar(board, at(views.right - BAR + 3.0, title_y), f, set.figures);
    base(lines.len().saturating_sub(1))
}

/// Datum lines A and B across the nest, lettered at their ends.
fn put_datum_lines(board: &mut Board, view: &View, paper: &PaperBox) {
    let c = view.centre;
    if c.x > paper.left && c.x < paper.right {
        board.centre_line(
            at(c.x, paper.top - DATUM_OVER + 1.0),
            at(c.x, paper.bottom + DATUM_OVER - 2.5),
        );
        board.bold(
            at(c.x + 1.2, paper.bottom + DATUM_OVER - 0.2),
            "A",
            FIGURES,
            Hang::Start,
        );
    }
    if c.y > paper.top && c.y < paper.bottom {
        board.centre_line(
            at(paper.left - DATUM_OVER + 1.0, c.y),
            at(paper.right + DATUM_OVER - 1.0, c.y),
        );
        board.bold(
            at(paper.right + DATUM_OVER - 0.5, c.y + FIGURES / 2.0),
            "B",
            FIGURES,
            Hang::Start,
        );
    }
}

/// Running dimensions of every line of the nest, upright lines above it or below, level ones at its left; the lines of one group
/// of holes together. One hand only where the holes stand alike on both.
fn running_rows(set: &Set<'_>, part: &PlateBox) -> Rows {
    let one_hand = part.left < 0.0 && part.right > 0.0 && is_symmetrical(set);
    let of_part: Vec<&Hole> = nest_holes(set).filter(|h| part.holds(h.at)).collect();
    let in_the_way: Vec<PlateBox> = of_part.iter().map(|h| Feature::hole(h).around()).collect();
    let mut rows = Rows::default();
    for group in 0..set.design.groups.len() {
        let holes = || of_part.iter().copied().filter(|h| h.group == group);
        let across = lines(set, holes(), |h| h.at.x, |v| !one_hand || v > 0.0);
        rows.route(&across, &in_the_way, &[Side::Top, Side::Foot]);
        let up = lines(set, holes(), |h| h.at.y, |_| true);
        rows.route(&up, &in_the_way, &[Side::Left]);
    }
    rows
}

fn lines<'a>(
    set: &Set<'_>,
    holes: impl Iterator<Item = &'a Hole>,
    along: impl Fn(&Hole) -> f64,
    wanted: impl Fn(f64) -> bool,
) -> Vec<Line> {
    let mut holes: Vec<&Hole> = holes.collect();
    holes.sort_by(|a, b| along(a).total_cmp(&along(b)));
    let mut lines: Vec<Line> = Vec::new();
    for hole in holes {
        let v = Length::mm(along(hole));
        if v.same_as(Length::ZERO) || !wanted(along(hole)) {
            continue;
        }
        let feature = Feature::hole(hole);
        match lines.last_mut() {
            Some(last) if last.length.same_as(v) => last.features.push(feature),
            Some(_) | None => lines.push(Line {
                length: v,
                words: set.figures.short(v.abs()),
                features: vec![feature],
            }),
        }
    }
    lines
}
