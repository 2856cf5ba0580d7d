//! `asmade`: a filled-in record read back; what was made otherwise than designed, and every check run again on the plate as it is.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use serde_json::{Value, json};

use super::check;
use super::verdict_changes::{VerdictChange, verdict_changes};
use super::wrapped::wrapped;
use super::{Outcome, Refused, Said, Status, read_and_set_out};
use crate::checks::measure::Unit;
use crate::checks::{Finding, run_checks};
use crate::design::{Design, HoleMade, as_made, number_runs};
use crate::pack::{FilledRecord, Gate, RecordFault, RivetHoleMade, read_record};
use crate::spec::Spec;
use crate::units::Length;

/// Reads the record of a plate, and says what came of it; as JSON for machines, else in words for a screen of this width.
pub fn asmade(spec_file: &Path, record_file: &Path, json: bool, width: usize) -> Outcome {
    let (spec, design) = read_and_set_out(spec_file)?;
    let record = read_filled(record_file, &spec, &design)?;
    let made = as_made(&spec.written, &design, &record.holes);
    let as_designed = as_made(&spec.written, &design, &[]);
    let spec = cut_and_done(spec);
    let findings = run_checks(&spec, &made);
    let report = Report {
        changed: verdict_changes(&run_checks(&spec, &as_designed), &findings),
        spec: &spec,
        design: &design,
        made: &made,
        record: &record,
        findings: &findings,
    };
    let words = match json {
        true => report.as_json(),
        false => report.on_screen(width),
    };
    let status = match Gate::of(&findings) {
        Gate::Open => Status::Done,
        Gate::Shut(_) => Status::Below,
    };
    Ok(Said { words, status })
}

/// The spec of a plate that has been made: what a contractor may cut of it is asked no more.
fn cut_and_done(mut spec: Spec) -> Spec {
    spec.written.cutting = None;
    spec
}

fn read_filled(file: &Path, spec: &Spec, design: &Design) -> Result<FilledRecord, Refused> {
    let name = file.display();
    let text = no_more_than_a_record(file).map_err(|cause| Refused {
        report: format!(
            "refused: {name}: the record cannot be read: {cause}\n   = remedy: give record/inspection.csv of the plate's pack, filled in and saved as CSV in UTF-8"
        ),
    })?;
    read_record(&text, spec, design).map_err(|faults| Refused {
        report: faults
            .iter()
            .map(|fault| in_words(&name.to_string(), fault))
            .collect(),
    })
}

/// Larger than this no record is: a hundred thousand holes with a remark each come to 15 MB.
const MOST_BYTES: u64 = 32 << 20;

/// The words of a file, or why they cannot be had; of what never ends, no more is read than it takes to tell.
fn no_more_than_a_record(file: &Path) -> io::Result<String> {
    let mut bytes = Vec::new();
    File::open(file)?
        .take(MOST_BYTES + 1)
        .read_to_end(&mut bytes)?;
    let cannot = |why: &str| Err(io::Error::new(io::ErrorKind::InvalidData, why));
    if bytes.len() as u64 > MOST_BYTES {
        return cannot("it is larger than 32 MB, and no record is");
    }
    match String::from_utf8(bytes) {
        Ok(text) => Ok(text),
        Err(_) => cannot("it is not text in UTF-8"),
    }
}

fn in_words(file: &str, fault: &RecordFault) -> String {
    let column = match fault.column.as_str() {
        "" => String::new(),
        column => format!(", {column}"),
    };
    format!(
        "refused: {file}, line {}{column}: {}\n   = remedy: {}\n",
        fault.line, fault.fact, fault.remedy
    )
}

struct Report<'a> {
    spec: &'a Spec,
    design: &'a Design,
    made: &'a Design,
    record: &'a FilledRecord,
    findings: &'a [Finding],
    changed: Vec<VerdictChange>,
}

