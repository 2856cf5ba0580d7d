//! How far dimension lines stand from one another and from what they measure.

use kurbo::{PathEl, Point};

use crate::sheets::board::{Board, Stated};
use crate::sheets::curves::path_of;
use crate::sheets::{Mark, PaperPoint, Role};

/// The least from line to line, mm.
const NEXT: f64 = 7.0;
/// The least from the outline to the first line, mm: about ten.
const FIRST: f64 = 9.0;
/// Lines that share less than this only meet end to end, mm.
const SHARED: f64 = 0.5;
/// Edges beside the ends of a line, where its extension lines run, are not before it, mm.
const BETWEEN: f64 = 0.2;
/// Chords of an arc leave it by no more than this, mm.
const FLAT: f64 = 0.05;

/// A dimension line turned level: where it lies, and from where to where it runs.
#[derive(Clone, Copy)]
struct Level {
    y: f64,
    from: f64,
    to: f64,
}

fn turned(p: PaperPoint, upright: bool) -> PaperPoint {
    match upright {
        true => PaperPoint { x: p.y, y: p.x },
        false => p,
    }
}

fn level(s: &Stated, upright: bool) -> Option<Level> {
    let (a, b) = (turned(s.from, upright), turned(s.to, upright));
    ((a.y - b.y).abs() < 1e-6 && (a.x - b.x).abs() > SHARED).then(|| Level {
        y: a.y,
        from: a.x.min(b.x),
        to: a.x.max(b.x),
    })
}

/// What stands too near, of the dimension lines across or of those upright.
pub fn too_close(board: &Board, upright: bool) -> Vec<String> {
    let lines: Vec<(Level, &str)> = board
        .stated
        .iter()
        .filter_map(|s| Some((level(s, upright)?, s.words.as_str())))
        .collect();
    let mut found = Vec::new();
    for (i, (a, words)) in lines.iter().enumerate() {
        for (b, other) in &lines[i + 1..] {
            let shared = a.to.min(b.to) - a.from.max(b.from);
            let apart = (a.y - b.y).abs();
            if shared > SHARED && apart > 1e-6 && apart < NEXT {
                found.push(format!("{words} and {other} are {apart:.1} mm apart"));
            }
        }
        if let Some(apart) = from_outline(board, *a, upright)
            && apart < FIRST - 1e-6
        {
            found.push(format!("{words} is {apart:.1} mm from its outline"));
        }
    }
    found
}

/// From a dimension line to the nearest edge within its length on the side that its extension lines come from; nothing where
/// it has none, or where edges lie on both sides, since then it stands within the object.
fn from_outline(board: &Board, line: Level, upright: bool) -> Option<f64> {
    let comes_from = board.marks.iter().find_map(|mark| match mark {
        Mark::Line {
            from,
            to,
            role: Role::Extension,
            ..
        } => {
            let (a, b) = (turned(*from, upright), turned(*to, upright));
            let at_end = [line.from, line.to].iter().any(|x| (a.x - x).abs() < 1e-6);
            let across = (a.x - b.x).abs() < 1e-6;
            let ends_here = (b.y - line.y).abs() < 2.5;
            (at_end && across && ends_here).then(|| (a.y - line.y).signum())
        }
        _ => None,
    })?;
    let mut nearest: Option<f64> = None;
    for mark in board.marks.iter().filter(|m| m.role() == Role::Object) {
        let Some(path) = path_of(mark) else { continue };
        for place in places_along(&path) {
            let p = turned(
                PaperPoint {
                    x: place.x,
                    y: place.y,
                },
                upright,
            );
            if p.x < line.from + BETWEEN || p.x > line.to - BETWEEN {
                continue;
            }
            let apart = (p.y - line.y) * comes_from;
            if apart.abs() < 1e-6 {
                return None;
            }
            if apart > 0.0 {
                nearest = Some(nearest.map_or(apart, |n: f64| n.min(apart)));
            }
        }
    }
    nearest
}

/// Places along a path, a millimetre apart or less.
fn places_along(path: &kurbo::BezPath) -> Vec<Point> {
    let mut places: Vec<Point> = Vec::new();
    kurbo::flatten(path, FLAT, |element| match element {
        PathEl::LineTo(to) => {
            let from = places.last().copied().unwrap_or(to);
            let steps = from.distance(to).ceil().max(1.0) as usize;
            places.extend((1..=steps).map(|i| from.lerp(to, i as f64 / steps as f64)));
        }
        PathEl::MoveTo(to) => places.push(to),
        _ => {}
    });
    places
}

/// Lines 6 mm apart that run beside one another are too close; 8 mm apart, or end to end, they are not. An edge 4 mm under its
/// dimension is found.
#[test]
fn by_hand_spacing() {
    use crate::sheets::at;
    use crate::sheets::board::PaperBox;
    use crate::sheets::dimension::{Says, across};
    use crate::units::Length;
    let found = |edge: f64, second: f64, start: f64| {
        let mut board = Board::new("trial", "Trial", PaperBox::new(0.0, 0.0, 200.0, 200.0));
        board.edge_line(at(50.0, edge), at(150.0, edge));
        for (from, to, y) in [(50.0, 100.0, 90.0), (start, 150.0, second)] {
            let says = Says {
                words: "50",
                length: Length::mm(to - from),
                scale: 1.0,
            };
            across(&mut board, at(from, edge), at(to, edge), y, says);
        }
        too_close(&board, false).len()
    };
    assert_eq!(found(100.0, 82.0, 50.0), 0);
    assert_eq!(found(100.0, 84.0, 50.0), 1);
    assert_eq!(found(100.0, 84.0, 100.0), 0);
    assert_eq!(found(94.0, 82.0, 50.0), 1);
}
