//! One file a command; each calls the stages and says what came of it. None prints: `main` does.

pub mod draw;
pub mod new;
pub mod schema;

use std::fmt;

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
}

impl Status {
    /// The exit status of the process.
    pub fn code(self) -> u8 {
        match self {
            Status::Done => 0,
            Status::Below => 1,
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

impl From<crate::pack::NotWritten> for Refused {
    fn from(not_written: crate::pack::NotWritten) -> Refused {
        Refused {
            report: not_written.to_string(),
        }
    }
}

/// What comes of a command.
pub type Outcome = Result<Said, Refused>;
