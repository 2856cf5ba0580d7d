//! The list of every file of a pack, so that anybody can tell whether one has been changed since.

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use super::PackFile;
use crate::spec::Spec;

/// Name of the list in the pack; it does not list itself.
pub(super) const MANIFEST: &str = "manifest.json";

/// What `manifest.json` holds.
#[derive(Debug, Serialize, Deserialize)]
pub(super) struct Manifest {
    version: String,
    drawing: String,
    revision: String,
    fingerprint: String,
    spec_sha256: String,
    /// Of the record that it comes from, where it is the pack of a plate as it was made.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    record_sha256: Option<String>,
    /// Sorted by path.
    pub(super) files: Vec<Listed>,
}

#[cfg(test)]
impl Manifest {
    /// A list of files that came of no spec.
    pub(super) fn of_files(files: Vec<Listed>) -> Manifest {
        Manifest {
            version: String::new(),
            drawing: String::new(),
            revision: String::new(),
            fingerprint: String::new(),
            spec_sha256: String::new(),
            record_sha256: None,
            files,
        }
    }
}

/// One file as listed.
#[derive(Debug, Serialize, Deserialize)]
pub(super) struct Listed {
    pub(super) path: String,
    pub(super) bytes: usize,
    pub(super) sha256: String,
}

/// SHA-256 of these bytes, 64 hex digits.
pub(super) fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

/// Lists every file given, sorted by path, with its size and SHA-256, the spec's fingerprint and the program's version.
pub fn manifest(spec: &Spec, files: &[PackFile]) -> PackFile {
    listing(spec, None, files)
}

/// The same of a pack that comes from a record, with the record's own SHA-256.
pub(super) fn listing(spec: &Spec, record_sha256: Option<&str>, files: &[PackFile]) -> PackFile {
    let mut listed: Vec<Listed> = files
        .iter()
        .map(|file| Listed {
            path: file.path.clone(),
            bytes: file.bytes.len(),
            sha256: sha256(&file.bytes),
        })
        .collect();
    listed.sort_by(|a, b| a.path.cmp(&b.path));
    let manifest = Manifest {
        version: env!("CARGO_PKG_VERSION").into(),
        drawing: spec.written.job.drawing.clone(),
        revision: spec.written.job.revision.clone(),
        fingerprint: spec.short_fingerprint().into(),
        spec_sha256: spec.fingerprint.clone(),
        record_sha256: record_sha256.map(String::from),
        files: listed,
    };
    PackFile::new(MANIFEST, json(&manifest))
}

/// JSON as the pack writes it: indented, with a last line end.
pub(super) fn json(value: &impl Serialize) -> Vec<u8> {
    let mut bytes = serde_json::to_vec_pretty(value).expect("plain figures and words are JSON");
    bytes.push(b'\n');
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;

    /// FIPS 180-4's own example for the three letters abc (NIST, "SHA256.pdf", example values).
    #[test]
    fn published_sha256_of_abc() {
        assert_eq!(
            sha256(b"abc"),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
        );
    }
}
