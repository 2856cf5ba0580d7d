//! Outlines parallel to an outline: the only file that names the crate which offsets lines and arcs.
//!
//! What comes back is measured before it is believed: every corner and the middle of every piece must lie at the distance asked
//! for, and every loop must stand as an [`Outline`]. A panic inside the crate becomes an error.

use std::fmt;
use std::panic::{AssertUnwindSafe, catch_unwind};

use cavalier_contours::polyline::{
    CoincidentSegmentBehavior, PlineOffsetOptions, PlineSource, PlineSourceMut, PlineVertex,
    Polyline, TouchingLoopBehavior,
};

use super::{Edge, Outline, Point};
use crate::units::Length;
use crate::units::tolerance::SAME_LENGTH_MM;

/// The line parallel to an edge could not be found, or was found wrong.
#[derive(Clone, Debug, PartialEq)]
pub struct OffsetFailed {
    /// How far off it was to lie; positive outwards.
    pub by: Length,
}

impl fmt::Display for OffsetFailed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("the line parallel to this edge cannot be worked out")
    }
}

impl std::error::Error for OffsetFailed {}

impl Outline {
    /// The outlines at this distance from the edge: outside it where positive, inside where negative.
    ///
    /// Arcs stay arcs, a circle stays a circle, and a sharp corner going outwards becomes an arc about the corner. A narrow
    /// neck going inwards may leave several outlines, in the order of their lowest left corners; where nothing is that deep
    /// inside there is none.
    pub fn offset(&self, by: Length) -> Result<Vec<Outline>, OffsetFailed> {
        let by_mm = by.to_mm();
        if by_mm.abs() <= SAME_LENGTH_MM {
            return Ok(vec![self.clone()]);
        }
        if let Some((centre, radius)) = self.as_circle() {
            let radius = radius + by_mm;
            let left = (radius > SAME_LENGTH_MM).then(|| Outline::circle(centre, radius));
            return Ok(left.into_iter().collect());
        }
        let failed = OffsetFailed { by };
        let polylines = parallel_polylines(&self.to_polyline(), by_mm).ok_or(failed.clone())?;
        let mut outlines = Vec::new();
        for polyline in &polylines {
            let outline = self.outline_from(polyline, by_mm);
            outlines.extend(outline.map_err(|_| failed.clone())?);
        }
        outlines.sort_by(|a, b| {
            let (a, b) = (a.bounds().0, b.bounds().0);
            a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y))
        });
        Ok(outlines)
    }

    fn to_polyline(&self) -> Polyline<f64> {
        let mut polyline = Polyline::new_closed();
        for edge in self.edges() {
            // The crate wants |bulge| ≤ 1 and does not look; half a turn can round to a hair above.
            let bulge = edge.bulge().clamp(-1.0, 1.0);
            polyline.add(edge.from().x, edge.from().y, bulge);
        }
        polyline
    }

    /// The outline that a parallel polyline stands for; none where it has shrunk to nothing.
    fn outline_from(&self, polyline: &Polyline<f64>, by_mm: f64) -> Result<Option<Outline>, ()> {
        let vertices = distinct_vertices(polyline);
        if vertices.len() < 2 {
            return Ok(None);
        }
        let circles = self.parallel_circles(by_mm);
        let nexts = vertices.iter().cycle().skip(1);
        let edges = vertices.iter().zip(nexts).map(|(v, next)| {
            let (from, to) = (Point::new(v.x, v.y), Point::new(next.x, next.y));
            edge_by_bulge(from, to, v.bulge, &circles)
        });
        let outline = Outline::new(edges.collect()).map_err(|_| ())?;
        if self.lies_at(&outline, by_mm) {
            Ok(Some(outline))
        } else {
            Err(())
        }
    }

    /// Every circle that a parallel line can have an arc of: about the centre of an arc, or about a corner.
    fn parallel_circles(&self, by_mm: f64) -> Vec<(Point, f64)> {
        let about_arcs = self.edges().iter().filter_map(|e| match *e {
            Edge::Line { .. } => None,
            Edge::Arc {
                centre,
                radius,
                anticlockwise,
                ..
            } => Some((
                centre,
                if anticlockwise {
                    radius + by_mm
                } else {
                    radius - by_mm
                },
            )),
        });
        let about_corners = self.edges().iter().map(|e| (e.from(), by_mm.abs()));
        about_arcs.chain(about_corners).collect()
    }

    /// Whether a line lies all along at this distance from the outline, on the right side of it.
    fn lies_at(&self, line: &Outline, by_mm: f64) -> bool {
        line.edges()
            .iter()
            .flat_map(|e| [e.from(), e.midpoint()])
            .all(|place| {
                (self.distance(place) - by_mm.abs()).abs() <= SAME_LENGTH_MM
                    && self.contains(place) == (by_mm < 0.0)
            })
    }
}

fn parallel_polylines(polyline: &Polyline<f64>, by_mm: f64) -> Option<Vec<Polyline<f64>>> {
    let options = PlineOffsetOptions {
        // At exactly half the width of a neck the two sides meet: what is wanted is the two chambers, without the line of no
        // width that joins them.
        touching_loop_behavior: TouchingLoopBehavior::Separate,
        coincident_segment_behavior: CoincidentSegmentBehavior::Discard,
        ..PlineOffsetOptions::default()
    };
    // The crate counts left of the walk as positive, and an outline is walked anticlockwise.
    catch_unwind(AssertUnwindSafe(|| {
        polyline.parallel_offset_opt(-by_mm, &options)
    }))
    .ok()
}

