//! Reads a DXF file, whoever wrote it, with a reader that is not ours: its header, its entities and its blocks.
//!
//! Mirrored entities (extrusion −1) come out at their true places and say that they were so. What no cut file holds is
//! kept by its name.

use std::collections::BTreeMap;

use dxf::entities::EntityType;
use dxf::enums::{AcadVersion, DrawingUnits, Units};
use dxf::{Drawing, Vector};

use super::dxf::Version;
use super::entity::{Entity, Vertex};
use crate::design::Point;

/// A file as it was read.
#[derive(Debug)]
pub(super) struct ReadFile {
    /// Version of the format, where it is one that we write.
    pub version: Option<Version>,
    /// The version as the reader names it.
    pub version_name: String,
    /// What `$INSUNITS` says.
    pub unit: FileUnit,
    /// Whether `$MEASUREMENT` says metric.
    pub metric: bool,
    /// Corners of extents and limits, each with the name of its variable.
    pub corners: [(&'static str, Point); 4],
    /// Everything in the drawing itself, in order.
    pub entities: Vec<Read>,
    /// Blocks by name, in small letters.
    pub blocks: BTreeMap<String, Block>,
}

/// The unit that a file states.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileUnit {
    /// None.
    Unstated,
    /// Inches.
    Inches,
    /// Feet.
    Feet,
    /// Millimetres.
    Millimetres,
    /// Centimetres.
    Centimetres,
    /// Metres.
    Metres,
    /// One in which no plate is drawn.
    Strange,
}

/// Something drawn, and what is odd about it.
#[derive(Clone, Debug)]
pub(super) struct Read {
    /// Name of its layer.
    pub layer: String,
    /// What it is.
    pub what: What,
    /// Whether it lies in paper space.
    pub on_paper: bool,
    /// Whether its extrusion is −1: stored mirrored, and given here at its true place.
    pub turned_over: bool,
    /// Whether it has a height above the plane of the drawing, or a tilt.
    pub off_plane: bool,
}

/// What is drawn.
#[derive(Clone, Debug)]
pub(super) enum What {
    /// A kind that a cut file may hold.
    Entity(Entity),
    /// A block set in.
    Insert(Insert),
    /// Any other kind, by its name.
    Foreign(&'static str),
}

/// A block set into a drawing, perhaps in rows and columns.
#[derive(Clone, Debug)]
pub(super) struct Insert {
    /// Name of the block, in small letters.
    pub block: String,
    /// Where its base point goes.
    pub at: Point,
    /// Scales along its own x and y; below nothing where it is mirrored.
    pub scale: (f64, f64),
    /// Turn, degrees anticlockwise.
    pub turn_deg: f64,
    /// Columns and rows, at least one each.
    pub copies: (u16, u16),
    /// Column and row spacing.
    pub spacing: (f64, f64),
}

/// A block: what is set in when it is named.
#[derive(Clone, Debug)]
pub(super) struct Block {
    /// Its base point.
    pub base: Point,
    /// What it holds.
    pub entities: Vec<Read>,
}

/// Reads a file, or says why it cannot be.
pub(super) fn read(bytes: &[u8]) -> Result<ReadFile, String> {
    let mut from = bytes;
    let drawing = Drawing::load(&mut from).map_err(|e| e.to_string())?;
    let header = &drawing.header;
    let corner = |p: &dxf::Point| Point::new(p.x, p.y);
    let block = |block: &dxf::Block| {
        let held = Block {
            base: corner(&block.base_point),
            entities: block.entities.iter().map(entity).collect(),
        };
        (block.name.to_lowercase(), held)
    };
    Ok(ReadFile {
        version: match header.version {
            AcadVersion::R12 => Some(Version::R12),
            AcadVersion::R2000 => Some(Version::R2000),
            _ => None,
        },
        version_name: format!("{:?}", header.version),
        unit: match header.default_drawing_units {
            Units::Unitless => FileUnit::Unstated,
            Units::Inches => FileUnit::Inches,
            Units::Feet => FileUnit::Feet,
            Units::Millimeters => FileUnit::Millimetres,
            Units::Centimeters => FileUnit::Centimetres,
            Units::Meters => FileUnit::Metres,
            _ => FileUnit::Strange,
        },
        metric: header.drawing_units == DrawingUnits::Metric,
        corners: [
            ("$EXTMIN", corner(&header.minimum_drawing_extents)),
            ("$EXTMAX", corner(&header.maximum_drawing_extents)),
            ("$LIMMIN", corner(&header.minimum_drawing_limits)),
            ("$LIMMAX", corner(&header.maximum_drawing_limits)),
        ],
        entities: drawing.entities().map(entity).collect(),
        blocks: drawing.blocks().map(block).collect(),
    })
}

/// How an entity stands to the plane of the drawing.
#[derive(Clone, Copy, PartialEq)]
enum Facing {
    Up,
    Over,
    Tilted,
}

fn facing(normal: &Vector) -> Facing {
    match (normal.x, normal.y, normal.z) {
        (0.0, 0.0, z) if z > 0.0 => Facing::Up,
        (0.0, 0.0, z) if z < 0.0 => Facing::Over,
        _ => Facing::Tilted,
    }
}

fn entity(entity: &dxf::entities::Entity) -> Read {
    let (what, facing, flat) = taken(&entity.specific);
    Read {
        layer: entity.common.layer.clone(),
        what,
        on_paper: entity.common.is_in_paper_space,
        turned_over: facing == Facing::Over,
        off_plane: facing == Facing::Tilted || !flat,
    }
}

/// What it is, how it faces, and whether it lies at no height.
fn taken(specific: &EntityType) -> (What, Facing, bool) {
    match specific {
        // Lines and points are stored at their true places, whatever their extrusion.
        EntityType::Line(line) => {
            let (from, to) = (in_plane(&line.p1), in_plane(&line.p2));
            let flat = line.p1.z == 0.0 && line.p2.z == 0.0;
            let facing = facing(&line.extrusion_direction);
            (What::Entity(Entity::Line { from, to }), facing, flat)
        }
        EntityType::ModelPoint(point) => {
            let dot = Entity::Dot(in_plane(&point.location));
            let facing = facing(&point.extrusion_direction);
            (What::Entity(dot), facing, point.location.z == 0.0)
        }
        EntityType::Circle(circle) => {
            let circled = Entity::Circle {
                centre: in_plane(&circle.center),
                radius: circle.radius,
            };
            turned(circled, &circle.normal, circle.center.z == 0.0)
        }
        EntityType::Arc(arc) => {
            let bent = Entity::Arc {
                centre: in_plane(&arc.center),
                radius: arc.radius,
                start_deg: arc.start_angle,
                end_deg: arc.end_angle,
            };
            turned(bent, &arc.normal, arc.center.z == 0.0)
        }
        EntityType::LwPolyline(line) => {
            let vertex = |v: &dxf::LwPolylineVertex| Vertex {
                at: Point::new(v.x, v.y),
                bulge: v.bulge,
            };
            let chain = Entity::Polyline {
                vertices: line.vertices.iter().map(vertex).collect(),
                closed: line.is_closed(),
            };
            turned(chain, &line.extrusion_direction, true)
        }
        EntityType::Polyline(line) => polyline(line),
        EntityType::Insert(insert) => {
            let flat = insert.location.z == 0.0;
            let facing = facing(&insert.extrusion_direction);
            (What::Insert(set_in(insert)), facing, flat)
        }
        other => (What::Foreign(name(other)), Facing::Up, true),
    }
}

fn polyline(line: &dxf::entities::Polyline) -> (What, Facing, bool) {
    if line.is_3d_polygon_mesh() || line.is_polyface_mesh() {
        return (What::Foreign("mesh"), Facing::Up, true);
    }
    if line.spline_fit_vertices_added() {
        return (
            What::Foreign("polyline fitted to a spline"),
            Facing::Up,
            true,
        );
    }
    let flat = line.vertices().all(|v| v.location.z == 0.0);
    let vertex = |v: &dxf::entities::Vertex| Vertex {
        at: in_plane(&v.location),
        bulge: v.bulge,
    };
    let chain = Entity::Polyline {
        vertices: line.vertices().map(vertex).collect(),
        closed: line.is_closed(),
    };
    turned(chain, &line.normal, flat)
}

fn set_in(insert: &dxf::entities::Insert) -> Insert {
    let copies = |count: i16| u16::try_from(count.max(1)).unwrap_or(1);
    Insert {
        block: insert.name.to_lowercase(),
        at: in_plane(&insert.location),
        scale: (insert.x_scale_factor, insert.y_scale_factor),
        turn_deg: insert.rotation,
        copies: (copies(insert.column_count), copies(insert.row_count)),
        spacing: (insert.column_spacing, insert.row_spacing),
    }
}

fn in_plane(p: &dxf::Point) -> Point {
    Point::new(p.x, p.y)
}

/// An entity at its true place: with extrusion −1 it is stored with x reversed.
fn turned(stored: Entity, normal: &Vector, flat: bool) -> (What, Facing, bool) {
    let facing = facing(normal);
    let entity = match facing {
        Facing::Over => stored.opposite_hand(),
        Facing::Up | Facing::Tilted => stored,
    };
    (What::Entity(entity), facing, flat)
}

/// What a kind is called in messages.
fn name(specific: &EntityType) -> &'static str {
    match specific {
        EntityType::Spline(_) | EntityType::Helix(_) => "spline",
        EntityType::Ellipse(_) => "ellipse",
        EntityType::Text(_)
        | EntityType::MText(_)
        | EntityType::RText(_)
        | EntityType::ArcAlignedText(_)
        | EntityType::Attribute(_)
        | EntityType::AttributeDefinition(_) => "text",
        EntityType::RotatedDimension(_)
        | EntityType::RadialDimension(_)
        | EntityType::DiameterDimension(_)
        | EntityType::AngularThreePointDimension(_)
        | EntityType::OrdinateDimension(_)
        | EntityType::Leader(_)
        | EntityType::Tolerance(_) => "dimension",
        EntityType::Solid(_) | EntityType::Trace(_) | EntityType::Wipeout(_) => "filled area",
        EntityType::Image(_) => "picture",
        EntityType::Ray(_) | EntityType::XLine(_) => "endless line",
        EntityType::MLine(_) => "multiple line",
        EntityType::Region(_)
        | EntityType::Body(_)
        | EntityType::Solid3D(_)
        | EntityType::Face3D(_) => "solid or region",
        EntityType::Shape(_) => "shape",
        _ => "entity of a kind that no cutter takes",
    }
}
