//! Lines and arcs joined into contours, whoever broke them up, and circles seen for what they are.

use std::collections::BTreeMap;

use super::super::entity::{Entity, arc_through, steps, turned};
use crate::design::{Edge, HoleIndex, Point};
use crate::units::angle::{PI, sqrt};
use crate::units::tolerance::{JOINED_ENDS_MM, SAME_ANGLE_DEG, SAME_LENGTH_MM};

/// A circle in fewer straight lines than this is a polygon that somebody meant.
const FEWEST_FACETS: usize = 8;

/// A straight or round piece, with its layer.
#[derive(Clone, Debug)]
pub(super) struct Piece {
    /// Name of its layer.
    pub layer: String,
    /// The piece.
    pub edge: Edge,
}

/// How a circle is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Drawn {
    /// As a circle, or as arcs that make one.
    Whole,
    /// As so many straight lines, which cut across it by so much at most, mm.
    Facets(usize, f64),
}

/// A circle, or most of one.
#[derive(Clone, Debug)]
pub(super) struct Round {
    /// Name of its layer.
    pub layer: String,
    /// Centre.
    pub centre: Point,
    /// Radius, mm.
    pub radius: f64,
    /// How it is drawn.
    pub drawn: Drawn,
    /// Width of the gap where it does not close, mm, and the middle of the gap.
    pub gap: Option<(f64, Point)>,
    /// Its pieces; none where it is an entity of its own.
    pub pieces: Vec<usize>,
}

/// Pieces that follow one another.
#[derive(Clone, Debug)]
pub(super) struct Chain {
    /// Numbers of the pieces, in order.
    pub pieces: Vec<usize>,
    /// The two ends, where it does not close.
    pub ends: Option<(Point, Point)>,
}

/// What a file draws, sorted into figures.
#[derive(Clone, Debug, Default)]
pub(super) struct Figures {
    /// Every straight or round piece once.
    pub pieces: Vec<Piece>,
    /// Circles.
    pub rounds: Vec<Round>,
    /// Chains that make no circle.
    pub chains: Vec<Chain>,
    /// Points.
    pub dots: Vec<(String, Point)>,
    /// Pieces drawn more than once: the middle of each.
    pub twice: Vec<Point>,
}

/// Sorts entities into figures.
pub(super) fn figures(drawn: &[(String, Entity)]) -> Figures {
    let mut found = Figures::default();
    let mut pieces = Vec::new();
    for (layer, entity) in drawn {
        take_apart(layer, entity, &mut found, &mut pieces);
    }
    (found.pieces, found.twice) = without_repeats(pieces);
    for pieces in by_layer(&found.pieces).into_values() {
        for chain in chains(&found.pieces, &pieces) {
            match round(&found.pieces, &chain) {
                Some(round) => found.rounds.push(round),
                None => found.chains.push(chain),
            }
        }
    }
    found
}

fn take_apart(layer: &str, entity: &Entity, found: &mut Figures, pieces: &mut Vec<Piece>) {
    let mut piece = |edge: Edge| {
        if edge.length_mm() > SAME_LENGTH_MM {
            let layer = layer.to_string();
            pieces.push(Piece { layer, edge });
        }
    };
    let mut circle = |centre: Point, radius: f64| match radius.abs() > SAME_LENGTH_MM {
        true => found.rounds.push(Round {
            layer: layer.to_string(),
            centre,
            radius: radius.abs(),
            drawn: Drawn::Whole,
            gap: None,
            pieces: Vec::new(),
        }),
        false => found.dots.push((layer.to_string(), centre)),
    };
    match entity {
        Entity::Line { from, to } => piece(Edge::Line {
            from: *from,
            to: *to,
        }),
        Entity::Circle { centre, radius } => circle(*centre, *radius),
        Entity::Arc {
            centre,
            radius,
            start_deg,
            end_deg,
        } => {
            let sweep = turned(start_deg.to_radians(), end_deg.to_radians());
            let nothing = SAME_ANGLE_DEG.to_radians();
            if sweep <= nothing || sweep >= 2.0 * PI - nothing {
                circle(*centre, *radius);
            } else if *radius > SAME_LENGTH_MM {
                let start = start_deg.to_radians();
                piece(Edge::arc(*centre, *radius, start, start + sweep));
            }
        }
        Entity::Polyline { vertices, closed } => {
            for (from, to, bulge) in steps(vertices, *closed) {
                piece(bent(from, to, bulge));
            }
        }
        Entity::Dot(at) => found.dots.push((layer.to_string(), *at)),
    }
}

