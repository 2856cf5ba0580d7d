//! Reads a misspelt key as the one that it plainly means, so that the rest of the file is looked through all the same.
//!
//! The slip stays a fault; without this the key that was meant would be told as missing too, and nothing beneath it read.

use std::collections::BTreeMap;
use std::fmt::Write;

use super::Fault;
use super::fault::Placed;
use super::nearest::the_nearest;
use super::node::{Content, Entry, Node};
use super::shape::{Key, Shape};
use super::understand::{lower_first, step_into};

/// Puts the right key in place of each misspelt one whose nearest word is plain and is not written beside it; a fault for each.
pub(super) fn respell(tree: &mut Node, shape: &Shape) -> Vec<Placed> {
    let mut faults = Vec::new();
    walk(&mut String::new(), tree, shape, &mut faults);
    faults
}

fn walk(path: &mut String, node: &mut Node, shape: &Shape, faults: &mut Vec<Placed>) {
    match (shape, &mut node.content) {
        (Shape::Record(keys), Content::Keys(entries)) => record(path, entries, keys, faults),
        // More than one key where just one is wanted is another fault.
        (Shape::Choice(_, keyed), Content::Keys(entries)) if entries.len() == 1 => {
            record(path, entries, keyed, faults);
        }
        (Shape::List(shape), Content::List(items)) => {
            for (index, item) in items.iter_mut().enumerate() {
                let before = path.len();
                write!(path, "[{index}]").expect("a text can always grow");
                walk(path, item, shape, faults);
                path.truncate(before);
            }
        }
        _ => {}
    }
}

fn record(
    path: &mut String,
    entries: &mut [Entry],
    keys: &BTreeMap<String, Key>,
    faults: &mut Vec<Placed>,
) {
    for index in 0..entries.len() {
        if let Some(meant) = meant(&entries[index].key, entries, keys) {
            faults.push(slip(path, &entries[index], meant, &keys[meant]));
            entries[index].key = meant.into();
        }
        if let Some(key) = keys.get(&*entries[index].key) {
            let before = path.len();
            step_into(path, &entries[index].key);
            walk(path, &mut entries[index].value, &key.shape, faults);
            path.truncate(before);
        }
    }
}

/// The key that a misspelt one plainly means.
fn meant<'k>(key: &str, entries: &[Entry], keys: &'k BTreeMap<String, Key>) -> Option<&'k str> {
    if keys.contains_key(key) {
        return None;
    }
    let near = the_nearest(key, keys.keys().map(String::as_str))?;
    let written = entries.iter().any(|entry| &*entry.key == near);
    (!written).then_some(near)
}

fn slip(path: &str, entry: &Entry, meant: &str, key: &Key) -> Placed {
    let mut full = path.to_string();
    step_into(&mut full, &entry.key);
    let fact = format!("`{}` is not a key that is known here", entry.key);
    let remedy = format!("did you mean `{meant}`? ({})", lower_first(&key.about));
    Placed::at(entry.key_place, Fault::new(full, fact, remedy))
}
