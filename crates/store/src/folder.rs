//! Making a folder with files in it, whole or not at all, and never over what is there.

use std::ffi::OsStr;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};

use crate::whole_save::sync_folder;

/// The files of a folder: path inside it, with forward slashes, and what each holds.
pub type Files = Vec<(String, Vec<u8>)>;

/// Tells apart what one program makes at the same time.
static MADE: AtomicU32 = AtomicU32::new(0);

/// What stands between the name of what is being made and the number of the program that makes it.
const MARK: &str = ".new-";

/// Why a folder was not made. Nothing is left behind.
#[derive(Debug, thiserror::Error)]
pub enum MakeError<E> {
    /// Something is there already.
    #[error("{} is there already", .0.display())]
    Exists(PathBuf),
    /// What was made does not hold what it should.
    #[error("{0}")]
    Unsound(E),
    /// The disk refused.
    #[error("{} cannot be written: {source}", path.display())]
    Disk {
        /// The file or folder concerned.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
}

fn disk<E>(path: &Path) -> impl FnOnce(io::Error) -> MakeError<E> + '_ {
    move |source| MakeError::Disk {
        path: path.to_path_buf(),
        source,
    }
}

/// Makes a folder with files in it; `check` sees it before it is put in place.
///
/// # Errors
/// Something is there already, the check found fault, or the disk refused.
pub fn make_folder<E>(
    folder: &Path,
    files: &Files,
    check: impl FnOnce(&Path) -> Result<(), E>,
) -> Result<(), MakeError<E>> {
    if !is_free(folder) {
        return Err(MakeError::Exists(folder.to_path_buf()));
    }
    let absolute = std::path::absolute(folder).map_err(disk(folder))?;
    let Some((parent, name)) = absolute.parent().zip(absolute.file_name()) else {
        return Err(MakeError::Exists(folder.to_path_buf()));
    };
    fs::create_dir_all(parent).map_err(disk(parent))?;
    clear_unfinished(parent);
    let beside = parent.join(unfinished(name));
    let made = fill(&beside, files)
        .map_err(disk(&beside))
        .and_then(|()| check(&beside).map_err(MakeError::Unsound))
        .and_then(|()| put_in_place(&beside, &absolute));
    if made.is_err() {
        // What could not be finished is ours to take away; failing to is no worse than the error itself.
        let _ = fs::remove_dir_all(&beside);
    }
    made?;
    sync_folder(parent).map_err(disk(parent))
}

/// A name for what is to be called otherwise once it is whole. It says which program is at work on it, so that what is
/// left of one that was killed can be told from what is being made ([`clear_unfinished`]).
#[must_use]
pub fn unfinished(name: &OsStr) -> String {
    let count = MADE.fetch_add(1, Ordering::Relaxed);
    let program = std::process::id();
    format!(".{}{MARK}{program}-{count}", name.to_string_lossy())
}

/// Clears away what programs that are gone began to make in a folder and did not finish, files and folders. Another
/// program's that is still there is left alone; so is everything where that cannot be told.
pub fn clear_unfinished(parent: &Path) {
    let Ok(entries) = fs::read_dir(parent) else {
        return;
    };
    for entry in entries.flatten() {
        let name = entry.file_name();
        if !name.to_str().and_then(maker_of).is_some_and(is_gone) {
            continue;
        }
        // Failing to is no reason not to go on.
        let _ = match entry.file_type() {
            Ok(kind) if kind.is_dir() => fs::remove_dir_all(entry.path()),
            _ => fs::remove_file(entry.path()),
        };
    }
}

/// The number of the program that is at work on what has this name.
fn maker_of(name: &str) -> Option<u32> {
    let (program, count) = name
        .strip_prefix('.')?
        .rsplit_once(MARK)?
        .1
        .split_once('-')?;
    count.parse::<u32>().ok()?;
    program.parse().ok()
}

/// Whether a program is known to be gone.
fn is_gone(program: u32) -> bool {
    let all = Path::new("/proc");
    program != std::process::id()
        && all.join("self").exists()
        && !all.join(program.to_string()).exists()
}

/// Whether nothing is at a path, or only an empty folder.
#[must_use]
pub fn is_free(folder: &Path) -> bool {
    match fs::read_dir(folder) {
        Ok(mut entries) => entries.next().is_none(),
        Err(_) => fs::symlink_metadata(folder).is_err(),
    }
}

fn fill(folder: &Path, files: &Files) -> io::Result<()> {
    fs::create_dir(folder)?;
    for (path, bytes) in files {
        let path = path
            .split('/')
            .fold(folder.to_path_buf(), |folder, part| folder.join(part));
        let above = path.parent().unwrap_or(folder);
        fs::create_dir_all(above)?;
        let mut file = File::create_new(&path)?;
        file.write_all(bytes)?;
        file.sync_all()?;
        sync_folder(above)?;
    }
    sync_folder(folder)
}

/// Renames the made folder to where it belongs. The system refuses when something has appeared there meanwhile.
fn put_in_place<E>(made: &Path, folder: &Path) -> Result<(), MakeError<E>> {
    if folder.is_dir() {
        // Removes an empty folder only.
        fs::remove_dir(folder).map_err(|_| MakeError::Exists(folder.to_path_buf()))?;
    }
    if fs::symlink_metadata(folder).is_ok() {
        return Err(MakeError::Exists(folder.to_path_buf()));
    }
    fs::rename(made, folder).map_err(disk(folder))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn what_a_program_that_is_gone_left_is_cleared_and_nothing_else() {
        let folder = tempfile::tempdir().unwrap();
        let make = |name: &str| fs::create_dir(folder.path().join(name)).unwrap();
        // No system has so many programs.
        let gone = ".ferryman.new-4194305-0";
        let ours = format!(".ferryman.new-{}-7", std::process::id());
        for name in [gone, ours.as_str(), ".new-x", ".mine", "a.new-4194305-0"] {
            make(name);
        }
        let written = folder.path().join(".front.svg.new-4194305-3");
        fs::write(&written, "half").unwrap();
        clear_unfinished(folder.path());
        assert_eq!(written.exists(), !cfg!(target_os = "linux"));
        let left = |name: &str| folder.path().join(name).exists();
        assert_eq!(left(gone), !cfg!(target_os = "linux"));
        for name in [ours.as_str(), ".new-x", ".mine", "a.new-4194305-0"] {
            assert!(left(name), "{name}");
        }
    }
}
