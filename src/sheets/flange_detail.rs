//! The flange in section, large: heel, straight, rivet and barrel, or ring, welds, rivet and barrel.

use super::board::{Board, PaperBox};
use super::break_line::{put_break, put_break_against};
use super::dimension::{FIRST_ROW, NEXT_ROW, Says, across, leader, upwards};
use super::hatch::{Lean, hatch};
use super::letter_size::{FIGURES, LINE_PITCH, NOTES, TABLE, wrap};
use super::scale::largest_scale;
use super::section::{SectionView, flange_is_near, half_shape, rivet_openings, whole_depth};
use super::set::Set;
use super::side_names::{First, put_side_names};
use super::view::Stroke;
use super::{Hang, PaperPoint, Pattern, Pen, Role, at};
use crate::design::{Fabricated, FlangeDesign, Pressed};
use crate::spec::Arrangement;
use crate::units::angle::{cos, sin};
use crate::units::{Length, Size};

/// Flat plate shown inside the tangent or the weld toe, mm of plate.
const FLAT_SHOWN: f64 = 34.0;
/// From the end of the flat, where it is broken off, to its dimension: clear of the zigzag, mm.
const BREAK: f64 = FIRST_ROW + 3.0;
/// Barrel shown beyond the flange's edge, mm of barrel.
const BARREL_BEYOND: f64 = 6.0;
/// From the toe of a ring's outer weld to where the barrel is broken off, mm of barrel: the line is no edge of the weld.
const PAST_TOE: f64 = 7.0;
/// From a break of the barrel to its name, mm: clear of the zigzag.
const BEYOND_BREAK: f64 = 4.0;
/// Room above, below, left and right of the section for its dimensions, mm.
const AROUND: (f64, f64, f64, f64) = (30.0, 22.0, 24.0, 26.0);

/// Puts the detail into a box and tells its scale as printed; nothing where the plate has no flange.
pub fn put_flange_detail(board: &mut Board, set: &Set<'_>, room: &PaperBox) -> Option<String> {
    let flange = set.design.flange.as_ref()?;
    let depth = whole_depth(set.design);
    let barrel = barrel_thickness(set);
    let (low, high) = shown(set, flange);
    let wide = depth + 24.0;
    let tall = high + barrel - low;
    let (above, below, left, right) = AROUND;
    let for_it = (room.width() - left - right, room.height() - above - below);
    let scale = largest_scale(wide, tall, for_it, set.figures.in_inches());
    let f = scale.factor();
    let near = flange_is_near(set.design);
    let t = set.design.thickness.value().to_mm();
    let start = room.left + left + (for_it.0 - wide * f).max(0.0) / 2.0 + 12.0 * f;
    let s = SectionView {
        scale: f,
        face_x: if near {
            start + t * f
        } else {
            start + depth * f
        },
        centre_y: room.top + above + (high + barrel) * f,
        near,
        thickness: t,
    };
    let gaps = rivet_gaps(set, depth);
    put_barrel(
        board,
        &s,
        high,
        barrel,
        (barrel_start(set, flange, high), depth + BARREL_BEYOND),
    );
    match flange {
        FlangeDesign::Pressed(p) => put_pressed(board, set, &s, p, low, &gaps),
        FlangeDesign::Fabricated(r) => put_fabricated(board, set, &s, r, (low, high), &gaps),
    }
    put_rivet_lines(board, set, &s, (high, barrel), &gaps);
    let turned = match set
        .design
        .rivets
        .as_ref()
        .and_then(|line| line.rows.as_ref())
    {
        Some(rows) if rows.arrangement == Arrangement::ZigZag => "ROWS TURNED INTO ONE SECTION, ",
        // The circle has no hole at the top: what is shown stands beside it.
        _ if rivet_openings(set.design, 0.0).len() < gaps.len() => {
            "RIVET HOLE BESIDE IT TURNED INTO THE SECTION, "
        }
        Some(_) | None => "",
    };
    let foot = s.place(0.0, low).y;
    put_side_names(
        board,
        set,
        &s,
        (s.place(0.0, low + FLAT_SHOWN).y, foot),
        (Some(room), First::Beside),
    );
    let title = format!("SECTION OF FLANGE AT TOP, {turned}SCALE {}", scale.words());
    let lowest = board.extent(|_| true).map_or(foot, |b| b.bottom);
    let mut y = lowest + 1.5;
    for line in wrap(&title, room.width(), NOTES, true) {
        y += NOTES * LINE_PITCH;
        board.bold(at(room.middle().x, y), &line, NOTES, Hang::Middle);
    }
    Some(scale.words())
}

