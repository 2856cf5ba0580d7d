//! Finds how a drawing lies to the part: scale first, then hand, then turn and place.
//!
//! Both are taken as anchors: the centres of circles, the middles of lines and arcs, points; each with its size. Two anchors of the
//! part that have few likenesses in the drawing, far apart, give a motion for every pair of likenesses; the motion under which most
//! of the part finds its likeness is taken, the plainest of several alike.

use std::collections::BTreeMap;

use super::chain::{Figures, Round};
use super::motion::Motion;
use super::wanted::Wanted;
use crate::design::{Edge, HoleIndex, Point};
use crate::units::MM_PER_INCH;
use crate::units::angle::{PI, sqrt};
use crate::units::tolerance::{SAME_LENGTH_MM, SAME_SCALE};

/// Motions tried for one scale and hand at most: a nest repeated without end has that many likenesses.
const MOST_TRIED: usize = 300;
/// Anchors by which a motion is judged at most.
const MOST_JUDGED: usize = 240;
/// Cut contours weigh 1 from this many on; fewer weigh less, since one altered edge is then a large share of them.
const ENOUGH_CUT: f64 = 8.0;
/// What all marks together weigh.
const MARKS_WEIGH: f64 = 0.5;
/// A share so large that no other motion is looked for.
const NEARLY_ALL: f64 = 0.9;
/// Rare anchors that are paired.
const RAREST: usize = 6;

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Sort {
    Circle,
    Line,
    Arc,
    Dot,
}

/// Something small enough to be a place, with its size.
#[derive(Clone, Copy, Debug)]
struct Anchor {
    sort: Sort,
    /// Radius of a circle or an arc, length of a line, mm.
    size: f64,
    at: Point,
    /// Whether it belongs to a cut contour.
    cut: bool,
}

/// How a drawing lies to the part, and how much of the part finds its likeness so.
#[derive(Clone, Copy, Debug)]
pub(super) struct Placing {
    /// From the part to the drawing.
    pub motion: Motion,
    /// Share of the part that finds its likeness, 1 where everything does.
    pub found: f64,
    /// Whether the drawing is the same at the other hand, as far as its cut contours and marks tell.
    pub either_hand: bool,
}

/// Finds the placing of a drawing; `within` is the distance at which places are one, mm.
pub(super) fn place(wanted: &Wanted, figures: &Figures, within: f64) -> Placing {
    let search = Search::new(wanted, figures, within);
    let plain = search.judge(&Motion::NONE);
    let mut best = (Motion::NONE, plain);
    // With most of the part where it should be, nothing else is looked for.
    if plain.total() < NEARLY_ALL {
        for scale in search.scales(wanted, figures) {
            for mirrored in [false, true] {
                let placed = search.best(scale, mirrored);
                if placed.1.total() > best.1.total() + SAME_SCALE {
                    best = placed;
                }
            }
            if best.1.total() > NEARLY_ALL {
                break;
            }
        }
    }
    let (motion, found) = search.refined(best);
    let other = search.best(motion.scale, !motion.mirrored).1;
    Placing {
        motion,
        found: found.total(),
        either_hand: found.cut > 0.0
            && (other.total() - found.total()).abs() <= SAME_SCALE
            && found.marks <= SAME_SCALE,
    }
}

/// Shares of the part that find their likeness.
#[derive(Clone, Copy, Debug)]
struct Found {
    cut: f64,
    marks: f64,
    /// What the cut contours weigh beside the marks.
    weight: f64,
}

impl Found {
    fn total(&self) -> f64 {
        (self.cut * self.weight + self.marks * MARKS_WEIGH) / (self.weight + MARKS_WEIGH)
    }
}

struct Search {
    part: Vec<Anchor>,
    /// Those of the part by which motions are judged.
    judged: Vec<usize>,
    drawing: Vec<Anchor>,
    index: HoleIndex,
    within: f64,
}

