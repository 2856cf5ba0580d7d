//! `results.json` is read by other programs: its shape is a contract, and its figures are those of the hand workings.

mod common;

use common::{pack_of, results_of};
use serde_json::Value;

/// Holds a value against the part of JSON Schema that `results.schema.json` uses; any other keyword is a mistake in the schema.
fn differences(schema: &Value, value: &Value, at: &str) -> Vec<String> {
    let mut found = Vec::new();
    for (keyword, wanted) in schema.as_object().expect("a schema is an object") {
        match keyword.as_str() {
            "type" => {
                let types: Vec<&str> = match wanted {
                    Value::String(one) => vec![one],
                    several => several
                        .as_array()
                        .expect("types")
                        .iter()
                        .map(|t| t.as_str().expect("a type"))
                        .collect(),
                };
                if !types.contains(&type_of(value)) {
                    found.push(format!("{at} is {}, not {types:?}", type_of(value)));
                }
            }
            "enum" => {
                if !wanted.as_array().expect("a list").contains(value) {
                    found.push(format!("{at} is {value}"));
                }
            }
            "required" => {
                for key in wanted.as_array().expect("a list") {
                    let key = key.as_str().expect("a key");
                    if value.get(key).is_none() {
                        found.push(format!("{at} lacks {key}"));
                    }
                }
            }
            "properties" => {
                for (key, inner) in wanted.as_object().expect("a map") {
                    if let Some(part) = value.get(key) {
                        found.extend(differences(inner, part, &format!("{at}.{key}")));
                    }
                }
            }
            "additionalProperties" => {
                let named = schema.get("properties").and_then(Value::as_object);
                for (key, part) in value.as_object().into_iter().flatten() {
                    if named.is_some_and(|named| named.contains_key(key)) {
                        continue;
                    }
                    match wanted {
                        Value::Bool(false) => found.push(format!("{at} has {key} as well")),
                        inner => found.extend(differences(inner, part, &format!("{at}.{key}"))),
                    }
                }
            }
            "items" => {
                for (number, part) in value.as_array().into_iter().flatten().enumerate() {
                    found.extend(differences(wanted, part, &format!("{at}[{number}]")));
                }
            }
            other => panic!("the schema uses {other}, which is not read here"),
        }
    }
    found
}

fn type_of(value: &Value) -> &'static str {
    match value {
        Value::Null => "null",
        Value::Bool(_) => "boolean",
        Value::Number(_) => "number",
        Value::String(_) => "string",
        Value::Array(_) => "array",
        Value::Object(_) => "object",
    }
}

#[test]
fn holds_results_keep_their_contract() {
    let schema: Value = serde_json::from_str(include_str!("results.schema.json")).unwrap();
    for spec in common::specs() {
        let found = differences(&schema, &results_of(&pack_of(&spec)), "results");
        assert_eq!(found, Vec::<String>::new(), "{}", spec.display());
    }
}

/// A figure in inches to so many places, from one in mm.
fn inches(mm: &Value, places: usize) -> String {
    format!("{:.places$}", mm.as_f64().expect("a figure") / 25.4)
}

/// The results of a plate as made keep the contract too; a blank record is one of a plate that nobody has measured.
#[test]
fn holds_results_as_made_keep_the_contract() {
    let schema: Value = serde_json::from_str(include_str!("results.schema.json")).unwrap();
    let spec = "specs/hobthrush-smokebox.yaml";
    let record = pack_of(spec).join("record/inspection.csv");
    let out = tempfile::tempdir().unwrap();
    let run = common::centrepop()
        .args(["asmade", spec])
        .arg(record)
        .arg("--out")
        .arg(out.path())
        .output()
        .unwrap();
    assert_eq!(run.status.code(), Some(0));
    let results = results_of(&common::the_pack_in(out.path()));
    let found = differences(&schema, &results, "results");
    assert!(found.is_empty(), "{found:#?}");
    assert!(results["as_made"].is_object());
}