fn barrel_thickness(set: &Set<'_>) -> f64 {
    let barrel = set.spec.written.barrel.as_ref();
    barrel.map_or(0.0, |b| b.thickness.value().to_mm())
}

/// Lowest radius of the plate and outside radius of the flange shown, mm.
fn shown(set: &Set<'_>, flange: &FlangeDesign) -> (f64, f64) {
    let (outside, _) = super::face_view::flange_rim(set.design, flange);
    match flange {
        FlangeDesign::Pressed(p) => (p.tangent_radius.to_mm() - FLAT_SHOWN, outside),
        FlangeDesign::Fabricated(r) => (r.inner_toe_radius.to_mm() - FLAT_SHOWN, outside),
    }
}

/// Depths between which the rivet holes open the flange, a pair for each row from the inner one outwards; none where there are
/// no rivets.
fn rivet_gaps(set: &Set<'_>, depth: f64) -> Vec<(f64, f64)> {
    let Some(line) = &set.design.rivets else {
        return Vec::new();
    };
    let half = line.hole.value().to_mm() / 2.0;
    let rows = (1..=line.row_count()).rev();
    rows.map(|row| depth - line.from_edge_of(row).to_mm())
        .map(|centre| (centre - half, centre + half))
        .collect()
}

/// Metal of the parallel flange between its rivet holes, from the depth where the first opens to its edge: a part after each.
fn between_holes(gaps: &[(f64, f64)], edge: f64) -> Vec<(f64, f64)> {
    let ends = gaps.iter().skip(1).map(|gap| gap.0).chain([edge]);
    gaps.iter().map(|gap| gap.1).zip(ends).collect()
}

/// Depth from which the barrel is shown: past the plate where it lies within the barrel; from the weld where the plate is
/// carried out beyond it, since no barrel goes through a plate.
fn barrel_start(set: &Set<'_>, flange: &FlangeDesign, outside: f64) -> f64 {
    let (_, plate_end) = super::section::ends_on_centre_line(&set.design.edge);
    match flange {
        FlangeDesign::Fabricated(r) if plate_end > outside => {
            set.design.thickness.value().to_mm() + r.toe_on_ring.to_mm() + PAST_TOE
        }
        FlangeDesign::Fabricated(_) | FlangeDesign::Pressed(_) => -10.0,
    }
}

/// The barrel about the flange between two depths, its ends left open: where it ends is not this drawing's.
fn put_barrel(
    board: &mut Board,
    s: &SectionView,
    outside: f64,
    thickness: f64,
    (from, to): (f64, f64),
) {
    if thickness <= 0.0 {
        return;
    }
    for y in [outside, outside + thickness] {
        let (a, b) = (s.place(from, y), s.place(to, y));
        let stroke = Stroke::ADJACENT;
        board.line(a, b, stroke.pen, stroke.pattern, Role::Object);
    }
    for depth in [from, to] {
        // Between plate and edge it lies on the ring.
        let put = match (0.0..=to - BARREL_BEYOND).contains(&depth) {
            true => put_break_against,
            false => put_break,
        };
        put(
            board,
            s.place(depth, outside),
            s.place(depth, outside + thickness),
        );
    }
    // Its name stands beyond the end that is the freer of the two.
    let beyond = if from < 0.0 { from } else { to };
    let end = s.place(beyond, outside + thickness / 2.0);
    let to_left = (from < 0.0) == s.near;
    // At the flange's edge the thickness of the ring stands in between.
    let off = if from < 0.0 {
        BEYOND_BREAK
    } else {
        FIRST_ROW + 9.0
    };
    let (x, hang) = if to_left {
        (end.x - off, Hang::End)
    } else {
        (end.x + off, Hang::Start)
    };
    board.text(at(x, end.y + 1.25), "BARREL", TABLE, hang);
    if from >= 0.0 {
        // It ends before the plate, and how far before is given nowhere.
        let y = end.y + 1.25 + TABLE * LINE_PITCH;
        board.text(at(x, y), "END NOT GIVEN", TABLE, hang);
    }
}

