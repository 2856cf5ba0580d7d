//! Reads a spec: from bytes to what the drawing office wrote, or every fault in it at once.

use std::io::Read;
use std::path::Path;
use std::sync::{Arc, OnceLock};

use sha2::{Digest, Sha256};

use super::as_far::{AsFar, named, rests_on_none};
use super::fault::{Placed, report};
use super::former::{Former, former_issue};
use super::node::{Node, Place};
use super::respell::respell;
use super::shape::{Shape, shape_of};
use super::typed::{model, reads_alike};
use super::understand::understand;
use super::yaml::read_tree;
use super::{Fault, Faults, Written, sense};

/// A spec that has been read: what it says, and where each key stands.
#[derive(Clone, Debug)]
pub struct Spec {
    /// What the drawing office wrote.
    pub written: Written,
    /// SHA-256 of the file as read, 64 hex digits.
    pub fingerprint: String,
    /// The file's name as given, for messages.
    pub file: String,
    /// The issue before this one, where the spec names its spec and was itself read from a file.
    pub former: Option<Former>,
    source: Arc<str>,
    places: Arc<Node>,
}

impl Spec {
    /// The first ten digits of the fingerprint: what sheets show.
    pub fn short_fingerprint(&self) -> &str {
        &self.fingerprint[..10]
    }

    /// The line of a dotted path, `tubes[0].hole`, or of its nearest ancestor that is written.
    pub fn line_of(&self, path: &str) -> usize {
        self.places.place_of(path).line
    }

    /// Every word that the drawing office wrote: its dotted path, the word, and its line; in the order of the file.
    pub fn words(&self) -> Vec<(String, &str, usize)> {
        self.places.words()
    }

    /// Gathers faults found after reading (in the design, say) into a report with their places in the file.
    pub fn refuse(&self, faults: Vec<Fault>) -> Faults {
        let placed = faults.into_iter();
        let placed = placed.map(|fault| placed_in(&self.places, fault));
        report(&self.file, &self.source, placed.collect())
    }

    pub(super) fn tree(&self) -> &Node {
        &self.places
    }

    pub(super) fn source(&self) -> Arc<str> {
        self.source.clone()
    }
}

/// Larger than this no spec is: a hundred thousand holes by their places come to 3 MB.
const MOST_BYTES: usize = 8 << 20;

/// Reads a spec from a file, and the former issue that it names.
pub fn read_spec_file(path: &Path) -> Result<Spec, Faults> {
    let mut spec = read_one_spec_file(path)?;
    spec.former = former_issue(&spec, path)?;
    Ok(spec)
}

/// Reads a spec from a file, and no former issue.
pub(super) fn read_one_spec_file(path: &Path) -> Result<Spec, Faults> {
    let file = path.display().to_string();
    let bytes = no_more_than_a_spec(path).map_err(|cause| {
        let fact = format!("the file cannot be read: {cause}");
        let remedy = "give the path of a spec, or start one with `centrepop new`";
        report(
            &file,
            "",
            vec![Placed::whole_file(Fault::new("", fact, remedy))],
        )
    })?;
    read_spec(&file, &bytes)
}

