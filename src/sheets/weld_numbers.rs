//! The letter that opens the numbers of the welds: one that opens no hole's.

use super::set::Set;

/// J where no hole's number opens with it, else the next of a few; R is the rivets'.
pub fn weld_letter(set: &Set<'_>) -> &'static str {
    let taken = |letter: &str| {
        set.design
            .holes
            .iter()
            .any(|hole| hole.id.trim_end_matches(|c: char| c.is_ascii_digit()) == letter)
    };
    ["J", "Y", "V", "Q", "K"]
        .into_iter()
        .find(|letter| !taken(letter))
        .unwrap_or("WELD-")
}
