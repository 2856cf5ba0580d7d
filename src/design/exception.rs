//! Holes that depart from their pattern: left out, moved, opened to another size, or added, each with its reason.

use super::Point;
use super::amount::{Amounts, point};
use super::nest::ligament_hole;
use super::numbering::{PlacedGroup, PlacedHole};
use crate::spec::{At, Exception, Fault, Nest};
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

/// What one exception does.
enum Departure<'a> {
    Omit(&'a At),
    Move(&'a At, &'a At),
    Resize(&'a At, &'a Size),
    Add(&'a At, &'a Size),
}

/// Makes the exceptions of a nest, every one on the pattern as it was filled.
pub(super) fn make_exceptions(
    nest: &Nest,
    nest_path: &str,
    placed: &mut PlacedGroup,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) {
    let as_filled: Vec<(Point, Length)> = placed
        .holes
        .iter()
        .map(|hole| (hole.at, hole.finish.value()))
        .collect();
    let mut made_by: Vec<Option<usize>> = vec![None; as_filled.len()];
    for (number, exception) in nest.exceptions.iter().enumerate() {
        let path = format!("{nest_path}.exceptions[{number}]");
        let departure = match departure(exception, nest, &path) {
            Ok(departure) => departure,
            Err(fault) => {
                faults.push(fault);
                continue;
            }
        };
        refuse_stages_too_large(&departure, placed, &path, faults);
        let Some(named) = departure.hole_named() else {
            if let Departure::Add(at, size) = departure {
                placed.holes.push(added(nest, exception, path, at, size));
            }
            continue;
        };
        match hole_at(&as_filled, named) {
            Ok(index) if made_by[index].is_some() => {
                let before = made_by[index].expect("looked at in the guard");
                faults.push(
                    Fault::new(
                        path,
                        format!(
                            "the hole at {} is already an exception",
                            amounts.place(as_filled[index].0)
                        ),
                        "make one exception of the two",
                    )
                    .and(
                        format!("{nest_path}.exceptions[{before}]"),
                        "the other exception",
                    ),
                );
            }
            Ok(index) => {
                made_by[index] = Some(number);
                depart(&mut placed.holes[index], departure, nest, exception, path);
            }
            Err(nearest) => faults.push(no_hole_there(
                &placed.group.name,
                path,
                named,
                nearest,
                amounts,
            )),
        }
    }
    take_out_omitted(nest, placed, &made_by);
}

impl Departure<'_> {
    /// The place of the hole of the pattern that it concerns; none for a hole added.
    fn hole_named(&self) -> Option<Point> {
        match self {
            Departure::Omit(at) | Departure::Move(at, _) | Departure::Resize(at, _) => {
                Some(point(at))
            }
            Departure::Add(..) => None,
        }
    }
}

/// Which of the four it is.
fn departure<'a>(
    exception: &'a Exception,
    nest: &'a Nest,
    path: &str,
) -> Result<Departure<'a>, Fault> {
    match (
        &exception.omit,
        &exception.shift,
        &exception.resize,
        &exception.add,
    ) {
        (Some(at), None, None, None) => Ok(Departure::Omit(at)),
        (None, Some(from), None, None) => match &exception.to {
            Some(to) => Ok(Departure::Move(from, to)),
            None => Err(Fault::new(
                path,
                "a hole is to be moved, and nothing says where to",
                "write `to` with its new place",
            )),
        },
        (None, None, Some(at), None) => match &exception.hole {
            Some(size) => Ok(Departure::Resize(at, size)),
            None => Err(Fault::new(
                path,
                "a hole is to have another size, and nothing says which",
                "write `hole` with its finished size",
            )),
        },
        (None, None, None, Some(at)) => Ok(Departure::Add(
            at,
            exception.hole.as_ref().unwrap_or(&nest.hole),
        )),
        _ => Err(Fault::new(
            path,
            "an exception does exactly one thing to one hole",
            "write one of omit, move, resize and add",
        )),
    }
}

