//! Sheet: setting-out of the nest. Every hole with its number in it, running dimensions of its lines, tables and counts.

use super::board::{Board, PaperBox};
use super::dimension::{
    FIRST_ROW, Running, have_room, running_across, running_room, running_upwards,
};
use super::face_view::{Wanted, in_nest, number_height, number_words, put_hole};
use super::flow::{Block, flow, flow_in_columns};
use super::letter_size::{FIGURES, LINE_PITCH, NOTES, TABLE, wrap};
use super::ligament_figures::{figures_height, put_ligament_figures};
use super::nest_tables::{count_box, line_table, metal_table};
use super::particulars::view_words;
use super::proving_bar::put_scale_bar;
use super::scale::{Scale, larger_scales, largest_scale};
use super::set::Set;
use super::standing_notes::{is_symmetrical, nest_notes};
use super::view::{PlateBox, View};
use super::{Hang, at};
use crate::design::Hole;
use crate::units::Length;

/// Width of the tables beside the view, mm.
const TABLES: f64 = 140.0;
/// Room below the view for its title and scale bar, mm.
const FOOT: f64 = 12.0;
/// Width kept for the scale bar, mm.
const BAR: f64 = 74.0;
/// A nest is cut up over so many sheets at most so that its numbers can be read; one that takes more is drawn whole without them.
const MOST_PARTS: usize = 12;
/// How far datum lines run past the nest, mm.
const DATUM_OVER: f64 = 7.0;

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
        let column = PaperBox::new(room.right - TABLES, room.top, room.right, room.bottom);
        let views = PaperBox::new(room.left, room.top, column.left - 6.0, room.bottom);
        let part = (tiles.len() > 1).then_some((i + 1, tiles.len()));
        put_nest(&mut board, set, &views, scale, tile, part);
        blocks = flow(&mut board, &column, blocks).0;
        boards.push(board.clone());
    }
    while !blocks.is_empty() && boards.len() < 20 {
        let mut more = set.board("setting-out-tables", "Setting-out tables");
        let room = more.room;
        blocks = flow_in_columns(&mut more, &room, 2, 8.0, blocks);
        boards.push(more);
    }
    boards
}

fn tables(set: &Set<'_>) -> Vec<Block> {
    let mut blocks = vec![Block::Caution(count_box(set), 4.0)];
    blocks.extend(line_table(set).map(|t| Block::Table(t, 0)));
    blocks.extend(metal_table(set).map(|t| Block::Table(t, 0)));
    blocks.push(Block::Notes(nest_notes(), 0));
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
        .filter(|h| in_nest(design.groups[h.group].purpose))
}

/// Height at which every number of the nest can be read inside its hole at a scale, and whether they must stand without
/// their letter for it; none where even that does not do.
fn numbers_at(set: &Set<'_>, scale: Scale) -> Option<(f64, bool)> {
    let least = |bare: bool| {
        nest_holes(set).try_fold(f64::INFINITY, |least: f64, h| {
            let radius = h.finish.value().to_mm() / 2.0 * scale.factor();
            Some(least.min(number_height(number_words(&h.id, bare), radius)?))
        })
    };
    least(false)
        .map(|h| (h, false))
        .or_else(|| least(true).map(|h| (h, true)))
}

