//! Lettering on a part: which it is, which way up, which face; and where on the part it may stand.
//!
//! Lettering stands on the flat, clear of the heel or the weld, of every hole that the plate will ever have and of the edge.
//! Where no place is clear it goes beside the part, and the order note asks for it to be stamped by hand.

use super::file_name::side;
use super::lettering::{strokes, width};
use super::part::{CutPart, Layer, Shape};
use super::reference::add_reference;
use crate::design::{Design, Outline, Point};
use crate::spec::Spec;
use crate::units::Length;

/// Heights of letter, mm, the best first: the largest that a stamp makes in one blow down to the least that is read.
const HEIGHTS_MM: [f64; 4] = [10.0, 8.0, 6.0, 5.0];
/// Metal kept clear round lettering, in thicknesses of the plate, the best first.
const CLEAR_THICKNESSES: [f64; 5] = [3.0, 2.0, 1.5, 1.0, 0.5];
/// Side of the squares in which a clear place is looked for, mm, on a plate of ordinary size.
const LEAST_CELL_MM: f64 = 4.0;
/// Squares along the longer side of the part, at most.
const MOST_CELLS: f64 = 250.0;

/// A line of lettering and the place that it would best stand near.
#[derive(Clone, Debug)]
pub(super) struct Inscription {
    text: String,
    near: Point,
}

impl Inscription {
    pub(super) fn new(text: impl Into<String>, near: Point) -> Inscription {
        Inscription {
            text: text.into(),
            near,
        }
    }
}

/// Drawing and revision, as stamped on every part.
pub(super) fn identity(spec: &Spec) -> String {
    let job = &spec.written.job;
    format!("{} REV {}", job.drawing, job.revision)
}

/// Marks a plate or a blank, seen from the declared side with its top upwards.
pub(super) fn stamp_part(part: &mut CutPart, spec: &Spec, design: &Design, mut field: Field) {
    for hole in &design.holes {
        field.keep_clear_of(hole.at, hole.finish.value().to_mm() / 2.0);
    }
    let (low, high) = field.edge.bounds();
    let (top, bottom) = (Point::new(0.0, high.y), Point::new(0.0, low.y));
    // Where the plate runs on outside the weld, that metal holds no pressure and is the best place of all.
    let near = if field.weld.is_some() { bottom } else { top };
    let inscriptions = [
        Inscription::new("TOP +", top),
        Inscription::new(
            format!("THIS FACE TO {}", side(design.view_from).to_uppercase()),
            near,
        ),
        Inscription::new(identity(spec), near),
    ];
    lay_marks(part, spec, &inscriptions, field);
}

/// Lays lettering on the part where there is room, then the square and the notes beside it.
pub(super) fn lay_marks(
    part: &mut CutPart,
    spec: &Spec,
    inscriptions: &[Inscription],
    mut field: Field,
) {
    for (layer, shape) in &part.shapes {
        if !layer.is_cut() {
            field.keep_clear_of_mark(shape);
        }
    }
    let thickness = part.thickness.value().to_mm();
    let mut map = ClearMap::of(&field, CLEAR_THICKNESSES[0] * thickness);
    let mut homeless = Vec::new();
    let mut letters = Vec::new();
    for inscription in inscriptions {
        match map.place(inscription, thickness) {
            Some((corner, height)) => {
                letters.extend(strokes(&inscription.text, corner, height));
                map.take(corner, width(&inscription.text, height), height);
            }
            None => homeless.push(format!("STAMP BY HAND: {}", inscription.text)),
        }
    }
    let first_cut = part.shapes.iter().position(|(layer, _)| layer.is_cut());
    let at = first_cut.unwrap_or(part.shapes.len());
    let letters = letters
        .into_iter()
        .map(|(from, to)| (Layer::Stamp, Shape::Line { from, to }));
    part.shapes.splice(at..at, letters);
    let mut notes = common_notes(spec, part);
    notes.extend(homeless);
    add_reference(part, &notes);
}

fn common_notes(spec: &Spec, part: &CutPart) -> Vec<String> {
    vec![
        format!("{} {}", identity(spec), part.name),
        format!("SPEC {}", spec.short_fingerprint()),
        "MILLIMETRES - SCALE 1:1 - SQUARE IS 100 MM".into(),
        part.lies.replace(',', " -"),
        "KERF NOT APPLIED".into(),
        "DO NOT MIRROR".into(),
        "DO NOT CUT THIS LAYER".into(),
    ]
}

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

    /// Not in the band between two circles about the barrel centre.
    pub(super) fn keep_clear_of_weld(&mut self, inner: Length, outer: Length) {
        self.weld = Some((inner.to_mm(), outer.to_mm()));
    }

    /// Not on a disc of this radius, mm.
    pub(super) fn keep_clear_of(&mut self, centre: Point, radius: f64) {
        self.discs.push((centre, radius));
    }

    /// Not on a pop or a tick. Lines that run round the plate are no hindrance: they follow the edges that are already kept.
    fn keep_clear_of_mark(&mut self, shape: &Shape) {
        match shape {
            Shape::Line { from, to } => {
                self.keep_clear_of(from.midway(*to), from.distance(*to) / 2.0);
            }
            Shape::Cross { at, arm } => self.keep_clear_of(*at, *arm),
            Shape::Dot(at) => self.keep_clear_of(*at, 0.0),
            Shape::Circle { .. } | Shape::Closed(_) | Shape::Arc { .. } => {}
        }
    }

    /// Clear metal round a place up to the edge and the weld, mm; below nothing outside the edge or in the weld.
    fn clear_of_lines(&self, place: Point) -> f64 {
        let depth = self.edge.depth(place);
        match self.weld {
            None => depth,
            Some((inner, outer)) => {
                let radius = place.radius();
                depth.min((inner - radius).max(radius - outer))
            }
        }
    }
}

