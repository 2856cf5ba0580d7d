//! Writes a pack beside the old one and exchanges the two, so that a folder of its name is one whole pack at any moment.
//!
//! Beside the pack `MH-TP1-A` a run may use two more names, and clears what an earlier run left under them:
//!
//! - `.MH-TP1-A.new`: the pack being written. Its manifest is written last, so one without a manifest is half a pack.
//! - `.MH-TP1-A.old`: the pack just replaced, on its way out.
//!
//! A file that somebody has filled in or put into the old pack is never thrown away: it is moved to `MH-TP1-A.kept`.

use std::collections::BTreeSet;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::PackFile;
use super::manifest::{MANIFEST, Manifest, sha256};

/// What came of writing a pack.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// The pack's folder.
    pub folder: PathBuf,
    /// Where files of the old pack were kept that had been changed or added since it was drawn.
    pub kept: Option<PathBuf>,
    /// What of the old pack could not be cleared away, and why. The next run tries again.
    pub not_cleared: Option<String>,
}

impl Written {
    /// What is to be said of the pack that stood there before, in lines; nothing where nothing of it is left.
    pub fn left_over(&self) -> String {
        let mut words = String::new();
        if let Some(kept) = &self.kept {
            words.push_str(&format!(
                "what had been changed in the old pack or added to it is kept in {}\n",
                kept.display()
            ));
        }
        if let Some(not_cleared) = &self.not_cleared {
            words.push_str(&format!("left of the old pack: {not_cleared}\n"));
        }
        words
    }
}

/// Why a pack could not be written. What stood there before still does.
#[derive(Debug)]
pub struct NotWritten {
    /// What was being done: "cannot create output/MH-TP1-A".
    pub doing: String,
    /// What the system said.
    pub cause: io::Error,
}

impl std::fmt::Display for NotWritten {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "cannot {}: {}", self.doing, self.cause)
    }
}

impl std::error::Error for NotWritten {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        Some(&self.cause)
    }
}

/// Names the deed and the path in an error of the system.
trait Doing<T> {
    fn doing(self, deed: &str, path: &Path) -> Result<T, NotWritten>;
}

impl<T> Doing<T> for io::Result<T> {
    fn doing(self, deed: &str, path: &Path) -> Result<T, NotWritten> {
        self.map_err(|cause| NotWritten {
            doing: format!("{deed} {}", path.display()),
            cause,
        })
    }
}

/// The moments between which a run may be killed; tests stop it at each.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Moment {
    BeforeFile(usize),
    BeforeExchange,
    BetweenRenames,
    BeforeRetiring,
    BeforeKeeping,
    BeforeRemoving,
}

/// Writes the files as the folder `name` under `out`, in place of the one that stands there.
///
/// The manifest must be among them. Waits while another run writes under the same `out`.
pub fn write_whole(out: &Path, name: &str, files: &[PackFile]) -> Result<Written, NotWritten> {
    Folders::new(out, name).write(files, &mut |_| Ok(()))
}

/// The names that belong to one pack.
struct Folders {
    out: PathBuf,
    name: String,
    pack: PathBuf,
    new: PathBuf,
    old: PathBuf,
    exchange_at_one_stroke: fn(&Path, &Path) -> io::Result<()>,
}

/// What the new pack took the place of, and where that now lies.
enum Replaced {
    Nothing,
    OldPack(PathBuf),
    /// A folder without a manifest: put aside whole.
    NoPackOfOurs(PathBuf),
}

type Interrupt<'a> = &'a mut dyn FnMut(Moment) -> io::Result<()>;

impl Folders {
    fn new(out: &Path, name: &str) -> Folders {
        Folders {
            out: out.to_path_buf(),
            name: name.to_string(),
            pack: out.join(name),
            new: out.join(format!(".{name}.new")),
            old: out.join(format!(".{name}.old")),
            exchange_at_one_stroke,
        }
    }

