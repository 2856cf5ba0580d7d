//! What may stand at each key, made once from the JSON Schema of [`Written`](super::Written), so that the reader and
//! an editor hold a spec to the same words.

use std::collections::BTreeMap;

use serde_json::Value;

/// What may stand at one place of a spec.
#[derive(Clone, Debug)]
pub(super) enum Shape {
    /// Any text.
    Text,
    /// `true` or `false`.
    Truth,
    /// A plain number.
    Number,
    /// A whole number from the first to the second.
    Whole(i64, i64),
    /// A length, with its unit or the job's.
    Length,
    /// A pressure or a stress.
    Stress,
    /// Mass for volume.
    Density,
    /// Named keys and no others.
    Record(BTreeMap<String, Key>),
    /// One of some words, or one of some keys with what belongs to it.
    Choice(Vec<Word>, BTreeMap<String, Key>),
    /// Just so many values, each of its own shape.
    Together(Vec<Shape>),
    /// Any number of values of one shape.
    List(Box<Shape>),
}

/// A key of a record.
#[derive(Clone, Debug)]
pub(super) struct Key {
    pub(super) shape: Shape,
    /// What it is, as the schema says it.
    pub(super) about: String,
    pub(super) required: bool,
}

/// A word of a choice and what it means.
#[derive(Clone, Debug)]
pub(super) struct Word {
    pub(super) word: String,
    pub(super) about: String,
}

impl Shape {
    /// The paths of the records that have this key, `tubes` for `tube`: where a key that stands in the wrong place belongs.
    pub(super) fn homes_of(&self, wanted: &str) -> Vec<String> {
        let mut homes = Vec::new();
        self.look_for(wanted, "", &mut homes);
        homes
    }

    fn look_for(&self, wanted: &str, path: &str, homes: &mut Vec<String>) {
        match self {
            Shape::Record(keys) | Shape::Choice(_, keys) => {
                if keys.contains_key(wanted) && !path.is_empty() {
                    homes.push(path.to_string());
                }
                for (name, key) in keys {
                    let below = match path {
                        "" => name.clone(),
                        _ => format!("{path}.{name}"),
                    };
                    key.shape.look_for(wanted, &below, homes);
                }
            }
            Shape::List(one) => one.look_for(wanted, path, homes),
            Shape::Together(several) => {
                for one in several {
                    one.look_for(wanted, path, homes);
                }
            }
            Shape::Text | Shape::Truth | Shape::Number | Shape::Whole(..) => {}
            Shape::Length | Shape::Stress | Shape::Density => {}
        }
    }
}

/// The shape that a schema describes. Panics on a schema beyond these forms, which a test of this module would meet first.
pub(super) fn shape_of(schema: &Value) -> Shape {
    let definitions = &schema["$defs"];
    Reading { definitions }.shape(schema)
}

struct Reading<'a> {
    definitions: &'a Value,
}

impl Reading<'_> {
    fn shape(&self, schema: &Value) -> Shape {
        if let Some(reference) = schema["$ref"].as_str() {
            let name = reference.trim_start_matches("#/$defs/");
            return self.shape(&self.definitions[name]);
        }
        if let Some(forms) = schema["anyOf"].as_array() {
            let form = forms.iter().find(|form| form["type"] != "null");
            return self.shape(form.expect("an optional value has a form"));
        }
        if let Some(forms) = schema["oneOf"].as_array() {
            return self.choice(forms);
        }
        if let Some(words) = schema["enum"].as_array() {
            return Shape::Choice(
                words.iter().filter_map(bare_word).collect(),
                BTreeMap::new(),
            );
        }
        match schema["format"].as_str() {
            Some("length") => return Shape::Length,
            Some("stress") => return Shape::Stress,
            Some("density") => return Shape::Density,
            _ => {}
        }
        self.by_type(schema)
    }

    fn by_type(&self, schema: &Value) -> Shape {
        match type_word(schema) {
            "string" => Shape::Text,
            "boolean" => Shape::Truth,
            "number" => Shape::Number,
            "integer" => whole(schema),
            "object" => Shape::Record(self.keys(schema)),
            "array" => match schema["prefixItems"].as_array() {
                Some(items) => Shape::Together(items.iter().map(|item| self.shape(item)).collect()),
                None => Shape::List(Box::new(self.shape(&schema["items"]))),
            },
            other => panic!("the spec's schema has a form that its reader does not know: {other}"),
        }
    }

    fn keys(&self, schema: &Value) -> BTreeMap<String, Key> {
        let required = |key: &String| {
            let list = schema["required"].as_array();
            list.is_some_and(|list| list.iter().any(|one| one.as_str() == Some(key)))
        };
        let properties = schema["properties"].as_object().into_iter().flatten();
        properties
            .map(|(key, below)| {
                let found = Key {
                    shape: self.shape(below),
                    about: about(below),
                    required: required(key),
                };
                (key.clone(), found)
            })
            .collect()
    }

    fn choice(&self, forms: &[Value]) -> Shape {
        let mut words = Vec::new();
        let mut keyed = BTreeMap::new();
        for form in forms {
            if form["properties"].is_object() {
                keyed.extend(self.keys(form).into_iter().map(|(key, mut found)| {
                    found.about = about(form);
                    (key, found)
                }));
            } else if let Some(list) = form["enum"].as_array() {
                words.extend(list.iter().filter_map(bare_word));
            } else if let Some(word) = form["const"].as_str() {
                words.push(Word {
                    word: word.into(),
                    about: about(form),
                });
            }
        }
        Shape::Choice(words, keyed)
    }
}

fn bare_word(value: &Value) -> Option<Word> {
    Some(Word {
        word: value.as_str()?.into(),
        about: String::new(),
    })
}

fn about(schema: &Value) -> String {
    schema["description"]
        .as_str()
        .unwrap_or("")
        .replace('\n', " ")
}

fn type_word(schema: &Value) -> &str {
    match &schema["type"] {
        Value::Array(types) => {
            let word = types
                .iter()
                .filter_map(Value::as_str)
                .find(|word| *word != "null");
            word.unwrap_or("nothing")
        }
        other => other.as_str().unwrap_or("nothing"),
    }
}

fn whole(schema: &Value) -> Shape {
    let (least, most) = match schema["format"].as_str() {
        Some("uint8") => (0, i64::from(u8::MAX)),
        Some("uint16") => (0, i64::from(u16::MAX)),
        Some("uint32") => (0, i64::from(u32::MAX)),
        Some("int32") => (i64::from(i32::MIN), i64::from(i32::MAX)),
        Some("uint" | "uint64") => (0, i64::MAX),
        _ => (i64::MIN, i64::MAX),
    };
    Shape::Whole(schema["minimum"].as_i64().unwrap_or(least), most)
}