/// The edge of this bulge between two places.
pub(super) fn bent(from: Point, to: Point, bulge: f64) -> Edge {
    match arc_through(from, to, bulge) {
        Some(arc) if arc.radius.is_finite() && from.distance(to) > SAME_LENGTH_MM => Edge::Arc {
            from,
            to,
            centre: arc.centre,
            radius: arc.radius,
            anticlockwise: bulge > 0.0,
        },
        _ => Edge::Line { from, to },
    }
}

/// Whether two pieces lie one on the other, walked either way.
pub(super) fn same_piece(a: &Edge, b: &Edge, within: f64) -> bool {
    let near = |p: Point, q: Point| p.distance(q) <= within;
    let ends = (near(a.from(), b.from()) && near(a.to(), b.to()))
        || (near(a.from(), b.to()) && near(a.to(), b.from()));
    ends && near(a.midpoint(), b.midpoint())
}

/// The pieces, each once, and the middles of those that came again.
fn without_repeats(pieces: Vec<Piece>) -> (Vec<Piece>, Vec<Point>) {
    let middles = pieces.iter().map(|p| p.edge.midpoint()).enumerate();
    let index = HoleIndex::of_places(middles);
    let comes_again = |number: usize| {
        let edge = &pieces[number].edge;
        let near = index.within(edge.midpoint(), JOINED_ENDS_MM);
        near.into_iter()
            .any(|other| other < number && same_piece(&pieces[other].edge, edge, JOINED_ENDS_MM))
    };
    let again: Vec<bool> = (0..pieces.len()).map(comes_again).collect();
    let twice = pieces.iter().zip(&again).filter(|(_, again)| **again);
    let twice = twice.map(|(piece, _)| piece.edge.midpoint()).collect();
    let once = pieces.into_iter().zip(again).filter(|(_, again)| !again);
    (once.map(|(piece, _)| piece).collect(), twice)
}

fn by_layer(pieces: &[Piece]) -> BTreeMap<&str, Vec<usize>> {
    let mut layers: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
    for (number, piece) in pieces.iter().enumerate() {
        layers.entry(&piece.layer).or_default().push(number);
    }
    layers
}

/// Chains through every place where just two pieces meet; where more meet, a chain ends.
fn chains(pieces: &[Piece], of: &[usize]) -> Vec<Chain> {
    let ends: Vec<Point> = of
        .iter()
        .flat_map(|&n| [pieces[n].edge.from(), pieces[n].edge.to()])
        .collect();
    let nodes = nodes(&ends);
    let mut meeting: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (end, node) in nodes.iter().enumerate() {
        meeting.entry(*node).or_default().push(end);
    }
    let mut walk = Walk {
        nodes: &nodes,
        meeting: &meeting,
        taken: vec![false; of.len()],
    };
    let is_joint = |end: usize| meeting[&nodes[end]].len() == 2;
    let starts = (0..ends.len()).filter(|end| !is_joint(*end));
    let mut found = Vec::new();
    for start in starts.chain((0..ends.len()).step_by(2)) {
        if walk.taken[start / 2] {
            continue;
        }
        let (run, last) = walk.from(start);
        let closed = nodes[start] == nodes[last] && (run.len() > 1 || is_joint(start));
        found.push(Chain {
            pieces: run.into_iter().map(|i| of[i]).collect(),
            ends: (!closed).then_some((ends[start], ends[last])),
        });
    }
    found
}

/// The number of the place at which each end lies: that of the first end there.
fn nodes(ends: &[Point]) -> Vec<usize> {
    let index = HoleIndex::of_places(ends.iter().copied().enumerate());
    let mut nodes = vec![usize::MAX; ends.len()];
    for end in 0..ends.len() {
        if nodes[end] == usize::MAX {
            nodes[end] = end;
            for other in index.within_sorted(ends[end], JOINED_ENDS_MM) {
                if nodes[other] == usize::MAX {
                    nodes[other] = end;
                }
            }
        }
    }
    nodes
}

struct Walk<'a> {
    nodes: &'a [usize],
    meeting: &'a BTreeMap<usize, Vec<usize>>,
    taken: Vec<bool>,
}

