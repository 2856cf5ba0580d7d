//! `compare`: a cut file against the spec that it was made from, or two specs.

mod returned_file;
mod two_specs;

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
    let is_dxf = other
        .extension()
        .is_some_and(|e| e.eq_ignore_ascii_case("dxf"));
    match is_dxf {
        true => returned_file::compare(spec_file, other, within(asked.within)?, asked),
        false => {
            refuse_questions_on_cut_files(asked)?;
            two_specs::compare(spec_file, other, asked)
        }
    }
}

/// What is asked of a cut file alone, and was asked of two specs.
fn refuse_questions_on_cut_files(asked: Asked<'_>) -> Result<(), Refused> {
    let questions = [("--part", asked.part), ("--within", asked.within)];
    match questions.iter().find(|(_, written)| written.is_some()) {
        None => Ok(()),
        Some((name, _)) => Err(Refused {
            report: format!(
                "refused: {name} concerns a cut file, and two specs are compared\n   = remedy: leave it out, or name a cut file that ends in .dxf"
            ),
        }),
    }
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
