//! `tables/tubes.csv`: tubes and flues by group and finished hole, with the number off, for ordering.
//!
//! The length of a tube also wants the other plate and the projections, which are not this plate's; the length between
//! the plates stands here as the spec gives it.

use super::{size, size_or_blank, table};
use crate::design::Design;
use crate::pack::PackFile;
use crate::spec::{Nest, Spec};
use crate::units::Size;

const HEAD: &[&str] = &[
    "group",
    "purpose",
    "number_off",
    "tube",
    "tube_mm",
    "end_in_this_plate",
    "end_in_this_plate_mm",
    "wall",
    "wall_mm",
    "hole",
    "hole_mm",
    "between_plates",
    "between_plates_mm",
    "first",
    "last",
];

pub(super) fn tubes(spec: &Spec, design: &Design) -> PackFile {
    let mut rows = Vec::new();
    for (number, group) in design.groups.iter().enumerate() {
        if !group.purpose.takes_a_tube() {
            continue;
        }
        let nest = nest_at(spec, &group.path);
        for (finish, ids) in by_finish(design, number) {
            let mut row = vec![
                group.name.clone(),
                group.purpose.name().to_string(),
                ids.len().to_string(),
            ];
            row.extend(size_or_blank(nest.map(|nest| &nest.tube)));
            row.extend(size_or_blank(group.tube_end.as_ref()));
            row.extend(size_or_blank(nest.and_then(|nest| nest.wall.as_ref())));
            row.extend(size(finish));
            row.extend(size_or_blank(
                nest.and_then(|nest| nest.between_plates.as_ref()),
            ));
            row.push(ids.first().map(|id| id.to_string()).unwrap_or_default());
            row.push(ids.last().map(|id| id.to_string()).unwrap_or_default());
            rows.push(row);
        }
    }
    table(spec, "tables/tubes.csv", HEAD, rows)
}

fn nest_at<'a>(spec: &'a Spec, path: &str) -> Option<&'a Nest> {
    let nests = &spec.written.tubes;
    let number = (0..nests.len()).find(|number| path == format!("tubes[{number}]"))?;
    nests.get(number)
}

/// The holes of a group by finished size, in the order in which the sizes first come.
fn by_finish(design: &Design, group: usize) -> Vec<(&Size, Vec<&str>)> {
    let mut sizes: Vec<(&Size, Vec<&str>)> = Vec::new();
    for hole in design.holes.iter().filter(|hole| hole.group == group) {
        match sizes.iter_mut().find(|(size, _)| **size == hole.finish) {
            Some((_, ids)) => ids.push(&hole.id),
            None => sizes.push((&hole.finish, vec![&hole.id])),
        }
    }
    sizes
}
