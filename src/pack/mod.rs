//! The folder that is handed over: sheets, cut files, tables, page, results and manifest, written whole or not at all.

mod as_made;
mod csv_file;
mod cut_files;
mod finding_words;
mod folder;
mod gate;
mod manifest;
mod order_note;
mod page;
mod record;
mod results;
mod sheet_files;
mod tables;
mod zip_file;

pub use as_made::{as_made_files, as_made_folder_name};
pub use cut_files::{CutFault, CutFile, NotReleased, cut_files};
pub use folder::{NotWritten, Written, write_whole};
pub use gate::{Counts, Gate};
pub use manifest::manifest;
pub use order_note::order_note;
pub use page::page;
pub use record::{RecordFault, inspection_record, read_record};
pub use results::results;
pub use sheet_files::{NotDrawn, sheet_files, sheet_path};
pub use tables::tables;
pub use zip_file::cut_zip;

/// One file of a pack, not yet written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PackFile {
    /// Where it lies in the pack's folder, with forward slashes on every machine: `cut/order-note.txt`.
    pub path: String,
    /// All of its bytes.
    pub bytes: Vec<u8>,
}

impl PackFile {
    /// A file of these bytes at this path.
    pub fn new(path: impl Into<String>, bytes: impl Into<Vec<u8>>) -> PackFile {
        PackFile {
            path: path.into(),
            bytes: bytes.into(),
        }
    }
}

/// The pack's folder: drawing and revision, `MH-TP1-A`.
pub fn folder_name(spec: &crate::spec::Spec) -> String {
    let job = &spec.written.job;
    format!("{}-{}", job.drawing, job.revision)
}
