//! Thickness readings in their places: what is required there, what covers them, and the nearest weld and edge.
//!
//! Nothing is interpolated between readings: each speaks of its own place alone.

use super::amount::point;
use super::repair::{LeftBy, Repair, RepairWork, Site, distance, end_of_flat};
use super::{Outline, Point};
use crate::spec::{Fault, ReadingSpec, RequiredThickness, Survey, ViewFrom};
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

/// A thickness reading in its place.
#[derive(Clone, Debug)]
pub struct Reading {
    /// Its number: its place in the spec's list, from 1.
    pub number: usize,
    /// Where.
    pub at: Point,
    /// Thickness read.
    pub thickness: Size,
    /// Side of the plate on which the instrument stood, where that is told.
    pub face: Option<ViewFrom>,
    /// What it was taken with.
    pub instrument: String,
    /// Index into `survey.required` of the region that holds it; none where none does.
    pub region: Option<usize>,
    /// Thickness required there.
    pub required: Option<Size>,
    /// By how much it is below what is required.
    pub short: Option<Length>,
    /// The repair whose new metal takes its place.
    pub covered: Option<Covered>,
    /// The nearest weld: index into [`super::Design::repairs`] and how far from it the place lies.
    pub nearest_weld: Option<(usize, Length)>,
    /// To the line at which the flat ends; below nothing beyond it, as on the heel.
    pub to_end_of_flat: Option<Length>,
}

/// What covers a reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Covered {
    /// Index into [`super::Design::repairs`].
    pub repair: usize,
    /// How far inside the edge of the new metal the place lies.
    pub inside: Length,
}

impl Reading {
    /// Whether it is below what is required and nothing covers it.
    pub fn is_left_low(&self) -> bool {
        self.short.is_some() && self.covered.is_none()
    }
}

/// Places the readings, and gives each built-up area its least one where the spec does not say what metal is left in it.
pub(super) fn place_readings(
    site: &Site<'_>,
    repairs: &mut [Repair],
    faults: &mut Vec<Fault>,
) -> Vec<Reading> {
    let Some(survey) = &site.written.survey else {
        return Vec::new();
    };
    let mut readings = Vec::new();
    for (index, written) in survey.readings.iter().enumerate() {
        match misplaced(site, written, &format!("survey.readings[{index}].at")) {
            Some(fault) => faults.push(*fault),
            None => readings.push(placed(site, survey, (index + 1, written), repairs)),
        }
    }
    for repair in repairs {
        least_left(repair, &readings);
    }
    readings
}

fn misplaced(site: &Site<'_>, written: &ReadingSpec, path: &str) -> Option<Box<Fault>> {
    let at = point(&written.at);
    let off = -site.form.edge.depth(at);
    if off > SAME_LENGTH_MM {
        let fact = format!(
            "a reading at {} stands {} off the plate",
            site.amounts.place(at),
            site.amounts.mm(off)
        );
        let remedy = "look again at the place: x right and y up from the barrel centre";
        return Some(Box::new(Fault::new(path, fact, remedy)));
    }
    let holes = site.numbered.holes.iter();
    let into = |hole: &super::Hole| hole.finish.value().to_mm() / 2.0 - hole.at.distance(at);
    let hole = holes
        .filter(|hole| into(hole) > SAME_LENGTH_MM)
        .min_by(|a, b| into(b).total_cmp(&into(a)))?;
    let fact = format!(
        "a reading at {} stands in {} {}, where there is no metal",
        site.amounts.place(at),
        site.numbered.groups[hole.group].purpose.name(),
        hole.id
    );
    let fault = Fault::new(path, fact, "look again at the place of the reading");
    Some(Box::new(fault.and(&hole.path, "the hole")))
}

fn placed(
    site: &Site<'_>,
    survey: &Survey,
    (number, written): (usize, &ReadingSpec),
    repairs: &[Repair],
) -> Reading {
    let at = point(&written.at);
    let region = survey.required.iter().position(|region| holds(region, at));
    let required = region.map(|region| survey.required[region].thickness.clone());
    let read = written.thickness.value();
    let welds = repairs
        .iter()
        .enumerate()
        .filter(|(_, repair)| !repair.weld.is_empty());
    Reading {
        number,
        at,
        short: required
            .as_ref()
            .and_then(|required| read.shortfall(required.value())),
        thickness: written.thickness.clone(),
        face: written.face.or(survey.face),
        instrument: written
            .instrument
            .clone()
            .unwrap_or_else(|| survey.instrument.clone()),
        region,
        required,
        covered: covered(repairs, at),
        nearest_weld: welds
            .map(|(index, repair)| (index, Length::mm(distance(&repair.weld, at))))
            .min_by(|a, b| a.1.total_cmp(&b.1)),
        to_end_of_flat: end_of_flat(site.form).map(|(_, line)| Length::mm(line.depth(at))),
    }
}

/// Whether a region holds a place; its sides are its own.
fn holds(region: &RequiredThickness, at: Point) -> bool {
    let (Some(from), Some(to)) = (&region.from, &region.to) else {
        return true;
    };
    let (a, b) = (point(from), point(to));
    let between = |low: f64, high: f64, value: f64| {
        value >= low.min(high) - SAME_LENGTH_MM && value <= low.max(high) + SAME_LENGTH_MM
    };
    between(a.x, b.x, at.x) && between(a.y, b.y, at.y)
}

/// The repair whose new metal holds a place, the place on its very edge not counted: a weld is no new metal there yet.
fn covered(repairs: &[Repair], at: Point) -> Option<Covered> {
    let inside = |renews: &Outline| renews.depth(at);
    repairs.iter().enumerate().find_map(|(repair, one)| {
        let depth = inside(one.renews.as_ref()?);
        (depth > SAME_LENGTH_MM).then_some(Covered {
            repair,
            inside: Length::mm(depth),
        })
    })
}

/// The least reading in a built-up area, where the spec does not say what is left.
fn least_left(repair: &mut Repair, readings: &[Reading]) {
    let RepairWork::BuildUp { left, .. } = &mut repair.work else {
        return;
    };
    let (None, Some(area)) = (&left, &repair.renews) else {
        return;
    };
    let inside = readings
        .iter()
        .filter(|r| area.depth(r.at) >= -SAME_LENGTH_MM);
    let least = inside.min_by(|a, b| a.thickness.value().total_cmp(&b.thickness.value()));
    *left = least.map(|r| (r.thickness.value(), LeftBy::Reading(r.number)));
}
