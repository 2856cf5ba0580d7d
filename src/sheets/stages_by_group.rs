//! Sheet: stages by group. What size every hole is to be after each stage, a map of the groups, the tools, the hold points.

use super::board::{Board, PaperBox};
use super::count_sheet::no_further;
use super::flow::{Block, flow};
use super::letter_size::{NOTES, TABLE};
use super::notes::Notes;
use super::pages::continued;
use super::paper_size::is_upright;
use super::particulars::view_words;
use super::scale::largest_scale;
use super::set::Set;
use super::stage_matrix::{stage_matrix, tool_list};
use super::survey_marks::put_repairs;
use super::symbols::{put_signed_hole, signs_of};
use super::tapped_words::finish_short;
use super::view::{PlateBox, Stroke, View};
use super::{Hang, at, face};

const NAME: &str = "stages";
const TITLE: &str = "Stages by group";
/// The map takes no less height than this, mm; else it goes on the next sheet.
const LEAST_MAP: f64 = 100.0;
/// Clear strip at the head of upright paper, mm.
const CENTRING: f64 = 3.0;
/// Width of the map with its key, mm.
const MAP: f64 = 184.0;
/// Radius of a sign in the key, mm.
const KEY_SIGN: f64 = 2.2;
/// From line to line of the key, mm.
const KEY_LINE: f64 = 7.0;
/// Width of the key, mm.
const KEY: f64 = 54.0;

/// The stages over as many sheets as they need; none for a plate without holes.
pub fn stages_by_group(set: &Set<'_>) -> Vec<Board> {
    let nothing_is_made = set.design.kept && stage_matrix(set).rows.is_empty();
    if set.design.groups.is_empty() || nothing_is_made {
        return Vec::new();
    }
    let mut boards = Vec::new();
    let mut board = set.board(NAME, TITLE);
    let mut room = board.room;
    // On upright paper the centring mark reaches into the table's title.
    if is_upright(set.paper) {
        room.top += CENTRING;
    }
    let mut blocks = vec![Block::Table(stage_matrix(set), 0)];
    let mut y;
    loop {
        (blocks, y) = flow(&mut board, &room, blocks);
        let full = !blocks.is_empty() || room.bottom - y < LEAST_MAP;
        if !full {
            break;
        }
        let stuck = blocks.len() == 1 && y <= room.top;
        boards.push(std::mem::replace(&mut board, set.board(NAME, TITLE)));
        if stuck || boards.len() > 50 {
            break;
        }
    }
    // On upright paper the map takes the width, and the rest goes on.
    let wide = MAP.min(room.width());
    let map = PaperBox::new(room.left, y, room.left + wide, room.bottom);
    put_map(&mut board, set, &map);
    let column = PaperBox::new(room.left + wide + 8.0, y, room.right, room.bottom);
    let rest = vec![
        Block::Caution(no_further(set), 3.5),
        Block::Table(tool_list(set), 0),
        Block::Notes(hold_points(), 0),
    ];
    let rest = match column.width() > 0.0 {
        true => flow(&mut board, &column, rest).0,
        false => rest,
    };
    boards.push(board);
    continued(set, boards, (NAME, TITLE), 2, rest)
}

/// A hold point is signed once, and not on every sheet that a hold concerns.
fn hold_points() -> Notes {
    Notes {
        title: "HOLD POINTS".into(),
        notes: vec!["THEY ARE SIGNED ON THE INSPECTION RECORD ALONE.".into()],
        height: TABLE,
        numbered: false,
    }
}

/// The plate with the sign of its group in every hole, and the key beside it.
fn put_map(board: &mut Board, set: &Set<'_>, room: &PaperBox) {
    let edge = PlateBox::round(&set.design.edge);
    let space = (room.width() - KEY - 4.0, room.height() - 9.0);
    let scale = largest_scale(edge.width(), edge.height(), space, set.figures.in_inches());
    board.scale_words = scale.words();
    let f = scale.factor();
    let view = View {
        scale: f,
        centre: at(
            room.left + (space.0 - edge.width() * f) / 2.0 - edge.left * f,
            room.top + (space.1 - edge.height() * f) / 3.0 + edge.top * f,
        ),
    };
    view.outline(board, &set.design.edge, Stroke::SEEN);
    let b = view.paper_box(&edge).grown(2.0);
    board.centre_line(at(view.centre.x, b.top), at(view.centre.x, b.bottom));
    board.centre_line(at(b.left, view.centre.y), at(b.right, view.centre.y));
    let signs = signs_of(set.design);
    for (i, hole) in set.design.holes.iter().enumerate() {
        let radius = hole.finish.value().to_mm() / 2.0;
        match set.design.is_made(i) {
            true => put_signed_hole(board, view.place(hole.at), radius * f, signs[hole.group]),
            false => view.circle(board, hole.at, radius, Stroke::TANGENT),
        }
    }
    put_repairs(board, set, &view);
    let words = format!("MAP OF GROUPS, {}", view_words(set.design.view_from));
    let height = super::letter_size::fitting_height(&words, space.0, NOTES, true);
    board.bold(at(room.left, b.bottom + 6.0), &words, height, Hang::Start);
    put_key(
        board,
        set,
        &PaperBox::new(room.right - KEY, room.top, room.right, room.bottom),
    );
}

fn put_key(board: &mut Board, set: &Set<'_>, room: &PaperBox) {
    let mut y = room.top + 4.0;
    board.bold(at(room.left, y), "KEY", NOTES, Hang::Start);
    y += KEY_LINE;
    let signs = signs_of(set.design);
    for (index, group) in set.design.groups_made() {
        if y + KEY_SIGN > room.bottom {
            break;
        }
        let c = at(room.left + 4.0, y);
        put_signed_hole(board, c, KEY_SIGN, signs[index]);
        let words = format!("{} × {}", set.made_off(index), finish_short(set, index));
        let left = room.left + 9.0;
        board.bold(at(left, y + NOTES / 2.0), &words, NOTES, Hang::Start);
        let beside = left + face::width(&words, NOTES, true) + 3.0;
        let name = &group.name;
        let fits = face::width(name, TABLE, false) <= room.right - beside;
        if fits {
            board.text(at(beside, y + TABLE / 2.0), name, TABLE, Hang::Start);
        } else {
            y += KEY_LINE * 0.75;
            board.text(at(left, y + TABLE / 2.0), name, TABLE, Hang::Start);
        }
        y += KEY_LINE;
    }
    if set.design.kept {
        let line = Stroke::TANGENT;
        let c = at(room.left + 4.0, y);
        board.circle(c, KEY_SIGN, line.pen, line.pattern, line.role);
        let words = at(room.left + 9.0, y + TABLE / 2.0);
        board.text(words, "STANDS", TABLE, Hang::Start);
    }
}
