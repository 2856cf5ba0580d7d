//! What a finding says, in the trade's words: keys of the spec and names of rules stand for things that have names of their own.
//!
//! The program, `results.json` and the page keep the keys. On paper a key stands only where the drawing office has to know what to
//! write: in the list of what was not judged, in brackets behind the words.

use super::set::Set;
use crate::checks::REGISTER;

/// Whether a key is told behind the words that it stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keys {
    /// In brackets, for the drawing office.
    Told,
    /// Words alone.
    LeftOut,
}

/// What a key of the spec stands for, by how the key ends; the first that fits. `{}` is the group that it is written of.
const WORDS: [(&str, &str); 39] = [
    ("within.land", "the land set for {}"),
    ("working_pressure", "the working pressure"),
    ("judged_by", "the list of the rules that judge this job"),
    ("support.above_tubes", "what holds the flat above the tubes"),
    ("support.flange_line", "the flange's line of support"),
    ("support", "what holds the flat"),
    ("survey.required", "the thickness required in the survey"),
    ("plate.material.metal", "the metal of the plate"),
    ("plate.material.strength", "the strength of the plate"),
    ("plate.material", "the material of the plate"),
    ("barrel.material.strength", "the strength of the barrel"),
    (
        "barrel.thickness_required",
        "the thickness required of the barrel",
    ),
    ("barrel", "the barrel"),
    ("rivets.head_diameter", "the diameter of the rivet heads"),
    ("rivets.head_clearance", "the clearance of the rivet heads"),
    ("rivets.shear_strength", "the shear strength of the rivets"),
    ("rivets", "the line of rivets"),
    (
        "roof_girders.side_plates.compression",
        "the stress allowed on the side plates",
    ),
    ("stay.telltale", "the telltale hole of {}"),
    ("stay.metal", "the metal of {}"),
    ("stay.strength", "the strength of {}"),
    ("stay.ends", "how the ends of {} are held"),
    ("stay.square_length", "the length of {} square to the plate"),
    ("stay.slant_length", "the length of {} along the slant"),
    ("stay_tubes.which", "{}"),
    ("stay", "the bar of {}"),
    ("flanged_mouth.depth", "the depth of the mouth of {}"),
    ("tube", "the outside of {}"),
    ("wall", "the wall"),
    (
        "weld.build_up.metal_left",
        "the metal left under the weld of {}",
    ),
    (
        "weld.caulking_edge.metal_left",
        "the metal left at the caulking edge of {}",
    ),
    (
        "flange.fabricated.joint.barrel_seam",
        "the place of the barrel's seam",
    ),
    ("between_plates", "length between the plates"),
    ("other_plate", "thickness of the other plate"),
    ("other_projection", "how far they stand out there"),
    ("projection", "how far they stand out here"),
    ("only", "the rule set that it names"),
    ("up_to", "the most that it concedes"),
    ("hole", "the hole of {}"),
];

/// A sentence of a finding as it stands on paper.
pub fn in_words(set: &Set<'_>, sentence: &str, keys: Keys) -> String {
    let mut words = String::new();
    let mut inside = false;
    for piece in sentence.split('`') {
        match inside {
            true => words.push_str(&key_in_words(set, piece, keys)),
            false => words.push_str(&rules_in_words(piece)),
        }
        inside = !inside;
    }
    words
}

/// A bare key in the trade's words.
pub fn key_words(set: &Set<'_>, key: &str) -> String {
    key_in_words(set, key, Keys::LeftOut)
}

fn key_in_words(set: &Set<'_>, key: &str, keys: Keys) -> String {
    if let Some(asks) = asks_of(key) {
        return asks.into();
    }
    let words = if key.starts_with("own_limits.") {
        "the works' own limit".to_string()
    } else if key.starts_with("cutting.") {
        "the works' own limit for cutting".to_string()
    } else {
        let ends = |end: &str| key == end || key.ends_with(&format!(".{end}"));
        let found = WORDS.iter().find(|(end, _)| ends(end));
        let last = || key.rsplit('.').next().unwrap_or(key).replace('_', " ");
        found.map_or_else(last, |(_, words)| {
            words.replace("{}", &written_of(set, key))
        })
    };
    match keys {
        Keys::Told => format!("{words} ({key})"),
        Keys::LeftOut => words,
    }
}

/// What a path is written of: "the longitudinal stays" of `holes[2].stay.strength`.
fn written_of(set: &Set<'_>, key: &str) -> String {
    let path = key.split('.').next().unwrap_or(key);
    let groups = &set.design.groups;
    let group = groups.iter().find(|group| group.path == path);
    group.map_or("it".into(), |group| format!("the {}", group.name))
}

/// Names of rules among the words of a sentence, as what they ask.
fn rules_in_words(piece: &str) -> String {
    let words = piece.split_inclusive(|c: char| !(c.is_alphanumeric() || c == '_'));
    words
        .map(|word| {
            let name = word.trim_end_matches(|c: char| !(c.is_alphanumeric() || c == '_'));
            match asks_of(name).filter(|_| name.contains('_')) {
                Some(asks) => format!("“{asks}”{}", &word[name.len()..]),
                None => word.to_string(),
            }
        })
        .collect()
}

fn asks_of(name: &str) -> Option<&'static str> {
    let rule = REGISTER.iter().find(|rule| rule.name == name)?;
    Some(rule.asks)
}

#[cfg(test)]
mod tests {
    use super::super::sample_jobs::{jobs, with_set};
    use super::*;

    /// The third set of holes of Marl Hen is its longitudinal stays; no reader counts sets from nought.
    #[test]
    fn by_hand_keys_of_marl_hen() {
        with_set("specs/marl-hen-smokebox.yaml", |set| {
            let why = "`holes[2].stay.strength` is not given";
            assert_eq!(
                in_words(set, why, Keys::Told),
                "the strength of the longitudinal stays (holes[2].stay.strength) is not given"
            );
            assert_eq!(
                in_words(set, "judged under end_seam; and", Keys::LeftOut),
                "judged under “strength of the seam to the barrel”; and"
            );
        });
    }

    /// Nothing that a finding of the demonstration jobs says has a key or a rule's name left in it.
    #[test]
    fn holds_no_key_is_left() {
        for job in jobs() {
            with_set(&job, |set| {
                for finding in set.findings {
                    let sentences = finding.working.iter().chain([&finding.why]);
                    for sentence in sentences {
                        let words = in_words(set, sentence, Keys::LeftOut);
                        assert!(!words.contains(['`', '_']), "{job}: {words}");
                    }
                }
            });
        }
    }
}
