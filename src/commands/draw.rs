//! `draw`: from a spec to the folder that is handed over.

use std::path::Path;

use super::{Outcome, Refused, Said, Status, read_and_set_out};
use crate::checks::{Finding, run_checks};
use crate::cut::{CutPart, cut_parts};
use crate::design::Design;
use crate::pack::{self, Counts, Gate, PackFile, Written};
use crate::sheets::{Sheet, draw_sheets, faults_of_lettering, faults_of_paper};
use crate::spec::Spec;

/// Draws the plate of a spec into `<drawing>-<revision>` under `out`, or refuses and writes nothing. With `zip` the cut files and
/// their order note also stand there as one file to send.
pub fn draw(spec_file: &Path, out: &Path, zip: bool) -> Outcome {
    let (spec, design) = read_and_set_out(spec_file)?;
    let parts = cut_parts(&spec, &design).map_err(|faults| spec.refuse(faults))?;
    let unlettered = faults_of_lettering(&spec);
    if !unlettered.is_empty() {
        return Err(spec.refuse(unlettered).into());
    }
    let findings = run_checks(&spec, &design);
    let gate = Gate::of(&findings);
    let sheets = draw_sheets(&spec, &design, &findings, &parts);
    let unfit = faults_of_paper(&spec, &design, &sheets);
    if !unfit.is_empty() {
        return Err(spec.refuse(unfit).into());
    }
    let files = pack_files(&spec, &design, &findings, &gate, &sheets, &parts, zip)?;
    let written = pack::write_whole(out, &pack::folder_name(&spec), &files)?;
    Ok(said(&written, &files, &findings, &gate))
}

/// Every file of the pack, the manifest among them; nothing is written yet.
pub fn pack_files(
    spec: &Spec,
    design: &Design,
    findings: &[Finding],
    gate: &Gate,
    sheets: &[Sheet],
    parts: &[CutPart],
    zip: bool,
) -> Result<Vec<PackFile>, Refused> {
    let (cut_files, note) = match gate {
        Gate::Open => (
            pack::cut_files(spec, parts)?,
            pack::order_note(spec, design, parts, Counts::of(findings))?,
        ),
        Gate::Shut(_) => (Vec::new(), Vec::new()),
    };
    let mut files = pack::sheet_files(spec, sheets)?;
    files.extend(pack::tables(spec, design));
    files.push(pack::inspection_record(spec, design));
    files.push(pack::results(spec, design, findings, &cut_files));
    files.extend(cut_files.into_iter().map(|cut| cut.file));
    files.extend(note);
    if zip {
        files.extend(pack::cut_zip(spec, &files));
    }
    let mut paths: Vec<&str> = files.iter().map(|file| file.path.as_str()).collect();
    paths.sort();
    files.push(pack::page(spec, design, findings, sheets, &paths));
    files.push(pack::manifest(spec, &files));
    Ok(files)
}

/// What stands on the screen: the files, then the counts, and last of all why nothing may be cut, where nothing may.
fn said(written: &Written, files: &[PackFile], findings: &[Finding], gate: &Gate) -> Said {
    let counts = Counts::of(findings);
    let mut words = format!("{}\n", written.folder.display());
    let mut paths: Vec<&str> = files.iter().map(|file| file.path.as_str()).collect();
    paths.sort();
    for path in paths {
        words.push_str(&format!("  {path}\n"));
    }
    words.push_str(&written.left_over());
    words.push_str(&format!("findings: {counts}\n"));
    let status = match gate {
        Gate::Open => Status::Done,
        Gate::Shut(reasons) => {
            words.push_str(&why_nothing_may_be_cut(reasons, counts));
            Status::Below
        }
    };
    Said { words, status }
}

fn why_nothing_may_be_cut(reasons: &[String], counts: Counts) -> String {
    let mut words = String::new();
    for reason in reasons {
        words.push_str(&format!("below: {reason}\n"));
    }
    let findings = match reasons.len() {
        1 => "1 finding is".to_string(),
        n => format!("{n} findings are"),
    };
    words.push_str(&format!(
        "no cut file was written, since {findings} below and not conceded; {} not judged\n",
        counts.not_judged
    ));
    words
}
