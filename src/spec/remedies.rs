//! What to say of a missing key where a plain "is missing" would not help.

/// The fact and the remedy for a key that must be there.
pub(super) fn missing(path: &str) -> Option<(String, String)> {
    let (fact, remedy) = match path {
        "plate.view_from" => (
            "the side one looks from is not written, and a plate made to the wrong hand is scrap",
            "which side are you looking from? write `view_from: smokebox` (standing in the smokebox, looking back \
             at the plate) or `view_from: firebox` (inside the barrel, looking forward)",
        ),
        "job.issued" => (
            "the date of issue is not written, and no clock is read for it",
            "add `issued:` as year-month-day, 2026-11-16",
        ),
        _ => return None,
    };
    Some((fact.into(), remedy.into()))
}
