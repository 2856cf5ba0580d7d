//! Section of the plate on its vertical centre line, flange or ring, welds and pads included, hatched.

use super::at;
use super::board::Board;
use super::face_view::flange_rim;
use super::hatch::{Lean, hatch};
use super::view::Stroke;
use super::{PaperPoint, Pattern, Pen, Role};
use crate::design::{Design, Edge, FlangeDesign, Outline, PlacedPad, Point};
use crate::units::Length;
use crate::units::angle::{atan2, cos, sin, sqrt};

/// A section: the view square to the face, its near side to the right (first angle, seen from the left of the face).
#[derive(Clone, Copy, Debug)]
pub struct SectionView {
    /// Millimetres of paper for a millimetre of plate.
    pub scale: f64,
    /// Paper x of the near face of the plate.
    pub face_x: f64,
    /// Paper y of the barrel centre line.
    pub centre_y: f64,
    /// Whether the flange stands towards the viewer of the face.
    pub near: bool,
    /// Thickness of the plate, mm.
    pub thickness: f64,
}

impl SectionView {
    /// A place from the depth `u` (mm from the plate face that looks away from the flange, towards the flange) and height y.
    pub fn place(&self, u: f64, y: f64) -> PaperPoint {
        at(self.x(u), self.centre_y - y * self.scale)
    }

    /// Paper x of a depth.
    pub fn x(&self, u: f64) -> f64 {
        let from_face = if self.near { u - self.thickness } else { -u };
        self.face_x + from_face * self.scale
    }
}

/// Whether the flange of a plate stands towards the viewer of its face; true where there is none.
pub fn flange_is_near(design: &Design) -> bool {
    match &design.flange {
        Some(FlangeDesign::Pressed(p)) => p.towards == design.view_from,
        Some(FlangeDesign::Fabricated(f)) => f.towards == design.view_from,
        None => true,
    }
}

/// From the plate's outer face to the furthest edge of its flange or ring, mm.
pub fn whole_depth(design: &Design) -> f64 {
    let t = design.thickness.value().to_mm();
    match &design.flange {
        Some(FlangeDesign::Pressed(p)) => p.depth.to_mm(),
        Some(FlangeDesign::Fabricated(f)) => t + f.ring_width.value().to_mm(),
        None => t,
    }
}

/// Lowest and highest y where an outline crosses the vertical centre line, mm.
pub fn ends_on_centre_line(outline: &Outline) -> (f64, f64) {
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    let mut take = |y: f64| {
        low = low.min(y);
        high = high.max(y);
    };
    for edge in outline.edges() {
        match *edge {
            Edge::Line { from, to } => {
                if (from.x <= 0.0) != (to.x <= 0.0) {
                    take(from.y + (to.y - from.y) * from.x / (from.x - to.x));
                }
            }
            Edge::Arc { centre, radius, .. } => {
                let inside = radius * radius - centre.x * centre.x;
                if inside > 0.0 {
                    let rise = sqrt(inside);
                    for y in [centre.y - rise, centre.y + rise] {
                        if arc_passes(edge, Point::new(0.0, y)) {
                            take(y);
                        }
                    }
                }
            }
        }
    }
    (low, high)
}

/// Whether an arc passes through a place of its circle.
fn arc_passes(edge: &Edge, place: Point) -> bool {
    let Edge::Arc {
        from,
        to,
        centre,
        anticlockwise,
        ..
    } = *edge
    else {
        return false;
    };
    let (first, last) = if anticlockwise {
        (from, to)
    } else {
        (to, from)
    };
    let angle = |p: Point| atan2(p.y - centre.y, p.x - centre.x).to_degrees();
    let turn = (angle(last) - angle(first)).rem_euclid(360.0);
    (angle(place) - angle(first)).rem_euclid(360.0) <= turn
}

