//! Draws a spec with the program as a drawing office runs it.

// Each test file takes what it needs of this.
#![allow(dead_code)]

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::Output;
use std::sync::Mutex;

use assert_cmd::Command;
use serde_json::Value;
use tempfile::TempDir;

/// A run of the program, and the folder in which it wrote.
pub struct Drawn {
    /// Where packs were written; goes when this does.
    pub out: TempDir,
    /// The pack, where there is one.
    pub pack: PathBuf,
    /// What came of the run.
    pub output: Output,
}

impl Drawn {
    /// Exit status.
    pub fn status(&self) -> i32 {
        self.output.status.code().expect("it ended of itself")
    }

    /// What stands on the screen.
    pub fn screen(&self) -> String {
        String::from_utf8(self.output.stdout.clone()).expect("words")
    }

    /// What stands on standard error.
    pub fn errors(&self) -> String {
        String::from_utf8(self.output.stderr.clone()).expect("words")
    }
}

/// The program, run from the top of the repository.
pub fn centrepop() -> Command {
    let mut command = assert_cmd::cargo::cargo_bin_cmd!("centrepop");
    command.current_dir(env!("CARGO_MANIFEST_DIR"));
    command
}

/// Every spec of the repository.
pub fn specs() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("specs");
    let mut specs: Vec<PathBuf> = std::fs::read_dir(folder)
        .expect("specs/")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.is_file())
        .collect();
    specs.sort();
    specs
}

/// Draws a spec of the repository into a folder of its own.
pub fn draw(spec: impl AsRef<Path>) -> Drawn {
    let out = tempfile::tempdir().expect("a folder");
    let output = draw_into(spec.as_ref(), out.path());
    let pack = the_pack_in(out.path());
    Drawn { out, pack, output }
}

/// The pack of a spec of the repository, drawn once for all tests of a file that only look at it.
pub fn pack_of(spec: impl AsRef<Path>) -> PathBuf {
    static DRAWN: Mutex<BTreeMap<PathBuf, PathBuf>> = Mutex::new(BTreeMap::new());
    let mut drawn = DRAWN.lock().expect("no test failed while drawing");
    // One spec may be named by two paths, and its folder must not be drawn anew under those who look at it.
    let spec = spec.as_ref().canonicalize().expect("a spec");
    let draw_it = || {
        let name = spec.file_stem().expect("a spec has a name");
        let program = std::env::current_exe().expect("a test has a file");
        let out = Path::new(env!("CARGO_TARGET_TMPDIR"))
            .join(program.file_name().expect("a name"))
            .join(name);
        let _ = std::fs::remove_dir_all(&out);
        let output = draw_into(&spec, &out);
        let errors = String::from_utf8_lossy(&output.stderr);
        assert!(output.status.success(), "{}: {errors}", spec.display());
        the_pack_in(&out)
    };
    drawn.entry(spec.clone()).or_insert_with(draw_it).clone()
}

/// Draws a spec into a folder.
pub fn draw_into(spec: &Path, out: &Path) -> Output {
    centrepop()
        .arg("draw")
        .arg(spec)
        .arg("--out")
        .arg(out)
        .output()
        .expect("it runs")
}

/// Draws a spec of the repository with some of its text replaced. Every text must be there.
pub fn draw_changed(spec: &str, changes: &[(&str, &str)]) -> Drawn {
    let mut text =
        std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(spec)).expect("a spec");
    for (from, to) in changes {
        assert!(text.contains(from), "{spec} has no {from:?}");
        text = text.replacen(from, to, 1);
    }
    let folder = tempfile::tempdir().expect("a folder");
    let changed = folder.path().join("changed.yaml");
    std::fs::write(&changed, text).expect("a spec written");
    draw(changed)
}

/// The one folder in `out`; `out` itself where there is none.
pub fn the_pack_in(out: &Path) -> PathBuf {
    let mut packs = std::fs::read_dir(out).expect("a folder").flatten();
    packs.next().map_or(out.to_path_buf(), |entry| entry.path())
}

/// `results.json` of a pack.
pub fn results_of(pack: &Path) -> Value {
    let bytes = std::fs::read(pack.join("results.json")).expect("results.json");
    serde_json::from_slice(&bytes).expect("JSON")
}

/// Every file below a folder with its bytes, by its path with forward slashes.
pub fn files_below(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut files = BTreeMap::new();
    let mut to_read = vec![folder.to_path_buf()];
    while let Some(next) = to_read.pop() {
        for entry in std::fs::read_dir(next).expect("a folder") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                to_read.push(path);
            } else {
                let name = path.strip_prefix(folder).expect("it lies below");
                let name = name.to_string_lossy().replace('\\', "/");
                files.insert(name, std::fs::read(&path).expect("a file"));
            }
        }
    }
    files
}
