//! What is ordered for a plate: tubes, rivets and stays; and what the finished plate weighs.

use super::Hang;
use super::kept::{in_both_units, material_words, piece_sizes, pieces};
use super::key_words::key_words;
use super::set::Set;
use super::table::Table;
use crate::cut::{CutPart, PartKind};
use crate::design::{FlangeDesign, MetalThere, TubeLength, girth, grip, tube_length};
use crate::units::print::trimmed;

/// The sizes that are asked for at the plate, thickness first.
pub fn plate_sizes(set: &Set<'_>) -> Table {
    let kept = set.design.kept;
    let mut table = Table::new(
        if kept {
            "OLD PLATE, WHICH STANDS"
        } else {
            "PLATE"
        },
        &[("SIZE", 100.0, Hang::Start), ("FIGURE", 68.0, Hang::End)],
    );
    let fig = set.figures;
    let w = &set.spec.written;
    let thickness = if kept {
        "thickness as made"
    } else {
        "thickness"
    };
    table.row(vec![thickness.into(), fig.size(&set.design.thickness)]);
    if let MetalThere::AsFound(reading) = set.design.metal_there(|_| true) {
        table.row(vec![
            format!("least reading that stays, number {}", reading.number),
            in_both_units(set, &reading.thickness),
        ]);
    }
    if let Some(barrel) = &w.barrel {
        table.row(vec!["bore of the barrel".into(), fig.size(&barrel.bore)]);
        let round = girth(barrel.bore.value());
        table.row(vec!["girth of the bore".into(), fig.table(round)]);
    }
    match &set.design.flange {
        Some(FlangeDesign::Pressed(p)) => {
            let outside = if kept {
                "flange outside"
            } else {
                "flange outside, fit to girth"
            };
            table.row(vec![outside.into(), fig.size(&p.outside_diameter)]);
            table.row(vec!["heel radius inside".into(), fig.size(&p.heel_radius)]);
            table.row(vec!["straight of the flange".into(), fig.size(&p.straight)]);
            table.row(vec!["depth over all".into(), fig.table(p.depth)]);
            if !kept {
                table.row(vec![
                    "blank as cut, diameter".into(),
                    fig.table(p.blank_cut),
                ]);
            }
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
            if !kept {
                table.row(vec![
                    "strip of the ring as cut".into(),
                    fig.table(f.strip_cut),
                ]);
            }
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

/// The pieces let in, as they are ordered; none where none is let in.
pub fn piece_order(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "PIECES TO ORDER: NET SIZES, NOTHING ADDED FOR FITTING",
        &[
            ("PIECE", 16.0, Hang::Middle),
            ("", 84.0, Hang::Start),
            ("", 68.0, Hang::End),
        ],
    );
    let fig = set.figures;
    let not_given = || "not given".to_string();
    for (number, repair, ordered) in pieces(set) {
        let Some(piece) = &repair.piece else {
            continue;
        };
        let material = ordered.and_then(|piece| piece.material.as_ref());
        let thickness = piece.thickness.as_ref();
        let mut rows = vec![
            (
                "thickness",
                thickness.map_or_else(not_given, |t| fig.size(t)),
            ),
            ("material; certificate", material_words(material)),
        ];
        rows.extend(piece_sizes(set, piece.size));
        let mass = match piece.mass_kg {
            Some(kg) => set.figures.mass(kg),
            None => "not worked out: `piece.thickness` or its density not given".into(),
        };
        rows.push(("mass, no hole out", mass));
        for (i, (what, figure)) in rows.into_iter().enumerate() {
            let number = if i == 0 {
                number.clone()
            } else {
                String::new()
            };
            table.row(vec![number, what.into(), figure]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}

/// Tubes of each nest with their length where the spec gives its parts; none where there is no nest.
pub fn tube_order(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "TUBE ORDER: LENGTH FROM END TO END, BEFORE BEADING",
        &[
            ("TUBES", 26.0, Hang::Start),
            ("OFF", 11.0, Hang::Middle),
            ("OUTSIDE", 19.0, Hang::Middle),
            ("END HERE", 18.0, Hang::Middle),
            ("END THERE", 18.0, Hang::Middle),
            ("WALL", 17.0, Hang::Middle),
            ("BETWEEN PLATES", 22.0, Hang::Middle),
            ("LENGTH", 37.0, Hang::Start),
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
            TubeLength::Wants(keys) => {
                let wanting: Vec<String> = keys.iter().map(|key| key_words(set, key)).collect();
                format!("not worked out: {} not given", wanting.join(", "))
            }
        };
        let (off, length) = match nest.renewed.filter(|_| set.design.kept) {
            Some(false) => ("none".into(), format!("{off} stand")),
            None if set.design.kept => (
                "not told".into(),
                format!("not told whether the {off} are renewed; {length}"),
            ),
            Some(true) | None => (off.to_string(), length),
        };
        table.row(vec![
            nest.name.clone(),
            off,
            set.figures.size_short(&nest.tube),
            size(Some(nest.tube_end.as_ref().unwrap_or(&nest.tube))),
            match &nest.other_end {
                Some(other) => size(Some(other.tube_end.as_ref().unwrap_or(&nest.tube))),
                None => "not given".into(),
            },
            size(nest.wall.as_ref()),
            size(nest.between_plates.as_ref()),
            length,
        ]);
    }
    (!table.rows.is_empty()).then_some(table)
}

/// Rivets of the flange, with blanks for length and spares; none where there are no rivets.
pub fn rivet_order(set: &Set<'_>) -> Option<Table> {
    let line = set.design.rivets.as_ref()?;
    let spec = set.spec.written.rivets.as_ref()?;
    let off = set.design.rivets_made();
    if off == 0 {
        return None;
    }
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
        off.to_string(),
    ]);
    Some(table)
}

/// Stays by group; none where there are none.
pub fn stay_list(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "STAYS",
        &[
            ("STAYS", 38.0, Hang::Start),
            ("OFF", 10.0, Hang::Middle),
            ("KIND", 26.0, Hang::Start),
            ("LENGTH", 20.0, Hang::Middle),
            ("OVER THREADS", 25.0, Hang::Middle),
            ("THREADS TO THE INCH", 29.0, Hang::Middle),
            ("METAL", 20.0, Hang::Middle),
        ],
    );
    for (i, holes) in set.spec.written.holes.iter().enumerate() {
        let Some(stay) = &holes.stay else {
            continue;
        };
        let path = format!("holes[{i}]");
        let Some((group, _)) = set.design.groups_made().find(|(_, g)| g.path == path) else {
            continue;
        };
        table.row(vec![
            format!("{} {}", holes.name, set.numbers_made(group)),
            set.made_off(group).to_string(),
            stay.kind.name().into(),
            // A spec has no length of a bar as ordered: the other end is on another drawing.
            "not given".into(),
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
        let Some((group, _)) = set.design.groups_made().find(|(_, g)| g.path == path) else {
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
                set.numbers_made(group),
                part,
                set.made_off(group).to_string(),
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
    let pieces = match set.design.kept {
        // Worked out from the thickness as made: what stands weighs no more.
        true => vec![
            ("old plate as made, every hole out", f.plate_mass_kg),
            ("ring by itself, as made", f.ring_mass_kg),
        ],
        false => vec![
            ("finished plate alone, every hole out", f.plate_mass_kg),
            ("finished plate alone, no hole out", f.plate_plain_kg),
            ("ring by itself, net strip", f.ring_mass_kg),
            ("blank as cut, no hole out", f.blank_mass_kg),
        ],
    };
    for (piece, kg) in pieces {
        if let Some(kg) = kg {
            table.row(vec![piece.into(), set.figures.mass(kg)]);
        }
    }
    if !set.design.kept {
        for (pad, off, kg) in pads_welded_on(set) {
            let words = match off {
                1 => format!("{}, {}", pad.name, pad.mass_is_of()),
                _ => format!("{off} × {}, {}, together", pad.name, pad.mass_is_of()),
            };
            table.row(vec![words, set.figures.mass(kg)]);
        }
        if let Some((words, kg)) = mass_to_lift(set) {
            table.row(vec![words, set.figures.mass(kg)]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}

/// The pads that are welded on and have a mass: each kind with how many stand on the plate and their mass together, kg.
fn pads_welded_on<'a>(set: &Set<'a>) -> Vec<(&'a CutPart, usize, f64)> {
    let written = &set.spec.written.pads;
    let parts = set.parts.iter().filter(|part| part.kind == PartKind::Pad);
    let weighed = parts.filter_map(|part| {
        let of_it =
            set.design.pads.iter().filter(|placed| {
                placed.weld_leg.is_some() && written[placed.part].name == part.name
            });
        let off = of_it.count();
        let kg = part.mass_kg.filter(|_| off > 0)?;
        Some((part, off, kg * off as f64))
    });
    weighed.collect()
}

/// What hangs on the hook when ring and pads are welded on, kg; none where nothing is, or where one of them has no mass, since the
/// sum would then be less than the load.
fn mass_to_lift(set: &Set<'_>) -> Option<(String, f64)> {
    let design = set.design;
    let figures = &design.figures;
    let has_ring = matches!(design.flange, Some(FlangeDesign::Fabricated(_)));
    let welded_on = design.pads.iter().filter(|pad| pad.weld_leg.is_some());
    let pads = pads_welded_on(set);
    if pads.iter().map(|(_, off, _)| off).sum::<usize>() != welded_on.count() {
        return None;
    }
    let words = match (has_ring, pads.len()) {
        (false, 0) => return None,
        (true, 0) => "finished plate, its ring welded on",
        (false, _) => "finished plate, its pads welded on",
        (true, _) => "finished plate, ring and pads welded on",
    };
    let ring = if has_ring { figures.ring_mass_kg? } else { 0.0 };
    let pads: f64 = pads.iter().map(|(_, _, kg)| kg).sum();
    Some((words.into(), figures.plate_mass_kg? + ring + pads))
}

#[cfg(test)]
mod tests {
    use super::super::sample_jobs::with_set;
    use super::*;

    /// Hobthrush: plate 92.2, ring 29.3; its pad 180 across with a bore cut to 108, 16 thick: π/4 (180² − 108²) × 16 × 7850e-9 = 2.05.
    /// 92.2 + 29.3 + 2.0 = 123.5 kg.
    #[test]
    fn by_hand_what_hangs_on_the_hook_of_hobthrush() {
        with_set("specs/hobthrush-smokebox.yaml", |set| {
            let (words, kg) = mass_to_lift(set).expect("a ring and a pad");
            assert_eq!(words, "finished plate, ring and pads welded on");
            assert!((kg - 123.5).abs() < 0.1, "{kg}");
        });
    }

    /// Nothing is welded on a pressed plate without pads: it weighs what it weighs.
    #[test]
    fn holds_nothing_is_added_where_nothing_is_welded_on() {
        with_set("specs/tallow-moor-smokebox.yaml", |set| {
            assert!(mass_to_lift(set).is_none());
        });
    }
}
