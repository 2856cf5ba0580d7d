//! Sheet: tube ends and withdrawal. Both ends of the tubes in one view, the tubes lengthwise, the door, and every tube's drift.

use super::board::{Board, PaperBox};
use super::dimension::leader;
use super::face_view::number_height;
use super::flow::{Block, flow};
use super::letter_size::{LINE_PITCH, NOTES, TABLE, wrap};
use super::notes::Notes;
use super::pages::continued;
use super::particulars::view_words;
use super::proving_bar::put_scale_bar;
use super::scale::largest_scale;
use super::set::Set;
use super::tube_end_tables::{ends_figures, every_tube, fouling_table, tilt_table};
use super::tubes_lengthwise::put_tubes_lengthwise;
use super::view::{PlateBox, Stroke, View};
use super::{Hang, Pattern, Pen, Role, at};
use crate::design::{DrawnOut, Hole, Point, RoadForm};
use crate::units::angle::{cos, sin};

/// Width of the column of tables, mm.
const COLUMN: f64 = 128.0;
/// Columns of the table of every tube on A3.
const COLUMNS: usize = 3;
/// Share of the height that the end view takes on upright paper.
const VIEWS_ABOVE: f64 = 0.5;
/// Height of the lengthwise view, mm.
const LENGTHWISE: f64 = 56.0;
/// Room round the end view for its title and leaders, mm.
const FOOT: f64 = 18.0;
const ASIDE: f64 = 6.0;

/// A tube's seat at the other end: dashed, and giving way to numbers.
const FAR_END: Stroke = Stroke {
    pen: Pen::Narrow,
    pattern: Pattern::Dashed,
    role: Role::Centre,
};

/// Tube ends and withdrawal; none where the spec tells of neither.
pub fn tube_ends(set: &Set<'_>) -> Vec<Board> {
    let design = set.design;
    if design.other_ends.is_empty() && design.withdrawal.is_none() {
        return Vec::new();
    }
    let mut board = set.board("tube-ends", "Tube ends and withdrawal");
    let room = board.room;
    let (views, column) = set.shared(&room, COLUMN, 6.0, VIEWS_ABOVE);
    put_both_ends(&mut board, set, &views);
    let mut y = column.top;
    if !design.other_ends.is_empty() {
        let b = PaperBox::new(column.left, y, column.right, y + LENGTHWISE);
        put_tubes_lengthwise(&mut board, set, &b);
        y = b.bottom + 3.0;
    }
    let rest = PaperBox::new(column.left, y, column.right, column.bottom);
    let (mut left_over, _) = flow(&mut board, &rest, blocks(set));
    left_over.extend(every_tube(set).into_iter().map(|t| Block::Table(t, 0)));
    let name = ("tube-ends-table", "Tube ends, every tube");
    continued(set, vec![board], name, COLUMNS, left_over)
}

fn blocks(set: &Set<'_>) -> Vec<Block> {
    let mut blocks: Vec<Block> = ends_figures(set)
        .into_iter()
        .map(|t| Block::Table(t, 0))
        .collect();
    if let Some(drawn) = &set.design.withdrawal {
        blocks.push(Block::Table(fouling_table(set, drawn), 0));
        blocks.extend(tilt_table(set, drawn).map(|table| Block::Table(table, 0)));
    }
    blocks.push(Block::Notes(notes(set).at_height(TABLE), 0));
    blocks
}

fn notes(set: &Set<'_>) -> Notes {
    let mut notes = Vec::new();
    if !set.design.other_ends.is_empty() {
        notes.push("BOTH ENDS ARE DRAWN IN THE AXES OF THIS PLATE. SEEN FROM THE OTHER SIDE THE OTHER PLATE IS THE OPPOSITE HAND: A SYMMETRICAL NEST HIDES A MIRRORED PLATE.".into());
        notes.push("PUT EACH TUBE INTO THE HOLES OF ITS OWN NUMBER AT BOTH ENDS.".into());
    }
    if let Some(drawn) = &set.design.withdrawal {
        notes.push("FOULING: TUBES DRAWN STRAIGHT ALONG THEIR OWN AXES, LARGER END FIRST.".into());
        if drawn.fouls.iter().any(|foul| foul.tilt.is_some()) {
            notes.push("TILT: FROM SQUARE TO THE PLATE, TOWARDS THE DOOR'S CENTRE, THE OTHER END FREE IN THE BARREL. THE TUBES BESIDE IT ARE NOT RECKONED.".into());
        } else if !drawn.fouls.is_empty() && !drawn.distance_is_known {
            notes.push("NO TILT IS INDICATED: THE DOOR'S DISTANCE IS NOT WRITTEN (withdrawal.door.distance).".into());
        }
        notes.push("PROVE THE DOOR'S PLACE ON THE ENGINE BEFORE THE PLATE IS DRILLED.".into());
    }
    Notes::new("NOTES", notes)
}

