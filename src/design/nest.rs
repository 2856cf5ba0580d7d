//! A nest of tubes or flues: the pattern filled, made symmetrical if asked, and changed hole by hole where the spec says so.

use std::collections::BTreeMap;

use rstar::RTree;

use super::amount::{Amounts, point};
use super::exception::make_exceptions;
use super::hole::stages_of_group;
use super::lattice::{Lattice, Site};
use super::numbering::{PlacedGroup, PlacedHole};
use super::room::Room;
use super::smokebox_tube_plate::Form;
use super::tapped::Tapped;
use super::{HoleGroup, LineWay, Point, TakesUp};
use crate::spec::{At, Fault, KeepOut, NamedLine, Nest, NestPurpose, Pattern, Purpose};
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

/// Places the holes of one nest. `path` is where the nest stands in the spec, `tubes[0]`.
pub(super) fn place_nest(
    nest: &Nest,
    path: &str,
    form: &Form,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> PlacedGroup {
    let group = group_of(nest, path, faults);
    let radius = group.ligament_hole.to_mm() / 2.0;
    let room = room_of(nest, path, form, radius, faults);
    let pattern_path = format!("{path}.pattern.{}", pattern_name(&nest.pattern));
    let lattice = lattice_of(&nest.pattern, &pattern_path, nest, amounts, faults);
    let mut sites = match (&nest.pattern, &lattice) {
        (Pattern::Points(places), _) => {
            points_in_room(places, &room, &pattern_path, path, amounts, faults)
        }
        (_, Some(lattice)) => fill(lattice, &room, &pattern_path, faults),
        (_, None) => Vec::new(),
    };
    if nest.within.symmetrical {
        sites = drop_unmatched(sites);
    }
    let mut placed = PlacedGroup {
        letter: nest
            .letter
            .clone()
            .unwrap_or_else(|| group.purpose.letter().into()),
        holes: holes_at(&sites, &group, nest, &pattern_path, lattice.is_some()),
        lines: lattice.map(|lattice| lattice.way),
        line_offsets: lattice.map_or_else(BTreeMap::new, |lattice| {
            sites
                .iter()
                .map(|site| (site.line, lattice.offset(site.line)))
                .collect()
        }),
        omitted: Vec::new(),
        own_metal: lattice.map(|lattice| lattice.least_distance() - 2.0 * radius),
        group,
    };
    make_exceptions(nest, path, &mut placed, amounts, faults);
    placed
}

/// What the hole schedule says of a nest.
fn group_of(nest: &Nest, path: &str, faults: &mut Vec<Fault>) -> HoleGroup {
    HoleGroup {
        name: nest.name.clone(),
        purpose: match nest.purpose {
            NestPurpose::Tube => Purpose::Tube,
            NestPurpose::Flue => Purpose::Flue,
        },
        finish: nest.hole.clone(),
        ligament_hole: ligament_hole(nest, nest.hole.value()),
        largest: nest.hole_largest.clone(),
        next_rebore: nest.next_rebore.clone(),
        tube_end: Some(nest.tube_end.as_ref().unwrap_or(&nest.tube).clone()),
        needs_clear: None,
        takes_up: TakesUp {
            // A tube is beaded where its end stands out, in the smokebox.
            smokebox: nest.bead.as_ref().map(|bead| bead.diameter.value()),
            firebox: None,
        },
        mouth: None,
        tapped: Tapped::of_nest(nest),
        stages: stages_of_group(&nest.stages, &nest.hole, path, faults),
        remarks: None,
        path: path.to_string(),
    }
}

/// The diameter through which ligaments of a hole of this nest are judged: a bush's outside where one is fitted.
pub(super) fn ligament_hole(nest: &Nest, finish: Length) -> Length {
    match &nest.bush {
        Some(bush) => bush.value().max(finish),
        None => finish,
    }
}

/// The pattern's own key, for paths.
fn pattern_name(pattern: &Pattern) -> &'static str {
    match pattern {
        Pattern::Columns(_) => "columns",
        Pattern::Rows(_) => "rows",
        Pattern::Square(_) => "square",
        Pattern::Points(_) => "points",
    }
}

