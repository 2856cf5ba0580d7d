//! Which details a plate has, and the letter by which each is found on its parent view.

use super::preparation_detail::preparation_of;
use super::set::Set;
use crate::design::FlangeDesign;

/// What a detail shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shows {
    /// The heel of a pressed flange, in section.
    Heel,
    /// Ring and welds, in section.
    Ring,
    /// The ring's end before it is welded.
    Preparation,
    /// A hole of this group with what goes into it.
    Hole(usize),
    /// The joint of a piece let in, by its place among the repairs.
    Joint(usize),
    /// A gauge for the heel's radius: it shows no place of the plate.
    HeelGauge,
    /// A gauge for the roll of a ring.
    RollCheck,
}

/// Every detail in reading order, with its letter where it enlarges a place of the plate; a gauge has none.
pub fn lettered(set: &Set<'_>) -> Vec<(Option<String>, Shows)> {
    let mut next = 0;
    wanted(set)
        .into_iter()
        .map(|shows| match shows {
            Shows::HeelGauge | Shows::RollCheck => (None, shows),
            Shows::Heel | Shows::Ring | Shows::Preparation | Shows::Joint(_) | Shows::Hole(_) => {
                next += 1;
                (Some(letter(next - 1)), shows)
            }
        })
        .collect()
}

fn wanted(set: &Set<'_>) -> Vec<Shows> {
    let mut all = Vec::new();
    match &set.design.flange {
        Some(FlangeDesign::Pressed(_)) => all.extend([Shows::Heel, Shows::HeelGauge]),
        Some(FlangeDesign::Fabricated(_)) => {
            all.push(Shows::Ring);
            all.extend(preparation_of(set).map(|_| Shows::Preparation));
        }
        None => {}
    }
    all.extend(set.design.pieces().map(|(i, _)| Shows::Joint(i)));
    let groups = 0..set.design.groups.len();
    all.extend(groups.filter(|&g| set.number_off(g) > 0).map(Shows::Hole));
    if matches!(set.design.flange, Some(FlangeDesign::Fabricated(_))) {
        all.push(Shows::RollCheck);
    }
    all
}

/// Letter of a detail: D … Z without I, O and X, then DD … A, B and C are left out, which name the datums, and X, which names the section.
fn letter(i: usize) -> String {
    const LETTERS: &[u8] = b"DEFGHJKLMNPQRSTUVWYZ";
    let letter = |i: usize| char::from(LETTERS[i % LETTERS.len()]);
    match i / LETTERS.len() {
        0 => letter(i).into(),
        round => format!("{}{}", letter(round - 1), letter(i)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// D to Z without I, O and X are 20 letters; the next is written with two.
    #[test]
    fn by_hand_letters() {
        let words: Vec<String> = [0, 5, 19, 20].map(letter).into();
        assert_eq!(words, ["D", "J", "Z", "DD"]);
    }
}