/// The bytes of a file, one more than a spec may have at most: a device or a drive image is not read to its end.
fn no_more_than_a_spec(path: &Path) -> std::io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    let file = std::fs::File::open(path)?;
    file.take(MOST_BYTES as u64 + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

/// Reads a spec from its bytes; `file` is used in messages only.
pub fn read_spec(file: &str, bytes: &[u8]) -> Result<Spec, Faults> {
    let source = plain_text(bytes).map_err(|placed| {
        let shown = String::from_utf8_lossy(bytes.get(..MOST_BYTES).unwrap_or(bytes));
        report(file, &shown, vec![*placed])
    })?;
    let (mut tree, mut faults) =
        read_tree(&source).map_err(|placed| report(file, &source, placed))?;
    faults.extend(respell(&mut tree, spec_shape()));
    let understood = understand(&tree, spec_shape());
    faults.extend(understood.faults);
    if faults.is_empty() {
        faults.extend(reads_alike(&source, &tree).err().map(|differs| *differs));
    }
    let written = match model(understood.value) {
        Ok(written) => written,
        Err(stray) => {
            // With stand-ins in it, a model that cannot be made is only a consequence.
            if faults.is_empty() {
                faults.push(*stray);
            }
            return Err(report(file, &source, faults));
        }
    };
    let mut in_doubt = understood.stand_ins;
    let mut contradicted = Vec::new();
    for fault in sense::contradictions(&written) {
        if !rests_on_none(&fault, &in_doubt) {
            continue;
        }
        match fault.also.is_empty() {
            // Bad by itself, so what else it does not agree with is only a consequence.
            true => in_doubt.push(fault.path.clone()),
            false => contradicted.extend(named(&fault).map(String::from)),
        }
        faults.push(placed_in(&tree, fault));
    }
    in_doubt.extend(contradicted);
    let spec = Spec {
        written,
        fingerprint: fingerprint(bytes),
        file: file.into(),
        former: None,
        source: source.into(),
        places: Arc::new(tree),
    };
    if faults.is_empty() {
        return Ok(spec);
    }
    let told = report(file, &spec.source, faults.clone());
    Err(Faults {
        as_far: Some(Box::new(AsFar::new(spec, faults, in_doubt))),
        ..told
    })
}

/// The JSON Schema of a spec, for editors.
pub fn spec_schema() -> serde_json::Value {
    serde_json::to_value(schemars::schema_for!(Written)).expect("a schema is plain JSON")
}

fn spec_shape() -> &'static Shape {
    static SHAPE: OnceLock<Shape> = OnceLock::new();
    SHAPE.get_or_init(|| shape_of(&spec_schema()))
}

fn fingerprint(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

/// A fault with the places of the keys that it names.
pub(super) fn placed_in(tree: &Node, fault: Fault) -> Placed {
    let also: Vec<(Place, String)> = fault
        .also
        .iter()
        .map(|(path, word)| (tree.place_of(path), word.clone()))
        .collect();
    let placed = Placed::at(tree.place_of(&fault.path), fault);
    also.into_iter()
        .fold(placed, |placed, (place, word)| placed.and_at(place, word))
}

/// The text of the file without its byte-order mark; refused where it is too large, not UTF-8 or holds control characters.
///
/// Every line ends in a line feed after this, so that the YAML reader and the report count the same lines.
fn plain_text(bytes: &[u8]) -> Result<String, Box<Placed>> {
    if bytes.len() > MOST_BYTES {
        let fact = format!("the file is longer than any spec, {MOST_BYTES} bytes",);
        return Err(Box::new(Placed::whole_file(Fault::new(
            "",
            fact,
            "give the path of a spec",
        ))));
    }
    let text = std::str::from_utf8(bytes).map_err(|cause| {
        let good = String::from_utf8_lossy(&bytes[..cause.valid_up_to()]);
        let fact = format!("the file is not UTF-8 text: {cause}");
        let fault = Fault::new("", fact, "save it from the editor as UTF-8");
        Box::new(Placed::at(end_of(&good), fault))
    })?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let stray = |c: char| c.is_control() && !matches!(c, '\n' | '\r' | '\t');
    match text.char_indices().find(|(_, c)| stray(*c)) {
        None => Ok(text.replace("\r\n", "\n").replace('\r', "\n")),
        Some((byte, c)) => {
            let fact = format!("a control character, U+{:04X}, stands here", u32::from(c));
            let fault = Fault::new("", fact, "delete it; it may not be seen in the editor");
            Err(Box::new(Placed::at(end_of(&text[..byte]), fault)))
        }
    }
}

/// The place just after a text.
fn end_of(text: &str) -> Place {
    let last = text.rsplit('\n').next().unwrap_or("");
    Place {
        line: text.matches('\n').count() + 1,
        column: last.chars().count(),
        length: 1,
    }
}
