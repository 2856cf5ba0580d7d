//! What a cut file is called, and what its head says: a file outlives the letter that it came with.

use super::dxf::Heading;
use super::part::CutPart;
use crate::spec::{Spec, ViewFrom};

/// Name of a part's file: drawing, revision, part, process and unit, as `mh-tp1-a-blank-plasma-mm.dxf`.
///
/// Small letters, figures and hyphens only, so that it is one name on every machine.
pub fn file_name(spec: &Spec, part: &CutPart) -> String {
    let job = &spec.written.job;
    let words = format!(
        "{}-{}-{}-{}-mm",
        job.drawing,
        job.revision,
        part.name,
        part.process.name()
    );
    let plain: String = words
        .chars()
        .map(|c| match c {
            c if c.is_ascii_alphanumeric() => c.to_ascii_lowercase(),
            _ => '-',
        })
        .collect();
    format!("{plain}.dxf")
}

/// The comments at the head of a part's file.
pub fn heading(spec: &Spec, part: &CutPart) -> Heading {
    let job = &spec.written.job;
    Heading {
        lines: vec![
            "UNITS MILLIMETRES, SCALE 1:1".into(),
            format!(
                "DRAWING {} REVISION {} PART {}",
                job.drawing, job.revision, part.name
            ),
            format!("FINGERPRINT {}", spec.short_fingerprint()),
            format!(
                "SEEN FROM THE {}",
                side(spec.written.plate.view_from).to_uppercase()
            ),
            part.lies.clone(),
            "KERF NOT APPLIED: CONTOURS ARE THE FINISHED CUT EDGE, THE CONTRACTOR COMPENSATES"
                .into(),
            "DO NOT MIRROR. LAYER REFERENCE IS NOT TO BE CUT".into(),
        ],
    }
}

/// The side of the plate, in words.
pub(super) fn side(view_from: ViewFrom) -> &'static str {
    match view_from {
        ViewFrom::Smokebox => "smokebox",
        ViewFrom::Firebox => "firebox",
    }
}
