//! `tables/stays.csv`: every stay hole, and the stay that goes through it as the spec describes it.

use super::{mm, nearest_64th, size, size_or_blank, stages, table};
use crate::design::{Design, HoleGroup};
use crate::pack::PackFile;
use crate::spec::{Purpose, Spec, StaySpec};
use crate::units::{Length, print};

const HEAD: &[&str] = &[
    "id",
    "group",
    "x_mm",
    "y_mm",
    "x_nearest_64th",
    "x_over_in",
    "y_nearest_64th",
    "y_over_in",
    "hole",
    "hole_mm",
    "kind",
    "diameter",
    "diameter_mm",
    "threads_per_inch",
    "telltale",
    "telltale_mm",
    "needs_clear",
    "needs_clear_mm",
    "stages",
    "remarks",
];

pub(super) fn stays(spec: &Spec, design: &Design) -> PackFile {
    let rows = design
        .holes
        .iter()
        .map(|hole| (hole, &design.groups[hole.group]))
        .filter(|(_, group)| group.purpose == Purpose::Stay)
        .map(|(hole, group)| {
            let stay = stay_of(spec, group);
            let (x, y) = (Length::mm(hole.at.x), Length::mm(hole.at.y));
            let mut row = vec![hole.id.clone(), group.name.clone(), mm(x), mm(y)];
            row.extend(nearest_64th(x));
            row.extend(nearest_64th(y));
            row.extend(size(&hole.finish));
            row.push(
                stay.map(|stay| stay.kind.name().to_string())
                    .unwrap_or_default(),
            );
            row.extend(size_or_blank(stay.map(|stay| &stay.diameter)));
            row.push(
                stay.map(|stay| threads(stay.threads_per_inch))
                    .unwrap_or_default(),
            );
            row.extend(size_or_blank(stay.and_then(|stay| stay.telltale.as_ref())));
            row.extend(size_or_blank(group.needs_clear.as_ref()));
            row.push(stages(&group.stages));
            row.push(group.remarks.clone().unwrap_or_default());
            row
        })
        .collect();
    table(spec, "tables/stays.csv", HEAD, rows)
}

/// The stay as the spec has it, by the group's place in the spec.
fn stay_of<'a>(spec: &'a Spec, group: &HoleGroup) -> Option<&'a StaySpec> {
    let sets = &spec.written.holes;
    let number = (0..sets.len()).find(|number| group.path == format!("holes[{number}]"))?;
    sets[number].stay.as_ref()
}

/// 11, or 11.5 where it is no whole number.
fn threads(to_the_inch: f64) -> String {
    let text = print::decimal(to_the_inch, 3);
    text.trim_end_matches('0').trim_end_matches('.').to_string()
}
