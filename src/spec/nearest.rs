//! The known word nearest to a wrong one.

/// The nearest of some words, where one is near enough to be worth a question; of two as near, the first.
pub(super) fn nearest<'a>(wrong: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let by_distance = near_enough(wrong, known).min_by_key(|(distance, _)| *distance);
    by_distance.map(|(_, word)| word)
}

/// The nearest of some words, where one is near enough and no other is as near.
pub(super) fn the_nearest<'a>(
    wrong: &str,
    known: impl Iterator<Item = &'a str>,
) -> Option<&'a str> {
    let mut near: Vec<(usize, &str)> = near_enough(wrong, known).collect();
    near.sort();
    match near.as_slice() {
        [(first, _), (second, _), ..] if first == second => None,
        [(_, word), ..] => Some(word),
        [] => None,
    }
}

fn near_enough<'a>(
    wrong: &str,
    known: impl Iterator<Item = &'a str>,
) -> impl Iterator<Item = (usize, &'a str)> {
    let plain = wrong.to_lowercase().replace(['-', ' '], "_");
    // A third of the word mistyped is a slip; more is another word.
    let most = (plain.chars().count() / 3).clamp(1, 4);
    known
        .map(move |word| {
            let even = word.to_lowercase().replace(['-', ' '], "_");
            (strsim::damerau_levenshtein(&plain, &even), word)
        })
        .filter(move |(distance, _)| *distance <= most)
}

/// Words in a row: `a`, `b` and `c`.
pub(super) fn one_of<'a>(words: impl Iterator<Item = &'a str>, last: &str) -> String {
    let words: Vec<String> = words.map(|word| format!("`{word}`")).collect();
    match words.as_slice() {
        [] => "nothing".into(),
        [one] => one.clone(),
        [some @ .., end] => format!("{} {last} {end}", some.join(", ")),
    }
}
