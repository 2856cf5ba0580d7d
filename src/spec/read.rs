//! Reads a spec: from bytes to what the drawing office wrote, or every fault in it at once.

use std::path::Path;

use sha2::{Digest, Sha256};

use super::{Fault, Faults, Written};

/// A spec that has been read: what it says, and where each key stands.
#[derive(Clone, Debug)]
pub struct Spec {
    /// What the drawing office wrote.
    pub written: Written,
    /// SHA-256 of the file as read, 64 hex digits.
    pub fingerprint: String,
    /// The file's name as given, for messages.
    pub file: String,
}

impl Spec {
    /// The first ten digits of the fingerprint: what sheets show.
    pub fn short_fingerprint(&self) -> &str {
        &self.fingerprint[..10]
    }

    /// Gathers faults found after reading (in the design, say) into a report with their places in the file.
    pub fn refuse(&self, faults: Vec<Fault>) -> Faults {
        let report = faults
            .iter()
            .map(|f| format!("{}: {}\n  {}\n", f.path, f.fact, f.remedy))
            .collect();
        Faults { faults, report }
    }
}

/// Reads a spec from a file.
pub fn read_spec_file(path: &Path) -> Result<Spec, Faults> {
    let bytes = std::fs::read(path).map_err(|e| Faults {
        faults: vec![Fault::new(
            "",
            format!("cannot read {}: {e}", path.display()),
            "give the path of a spec",
        )],
        report: format!("cannot read {}: {e}", path.display()),
    })?;
    read_spec(&path.display().to_string(), &bytes)
}

/// Reads a spec from its bytes; `file` is used in messages only.
pub fn read_spec(file: &str, bytes: &[u8]) -> Result<Spec, Faults> {
    let refuse = |fact: String| Faults {
        faults: vec![Fault::new("", fact.clone(), "")],
        report: format!("{file}: {fact}"),
    };
    let value: serde_json::Value =
        serde_yaml::from_slice(bytes).map_err(|e| refuse(e.to_string()))?;
    let written = serde_json::from_value(value).map_err(|e| refuse(e.to_string()))?;
    let fingerprint = Sha256::digest(bytes)
        .iter()
        .map(|b| format!("{b:02x}"))
        .collect();
    Ok(Spec {
        written,
        fingerprint,
        file: file.into(),
    })
}

/// The JSON Schema of a spec, for editors.
pub fn spec_schema() -> serde_json::Value {
    serde_json::to_value(schemars::schema_for!(Written)).expect("a schema is plain JSON")
}
