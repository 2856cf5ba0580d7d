//! Revision clouds: a line of arcs round every hole that changed since the former issue, and a triangle with the letter of the
//! issue in hand beside it (common practice, no source).

use super::board::{Board, PaperBox};
use super::clear::{crosses_lettering, is_clear};
use super::letter_size::TABLE;
use super::set::Set;
use super::view::{Stroke, View};
use super::{Hang, PaperPoint, Pattern, Pen, Role, at, face};
use crate::design::{HoleAt, HoleChange, Point};
use crate::units::angle::{PI, atan2, cos, hypot, sin, sqrt};

/// From the rim of a hole to the feet of the arcs round it, mm of paper.
const ROUND: f64 = 1.1;
/// Clouds nearer than this become one, mm of paper.
const APART: f64 = 2.5;
/// From foot to foot of the arcs, mm of paper.
const ARC: f64 = 4.2;
/// Fewest arcs in a cloud: fewer look like a flower and not like a cloud.
const FEWEST: usize = 8;
/// How far round an arc goes, degrees.
const SWEEP: f64 = 130.0;
/// A hole that moved less than this on the paper is not drawn at its former place: two rims would run into one.
const SEEN_TO_MOVE: f64 = 1.6;
/// Side of the triangle beyond the width of its letter, mm.
const TRIANGLE: f64 = 6.3;
/// Clear strip round the triangle, mm.
const CLEAR: f64 = 0.4;

/// A circle on the paper.
type Disc = (PaperPoint, f64);

/// Clouds every change of a hole whose old or new place is to be shown on a view, inside a box of paper; tells how many clouds.
pub fn put_clouds(
    board: &mut Board,
    set: &Set<'_>,
    view: &View,
    room: &PaperBox,
    shows: impl Fn(Point) -> bool,
) -> usize {
    let Some(since) = &set.design.since else {
        return 0;
    };
    let mut discs: Vec<Disc> = Vec::new();
    for change in &since.changes.holes {
        let (old, new) = match change {
            HoleChange::Added(new) => (None, Some(new)),
            HoleChange::Omitted(old) => (Some(old), None),
            HoleChange::Altered { old, new } => (Some(old), Some(new)),
            HoleChange::Renumbered { .. } => continue,
        };
        let places = || old.into_iter().chain(new);
        if !places().any(|hole| shows(hole.at)) {
            continue;
        }
        if let Some(old) = old.filter(|old| is_seen_apart(old, new, view)) {
            view.circle(board, old.at, radius(old), Stroke::ADJACENT);
        }
        discs.extend(places().map(|hole| (view.place(hole.at), radius(hole) * view.scale + ROUND)));
    }
    let clusters = clusters(&discs);
    let rounds: Vec<Vec<PaperPoint>> = clusters.iter().map(|discs| feet_round(discs)).collect();
    for feet in &rounds {
        put_arcs(board, feet);
    }
    for feet in &rounds {
        put_triangle(board, set, view, feet, room);
    }
    rounds.len()
}

fn radius(hole: &HoleAt) -> f64 {
    hole.finish.value().to_mm() / 2.0
}

/// Whether the former place of a hole can be told from its new one on the paper.
fn is_seen_apart(old: &HoleAt, new: Option<&HoleAt>, view: &View) -> bool {
    new.is_none_or(|new| old.at.distance(new.at) * view.scale >= SEEN_TO_MOVE)
}

/// Discs that lie nearer to one another than clouds may.
fn clusters(discs: &[Disc]) -> Vec<Vec<Disc>> {
    let mut clusters: Vec<Vec<Disc>> = Vec::new();
    for &disc in discs {
        let near = |other: &Disc| {
            hypot(disc.0.x - other.0.x, disc.0.y - other.0.y) < disc.1 + other.1 + APART
        };
        let (met, apart): (Vec<_>, Vec<_>) = clusters
            .into_iter()
            .partition(|cluster| cluster.iter().any(near));
        let mut one: Vec<Disc> = met.into_iter().flatten().collect();
        one.push(disc);
        clusters = apart;
        clusters.push(one);
    }
    clusters
}

