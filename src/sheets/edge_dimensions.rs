//! Dimensions of a flat plate's own edge: disc, leg and corners of a keyhole plate, or the disc alone.

use super::board::{Board, PaperBox};
use super::clear::{crosses_lettering, is_clear};
use super::dimension::{FIRST_ROW, Says, across, leader};
use super::letter_size::{FIGURES, LINE_PITCH};
use super::set::Set;
use super::view::View;
use super::{PaperPoint, at, face};
use crate::design::{Edge, Point};
use crate::spec::OutlineSpec;
use crate::units::angle::{atan2, cos, hypot, sin};
use crate::units::tolerance::SAME_LENGTH_MM;

/// Puts down what the face view must say of the edge; nothing for a pressed plate, whose edge is its flange.
/// A leg's width stands below whatever running dimensions take so much room under the view.
pub fn put_edge_dimensions(
    board: &mut Board,
    set: &Set<'_>,
    view: &View,
    paper: &PaperBox,
    foot_row: f64,
) {
    match &set.spec.written.outline {
        Some(OutlineSpec::Keyhole(k)) => {
            let half = k.leg_width.value().to_mm() / 2.0;
            let foot = k.foot.value().to_mm();
            across(
                board,
                view.place(Point::new(-half, foot)),
                view.place(Point::new(half, foot)),
                paper.bottom + foot_row + FIRST_ROW + 4.0,
                Says {
                    words: &set.figures.size_short(&k.leg_width),
                    length: k.leg_width.value(),
                    scale: view.scale,
                },
            );
            let arcs = [
                (
                    k.radius.value().to_mm(),
                    format!("R{}", set.figures.size_short(&k.radius)),
                ),
                (
                    k.corner_radius.value().to_mm(),
                    format!("R{} BOTH SIDES", set.figures.size_short(&k.corner_radius)),
                ),
            ];
            for (radius, words) in arcs {
                put_radius(board, set.design.edge.edges(), view, radius, words);
            }
            if let Some(r) = &k.foot_radius {
                let words = format!("R{} BOTH SIDES", set.figures.size_short(r));
                put_radius(
                    board,
                    set.design.edge.edges(),
                    view,
                    r.value().to_mm(),
                    words,
                );
            }
        }
        Some(OutlineSpec::Round(r)) => {
            let words = format!("⌀{}", set.figures.size_short(&r.diameter));
            let radius = r.diameter.value().to_mm() / 2.0;
            put_radius(board, set.design.edge.edges(), view, radius, words);
        }
        Some(OutlineSpec::Path(_)) => {
            for (radius, words) in radii_of_path(set) {
                put_radius(board, set.design.edge.edges(), view, radius, words);
            }
        }
        None => {}
    }
}

/// Each radius of a free path once.
fn radii_of_path(set: &Set<'_>) -> Vec<(f64, String)> {
    let mut found: Vec<f64> = Vec::new();
    for edge in set.design.edge.edges() {
        if let Edge::Arc { radius, .. } = *edge
            && !found.iter().any(|r| (r - radius).abs() <= SAME_LENGTH_MM)
        {
            found.push(radius);
        }
    }
    found
        .into_iter()
        .map(|r| {
            (
                r,
                format!("R{}", set.figures.short(crate::units::Length::mm(r))),
            )
        })
        .collect()
}

/// A leader to an arc of an edge of this radius, its lettering where nothing stands in the way.
pub(super) fn put_radius(
    board: &mut Board,
    edges: &[Edge],
    view: &View,
    radius: f64,
    words: String,
) {
    let arcs = edges.iter().filter_map(|e| match *e {
        Edge::Arc {
            from,
            to,
            centre,
            radius: r,
            anticlockwise,
        } if (r - radius).abs() <= SAME_LENGTH_MM => Some((from, to, centre, anticlockwise)),
        Edge::Arc { .. } | Edge::Line { .. } => None,
    });
    let (wide, high) = (face::width(&words, FIGURES, false), FIGURES * LINE_PITCH);
    for (from, to, centre, anticlockwise) in arcs {
        for share in [0.5, 0.3, 0.7, 0.15, 0.85] {
            let on = along_arc(from, to, centre, radius, anticlockwise, share);
            let tip = view.place(on);
            for (dx, dy) in [
                (8.0, -8.0),
                (-8.0, -8.0),
                (8.0, 8.0),
                (-8.0, 8.0),
                (14.0, -5.0),
                (-14.0, -5.0),
                (14.0, 5.0),
                (-14.0, 5.0),
            ] {
                let knee = at(tip.x + dx, tip.y + dy);
                if is_clear(board, &lettering_room(knee, dx > 0.0, wide, high), 0.8)
                    && line_is_clear(board, tip, knee)
                    && !crosses_lettering(board, tip, knee)
                {
                    leader(board, tip, knee, &[words], FIGURES);
                    return;
                }
            }
        }
    }
}

fn lettering_room(knee: PaperPoint, to_right: bool, wide: f64, high: f64) -> PaperBox {
    let (near, far) = (0.0, 4.0 + wide);
    let (left, right) = if to_right { (near, far) } else { (-far, -near) };
    PaperBox::new(
        knee.x + left,
        knee.y - high / 2.0,
        knee.x + right,
        knee.y + high / 2.0,
    )
}

/// Whether nothing stands along a leader, its first two millimetres beside the edge left out.
fn line_is_clear(board: &Board, tip: PaperPoint, knee: PaperPoint) -> bool {
    let length = hypot(knee.x - tip.x, knee.y - tip.y);
    (2..=5).all(|i| {
        let t = (f64::from(i) / 5.0).max(2.5 / length);
        let p = at(tip.x + (knee.x - tip.x) * t, tip.y + (knee.y - tip.y) * t);
        is_clear(board, &PaperBox::new(p.x, p.y, p.x, p.y), 0.4)
    })
}

fn along_arc(
    from: Point,
    to: Point,
    centre: Point,
    radius: f64,
    anticlockwise: bool,
    share: f64,
) -> Point {
    let angle = |p: Point| atan2(p.y - centre.y, p.x - centre.x);
    let turn = if anticlockwise {
        angle(to) - angle(from)
    } else {
        angle(from) - angle(to)
    };
    let turn = turn.rem_euclid(std::f64::consts::TAU);
    let a = angle(from) + share * if anticlockwise { turn } else { -turn };
    Point::new(centre.x + radius * cos(a), centre.y + radius * sin(a))
}
