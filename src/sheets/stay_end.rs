//! The end of a stay: bar with its thread, nuts and washers both sides as far as they are given, and the end looked at.

use super::board::Board;
use super::dimension::saying;
use super::free_row::across_free;
use super::hatch::Lean;
use super::hole_detail::{hole_words, put_hole_leader, thickness};
use super::letter_size::TABLE;
use super::pad_detail::put_pad;
use super::seat::{METAL, ROOT, Seat};
use super::view::Stroke;
use super::{Hang, PaperPoint, Pattern, Pen, Role, at};
use crate::design::across_corners;
use crate::spec::{HoleSet, Nut, StaySpec, Washer};
use crate::units::angle::{PI, cos, sin};
use crate::units::print::trimmed;
use crate::units::{Length, Size, whitworth_core};

/// Bar shown beyond what stands on it where it is broken off, mm.
const BEYOND: f64 = 14.0;
/// Between the section and the end looked at, mm of paper.
const BETWEEN: f64 = 16.0;

/// Depths at which nuts and washers stand, from the plate outwards.
struct Stack {
    washer: Option<(f64, f64)>,
    nut: Option<(f64, f64)>,
    /// Beyond all of them.
    end: f64,
}

impl Stack {
    /// Stacked from a face of the plate, outwards where `way` is 1.
    fn from(face: f64, way: f64, washer: Option<&Washer>, nut: Option<&Nut>) -> Stack {
        let mut end = face;
        let mut next = |size: &Size| {
            let from = end;
            end += way * size.value().to_mm();
            (from, end)
        };
        let washer = washer.map(|one| next(&one.thickness));
        let nut = nut.map(|one| next(&one.thickness));
        Stack { washer, nut, end }
    }
}

/// Puts the end of a stay down; tells what it says in words.
pub fn put_stay_end(board: &mut Board, seat: &Seat<'_, '_>, one: &HoleSet) -> Vec<String> {
    let Some(stay) = &one.stay else {
        return Vec::new();
    };
    let outside = Stack::from(
        seat.t,
        1.0,
        stay.outside_washer.as_ref(),
        stay.outside_nut.as_ref(),
    );
    let inside = Stack::from(
        0.0,
        -1.0,
        stay.inside_washer.as_ref(),
        stay.inside_nut.as_ref(),
    );
    let end = reach(seat, one, stay);
    seat.plate(board, end);
    let (first, last) = put_bar(board, seat, stay, &outside, &inside);
    for (stack, washer, nut) in [
        (&outside, &stay.outside_washer, &stay.outside_nut),
        (&inside, &stay.inside_washer, &stay.inside_nut),
    ] {
        let stack = (stack, stay.diameter.value());
        put_fastening(board, seat, stack, washer.as_ref(), nut.as_ref());
    }
    seat.axis(board, first, last);
    let mut words = put_pad(board, seat, one, &|_| None);
    put_sizes(board, seat, one, stay, (&outside, &inside), (end, last));
    if stay.outside_nut.is_some() {
        put_end_view(board, seat, stay);
    }
    words.extend(words_of(seat, one, stay));
    words
}

/// How far the plate is shown from the axis: past all that lies on it.
fn reach(seat: &Seat<'_, '_>, one: &HoleSet, stay: &StaySpec) -> f64 {
    let washers = [&stay.outside_washer, &stay.inside_washer];
    let widest = washers
        .into_iter()
        .flatten()
        .map(|w| w.diameter.value())
        .chain(one.needs_clear.iter().map(Size::value))
        .chain(
            [&stay.outside_nut, &stay.inside_nut]
                .into_iter()
                .flatten()
                .map(across_corners),
        )
        .fold(Length::mm(2.0 * seat.hole), Length::max);
    widest.to_mm() / 2.0 + METAL
}

/// The bar with its thread, broken off inside, and outside where it is not said how far it stands out.
fn put_bar(
    board: &mut Board,
    seat: &Seat<'_, '_>,
    stay: &StaySpec,
    outside: &Stack,
    inside: &Stack,
) -> (f64, f64) {
    let r = stay.diameter.value().to_mm() / 2.0;
    let core = whitworth_core(stay.diameter.value(), stay.threads_per_inch).to_mm() / 2.0;
    let first = inside.end - BEYOND;
    let known = stay
        .outside_nut
        .is_some()
        .then_some(stay.stands_out.as_ref());
    let known = known.flatten().map(|out| out.value().to_mm());
    let last = outside.end + known.unwrap_or(BEYOND);
    // Nuts hide the bar; in the plate and in a washer's hole it is seen.
    let seen = |nut: Option<(f64, f64)>, to: f64, from: f64| match nut {
        Some((a, b)) => vec![(from, a), (b, to)],
        None => vec![(from, to)],
    };
    let mut stretches = seen(outside.nut, last, 0.0);
    stretches.extend(seen(inside.nut, first, 0.0));
    for (a, b) in stretches {
        seat.twice(board, (a, r), (b, r), Stroke::SEEN);
        seat.twice(board, (a, core), (b, core), ROOT);
    }
    seat.break_across(board, first, r);
    match known {
        Some(_) => seat.line(board, (last, r), (last, -r), Stroke::SEEN),
        None => seat.break_across(board, last, r),
    }
    (first, last)
}

