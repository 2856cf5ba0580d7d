//! Reads a cut file back with a reader that is not ours, and compares it with the part entity by entity.

use std::fmt;

use super::dxf::Version;
use super::entity::{Entity, entities, extent};
use super::part::{CutPart, Layer};
use super::reader::{FileUnit, Read, ReadFile, What, read};
use crate::design::Point;
use crate::units::tolerance::{SAME_ANGLE_DEG, SAME_BULGE, SAME_LENGTH_MM};

/// Something in the file that is not as in the part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// Where: the number of the entity from 1 and its layer, or the header.
    pub place: String,
    /// What was written, and what was read.
    pub fact: String,
}

impl fmt::Display for Difference {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.place, self.fact)
    }
}

fn difference(place: impl Into<String>, fact: impl Into<String>) -> Difference {
    Difference {
        place: place.into(),
        fact: fact.into(),
    }
}

/// Compares a file with the part it should hold: version, units, extents, and every entity in order.
pub fn read_back(text: &str, part: &CutPart, version: Version) -> Result<(), Vec<Difference>> {
    let (file, read) = match read_entities(text) {
        Ok(read) => read,
        Err(unreadable) => return Err(vec![unreadable]),
    };
    let mut found = header_differences(&file, part, version);
    found.extend(entity_differences(&entities(part), &read));
    if found.is_empty() { Ok(()) } else { Err(found) }
}

/// The entities that a file holds, each with the name of its layer.
///
/// Entities of other kinds than ours are a difference: a cut file has none.
fn read_entities(text: &str) -> Result<(ReadFile, Vec<(String, Entity)>), Difference> {
    let mut file =
        read(text.as_bytes()).map_err(|e| difference("file", format!("cannot be read: {e}")))?;
    let mut plain = Vec::new();
    for (number, entity) in std::mem::take(&mut file.entities).into_iter().enumerate() {
        plain.push(as_written(entity).ok_or_else(|| {
            difference(
                format!("entity {}", number + 1),
                "is of a kind that no cut file holds, or lies in paper space, off the plane or mirrored",
            )
        })?);
    }
    Ok((file, plain))
}

fn as_written(read: Read) -> Option<(String, Entity)> {
    let odd = read.on_paper || read.turned_over || read.off_plane;
    match read.what {
        What::Entity(entity) if !odd => Some((read.layer, entity)),
        _ => None,
    }
}

fn header_differences(file: &ReadFile, part: &CutPart, version: Version) -> Vec<Difference> {
    let mut found = Vec::new();
    if file.version != Some(version) {
        found.push(difference(
            "header",
            format!("version {}, not {version:?}", file.version_name),
        ));
    }
    if file.unit != FileUnit::Millimetres || !file.metric {
        found.push(difference("header", "units are not millimetres"));
    }
    let all = entities(part);
    let cut = all.iter().filter(|(layer, _)| layer.is_cut());
    if let Some(extent) = extent(cut.map(|(_, e)| e)) {
        let true_corners = [extent.low, extent.high, extent.low, extent.high];
        for ((name, read), true_corner) in file.corners.into_iter().zip(true_corners) {
            if !same_place(read, true_corner) {
                found.push(difference(
                    "header",
                    format!(
                        "{name} is ({}, {}), not ({}, {})",
                        read.x, read.y, true_corner.x, true_corner.y
                    ),
                ));
            }
        }
    }
    found
}

fn entity_differences(written: &[(Layer, Entity)], read: &[(String, Entity)]) -> Vec<Difference> {
    let mut found = Vec::new();
    if written.len() != read.len() {
        found.push(difference(
            "file",
            format!("holds {} entities, not {}", read.len(), written.len()),
        ));
    }
    for (number, ((layer, ours), (name, theirs))) in written.iter().zip(read).enumerate() {
        let place = format!("entity {} on {}", number + 1, layer.name());
        if name != layer.name() {
            found.push(difference(&*place, format!("was read on layer {name}")));
        }
        if !same_entity(ours, theirs) {
            found.push(difference(
                place,
                format!("written as {ours:?}, read as {theirs:?}"),
            ));
        }
    }
    found
}

fn same_length(a: f64, b: f64) -> bool {
    (a - b).abs() <= SAME_LENGTH_MM
}

fn same_place(a: Point, b: Point) -> bool {
    same_length(a.x, b.x) && same_length(a.y, b.y)
}

fn same_entity(ours: &Entity, theirs: &Entity) -> bool {
    match (ours, theirs) {
        (Entity::Line { from, to }, Entity::Line { from: f, to: t }) => {
            same_place(*from, *f) && same_place(*to, *t)
        }
        (
            Entity::Circle { centre, radius },
            Entity::Circle {
                centre: c,
                radius: r,
            },
        ) => same_place(*centre, *c) && same_length(*radius, *r),
        (
            Entity::Arc {
                centre,
                radius,
                start_deg,
                end_deg,
            },
            Entity::Arc {
                centre: c,
                radius: r,
                start_deg: s,
                end_deg: e,
            },
        ) => {
            same_place(*centre, *c)
                && same_length(*radius, *r)
                && (start_deg - s).abs() <= SAME_ANGLE_DEG
                && (end_deg - e).abs() <= SAME_ANGLE_DEG
        }
        (
            Entity::Polyline { vertices, closed },
            Entity::Polyline {
                vertices: others,
                closed: c,
            },
        ) => {
            closed == c
                && vertices.len() == others.len()
                && vertices
                    .iter()
                    .zip(others)
                    .all(|(a, b)| same_place(a.at, b.at) && (a.bulge - b.bulge).abs() <= SAME_BULGE)
        }
        (Entity::Dot(a), Entity::Dot(b)) => same_place(*a, *b),
        _ => false,
    }
}
