//! The cut files of a pack, each read back and compared with its part before it is let out of the house.

use std::fmt;

use super::PackFile;
use crate::cut::{self, CutPart, Summary, Version};
use crate::spec::Spec;

/// One cut file of the pack.
#[derive(Clone, Debug)]
pub struct CutFile {
    /// The file.
    pub file: PackFile,
    /// What it holds, counted from the part it was made from.
    pub summary: Summary,
}

/// Why a cut file is not let out: what it holds is not what the part is, which only a mistake in the program can bring about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotReleased {
    /// Where it would have lain in the pack.
    pub path: String,
    /// What is wrong with it, a line each.
    pub differences: Vec<String>,
}

impl fmt::Display for NotReleased {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{} is not what was set out, so nothing was written: this is a mistake in the program",
            self.path
        )?;
        for difference in &self.differences {
            write!(f, "\n  {difference}")?;
        }
        Ok(())
    }
}

impl std::error::Error for NotReleased {}

/// Every part as a file of either version: R2000 in `cut/`, and for older controllers R12 in `cut/r12/`.
pub fn cut_files(spec: &Spec, parts: &[CutPart]) -> Result<Vec<CutFile>, NotReleased> {
    let mut files = Vec::new();
    for (version, folder) in [(Version::R2000, "cut"), (Version::R12, "cut/r12")] {
        for part in parts {
            let path = format!("{folder}/{}", cut::file_name(spec, part));
            files.push(released(spec, part, version, path)?);
        }
    }
    Ok(files)
}

fn released(
    spec: &Spec,
    part: &CutPart,
    version: Version,
    path: String,
) -> Result<CutFile, NotReleased> {
    let refuse = |path: &str, differences: Vec<String>| NotReleased {
        path: path.to_string(),
        differences,
    };
    let text = cut::write(part, &cut::heading(spec, part), version)
        .map_err(|unwritable| refuse(&path, vec![unwritable.to_string()]))?;
    cut::read_back(&text, part, version)
        .map_err(|found| refuse(&path, found.iter().map(ToString::to_string).collect()))?;
    Ok(CutFile {
        file: PackFile::new(path, text),
        summary: cut::summary(part),
    })
}
