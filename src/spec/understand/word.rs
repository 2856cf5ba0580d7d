//! One written word as text, a number, a size or one of the known words.

use std::collections::BTreeMap;

use super::wanted::{example, wanted};
use super::{JobUnit, Understanding, is_nothing, lower_first};
use crate::spec::nearest::{nearest, one_of, the_nearest};
use crate::spec::node::Node;
use crate::spec::shape::{Key, Shape, Word};
use crate::spec::typed::Value;
use crate::units::{Density, Length, Quantity, Stress, Unread};

impl Understanding<'_> {
    pub(super) fn text(
        &mut self,
        path: &str,
        node: &Node,
        text: &str,
        quoted: bool,
        shape: &Shape,
    ) -> Value {
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
        if let Some(fact) = too_long(&line) {
            return self.refuse(path, node, fact, "shorten it, or say the rest on paper");
        }
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
            JobUnit::Declared(unit) => {
                let full = format!("{} {unit}", text.trim());
                let read = Length::read(&full);
                self.quantity(path, node, &full, read)
            }
            // Told once, at the job's unit.
            JobUnit::Unknown => Value::Null,
            JobUnit::None => self.refuse(
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
        let fact = format!("`{text}` is not a word that is known here");
        let refused = self.refuse(path, node, fact, remedy);
        // Taken only to go on with.
        match the_nearest(text, known()) {
            Some(near) if !keyed.contains_key(near) => Value::from(near),
            _ => refused,
        }
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

/// Longer than this a text is no note on a sheet, characters.
const LONGEST_TEXT: usize = 400;

/// A longer word than this fits no column of a table and cannot be broken, characters.
const LONGEST_WORD: usize = 40;

/// Why no sheet has room for a text.
fn too_long(line: &str) -> Option<String> {
    let count = line.chars().count();
    if count > LONGEST_TEXT {
        return Some(format!(
            "the text is {count} characters long, and the sheets take {LONGEST_TEXT}"
        ));
    }
    let longest = line.split(' ').map(|word| word.chars().count()).max();
    let longest = longest.filter(|longest| *longest > LONGEST_WORD)?;
    Some(format!(
        "one word is {longest} characters long, and the sheets take {LONGEST_WORD}"
    ))
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
