//! Looks over a finished sheet for what a reader would trip on: overlapped lettering, lines through words, marks off the paper.
//!
//! Lettering may lie over centre lines, since hole numbers stand on them; every other line must leave it clear. Boxes are the
//! true, turned boxes of the lettering as it is drawn, fractions and tails included.

mod defect;
mod places;

use kurbo::{BezPath, Point, Rect, Shape};

pub use self::defect::{Defect, Flaw};
use self::places::{Holes, Lettering, touching};
use super::lettering_box::LetteringBox;
use super::mark::{Mark, Pen, Role, Sheet};
use super::{curves, face};

/// Clear paper that must lie between lettering and the edge of a line, mm: less than this closes up in a copy.
const CLEAR: f64 = 0.2;
/// Lettering boxes may share this much, mm, for the space that a face leaves beside each glyph.
const SHARED: f64 = 0.05;
/// Least height of lettering, mm (the least of dimensions and notes on A1 to A4).
pub const LEAST_HEIGHT: f64 = 2.5;
/// Least height of a number that stands within its own hole, mm.
pub const LEAST_HEIGHT_IN_HOLE: f64 = 2.0;
/// A line shorter than this is a dot that nobody meant, mm.
const LEAST_LENGTH: f64 = 0.01;
/// How far the chords of an arc may leave it while it is compared, mm: a fifth of the narrowest line.
const FLAT: f64 = 0.05;
/// Words so short may stand outside the frame: they name a zone.
const ZONE_NAME: usize = 2;

/// Looks over a sheet; the defects in the order of the marks. None means that none of these was found, no more.
pub fn audit(sheet: &Sheet) -> Vec<Defect> {
    let mut defects = unsound_marks(sheet);
    if defects.iter().any(|defect| defect.flaw == Flaw::NoNumber) {
        // Nothing can be compared with a place that is no number.
        return defects;
    }
    let lettering = Lettering::of(sheet);
    defects.extend(unfit_words(sheet, &lettering));
    defects.extend(overlapped_words(&lettering));
    defects.extend(crossed_words(sheet, &lettering));
    defects.extend(lines_through_holes(sheet));
    defects.extend(marks_outside(sheet, &lettering));
    defects
}

/// Extension lines that come from outside a circle of the object and leave it again: they are read as that hole's own.
fn lines_through_holes(sheet: &Sheet) -> Vec<Defect> {
    let holes = Holes::of(sheet);
    let extension_lines = sheet.marks.iter().filter_map(|mark| match mark {
        Mark::Line {
            from,
            to,
            role: Role::Extension,
            ..
        } => Some((*from, *to)),
        _ => None,
    });
    extension_lines
        .flat_map(|(from, to)| holes.run_through(from, to))
        .map(|place| Defect::new(Flaw::ThroughHole, place, ""))
        .collect()
}

fn unsound_marks(sheet: &Sheet) -> Vec<Defect> {
    sheet
        .marks
        .iter()
        .filter_map(|mark| {
            let (place, numbers) = numbers_of(mark);
            if numbers.iter().any(|number| !number.is_finite()) {
                return Some(Defect::new(Flaw::NoNumber, place, words_of(mark)));
            }
            let sized = match mark {
                Mark::Text(text) => text.height > 0.0,
                Mark::Filled { corners, .. } => corners.len() > 2 && mark.length() >= LEAST_LENGTH,
                _ => mark.length() >= LEAST_LENGTH,
            };
            (!sized).then(|| Defect::new(Flaw::NoSize, place, words_of(mark)))
        })
        .collect()
}

fn words_of(mark: &Mark) -> &str {
    match mark {
        Mark::Text(text) => &text.words,
        _ => "",
    }
}

/// Where a mark is, and every number that it holds.
fn numbers_of(mark: &Mark) -> (Point, Vec<f64>) {
    match mark {
        Mark::Line { from, to, .. } => ((*from).into(), vec![from.x, from.y, to.x, to.y]),
        Mark::Arc {
            centre,
            radius,
            start_deg,
            sweep_deg,
            ..
        } => (
            (*centre).into(),
            vec![centre.x, centre.y, *radius, *start_deg, *sweep_deg],
        ),
        Mark::Circle { centre, radius, .. } => {
            ((*centre).into(), vec![centre.x, centre.y, *radius])
        }
        Mark::Filled { corners, .. } => {
            let place = corners.first().copied().unwrap_or_default().into();
            (place, corners.iter().flat_map(|c| [c.x, c.y]).collect())
        }
        Mark::Text(text) => (
            text.at.into(),
            vec![text.at.x, text.at.y, text.height, text.turn_deg],
        ),
    }
}

