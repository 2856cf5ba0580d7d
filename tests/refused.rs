//! Specs that cannot be read, each with the whole message that a drawing office sees.

use centrepop::spec::read_spec;

#[test]
fn holds_both_specs_read() {
    for spec in [
        "specs/marl-hen-smokebox.yaml",
        "specs/hobthrush-smokebox.yaml",
    ] {
        let bytes = std::fs::read(spec).expect("the spec is in the repository");
        if let Err(faults) = read_spec(spec, &bytes) {
            panic!("{faults}");
        }
    }
}
