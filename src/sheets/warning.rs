//! What stands across every sheet of a set while something judged is below its rule and nobody has conceded it.

use super::particulars::below;
use super::set::Set;

/// The words of banner and overprint.
#[derive(Clone, Debug)]
pub struct Warning {
    /// In hollow letters across the sheet, and bold in its banner.
    pub loud: &'static str,
    /// Beside it in the banner: how much is below, and where to read of it.
    pub about: String,
}

/// The warning that a set carries; none while nothing is below. A design is not to be cut; of a plate that is made, it is told that it
/// is below.
pub fn warning(set: &Set<'_>) -> Option<Warning> {
    let loud = match set.made {
        None => "NOT FOR CUTTING",
        Some(_) => "BELOW AS MADE",
    };
    let about = match below(set.findings) {
        0 => return None,
        1 => {
            "1 comparison is below its rule and is not conceded: see the design check sheet".into()
        }
        below => format!(
            "{below} comparisons are below their rules and are not conceded: see the design check sheet"
        ),
    };
    Some(Warning { loud, about })
}