/// Clear metal round the middle of every square of a grid laid over the part.
struct ClearMap {
    low: Point,
    cell: f64,
    across: usize,
    up: usize,
    clear: Vec<f64>,
}

impl ClearMap {
    /// Measures the field; distances beyond `reach` from a disc need not be told apart.
    fn of(field: &Field, reach: f64) -> ClearMap {
        let (low, high) = field.edge.bounds();
        let (wide, tall) = (high.x - low.x, high.y - low.y);
        let cell = (wide.max(tall) / MOST_CELLS).max(LEAST_CELL_MM);
        let (across, up) = ((wide / cell) as usize + 1, (tall / cell) as usize + 1);
        let mut map = ClearMap {
            low,
            cell,
            across,
            up,
            clear: Vec::with_capacity(across * up),
        };
        for row in 0..up {
            for column in 0..across {
                map.clear
                    .push(field.clear_of_lines(map.middle(column, row)));
            }
        }
        for (centre, radius) in &field.discs {
            map.lower_round(*centre, *radius, reach);
        }
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

    fn lower_round(&mut self, centre: Point, radius: f64, reach: f64) {
        let far = radius + reach + self.cell;
        for row in self.rows(centre.y - far, centre.y + far) {
            for column in self.columns(centre.x - far, centre.x + far) {
                let clear = self.middle(column, row).distance(centre) - radius;
                let here = &mut self.clear[row * self.across + column];
                *here = here.min(clear);
            }
        }
    }

    /// Lower left corner and height for an inscription: the largest letters, then the clearest metal, then the nearest place.
    fn place(&self, inscription: &Inscription, thickness: f64) -> Option<(Point, f64)> {
        HEIGHTS_MM.into_iter().find_map(|height| {
            let wide = width(&inscription.text, height);
            CLEAR_THICKNESSES.into_iter().find_map(|times| {
                let corner = self.nearest_clear(wide, height, times * thickness, inscription.near);
                corner.map(|corner| (corner, height))
            })
        })
    }

    fn nearest_clear(&self, wide: f64, tall: f64, clear: f64, near: Point) -> Option<Point> {
        let (columns, rows) = (
            (wide / self.cell).ceil() as usize,
            (tall / self.cell).ceil() as usize,
        );
        if columns > self.across || rows > self.up {
            return None;
        }
        // Clear metal at the middle of a square says little of its corners.
        let crowded = self.crowded_before(clear + self.cell);
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
                // Lettering stands in the middle of the squares that it takes.
                let corner = Point::new(
                    self.low.x + c as f64 * self.cell + (columns as f64 * self.cell - wide) / 2.0,
                    self.low.y + r as f64 * self.cell + (rows as f64 * self.cell - tall) / 2.0,
                );
                let middle = Point::new(corner.x + wide / 2.0, corner.y + tall / 2.0);
                let far = middle.distance(near);
                if best.is_none_or(|(least, _)| far < least) {
                    best = Some((far, corner));
                }
            }
        }
        best.map(|(_, corner)| corner)
    }

    /// For each corner of the grid, how many squares left of it and below it have less clear metal than this.
    fn crowded_before(&self, clear: f64) -> Vec<i32> {
        let row_length = self.across + 1;
        let mut sums = vec![0; row_length * (self.up + 1)];
        for r in 0..self.up {
            for c in 0..self.across {
                let here = i32::from(self.clear[r * self.across + c] < clear);
                sums[(r + 1) * row_length + c + 1] =
                    here + sums[r * row_length + c + 1] + sums[(r + 1) * row_length + c]
                        - sums[r * row_length + c];
            }
        }
        sums
    }

    /// Takes the squares under a line of lettering, with half its height round it.
    fn take(&mut self, corner: Point, wide: f64, tall: f64) {
        let gap = tall / 2.0;
        for row in self.rows(corner.y - gap, corner.y + tall + gap) {
            for column in self.columns(corner.x - gap, corner.x + wide + gap) {
                self.clear[row * self.across + column] = f64::NEG_INFINITY;
            }
        }
    }
}

fn squares(from: f64, to: f64, cell: f64, count: usize) -> std::ops::Range<usize> {
    let first = (from / cell).floor().clamp(0.0, count as f64) as usize;
    let last = (to / cell).ceil().clamp(0.0, count as f64) as usize;
    first..last
}
