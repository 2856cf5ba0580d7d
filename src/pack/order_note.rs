//! The order note as files: to be read on a screen or put into a letter, and to be printed.

use super::sheet_files::not_drawn;
use super::{Counts, NotDrawn, PackFile};
use crate::cut::{self, CutPart};
use crate::design::Design;
use crate::sheets::{self, order_note_pages};
use crate::spec::Spec;

/// What the contractor is told of these parts; no file where nothing is cut.
pub fn order_note(
    spec: &Spec,
    design: &Design,
    parts: &[CutPart],
    counts: Counts,
) -> Result<Vec<PackFile>, NotDrawn> {
    let lines = cut::order_note(spec, design, parts, counts.not_judged);
    if lines.is_empty() {
        return Ok(Vec::new());
    }
    let job = &spec.written.job;
    let title = format!(
        "{} {}, order note, fingerprint {}",
        job.drawing,
        job.revision,
        spec.short_fingerprint()
    );
    let printed = sheets::pdf::write(&title, &order_note_pages(&title, &lines, parts))
        .map_err(not_drawn("cut/order-note.pdf"))?;
    Ok(vec![
        PackFile::new("cut/order-note.txt", lines.join("\n") + "\n"),
        PackFile::new("cut/order-note.pdf", printed),
    ])
}
