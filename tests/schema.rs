//! The JSON Schema that editors are given: every key explained, and nothing open.

use centrepop::spec::spec_schema;
use serde_json::Value;

/// Every object of the schema that lists keys, with a name for messages.
fn records(schema: &Value) -> Vec<(String, &Value)> {
    let definitions = schema["$defs"].as_object().expect("the schema has parts");
    let mut records = vec![("the spec".to_string(), schema)];
    for (name, part) in definitions {
        records.push((name.clone(), part));
        let forms = part["oneOf"].as_array().into_iter().flatten();
        records.extend(forms.map(|form| (name.clone(), form)));
    }
    records.retain(|(_, part)| part["properties"].is_object());
    records
}

#[test]
fn holds_every_key_has_a_description() {
    let schema = spec_schema();
    for (name, record) in records(&schema) {
        for (key, property) in record["properties"].as_object().expect("kept above") {
            // A form of one key is described as a whole.
            let text = property["description"]
                .as_str()
                .or(record["description"].as_str());
            assert!(
                text.is_some_and(|text| text.len() > 3),
                "{name}.{key} says nothing of itself"
            );
        }
    }
}

#[test]
fn holds_every_record_refuses_other_keys() {
    let schema = spec_schema();
    for (name, record) in records(&schema) {
        assert_eq!(
            record["additionalProperties"], false,
            "{name} takes any key"
        );
    }
}

#[test]
fn holds_every_word_of_a_choice_has_a_description() {
    let schema = spec_schema();
    for (name, part) in schema["$defs"].as_object().expect("the schema has parts") {
        assert!(
            part["enum"].is_null(),
            "{name} has words without descriptions"
        );
        for form in part["oneOf"].as_array().into_iter().flatten() {
            assert!(
                form["description"].is_string(),
                "{name} has a word without a description"
            );
        }
    }
}