/// Depths between which a section through the axis at an angle opens rivet holes in the flange, that of the inner row first; a row
/// whose holes the section passes by opens nothing.
pub fn rivet_openings(design: &Design, angle_deg: f64) -> Vec<(f64, f64)> {
    let (Some(line), Some(flange)) = (&design.rivets, &design.flange) else {
        return Vec::new();
    };
    let (outside, _) = flange_rim(design, flange);
    let rows = (1..=line.row_count()).rev();
    let open = rows.filter_map(|row| {
        let half = line.opened_at(row, angle_deg, Length::mm(outside))?.to_mm();
        let centre = whole_depth(design) - line.from_edge_of(row).to_mm();
        Some((centre - half, centre + half))
    });
    open.collect()
}

/// The openings as they stand in the flange's section, corners in (depth, y), on one hand of the axis.
fn rivet_corners(design: &Design, openings: &[(f64, f64)], hand: f64) -> Vec<[(f64, f64); 4]> {
    let Some(flange) = &design.flange else {
        return Vec::new();
    };
    let (outside, thick) = flange_rim(design, flange);
    let (inner, outer) = (hand * (outside - thick), hand * outside);
    let corners = |&(a, b): &(f64, f64)| [(a, inner), (b, inner), (b, outer), (a, outer)];
    openings.iter().map(corners).collect()
}

/// The openings of rivet holes on one hand of the axis, on paper, to be left out of the hatching.
pub fn rivet_gaps(
    s: &SectionView,
    design: &Design,
    openings: &[(f64, f64)],
    hand: f64,
) -> Vec<Vec<PaperPoint>> {
    let on_paper = |corners: [(f64, f64); 4]| corners.map(|(u, y)| s.place(u, y)).to_vec();
    let corners = rivet_corners(design, openings, hand);
    corners.into_iter().map(on_paper).collect()
}

/// Edges and centre line of every rivet hole that the section opens, on one hand of the axis; lines run on so far, mm of paper.
pub fn put_rivet_edges(
    board: &mut Board,
    s: &SectionView,
    design: &Design,
    openings: &[(f64, f64)],
    (hand, over): (f64, f64),
) {
    for [a, b, c, d] in rivet_corners(design, openings, hand) {
        board.edge_line(s.place(a.0, a.1), s.place(d.0, d.1));
        board.edge_line(s.place(b.0, b.1), s.place(c.0, c.1));
        let (middle, more) = ((a.0 + b.0) / 2.0, hand * over / s.scale);
        board.centre_line(s.place(middle, a.1 - more), s.place(middle, d.1 + more));
    }
}

/// Puts down the whole section; spacing of hatch lines in mm of paper.
pub fn put_section(board: &mut Board, s: &SectionView, design: &Design, spacing: f64) {
    let gaps = gaps(design);
    let shape = half_shape(design);
    // The section runs through the top and through bottom centre.
    let rivets = [(1.0, 0.0), (-1.0, 180.0)].map(|(hand, deg)| (hand, rivet_openings(design, deg)));
    let left_out = rivets
        .each_ref()
        .map(|(hand, open)| rivet_gaps(s, design, open, *hand));
    let plate = metal(design, &gaps, &shape);
    let last = plate.len() - 1;
    for (i, polygon) in plate.iter().enumerate() {
        let mut paper = vec![polygon.iter().map(|&(u, y)| s.place(u, y)).collect()];
        // The parallel flange goes with the highest part and with the lowest.
        if !shape.is_empty() {
            let flanges = [i == last, i == 0].into_iter().zip(&left_out);
            let with_it = flanges.filter(|(is_here, _)| *is_here);
            paper.extend(with_it.flat_map(|(_, gaps)| gaps.iter().cloned()));
        }
        hatch(board, &paper, spacing, lean_of(design, polygon));
    }
    put_plate_edges(board, s, design, &gaps);
    for y in welds(design) {
        let thick = design.thickness.value().to_mm();
        board.edge_line(s.place(0.0, y), s.place(thick, y));
    }
    match &design.flange {
        Some(FlangeDesign::Pressed(_)) => put_pressed_edges(board, s, design),
        Some(FlangeDesign::Fabricated(_)) => {
            put_ring(board, s, design, (spacing, left_out.concat()))
        }
        None => {}
    }
    for (hand, open) in &rivets {
        put_rivet_edges(board, s, design, open, (*hand, 2.0));
    }
    for pad in &design.pads {
        put_pad(board, s, design, (pad, spacing));
    }
    let over = 6.0;
    let middle = s.centre_y;
    let (a, b) = (s.x(0.0), s.x(whole_depth(design)));
    board.centre_line(at(a.min(b) - over, middle), at(a.max(b) + over, middle));
}

