//! Saving a style, and keeping every version it had.
//!
//! A save writes the new text beside the file, makes sure it is on the disk, and renames it over the file, so that at
//! every moment the file is a whole earlier or a whole later version. Before that the version being replaced is kept
//! as `.revisions/NNNN-ID.toml`. Two programs saving at once wait for each other at `.revisions/lock`; the later
//! one finds the file changed and is refused, and its text is kept beside the revisions.
//!
//! A maker may also write into the file with an editor, which keeps nothing. So the text that was saved last is kept
//! as `.revisions/latest.toml` too: where the file holds another one, that is kept as a version before anything else.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use crate::Loaded;
use crate::load::{RevisionId, read_file};
use crate::report::{Diagnostic, Report};

/// The folder inside a style's folder where earlier versions are kept.
pub const REVISIONS_FOLDER: &str = ".revisions";

/// The text that was last saved, or last seen in the file, in the folder of revisions.
pub(crate) const LATEST: &str = "latest.toml";

/// What a save did.
#[derive(Clone, Debug)]
pub struct Saved {
    /// The style as it now is on disk.
    pub loaded: Loaded,
    /// The version before it, as it is kept; `None` when the text was the same and nothing was written.
    pub earlier: Option<Revision>,
}

/// Why a save was refused. The file is then as it was.
#[derive(Debug, thiserror::Error)]
pub enum SaveError {
    /// The new text is not a sound style.
    #[error(transparent)]
    Invalid(#[from] Report),
    /// Somebody changed the file since it was loaded. Both versions are kept.
    #[error(
        "{} was changed by someone else since it was opened, so it was not overwritten; \
         your version is kept at {}; load the file again and make your change there",
        path.display(), kept.display()
    )]
    Stale {
        /// The style file; it holds the other version.
        path: PathBuf,
        /// What is in the file now.
        on_disk: RevisionId,
        /// Where the refused text is kept.
        kept: PathBuf,
    },
    /// The file on disk can no longer be read.
    #[error("{0}")]
    Unreadable(Report),
    /// The disk refused.
    #[error("{} cannot be written: {source}; check that there is room and that you may write there", path.display())]
    Disk {
        /// The file or folder concerned.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
}

/// One kept version of a style.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Revision {
    /// Its number, from 1. The version in the style file itself has the number after the last kept one.
    pub number: u32,
    /// What its text hashes to.
    pub id: String,
    /// Where it is kept. Its file has the time at which the version was written.
    pub path: PathBuf,
}

/// Saves a new text of a loaded style.
///
/// A program killed at any moment leaves the file whole, as it was or as it was to become.
///
/// # Errors
/// The text has problems, the file was changed by someone else meanwhile, or the disk refused; in every case
/// the style file is as it was.
pub fn save(loaded: &Loaded, new_text: &str) -> Result<Saved, SaveError> {
    save_next(loaded, loaded.with_text(new_text)?)
}

/// The same with a text that was read already, by [`Loaded::with_text`].
///
/// # Errors
/// As [`save`].
pub fn save_next(loaded: &Loaded, next: Loaded) -> Result<Saved, SaveError> {
    save_over(&loaded.path, &loaded.text, next)
}

/// The same over a text that the file is known to hold, whether that can be read or not.
pub(crate) fn save_over(file: &Path, held: &str, next: Loaded) -> Result<Saved, SaveError> {
    let new_text = next.text.as_str();
    let path = fs::canonicalize(file).map_err(disk(file))?;
    refuse_read_only(&path)?;
    let revisions = folder_of_revisions(&path)?;
    let _lock = lock(&revisions)?;
    let on_disk = read_file(&path).map_err(SaveError::Unreadable)?;
    if on_disk != held {
        let number = next_number(&revisions)?;
        let kept = revisions.join(format!("refused-{number:04}-{}.toml", next.revision));
        write_whole(&kept, new_text, &revisions)?;
        return Err(SaveError::Stale {
            path: file.to_path_buf(),
            on_disk: RevisionId::of(&on_disk),
            kept,
        });
    }
    if on_disk == new_text {
        return Ok(Saved {
            loaded: next,
            earlier: None,
        });
    }
    keep_what_was_replaced(&revisions, &path, &on_disk)?;
    let earlier = keep(&revisions, &on_disk, Some(&path))?;
    write_whole(&path, new_text, &revisions)?;
    // The save is done. Without this the version just kept is taken for the latest, which loses nothing.
    let _ = write_whole(&revisions.join(LATEST), new_text, &revisions);
    Ok(Saved {
        loaded: next,
        earlier: Some(earlier),
    })
}

