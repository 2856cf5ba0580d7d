//! The true box of a line of lettering on paper: turned as it is turned.

use kurbo::{Affine, BezPath, ParamCurve, PathSeg, Point, Rect, Vec2};

use super::lettering;
use super::mark::Text;

/// The box round a line of lettering. Its own axes run along the base line and down from it, mm.
#[derive(Clone, Debug)]
pub struct LetteringBox {
    /// From its own axes to the paper; a turn and a shift, no scale.
    place: Affine,
    /// In its own axes.
    own: Rect,
}

impl LetteringBox {
    /// The box of this lettering as it is drawn.
    pub fn of(text: &Text) -> Self {
        let laid = lettering::lay(text);
        let h = text.height;
        LetteringBox {
            place: lettering::placing(text, laid.width) * Affine::scale(1.0 / h),
            own: Rect::new(0.0, -laid.above * h, laid.width * h, laid.below * h),
        }
    }

    /// Its corners on paper, in order round it.
    pub fn corners(&self) -> [Point; 4] {
        let Rect { x0, y0, x1, y1 } = self.own;
        [(x0, y0), (x1, y0), (x1, y1), (x0, y1)].map(|corner| self.place * Point::from(corner))
    }

    /// Its middle on paper.
    pub fn middle(&self) -> Point {
        self.place * self.own.center()
    }

    /// The upright rectangle that holds it.
    pub fn upright(&self) -> Rect {
        let [a, b, c, d] = self.corners();
        Rect::from_points(a, c).union(Rect::from_points(b, d))
    }

    /// Whether the two share more than so many mm: no line along a side of either parts them.
    pub fn overlaps(&self, other: &LetteringBox, shared: f64) -> bool {
        let parted = |one: &LetteringBox, two: &LetteringBox| {
            let back = one.place.inverse();
            let theirs = two.corners().map(|corner| back * corner);
            let span = |of: fn(&Point) -> f64| {
                let values = theirs.iter().map(of);
                (
                    values.clone().fold(f64::INFINITY, f64::min),
                    values.fold(f64::NEG_INFINITY, f64::max),
                )
            };
            let ((left, right), (top, foot)) = (span(|p| p.x), span(|p| p.y));
            left >= one.own.x1 - shared
                || right <= one.own.x0 + shared
                || top >= one.own.y1 - shared
                || foot <= one.own.y0 + shared
        };
        !parted(self, other) && !parted(other, self)
    }

    /// Whether a line comes nearer to the box than this, mm; curves are compared by chords that leave them by `flat` at most.
    pub fn meets(&self, path: &BezPath, clear: f64, flat: f64) -> bool {
        let reach = self.own.inflate(clear, clear);
        let mut chords = BezPath::new();
        let turned = self.place.inverse() * path;
        kurbo::flatten(&turned, flat, |element| chords.push(element));
        chords.segments().any(|chord| {
            let PathSeg::Line(chord) = chord else {
                unreachable!("a flattened path is straight lines")
            };
            touches(reach, chord.start(), chord.end())
        })
    }
}

/// Whether a straight line passes through a rectangle, by cutting it to each pair of sides in turn.
fn touches(rectangle: Rect, from: Point, to: Point) -> bool {
    let along: Vec2 = to - from;
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for (start, step, low, high) in [
        (from.x, along.x, rectangle.x0, rectangle.x1),
        (from.y, along.y, rectangle.y0, rectangle.y1),
    ] {
        if step == 0.0 {
            if start <= low || start >= high {
                return false;
            }
            continue;
        }
        let (a, b) = ((low - start) / step, (high - start) / step);
        enters = enters.max(a.min(b));
        leaves = leaves.min(a.max(b));
    }
    enters < leaves
}
