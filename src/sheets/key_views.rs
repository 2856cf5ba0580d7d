//! Key to the details: face and section, small, with a lettered circle round every place that is enlarged.

use super::board::Board;
use super::detail_places::put_places;
use super::face_view::{Wanted, put_face};
use super::letter_size::TABLE;
use super::scale::{Scale, largest_scale};
use super::section::{SectionView, flange_is_near, put_section, whole_depth};
use super::set::Set;
use super::survey_marks::put_repairs;
use super::view::{PlateBox, View};
use super::{Hang, at};

/// Between face and section, mm: letters stand there.
const BETWEEN: f64 = 22.0;
/// How far a letter may stand from its circle, mm.
const REACH: f64 = 40.0;

/// Puts both views down about the origin of an empty board, the plate itself within a room of so many mm; tells their scale.
pub fn put_key_views(board: &mut Board, set: &Set<'_>, within: (f64, f64)) -> Scale {
    let design = set.design;
    let edge = PlateBox::round(&design.edge);
    let depth = whole_depth(design);
    let wide = edge.width() + depth;
    let scale = largest_scale(wide, edge.height(), within, set.figures.in_inches());
    let f = scale.factor();
    let view = View {
        scale: f,
        centre: at(0.0, 0.0),
    };
    put_face(
        board,
        &view,
        design,
        Wanted {
            tube_numbers: None,
            other_numbers: false,
            edge: true,
            rivets: false,
            signs: false,
        },
    );
    put_repairs(board, set, &view);
    let near = flange_is_near(design);
    let thickness = design.thickness.value().to_mm();
    let start = edge.right * f + BETWEEN;
    let section = SectionView {
        scale: f,
        face_x: start + if near { thickness * f } else { depth * f },
        centre_y: 0.0,
        near,
        thickness,
    };
    put_section(board, &section, design, 1.0);
    let top = view.y(edge.top) - 11.0;
    board.text(at(0.0, top), "FACE VIEW", TABLE, Hang::Middle);
    let middle = (section.x(0.0) + section.x(depth)) / 2.0;
    board.text(at(middle, top), "SECTION X–X", TABLE, Hang::Middle);
    put_places(board, set, (&view, &section), REACH);
    scale
}