/// Heights at which the edge of a piece let in is cut through, within the flat part.
fn welds(design: &Design) -> Vec<f64> {
    let (low, high) = ends(design);
    let pieces = design
        .pieces()
        .filter_map(|(_, piece)| piece.renews.as_ref());
    let edges = pieces.map(ends_on_centre_line);
    let edges = edges.flat_map(|(a, b)| [a, b]);
    edges.filter(|y| *y > low && *y < high).collect()
}

/// A piece let in leans the other way than the old metal.
fn lean_of(design: &Design, polygon: &[(f64, f64)]) -> Lean {
    let heights = || polygon.iter().map(|&(_, y)| y);
    let low = heights().fold(f64::INFINITY, f64::min);
    let high = heights().fold(f64::NEG_INFINITY, f64::max);
    let middle = Point::new(0.0, (low + high) / 2.0);
    let pieces = design
        .pieces()
        .filter_map(|(_, piece)| piece.renews.as_ref());
    match pieces.into_iter().any(|outline| outline.contains(middle)) {
        true => Lean::Left,
        false => Lean::Right,
    }
}

/// Half the chord that the vertical centre line cuts from a circle; none where it passes the circle by.
fn half_chord(at: Point, radius: f64) -> Option<f64> {
    let inside = radius * radius - at.x * at.x;
    (inside > 0.0).then(|| sqrt(inside))
}

/// Depths of a pad's two faces: that on the plate, and its own.
fn pad_faces(s: &SectionView, design: &Design, pad: &PlacedPad) -> (f64, f64) {
    let thick = pad.thickness.to_mm();
    if pad.is_near(design) == s.near {
        (s.thickness, s.thickness + thick)
    } else {
        (0.0, -thick)
    }
}

/// Where the metal of a pad begins and ends on the vertical centre line, between its lowest and its highest place, a pair for each part.
fn pad_borders(pad: &PlacedPad, middle: Point, (low, high): (f64, f64)) -> Vec<f64> {
    let own = pad.holes.iter();
    let own = own.map(|&(p, wide)| (Point::new(middle.x + p.x, middle.y + p.y), wide));
    let holes = own.chain([(middle, pad.opening)]);
    let mut open: Vec<(f64, f64)> = holes
        .filter_map(|(at, wide)| {
            let half = half_chord(at, wide.to_mm() / 2.0)?;
            Some((at.y - half, at.y + half))
        })
        .collect();
    open.sort_by(|a, b| a.0.total_cmp(&b.0));
    let inner = open.iter().flat_map(|gap| [gap.0, gap.1]);
    std::iter::once(low).chain(inner).chain([high]).collect()
}

/// A pad that the section cuts: hatched the other way from the plate, with its own holes and its weld.
fn put_pad(board: &mut Board, s: &SectionView, design: &Design, (pad, spacing): (&PlacedPad, f64)) {
    let middle = pad.at(design);
    let Some(half) = half_chord(middle, pad.diameter.to_mm() / 2.0) else {
        return;
    };
    let (face, end) = pad_faces(s, design, pad);
    let (low, high) = (middle.y - half, middle.y + half);
    let borders = pad_borders(pad, middle, (low, high));
    for pair in borders.chunks_exact(2) {
        let corners = [
            (face, pair[0]),
            (end, pair[0]),
            (end, pair[1]),
            (face, pair[1]),
        ];
        let paper = corners.map(|(u, y)| s.place(u, y)).to_vec();
        hatch(board, &[paper], spacing, Lean::Left);
    }
    for &y in &borders {
        board.edge_line(s.place(face, y), s.place(end, y));
    }
    board.edge_line(s.place(end, low), s.place(end, high));
    if let Some(leg) = &pad.weld_leg {
        let z = leg.value().to_mm();
        let way = if end > face { z } else { -z };
        for (y, out) in [(low, -z), (high, z)] {
            let corners = [(face, y), (face, y + out), (face + way, y)];
            let weld = corners.map(|(u, y)| s.place(u, y)).to_vec();
            board.filled(weld, Role::Object);
        }
    }
}

