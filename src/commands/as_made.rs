//! `asmade`: a filled-in record read back; what was made otherwise than designed, and every check run again on the plate as it is.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use serde_json::{Value, json};

use super::check;
use super::wrapped::wrapped;
use super::{Outcome, Refused, Said, Status, read_and_set_out};
use crate::checks::measure::Unit;
use crate::checks::{CheckedAgain, VerdictChange, check_again, effects};
use crate::design::{
    Design, Deviation, FilledRecord, HoleMade, RivetHoleMade, deviations, number_runs,
};
use crate::pack::{self, Gate, RecordFault, Written, read_record};
use crate::sheets::{AsMade, draw_as_made, faults_of_lettering, faults_of_paper, unlettered};
use crate::spec::Spec;
use crate::units::Length;

/// What is asked beside spec and record.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// Folder in which the folder of the plate as made is written; nothing is written where none is named.
    pub out: Option<&'a Path>,
    /// Whether it is for machines.
    pub json: bool,
    /// Characters in a line of the screen.
    pub width: usize,
}

/// Reads the record of a plate, and says what came of it; as JSON for machines, else in words for a screen. Where a folder is named,
/// sheets, table and results of the plate as made are written there as well.
pub fn asmade(spec_file: &Path, record_file: &Path, asked: Asked<'_>) -> Outcome {
    let (spec, design) = read_and_set_out(spec_file)?;
    let (text, record) = read_filled(record_file, &spec, &design)?;
    let spec = cut_and_done(spec);
    let checked = check_again(&spec, &design, &record);
    let report = Report {
        spec: &spec,
        design: &design,
        record: &record,
        checked: &checked,
    };
    let written = match asked.out {
        Some(out) => Some(report.write(out, record_file, &text)?),
        None => None,
    };
    let words = match (asked.json, written) {
        (true, _) => report.as_json(),
        (false, None) => report.on_screen(asked.width),
        (false, Some((written, paths))) => {
            format!(
                "{}\n{}",
                what_was_written(&written, &paths),
                report.on_screen(asked.width)
            )
        }
    };
    let status = match Gate::of(&checked.findings) {
        Gate::Open => Status::Done,
        Gate::Shut(_) => Status::Below,
    };
    Ok(Said { words, status })
}

fn what_was_written(written: &Written, paths: &[String]) -> String {
    let mut words = format!("{}\n", written.folder.display());
    for path in paths {
        words.push_str(&format!("  {path}\n"));
    }
    words.push_str(&written.left_over());
    words
}

/// The spec of a plate that has been made: what a contractor may cut of it is asked no more.
fn cut_and_done(mut spec: Spec) -> Spec {
    spec.written.cutting = None;
    spec
}

/// The record's text as it was read, and what it says.
fn read_filled(
    file: &Path,
    spec: &Spec,
    design: &Design,
) -> Result<(String, FilledRecord), Refused> {
    let name = file.display();
    let text = no_more_than_a_record(file).map_err(|cause| Refused {
        report: format!(
            "refused: {name}: the record cannot be read: {cause}\n   = remedy: give record/inspection.csv of the plate's pack, filled in and saved as CSV in UTF-8"
        ),
    })?;
    match read_record(&text, spec, design) {
        Ok(record) => Ok((text, record)),
        Err(faults) => Err(Refused {
            report: faults
                .iter()
                .map(|fault| in_words(&name.to_string(), fault))
                .collect(),
        }),
    }
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
    record: &'a FilledRecord,
    checked: &'a CheckedAgain,
}