impl Search {
    fn new(wanted: &Wanted, figures: &Figures, within: f64) -> Search {
        let part = anchors_of_part(wanted);
        let drawing = anchors_of_drawing(figures);
        let of = |cut: bool| {
            let all: Vec<usize> = (0..part.len()).filter(|&i| part[i].cut == cut).collect();
            let step = all.len().div_ceil(MOST_JUDGED / 2).max(1);
            all.into_iter().step_by(step)
        };
        Search {
            judged: of(true).chain(of(false)).collect(),
            index: HoleIndex::of_places(drawing.iter().map(|a| a.at).enumerate()),
            part,
            drawing,
            within,
        }
    }

    fn alike(&self, part: &Anchor, drawn: &Anchor, scale: f64) -> bool {
        part.sort == drawn.sort
            && (part.size * scale - drawn.size).abs() <= self.within * scale.max(SAME_SCALE)
    }

    /// The likeness of an anchor under a motion.
    fn likeness(&self, anchor: &Anchor, motion: &Motion) -> Option<usize> {
        let reach = self.within * motion.scale;
        let near = self.index.within(motion.out(anchor.at), reach);
        near.filter(|&d| self.alike(anchor, &self.drawing[d], motion.scale))
            .min()
    }

    fn judge(&self, motion: &Motion) -> Found {
        let share = |cut: bool| {
            let of = self.judged.iter().map(|&i| &self.part[i]);
            let (mut all, mut found) = (0.0, 0.0);
            for anchor in of.filter(|a| a.cut == cut) {
                all += 1.0;
                found += f64::from(u8::from(self.likeness(anchor, motion).is_some()));
            }
            if all > 0.0 { found / all } else { 0.0 }
        };
        let count = self.part.iter().filter(|a| a.cut).count();
        Found {
            cut: share(true),
            marks: share(false),
            weight: (count as f64 / ENOUGH_CUT).min(1.0),
        }
    }

    /// Scales worth trying, the likeliest first.
    fn scales(&self, wanted: &Wanted, figures: &Figures) -> Vec<f64> {
        let mut scales = vec![1.0, MM_PER_INCH, 1.0 / MM_PER_INCH];
        let guesses = [area_scale(wanted, figures), hole_scale(wanted, figures)];
        for guess in guesses.into_iter().flatten() {
            let known = |scale: &f64| (guess / scale - 1.0).abs() <= SAME_SCALE;
            if guess.is_finite() && guess > SAME_LENGTH_MM && !scales.iter().any(known) {
                scales.push(guess);
            }
        }
        scales
    }

    /// The best motion of one scale and hand.
    fn best(&self, scale: f64, mirrored: bool) -> (Motion, Found) {
        let about_origin = Motion::scaled(scale, mirrored);
        let mut best = (about_origin, self.judge(&about_origin));
        let likenesses = self.likenesses(scale);
        let mut order: Vec<usize> = (0..self.part.len())
            .filter(|&i| !likenesses[i].is_empty())
            .collect();
        order.sort_by_key(|&i| (likenesses[i].len(), !self.part[i].cut, i));
        let mut tried = 0;
        for &a in order.iter().take(RAREST) {
            for b in self.partners(&order, a) {
                for &drawn_a in &likenesses[a] {
                    for &drawn_b in &likenesses[b] {
                        if tried >= MOST_TRIED {
                            return best;
                        }
                        let Some(motion) =
                            self.through(scale, mirrored, [a, b], [drawn_a, drawn_b])
                        else {
                            continue;
                        };
                        tried += 1;
                        let found = self.judge(&motion);
                        if found.total() > best.1.total() + SAME_SCALE {
                            best = (motion, found);
                        }
                    }
                }
                if best.1.total() > NEARLY_ALL {
                    return best;
                }
            }
        }
        best
    }

