//! The flat that stays hold, hatched on the figure of the design check: the segment above the tubes, or a piece for each stay.

use super::board::Board;
use super::hatch::{Lean, hatch};
use super::set::Set;
use super::view::{Stroke, View};
use super::{PaperPoint, Pattern, Pen, Role};
use crate::design::{AboveTubes, Hole, Piece, Point, StayArea};
use crate::spec::Units;
use crate::units::angle::{PI, atan2, cos, sin, sqrt};
use crate::units::{Length, SQUARE_MM_PER_SQUARE_INCH, print};

/// From line to line of the hatching, mm: wide, since holes and letters stand within it.
const SPACING: f64 = 3.0;
/// The border of a piece.
const BORDER: Stroke = Stroke {
    pen: Pen::Narrow,
    pattern: Pattern::Dashed,
    role: Role::Centre,
};
/// Chords to a full circle.
const CHORDS: u32 = 96;

/// Hatches the flat that stays hold, and tells what is hatched, a line each; nothing where the design knows of none.
pub fn put_held_areas(board: &mut Board, set: &Set<'_>, view: &View) -> Vec<String> {
    let design = set.design;
    let pieces: Vec<(&StayArea, (f64, f64))> = design
        .stay_areas
        .iter()
        // Stay tubes stand as close as any tube: their pieces would cover the nest.
        .filter(|area| {
            !design.groups[design.holes[area.hole].group]
                .purpose
                .takes_a_tube()
        })
        .filter_map(|area| match &area.piece {
            Piece::Rectangle { across, up, .. } => Some((area, (across.to_mm(), up.to_mm()))),
            Piece::Share { .. } => None,
        })
        .collect();
    let near = |hole: &&Hole| {
        let top = hole.at.y + hole.finish.value().to_mm() / 2.0;
        let above = design.above_tubes.as_ref();
        above.is_some_and(|above| top > above.base.to_mm())
            || pieces.iter().any(|(area, (across, up))| {
                let middle = design.holes[area.hole].at;
                (hole.at.x - middle.x).abs() < across / 2.0
                    && (hole.at.y - middle.y).abs() < up / 2.0
            })
    };
    let holes: Vec<Vec<PaperPoint>> = design
        .holes
        .iter()
        .filter(near)
        .map(|hole| round_hole(view, hole))
        .collect();
    let mut key = Vec::new();
    for (area, size) in &pieces {
        put_rectangle(board, view, &holes, design.holes[area.hole].at, *size);
    }
    if let Some((area, (across, up))) = pieces.first() {
        key.push(format!(
            "HATCHED IN DASHED RECTANGLES: FLAT THAT EACH STAY CARRIES, {} × {} ABOUT {}, {} LESS HOLES",
            set.figures.short(Length::mm(*across)),
            set.figures.short(Length::mm(*up)),
            design.holes[area.hole].id,
            area_words(set, area.area_mm2),
        ));
    }
    if let Some(above) = &design.above_tubes {
        let shares = design.stay_areas.len() > pieces.len() || pieces.is_empty();
        put_segment(
            board,
            view,
            above,
            if shares { &holes } else { &[] },
            shares,
        );
        let opening = if shares { "HATCHED" } else { "DASHED SEGMENT" };
        key.push(format!(
            "{opening}: FLAT ABOVE THE TUBES, {}, STANDING IN IT: {}",
            area_words(set, above.area_mm2),
            names(set, &above.stays),
        ));
    }
    key
}

/// An area in the job's unit.
fn area_words(set: &Set<'_>, area_mm2: f64) -> String {
    match set.spec.written.job.units {
        Some(Units::Inches) => format!(
            "{} in²",
            print::decimal(area_mm2 / SQUARE_MM_PER_SQUARE_INCH, 1)
        ),
        Some(Units::Millimetres) | None => format!("{} mm²", print::decimal(area_mm2, 0)),
    }
}

fn names(set: &Set<'_>, stays: &[usize]) -> String {
    let ids: Vec<&str> = stays
        .iter()
        .map(|&stay| set.design.holes[stay].id.as_str())
        .collect();
    match ids.len() {
        0 => "NO STAY".into(),
        1..=4 => ids.join(", "),
        count => format!("{count} STAYS, {}–{}", ids[0], ids[count - 1]),
    }
}

/// A hole as a polygon, so that hatching leaves it open.
fn round_hole(view: &View, hole: &Hole) -> Vec<PaperPoint> {
    let radius = hole.finish.value().to_mm() / 2.0;
    (0..CHORDS)
        .map(|i| {
            let a = f64::from(i) / f64::from(CHORDS) * 2.0 * PI;
            view.place(Point::new(
                hole.at.x + radius * cos(a),
                hole.at.y + radius * sin(a),
            ))
        })
        .collect()
}

fn put_rectangle(
    board: &mut Board,
    view: &View,
    holes: &[Vec<PaperPoint>],
    middle: Point,
    (across, up): (f64, f64),
) {
    let corner = |x: f64, y: f64| Point::new(middle.x + x * across / 2.0, middle.y + y * up / 2.0);
    let corners = [
        corner(-1.0, -1.0),
        corner(1.0, -1.0),
        corner(1.0, 1.0),
        corner(-1.0, 1.0),
    ];
    for i in 0..4 {
        view.line(board, corners[i], corners[(i + 1) % 4], BORDER);
    }
    let border: Vec<PaperPoint> = corners.iter().map(|&p| view.place(p)).collect();
    hatch_within(board, &border, holes);
}

/// The segment's chord dashed, and its flat hatched where stays share it.
fn put_segment(
    board: &mut Board,
    view: &View,
    above: &AboveTubes,
    holes: &[Vec<PaperPoint>],
    hatched: bool,
) {
    let (radius, base) = (above.radius.to_mm(), above.base.to_mm());
    if base >= radius || base <= -radius {
        return;
    }
    let half = sqrt(radius * radius - base * base);
    let (left, right) = (Point::new(-half, base), Point::new(half, base));
    view.line(board, left, right, BORDER);
    if !hatched {
        return;
    }
    let (from, to) = (atan2(base, half), PI - atan2(base, half));
    let border: Vec<PaperPoint> = (0..=CHORDS)
        .map(|i| {
            let a = from + (to - from) * f64::from(i) / f64::from(CHORDS);
            view.place(Point::new(radius * cos(a), radius * sin(a)))
        })
        .collect();
    hatch_within(board, &border, holes);
}

/// Hatches inside a border, holes left open; only holes that lie wholly within it are taken out by odd and even, so that one
/// across the border is not hatched outside it.
fn hatch_within(board: &mut Board, border: &[PaperPoint], holes: &[Vec<PaperPoint>]) {
    let inside = |p: &PaperPoint| {
        let mut odd = false;
        for (i, a) in border.iter().enumerate() {
            let b = border[(i + 1) % border.len()];
            if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x) {
                odd = !odd;
            }
        }
        odd
    };
    let mut polygons = vec![border.to_vec()];
    polygons.extend(holes.iter().filter(|hole| hole.iter().all(inside)).cloned());
    hatch(board, &polygons, SPACING, Lean::Right);
}
