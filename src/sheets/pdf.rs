//! All sheets in one PDF at their true size, with the face embedded and every figure to be found by searching.
//!
//! The numbers in the file are millimetres of paper under one scale. Lettering is text of the embedded face. Readers take the
//! raised and lowered digits of a stacked fraction for lines of their own and would never find `1 13/16`; so those digits, and
//! the signs we draw, are shapes, and over their place lies what they read, in white beneath them.

use std::collections::BTreeMap;
use std::fmt;

use krilla::color::luma;
use krilla::geom::{Path, PathBuilder, Point, Transform};
use krilla::graphic::Graphic;
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, LineCap, LineJoin, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use krilla::{Document, SerializeSettings};
use kurbo::{Affine, BezPath, PathEl};

use super::curves;
use super::dashes::{self, Dashes};
use super::face;
use super::lettering::{self, Laid, Piece, Read};
use super::mark::{Mark, Pattern, Pen, Sheet, Text};
use crate::units::Length;

/// Points of the printer's measure to one inch.
const POINTS_PER_INCH: f64 = 72.0;

/// Why no PDF could be made.
#[derive(Debug)]
pub enum NoPdf {
    /// A sheet has no size.
    NoPaper {
        /// Number of the sheet.
        sheet: usize,
    },
    /// The writer of PDF refused, and says why.
    Refused(String),
}

impl fmt::Display for NoPdf {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NoPdf::NoPaper { sheet } => write!(f, "sheet {sheet} has no width or no height"),
            NoPdf::Refused(why) => write!(f, "the PDF could not be written: {why}"),
        }
    }
}

impl std::error::Error for NoPdf {}

/// Writes the sheets, a page each, in their order. The same sheets give the same bytes: no date and no chance gets in.
pub fn write(title: &str, sheets: &[Sheet]) -> Result<Vec<u8>, NoPdf> {
    let mut document = Document::new_with(SerializeSettings::default());
    document.set_metadata(
        Metadata::new()
            .title(title.to_string())
            .creator("centrepop".to_string())
            .language("en-GB".to_string()),
    );
    let mut faces = Faces::embed();
    for sheet in sheets {
        page(&mut document, sheet, &mut faces)?;
    }
    document
        .finish()
        .map_err(|cause| NoPdf::Refused(format!("{cause:?}")))
}

/// What is held once for all the sheets: the two faces, and the shapes that stand in many places.
struct Faces {
    regular: Font,
    bold: Font,
    /// Outlines of digits in fractions, each held once for all its uses.
    shapes: BTreeMap<(bool, u32), Graphic>,
    /// Circles by what they are told from, each held once for all its places: a nest has hundreds that are alike.
    circles: BTreeMap<CircleKey, Graphic>,
}

/// The bits of a circle's radius and of its pen's width, and its pattern.
type CircleKey = (u64, u64, u8);

impl Faces {
    fn embed() -> Self {
        let embed = |bytes: &'static [u8]| {
            Font::new(bytes.to_vec().into(), 0).expect("the bundled face is a whole font file")
        };
        Faces {
            regular: embed(face::REGULAR),
            bold: embed(face::BOLD),
            shapes: BTreeMap::new(),
            circles: BTreeMap::new(),
        }
    }

    /// A circle about the origin.
    fn circle(
        &mut self,
        surface: &mut Surface<'_>,
        (radius, pen, pattern): (f64, Pen, Pattern),
    ) -> Graphic {
        let key = (radius.to_bits(), pen.width().to_bits(), pattern as u8);
        self.circles
            .entry(key)
            .or_insert_with(|| {
                let mut stream = surface.stream_builder();
                let mut shape = stream.surface();
                let dashes = dashes::closed(pattern, pen, radius);
                let circle = curves::circle(kurbo::Point::ORIGIN, radius);
                stroke(&mut shape, &circle, pen_stroke(pen, pattern, dashes));
                shape.finish();
                Graphic::new(stream.finish(), false)
            })
            .clone()
    }

    /// The outline of a glyph in units of the face, y up.
    fn shape(&mut self, surface: &mut Surface<'_>, number: u32, bold: bool) -> Graphic {
        self.shapes
            .entry((bold, number))
            .or_insert_with(|| {
                let mut stream = surface.stream_builder();
                let mut shape = stream.surface();
                fill(&mut shape, &face::outline(number, bold));
                shape.finish();
                Graphic::new(stream.finish(), false)
            })
            .clone()
    }

    fn of(&self, bold: bool) -> Font {
        if bold { &self.bold } else { &self.regular }.clone()
    }
}

