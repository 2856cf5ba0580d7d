//! `tables/rivets.csv`: every rivet hole of the flange, by angle and by run along the bore from bottom centre.

use super::{mm, nearest_64th, size, table};
use crate::design::{Design, Rivet, RivetLine};
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
            row.extend(from_edge(line, rivet));
            row.extend(size(&line.hole));
            row.push(rivet.made.name().to_string());
            row.extend(size(&line.rivet));
            row.push(head.clone().unwrap_or_default());
            row
        })
        .collect();
    table(spec, "tables/rivets.csv", HEAD, rows)
}

/// From the flange's edge: of the row nearest to it as written, of the others as it comes of that and the rows' distance.
fn from_edge(line: &RivetLine, rivet: &Rivet) -> [String; 2] {
    match rivet.row {
        1 => size(&line.from_edge),
        row => {
            let length = line.from_edge_of(row);
            let summed = match line.from_edge.as_written().contains("mm") {
                true => format!("{} mm", print::trimmed(length.to_mm(), 3)),
                false => print::inches_with_remainder(length),
            };
            [summed, mm(length)]
        }
    }
}