    fn write(&self, files: &[PackFile], interrupt: Interrupt) -> Result<Written, NotWritten> {
        fs::create_dir_all(&self.out).doing("create", &self.out)?;
        let _lock = lock(&self.out);
        let mut kept = self.clear_remains(interrupt)?;
        self.refuse_what_is_no_folder()?;
        let exchanged = self
            .stage(files, interrupt)
            .and_then(|()| self.exchange(interrupt));
        let replaced = match exchanged {
            Ok(replaced) => replaced,
            Err(failed) => {
                // The old pack stands; what was staged is worth nothing, and a second failure would hide the first.
                let _ = fs::remove_dir_all(&self.new);
                return Err(failed);
            }
        };
        sync_folder(&self.out);
        let mut not_cleared = None;
        match replaced {
            Replaced::Nothing => {}
            Replaced::NoPackOfOurs(put_aside) => kept = Some(put_aside),
            Replaced::OldPack(old) => match self.retire(&old, interrupt) {
                Ok(kept_of_it) => kept = kept_of_it.or(kept),
                Err(failed) => not_cleared = Some(failed.to_string()),
            },
        }
        Ok(Written {
            folder: self.pack.clone(),
            kept,
            not_cleared,
        })
    }

    /// Puts right what a run that was killed left behind.
    fn clear_remains(&self, interrupt: Interrupt) -> Result<Option<PathBuf>, NotWritten> {
        if self.old.exists() && !self.pack.exists() {
            fs::rename(&self.old, &self.pack).doing("put back", &self.pack)?;
        }
        let mut kept = None;
        for remains in [&self.new, &self.old] {
            if remains.exists() {
                kept = self.retire(remains, interrupt)?.or(kept);
            }
        }
        Ok(kept)
    }

    fn refuse_what_is_no_folder(&self) -> Result<(), NotWritten> {
        match fs::symlink_metadata(&self.pack) {
            Ok(found) if !found.is_dir() => Err(io::Error::new(
                io::ErrorKind::AlreadyExists,
                "something that is not a folder stands there; move it away",
            ))
            .doing("write", &self.pack),
            _ => Ok(()),
        }
    }

    /// Writes every file under the new name, the manifest last, and has the disk take them.
    fn stage(&self, files: &[PackFile], interrupt: Interrupt) -> Result<(), NotWritten> {
        fs::create_dir(&self.new).doing("create", &self.new)?;
        let mut folders = BTreeSet::from([self.new.clone()]);
        let mut written = Vec::new();
        let (manifest, others): (Vec<_>, Vec<_>) =
            files.iter().partition(|file| file.path == MANIFEST);
        for (number, file) in others.into_iter().chain(manifest).enumerate() {
            let path = self.new.join(&file.path);
            let folder = path.parent().unwrap_or(&self.new).to_path_buf();
            interrupt(Moment::BeforeFile(number)).doing("write", &path)?;
            fs::create_dir_all(&folder).doing("create", &folder)?;
            write_anew(&path, &file.bytes).doing("write", &path)?;
            folders.insert(folder);
            written.push(path);
        }
        // Only now, and not file by file: the first asks the disk for nearly all of the work, and the others find it done.
        for path in &written {
            sync_file(path).doing("write", path)?;
        }
        folders.iter().for_each(|folder| sync_folder(folder));
        Ok(())
    }

    /// Gives the new pack its name, and says where the one that had it now lies.
    fn exchange(&self, interrupt: Interrupt) -> Result<Replaced, NotWritten> {
        interrupt(Moment::BeforeExchange).doing("exchange", &self.pack)?;
        if !self.pack.exists() {
            fs::rename(&self.new, &self.pack).doing("name", &self.pack)?;
            return Ok(Replaced::Nothing);
        }
        if !self.pack.join(MANIFEST).exists() {
            let kept = self.free_name_to_keep();
            fs::rename(&self.pack, &kept).doing("keep", &kept)?;
            self.name_new_or_put_back(&kept, interrupt)?;
            return Ok(Replaced::NoPackOfOurs(kept));
        }
        if (self.exchange_at_one_stroke)(&self.new, &self.pack).is_ok() {
            return Ok(Replaced::OldPack(self.new.clone()));
        }
        fs::rename(&self.pack, &self.old).doing("put aside", &self.pack)?;
        self.name_new_or_put_back(&self.old, interrupt)?;
        Ok(Replaced::OldPack(self.old.clone()))
    }

    fn name_new_or_put_back(&self, aside: &Path, interrupt: Interrupt) -> Result<(), NotWritten> {
        let named =
            interrupt(Moment::BetweenRenames).and_then(|()| fs::rename(&self.new, &self.pack));
        if named.is_err() {
            fs::rename(aside, &self.pack).doing("put back", &self.pack)?;
        }
        named.doing("name", &self.pack)
    }

