//! Small figures of the tightest pairs of the nests, the least metal of every nest among them, each as it lies on the plate with its
//! metal and its pitch.

use super::board::{Board, PaperBox};
use super::dimension::{FIRST_ROW, Says, aligned};
use super::face_view::number_height;
use super::letter_size::{LINE_PITCH, TABLE};
use super::scale::{Scale, largest_scale};
use super::set::Set;
use super::view::Stroke;
use super::{Hang, PaperPoint, at};
use crate::design::{DirectionLigament, Point};

/// Room for the caption below a figure, mm.
const CAPTION: f64 = 11.0;
/// The figures want no more height than this for level holes, mm.
const HOLES: f64 = 30.0;
/// And take no more for holes that stand upright, mm.
const MOST_HOLES: f64 = 64.0;
/// So many shares of the room are tried for the holes, the largest first.
const TRIES: u32 = 12;
/// Clear strip between figures, mm.
const BETWEEN: f64 = 6.0;
/// A box lower than this holds no figure, mm.
const LEAST: f64 = 47.0;
/// So many figures are drawn, more only where there are more nests.
const USUAL: usize = 3;

/// Height that the figures would like, mm.
pub fn figures_height(set: &Set<'_>) -> f64 {
    if set.design.directions.is_empty() {
        0.0
    } else {
        LEAST + HOLES - 2.0
    }
}

/// The pairs that are drawn: the least metal of every nest, and of the other directions as many as make up the usual number.
fn pairs(directions: &[DirectionLigament]) -> Vec<&DirectionLigament> {
    let is_least = |one: &DirectionLigament| {
        let own = directions.iter().filter(|d| d.group == one.group);
        let least = own.reduce(|a, b| {
            if b.ligament.metal < a.ligament.metal {
                b
            } else {
                a
            }
        });
        least.is_some_and(|least| std::ptr::eq(least, one))
    };
    let nests = directions.iter().filter(|d| is_least(d)).count();
    let mut others = USUAL.saturating_sub(nests);
    let mut wanted = |one: &DirectionLigament| {
        let takes = is_least(one) || others > 0;
        if takes && !is_least(one) {
            others -= 1;
        }
        takes
    };
    directions.iter().filter(|one| wanted(one)).collect()
}

/// From the first hole of a pair to the second, mm on the plate.
fn run(set: &Set<'_>, d: &DirectionLigament) -> Point {
    let (first, second) = d.ligament.holes;
    set.design.holes[second].at - set.design.holes[first].at
}

/// A figure as it is drawn about the origin.
struct Drawn {
    scale: Scale,
    board: Board,
    extent: PaperBox,
}

/// Every figure as large as its share of a box holds it; none where the box is too low for them.
fn figures(board: &Board, set: &Set<'_>, room: &PaperBox) -> Option<Vec<Drawn>> {
    let pairs = pairs(&set.design.directions);
    if pairs.is_empty() || room.height() < LEAST {
        return None;
    }
    let count = pairs.len() as f64;
    let wide = (room.width() - BETWEEN * (count - 1.0)) / count;
    let space = (wide, room.height() - CAPTION);
    let largest = |pair: &&DirectionLigament| largest_figure(board, set, pair, space);
    pairs.iter().map(largest).collect()
}

/// A pair at the largest scale at which its holes, dimensions and lettering have room.
fn largest_figure(
    board: &Board,
    set: &Set<'_>,
    d: &DirectionLigament,
    (wide, high): (f64, f64),
) -> Option<Drawn> {
    let (run, hole) = (run(set, d), d.hole.to_mm());
    let (across, up) = (run.x.abs() + hole, run.y.abs() + hole);
    let upright = run.y.abs() / run.radius();
    let most = HOLES + (MOST_HOLES - HOLES) * upright;
    let shares = (2..=TRIES).rev().map(|k| f64::from(k) / f64::from(TRIES));
    shares
        .map(|share| {
            let space = (wide * share, high.min(most) * share);
            let scale = largest_scale(across, up, space, set.figures.in_inches());
            let mut own = board.emptied();
            put_pair(&mut own, set, d, scale);
            (scale, own)
        })
        .find_map(|(scale, own)| {
            let extent = own.extent(|_| true)?;
            let fits = extent.width() <= wide && extent.height() <= high;
            fits.then_some(Drawn {
                scale,
                board: own,
                extent,
            })
        })
}

