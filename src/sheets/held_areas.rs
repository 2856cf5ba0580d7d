//! The flat that stays hold, hatched on the figure of the design check: the segment above the tubes, or a piece for each stay.

use super::board::{Board, PaperBox};
use super::hatch::{Lean, hatch};
use super::set::Set;
use super::view::{Stroke, View};
use super::{PaperPoint, Pattern, Pen, Role, at};
use crate::checks::measure::rounded;
use crate::design::{
    AboveTubes, Design, Hole, Piece, Point, Rectangle, StayArea, largest_rectangle,
};
use crate::spec::Units;
use crate::units::angle::{PI, atan2, cos, sin, sqrt};
use crate::units::{SQUARE_MM_PER_SQUARE_INCH, print};

/// From line to line of the hatching, mm: wide, since holes and letters stand within it.
const SPACING: f64 = 3.0;
/// The border of a piece.
const BORDER: Stroke = Stroke {
    pen: Pen::Narrow,
    pattern: Pattern::Dashed,
    role: Role::Centre,
};
/// Chords to a full circle, or to an edge of the flange line.
const CHORDS: u32 = 96;
/// A line whose ends are no further from a side in all lies on it, mm of paper: far under the narrowest pen.
const ON_SIDE: f64 = 1e-6;

/// Hatches the flat that stays hold, and tells what is hatched, a line each; nothing where the design knows of none.
pub fn put_held_areas(board: &mut Board, set: &Set<'_>, view: &View) -> Vec<String> {
    let pieces = pieces(set.design);
    let holes: Vec<Vec<PaperPoint>> = set
        .design
        .holes
        .iter()
        .filter(|hole| is_near(set.design, &pieces, hole))
        .map(|hole| round_hole(view, hole))
        .collect();
    let line = flange_line(set, view);
    for (area, piece) in &pieces {
        let middle = set.design.holes[area.hole].at;
        put_rectangle(board, view, (&holes, line.as_deref()), middle, piece);
    }
    let mut key = carried_words(set, &pieces);
    if let Some(above) = &set.design.above_tubes {
        let shares = set.design.stay_areas.len() > pieces.len() || pieces.is_empty();
        let holes: &[_] = if shares { &holes } else { &[] };
        put_segment(board, view, above, holes, shares);
        let opening = if shares { "HATCHED" } else { "DASHED SEGMENT" };
        key.push(format!(
            "{opening}: FLAT ABOVE THE TUBES, {}, HOLES IN IT NOT TAKEN OFF; STANDING IN IT: {}",
            area_words(set, above.area_mm2),
            names(set, &above.stays),
        ));
    }
    key
}

/// The rectangles that stays carry. Stay tubes stand as close as any tube: their pieces would cover the nest.
fn pieces(design: &Design) -> Vec<(&StayArea, Rectangle)> {
    let takes_a_tube = |area: &&StayArea| {
        let group = design.holes[area.hole].group;
        design.groups[group].purpose.takes_a_tube()
    };
    let areas = design.stay_areas.iter().filter(|area| !takes_a_tube(area));
    areas
        .filter_map(|area| match area.piece {
            Piece::Rectangle(rectangle) => Some((area, rectangle)),
            Piece::Share { .. } => None,
        })
        .collect()
}

/// Whether a hole stands in any of the flat that is hatched.
fn is_near(design: &Design, pieces: &[(&StayArea, Rectangle)], hole: &Hole) -> bool {
    let top = hole.at.y + hole.finish.value().to_mm() / 2.0;
    let above = design.above_tubes.as_ref();
    above.is_some_and(|above| top > above.base.to_mm())
        || pieces.iter().any(|(area, piece)| {
            let from = hole.at - design.holes[area.hole].at;
            from.x.abs() < piece.across.to_mm() / 2.0 && from.y.abs() < piece.up.to_mm() / 2.0
        })
}

