//! Holes that cannot both be drilled, or that run over an edge, a heel or a weld: contradictions, which are refused.
//!
//! Too little metal is no contradiction; that is left to the rules. Exactly touching is too little metal.

use std::collections::BTreeMap;

use super::amount::Amounts;
use super::numbering::Numbered;
use super::smokebox_tube_plate::Form;
use super::{Fabricated, FlangeDesign, Hole, Ligament, Outline, Point};
use crate::spec::{Fault, NamedLine, Purpose};
use crate::units::tolerance::SAME_LENGTH_MM;

/// Every overlap of the plate's holes with one another and with its lines. `close_pairs` holds at least every pair that
/// overlaps; `own_metal` is the least metal between holes of each group's own pattern, mm.
pub(super) fn overlaps(
    holes: &Numbered,
    close_pairs: &[Ligament],
    own_metal: &[Option<f64>],
    form: &Form,
    amounts: Amounts,
) -> Vec<Fault> {
    let mut faults = Vec::new();
    let namer = Namer { holes, amounts };
    holes_with_holes(&namer, close_pairs, own_metal, &mut faults);
    for hole in &holes.holes {
        faults.extend(hole_with_lines(hole, &namer, form));
    }
    faults
}

/// Speaks of holes by number, purpose and place.
struct Namer<'a> {
    holes: &'a Numbered,
    amounts: Amounts,
}

impl Namer<'_> {
    fn purpose(&self, hole: &Hole) -> Purpose {
        self.holes.groups[hole.group].purpose
    }

    /// "tube T40 at (0, 6.484) in".
    fn name(&self, hole: &Hole) -> String {
        format!(
            "{} {} at {}",
            self.purpose(hole).name(),
            hole.id,
            self.amounts.place(hole.at)
        )
    }
}

/// Another hole near this one: its index and the clear metal between the two, below nothing where they overlap, mm.
#[derive(Clone, Copy)]
struct Neighbour {
    index: usize,
    metal: f64,
}

/// One fault for each hole that lies on earlier ones: first with the holes it overlaps, then with those it comes too near for
/// the pattern they stand in. Of a tube and a pipe it is the pipe that lies on the tube, since nests come first.
fn holes_with_holes(
    namer: &Namer,
    close_pairs: &[Ligament],
    own_metal: &[Option<f64>],
    faults: &mut Vec<Fault>,
) {
    let holes = &namer.holes.holes;
    let mut lying_on: BTreeMap<usize, Vec<Neighbour>> = BTreeMap::new();
    for pair in close_pairs {
        let (earlier, later) = pair.holes;
        let metal = pair.metal.to_mm();
        if metal < -SAME_LENGTH_MM {
            let index = earlier;
            lying_on
                .entry(later)
                .or_default()
                .push(Neighbour { index, metal });
        }
    }
    if lying_on.is_empty() {
        return;
    }
    let near = nearer_than_their_pattern(namer, close_pairs, own_metal);
    for (index, mut others) in lying_on {
        others.sort_by(|a, b| a.metal.total_cmp(&b.metal).then(a.index.cmp(&b.index)));
        let (twice, overlapped): (Vec<Neighbour>, Vec<Neighbour>) = others
            .into_iter()
            .partition(|n| is_same_hole(namer, &holes[index], &holes[n.index]));
        // Of several that it is written over, the nearest tells enough.
        for other in twice.into_iter().take(1) {
            let fault = written_twice(namer, &holes[index], &holes[other.index]);
            // Of two mirrored places the opposite hands are twice over as well; one fault tells of both.
            if !faults.iter().any(|told| is_of_same_keys(told, &fault)) {
                faults.push(fault);
            }
        }
        if !overlapped.is_empty() {
            let near = near.get(&index).cloned().unwrap_or_default();
            faults.push(lies_on(namer, index, &overlapped, near));
        }
    }
}

/// For each hole beside a regular nest, the holes of the nest to which it leaves less metal than they have between themselves.
fn nearer_than_their_pattern(
    namer: &Namer,
    close_pairs: &[Ligament],
    own_metal: &[Option<f64>],
) -> BTreeMap<usize, Vec<Neighbour>> {
    let holes = &namer.holes.holes;
    let mut near: BTreeMap<usize, Vec<Neighbour>> = BTreeMap::new();
    for pair in close_pairs {
        let (index, later) = pair.holes;
        let metal = pair.metal.to_mm();
        let of_another_group = holes[index].group != holes[later].group;
        let less = own_metal[holes[index].group]
            .is_some_and(|own| metal >= -SAME_LENGTH_MM && metal < own - SAME_LENGTH_MM);
        if of_another_group && less {
            near.entry(later)
                .or_default()
                .push(Neighbour { index, metal });
        }
    }
    near
}

/// Of the hole in the plate, which is the bush's outside where a bush is fitted, mm.
fn radius(hole: &Hole) -> f64 {
    hole.ligament_hole.to_mm() / 2.0
}

/// Two holes of one purpose, each with its centre well inside the other, are one hole that somebody wrote twice.
fn is_same_hole(namer: &Namer, a: &Hole, b: &Hole) -> bool {
    namer.purpose(a) == namer.purpose(b)
        && a.at.distance(b.at) <= radius(a).min(radius(b)) + SAME_LENGTH_MM
}

fn is_of_same_keys(a: &Fault, b: &Fault) -> bool {
    a.path == b.path && a.also == b.also
}

