//! Tables beside the setting-out: lines of the nest, counts, and the least metal of each kind.

use super::Hang;
use super::set::Set;
use super::table::Table;
use super::tapped_words::finish_short;
use crate::design::LineWay;
use crate::units::{Length, print};

/// How many holes of each nest, a line each: "100 TUBES T1–T100, FINISHED HOLE {1 27/32}"; of
/// a nest that stands the size is as drawn and not as it was found.
pub fn count_boxes(set: &Set<'_>) -> Vec<String> {
    set.design
        .groups
        .iter()
        .enumerate()
        .filter(|(_, g)| g.purpose.takes_a_tube())
        .map(|(i, g)| {
            let finish = finish_short(set, i);
            let size = match set.design.groups_made().any(|(made, _)| made == i) {
                true => format!("FINISHED HOLE {finish}"),
                false => format!("HOLES STAND, {finish} AS DRAWN"),
            };
            let (off, name) = (set.number_off(i), g.name.to_uppercase());
            format!("{off} {name} {}, {size}", set.numbers(i))
        })
        .collect()
}

/// Columns or rows of the nests; none where no nest lies in lines.
pub fn line_table(set: &Set<'_>) -> Option<Table> {
    let (_, way) = *set.design.line_way.first()?;
    let (title, offset, first, last) = match way {
        LineWay::Columns => (
            "COLUMNS OF THE NEST: x FROM A, y FROM B",
            "x",
            "LOWEST y",
            "HIGHEST y",
        ),
        LineWay::Rows => (
            "ROWS OF THE NEST: y FROM B, x FROM A",
            "y",
            "LEFTMOST x",
            "RIGHTMOST x",
        ),
    };
    let mut table = Table::new(
        title,
        &[
            ("LINE", 10.0, Hang::Middle),
            (offset, 32.5, Hang::End),
            (first, 33.0, Hang::End),
            (last, 33.0, Hang::End),
            ("OFF", 9.0, Hang::Middle),
            ("NUMBERS", 25.0, Hang::Start),
        ],
    );
    for line in &set.design.nest_lines {
        let numbers = match (line.holes.first(), line.holes.last()) {
            (Some(a), Some(b)) if a != b => format!("{a} … {b}"),
            (Some(a), _) => a.clone(),
            (None, _) => String::new(),
        };
        table.rows.push(vec![
            line.name.clone(),
            set.figures.table(Length::mm(line.offset)),
            set.figures.table(Length::mm(line.first)),
            set.figures.table(Length::mm(line.last)),
            line.holes.len().to_string(),
            numbers,
        ]);
    }
    let total: usize = set.design.nest_lines.iter().map(|l| l.holes.len()).sum();
    let row = ["", "", "", "TOTAL", &total.to_string(), ""];
    table.rows.push(row.map(String::from).to_vec());
    table.loud.push(table.rows.len() - 1);
    (!set.design.nest_lines.is_empty()).then_some(table)
}

/// Least metal of each kind of neighbours, and from holes to the lines of the plate that lie near them.
pub fn metal_table(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "LEAST METAL, EDGE TO EDGE",
        &[
            ("BETWEEN", 46.0, Hang::Start),
            ("NUMBERS", 30.0, Hang::Start),
            ("METAL", 32.0, Hang::End),
            ("METAL/PITCH", 24.0, Hang::Middle),
        ],
    );
    let design = set.design;
    for d in &design.directions {
        let (a, b) = d.ligament.holes;
        table.rows.push(vec![
            format!("{}, {}", design.groups[d.group].name, d.direction),
            format!("{}–{}", design.holes[a].id, design.holes[b].id),
            set.figures.table(d.ligament.metal),
            print::decimal(d.efficiency, 3),
        ]);
    }
    for least in &design.least_ligaments {
        let (a, b) = least.ligament.holes;
        let same_nest = least.between.0.takes_a_tube() && least.between.0 == least.between.1;
        let larger = design.holes[a]
            .finish
            .value()
            .max(design.holes[b].finish.value());
        // Holes further apart than the larger of them is wide are no neighbours.
        if same_nest || least.ligament.metal > larger {
            continue;
        }
        table.rows.push(vec![
            format!("{} and {}", least.between.0.name(), least.between.1.name()),
            format!("{}–{}", design.holes[a].id, design.holes[b].id),
            set.figures.table(least.ligament.metal),
            String::new(),
        ]);
    }
    for land in &design.lands {
        if design.holes[land.hole]
            .finish
            .value()
            .shortfall(land.metal)
            .is_some()
        {
            continue;
        }
        table.rows.push(vec![
            format!("{} to {}", land.purpose.name(), land.line.name()),
            design.holes[land.hole].id.clone(),
            set.figures.table(land.metal),
            String::new(),
        ]);
    }
    (!table.rows.is_empty()).then_some(table)
}