/// A hole of its own size goes through its nest's stages; one of them larger than it would leave no metal to finish.
fn refuse_stages_too_large(
    departure: &Departure,
    placed: &PlacedGroup,
    path: &str,
    faults: &mut Vec<Fault>,
) {
    let (Departure::Resize(_, finish) | Departure::Add(_, finish)) = departure else {
        return;
    };
    let [stages @ .., _] = &placed.group.stages[..] else {
        return;
    };
    let too_large = stages.iter().find_map(|stage| {
        let size = stage.size.as_ref()?;
        (finish.value().shortfall(size.value()).is_some()).then_some((stage, size))
    });
    if let Some((stage, size)) = too_large {
        faults.push(
            Fault::new(
                path,
                format!(
                    "the hole is to be {finish}, and {} makes every hole of its nest {size} before",
                    stage.name
                ),
                "list this hole as a nest or a set of its own, with its own stages",
            )
            .and(format!("{}.stages", placed.group.path), "the stages"),
        );
    }
}

/// The hole that a written place means: the nearest, if the place lies on it; else the nearest place and how far it is.
fn hole_at(holes: &[(Point, Length)], place: Point) -> Result<usize, Option<(Point, f64)>> {
    let nearest = holes
        .iter()
        .enumerate()
        .map(|(index, &(at, finish))| (index, at, finish, at.distance(place)))
        .min_by(|a, b| a.3.total_cmp(&b.3));
    match nearest {
        Some((index, _, finish, away)) if away <= finish.to_mm() / 2.0 + SAME_LENGTH_MM => {
            Ok(index)
        }
        Some((_, at, _, away)) => Err(Some((at, away))),
        None => Err(None),
    }
}

fn no_hole_there(
    nest: &str,
    path: String,
    place: Point,
    nearest: Option<(Point, f64)>,
    amounts: Amounts,
) -> Fault {
    let fact = format!("no hole of {nest} stands at {}", amounts.place(place));
    match nearest {
        Some((at, away)) => Fault::new(
            path,
            format!(
                "{fact}; the nearest is at {}, {} away",
                amounts.place(at),
                amounts.mm(away)
            ),
            "write the place of a hole that the pattern has, within half its diameter",
        ),
        None => Fault::new(
            path,
            format!("{fact}, nor anywhere else"),
            "look again at the pattern and at `within`",
        ),
    }
}

fn added(nest: &Nest, exception: &Exception, path: String, at: &At, size: &Size) -> PlacedHole {
    PlacedHole {
        at: point(at),
        finish: size.clone(),
        ligament_hole: ligament_hole(nest, size.value()),
        exception: Some(exception.reason.clone()),
        path,
        line: None,
    }
}

fn depart(
    hole: &mut PlacedHole,
    departure: Departure,
    nest: &Nest,
    exception: &Exception,
    path: String,
) {
    hole.exception = Some(exception.reason.clone());
    hole.path = path;
    match departure {
        Departure::Move(_, to) => {
            hole.at = point(to);
            // Off its line, it would falsify the line's first, last and even spacing.
            hole.line = None;
        }
        Departure::Resize(_, size) => {
            hole.finish = size.clone();
            hole.ligament_hole = ligament_hole(nest, size.value());
        }
        Departure::Omit(_) | Departure::Add(..) => {}
    }
}

fn take_out_omitted(nest: &Nest, placed: &mut PlacedGroup, made_by: &[Option<usize>]) {
    let is_omitted = |index: usize| {
        made_by
            .get(index)
            .copied()
            .flatten()
            .is_some_and(|number| nest.exceptions[number].omit.is_some())
    };
    let mut kept = Vec::with_capacity(placed.holes.len());
    for (index, hole) in placed.holes.drain(..).enumerate() {
        if is_omitted(index) {
            placed
                .omitted
                .push((hole.at, hole.exception.unwrap_or_default()));
        } else {
            kept.push(hole);
        }
    }
    placed.holes = kept;
}