/// Words that the face cannot letter, or that are too low to be read.
fn unfit_words(sheet: &Sheet, lettering: &Lettering<'_>) -> Vec<Defect> {
    let holes = Holes::of(sheet);
    let mut defects = Vec::new();
    for (text, lettered) in &lettering.texts {
        if let Some(character) = face::cannot_letter(&text.words) {
            let flaw = Flaw::CannotLetter(character);
            defects.push(Defect::new(flaw, lettered.middle(), &text.words));
        }
        let height = text.height;
        if height >= LEAST_HEIGHT {
            continue;
        }
        let least = match holes.go_round(lettered) {
            true => LEAST_HEIGHT_IN_HOLE,
            false => LEAST_HEIGHT,
        };
        if height < least {
            let flaw = Flaw::TooLow { height, least };
            defects.push(Defect::new(flaw, lettered.middle(), &text.words));
        }
    }
    defects
}

fn overlapped_words(lettering: &Lettering<'_>) -> Vec<Defect> {
    let mut defects = Vec::new();
    for (i, (text, lettered)) in lettering.texts.iter().enumerate() {
        for j in touching(&lettering.tree, lettered.upright()) {
            let (other, other_box) = &lettering.texts[j];
            if j > i && lettered.overlaps(other_box, SHARED) {
                let flaw = Flaw::Overlapped(other.words.clone());
                defects.push(Defect::new(flaw, lettered.middle(), &text.words));
            }
        }
    }
    defects
}

fn crossed_words(sheet: &Sheet, lettering: &Lettering<'_>) -> Vec<Defect> {
    let mut defects = Vec::new();
    for mark in &sheet.marks {
        if !must_stay_clear(mark.role()) {
            continue;
        }
        let Some(path) = curves::path_of(mark) else {
            continue;
        };
        let clear = CLEAR + half_width(mark);
        for i in touching(&lettering.tree, path.bounding_box().inflate(clear, clear)) {
            let (text, lettered) = &lettering.texts[i];
            if crosses(mark, &path, lettered, clear) {
                let flaw = Flaw::Crossed(mark.role());
                defects.push(Defect::new(flaw, lettered.middle(), &text.words));
            }
        }
    }
    defects
}

fn must_stay_clear(role: Role) -> bool {
    match role {
        Role::Furniture | Role::Object | Role::Hatch | Role::Dimension | Role::Extension => true,
        Role::Centre | Role::Lettering => false,
    }
}

fn half_width(mark: &Mark) -> f64 {
    match mark {
        Mark::Line { pen, .. } | Mark::Arc { pen, .. } | Mark::Circle { pen, .. } => {
            pen.width() / 2.0
        }
        Mark::Filled { .. } | Mark::Text(_) => 0.0,
    }
}

fn crosses(mark: &Mark, path: &BezPath, lettered: &LetteringBox, clear: f64) -> bool {
    let filled_over = matches!(mark, Mark::Filled { .. }) && path.winding(lettered.middle()) != 0;
    filled_over || lettered.meets(path, clear, FLAT)
}

fn marks_outside(sheet: &Sheet, lettering: &Lettering<'_>) -> Vec<Defect> {
    let paper = Rect::new(0.0, 0.0, sheet.width, sheet.height);
    let frame = frame(sheet).unwrap_or(paper);
    let mut defects = Vec::new();
    for mark in &sheet.marks {
        let Some(path) = curves::path_of(mark) else {
            continue;
        };
        let half = half_width(mark);
        let bounds = path.bounding_box();
        let flaw = if !holds(paper, bounds.inflate(half, half)) {
            Flaw::OffPaper
        } else if mark.role() != Role::Furniture && !holds(frame, bounds) {
            Flaw::OutOfFrame
        } else {
            continue;
        };
        defects.push(Defect::new(flaw, bounds.center(), ""));
    }
    for (text, lettered) in &lettering.texts {
        let flaw = if !holds(paper, lettered.upright()) {
            Flaw::OffPaper
        } else if text.words.chars().count() > ZONE_NAME && !holds(frame, lettered.upright()) {
            Flaw::OutOfFrame
        } else {
            continue;
        };
        defects.push(Defect::new(flaw, lettered.middle(), &text.words));
    }
    defects
}

fn holds(outer: Rect, inner: Rect) -> bool {
    inner.x0 >= outer.x0 - SHARED
        && inner.y0 >= outer.y0 - SHARED
        && inner.x1 <= outer.x1 + SHARED
        && inner.y1 <= outer.y1 + SHARED
}

/// The frame: bounds of the frame lines that run more than half the paper. Centring marks have its width but are short.
fn frame(sheet: &Sheet) -> Option<Rect> {
    sheet
        .marks
        .iter()
        .filter_map(|mark| match mark {
            Mark::Line {
                from,
                to,
                pen: Pen::Frame,
                role: Role::Furniture,
                ..
            } => Some(Rect::from_points(*from, *to)),
            _ => None,
        })
        .filter(|side| side.width() > sheet.width / 2.0 || side.height() > sheet.height / 2.0)
        .reduce(|all, side| all.union(side))
}

#[cfg(test)]
mod tests;
