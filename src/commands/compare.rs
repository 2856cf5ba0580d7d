//! `compare`: a cut file against the spec that it was made from, or two specs.

mod returned_file;

use std::path::Path;

use super::{Outcome, Refused};
use crate::units::tolerance::SAVED_AGAIN_MM;
use crate::units::{Length, Quantity};

/// What is asked of a comparison besides its two files.
#[derive(Clone, Copy, Debug, Default)]
pub struct Asked<'a> {
    /// The part that a cut file is compared with; the likeliest where none is named.
    pub part: Option<&'a str>,
    /// Distance below which two places are one, as written.
    pub within: Option<&'a str>,
    /// For machines.
    pub json: bool,
    /// Characters in a line of the screen.
    pub width: usize,
}

/// Compares a spec with a cut file, whose name ends in `.dxf`, or with another spec.
pub fn compare(spec_file: &Path, other: &Path, asked: Asked<'_>) -> Outcome {
    let within = within(asked.within)?;
    returned_file::compare(spec_file, other, within, asked)
}

fn within(written: Option<&str>) -> Result<Length, Refused> {
    let Some(text) = written else {
        return Ok(Length::mm(SAVED_AGAIN_MM));
    };
    let refuse = |fact: &str, remedy: &str| Refused {
        report: format!("refused: --within: {fact}\n   = remedy: {remedy}"),
    };
    let length = Length::read(text).map_err(|unread| refuse(&unread.fact, &unread.remedy))?;
    match length > Length::ZERO {
        true => Ok(length),
        false => Err(refuse(
            &format!("{text} is no distance"),
            "write a length above nothing, as --within '0.05 mm'",
        )),
    }
}
