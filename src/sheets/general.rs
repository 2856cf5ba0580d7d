//! Sheet: general arrangement. Face view, section on the vertical centre line, hole schedule, key plan and notes.

use super::board::{Board, PaperBox};
use super::change_rows::change_table;
use super::clear::is_clear;
use super::cloud::put_clouds;
use super::datum_letters::{put_face_datums, put_section_datum};
use super::detail_places::{at_flange, put_places};
use super::dimension::{
    FIRST_ROW, Says, across, across_beside, arrow, leader, running_across, running_room,
    running_upwards, upwards,
};
use super::edge_dimensions::put_edge_dimensions;
use super::face_view::{Wanted, put_face, put_loose_numbers};
use super::flow::{Block, flow, flow_or_close_up};
use super::hole_schedule::hole_schedule;
use super::kept::kept_words;
use super::key_plan::{self, put_key_plan};
use super::letter_size::{FIGURES, LINE_PITCH, NOTES, TABLE, wrap};
use super::pages::continued;
use super::paper_size::is_upright;
use super::part_balloons::{parts_list, put_balloons};
use super::particulars::view_words;
use super::proving_bar::put_scale_bar;
use super::route::{Feature, Line, Rows, Side};
use super::scale::{Scale, largest_scale};
use super::section::{SectionView, flange_is_near, put_section, whole_depth};
use super::set::Set;
use super::side_names::{First, put_side_names};
use super::standing_notes::{CAUTION, departures, general_notes, hold_points};
use super::survey_marks::{put_repairs, put_weld_names};
use super::title_block::revision_table;
use super::view::{PlateBox, View};
use super::{Hang, Pattern, Pen, Role, at, face};
use crate::design::{FlangeDesign, Hole, Point};
use crate::units::Length;
use crate::units::angle::{cos, sin};

/// Least width of the column of tables and notes, mm.
const COLUMN: f64 = 86.0;
/// It grows no wider than this, mm.
const WIDEST_COLUMN: f64 = 125.0;
/// Clear strip between views and column, mm.
const BESIDE_COLUMN: f64 = 5.0;
/// Share of the height that the views take on upright paper.
const VIEWS_ABOVE: f64 = 0.74;
/// Room for the scale bar below the titles there, mm.
const BAR_BELOW: f64 = 13.0;
/// Name and title of the sheets on which the words run over.
const WORDS: (&str, &str) = ("notes", "Notes and schedule");
/// Clear strip between face view and section, mm.
const BETWEEN_VIEWS: f64 = 14.5;
/// Room right of the section for its dimensions, mm.
const SECTION_SIDE: f64 = 13.5;
/// The same where the flange stands away, so that the thickness stands there too, mm.
const SECTION_SIDE_AWAY: f64 = 24.5;
/// How far the letter of a detail may stand from its circle, mm: further off it would be lost among the dimensions.
const DETAIL_LETTERS: f64 = 14.0;
/// Room below the views for titles and the depth of a pressed plate, mm.
const FOOT: f64 = 15.0;
/// Room for the scale bar at the foot of the sheet, where notes stand beside it, mm.
const BESIDE_BAR: f64 = 72.0;
/// Least height in which a note can stand with its title, mm.
const LEAST_UNDER: f64 = 12.0;
/// Room of the titles under running dimensions, mm.
const TITLE: f64 = 7.0;
/// From the circle of the heel's detail to the words above it, mm.
const ABOVE_CIRCLE: f64 = 5.0;
/// The thickness stands so far below the centre line at least, mm of paper.
const CLEAR_OF_CENTRE: f64 = 12.0;
/// Room below a flat plate, whose foot has a dimension of its own, mm.
const FLAT_FOOT: f64 = 20.0;

/// The general arrangement, and a further sheet where its notes run over.
pub fn general(set: &Set<'_>) -> Vec<Board> {
    let mut board = set.board("general", "General arrangement");
    let room = board.room;
    let plan = Plan::of(set, &room);
    let (views, column) = set.shared(&room, plan.column, BESIDE_COLUMN, VIEWS_ABOVE);
    put_views(&mut board, set, &views, &plan);
    let rest = put_column(&mut board, set, &column, lists_parts(set));
    if is_upright(set.paper) {
        let mut words = set.board(WORDS.0, WORDS.1);
        let foot = room.top + key_plan::HEIGHT;
        let plan = PaperBox::new(room.left, room.top, room.right, foot);
        put_key_plan(&mut words, plan, set.design);
        let below = PaperBox { top: foot, ..room };
        let rest = flow(&mut words, &below, rest).0;
        return continued(set, vec![board, words], WORDS, 3, rest);
    }
    let rest = put_under_views(&mut board, &views, rest);
    continued(set, vec![board], WORDS, 3, rest)
}

