//! Where on a part lettering may stand: clear metal measured on a grid, and the best place for a block of lines.
//!
//! *Clear metal* is the distance to the nearest hole that the plate will ever have, mark, edge or weld.

use super::part::Shape;
use crate::design::{Outline, Point};
use crate::units::Length;
use crate::units::angle::sqrt;
use crate::units::tolerance::SAME_SHARE;

/// Metal kept clear round lettering, in thicknesses of the plate, the best first.
const CLEAR_THICKNESSES: [f64; 5] = [3.0, 2.0, 1.5, 1.0, 0.5];
/// Least side of the squares in which a clear place is looked for, mm.
const LEAST_CELL_MM: f64 = 3.0;
/// Squares over the part, about: enough for a place among the holes, few enough to take no time.
const CELLS: f64 = 60_000.0;

/// Where lettering may stand.
#[derive(Clone, Debug)]
pub(super) struct Field {
    edge: Outline,
    weld: Option<(f64, f64)>,
    discs: Vec<(Point, f64)>,
}

impl Field {
    /// Anywhere inside this line.
    pub(super) fn inside(edge: Outline) -> Field {
        Field {
            edge,
            weld: None,
            discs: Vec::new(),
        }
    }

    /// Lower left and upper right corner of the field.
    pub(super) fn bounds(&self) -> (Point, Point) {
        self.edge.bounds()
    }

    /// Whether a weld runs through the field.
    pub(super) fn has_weld(&self) -> bool {
        self.weld.is_some()
    }

    /// Not in the band between two circles about the barrel centre.
    pub(super) fn keep_clear_of_weld(&mut self, inner: Length, outer: Length) {
        self.weld = Some((inner.to_mm(), outer.to_mm()));
    }

    /// Not on a disc of this radius, mm.
    pub(super) fn keep_clear_of(&mut self, centre: Point, radius: f64) {
        self.discs.push((centre, radius));
    }

    /// Not on a pop or a tick. Lines that run round the plate are no hindrance: they follow the edges that are kept anyhow.
    pub(super) fn keep_clear_of_mark(&mut self, shape: &Shape) {
        match shape {
            Shape::Line { from, to } => {
                self.keep_clear_of(from.midway(*to), from.distance(*to) / 2.0);
            }
            Shape::Cross { at, arm } => self.keep_clear_of(*at, *arm),
            Shape::Dot(at) => self.keep_clear_of(*at, 0.0),
            Shape::Circle { .. } | Shape::Closed(_) | Shape::Arc { .. } => {}
        }
    }
}

/// What is to be placed: a block so wide and so tall, near a place and not below a height.
#[derive(Clone, Copy, Debug)]
pub(super) struct Wanted {
    pub(super) wide: f64,
    pub(super) tall: f64,
    pub(super) near: Point,
    pub(super) above: f64,
    /// On the vertical centre line where any of it is clear.
    pub(super) centred: bool,
}

/// Clear metal round the middle of every square of a grid laid over the part.
pub(super) struct ClearMap {
    low: Point,
    cell: f64,
    across: usize,
    up: usize,
    clear: Vec<f64>,
    /// For each measure of clear metal, how many squares left of and below each corner of the grid have less.
    crowded: Vec<(f64, Vec<i32>)>,
}

impl ClearMap {
    /// Measures the field for a part of this thickness, mm.
    pub(super) fn of(field: &Field, thickness: f64) -> ClearMap {
        let (low, high) = field.edge.bounds();
        let (wide, tall) = (high.x - low.x, high.y - low.y);
        let cell = sqrt(wide * tall / CELLS).max(LEAST_CELL_MM);
        // Two squares of nothing all round, from which the outside is found.
        let (across, up) = ((wide / cell) as usize + 5, (tall / cell) as usize + 5);
        let mut map = ClearMap {
            low: Point::new(low.x - 2.0 * cell, low.y - 2.0 * cell),
            cell,
            across,
            up,
            clear: vec![f64::INFINITY; across * up],
            crowded: Vec::new(),
        };
        let reach = CLEAR_THICKNESSES[0] * thickness + 2.0 * cell;
        map.measure_edge(&field.edge, reach);
        map.close_outside();
        if let Some((inner, outer)) = field.weld {
            map.measure_weld(inner, outer);
        }
        for (centre, radius) in &field.discs {
            map.measure_disc(*centre, *radius, reach);
        }
        map.count_crowded(thickness);
        map
    }

    fn middle(&self, column: usize, row: usize) -> Point {
        Point::new(
            self.low.x + (column as f64 + 0.5) * self.cell,
            self.low.y + (row as f64 + 0.5) * self.cell,
        )
    }

    fn columns(&self, from: f64, to: f64) -> std::ops::Range<usize> {
        squares(from - self.low.x, to - self.low.x, self.cell, self.across)
    }

