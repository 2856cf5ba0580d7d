//! What every sheet of a set is drawn from.

use super::board::{Board, PaperBox};
use super::figure::Figures;
use super::furniture::room;
use super::paper_size::is_upright;
use super::warning::warning;
use crate::checks::{Effects, Finding, VerdictChange};
use crate::cut::CutPart;
use crate::design::{Design, Deviation, FilledRecord, number_runs};
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
    /// What was made otherwise, where `design` is the plate as it was made.
    pub made: Option<&'a AsMade<'a>>,
}

/// What a set of the plate as it was made tells beside the plate itself.
#[derive(Clone, Debug)]
pub struct AsMade<'a> {
    /// The plate as it was designed.
    pub designed: &'a Design,
    /// The record from which it comes.
    pub record: &'a FilledRecord,
    /// What is not as designed.
    pub deviations: Vec<Deviation<'a>>,
    /// What each hole made otherwise changes in the checks, by its index.
    pub effects: Effects,
    /// Findings whose verdict is another one than as designed.
    pub changed: &'a [VerdictChange],
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
            made: None,
        }
    }

    /// The set of a plate as it was made: what it is drawn from is that plate, and no part of it is cut any more.
    pub fn as_made(
        spec: &'a Spec,
        plate: &'a Design,
        findings: &'a [Finding],
        made: &'a AsMade<'a>,
    ) -> Set<'a> {
        Set {
            made: Some(made),
            ..Set::new(spec, plate, findings, &[])
        }
    }

    /// A title of a sheet or of the job, with what state of the plate it shows where that is not the design.
    pub fn titled(&self, title: &str) -> String {
        match self.made {
            None => title.to_string(),
            Some(_) => format!("{title}, as made"),
        }
    }

    /// The same on other paper.
    pub fn on(&self, paper: Paper) -> Set<'a> {
        Set { paper, ..*self }
    }

    /// Paper for words and records, smallest first. Larger paper is for views, and would leave these nearly empty; an office that
    /// prints its job on A4 has no other.
    pub fn papers_of_words(&self) -> &'static [Paper] {
        match self.spec.written.sheets.paper {
            Paper::A4 => &[Paper::A4],
            Paper::A3 | Paper::A2 | Paper::A1 | Paper::A0 => &[Paper::A4, Paper::A3],
        }
    }

    /// Where views go and where tables and notes: a column so wide beside the views; below them on upright paper, where the
    /// views take such a share of the height.
    pub fn shared(
        &self,
        room: &PaperBox,
        column: f64,
        gap: f64,
        share: f64,
    ) -> (PaperBox, PaperBox) {
        let (mut views, mut words) = (*room, *room);
        if is_upright(self.paper) {
            views.bottom = room.top + room.height() * share;
            words.top = views.bottom + gap;
        } else {
            words.left = room.right - column;
            views.right = words.left - gap;
        }
        (views, words)
    }

    /// The box free for drawing on each of its sheets.
    pub fn room(&self) -> PaperBox {
        room(self.paper, warning(self).is_some())
    }

    /// An empty sheet.
    pub fn board(&self, name: &str, title: &str) -> Board {
        Board {
            paper: self.paper,
            ..Board::new(name, &self.titled(title), self.room())
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

    /// How many holes of a group are made on this job; of a plate that is kept, those in its pieces let in.
    pub fn made_off(&self, group: usize) -> usize {
        let made = self.design.holes_made();
        made.filter(|hole| hole.group == group).count()
    }

    /// The numbers of those holes: "W1–W2", or run by run where a plate that is kept has others between them.
    pub fn numbers_made(&self, group: usize) -> String {
        if self.made_off(group) == self.number_off(group) {
            return self.numbers(group);
        }
        let made = self.design.holes_made();
        let ids: Vec<&str> = made
            .filter(|hole| hole.group == group)
            .map(|hole| hole.id.as_str())
            .collect();
        number_runs(&ids).replace('-', "–")
    }
}
