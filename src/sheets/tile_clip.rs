//! The parts of lines and arcs that lie within a tile.

use super::board::{Board, PaperBox};
use super::clear::line_within;
use super::{PaperPoint, Pattern, Pen, Role, at};
use crate::units::angle::{acos, asin, cos, sin};

/// Puts down the part of a line within a box.
pub fn put_line_within(
    board: &mut Board,
    b: &PaperBox,
    from: PaperPoint,
    to: PaperPoint,
    pen: Pen,
    role: Role,
) {
    if let Some((enter, leave)) = line_within(from, to, b) {
        let along = |share: f64| {
            at(
                from.x + (to.x - from.x) * share,
                from.y + (to.y - from.y) * share,
            )
        };
        board.line(along(enter), along(leave), pen, Pattern::Continuous, role);
    }
}

/// Puts down the parts of an arc within a box: start and sweep in degrees, clockwise on paper from x, sweep above nothing.
pub fn put_arc_within(
    board: &mut Board,
    b: &PaperBox,
    centre: PaperPoint,
    radius: f64,
    (start, sweep): (f64, f64),
    pen: Pen,
    role: Role,
) {
    for (from, over) in pieces_within(b, centre, radius, start, sweep) {
        let pattern = Pattern::Continuous;
        if over >= 360.0 {
            board.circle(centre, radius, pen, pattern, role);
        } else {
            board.arc(centre, radius, from, over, pen, pattern, role);
        }
    }
}

/// Start and sweep of every part of an arc within a box: cut where the circle meets a side, kept where its middle lies within.
fn pieces_within(
    b: &PaperBox,
    centre: PaperPoint,
    radius: f64,
    start: f64,
    sweep: f64,
) -> Vec<(f64, f64)> {
    let mut cuts = vec![0.0, sweep];
    let mut cut_at = |deg: f64| {
        let on = (deg - start).rem_euclid(360.0);
        if on < sweep {
            cuts.push(on);
        }
    };
    for x in [b.left, b.right] {
        let share = (x - centre.x) / radius;
        if share.abs() < 1.0 {
            let deg = acos(share).to_degrees();
            cut_at(deg);
            cut_at(-deg);
        }
    }
    for y in [b.top, b.bottom] {
        let share = (y - centre.y) / radius;
        if share.abs() < 1.0 {
            let deg = asin(share).to_degrees();
            cut_at(deg);
            cut_at(180.0 - deg);
        }
    }
    cuts.sort_by(f64::total_cmp);
    cuts.windows(2)
        .filter(|pair| pair[1] > pair[0])
        .map(|pair| (start + pair[0], pair[1] - pair[0]))
        .filter(|&(from, over)| {
            let middle = (from + over / 2.0).to_radians();
            let (x, y) = (
                centre.x + radius * cos(middle),
                centre.y + radius * sin(middle),
            );
            x >= b.left && x <= b.right && y >= b.top && y <= b.bottom
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A circle of 10 about the middle of the left side of a box keeps its right half: from −90° over 180°.
    #[test]
    fn by_hand_half_a_circle() {
        let b = PaperBox::new(0.0, -50.0, 100.0, 50.0);
        let pieces = pieces_within(&b, at(0.0, 0.0), 10.0, 0.0, 360.0);
        let turned: f64 = pieces.iter().map(|p| p.1).sum();
        assert!((turned - 180.0).abs() < 1e-9);
        let whole = pieces_within(&b, at(50.0, 0.0), 10.0, 0.0, 360.0);
        assert_eq!(whole, [(0.0, 360.0)]);
        assert!(pieces_within(&b, at(-50.0, 0.0), 10.0, 0.0, 360.0).is_empty());
    }

    /// Two boxes side by side hold the whole of a circle between them, whatever its place.
    #[test]
    fn holds_neighbouring_tiles_lose_nothing() {
        let (a, b) = (
            PaperBox::new(0.0, 0.0, 50.0, 90.0),
            PaperBox::new(50.0, 0.0, 100.0, 90.0),
        );
        for step in 0..40 {
            let centre = at(30.0 + f64::from(step), 45.0);
            let turned: f64 = [a, b]
                .iter()
                .flat_map(|tile| pieces_within(tile, centre, 20.0, 15.0, 360.0))
                .map(|p| p.1)
                .sum();
            assert!((turned - 360.0).abs() < 1e-9, "{step}");
        }
    }
}
