//! Sizes of a part's cut edge beside its picture: over all, every radius, and the foot of a plate with its depth below the centre.
//!
//! They are read from the very contour that is cut, metal for dressing and all, so that picture, file and order say the same.

use super::board::Board;
use super::dimension::{FIRST_ROW, NEXT_ROW, Says, across, upwards};
use super::edge_dimensions::put_radius;
use super::figure::Figures;
use super::view::{PlateBox, View};
use crate::cut::{CutPart, Layer, PartKind, Shape};
use crate::design::{Edge, Outline, Point};
use crate::units::Length;
use crate::units::print::millimetres;
use crate::units::tolerance::SAME_LENGTH_MM;

/// How a length reads beside a part.
#[derive(Clone, Copy)]
pub enum Reads {
    /// In millimetres alone, as in the order.
    Millimetres,
    /// As on the job's sheets, with the cutter's millimetres.
    Sheet(Figures),
}

impl Reads {
    fn length(self, length: Length) -> String {
        match self {
            Reads::Millimetres => millimetres(length),
            Reads::Sheet(figures) => figures.for_cutter(length),
        }
    }

    fn diameter(self, length: Length) -> String {
        match self {
            Reads::Millimetres => format!("⌀{}", millimetres(length)),
            Reads::Sheet(figures) => figures.diameter_for_cutter(length),
        }
    }
}

/// Where the diameter of a round part stands.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Across {
    /// Above the part, where what stands below leaves it no room.
    Above,
    /// Below it.
    Below,
}

/// Rows of dimensions below a part.
pub fn rows_below(part: &CutPart) -> usize {
    match edge_of(part).and_then(|edge| foot_of(part, edge)) {
        Some(_) => 2,
        None => 1,
    }
}

/// Puts down the sizes of what is cut outside.
pub fn put_cut_sizes(board: &mut Board, part: &CutPart, view: &View, reads: Reads, disc: Across) {
    for (layer, shape) in &part.shapes {
        match shape {
            Shape::Circle { centre, radius } if *layer == Layer::CutOutside => {
                put_diameter(board, view, *centre, *radius, reads, disc);
            }
            Shape::Closed(edge) if *layer == Layer::CutOutside => {
                put_edge(board, part, edge, view, reads);
            }
            _ => {}
        }
    }
}

fn put_diameter(
    board: &mut Board,
    view: &View,
    centre: Point,
    radius: f64,
    reads: Reads,
    disc: Across,
) {
    let diameter = Length::mm(2.0 * radius);
    let row = match disc {
        Across::Above => view.y(centre.y + radius) - FIRST_ROW,
        Across::Below => view.y(centre.y - radius) + FIRST_ROW,
    };
    across(
        board,
        view.place(Point::new(centre.x - radius, centre.y)),
        view.place(Point::new(centre.x + radius, centre.y)),
        row,
        Says {
            words: &reads.diameter(diameter),
            length: diameter,
            scale: view.scale,
        },
    );
}

fn put_edge(board: &mut Board, part: &CutPart, edge: &Outline, view: &View, reads: Reads) {
    let b = PlateBox::round(edge);
    let foot = foot_of(part, edge);
    let says = |board: &mut Board, a: Point, b: Point, row: f64, is_across: bool| {
        let length = Length::mm(match is_across {
            true => (b.x - a.x).abs(),
            false => (b.y - a.y).abs(),
        });
        let words = reads.length(length);
        let says = Says {
            words: &words,
            length,
            scale: view.scale,
        };
        let (a, b) = (view.place(a), view.place(b));
        match is_across {
            true => across(board, a, b, row, says),
            false => upwards(board, a, b, row, says),
        }
    };
    let (mut below, mut left) = (view.y(b.bottom) + FIRST_ROW, view.x(b.left) - FIRST_ROW);
    if let Some((from, to)) = foot {
        says(board, from, to, below, true);
        let side = lowest(edge, |p| p.x - b.left);
        says(board, from, Point::new(side.x, 0.0), left, false);
        below += NEXT_ROW;
        left -= NEXT_ROW;
    }
    let (low_left, low_right) = (
        lowest(edge, |p| p.x - b.left),
        lowest(edge, |p| b.right - p.x),
    );
    says(board, low_left, low_right, below, true);
    let (foot_left, top_left) = (
        leftmost(edge, |p| p.y - b.bottom),
        leftmost(edge, |p| b.top - p.y),
    );
    says(board, foot_left, top_left, left, false);
    for (radius, words) in radii(edge, reads) {
        put_radius(board, edge.edges(), view, radius, words);
    }
}

fn edge_of(part: &CutPart) -> Option<&Outline> {
    part.shapes.iter().find_map(|(layer, shape)| match shape {
        Shape::Closed(edge) if *layer == Layer::CutOutside => Some(edge),
        _ => None,
    })
}

