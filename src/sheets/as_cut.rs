//! Sheet: the parts as the contractor cuts them, from the very shapes of the cut files, and what is left uncut and why.

use super::board::{Board, PaperBox};
use super::clear::is_clear;
use super::cut_sizes::{Across, Reads, put_cut_sizes, rows_below};
use super::cut_tables::{blank_sizes, check_sizes, holes_cut, letters_of, not_cut, stamps};
use super::dimension::{ARROW, FIRST_ROW, NEXT_ROW, leader, running_across, running_upwards};
use super::flow::{Block, flow};
use super::letter_size::{FIGURES, LABEL, NOTES, TABLE};
use super::notes::Notes;
use super::pad_detail::circle_of_holes;
use super::pages::continued;
use super::paper_size::is_upright;
use super::particulars::below;
use super::proving_bar::put_scale_bar;
use super::route::{Feature, Line, Rows, Side};
use super::scale::{Scale, largest_scale};
use super::set::Set;
use super::standing_notes::cut_notes;
use super::view::{PlateBox, Stroke, View};
use super::{Hang, PaperPoint, Pattern, Pen, Role, at, face};
use crate::cut::{CutPart, Layer, PartKind, Shape};
use crate::design::{Edge, FlangeDesign, Point};
use crate::spec::{Pad, PadHole, Paper, Purpose};
use crate::units::Length;
use crate::units::angle::{cos, sin};

/// Width of the tables, mm.
const TABLES: f64 = 128.0;
/// Share of the height that the view takes on upright paper.
const VIEWS_ABOVE: f64 = 0.5;
/// Height of the band of a further part, mm.
const BAND: f64 = 38.0;
/// Further parts that find room under the main one.
const MOST_BESIDE: usize = 1;
/// Further parts on a sheet of their own.
const ON_A_SHEET: usize = 3;
/// Room round a part for its dimensions, mm: left, above, right, below.
const AROUND: (f64, f64, f64, f64) = (24.0, 26.0, 46.0, 26.0);
/// The same where pops have their row below, which reads upwards, and the diameter stands above.
const POPS_BELOW: (f64, f64, f64, f64) = (24.0, 17.0, 46.0, 37.0);
/// From the figures of that row, which read upwards, to the title right of them, mm.
const BESIDE_ROW: f64 = 5.0;
/// A usual scale, at which the sides of pops are told before the scale is known.
const NOMINAL: f64 = 0.125;
/// From a stamp to a line that passes it, mm of paper.
const BESIDE_STAMP: f64 = 2.0;
/// Room left of a part alone on its strip, for its height, mm.
const LEFT_ALONE: f64 = 18.0;
/// More pops than this are left to the setting-out.
const FEW_POPS: usize = 6;
/// Millimetres of paper for one of the part from which stamped letters of 10 mm can be read.
const LEGIBLE: f64 = 0.2;
/// From line to line of a title with a stacked fraction in it, as a share of its height.
const STACKED_PITCH: f64 = 2.4;
/// Arm of the cross that a pop is drawn as, mm of paper.
const POP_ARM: f64 = 1.6;

/// Where a part stands.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    /// On the first sheet, large.
    Main,
    /// Under the main one.
    Beside,
    /// On a sheet of small parts.
    Alone,
}

