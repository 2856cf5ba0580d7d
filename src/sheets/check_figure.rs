//! The figure of the design check: the face small, with the largest circle, its supports and the tightest ligaments marked.

use super::board::{Board, PaperBox};
use super::clear::{crosses_lettering, is_clear};
use super::dimension::arrow;
use super::face_view::{Wanted, put_face};
use super::held_areas::put_held_areas;
use super::letter_size::{LINE_PITCH, NOTES, TABLE, wrap};
use super::particulars::view_words;
use super::scale::{Scale, largest_scale};
use super::set::Set;
use super::view::{PlateBox, View};
use super::{Hang, PaperPoint, Pattern, Pen, Role, at};
use crate::design::{LargestCircle, Ligament, Point, Touch};
use crate::units::Length;
use crate::units::angle::{atan2, cos, hypot, sin};

/// Room for the figure's height, mm.
const HIGH: f64 = 128.0;
/// Room beside it for its letters, mm.
const ASIDE: f64 = 14.0;

/// The narrower of two widths, unless the wider gives the figure a larger scale, mm.
pub fn figure_width(set: &Set<'_>, narrow: f64, wide: f64) -> f64 {
    let gains = scale_within(set, wide).factor() > scale_within(set, narrow).factor();
    if gains { wide } else { narrow }
}

fn scale_within(set: &Set<'_>, width: f64) -> Scale {
    let edge = PlateBox::round(&set.design.edge);
    let space = (width - ASIDE, HIGH);
    largest_scale(edge.width(), edge.height(), space, set.figures.in_inches())
}

/// Puts the figure at the top of a box and tells the y below it.
pub fn put_check_figure(board: &mut Board, set: &Set<'_>, room: &PaperBox) -> f64 {
    let edge = PlateBox::round(&set.design.edge);
    let scale = scale_within(set, room.width());
    let f = scale.factor();
    board.scale_words = scale.words();
    let view = View {
        scale: f,
        centre: at(
            room.middle().x - (edge.left + edge.right) / 2.0 * f,
            room.top + 7.0 + edge.top * f,
        ),
    };
    let wanted = Wanted {
        tube_numbers: None,
        other_numbers: false,
        edge: true,
        rivets: false,
        signs: false,
    };
    put_face(board, &view, set.design, wanted);
    let mut key = Vec::new();
    if let Some(circle) = &set.design.largest_circle {
        put_circle(board, set, &view, circle);
        key.push(format!(
            "THICK CHAIN: LARGEST CIRCLE ON THE SUPPORTS COUNTED, {} AT x {}, y {}; SUPPORTS TOUCHED IN BLACK: {}",
            set.figures.diameter(circle.diameter),
            set.figures.decimal(Length::mm(circle.centre.x)),
            set.figures.decimal(Length::mm(circle.centre.y)),
            touched(set, circle)
        ));
    }
    let paper = view.paper_box(&edge);
    let pairs = tight_pairs(set);
    // What lies across every ligament, so that no letter stands where a later one comes.
    let mut across = board.emptied();
    for pair in &pairs {
        put_across(&mut across, set, &view, pair);
    }
    for (i, pair) in pairs.into_iter().enumerate() {
        let letter = char::from(b'a' + i as u8);
        put_pair(
            board,
            set,
            (&view, paper.bottom + 4.0, &across),
            pair,
            &letter.to_string(),
        );
        let (a, b) = pair.holes;
        key.push(format!(
            "{letter}: {}–{}, METAL {}",
            set.design.holes[a].id,
            set.design.holes[b].id,
            set.figures.table(pair.metal)
        ));
    }
    key.extend(put_held_areas(board, set, &view));
    let mut y = paper.bottom + 6.0 + NOTES;
    let title = format!(
        "SCALE {}, {}",
        scale.words(),
        view_words(set.design.view_from)
    );
    let height = super::letter_size::fitting_height(&title, room.width(), NOTES, true);
    board.bold(at(room.middle().x, y), &title, height, Hang::Middle);
    y += 3.0;
    for words in key {
        let stacked = words.contains('{');
        let pitch = if stacked {
            super::lettering::stacked(TABLE) + 0.1
        } else {
            LINE_PITCH
        };
        for line in wrap(&words, room.width(), TABLE, false) {
            y += TABLE * pitch;
            board.text(at(room.left, y), &line, TABLE, Hang::Start);
        }
        // The lower figures of a fraction hang below the line.
        y += if stacked { 1.6 } else { 0.8 };
    }
    y + 1.5
}

