//! What holds the flat up, and how far off the nearest of it is: points in a grid of boxes, and the flange line.

use super::{Outline, Point, Touch};
use crate::units::angle::sqrt;
use crate::units::tolerance::SAME_LENGTH_MM;

/// Supports looked at to climb from a place: enough to feel most of a ring of stays at once.
pub(super) const TO_CLIMB: usize = 8;

/// Supports looked at to bound a cell: the corners of a square. More would cost more than they settle.
pub(super) const TO_BOUND: usize = 4;

/// Places on the line kept at one place: the nearest of each of the nearest edges.
const MOST_ON_LINE: usize = 3;

/// Places kept in all, at most.
pub(super) const MOST_TOUCHES: usize = TO_CLIMB + MOST_ON_LINE;

/// Rings of boxes that are looked through before the line is measured.
const NEAR_RINGS: usize = 2;

/// First cells, at least: enough that a small plate's regions are told apart.
const FEWEST_CELLS: f64 = 64.0;

/// The supports of a plate.
pub(super) struct SupportField {
    supports: Vec<(usize, Point)>,
    boxes: Boxes,
    line: Outline,
    /// Centre and radius where the line is a circle, for speed.
    round: Option<(Point, f64)>,
}

/// What is near a place.
pub(super) struct Touching {
    /// Radius of the largest circle about the place that fits; negative outside the line, by the distance to it.
    pub radius: f64,
    places: [Point; MOST_TOUCHES],
    count: usize,
}

impl Touching {
    /// The nearest supports and the nearest places of the line, nearest first.
    pub(super) fn places(&self) -> &[Point] {
        &self.places[..self.count]
    }
}

impl SupportField {
    pub(super) fn new(supports: &[(usize, Point)], line: &Outline) -> SupportField {
        SupportField {
            boxes: Boxes::new(supports.iter().map(|(_, place)| *place).collect()),
            supports: supports.to_vec(),
            round: line.as_circle(),
            line: line.clone(),
        }
    }

    /// Radius of the largest circle about a place that fits, mm; negative outside the line.
    pub(super) fn radius_at(&self, place: Point) -> f64 {
        let depth = self.depth(place);
        let mut near = Nearest::<1>::new();
        if depth > 0.0 {
            self.boxes.nearest(place, &mut near);
        }
        match near.kept().first() {
            Some((squared, _)) => depth.min(sqrt(*squared)),
            None => depth,
        }
    }

    /// Whether some support, or the line, is no further from a place than this, mm; so it is everywhere outside the line.
    pub(super) fn is_within(&self, place: Point, reach: f64) -> bool {
        // In a nest the first boxes settle it; in an open part of the plate the line often does, and is quicker than the many
        // empty boxes round about.
        self.boxes.any_within(place, reach, NEAR_RINGS)
            || self.depth(place) <= reach
            || self.boxes.any_within(place, reach, usize::MAX)
    }

    /// What is near a place, the nearest `SUPPORTS` supports among it.
    pub(super) fn touching<const SUPPORTS: usize>(&self, place: Point) -> Touching {
        let depth = self.depth(place);
        let mut supports = Nearest::<SUPPORTS>::new();
        self.boxes.nearest(place, &mut supports);
        let mut on_line = Nearest::<MOST_ON_LINE>::new();
        self.nearest_on_line(place, &mut on_line);
        let mut all = Nearest::<MOST_TOUCHES>::new();
        for (squared, found) in supports.kept().iter().chain(on_line.kept()) {
            all.offer(*squared, *found);
        }
        let nearest = supports
            .kept()
            .first()
            .map_or(f64::INFINITY, |(squared, _)| sqrt(*squared));
        Touching {
            radius: depth.min(nearest),
            places: all.kept.map(|(_, found)| found),
            count: all.count,
        }
    }

    fn depth(&self, place: Point) -> f64 {
        match self.round {
            Some((centre, radius)) => radius - place.distance(centre),
            None => self.line.depth(place),
        }
    }

    fn nearest_on_line(&self, place: Point, near: &mut Nearest<MOST_ON_LINE>) {
        let mut offer = |found: Point| {
            let arm = found - place;
            near.offer(arm.dot(arm), found);
        };
        match self.round {
            Some(_) => offer(self.line.nearest(place)),
            None => self
                .line
                .edges()
                .iter()
                .for_each(|edge| offer(edge.nearest(place))),
        }
    }