    /// Anchors of the drawing that are as large as each of the part.
    fn likenesses(&self, scale: f64) -> Vec<Vec<usize>> {
        let mut by_size: Vec<usize> = (0..self.drawing.len()).collect();
        by_size.sort_by(|&a, &b| self.drawing[a].size.total_cmp(&self.drawing[b].size));
        let reach = self.within * scale;
        let like = |anchor: &Anchor| {
            let low = anchor.size * scale - reach;
            let first = by_size.partition_point(|&d| self.drawing[d].size < low);
            let mut like: Vec<usize> = by_size[first..]
                .iter()
                .copied()
                .take_while(|&d| self.drawing[d].size <= anchor.size * scale + reach)
                .filter(|&d| self.alike(anchor, &self.drawing[d], scale))
                .collect();
            like.sort_unstable();
            like
        };
        self.part.iter().map(like).collect()
    }

    /// The rarest anchors that lie well away from one.
    fn partners(&self, order: &[usize], from: usize) -> Vec<usize> {
        let distance = |&i: &usize| self.part[i].at.distance(self.part[from].at);
        let furthest = order.iter().map(distance).fold(0.0, f64::max);
        let far = order
            .iter()
            .copied()
            .filter(|i| distance(i) >= furthest / 3.0);
        far.filter(|&i| i != from).take(RAREST).collect()
    }

    /// The motion that carries two anchors onto two of the drawing, where they lie as far apart.
    fn through(
        &self,
        scale: f64,
        mirrored: bool,
        part: [usize; 2],
        drawn: [usize; 2],
    ) -> Option<Motion> {
        let part = part.map(|i| self.part[i].at);
        let drawn = drawn.map(|i| self.drawing[i].at);
        let apart = part[0].distance(part[1]) * scale;
        let slack = 2.0 * self.within * scale;
        let fits = apart > slack && (drawn[0].distance(drawn[1]) - apart).abs() <= slack;
        fits.then(|| Motion::through(scale, mirrored, part, drawn))
    }

    /// The motion brought to rest on all that it finds, turn and place left at nothing where nothing serves as well.
    fn refined(&self, best: (Motion, Found)) -> (Motion, Found) {
        let (rough, found) = best;
        let at_rest = Motion::scaled(rough.scale, rough.mirrored);
        let enough = |motion: &Motion| self.judge(motion).total() + SAME_SCALE >= found.total();
        if enough(&at_rest) {
            return (at_rest, self.judge(&at_rest));
        }
        let pairs: Vec<(Point, Point)> = self
            .part
            .iter()
            .filter_map(|a| Some((a.at, self.drawing[self.likeness(a, &rough)?].at)))
            .collect();
        if pairs.len() < 2 {
            return best;
        }
        let fine = Motion::nearest(rough.scale, rough.mirrored, &pairs);
        let quarter = PI / 2.0;
        let square_turn = (fine.turn / quarter).round() * quarter;
        let middle = pairs.iter().fold(Point::CENTRE, |a, p| a + p.0) * (1.0 / pairs.len() as f64);
        let squared = Motion {
            turn: square_turn,
            ..fine
        };
        let squared = Motion {
            shift: squared.shift + fine.out(middle) - squared.out(middle),
            ..squared
        };
        for motion in [squared, fine] {
            if enough(&motion) {
                return (motion, self.judge(&motion));
            }
        }
        best
    }
}

fn anchor_of_edge(edge: &Edge, cut: bool) -> Anchor {
    let (sort, size) = match edge {
        Edge::Line { .. } => (Sort::Line, edge.length_mm()),
        Edge::Arc { radius, .. } => (Sort::Arc, *radius),
    };
    Anchor {
        sort,
        size,
        at: edge.midpoint(),
        cut,
    }
}

