//! `schema`: the JSON Schema of a spec, for editors that complete keys and underline slips.

use super::{Outcome, Said, Status};
use crate::spec::spec_schema;

/// Prints the JSON Schema, draft 2020-12.
pub fn schema() -> Outcome {
    Ok(Said {
        words: format!("{:#}\n", spec_schema()),
        status: Status::Done,
    })
}