fn distinct_vertices(polyline: &Polyline<f64>) -> Vec<PlineVertex<f64>> {
    let mut kept: Vec<PlineVertex<f64>> = Vec::new();
    let apart = |a: &PlineVertex<f64>, b: &PlineVertex<f64>| {
        Point::new(a.x, a.y).distance(Point::new(b.x, b.y)) > SAME_LENGTH_MM
    };
    for vertex in polyline.iter_vertexes() {
        match kept.last_mut() {
            // The piece between the two has no length; the one that leads on is the later.
            Some(last) if !apart(last, &vertex) => last.bulge = vertex.bulge,
            _ => kept.push(vertex),
        }
    }
    if kept.len() > 1 && !apart(&kept[0], &kept[kept.len() - 1]) {
        kept.pop();
    }
    kept
}

/// A bulge says where an arc's centre is less exactly the flatter the arc is, so the true circle is taken where there is one.
fn edge_by_bulge(from: Point, to: Point, bulge: f64, circles: &[(Point, f64)]) -> Edge {
    let half = to.midway(from) - from;
    let rise = half.left() * -bulge;
    if rise.radius() <= SAME_LENGTH_MM / 10.0 {
        return Edge::Line { from, to };
    }
    let middle = from + half + rise;
    let on = |(centre, radius): &&(Point, f64)| {
        [from, middle, to]
            .iter()
            .all(|p| (p.distance(*centre) - radius).abs() <= SAME_LENGTH_MM)
    };
    let (centre, radius) = circles.iter().find(on).copied().unwrap_or_else(|| {
        let towards = half.left() * ((1.0 - bulge * bulge) / (2.0 * bulge));
        let centre = from + half + towards;
        (centre, centre.distance(from))
    });
    Edge::Arc {
        from,
        to,
        centre,
        radius,
        anticlockwise: bulge > 0.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::angle::PI;

    fn polygon(corners: &[(f64, f64)]) -> Outline {
        let at = |i: usize| Point::new(corners[i % corners.len()].0, corners[i % corners.len()].1);
        let edges = (0..corners.len()).map(|i| Edge::Line {
            from: at(i),
            to: at(i + 1),
        });
        Outline::new(edges.collect()).unwrap()
    }

    /// Two rooms 200 × 200 joined by a neck 300 long and 80 wide.
    fn two_rooms() -> Outline {
        polygon(&[
            (-350.0, -100.0),
            (-150.0, -100.0),
            (-150.0, -40.0),
            (150.0, -40.0),
            (150.0, -100.0),
            (350.0, -100.0),
            (350.0, 100.0),
            (150.0, 100.0),
            (150.0, 40.0),
            (-150.0, 40.0),
            (-150.0, 100.0),
            (-350.0, 100.0),
        ])
    }

    /// Rectangle 30 × 20 outwards by 5: the rectangle, four strips and four quarters of a disc: 600 + 500 + 25 π. Inwards by 5:
    /// 20 × 10. Inwards by 10, exactly half its width, and more: nothing.
    #[test]
    fn by_hand_rectangle() {
        let plate = polygon(&[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)]);
        let out = plate.offset(Length::mm(5.0)).unwrap();
        assert!((out[0].area_mm2() - (1100.0 + 25.0 * PI)).abs() < 1e-9 && out.len() == 1);
        let inwards = plate.offset(Length::mm(-5.0)).unwrap();
        assert!((inwards[0].area_mm2() - 200.0).abs() < 1e-9 && inwards.len() == 1);
        assert_eq!(plate.offset(Length::mm(-10.0)).unwrap(), []);
        assert_eq!(plate.offset(Length::mm(-11.0)).unwrap(), []);
    }

    /// A disc stays one circle: radius 100 by 8 outwards, 100 inwards, 101 inwards.
    #[test]
    fn by_hand_circle() {
        let disc = Outline::circle(Point::new(1.0, 2.0), 100.0);
        let out = disc.offset(Length::mm(8.0)).unwrap();
        assert_eq!(out[0].as_circle(), Some((Point::new(1.0, 2.0), 108.0)));
        assert_eq!(disc.offset(Length::mm(-100.0)).unwrap(), []);
        assert_eq!(disc.offset(Length::mm(-101.0)).unwrap(), []);
    }

    /// A hair less than half the neck's width inwards leaves one outline, half of it or more leaves the two rooms, each
    /// 200 − 2 × 40 square or, at the neck's mouth, wider by what the corner lets through.
    #[test]
    fn by_hand_neck() {
        let rooms = |by: f64| two_rooms().offset(Length::mm(-by)).unwrap();
        assert_eq!(rooms(39.9999).len(), 1);
        for by in [40.0, 41.0] {
            let found = rooms(by);
            assert_eq!(found.len(), 2, "{by}");
            assert!(found[0].bounds().0.x < found[1].bounds().0.x);
            for room in &found {
                assert!(room.area_mm2() >= (200.0 - 2.0 * by) * (200.0 - 2.0 * by) - 1e-6);
            }
        }
    }

    /// Inwards by 20, the hollow corner of 60 becomes 80 about the same centre, and the disc of 470 becomes 450.
    #[test]
    fn by_hand_arcs_keep_their_centres() {
        let plate = Outline::keyhole(470.0, 720.0, -690.0, 60.0, None).unwrap();
        let inwards = plate.offset(Length::mm(-20.0)).unwrap();
        let radii: Vec<f64> = inwards[0]
            .edges()
            .iter()
            .filter_map(|e| match e {
                Edge::Arc { radius, .. } => Some(*radius),
                Edge::Line { .. } => None,
            })
            .collect();
        assert!(radii.iter().all(|&r| r == 80.0 || r == 450.0), "{radii:?}");
        assert!(radii.contains(&80.0) && radii.contains(&450.0));
    }
}