/// The lattice of a regular pattern; nothing for places listed one by one, or where its holes would meet.
fn lattice_of(
    pattern: &Pattern,
    path: &str,
    nest: &Nest,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> Option<Lattice> {
    let lattice = match pattern {
        Pattern::Columns(lines) | Pattern::Rows(lines) => Lattice {
            way: match pattern {
                Pattern::Rows(_) => LineWay::Rows,
                _ => LineWay::Columns,
            },
            through: point(&lines.through),
            spacing: lines.spacing.value().to_mm(),
            pitch: lines.pitch.value().to_mm(),
            staggered: lines.staggered,
            first: lines.first,
            last: lines.last,
        },
        Pattern::Square(square) => Lattice {
            way: LineWay::Columns,
            through: point(&square.through),
            spacing: square.pitch.value().to_mm(),
            pitch: square.pitch.value().to_mm(),
            staggered: false,
            first: None,
            last: None,
        },
        Pattern::Points(_) => return None,
    };
    if let (Some(first), Some(last)) = (lattice.first, lattice.last)
        && first > last
    {
        faults.push(
            Fault::new(
                format!("{path}.first"),
                format!("the first line, {first}, comes after the last, {last}"),
                "write the lower number first",
            )
            .and(format!("{path}.last"), "the last line"),
        );
        return None;
    }
    neighbours_stand_apart(&lattice, path, nest, amounts, faults).then_some(lattice)
}

/// Whether the pitch, the spacing and the slant between lines all leave metal between holes; a fault for each that does not.
fn neighbours_stand_apart(
    lattice: &Lattice,
    path: &str,
    nest: &Nest,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> bool {
    let (hole, key, word) = match &nest.bush {
        Some(bush) if bush.value() > nest.hole.value() => (bush, "bush", "the bush"),
        _ => (&nest.hole, "hole", "the hole"),
    };
    let hole_path = path.replace(
        &format!(".pattern.{}", pattern_name(&nest.pattern)),
        &format!(".{key}"),
    );
    let meets = |distance: f64| distance <= hole.value().to_mm() + SAME_LENGTH_MM;
    let mut fault = |key: &str, fact: String| {
        faults.push(
            Fault::new(
                format!("{path}.{key}"),
                format!("{fact}, so neighbouring holes would meet"),
                format!("make the pitch or the spacing more, or look again at {word}"),
            )
            .and(&hole_path, word),
        );
    };
    if meets(lattice.pitch) {
        fault(
            "pitch",
            format!(
                "the pitch, {}, is not more than {word}, {hole}",
                amounts.mm(lattice.pitch)
            ),
        );
        false
    } else if meets(lattice.least_distance()) {
        fault(
            "spacing",
            format!(
                "at this spacing and pitch holes of neighbouring lines are {} apart, not more than {word}, {hole}",
                amounts.mm(lattice.least_distance())
            ),
        );
        false
    } else {
        true
    }
}

/// The room of a nest: what the spec keeps it clear of, and in any case the lines that end the flat.
fn room_of<'a>(
    nest: &Nest,
    path: &str,
    form: &'a Form,
    radius: f64,
    faults: &mut Vec<Fault>,
) -> Room<'a> {
    let mut room = Room::default();
    for (_, line) in form.ends_of_flat() {
        room.keep_within(line, radius);
    }
    for (index, land) in nest.within.land.iter().enumerate() {
        let clear = radius + land.at_least.value().to_mm();
        match (land.to, form.line(land.to)) {
            (NamedLine::OuterWeldToe, Some(line)) => room.keep_beside(line, clear),
            (_, Some(line)) => room.keep_within(line, clear),
            (to, None) => {
                faults.push(form.no_such_line(to, format!("{path}.within.land[{index}].to")))
            }
        }
    }
    let mm = |size: &Option<Size>| size.as_ref().map(|s| s.value().to_mm());
    room.limit(
        mm(&nest.within.top),
        mm(&nest.within.bottom),
        mm(&nest.within.half_width),
    );
    for (index, keep_out) in nest.within.keep_out.iter().enumerate() {
        keep_off(
            keep_out,
            format!("{path}.within.keep_out[{index}]"),
            radius,
            &mut room,
            faults,
        );
    }
    room
}

fn keep_off(
    keep_out: &KeepOut,
    path: String,
    radius: f64,
    room: &mut Room,
    faults: &mut Vec<Fault>,
) {
    match (
        &keep_out.centre,
        &keep_out.diameter,
        &keep_out.from,
        &keep_out.to,
    ) {
        (Some(centre), Some(diameter), None, None) => {
            room.keep_off_circle(point(centre), diameter.value().to_mm() / 2.0 + radius);
        }
        (None, None, Some(from), Some(to)) => {
            room.keep_off_box(point(from), point(to), radius);
        }
        _ => faults.push(Fault::new(
            path,
            "a keep-out is a circle or a box, and this is neither or both",
            "write centre and diameter, or from and to",
        )),
    }
}

fn fill(lattice: &Lattice, room: &Room, path: &str, faults: &mut Vec<Fault>) -> Vec<Site> {
    lattice.fill(room).unwrap_or_else(|places| {
        faults.push(Fault::new(
            path,
            format!("this pattern has some {places:.0} places within the plate, more than any plate holds"),
            "look again at the units of pitch, spacing and hole",
        ));
        Vec::new()
    })
}

/// Places listed one by one. One that breaks a limit of `within` is a contradiction, not a hole to be dropped in silence.
fn points_in_room(
    places: &[At],
    room: &Room,
    pattern_path: &str,
    path: &str,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> Vec<Site> {
    for (index, at) in places.iter().enumerate() {
        if !room.admits(point(at)) {
            faults.push(
                Fault::new(
                    format!("{pattern_path}[{index}]"),
                    format!(
                        "a hole at {} is nearer than allowed to what its nest keeps clear of",
                        amounts.place(point(at))
                    ),
                    "move this hole, or look again at `within`",
                )
                .and(format!("{path}.within"), "what the nest keeps clear of"),
            );
        }
    }
    let site = |at| Site {
        line: 0,
        at: point(at),
    };
    places.iter().map(site).collect()
}

/// Leaves out every place whose opposite hand is not among the places.
fn drop_unmatched(sites: Vec<Site>) -> Vec<Site> {
    let tree = RTree::bulk_load(sites.iter().map(|site| [site.at.x, site.at.y]).collect());
    let matched = |site: &Site| {
        let opposite = site.at.opposite_hand();
        tree.nearest_neighbor([opposite.x, opposite.y])
            .is_some_and(|&[x, y]| Point::new(x, y).distance(opposite) <= SAME_LENGTH_MM)
    };
    sites.into_iter().filter(matched).collect()
}

fn holes_at(
    sites: &[Site],
    group: &HoleGroup,
    nest: &Nest,
    pattern_path: &str,
    in_lines: bool,
) -> Vec<PlacedHole> {
    let hole = |(index, site): (usize, &Site)| PlacedHole {
        at: site.at,
        finish: nest.hole.clone(),
        ligament_hole: group.ligament_hole,
        exception: None,
        path: if in_lines {
            pattern_path.to_string()
        } else {
            format!("{pattern_path}[{index}]")
        },
        line: in_lines.then_some(site.line),
    };
    sites.iter().enumerate().map(hole).collect()
}
