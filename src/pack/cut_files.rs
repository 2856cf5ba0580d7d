//! The cut files of a pack, each read back and compared with its part before it is let out of the house.

use std::fmt;

use super::PackFile;
use crate::cut::{self, CutPart, HolesCut, Summary, Version, Withheld};
use crate::spec::Spec;

/// One cut file of the pack.
#[derive(Clone, Debug)]
pub struct CutFile {
    /// The file.
    pub file: PackFile,
    /// What it holds, counted from the part it was made from.
    pub summary: Summary,
    /// Holes that are cut, by size.
    pub holes_cut: Vec<HolesCut>,
    /// Holes that are not, what is made instead, and why.
    pub withheld: Vec<Withheld>,
}

/// Why a cut file is not let out; nothing of the pack is then written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotReleased {
    /// Where it would have lain in the pack.
    pub path: String,
    /// What sort of fault it is.
    pub fault: CutFault,
    /// Each of them, a line.
    pub lines: Vec<String>,
}

/// What is wrong with a cut file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutFault {
    /// A profile cutter could not cut it well: the part or the spec's `cutting` wants another look.
    Unfit,
    /// What it holds is not the part, which only a mistake in the program can bring about.
    NotThePart,
}

impl fmt::Display for NotReleased {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let fault = match self.fault {
            CutFault::Unfit => "is not fit to be cut; look again at `cutting`",
            CutFault::NotThePart => {
                "is not the part that was set out: a mistake in the program, not in the spec"
            }
        };
        write!(f, "{} {fault}; nothing was written", self.path)?;
        for line in &self.lines {
            write!(f, "\n  {line}")?;
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
    let refuse = |fault: CutFault, lines: Vec<String>| NotReleased {
        path: path.clone(),
        fault,
        lines,
    };
    if let Some(cutting) = &spec.written.cutting {
        cut::preflight(cutting, part).map_err(|unfit| refuse(CutFault::Unfit, lines(&unfit)))?;
    }
    let text = cut::write(part, &cut::heading(spec, part), version)
        .map_err(|unwritable| refuse(CutFault::Unfit, vec![unwritable.to_string()]))?;
    cut::read_back(&text, part, version)
        .map_err(|found| refuse(CutFault::NotThePart, lines(&found)))?;
    Ok(CutFile {
        file: PackFile::new(path, text),
        summary: cut::summary(part),
        holes_cut: part.holes_cut.clone(),
        withheld: part.withheld.clone(),
    })
}

fn lines(found: &[impl ToString]) -> Vec<String> {
    found.iter().map(ToString::to_string).collect()
}
