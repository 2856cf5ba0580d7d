//! Lettering on a part: which it is, which way up, which face.
//!
//! Lettering stands on the flat, clear of the heel or the weld, of the edge, of every hole that the plate will ever have, and of what
//! is fitted to it on either face: washer, nut, joint face, bead, pad with its weld. Metal under a weld or a washer takes no stamp either.
//! Where no place is clear it goes beside the part, and is asked for to be stamped by hand.

use super::clear_place::{ClearMap, Field, Wanted};
use super::file_name::side;
use super::lettering::{strokes, width};
use super::part::{CutPart, Inscribed, Layer, PartKind, Shape};
use super::reference::{add_reference, rectangle};
use crate::design::{Design, Hole, Point};
use crate::spec::{Rolling, Spec};
use crate::units::{Length, Size};

/// Heights of letter, mm, the best first: the largest that a stamp makes in one blow down to the least that is read.
const HEIGHTS_MM: [f64; 4] = [10.0, 8.0, 6.0, 5.0];
/// Between one line and the next, in heights of letter.
const GAP: f64 = 0.8;

/// One thing in an inscription.
#[derive(Clone, Debug)]
pub(super) enum Item {
    /// A line of lettering.
    Words(String),
    /// A scribed box into which the heat number is stamped.
    HeatBox,
    /// A scribed arrow along the way in which the plate was rolled.
    Rolled(Rolling),
    /// A scribed box into which an arrow is stamped along the rolling, as it is found.
    ArrowBox,
}

/// Letters of a heat number for which the box has room.
const HEAT_LETTERS: f64 = 10.0;
/// Side of the box for an arrow, in heights of letter: a stamped arrow fits in it either way.
const ARROW_BOX: f64 = 3.0;

impl Item {
    /// Width and height with letters of this height.
    fn size(&self, height: f64) -> (f64, f64) {
        match self {
            Item::Words(line) => (width(line, height), height),
            Item::HeatBox => (HEAT_LETTERS * height, 2.0 * height),
            Item::Rolled(Rolling::Upright) => (height, 5.0 * height),
            Item::Rolled(Rolling::Across) => (5.0 * height, height),
            Item::ArrowBox => (ARROW_BOX * height, ARROW_BOX * height),
        }
    }

    /// The strokes, the lower left corner at `at`.
    fn strokes(&self, at: Point, height: f64) -> Vec<(Layer, Shape)> {
        let (wide, tall) = self.size(height);
        let scribed = |from: (f64, f64), to: (f64, f64)| {
            let place = |(x, y): (f64, f64)| Point::new(at.x + x, at.y + y);
            let (from, to) = (place(from), place(to));
            (Layer::Scribe, Shape::Line { from, to })
        };
        match self {
            Item::Words(line) => strokes(line, at, height)
                .into_iter()
                .map(|(from, to)| (Layer::Stamp, Shape::Line { from, to }))
                .collect(),
            Item::HeatBox | Item::ArrowBox => rectangle(at, wide, tall)
                .map(|outline| (Layer::Scribe, Shape::Closed(outline)))
                .into_iter()
                .collect(),
            // A head at each end: the way is told, and which end came first out of the rolls does not matter.
            Item::Rolled(Rolling::Upright) => vec![
                scribed((wide / 2.0, 0.0), (wide / 2.0, tall)),
                scribed((0.0, tall - wide), (wide / 2.0, tall)),
                scribed((wide, tall - wide), (wide / 2.0, tall)),
                scribed((0.0, wide), (wide / 2.0, 0.0)),
                scribed((wide, wide), (wide / 2.0, 0.0)),
            ],
            Item::Rolled(Rolling::Across) => vec![
                scribed((0.0, tall / 2.0), (wide, tall / 2.0)),
                scribed((wide - tall, 0.0), (wide, tall / 2.0)),
                scribed((wide - tall, tall), (wide, tall / 2.0)),
                scribed((tall, 0.0), (0.0, tall / 2.0)),
                scribed((tall, tall), (0.0, tall / 2.0)),
            ],
        }
    }

    /// What a sheet says of it.
    fn in_words(&self) -> String {
        match self {
            Item::Words(line) => line.replace('^', "(ARROW UP)"),
            Item::HeatBox => "(BOX FOR THE HEAT NUMBER)".into(),
            Item::Rolled(_) => "(ARROW ALONG THE ROLLING)".into(),
            Item::ArrowBox => "(BOX FOR AN ARROW)".into(),
        }
    }

