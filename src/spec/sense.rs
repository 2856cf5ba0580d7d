//! Contradictions that can be seen without geometry.

use super::{Fault, Written};

/// Every contradiction in what was written; none where it makes sense as far as words and single sizes go.
pub(super) fn contradictions(_written: &Written) -> Vec<Fault> {
    Vec::new()
}