fn least(results: &Value, one: &str, other: &str) -> Value {
    results["ligaments"]["least"]
        .as_array()
        .unwrap()
        .iter()
        .find(|least| least["between"] == serde_json::json!([one, other]))
        .unwrap_or_else(|| panic!("no ligament between {one} and {other}"))
        .clone()
}

/// The plate worked by hand. Nest: columns 2 1/4 apart, pitch 2 19/32, hole 1 27/32, so 0.7500 in a column; a hole of 1.84375
/// asks 1.84375/8 + 0.5 = 0.7305. Tangent at 19 − 5/8 − 1 1/2 = 16.875. Blank by the mid
/// line: 2 × (16.875 + π/2 × 1.8125 + 2.25) = 43.94; by equal area: 16.875²/2 + 16.875 × π/2 × 1.8125 + 1.8125² + 18.6875 × 2.25 =
/// 235.76, and 2 × √(2 × 235.76) = 43.43. Rivets: π × 38/56 = 2.1318, π × 39/56 = 2.1879. End load: 160 psi × π/4 × 38² = 181,458 lbf.
#[test]
fn by_hand_marl_hen() {
    let results = results_of(&pack_of("specs/marl-hen-smokebox.yaml"));
    let figures = &results["figures"];
    assert_eq!(figures["tube_count"], 100);
    assert_eq!(figures["rivet_count"], 56);
    let tubes = least(&results, "tube", "tube");
    assert_eq!(inches(&tubes["mm"], 4), "0.7500");
    assert_eq!(inches(&tubes["required_mm"], 4), "0.7305");
    assert_eq!(inches(&least(&results, "tube", "plug")["mm"], 3), "0.781");
    assert_eq!(inches(&least(&results, "tube", "stay")["mm"], 3), "1.247");
    assert_eq!(
        inches(&least(&results, "tube", "steam pipe")["mm"], 3),
        "1.344"
    );
    assert_eq!(inches(&figures["blank_mid_line_mm"], 2), "43.94");
    assert_eq!(inches(&figures["blank_equal_area_mm"], 2), "43.43");
    assert_eq!(inches(&figures["rivet_pitch_bore_mm"], 4), "2.1318");
    assert_eq!(inches(&figures["rivet_pitch_outside_mm"], 4), "2.1879");
    assert_eq!(inches(&figures["largest_circle_mm"], 3), "10.407");
    let at = figures["largest_circle_at_mm"].as_array().unwrap();
    assert_eq!(
        (inches(&at[0], 2), inches(&at[1], 2)),
        ("0.56".into(), "11.66".into())
    );
    let pounds = figures["end_load_n"].as_f64().unwrap() / (0.453_592_37 * 9.806_65);
    assert_eq!(format!("{pounds:.0}"), "181458");
    let mass = |name: &str| format!("{:.1}", figures[name].as_f64().unwrap() / 0.453_592_37);
    assert_eq!(mass("plate_mass_kg"), "203.6");
    assert_eq!(mass("blank_mass_kg"), "281.9");
    assert_eq!(figures["ring_length_mm"], Value::Null);
}

/// The plate worked by hand. Rows 49 apart, pitch 56.5, hole 39: 17.5 in a row. Ring: π × (840 − 16) = 2588.7. Rivets: π × 840/48 =
/// 54.98. End load: 1.034 N/mm² × π/4 × 840² = 573.0 kN.
#[test]
fn by_hand_hobthrush() {
    let results = results_of(&pack_of("specs/hobthrush-smokebox.yaml"));
    let figures = &results["figures"];
    let one = |value: &Value, places: usize| format!("{:.places$}", value.as_f64().unwrap());
    assert_eq!(figures["tube_count"], 119);
    assert_eq!(one(&least(&results, "tube", "tube")["mm"], 3), "17.500");
    assert_eq!(one(&least(&results, "tube", "stay")["mm"], 1), "32.8");
    assert_eq!(one(&least(&results, "tube", "steam pipe")["mm"], 1), "66.4");
    assert_eq!(one(&figures["ring_length_mm"], 1), "2588.7");
    assert_eq!(one(&figures["ring_mass_kg"], 1), "29.3");
    assert_eq!(one(&figures["plate_mass_kg"], 1), "92.2");
    assert_eq!(one(&figures["rivet_pitch_bore_mm"], 2), "54.98");
    assert_eq!(one(&figures["largest_circle_mm"], 1), "248.3");
    let kilonewtons = figures["end_load_n"].as_f64().unwrap() / 1000.0;
    assert_eq!(format!("{kilonewtons:.1}"), "573.0");
    assert_eq!(figures["blank_mid_line_mm"], Value::Null);
}

