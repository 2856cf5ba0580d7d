//! Reads YAML into a tree of words with places; refuses what no spec needs and what could tie a reader in knots.
//!
//! The only file that names the reader with places. It takes the reader's events, never its typed values, so that `12:30`, `no`
//! and `1e3` stay what was typed until a key gives them a sense.

use saphyr_parser::{Event, Marker, Parser, ScalarStyle, ScanError, Span};

use super::Fault;
use super::fault::Placed;
use super::node::{Content, Entry, Node, Place};

/// Deeper than this nothing in a spec goes; it stops a file of brackets before it costs time.
const MOST_DEPTH: usize = 32;

/// Reads the whole of a file, one document without anchors or tags; with it a fault for each key that stands twice, of
/// which the tree keeps the first.
pub(super) fn read_tree(source: &str) -> Result<(Node, Vec<Placed>), Vec<Placed>> {
    let mut tree = Tree::default();
    let mut parser = Parser::new_from_str(source);
    while let Some(event) = parser.next_event() {
        let taken = match event {
            Ok((event, span)) => tree.take(event, span),
            Err(error) => Err(Box::new(not_yaml(source, &error))),
        };
        if let Err(stop) = taken {
            tree.faults.push(*stop);
            return Err(tree.faults);
        }
    }
    match tree.root {
        Some(root) => Ok((root, tree.faults)),
        None => Err(vec![empty()]),
    }
}

fn empty() -> Placed {
    Placed::whole_file(Fault::new(
        "",
        "nothing is written in the file",
        "start from a commented spec: centrepop new smokebox-tube-plate-pressed",
    ))
}

/// What the reader's events have built so far.
#[derive(Default)]
struct Tree {
    open: Vec<Open>,
    root: Option<Node>,
    faults: Vec<Placed>,
    documents: usize,
}

/// A list or a set of keys whose end has not come.
enum Open {
    List(Place, Vec<Node>),
    Keys(Place, Vec<Entry>, Option<(Box<str>, Place)>),
}

impl Tree {
    fn take(&mut self, event: Event, span: Span) -> Result<(), Box<Placed>> {
        let place = place_of(span);
        match event {
            Event::Nothing | Event::StreamStart | Event::StreamEnd | Event::DocumentEnd => Ok(()),
            Event::DocumentStart(_) => self.open_document(place),
            Event::Alias(_) => Err(knot(place, "a reference to another place")),
            Event::Scalar(text, style, anchor, tag) => {
                self.plain_only(place, anchor, tag.is_some())?;
                let quoted = style != ScalarStyle::Plain;
                let text = text.into_owned().into_boxed_str();
                self.put(Node {
                    place,
                    content: Content::Text { text, quoted },
                })
            }
            Event::SequenceStart(anchor, tag) => {
                self.plain_only(place, anchor, tag.is_some())?;
                self.go_in(place, Open::List(place, Vec::new()))
            }
            Event::MappingStart(anchor, tag) => {
                self.plain_only(place, anchor, tag.is_some())?;
                self.go_in(place, Open::Keys(place, Vec::new(), None))
            }
            Event::SequenceEnd | Event::MappingEnd => self.come_out(),
        }
    }

    fn open_document(&mut self, place: Place) -> Result<(), Box<Placed>> {
        self.documents += 1;
        match self.documents {
            1 => Ok(()),
            _ => Err(Box::new(Placed::at(
                place,
                Fault::new(
                    "",
                    "a second document begins here",
                    "keep one plate to a file: take out the line `---`",
                ),
            ))),
        }
    }

    fn plain_only(&self, place: Place, anchor: usize, tagged: bool) -> Result<(), Box<Placed>> {
        match (anchor, tagged) {
            (0, false) => Ok(()),
            (0, true) => Err(knot(place, "a type mark, `!`")),
            _ => Err(knot(place, "an anchor, `&`")),
        }
    }

    fn go_in(&mut self, place: Place, open: Open) -> Result<(), Box<Placed>> {
        if matches!(self.open.last(), Some(Open::Keys(_, _, None))) {
            return Err(key_is_no_word(place));
        }
        if self.open.len() >= MOST_DEPTH {
            return Err(Box::new(too_deep(place)));
        }
        self.open.push(open);
        Ok(())
    }