/// Where a style file really lies: beside that are its revisions, also when it is opened by a link.
pub(crate) fn real(path: &Path) -> PathBuf {
    fs::canonicalize(path).unwrap_or_else(|_| path.to_path_buf())
}

/// Keeps the version that was worked on, where somebody else has put another into the file meanwhile, so that taking
/// that over loses nothing. Gives the version as it is kept.
///
/// # Errors
/// The disk refused, or what is in the file now is no text.
pub fn keep_before(before: &Loaded) -> Result<Revision, SaveError> {
    let path = fs::canonicalize(&before.path).map_err(disk(&before.path))?;
    let revisions = folder_of_revisions(&path)?;
    let _lock = lock(&revisions)?;
    let on_disk = read_file(&path).map_err(SaveError::Unreadable)?;
    keep_what_was_replaced(&revisions, &path, &on_disk)?;
    let all = revisions_in(&revisions).map_err(disk(&revisions))?;
    let known = all
        .into_iter()
        .rfind(|revision| revision.id == before.revision.as_str());
    match known {
        Some(known) => Ok(known),
        None => keep(&revisions, &before.text, None),
    }
}

/// Makes sure that what the file holds now is kept also when an editor writes over it, and that the folder of revisions
/// is there. Called with the lock held.
pub(crate) fn hold_on_to(revisions: &Path, path: &Path) -> Result<(), SaveError> {
    let on_disk = read_file(path).map_err(SaveError::Unreadable)?;
    keep_what_was_replaced(revisions, path, &on_disk)?;
    let latest = revisions.join(LATEST);
    if latest.is_file() {
        return Ok(());
    }
    write_whole(&latest, &on_disk, revisions)?;
    take_time(&latest, path);
    Ok(())
}

/// Keeps the text that was saved last, where the file holds another one by now.
fn keep_what_was_replaced(revisions: &Path, path: &Path, on_disk: &str) -> Result<(), SaveError> {
    let latest = revisions.join(LATEST);
    let Ok(text) = read_file(&latest) else {
        return Ok(());
    };
    if text != on_disk {
        keep(revisions, &text, Some(&latest))?;
        write_whole(&latest, on_disk, revisions)?;
        take_time(&latest, path);
    }
    Ok(())
}

/// The folder of revisions beside a style file, made where it is not there.
pub(crate) fn folder_of_revisions(path: &Path) -> Result<PathBuf, SaveError> {
    let folder = path.parent().unwrap_or(Path::new("."));
    let revisions = folder.join(REVISIONS_FOLDER);
    if !revisions.is_dir() {
        fs::create_dir_all(&revisions).map_err(disk(&revisions))?;
        sync_folder(folder).map_err(disk(folder))?;
    }
    Ok(revisions)
}

pub(crate) fn disk(path: &Path) -> impl FnOnce(io::Error) -> SaveError + '_ {
    move |source| SaveError::Disk {
        path: path.to_path_buf(),
        source,
    }
}

/// A file its owner has locked against writing stays as it is, though a rename could replace it.
pub(crate) fn refuse_read_only(path: &Path) -> Result<(), SaveError> {
    let metadata = fs::metadata(path).map_err(disk(path))?;
    if metadata.permissions().readonly() {
        return Err(disk(path)(io::Error::new(
            io::ErrorKind::PermissionDenied,
            "the file is marked read-only",
        )));
    }
    Ok(())
}

/// Waits until no other program is saving this style. The lock ends with the file handle, also when the program dies.
pub(crate) fn lock(revisions: &Path) -> Result<File, SaveError> {
    let path = revisions.join("lock");
    let file = File::options()
        .create(true)
        .truncate(false)
        .write(true)
        .open(&path)
        .map_err(disk(&path))?;
    file.lock().map_err(disk(&path))?;
    Ok(file)
}