/// The straight foot of a plate, from left to right, where it is narrower than the plate and lies below the barrel centre.
fn foot_of(part: &CutPart, edge: &Outline) -> Option<(Point, Point)> {
    let b = PlateBox::round(edge);
    if part.kind != PartKind::Plate || b.bottom >= 0.0 {
        return None;
    }
    edge.edges().iter().find_map(|piece| {
        let Edge::Line { from, to } = *piece else {
            return None;
        };
        let on_the_foot = |p: Point| p.y - b.bottom <= SAME_LENGTH_MM;
        let narrower = (to.x - from.x).abs() < b.width() - SAME_LENGTH_MM;
        let (left, right) = if from.x <= to.x {
            (from, to)
        } else {
            (to, from)
        };
        (on_the_foot(from) && on_the_foot(to) && narrower).then_some((left, right))
    })
}

/// Corners of an edge and the outermost places of its arcs: nothing of it lies further out any way along the axes.
fn outermost(edge: &Outline) -> impl Iterator<Item = Point> {
    edge.edges().iter().flat_map(|piece| {
        let mut places = vec![piece.from()];
        if let Edge::Arc { centre, radius, .. } = *piece {
            let ways = [(radius, 0.0), (-radius, 0.0), (0.0, radius), (0.0, -radius)];
            let on_axes = ways.map(|(x, y)| Point::new(centre.x + x, centre.y + y));
            places.extend(
                on_axes
                    .into_iter()
                    .filter(|p| piece.distance(*p) <= SAME_LENGTH_MM),
            );
        }
        places
    })
}

/// Of the places that lie on a side of the box round an edge, the lowest: where an extension line downwards begins.
fn lowest(edge: &Outline, from_the_side: impl Fn(Point) -> f64) -> Point {
    let on_the_side = outermost(edge).filter(|p| from_the_side(*p) <= SAME_LENGTH_MM);
    on_the_side
        .min_by(|a, b| a.y.total_cmp(&b.y))
        .expect("an edge touches every side of the box round it")
}

/// Of those places the leftmost.
fn leftmost(edge: &Outline, from_the_side: impl Fn(Point) -> f64) -> Point {
    let on_the_side = outermost(edge).filter(|p| from_the_side(*p) <= SAME_LENGTH_MM);
    on_the_side
        .min_by(|a, b| a.x.total_cmp(&b.x))
        .expect("an edge touches every side of the box round it")
}

/// Each radius of an edge once, with how many arcs have it where it is more than one. An arc that is drawn in two pieces is one.
fn radii(edge: &Outline, reads: Reads) -> Vec<(f64, String)> {
    let mut found: Vec<(f64, Vec<Point>)> = Vec::new();
    for piece in edge.edges() {
        let Edge::Arc { centre, radius, .. } = *piece else {
            continue;
        };
        let same = |r: f64| (r - radius).abs() <= SAME_LENGTH_MM;
        match found.iter_mut().find(|(r, _)| same(*r)) {
            Some((_, centres)) => {
                if !centres.iter().any(|c| c.distance(centre) <= SAME_LENGTH_MM) {
                    centres.push(centre);
                }
            }
            None => found.push((radius, vec![centre])),
        }
    }
    let words = |(radius, centres): (f64, Vec<Point>)| {
        let figure = reads.length(Length::mm(radius));
        let words = match centres.len() {
            1 => format!("R{figure}"),
            count => format!("{count} × R{figure}"),
        };
        (radius, words)
    };
    found.into_iter().map(words).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample_jobs::with_set;
    use super::*;
    use crate::sheets::{Mark, board::PaperBox};

    /// Hobthrush's edge is a disc of radius 470 on a leg 720 wide that ends 690 below the centre, with two corners R60: it is widest at the
    /// height of the centre, where the disc is, and its foot runs from -360 to 360.
    #[test]
    fn by_hand_a_keyhole_plate_has_all_its_sizes_and_lines_begin_on_its_edge() {
        with_set("specs/hobthrush-smokebox.yaml", |set| {
            let plate = &set.parts[0];
            let edge = edge_of(plate).expect("no disc");
            let b = PlateBox::round(edge);
            for (found, x, y) in [
                (lowest(edge, |p| p.x - b.left), -470.0, 0.0),
                (lowest(edge, |p| b.right - p.x), 470.0, 0.0),
                (leftmost(edge, |p| p.y - b.bottom), -360.0, -690.0),
                (leftmost(edge, |p| b.top - p.y), 0.0, 470.0),
            ] {
                assert!(found.distance(Point::new(x, y)) <= 1e-6, "{found:?}");
            }
            let mut board = Board::new("t", "t", PaperBox::new(0.0, 0.0, 400.0, 400.0));
            let view = View {
                scale: 0.2,
                centre: crate::sheets::at(200.0, 200.0),
            };
            put_cut_sizes(&mut board, plate, &view, Reads::Millimetres, Across::Below);
            let mut stated: Vec<&str> = board.stated.iter().map(|s| s.words.as_str()).collect();
            stated.sort_unstable();
            assert_eq!(stated, ["1160", "690", "720", "940"]);
            for words in ["R470", "2 × R60"] {
                let is_it = |mark: &&Mark| matches!(mark, Mark::Text(t) if t.words == words);
                assert!(board.marks.iter().any(|m| is_it(&m)), "{words}");
            }
        });
    }
}
