//! What the checks are and are not: the words that stand beside every list of findings.

/// What was checked, what only people can check, and what this program does not cover.
#[derive(Clone, Copy, Debug)]
pub struct Legend {
    /// What a finding says, verdict by verdict.
    pub verdicts: &'static [(&'static str, &'static str)],
    /// What a program cannot see, and is for the inspector.
    pub for_the_inspector: &'static [&'static str],
    /// What no rule of the register covers.
    pub not_covered: &'static [&'static str],
}

/// The legend of the design check sheet.
pub fn legend() -> Legend {
    Legend {
        verdicts: VERDICTS,
        for_the_inspector: FOR_THE_INSPECTOR,
        not_covered: NOT_COVERED,
    }
}

const VERDICTS: &[(&str, &str)] = &[
    (
        "meets",
        "as much as the named rule asks, or more; equal meets, and nothing is rounded at the limit",
    ),
    (
        "below",
        "less than the named rule asks, and nobody has agreed to it: no cut file is written",
    ),
    (
        "conceded",
        "less than the named rule asks, and somebody with the right to do so has agreed, by name and reference",
    ),
    (
        "not judged",
        "a figure is missing or no rule covers it; what would settle it is named",
    ),
    ("note", "worth saying; judges nothing"),
];

const FOR_THE_INSPECTOR: &[&str] = &[
    "whether the rules named are the right ones for this boiler, and whether an old plate may stay under them",
    "what counts as support: tubes, flues, palms and the flange",
    "whether the metal is what the certificate says, and sound: laminations, cracks, grooving, wasted stays",
    "the flange as formed: thinning, heat treatment, fit to the barrel",
    "weld procedure, welder, testing of welds, and holes near them",
    "holes as finished: oval, scored or wandered",
    "corrosion to be allowed for, and the test pressure",
];

const NOT_COVERED: &[&str] = &[
    "fatigue and cracks",
    "creep",
    "weld size",
    "thermal stress",
    "strength of tube joints",
    "bending stress by finite elements",
    "loads from the road, from lifting or from the frames",
];

/// The short cautions that stand boxed on sheets, page and order note.
pub fn cautions() -> &'static [&'static str] {
    CAUTIONS
}

const CAUTIONS: &[&str] = &[
    "A boiler stores energy, and a wrong plate can kill. This compares figures with named rules and approves nothing: design, repair, \
     material, welding, heat treatment, testing and pressure rest with the works' competent engineer and the inspecting body, under local law.",
    "\"Meets\" is said against the named rule only. What was not judged is listed: read it.",
    "A drilled hole is there for ever: no hole past its pilot before the hold point is signed.",
    "Never finish a tube seat, rivet hole or tapped hole by heat; dress burnt edges back to sound metal.",
    "Mark TOP and which face goes where before anything is cut.",
    "Prove a full-size print with its bar; a steel rule is right and paper is not.",
    "Masses are estimates. A plate has sharp edges and no natural point of balance: a competent person plans the lift.",
    "Ultrasonic thickness finds no cracks, grooving or wasted stays.",
    "Old lagging may hold asbestos and old paint lead; a barrel is a confined space; keep people away from a boiler under test.",
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::REGISTER;

    /// What somebody has to read before metal is cut: who decides, hold points, heat, hand, and the scale of a print.
    #[test]
    fn holds_the_cautions_say_what_matters() {
        for (caution, word) in cautions().iter().zip([
            "approves nothing",
            "not judged",
            "hold point",
            "by heat",
            "TOP",
            "full-size print",
            "plans the lift",
            "cracks",
            "asbestos",
        ]) {
            assert!(caution.contains(word), "{caution}");
        }
        assert_eq!(cautions().len(), 9);
    }

    /// The tool compares; it approves nothing, and never says that it does.
    #[test]
    fn holds_no_word_of_approval() {
        let legend = legend();
        let verdicts = legend.verdicts.iter().flat_map(|(a, b)| [*a, *b]);
        let said = verdicts
            .chain(legend.for_the_inspector.iter().copied())
            .chain(legend.not_covered.iter().copied())
            .chain(cautions().iter().copied())
            .chain(REGISTER.iter().map(|rule| rule.asks));
        for words in said {
            for word in words.split(|c: char| !c.is_alphanumeric()) {
                assert!(
                    !["safe", "approved", "passed", "OK"].contains(&word),
                    "{words}"
                );
            }
        }
    }
}
