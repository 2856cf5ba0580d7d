//! Everything that a file draws, in millimetres and at its true place: blocks opened, units turned, oddities counted.

use std::collections::BTreeMap;

use super::super::entity::{Entity, Vertex};
use super::super::reader::{Block, FileUnit, Insert, Read, ReadFile, What};
use crate::design::Point;
use crate::units::Length;
use crate::units::angle::{atan2, cos, sin, sqrt};
use crate::units::tolerance::SAME_SCALE;

/// A block in a block in a block deeper than this is a block within itself.
const DEEPEST: usize = 24;
/// More than this no plate has; a file that says so multiplies blocks without end.
const MOST_ENTITIES: usize = 400_000;
/// Beyond this no plate reaches, mm, in whichever unit its file was drawn.
const FURTHEST_MM: f64 = 1e8;

/// What a file draws.
#[derive(Clone, Debug, Default)]
pub(super) struct Flat {
    /// Entities that a cut file may hold, each with the name of its layer.
    pub drawn: Vec<(String, Entity)>,
    /// What no cut file holds: how many of each kind on each layer.
    pub foreign: BTreeMap<(String, String), usize>,
    /// How many entities are stored mirrored.
    pub turned_over: usize,
    /// How many lie off the plane.
    pub off_plane: usize,
    /// How many lie in paper space, and are left out.
    pub on_paper: usize,
    /// How many blocks were opened.
    pub blocks: usize,
    /// Blocks that are set in and nowhere defined.
    pub lost_blocks: Vec<String>,
}

/// Millimetres in a unit of the file; a file that states none, or a strange one, is taken to be in millimetres.
pub(super) fn mm_per_unit(unit: FileUnit) -> f64 {
    match unit {
        FileUnit::Inches => Length::inches(1.0).to_mm(),
        FileUnit::Feet => Length::inches(12.0).to_mm(),
        FileUnit::Centimetres => 10.0,
        FileUnit::Metres => 1000.0,
        FileUnit::Millimetres | FileUnit::Unstated | FileUnit::Strange => 1.0,
    }
}

/// Opens every block and turns everything into millimetres, or says why that cannot be done.
pub(super) fn flatten(file: &ReadFile) -> Result<Flat, String> {
    let unit = mm_per_unit(file.unit);
    let mut opening = Opening {
        blocks: &file.blocks,
        flat: Flat::default(),
        seen: 0,
    };
    let lay = Lay {
        x: Point::new(unit, 0.0),
        y: Point::new(0.0, unit),
        at: Point::CENTRE,
    };
    opening.all(&file.entities, &lay, None, 0)?;
    Ok(opening.flat)
}

/// A motion of the plane that may stretch: where the axes of a block come to lie.
#[derive(Clone, Copy, Debug)]
struct Lay {
    x: Point,
    y: Point,
    at: Point,
}

impl Lay {
    fn place(&self, p: Point) -> Point {
        self.along(p) + self.at
    }

    fn along(&self, p: Point) -> Point {
        self.x * p.x + self.y * p.y
    }

    /// The scale, where circles stay circles.
    fn scale(&self) -> Option<f64> {
        let (x, y) = (self.x.radius(), self.y.radius());
        let even =
            (x - y).abs() <= SAME_SCALE * x && self.x.dot(self.y).abs() <= SAME_SCALE * x * y;
        (even && x > 0.0).then_some(x)
    }

    fn mirrors(&self) -> bool {
        self.x.cross(self.y) < 0.0
    }

    /// Where one copy of a block comes to lie.
    fn of(&self, insert: &Insert, base: Point, column: u16, row: u16, over: bool) -> Lay {
        let turn = insert.turn_deg.to_radians();
        let turned = |p: Point| {
            Point::new(
                p.x * cos(turn) - p.y * sin(turn),
                p.x * sin(turn) + p.y * cos(turn),
            )
        };
        let hand = |p: Point| if over { p.opposite_hand() } else { p };
        let x = hand(turned(Point::new(insert.scale.0, 0.0)));
        let y = hand(turned(Point::new(0.0, insert.scale.1)));
        let step = Point::new(
            f64::from(column) * insert.spacing.0,
            f64::from(row) * insert.spacing.1,
        );
        let at = hand(insert.at + turned(step)) - x * base.x - y * base.y;
        Lay {
            x: self.along(x),
            y: self.along(y),
            at: self.place(at),
        }
    }
}

struct Opening<'a> {
    blocks: &'a BTreeMap<String, Block>,
    flat: Flat,
    seen: usize,
}

