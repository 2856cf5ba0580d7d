//! A cut file that came back, or that somebody else altered, compared with the part that was sent.
//!
//! Every kind of line that a drawing program may have made of ours is understood: blocks, loose lines and arcs, polylines of either
//! kind, other layers, other units, entities stored mirrored. First it is found how the whole drawing lies (scale, hand, turn,
//! place); under that motion it is compared figure by figure. Places are told on the part, in the axes of the spec.

mod chain;
mod circles;
mod contours;
mod deviation;
mod flatten;
mod marks;
mod motion;
mod placing;
mod told;
mod wanted;

#[cfg(test)]
mod tests;

use std::collections::BTreeMap;
use std::fmt;

use super::part::{CutPart, Layer};
use super::reader::{FileUnit, read};
use crate::design::{Edge, HoleIndex, Point};
use crate::units::Length;
use crate::units::tolerance::JOINED_ENDS_MM;
use chain::{Figures, Round, figures};
use circles::{compare_circles, round_back};
use contours::compare_contour;
pub use deviation::{Comparison, Deviation, DeviationKind};
use deviation::{counted, mm, place};
use flatten::{Flat, flatten};
use marks::{DrawnPop, compare_pops, drawn_pops, match_marks};
use placing::{Placing, place as place_drawing};
use wanted::{Wanted, wanted};

/// Larger than this no cut file is.
const MOST_BYTES: usize = 64 << 20;

/// Why a file cannot be compared.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Uncompared {
    /// What is wrong with it.
    pub fact: String,
    /// What to do about it.
    pub remedy: String,
}

impl fmt::Display for Uncompared {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}\n   = remedy: {}", self.fact, self.remedy)
    }
}

impl std::error::Error for Uncompared {}

fn uncompared(fact: impl Into<String>, remedy: impl Into<String>) -> Uncompared {
    Uncompared {
        fact: fact.into(),
        remedy: remedy.into(),
    }
}

/// Compares a file with the part of this name, or with that of the parts which it is most like.
///
/// `within` is the distance below which two places are one. Refused: a file that is no DXF, is damaged, or draws nothing; a name
/// that is no part's; a spec that has no part.
pub fn compare_returned(
    bytes: &[u8],
    parts: &[CutPart],
    named: Option<&str>,
    within: Length,
) -> Result<Comparison, Uncompared> {
    let among = parts_named(parts, named)?;
    let file = ReturnedFile::read(bytes)?;
    let within_mm = within.to_mm();
    let mut best: Option<(f64, usize, Comparison)> = None;
    for part in among {
        let wanted = wanted(part);
        let placing = place_drawing(&wanted, &file.figures, within_mm.max(JOINED_ENDS_MM));
        let mut comparison = Comparing::new(&wanted, &file, &placing, within_mm).compare();
        comparison.part = part.name.clone();
        comparison.part_chosen = named.is_none() && parts.len() > 1;
        let better = best.as_ref().is_none_or(|(found, differences, _)| {
            placing.found > *found
                || (placing.found == *found && comparison.differences.len() < *differences)
        });
        if better {
            best = Some((placing.found, comparison.differences.len(), comparison));
        }
    }
    let (_, _, comparison) = best.expect("there is a part to compare with");
    Ok(comparison)
}

fn parts_named<'a>(
    parts: &'a [CutPart],
    named: Option<&str>,
) -> Result<Vec<&'a CutPart>, Uncompared> {
    let names: Vec<&str> = parts.iter().map(|part| part.name.as_str()).collect();
    if parts.is_empty() {
        return Err(uncompared(
            "the spec orders no cutting, so there is no part to compare with",
            "write `cutting` in the spec",
        ));
    }
    let Some(name) = named else {
        return Ok(parts.iter().collect());
    };
    match parts.iter().find(|part| part.name == name) {
        Some(part) => Ok(vec![part]),
        None => Err(uncompared(
            format!("the spec cuts no part named {name}"),
            format!("name one of its parts: {}", names.join(", ")),
        )),
    }
}

/// A file that came back.
struct ReturnedFile {
    unit: FileUnit,
    flat: Flat,
    figures: Figures,
    cut_short: bool,
}

impl ReturnedFile {
    fn read(bytes: &[u8]) -> Result<ReturnedFile, Uncompared> {
        const AGAIN: &str = "ask for it again as DXF, version R12 or R2000, in millimetres";
        if bytes.len() > MOST_BYTES {
            return Err(uncompared(
                format!(
                    "the file is {} bytes long; no cut file is over {MOST_BYTES}",
                    bytes.len()
                ),
                AGAIN,
            ));
        }
        let file = read(bytes).map_err(|cause| {
            uncompared(
                format!("the file is no DXF that can be read: {cause}"),
                AGAIN,
            )
        })?;
        let flat = flatten(&file)
            .map_err(|fact| uncompared(format!("the file cannot be used: {fact}"), AGAIN))?;
        if flat.drawn.is_empty() {
            let fact = match flat.foreign.is_empty() {
                true => "the file draws nothing".into(),
                false => format!(
                    "the file holds no line, arc, circle or point: only {}",
                    told::foreign(&flat).join(", ")
                ),
            };
            return Err(uncompared(fact, AGAIN));
        }
        let binary = bytes.starts_with(b"AutoCAD");
        let end = bytes.trim_ascii_end();
        Ok(ReturnedFile {
            unit: file.unit,
            figures: figures(&flat.drawn),
            flat,
            cut_short: !binary && !end.ends_with(b"EOF"),
        })
    }
}