/// Whether the list of parts stands here: it does where the words of the sheet go down with it, and else it stands beside the map of tests.
pub fn lists_parts(set: &Set<'_>) -> bool {
    // Asked on whichever paper another sheet is tried on: this one goes on the job's own.
    let set = &set.on(set.spec.written.sheets.paper);
    let mut trial = set.board(WORDS.0, WORDS.1);
    let room = trial.room;
    let plan = Plan::of(set, &room);
    let (_, column) = set.shared(&room, plan.column, BESIDE_COLUMN, VIEWS_ABOVE);
    is_upright(set.paper) || put_column(&mut trial, set, &column, true).is_empty()
}

/// The last few notes under the views, beside the scale bar, where that saves a sheet of their own; tells what is still left.
fn put_under_views(board: &mut Board, views: &PaperBox, rest: Vec<Block>) -> Vec<Block> {
    let under = |high: f64| PaperBox {
        left: views.left + BESIDE_BAR,
        top: views.bottom - high,
        ..*views
    };
    let steps = (LEAST_UNDER as u32)..(views.height() as u32);
    let clear = steps.map(|high| under(f64::from(high)));
    let Some(room) = clear.take_while(|b| is_clear(board, b, 2.0)).last() else {
        return rest;
    };
    let mut trial = board.clone();
    if flow(&mut trial, &room, rest.clone()).0.is_empty() {
        *board = trial;
        return Vec::new();
    }
    rest
}

/// Tables, key plan and notes down the right side; tells the blocks that did not fit.
fn put_column(board: &mut Board, set: &Set<'_>, column: &PaperBox, with_parts: bool) -> Vec<Block> {
    let revisions = revision_table(set.spec).widened_to(column.width());
    let foot = column.bottom - revisions.full_height();
    let at_foot = PaperBox::new(column.left, foot, column.right, column.bottom + 0.1);
    revisions.put(board, &at_foot, 0);
    let above = PaperBox::new(column.left, column.top, column.right, foot - 2.0);
    let (schedule, y) = flow(board, &above, vec![Block::Table(hole_schedule(set), 0)]);
    let plan = PaperBox::new(
        column.left,
        y - 1.5,
        column.right,
        y - 1.5 + key_plan::HEIGHT,
    );
    let mut rest = PaperBox::new(column.left, plan.bottom, column.right, foot - 2.0);
    if is_upright(set.paper) {
        // The views take most of an upright sheet: the key plan goes with the words.
        rest = PaperBox::new(column.left, y, column.right, foot - 2.0);
    } else {
        put_key_plan(board, plan, set.design);
    }
    let mut blocks = schedule;
    let parts = parts_list(set, "PARTS, NUMBERED IN CIRCLES").filter(|_| with_parts);
    blocks.extend(parts.map(|table| Block::Table(table, 0)));
    blocks.extend(kept_words(set).map(|words| Block::Caution(words, NOTES)));
    blocks.push(Block::Caution(CAUTION.into(), TABLE));
    if let Some(list) = departures(set) {
        blocks.push(Block::Notes(list.at_height(TABLE), 0));
    }
    blocks.push(Block::Notes(hold_points(set).at_height(TABLE), 0));
    blocks.push(Block::Notes(general_notes(set).at_height(TABLE), 0));
    // Last, since it may be long: what the shop works by stays on this sheet.
    blocks.extend(change_table(set.spec, set.design).map(|table| Block::Table(table, 0)));
    flow_or_close_up(board, &rest, blocks).0
}

/// Room right of the section, mm.
fn section_side(set: &Set<'_>) -> f64 {
    if flange_is_near(set.design) {
        SECTION_SIDE
    } else {
        SECTION_SIDE_AWAY
    }
}

