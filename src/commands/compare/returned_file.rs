//! A cut file against the spec: what differs, by the numbers of the holes.

use std::path::Path;

use serde::Serialize;

use super::super::wrapped::wrapped;
use super::super::{Outcome, Refused, Said, Status, read_and_set_out};
use super::Asked;
use crate::cut::{Comparison, Deviation, compare_returned, cut_parts};
use crate::spec::{Spec, ViewFrom};
use crate::units::Length;
use crate::units::print::trimmed;

/// Compares a cut file with the parts that a spec cuts.
pub(super) fn compare(spec_file: &Path, file: &Path, within: Length, asked: Asked<'_>) -> Outcome {
    let (spec, design) = read_and_set_out(spec_file)?;
    let parts = cut_parts(&spec, &design).map_err(|faults| spec.refuse(faults))?;
    let name = file.display().to_string();
    let bytes = std::fs::read(file).map_err(|cause| Refused {
        report: format!("refused: {name}: the file cannot be read: {cause}\n   = remedy: give the path of a cut file, a DXF"),
    })?;
    let compared = compare_returned(&bytes, &parts, asked.part, within);
    let comparison = compared.map_err(|why| Refused {
        report: format!("refused: {name}: {why}"),
    })?;
    let words = match asked.json {
        true => as_json(&spec, &name, &comparison),
        false => on_screen(&spec, &name, &comparison, asked.width),
    };
    let status = match comparison.differences.is_empty() {
        true => Status::Done,
        false => Status::Differs,
    };
    Ok(Said { words, status })
}

fn on_screen(spec: &Spec, file: &str, comparison: &Comparison, width: usize) -> String {
    let mut text = wrapped("", &heading(spec, file, comparison), width);
    text.push('\n');
    if comparison.differences.is_empty() {
        text.push_str("No difference.\n");
    } else {
        text.push_str(&match comparison.differences.len() {
            1 => "1 difference\n".to_string(),
            many => format!("{many} differences\n"),
        });
        for difference in &comparison.differences {
            let kind = format!("  {:<10}", difference.kind.name());
            text.push_str(&wrapped(&kind, &difference.to_string(), width));
        }
    }
    if !comparison.notes.is_empty() {
        text.push_str("\nNotes\n");
        for note in &comparison.notes {
            text.push_str(&wrapped("  ", note, width));
        }
    }
    text.push('\n');
    text.push_str(&wrapped("", &found(spec, comparison), width));
    text
}

fn heading(spec: &Spec, file: &str, comparison: &Comparison) -> String {
    let job = &spec.written.job;
    let chosen = match comparison.part_chosen {
        true => ", which it is most like",
        false => "",
    };
    format!(
        "{file}, compared with the {} of {} {}, spec {}{chosen}. Places nearer than {} mm are one.",
        comparison.part,
        job.drawing,
        job.revision,
        spec.short_fingerprint(),
        trimmed(comparison.within_mm, 6)
    )
}

fn found(spec: &Spec, comparison: &Comparison) -> String {
    let counts = comparison.as_wanted.iter().filter(|(_, (_, all))| *all > 0);
    let counts: Vec<String> = counts
        .map(|(what, (found, all))| format!("{found} of {all} {what}"))
        .collect();
    let side = match spec.written.plate.view_from {
        ViewFrom::Smokebox => "smokebox",
        ViewFrom::Firebox => "firebox",
    };
    let axes = match comparison.part.as_str() {
        "ring" => "x along the strip from its left end, y up".to_string(),
        _ => format!("x to the right and y upwards from the barrel centre, seen from the {side}"),
    };
    format!(
        "As they should be: {}. Places are on the part: {axes}.",
        counts.join(", ")
    )
}

#[derive(Serialize)]
struct Report<'a> {
    version: &'static str,
    fingerprint: &'a str,
    drawing: &'a str,
    revision: &'a str,
    file: &'a str,
    part: &'a str,
    part_chosen: bool,
    within_mm: f64,
    differences: Vec<Told<'a>>,
    notes: &'a [String],
    as_wanted: Vec<Count>,
}

#[derive(Serialize)]
struct Told<'a> {
    kind: &'static str,
    what: &'a str,
    at_mm: Option<[f64; 2]>,
    by: Option<f64>,
    fact: &'a str,
}

#[derive(Serialize)]
struct Count {
    what: &'static str,
    found: usize,
    of: usize,
}

fn told(deviation: &Deviation) -> Told<'_> {
    Told {
        kind: deviation.kind.name(),
        what: &deviation.what,
        at_mm: deviation.at.map(|at| [at.x, at.y]),
        by: deviation.by,
        fact: &deviation.fact,
    }
}

fn as_json(spec: &Spec, file: &str, comparison: &Comparison) -> String {
    let counts = comparison.as_wanted.iter();
    let report = Report {
        version: env!("CARGO_PKG_VERSION"),
        fingerprint: &spec.fingerprint,
        drawing: &spec.written.job.drawing,
        revision: &spec.written.job.revision,
        file,
        part: &comparison.part,
        part_chosen: comparison.part_chosen,
        within_mm: comparison.within_mm,
        differences: comparison.differences.iter().map(told).collect(),
        notes: &comparison.notes,
        as_wanted: counts
            .map(|(what, (found, of))| Count {
                what,
                found: *found,
                of: *of,
            })
            .collect(),
    };
    let mut text = serde_json::to_string_pretty(&report).expect("a comparison is plain JSON");
    text.push('\n');
    text
}