/// The end view: this plate's holes with their numbers, the other's dashed, the door and what stands in the road.
fn put_both_ends(board: &mut Board, set: &Set<'_>, room: &PaperBox) {
    let design = set.design;
    let mut shown = PlateBox::round(&design.edge);
    if let Some(drawn) = &design.withdrawal {
        shown.take(drawn.door_centre, drawn.door.value().to_mm() / 2.0);
    }
    let inside = (room.width() - 2.0 * ASIDE, room.height() - FOOT - ASIDE);
    let scale = largest_scale(
        shown.width(),
        shown.height(),
        inside,
        set.figures.in_inches(),
    );
    let f = scale.factor();
    board.scale_words = scale.words();
    let view = View {
        scale: f,
        centre: at(
            room.left + (room.width() - shown.width() * f) / 2.0 - shown.left * f,
            room.top + ASIDE + (inside.1 - shown.height() * f) / 2.0 + shown.top * f,
        ),
    };
    view.outline(board, &design.edge, Stroke::TANGENT);
    super::face_view::put_centre_lines(board, &view, &PlateBox::round(&design.edge));
    let nest = |group: usize| design.groups[group].purpose.takes_a_tube();
    // The other end's circle crosses the room inside, so numbers keep further from the rim. One height for all of a group: a
    // larger number would look as if it meant more.
    let height_in =
        |hole: &Hole| number_height(&hole.id, hole.finish.value().to_mm() / 2.0 * f - 0.4);
    let heights: Vec<Option<f64>> = (0..design.groups.len())
        .map(|group| {
            let of_group = design.holes.iter().filter(|h| h.group == group);
            of_group.filter_map(height_in).reduce(f64::min)
        })
        .collect();
    for hole in design.holes.iter().filter(|h| nest(h.group)) {
        let radius = hole.finish.value().to_mm() / 2.0;
        view.circle(board, hole.at, radius, Stroke::SEEN);
        if let (Some(_), Some(height)) = (height_in(hole), heights[hole.group]) {
            let c = view.place(hole.at);
            board.text(at(c.x, c.y + height / 2.0), &hole.id, height, Hang::Middle);
        }
    }
    for end in &design.other_ends {
        let radius = end.hole.value().to_mm() / 2.0;
        for tube in &end.tubes {
            view.circle(board, tube.there, radius, FAR_END);
        }
    }
    if let Some(drawn) = &design.withdrawal {
        put_door(board, set, &view, drawn);
    }
    put_title(board, set, &view, room);
}

/// The door's circle, what stands in the road, and a heavy ring round every tube that fouls.
fn put_door(board: &mut Board, set: &Set<'_>, view: &View, drawn: &DrawnOut) {
    let radius = drawn.door.value().to_mm() / 2.0;
    let door = Stroke {
        pen: Pen::Middle,
        ..Stroke::ADJACENT
    };
    view.circle(board, drawn.door_centre, radius, door);
    for road in &drawn.obstructions {
        match road.form {
            RoadForm::Circle(centre, radius) => view.circle(board, centre, radius, door),
            RoadForm::Box(low, high) => {
                let corners = [
                    low,
                    Point::new(high.x, low.y),
                    high,
                    Point::new(low.x, high.y),
                ];
                for i in 0..4 {
                    view.line(board, corners[i], corners[(i + 1) % 4], door);
                }
            }
        }
    }
    for tube in &drawn.tubes {
        if drawn.fouls.iter().any(|foul| foul.hole == tube.hole) {
            let reach = tube.radius + drawn.clearance.value().to_mm();
            let heavy = Stroke {
                pen: Pen::Frame,
                pattern: Pattern::Continuous,
                role: Role::Centre,
            };
            view.circle(board, tube.at, reach + 1.5 / view.scale, heavy);
        }
    }
    put_door_words(board, set, view, drawn, radius);
}

/// Leaders to the door and to each thing in the road, from outside the nest.
fn put_door_words(board: &mut Board, set: &Set<'_>, view: &View, drawn: &DrawnOut, radius: f64) {
    let along = |deg: f64, radius: f64, centre: Point| {
        let a = deg.to_radians();
        view.place(Point::new(
            centre.x + radius * cos(a),
            centre.y + radius * sin(a),
        ))
    };
    let tip = along(60.0, radius, drawn.door_centre);
    let far = PlateBox::round(&set.design.edge);
    let corner = view.place(Point::new(far.right, far.top));
    let knee = at(corner.x - 22.0, corner.y + 1.5);
    let words = vec![format!("DOOR ⌀{}", set.figures.size_short(&drawn.door))];
    leader(board, tip, knee, &words, TABLE);
    for (i, road) in drawn.obstructions.iter().enumerate() {
        let (tip, below) = match road.form {
            RoadForm::Circle(centre, r) => (along(-60.0, r, centre), centre.y - r),
            RoadForm::Box(low, high) => (view.place(Point::new(high.x, low.y)), low.y),
        };
        let foot = view.place(Point::new(0.0, below.min(far.bottom))).y;
        let knee = at(corner.x - 40.0, foot - 5.0 - 5.0 * i as f64);
        leader(board, tip, knee, &[road.name.to_uppercase()], TABLE);
    }
}

fn put_title(board: &mut Board, set: &Set<'_>, view: &View, room: &PaperBox) {
    let other = if set.design.other_ends.is_empty() {
        ""
    } else {
        "; OTHER END DASHED"
    };
    let words = format!(
        "TUBES OF THIS PLATE {}{other}",
        view_words(set.design.view_from)
    );
    put_scale_bar(
        board,
        at(room.left + 3.0, room.bottom - 6.0),
        view.scale,
        set.figures,
    );
    let wide = room.width() - 84.0;
    for (i, line) in wrap(&words, wide, NOTES, true).iter().enumerate() {
        let y = room.bottom - 6.5 + i as f64 * NOTES * LINE_PITCH;
        board.bold(at(room.left + 84.0, y), line, NOTES, Hang::Start);
    }
}