fn polygon(s: &SectionView, corners: &[(f64, f64)]) -> Vec<PaperPoint> {
    corners.iter().map(|&(u, y)| s.place(u, y)).collect()
}

/// From the flange's edge to its thickness, mm of paper: clear of the barrel, which is broken off beyond the edge.
fn past_the_barrel(s: &SectionView) -> f64 {
    FIRST_ROW + BARREL_BEYOND * s.scale + 3.0
}

/// Where the plate is broken off above a ring, unless its own edge comes first: a radius, mm.
fn ring_plate_end(set: &Set<'_>, r: &Fabricated, outer: f64) -> f64 {
    let (_, plate_end) = super::section::ends_on_centre_line(&set.design.edge);
    plate_end.min(outer + r.weld_leg_outside.value().to_mm() + 22.0)
}

/// Where the plate is broken off, at a height.
fn break_plate(board: &mut Board, s: &SectionView, t: f64, y: f64) {
    put_break(board, s.place(0.0, y), s.place(t, y));
}

fn put_pressed(
    board: &mut Board,
    set: &Set<'_>,
    s: &SectionView,
    p: &Pressed,
    low: f64,
    gaps: &[(f64, f64)],
) {
    let (t, r) = (s.thickness, p.heel_radius.value().to_mm());
    let (tangent, depth) = (p.tangent_radius.to_mm(), p.depth.to_mm());
    let (inner, outer) = (tangent + r, tangent + r + t);
    let shape = half_shape(set.design);
    let first_cut = gaps.first().map_or(depth, |gap| gap.0);
    // The profile runs outside first; it is parted at the rivet hole, which lies in the straight.
    let mut heel = vec![(t, low), (0.0, low)];
    heel.extend(
        shape
            .iter()
            .copied()
            .filter(|&(u, _)| u <= t + r + 1e-9)
            .take(25),
    );
    heel.extend([(first_cut, outer), (first_cut, inner)]);
    heel.extend(shape.iter().copied().skip(27));
    let spacing = 2.5;
    hatch(board, &[polygon(s, &heel)], spacing, Lean::Right);
    for (from, to) in between_holes(gaps, depth) {
        let rim = [(from, inner), (to, inner), (to, outer), (from, outer)];
        hatch(board, &[polygon(s, &rim)], spacing, Lean::Right);
    }
    for u in [0.0, t] {
        board.edge_line(s.place(u, low), s.place(u, tangent));
    }
    let centre = s.place(t + r, tangent);
    for radius in [r, r + t] {
        let start = if s.near { 180.0 } else { 270.0 };
        let (pen, pattern) = (Pen::Wide, Pattern::Continuous);
        board.arc(
            centre,
            radius * s.scale,
            start,
            90.0,
            pen,
            pattern,
            Role::Object,
        );
    }
    for y in [inner, outer] {
        board.edge_line(s.place(t + r, y), s.place(depth, y));
    }
    board.edge_line(s.place(depth, inner), s.place(depth, outer));
    break_plate(board, s, t, low);
    dimension_pressed(board, set, s, p, low);
}

fn dimension_pressed(board: &mut Board, set: &Set<'_>, s: &SectionView, p: &Pressed, low: f64) {
    let fig = set.figures;
    let (t, r) = (s.thickness, p.heel_radius.value().to_mm());
    let (tangent, depth) = (p.tangent_radius.to_mm(), p.depth.to_mm());
    let (inner, outer) = (tangent + r, tangent + r + t);
    let top = s.place(0.0, outer + barrel_thickness(set)).y;
    let straight = p.straight.value();
    put_across(
        board,
        s,
        (t + r, inner),
        (depth, inner),
        s.place(0.0, inner).y + FIRST_ROW,
        &fig.size_short(&p.straight),
        straight,
    );
    put_across(
        board,
        s,
        (0.0, tangent),
        (depth, outer),
        top - FIRST_ROW - NEXT_ROW,
        &fig.short(p.depth),
        p.depth,
    );
    let foot = s.place(0.0, low).y + BREAK;
    let thickness = &set.design.thickness;
    put_across(
        board,
        s,
        (0.0, low),
        (t, low),
        foot,
        &fig.size_short(thickness),
        thickness.value(),
    );
    let line_x = s.x(depth) + if s.near { 1.0 } else { -1.0 } * past_the_barrel(s);
    upwards(
        board,
        s.place(depth, inner),
        s.place(depth, outer),
        line_x,
        Says {
            words: &fig.size_short(thickness),
            length: thickness.value(),
            scale: s.scale,
        },
    );
    let lean = std::f64::consts::FRAC_PI_4;
    let tip = s.place(t + r - r * cos(lean), tangent + r * sin(lean));
    let side = if s.near { 1.0 } else { -1.0 };
    // A small heel leaves no room between its tangent and the dimension of the straight: the words then stand below that.
    let below_straight = s.place(0.0, inner).y + FIRST_ROW + NEXT_ROW;
    let knee = at(
        tip.x + side * (r * s.scale * 0.3 + 6.0),
        (s.place(0.0, tangent).y + 4.0).max(below_straight),
    );
    let words = vec![
        format!("R{} INSIDE,", fig.size_short(&p.heel_radius)),
        "PROVE BY GAUGE".into(),
    ];
    leader(board, tip, knee, &words, FIGURES);
    put_tangent(board, set, s, p, low);
}