/// How the sheet is shared out between views and column.
struct Plan {
    scale: Scale,
    /// Room that the running dimensions take left of the face view, mm.
    left_side: f64,
    /// And above it.
    head: f64,
    /// Room of the running dimensions below it, nothing where there are none.
    foot_row: f64,
    /// All the room below it.
    foot: f64,
    /// And for the scale bar below that, where it has no corner of its own.
    bar: f64,
    /// Whether values that run together are named.
    names: bool,
    /// Whether values across stand above alone, whatever holes their lines pass.
    one_row: bool,
    /// Width of the column.
    column: f64,
}

impl Plan {
    /// Lines that pass clear of holes and values that are named are worth having, but no smaller drawing of everything.
    fn of(set: &Set<'_>, room: &PaperBox) -> Plan {
        let plan = |scale: Option<f64>, one_row: bool| Plan {
            names: scale.is_some(),
            one_row,
            ..Plan::with(set, room, &running_rows(set, scale, one_row))
        };
        let larger = |one: Plan, than: Plan| match one.scale.factor() > than.scale.factor() {
            true => one,
            false => than,
        };
        let first = larger(plan(None, true), plan(None, false));
        // Which values run together depends on the scale, and what room their names take decides it.
        let named = plan(Some(first.scale.factor()), first.one_row);
        larger(first, named)
    }

    fn with(set: &Set<'_>, room: &PaperBox, rows: &Rows) -> Plan {
        let edge = PlateBox::round(&set.design.edge);
        let wide = edge.width() + whole_depth(set.design);
        let left_side = FIRST_ROW + running_room(&rows.words(Side::Left)) + 2.0;
        let head = FIRST_ROW + running_room(&rows.words(Side::Top));
        let aside = left_side + BETWEEN_VIEWS + section_side(set) + BESIDE_COLUMN;
        let below = rows.words(Side::Foot);
        let foot_row = match below.is_empty() {
            true => 0.0,
            false => FIRST_ROW + running_room(&below),
        };
        let foot = match set.design.flange {
            Some(FlangeDesign::Pressed(_)) => FOOT.max(foot_row + TITLE),
            Some(FlangeDesign::Fabricated(_)) | None => FLAT_FOOT + foot_row,
        };
        let bar = if is_upright(set.paper) {
            BAR_BELOW
        } else {
            0.0
        };
        let (views, words) = set.shared(room, COLUMN, BESIDE_COLUMN, VIEWS_ABOVE);
        let for_plate = (
            views.width() + BESIDE_COLUMN - aside,
            views.height() - head - foot - bar,
        );
        let scale = largest_scale(wide, edge.height(), for_plate, set.figures.in_inches());
        let left_over = room.width() - aside - wide * scale.factor();
        Plan {
            scale,
            left_side,
            head,
            foot_row,
            foot,
            names: false,
            one_row: false,
            bar,
            column: match is_upright(set.paper) {
                true => words.width(),
                false => left_over.clamp(COLUMN, WIDEST_COLUMN),
            },
        }
    }
}

