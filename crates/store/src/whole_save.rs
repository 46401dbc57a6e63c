//! Writing whole files, one writer at a time.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::Path;

use crate::StoreError;
use crate::error::disk;
use crate::version::UNFINISHED;

/// Waits until no other program writes what this folder guards. The lock ends with the handle, also when the program
/// dies.
pub(crate) fn lock(folder: &Path) -> Result<File, StoreError> {
    lock_at(&folder.join("lock"))
}

pub(crate) fn lock_at(path: &Path) -> Result<File, StoreError> {
    let file = File::options()
        .create(true)
        .truncate(false)
        .write(true)
        .open(path)
        .map_err(disk(path))?;
    file.lock().map_err(disk(path))?;
    Ok(file)
}

/// Makes sure that what was renamed in a folder survives a power cut, where the system can promise that.
pub(crate) fn sync_folder(folder: &Path) -> io::Result<()> {
    if cfg!(unix) {
        File::open(folder)?.sync_all()
    } else {
        Ok(())
    }
}

/// Writes a file so that it is never seen in part: in `by` first, onto the disk, then renamed, and the rename itself
/// onto the disk. The first name is always the same, so a save that died leaves at most one such file, and whoever looks
/// next clears it away; the lock of `by` keeps two from meeting there.
pub(crate) fn write_whole(path: &Path, text: &str, by: &Path) -> Result<(), StoreError> {
    let unfinished = by.join(UNFINISHED);
    let write = || -> io::Result<()> {
        let mut file = File::create(&unfinished)?;
        if let Ok(metadata) = fs::metadata(path) {
            file.set_permissions(metadata.permissions())?;
        }
        file.write_all(text.as_bytes())?;
        file.sync_all()
    };
    write().map_err(disk(&unfinished))?;
    fs::rename(&unfinished, path).map_err(disk(path))?;
    let folder = path.parent().unwrap_or(Path::new("."));
    sync_folder(folder).map_err(disk(folder))
}

/// Writes a note: a file that can always be made anew, so that no earlier text of it is kept. `by` is a folder beside
/// it in which it is prepared; what a killed program left there is taken over.
///
/// # Errors
/// The disk refused; the note is as it was.
pub fn write_note(
    path: &Path,
    by: &Path,
    text: impl FnOnce() -> Result<String, StoreError>,
) -> Result<(), StoreError> {
    fs::create_dir_all(by).map_err(disk(by))?;
    let _lock = lock(by)?;
    write_whole(path, &text()?, by)
}

/// Clears away what a killed program left of a note it was writing.
pub fn clear_unfinished_note(by: &Path) {
    let unfinished = by.join(UNFINISHED);
    if unfinished.is_file()
        && let Ok(_lock) = lock(by)
    {
        // Failing to is no reason not to go on.
        let _ = fs::remove_file(unfinished);
    }
}

/// Puts a file where none is, whole or not at all: what came there meanwhile is somebody else's and stays. `by` is a
/// folder beside it in which it is prepared.
///
/// # Errors
/// There is one already, or the disk refused.
pub fn add_file(path: &Path, bytes: &[u8], by: &Path) -> Result<(), StoreError> {
    fs::create_dir_all(by).map_err(disk(by))?;
    let _lock = lock(by)?;
    let unfinished = by.join(UNFINISHED);
    let write = |file: io::Result<File>| -> io::Result<()> {
        let mut file = file?;
        file.write_all(bytes)?;
        file.sync_all()
    };
    write(File::create(&unfinished)).map_err(disk(&unfinished))?;
    // Unlike a rename, a second name is refused where there is a file. Not every system has second names.
    let named = match fs::hard_link(&unfinished, path) {
        Err(error) if error.kind() != io::ErrorKind::AlreadyExists => write(File::create_new(path)),
        named => named,
    };
    let removed = fs::remove_file(&unfinished);
    named.map_err(disk(path))?;
    removed.map_err(disk(&unfinished))?;
    let folder = path.parent().unwrap_or(Path::new("."));
    sync_folder(folder).map_err(disk(folder))
}

/// Gives a file the time of another, which is all its time is for: where the system does not let it, it is as good.
pub(crate) fn take_time(path: &Path, from: &Path) {
    let take = || -> io::Result<()> {
        let time = fs::metadata(from)?.modified()?;
        File::options().write(true).open(path)?.set_modified(time)
    };
    let _ = take();
}
