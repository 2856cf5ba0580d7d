//! `new`: a commented spec to start from.

use super::{Outcome, Refused, Said, Status};

/// The specs to start from, by the name that asks for each.
const STARTS: &[(&str, &str)] = &[
    (
        "smokebox-tube-plate-pressed",
        include_str!("new/smokebox-tube-plate-pressed.yaml"),
    ),
    (
        "smokebox-tube-plate-fabricated",
        include_str!("new/smokebox-tube-plate-fabricated.yaml"),
    ),
];

/// Prints the commented spec of a kind of plate: `smokebox-tube-plate-pressed`, with hyphens or spaces.
///
/// Refused where the kind is not known or leaves open which of several is meant; the known ones are then named.
pub fn start(kind: &str) -> Outcome {
    let asked = kind.trim().to_lowercase().replace([' ', '_'], "-");
    match STARTS.iter().find(|(name, _)| *name == asked) {
        Some((_, spec)) => Ok(Said {
            words: (*spec).into(),
            status: Status::Done,
        }),
        None => Err(Refused {
            report: not_known(kind, &asked),
        }),
    }
}

/// The names of the kinds, for the help of the command line.
pub fn kinds() -> impl Iterator<Item = &'static str> {
    STARTS.iter().map(|(name, _)| *name)
}

fn not_known(kind: &str, asked: &str) -> String {
    let meant: Vec<&str> = kinds()
        .filter(|name| !asked.is_empty() && name.starts_with(asked))
        .collect();
    let (fact, names) = match meant.is_empty() {
        true => (
            format!("there is no spec to start from for `{kind}`"),
            kinds().collect(),
        ),
        false => (format!("`{kind}` may be one of several"), meant),
    };
    format!("{fact}\n  ask for one of these: {}\n", names.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::set_out;
    use crate::spec::read_spec;

    #[test]
    fn holds_every_start_reads_and_sets_out() {
        for (name, text) in STARTS {
            let spec = read_spec(name, text.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"));
            if let Err(faults) = set_out(&spec) {
                panic!("{}", spec.refuse(faults));
            }
        }
    }

    #[test]
    fn refuses_a_kind_that_is_not_known_or_not_whole() {
        let report = |kind| start(kind).expect_err("no such kind").report;
        assert_eq!(
            report("smokebox tube plate"),
            "`smokebox tube plate` may be one of several\n  ask for one of these: smokebox-tube-plate-pressed, \
             smokebox-tube-plate-fabricated\n"
        );
        assert_eq!(
            report("kettle"),
            "there is no spec to start from for `kettle`\n  ask for one of these: smokebox-tube-plate-pressed, \
             smokebox-tube-plate-fabricated\n"
        );
    }
}
