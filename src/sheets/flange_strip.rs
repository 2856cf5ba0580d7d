//! The flange unrolled: its rivet holes along the girth from bottom centre.

use super::board::{Board, PaperBox};
use super::kept::pieces;
use super::letter_size::{NOTES, TABLE, fitting_height};
use super::scale::largest_scale;
use super::section::flange_is_near;
use super::set::Set;
use super::view::Stroke;
use super::{Hang, Pattern, Pen, Role, at};
use crate::design::{FlangeDesign, RivetLine, RivetMade};

/// Puts the strip into a box as wide as the sheet; its scale is its own.
pub fn put_flange_strip(board: &mut Board, set: &Set<'_>, line: &RivetLine, room: &PaperBox) {
    let Some(flange) = &set.design.flange else {
        return;
    };
    let girth = line.girth_bore.to_mm();
    let straight = match flange {
        FlangeDesign::Pressed(p) => p.straight.value().to_mm(),
        FlangeDesign::Fabricated(f) => f.ring_width.value().to_mm(),
    };
    let scale = largest_scale(
        girth,
        straight,
        (room.width() - 30.0, room.height() - 18.0),
        set.figures.in_inches(),
    );
    let f = scale.factor();
    let left = room.middle().x - girth * f / 2.0;
    let top = room.top + 5.0;
    let foot = top + straight * f;
    let right = left + girth * f;
    board.edge_line(at(left, top), at(right, top));
    board.edge_line(at(left, foot), at(right, foot));
    for x in [left, right] {
        board.line(
            at(x, top - 2.0),
            at(x, foot + 2.0),
            Pen::Narrow,
            Pattern::Chain,
            Role::Centre,
        );
    }
    let near = flange_is_near(set.design);
    let y_of = |row: u32| {
        let from_edge = line.from_edge_of(row).to_mm() * f;
        if near {
            foot - from_edge
        } else {
            top + from_edge
        }
    };
    for row in 1..=line.row_count() {
        let y = y_of(row);
        board.centre_line(at(left, y), at(right, y));
        if line.rows.is_some() {
            let words = format!("ROW {row}");
            board.text(at(right + 2.0, y + TABLE / 2.0), &words, TABLE, Hang::Start);
        }
    }
    for rivet in &line.rivets {
        let c = at(left + rivet.run.to_mm() * f, y_of(rivet.row));
        let r = line.hole.value().to_mm() / 2.0 * f;
        let seen = Stroke::SEEN;
        let pen = if rivet.made == RivetMade::Tack {
            seen.pen
        } else {
            Pen::Narrow
        };
        board.circle(c, r, pen, Pattern::Continuous, Role::Object);
        if rivet.made != RivetMade::InPlace {
            board.line(
                at(c.x, c.y - r - 1.2),
                at(c.x, c.y + r + 1.2),
                Pen::Narrow,
                Pattern::Continuous,
                Role::Centre,
            );
            board.line(
                at(c.x - r - 1.2, c.y),
                at(c.x + r + 1.2, c.y),
                Pen::Narrow,
                Pattern::Continuous,
                Role::Centre,
            );
        }
    }
    for (number, repair, _) in pieces(set) {
        for crossing in &repair.crossings {
            // The strip runs clockwise from bottom centre.
            let x = left + (crossing.angle_deg - 180.0).rem_euclid(360.0) / 360.0 * girth * f;
            let weld = (at(x, top), at(x, foot));
            let pattern = Pattern::Continuous;
            board.line(weld.0, weld.1, Pen::Frame, pattern, Role::Object);
            board.bold(at(x, top - 1.5), &number, TABLE, Hang::Middle);
        }
    }
    let quarter = girth * f / 4.0;
    for (i, words) in ["BOTTOM", "LEFT", "TOP", "RIGHT", "BOTTOM"]
        .iter()
        .enumerate()
    {
        let x = left + quarter * i as f64;
        board.line(
            at(x, top - 1.5),
            at(x, foot + 1.5),
            Pen::Narrow,
            Pattern::Chain,
            Role::Centre,
        );
        board.text(at(x, foot + 2.5 + TABLE), words, TABLE, Hang::Middle);
    }
    // Where the strip is low its two names stand apart from it.
    let apart = ((TABLE * 1.5 - (foot - top)) / 2.0).max(0.0);
    let (high, low) = (top - apart, foot + apart);
    let (edge_y, plate_y) = if near { (low, high) } else { (high, low) };
    board.text(
        at(left - 2.0, edge_y + TABLE / 2.0),
        "EDGE",
        TABLE,
        Hang::End,
    );
    board.text(
        at(left - 2.0, plate_y + TABLE / 2.0),
        match set.design.flange {
            Some(FlangeDesign::Fabricated(_)) => "PLATE",
            Some(FlangeDesign::Pressed(_)) | None => "HEEL",
        },
        TABLE,
        Hang::End,
    );
    let title = format!(
        "FLANGE UNROLLED, SEEN FROM OUTSIDE, RUN AT BORE CLOCKWISE FROM BOTTOM CENTRE, SCALE {}",
        scale.words()
    );
    let height = fitting_height(&title, room.width(), NOTES, true);
    let place = at(room.middle().x, foot + 2.5 + TABLE + 5.0);
    board.bold(place, &title, height, Hang::Middle);
}
