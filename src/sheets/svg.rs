//! One sheet as SVG in true millimetres: no fonts, no network, nothing but black.
//!
//! Each glyph is outlined once and referred to wherever it stands; what the lettering says is kept in `aria-label`, so that it
//! can be read aloud and searched.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::sync::Mutex;

use kurbo::{Affine, BezPath, PathEl, Point};
use svg::node::Node as _;
use svg::node::element::{Definitions, Description, Element, Group, Path, Title};

use super::dashes::{self, Dashes};
use super::face;
use super::lettering::{self, Piece};
use super::mark::{Mark, PaperPoint, Pattern, Pen, Sheet, Text};
use crate::units::{angle, print};

/// Writes a sheet.
pub fn write(sheet: &Sheet) -> String {
    let document = svg::Document::new()
        .set("width", format!("{}mm", mm(sheet.width)))
        .set("height", format!("{}mm", mm(sheet.height)))
        .set(
            "viewBox",
            format!("0 0 {} {}", mm(sheet.width), mm(sheet.height)),
        )
        .set("xmlns:xlink", "http://www.w3.org/1999/xlink")
        .set("fill", "none")
        .set("stroke", "#000")
        .add(Title::new(readable(&sheet.title)))
        .add(Description::new().add(svg::node::Text::new(describe(sheet))))
        .add(glyphs_used(sheet))
        .add(paper(sheet));
    let marks: Vec<&Mark> = sheet.drawn().collect();
    let document = marks
        .chunk_by(|a, b| manner(a).is_some() && manner(a) == manner(b))
        .fold(document, |document, run| document.add(run_of_marks(run)));
    format!("{document}\n")
}

fn describe(sheet: &Sheet) -> String {
    format!(
        "Sheet {}, {} by {} mm, drawn in millimetres of paper.",
        sheet.number,
        mm(sheet.width),
        mm(sheet.height)
    )
}

/// One control character would make the whole file unreadable.
fn readable(words: &str) -> String {
    words.chars().filter(|c| !c.is_control()).collect()
}

/// White paper, so that a dark viewer does not hide black lines.
fn paper(sheet: &Sheet) -> Element {
    let mut paper = Element::new("rect");
    paper.assign("width", mm(sheet.width));
    paper.assign("height", mm(sheet.height));
    paper.assign("fill", "#fff");
    paper.assign("stroke", "none");
    paper
}

/// The outlines of every glyph that stands on the sheet, each once, in units of the face with y down.
fn glyphs_used(sheet: &Sheet) -> Definitions {
    let mut used = BTreeSet::new();
    for mark in sheet.drawn() {
        let Mark::Text(text) = mark else { continue };
        for piece in lettering::lay(text).pieces {
            if let Piece::Glyph { number, .. } = piece {
                used.insert((text.bold, number));
            }
        }
    }
    used.into_iter()
        .fold(Definitions::new(), |definitions, (bold, number)| {
            let path = Path::new()
                .set("id", glyph_name(number, bold))
                .set("d", glyph_data(number, bold));
            definitions.add(path)
        })
}

/// The outline of a glyph as path data. Each is worked out once in a run: every sheet shows nearly the same characters.
fn glyph_data(number: u32, bold: bool) -> String {
    static WORKED_OUT: Mutex<BTreeMap<(bool, u32), String>> = Mutex::new(BTreeMap::new());
    // Whoever held it only put an outline in, so that what another left half done is no worse.
    let mut worked_out = WORKED_OUT.lock().unwrap_or_else(|held| held.into_inner());
    worked_out
        .entry((bold, number))
        .or_insert_with(|| outline_data(&(Affine::FLIP_Y * face::outline(number, bold))))
        .clone()
}

fn glyph_name(number: u32, bold: bool) -> String {
    format!("{}{number}", if bold { 'b' } else { 'r' })
}

/// How a mark is drawn: its pen and whether it is unbroken; a filled one has no pen. Nothing for lettering, which stands alone.
fn manner(mark: &Mark) -> Option<(Option<Pen>, bool)> {
    match mark {
        Mark::Line { pen, pattern, .. }
        | Mark::Arc { pen, pattern, .. }
        | Mark::Circle { pen, pattern, .. } => Some((Some(*pen), *pattern == Pattern::Continuous)),
        Mark::Filled { .. } => Some((None, true)),
        Mark::Text(_) => None,
    }
}