    /// What a circle touches that reaches this far from its centre: holes in the order of their indices, then the line edge by
    /// edge.
    pub(super) fn touched(&self, centre: Point, reach: f64) -> Vec<Touch> {
        let mut holes: Vec<usize> = self
            .supports
            .iter()
            .filter(|(_, place)| place.distance(centre) <= reach)
            .map(|(hole, _)| *hole)
            .collect();
        holes.sort_unstable();
        holes.dedup();
        let places = self.line_places(centre).into_iter();
        let places = places.filter(|place| place.distance(centre) <= reach);
        let holes = holes.into_iter().map(Touch::Hole);
        holes.chain(places.map(Touch::FlangeLine)).collect()
    }

    /// Every place of the line that is nearer to a place than the line on either side of it.
    fn line_places(&self, place: Point) -> Vec<Point> {
        if self.round.is_some() {
            return vec![self.line.nearest(place)];
        }
        let edges = self.line.edges();
        let nearest: Vec<Point> = edges.iter().map(|edge| edge.nearest(place)).collect();
        let same = |a: Point, b: Point| a.distance(b) <= SAME_LENGTH_MM;
        let is_foot = |&number: &usize| {
            let (foot, before) = (
                nearest[number],
                nearest[(number + edges.len() - 1) % edges.len()],
            );
            // A corner is a foot only if it is one for both edges that meet there; it is counted with the one that follows it.
            !same(foot, edges[number].to())
                && (!same(foot, edges[number].from()) || same(foot, before))
        };
        (0..edges.len())
            .filter(is_foot)
            .map(|number| nearest[number])
            .collect()
    }

    /// Middles of equal squares that cover the flat, further right and then higher first, and half their side, mm; about as many
    /// as there are supports.
    pub(super) fn first_cells(&self) -> (Vec<Point>, f64) {
        let (low, high) = self.line.bounds();
        let (width, height) = (high.x - low.x, high.y - low.y);
        let wanted = (self.supports.len() as f64).max(FEWEST_CELLS);
        let side = sqrt(width * height / wanted);
        let (across, up) = ((width / side).ceil(), (height / side).ceil());
        let corner = low.midway(high) - Point::new(across, up) * (side / 2.0);
        let mut middles = Vec::new();
        for column in (0..across as usize).rev() {
            for row in (0..up as usize).rev() {
                let steps = Point::new(column as f64 + 0.5, row as f64 + 0.5);
                middles.push(corner + steps * side);
            }
        }
        (middles, side / 2.0)
    }
}

/// The nearest of what is offered, nearest first, each with the square of its distance; of equals, the first offered.
struct Nearest<const N: usize> {
    kept: [(f64, Point); N],
    count: usize,
}

impl<const N: usize> Nearest<N> {
    fn new() -> Nearest<N> {
        Nearest {
            kept: [(f64::INFINITY, Point::CENTRE); N],
            count: 0,
        }
    }

    fn kept(&self) -> &[(f64, Point)] {
        &self.kept[..self.count]
    }

    /// Square of the distance beyond which nothing more is kept.
    fn limit(&self) -> f64 {
        self.kept[N - 1].0
    }

    fn offer(&mut self, squared: f64, place: Point) {
        if squared >= self.limit() {
            return;
        }
        let mut slot = self.count.min(N - 1);
        while slot > 0 && self.kept[slot - 1].0 > squared {
            self.kept[slot] = self.kept[slot - 1];
            slot -= 1;
        }
        self.kept[slot] = (squared, place);
        self.count = (self.count + 1).min(N);
    }
}

/// Places sorted into equal square boxes, about one to a box.
struct Boxes {
    places: Vec<Point>,
    /// Where the places of each box start; one more than there are boxes.
    starts: Vec<u32>,
    corner: Point,
    side: f64,
    across: usize,
    up: usize,
}