fn put_fastening(
    board: &mut Board,
    seat: &Seat<'_, '_>,
    (stack, stay): (&Stack, Length),
    washer: Option<&Washer>,
    nut: Option<&Nut>,
) {
    if let (Some((from, to)), Some(washer)) = (stack.washer, washer) {
        // Cut like the plate that it lies on, and hatched the other way; the stay is seen through it.
        let outer = washer.diameter.value().to_mm() / 2.0;
        let bore = washer.hole.as_ref().map_or(stay, Size::value).to_mm() / 2.0;
        seat.cut(board, (from, to), (bore, outer), Lean::Left);
        for r in [bore, outer] {
            seat.twice(board, (from, r), (to, r), Stroke::SEEN);
        }
        for depth in [from, to] {
            seat.twice(board, (depth, bore), (depth, outer), Stroke::SEEN);
        }
    }
    if let (Some((from, to)), Some(nut)) = (stack.nut, nut) {
        // Three of its six sides are seen: corners above and below, two edges between.
        let corner = across_corners(nut).to_mm() / 2.0;
        seat.block(board, from, to, corner);
        seat.twice(
            board,
            (from, corner / 2.0),
            (to, corner / 2.0),
            Stroke::SEEN,
        );
    }
}

fn put_sizes(
    board: &mut Board,
    seat: &Seat<'_, '_>,
    one: &HoleSet,
    stay: &StaySpec,
    (outside, inside): (&Stack, &Stack),
    (end, last): (f64, f64),
) {
    let fig = seat.set.figures;
    let hole = [format!("⌀{} HOLE", hole_words(seat))];
    put_hole_leader(board, seat, seat.t / 2.0, &hole);
    seat.along(board, (0.0, seat.t), end, &thickness(seat));
    let parts = [
        (
            outside.washer,
            stay.outside_washer
                .as_ref()
                .map(|w| (&w.thickness, &w.diameter)),
        ),
        (
            inside.washer,
            stay.inside_washer
                .as_ref()
                .map(|w| (&w.thickness, &w.diameter)),
        ),
    ];
    for (depths, sizes) in parts {
        if let (Some(depths), Some((thick, wide))) = (depths, sizes) {
            let edge = wide.value().to_mm() / 2.0;
            seat.along(board, depths, edge, &fig.size_short(thick));
        }
    }
    for (depths, nut) in [
        (outside.nut, &stay.outside_nut),
        (inside.nut, &stay.inside_nut),
    ] {
        if let (Some(depths), Some(nut)) = (depths, nut) {
            let edge = across_corners(nut).to_mm() / 2.0;
            seat.along(board, depths, edge, &fig.size_short(&nut.thickness));
        }
    }
    if let (Some(out), Some((_, nut_end))) = (&stay.stands_out, outside.nut)
        && out.value() > Length::ZERO
    {
        let edge = stay.diameter.value().to_mm() / 2.0;
        seat.along(board, (nut_end, last), edge, &fig.size_short(out));
    }
    let words = format!("⌀{}", fig.size_short(&stay.diameter));
    seat.across(board, last, true, stay.diameter.value(), &words);
    if let (Some((_, to)), Some(washer)) = (outside.washer, &stay.outside_washer) {
        let words = format!("⌀{} WASHER", fig.size_short(&washer.diameter));
        seat.across(board, to, true, washer.diameter.value(), &words);
    }
    if let (Some((_, to)), Some(washer)) = (inside.washer, &stay.inside_washer) {
        let words = format!("⌀{} WASHER", fig.size_short(&washer.diameter));
        seat.across(board, to, false, washer.diameter.value(), &words);
    }
    if let Some(clear) = &one.needs_clear
        && stay.outside_washer.is_none()
    {
        let words = format!("⌀{} KEPT CLEAR", fig.size_short(clear));
        seat.across(board, 0.0, false, clear.value(), &words);
    }
}

