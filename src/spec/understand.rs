//! Gives every word of a spec its sense by the shape of its key, and gathers all that has none.

mod stand_in;
mod wanted;
mod word;

use std::collections::BTreeMap;
use std::fmt::Write;

use super::Fault;
use super::fault::Placed;
use super::nearest::{nearest, one_of, the_nearest};
use super::node::{Content, Entry, Node};
use super::remedies;
use super::shape::{Key, Shape, Word};
use super::typed::{Record, Value};
use stand_in::stand_in;
use wanted::{example, wanted};

/// What came of giving every word its sense.
pub(super) struct Understood {
    /// The spec as plain values: every length with its unit, every number a number; a stand-in where a word has no sense.
    pub(super) value: Value,
    /// Every word that has none.
    pub(super) faults: Vec<Placed>,
    /// Paths at which a stand-in stands, or a value that is not to be rested on.
    pub(super) stand_ins: Vec<String>,
}

/// Gives every word its sense.
pub(super) fn understand(root: &Node, shape: &Shape) -> Understood {
    let mut reading = Understanding {
        root,
        whole: shape,
        job_unit: job_unit(root),
        faults: Vec::new(),
        stand_ins: Vec::new(),
    };
    let value = reading.value(&mut String::new(), root, shape);
    Understood {
        value,
        faults: reading.faults,
        stand_ins: reading.stand_ins,
    }
}

/// The unit that a bare number takes.
#[derive(Clone, Copy)]
enum JobUnit {
    /// `in` or `mm`, as the job declares.
    Declared(&'static str),
    /// The job declares none.
    None,
    /// The job declares something that is no unit, which is a fault of its own.
    Unknown,
}

fn job_unit(root: &Node) -> JobUnit {
    let Some(units) = root.get("job").and_then(|job| job.value.get("units")) else {
        return JobUnit::None;
    };
    let known = ["inches", "millimetres"].into_iter();
    match units.value.text().and_then(|word| the_nearest(word, known)) {
        Some("inches") => JobUnit::Declared("in"),
        Some(_) => JobUnit::Declared("mm"),
        None => JobUnit::Unknown,
    }
}

struct Understanding<'a> {
    root: &'a Node,
    whole: &'a Shape,
    job_unit: JobUnit,
    faults: Vec<Placed>,
    stand_ins: Vec<String>,
}