impl Opening<'_> {
    fn all(
        &mut self,
        read: &[Read],
        lay: &Lay,
        within: Option<&str>,
        depth: usize,
    ) -> Result<(), String> {
        // A block set in counts too, or rows and columns of an empty one would never end.
        self.seen += 1 + read.len();
        if self.seen > MOST_ENTITIES {
            return Err(format!("it draws more than {MOST_ENTITIES} entities"));
        }
        for one in read {
            self.one(one, lay, within, depth)?;
        }
        Ok(())
    }

    fn one(
        &mut self,
        read: &Read,
        lay: &Lay,
        within: Option<&str>,
        depth: usize,
    ) -> Result<(), String> {
        if read.on_paper {
            self.flat.on_paper += 1;
            return Ok(());
        }
        // What lies on layer 0 of a block lies on the layer on which the block is set in.
        let layer = match within {
            Some(outer) if read.layer == "0" => outer,
            _ => &read.layer,
        };
        self.flat.turned_over += usize::from(read.turned_over);
        self.flat.off_plane += usize::from(read.off_plane);
        match &read.what {
            What::Foreign(kind) => self.foreign(kind, layer),
            What::Insert(insert) => self.open(insert, read.turned_over, lay, layer, depth)?,
            What::Entity(entity) => match laid(entity, lay) {
                Some(entity) if in_range(&entity) => {
                    self.flat.drawn.push((layer.to_string(), entity));
                }
                Some(_) => {
                    return Err(format!(
                        "a {} on layer {layer} has a co-ordinate that is no number, or lies beyond any plate",
                        entity.kind()
                    ));
                }
                None => self.foreign("ellipse, from a block stretched one way", layer),
            },
        }
        Ok(())
    }

    fn foreign(&mut self, kind: &str, layer: &str) {
        let key = (kind.to_string(), layer.to_string());
        *self.flat.foreign.entry(key).or_default() += 1;
    }

    fn open(
        &mut self,
        insert: &Insert,
        over: bool,
        lay: &Lay,
        layer: &str,
        depth: usize,
    ) -> Result<(), String> {
        let Some(block) = self.blocks.get(&insert.block) else {
            self.flat.lost_blocks.push(insert.block.clone());
            return Ok(());
        };
        if depth >= DEEPEST {
            return Err(format!("block {} holds itself", insert.block));
        }
        self.flat.blocks += 1;
        for column in 0..insert.copies.0 {
            for row in 0..insert.copies.1 {
                let inner = lay.of(insert, block.base, column, row, over);
                self.all(&block.entities, &inner, Some(layer), depth + 1)?;
            }
        }
        Ok(())
    }
}

/// An entity where the motion puts it; none where a circle would come out stretched.
fn laid(entity: &Entity, lay: &Lay) -> Option<Entity> {
    Some(match entity {
        Entity::Line { from, to } => Entity::Line {
            from: lay.place(*from),
            to: lay.place(*to),
        },
        Entity::Dot(at) => Entity::Dot(lay.place(*at)),
        Entity::Circle { centre, radius } => Entity::Circle {
            centre: lay.place(*centre),
            radius: radius * lay.scale()?,
        },
        Entity::Arc {
            centre,
            radius,
            start_deg,
            end_deg,
        } => {
            let (scale, axis) = (lay.scale()?, atan2(lay.x.y, lay.x.x).to_degrees());
            let (start_deg, end_deg) = match lay.mirrors() {
                false => (axis + start_deg, axis + end_deg),
                true => (axis - end_deg, axis - start_deg),
            };
            Entity::Arc {
                centre: lay.place(*centre),
                radius: radius * scale,
                start_deg,
                end_deg,
            }
        }
        Entity::Polyline { vertices, closed } => {
            if vertices.iter().any(|v| v.bulge != 0.0) {
                lay.scale()?;
            }
            let sign = if lay.mirrors() { -1.0 } else { 1.0 };
            let vertices = vertices.iter().map(|v| Vertex {
                at: lay.place(v.at),
                bulge: v.bulge * sign,
            });
            Entity::Polyline {
                vertices: vertices.collect(),
                closed: *closed,
            }
        }
    })
}

fn in_range(entity: &Entity) -> bool {
    let fits = |number: f64| number.is_finite() && number.abs() <= FURTHEST_MM;
    let place = |p: &Point| fits(p.x) && fits(p.y) && fits(sqrt(p.dot(*p)));
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