/// Face view and section at one scale, dimensions round them.
fn put_views(board: &mut Board, set: &Set<'_>, views: &PaperBox, plan: &Plan) {
    let edge = PlateBox::round(&set.design.edge);
    let depth = whole_depth(set.design);
    board.scale_words = plan.scale.words();
    let f = plan.scale.factor();
    // What the scale leaves over is shared out, so that no corner stands empty.
    let wide = plan.left_side + BETWEEN_VIEWS + section_side(set) + (edge.width() + depth) * f;
    let spare = (views.width() - wide).max(0.0);
    let spare_high =
        (views.height() - plan.head - plan.foot - plan.bar - edge.height() * f).max(0.0);
    let view = View {
        scale: f,
        centre: at(
            views.left + plan.left_side + spare / 3.0 - edge.left * f,
            views.top + plan.head + spare_high / 2.0 + edge.top * f,
        ),
    };
    put_face(
        board,
        &view,
        set.design,
        Wanted {
            tube_numbers: None,
            other_numbers: true,
            edge: true,
            rivets: true,
            signs: true,
        },
    );
    put_repairs(board, set, &view);
    let paper = view.paper_box(&edge);
    put_cutting_plane(board, &view, &paper);
    let rows = running_rows(set, plan.names.then_some(f), plan.one_row);
    for (side, line_y) in [
        (Side::Top, paper.top - FIRST_ROW),
        (Side::Foot, paper.bottom + FIRST_ROW),
    ] {
        running_across(board, view.centre, line_y, f, &rows.running(&view, side));
    }
    running_upwards(
        board,
        view.centre,
        paper.left - FIRST_ROW,
        f,
        &rows.running(&view, Side::Left),
    );
    put_edge_dimensions(board, set, &view, &paper, plan.foot_row);
    let titles = paper.bottom + plan.foot - 1.0;
    put_face_title(board, set, views, &view, (&paper, titles));
    put_loose_numbers(board, &view, set.design);
    put_weld_names(board, set, &view);
    let round = PaperBox::new(
        views.left,
        views.top,
        paper.right + BETWEEN_VIEWS / 2.0,
        titles - NOTES,
    );
    put_clouds(board, set, &view, &round, |_| true);
    let near = flange_is_near(set.design);
    let start = paper.right + BETWEEN_VIEWS + spare / 3.0;
    let thickness = set.design.thickness.value().to_mm();
    let face_x = if near {
        start + thickness * f
    } else {
        start + depth * f
    };
    let section = SectionView {
        scale: f,
        face_x,
        centre_y: view.centre.y,
        near,
        thickness,
    };
    put_section(
        board,
        &section,
        set.design,
        if f > 0.15 { 2.0 } else { 1.5 },
    );
    dimension_section(board, set, &section, &paper);
    let middle = (section.x(0.0) + section.x(depth)) / 2.0;
    board.bold(at(middle, titles), "SECTION X–X", NOTES, Hang::Middle);
    put_places(board, set, (&view, &section), DETAIL_LETTERS);
    put_balloons(board, set, &view, &section);
    put_face_datums(board, &view, &paper);
    put_section_datum(board, &section, (paper.top, paper.bottom));
    let room = board.room;
    put_side_names(
        board,
        set,
        &section,
        (paper.top, paper.bottom),
        (Some(&room), First::Above),
    );
}

/// Ends of the cutting plane X–X, arrows the way one looks.
fn put_cutting_plane(board: &mut Board, view: &View, paper: &PaperBox) {
    let x = view.centre.x;
    for (y, outwards) in [(paper.top, -1.0), (paper.bottom, 1.0)] {
        let (a, b) = (y + outwards * 4.4, y + outwards * 8.0);
        board.line(at(x, a), at(x, b), Pen::Wide, Pattern::Chain, Role::Centre);
        let level = (a + b) / 2.0;
        board.dimension_line(at(x, level), at(x + 6.0, level));
        arrow(board, at(x + 6.0, level), 0.0);
        board.bold(at(x + 7.5, level + 1.75), "X", 3.5, Hang::Start);
    }
}

fn put_face_title(
    board: &mut Board,
    set: &Set<'_>,
    views: &PaperBox,
    view: &View,
    (paper, titles): (&PaperBox, f64),
) {
    let words = format!("FACE VIEW, {}", view_words(set.design.view_from));
    // Under the middle of the view, or as far left of it as the section's title asks.
    let right = paper.right + BETWEEN_VIEWS / 2.0;
    let lines = wrap(&words, right - views.left, NOTES, true);
    for (i, line) in lines.iter().enumerate() {
        let half = face::width(line, NOTES, true) / 2.0;
        let x = paper.middle().x.min(right - half).max(views.left + half);
        let y = titles + i as f64 * NOTES * LINE_PITCH;
        board.bold(at(x, y), line, NOTES, Hang::Middle);
    }
    put_scale_bar(
        board,
        at(views.left + 3.0, views.bottom - 9.0),
        view.scale,
        set.figures,
    );
}