/// Parts as cut; none where nothing is cut.
pub fn as_cut(set: &Set<'_>) -> Vec<Board> {
    let Some((main, further)) = set.parts.split_first() else {
        return Vec::new();
    };
    let (further, more) = further.split_at(further.len().min(MOST_BESIDE));
    let mut board = set.board("cut-parts", "Parts as cut");
    let room = board.room;
    let foot = room.bottom - BAND * further.len() as f64;
    let (view, tables, under) = shares(set, &room, foot, further);
    let scale = put_part(&mut board, set, main, &view, Place::Main);
    board.scale_words = scale.words();
    for (i, part) in further.iter().enumerate() {
        let top = foot + BAND * i as f64;
        let band = PaperBox::new(under.left, top, under.right, top + BAND);
        put_part(&mut board, set, part, &band, Place::Beside);
    }
    let boxes_top = put_blank_boxes(&mut board, &tables);
    let blocks_room = PaperBox::new(tables.left, tables.top, tables.right, boxes_top - 3.0);
    let mut blocks = vec![Block::Table(blank_sizes(set), 0)];
    blocks.extend(holes_cut(set).map(|t| Block::Table(t, 0)));
    blocks.extend(not_cut(set).map(|t| Block::Table(t, 0)));
    blocks.extend(stamps(set).map(|t| Block::Table(t, 0)));
    blocks.extend(check_sizes(set).map(|t| Block::Table(t, 0)));
    blocks.push(Block::Notes(cut_notes(set).at_height(TABLE), 0));
    let blocks = flow(&mut board, &blocks_room, blocks).0;
    let mut boards = vec![board];
    boards.extend(more.chunks(ON_A_SHEET).map(|parts| small_parts(set, parts)));
    continued(
        set,
        boards,
        ("cut-tables", "Parts as cut, tables"),
        2,
        blocks,
    )
}

/// Boxes of the main part, of the tables, and of the band under the main part, which begins at `foot`. The tables run down beside
/// the band where what lies in it is no smaller for that.
fn shares(
    set: &Set<'_>,
    room: &PaperBox,
    foot: f64,
    further: &[CutPart],
) -> (PaperBox, PaperBox, PaperBox) {
    let band = PaperBox { top: foot, ..*room };
    let above = PaperBox {
        bottom: foot,
        ..*room
    };
    if !is_upright(set.paper) {
        let (mut view, tables) = set.shared(room, TABLES, 6.0, VIEWS_ABOVE);
        let narrow = PaperBox {
            right: view.right,
            ..band
        };
        let factor = |part: &CutPart, under: &PaperBox| {
            let under = PaperBox::new(under.left, foot, under.right, foot + BAND);
            scale_of(set, part, &under, Place::Beside).factor()
        };
        let no_smaller = |part| factor(part, &narrow) >= factor(part, &band);
        if further.iter().all(no_smaller) {
            view.bottom = foot;
            return (view, tables, narrow);
        }
    }
    let (view, tables) = set.shared(&above, TABLES, 6.0, VIEWS_ABOVE);
    (view, tables, band)
}

/// Parts on a sheet of their own: on A4 where they are no smaller on it, else on the smallest paper that holds them.
fn small_parts(set: &Set<'_>, parts: &[CutPart]) -> Board {
    let draw = |on: &Set<'_>, bands: usize| {
        let mut small = on.board("cut-small-parts", what_they_are(parts));
        let room = small.room;
        let high = room.height() / bands as f64;
        let mut scales = Vec::new();
        for (i, part) in parts.iter().enumerate() {
            let top = room.top + high * i as f64;
            let band = PaperBox::new(room.left, top, room.right, top + high);
            scales.push(put_part(&mut small, on, part, &band, Place::Alone));
        }
        // Every title tells its own scale; the title block that of the first.
        small.scale_words = scales[0].words();
        (small, scales)
    };
    let (own, scales) = draw(set, ON_A_SHEET);
    let (on_a4, small) = draw(&set.on(Paper::A4), parts.len());
    let mut pairs = small.iter().zip(&scales);
    if on_a4.is_within_room() && pairs.all(|(a4, own)| a4.factor() >= own.factor()) {
        return on_a4;
    }
    own.on_smallest_paper(below(set.findings) > 0)
}

fn what_they_are(parts: &[CutPart]) -> &'static str {
    let any = |kind: PartKind| parts.iter().any(|part| part.kind == kind);
    match (any(PartKind::Pad), any(PartKind::Template)) {
        (true, true) => "Pads and templates as cut",
        (true, false) => "Pads as cut",
        (false, true) => "Templates as cut",
        (false, false) => "Further parts as cut",
    }
}

/// Boxes that the works fills in; tells the y above them.
fn put_blank_boxes(board: &mut Board, tables: &PaperBox) -> f64 {
    let (high, half) = (13.0, tables.width() / 2.0);
    let top = tables.bottom - high;
    let labels = ["HEAT AND PLATE NUMBERS", "ROLLING DIRECTION, AS FOUND"];
    for (i, label) in labels.iter().enumerate() {
        let left = tables.left + half * i as f64;
        board.ruled_box(
            PaperBox::new(left, top, left + half, tables.bottom),
            Pen::Middle,
        );
        let height = super::letter_size::fitting_height(label, half - 2.0, LABEL, false);
        board.text(
            at(left + 1.2, top + LABEL + 1.2),
            label,
            height,
            Hang::Start,
        );
    }
    top
}

