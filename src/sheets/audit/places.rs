//! What stands near what on a sheet: trees of the bounds of lettering and of holes.

use kurbo::{Point, Rect};
use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{AABB, RTree};

use crate::sheets::clear::line_through;
use crate::sheets::lettering_box::LetteringBox;
use crate::sheets::mark::{Mark, PaperPoint, Role, Sheet, Text};

/// Upright bounds in a tree, each with its place in some list.
pub type Bounds = RTree<GeomWithData<Rectangle<[f64; 2]>, usize>>;

fn tree_of(bounds: impl Iterator<Item = Rect>) -> Bounds {
    let entries = bounds.enumerate().map(|(i, bounds)| {
        let corners = Rectangle::from_corners([bounds.x0, bounds.y0], [bounds.x1, bounds.y1]);
        GeomWithData::new(corners, i)
    });
    RTree::bulk_load(entries.collect())
}

/// Places in the list of those whose bounds touch these, lowest first.
pub fn touching(tree: &Bounds, bounds: Rect) -> Vec<usize> {
    let envelope = AABB::from_corners([bounds.x0, bounds.y0], [bounds.x1, bounds.y1]);
    let mut found: Vec<usize> = tree
        .locate_in_envelope_intersecting(envelope)
        .map(|entry| entry.data)
        .collect();
    found.sort_unstable();
    found
}

/// The lettering of a sheet, with its boxes in a tree.
pub struct Lettering<'a> {
    /// Each with its box, in the order of the marks.
    pub texts: Vec<(&'a Text, LetteringBox)>,
    /// Their bounds, by place in the list.
    pub tree: Bounds,
}

impl<'a> Lettering<'a> {
    /// Gathers them from a sheet.
    pub fn of(sheet: &'a Sheet) -> Self {
        let texts: Vec<(&Text, LetteringBox)> = sheet
            .marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Text(text) if text.height > 0.0 && !text.words.trim().is_empty() => {
                    Some((text, LetteringBox::of(text)))
                }
                _ => None,
            })
            .collect();
        let tree = tree_of(texts.iter().map(|(_, lettered)| lettered.upright()));
        Lettering { texts, tree }
    }
}

/// The circles of the object, in a tree.
pub struct Holes {
    circles: Vec<(Point, f64)>,
    tree: Bounds,
}

impl Holes {
    /// Gathers them from a sheet.
    pub fn of(sheet: &Sheet) -> Self {
        let circles: Vec<(Point, f64)> = sheet
            .marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Circle {
                    centre,
                    radius,
                    role: Role::Object,
                    ..
                } => Some(((*centre).into(), *radius)),
                _ => None,
            })
            .collect();
        let square = |(centre, radius): &(Point, f64)| {
            Rect::from_center_size(*centre, (2.0 * radius, 2.0 * radius))
        };
        let tree = tree_of(circles.iter().map(square));
        Holes { circles, tree }
    }

    /// Whether one of them goes round the whole of this lettering.
    pub fn go_round(&self, lettered: &LetteringBox) -> bool {
        touching(&self.tree, lettered.upright())
            .into_iter()
            .any(|i| {
                let (centre, radius) = self.circles[i];
                lettered
                    .corners()
                    .iter()
                    .all(|corner| corner.distance(centre) < radius)
            })
    }

    /// The middles of those that a line runs right through.
    pub fn run_through(&self, from: PaperPoint, to: PaperPoint) -> Vec<Point> {
        touching(&self.tree, Rect::from_points(from, to))
            .into_iter()
            .filter_map(|i| {
                let (centre, radius) = self.circles[i];
                let place = PaperPoint {
                    x: centre.x,
                    y: centre.y,
                };
                line_through(from, to, place, radius).map(|_| centre)
            })
            .collect()
    }
}
