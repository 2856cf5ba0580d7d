//! `tables/holes.csv`: every hole in the flat, where it stands and what is made of it.

use super::{mm, nearest_64th, size, stages, table};
use crate::design::Design;
use crate::pack::PackFile;
use crate::spec::Spec;
use crate::units::Length;

const HEAD: &[&str] = &[
    "id",
    "group",
    "purpose",
    "x_mm",
    "y_mm",
    "x_nearest_64th",
    "x_over_in",
    "y_nearest_64th",
    "y_over_in",
    "finish",
    "finish_mm",
    "stages",
    "exception",
];

pub(super) fn holes(spec: &Spec, design: &Design) -> PackFile {
    let rows = design
        .holes
        .iter()
        .enumerate()
        .map(|(i, hole)| {
            let group = &design.groups[hole.group];
            let (x, y) = (Length::mm(hole.at.x), Length::mm(hole.at.y));
            let mut row = vec![
                hole.id.clone(),
                group.name.clone(),
                group.purpose.name().to_string(),
                mm(x),
                mm(y),
            ];
            row.extend(nearest_64th(x));
            row.extend(nearest_64th(y));
            row.extend(size(&hole.finish));
            row.push(match design.is_made(i) {
                true => stages(&group.stages),
                false => "stands".into(),
            });
            row.push(hole.exception.clone().unwrap_or_default());
            row
        })
        .collect();
    table(spec, "tables/holes.csv", HEAD, rows)
}