impl Walk<'_> {
    /// Pieces from one end onwards, and the end at which the walk stops.
    fn from(&mut self, start: usize) -> (Vec<usize>, usize) {
        let (mut run, mut enter) = (Vec::new(), start);
        loop {
            self.taken[enter / 2] = true;
            run.push(enter / 2);
            let leave = enter ^ 1;
            let here = &self.meeting[&self.nodes[leave]];
            let next = here.iter().copied().find(|end| *end != leave);
            match next {
                Some(next) if here.len() == 2 && !self.taken[next / 2] => enter = next,
                _ => return (run, leave),
            }
        }
    }
}

/// The circle that a chain makes, whole or but for a gap; none where it makes no more than half of one.
fn round(pieces: &[Piece], chain: &Chain) -> Option<Round> {
    let edges: Vec<&Edge> = chain.pieces.iter().map(|&n| &pieces[n].edge).collect();
    let (centre, radius, drawn) = of_arcs(&edges).or_else(|| of_facets(&edges))?;
    let girth: f64 = edges.iter().map(|e| e.length_mm()).sum();
    let gap = chain
        .ends
        .map(|(a, b)| (a.distance(b), a.midway(b)))
        .filter(|_| girth < 2.0 * PI * radius);
    let most = gap.is_none() || girth > PI * radius * (1.0 + SAME_ANGLE_DEG);
    most.then(|| Round {
        layer: pieces[chain.pieces[0]].layer.clone(),
        centre,
        radius,
        drawn,
        gap,
        pieces: chain.pieces.clone(),
    })
}

fn of_arcs(edges: &[&Edge]) -> Option<(Point, f64, Drawn)> {
    let arc = |edge: &&Edge| match **edge {
        Edge::Arc { centre, radius, .. } => Some((centre, radius)),
        Edge::Line { .. } => None,
    };
    let arcs: Vec<(Point, f64)> = edges.iter().map(arc).collect::<Option<_>>()?;
    let (middle, size) = arcs[0];
    let alike = arcs.iter().all(|(centre, radius)| {
        centre.distance(middle) <= JOINED_ENDS_MM && (radius - size).abs() <= JOINED_ENDS_MM
    });
    let share = 1.0 / arcs.len() as f64;
    let (centre, radius) = arcs.iter().fold((Point::CENTRE, 0.0), |(c, r), arc| {
        (c + arc.0 * share, r + arc.1 * share)
    });
    alike.then_some((centre, radius, Drawn::Whole))
}

fn of_facets(edges: &[&Edge]) -> Option<(Point, f64, Drawn)> {
    let straight = edges.iter().all(|e| matches!(e, Edge::Line { .. }));
    if edges.len() < FEWEST_FACETS || !straight {
        return None;
    }
    let mut corners: Vec<Point> = edges.iter().map(|e| e.from()).collect();
    corners.extend(edges.iter().map(|e| e.to()));
    let (centre, radius) = circle_through(&corners)?;
    let on = corners
        .iter()
        .all(|p| (p.distance(centre) - radius).abs() <= JOINED_ENDS_MM);
    let across = edges
        .iter()
        .map(|e| radius - e.midpoint().distance(centre))
        .fold(0.0, f64::max);
    // Long facets round a small part of a turn are a polygon, not a circle badly drawn.
    (on && across < radius / 4.0).then_some((centre, radius, Drawn::Facets(edges.len(), across)))
}

/// The circle nearest to many places, by least squares of the power of each.
fn circle_through(places: &[Point]) -> Option<(Point, f64)> {
    let share = 1.0 / places.len() as f64;
    let middle = places.iter().fold(Point::CENTRE, |a, b| a + *b) * share;
    let (mut xx, mut xy, mut yy, mut xq, mut yq, mut q) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
    for place in places {
        let p = *place - middle;
        let square = p.dot(p);
        xx += p.x * p.x;
        xy += p.x * p.y;
        yy += p.y * p.y;
        xq += p.x * square;
        yq += p.y * square;
        q += square;
    }
    let by = xx * yy - xy * xy;
    let centre = Point::new(
        (xq * yy - yq * xy) / (2.0 * by),
        (yq * xx - xq * xy) / (2.0 * by),
    );
    let radius = sqrt(centre.dot(centre) + q * share);
    let sound = centre.is_finite() && radius.is_finite();
    sound.then_some((middle + centre, radius))
}
