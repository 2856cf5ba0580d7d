//! What is ordered for a plate: tubes, rivets and stays; and what the finished plate weighs.

use super::Hang;
use super::set::Set;
use super::table::Table;
use crate::design::{FlangeDesign, TubeLength, girth, grip, tube_length};
use crate::units::print::trimmed;

/// The sizes that are asked for at the plate, thickness first.
pub fn plate_sizes(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "PLATE",
        &[("SIZE", 100.0, Hang::Start), ("", 68.0, Hang::End)],
    );
    let fig = set.figures;
    let w = &set.spec.written;
    table.row(vec!["thickness".into(), fig.size(&set.design.thickness)]);
    if let Some(barrel) = &w.barrel {
        table.row(vec!["bore of the barrel".into(), fig.size(&barrel.bore)]);
        let round = girth(barrel.bore.value());
        table.row(vec!["girth of the bore".into(), fig.table(round)]);
    }
    match &set.design.flange {
        Some(FlangeDesign::Pressed(p)) => {
            table.row(vec![
                "flange outside, fit to girth".into(),
                fig.size(&p.outside_diameter),
            ]);
            table.row(vec!["heel radius inside".into(), fig.size(&p.heel_radius)]);
            table.row(vec!["straight of the flange".into(), fig.size(&p.straight)]);
            table.row(vec!["depth over all".into(), fig.table(p.depth)]);
            table.row(vec![
                "blank as cut, diameter".into(),
                fig.table(p.blank_cut),
            ]);
        }
        Some(FlangeDesign::Fabricated(f)) => {
            table.row(vec![
                "ring outside, fit to girth".into(),
                fig.size(&f.ring_outside_diameter),
            ]);
            let bar = format!(
                "{} × {}",
                fig.size_short(&f.ring_width),
                fig.size_short(&f.ring_thickness)
            );
            table.row(vec!["bar of the ring".into(), bar]);
            table.row(vec![
                "strip of the ring as cut".into(),
                fig.table(f.strip_cut),
            ]);
        }
        None => {}
    }
    for pad in &w.pads {
        let off = pad.number_off.unwrap_or(1);
        let bore = pad.bore.as_ref();
        let bore = bore.map_or(String::new(), |bore| {
            format!(", bore {}", fig.size_short(bore))
        });
        table.row(vec![
            format!("{}, {off} off, diameter × thickness", pad.name),
            format!(
                "{} × {}{bore}",
                fig.size_short(&pad.diameter),
                fig.size_short(&pad.thickness)
            ),
        ]);
    }
    let pressure = w
        .working_pressure
        .as_ref()
        .map_or("not given".into(), |p| p.as_written().to_string());
    table.row(vec!["working pressure".into(), pressure]);
    table
}

/// Tubes of each nest with their length where the spec gives its parts; none where there is no nest.
pub fn tube_order(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "TUBE ORDER: LENGTH FROM END TO END, BEFORE BEADING",
        &[
            ("TUBES", 34.0, Hang::Start),
            ("OFF", 12.0, Hang::Middle),
            ("OUTSIDE", 24.0, Hang::Middle),
            ("END HERE", 24.0, Hang::Middle),
            ("WALL", 20.0, Hang::Middle),
            ("LENGTH", 54.0, Hang::Start),
        ],
    );
    let w = &set.spec.written;
    for (i, nest) in w.tubes.iter().enumerate() {
        let path = format!("tubes[{i}]");
        let off = set
            .design
            .groups
            .iter()
            .position(|g| g.path == path)
            .map_or(0, |g| set.number_off(g));
        let size = |s: Option<&crate::units::Size>| {
            s.map_or("not given".into(), |s| set.figures.size_short(s))
        };
        let length = match tube_length(nest, &w.plate) {
            TubeLength::Known(length) => set.figures.table(length),
            TubeLength::Wants(keys) => format!("not worked out: {} not given", keys.join(", ")),
        };
        table.row(vec![
            nest.name.clone(),
            off.to_string(),
            set.figures.size_short(&nest.tube),
            size(Some(nest.tube_end.as_ref().unwrap_or(&nest.tube))),
            size(nest.wall.as_ref()),
            length,
        ]);
    }
    (!table.rows.is_empty()).then_some(table)
}

