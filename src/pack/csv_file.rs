//! Rows of words as a CSV file.

use super::PackFile;

/// The rows as a file, in their order; they need not be of one length.
pub(super) fn csv_file(path: &str, rows: impl IntoIterator<Item = Vec<String>>) -> PackFile {
    let in_memory = "memory takes whatever rows are written to it";
    let mut writer = csv::WriterBuilder::new()
        .flexible(true)
        .from_writer(Vec::new());
    for row in rows {
        writer.write_record(row).expect(in_memory);
    }
    PackFile::new(path, writer.into_inner().expect(in_memory))
}
