//! Makes the typed model of a spec, and holds the first reading of the file to a second one.
//!
//! The only file that names serde_yaml. It never sees a word's sense: `12:30`, `no` and `1e3` have been given theirs by
//! their keys before the model is made, and where it reads the file itself only its shape and its texts are taken.

pub(super) use serde_yaml::{Mapping as Record, Value};

use super::fault::Placed;
use super::node::{Content, Entry, Node, Place};
use super::{Fault, Written};

/// The model, from values that every key has given their sense.
pub(super) fn model(value: Value) -> Result<Written, Box<Placed>> {
    serde_yaml::with::singleton_map_recursive::deserialize(value).map_err(|cause| {
        let remedy = "compare the file with `centrepop schema`";
        Box::new(Placed::whole_file(Fault::new(
            "",
            cause.to_string(),
            remedy,
        )))
    })
}

/// Reads the file again, with another reader, and refuses it where the two readings differ: a plate is not made from a
/// file that can be read in two ways.
pub(super) fn reads_alike(source: &str, tree: &Node) -> Result<(), Box<Placed>> {
    let again: Value = serde_yaml::from_str(source).map_err(|cause| {
        let fact = format!("a second reader of YAML does not take this: {cause}");
        let place = cause.location().map(|at| Place {
            line: at.line(),
            column: at.column().saturating_sub(1),
            length: 1,
        });
        let fault = Fault::new("", fact, REMEDY);
        Box::new(match place {
            Some(place) => Placed::at(place, fault),
            None => Placed::whole_file(fault),
        })
    })?;
    match difference(tree, &again) {
        None => Ok(()),
        Some(difference) => {
            let Difference { place, path, fact } = difference;
            Err(Box::new(Placed::at(place, Fault::new(path, fact, REMEDY))))
        }
    }
}

const REMEDY: &str = "write it more plainly: each key on its own line, and the text in quotes";

/// Where two readings of one file part.
struct Difference {
    place: Place,
    path: String,
    fact: String,
}

fn difference(node: &Node, again: &Value) -> Option<Difference> {
    match (&node.content, again) {
        (Content::List(items), Value::Sequence(others)) => list(node, items, others),
        (Content::Keys(entries), Value::Mapping(others)) => keys(node, entries, others),
        (Content::Text { text, .. }, Value::String(other)) => {
            (**text != **other).then(|| differ(node, format!("reads as `{text}` and as `{other}`")))
        }
        // A number, a truth or nothing: the sense that the second reader gives a word is not asked for.
        (Content::Text { .. }, Value::Number(_) | Value::Bool(_) | Value::Null) => None,
        (content, other) => Some(differ(
            node,
            format!("reads as {} and as {}", sort(content), sort_again(other)),
        )),
    }
}

fn list(node: &Node, items: &[Node], others: &[Value]) -> Option<Difference> {
    if items.len() != others.len() {
        return Some(counts(node, items.len(), others.len(), "values"));
    }
    let mut pairs = items.iter().zip(others).enumerate();
    pairs.find_map(|(index, (item, other))| {
        difference(item, other).map(|found| under(format!("[{index}]"), found))
    })
}

fn keys(node: &Node, entries: &[Entry], others: &Record) -> Option<Difference> {
    if entries.len() != others.len() {
        return Some(counts(node, entries.len(), others.len(), "keys"));
    }
    entries.iter().find_map(|entry| {
        let found = match others.get(&*entry.key) {
            Some(other) => difference(&entry.value, other)?,
            None => Difference {
                place: entry.key_place,
                path: String::new(),
                fact: "this key is one word to one reader of YAML and another to a second".into(),
            },
        };
        Some(under(entry.key.to_string(), found))
    })
}

fn differ(node: &Node, how: String) -> Difference {
    Difference {
        place: node.place,
        path: String::new(),
        fact: format!("this {how} by two readers of YAML"),
    }
}

fn counts(node: &Node, first: usize, second: usize, of: &str) -> Difference {
    differ(node, format!("reads as {first} {of} and as {second}"))
}

fn sort(content: &Content) -> &'static str {
    match content {
        Content::Text { .. } => "text",
        Content::List(_) => "a list",
        Content::Keys(_) => "keys",
    }
}

fn sort_again(value: &Value) -> &'static str {
    match value {
        Value::Sequence(_) => "a list",
        Value::Mapping(_) => "keys",
        Value::Tagged(_) => "a marked value",
        Value::String(_) | Value::Number(_) | Value::Bool(_) | Value::Null => "text",
    }
}

/// The difference as seen from one step above.
fn under(step: String, found: Difference) -> Difference {
    let path = match (found.path.as_str(), found.path.starts_with('[')) {
        ("", _) => step,
        (path, true) => format!("{step}{path}"),
        (path, false) => format!("{step}.{path}"),
    };
    Difference { path, ..found }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spec::yaml::read_tree;

    fn tree(source: &str) -> Node {
        read_tree(source).unwrap_or_else(|_| panic!("{source}")).0
    }

    /// Words that the second reader takes for numbers, truths or nothing stay the first reader's words.
    #[test]
    fn holds_two_readers_agree() {
        let source = "a: 12:30\nb: [no, 1e3, 0x10, ~, .nan, '16']\nc: {d: 5/8\", e: 2026-11-16}\nf: |\n  two\n  lines\n";
        assert!(reads_alike(source, &tree(source)).is_ok());
    }

    /// A shape, a count, a key and a text that differ are each told at their place.
    #[test]
    fn refuses_readings_that_differ() {
        let source = "a:\n  b: [1, 2]\n  c: word\n";
        for (other, path, fact) in [
            (
                "a:\n  b: [1, 2, 3]\n  c: word\n",
                "a.b",
                "this reads as 2 values and as 3 by two readers of YAML",
            ),
            (
                "a:\n  b: 1\n  c: word\n",
                "a.b",
                "this reads as a list and as text by two readers of YAML",
            ),
            (
                "a:\n  b: [1, 2]\n",
                "a",
                "this reads as 2 keys and as 1 by two readers of YAML",
            ),
            (
                "a:\n  b: [1, {}]\n  c: word\n",
                "a.b[1]",
                "this reads as text and as keys by two readers of YAML",
            ),
            (
                "a:\n  b: [1, 2]\n  c: work\n",
                "a.c",
                "this reads as `word` and as `work` by two readers of YAML",
            ),
            (
                "a:\n  b: [1, 2]\n  d: word\n",
                "a.c",
                "this key is one word to one reader of YAML and another to a second",
            ),
        ] {
            let placed = reads_alike(other, &tree(source)).expect_err(other);
            assert_eq!(
                (placed.fault.path.as_str(), placed.fault.fact.as_str()),
                (path, fact)
            );
        }
    }
}
