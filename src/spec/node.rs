//! The spec as a tree of words, each with its place in the file: what stands between YAML and its meaning.

/// Where something stands: one stretch of one line.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Place {
    /// Line, from 1.
    pub(super) line: usize,
    /// Character in the line, from 0.
    pub(super) column: usize,
    /// Characters it takes up on that line.
    pub(super) length: usize,
}

/// A value as written.
#[derive(Clone, Debug)]
pub(super) struct Node {
    /// Where it stands; the first line of anything that takes several.
    pub(super) place: Place,
    pub(super) content: Content,
}

/// What a value is made of. Nothing is a number yet: `1 5/8`, `16` and `no` are all words until a key gives them a sense.
#[derive(Clone, Debug)]
pub(super) enum Content {
    /// A word, a number or a sentence.
    Text {
        /// Without its quotes.
        text: Box<str>,
        /// Whether it stood in quotes.
        quoted: bool,
    },
    /// A list.
    List(Vec<Node>),
    /// Keys and values in the order of the file, no key twice.
    Keys(Vec<Entry>),
}

/// A key and its value.
#[derive(Clone, Debug)]
pub(super) struct Entry {
    pub(super) key: Box<str>,
    pub(super) key_place: Place,
    pub(super) value: Node,
    /// Whether the key stands again further down, so that nobody knows which value is meant.
    pub(super) again: bool,
}

impl Node {
    /// The value of a key, where this holds keys and has it.
    pub(super) fn get(&self, key: &str) -> Option<&Entry> {
        match &self.content {
            Content::Keys(entries) => entries.iter().find(|entry| &*entry.key == key),
            Content::List(_) | Content::Text { .. } => None,
        }
    }

    /// The text, where it is one.
    pub(super) fn text(&self) -> Option<&str> {
        match &self.content {
            Content::Text { text, .. } => Some(text),
            Content::List(_) | Content::Keys(_) => None,
        }
    }

    /// The place of a dotted path, `tubes[0].exceptions[1].omit`, or of its nearest ancestor that is written.
    pub(super) fn place_of(&self, path: &str) -> Place {
        let mut node = self;
        let mut place = self.first_place();
        for step in path.split(['.', '[']).filter(|step| !step.is_empty()) {
            let next = match step.strip_suffix(']').map(str::parse::<usize>) {
                Some(Ok(index)) => node.item(index).map(|item| (item.place, item)),
                Some(Err(_)) => None,
                None => node.get(step).map(|entry| (entry.place(), &entry.value)),
            };
            match next {
                Some((at, below)) => (place, node) = (at, below),
                None => break,
            }
        }
        place
    }

    /// Every word of the file with its dotted path and line, in the order of the file.
    pub(super) fn words(&self) -> Vec<(String, &str, usize)> {
        let mut words = Vec::new();
        self.add_words("", &mut words);
        words
    }

    fn add_words<'a>(&'a self, path: &str, words: &mut Vec<(String, &'a str, usize)>) {
        match &self.content {
            Content::Text { text, .. } => words.push((path.to_string(), text, self.place.line)),
            Content::List(items) => {
                for (number, item) in items.iter().enumerate() {
                    item.add_words(&format!("{path}[{number}]"), words);
                }
            }
            Content::Keys(entries) => {
                for entry in entries {
                    let below = match path {
                        "" => entry.key.to_string(),
                        _ => format!("{path}.{}", entry.key),
                    };
                    entry.value.add_words(&below, words);
                }
            }
        }
    }

    fn item(&self, index: usize) -> Option<&Node> {
        match &self.content {
            Content::List(items) => items.get(index),
            Content::Keys(_) | Content::Text { .. } => None,
        }
    }

    /// Where the file's first word stands.
    fn first_place(&self) -> Place {
        match &self.content {
            Content::Keys(entries) => entries.first().map_or(self.place, |entry| entry.key_place),
            Content::List(_) | Content::Text { .. } => self.place,
        }
    }
}

impl Entry {
    /// What to point at: a value that is one word, otherwise the key.
    pub(super) fn place(&self) -> Place {
        match &self.value.content {
            Content::Text { text, .. } if !text.is_empty() => self.value.place,
            _ => self.key_place,
        }
    }
}