/// Neighbouring marks in one group: all drawn by one pen in one manner, all filled, or one line of lettering.
fn run_of_marks(run: &[&Mark]) -> Group {
    let group = match manner(run[0]) {
        Some((Some(pen), unbroken)) => Group::new()
            .set("stroke-width", mm(pen.width()))
            // A round end closes the corner where two edges meet; on a dash it would lengthen every dot.
            .set("stroke-linecap", if unbroken { "round" } else { "butt" }),
        _ => Group::new().set("fill", "#000").set("stroke", "none"),
    };
    let mut unbroken_lines = String::new();
    let mut shapes: Vec<Element> = Vec::new();
    for mark in run {
        match mark {
            Mark::Text(text) => return lettering_pieces(group, text),
            Mark::Line { pen, pattern, .. } | Mark::Arc { pen, pattern, .. } => {
                match dashes::open(*pattern, *pen, mark.length()) {
                    None => put_data(&mut unbroken_lines, mark),
                    dashes => {
                        let mut data = String::new();
                        put_data(&mut data, mark);
                        shapes.push(dashed(path(data), dashes));
                    }
                }
            }
            Mark::Circle {
                centre,
                radius,
                pen,
                pattern,
                ..
            } => {
                let mut circle = Element::new("circle");
                circle.assign("cx", mm(centre.x));
                circle.assign("cy", mm(centre.y));
                circle.assign("r", mm(*radius));
                shapes.push(dashed(circle, dashes::closed(*pattern, *pen, *radius)));
            }
            Mark::Filled { corners, .. } => shapes.push(path(polygon_data(corners))),
        }
    }
    // All of the run's unbroken lines in one element: a table has hundreds.
    let lines = (!unbroken_lines.is_empty()).then(|| path(unbroken_lines));
    lines.into_iter().chain(shapes).fold(group, Group::add)
}

/// Adds a line or an arc to the data of a path.
fn put_data(data: &mut String, mark: &Mark) {
    match mark {
        Mark::Line { from, to, .. } => {
            write!(data, "M{}L{}", place(*from), place(*to)).expect(IN_MEMORY)
        }
        Mark::Arc {
            centre,
            radius,
            start_deg,
            sweep_deg,
            ..
        } => data.push_str(&arc_data(*centre, *radius, *start_deg, *sweep_deg)),
        Mark::Circle { .. } | Mark::Filled { .. } | Mark::Text(_) => {}
    }
}

const IN_MEMORY: &str = "a string takes what is written to it";

fn path(data: String) -> Element {
    let mut path = Element::new("path");
    path.assign("d", data);
    path
}

fn dashed(mut element: Element, dashes: Option<Dashes>) -> Element {
    if let Some(dashes) = dashes {
        let lengths: Vec<String> = dashes.lengths.iter().map(|l| number(*l, 5)).collect();
        element.assign("stroke-dasharray", lengths.join(" "));
        if dashes.skip > 0.0 {
            element.assign("stroke-dashoffset", number(dashes.skip, 5));
        }
    }
    element
}

/// An arc in pieces of half a turn at most: a longer one that ends near its start is drawn as nothing by some viewers.
fn arc_data(centre: PaperPoint, radius: f64, start_deg: f64, sweep_deg: f64) -> String {
    let on = |degrees: f64| PaperPoint {
        x: centre.x + radius * angle::cos(degrees.to_radians()),
        y: centre.y + radius * angle::sin(degrees.to_radians()),
    };
    let pieces = (sweep_deg.abs() / 180.0).ceil().max(1.0);
    let clockwise = u8::from(sweep_deg > 0.0);
    let r = mm(radius);
    let mut data = format!("M{}", place(on(start_deg)));
    for piece in 1..=pieces as u32 {
        let end = on(start_deg + sweep_deg * f64::from(piece) / pieces);
        write!(data, "A{r} {r} 0 0 {clockwise} {}", place(end)).expect(IN_MEMORY);
    }
    data
}

fn polygon_data(corners: &[PaperPoint]) -> String {
    let places: Vec<String> = corners.iter().map(|corner| place(*corner)).collect();
    format!("M{}Z", places.join("L"))
}

