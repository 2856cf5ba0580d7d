//! What lies beside a part and is not cut: a proving square and notes in strokes.

use super::entity::{Entity, entities, extent};
use super::lettering::strokes;
use super::part::{CutPart, Layer, Shape};
use crate::design::Point;

/// Side of the proving square, mm: long enough to show a slip of scale on any rule.
pub const PROVING_SQUARE_MM: f64 = 100.0;
/// Clear of the part, mm, so that nobody takes it for a piece of it.
const GAP_MM: f64 = 60.0;
/// Height of the notes, mm.
const NOTE_HEIGHT_MM: f64 = 8.0;
/// From one note to the next, mm.
const NOTE_STEP_MM: f64 = 14.0;

/// Lays the proving square and the notes to the right of everything that the part has so far.
pub(super) fn add_reference(part: &mut CutPart, notes: &[String]) {
    let present: Vec<Entity> = entities(part).into_iter().map(|(_, e)| e).collect();
    let Some(around) = extent(present.iter()) else {
        return;
    };
    let corner = Point::new(around.high.x + GAP_MM, around.low.y);
    let mut lines = square(corner).to_vec();
    let mut at = Point::new(
        corner.x,
        corner.y + PROVING_SQUARE_MM + NOTE_STEP_MM * notes.len() as f64,
    );
    for note in notes {
        lines.extend(strokes(note, at, NOTE_HEIGHT_MM));
        at.y -= NOTE_STEP_MM;
    }
    part.shapes.extend(
        lines
            .into_iter()
            .map(|(from, to)| (Layer::Reference, Shape::Line { from, to })),
    );
}

fn square(corner: Point) -> [(Point, Point); 4] {
    let (left, low) = (corner.x, corner.y);
    let (right, high) = (left + PROVING_SQUARE_MM, low + PROVING_SQUARE_MM);
    let corners = [
        Point::new(left, low),
        Point::new(right, low),
        Point::new(right, high),
        Point::new(left, high),
    ];
    [0, 1, 2, 3].map(|i| (corners[i], corners[(i + 1) % 4]))
}