/// The tangent as a diameter, with the theoretical corner that a rule can reach.
fn put_tangent(board: &mut Board, set: &Set<'_>, s: &SectionView, p: &Pressed, low: f64) {
    let tangent = p.tangent_radius.to_mm();
    let tip = s.place(0.0, tangent);
    let side = if s.near { -1.0 } else { 1.0 };
    let line = Stroke::TANGENT;
    let (a, b) = (
        s.place(-3.0 / s.scale, tangent),
        s.place(s.thickness + 3.0 / s.scale, tangent),
    );
    board.line(a, b, line.pen, line.pattern, line.role);
    let knee = at(tip.x + side * 4.0, (tip.y + s.place(0.0, low).y) / 2.0);
    let diameter = 2.0 * p.tangent_radius;
    let words = vec!["TANGENT".to_string(), set.figures.diameter(diameter)];
    leader(board, tip, knee, &words, FIGURES);
}

fn put_across(
    board: &mut Board,
    s: &SectionView,
    a: (f64, f64),
    b: (f64, f64),
    line_y: f64,
    words: &str,
    length: Length,
) {
    let says = Says {
        words,
        length,
        scale: s.scale,
    };
    across(board, s.place(a.0, a.1), s.place(b.0, b.1), line_y, says);
}

fn put_fabricated(
    board: &mut Board,
    set: &Set<'_>,
    s: &SectionView,
    r: &Fabricated,
    (low, outer): (f64, f64),
    gaps: &[(f64, f64)],
) {
    let t = s.thickness;
    let inner = outer - r.ring_thickness.value().to_mm();
    let edge = t + r.ring_width.value().to_mm();
    // The plate is broken off above the outer weld unless its own edge comes first.
    let (_, plate_end) = super::section::ends_on_centre_line(&set.design.edge);
    let high = ring_plate_end(set, r, outer);
    let plate = [(0.0, low), (t, low), (t, high), (0.0, high)];
    hatch(board, &[polygon(s, &plate)], 2.5, Lean::Right);
    for u in [0.0, t] {
        board.edge_line(s.place(u, low), s.place(u, high));
    }
    break_plate(board, s, t, low);
    if high < plate_end {
        break_plate(board, s, t, high);
    } else {
        board.edge_line(s.place(0.0, high), s.place(t, high));
    }
    let first_cut = gaps.first().map_or(edge, |gap| gap.0);
    for (from, to) in std::iter::once((t, first_cut)).chain(between_holes(gaps, edge)) {
        if to > from {
            let part = [(from, inner), (to, inner), (to, outer), (from, outer)];
            hatch(board, &[polygon(s, &part)], 2.5, Lean::Left);
        }
    }
    for y in [inner, outer] {
        board.edge_line(s.place(t, y), s.place(edge, y));
    }
    board.edge_line(s.place(edge, inner), s.place(edge, outer));
    let (inside, outside) = (&r.weld_leg_inside, &r.weld_leg_outside);
    for (root, side, leg) in [(inner, -1.0, inside), (outer, 1.0, outside)] {
        let leg = leg.value().to_mm();
        let triangle = [(t, root), (t, root + side * leg), (t + leg, root)];
        board.filled(polygon(s, &triangle), Role::Object);
    }
    dimension_fabricated(board, set, s, r, (low, inner, outer));
}