impl Boxes {
    fn new(mut places: Vec<Point>) -> Boxes {
        // A place that stands twice would crowd others out of the few that are kept as nearest.
        places.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
        places.dedup();
        let first = places.first().copied().unwrap_or(Point::CENTRE);
        let (low, high) = places.iter().fold((first, first), |(low, high), p| {
            (
                Point::new(low.x.min(p.x), low.y.min(p.y)),
                Point::new(high.x.max(p.x), high.y.max(p.y)),
            )
        });
        let (width, height) = (high.x - low.x, high.y - low.y);
        let count = places.len().max(1) as f64;
        // A row of places has no height: then there are as many boxes along it as places.
        let side = sqrt(width * height / count)
            .max(width.max(height) / count)
            .max(SAME_LENGTH_MM);
        let (across, up) = ((width / side) as usize + 1, (height / side) as usize + 1);
        let mut boxes = Boxes {
            places: Vec::new(),
            starts: Vec::new(),
            corner: low,
            side,
            across,
            up,
        };
        let mut counts = vec![0u32; across * up + 1];
        for place in &places {
            counts[boxes.box_of(*place) + 1] += 1;
        }
        for number in 1..counts.len() {
            counts[number] += counts[number - 1];
        }
        places.sort_by_cached_key(|place| boxes.box_of(*place));
        (boxes.places, boxes.starts) = (places, counts);
        boxes
    }

    /// Column and row of the box that a place lies in or is nearest to.
    fn column_and_row(&self, place: Point) -> (usize, usize) {
        let steps = (place - self.corner) * (1.0 / self.side);
        // A negative number becomes 0 when cast.
        (
            (steps.x as usize).min(self.across - 1),
            (steps.y as usize).min(self.up - 1),
        )
    }

    fn box_of(&self, place: Point) -> usize {
        let (column, row) = self.column_and_row(place);
        row * self.across + column
    }

    /// Offers every place that can be among the nearest, ring of boxes by ring.
    fn nearest<const N: usize>(&self, place: Point, near: &mut Nearest<N>) {
        if self.places.is_empty() {
            return;
        }
        let (column, row) = self.column_and_row(place);
        for ring in 0..self.across.max(self.up) {
            // Whatever lies in this ring is at least so many whole boxes off, from outside the grid more.
            let off = (ring as f64 - 1.0).max(0.0) * self.side;
            if off * off > near.limit() {
                break;
            }
            self.offer_ring(column, row, ring, place, near);
        }
    }

    /// Whether a place in the first so many rings of boxes is no further off than this.
    fn any_within(&self, place: Point, reach: f64, rings: usize) -> bool {
        if reach <= 0.0 || self.places.is_empty() {
            return false;
        }
        let mut near = Nearest::<1>::new();
        // Nothing further off than this is kept, so that the search ends with the rings in reach.
        near.kept[0].0 = reach * reach * (1.0 + f64::EPSILON);
        let (column, row) = self.column_and_row(place);
        for ring in 0..self.across.max(self.up).min(rings) {
            let off = (ring as f64 - 1.0).max(0.0) * self.side;
            if near.count > 0 || off > reach {
                break;
            }
            self.offer_ring(column, row, ring, place, &mut near);
        }
        near.count > 0
    }

    fn offer_ring<const N: usize>(
        &self,
        column: usize,
        row: usize,
        ring: usize,
        place: Point,
        near: &mut Nearest<N>,
    ) {
        let (left, right) = (
            column.saturating_sub(ring),
            (column + ring).min(self.across - 1),
        );
        let (bottom, top) = (row.saturating_sub(ring), (row + ring).min(self.up - 1));
        for r in bottom..=top {
            if r + ring == row || r == row + ring {
                self.offer_boxes(r, left, right, place, near);
            } else {
                if left + ring == column {
                    self.offer_boxes(r, left, left, place, near);
                }
                if right == column + ring {
                    self.offer_boxes(r, right, right, place, near);
                }
            }
        }
    }

    fn offer_boxes<const N: usize>(
        &self,
        row: usize,
        left: usize,
        right: usize,
        place: Point,
        near: &mut Nearest<N>,
    ) {
        let first = self.starts[row * self.across + left] as usize;
        let end = self.starts[row * self.across + right + 1] as usize;
        for found in &self.places[first..end] {
            let arm = *found - place;
            near.offer(arm.dot(arm), *found);
        }
    }
}