/// Running dimensions of the face: every hole off the nest and the outermost lines of the nest, and top and foot of a flat plate.
/// Where the scale is known, values that would run together are named. In one row, values across all stand above.
fn running_rows(set: &Set<'_>, scale: Option<f64>, one_row: bool) -> Rows {
    let holes = &set.design.holes;
    let of_nest = |h: &&Hole| set.design.groups[h.group].purpose.takes_a_tube();
    let loose: Vec<Feature> = holes
        .iter()
        .filter(|h| !of_nest(h))
        .map(Feature::hole)
        .collect();
    // A line of the nest is many holes' line, so no one number names it.
    let unnamed = |h: &Hole| Feature {
        name: String::new(),
        ..Feature::hole(h)
    };
    let nest: Vec<Feature> = holes.iter().filter(of_nest).map(unnamed).collect();
    let in_the_way: Vec<PlateBox> = holes.iter().map(|h| Feature::hole(h).around()).collect();
    let across: &[Side] = match one_row {
        true => &[Side::Top],
        false => &[Side::Top, Side::Foot],
    };
    let mut rows = Rows::default();
    for features in [loose.clone(), outermost(&nest, |p| p.x)] {
        let lines = lines(set, features, |p| p.x, true);
        rows.route(&lines, &in_the_way, across);
    }
    for features in [loose, outermost(&nest, |p| p.y), ends_of_edge(set)] {
        let lines = lines(set, features, |p| p.y, false);
        rows.route(&lines, &in_the_way, &[Side::Left]);
    }
    if let Some(scale) = scale {
        rows.name_what_runs_together(scale);
    }
    rows
}

/// Highest and lowest places of a flat plate's edge, the leftmost where there are several; a pressed plate has its flange there.
fn ends_of_edge(set: &Set<'_>) -> Vec<Feature> {
    if matches!(set.design.flange, Some(FlangeDesign::Pressed(_))) {
        return Vec::new();
    }
    let edge = PlateBox::round(&set.design.edge);
    let corner_at = |y: f64| {
        set.design
            .edge
            .edges()
            .iter()
            .map(|e| e.from())
            .filter(|p| Length::mm(p.y).same_as(Length::mm(y)))
            .min_by(|a, b| a.x.total_cmp(&b.x))
            .unwrap_or(Point::new(0.0, y))
    };
    [edge.top, edge.bottom]
        .map(|y| Feature {
            at: corner_at(y),
            half: 0.0,
            name: String::new(),
        })
        .to_vec()
}

/// Those of the features that lie furthest one way and furthest the other.
fn outermost(features: &[Feature], along: impl Fn(Point) -> f64) -> Vec<Feature> {
    let places = || features.iter().map(|f| along(f.at));
    let (Some(low), Some(high)) = (places().reduce(f64::min), places().reduce(f64::max)) else {
        return Vec::new();
    };
    let is = |f: &&Feature, v: f64| Length::mm(along(f.at)).same_as(Length::mm(v));
    features
        .iter()
        .filter(|f| is(f, low) || is(f, high))
        .cloned()
        .collect()
}

/// One line for each distance that occurs; the opposite hand of a distance across is not said twice.
fn lines(
    set: &Set<'_>,
    mut features: Vec<Feature>,
    along: impl Fn(Point) -> f64,
    is_across: bool,
) -> Vec<Line> {
    // The right hand first, so that it is taken where both are as clear.
    features.sort_by(|a, b| along(b.at).total_cmp(&along(a.at)));
    let mut lines: Vec<(f64, Line)> = Vec::new();
    for feature in features {
        let v = along(feature.at);
        let v = if is_across { v.abs() } else { v };
        let length = Length::mm(v).abs();
        if length.same_as(Length::ZERO) {
            continue;
        }
        let said = |(value, _): &&mut (f64, Line)| Length::mm(*value).same_as(Length::mm(v));
        match lines.iter_mut().find(said) {
            Some((_, line)) => line.features.push(feature),
            None => {
                let line = Line {
                    length,
                    words: set.figures.short(length),
                    features: vec![feature],
                };
                lines.push((v, line));
            }
        }
    }
    lines.into_iter().map(|(_, line)| line).collect()
}

