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
    // Of two equal pieces of work one is done beside the other; neither knows of it, so the bytes are the same.
    std::thread::scope(|beside| {
        let print_master = beside.spawn(|| sheets::pdf::write(&title, drawn));
        let mut files: Vec<PackFile> = drawn
            .iter()
            .map(|sheet| PackFile::new(sheet_path(sheet), sheets::svg::write(sheet)))
            .collect();
        let picture = drawn
            .first()
            .map(|general| picture(general, &files[0]))
            .transpose()?;
        let print_master = match print_master.join() {
            Ok(written) => written.map_err(not_drawn("drawing.pdf"))?,
            Err(panicked) => std::panic::resume_unwind(panicked),
        };
        files.push(PackFile::new("drawing.pdf", print_master));
        files.extend(picture);
        Ok(files)
    })
}

/// The picture of a sheet that is already written as SVG.
fn picture(sheet: &Sheet, written: &PackFile) -> Result<PackFile, NotDrawn> {
    let not_drawn = not_drawn("preview.png");
    let written = str::from_utf8(&written.bytes).expect("SVG is written as UTF-8");
    let bytes = sheets::png::write_svg(written, sheet, PREVIEW_DOTS_PER_INCH).map_err(not_drawn)?;
    Ok(PackFile::new("preview.png", bytes))
}

pub(super) fn not_drawn<E: Error + Send + Sync + 'static>(
    path: &'static str,
) -> impl Fn(E) -> NotDrawn {
    move |cause| NotDrawn {
        path,
        cause: Box::new(cause),
    }
}
