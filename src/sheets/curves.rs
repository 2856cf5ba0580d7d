//! Marks as paths: what a writer without arcs draws, and what the audit measures.

use kurbo::{BezPath, Point};

use super::mark::{Mark, PaperPoint};
use crate::units::angle;

impl From<PaperPoint> for Point {
    fn from(place: PaperPoint) -> Self {
        Point::new(place.x, place.y)
    }
}

/// The middle of a mark's line, or the edge of a filled one, mm of paper. Nothing for lettering.
pub fn path_of(mark: &Mark) -> Option<BezPath> {
    match mark {
        Mark::Line { from, to, .. } => Some(line((*from).into(), (*to).into())),
        Mark::Arc {
            centre,
            radius,
            start_deg,
            sweep_deg,
            ..
        } => Some(arc((*centre).into(), *radius, *start_deg, *sweep_deg)),
        Mark::Circle { centre, radius, .. } => Some(circle((*centre).into(), *radius)),
        Mark::Filled { corners, .. } => Some(polygon(corners)),
        Mark::Text(_) => None,
    }
}

/// A straight line.
pub fn line(from: Point, to: Point) -> BezPath {
    let mut line = BezPath::new();
    line.move_to(from);
    line.line_to(to);
    line
}

/// A closed polygon.
pub fn polygon(corners: &[PaperPoint]) -> BezPath {
    let mut polygon = BezPath::new();
    for (i, corner) in corners.iter().enumerate() {
        match i {
            0 => polygon.move_to(*corner),
            _ => polygon.line_to(*corner),
        }
    }
    if !corners.is_empty() {
        polygon.close_path();
    }
    polygon
}

/// A closed circle, from its right-hand quarter clockwise on paper.
pub fn circle(centre: Point, radius: f64) -> BezPath {
    let mut circle = arc(centre, radius, 0.0, 360.0);
    circle.close_path();
    circle
}

/// An arc, clockwise on paper from x: cubics of an eighth of a turn at most, which leave the true arc by 4 millionths of its
/// radius. The library's own arcs take their sines from the machine and so differ in the last digit between machines.
pub fn arc(centre: Point, radius: f64, start_deg: f64, sweep_deg: f64) -> BezPath {
    let pieces = (sweep_deg.abs() / 45.0).ceil().max(1.0);
    let step = (sweep_deg / pieces).to_radians();
    // Length of the handles: 4/3 tan of a quarter of the angle.
    let handle = 4.0 / 3.0 * angle::tan(step / 4.0);
    let at = |radians: f64, along: f64| {
        let (sin, cos) = (angle::sin(radians), angle::cos(radians));
        Point::new(
            centre.x + radius * (cos - along * sin),
            centre.y + radius * (sin + along * cos),
        )
    };
    let start = start_deg.to_radians();
    let mut path = BezPath::new();
    path.move_to(at(start, 0.0));
    for piece in 0..pieces as u32 {
        let a = start + f64::from(piece) * step;
        let b = a + step;
        path.curve_to(at(a, handle), at(b, -handle), at(b, 0.0));
    }
    path
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::{ParamCurve, Shape};

    #[test]
    fn holds_that_every_place_on_a_circle_is_at_its_radius() {
        let circle = circle(Point::ORIGIN, 500.0);
        let worst = circle
            .segments()
            .flat_map(|segment| (0..=50).map(move |t| segment.eval(f64::from(t) / 50.0)))
            .map(|point| (point.to_vec2().hypot() - 500.0).abs())
            .fold(0.0, f64::max);
        // Four millionths of the radius, as promised.
        assert!(worst < 500.0 * 4.3e-6, "{worst}");
        let bounds = circle.bounding_box();
        assert!((bounds.width() - 1000.0).abs() < 1e-9);
    }

    /// Clockwise on paper: a quarter turn from the right goes down, to (0, 10) where y runs down.
    #[test]
    fn by_hand_quarter_turn() {
        let end = arc(Point::ORIGIN, 10.0, 0.0, 90.0)
            .segments()
            .last()
            .unwrap()
            .end();
        assert!(end.x.abs() < 1e-12 && (end.y - 10.0).abs() < 1e-12);
    }
}
