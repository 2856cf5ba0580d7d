//! Writes a part as a DXF file: R12 for old controllers, R2000 for the rest. Decides nothing; digits are rounded here.
//!
//! Only LINE, ARC, CIRCLE, POINT and closed polylines with bulges are written. Lengths carry six decimals, without an
//! exponent or a negative nought. Bulges and angles carry twelve, since half a unit in the sixth would move the crown of
//! an arc a metre across by 0.00025 mm, and the lengths would be exact in vain. Lines end in CR LF, which every reader
//! takes.

mod frame;

use std::fmt;

use super::entity::{Entity, Extent, Vertex, entities, extent};
use super::part::{CutPart, Layer};
use crate::design::Point;
use crate::units::print::decimal;

/// Places of a length.
const LENGTH_PLACES: usize = 6;
/// Places of a bulge and of an angle in degrees.
const TURN_PLACES: usize = 12;
/// Beyond this no plate reaches, mm; a co-ordinate past it is a slip somewhere.
const FURTHEST_MM: f64 = 1e6;

/// Version of the format.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Version {
    /// What the oldest cutting controllers read: AC1009.
    R12,
    /// What everything since reads: AC1015.
    R2000,
}

impl Version {
    fn name(self) -> &'static str {
        match self {
            Version::R12 => "AC1009",
            Version::R2000 => "AC1015",
        }
    }
}

/// What stands at the head of a file besides its geometry, one comment a line.
#[derive(Clone, Debug)]
pub struct Heading {
    /// The lines, in order.
    pub lines: Vec<String>,
}

/// Why a part cannot be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unwritable {
    /// Nothing lies on the CUT layers, so there is no extent to state.
    NothingToCut,
    /// An entity has a co-ordinate that is not a number or lies beyond any plate: its kind and layer.
    OutOfRange(&'static str, &'static str),
}

impl fmt::Display for Unwritable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Unwritable::NothingToCut => f.write_str("nothing lies on its CUT layers"),
            Unwritable::OutOfRange(kind, layer) => {
                write!(f, "{kind} on {layer} lies beyond any plate")
            }
        }
    }
}

/// The text of a part's cut file.
pub fn write(part: &CutPart, heading: &Heading, version: Version) -> Result<String, Unwritable> {
    let entities = entities(part);
    if let Some((layer, entity)) = entities.iter().find(|(_, e)| !in_range(e)) {
        return Err(Unwritable::OutOfRange(entity.kind(), layer.name()));
    }
    let cut = entities.iter().filter(|(layer, _)| layer.is_cut());
    let extent = extent(cut.map(|(_, entity)| entity)).ok_or(Unwritable::NothingToCut)?;
    let mut pairs = Pairs::default();
    for line in &heading.lines {
        pairs.text(999, &ascii(line));
    }
    match version {
        Version::R12 => {
            frame::r12_before(&mut pairs, &extent);
            write_entities(&mut pairs, &entities, version);
        }
        Version::R2000 => {
            frame::r2000_before(&mut pairs, &extent, handles_used(&entities));
            write_entities(&mut pairs, &entities, version);
            frame::r2000_after(&mut pairs, &extent);
        }
    }
    pairs.text(0, "EOF");
    Ok(pairs.text)
}

/// Printable ASCII as it is; anything else as a question mark, since an old reader knows no other letters.
fn ascii(text: &str) -> String {
    text.chars()
        .map(|c| if (' '..='~').contains(&c) { c } else { '?' })
        .collect()
}

fn in_range(entity: &Entity) -> bool {
    let fits = |number: f64| number.is_finite() && number.abs() <= FURTHEST_MM;
    let place = |p: &Point| fits(p.x) && fits(p.y);
    match entity {
        Entity::Line { from, to } => place(from) && place(to),
        Entity::Arc {
            centre,
            radius,
            start_deg,
            end_deg,
        } => place(centre) && fits(*radius) && fits(*start_deg) && fits(*end_deg),
        Entity::Circle { centre, radius } => place(centre) && fits(*radius),
        Entity::Polyline { vertices, .. } => vertices.iter().all(|v| place(&v.at) && fits(v.bulge)),
        Entity::Dot(at) => place(at),
    }
}

/// Handles that the entities take in R2000: one each, a light polyline's corners included in it.
fn handles_used(entities: &[(Layer, Entity)]) -> usize {
    entities.len()
}

/// Pairs of group code and value, a line each.
#[derive(Default)]
struct Pairs {
    text: String,
}

impl Pairs {
    fn text(&mut self, code: u16, value: &str) {
        self.text.push_str(&format!("{code:>3}\r\n{value}\r\n"));
    }

    fn whole(&mut self, code: u16, value: i64) {
        self.text(code, &value.to_string());
    }

    fn length(&mut self, code: u16, mm: f64) {
        self.text(code, &decimal(mm, LENGTH_PLACES));
    }

    fn turn(&mut self, code: u16, value: f64) {
        self.text(code, &decimal(value, TURN_PLACES));
    }

