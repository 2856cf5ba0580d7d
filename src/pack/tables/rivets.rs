//! `tables/rivets.csv`: every rivet hole of the flange, by angle and by run along the bore from bottom centre.

use super::{mm, nearest_64th, size, table};
use crate::design::Design;
use crate::pack::PackFile;
use crate::spec::Spec;
use crate::units::print;

const HEAD: &[&str] = &[
    "id",
    "line",
    "angle_deg",
    "run_at_bore_mm",
    "run_at_bore_nearest_64th",
    "run_at_bore_over_in",
    "from_edge",
    "from_edge_mm",
    "hole",
    "hole_mm",
    "made",
    "rivet",
    "rivet_mm",
    "head",
];

pub(super) fn rivets(spec: &Spec, design: &Design) -> PackFile {
    let head = spec.written.rivets.as_ref().and_then(|r| r.head.clone());
    let rows = design
        .rivets
        .iter()
        .flat_map(|line| line.rivets.iter().map(move |rivet| (line, rivet)))
        .map(|(line, rivet)| {
            let mut row = vec![
                rivet.id.clone(),
                line.line.clone(),
                print::decimal(rivet.angle_deg, 4),
                mm(rivet.run),
            ];
            row.extend(nearest_64th(rivet.run));
            row.extend(size(&line.from_edge));
            row.extend(size(&line.hole));
            row.push(rivet.made.name().to_string());
            row.extend(size(&line.rivet));
            row.push(head.clone().unwrap_or_default());
            row
        })
        .collect();
    table(spec, "tables/rivets.csv", HEAD, rows)
}
