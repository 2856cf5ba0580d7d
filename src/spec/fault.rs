//! A fault names the place, the fact and the remedy.

use std::fmt;

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
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.report)
    }
}

impl std::error::Error for Faults {}