    /// What is asked for by hand where the part has no room for it.
    fn by_hand(&self) -> String {
        match self {
            Item::Words(line) => format!("STAMP BY HAND: {line}"),
            Item::HeatBox => "SCRIBE BY HAND: BOX FOR THE HEAT NUMBER".into(),
            Item::Rolled(_) | Item::ArrowBox => "SCRIBE BY HAND: ARROW ALONG THE ROLLING".into(),
        }
    }
}

/// Things that belong together one under another, and the place that they would best stand near.
#[derive(Clone, Debug)]
pub(super) struct Inscription {
    items: Vec<Item>,
    near: Point,
    above: f64,
    centred: bool,
}

impl Inscription {
    /// Lines that may stand anywhere.
    pub(super) fn anywhere(lines: impl IntoIterator<Item = String>, near: Point) -> Inscription {
        Inscription {
            items: lines.into_iter().map(Item::Words).collect(),
            near,
            above: f64::NEG_INFINITY,
            centred: false,
        }
    }

    /// TOP and an arrow, on the vertical centre line where that is clear, and not below this y: TOP at the foot would turn it over.
    pub(super) fn top(near: Point, above: f64) -> Inscription {
        Inscription::anywhere(["TOP ^".into()], near)
            .above(above)
            .centred()
    }

    /// The box for the heat number under its words.
    pub(super) fn heat_number(near: Point) -> Inscription {
        Inscription::anywhere(["HEAT NO".into()], near).and(Item::HeatBox)
    }

    /// With one thing more below.
    fn and(mut self, item: Item) -> Inscription {
        self.items.push(item);
        self
    }

    /// Lines that may not stand below this y.
    fn above(mut self, y: f64) -> Inscription {
        self.above = y;
        self
    }

    /// On the vertical centre line, if it is clear anywhere.
    fn centred(mut self) -> Inscription {
        self.centred = true;
        self
    }

    fn alone(&self, item: &Item) -> Inscription {
        Inscription {
            items: vec![item.clone()],
            ..self.clone()
        }
    }

    fn wanted(&self, height: f64) -> Wanted {
        let sizes = self.items.iter().map(|item| item.size(height));
        let (wide, tall) = sizes.fold((0.0_f64, 0.0), |(w, t), (wide, tall)| {
            (w.max(wide), t + tall)
        });
        Wanted {
            wide,
            tall: tall + GAP * height * (self.items.len() as f64 - 1.0),
            near: self.near,
            above: self.above,
            centred: self.centred,
        }
    }

    fn strokes(&self, corner: Point, height: f64) -> Vec<(Layer, Shape)> {
        let wanted = self.wanted(height);
        let mut top = corner.y + wanted.tall;
        let mut marks = Vec::new();
        for item in &self.items {
            let (wide, tall) = item.size(height);
            let at = Point::new(corner.x + (wanted.wide - wide) / 2.0, top - tall);
            marks.extend(item.strokes(at, height));
            top -= tall + GAP * height;
        }
        marks
    }
}

/// Drawing and revision, as stamped on every part.
pub(super) fn identity(spec: &Spec) -> String {
    let job = &spec.written.job;
    format!("{} REV {}", job.drawing, job.revision)
}

/// Marks a plate or a blank, seen from the declared side with its top upwards.
pub(super) fn stamp_part(part: &mut CutPart, spec: &Spec, design: &Design, mut field: Field) {
    for hole in &design.holes {
        field.keep_clear_of(hole.at, taken_up(design, hole).to_mm() / 2.0);
    }
    let (low, high) = field.bounds();
    let (top, bottom) = (Point::new(0.0, high.y), Point::new(0.0, low.y));
    let upper = high.y - (high.y - low.y) / 4.0;
    let face = format!("THIS FACE TO {}", side(design.view_from).to_uppercase());
    let which = identity(spec);
    let up = Inscription::top(top, upper);
    let heat = Inscription::heat_number(bottom);
    let rolled = rolled(spec, bottom);
    let face_and_which = |near| Inscription::anywhere([face.clone(), which.clone()], near);
    let inscriptions = match field.has_weld() {
        // Where the plate runs on outside the weld, that metal holds no pressure and takes the lettering best.
        true => [up, face_and_which(bottom), heat, rolled],
        false => [up, face_and_which(top).above(upper), heat, rolled],
    };
    lay_marks(part, spec, &inscriptions, field);
}