fn written_twice(namer: &Namer, later: &Hole, earlier: &Hole) -> Fault {
    let apart = later.at.distance(earlier.at);
    let how_near = if apart <= SAME_LENGTH_MM {
        "at one place".to_string()
    } else {
        format!("{} apart", namer.amounts.mm(apart))
    };
    Fault::new(
        &later.path,
        format!(
            "duplicate: {} and {} are the same hole written twice, {how_near}; the contractor would cut it twice",
            namer.name(earlier),
            namer.name(later)
        ),
        "take one of the two out",
    )
    .and(&earlier.path, "the same hole")
}

fn lies_on(
    namer: &Namer,
    index: usize,
    overlapped: &[Neighbour],
    mut near: Vec<Neighbour>,
) -> Fault {
    let holes = &namer.holes.holes;
    let hole = &holes[index];
    let each: Vec<String> = overlapped
        .iter()
        .map(|other| {
            format!(
                "{} by {}",
                namer.name(&holes[other.index]),
                namer.amounts.mm(-other.metal)
            )
        })
        .collect();
    let mut fact = format!("{} overlaps {}", namer.name(hole), listed(&each));
    near.sort_by(|a, b| a.metal.total_cmp(&b.metal).then(a.index.cmp(&b.index)));
    if !near.is_empty() {
        let each: Vec<String> = near
            .iter()
            .map(|other| {
                format!(
                    "{} to {}",
                    namer.amounts.mm(other.metal),
                    namer.name(&holes[other.index])
                )
            })
            .collect();
        fact.push_str(&format!("; it leaves only {}", listed(&each)));
    }
    let first = &holes[overlapped[0].index];
    let is_tube = namer.purpose(first).takes_a_tube() && first.group != hole.group;
    let remedy = if is_tube {
        let ids: Vec<String> = overlapped
            .iter()
            .map(|n| holes[n.index].id.clone())
            .collect();
        let these = if ids.len() == 1 { "this" } else { "these" };
        let plural = if ids.len() == 1 { "" } else { "s" };
        format!(
            "omit {these} {}{plural}, {}, by exception, or move the {}?",
            namer.purpose(first).name(),
            listed(&ids),
            namer.purpose(hole).name()
        )
    } else {
        "move one of them, or take it out".into()
    };
    let mut fault = Fault::new(&hole.path, fact, remedy);
    let mut paths: Vec<&str> = Vec::new();
    for other in overlapped {
        let there = &holes[other.index];
        if there.path != hole.path && !paths.contains(&there.path.as_str()) {
            paths.push(&there.path);
            fault = fault.and(
                &there.path,
                format!(
                    "where {} {} comes from",
                    namer.purpose(there).name(),
                    there.id
                ),
            );
        }
    }
    fault
}

/// "a", "a and b", "a, b and c".
fn listed(each: &[String]) -> String {
    match each {
        [] => String::new(),
        [one] => one.clone(),
        [rest @ .., last] => format!("{} and {last}", rest.join(", ")),
    }
}

/// The faults of one hole with the lines of the plate.
fn hole_with_lines(hole: &Hole, namer: &Namer, form: &Form) -> Vec<Fault> {
    let mut faults = Vec::new();
    if let Some(FlangeDesign::Fabricated(ring)) = &form.flange
        && let Some(fault) = hole_with_ring(hole, namer, ring)
    {
        faults.push(fault);
    }
    for (name, line) in &form.lines {
        let ends_plate = match name {
            NamedLine::Tangent | NamedLine::Edge => true,
            NamedLine::InnerWeldToe | NamedLine::OuterWeldToe => false,
        };
        let outside = radius(hole) - depth(line, hole.at);
        if ends_plate && outside > SAME_LENGTH_MM {
            faults.push(runs_over(hole, namer, *name, outside));
        }
    }
    faults
}

/// How far inside a line a place lies, mm; below nothing outside it.
fn depth(line: &Outline, at: Point) -> f64 {
    match line.as_circle() {
        Some((centre, radius)) => radius - at.distance(centre),
        None => line.depth(at),
    }
}

fn runs_over(hole: &Hole, namer: &Namer, line: NamedLine, outside: f64) -> Fault {
    let fact = if outside >= 2.0 * radius(hole) - SAME_LENGTH_MM {
        format!("{} stands outside the {}", namer.name(hole), line.name())
    } else {
        format!(
            "{} runs {} over the {}",
            namer.name(hole),
            namer.amounts.mm(outside),
            line.name()
        )
    };
    Fault::new(&hole.path, fact, "move it inwards, or take it out")
}

/// A hole on the ring or its welds; and a tube or flue outside the ring, where there is no water behind the plate.
fn hole_with_ring(hole: &Hole, namer: &Namer, ring: &Fabricated) -> Option<Fault> {
    let (inner, outer) = (ring.inner_toe_radius.to_mm(), ring.outer_toe_radius.to_mm());
    let from_centre = hole.at.radius();
    let over_inner = from_centre + radius(hole) - inner;
    let over_outer = outer - (from_centre - radius(hole));
    let is_tube = namer.purpose(hole).takes_a_tube();
    if over_inner <= SAME_LENGTH_MM || (over_outer <= SAME_LENGTH_MM && !is_tube) {
        return None;
    }
    let fact = if over_outer <= SAME_LENGTH_MM {
        format!("{} stands outside the ring", namer.name(hole))
    } else if over_inner <= over_outer {
        return Some(runs_over(hole, namer, NamedLine::InnerWeldToe, over_inner));
    } else {
        return Some(
            runs_over(hole, namer, NamedLine::OuterWeldToe, over_outer)
                .and("flange.fabricated", "the ring and its welds"),
        );
    };
    Some(
        Fault::new(&hole.path, fact, "move it inside the ring, or take it out")
            .and("flange.fabricated", "the ring"),
    )
}