/// Marl Hen with two rows in zig-zag, 1 1/2 in apart, on 4 in of straight: 2 × 56 rivets. Row 1 keeps the numbers, places and
/// edge of the one row; row 2 stands 1 13/32 + 1 1/2 = 2 29/32 in from the edge, its first rivet on bottom centre. Table and
/// record carry the same. At 0.283599 lb/in³ 56 holes of 0.690291 in² through 5/8 in are 6.852 lb less, and 1 3/4 in more of
/// straight, π × 37 3/8 × 5/8 × 1 3/4, 36.421 lb more: 29.57 lb.
#[test]
fn by_hand_two_rows_of_rivets() {
    let rows = "  rows: {number: 2, arrangement: zig-zag, apart: 1 1/2 in}\n  count: 56";
    let changes = [
        ("straight: 2 1/4 in", "straight: 4 in"),
        ("blank_diameter: 45 in", "blank_diameter: 49 in"),
        ("  count: 56", rows),
    ];
    let drawn = common::draw_changed("specs/marl-hen-smokebox.yaml", &changes);
    assert_eq!(drawn.status(), 0, "{}", drawn.errors());
    let results = results_of(&drawn.pack);
    let schema: Value = serde_json::from_str(include_str!("results.schema.json")).unwrap();
    assert_eq!(
        differences(&schema, &results, "results"),
        Vec::<String>::new()
    );
    let rivets = results["rivets"].as_array().unwrap();
    assert_eq!(rivets.len(), 112);
    assert_eq!(results["figures"]["rivet_count"], 112);
    let single = results_of(&pack_of("specs/marl-hen-smokebox.yaml"));
    assert_eq!(rivets[..56], single["rivets"].as_array().unwrap()[..]);
    for (i, rivet) in rivets.iter().enumerate() {
        assert_eq!(rivet["id"], format!("R{}", i + 1));
        assert_eq!(rivet["line"], "R");
        let from_edge = if i < 56 { "1.40625" } else { "2.90625" };
        assert_eq!(inches(&rivet["from_edge_mm"], 5), from_edge);
        assert_eq!(inches(&rivet["finish_mm"], 4), "0.9375");
    }
    let first_inner = &rivets[56];
    assert_eq!(first_inner["angle_deg"].as_f64(), Some(180.0));
    assert_eq!(first_inner["run_mm"].as_f64(), Some(0.0));
    assert_eq!(first_inner["how"], "in place");
    assert_eq!(
        rivets.iter().filter(|rivet| rivet["how"] == "tack").count(),
        14
    );
    let pounds = |of: &Value| of["figures"]["plate_mass_kg"].as_f64().unwrap() / 0.453_592_37;
    assert_eq!(
        format!("{:.2}", pounds(&results) - pounds(&single)),
        "29.57"
    );

    let file = |name: &str| std::fs::read_to_string(drawn.pack.join(name)).expect("a file");
    let table = file("tables/rivets.csv");
    assert!(table.contains("\nR56,R,176.7857,"), "{table}");
    assert!(
        table.contains(
            "\nR57,R,180.0000,0.000,0 in,0.0000,2 29/32 in,73.819,15/16 in,23.813,in place,"
        ),
        "{table}"
    );
    let record = file("record/inspection.csv");
    assert!(
        record.contains("\nR5,\"rivet hole, row 1, tack\","),
        "{record}"
    );
    assert!(
        record.contains("\nR112,\"rivet hole, row 2, in place\","),
        "{record}"
    );
}
