//! Full-size templates of the face in tiles of the job's paper, for checking only, and only where the spec asks for them.

use super::board::{Board, PaperBox};
use super::furniture::room;
use super::letter_size::{FIGURES, NOTES, TABLE};
use super::set::Set;
use super::text_box::text_box;
use super::tile_clip::{put_arc_within, put_line_within};
use super::view::{PlateBox, View};
use super::{Hang, Pen, Role, Text, at};
use crate::design::{Design, Edge, FlangeDesign, Point};
use crate::spec::Spec;
use crate::units::angle::atan2;

/// Paper that a tile shares with its neighbour, mm.
const OVERLAP: f64 = 12.0;
/// Strip at the head of a tile for its words and key, mm.
const HEAD: f64 = 16.0;
/// More tiles than this are no template, but a heap of paper: they are refused.
pub const MOST_TILES: usize = 400;

/// Every tile that has something on it, row by row from the top left; none unless the spec asks.
pub fn templates(set: &Set<'_>) -> Vec<Board> {
    if !set.spec.written.sheets.templates {
        return Vec::new();
    }
    let tiling = Tiling::of(set.design, &set.room());
    if tiling.across * tiling.down > MOST_TILES {
        return Vec::new();
    }
    let mut boards = Vec::new();
    for row in 0..tiling.down {
        for column in 0..tiling.across {
            let mut board = set.board("template", "Template, full size");
            board.scale_words = "1:1".into();
            let before = board.marks.len();
            tiling.put_plate(&mut board, set, (column, row));
            if board.marks.len() == before {
                continue;
            }
            tiling.put_marks(&mut board, (column, row));
            boards.push(board);
        }
    }
    boards
}

/// How many tiles of the job's paper a template takes, across and down, whether it is asked for or not.
pub fn tiles(spec: &Spec, design: &Design) -> (usize, usize) {
    let tiling = Tiling::of(design, &room(spec.written.sheets.paper, false));
    (tiling.across, tiling.down)
}

/// How the face is shared out.
struct Tiling {
    /// The plate with its margin, mm.
    face: PlateBox,
    /// The box of each tile on its sheet.
    tile: PaperBox,
    across: usize,
    down: usize,
}

impl Tiling {
    fn of(design: &Design, room: &PaperBox) -> Tiling {
        let mut face = PlateBox::round(&design.edge);
        // Half a millimetre round the edge, so that its line falls within the outermost tiles.
        let low = Point::new(face.left, face.bottom);
        let high = Point::new(face.right, face.top);
        face.take(low, 0.5);
        face.take(high, 0.5);
        let tile = PaperBox::new(room.left, room.top + HEAD, room.right, room.bottom - 2.0);
        let tiles =
            |whole: f64, one: f64| (((whole - OVERLAP) / (one - OVERLAP)).ceil() as usize).max(1);
        Tiling {
            across: tiles(face.width(), tile.width()),
            down: tiles(face.height(), tile.height()),
            face,
            tile,
        }
    }

    /// Where the barrel centre lies on the sheet of a tile; the whole tiling is centred on the plate.
    fn view(&self, (column, row): (usize, usize)) -> View {
        let steps = (self.tile.width() - OVERLAP, self.tile.height() - OVERLAP);
        let spare =
            |whole: f64, step: f64, count: usize| (step * count as f64 + OVERLAP - whole) / 2.0;
        let aside = spare(self.face.width(), steps.0, self.across);
        let above = spare(self.face.height(), steps.1, self.down);
        View {
            scale: 1.0,
            centre: at(
                self.tile.left + aside - self.face.left - steps.0 * column as f64,
                self.tile.top + above + self.face.top - steps.1 * row as f64,
            ),
        }
    }

    fn put_plate(&self, board: &mut Board, set: &Set<'_>, place: (usize, usize)) {
        let view = self.view(place);
        let tile = self.tile;
        for edge in set.design.edge.edges() {
            put_edge(board, &view, &tile, edge);
        }
        let circle = |board: &mut Board, centre: Point, radius: f64, pen, role| {
            let c = view.place(centre);
            put_arc_within(board, &tile, c, radius, (0.0, 360.0), pen, role);
        };
        let line = match &set.design.flange {
            Some(FlangeDesign::Pressed(p)) => Some(p.tangent_radius),
            Some(FlangeDesign::Fabricated(r)) => Some(r.inner_toe_radius),
            None => None,
        };
        if let Some(radius) = line {
            circle(
                board,
                Point::CENTRE,
                radius.to_mm(),
                Pen::Narrow,
                Role::Centre,
            );
        }
        self.put_datums(board, &view);
        for hole in &set.design.holes {
            let radius = hole.finish.value().to_mm() / 2.0;
            circle(board, hole.at, radius, Pen::Middle, Role::Object);
            let c = view.place(hole.at);
            for (dx, dy) in [(5.0, 0.0), (0.0, 5.0)] {
                let (a, b) = (at(c.x - dx, c.y - dy), at(c.x + dx, c.y + dy));
                put_line_within(board, &tile, a, b, Pen::Narrow, Role::Centre);
            }
            let height = if radius > 9.0 { FIGURES } else { TABLE };
            let number = Text::new(at(c.x + 1.2, c.y - 1.2), hole.id.clone(), height);
            let b = text_box(&number);
            // A number wider than its hole, or cut by the tile, is left to the tile that holds it whole.
            if tile.grown(-1.0).holds(&b) && b.width() + 1.2 < radius * 0.9 {
                board.marks.push(number.into());
            }
        }
    }

