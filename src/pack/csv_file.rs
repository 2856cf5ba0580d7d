//! Rows of words as a CSV file, and back.

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

/// A row, and the line of the file on which it begins.
pub(super) type NumberedRow = (usize, Vec<String>);

/// The rows of a CSV file with the line on which each begins, or the line and reason at which it cannot be read. Cells may be parted by
/// commas or, as some spreadsheets save them, by semicolons; the first line decides. Blank lines are left out.
pub(super) fn rows_of(text: &str) -> Result<Vec<NumberedRow>, (usize, String)> {
    let first = text.lines().next().unwrap_or_default();
    let parted_by = match first.contains(';') && !first.contains(',') {
        true => b';',
        false => b',',
    };
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(parted_by)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let mut rows = Vec::new();
    for record in reader.records() {
        let record = record.map_err(|e| {
            let line = e.position().map_or(1, csv::Position::line);
            (line as usize, e.to_string())
        })?;
        let line = record.position().map_or(0, csv::Position::line) as usize;
        if record.iter().any(|cell| !cell.is_empty()) {
            rows.push((line, record.iter().map(String::from).collect()));
        }
    }
    Ok(rows)
}
