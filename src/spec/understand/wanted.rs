//! What is wanted at a place, and how to write it.

use crate::spec::nearest::one_of;
use crate::spec::shape::Shape;

pub(super) fn wanted(shape: &Shape) -> &'static str {
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
pub(super) fn example(shape: &Shape) -> String {
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