/// Rivets of the flange, with blanks for length and spares; none where there are no rivets.
pub fn rivet_order(set: &Set<'_>) -> Option<Table> {
    let line = set.design.rivets.as_ref()?;
    let spec = set.spec.written.rivets.as_ref()?;
    let mut table = Table::new(
        "RIVET ORDER",
        &[
            ("RIVET, COLD", 30.0, Hang::Middle),
            ("HEAD", 28.0, Hang::Middle),
            ("GRIP", 34.0, Hang::Middle),
            ("LENGTH UNDER HEAD", 30.0, Hang::Middle),
            ("OFF", 14.0, Hang::Middle),
            ("SPARES", 32.0, Hang::Middle),
        ],
    )
    .filled_in();
    let barrel = set.spec.written.barrel.as_ref();
    let grip = barrel.and_then(|b| grip(set.design, b));
    table.row(vec![
        set.figures.size_short(&line.rivet),
        spec.head.clone().unwrap_or_else(|| "not given".into()),
        grip.map_or("not given".into(), |g| set.figures.table(g)),
        "by trial".into(),
        line.rivets.len().to_string(),
    ]);
    Some(table)
}

/// Stays by group; none where there are none.
pub fn stay_list(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "STAYS",
        &[
            ("STAYS", 40.0, Hang::Start),
            ("OFF", 12.0, Hang::Middle),
            ("KIND", 28.0, Hang::Start),
            ("OVER THREADS", 30.0, Hang::Middle),
            ("THREADS TO THE INCH", 32.0, Hang::Middle),
            ("METAL", 26.0, Hang::Middle),
        ],
    );
    for (i, holes) in set.spec.written.holes.iter().enumerate() {
        let Some(stay) = &holes.stay else {
            continue;
        };
        let path = format!("holes[{i}]");
        let group = set.design.groups.iter().position(|g| g.path == path);
        table.row(vec![
            format!(
                "{} {}",
                holes.name,
                group.map_or(String::new(), |g| set.numbers(g))
            ),
            group.map_or(0, |g| set.number_off(g)).to_string(),
            stay.kind.name().into(),
            set.figures.size_short(&stay.diameter),
            trimmed(stay.threads_per_inch, 2),
            stay.metal.map_or("not given".into(), |m| m.name().into()),
        ]);
    }
    (!table.rows.is_empty()).then_some(table)
}

/// Nuts, washers and plugs of which the spec gives a size, with how many this end wants; none where it gives none.
pub fn fitted_list(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "NUTS, WASHERS AND PLUGS, THIS END",
        &[
            ("FOR", 40.0, Hang::Start),
            ("PART", 34.0, Hang::Start),
            ("OFF", 12.0, Hang::Middle),
            ("SIZE", 82.0, Hang::Start),
        ],
    );
    let fig = set.figures;
    for (i, holes) in set.spec.written.holes.iter().enumerate() {
        let path = format!("holes[{i}]");
        let Some(group) = set.design.groups.iter().position(|g| g.path == path) else {
            continue;
        };
        let mut parts: Vec<(String, String)> = Vec::new();
        if let Some(plug) = &holes.plug {
            parts.push((
                holes.name.clone(),
                format!(
                    "⌀{} large end, one in {}, {} to the inch",
                    fig.size_short(&plug.large_end),
                    trimmed(plug.taper_one_in, 4),
                    trimmed(plug.threads_per_inch, 2)
                ),
            ));
        }
        if let Some(stay) = &holes.stay {
            let sides = [
                ("outside", &stay.outside_nut, &stay.outside_washer),
                ("inside", &stay.inside_nut, &stay.inside_washer),
            ];
            for (side, nut, washer) in sides {
                parts.extend(nut.iter().map(|nut| {
                    let (across, thick) = (&nut.across_flats, &nut.thickness);
                    (
                        format!("{side} nut"),
                        format!(
                            "{} across flats, {} thick",
                            fig.size_short(across),
                            fig.size_short(thick)
                        ),
                    )
                }));
                parts.extend(washer.iter().map(|washer| {
                    let (wide, thick) = (&washer.diameter, &washer.thickness);
                    (
                        format!("{side} washer"),
                        format!("⌀{}, {} thick", fig.size_short(wide), fig.size_short(thick)),
                    )
                }));
            }
        }
        for (part, size) in parts {
            table.row(vec![
                set.numbers(group),
                part,
                set.number_off(group).to_string(),
                size,
            ]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}

/// Masses for lifting; none where the spec gives no density.
pub fn masses(set: &Set<'_>) -> Option<Table> {
    let f = &set.design.figures;
    let mut table = Table::new(
        "MASSES: ESTIMATES. A COMPETENT PERSON PLANS THE LIFT",
        &[("PIECE", 100.0, Hang::Start), ("MASS", 68.0, Hang::End)],
    );
    let pieces = [
        ("finished plate, every hole out", f.plate_mass_kg),
        ("finished plate, no hole out", f.plate_plain_kg),
        ("ring by itself, net strip", f.ring_mass_kg),
        ("blank as cut, no hole out", f.blank_mass_kg),
    ];
    for (piece, kg) in pieces {
        if let Some(kg) = kg {
            table.row(vec![piece.into(), set.figures.mass(kg)]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}