/// The pairs with least metal: one for each direction of a nest, one for each other pair of purposes nearby.
fn tight_pairs<'a>(set: &Set<'a>) -> Vec<&'a Ligament> {
    let mut pairs: Vec<&Ligament> = set.design.directions.iter().map(|d| &d.ligament).collect();
    for least in &set.design.least_ligaments {
        let known = pairs.iter().any(|p| p.holes == least.ligament.holes);
        let (a, b) = least.ligament.holes;
        let larger = set.design.holes[a]
            .finish
            .value()
            .max(set.design.holes[b].finish.value());
        if !known && least.between.0 != least.between.1 && least.ligament.metal < larger {
            pairs.push(&least.ligament);
        }
    }
    pairs.truncate(8);
    pairs
}

fn touched(set: &Set<'_>, circle: &LargestCircle) -> String {
    let names: Vec<String> = circle
        .touches
        .iter()
        .map(|t| match t {
            Touch::Hole(i) => set.design.holes[*i].id.clone(),
            Touch::FlangeLine(_) => "FLANGE LINE".into(),
        })
        .collect();
    names.join(", ")
}

fn put_circle(board: &mut Board, set: &Set<'_>, view: &View, circle: &LargestCircle) {
    let c = view.place(circle.centre);
    let r = circle.diameter.to_mm() / 2.0 * view.scale;
    board.circle(c, r, Pen::Wide, Pattern::Chain, Role::Centre);
    board.state(
        at(c.x - r, c.y),
        at(c.x + r, c.y),
        view.scale,
        circle.diameter,
        "largest circle",
    );
    for touch in &circle.touches {
        let p = match touch {
            Touch::Hole(i) => set.design.holes[*i].at,
            Touch::FlangeLine(p) => *p,
        };
        put_dot(board, view.place(p), 1.1);
    }
}

fn put_dot(board: &mut Board, c: PaperPoint, radius: f64) {
    let corners = (0..16)
        .map(|i| {
            let a = f64::from(i) * std::f64::consts::PI / 8.0;
            at(c.x + radius * cos(a), c.y + radius * sin(a))
        })
        .collect();
    board.filled(corners, Role::Object);
}

/// A thick line across the ligament; tells its middle.
fn put_across(board: &mut Board, set: &Set<'_>, view: &View, pair: &Ligament) -> PaperPoint {
    let hole = |i: usize| {
        (
            set.design.holes[i].at,
            set.design.holes[i].ligament_hole.to_mm() / 2.0,
        )
    };
    let ((a, ra), (b, rb)) = (hole(pair.holes.0), hole(pair.holes.1));
    let apart = hypot(b.x - a.x, b.y - a.y);
    let along = |d: f64| {
        view.place(Point::new(
            a.x + (b.x - a.x) * d / apart,
            a.y + (b.y - a.y) * d / apart,
        ))
    };
    let (from, to) = (along(ra), along(apart - rb));
    board.line(from, to, Pen::Frame, Pattern::Continuous, Role::Object);
    at((from.x + to.x) / 2.0, (from.y + to.y) / 2.0)
}

/// A thick line across the ligament, and a letter on a leader where there is room for it above the floor, where the title stands.
fn put_pair(
    board: &mut Board,
    set: &Set<'_>,
    (view, floor, across): (&View, f64, &Board),
    pair: &Ligament,
    letter: &str,
) {
    let middle = put_across(board, set, view, pair);
    let found = (0..240).find_map(|i| {
        let reach = 6.5 + f64::from(i / 24) * 4.0;
        let turn = f64::from(i % 24) * std::f64::consts::PI / 12.0;
        let p = at(middle.x + reach * cos(turn), middle.y + reach * sin(turn));
        let b = PaperBox::new(p.x - 1.6, p.y - 1.8, p.x + 1.6, p.y + 1.8);
        let clear = is_clear(board, &b, 0.4) && is_clear(across, &b, 0.4);
        (b.bottom < floor && clear && !crosses_lettering(board, middle, p)).then_some(p)
    });
    let Some(p) = found else {
        return;
    };
    let away = atan2(p.y - middle.y, p.x - middle.x);
    let end = at(p.x - 2.2 * cos(away), p.y - 2.2 * sin(away));
    board.dimension_line(middle, end);
    arrow(board, middle, away.to_degrees() + 180.0);
    board.bold(at(p.x, p.y + TABLE / 2.0), letter, TABLE, Hang::Middle);
}