/// Feet of the arcs round a cluster, evenly along the line drawn tight round its discs, clockwise on paper.
fn feet_round(discs: &[Disc]) -> Vec<PaperPoint> {
    const STEPS: usize = 72;
    let rim = |&(c, r): &Disc| {
        (0..STEPS).map(move |i| {
            let a = 2.0 * PI * i as f64 / STEPS as f64;
            at(c.x + r * cos(a), c.y + r * sin(a))
        })
    };
    let tight = drawn_tight(discs.iter().flat_map(rim).collect());
    let length = |i: usize| {
        let (a, b) = (tight[i], tight[(i + 1) % tight.len()]);
        hypot(b.x - a.x, b.y - a.y)
    };
    let whole: f64 = (0..tight.len()).map(length).sum();
    let count = ((whole / ARC).round() as usize).max(FEWEST);
    let mut feet = Vec::with_capacity(count);
    let (mut side, mut before) = (0, 0.0);
    for i in 0..count {
        let along = whole * i as f64 / count as f64;
        while side + 1 < tight.len() && before + length(side) <= along {
            before += length(side);
            side += 1;
        }
        let (a, b) = (tight[side], tight[(side + 1) % tight.len()]);
        let share = ((along - before) / length(side).max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
        feet.push(at(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share));
    }
    feet
}

/// The corners of a string drawn tight round places, clockwise on paper.
fn drawn_tight(mut places: Vec<PaperPoint>) -> Vec<PaperPoint> {
    places.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    let half = |places: &mut dyn Iterator<Item = PaperPoint>| {
        let mut hull: Vec<PaperPoint> = Vec::new();
        for p in places {
            while let [.., a, b] = hull[..] {
                let turn = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
                if turn > 0.0 {
                    break;
                }
                hull.pop();
            }
            hull.push(p);
        }
        hull.pop();
        hull
    };
    let mut hull = half(&mut places.iter().copied());
    hull.extend(half(&mut places.iter().rev().copied()));
    hull
}

/// An arc from each foot to the next, bulging outwards.
fn put_arcs(board: &mut Board, feet: &[PaperPoint]) {
    for (i, &from) in feet.iter().enumerate() {
        let to = feet[(i + 1) % feet.len()];
        let chord = hypot(to.x - from.x, to.y - from.y);
        let half = (SWEEP / 2.0).to_radians();
        let radius = chord / 2.0 / sin(half);
        // Clockwise round the cloud, outwards lies to the left as one goes.
        let (ux, uy) = ((to.x - from.x) / chord, (to.y - from.y) / chord);
        let inwards = radius * cos(half);
        let centre = at(
            (from.x + to.x) / 2.0 - uy * inwards,
            (from.y + to.y) / 2.0 + ux * inwards,
        );
        let start = atan2(from.y - centre.y, from.x - centre.x).to_degrees();
        board.arc(
            centre,
            radius,
            start,
            SWEEP,
            Pen::Middle,
            Pattern::Continuous,
            Role::Dimension,
        );
    }
}

/// The triangle with the letter, as near the cloud as there is room, on a leader where that is not beside it.
fn put_triangle(
    board: &mut Board,
    set: &Set<'_>,
    view: &View,
    feet: &[PaperPoint],
    room: &PaperBox,
) {
    let letter = set.spec.written.job.revision.as_str();
    let side = TRIANGLE + face::width(letter, TABLE, true);
    let high = side * sqrt(3.0) / 2.0;
    let middle = {
        let n = feet.len() as f64;
        at(
            feet.iter().map(|p| p.x).sum::<f64>() / n,
            feet.iter().map(|p| p.y).sum::<f64>() / n,
        )
    };
    // Two boxes lie closer round a triangle than one: its shoulders are free.
    let boxes_at = |c: PaperPoint| {
        let (top, low) = (c.y - high / 2.0, c.y + high / 2.0);
        [
            PaperBox::new(c.x - side / 2.0, c.y, c.x + side / 2.0, low),
            PaperBox::new(c.x - side / 4.0, top, c.x + side / 4.0, c.y),
        ]
    };
    // Within another hole it would speak of that.
    let holes = &set.design.holes;
    let in_a_hole = |c: PaperPoint| {
        holes.iter().any(|hole| {
            let (h, r) = (
                view.place(hole.at),
                hole.finish.value().to_mm() / 2.0 * view.scale,
            );
            hypot(h.x - c.x, h.y - c.y) < r
        })
    };
    // The nearest foot of the cloud is where a leader would start.
    let near = |c: PaperPoint| {
        let away = |p: &PaperPoint| hypot(p.x - c.x, p.y - c.y);
        let nearest = feet.iter().min_by(|a, b| away(a).total_cmp(&away(b)));
        nearest.map(|p| (*p, away(p))).expect("a cloud has feet")
    };
    let reach = feet
        .iter()
        .map(|p| hypot(p.x - middle.x, p.y - middle.y))
        .fold(0.0, f64::max);
    let mut found: Option<(PaperPoint, PaperPoint, f64)> = None;
    for ring in 0..60 {
        let far = reach + 3.0 + f64::from(ring) * 1.5;
        for turn in 0..48 {
            // From the upper right round, where a reader looks first.
            let a = (f64::from(turn) * 7.5 - 45.0).to_radians();
            let c = at(middle.x + far * cos(a), middle.y + far * sin(a));
            let (foot, away) = near(c);
            if found.is_some_and(|f| away >= f.2) || in_a_hole(c) {
                continue;
            }
            let boxes = boxes_at(c);
            let free = |b: &PaperBox| room.holds(b) && is_clear(board, b, CLEAR);
            if boxes.iter().all(free) && !crosses_lettering(board, foot, c) {
                found = Some((c, foot, away));
            }
        }
        // Far out from the middle of a round cloud no place is nearer to it than one that was found; a long cloud may have one.
        if found.is_some_and(|f| far > reach + f.2) {
            break;
        }
    }
    let Some((c, foot, away)) = found else {
        return;
    };
    let (top, low) = (c.y - high / 2.0, c.y + high / 2.0);
    let corners = [
        at(c.x, top),
        at(c.x + side / 2.0, low),
        at(c.x - side / 2.0, low),
    ];
    let stroke = |board: &mut Board, a, b| {
        board.line(a, b, Pen::Middle, Pattern::Continuous, Role::Dimension)
    };
    for i in 0..3 {
        stroke(board, corners[i], corners[(i + 1) % 3]);
    }
    board.bold(at(c.x, low - 1.0), letter, TABLE, Hang::Middle);
    if away > side {
        let corner = corners.into_iter().min_by(|a, b| {
            let d = |p: &PaperPoint| hypot(p.x - foot.x, p.y - foot.y);
            d(a).total_cmp(&d(b))
        });
        board.dimension_line(foot, corner.expect("a triangle has corners"));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheets::Mark;
    use crate::sheets::sample_jobs::with_set;

    /// Round a disc of 10 mm the line is 62.8 mm long: 62.8/4.2 = 14.96, so 15 feet, each 10 mm from the middle.
    #[test]
    fn by_hand_feet_round_one_disc() {
        let feet = feet_round(&[(at(50.0, 40.0), 10.0)]);
        assert_eq!(feet.len(), 15);
        for foot in feet {
            let away = hypot(foot.x - 50.0, foot.y - 40.0);
            // Chords of a 72-sided figure run up to 10 (1 − cos 2.5°) = 0.0095 mm inside.
            assert!((9.99..=10.0 + 1e-9).contains(&away), "{away}");
        }
    }

    /// Two discs of 5 mm whose middles lie 12 mm apart are nearer than clouds may be, and those of 15 mm are not: 5 + 5 + 2.5.
    #[test]
    fn by_hand_clouds_that_would_touch_are_one() {
        let two = |apart: f64| clusters(&[(at(0.0, 0.0), 5.0), (at(apart, 0.0), 5.0)]).len();
        assert_eq!((two(12.0), two(15.0)), (1, 2));
    }

    /// Every arc of a cloud bulges outwards, and begins where the one before it ended.
    #[test]
    fn holds_arcs_close_and_bulge_outwards() {
        let discs = [(at(50.0, 40.0), 8.0), (at(62.0, 49.0), 5.0)];
        let feet = feet_round(&discs);
        let room = PaperBox::new(0.0, 0.0, 100.0, 100.0);
        let mut board = Board::new("cloud", "cloud", room);
        put_arcs(&mut board, &feet);
        assert_eq!(board.marks.len(), feet.len());
        let ends: Vec<[PaperPoint; 3]> = board
            .marks
            .iter()
            .map(|mark| {
                let Mark::Arc {
                    centre,
                    radius,
                    start_deg,
                    sweep_deg,
                    ..
                } = *mark
                else {
                    panic!("a cloud is of arcs");
                };
                [0.0, 0.5, 1.0].map(|share| {
                    let a = (start_deg + sweep_deg * share).to_radians();
                    at(centre.x + radius * cos(a), centre.y + radius * sin(a))
                })
            })
            .collect();
        let apart = |a: PaperPoint, b: PaperPoint| hypot(a.x - b.x, a.y - b.y);
        let middle = at(56.0, 44.5);
        for (i, [start, top, end]) in ends.iter().enumerate() {
            assert!(apart(*end, ends[(i + 1) % ends.len()][0]) < 1e-6);
            let chord = at((start.x + end.x) / 2.0, (start.y + end.y) / 2.0);
            assert!(apart(*top, middle) > apart(chord, middle) + 0.5);
        }
    }

    /// The demo order at its second issue: the steam pipe, an outer stay on either hand and a tube are clouded on the general
    /// arrangement, each with its triangle; on the setting-out the tube alone.
    #[test]
    fn by_hand_changes_of_tallow_moor_are_clouded() {
        with_set("specs/tallow-moor-smokebox.yaml", |set| {
            let triangles = |boards: Vec<Board>| {
                let marks = boards.into_iter().flat_map(|board| board.marks);
                let side = |mark: &Mark| {
                    matches!(
                        mark,
                        Mark::Line {
                            pen: Pen::Middle,
                            role: Role::Dimension,
                            ..
                        }
                    )
                };
                marks.filter(side).count() / 3
            };
            assert_eq!(triangles(crate::sheets::general::general(set)), 4);
            assert_eq!(triangles(crate::sheets::setting_out::setting_out(set)), 1);
        });
    }
}
