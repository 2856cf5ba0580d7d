//! What stands for a value that could not be read, so that the model can be made and its other parts looked at.
//!
//! No figure here is ever used for the plate: whatever rests on one is left out, and a spec with one is refused.

use crate::spec::shape::Shape;
use crate::spec::typed::{Record, Value};

pub(super) fn stand_in(shape: &Shape) -> Value {
    match shape {
        Shape::Text => Value::from("not read"),
        Shape::Truth => Value::from(false),
        Shape::Number => Value::from(1.0),
        Shape::Whole(least, most) => Value::from(1.clamp(*least, *most)),
        Shape::Length => Value::from("1 mm"),
        Shape::Stress => Value::from("1 N/mm2"),
        Shape::Density => Value::from("1 kg/m3"),
        Shape::Record(keys) => {
            let required = keys.iter().filter(|(_, key)| key.required);
            let values = required.map(|(name, key)| (name.as_str(), stand_in(&key.shape)));
            keyed(values)
        }
        Shape::Choice(words, keys) => match (words.first(), keys.iter().next()) {
            (Some(word), _) => Value::from(word.word.as_str()),
            (None, Some((name, key))) => {
                keyed(std::iter::once((name.as_str(), stand_in(&key.shape))))
            }
            (None, None) => Value::Null,
        },
        Shape::Together(several) => Value::Sequence(several.iter().map(stand_in).collect()),
        Shape::List(_) => Value::Sequence(Vec::new()),
    }
}

fn keyed<'a>(values: impl Iterator<Item = (&'a str, Value)>) -> Value {
    let record: Record = values
        .map(|(name, value)| (Value::from(name), value))
        .collect();
    Value::Mapping(record)
}
