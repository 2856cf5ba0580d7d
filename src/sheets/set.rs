//! What every sheet of a set is drawn from.

use super::board::{Board, PaperBox};
use super::figure::Figures;
use super::furniture::room;
use super::particulars::below;
use crate::checks::Finding;
use crate::cut::CutPart;
use crate::design::{Design, HoleGroup};
use crate::spec::{Paper, Spec};

/// Everything that a sheet may draw from; nothing here is worked out by a sheet.
#[derive(Clone, Copy)]
pub struct Set<'a> {
    /// What the office wrote.
    pub spec: &'a Spec,
    /// Every edge and hole in place.
    pub design: &'a Design,
    /// What the rules found.
    pub findings: &'a [Finding],
    /// Parts as the contractor cuts them.
    pub parts: &'a [CutPart],
    /// How lengths read.
    pub figures: Figures,
    /// Paper of its sheets.
    pub paper: Paper,
}

impl<'a> Set<'a> {
    /// The set on the paper that the spec asks for.
    pub fn new(
        spec: &'a Spec,
        design: &'a Design,
        findings: &'a [Finding],
        parts: &'a [CutPart],
    ) -> Set<'a> {
        Set {
            spec,
            design,
            findings,
            parts,
            figures: Figures::of(spec),
            paper: spec.written.sheets.paper,
        }
    }

    /// The same on A3, for sheets of words and records: larger paper is for views, and would leave these nearly empty.
    pub fn on_a3(&self) -> Set<'a> {
        Set {
            paper: Paper::A3,
            ..*self
        }
    }

    /// The box free for drawing on each of its sheets.
    pub fn room(&self) -> PaperBox {
        room(self.paper, below(self.findings) > 0)
    }

    /// An empty sheet.
    pub fn board(&self, name: &str, title: &str) -> Board {
        Board {
            paper: self.paper,
            ..Board::new(name, title, self.room())
        }
    }

    /// How many holes a group has.
    pub fn number_off(&self, group: usize) -> usize {
        self.design
            .holes
            .iter()
            .filter(|h| h.group == group)
            .count()
    }

    /// First and last number of a group: "S1–S4".
    pub fn numbers(&self, group: usize) -> String {
        let ids: Vec<&str> = self
            .design
            .holes
            .iter()
            .filter(|h| h.group == group)
            .map(|h| h.id.as_str())
            .collect();
        match (ids.first(), ids.last()) {
            (Some(first), Some(last)) if first != last => format!("{first}–{last}"),
            (Some(first), _) => (*first).to_string(),
            (None, _) => String::new(),
        }
    }

    /// The stages of a group in one line: "pop, drill {1 3/4}, ream {1 27/32}".
    pub fn stages(&self, group: &HoleGroup) -> String {
        let words: Vec<String> = group
            .stages
            .iter()
            .map(|s| match &s.size {
                Some(size) => format!("{} {}", s.name, self.figures.size_short(size)),
                None => s.name.clone(),
            })
            .collect();
        words.join(", ")
    }
}