fn dimension_fabricated(
    board: &mut Board,
    set: &Set<'_>,
    s: &SectionView,
    r: &Fabricated,
    (low, inner, outer): (f64, f64, f64),
) {
    let fig = set.figures;
    let t = s.thickness;
    let edge = t + r.ring_width.value().to_mm();
    let width = r.ring_width.value();
    // Above the row of the rivets and the plate's end: below, the leaders of the inner weld go down.
    let above = (s.place(0.0, outer + barrel_thickness(set)).y - FIRST_ROW - NEXT_ROW)
        .min(s.place(0.0, ring_plate_end(set, r, outer)).y - FIRST_ROW);
    put_across(
        board,
        s,
        (t, outer),
        (edge, outer + barrel_thickness(set)),
        above,
        &fig.size_short(&r.ring_width),
        width,
    );
    let foot = s.place(0.0, low).y + BREAK;
    let thickness = &set.design.thickness;
    put_across(
        board,
        s,
        (0.0, low),
        (t, low),
        foot,
        &fig.size_short(thickness),
        thickness.value(),
    );
    let side = if s.near { 1.0 } else { -1.0 };
    let line_x = s.x(edge) + side * past_the_barrel(s);
    upwards(
        board,
        s.place(edge, inner),
        s.place(edge, outer),
        line_x,
        Says {
            words: &fig.size_short(&r.ring_thickness),
            length: r.ring_thickness.value(),
            scale: s.scale,
        },
    );
    let side = if s.near { 1.0 } else { -1.0 };
    let weld = |leg: &Size| format!("LEG {}", fig.size_short(leg));
    let inside = r.weld_leg_inside.value().to_mm();
    let tip = s.place(t + inside * 0.5, inner - inside * 0.5);
    let knee = at(tip.x + side * 14.0, tip.y + 8.0);
    leader(board, tip, knee, &[weld(&r.weld_leg_inside)], FIGURES);
    let toe = s.place(t, r.inner_toe_radius.to_mm());
    let knee = at(toe.x + side * 6.0, s.place(0.0, low).y);
    let words = [format!(
        "INNER TOE {}",
        fig.diameter(2.0 * r.inner_toe_radius)
    )];
    leader(board, toe, knee, &words, FIGURES);
    // Between plate and rivets, under the width of the ring: no leader runs through the metal.
    let outside = r.weld_leg_outside.value().to_mm();
    let tip = s.place(t + outside * 0.5, outer + outside * 0.5);
    let top = s.place(0.0, outer + barrel_thickness(set)).y;
    let knee = at(tip.x + side * 3.0, top - FIRST_ROW - NEXT_ROW / 2.0);
    leader(board, tip, knee, &[weld(&r.weld_leg_outside)], FIGURES);
}

/// Each row's centre line through flange and barrel, its hole in the flange, and its distance from the edge or the next row.
fn put_rivet_lines(
    board: &mut Board,
    set: &Set<'_>,
    s: &SectionView,
    (outside, barrel): (f64, f64),
    gaps: &[(f64, f64)],
) {
    let (Some(line), Some(flange)) = (&set.design.rivets, &set.design.flange) else {
        return;
    };
    let (_, thick) = super::face_view::flange_rim(set.design, flange);
    let over = 4.0 / s.scale;
    let top = s.place(0.0, outside + barrel).y;
    // From the edge inwards, so that each dimension runs from its row to what was dimensioned before it.
    let mut to = (whole_depth(set.design), outside);
    for (row, gap) in (1..).zip(gaps.iter().rev()) {
        for u in [gap.0, gap.1] {
            board.edge_line(s.place(u, outside - thick), s.place(u, outside));
        }
        let centre = (gap.0 + gap.1) / 2.0;
        let (a, b) = (
            s.place(centre, outside - thick - over),
            s.place(centre, outside + barrel + over),
        );
        board.centre_line(a, b);
        let said = match &line.rows {
            Some(rows) if row > 1 => &rows.apart,
            Some(_) | None => &line.from_edge,
        };
        put_across(
            board,
            s,
            (centre, outside + barrel),
            to,
            top - FIRST_ROW,
            &set.figures.size_short(said),
            said.value(),
        );
        to = (centre, outside + barrel);
    }
}