/// The end as one sees it from the smokebox, on the boiler side of the section (first angle).
fn put_end_view(board: &mut Board, seat: &Seat<'_, '_>, stay: &StaySpec) {
    let Some(nut) = &stay.outside_nut else {
        return;
    };
    let fig = seat.set.figures;
    let f = seat.scale();
    let corner = across_corners(nut).to_mm() / 2.0 * f;
    let washer = stay.outside_washer.as_ref();
    let widest = washer.map_or(corner, |w| {
        (w.diameter.value().to_mm() / 2.0 * f).max(corner)
    });
    let all = board
        .extent(|_| true)
        .map_or((0.0, 0.0), |b| (b.left, b.right));
    let c = if seat.side > 0.0 {
        at(all.0 - BETWEEN - widest, 0.0)
    } else {
        at(all.1 + BETWEEN + widest, 0.0)
    };
    if let Some(washer) = washer {
        let r = washer.diameter.value().to_mm() / 2.0 * f;
        board.circle(c, r, Pen::Wide, Pattern::Continuous, Role::Object);
    }
    let corners: Vec<PaperPoint> = (0..6)
        .map(|i| {
            let a = PI / 2.0 + f64::from(i) * PI / 3.0;
            at(c.x + corner * cos(a), c.y + corner * sin(a))
        })
        .collect();
    for i in 0..6 {
        board.edge_line(corners[i], corners[(i + 1) % 6]);
    }
    let r = stay.diameter.value().to_mm() / 2.0 * f;
    board.circle(c, r, Pen::Wide, Pattern::Continuous, Role::Object);
    // Three quarters of a narrow circle for the root (ISO 6410-1), open at the upper right.
    let core = whitworth_core(stay.diameter.value(), stay.threads_per_inch).to_mm() / 2.0 * f;
    let (pen, pattern) = (Pen::Narrow, Pattern::Continuous);
    board.arc(c, core, 8.0, 270.0, pen, pattern, Role::Object);
    if let Some(bore) = &stay.telltale {
        let bore = bore.value().to_mm() / 2.0 * f;
        board.circle(c, bore, Pen::Middle, pattern, Role::Object);
    }
    let over = widest + 3.0;
    board.centre_line(at(c.x - over, c.y), at(c.x + over, c.y));
    board.centre_line(at(c.x, c.y - over), at(c.x, c.y + over));
    let flats = nut.across_flats.value();
    let half = flats.to_mm() / 2.0 * f;
    // The upright sides reach a quarter of the corners above and below the axis.
    let (a, b) = (
        at(c.x - half, c.y + corner / 2.0),
        at(c.x + half, c.y + corner / 2.0),
    );
    let words = format!("{} A/F", fig.size_short(&nut.across_flats));
    across_free(board, (a, b), c.y + widest, true, saying(f)(&words, flats));
    let above = c.y - over - 2.0;
    board.text(
        at(c.x, above),
        "END, FROM THE SMOKEBOX",
        TABLE,
        Hang::Middle,
    );
}

fn words_of(seat: &Seat<'_, '_>, one: &HoleSet, stay: &StaySpec) -> Vec<String> {
    let fig = seat.set.figures;
    let mut words = vec![format!(
        "STAY ⌀{} OVER THREADS, {} THREADS PER INCH, {}",
        fig.size_short(&stay.diameter),
        trimmed(stay.threads_per_inch, 2),
        stay.kind.name().to_uppercase()
    )];
    if let Some(bore) = &stay.telltale {
        words.push(format!(
            "TELL-TALE HOLE ⌀{} IN ITS END, DEPTH NOT GIVEN",
            fig.size_short(bore)
        ));
    }
    if let (Some(outside), Some(inside)) = (&stay.outside_nut, &stay.inside_nut) {
        let same = outside
            .across_flats
            .value()
            .same_as(inside.across_flats.value());
        words.push(if same {
            "NUTS INSIDE AND OUTSIDE ALIKE ACROSS FLATS".into()
        } else {
            format!(
                "INSIDE NUT {} ACROSS FLATS",
                fig.size_short(&inside.across_flats)
            )
        });
    } else if let Some(inside) = &stay.inside_nut {
        words.push(format!(
            "INSIDE NUT {} ACROSS FLATS",
            fig.size_short(&inside.across_flats)
        ));
    }
    let holes = [&stay.outside_washer, &stay.inside_washer];
    if let Some(hole) = holes.into_iter().flatten().find_map(|w| w.hole.as_ref()) {
        words.push(format!("HOLES IN WASHERS ⌀{}", fig.size_short(hole)));
    }
    let washers = stay.outside_washer.is_some() || stay.inside_washer.is_some();
    let no_washers = stay.ends == Some(crate::spec::StayEnds::Nuts);
    let missing: Vec<&str> = [
        (
            stay.outside_nut.is_none() && stay.inside_nut.is_none(),
            "NUTS",
        ),
        (!washers && !no_washers, "WASHERS"),
    ]
    .into_iter()
    .filter_map(|(is_missing, name)| is_missing.then_some(name))
    .collect();
    if !missing.is_empty() {
        words.push(format!("{} TO THE WORKS' STANDARD", missing.join(" AND ")));
    }
    if no_washers && !washers {
        words.push("NO WASHERS".into());
    }
    if let Some(clear) = &one.needs_clear
        && stay.outside_washer.is_some()
    {
        words.push(format!("⌀{} KEPT CLEAR ROUND IT", fig.size_short(clear)));
    }
    words
}