/// The pieces of a line of lettering, in units of the face, within one group that puts them in their place.
fn lettering_pieces(group: Group, text: &Text) -> Group {
    let laid = lettering::lay(text);
    let place = lettering::placing(text, laid.width).as_coeffs();
    let unit = face::CAPITAL_UNITS;
    let scaled: Vec<String> = place
        .iter()
        .enumerate()
        // The first four scale, where the eighth place still moves the end of a long line by a micron.
        .map(|(i, c)| if i < 4 { number(c / unit, 9) } else { mm(*c) })
        .collect();
    let group = group
        .set("transform", format!("matrix({})", scaled.join(" ")))
        .set("role", "img")
        .set("aria-label", laid.words());
    laid.pieces.iter().fold(group, |group, piece| match piece {
        Piece::Glyph {
            number: glyph,
            x,
            y,
            size,
            ..
        } => group.add(glyph_use(*glyph, text.bold, (x * unit, y * unit), *size)),
        Piece::Stroke { from, to, width } => {
            let mut stroke = path(format!(
                "M{} {} L{} {}",
                mm(from.0 * unit),
                mm(from.1 * unit),
                mm(to.0 * unit),
                mm(to.1 * unit)
            ));
            stroke.assign("stroke", "#000");
            stroke.assign("stroke-width", mm(width * unit));
            group.add(stroke)
        }
        Piece::Ring {
            centre,
            radius,
            width,
        } => {
            let mut ring = Element::new("circle");
            ring.assign("cx", mm(centre.0 * unit));
            ring.assign("cy", mm(centre.1 * unit));
            ring.assign("r", mm(radius * unit));
            ring.assign("fill", "none");
            ring.assign("stroke", "#000");
            ring.assign("stroke-width", mm(width * unit));
            group.add(ring)
        }
    })
}

fn glyph_use(glyph: u32, bold: bool, origin: (f64, f64), size: f64) -> Element {
    let mut shown = Element::new("use");
    // The older spelling, which every viewer knows.
    shown.assign("xlink:href", format!("#{}", glyph_name(glyph, bold)));
    if size == 1.0 {
        shown.assign("x", mm(origin.0));
        // Digits of a fraction may be as high as the figures beside it.
        if origin.1 != 0.0 {
            shown.assign("y", mm(origin.1));
        }
    } else {
        let (x, y, s) = (mm(origin.0), mm(origin.1), mm(size));
        shown.assign("transform", format!("translate({x} {y}) scale({s})"));
    }
    shown
}

/// An outline from point to point, each told from the last: figures of two or three digits where places have four.
fn outline_data(outline: &BezPath) -> String {
    let mut data = String::new();
    let (mut here, mut start) = (Point::ZERO, Point::ZERO);
    for element in outline.elements() {
        let (letter, points): (char, &[Point]) = match element {
            PathEl::MoveTo(p) => ('m', &[*p]),
            PathEl::LineTo(p) => ('l', &[*p]),
            PathEl::QuadTo(a, p) => ('q', &[*a, *p]),
            PathEl::CurveTo(a, b, p) => ('c', &[*a, *b, *p]),
            PathEl::ClosePath => ('z', &[]),
        };
        data.push(letter);
        for (i, point) in points.iter().enumerate() {
            let way = *point - here;
            for (k, figure) in [mm(way.x), mm(way.y)].iter().enumerate() {
                // A minus sign parts two figures as well as a space does.
                if i + k > 0 && !figure.starts_with('-') {
                    data.push(' ');
                }
                data.push_str(figure);
            }
        }
        here = points.last().copied().unwrap_or(start);
        if letter == 'm' {
            start = here;
        }
    }
    data
}

fn place(point: PaperPoint) -> String {
    format!("{} {}", mm(point.x), mm(point.y))
}

/// A millimetre to three places.
fn mm(value: f64) -> String {
    number(value, 3)
}

/// To so many places, without the noughts at the end and never as `-0`.
fn number(value: f64, places: usize) -> String {
    print::trimmed(value, places)
}

/// How many shapes a sheet shows: each mark is one, each piece of lettering, and the paper. An element may hold several lines.
pub fn shapes_of(sheet: &Sheet) -> usize {
    let shapes = |mark: &Mark| match mark {
        Mark::Text(text) => lettering::lay(text).pieces.len(),
        Mark::Line { .. } | Mark::Arc { .. } | Mark::Circle { .. } | Mark::Filled { .. } => 1,
    };
    1 + sheet.drawn().map(shapes).sum::<usize>()
}