/// Box round what is cut of a part.
pub(super) fn cut_box(part: &CutPart) -> PlateBox {
    let mut b = PlateBox::NONE;
    for (_, shape) in part.shapes.iter().filter(|(layer, _)| layer.is_cut()) {
        match shape {
            Shape::Circle { centre, radius } => b.take(*centre, *radius),
            Shape::Closed(outline) => {
                let o = PlateBox::round(outline);
                b.take(Point::new(o.left, o.top), 0.0);
                b.take(Point::new(o.right, o.bottom), 0.0);
            }
            Shape::Line { from, to } => {
                b.take(*from, 0.0);
                b.take(*to, 0.0);
            }
            Shape::Arc { centre, radius, .. } => b.take(*centre, *radius),
            Shape::Dot(p) | Shape::Cross { at: p, .. } => b.take(*p, 0.0),
        }
    }
    b
}

/// What of a pad is not to be seen on its edge: its bore, its holes, and what is said of it.
fn pad_words(set: &Set<'_>, part: &CutPart, pad: &Pad) -> Notes {
    let fig = set.figures;
    let mut words = Vec::new();
    if let Some(bore) = &pad.bore {
        let finish = fig.size_for_cutter(bore);
        words.push(match part.holes_cut.iter().find(|cut| cut.name == "bore") {
            Some(cut) => format!(
                "BORE CUT TO ⌀{}, BORED TO ⌀{finish} AT THE WORKS",
                fig.for_cutter(cut.cut)
            ),
            None => format!("BORE ⌀{finish} AS CUT"),
        });
    }
    words.extend(
        pad.holes
            .iter()
            .map(|holes| pad_hole_words(set, part, holes)),
    );
    words.extend(pad.remarks.as_ref().map(|words| words.to_uppercase()));
    let mut notes = Notes::new(&pad.name.to_uppercase(), words).at_height(TABLE);
    notes.numbered = false;
    notes
}

/// So many holes of a size, what they are for, the circle that they stand on, and what the cutter makes of them.
fn pad_hole_words(set: &Set<'_>, part: &CutPart, holes: &PadHole) -> String {
    let off = match holes.at.len() {
        1 => "1 HOLE".into(),
        n => format!("{n} HOLES"),
    };
    let circle = circle_of_holes(holes, |wide| set.figures.for_cutter(wide));
    let circle = circle.map_or(String::new(), |circle| format!(" ON ⌀{circle}"));
    let cut = part.holes_cut.iter().find(|cut| cut.name == holes.name);
    let is_of = |ids: &[String]| ids.iter().any(|id| id.starts_with(&holes.name));
    let made = match cut {
        Some(cut) => format!("CUT TO ⌀{}", set.figures.for_cutter(cut.cut)),
        None => match part
            .withheld
            .iter()
            .any(|w| w.instead == "a pop" && is_of(&w.ids))
        {
            true => "POPPED".into(),
            false => "NOT MARKED".into(),
        },
    };
    let name = holes.name.to_uppercase();
    let size = set.figures.size_for_cutter(&holes.hole);
    match holes.purpose {
        // The size is that over the threads at the plate's face; nobody is to drill to it.
        Purpose::Plug => {
            format!("{off} FOR {name}{circle}, TAPPED WITH THE PLATE, {size} OVER THREADS: {made}")
        }
        _ => format!("{off} ⌀{size} FOR {name}{circle}: {made}, FINISHED AT THE WORKS"),
    }
}

/// How far right a pad reaches with the words of its diameter, which stand beside it where it is too small for them.
fn right_of_dimension(set: &Set<'_>, pad: &Pad, paper: &PaperBox) -> f64 {
    let words = set.figures.diameter_for_cutter(pad.diameter.value());
    let wide = face::width(&words, FIGURES, false);
    match paper.width() >= wide + 2.0 {
        true => paper.right,
        false => paper.right + ARROW + wide,
    }
}