/// One comparison: the file's figures brought onto the part.
struct Comparing<'a> {
    wanted: &'a Wanted,
    file: &'a ReturnedFile,
    placing: &'a Placing,
    within: f64,
    pieces: Vec<Edge>,
    index: HoleIndex,
    rounds: Vec<Round>,
    dots: Vec<Point>,
    /// Pieces that have been found to be something of the part.
    taken: Vec<bool>,
    differences: Vec<Deviation>,
    notes: Vec<String>,
    /// Layer of the part and of the file for everything found, with the name of each figure that is cut.
    layers: Vec<(Layer, String, String)>,
    as_wanted: BTreeMap<&'static str, (usize, usize)>,
}

impl<'a> Comparing<'a> {
    fn new(
        wanted: &'a Wanted,
        file: &'a ReturnedFile,
        placing: &'a Placing,
        within: f64,
    ) -> Comparing<'a> {
        let motion = &placing.motion;
        let of_file = &file.figures;
        let pieces: Vec<Edge> = of_file
            .pieces
            .iter()
            .map(|p| motion.edge_back(&p.edge))
            .collect();
        let rounds = of_file.rounds.iter();
        let rounds = rounds.map(|r| round_back(r, |p| motion.back(p), motion.scale));
        Comparing {
            index: HoleIndex::of_places(pieces.iter().map(Edge::midpoint).enumerate()),
            rounds: rounds.collect(),
            dots: of_file
                .dots
                .iter()
                .map(|(_, at)| motion.back(*at))
                .collect(),
            taken: vec![false; pieces.len()],
            pieces,
            wanted,
            file,
            placing,
            within,
            differences: Vec::new(),
            notes: Vec::new(),
            layers: Vec::new(),
            as_wanted: BTreeMap::new(),
        }
    }

    fn compare(mut self) -> Comparison {
        self.differences = told::placing(self.placing, self.file.unit, self.within);
        let marks = self.marks();
        self.circles();
        self.contours();
        self.pops();
        self.missing_marks(&marks);
        self.left_over();
        self.twice();
        self.strange();
        self.differences.extend(told::strays(&self.layers));
        self.notes.extend(told::layers(&self.layers));
        Comparison {
            part: String::new(),
            part_chosen: false,
            within_mm: self.within,
            differences: self.differences,
            notes: self.notes,
            as_wanted: self.as_wanted,
        }
    }

    fn marks(&mut self) -> Vec<Option<usize>> {
        let marks = &self.wanted.marks;
        let found = match_marks(
            marks,
            &self.pieces,
            &self.index,
            &mut self.taken,
            self.within,
        );
        for (mark, piece) in marks.iter().zip(&found) {
            if let Some(piece) = piece {
                let layer = self.file.figures.pieces[*piece].layer.clone();
                self.layers.push((mark.layer, layer, String::new()));
            }
        }
        found
    }

    fn circles(&mut self) {
        let free =
            |round: &Round| round.pieces.is_empty() || !round.pieces.iter().all(|&p| self.taken[p]);
        let rounds: Vec<Round> = self.rounds.iter().filter(|r| free(r)).cloned().collect();
        let circles = compare_circles(&self.wanted.circles, &rounds, self.within);
        for (circle, matched) in self.wanted.circles.iter().zip(&circles.matched) {
            if let Some(number) = matched {
                let layer = rounds[*number].layer.clone();
                self.layers.push((circle.layer, layer, circle.name.clone()));
            }
        }
        // Every circle has been told of, as one of the part or as a stranger.
        for round in &rounds {
            round.pieces.iter().for_each(|&p| self.taken[p] = true);
        }
        self.count("circles", circles.as_wanted, self.wanted.circles.len());
        self.differences.extend(circles.differences);
    }

    fn contours(&mut self) {
        let chains = &self.file.figures.chains;
        let mut taken: Vec<bool> = chains
            .iter()
            .map(|chain| chain.pieces.iter().any(|&p| self.taken[p]))
            .collect();
        let (mut alike, mut found) = (0, Vec::new());
        for contour in &self.wanted.contours {
            let compared = compare_contour(contour, &self.pieces, chains, &taken, self.within);
            alike += usize::from(compared.differences.is_empty());
            for &chain in &compared.chains {
                taken[chain] = true;
                for &piece in &chains[chain].pieces {
                    self.taken[piece] = true;
                }
                let first = chains[chain].pieces[0];
                let layer = self.file.figures.pieces[first].layer.clone();
                self.layers
                    .push((contour.layer, layer, contour.name.clone()));
            }
            found.extend(compared.differences);
        }
        self.count("contours", alike, self.wanted.contours.len());
        self.differences.extend(found);
    }

    fn pops(&mut self) {
        let drawn = drawn_pops(
            &self.pieces,
            &self.index,
            &self.taken,
            &self.dots,
            self.within,
        );
        let pops = compare_pops(&self.wanted.pops, &drawn, self.within);
        let layer = |pop: &DrawnPop| match pop.dot {
            Some(dot) => self.file.figures.dots[dot].0.clone(),
            None => self.file.figures.pieces[pop.pieces[0]].layer.clone(),
        };
        for (pop, matched) in self.wanted.pops.iter().zip(&pops.matched) {
            if let Some(number) = matched {
                self.layers
                    .push((Layer::Pop, layer(&drawn[*number]), pop.name.clone()));
            }
        }
        self.count("pops", pops.as_wanted, self.wanted.pops.len());
        self.differences.extend(pops.differences);
        if pops.otherwise_drawn > 0 {
            let pops = counted(pops.otherwise_drawn, "pop", "pops");
            self.notes.push(format!(
                "{pops} drawn as points for crosses, or the reverse"
            ));
        }
        for (number, pop) in drawn.iter().enumerate() {
            pop.pieces.iter().for_each(|&p| self.taken[p] = true);
            if !pops.matched.contains(&Some(number)) {
                self.differences.push(Deviation {
                    kind: DeviationKind::Extra,
                    what: "a pop".into(),
                    at: Some(pop.at),
                    by: None,
                    fact: format!("at {} is not of this part", place(pop.at)),
                });
            }
        }
    }

    /// Marks that are not there, counted by layer. What lies beside the part may be left away: nothing is cut or struck by it.
    fn missing_marks(&mut self, found: &[Option<usize>]) {
        for layer in Layer::ALL {
            let of_layer = self.wanted.marks.iter().zip(found);
            let of_layer: Vec<_> = of_layer.filter(|(mark, _)| mark.layer == layer).collect();
            let gone: Vec<Point> = of_layer
                .iter()
                .filter(|(_, found)| found.is_none())
                .map(|(mark, _)| mark.edge.midpoint())
                .collect();
            if layer != Layer::Reference {
                let all = of_layer.len();
                let count = self.as_wanted.entry("marks").or_default();
                *count = (count.0 + all - gone.len(), count.1 + all);
            }
            let Some(first) = gone.first() else { continue };
            let fact = format!(
                "lacks {} of {}, the first at {}",
                gone.len(),
                counted(of_layer.len(), "line", "lines"),
                place(*first)
            );
            match layer {
                Layer::Reference => self.notes.push(format!("{} {fact}", layer.name())),
                _ => self.differences.push(Deviation {
                    kind: DeviationKind::Missing,
                    what: layer.name().into(),
                    at: Some(*first),
                    by: None,
                    fact,
                }),
            }
        }
    }

    /// Lines and arcs that are nothing of the part, counted by layer of the file.
    fn left_over(&mut self) {
        let mut strangers: BTreeMap<&str, Vec<&Edge>> = BTreeMap::new();
        for (number, piece) in self.file.figures.pieces.iter().enumerate() {
            if !self.taken[number] {
                strangers
                    .entry(&piece.layer)
                    .or_default()
                    .push(&self.pieces[number]);
            }
        }
        for (layer, edges) in strangers {
            let length: f64 = edges.iter().map(|e| e.length_mm()).sum();
            let at = edges[0].midpoint();
            self.differences.push(Deviation {
                kind: DeviationKind::Extra,
                what: counted(edges.len(), "line or arc", "lines and arcs"),
                at: Some(at),
                by: Some(length),
                fact: format!(
                    "on layer {layer}, {} long in all, not of this part, the first at {}",
                    mm(length),
                    place(at)
                ),
            });
        }
    }

    fn twice(&mut self) {
        let ours = |at: &Point| {
            self.wanted
                .twice
                .iter()
                .any(|p| p.distance(*at) <= self.within)
        };
        let back = |at: &Point| self.placing.motion.back(*at);
        let twice: Vec<Point> = self.file.figures.twice.iter().map(back).collect();
        let twice: Vec<Point> = twice.into_iter().filter(|at| !ours(at)).collect();
        if let Some(at) = twice.first() {
            self.differences.push(Deviation {
                kind: DeviationKind::Doubled,
                what: counted(twice.len(), "line or arc", "lines and arcs"),
                at: Some(*at),
                by: None,
                fact: format!("drawn more than once, the first at {}", place(*at)),
            });
        }
    }

    fn strange(&mut self) {
        self.differences
            .extend(told::strange(&self.file.flat, self.file.cut_short));
        self.notes
            .extend(told::oddities(&self.file.flat, self.file.unit));
        if self.placing.either_hand {
            self.notes.push("the cut contours are alike at both hands, and no mark is left that tells which this is".into());
        }
    }

    fn count(&mut self, what: &'static str, found: usize, all: usize) {
        self.as_wanted.insert(what, (found, all));
    }
}