/// Puts the figures side by side in that one of the boxes where they are drawn larger, the first where both are alike; nothing
/// where each is too low for them.
pub fn put_ligament_figures(board: &mut Board, set: &Set<'_>, rooms: &[PaperBox]) {
    let smallest = |drawn: &[Drawn]| {
        let factors = drawn.iter().map(|one| one.scale.factor());
        factors.fold(f64::INFINITY, f64::min)
    };
    let fitting = rooms
        .iter()
        .filter_map(|room| Some((room, figures(board, set, room)?)));
    let Some((room, drawn)) =
        fitting.reduce(|best, other| match smallest(&other.1) > smallest(&best.1) {
            true => other,
            false => best,
        })
    else {
        return;
    };
    let heights = drawn.iter().map(|one| one.extent.height());
    let tallest = heights.fold(0.0, f64::max);
    let step = (room.width() + BETWEEN) / drawn.len() as f64;
    let captions = room.top + tallest + TABLE + 2.0;
    let pairs = pairs(&set.design.directions);
    for (i, (pair, one)) in pairs.iter().zip(&drawn).enumerate() {
        let middle = room.left + i as f64 * step + (step - BETWEEN) / 2.0;
        let down = room.top + tallest / 2.0 - one.extent.middle().y;
        board.take(&one.board, middle - one.extent.middle().x, down);
        for (k, words) in caption(set, pair, one.scale).iter().enumerate() {
            let base = captions + k as f64 * TABLE * LINE_PITCH;
            board.text(at(middle, base), words, TABLE, Hang::Middle);
        }
    }
}

/// Two lines that name a figure.
fn caption(set: &Set<'_>, d: &DirectionLigament, scale: Scale) -> [String; 2] {
    let nest = &set.design.groups[d.group].name;
    [
        format!("{nest}, {}", d.direction).to_uppercase(),
        format!("LEAST METAL, SCALE {}", scale.words()),
    ]
}

/// Puts a pair down about the origin as it lies on the plate, its metal on one side and its pitch on the other.
fn put_pair(board: &mut Board, set: &Set<'_>, d: &DirectionLigament, scale: Scale) {
    let f = scale.factor();
    let r = d.hole.to_mm() / 2.0 * f;
    let run = run(set, d);
    let ids = |hole: usize| set.design.holes[hole].id.as_str();
    let (first, second) = (ids(d.ligament.holes.0), ids(d.ligament.holes.1));
    let (a, b) = (at(0.0, 0.0), at(run.x * f, -run.y * f));
    // So far along the run from its first hole, mm of paper.
    let pitch = d.ligament.pitch.to_mm() * f;
    let along = |far: f64| at(b.x * far / pitch, b.y * far / pitch);
    board.centre_line(along(-r - 2.0), along(pitch + r + 2.0));
    for (c, id) in [(a, first), (b, second)] {
        put_hole(board, (c, r), (b.y / pitch, -b.x / pitch), id);
    }
    let says = |words, length| Says {
        words,
        length,
        scale: f,
    };
    let metal = set.figures.short(d.ligament.metal);
    let edges = (along(r), along(pitch - r));
    let line = r + FIRST_ROW;
    aligned(
        board,
        edges.0,
        edges.1,
        line,
        says(&metal, d.ligament.metal),
    );
    let words = set.figures.short(d.ligament.pitch);
    aligned(board, a, b, -line, says(&words, d.ligament.pitch));
}

/// A hole with its number, and its centre line square to the run.
fn put_hole(board: &mut Board, (c, r): (PaperPoint, f64), square: (f64, f64), id: &str) {
    let seen = Stroke::SEEN;
    board.circle(c, r, seen.pen, seen.pattern, seen.role);
    let reach = |far: f64| at(c.x + square.0 * far, c.y + square.1 * far);
    board.centre_line(reach(-r - 2.0), reach(r + 2.0));
    match number_height(id, r) {
        Some(height) => board.text(at(c.x, c.y + height / 2.0), id, height, Hang::Middle),
        None => board.text(at(c.x, c.y - r - 1.0), id, TABLE, Hang::Middle),
    }
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::design::set_out;
    use crate::spec::read_spec_file;

    /// Whatever nests a plate has, the tightest pair of each is drawn, none is drawn twice, and three are where there are as many
    /// directions.
    #[test]
    fn holds_that_the_least_metal_of_every_nest_is_drawn() {
        for plate in ["tallow-moor", "marl-hen", "hobthrush", "pinders-oak"] {
            let file = format!("specs/{plate}-smokebox.yaml");
            let spec = read_spec_file(Path::new(&file)).expect("a sound spec");
            let directions = set_out(&spec).expect("a sound plate").directions;
            let drawn = pairs(&directions);
            for one in &directions {
                let as_tight = |d: &&DirectionLigament| {
                    d.group == one.group && d.ligament.metal <= one.ligament.metal
                };
                assert!(drawn.iter().any(as_tight), "{plate}");
            }
            assert_eq!(drawn.len(), directions.len().min(USUAL), "{plate}");
        }
    }
}