/// Keeps a version under the next number, with the time of the file it was in. A save that died after this step and is
/// made again keeps it only once.
pub(crate) fn keep(
    revisions: &Path,
    text: &str,
    from: Option<&Path>,
) -> Result<Revision, SaveError> {
    let id = RevisionId::of(text);
    let mut all = revisions_in(revisions).map_err(disk(revisions))?;
    if let Some(last) = all.pop_if(|last| last.id == id.as_str()) {
        return Ok(last);
    }
    let number = all.last().map_or(1, |last| last.number.saturating_add(1));
    let path = revisions.join(format!("{number:04}-{id}.toml"));
    let latest = revisions.join(LATEST);
    if read_file(&latest).is_ok_and(|latest| latest == text) {
        // It is on the disk already, and the next save writes another.
        fs::rename(&latest, &path).map_err(disk(&path))?;
        sync_folder(revisions).map_err(disk(revisions))?;
    } else {
        write_whole(&path, text, revisions)?;
    }
    if let Some(from) = from {
        take_time(&path, from);
    }
    Ok(Revision {
        number,
        id: id.as_str().to_owned(),
        path,
    })
}

/// Gives a kept version the time at which it was written, which is all that its time is for: where the system does not
/// let it, the version is as good.
fn take_time(path: &Path, from: &Path) {
    let take = || -> io::Result<()> {
        let time = fs::metadata(from)?.modified()?;
        File::options().write(true).open(path)?.set_modified(time)
    };
    let _ = take();
}

fn next_number(revisions: &Path) -> Result<u32, SaveError> {
    let all = revisions_in(revisions).map_err(disk(revisions))?;
    Ok(all.last().map_or(1, |last| last.number.saturating_add(1)))
}

/// Writes a file so that it is never seen in part: elsewhere in the folder of revisions first, onto the disk, then
/// renamed, and the rename itself onto the disk. The first name is always the same, so a save that died leaves at most
/// one such file, and the next save takes it over; the lock keeps two from meeting there.
pub(crate) fn write_whole(path: &Path, text: &str, revisions: &Path) -> Result<(), SaveError> {
    let unfinished = revisions.join("unfinished");
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

/// Makes sure that what was renamed in a folder survives a power cut, where the system can promise that.
pub(crate) fn sync_folder(folder: &Path) -> io::Result<()> {
    if cfg!(unix) {
        File::open(folder)?.sync_all()
    } else {
        Ok(())
    }
}

/// The kept versions of a style, earliest first; the version in the style file itself is not among them.
///
/// # Errors
/// When the folder of revisions is there but cannot be listed.
pub fn list_revisions(style_folder: &Path) -> io::Result<Vec<Revision>> {
    let revisions = style_folder.join(REVISIONS_FOLDER);
    if revisions.is_dir() {
        revisions_in(&revisions)
    } else {
        Ok(Vec::new())
    }
}

pub(crate) fn revisions_in(folder: &Path) -> io::Result<Vec<Revision>> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let name = entry.file_name();
        let parts = name
            .to_str()
            .and_then(|name| name.strip_suffix(".toml")?.split_once('-'));
        let Some((number, id)) = parts else { continue };
        if let Ok(number) = number.parse() {
            found.push(Revision {
                number,
                id: id.to_owned(),
                path: entry.path(),
            });
        }
    }
    found.sort_by(|a, b| (a.number, &a.id).cmp(&(b.number, &b.id)));
    Ok(found)
}

/// The text of a kept version.
///
/// # Errors
/// When it cannot be read, or is no longer what it was when it was kept.
pub fn read_revision(revision: &Revision) -> Result<String, Report> {
    let text = read_file(&revision.path)?;
    if RevisionId::of(&text).as_str() != revision.id {
        let message = "this kept version was changed after it was kept".to_owned();
        let file = revision.path.display().to_string();
        let problem = Diagnostic::whole_file(file, "style::changed-revision", message).hint(
            "its name no longer belongs to its text; kept versions are not meant to be edited",
        );
        return Err(Report::one(problem));
    }
    Ok(text)
}
