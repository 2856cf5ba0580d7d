//! Gives every word of a spec its sense by the shape of its key, and gathers all that has none.

use std::collections::BTreeMap;

use serde_json::{Map, Value};

use super::Fault;
use super::fault::Placed;
use super::nearest::{nearest, one_of};
use super::node::{Content, Entry, Node};
use super::remedies;
use super::shape::{Key, Shape, Word};
use crate::units::{Density, Length, Quantity, Stress, Unread};

/// The spec as plain values: every length with its unit, every number a number. Or every fault of the file at once.
pub(super) fn understand(root: &Node, shape: &Shape) -> Result<Value, Vec<Placed>> {
    let mut reading = Understanding {
        root,
        job_unit: job_unit(root),
        faults: Vec::new(),
    };
    let value = reading.value(&mut String::new(), root, shape);
    match reading.faults.is_empty() {
        true => Ok(value),
        false => Err(reading.faults),
    }
}

/// The unit that a bare number takes: `in` or `mm`, where the job declares one.
fn job_unit(root: &Node) -> Option<&'static str> {
    match root.get("job")?.value.get("units")?.value.text()? {
        "inches" => Some("in"),
        "millimetres" => Some("mm"),
        _ => None,
    }
}

struct Understanding<'a> {
    root: &'a Node,
    job_unit: Option<&'static str>,
    faults: Vec<Placed>,
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

    fn value(&mut self, path: &mut String, node: &Node, shape: &Shape) -> Value {
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
        let mut record = Map::new();
        for entry in entries {
            match keys.get(&*entry.key) {
                Some(key) => {
                    let value = self.under(path, entry, &key.shape);
                    record.insert(entry.key.to_string(), value);
                }
                None => self.unknown_key(path, entry, keys),
            }
        }
        for (name, key) in keys.iter().filter(|(_, key)| key.required) {
            if !entries.iter().any(|entry| &*entry.key == name.as_str()) {
                self.missing(path, name, &key.about);
            }
        }
        Value::Object(record)
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
                Value::Null
            }
            _ => self.value(path, &entry.value, shape),
        };
        path.truncate(before);
        value
    }

    fn unknown_key(&mut self, path: &str, entry: &Entry, keys: &BTreeMap<String, Key>) {
        let mut full = path.to_string();
        step_into(&mut full, &entry.key);
        let names = keys.keys().map(String::as_str);
        let remedy = match nearest(&entry.key, names.clone()) {
            Some(near) => format!(
                "did you mean `{near}`? ({})",
                lower_first(&keys[near].about)
            ),
            None => format!("the keys here are {}", one_of(names, "and")),
        };
        let fact = format!("`{}` is not a key that is known here", entry.key);
        self.faults
            .push(Placed::at(entry.key_place, Fault::new(full, fact, remedy)));
    }

    fn missing(&mut self, path: &str, name: &str, about: &str) {
        let mut full = path.to_string();
        step_into(&mut full, name);
        let (fact, remedy) = remedies::missing(&full).unwrap_or_else(|| {
            (
                format!("`{name}` is missing"),
                format!("add `{name}:` ({})", lower_first(about)),
            )
        });
        self.faults.push(Placed::at(
            self.root.place_of(&full),
            Fault::new(full, fact, remedy),
        ));
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
            let mut one = Map::new();
            one.insert(entry.key.to_string(), self.under(path, entry, &key.shape));
            return Value::Object(one);
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
        Value::Array(
            pairs
                .map(|(index, (item, shape))| self.item(path, index, item, shape))
                .collect(),
        )
    }

    fn list(&mut self, path: &mut String, items: &[Node], shape: &Shape) -> Value {
        let items = items.iter().enumerate();
        Value::Array(
            items
                .map(|(index, item)| self.item(path, index, item, shape))
                .collect(),
        )
    }

    fn item(&mut self, path: &mut String, index: usize, item: &Node, shape: &Shape) -> Value {
        let before = path.len();
        path.push_str(&format!("[{index}]"));
        let value = self.value(path, item, shape);
        path.truncate(before);
        value
    }

    fn text(&mut self, path: &str, node: &Node, text: &str, quoted: bool, shape: &Shape) -> Value {
        if !quoted && is_nothing(text) {
            return self.refuse(path, node, "nothing is written here", example(shape));
        }
        match shape {
            Shape::Text => self.words(path, node, text),
            Shape::Truth => self.truth(path, node, text),
            Shape::Number => self.number(path, node, text),
            Shape::Whole(least, most) => self.whole(path, node, text, *least, *most),
            Shape::Length => self.length(path, node, text),
            Shape::Stress => self.quantity(path, node, text, Stress::read(text)),
            Shape::Density => self.quantity(path, node, text, Density::read(text)),
            Shape::Choice(words, keyed) => self.word(path, node, text, words, keyed),
            Shape::Record(_) | Shape::Together(_) | Shape::List(_) => self.refuse(
                path,
                node,
                format!("`{text}` stands here, and {} is wanted", wanted(shape)),
                example(shape),
            ),
        }
    }

    /// Text for a sheet: on one line, without signs that cannot be seen.
    fn words(&mut self, path: &str, node: &Node, text: &str) -> Value {
        let line = text.replace(['\n', '\r', '\t'], " ");
        match line.chars().find(|c| is_unseen(*c)) {
            None => Value::String(line.trim_end().into()),
            Some(c) => self.refuse(
                path,
                node,
                format!(
                    "the text holds a sign that cannot be seen, U+{:04X}",
                    u32::from(c)
                ),
                "type it afresh",
            ),
        }
    }

    fn truth(&mut self, path: &str, node: &Node, text: &str) -> Value {
        match text {
            "true" | "yes" => Value::Bool(true),
            "false" | "no" => Value::Bool(false),
            _ => self.refuse(
                path,
                node,
                format!("`{text}` is neither yes nor no"),
                "write true or false",
            ),
        }
    }

    fn number(&mut self, path: &str, node: &Node, text: &str) -> Value {
        let (digits, parts) = match text.strip_suffix('%') {
            Some(percent) => (percent.trim_end(), 100.0),
            None => (text, 1.0),
        };
        let plain = digits
            .chars()
            .all(|c| c.is_ascii_digit() || "+-.".contains(c));
        match digits.parse::<f64>() {
            Ok(number) if plain && digits.len() <= 16 => Value::from(number / parts),
            _ => self.refuse(
                path,
                node,
                format!("`{text}` is not a plain number"),
                "write figures with a point, no unit: 11 or 0.28 or 28 %",
            ),
        }
    }

    fn whole(&mut self, path: &str, node: &Node, text: &str, least: i64, most: i64) -> Value {
        match text.parse::<i64>() {
            Ok(number) if (least..=most).contains(&number) => Value::from(number),
            Ok(_) => self.refuse(
                path,
                node,
                format!("`{text}` is out of reach"),
                format!("write a whole number from {least} to {most}"),
            ),
            Err(_) => self.refuse(
                path,
                node,
                format!("`{text}` is not a whole number"),
                "write figures only: 56",
            ),
        }
    }

    /// A length with its unit; the scalar's own text goes on, so that `1 5/8` is never a converted decimal.
    fn length(&mut self, path: &str, node: &Node, text: &str) -> Value {
        if !is_bare(text) {
            return self.quantity(path, node, text, Length::read(text));
        }
        match self.job_unit {
            Some(unit) => {
                let full = format!("{} {unit}", text.trim());
                let read = Length::read(&full);
                self.quantity(path, node, &full, read)
            }
            None => self.refuse(
                path,
                node,
                format!("`{text}` has no unit, and the job declares none"),
                format!("write {text} in or {text} mm, or declare the unit of every bare number in job.units"),
            ),
        }
    }

    fn quantity<Q>(
        &mut self,
        path: &str,
        node: &Node,
        text: &str,
        read: Result<Q, Unread>,
    ) -> Value {
        match read {
            Ok(_) => Value::String(text.into()),
            Err(unread) => self.refuse(path, node, unread.fact, unread.remedy),
        }
    }

    fn word(
        &mut self,
        path: &str,
        node: &Node,
        text: &str,
        words: &[Word],
        keyed: &BTreeMap<String, Key>,
    ) -> Value {
        if words.iter().any(|word| word.word == text) {
            return Value::String(text.into());
        }
        if keyed.contains_key(text) {
            let fact = format!("`{text}` has nothing beneath it");
            return self.refuse(
                path,
                node,
                fact,
                format!("write `{text}:` with its figures beneath"),
            );
        }
        let known = || {
            words
                .iter()
                .map(|word| word.word.as_str())
                .chain(keyed.keys().map(String::as_str))
        };
        let remedy = match nearest(text, known()) {
            Some(near) => format!("did you mean `{near}`?{}", meaning(near, words)),
            None => format!("write {}", one_of(known(), "or")),
        };
        self.refuse(
            path,
            node,
            format!("`{text}` is not a word that is known here"),
            remedy,
        )
    }
}