    /// Removes a pack that has been replaced, but keeps what its manifest does not answer for.
    fn retire(&self, old: &Path, interrupt: Interrupt) -> Result<Option<PathBuf>, NotWritten> {
        interrupt(Moment::BeforeRetiring).doing("remove", old)?;
        let strange = not_as_listed(old).doing("read", old)?;
        let mut kept = None;
        if !strange.is_empty() {
            let keep = self.free_name_to_keep();
            for path in &strange {
                interrupt(Moment::BeforeKeeping).doing("keep", &keep)?;
                let to = keep.join(path);
                fs::create_dir_all(to.parent().unwrap_or(&keep)).doing("create", &keep)?;
                fs::rename(old.join(path), &to).doing("keep", &to)?;
            }
            kept = Some(keep);
        }
        interrupt(Moment::BeforeRemoving).doing("remove", old)?;
        fs::remove_dir_all(old).doing("remove", old)?;
        Ok(kept)
    }

    fn free_name_to_keep(&self) -> PathBuf {
        let first = self.out.join(format!("{}.kept", self.name));
        let others = (2..).map(|n| self.out.join(format!("{}.kept-{n}", self.name)));
        std::iter::once(first)
            .chain(others)
            .find(|path| fs::symlink_metadata(path).is_err())
            .expect("some number is free")
    }
}

/// Paths, relative to the pack, of files that its manifest does not list as they are. None where it has no manifest:
/// then it is half a pack, and nobody has had it in hand.
fn not_as_listed(pack: &Path) -> io::Result<Vec<PathBuf>> {
    let manifest_bytes = match fs::read(pack.join(MANIFEST)) {
        Ok(bytes) => bytes,
        Err(e) if e.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
        Err(e) => return Err(e),
    };
    let listed = serde_json::from_slice::<Manifest>(&manifest_bytes)
        .map(|manifest| manifest.files)
        .unwrap_or_default();
    let mut strange = Vec::new();
    for path in files_below(pack)? {
        let name = path
            .components()
            .map(|part| part.as_os_str().to_string_lossy())
            .collect::<Vec<_>>()
            .join("/");
        let answered_for = name == MANIFEST
            || match listed.iter().find(|one| one.path == name) {
                Some(one) => sha256(&fs::read(pack.join(&path))?) == one.sha256,
                None => false,
            };
        if !answered_for {
            strange.push(path);
        }
    }
    Ok(strange)
}

/// Every file in a folder and the folders below it, by path relative to it, sorted.
fn files_below(folder: &Path) -> io::Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    let mut to_read = vec![PathBuf::new()];
    while let Some(relative) = to_read.pop() {
        for entry in fs::read_dir(folder.join(&relative))? {
            let entry = entry?;
            let path = relative.join(entry.file_name());
            if entry.file_type()?.is_dir() {
                to_read.push(path);
            } else {
                found.push(path);
            }
        }
    }
    found.sort();
    Ok(found)
}

fn write_anew(path: &Path, bytes: &[u8]) -> io::Result<()> {
    File::create_new(path)?.write_all(bytes)
}

/// Has the disk take a file.
fn sync_file(path: &Path) -> io::Result<()> {
    // Not every system syncs a file that was opened to be read.
    File::options().write(true).open(path)?.sync_all()
}

/// Has the disk take the names in a folder. Not every system can, and a pack is none the worse for it.
fn sync_folder(folder: &Path) {
    if let Ok(opened) = File::open(folder) {
        let _ = opened.sync_all();
    }
}

/// Keeps two runs from writing under one folder at once, where the system can lock a folder.
fn lock(folder: &Path) -> Option<File> {
    let opened = File::open(folder).ok()?;
    opened.lock().ok()?;
    Some(opened)
}

/// Exchanges two names so that neither is ever missing.
#[cfg(any(target_os = "linux", target_vendor = "apple"))]
fn exchange_at_one_stroke(one: &Path, other: &Path) -> io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    renameat_with(CWD, one, CWD, other, RenameFlags::EXCHANGE)?;
    Ok(())
}

/// Elsewhere two names cannot be exchanged, and the caller renames twice.
#[cfg(not(any(target_os = "linux", target_vendor = "apple")))]
fn exchange_at_one_stroke(_one: &Path, _other: &Path) -> io::Result<()> {
    Err(io::ErrorKind::Unsupported.into())
}

#[cfg(test)]
mod tests;