/// Room kept free about a part for its dimensions, mm: left, above, right, below.
fn around(set: &Set<'_>, part: &CutPart, place: Place) -> (f64, f64, f64, f64) {
    // A second row of sizes below a part goes with one more on its left.
    let rows = NEXT_ROW * (rows_below(part) - 1) as f64;
    match place {
        Place::Main if PopRows::of(set, part, NOMINAL).are_below() => POPS_BELOW,
        Place::Main => (AROUND.0 + rows, AROUND.1, AROUND.2, AROUND.3 + rows),
        Place::Beside => (20.0, 5.0, 4.0, 20.0),
        Place::Alone => (LEFT_ALONE, 5.0, 4.0, 20.0),
    }
}

/// Width and height left for the part itself in a box.
fn room_for(set: &Set<'_>, part: &CutPart, room: &PaperBox, place: Place) -> (f64, f64) {
    let (left, above, right, below) = around(set, part, place);
    (room.width() - left - right, room.height() - above - below)
}

/// The scale at which a part goes into a box.
fn scale_of(set: &Set<'_>, part: &CutPart, room: &PaperBox, place: Place) -> Scale {
    let b = cut_box(part);
    let for_it = room_for(set, part, room, place);
    largest_scale(b.width(), b.height(), for_it, set.figures.in_inches())
}

/// Draws a part within a box, with its outer sizes, its scale and how it lies; tells its scale.
fn put_part(
    board: &mut Board,
    set: &Set<'_>,
    part: &CutPart,
    room: &PaperBox,
    place: Place,
) -> Scale {
    let b = cut_box(part);
    let (left, above, _, _) = around(set, part, place);
    let main = place == Place::Main;
    let for_it = room_for(set, part, room, place);
    let scale = scale_of(set, part, room, place);
    let f = scale.factor();
    // What stands alone keeps to the left, so that small parts go on small paper.
    let spare = match place {
        Place::Main | Place::Beside => (for_it.0 - b.width() * f).max(0.0) / 2.0,
        Place::Alone => 0.0,
    };
    let spare_high = if main {
        (for_it.1 - b.height() * f).max(0.0) / 2.0
    } else {
        0.0
    };
    let view = View {
        scale: f,
        centre: at(
            room.left + left + spare - b.left * f,
            room.top + above + spare_high + b.top * f,
        ),
    };
    for (layer, shape) in &part.shapes {
        put_shape(board, &view, *layer, shape);
    }
    let paper = view.paper_box(&b);
    let pops = PopRows::of(set, part, f);
    if !main && f >= LEGIBLE {
        put_letters(board, part, &view);
    } else if !main {
        put_stamps(board, set, part, &view);
    }
    if main {
        let cross = Stroke::CENTRE;
        for (p, q) in [
            (
                at(paper.left - 3.0, view.centre.y),
                at(paper.right + 3.0, view.centre.y),
            ),
            (
                at(view.centre.x, paper.top - 3.0),
                at(view.centre.x, paper.bottom + 3.0),
            ),
        ] {
            board.line(p, q, cross.pen, cross.pattern, cross.role);
        }
        put_top(board, &view, &paper);
        put_stamps(board, set, part, &view);
        pops.put(board, set, &view, &paper);
        label_ticks(board, part, &view, paper.right);
        label_scribed_circles(board, set, part, &view, paper.right);
    }
    let pad = set
        .spec
        .written
        .pads
        .iter()
        .find(|pad| pad.name == part.name);
    label_quarters(board, set, part, &view, paper.top);
    // After the stamps, since the radii look for room among them.
    let reads = Reads::Sheet(set.figures);
    put_cut_sizes(board, part, &view, reads, pops.leave_the_diameter());
    if let Some(pad) = pad.filter(|_| part.kind == PartKind::Pad) {
        if part.has_top() {
            put_top(board, &view, &paper);
        }
        let left = right_of_dimension(set, pad, &paper) + 8.0;
        let words = PaperBox::new(left, paper.top, room.right, room.bottom);
        pad_words(set, part, pad).put(board, &words, 0);
    }
    let thick = part.thickness.as_ref().map_or(String::new(), |t| {
        format!(" {} THICK,", set.figures.size_for_cutter(t))
    });
    let title = format!(
        "{},{thick} {} OFF, SCALE {}: {}",
        part.name.to_uppercase(),
        part.number_off,
        scale.words(),
        part.lies.replace(" DEGREES", "°")
    );
    let rows = rows_below(part) as f64;
    let y = paper.bottom + FIRST_ROW + NEXT_ROW * (rows - 1.0) + 7.0;
    let (x, hang) = match (place, pops.right_of_row_below(&view)) {
        (Place::Main, Some(right)) => (right, Hang::Start),
        (Place::Main | Place::Beside, _) => (room.middle().x, Hang::Middle),
        (Place::Alone, _) => (room.left, Hang::Start),
    };
    let wide = match hang {
        Hang::Start => room.right - x,
        Hang::Middle | Hang::End => room.width() - 4.0,
    };
    let lines = super::letter_size::wrap(&title, wide, NOTES, true);
    // A stacked fraction reaches further than a letter.
    let pitch = match title.contains('{') {
        true => STACKED_PITCH,
        false => super::letter_size::LINE_PITCH,
    };
    for (i, line) in lines.iter().enumerate() {
        let base = y + i as f64 * NOTES * pitch;
        board.bold(at(x, base), line, NOTES, hang);
    }
    if main {
        let bar_y = (y + 8.0).min(room.bottom - 5.0);
        put_scale_bar(board, at(room.left + 4.0, bar_y), f, set.figures);
    }
    scale
}

