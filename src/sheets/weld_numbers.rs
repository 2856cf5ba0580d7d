//! Numbers of the welds: a letter that opens no hole's, then the ring's welds, those of pads, and the repairs in the order of the spec.

use super::set::Set;
use super::test_map::pad_welds;
use crate::design::welds;

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

/// The numbers of the welds of the pads round these holes, in their order.
pub fn pad_weld_numbers(set: &Set<'_>, is_wanted: impl Fn(&str) -> bool) -> Vec<String> {
    let before = welds(set.design, None).len();
    let numbered = pad_welds(set).into_iter().enumerate();
    let wanted = numbered.filter(|(_, weld)| is_wanted(weld.hole));
    wanted
        .map(|(i, _)| format!("{}{}", weld_letter(set), before + i + 1))
        .collect()
}

/// The number of a repair, by its place in the spec's list: the same on every sheet and in the record.
pub fn repair_number(set: &Set<'_>, repair: usize) -> String {
    let before = welds(set.design, None).len() + pad_welds(set).len();
    format!("{}{}", weld_letter(set), before + repair + 1)
}