fn page(document: &mut Document, sheet: &Sheet, faces: &mut Faces) -> Result<(), NoPdf> {
    let points_per_mm = POINTS_PER_INCH / Length::inches(1.0).to_mm();
    let points = |mm: f64| (mm * points_per_mm) as f32;
    let settings =
        PageSettings::from_wh(points(sheet.width), points(sheet.height)).ok_or(NoPdf::NoPaper {
            sheet: sheet.number,
        })?;
    let mut page = document.start_page_with(settings);
    let mut surface = page.surface();
    surface.push_transform(&Transform::from_scale(points(1.0), points(1.0)));
    for mark in sheet.drawn() {
        draw(&mut surface, mark, faces);
    }
    surface.pop();
    surface.finish();
    page.finish();
    Ok(())
}

fn draw(surface: &mut Surface<'_>, mark: &Mark, faces: &mut Faces) {
    match mark {
        Mark::Line { pen, pattern, .. } | Mark::Arc { pen, pattern, .. } => {
            let dashes = dashes::open(*pattern, *pen, mark.length());
            let stroke_of_pen = pen_stroke(*pen, *pattern, dashes);
            if let Some(path) = curves::path_of(mark) {
                stroke(surface, &path, stroke_of_pen);
            }
        }
        Mark::Circle {
            centre,
            radius,
            pen,
            pattern,
            ..
        } => {
            let circle = faces.circle(surface, (*radius, *pen, *pattern));
            let place = Affine::translate((centre.x, centre.y));
            surface.push_transform(&transform(place));
            surface.draw_graphic(circle);
            surface.pop();
        }
        Mark::Filled { corners, .. } => fill(surface, &curves::polygon(corners)),
        Mark::Text(text) => letter(surface, text, faces),
    }
}

fn pen_stroke(pen: Pen, pattern: Pattern, dashes: Option<Dashes>) -> Stroke {
    Stroke {
        // A round end closes the corner where two edges meet; on a dash it would lengthen every dot.
        line_cap: match pattern {
            Pattern::Continuous => LineCap::Round,
            Pattern::Dashed | Pattern::Chain | Pattern::DoubleChain => LineCap::Butt,
        },
        dash: dashes.map(|dashes| StrokeDash {
            array: dashes.lengths.iter().map(|l| *l as f32).collect(),
            offset: dashes.skip as f32,
        }),
        ..plain_stroke(pen.width())
    }
}

fn plain_stroke(width: f64) -> Stroke {
    Stroke {
        paint: luma::Color::black().into(),
        width: width as f32,
        line_cap: LineCap::Butt,
        line_join: LineJoin::Miter,
        ..Stroke::default()
    }
}

fn ink(colour: luma::Color) -> Fill {
    Fill {
        paint: colour.into(),
        opacity: NormalizedF32::ONE,
        rule: FillRule::NonZero,
    }
}

fn stroke(surface: &mut Surface<'_>, path: &BezPath, stroke: Stroke) {
    let Some(path) = drawn(path) else { return };
    surface.set_fill(None);
    surface.set_stroke(Some(stroke));
    surface.draw_path(&path);
}

fn fill(surface: &mut Surface<'_>, path: &BezPath) {
    let Some(path) = drawn(path) else { return };
    surface.set_stroke(None);
    surface.set_fill(Some(ink(luma::Color::black())));
    surface.draw_path(&path);
}

/// A tenth of a micron is kept: what lies below only makes the file longer.
fn short(value: f64) -> f32 {
    ((value * 1e4).round() / 1e4) as f32
}