    /// A handle, in hexadecimal as the format has it.
    fn handle(&mut self, code: u16, handle: usize) {
        self.text(code, &format!("{handle:X}"));
    }

    /// A place in the plane, on codes 10, 20 and 30 or their like.
    fn place(&mut self, code: u16, at: Point) {
        self.length(code, at.x);
        self.length(code + 10, at.y);
        self.length(code + 20, 0.0);
    }

    fn section(&mut self, name: &str) {
        self.text(0, "SECTION");
        self.text(2, name);
    }

    fn end_section(&mut self) {
        self.text(0, "ENDSEC");
    }
}

fn write_entities(pairs: &mut Pairs, entities: &[(Layer, Entity)], version: Version) {
    pairs.section("ENTITIES");
    for (number, (layer, entity)) in entities.iter().enumerate() {
        let mut open = |kind: &str, class: &str| match version {
            Version::R12 => {
                pairs.text(0, kind);
                pairs.text(8, layer.name());
            }
            Version::R2000 => {
                pairs.text(0, kind);
                pairs.handle(5, frame::FIRST_ENTITY + number);
                pairs.handle(330, frame::MODEL_SPACE);
                pairs.text(100, "AcDbEntity");
                pairs.text(8, layer.name());
                pairs.text(100, class);
            }
        };
        match entity {
            Entity::Line { from, to } => {
                open("LINE", "AcDbLine");
                pairs.place(10, *from);
                pairs.place(11, *to);
            }
            Entity::Circle { centre, radius } => {
                open("CIRCLE", "AcDbCircle");
                pairs.place(10, *centre);
                pairs.length(40, *radius);
            }
            Entity::Arc {
                centre,
                radius,
                start_deg,
                end_deg,
            } => {
                open("ARC", "AcDbCircle");
                pairs.place(10, *centre);
                pairs.length(40, *radius);
                if version == Version::R2000 {
                    pairs.text(100, "AcDbArc");
                }
                pairs.turn(50, *start_deg);
                pairs.turn(51, *end_deg);
            }
            Entity::Dot(at) => {
                open("POINT", "AcDbPoint");
                pairs.place(10, *at);
            }
            Entity::Polyline { vertices, closed } => match version {
                Version::R12 => {
                    open("POLYLINE", "");
                    heavy_polyline(pairs, layer.name(), vertices, *closed);
                }
                Version::R2000 => {
                    open("LWPOLYLINE", "AcDbPolyline");
                    light_polyline(pairs, vertices, *closed);
                }
            },
        }
    }
    pairs.end_section();
}

/// Corners and end carry the layer too: a reader that sorts by layer would else lose them.
fn heavy_polyline(pairs: &mut Pairs, layer: &str, vertices: &[Vertex], closed: bool) {
    pairs.whole(66, 1);
    pairs.place(10, Point::CENTRE);
    pairs.whole(70, i64::from(closed));
    for vertex in vertices {
        pairs.text(0, "VERTEX");
        pairs.text(8, layer);
        pairs.place(10, vertex.at);
        pairs.turn(42, vertex.bulge);
    }
    pairs.text(0, "SEQEND");
    pairs.text(8, layer);
}

fn light_polyline(pairs: &mut Pairs, vertices: &[Vertex], closed: bool) {
    pairs.whole(90, vertices.len() as i64);
    pairs.whole(70, i64::from(closed));
    for vertex in vertices {
        pairs.length(10, vertex.at.x);
        pairs.length(20, vertex.at.y);
        pairs.turn(42, vertex.bulge);
    }
}

/// The header variables that both versions carry: units and extents. Millimetres, always.
///
/// R12 never defined the two units variables; readers that know them profit and the others skip them.
fn units_and_extents(pairs: &mut Pairs, extent: &Extent) {
    let variable = |pairs: &mut Pairs, name: &str| pairs.text(9, name);
    variable(pairs, "$INSUNITS");
    pairs.whole(70, 4);
    variable(pairs, "$MEASUREMENT");
    pairs.whole(70, 1);
    variable(pairs, "$EXTMIN");
    pairs.place(10, extent.low);
    variable(pairs, "$EXTMAX");
    pairs.place(10, extent.high);
    for (name, corner) in [("$LIMMIN", extent.low), ("$LIMMAX", extent.high)] {
        variable(pairs, name);
        pairs.length(10, corner.x);
        pairs.length(20, corner.y);
    }
}

/// Colour index and line weight (hundredths of a mm) of a layer. Colour is a convenience; the name tells the operation.
fn look(layer: Layer) -> (i64, i64) {
    match layer {
        Layer::CutOutside => (7, 50),
        Layer::CutInside => (1, 35),
        Layer::Pop => (3, 25),
        Layer::Scribe => (5, 25),
        Layer::Stamp => (6, 25),
        Layer::Reference => (8, 18),
    }
}

#[cfg(test)]
pub(super) mod tests;
