use std::panic::{AssertUnwindSafe, catch_unwind};

use super::*;
use crate::pack::manifest::{Listed, json};

/// A pack of two files and its manifest, told from another by a word.
fn pack(word: &str) -> Vec<PackFile> {
    let mut files = vec![
        PackFile::new("index.html", word),
        PackFile::new("record/inspection.csv", format!("{word}, blank")),
    ];
    let listed = files
        .iter()
        .map(|file| Listed {
            path: file.path.clone(),
            bytes: file.bytes.len(),
            sha256: sha256(&file.bytes),
        })
        .collect();
    let manifest = Manifest::of_files(listed);
    files.push(PackFile::new(MANIFEST, json(&manifest)));
    files
}

/// Whether the folder is exactly these files.
fn is_whole(folder: &Path, files: &[PackFile]) -> bool {
    let mut wanted: Vec<PathBuf> = files.iter().map(|file| PathBuf::from(&file.path)).collect();
    wanted.sort();
    files_below(folder).is_ok_and(|found| found == wanted)
        && files
            .iter()
            .all(|file| fs::read(folder.join(&file.path)).is_ok_and(|bytes| bytes == file.bytes))
}

fn names_in(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

const MOMENTS: [Moment; 7] = [
    Moment::BeforeFile(0),
    Moment::BeforeFile(1),
    Moment::BeforeFile(2),
    Moment::BeforeExchange,
    Moment::BetweenRenames,
    Moment::BeforeRetiring,
    Moment::BeforeRemoving,
];

/// One name exchange, and the two renames of a system that cannot do it.
fn both_ways(out: &Path) -> [Folders; 2] {
    let mut renaming = Folders::new(out, "MH-TP1-A");
    renaming.exchange_at_one_stroke = |_, _| Err(io::ErrorKind::Unsupported.into());
    [Folders::new(out, "MH-TP1-A"), renaming]
}

#[test]
fn holds_a_pack_is_replaced_and_nothing_is_left_beside_it() {
    for way in 0..2 {
        let out = tempfile::tempdir().unwrap();
        let folders = &both_ways(out.path())[way];
        folders.write(&pack("first"), &mut |_| Ok(())).unwrap();
        let written = folders.write(&pack("second"), &mut |_| Ok(())).unwrap();
        assert!(is_whole(&written.folder, &pack("second")));
        assert_eq!((written.kept, written.not_cleared), (None, None));
        assert_eq!(names_in(out.path()), ["MH-TP1-A"]);
    }
}

/// A run that meets an error at any moment leaves one whole pack, the old one until the new one has its name, and no remains.
#[test]
fn holds_a_failed_run_leaves_one_whole_pack() {
    for (way, moment) in (0..2).flat_map(|way| MOMENTS.map(|moment| (way, moment))) {
        let out = tempfile::tempdir().unwrap();
        let folders = &both_ways(out.path())[way];
        folders.write(&pack("old"), &mut |_| Ok(())).unwrap();
        let result = folders.write(&pack("new"), &mut |at| {
            if at == moment {
                Err(io::Error::other("the disk is full"))
            } else {
                Ok(())
            }
        });
        let standing = if result.is_ok() { "new" } else { "old" };
        assert!(is_whole(&folders.pack, &pack(standing)), "{moment:?}");
        if result.is_err() {
            assert_eq!(names_in(out.path()), ["MH-TP1-A"], "{moment:?}");
        }
        folders.write(&pack("next"), &mut |_| Ok(())).unwrap();
        assert!(is_whole(&folders.pack, &pack("next")), "{moment:?}");
        assert_eq!(names_in(out.path()), ["MH-TP1-A"], "{moment:?}");
    }
}

/// A run killed at any moment (no clearing up) leaves one whole pack after the next run, whatever that run comes to.
#[test]
fn holds_the_next_run_clears_the_remains_of_a_killed_one() {
    let hook = std::panic::take_hook();
    std::panic::set_hook(Box::new(|_| {}));
    let outcome = catch_unwind(|| {
        for (way, moment) in (0..2).flat_map(|way| MOMENTS.map(|moment| (way, moment))) {
            killed_at(way, moment);
        }
    });
    std::panic::set_hook(hook);
    outcome.unwrap();
}

fn killed_at(way: usize, moment: Moment) {
    let out = tempfile::tempdir().unwrap();
    let folders = &both_ways(out.path())[way];
    folders.write(&pack("old"), &mut |_| Ok(())).unwrap();
    let _ = catch_unwind(AssertUnwindSafe(|| {
        folders.write(&pack("new"), &mut |at| {
            assert_ne!(at, moment, "killed");
            Ok(())
        })
    }));
    // Between the two renames no pack has its name, but both are whole; in every other case the name is never missing.
    if folders.pack.exists() {
        let whole = ["old", "new"].map(|word| is_whole(&folders.pack, &pack(word)));
        assert!(whole[0] || whole[1], "{moment:?}");
    } else {
        assert_eq!((way, moment), (1, Moment::BetweenRenames));
    }
    let refused = folders.write(&pack("refused"), &mut |at| {
        if at == Moment::BeforeFile(0) {
            Err(io::Error::other("the disk is full"))
        } else {
            Ok(())
        }
    });
    assert!(refused.is_err());
    let whole = ["old", "new"].map(|word| is_whole(&folders.pack, &pack(word)));
    assert!(whole[0] || whole[1], "{moment:?}");
    assert_eq!(names_in(out.path()), ["MH-TP1-A"], "{moment:?}");
}

#[test]
fn holds_a_filled_in_record_is_kept_and_not_thrown_away() {
    let out = tempfile::tempdir().unwrap();
    let folders = Folders::new(out.path(), "MH-TP1-A");
    folders.write(&pack("first"), &mut |_| Ok(())).unwrap();
    for (path, words) in [
        ("record/inspection.csv", "T1, 46.9"),
        ("record/stamp.jpg", "…"),
    ] {
        fs::write(folders.pack.join(path), words).unwrap();
    }
    let written = folders.write(&pack("second"), &mut |_| Ok(())).unwrap();
    assert!(is_whole(&folders.pack, &pack("second")));
    let kept = written.kept.unwrap();
    assert_eq!(kept, out.path().join("MH-TP1-A.kept"));
    assert_eq!(
        fs::read_to_string(kept.join("record/inspection.csv")).unwrap(),
        "T1, 46.9"
    );
    assert_eq!(
        files_below(&kept).unwrap(),
        ["record/inspection.csv", "record/stamp.jpg"].map(PathBuf::from)
    );
}

#[test]
fn holds_a_folder_that_is_no_pack_is_put_aside_whole() {
    let out = tempfile::tempdir().unwrap();
    let folders = Folders::new(out.path(), "MH-TP1-A");
    fs::create_dir_all(&folders.pack).unwrap();
    fs::write(folders.pack.join("letters.txt"), "mine").unwrap();
    let written = folders.write(&pack("first"), &mut |_| Ok(())).unwrap();
    assert!(is_whole(&folders.pack, &pack("first")));
    let kept = written.kept.unwrap().join("letters.txt");
    assert_eq!(fs::read_to_string(kept).unwrap(), "mine");
}

#[test]
fn refuses_a_file_that_stands_where_the_pack_should() {
    let out = tempfile::tempdir().unwrap();
    fs::write(out.path().join("MH-TP1-A"), "a file").unwrap();
    let refused = write_whole(out.path(), "MH-TP1-A", &pack("first")).unwrap_err();
    assert!(refused.to_string().contains("is not a folder"), "{refused}");
    assert_eq!(names_in(out.path()), ["MH-TP1-A"]);
}

/// Everybody in the drawing office may read a pack, so far as the folder it lies in lets them.
#[cfg(unix)]
#[test]
fn holds_files_have_the_usual_mode() {
    use std::os::unix::fs::PermissionsExt;
    let out = tempfile::tempdir().unwrap();
    let usual = out.path().join("usual");
    fs::write(&usual, "").unwrap();
    let written = write_whole(out.path(), "MH-TP1-A", &pack("first")).unwrap();
    let mode = |path: &Path| fs::metadata(path).unwrap().permissions().mode();
    assert_eq!(mode(&written.folder.join("index.html")), mode(&usual));
}
