//! `draw`: from a spec to the folder that is handed over.

use std::path::Path;

use super::{Outcome, Said, Status};
use crate::checks::{Finding, run_checks};
use crate::design::{Design, set_out};
use crate::pack::{self, Counts, Gate, PackFile, Written};
use crate::spec::{Spec, read_spec_file};

/// Draws the plate of a spec into `<drawing>-<revision>` under `out`, or refuses and writes nothing.
pub fn draw(spec_file: &Path, out: &Path) -> Outcome {
    let spec = read_spec_file(spec_file)?;
    let design = set_out(&spec).map_err(|faults| spec.refuse(faults))?;
    let findings = run_checks(&spec, &design);
    let files = pack_files(&spec, &design, &findings);
    let written = pack::write_whole(out, &pack::folder_name(&spec), &files)?;
    Ok(said(&written, &files, &findings))
}

/// Every file of the pack, the manifest among them; nothing is written yet.
pub fn pack_files(spec: &Spec, design: &Design, findings: &[Finding]) -> Vec<PackFile> {
    let mut files = pack::tables(spec, design);
    files.push(pack::inspection_record(spec, design));
    files.push(pack::results(spec, design, findings, &[]));
    let mut paths: Vec<&str> = files.iter().map(|file| file.path.as_str()).collect();
    paths.sort();
    files.push(pack::page(spec, design, findings, &[], &paths));
    files.push(pack::manifest(spec, &files));
    files
}

/// What stands on the screen: the files, then the counts, and last of all why nothing may be cut, where nothing may.
fn said(written: &Written, files: &[PackFile], findings: &[Finding]) -> Said {
    let counts = Counts::of(findings);
    let mut words = format!("{}\n", written.folder.display());
    let mut paths: Vec<&str> = files.iter().map(|file| file.path.as_str()).collect();
    paths.sort();
    for path in paths {
        words.push_str(&format!("  {path}\n"));
    }
    if let Some(kept) = &written.kept {
        words.push_str(&format!(
            "what had been changed in the old pack or added to it is kept in {}\n",
            kept.display()
        ));
    }
    if let Some(not_cleared) = &written.not_cleared {
        words.push_str(&format!("left of the old pack: {not_cleared}\n"));
    }
    words.push_str(&format!("findings: {counts}\n"));
    let Gate::Shut(reasons) = Gate::of(findings) else {
        return Said {
            words,
            status: Status::Done,
        };
    };
    for reason in &reasons {
        words.push_str(&format!("below: {reason}\n"));
    }
    words.push_str(&format!(
        "no cut file was written, since {} below and not conceded ({} not judged)\n",
        match reasons.len() {
            1 => "1 finding is".to_string(),
            n => format!("{n} findings are"),
        },
        counts.not_judged
    ));
    Said {
        words,
        status: Status::Below,
    }
}
