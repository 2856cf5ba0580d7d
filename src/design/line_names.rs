//! The name of every line of the nests: a letter, the same on every sheet and table.
//!
//! Letters run from the left over columns and from the bottom over rows, nest after nest. Left out are A, B and C, which are the datums,
//! I and O, which read as figures, L and R, which are hands, and the letters that the plate's hole numbers begin with. After Z come the
//! same letters doubled. (Common practice, no source.)

use std::collections::BTreeSet;

use super::{Hole, NestLine};

/// Letters that no line is named by.
const KEPT: &str = "ABCIOLR";

/// Names the lines of all nests, as they follow one another.
pub(super) fn name_lines(lines: &mut [NestLine], holes: &[Hole]) {
    let taken: BTreeSet<char> = holes.iter().filter_map(|h| h.id.chars().next()).collect();
    let free = ('A'..='Z').filter(|c| !KEPT.contains(*c) && !taken.contains(c));
    let letters: Vec<char> = free.collect();
    // A plate whose numbers begin with every letter there is has its lines by number.
    for (i, line) in lines.iter_mut().enumerate() {
        line.name = match letters.len() {
            0 => (i + 1).to_string(),
            off => letters[i % off].to_string().repeat(i / off + 1),
        };
    }
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use crate::design::{Design, set_out};
    use crate::spec::read_spec_file;

    fn design(job: &str) -> Design {
        let file = format!("specs/{job}-smokebox.yaml");
        let spec = read_spec_file(Path::new(&file)).unwrap_or_else(|faults| panic!("{faults}"));
        set_out(&spec).unwrap_or_else(|faults| panic!("{faults:#?}"))
    }

    /// Marl Hen has 13 columns, and holes T, P, W and S: of the alphabet D E F G H J K M N Q U V X stay for them, from the left.
    #[test]
    fn by_hand_columns_of_marl_hen() {
        let design = design("marl-hen");
        let names: Vec<&str> = design.nest_lines.iter().map(|l| l.name.as_str()).collect();
        assert_eq!(names.concat(), "DEFGHJKMNQUVX");
        assert!(design.nest_lines[0].offset < 0.0);
    }

    /// No two lines of a plate have one name, whatever their nest, and none has a datum's.
    #[test]
    fn holds_every_line_has_its_own_name() {
        for job in [
            "marl-hen",
            "hobthrush",
            "pinders-oak",
            "tallow-moor",
            "gritstone",
        ] {
            let design = design(job);
            let mut names: Vec<&str> = design.nest_lines.iter().map(|l| l.name.as_str()).collect();
            let off = names.len();
            names.sort_unstable();
            names.dedup();
            assert_eq!(names.len(), off, "{job}");
            assert!(
                !names.iter().any(|name| ["A", "B", "C"].contains(name)),
                "{job}"
            );
        }
    }
}
