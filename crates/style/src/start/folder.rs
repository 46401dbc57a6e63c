//! Making a folder with files in it, whole or not at all, and never over what is there.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::Path;
use std::sync::atomic::{AtomicU32, Ordering};

use super::StartError;
use crate::report::Report;
use crate::save::sync_folder;

/// The files of a folder: path inside it, with forward slashes, and what each holds.
pub(super) type Files = Vec<(String, Vec<u8>)>;

/// Tells apart what one program makes at the same time.
static MADE: AtomicU32 = AtomicU32::new(0);

pub(super) fn make(folder: &Path, files: &Files) -> Result<(), StartError> {
    make_checked(folder, files, |_| Ok(()))
}

/// Makes a folder with files in it; `check` sees it before it is put in place.
pub(super) fn make_checked(
    folder: &Path,
    files: &Files,
    check: impl FnOnce(&Path) -> Result<(), Report>,
) -> Result<(), StartError> {
    if !is_free(folder) {
        return Err(StartError::Exists(folder.to_path_buf()));
    }
    let absolute = std::path::absolute(folder).map_err(disk(folder))?;
    let Some((parent, name)) = absolute.parent().zip(absolute.file_name()) else {
        return Err(StartError::Exists(folder.to_path_buf()));
    };
    fs::create_dir_all(parent).map_err(disk(parent))?;
    let beside = parent.join(format!(
        ".{}.new-{}-{}",
        name.to_string_lossy(),
        std::process::id(),
        MADE.fetch_add(1, Ordering::Relaxed)
    ));
    let made = fill(&beside, files)
        .map_err(disk(&beside))
        .and_then(|()| check(&beside).map_err(StartError::Invalid))
        .and_then(|()| put_in_place(&beside, &absolute));
    if made.is_err() {
        // What could not be finished is ours to take away; failing to is no worse than the error itself.
        let _ = fs::remove_dir_all(&beside);
    }
    made?;
    sync_folder(parent).map_err(disk(parent))
}

pub(super) fn disk(path: &Path) -> impl FnOnce(io::Error) -> StartError + '_ {
    move |source| StartError::Disk {
        path: path.to_path_buf(),
        source,
    }
}

/// Whether nothing is at a path, or only an empty folder.
pub(super) fn is_free(folder: &Path) -> bool {
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
fn put_in_place(made: &Path, folder: &Path) -> Result<(), StartError> {
    if folder.is_dir() {
        // Removes an empty folder only.
        fs::remove_dir(folder).map_err(|_| StartError::Exists(folder.to_path_buf()))?;
    }
    if fs::symlink_metadata(folder).is_ok() {
        return Err(StartError::Exists(folder.to_path_buf()));
    }
    fs::rename(made, folder).map_err(disk(folder))
}
