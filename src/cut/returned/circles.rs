//! Circles of the part and circles of the file: which is which, and what became of each.

use super::chain::{Drawn, Round};
use super::deviation::{Deviation, DeviationKind, mm, place, signed};
use super::wanted::WantedCircle;
use crate::design::{HoleIndex, Point};

/// What the circles come to.
#[derive(Debug, Default)]
pub(super) struct Circles {
    /// What differs.
    pub differences: Vec<Deviation>,
    /// For each circle of the part, that of the file which it became.
    pub matched: Vec<Option<usize>>,
    /// How many are as they should be.
    pub as_wanted: usize,
}

/// Matches circles, those at their places first, then the nearest within a bound: its own diameter for a hole of the same size, its
/// radius for another size. `rounds` lie on the part.
pub(super) fn compare_circles(wanted: &[WantedCircle], rounds: &[Round], within: f64) -> Circles {
    let mut found = Circles {
        matched: vec![None; wanted.len()],
        ..Circles::default()
    };
    let mut taken = vec![false; rounds.len()];
    let index = HoleIndex::of_places(rounds.iter().map(|r| r.centre).enumerate());
    match_in_place(
        wanted,
        rounds,
        &index,
        within,
        &mut found.matched,
        &mut taken,
    );
    match_nearest(
        wanted,
        rounds,
        &index,
        within,
        &mut found.matched,
        &mut taken,
    );
    for (circle, matched) in wanted.iter().zip(&found.matched) {
        let differences = match matched {
            None => missing(circle),
            Some(number) => altered(circle, &rounds[*number], within),
        };
        found.as_wanted += usize::from(differences.is_empty());
        found.differences.extend(differences);
    }
    for (round, _) in rounds.iter().zip(&taken).filter(|(_, taken)| !**taken) {
        found.differences.push(extra(wanted, round, within));
    }
    found
}

fn match_in_place(
    wanted: &[WantedCircle],
    rounds: &[Round],
    index: &HoleIndex,
    within: f64,
    matched: &mut [Option<usize>],
    taken: &mut [bool],
) {
    for (number, circle) in wanted.iter().enumerate() {
        let near = index.within(circle.centre, within);
        let alike =
            near.filter(|&r| !taken[r] && (rounds[r].radius - circle.radius).abs() <= within);
        // A whole circle on its own layer before one that is broken, or strayed.
        let rank = |&r: &usize| {
            let round: &Round = &rounds[r];
            let broken = round.gap.is_some() || round.drawn != Drawn::Whole;
            (broken, round.layer != circle.layer.name(), r)
        };
        if let Some(best) = alike.min_by_key(rank) {
            matched[number] = Some(best);
            taken[best] = true;
        }
    }
}

fn match_nearest(
    wanted: &[WantedCircle],
    rounds: &[Round],
    index: &HoleIndex,
    within: f64,
    matched: &mut [Option<usize>],
    taken: &mut [bool],
) {
    let mut pairs = Vec::new();
    for (number, circle) in wanted.iter().enumerate() {
        if matched[number].is_some() {
            continue;
        }
        for r in index.within(circle.centre, 2.0 * circle.radius) {
            let off = rounds[r].centre.distance(circle.centre);
            let other = (rounds[r].radius - circle.radius).abs();
            if !taken[r] && (other <= within || off <= circle.radius) {
                pairs.push((off + other, number, r));
            }
        }
    }
    pairs.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)).then(a.2.cmp(&b.2)));
    for (_, number, r) in pairs {
        if matched[number].is_none() && !taken[r] {
            matched[number] = Some(r);
            taken[r] = true;
        }
    }
}

fn missing(circle: &WantedCircle) -> Vec<Deviation> {
    vec![Deviation {
        kind: DeviationKind::Missing,
        what: circle.name.clone(),
        at: Some(circle.centre),
        by: None,
        fact: format!(
            "is missing: {} across at {}",
            mm(2.0 * circle.radius),
            place(circle.centre)
        ),
    }]
}

fn altered(circle: &WantedCircle, round: &Round, within: f64) -> Vec<Deviation> {
    let deviation = |kind, by, fact| Deviation {
        kind,
        what: circle.name.clone(),
        at: Some(circle.centre),
        by: Some(by),
        fact,
    };
    let mut found = Vec::new();
    let by = round.centre - circle.centre;
    if by.radius() > within {
        let fact = format!(
            "is moved by {} (x {}, y {}), to {}",
            mm(by.radius()),
            signed(by.x),
            signed(by.y),
            place(round.centre)
        );
        found.push(deviation(DeviationKind::Moved, by.radius(), fact));
    }
    let grown = 2.0 * (round.radius - circle.radius);
    if grown.abs() > 2.0 * within {
        let fact = format!(
            "is {} across, not {}: {}",
            mm(2.0 * round.radius),
            mm(2.0 * circle.radius),
            signed(grown)
        );
        found.push(deviation(DeviationKind::Resized, grown, fact));
    }
    if let Some((gap, at)) = round.gap {
        let fact = format!("does not close: a gap of {} at {}", mm(gap), place(at));
        found.push(deviation(DeviationKind::Open, gap, fact));
    }
    if let Drawn::Facets(count, across) = round.drawn {
        let fact = format!(
            "is drawn as {count} straight lines, which cut across the circle by up to {}",
            mm(across)
        );
        found.push(deviation(DeviationKind::Facetted, across, fact));
    }
    found
}

fn extra(wanted: &[WantedCircle], round: &Round, within: f64) -> Deviation {
    let same = |circle: &&WantedCircle| {
        circle.centre.distance(round.centre) <= within
            && (circle.radius - round.radius).abs() <= within
    };
    let (kind, what, fact) = match wanted.iter().find(same) {
        Some(circle) => (
            DeviationKind::Doubled,
            circle.name.clone(),
            format!(
                "is drawn once more on layer {}: it would be cut twice",
                round.layer
            ),
        ),
        None => (
            DeviationKind::Extra,
            format!("a circle {} across", mm(2.0 * round.radius)),
            format!(
                "at {} on layer {} is not of this part",
                place(round.centre),
                round.layer
            ),
        ),
    };
    Deviation {
        kind,
        what,
        at: Some(round.centre),
        by: None,
        fact,
    }
}

/// A circle of the file on the part.
pub(super) fn round_back(round: &Round, back: impl Fn(Point) -> Point, scale: f64) -> Round {
    Round {
        centre: back(round.centre),
        radius: round.radius / scale,
        drawn: match round.drawn {
            Drawn::Whole => Drawn::Whole,
            Drawn::Facets(count, across) => Drawn::Facets(count, across / scale),
        },
        gap: round.gap.map(|(gap, at)| (gap / scale, back(at))),
        ..round.clone()
    }
}