/// What a stay of each group carries: the largest piece, by which the group is judged.
fn carried_words(set: &Set<'_>, pieces: &[(&StayArea, Rectangle)]) -> Vec<String> {
    let design = set.design;
    let of_group = |group: usize| {
        let own = pieces.iter().map(|(area, _)| *area);
        largest_rectangle(own.filter(move |area| design.holes[area.hole].group == group))
    };
    let judged = (0..design.groups.len()).filter_map(of_group);
    judged
        .map(|(area, piece)| {
            let taken_off = if piece.holes_mm2 > 0.0 {
                "WHAT OTHER HOLES TAKE OUT TAKEN OFF"
            } else {
                "NO OTHER HOLE IN IT"
            };
            format!(
                "HATCHED IN DASHED RECTANGLES AS FAR AS THE FLANGE LINE: FLAT THAT EACH STAY CARRIES, {} × {}, JUDGED WHOLE; \
                 THE MOST, ABOUT {}, IS {}, {taken_off}",
                set.figures.short(piece.across),
                set.figures.short(piece.up),
                design.holes[area.hole].id,
                area_words(set, area.area_mm2),
            )
        })
        .collect()
}

/// The line along which the flange holds the flat, as a polygon on paper; none where the spec names none.
fn flange_line(set: &Set<'_>, view: &View) -> Option<Vec<PaperPoint>> {
    let named = set.spec.written.support.as_ref()?.flange_line;
    let mut lines = set.design.lines.iter();
    let (_, line) = lines.find(|(name, _)| *name == named)?;
    let places = line
        .edges()
        .iter()
        .flat_map(|edge| (0..CHORDS).map(move |i| edge.at_share(f64::from(i) / f64::from(CHORDS))));
    Some(places.map(|place| view.place(place)).collect())
}

/// An area in the job's unit.
fn area_words(set: &Set<'_>, area_mm2: f64) -> String {
    match set.spec.written.job.units {
        Some(Units::Inches) => format!(
            "{} in²",
            print::decimal(area_mm2 / SQUARE_MM_PER_SQUARE_INCH, 1)
        ),
        Some(Units::Millimetres) | None => format!("{} mm²", rounded(area_mm2, 1)),
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

/// A stay's rectangle, dashed and hatched as far as it lies within the flange line.
fn put_rectangle(
    board: &mut Board,
    view: &View,
    (holes, line): (&[Vec<PaperPoint>], Option<&[PaperPoint]>),
    middle: Point,
    piece: &Rectangle,
) {
    let half = Point::new(piece.across.to_mm() / 2.0, piece.up.to_mm() / 2.0);
    let (low, high) = (view.place(middle - half), view.place(middle + half));
    let rectangle = PaperBox::new(low.x, high.y, high.x, low.y);
    let border = match line {
        Some(line) => clipped(line, &rectangle),
        None => vec![low, at(high.x, low.y), high, at(low.x, high.y)],
    };
    for (i, from) in border.iter().enumerate() {
        let to = border[(i + 1) % border.len()];
        // Where the flange line bounds it, that line is drawn already.
        if is_on_side(*from, to, &rectangle) {
            board.line(*from, to, BORDER.pen, BORDER.pattern, BORDER.role);
        }
    }
    hatch_within(board, &border, holes);
}

/// Whether a line runs along a side of a box.
fn is_on_side(from: PaperPoint, to: PaperPoint, b: &PaperBox) -> bool {
    let along = |one: f64, two: f64, side: f64| (one - side).abs() + (two - side).abs() < ON_SIDE;
    [b.left, b.right].iter().any(|&x| along(from.x, to.x, x))
        || [b.top, b.bottom].iter().any(|&y| along(from.y, to.y, y))
}

/// The part of a polygon that lies in a box: cut along one side after another.
fn clipped(polygon: &[PaperPoint], b: &PaperBox) -> Vec<PaperPoint> {
    let sides: [&dyn Fn(&PaperPoint) -> f64; 4] = [
        &|p| p.x - b.left,
        &|p| b.right - p.x,
        &|p| p.y - b.top,
        &|p| b.bottom - p.y,
    ];
    sides.iter().fold(polygon.to_vec(), |polygon, inside| {
        let mut kept = Vec::new();
        for (i, a) in polygon.iter().enumerate() {
            let b = &polygon[(i + 1) % polygon.len()];
            let (from, to) = (inside(a), inside(b));
            if from >= 0.0 {
                kept.push(*a);
            }
            if (from >= 0.0) != (to >= 0.0) {
                let t = from / (from - to);
                kept.push(at(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t));
            }
        }
        kept
    })
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