/// Depth, thickness, outside diameter and heel or ring on the section.
fn dimension_section(board: &mut Board, set: &Set<'_>, s: &SectionView, paper: &PaperBox) {
    let d = set.design;
    let t = s.thickness;
    let fig = set.figures;
    let says =
        |words: &str, length: Length, board: &mut Board, f: &dyn Fn(&mut Board, Says<'_>)| {
            f(
                board,
                Says {
                    words,
                    length,
                    scale: s.scale,
                },
            );
        };
    // Across the plate where no hole stands, clear of the centre line.
    let y = clear_height(set, s.scale);
    let (a, b) = (s.place(0.0, y), s.place(t, y));
    says(
        &fig.size_short(&d.thickness),
        d.thickness.value(),
        board,
        &|bd, sy| {
            across_beside(bd, a, b, s.near, sy);
        },
    );
    let right = |u: f64| s.x(u);
    match &d.flange {
        Some(FlangeDesign::Pressed(p)) => {
            let outside = p.outside_diameter.value();
            let r = outside.to_mm() / 2.0;
            let depth = p.depth.to_mm();
            let (low, edge) = (s.place(0.0, -p.tangent_radius.to_mm()), s.place(depth, -r));
            says(&fig.short(p.depth), p.depth, board, &|bd, sy| {
                across(bd, low, edge, paper.bottom + FIRST_ROW - 1.0, sy);
            });
            let line_x =
                right(depth).max(right(0.0)) + section_side(set) - SECTION_SIDE + FIRST_ROW;
            let words = fit_words(set, fig.size_short(&p.outside_diameter), r * 2.0 * s.scale);
            says(&words, outside, board, &|bd, sy| {
                upwards(bd, s.place(depth, -r), s.place(depth, r), line_x, sy);
            });
            let heel = p.heel_radius.value().to_mm();
            let lean = std::f64::consts::PI / 3.0;
            let tip = s.place(
                t + heel - heel * cos(lean),
                p.tangent_radius.to_mm() + heel * sin(lean),
            );
            let words = vec![format!("R{} INSIDE", fig.size_short(&p.heel_radius))];
            let limit = right(depth).max(right(0.0)) + section_side(set) + BESIDE_COLUMN - 1.0;
            let end = tip.x + 2.5 + 4.0 + face::width(&words[0], FIGURES, false);
            let aside = if end <= limit { 2.5 } else { -2.5 };
            // Above the circle of the heel's detail, which no words may stand in.
            let circle = at_flange(set, s, 1.0).map_or(paper.top, |(c, radius)| c.y - radius);
            let knee = at(tip.x + aside, (paper.top - 7.0).min(circle - ABOVE_CIRCLE));
            leader(board, tip, knee, &words, FIGURES);
        }
        Some(FlangeDesign::Fabricated(f)) => {
            let r = f.ring_outside_diameter.value().to_mm() / 2.0;
            let width = f.ring_width.value();
            let edge = t + width.to_mm();
            says(&fig.size_short(&f.ring_width), width, board, &|bd, sy| {
                across(
                    bd,
                    s.place(t, -r),
                    s.place(edge, -r),
                    s.place(0.0, -r - f.weld_leg_outside.value().to_mm()).y + FIRST_ROW,
                    sy,
                );
            });
            let line_x = right(edge).max(right(0.0)) + section_side(set) - SECTION_SIDE + FIRST_ROW;
            let diameter = fig.size_short(&f.ring_outside_diameter);
            let words = fit_words(set, diameter, r * 2.0 * s.scale);
            says(&words, f.ring_outside_diameter.value(), board, &|bd, sy| {
                upwards(bd, s.place(edge, -r), s.place(edge, r), line_x, sy);
            });
        }
        None => {}
    }
}

/// Diameter of a flange, and how it is fitted where the line is long enough to say so; the sheets of the flange say it too. One that
/// stands is not fitted.
fn fit_words(set: &Set<'_>, diameter: String, line: f64) -> String {
    let words = format!("⌀{diameter} FIT TO GIRTH OF BORE");
    match !set.design.kept && face::width(&words, FIGURES, false) < line - 2.0 * FIGURES {
        true => words,
        false => format!("⌀{diameter}"),
    }
}

/// A height below the centre line and clear of it where no hole is cut through and no pad lies, for the thickness, mm of plate.
fn clear_height(set: &Set<'_>, scale: f64) -> f64 {
    let design = set.design;
    let open = |y: f64| {
        let in_hole = design.holes.iter().any(|h| {
            let r = h.finish.value().to_mm() / 2.0;
            h.at.x.abs() < r && (h.at.y - y).abs() < r + 1.0
        });
        let on_pad = design.pads.iter().any(|pad| {
            let (at, r) = (pad.at(design), pad.toe_radius().to_mm());
            at.x.abs() < r && (at.y - y).abs() < r + 1.0
        });
        in_hole || on_pad
    };
    let first = CLEAR_OF_CENTRE / scale;
    (0..200)
        .map(|i| -first - f64::from(i) * 2.0)
        .find(|&y| !open(y))
        .unwrap_or(-first)
}
