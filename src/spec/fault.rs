//! A fault names the place, the fact and the remedy.

use std::fmt;
use std::ops::Range;

use annotate_snippets::{AnnotationKind, Element, Group, Level, Renderer, Snippet};

use super::Spec;
use super::as_far::AsFar;
use super::node::Place;

/// One thing wrong with a spec.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Dotted path of the key it concerns, `tubes[0].pattern.columns.pitch`; empty where it concerns the whole file.
    pub path: String,
    /// What is wrong, in a sentence without a full stop.
    pub fact: String,
    /// What to do about it.
    pub remedy: String,
    /// Other keys that the fact speaks of, each with a short word on it.
    pub also: Vec<(String, String)>,
}

impl Fault {
    /// A fault at one key.
    pub fn new(
        path: impl Into<String>,
        fact: impl Into<String>,
        remedy: impl Into<String>,
    ) -> Fault {
        Fault {
            path: path.into(),
            fact: fact.into(),
            remedy: remedy.into(),
            also: Vec::new(),
        }
    }

    /// The same, naming a second key that it speaks of.
    pub fn and(mut self, path: impl Into<String>, word: impl Into<String>) -> Fault {
        self.also.push((path.into(), word.into()));
        self
    }
}

/// Every fault found in one run, in the order of the file. Never empty.
#[derive(Clone, Debug)]
pub struct Faults {
    /// The faults.
    pub faults: Vec<Fault>,
    /// How they read on a screen, with file, line, column and source line.
    pub report: String,
    /// The spec as far as it could be read, where it could be.
    pub(super) as_far: Option<Box<AsFar>>,
}

impl Faults {
    /// Goes on as far as possible: looks for faults in what could be read all the same, and tells them with the others.
    /// Nothing that only follows from a fault found already is told.
    pub fn and_beyond(self, look: impl FnOnce(&Spec) -> Vec<Fault>) -> Faults {
        match self.as_far {
            Some(far) => far.look(look),
            None => self,
        }
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.report)
    }
}

impl std::error::Error for Faults {}

/// A fault with its places in the file.
#[derive(Clone, Debug)]
pub(super) struct Placed {
    pub(super) fault: Fault,
    /// Nothing where it concerns the whole file.
    place: Option<Place>,
    also: Vec<(Place, String)>,
}

impl Placed {
    pub(super) fn at(place: Place, fault: Fault) -> Placed {
        Placed {
            fault,
            place: Some(place),
            also: Vec::new(),
        }
    }

    pub(super) fn whole_file(fault: Fault) -> Placed {
        Placed {
            fault,
            place: None,
            also: Vec::new(),
        }
    }

    pub(super) fn and_at(mut self, place: Place, word: impl Into<String>) -> Placed {
        self.also.push((place, word.into()));
        self
    }
}

/// More than these are counted and not shown: a spec in the wrong unit has a fault on every line.
const MOST_SHOWN: usize = 40;

/// A line longer than this is not repeated in the report, characters.
const LONGEST_SHOWN_LINE: usize = 2000;

/// Puts faults in the order of the file and says them for a screen.
pub(super) fn report(file: &str, source: &str, mut placed: Vec<Placed>) -> Faults {
    placed.sort_by_key(|one| one.place);
    let lines: Vec<&str> = source.split('\n').collect();
    let mut text = String::new();
    for one in placed.iter().take(MOST_SHOWN) {
        text.push_str(&say(file, &lines, one));
        text.push_str("\n\n");
    }
    text.push_str(&count(file, placed.len()));
    Faults {
        faults: placed.into_iter().map(|one| one.fault).collect(),
        report: text,
        as_far: None,
    }
}

fn count(file: &str, faults: usize) -> String {
    let shown = match faults > MOST_SHOWN {
        true => format!(", the first {MOST_SHOWN} of them shown"),
        false => String::new(),
    };
    match faults {
        1 => format!("{file}: refused for 1 fault; nothing was written\n"),
        many => format!("{file}: refused for {many} faults{shown}; nothing was written\n"),
    }
}

fn say(file: &str, lines: &[&str], one: &Placed) -> String {
    let Some(place) = one.place else {
        return plainly(&format!("in {file}"), one);
    };
    let (first, last) = one
        .also
        .iter()
        .map(|(also, _)| also.line)
        .fold((place.line, place.line), |(low, high), line| {
            (low.min(line), high.max(line))
        });
    let first = first.clamp(1, lines.len());
    let last = last.clamp(first, lines.len());
    let shown = &lines[first - 1..last];
    if shown.iter().any(|line| line.len() > LONGEST_SHOWN_LINE) {
        return plainly(
            &format!(
                "in {file}, line {}, column {}",
                place.line,
                place.column + 1
            ),
            one,
        );
    }
    in_source(file, &shown.join("\n"), first, place, one)
}

fn plainly(origin: &str, one: &Placed) -> String {
    let Fault {
        path, fact, remedy, ..
    } = &one.fault;
    let key = if path.is_empty() {
        String::new()
    } else {
        format!("{path}: ")
    };
    format!("refused: {key}{fact}\n   = {origin}\n   = remedy: {remedy}")
}

/// The fault under its line of the file. `source` begins at line `first`.
fn in_source(file: &str, source: &str, first: usize, place: Place, one: &Placed) -> String {
    let mut snippet = Snippet::source(source)
        .line_start(first)
        .path(file)
        .annotation(
            AnnotationKind::Primary
                .span(stretch(source, first, place))
                .label(one.fault.path.as_str()),
        );
    for (also, word) in &one.also {
        snippet = snippet.annotation(
            AnnotationKind::Context
                .span(stretch(source, first, *also))
                .label(word.as_str()),
        );
    }
    let group: Group = Level::ERROR
        .with_name("refused")
        .primary_title(one.fault.fact.as_str())
        .element(Element::from(snippet))
        .element(
            Level::HELP
                .with_name("remedy")
                .message(one.fault.remedy.as_str()),
        );
    Renderer::plain().render(&[group])
}

/// The bytes of a place in a source that begins at line `first`; never past the end of its line, nor of the source.
fn stretch(source: &str, first: usize, place: Place) -> Range<usize> {
    let above = place.line.saturating_sub(first);
    let line = source.split('\n').nth(above);
    let Some(line) = line.map(str::trim_end) else {
        return source.len()..source.len();
    };
    let start: usize = source
        .split('\n')
        .take(above)
        .map(|text| text.len() + 1)
        .sum();
    let byte = |character: usize| {
        line.char_indices()
            .nth(character)
            .map_or(line.len(), |(byte, _)| byte)
    };
    let from = byte(place.column);
    let to = byte(place.column.saturating_add(place.length)).max(from);
    let to = from + line[from..to].trim_end().len();
    start + from..start + to
}