/// Ends of the flat part in section: the outline on the centre line, or the tangents of a pressed plate.
fn ends(design: &Design) -> (f64, f64) {
    match &design.flange {
        Some(FlangeDesign::Pressed(p)) => (-p.tangent_radius.to_mm(), p.tangent_radius.to_mm()),
        Some(FlangeDesign::Fabricated(_)) | None => ends_on_centre_line(&design.edge),
    }
}

/// Stretches of y where a hole opens the centre line, lowest first.
fn gaps(design: &Design) -> Vec<(f64, f64)> {
    let mut found: Vec<(f64, f64)> = design
        .holes
        .iter()
        .filter_map(|h| {
            let half = half_chord(h.at, h.finish.value().to_mm() / 2.0)?;
            Some((h.at.y - half, h.at.y + half))
        })
        .collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    found
}

/// The profile of a pressed flange above its tangent, (depth, radius) outside first; empty for other plates.
pub fn half_shape(design: &Design) -> Vec<(f64, f64)> {
    let Some(FlangeDesign::Pressed(p)) = &design.flange else {
        return Vec::new();
    };
    let (t, r) = (
        design.thickness.value().to_mm(),
        p.heel_radius.value().to_mm(),
    );
    let (tangent, depth) = (p.tangent_radius.to_mm(), p.depth.to_mm());
    let bend = |radius: f64, backwards: bool| {
        (0..=24).map(move |i| {
            let share = f64::from(if backwards { 24 - i } else { i }) / 24.0;
            let a = share * std::f64::consts::FRAC_PI_2;
            (t + r - radius * cos(a), tangent + radius * sin(a))
        })
    };
    let mut shape: Vec<(f64, f64)> = bend(r + t, false).collect();
    shape.push((depth, tangent + r + t));
    shape.push((depth, tangent + r));
    shape.extend(bend(r, true));
    shape
}

/// Polygons of cut plate, (depth, y), between the holes on the centre line.
fn metal(design: &Design, gaps: &[(f64, f64)], shape: &[(f64, f64)]) -> Vec<Vec<(f64, f64)>> {
    let t = design.thickness.value().to_mm();
    let (low, high) = ends(design);
    let mut borders = vec![low];
    borders.extend(gaps.iter().flat_map(|g| [g.0, g.1]));
    // A weld parts the metal without opening it.
    borders.extend(welds(design).into_iter().flat_map(|y| [y, y]));
    borders[1..].sort_by(f64::total_cmp);
    borders.push(high);
    let last = borders.len() / 2 - 1;
    borders
        .chunks_exact(2)
        .enumerate()
        .map(|(i, pair)| {
            let mut polygon = vec![(t, pair[0]), (0.0, pair[0]), (0.0, pair[1]), (t, pair[1])];
            if !shape.is_empty() && i == 0 {
                polygon.splice(0..2, shape.iter().rev().map(|&(u, y)| (u, -y)));
            }
            if !shape.is_empty() && i == last {
                polygon.truncate(polygon.len() - 2);
                polygon.extend(shape.iter().copied());
            }
            polygon
        })
        .collect()
}