pub(super) fn put_shape(board: &mut Board, view: &View, layer: Layer, shape: &Shape) {
    let stroke = match layer {
        Layer::CutOutside | Layer::CutInside => Stroke::SEEN,
        Layer::Scribe => Stroke::ADJACENT,
        Layer::Pop => Stroke {
            pen: Pen::Wide,
            ..Stroke::SEEN
        },
        // Stamped letters are boxed, and the proving square lies beside the part, not on paper.
        Layer::Stamp | Layer::Reference => return,
    };
    match shape {
        Shape::Circle { centre, radius } => view.circle(board, *centre, *radius, stroke),
        // A box or a square is too small for the dashes of a circle.
        Shape::Closed(outline) => {
            let solid = Stroke {
                pattern: Pattern::Continuous,
                ..stroke
            };
            view.outline(board, outline, solid);
        }
        // Wide, or a tick would be lost in the centre line that it marks.
        Shape::Line { from, to } => {
            let solid = Stroke {
                pen: Pen::Wide,
                pattern: Pattern::Continuous,
                ..stroke
            };
            view.line(board, *from, *to, solid);
        }
        Shape::Arc {
            centre,
            radius,
            start,
            end,
        } => {
            let on = |a: f64| Point::new(centre.x + radius * cos(a), centre.y + radius * sin(a));
            let edge = Edge::Arc {
                from: on(*start),
                to: on(*end),
                centre: *centre,
                radius: *radius,
                anticlockwise: true,
            };
            view.edge(board, &edge, stroke);
        }
        Shape::Dot(p) | Shape::Cross { at: p, .. } => put_pop(board, view.place(*p)),
    }
}

/// A pop as a cross that can be seen at any scale, ringed.
fn put_pop(board: &mut Board, c: PaperPoint) {
    let (pen, pattern) = (Pen::Wide, Pattern::Continuous);
    board.line(
        at(c.x - POP_ARM, c.y),
        at(c.x + POP_ARM, c.y),
        pen,
        pattern,
        Role::Object,
    );
    board.line(
        at(c.x, c.y - POP_ARM),
        at(c.x, c.y + POP_ARM),
        pen,
        pattern,
        Role::Object,
    );
}

fn put_top(board: &mut Board, view: &View, paper: &PaperBox) {
    let place = at(view.centre.x + 1.5, paper.top - 1.2);
    board.bold(place, "TOP", TABLE, Hang::Start);
}