    fn come_out(&mut self) -> Result<(), Box<Placed>> {
        let node = match self.open.pop().expect("an end comes after its beginning") {
            Open::List(place, items) => Node {
                place,
                content: Content::List(items),
            },
            Open::Keys(place, entries, _) => Node {
                place,
                content: Content::Keys(self.each_once(entries)),
            },
        };
        self.put(node)
    }

    /// Puts a finished value where it belongs: into the open list, beside its key, or at the root.
    fn put(&mut self, node: Node) -> Result<(), Box<Placed>> {
        match self.open.last_mut() {
            None => self.root = Some(node),
            Some(Open::List(_, items)) => items.push(node),
            Some(Open::Keys(_, entries, key)) => match (key.take(), node.content) {
                (Some((key, key_place)), content) => entries.push(Entry {
                    key,
                    key_place,
                    value: Node {
                        place: node.place,
                        content,
                    },
                    again: false,
                }),
                (None, Content::Text { text, .. }) => *key = Some((text, node.place)),
                (None, Content::List(_) | Content::Keys(_)) => {
                    return Err(key_is_no_word(node.place));
                }
            },
        }
        Ok(())
    }

    /// The entries, with a fault for every key that stands twice.
    fn each_once(&mut self, entries: Vec<Entry>) -> Vec<Entry> {
        let mut first = std::collections::BTreeMap::new();
        let mut kept: Vec<Entry> = Vec::with_capacity(entries.len());
        for entry in entries {
            match first.get(&entry.key) {
                None => {
                    first.insert(entry.key.clone(), kept.len());
                    kept.push(entry);
                }
                Some(&index) => {
                    let earlier = &mut kept[index];
                    earlier.again = true;
                    self.faults.push(written_twice(&entry, earlier.key_place));
                }
            }
        }
        kept
    }
}

fn written_twice(entry: &Entry, earlier: Place) -> Placed {
    let fact = format!("`{}` is written twice", entry.key);
    let fault = Fault::new(&*entry.key, fact, "keep one of the two");
    Placed::at(entry.key_place, fault).and_at(earlier, "first written here")
}

fn place_of(span: Span) -> Place {
    let length = match span.start.line() == span.end.line() {
        true => span.end.col().saturating_sub(span.start.col()),
        // A value over several lines: the caller's eye is led to its first line, whose end the report finds.
        false => usize::MAX / 2,
    };
    Place {
        length,
        ..at(span.start)
    }
}

fn at(marker: Marker) -> Place {
    Place {
        line: marker.line(),
        column: marker.col(),
        length: 1,
    }
}

fn knot(place: Place, what: &str) -> Box<Placed> {
    Box::new(Placed::at(
        place,
        Fault::new(
            "",
            format!("{what} is not read in a spec"),
            "write the value out here, in quotes if it begins with `&`, `*` or `!`",
        ),
    ))
}

fn too_deep(place: Place) -> Placed {
    Placed::at(
        place,
        Fault::new(
            "",
            format!("lists and keys lie more than {MOST_DEPTH} deep here"),
            "look for brackets or braces that are never closed",
        ),
    )
}

fn key_is_no_word(place: Place) -> Box<Placed> {
    Box::new(Placed::at(
        place,
        Fault::new("", "a key is one word", "write `key: value`"),
    ))
}

/// The reader's own complaint, with the slips that a drawing office makes.
fn not_yaml(source: &str, error: &ScanError) -> Placed {
    let place = at(*error.marker());
    // The reader looks ahead, so its own limit may be met before ours.
    if error.info().contains("recursion limit") {
        return too_deep(place);
    }
    let line = source
        .lines()
        .nth(place.line.saturating_sub(1))
        .unwrap_or("");
    let before = source
        .lines()
        .nth(place.line.saturating_sub(2))
        .unwrap_or("");
    let remedy = if line.trim_start_matches(' ').starts_with('\t') {
        "indent with spaces, not with tabs"
    } else if line.contains('"') || before.contains('"') {
        "a size with an inch mark stands bare or in single quotes: 5/8\" or '5/8\"'"
    } else {
        "look at the indents, colons, brackets and quotes of this line and the one before"
    };
    let fact = format!("this cannot be read as YAML: {}", error.info());
    Placed::at(place, Fault::new("", fact, remedy))
}
