//! One file a command; each calls the stages and says what came of it. None prints: `main` does.

pub mod as_made;
pub mod check;
pub mod compare;
pub mod draw;
pub mod explain;
pub mod new;
pub mod propose;
pub mod schema;
mod wrapped;

use std::fmt;
use std::path::Path;

use crate::checks::check_names;
use crate::design::{Design, set_out};
use crate::pack::{NotDrawn, NotReleased, NotWritten};
use crate::spec::{Fault, Spec, read_spec_file};

/// What a command has to say when it has done its work.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// For the screen, lines ended.
    pub words: String,
    /// How it ends.
    pub status: Status,
}

/// How a command ends, as a shell sees it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Done, and nothing judged is below its rule: 0.
    Done,
    /// Done, but something judged is below its rule and not conceded: 1.
    Below,
    /// Done, and what was compared differs: 1.
    Differs,
}

impl Status {
    /// The exit status of the process.
    pub fn code(self) -> u8 {
        match self {
            Status::Done => 0,
            Status::Below | Status::Differs => 1,
        }
    }
}

/// Why a command did nothing: the spec was refused, or nothing could be written. Exit status 2.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused {
    /// Every fault, for the screen.
    pub report: String,
}

impl Refused {
    /// The exit status of the process.
    pub const CODE: u8 = 2;
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.report.trim_end())
    }
}

impl std::error::Error for Refused {}

impl From<crate::spec::Faults> for Refused {
    fn from(faults: crate::spec::Faults) -> Refused {
        Refused {
            report: faults.report,
        }
    }
}

/// Whatever else keeps a pack from being written is told in its own words.
macro_rules! refused_in_its_own_words {
    ($($error:ty),*) => {
        $(impl From<$error> for Refused {
            fn from(error: $error) -> Refused {
                Refused {
                    report: error.to_string(),
                }
            }
        })*
    };
}

refused_in_its_own_words!(NotWritten, NotReleased, NotDrawn);

/// What comes of a command.
pub type Outcome = Result<Said, Refused>;

/// Reads a spec and sets its plate out, or gathers every fault that the reading, the rules' names and the setting-out have.
pub fn read_and_set_out(spec_file: &Path) -> Result<(Spec, Design), Refused> {
    let spec = read_spec_file(spec_file).map_err(|faults| {
        faults.and_beyond(|spec| set_out_or_faults(spec).err().unwrap_or_default())
    })?;
    match set_out_or_faults(&spec) {
        Ok(design) => Ok((spec, design)),
        Err(faults) => Err(spec.refuse(faults).into()),
    }
}

/// Sets out the plate of a spec that has been read, or gathers every fault that the rules' names and the setting-out have.
pub fn set_out_or_faults(spec: &Spec) -> Result<Design, Vec<Fault>> {
    let mut faults = check_names(spec);
    match set_out(spec) {
        Ok(design) if faults.is_empty() => Ok(design),
        Ok(_) => Err(faults),
        Err(more) => {
            faults.extend(more);
            Err(faults)
        }
    }
}