/// The ticks on the centre lines, how many there are, at the outermost on the right.
fn label_ticks(board: &mut Board, part: &CutPart, view: &View, right: f64) {
    let stamped = stamped(part);
    let on_axis = |p: &Point| p.x == 0.0 || p.y == 0.0;
    let is_stamped = |p: &Point| {
        let inside =
            |b: &PlateBox| (b.left..=b.right).contains(&p.x) && (b.bottom..=b.top).contains(&p.y);
        stamped.iter().any(inside)
    };
    let ticks: Vec<Point> = part
        .shapes
        .iter()
        .filter_map(|(layer, shape)| match shape {
            Shape::Line { from, to } if *layer == Layer::Scribe => {
                (on_axis(from) && on_axis(to)).then(|| from.midway(*to))
            }
            _ => None,
        })
        .filter(|middle| !is_stamped(middle))
        .collect();
    let Some(outermost) = ticks.iter().max_by(|a, b| a.x.total_cmp(&b.x)) else {
        return;
    };
    let tip = view.place(*outermost);
    let words = vec![
        format!("SCRIBE {} TICKS", ticks.len()),
        "ON THE CENTRE LINES".into(),
    ];
    leader(board, tip, at(right + 4.0, tip.y - 9.0), &words, NOTES);
}

/// The quarters of a ring over their ticks on the strip, each with its distance from the left end.
fn label_quarters(board: &mut Board, set: &Set<'_>, part: &CutPart, view: &View, top: f64) {
    for (name, x) in &part.quarters {
        let figure = set.figures.for_cutter(Length::mm(*x));
        let words = format!("{} {figure}", name.to_uppercase());
        let place = at(view.x(*x), top - 1.6);
        board.text(place, &words, TABLE, Hang::Middle);
    }
}

/// Every scribed circle by what it is and its diameter, one under another right of the part.
fn label_scribed_circles(
    board: &mut Board,
    set: &Set<'_>,
    part: &CutPart,
    view: &View,
    right: f64,
) {
    let mut radii: Vec<f64> = part
        .shapes
        .iter()
        .filter_map(|(layer, shape)| match shape {
            Shape::Circle { radius, .. } if *layer == Layer::Scribe => Some(*radius),
            _ => None,
        })
        .collect();
    radii.sort_by(|a, b| a.total_cmp(b));
    for (i, radius) in radii.iter().enumerate() {
        let angle = (14.0 + 19.0 * i as f64).to_radians();
        let (x, y) = (radius * cos(angle), -radius * sin(angle));
        let tip = view.place(Point::new(x, y));
        let knee = at(right + 4.0, tip.y + 5.0 + 3.0 * i as f64);
        let words = vec![
            format!(
                "SCRIBE {}",
                set.figures.diameter_for_cutter(Length::mm(2.0 * radius))
            ),
            circle_name(set, *radius).to_string(),
        ];
        let words = words
            .into_iter()
            .filter(|w| !w.is_empty())
            .collect::<Vec<_>>();
        leader(board, tip, knee, &words, NOTES);
    }
}

