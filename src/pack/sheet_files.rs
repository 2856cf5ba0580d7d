//! The sheets as files: one SVG each, all of them as the PDF that is printed from, and a picture of the first.

use std::error::Error;
use std::fmt;

use super::PackFile;
use crate::sheets::{self, Sheet};
use crate::spec::Spec;

/// Dots to the inch of the picture: an A3 sheet is 1,984 across, and lettering of 2 mm, nine dots high, can be read.
const PREVIEW_DOTS_PER_INCH: f64 = 120.0;

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

fn svg(sheet: &Sheet) -> PackFile {
    PackFile::new(sheet_path(sheet), sheets::svg::write(sheet))
}

/// Every file that shows the sheets of a plate as it was made.
pub(super) fn as_made_sheet_files(spec: &Spec, drawn: &[Sheet]) -> Result<Vec<PackFile>, NotDrawn> {
    const PRINT_MASTER: &str = "as-made.pdf";
    let job = &spec.written.job;
    let title = format!("{} {}, as made", job.drawing, job.revision);
    let print_master = sheets::pdf::write(&title, drawn).map_err(not_drawn(PRINT_MASTER))?;
    let mut files: Vec<PackFile> = drawn.iter().map(svg).collect();
    files.push(PackFile::new(PRINT_MASTER, print_master));
    Ok(files)
}

/// Every file that shows the sheets.
pub fn sheet_files(spec: &Spec, drawn: &[Sheet]) -> Result<Vec<PackFile>, NotDrawn> {
    let job = &spec.written.job;
    let title = format!("{} {}", job.drawing, job.revision);
    let mut files: Vec<PackFile> = drawn.first().map(svg).into_iter().collect();
    let general = drawn.first().zip(files.first().cloned());
    // Three pieces of work side by side; none knows of another, so the bytes are the same as one after another.
    let (others, print_master, picture) = std::thread::scope(|beside| {
        let print_master = beside.spawn(|| sheets::pdf::write(&title, drawn));
        let picture = beside.spawn(|| {
            general
                .as_ref()
                .map(|(sheet, written)| picture(sheet, written))
        });
        let others: Vec<PackFile> = drawn.iter().skip(1).map(svg).collect();
        (others, print_master.join(), picture.join())
    });
    files.extend(others);
    let print_master = print_master.unwrap_or_else(|panicked| std::panic::resume_unwind(panicked));
    files.push(PackFile::new(
        "drawing.pdf",
        print_master.map_err(not_drawn("drawing.pdf"))?,
    ));
    files.extend(
        picture
            .unwrap_or_else(|panicked| std::panic::resume_unwind(panicked))
            .transpose()?,
    );
    Ok(files)
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
