//! The road runs one way: each stage names only those before it, and each crate of a format is named in one file.
//!
//! Reads the source, so that the table in the developers' notes stays true.

use std::fs;
use std::path::{Path, PathBuf};

/// What each stage may name, itself apart.
const MAY_NAME: &[(&str, &[&str])] = &[
    ("units", &[]),
    ("spec", &["units"]),
    ("design", &["units", "spec"]),
    ("checks", &["units", "spec", "design"]),
    ("sheets", &["units", "spec", "design", "checks", "cut"]),
    ("cut", &["units", "spec", "design"]),
    (
        "pack",
        &["units", "spec", "design", "checks", "sheets", "cut"],
    ),
    (
        "commands",
        &["units", "spec", "design", "checks", "sheets", "cut", "pack"],
    ),
    ("main", &["commands"]),
];

/// The one file that names each of these crates.
const ONE_FILE: &[(&str, &str)] = &[
    ("saphyr_parser", "spec/yaml.rs"),
    ("serde_yaml", "spec/typed.rs"),
    ("annotate_snippets", "spec/fault.rs"),
    ("svg", "sheets/svg.rs"),
    ("krilla", "sheets/pdf.rs"),
    ("resvg", "sheets/png.rs"),
    ("png", "sheets/png.rs"),
    ("skrifa", "sheets/face.rs"),
    ("dxf", "cut/reader.rs"),
    ("cavalier_contours", "design/outline_offset.rs"),
    ("libm", "units/angle.rs"),
    ("csv", "pack/csv_file.rs"),
    ("zip", "pack/zip_file.rs"),
    ("clap", "main.rs"),
];

#[test]
fn holds_each_stage_names_only_those_before_it() {
    let mut wrong = Vec::new();
    for (file, code) in sources() {
        let stage = stage_of(&file);
        let Some((_, may)) = MAY_NAME.iter().find(|(name, _)| *name == stage) else {
            continue;
        };
        for named in stages_named(&code) {
            if named != stage && !may.contains(&named.as_str()) {
                wrong.push(format!("{file} names {named}, and {stage} may not"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn holds_every_folder_is_in_the_table() {
    for (file, _) in sources() {
        let stage = stage_of(&file);
        let known = stage == "lib" || MAY_NAME.iter().any(|(name, _)| *name == stage);
        assert!(known, "{file} lies outside the stages");
    }
}

#[test]
fn holds_each_format_crate_is_named_in_one_file() {
    let mut wrong = Vec::new();
    for (file, code) in sources() {
        for (name, only) in ONE_FILE {
            let module = format!("src/{}/{name}.rs", stage_of(&file));
            let has_module = Path::new(env!("CARGO_MANIFEST_DIR")).join(module).exists();
            if file != *only && names_crate(&code, name, has_module) {
                wrong.push(format!(
                    "{file} names the crate {name}, which {only} alone may"
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// 25.4 is written once; a copy elsewhere would be the first to be mistyped.
#[test]
fn holds_the_inch_is_written_once() {
    for (file, code) in sources() {
        if file != "units/length.rs" {
            assert!(!code.contains("25.4"), "{file} writes the inch out");
        }
    }
}

/// Every source file with its code: comments and test modules left out.
fn sources() -> Vec<(String, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    gather(&root, &mut files);
    files.sort();
    files
        .iter()
        .filter(|path| !is_test_file(path))
        .map(|path| {
            let text = fs::read_to_string(path).expect("source is text");
            let inside = path.strip_prefix(&root).expect("the file lies under src");
            let name = inside.to_string_lossy().replace('\\', "/");
            (name, code_of(&text))
        })
        .collect()
}

fn gather(folder: &Path, files: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("src can be listed") {
        let path = entry.expect("src can be listed").path();
        if path.is_dir() {
            gather(&path, files);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            files.push(path);
        }
    }
}

/// A file that its folder declares under `#[cfg(test)]`.
fn is_test_file(path: &Path) -> bool {
    let (Some(stem), Some(folder)) = (path.file_stem(), path.parent()) else {
        return false;
    };
    let declares = format!("#[cfg(test)]\nmod {};", stem.to_string_lossy());
    let parents = [folder.join("mod.rs"), folder.with_extension("rs")];
    parents
        .iter()
        .any(|parent| fs::read_to_string(parent).is_ok_and(|text| text.contains(&declares)))
}

fn code_of(text: &str) -> String {
    let mut code = String::new();
    let mut lines = text.lines();
    while let Some(line) = lines.next() {
        if line.trim() == "#[cfg(test)]" {
            match lines.next() {
                // A whole module of tests closes the file.
                Some(next) if next.starts_with("mod ") && next.ends_with('{') => break,
                _ => continue,
            }
        }
        code.push_str(line.split("//").next().unwrap_or(""));
        code.push('\n');
    }
    code
}

fn stage_of(file: &str) -> &str {
    let first = file.split('/').next().unwrap_or(file);
    first.trim_end_matches(".rs")
}

/// The stages named by `crate::…` or `centrepop::…`, braces of a `use` included.
fn stages_named(code: &str) -> Vec<String> {
    let mut named = Vec::new();
    for root in ["crate::", "centrepop::"] {
        for (at, _) in code.match_indices(root) {
            let rest = &code[at + root.len()..];
            match rest.strip_prefix('{') {
                Some(inside) => named.extend(first_words(inside)),
                None => named.push(word(rest)),
            }
        }
    }
    named.retain(|name| MAY_NAME.iter().any(|(stage, _)| stage == name));
    named
}

/// The first word of each item between braces, at the outer depth.
fn first_words(inside: &str) -> Vec<String> {
    let mut depth = 0;
    let mut words = vec![word(inside.trim_start())];
    for (at, c) in inside.char_indices() {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => words.push(word(inside[at + 1..].trim_start())),
            _ => {}
        }
    }
    words
}

fn word(text: &str) -> String {
    text.chars()
        .take_while(|c| c.is_ascii_alphanumeric() || *c == '_')
        .collect()
}

/// Whether code names a crate. Where a stage has a module of the same name (`sheets/svg.rs`), only a `use` from the root
/// counts, since `svg::` alone is that module.
fn names_crate(code: &str, name: &str, has_module: bool) -> bool {
    if code.contains(&format!("mod {name};")) {
        return code.contains(&format!(" ::{name}::"));
    }
    if has_module {
        return code.contains(&format!("\nuse {name}::")) || code.contains(&format!(" ::{name}::"));
    }
    code.match_indices(&format!("{name}::")).any(|(at, _)| {
        let before = code[..at].chars().next_back().unwrap_or(' ');
        let path_goes_on = code[..at].ends_with("::") && !code[..at].ends_with(" ::");
        !before.is_ascii_alphanumeric() && before != '_' && !path_goes_on
    })
}