    fn put_datums(&self, board: &mut Board, view: &View) {
        let (c, t) = (view.centre, self.tile);
        if c.x > t.left && c.x < t.right {
            board.centre_line(at(c.x, t.top), at(c.x, t.bottom));
        }
        if c.y > t.top && c.y < t.bottom {
            board.centre_line(at(t.left, c.y), at(t.right, c.y));
        }
    }

    /// Overlap crosses in the four corners, words, and the key with this tile filled.
    fn put_marks(&self, board: &mut Board, (column, row): (usize, usize)) {
        let t = self.tile;
        let half = OVERLAP / 2.0;
        let (pen, pattern) = (Pen::Middle, super::Pattern::Continuous);
        for x in [t.left + half, t.right - half] {
            for y in [t.top + half, t.bottom - half] {
                for (dx, dy) in [(half, 0.0), (0.0, half)] {
                    let (a, b) = (at(x - dx, y - dy), at(x + dx, y + dy));
                    board.line(a, b, pen, pattern, Role::Centre);
                }
            }
        }
        let top = board.room.top;
        let words = format!(
            "TILE {} OF A PAPER TEMPLATE FOR CHECKING ONLY: STEEL RULE WINS",
            name(column, row)
        );
        let room = t.width() - 40.0;
        let height = super::letter_size::fitting_height(&words, room, NOTES, true);
        board.bold(at(t.left, top + 4.0), &words, height, Hang::Start);
        let words = "PRINT AT 100 %, NEVER TO FIT. PROVE BOTH BARS AT THE FOOT. LAY TILES CROSS ON CROSS. FINISHED HOLES SHOWN.";
        let height = super::letter_size::fitting_height(words, room, TABLE, false);
        for (i, line) in super::letter_size::wrap(words, room, height, false)
            .iter()
            .enumerate()
        {
            let y = top + 8.0 + i as f64 * height * 1.4;
            board.text(at(t.left, y), line, height, Hang::Start);
        }
        self.put_key(board, (column, row), at(t.right - 34.0, top));
    }

    fn put_key(&self, board: &mut Board, here: (usize, usize), corner: super::PaperPoint) {
        let (high, wide) = (HEAD - 4.0, 32.0);
        let cell = (wide / self.across as f64).min(high / self.down as f64);
        for row in 0..self.down {
            for column in 0..self.across {
                let (x, y) = (
                    corner.x + cell * column as f64,
                    corner.y + cell * row as f64,
                );
                let b = PaperBox::new(x, y, x + cell, y + cell);
                board.ruled_box(b, Pen::Narrow);
                if (column, row) == here {
                    let inside = b.grown(-0.3);
                    let corners = vec![
                        at(inside.left, inside.top),
                        at(inside.right, inside.top),
                        at(inside.right, inside.bottom),
                        at(inside.left, inside.bottom),
                    ];
                    board.filled(corners, Role::Furniture);
                }
            }
        }
    }
}

/// Rows by letter from the top, columns by number from the left: B3.
fn name(column: usize, row: usize) -> String {
    let letter = char::from(b"ABCDEFGHJKLMNPQRSTUVWXYZ"[row % 24]);
    format!("{letter}{}", column + 1)
}

fn put_edge(board: &mut Board, view: &View, tile: &PaperBox, edge: &Edge) {
    match *edge {
        Edge::Line { from, to } => {
            let (a, b) = (view.place(from), view.place(to));
            put_line_within(board, tile, a, b, Pen::Wide, Role::Object);
        }
        Edge::Arc {
            from,
            to,
            centre,
            radius,
            anticlockwise,
        } => {
            // Paper angles run clockwise: an arc that runs anticlockwise on the plate begins, on paper, at its end.
            let (first, last) = if anticlockwise {
                (to, from)
            } else {
                (from, to)
            };
            let angle = |p: Point| -atan2(p.y - centre.y, p.x - centre.x).to_degrees();
            let start = angle(first);
            let mut sweep = (angle(last) - start).rem_euclid(360.0);
            if sweep <= 0.0 {
                sweep = 360.0;
            }
            let c = view.place(centre);
            put_arc_within(
                board,
                tile,
                c,
                radius,
                (start, sweep),
                Pen::Wide,
                Role::Object,
            );
        }
    }
}