fn meaning(word: &str, words: &[Word]) -> String {
    let found = words
        .iter()
        .find(|one| one.word == word && !one.about.is_empty());
    found.map_or(String::new(), |one| {
        format!(" ({})", lower_first(&one.about))
    })
}

fn step_into(path: &mut String, key: &str) {
    if !path.is_empty() {
        path.push('.');
    }
    path.push_str(key);
}

/// What YAML takes for no value.
fn is_nothing(text: &str) -> bool {
    matches!(text, "" | "~" | "null" | "Null" | "NULL")
}

/// Whether a length carries no unit of its own.
fn is_bare(text: &str) -> bool {
    !text
        .chars()
        .any(|c| c.is_alphabetic() || "'\"′″’”‘“".contains(c))
}

/// Control characters, and marks that turn the direction of writing or take up no width.
fn is_unseen(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}')
}

fn lower_first(about: &str) -> String {
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

fn wanted(shape: &Shape) -> &'static str {
    match shape {
        Shape::Text => "text",
        Shape::Truth => "true or false",
        Shape::Number => "a number",
        Shape::Whole(..) => "a whole number",
        Shape::Length => "a length",
        Shape::Stress => "a pressure or a stress",
        Shape::Density => "a mass for volume",
        Shape::Record(_) => "a set of keys",
        Shape::Choice(_, keyed) if keyed.is_empty() => "one word",
        Shape::Choice(..) => "one key",
        Shape::Together(_) => "a place",
        Shape::List(_) => "a list",
    }
}

/// How to write what is wanted.
fn example(shape: &Shape) -> String {
    match shape {
        Shape::Text => "write a few words; in quotes where they hold a colon or a hash".into(),
        Shape::Truth => "write true or false".into(),
        Shape::Number => "write figures only: 11 or 0.28".into(),
        Shape::Whole(..) => "write figures only: 56".into(),
        Shape::Length => "write one length: 1 13/16 in or 46 mm".into(),
        Shape::Stress => "write one figure: 160 psi, 28 tonf/in2 or 432 N/mm2".into(),
        Shape::Density => "write one figure: 7850 kg/m3 or 0.2836 lb/in3".into(),
        Shape::Record(keys) => format!(
            "the keys here are {}",
            one_of(keys.keys().map(String::as_str), "and")
        ),
        Shape::Choice(words, keyed) => {
            let known = words.iter().map(|word| word.word.as_str());
            format!(
                "write {}",
                one_of(known.chain(keyed.keys().map(String::as_str)), "or")
            )
        }
        Shape::Together(_) => {
            "write a place as [x, y]: x right and y up from the barrel centre".into()
        }
        Shape::List(_) => "write each item on a line that begins with `- `, or all in [ ]".into(),
    }
}