/// The scale, and the parts of the nest that go on a sheet each: one, unless its numbers would be too small to read.
fn plan(set: &Set<'_>, nest: &PlateBox, room: &PaperBox) -> (Scale, Vec<PlateBox>) {
    let left_side = FIRST_ROW + running_room(&heights(set, None, nest)) + 4.0;
    let head = FIRST_ROW + running_room(&offsets(set, None, nest)) + 1.0;
    let wide = room.width() - TABLES - 6.0 - left_side - DATUM_OVER;
    let high = room.height() - head - FOOT - DATUM_OVER;
    let inches = set.figures.in_inches();
    let whole = largest_scale(nest.width(), nest.height(), (wide, high), inches);
    if numbers_at(set, whole).is_some() {
        return (whole, vec![*nest]);
    }
    let scale = larger_scales(whole, inches)
        .into_iter()
        .find(|&s| numbers_at(set, s).is_some())
        .unwrap_or(whole);
    let parts = parts_of(set, nest, wide / scale.factor(), high / scale.factor());
    if parts.across * parts.down > MOST_PARTS as f64 {
        return (whole, vec![*nest]);
    }
    (scale, cut_up(set, nest, parts))
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

fn put_nest(
    board: &mut Board,
    set: &Set<'_>,
    views: &PaperBox,
    scale: Scale,
    part: &PlateBox,
    which: Option<(usize, usize)>,
) {
    let mut shown = PlateBox::NONE;
    for hole in nest_holes(set).filter(|h| part.holds(h.at)) {
        shown.take(hole.at, hole.finish.value().to_mm() / 2.0);
    }
    let f = scale.factor();
    let left_side = FIRST_ROW + running_room(&heights(set, None, part)) + 4.0;
    let head = FIRST_ROW + running_room(&offsets(set, None, part)) + 1.0;
    let high = shown.height() * f;
    let figures = if which.is_none() {
        figures_height(set)
    } else {
        0.0
    };
    let spare = (views.height() - head - high - FOOT - DATUM_OVER - figures).max(0.0);
    let spare_wide = (views.width() - left_side - shown.width() * f - DATUM_OVER).max(0.0);
    let view = View {
        scale: f,
        centre: at(
            views.left + left_side + spare_wide / 2.0 - shown.left * f,
            views.top + head + spare / 3.0 + shown.top * f,
        ),
    };
    let numbers = numbers_at(set, scale);
    let wanted = Wanted {
        tube_numbers: numbers,
        other_numbers: true,
        edge: false,
        rivets: false,
        signs: false,
    };
    for hole in &set.design.holes {
        let nest = in_nest(set.design.groups[hole.group].purpose);
        if part.holds(hole.at) || (!nest && shown.holds(hole.at)) {
            put_hole(board, &view, set.design, hole, wanted);
        }
    }
    let paper = view.paper_box(&shown);
    put_datum_lines(board, &view, &paper);
    // Where a part does not reach the datum, the values still run from it: the line is drawn from the part's side.
    let datum = at(
        view.centre.x.clamp(paper.left - 6.0, paper.right + 6.0),
        view.centre.y.clamp(paper.top - 6.0, paper.bottom + 6.0),
    );
    let whole_x = (datum.x - view.centre.x).abs() < 1e-9;
    let whole_y = (datum.y - view.centre.y).abs() < 1e-9;
    let (top, left) = (paper.top - FIRST_ROW, paper.left - FIRST_ROW);
    let (across, up) = (
        offsets(set, Some(&view), part),
        heights(set, Some(&view), part),
    );
    let (fits_across, fits_up) = (
        have_room(&across, paper.width()),
        have_room(&up, paper.height()),
    );
    if fits_across {
        running_across(board, datum, top, if whole_x { f } else { 0.0 }, &across);
    }
    if fits_up {
        running_upwards(board, datum, left, if whole_y { f } else { 0.0 }, &up);
    }
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
    if numbers.is_none() {
        words.push_str("; NUMBERS GO LINE BY LINE AS THE TABLE SAYS, AND TABLES/HOLES.CSV HAS THE PLACE OF EACH");
    }
    if !(fits_across && fits_up) {
        words.push_str("; RUNNING SIZES STAND IN THE MARKING-OUT TABLES");
    }
    let title_y = paper.bottom + DATUM_OVER + NOTES + 1.5;
    let lines = wrap(&words, views.width() - BAR, NOTES, true);
    let base = |i: usize| title_y + i as f64 * NOTES * LINE_PITCH;
    for (i, line) in lines.iter().enumerate() {
        board.bold(at(views.left, base(i)), line, NOTES, Hang::Start);
    }
    put_scale_bar(board, at(views.right - BAR + 3.0, title_y), f, set.figures);
    if which.is_none() {
        let below = base(lines.len().saturating_sub(1)) + 3.0;
        let room = PaperBox::new(views.left, below, views.right, views.bottom);
        put_ligament_figures(board, set, &room);
    }
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
            at(c.x + 1.2, paper.bottom + DATUM_OVER - 2.5),
            "A",
            TABLE,
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

/// Distances of every upright line of holes from datum A; one hand only where the holes stand alike on both.
fn offsets(set: &Set<'_>, view: Option<&View>, part: &PlateBox) -> Vec<Running> {
    let spans_datum = part.left < 0.0 && part.right > 0.0;
    let one_hand = spans_datum && is_symmetrical(set);
    lines(set, view, part, |h| h.at.x, |v| !one_hand || v > 0.0, true)
}

/// Heights of every level line of holes from datum B.
fn heights(set: &Set<'_>, view: Option<&View>, part: &PlateBox) -> Vec<Running> {
    lines(set, view, part, |h| h.at.y, |_| true, false)
}

fn lines(
    set: &Set<'_>,
    view: Option<&View>,
    part: &PlateBox,
    along: impl Fn(&Hole) -> f64,
    wanted: impl Fn(f64) -> bool,
    is_across: bool,
) -> Vec<Running> {
    let mut holes: Vec<&Hole> = nest_holes(set).filter(|h| part.holds(h.at)).collect();
    holes.sort_by(|a, b| {
        along(a).total_cmp(&along(b)).then(if is_across {
            b.at.y.total_cmp(&a.at.y)
        } else {
            a.at.x.total_cmp(&b.at.x)
        })
    });
    let mut values: Vec<Running> = Vec::new();
    for hole in holes {
        let v = Length::mm(along(hole));
        let said = values.last().is_some_and(|last| last.length.same_as(v));
        if said || v.same_as(Length::ZERO) || !wanted(along(hole)) {
            continue;
        }
        let r = hole.finish.value().to_mm() / 2.0;
        let place = view.map_or(at(0.0, 0.0), |view| {
            let c = view.place(hole.at);
            if is_across {
                at(c.x, c.y - r * view.scale)
            } else {
                at(c.x - r * view.scale, c.y)
            }
        });
        values.push(Running {
            place,
            words: set.figures.short(v.abs()),
            length: v,
        });
    }
    values
}
