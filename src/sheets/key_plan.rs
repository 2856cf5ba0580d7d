//! A small figure, not to scale, of where the plate sits in the boiler and from where one looks at it.

use super::at;
use super::board::{Board, PaperBox};
use super::dimension::arrow;
use super::face_view::flange_rim;
use super::letter_size::{LABEL, TABLE};
use super::section::flange_is_near;
use super::view::PlateBox;
use super::{Hang, Pattern, Pen, Role};
use crate::design::Design;
use crate::spec::{Kind, ViewFrom};

/// Least height that the figure wants, mm.
pub const HEIGHT: f64 = 34.0;

/// Half the thickness of the plate as drawn, mm.
const PLATE: f64 = 0.6;
/// From the barrel's foot down to the viewing arrow, mm.
const VIEW: f64 = 4.5;
/// A plate carried below the barrel is drawn so far below it at most, mm.
const DEEPEST: f64 = 5.5;

/// Puts the key plan into a box at least 70 mm wide.
pub fn put_key_plan(board: &mut Board, b: PaperBox, design: &Design) {
    board.bold(
        at(b.left, b.top + 3.0),
        "KEY PLAN, NOT TO SCALE",
        TABLE,
        Hang::Start,
    );
    let (left, right) = (b.left + 6.0, b.right - 4.0);
    let length = right - left;
    let (top, foot) = (b.top + 9.0, b.top + 23.0);
    let (smokebox, firebox) = (left + length * 0.25, left + length * 0.72);
    let casing_foot = foot + 7.0;
    let edge = |board: &mut Board, a, c| {
        board.line(a, c, Pen::Narrow, Pattern::Continuous, Role::Object);
    };
    let shapes = [
        [
            at(left, top - 1.0),
            at(smokebox, top - 1.0),
            at(smokebox, foot + 1.0),
            at(left, foot + 1.0),
        ],
        [
            at(smokebox, top),
            at(firebox, top),
            at(firebox, foot),
            at(smokebox, foot),
        ],
        [
            at(firebox, top - 1.0),
            at(right, top - 1.0),
            at(right, casing_foot),
            at(firebox, casing_foot),
        ],
    ];
    for corners in shapes {
        for i in 0..4 {
            edge(board, corners[i], corners[(i + 1) % 4]);
        }
    }
    let heights = plate_heights(design);
    let plate_x = match (design.kind, is_wider(heights)) {
        // A plate wider than the barrel stands before its end.
        (Kind::SmokeboxTubePlate, true) => smokebox - PLATE,
        (Kind::SmokeboxTubePlate, false) => smokebox + 3.0,
    };
    put_plate(board, plate_x, (top, foot), (heights, design));
    let caption = |board: &mut Board, x: f64, words: &str| {
        board.text(
            at(x, (top + foot) / 2.0 + LABEL / 2.0),
            words,
            LABEL,
            Hang::Middle,
        );
    };
    caption(board, (left + smokebox) / 2.0, "SMOKEBOX");
    caption(board, (smokebox + 8.0 + firebox) / 2.0, "BARREL");
    caption(board, (firebox + right) / 2.0, "FIREBOX");
    put_viewing_arrow(board, plate_x, foot + VIEW, design.view_from);
    let y = casing_foot + 0.5;
    board.dimension_line(at(left + 16.0, y), at(left, y));
    arrow(board, at(left - 2.0, y), 180.0);
    board.text(
        at(left + 17.5, y + LABEL / 2.0),
        "FRONT OF ENGINE",
        LABEL,
        Hang::Start,
    );
}

/// Highest and lowest place of the plate, as a share of the barrel's inside radius up and down; one where it fits the barrel.
fn plate_heights(design: &Design) -> (f64, f64) {
    let Some(flange) = &design.flange else {
        return (1.0, 1.0);
    };
    let (outside, _) = flange_rim(design, flange);
    let edge = PlateBox::round(&design.edge);
    let share = |reach: f64| (reach / outside).max(1.0);
    (share(edge.top), share(-edge.bottom))
}

/// Whether a plate reaches beyond the barrel that its flange stands in.
fn is_wider((up, down): (f64, f64)) -> bool {
    up.max(down) > 1.0
}

/// The plate in solid black, its flange on the side it stands towards; the smokebox lies to the left.
fn put_plate(
    board: &mut Board,
    x: f64,
    (top, foot): (f64, f64),
    ((up, down), design): ((f64, f64), &Design),
) {
    let towards_smokebox = flange_is_near(design) == (design.view_from == ViewFrom::Smokebox);
    let side = if towards_smokebox { -1.0 } else { 1.0 };
    let solid = |board: &mut Board, x0: f64, y0: f64, x1: f64, y1: f64| {
        board.filled(
            vec![at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)],
            Role::Object,
        );
    };
    let (middle, half) = ((top + foot) / 2.0, (foot - top) / 2.0 - 0.4);
    let lowest = middle + (half * down).min(half + DEEPEST);
    solid(board, x - PLATE, middle - half * up, x + PLATE, lowest);
    if design.flange.is_some() {
        for y in [top + 0.4, foot - 1.4] {
            solid(board, x, y, x + side * 4.5, y + 1.0);
        }
    }
}

fn put_viewing_arrow(board: &mut Board, plate_x: f64, y: f64, from: ViewFrom) {
    let side = match from {
        ViewFrom::Smokebox => -1.0,
        ViewFrom::Firebox => 1.0,
    };
    let (tip, tail) = (plate_x + side * 1.5, plate_x + side * 12.0);
    board.line(
        at(tail, y),
        at(tip, y),
        Pen::Wide,
        Pattern::Continuous,
        Role::Dimension,
    );
    arrow(board, at(tip, y), if side < 0.0 { 0.0 } else { 180.0 });
    let hang = if side < 0.0 { Hang::End } else { Hang::Start };
    board.text(at(tail + side * 1.2, y + LABEL / 2.0), "VIEW", LABEL, hang);
}
