//! The sheets as files: one SVG each, all of them as the PDF that is printed from, and a picture of the first.

use std::error::Error;
use std::fmt;

use super::PackFile;
use crate::sheets::{self, Sheet};
use crate::spec::Spec;

/// Dots to the inch of the picture: an A3 sheet is 2,480 across, and lettering of 2 mm can be read.
const PREVIEW_DOTS_PER_INCH: f64 = 150.0;

/// A sheet that could not be made into a file.
#[derive(Debug)]
pub struct NotDrawn {
    /// The file.
    pub path: &'static str,
    /// Why.
    pub cause: Box<dyn Error + Send + Sync>,
}

impl fmt::Display for NotDrawn {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "cannot draw {}: {}", self.path, self.cause)
    }
}

impl Error for NotDrawn {
    fn source(&self) -> Option<&(dyn Error + 'static)> {
        Some(self.cause.as_ref())
    }
}

/// Where a sheet lies in the pack: `sheets/1-general.svg`.
pub fn sheet_path(sheet: &Sheet) -> String {
    format!("sheets/{}-{}.svg", sheet.number, sheet.name)
}

/// Every file that shows the sheets.
pub fn sheet_files(spec: &Spec, drawn: &[Sheet]) -> Result<Vec<PackFile>, NotDrawn> {
    let job = &spec.written.job;
    let title = format!("{} {}", job.drawing, job.revision);
    let mut files: Vec<PackFile> = drawn
        .iter()
        .map(|sheet| PackFile::new(sheet_path(sheet), sheets::svg::write(sheet)))
        .collect();
    let print_master = sheets::pdf::write(&title, drawn).map_err(not_drawn("drawing.pdf"))?;
    files.push(PackFile::new("drawing.pdf", print_master));
    if let Some(general) = drawn.first() {
        let picture =
            sheets::png::write(general, PREVIEW_DOTS_PER_INCH).map_err(not_drawn("preview.png"))?;
        files.push(PackFile::new("preview.png", picture));
    }
    Ok(files)
}

pub(super) fn not_drawn<E: Error + Send + Sync + 'static>(
    path: &'static str,
) -> impl Fn(E) -> NotDrawn {
    move |cause| NotDrawn {
        path,
        cause: Box::new(cause),
    }
}