impl Understanding<'_> {
    fn refuse(
        &mut self,
        path: &str,
        node: &Node,
        fact: impl Into<String>,
        remedy: impl Into<String>,
    ) -> Value {
        self.faults
            .push(Placed::at(node.place, Fault::new(path, fact, remedy)));
        Value::Null
    }

    /// The value; a stand-in where it has no sense.
    fn value(&mut self, path: &mut String, node: &Node, shape: &Shape) -> Value {
        match self.sense(path, node, shape) {
            Value::Null => self.stand_in(path, shape),
            value => value,
        }
    }

    fn stand_in(&mut self, path: &str, shape: &Shape) -> Value {
        self.stand_ins.push(path.into());
        stand_in(shape)
    }

    /// The value; nothing, and a fault, where it has no sense.
    fn sense(&mut self, path: &mut String, node: &Node, shape: &Shape) -> Value {
        match (shape, &node.content) {
            (Shape::Record(keys), Content::Keys(entries)) => self.record(path, entries, keys),
            (Shape::Choice(words, keyed), Content::Keys(entries)) => {
                self.one_key(path, node, entries, words, keyed)
            }
            (Shape::Together(shapes), Content::List(items)) => {
                self.together(path, node, items, shapes)
            }
            (Shape::List(shape), Content::List(items)) => self.list(path, items, shape),
            (_, Content::Text { text, quoted }) => self.text(path, node, text, *quoted, shape),
            (_, Content::List(_)) => self.refuse(
                path,
                node,
                format!("a list stands here, and {} is wanted", wanted(shape)),
                example(shape),
            ),
            (_, Content::Keys(_)) => self.refuse(
                path,
                node,
                format!("keys stand here, and {} is wanted", wanted(shape)),
                example(shape),
            ),
        }
    }

    fn record(
        &mut self,
        path: &mut String,
        entries: &[Entry],
        keys: &BTreeMap<String, Key>,
    ) -> Value {
        let mut record = Record::new();
        for entry in entries {
            match keys.get(&*entry.key) {
                Some(key) => {
                    let value = self.under(path, entry, &key.shape);
                    record.insert(Value::from(&*entry.key), value);
                }
                None => self.unknown_key(path, entry, keys),
            }
        }
        for (name, key) in keys.iter().filter(|(_, key)| key.required) {
            if !entries.iter().any(|entry| &*entry.key == name.as_str()) {
                let value = self.missing(path, name, key);
                record.insert(Value::from(name.as_str()), value);
            }
        }
        Value::Mapping(record)
    }

    fn under(&mut self, path: &mut String, entry: &Entry, shape: &Shape) -> Value {
        let before = path.len();
        step_into(path, &entry.key);
        let value = match &entry.value.content {
            Content::Text {
                text,
                quoted: false,
            } if is_nothing(text) => {
                let place = entry.key_place;
                let fact = format!("`{}` has nothing written after it", entry.key);
                let remedy = "write its value, or take the key out";
                self.faults
                    .push(Placed::at(place, Fault::new(path.as_str(), fact, remedy)));
                self.stand_in(path, shape)
            }
            _ => self.value(path, &entry.value, shape),
        };
        if entry.again {
            self.stand_ins.push(path.clone());
        }
        path.truncate(before);
        value
    }

    fn unknown_key(&mut self, path: &str, entry: &Entry, keys: &BTreeMap<String, Key>) {
        let mut full = path.to_string();
        step_into(&mut full, &entry.key);
        // Nobody knows what it was to say, so nothing beside it is rested on.
        self.stand_ins.push(full.clone());
        let names = keys.keys().map(String::as_str);
        let remedy = match nearest(&entry.key, names.clone()) {
            Some(near) => format!(
                "did you mean `{near}`? ({})",
                lower_first(&keys[near].about)
            ),
            None => self.elsewhere(&entry.key, names),
        };
        let fact = format!("`{}` is not a key that is known here", entry.key);
        self.faults
            .push(Placed::at(entry.key_place, Fault::new(full, fact, remedy)));
    }

    /// Where an unknown key belongs, if it is known anywhere; otherwise what is known here.
    fn elsewhere<'k>(&self, key: &str, here: impl Iterator<Item = &'k str>) -> String {
        let homes = self.whole.homes_of(key);
        // A word like `size` or `origin` belongs in so many places that naming them is no help.
        match homes.len() {
            1..=4 => format!(
                "it belongs under {}",
                one_of(homes.iter().map(String::as_str), "or")
            ),
            _ => format!("the keys here are {}", one_of(here, "and")),
        }
    }

    fn missing(&mut self, path: &str, name: &str, key: &Key) -> Value {
        let mut full = path.to_string();
        step_into(&mut full, name);
        let (fact, remedy) = remedies::missing(&full).unwrap_or_else(|| {
            (
                format!("`{name}` is missing"),
                format!("add `{name}:` ({})", lower_first(&key.about)),
            )
        });
        self.faults.push(Placed::at(
            self.root.place_of(&full),
            Fault::new(full.as_str(), fact, remedy),
        ));
        self.stand_in(&full, &key.shape)
    }

    fn one_key(
        &mut self,
        path: &mut String,
        node: &Node,
        entries: &[Entry],
        words: &[Word],
        keyed: &BTreeMap<String, Key>,
    ) -> Value {
        let names = keyed.keys().map(String::as_str);
        if keyed.is_empty() {
            let known = one_of(words.iter().map(|word| word.word.as_str()), "or");
            return self.refuse(
                path,
                node,
                "keys stand here, and one word is wanted",
                format!("write {known}"),
            );
        }
        if let [entry] = entries
            && let Some(key) = keyed.get(&*entry.key)
        {
            let mut one = Record::new();
            let value = self.under(path, entry, &key.shape);
            one.insert(Value::from(&*entry.key), value);
            return Value::Mapping(one);
        }
        if let [entry] = entries {
            self.unknown_key(path, entry, keyed);
            return Value::Null;
        }
        let fact = format!("{} keys stand here, and just one is wanted", entries.len());
        self.refuse(
            path,
            node,
            fact,
            format!("keep one of {}", one_of(names, "and")),
        )
    }

    fn together(
        &mut self,
        path: &mut String,
        node: &Node,
        items: &[Node],
        shapes: &[Shape],
    ) -> Value {
        if items.len() != shapes.len() {
            let fact = format!(
                "{} values stand here, and {} are wanted",
                items.len(),
                shapes.len()
            );
            return self.refuse(
                path,
                node,
                fact,
                "write a place as [x, y]: x right and y up from the barrel centre",
            );
        }
        let pairs = items.iter().zip(shapes).enumerate();
        Value::Sequence(
            pairs
                .map(|(index, (item, shape))| self.item(path, index, item, shape))
                .collect(),
        )
    }

    fn list(&mut self, path: &mut String, items: &[Node], shape: &Shape) -> Value {
        let items = items.iter().enumerate();
        Value::Sequence(
            items
                .map(|(index, item)| self.item(path, index, item, shape))
                .collect(),
        )
    }

    fn item(&mut self, path: &mut String, index: usize, item: &Node, shape: &Shape) -> Value {
        let before = path.len();
        write!(path, "[{index}]").expect("a text can always grow");
        let value = self.value(path, item, shape);
        path.truncate(before);
        value
    }
}

pub(super) fn step_into(path: &mut String, key: &str) {
    if !path.is_empty() {
        path.push('.');
    }
    path.push_str(key);
}

/// What YAML takes for no value.
fn is_nothing(text: &str) -> bool {
    matches!(text, "" | "~" | "null" | "Null" | "NULL")
}

pub(super) fn lower_first(about: &str) -> String {
    let text = about.trim_end_matches('.');
    let mut characters = text.chars();
    match (characters.next(), text.chars().nth(1)) {
        // `DIN 6935` and the like keep their capitals.
        (Some(first), Some(second)) if !second.is_uppercase() => {
            first.to_lowercase().chain(characters).collect()
        }
        _ => text.into(),
    }
}