    fn rows(&self, from: f64, to: f64) -> std::ops::Range<usize> {
        squares(from - self.low.y, to - self.low.y, self.cell, self.up)
    }

    /// Lowers the clear metal round a disc; beyond `reach` distances need not be told apart.
    fn measure_disc(&mut self, centre: Point, radius: f64, reach: f64) {
        let far = radius + reach;
        for row in self.rows(centre.y - far, centre.y + far) {
            for column in self.columns(centre.x - far, centre.x + far) {
                let middle = self.middle(column, row);
                let here = &mut self.clear[row * self.across + column];
                // The root is drawn only where it can matter: most squares have something nearer already.
                let apart = middle - centre;
                let nearer = *here + radius;
                if apart.dot(apart) <= nearer * nearer * (1.0 + SAME_SHARE) {
                    *here = here.min(middle.distance(centre) - radius);
                }
            }
        }
    }

    /// The edge as places half a square apart, so that no square that it runs through is missed.
    fn measure_edge(&mut self, edge: &Outline, reach: f64) {
        for piece in edge.edges() {
            let count = (2.0 * piece.length_mm() / self.cell).ceil().max(1.0);
            for i in 0..count as usize {
                self.measure_disc(piece.at_share(i as f64 / count), 0.0, reach);
            }
        }
    }

    /// Closes every square that can be reached from the grid's corner without crossing the edge.
    fn close_outside(&mut self) {
        let mut open = vec![0];
        while let Some(here) = open.pop() {
            if self.clear[here] < self.cell {
                continue;
            }
            self.clear[here] = f64::NEG_INFINITY;
            let (column, row) = (here % self.across, here / self.across);
            if column > 0 {
                open.push(here - 1);
            }
            if column + 1 < self.across {
                open.push(here + 1);
            }
            if row > 0 {
                open.push(here - self.across);
            }
            if row + 1 < self.up {
                open.push(here + self.across);
            }
        }
    }

    fn measure_weld(&mut self, inner: f64, outer: f64) {
        for row in 0..self.up {
            for column in 0..self.across {
                let radius = self.middle(column, row).radius();
                let here = &mut self.clear[row * self.across + column];
                *here = here.min((inner - radius).max(radius - outer));
            }
        }
    }

    fn count_crowded(&mut self, thickness: f64) {
        let row_length = self.across + 1;
        self.crowded.clear();
        for times in CLEAR_THICKNESSES {
            // Clear metal at the middle of a square says little of its corners.
            let least = times * thickness + self.cell;
            let mut sums = vec![0; row_length * (self.up + 1)];
            for r in 0..self.up {
                for c in 0..self.across {
                    let here = i32::from(self.clear[r * self.across + c] < least);
                    sums[(r + 1) * row_length + c + 1] =
                        here + sums[r * row_length + c + 1] + sums[(r + 1) * row_length + c]
                            - sums[r * row_length + c];
                }
            }
            self.crowded.push((least, sums));
        }
    }

    /// Lower left corner for a block: where the metal round it is clearest, and there the nearest to where it is wanted.
    ///
    /// A block that is to be centred keeps to the centre line while a whole thickness of clear metal is left round it.
    pub(super) fn place(&self, wanted: &Wanted) -> Option<Point> {
        let well_clear = CLEAR_THICKNESSES
            .iter()
            .take_while(|times| **times >= 1.0)
            .count();
        let on_the_line = || {
            let levels = self.crowded.iter().take(well_clear);
            levels
                .filter_map(|(_, crowded)| self.centred_clear(crowded, wanted))
                .next()
        };
        if let Some(corner) = wanted.centred.then(on_the_line).flatten() {
            return Some(corner);
        }
        self.crowded
            .iter()
            .find_map(|(_, crowded)| self.nearest_clear(crowded, wanted))
    }

    fn centred_clear(&self, crowded: &[i32], wanted: &Wanted) -> Option<Point> {
        let left = -wanted.wide / 2.0;
        let columns = self.columns(left, -left);
        let rows = (wanted.tall / self.cell).ceil() as usize;
        let count = |c: usize, r: usize| crowded[r * (self.across + 1) + c];
        let mut best: Option<(f64, Point)> = None;
        for r in 0..=self.up.checked_sub(rows)? {
            let inside = count(columns.end, r + rows) + count(columns.start, r)
                - count(columns.start, r + rows)
                - count(columns.end, r);
            let spare = (rows as f64 * self.cell - wanted.tall) / 2.0;
            let corner = Point::new(left, self.low.y + r as f64 * self.cell + spare);
            let far = (corner.y + wanted.tall / 2.0 - wanted.near.y).abs();
            if inside == 0 && corner.y >= wanted.above && best.is_none_or(|(least, _)| far < least)
            {
                best = Some((far, corner));
            }
        }
        best.map(|(_, corner)| corner)
    }