impl Report<'_> {
    fn on_screen(&self, width: usize) -> String {
        let mut text = wrapped("", &self.heading(), width);
        for line in self.recorded() {
            text.push_str(&wrapped("", &line, width));
        }
        self.section(
            &mut text,
            "Made otherwise than designed",
            self.differences(),
            width,
        );
        let changed = self.changed.iter().map(VerdictChange::words).collect();
        self.section(
            &mut text,
            "Verdicts that the making changed",
            changed,
            width,
        );
        text.push_str("\nThe plate as it was made\n");
        text.push_str(&check::on_screen(
            self.spec,
            self.made,
            self.findings,
            width,
        ));
        text
    }

    fn section(&self, text: &mut String, heading: &str, lines: Vec<String>, width: usize) {
        text.push_str(&format!("\n{heading}\n"));
        if lines.is_empty() {
            text.push_str("  none\n");
        }
        for line in lines {
            text.push_str(&wrapped("  ", &line, width));
        }
    }

    fn heading(&self) -> String {
        let job = &self.spec.written.job;
        let said = |what: &str, word: &str| match word {
            "" => format!("no {what} named"),
            word => format!("{what} {word}"),
        };
        format!(
            "{} {}, as made: {}, {}. Signatures and acceptance are people's.",
            job.drawing,
            job.revision,
            said("instrument", &self.record.instrument),
            said("witness", &self.record.witness)
        )
    }

    /// How much of the record is filled in, and what that leaves open.
    fn recorded(&self) -> Vec<String> {
        let all = self.design.holes.len();
        let record = self.record;
        let mut lines = vec![format!(
            "Recorded: {} of {all} holes in the flat, {} of {} rivet holes.",
            record.holes.len(),
            record.rivets.len(),
            record.rivets.len() + record.rivets_blank
        )];
        if !record.blank.is_empty() {
            let ids = record.blank.iter().map(|&hole| &self.design.holes[hole].id);
            let named: Vec<&str> = ids.map(String::as_str).collect();
            lines.push(format!(
                "Not recorded, and taken below as designed: {}.",
                number_runs(&named)
            ));
        }
        if record.fingerprint.is_empty() {
            lines.push(format!(
                "The record does not say for which spec it was printed, and this is {}: every printed figure in it agrees with this one.",
                self.spec.short_fingerprint()
            ));
        } else if record.fingerprint != self.spec.short_fingerprint() {
            lines.push(format!(
                "The record was printed for spec {}, and this is {}: every printed figure in it agrees with this one.",
                record.fingerprint,
                self.spec.short_fingerprint()
            ));
        }
        if !record.more_columns.is_empty() {
            lines.push(format!(
                "Not read: the columns {}.",
                record.more_columns.join(", ")
            ));
        }
        if !record.rivets.is_empty() {
            lines.push(
                "The riveted joint is compared at the designed hole; rivet holes made otherwise are listed."
                    .into(),
            );
        }
        lines
    }

    fn unit(&self) -> Unit {
        Unit::of_job(&self.spec.written)
    }

    /// Holes that are not what was designed, as far as the job's unit shows it, or of which something was remarked.
    fn differences(&self) -> Vec<String> {
        let unit = self.unit();
        let shows = |length: Length| unit.text(length.abs()) != unit.text(Length::ZERO);
        let signed = |length: Length| {
            let sign = match length {
                _ if !shows(length) => "",
                _ if length < Length::ZERO => "−",
                _ => "+",
            };
            format!("{sign}{}", unit.text(length.abs()))
        };
        let mut lines = Vec::new();
        for measured in &self.record.holes {
            let hole = &self.design.holes[measured.hole];
            let mut words = Vec::new();
            let over = measured.over(self.design);
            if shows(over) {
                words.push(format!(
                    "{} for {}, {}",
                    measured.larger(),
                    hole.finish,
                    signed(over)
                ));
            }
            if let Some(oval) = measured.oval_by().filter(|oval| shows(*oval)) {
                words.push(format!("oval by {}", unit.text(oval)));
            }
            if let Some(off) = measured.off(self.design) {
                let (x, y) = (Length::mm(off.x), Length::mm(off.y));
                if shows(Length::mm(off.radius())) {
                    words.push(format!(
                        "off its place by {}: x {}, y {}",
                        unit.text(Length::mm(off.radius())),
                        signed(x),
                        signed(y)
                    ));
                }
            }
            words.extend(self.remark(&hole.id));
            if !words.is_empty() {
                let name = &self.design.groups[hole.group].name;
                lines.push(format!("{} ({name}): {}", hole.id, words.join("; ")));
            }
        }
        let rivet = |rivet: &RivetHoleMade| {
            let over = rivet.made.value() - rivet.designed.value();
            let mut words = Vec::new();
            if shows(over) {
                words.push(format!(
                    "{} for {}, {}",
                    rivet.made,
                    rivet.designed,
                    signed(over)
                ));
            }
            words.extend(self.remark(&rivet.id));
            (!words.is_empty()).then(|| format!("{} (rivet hole): {}", rivet.id, words.join("; ")))
        };
        lines.extend(self.record.rivets.iter().filter_map(rivet));
        lines
    }

    fn remark(&self, id: &str) -> Option<String> {
        let remark = self.record.remarks.get(id)?;
        Some(format!("remarked: {remark}"))
    }

    fn as_json(&self) -> String {
        let hole = |measured: &HoleMade| -> Value {
            let hole = &self.design.holes[measured.hole];
            let off = measured.off(self.design);
            json!({
                "id": hole.id,
                "group": self.design.groups[hole.group].name,
                "designed_mm": hole.finish.value().to_mm(),
                "made_first_way_mm": measured.first_way.value().to_mm(),
                "made_across_it_mm": measured.across.as_ref().map(|size| size.value().to_mm()),
                "over_mm": measured.over(self.design).to_mm(),
                "oval_by_mm": measured.oval_by().map(Length::to_mm),
                "off_x_mm": off.map(|off| off.x),
                "off_y_mm": off.map(|off| off.y),
                "remarks": self.record.remarks.get(&hole.id),
            })
        };
        let rivet = |rivet: &RivetHoleMade| -> Value {
            json!({
                "id": rivet.id,
                "designed_mm": rivet.designed.value().to_mm(),
                "made_mm": rivet.made.value().to_mm(),
                "remarks": self.record.remarks.get(&rivet.id),
            })
        };
        let blank = self.record.blank.iter();
        let blank: Vec<&str> = blank
            .map(|&hole| self.design.holes[hole].id.as_str())
            .collect();
        let checked: Value = serde_json::from_str(&check::as_json(self.spec, self.findings))
            .expect("a report of findings is JSON");
        let report = json!({
            "version": env!("CARGO_PKG_VERSION"),
            "drawing": self.spec.written.job.drawing,
            "revision": self.spec.written.job.revision,
            "fingerprint": self.spec.fingerprint,
            "record_fingerprint": self.record.fingerprint,
            "instrument": self.record.instrument,
            "witness": self.record.witness,
            "holes": self.record.holes.iter().map(hole).collect::<Vec<_>>(),
            "not_recorded": blank,
            "rivets": self.record.rivets.iter().map(rivet).collect::<Vec<_>>(),
            "rivets_not_recorded": self.record.rivets_blank,
            "verdicts_changed": self.changed,
            "findings": checked["findings"],
        });
        let mut text = serde_json::to_string_pretty(&report).expect("a report is plain JSON");
        text.push('\n');
        text
    }
}
