//! What lies beside a part and is not cut: a proving square and notes in strokes.

use super::entity::{Entity, entities, extent};
use super::lettering::strokes;
use super::part::{CutPart, Layer, Shape};
use crate::design::{Edge, Outline, Point};

/// Side of the proving square, mm: long enough to show a slip of scale on any rule.
pub const PROVING_SQUARE_MM: f64 = 100.0;
/// Clear of the part, mm, so that nobody takes it for a piece of it.
const GAP_MM: f64 = 60.0;
/// Height of the notes, mm.
const NOTE_HEIGHT_MM: f64 = 10.0;
/// From one note to the next, mm.
const NOTE_STEP_MM: f64 = 20.0;

/// Lays the proving square and the notes to the right of everything that the part has so far.
pub(super) fn add_reference(part: &mut CutPart, notes: &[String]) {
    let present: Vec<Entity> = entities(part).into_iter().map(|(_, e)| e).collect();
    let Some(around) = extent(present.iter()) else {
        return;
    };
    let corner = Point::new(around.high.x + GAP_MM, around.low.y);
    let square = rectangle(corner, PROVING_SQUARE_MM, PROVING_SQUARE_MM)
        .expect("a square of 100 mm is an outline");
    part.shapes.push((Layer::Reference, Shape::Closed(square)));
    let mut at = Point::new(
        corner.x,
        corner.y + PROVING_SQUARE_MM + NOTE_STEP_MM * notes.len() as f64,
    );
    for note in notes {
        let letters = strokes(note, at, NOTE_HEIGHT_MM).into_iter();
        part.shapes
            .extend(letters.map(|(from, to)| (Layer::Reference, Shape::Line { from, to })));
        at.y -= NOTE_STEP_MM;
    }
}

/// A box standing on its lower left corner; none where it has no width or no height.
pub(super) fn rectangle(corner: Point, wide: f64, tall: f64) -> Option<Outline> {
    let corners = [(0.0, 0.0), (wide, 0.0), (wide, tall), (0.0, tall)]
        .map(|(x, y)| Point::new(corner.x + x, corner.y + y));
    let edges = (0..4)
        .map(|i| Edge::Line {
            from: corners[i],
            to: corners[(i + 1) % 4],
        })
        .collect();
    Outline::new(edges).ok()
}
