//! Numbers of holes as people say them: those that follow one another as one run.

/// Numbers in runs: `T1-T49, T51, S1-S4`.
pub fn number_runs<T: AsRef<str>>(ids: &[T]) -> String {
    let mut runs: Vec<(&str, &str, Option<u64>)> = Vec::new();
    for id in ids {
        let id = id.as_ref();
        let (letter, number) = parted(id);
        match runs.last_mut() {
            Some((first, last, Some(so_far)))
                if parted(first).0 == letter && number == Some(*so_far + 1) =>
            {
                (*last, *so_far) = (id, *so_far + 1);
            }
            _ => runs.push((id, id, number)),
        }
    }
    let words: Vec<String> = runs
        .into_iter()
        .map(|(first, last, _)| match first == last {
            true => first.to_string(),
            false => format!("{first}-{last}"),
        })
        .collect();
    words.join(", ")
}

fn parted(id: &str) -> (&str, Option<u64>) {
    let figures = id.trim_start_matches(|c: char| !c.is_ascii_digit());
    (&id[..id.len() - figures.len()], figures.parse().ok())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn by_hand_runs_of_numbers() {
        let ids = |words: &str| -> Vec<String> { words.split(' ').map(String::from).collect() };
        assert_eq!(number_runs(&ids("T1 T2 T3 T5 S1 S2")), "T1-T3, T5, S1-S2");
        assert_eq!(number_runs(&ids("T7")), "T7");
        assert_eq!(number_runs(&ids("T2 S3 PLUG")), "T2, S3, PLUG");
        assert_eq!(number_runs::<&str>(&[]), "");
    }
}
