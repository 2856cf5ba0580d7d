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
use crate::units::angle::{PI, atan};
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
        let sweep = 4.0 * atan(bulge);
        let towards = half.left() * ((1.0 - bulge * bulge) / (2.0 * bulge));
        debug_assert!(sweep.abs() <= PI + 1e-9);
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
