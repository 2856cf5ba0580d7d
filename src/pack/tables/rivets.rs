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
        .enumerate()
        .map(|(i, (line, rivet))| {
            let mut row = vec![
                rivet.id.clone(),
                line.line.clone(),
                print::decimal(rivet.angle_deg, 4),
                mm(rivet.run),
            ];
            row.extend(nearest_64th(rivet.run));
            row.extend(from_edge(line, rivet));
            row.extend(size(&line.hole));
            row.push(match design.rivet_is_made(i) {
                true => rivet.made.name().to_string(),
                false => "stands".into(),
            });
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::set_out;
    use crate::spec::read_spec;

    /// Rows of Hobthrush 40.25 mm apart: 36 as written, 76.25, 116.5 mm. The same 36 mm as 1 13/32 in and rows 1 1/2 in apart: 2 29/32 in.
    #[test]
    fn by_hand_each_row_from_the_edge() {
        let told = |line: &RivetLine, index: usize| from_edge(line, &line.rivets[index]);
        let of = |edge: &str, apart: &str| {
            let text = include_str!("../../../specs/hobthrush-smokebox.yaml")
                .replacen("ring_width: 90 mm", "ring_width: 170 mm", 1)
                .replacen("from_edge: 36 mm", &format!("from_edge: {edge}"), 1)
                .replacen(
                    "  count: 48",
                    &format!(
                        "  rows: {{number: 3, arrangement: chain, apart: {apart}}}\n  count: 40"
                    ),
                    1,
                );
            let spec = read_spec("rows.yaml", text.as_bytes()).unwrap_or_else(|f| panic!("{f}"));
            let line = set_out(&spec)
                .expect("a sound plate")
                .rivets
                .expect("rivets");
            [0, 40, 80].map(|index| told(&line, index))
        };
        let of_mm = of("36 mm", "40.25 mm");
        assert_eq!(of_mm[0], ["36 mm", "36.000"]);
        assert_eq!(of_mm[1], ["76.25 mm", "76.250"]);
        assert_eq!(of_mm[2], ["116.5 mm", "116.500"]);
        let of_inches = of("1 13/32 in", "1 1/2 in");
        assert_eq!(of_inches[0], ["1 13/32 in", "35.719"]);
        assert_eq!(of_inches[1], ["2 29/32 in", "73.819"]);
    }

    /// Rivets at 7 1/2° of which one stands on bottom centre, and a piece let in to 33 3/4° on both hands: nine of 48 are new, R5 at 30° among
    /// them and R6 at 37 1/2° not.
    #[test]
    fn by_hand_rivets_of_a_kept_plate_stand() {
        let text = include_str!("../../../specs/gritstone-smokebox.yaml");
        let spec = read_spec("kept.yaml", text.as_bytes()).unwrap_or_else(|f| panic!("{f}"));
        let file = rivets(&spec, &set_out(&spec).expect("a sound plate"));
        let text = String::from_utf8(file.bytes).expect("words");
        let made: Vec<&str> = text
            .lines()
            .skip(1)
            .filter_map(|row| row.split(',').nth(10))
            .collect();
        assert_eq!(made.len(), 48);
        assert_eq!((made[4], made[5]), ("in place", "stands"));
        assert_eq!(made.iter().filter(|made| **made == "stands").count(), 39);
    }
}