    fn nearest_clear(&self, crowded: &[i32], wanted: &Wanted) -> Option<Point> {
        let (columns, rows) = (
            (wanted.wide / self.cell).ceil() as usize,
            (wanted.tall / self.cell).ceil() as usize,
        );
        if columns > self.across || rows > self.up {
            return None;
        }
        let count = |c: usize, r: usize| crowded[r * (self.across + 1) + c];
        let mut best: Option<(f64, Point)> = None;
        for r in 0..=self.up - rows {
            for c in 0..=self.across - columns {
                let inside = count(c + columns, r + rows) + count(c, r)
                    - count(c + columns, r)
                    - count(c, r + rows);
                if inside > 0 {
                    continue;
                }
                // The block stands in the middle of the squares that it takes.
                let spare = |squares: usize, size: f64| (squares as f64 * self.cell - size) / 2.0;
                let corner = Point::new(
                    self.low.x + c as f64 * self.cell + spare(columns, wanted.wide),
                    self.low.y + r as f64 * self.cell + spare(rows, wanted.tall),
                );
                let half = Point::new(wanted.wide / 2.0, wanted.tall / 2.0);
                let far = Point::new(corner.x + half.x, corner.y + half.y).distance(wanted.near);
                if corner.y >= wanted.above && best.is_none_or(|(least, _)| far < least) {
                    best = Some((far, corner));
                }
            }
        }
        best.map(|(_, corner)| corner)
    }

    /// Takes the squares under a block, and so far round it.
    pub(super) fn take(&mut self, corner: Point, wanted: &Wanted, gap: f64, thickness: f64) {
        for row in self.rows(corner.y - gap, corner.y + wanted.tall + gap) {
            for column in self.columns(corner.x - gap, corner.x + wanted.wide + gap) {
                self.clear[row * self.across + column] = f64::NEG_INFINITY;
            }
        }
        self.count_crowded(thickness);
    }
}

fn squares(from: f64, to: f64, cell: f64, count: usize) -> std::ops::Range<usize> {
    let first = (from / cell).floor().clamp(0.0, count as f64) as usize;
    let last = (to / cell).ceil().clamp(0.0, count as f64) as usize;
    first..last
}

#[cfg(test)]
mod tests {
    use super::*;

    const T: f64 = 10.0;

    fn wanted(near: Point) -> Wanted {
        Wanted {
            wide: 60.0,
            tall: 12.0,
            near,
            above: f64::NEG_INFINITY,
            centred: false,
        }
    }

    #[test]
    fn holds_a_block_stays_inside_the_edge_and_off_the_holes() {
        let mut field = Field::inside(Outline::circle(Point::CENTRE, 300.0));
        field.keep_clear_of(Point::new(0.0, 250.0), 40.0);
        let map = ClearMap::of(&field, T);
        let near = Point::new(0.0, 300.0);
        let corner = map.place(&wanted(near)).expect("there is room");
        for (x, y) in [(0.0, 0.0), (60.0, 0.0), (60.0, 12.0), (0.0, 12.0)] {
            let at = Point::new(corner.x + x, corner.y + y);
            assert!(at.radius() < 300.0 - T);
            assert!(at.distance(Point::new(0.0, 250.0)) > 40.0 + T);
        }
    }

    #[test]
    fn holds_a_block_is_not_laid_in_the_weld_or_below_its_height() {
        let mut field = Field::inside(Outline::circle(Point::CENTRE, 300.0));
        field.keep_clear_of_weld(Length::mm(180.0), Length::mm(220.0));
        let map = ClearMap::of(&field, T);
        let low = Wanted {
            above: 50.0,
            ..wanted(Point::new(0.0, -300.0))
        };
        let corner = map.place(&low).expect("there is room");
        assert!(corner.y >= 50.0);
        for x in [0.0, 30.0, 60.0] {
            for y in [0.0, 12.0] {
                let radius = Point::new(corner.x + x, corner.y + y).radius();
                let weld = 180.0 - T / 2.0..=220.0 + T / 2.0;
                assert!(!weld.contains(&radius));
            }
        }
    }

    #[test]
    fn holds_where_there_is_no_room_there_is_no_place() {
        let mut field = Field::inside(Outline::circle(Point::CENTRE, 100.0));
        field.keep_clear_of(Point::CENTRE, 85.0);
        assert_eq!(ClearMap::of(&field, T).place(&wanted(Point::CENTRE)), None);
    }

    #[test]
    fn holds_two_blocks_do_not_lie_on_each_other() {
        let field = Field::inside(Outline::circle(Point::CENTRE, 300.0));
        let mut map = ClearMap::of(&field, T);
        let first = map.place(&wanted(Point::CENTRE)).expect("there is room");
        map.take(first, &wanted(Point::CENTRE), 5.0, T);
        let second = map.place(&wanted(Point::CENTRE)).expect("there is room");
        assert!((first.x - second.x).abs() >= 60.0 || (first.y - second.y).abs() >= 12.0);
    }
}
