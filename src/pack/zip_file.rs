//! The cut pack as one file to send: cut files, order note and a list with checksums. The only file that names the crate `zip`.
//!
//! Stored without compression and dated with the format's first day, so that the same spec gives the same bytes.

use std::io::{Cursor, Write};

use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipWriter};

use super::manifest::sha256;
use super::{PackFile, folder_name};
use crate::spec::Spec;

/// What lies in `cut/` as one file; none where nothing was let out to be cut.
pub fn cut_zip(spec: &Spec, files: &[PackFile]) -> Option<PackFile> {
    let mut cut: Vec<(&str, &PackFile)> = files
        .iter()
        .filter_map(|file| Some((file.path.strip_prefix("cut/")?, file)))
        .collect();
    if cut.is_empty() {
        return None;
    }
    cut.sort_by_key(|(path, _)| *path);
    let folder = format!("{}-cut", folder_name(spec));
    let list = list(spec, &cut);
    let mut contents: Vec<(&str, &[u8])> = cut
        .iter()
        .map(|(path, file)| (*path, file.bytes.as_slice()))
        .collect();
    contents.push(("files.txt", list.as_bytes()));
    let bytes = zipped(&folder, &contents).expect("a file in memory takes whatever is written");
    Some(PackFile::new(format!("{folder}.zip"), bytes))
}

/// Every file with its SHA-256, in the form that `sha256sum --check` reads, and its size as a comment.
fn list(spec: &Spec, cut: &[(&str, &PackFile)]) -> String {
    let job = &spec.written.job;
    let mut list = format!(
        "# {} revision {}, fingerprint of the spec {}\n",
        job.drawing,
        job.revision,
        spec.short_fingerprint()
    );
    for (path, file) in cut {
        list.push_str(&format!("# {path}: {} bytes\n", file.bytes.len()));
        list.push_str(&format!("{}  {path}\n", sha256(&file.bytes)));
    }
    list
}

fn zipped(folder: &str, contents: &[(&str, &[u8])]) -> zip::result::ZipResult<Vec<u8>> {
    let options = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Stored)
        .last_modified_time(DateTime::default())
        .unix_permissions(0o644);
    let mut writer = ZipWriter::new(Cursor::new(Vec::new()));
    for (path, bytes) in contents {
        writer.start_file(format!("{folder}/{path}"), options)?;
        writer.write_all(bytes)?;
    }
    Ok(writer.finish()?.into_inner())
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use super::*;
    use crate::spec::read_spec;

    const SPEC: &str = include_str!("../../specs/hobthrush-smokebox.yaml");

    #[test]
    fn holds_the_zip_has_what_lies_in_cut_and_is_the_same_each_time() {
        let spec = read_spec("hobthrush.yaml", SPEC.as_bytes()).expect("a spec");
        let files = [
            PackFile::new("cut/r12/a.dxf", "old"),
            PackFile::new("results.json", "{}"),
            PackFile::new("cut/a.dxf", "abc"),
        ];
        let made = cut_zip(&spec, &files).expect("something is cut");
        assert_eq!(made.path, "HB-TP1-A-cut.zip");
        assert_eq!(cut_zip(&spec, &files), Some(made.clone()));
        let mut read = zip::ZipArchive::new(Cursor::new(made.bytes)).expect("a zip");
        let names: Vec<String> = read
            .file_names()
            .map(|name| name.expect("a name").into_owned())
            .collect();
        assert_eq!(
            names,
            ["a.dxf", "r12/a.dxf", "files.txt"].map(|name| format!("HB-TP1-A-cut/{name}"))
        );
        let mut list = String::new();
        let mut file = read.by_name("HB-TP1-A-cut/files.txt").expect("the list");
        file.read_to_string(&mut list).expect("text");
        // FIPS 180-4's own example for the three letters abc.
        assert!(
            list.contains(
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  a.dxf\n"
            )
        );
    }

    #[test]
    fn holds_where_nothing_is_cut_there_is_no_zip() {
        let spec = read_spec("hobthrush.yaml", SPEC.as_bytes()).expect("a spec");
        assert_eq!(cut_zip(&spec, &[PackFile::new("results.json", "{}")]), None);
    }
}
