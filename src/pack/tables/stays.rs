//! `tables/stays.csv`: every stay hole, and the stay that goes through it as the spec describes it.

use super::{mm, nearest_64th, size, size_or_blank, stages, table};
use crate::design::{Design, HoleGroup};
use crate::pack::PackFile;
use crate::spec::{Nut, Purpose, Spec, StaySpec, Washer};
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
    "outside_nut_across_flats",
    "outside_nut_across_flats_mm",
    "outside_nut_thickness",
    "outside_nut_thickness_mm",
    "outside_washer_diameter",
    "outside_washer_diameter_mm",
    "outside_washer_thickness",
    "outside_washer_thickness_mm",
    "inside_nut_across_flats",
    "inside_nut_across_flats_mm",
    "inside_nut_thickness",
    "inside_nut_thickness_mm",
    "inside_washer_diameter",
    "inside_washer_diameter_mm",
    "inside_washer_thickness",
    "inside_washer_thickness_mm",
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
            row.extend(nut_and_washer(stay, |s| {
                (&s.outside_nut, &s.outside_washer)
            }));
            row.extend(nut_and_washer(stay, |s| (&s.inside_nut, &s.inside_washer)));
            row.push(stages(&group.stages));
            row.push(group.remarks.clone().unwrap_or_default());
            row
        })
        .collect();
    table(spec, "tables/stays.csv", HEAD, rows)
}

/// Sizes of the nut and the washer on one side of the plate, as far as the spec gives them.
fn nut_and_washer(
    stay: Option<&StaySpec>,
    side: impl Fn(&StaySpec) -> (&Option<Nut>, &Option<Washer>),
) -> Vec<String> {
    let (nut, washer) = stay.map_or((&None, &None), side);
    let (nut, washer) = (nut.as_ref(), washer.as_ref());
    let sizes = [
        nut.map(|nut| &nut.across_flats),
        nut.map(|nut| &nut.thickness),
        washer.map(|washer| &washer.diameter),
        washer.map(|washer| &washer.thickness),
    ];
    sizes.into_iter().flat_map(size_or_blank).collect()
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