/// Nothing where the path has no length at all.
fn drawn(path: &BezPath) -> Option<Path> {
    let mut builder = PathBuilder::new();
    for element in path.elements() {
        let f = |p: kurbo::Point| (short(p.x), short(p.y));
        match *element {
            PathEl::MoveTo(p) => builder.move_to(f(p).0, f(p).1),
            PathEl::LineTo(p) => builder.line_to(f(p).0, f(p).1),
            PathEl::QuadTo(a, p) => builder.quad_to(f(a).0, f(a).1, f(p).0, f(p).1),
            PathEl::CurveTo(a, b, p) => {
                builder.cubic_to(f(a).0, f(a).1, f(b).0, f(b).1, f(p).0, f(p).1);
            }
            PathEl::ClosePath => builder.close(),
        }
    }
    builder.finish()
}

/// One line of lettering, within its own place: capital heights along its base line.
fn letter(surface: &mut Surface<'_>, text: &Text, faces: &mut Faces) {
    let laid = lettering::lay(text);
    surface.push_transform(&transform(lettering::placing(text, laid.width)));
    read(surface, &laid, text.bold, faces);
    for piece in &laid.pieces {
        show(surface, piece, text.bold, faces);
    }
    surface.pop();
}

/// What is read, in order, in runs: black where its glyphs are what is seen, else white beneath what is seen.
///
/// White letters keep the height of the line and are drawn narrower: readers start a new line where the height changes.
fn read(surface: &mut Surface<'_>, laid: &Laid, bold: bool, faces: &Faces) {
    surface.set_stroke(None);
    let em = (face::EM_UNITS / face::CAPITAL_UNITS) as f32;
    for run in laid
        .reads
        .chunk_by(|a, b| a.seen == b.seen && a.stretch == b.stretch)
    {
        let colour = if run[0].seen {
            luma::Color::black()
        } else {
            luma::Color::white()
        };
        surface.set_fill(Some(ink(colour)));
        let words: String = run.iter().map(|read| read.character).collect();
        let place = Affine::new([run[0].stretch, 0.0, 0.0, 1.0, run[0].x, 0.0]);
        surface.push_transform(&transform(place));
        surface.draw_glyphs(
            Point::from_xy(0.0, 0.0),
            &glyphs(run, bold),
            faces.of(bold),
            &words,
            em,
            false,
        );
        surface.pop();
    }
}

/// The glyphs of a run as the writer of PDF wants them: advances in ems, and which bytes of the words each stands for.
fn glyphs(run: &[Read], bold: bool) -> Vec<KrillaGlyph> {
    let mut from = 0;
    run.iter()
        .map(|read| {
            let range = from..from + read.character.len_utf8();
            from = range.end;
            let advance = face::glyph(read.character, bold).map_or(1.0, |glyph| glyph.advance);
            let ems = (advance * face::CAPITAL_UNITS / face::EM_UNITS) as f32;
            KrillaGlyph::new(GlyphId::new(read.number), ems, 0.0, 0.0, 0.0, range, None)
        })
        .collect()
}

/// Draws a piece that is not already there as text.
fn show(surface: &mut Surface<'_>, piece: &Piece, bold: bool, faces: &mut Faces) {
    match piece {
        Piece::Glyph {
            in_fraction: false, ..
        } => {}
        Piece::Glyph {
            number, x, y, size, ..
        } => {
            let unit = size / face::CAPITAL_UNITS;
            let place = Affine::new([unit, 0.0, 0.0, -unit, *x, *y]);
            let shape = faces.shape(surface, *number, bold);
            surface.push_transform(&transform(place));
            surface.draw_graphic(shape);
            surface.pop();
        }
        Piece::Stroke { from, to, width } => {
            let line = curves::line((*from).into(), (*to).into());
            stroke(surface, &line, plain_stroke(*width));
        }
        Piece::Ring {
            centre,
            radius,
            width,
        } => {
            let ring = curves::circle((*centre).into(), *radius);
            stroke(surface, &ring, plain_stroke(*width));
        }
    }
}

fn transform(place: Affine) -> Transform {
    let [a, b, c, d, e, f] = place.as_coeffs().map(|value| value as f32);
    Transform::from_row(a, b, c, d, e, f)
}