/// Diameter round the middle of a hole that takes no lettering: the largest hole that it will ever be, what is fitted to it on
/// either face, or the metal of a mouth that is turned out round it.
fn taken_up(design: &Design, hole: &Hole) -> Length {
    let group = &design.groups[hole.group];
    let mouth = group.mouth.as_ref();
    let mouth = mouth.map(|_| hole.finish.value() + 2.0 * design.thickness.value());
    let later = [&group.largest, &group.next_rebore].map(|size| size.as_ref().map(Size::value));
    let on_faces = [group.takes_up.smokebox, group.takes_up.firebox];
    let wider = [Some(hole.ligament_hole), mouth]
        .into_iter()
        .chain(on_faces);
    let all = later.into_iter().chain(wider).flatten();
    all.fold(hole.finish.value(), Length::max)
}

/// Which way the plate was rolled, where the spec says; where it does not, a box for what the cutter finds.
fn rolled(spec: &Spec, near: Point) -> Inscription {
    let rolling = spec.written.cutting.as_ref().and_then(|c| c.rolling);
    match rolling {
        Some(way) => Inscription::anywhere(["ROLLED".into()], near).and(Item::Rolled(way)),
        None => Inscription::anywhere(["ROLLING".into()], near).and(Item::ArrowBox),
    }
}

/// Lays lettering on the part where there is room, then the square and the notes beside it.
pub(super) fn lay_marks(
    part: &mut CutPart,
    spec: &Spec,
    inscriptions: &[Inscription],
    mut field: Field,
) {
    for (layer, shape) in &part.shapes {
        if !layer.is_cut() {
            field.keep_clear_of_mark(shape);
        }
    }
    let thickness = part.thickness.as_ref().map_or(0.0, |t| t.value().to_mm());
    let mut map = ClearMap::of(&field, thickness);
    let (mut letters, mut homeless) = (Vec::new(), Vec::new());
    let mut keep = |(strokes, inscribed)| {
        letters.extend(strokes);
        part.inscriptions.push(inscribed);
    };
    for inscription in inscriptions {
        if let Some(placed) = lay(inscription, &mut map, thickness) {
            keep(placed);
            continue;
        }
        for item in &inscription.items {
            match lay(&inscription.alone(item), &mut map, thickness) {
                Some(placed) => keep(placed),
                None => homeless.push(item),
            }
        }
    }
    add_before_cuts(part, letters);
    let mut notes = common_notes(spec, part);
    notes.extend(homeless.iter().map(|item: &&Item| item.by_hand()));
    part.by_hand
        .extend(homeless.into_iter().map(Item::in_words));
    add_reference(part, &notes);
}

/// The strokes of an inscription in the largest letters for which there is room, and what they say where.
fn lay(
    inscription: &Inscription,
    map: &mut ClearMap,
    thickness: f64,
) -> Option<(Vec<(Layer, Shape)>, Inscribed)> {
    HEIGHTS_MM.into_iter().find_map(|height| {
        let wanted = inscription.wanted(height);
        let corner = map.place(&wanted)?;
        map.take(corner, &wanted, height, thickness);
        let inscribed = Inscribed {
            says: inscription.items.iter().map(Item::in_words).collect(),
            low: corner,
            high: Point::new(corner.x + wanted.wide, corner.y + wanted.tall),
        };
        Some((inscription.strokes(corner, height), inscribed))
    })
}

/// Marks are made before anything is cut, while the plate still lies still.
fn add_before_cuts(part: &mut CutPart, letters: Vec<(Layer, Shape)>) {
    let first_cut = part.shapes.iter().position(|(layer, _)| layer.is_cut());
    let at = first_cut.unwrap_or(part.shapes.len());
    part.shapes.splice(at..at, letters);
}

fn common_notes(spec: &Spec, part: &CutPart) -> Vec<String> {
    let mut notes = vec![
        format!("{} {}", identity(spec), part.name),
        format!("SPEC {}", spec.short_fingerprint()),
        "MILLIMETRES - SCALE 1:1 - SQUARE IS 100 MM".into(),
        part.lies.replace(',', " -"),
        "KERF NOT APPLIED".into(),
        "DO NOT CUT THIS LAYER".into(),
    ];
    if part.kind != PartKind::Template {
        notes.push("DO NOT MIRROR".into());
    }
    let cutting = spec.written.cutting.as_ref();
    if cutting.is_some_and(|c| c.starting_figures.is_some()) {
        notes.push("STARTING FIGURES USED - WORKS TO CONFIRM".into());
    }
    notes
}
