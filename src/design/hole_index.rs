//! Finds the holes near a place without looking at every hole: the only file that names the search tree.

use rstar::RTree;
use rstar::primitives::GeomWithData;

use super::{Hole, Point};
use crate::units::tolerance::SAME_LENGTH_MM;

/// Places in a tree, each with the number it was given; built once for a plate.
pub struct HoleIndex {
    tree: RTree<GeomWithData<[f64; 2], usize>>,
}

impl HoleIndex {
    /// The centres of holes, numbered as they stand in the slice.
    pub fn new(holes: &[Hole]) -> HoleIndex {
        HoleIndex::of_places(holes.iter().map(|h| h.at).enumerate())
    }

    /// Any places, each with its number. Places that are not numbers are left out.
    pub fn of_places(places: impl IntoIterator<Item = (usize, Point)>) -> HoleIndex {
        let elements = places.into_iter().filter(|(_, p)| p.is_finite());
        let elements = elements.map(|(number, p)| GeomWithData::new([p.x, p.y], number));
        HoleIndex {
            tree: RTree::bulk_load(elements.collect()),
        }
    }

    /// The numbers of the places no further than this from a place, in no order that may be relied on.
    pub fn within(&self, place: Point, reach: f64) -> impl Iterator<Item = usize> + '_ {
        let reach = reach + SAME_LENGTH_MM;
        self.tree
            .locate_within_distance([place.x, place.y], reach * reach)
            .map(|found| found.data)
    }

    /// The same, in the order of the numbers.
    pub fn within_sorted(&self, place: Point, reach: f64) -> Vec<usize> {
        let mut found: Vec<usize> = self.within(place, reach).collect();
        found.sort_unstable();
        found
    }

    /// The numbers of the places, nearest first; places equally near in no order that may be relied on.
    pub fn nearest_first(&self, place: Point) -> impl Iterator<Item = usize> + '_ {
        self.tree
            .nearest_neighbor_iter([place.x, place.y])
            .map(|found| found.data)
    }

    /// Square of the distance to the nearest place, mm²; none where there are no places.
    pub fn nearest_squared(&self, place: Point) -> Option<f64> {
        self.tree
            .nearest_neighbor_with_distance_2([place.x, place.y])
            .map(|(_, squared)| squared)
    }
}
