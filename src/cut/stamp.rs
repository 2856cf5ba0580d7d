//! Lettering on a part: which it is, which way up, which face.
//!
//! Lettering stands on the flat, clear of the heel or the weld, of every hole that the plate will ever have and of the edge.
//! Where no place is clear it goes beside the part, and is asked for to be stamped by hand.

use super::clear_place::{ClearMap, Field, Wanted};
use super::file_name::side;
use super::lettering::{strokes, width};
use super::part::{CutPart, Layer, Shape};
use super::reference::add_reference;
use crate::design::{Design, Point};
use crate::spec::Spec;

/// Heights of letter, mm, the best first: the largest that a stamp makes in one blow down to the least that is read.
const HEIGHTS_MM: [f64; 4] = [10.0, 8.0, 6.0, 5.0];
/// From one line to the next, in heights of letter.
const LINE_STEP: f64 = 1.8;

/// Lines of lettering that belong together, and the place that they would best stand near.
#[derive(Clone, Debug)]
pub(super) struct Inscription {
    lines: Vec<String>,
    near: Point,
    above: f64,
}

impl Inscription {
    /// Lines that may stand anywhere.
    pub(super) fn anywhere(lines: impl IntoIterator<Item = String>, near: Point) -> Inscription {
        Inscription {
            lines: lines.into_iter().collect(),
            near,
            above: f64::NEG_INFINITY,
        }
    }

    /// Lines that may not stand below this y: TOP at the foot of a plate would turn it over.
    fn above(mut self, y: f64) -> Inscription {
        self.above = y;
        self
    }

    fn alone(&self, line: &str) -> Inscription {
        Inscription {
            lines: vec![line.into()],
            ..self.clone()
        }
    }

    fn wanted(&self, height: f64) -> Wanted {
        let widths = self.lines.iter().map(|line| width(line, height));
        Wanted {
            wide: widths.fold(0.0, f64::max),
            tall: height * (1.0 + LINE_STEP * (self.lines.len() as f64 - 1.0)),
            near: self.near,
            above: self.above,
        }
    }

    fn strokes(&self, corner: Point, height: f64) -> Vec<(Point, Point)> {
        let last = self.lines.len() as f64 - 1.0;
        let wide = self.wanted(height).wide;
        let mut letters = Vec::new();
        for (number, line) in self.lines.iter().enumerate() {
            let at = Point::new(
                corner.x + (wide - width(line, height)) / 2.0,
                corner.y + height * LINE_STEP * (last - number as f64),
            );
            letters.extend(strokes(line, at, height));
        }
        letters
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
    let (low, high) = field.bounds();
    let (top, bottom) = (Point::new(0.0, high.y), Point::new(0.0, low.y));
    let upper = high.y - (high.y - low.y) / 4.0;
    let face = format!("THIS FACE TO {}", side(design.view_from).to_uppercase());
    let which = identity(spec);
    let inscriptions = match field.has_weld() {
        // Where the plate runs on outside the weld, that metal holds no pressure and takes the lettering best.
        true => vec![
            Inscription::anywhere(["TOP ^".into()], top).above(upper),
            Inscription::anywhere([face, which], bottom),
        ],
        false => vec![Inscription::anywhere(["TOP ^".into(), face, which], top).above(upper)],
    };
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
    let thickness = part.thickness.as_ref().map_or(0.0, |t| t.value().to_mm());
    let mut map = ClearMap::of(&field, thickness);
    let (mut letters, mut homeless) = (Vec::new(), Vec::new());
    for inscription in inscriptions {
        if let Some(placed) = lay(inscription, &mut map, thickness) {
            letters.extend(placed);
            continue;
        }
        for line in &inscription.lines {
            match lay(&inscription.alone(line), &mut map, thickness) {
                Some(placed) => letters.extend(placed),
                None => homeless.push(format!("STAMP BY HAND: {line}")),
            }
        }
    }
    add_before_cuts(part, letters);
    let mut notes = common_notes(spec, part);
    notes.extend(homeless);
    add_reference(part, &notes);
}

/// The strokes of an inscription in the largest letters for which there is room.
fn lay(
    inscription: &Inscription,
    map: &mut ClearMap,
    thickness: f64,
) -> Option<Vec<(Point, Point)>> {
    HEIGHTS_MM.into_iter().find_map(|height| {
        let wanted = inscription.wanted(height);
        let corner = map.place(&wanted)?;
        map.take(corner, &wanted, height, thickness);
        Some(inscription.strokes(corner, height))
    })
}

/// Marks are made before anything is cut, while the plate still lies still.
fn add_before_cuts(part: &mut CutPart, letters: Vec<(Point, Point)>) {
    let first_cut = part.shapes.iter().position(|(layer, _)| layer.is_cut());
    let at = first_cut.unwrap_or(part.shapes.len());
    let shapes = letters
        .into_iter()
        .map(|(from, to)| (Layer::Stamp, Shape::Line { from, to }));
    part.shapes.splice(at..at, shapes);
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