fn anchors_of_part(wanted: &Wanted) -> Vec<Anchor> {
    let circles = wanted.circles.iter().map(|circle| Anchor {
        sort: Sort::Circle,
        size: circle.radius,
        at: circle.centre,
        cut: circle.layer.is_cut(),
    });
    let contours = wanted.contours.iter().flat_map(|contour| {
        let edges = contour.outline.edges().iter();
        edges.map(|edge| anchor_of_edge(edge, contour.layer.is_cut()))
    });
    let marks = wanted.marks.iter().map(|m| anchor_of_edge(&m.edge, false));
    let pops = wanted.pops.iter().map(|pop| Anchor {
        sort: match pop.arm {
            Some(_) => Sort::Line,
            None => Sort::Dot,
        },
        size: pop.arm.map_or(0.0, |arm| 2.0 * arm),
        at: pop.at,
        cut: false,
    });
    circles.chain(contours).chain(marks).chain(pops).collect()
}

fn anchors_of_drawing(figures: &Figures) -> Vec<Anchor> {
    let rounds = figures.rounds.iter().map(|round| Anchor {
        sort: Sort::Circle,
        size: round.radius,
        at: round.centre,
        cut: false,
    });
    let edges = figures
        .pieces
        .iter()
        .map(|p| anchor_of_edge(&p.edge, false));
    let dots = figures.dots.iter().map(|(_, at)| Anchor {
        sort: Sort::Dot,
        size: 0.0,
        at: *at,
        cut: false,
    });
    rounds.chain(edges).chain(dots).collect()
}

/// Scale by the areas of the largest contours.
fn area_scale(wanted: &Wanted, figures: &Figures) -> Option<f64> {
    let of_circle = |radius: f64| PI * radius * radius;
    let part = (wanted.circles.iter().map(|c| of_circle(c.radius)))
        .chain(wanted.contours.iter().map(|c| c.outline.area_mm2()))
        .fold(0.0, f64::max);
    let closed = figures.chains.iter().filter(|c| c.ends.is_none());
    let drawn = (figures.rounds.iter().map(|r| of_circle(r.radius)))
        .chain(closed.map(|c| area(c.pieces.iter().map(|&p| &figures.pieces[p].edge))))
        .fold(0.0, f64::max);
    (part > 0.0 && drawn > 0.0).then(|| sqrt(drawn / part))
}

/// Area inside pieces that follow one another, each walked either way.
fn area<'a>(edges: impl Iterator<Item = &'a Edge>) -> f64 {
    let edges: Vec<&Edge> = edges.collect();
    let [first, second, ..] = edges[..] else {
        return 0.0;
    };
    let meets = |p: Point| p.distance(second.from()).min(p.distance(second.to()));
    let base = first.from();
    let mut at = match meets(first.to()) <= meets(first.from()) {
        true => first.from(),
        false => first.to(),
    };
    let mut sum = 0.0;
    for edge in edges {
        let walked = match at.distance(edge.from()) <= at.distance(edge.to()) {
            true => *edge,
            false => edge.reversed(),
        };
        sum +=
            (walked.from() - base).cross(walked.to() - base) / 2.0 + walked.area_beyond_chord_mm2();
        at = walked.to();
    }
    sum.abs()
}

/// Scale by the commonest sizes of circle.
fn hole_scale(wanted: &Wanted, figures: &Figures) -> Option<f64> {
    let part = commonest(wanted.circles.iter().map(|c| c.radius))?;
    let drawn = commonest(figures.rounds.iter().map(|r: &Round| r.radius))?;
    Some(drawn / part)
}

fn commonest(sizes: impl Iterator<Item = f64>) -> Option<f64> {
    let mut counts: BTreeMap<u64, (usize, f64)> = BTreeMap::new();
    for size in sizes {
        // Sizes that agree to five figures are one; a size is above nothing, so its bits stand in its order.
        let key = format!("{size:.4e}")
            .parse::<f64>()
            .unwrap_or(size)
            .to_bits();
        counts.entry(key).or_insert((0, size)).0 += 1;
    }
    let most = counts.values().map(|(count, _)| *count).max()?;
    let mut commonest = counts.values().filter(|(count, _)| *count == most);
    commonest.next_back().map(|(_, size)| *size)
}
