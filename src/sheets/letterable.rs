//! Words of the spec that the bundled face cannot letter: refused, since a sheet would show them with letters missing.

use serde_json::Value;

use super::face;
use crate::spec::{Fault, Spec};

/// A fault for every value of the spec that holds a letter which the face has not.
pub fn faults_of_lettering(spec: &Spec) -> Vec<Fault> {
    let written = serde_json::to_value(&spec.written).expect("what was read can be written");
    let mut faults = Vec::new();
    look_through(&written, "", &mut faults);
    faults
}

fn look_through(value: &Value, path: &str, faults: &mut Vec<Fault>) {
    match value {
        Value::String(words) => {
            if let Some(letter) = face::cannot_letter(words) {
                faults.push(Fault::new(
                    path,
                    format!("the sheets have no letter for {letter:?}"),
                    "write it with letters of western Europe, figures and common signs",
                ));
            }
        }
        Value::Array(items) => {
            for (number, item) in items.iter().enumerate() {
                look_through(item, &format!("{path}[{number}]"), faults);
            }
        }
        Value::Object(keys) => {
            for (key, item) in keys {
                let dot = if path.is_empty() { "" } else { "." };
                look_through(item, &format!("{path}{dot}{key}"), faults);
            }
        }
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spec::read_spec;

    fn faults(changed: &str) -> Vec<Fault> {
        let text = include_str!("../../specs/marl-hen-smokebox.yaml");
        let line = "\n  engine: Marl Hen\n";
        assert!(text.contains(line));
        let text = text.replace(line, &format!("\n  engine: {changed}\n"));
        faults_of_lettering(&read_spec("spec", text.as_bytes()).expect("a spec"))
    }

    #[test]
    fn holds_the_letters_of_a_drawing_office() {
        assert_eq!(faults("Marl Hen ø 1 27/32 ± 0.5° – é ü"), []);
    }

    #[test]
    fn refuses_letters_that_the_face_has_not() {
        let found = faults("Наковальня");
        assert_eq!(found[0].path, "job.engine");
        assert_eq!(found[0].fact, "the sheets have no letter for 'Н'");
    }
}