impl Report<'_> {
    /// Writes the folder of the plate as made, and tells which files are in it.
    fn write(
        &self,
        out: &Path,
        record_file: &Path,
        as_read: &str,
    ) -> Result<(Written, Vec<String>), Refused> {
        let faults = faults_of_lettering(self.spec);
        if !faults.is_empty() {
            return Err(self.spec.refuse(faults).into());
        }
        self.refuse_what_cannot_be_lettered(record_file)?;
        let made = AsMade {
            designed: self.design,
            record: self.record,
            deviations: self.deviations(),
            effects: effects(self.spec, self.design, self.record, self.checked),
            changed: &self.checked.changed,
        };
        let (plate, findings) = (&self.checked.plate, &self.checked.findings);
        let sheets = draw_as_made(self.spec, plate, findings, &made);
        let unfit = faults_of_paper(self.spec, plate, &sheets);
        if !unfit.is_empty() {
            return Err(self.spec.refuse(unfit).into());
        }
        let files = pack::as_made_files(self.spec, &made, self.checked, &sheets, as_read)?;
        let written = pack::write_whole(out, &pack::as_made_folder_name(self.spec), &files)?;
        let mut paths: Vec<String> = files.into_iter().map(|file| file.path).collect();
        paths.sort();
        Ok((written, paths))
    }

    /// Words of the record stand on sheets, which have not every letter there is.
    fn refuse_what_cannot_be_lettered(&self, record_file: &Path) -> Result<(), Refused> {
        let record = self.record;
        let remarks = record.remarks.iter();
        let remarks = remarks.map(|(id, words)| (format!("remarks of {id}"), words));
        let head = [
            ("fingerprint", &record.fingerprint),
            ("instrument", &record.instrument),
            ("witness", &record.witness),
        ];
        let head = head.map(|(name, words)| (name.to_string(), words));
        let faults: String = head
            .into_iter()
            .chain(remarks)
            .filter_map(|(place, words)| {
                // Lines of a cell go on one line of a sheet.
                let one_line: Vec<&str> = words.split_whitespace().collect();
                let letter = unlettered(&one_line.join(" "))?;
                Some(format!(
                    "refused: {}, {place}: the sheets have no letter for {letter:?}\n   = remedy: write it with letters of western Europe, figures and common signs, or leave `--out` away\n",
                    record_file.display()
                ))
            })
            .collect();
        match faults.is_empty() {
            true => Ok(()),
            false => Err(Refused { report: faults }),
        }
    }

    fn deviations(&self) -> Vec<Deviation<'_>> {
        let unit = self.unit();
        deviations(self.design, self.record, |length| unit.shows(length))
    }

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
        let changed = self
            .checked
            .changed
            .iter()
            .map(VerdictChange::words)
            .collect();
        self.section(
            &mut text,
            "Verdicts that the making changed",
            changed,
            width,
        );
        text.push_str("\nThe plate as it was made\n");
        text.push_str(&check::on_screen(
            self.spec,
            &self.checked.plate,
            &self.checked.findings,
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
        let of_one = |deviation: &Deviation<'_>| {
            let mut words = Vec::new();
            match (deviation.made, deviation.over) {
                (Some(made), Some(over)) => words.push(format!(
                    "{made} for {}, {}",
                    deviation.designed,
                    unit.signed(over)
                )),
                (None, _) if deviation.at.is_none() => words.push("not recorded".into()),
                _ => {}
            }
            words.extend(
                deviation
                    .oval_by
                    .map(|oval| format!("oval by {}", unit.text(oval))),
            );
            words.extend(deviation.off.map(|off| {
                format!(
                    "off its place by {}: x {}, y {}",
                    unit.text(Length::mm(off.radius())),
                    unit.signed(Length::mm(off.x)),
                    unit.signed(Length::mm(off.y))
                )
            }));
            words.extend(deviation.remark.map(|remark| format!("remarked: {remark}")));
            format!(
                "{} ({}): {}",
                deviation.id,
                deviation.what,
                words.join("; ")
            )
        };
        self.deviations().iter().map(of_one).collect()
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
        let checked: Value =
            serde_json::from_str(&check::as_json(self.spec, &self.checked.findings))
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
            "verdicts_changed": self.checked.changed,
            "findings": checked["findings"],
        });
        let mut text = serde_json::to_string_pretty(&report).expect("a report is plain JSON");
        text.push('\n');
        text
    }
}