/// Both faces, the ends of a flat plate and the edges of holes on the centre line.
fn put_plate_edges(board: &mut Board, s: &SectionView, design: &Design, gaps: &[(f64, f64)]) {
    let t = design.thickness.value().to_mm();
    let (low, high) = ends(design);
    for u in [0.0, t] {
        board.edge_line(s.place(u, low), s.place(u, high));
    }
    if !matches!(design.flange, Some(FlangeDesign::Pressed(_))) {
        for y in [low, high] {
            board.edge_line(s.place(0.0, y), s.place(t, y));
        }
    }
    for y in gaps.iter().flat_map(|g| [g.0, g.1]) {
        board.edge_line(s.place(0.0, y), s.place(t, y));
    }
    for (low, high) in gaps {
        let y = (low + high) / 2.0;
        let (a, b) = (s.place(0.0, y), s.place(t, y));
        let (left, right) = (a.x.min(b.x), a.x.max(b.x));
        board.centre_line(at(left - 3.0, a.y), at(right + 3.0, a.y));
    }
}

/// Bends, parallel parts and rim of a pressed flange, and the rim beyond the cut.
fn put_pressed_edges(board: &mut Board, s: &SectionView, design: &Design) {
    let Some(FlangeDesign::Pressed(p)) = &design.flange else {
        return;
    };
    let (t, r) = (
        design.thickness.value().to_mm(),
        p.heel_radius.value().to_mm(),
    );
    let (tangent, depth) = (p.tangent_radius.to_mm(), p.depth.to_mm());
    for side in [1.0, -1.0] {
        let centre = s.place(t + r, side * tangent);
        for radius in [r, r + t] {
            // The bend runs from the face to the parallel part: a quarter turn on the side away from the flange.
            let start = match (s.near, side > 0.0) {
                (true, true) => 180.0,
                (true, false) => 90.0,
                (false, true) => 270.0,
                (false, false) => 0.0,
            };
            board.arc(
                centre,
                radius * s.scale,
                start,
                90.0,
                Pen::Wide,
                Pattern::Continuous,
                Role::Object,
            );
        }
        for y in [tangent + r, tangent + r + t] {
            board.edge_line(s.place(t + r, side * y), s.place(depth, side * y));
        }
        let (inner, outer) = (side * (tangent + r), side * (tangent + r + t));
        board.edge_line(s.place(depth, inner), s.place(depth, outer));
    }
    board.edge_line(s.place(depth, tangent + r), s.place(depth, -tangent - r));
    let line = Stroke::TANGENT;
    board.line(
        s.place(t + r, tangent + r),
        s.place(t + r, -tangent - r),
        line.pen,
        line.pattern,
        line.role,
    );
}

/// The ring, hatched the other way, with its welds filled, and its rim beyond the cut.
fn put_ring(
    board: &mut Board,
    s: &SectionView,
    design: &Design,
    (spacing, left_out): (f64, Vec<Vec<PaperPoint>>),
) {
    let Some(FlangeDesign::Fabricated(f)) = &design.flange else {
        return;
    };
    let t = design.thickness.value().to_mm();
    let outer = f.ring_outside_diameter.value().to_mm() / 2.0;
    let inner = outer - f.ring_thickness.value().to_mm();
    let edge = t + f.ring_width.value().to_mm();
    let corners_of = |side: f64| {
        [(t, inner), (edge, inner), (edge, outer), (t, outer)].map(|(u, y)| s.place(u, side * y))
    };
    let mut metal = [1.0, -1.0].map(|side| corners_of(side).to_vec()).to_vec();
    metal.extend(left_out);
    hatch(board, &metal, spacing, Lean::Left);
    for side in [1.0, -1.0] {
        let corners = corners_of(side);
        for i in 0..4 {
            board.edge_line(corners[i], corners[(i + 1) % 4]);
        }
        let inside = f.weld_leg_inside.value().to_mm();
        let outside = f.weld_leg_outside.value().to_mm();
        for (root, toe, leg) in [
            (inner, inner - inside, inside),
            (outer, outer + outside, outside),
        ] {
            let triangle = [(t, root), (t, toe), (t + leg, root)];
            let corners = triangle
                .iter()
                .map(|&(u, y)| s.place(u, side * y))
                .collect();
            board.filled(corners, Role::Object);
        }
    }
    board.edge_line(s.place(edge, inner), s.place(edge, -inner));
}