/// What a scribed circle is, from the design that it was made from.
fn circle_name(set: &Set<'_>, radius: f64) -> &'static str {
    let is = |length: Length| Length::mm(radius).same_as(length);
    match &set.design.flange {
        Some(FlangeDesign::Pressed(p)) if is(p.tangent_radius) => "TANGENT OF HEEL",
        Some(FlangeDesign::Pressed(p)) if is(p.blank_mid_line / 2.0) => "NET BLANK, MID LINE",
        Some(FlangeDesign::Pressed(p)) if is(p.blank_equal_area / 2.0) => "NET BLANK, EQUAL AREA",
        Some(FlangeDesign::Fabricated(f)) if is(f.ring_outside_diameter.value() / 2.0) => {
            "OUTSIDE OF RING"
        }
        Some(_) | None => "",
    }
}

/// Few pops, named by the holes they stand for, with running dimensions by the sides where no stamp is in the way.
struct PopRows {
    pops: Vec<Point>,
    rows: Rows,
}

impl PopRows {
    /// None where there are more of them than a row could hold.
    fn of(set: &Set<'_>, part: &CutPart, scale: f64) -> PopRows {
        let mut pops: Vec<Point> = part
            .shapes
            .iter()
            .filter_map(|(layer, shape)| match shape {
                Shape::Dot(p) | Shape::Cross { at: p, .. } if *layer == Layer::Pop => Some(*p),
                _ => None,
            })
            .collect();
        if part.kind != PartKind::Plate || pops.len() > FEW_POPS {
            pops.clear();
        }
        // Under a plate with a foot stand the sizes of the foot.
        let sides = match rows_below(part) {
            1 => &[Side::Top, Side::Foot][..],
            _ => &[Side::Top][..],
        };
        let mut rows = Rows::default();
        let grown = BESIDE_STAMP / scale;
        let in_the_way: Vec<PlateBox> = stamped(part)
            .iter()
            .map(|b| PlateBox {
                left: b.left - grown,
                top: b.top + grown,
                right: b.right + grown,
                bottom: b.bottom - grown,
            })
            .collect();
        rows.route(
            &lines_of_pops(set, &pops, scale, |p| p.x),
            &in_the_way,
            sides,
        );
        let upright = match rows_below(part) {
            1 => Side::Left,
            _ => Side::Right,
        };
        rows.route(
            &lines_of_pops(set, &pops, scale, |p| p.y),
            &in_the_way,
            &[upright],
        );
        PopRows { pops, rows }
    }

    /// Where the diameter of a disc stands: below, unless pops have their row there.
    fn leave_the_diameter(&self) -> Across {
        match self.are_below() {
            true => Across::Above,
            false => Across::Below,
        }
    }

    /// Whether they have a row below the part.
    fn are_below(&self) -> bool {
        !self.rows.row(Side::Foot).is_empty()
    }

    /// Right of the figures of that row on paper, where the title has room; none where there is no row below.
    fn right_of_row_below(&self, view: &View) -> Option<f64> {
        let row = self.rows.running(view, Side::Foot);
        row.iter()
            .map(|value| value.place.x + BESIDE_ROW)
            .reduce(f64::max)
    }

    fn put(&self, board: &mut Board, set: &Set<'_>, view: &View, paper: &PaperBox) {
        for (side, y) in [
            (Side::Top, paper.top - FIRST_ROW),
            (Side::Foot, paper.bottom + FIRST_ROW),
        ] {
            let row = self.rows.running(view, side);
            if !row.is_empty() {
                running_across(board, view.centre, y, view.scale, &row);
            }
        }
        for (side, x) in [
            (Side::Left, paper.left - FIRST_ROW),
            (Side::Right, paper.right + FIRST_ROW),
        ] {
            let row = self.rows.running(view, side);
            if !row.is_empty() {
                running_upwards(board, view.centre, x, view.scale, &row);
            }
        }
        // Named last, so that the names keep clear of the running dimensions and their arrows.
        for pop in &self.pops {
            put_pop_name(board, set, *pop, view.place(*pop));
        }
    }
}

/// One line for each distance of a pop from a datum; both hands of it are one value.
fn lines_of_pops(
    set: &Set<'_>,
    pops: &[Point],
    scale: f64,
    along: impl Fn(Point) -> f64,
) -> Vec<Line> {
    let feature = |p: Point| Feature {
        at: p,
        // The line begins beside the cross as it is drawn.
        half: POP_ARM / scale,
        name: String::new(),
    };
    let mut lines: Vec<Line> = Vec::new();
    for &pop in pops {
        let length = Length::mm(along(pop)).abs();
        if length.same_as(Length::ZERO) {
            continue;
        }
        match lines.iter_mut().find(|l| l.length.same_as(length)) {
            Some(line) => line.features.push(feature(pop)),
            None => lines.push(Line {
                length,
                words: set.figures.for_cutter(length),
                features: vec![feature(pop)],
            }),
        }
    }
    lines
}

/// The hole that a pop stands for, on the slant from it where nothing is in the way.
fn put_pop_name(board: &mut Board, set: &Set<'_>, pop: Point, c: PaperPoint) {
    let hole = set
        .design
        .holes
        .iter()
        .find(|h| Length::mm(h.at.distance(pop)).same_as(Length::ZERO));
    let words = hole.map_or("POP".into(), |h| format!("POP, {}", h.id));
    let wide = face::width(&words, TABLE, false);
    let (right, left) = (c.x + 3.0, c.x - 3.0 - wide);
    let (low, high) = (c.y + TABLE + 2.0, c.y - 2.0);
    let places = [
        at(right, low),
        at(left, low),
        at(right, high),
        at(left, high),
    ];
    let clear = |p: &PaperPoint| {
        let b = PaperBox::new(p.x, p.y - TABLE, p.x + wide, p.y);
        is_clear(board, &b, 0.6)
    };
    let place = places
        .iter()
        .copied()
        .find(|p| clear(p))
        .unwrap_or(places[0]);
    board.text(place, &words, TABLE, Hang::Start);
}

/// Stamped letters stroke by stroke, where the scale lets them be read.
pub(super) fn put_letters(board: &mut Board, part: &CutPart, view: &View) {
    let fine = Stroke {
        pen: Pen::Narrow,
        ..Stroke::SEEN
    };
    for (layer, shape) in &part.shapes {
        if let (Layer::Stamp, Shape::Line { from, to }) = (layer, shape) {
            view.line(board, *from, *to, fine);
        }
    }
}

/// Boxes round what is stamped, mm of plate, to keep lines clear of.
fn stamped(part: &CutPart) -> Vec<PlateBox> {
    part.inscriptions
        .iter()
        .map(|i| PlateBox {
            left: i.low.x,
            top: i.high.y,
            right: i.high.x,
            bottom: i.low.y,
        })
        .collect()
}

/// Places level with a box, further and further from it.
fn further(b: &PaperBox, wide: f64) -> impl Iterator<Item = PaperPoint> {
    let (m, left, right) = (b.middle(), b.left, b.right);
    (0..20).flat_map(move |i| {
        let away = 2.5 + f64::from(i);
        [right + away + wide / 2.0, left - away - wide / 2.0].map(|x| at(x, m.y + NOTES / 2.0))
    })
}

/// A fine box about what is stamped, which would be mush at this scale, and the letter under which the table has its words.
pub(super) fn put_stamps(board: &mut Board, set: &Set<'_>, part: &CutPart, view: &View) {
    let boxes: Vec<PaperBox> = stamped(part).iter().map(|b| view.paper_box(b)).collect();
    for b in &boxes {
        let corners = [
            at(b.left, b.top),
            at(b.right, b.top),
            at(b.right, b.bottom),
            at(b.left, b.bottom),
        ];
        for i in 0..4 {
            let (pen, pattern) = (Pen::Narrow, Pattern::Continuous);
            let (from, to) = (corners[i], corners[(i + 1) % 4]);
            board.line(from, to, pen, pattern, Role::Object);
        }
    }
    // Letters come after every box, so that none is drawn through.
    for (b, letter) in boxes.iter().zip(letters_of(set, part)) {
        let wide = face::width(&letter, NOTES, true);
        let m = b.middle();
        let beside = |gap: f64| {
            [
                at(b.right + gap + wide / 2.0, m.y + NOTES / 2.0),
                at(b.left - gap - wide / 2.0, m.y + NOTES / 2.0),
                at(m.x, b.top - gap),
                at(m.x, b.bottom + gap + NOTES),
                at(b.left + wide / 2.0, b.top - gap),
                at(b.left + wide / 2.0, b.bottom + gap + NOTES),
                at(b.right - wide / 2.0, b.top - gap),
                at(b.right - wide / 2.0, b.bottom + gap + NOTES),
            ]
        };
        // Only these have tails, and the room between two boxes is often just the height of a letter.
        let tail = if letter.contains(['g', 'j', 'p', 'q', 'y']) {
            0.5
        } else {
            0.0
        };
        let found = [1.0, 1.6, 2.2]
            .into_iter()
            .flat_map(beside)
            .chain(further(b, wide))
            .find(|p| {
                let foot = p.y + tail * NOTES;
                let room = PaperBox::new(p.x - wide / 2.0, p.y - NOTES, p.x + wide / 2.0, foot);
                is_clear(board, &room, 0.4)
            });
        let place = found.unwrap_or(at(m.x, b.top - 1.0));
        board.bold(place, &letter, NOTES, Hang::Middle);
    }
}
