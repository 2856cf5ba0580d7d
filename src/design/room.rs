//! The room that a nest may fill: lines, limits and keep-outs that every hole of it clears.

use super::{Outline, Point};
use crate::units::tolerance::SAME_LENGTH_MM;

/// What the holes of one nest keep clear of. Exactly at a limit counts as clear of it.
#[derive(Clone, Debug, Default)]
pub(super) struct Room<'a> {
    bounds: Vec<Bound<'a>>,
    obstacles: Vec<Obstacle>,
    top: Option<f64>,
    bottom: Option<f64>,
    half_width: Option<f64>,
}

#[derive(Clone, Debug)]
enum Bound<'a> {
    /// Centres no further than this from the middle of a round line.
    Circle { centre: Point, radius: f64 },
    /// Centres inside the line and no nearer to it than this.
    Within { line: &'a Outline, clear: f64 },
    /// Centres on either side of the line, no nearer to it than this.
    Beside { line: &'a Outline, clear: f64 },
}

#[derive(Clone, Debug)]
enum Obstacle {
    Circle { centre: Point, reach: f64 },
    Box { low: Point, high: Point, reach: f64 },
}

/// The smallest upright box that holds every centre the room admits.
#[derive(Clone, Copy, Debug)]
pub(super) struct Span {
    pub low: Point,
    pub high: Point,
}

impl<'a> Room<'a> {
    /// Centres inside the line, no nearer to it than `clear` mm.
    pub(super) fn keep_within(&mut self, line: &'a Outline, clear: f64) {
        self.bounds.push(match line.as_circle() {
            Some((centre, radius)) => Bound::Circle {
                centre,
                radius: radius - clear,
            },
            None => Bound::Within { line, clear },
        });
    }

    /// Centres on either side of the line, no nearer to it than `clear` mm.
    pub(super) fn keep_beside(&mut self, line: &'a Outline, clear: f64) {
        self.bounds.push(Bound::Beside { line, clear });
    }

    /// Centres no higher, no lower, and no further from the vertical centre line than these, mm.
    pub(super) fn limit(&mut self, top: Option<f64>, bottom: Option<f64>, half_width: Option<f64>) {
        (self.top, self.bottom, self.half_width) = (top, bottom, half_width);
    }

    /// Centres no nearer than `reach` mm to this place.
    pub(super) fn keep_off_circle(&mut self, centre: Point, reach: f64) {
        self.obstacles.push(Obstacle::Circle { centre, reach });
    }

    /// Centres no nearer than `reach` mm to the box between two opposite corners.
    pub(super) fn keep_off_box(&mut self, from: Point, to: Point, reach: f64) {
        self.obstacles.push(Obstacle::Box {
            low: Point::new(from.x.min(to.x), from.y.min(to.y)),
            high: Point::new(from.x.max(to.x), from.y.max(to.y)),
            reach,
        });
    }

    /// Whether a hole may have its centre here.
    pub(super) fn admits(&self, at: Point) -> bool {
        self.top.is_none_or(|top| at.y <= top + SAME_LENGTH_MM)
            && self
                .bottom
                .is_none_or(|bottom| at.y >= bottom - SAME_LENGTH_MM)
            && self
                .half_width
                .is_none_or(|half| at.x.abs() <= half + SAME_LENGTH_MM)
            && self.bounds.iter().all(|bound| bound.admits(at))
            && self.obstacles.iter().all(|obstacle| obstacle.admits(at))
    }

    /// The box outside which no centre is admitted; nothing where no line bounds the room.
    pub(super) fn span(&self) -> Option<Span> {
        let spans = self.bounds.iter().filter_map(Bound::span);
        let lines = spans.reduce(|a, b| Span {
            low: Point::new(a.low.x.max(b.low.x), a.low.y.max(b.low.y)),
            high: Point::new(a.high.x.min(b.high.x), a.high.y.min(b.high.y)),
        })?;
        let half_width = self.half_width.unwrap_or(f64::INFINITY);
        let top = self.top.unwrap_or(f64::INFINITY);
        let bottom = self.bottom.unwrap_or(f64::NEG_INFINITY);
        Some(Span {
            low: Point::new(lines.low.x.max(-half_width), lines.low.y.max(bottom)),
            high: Point::new(lines.high.x.min(half_width), lines.high.y.min(top)),
        })
    }
}

impl Bound<'_> {
    fn admits(&self, at: Point) -> bool {
        match self {
            Bound::Circle { centre, radius } => at.distance(*centre) <= radius + SAME_LENGTH_MM,
            Bound::Within { line, clear } => {
                line.contains(at) && line.distance(at) >= clear - SAME_LENGTH_MM
            }
            Bound::Beside { line, clear } => line.distance(at) >= clear - SAME_LENGTH_MM,
        }
    }

    fn span(&self) -> Option<Span> {
        match self {
            Bound::Circle { centre, radius } => Some(Span {
                low: Point::new(centre.x - radius, centre.y - radius),
                high: Point::new(centre.x + radius, centre.y + radius),
            }),
            Bound::Within { line, clear } => {
                let (low, high) = line.bounds();
                Some(Span {
                    low: Point::new(low.x + clear, low.y + clear),
                    high: Point::new(high.x - clear, high.y - clear),
                })
            }
            Bound::Beside { .. } => None,
        }
    }
}

impl Obstacle {
    fn admits(&self, at: Point) -> bool {
        match self {
            Obstacle::Circle { centre, reach } => at.distance(*centre) >= reach - SAME_LENGTH_MM,
            Obstacle::Box { low, high, reach } => {
                let nearest = Point::new(at.x.clamp(low.x, high.x), at.y.clamp(low.y, high.y));
                at.distance(nearest) >= reach - SAME_LENGTH_MM
            }
        }
    }
}
