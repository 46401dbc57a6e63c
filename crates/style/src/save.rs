//! Saving a style: what [`store`] does with any file, for a text that was found sound.

use std::io;
use std::path::{Path, PathBuf};

use store::{NameError, NamesProblem, StoreError, VersionedFile, Way, list_versions, read_version};

use crate::load::{read_file, unread};
use crate::report::{Diagnostic, Report, Source};
use crate::{History, Loaded, Revision, RevisionId, STYLE_FILE};

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
    /// The new text is not sound.
    #[error(transparent)]
    Invalid(#[from] Report),
    /// Somebody changed the file since it was loaded. Both versions are kept.
    #[error(
        "{} was changed by someone else since it was opened, so it was not overwritten; \
         your version is kept at {}; load the file again and make your change there",
        path.display(), kept.display()
    )]
    Stale {
        /// The file; it holds the other version.
        path: PathBuf,
        /// What is in the file now.
        on_disk: RevisionId,
        /// Where the refused text is kept.
        kept: PathBuf,
    },
    /// The file on disk, or a kept version, can no longer be read.
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

impl From<StoreError> for SaveError {
    fn from(error: StoreError) -> Self {
        match error {
            StoreError::Stale {
                path,
                on_disk,
                kept,
            } => Self::Stale {
                path,
                on_disk,
                kept,
            },
            StoreError::Unreadable(why) => Self::Unreadable(unread(&why)),
            StoreError::Changed(path) => Self::Unreadable(changed(&path)),
            StoreError::Disk { path, source } => Self::Disk { path, source },
        }
    }
}

/// A kept version whose name no longer belongs to its text.
fn changed(path: &Path) -> Report {
    let message = "this kept version was changed after it was kept".to_owned();
    let file = path.display().to_string();
    let problem = Diagnostic::whole_file(file, "style::changed-revision", message);
    Report::one(
        problem.hint(
            "its name no longer belongs to its text; kept versions are not meant to be edited",
        ),
    )
}

/// Saves a new text of a loaded style.
///
/// A program killed at any moment leaves the file whole, as it was or as it was to become.
///
/// # Errors
/// The text has problems, the file was changed by someone else meanwhile, or the disk refused; in every case
/// the style file is as it was.
pub fn save(loaded: &Loaded, new_text: &str) -> Result<Saved, SaveError> {
    save_next(loaded, loaded.with_text(new_text)?, Way::Edit)
}

/// The same with a text that was read already, by [`Loaded::with_text`], and that came about in some way.
///
/// # Errors
/// As [`save`].
pub fn save_next(loaded: &Loaded, next: Loaded, way: Way) -> Result<Saved, SaveError> {
    save_over(&loaded.path, &loaded.revision, next, way)
}

/// The same over a text that the file is known to hold, whether that can be read or not.
pub(crate) fn save_over(
    file: &Path,
    held: &RevisionId,
    next: Loaded,
    way: Way,
) -> Result<Saved, SaveError> {
    let saved = VersionedFile::new(file).save(held, &next.text, way)?;
    Ok(Saved {
        loaded: next,
        earlier: saved.earlier,
    })
}

/// The earlier versions of a style that are kept, earliest first; the one in the style file itself is not among them.
///
/// # Errors
/// When the folder of versions is there but cannot be listed.
pub fn list_revisions(style_folder: &Path) -> io::Result<Vec<Revision>> {
    let path = style_folder.join(STYLE_FILE);
    let mut versions = list_versions(&VersionedFile::new(&path))?;
    if let Ok(text) = read_file(&path) {
        versions.pop_if(|last| last.id == RevisionId::of(&text).as_str());
    }
    Ok(versions)
}

/// The text of a kept version.
///
/// # Errors
/// When it cannot be read, or is no longer what it was when it was kept.
pub fn read_revision(revision: &Revision) -> Result<String, Report> {
    read_version(revision).map_err(|error| match SaveError::from(error) {
        SaveError::Unreadable(report) | SaveError::Invalid(report) => report,
        other => Report::one(Diagnostic::whole_file(
            revision.path.display().to_string(),
            "style::unreadable-file",
            other.to_string(),
        )),
    })
}

/// Every version of a style that is kept. What was written into the file by hand is one of them from now on.
///
/// # Errors
/// The folder of versions cannot be listed, or a text that is new in the file cannot be kept.
pub fn history(loaded: &Loaded) -> Result<History, SaveError> {
    Ok(History::of(&VersionedFile::new(&loaded.path))?)
}

/// What is wrong with the names of versions, with its place, where their file was spoilt by hand.
#[must_use]
pub fn names_problem(history: &History) -> Option<Report> {
    history.names_problem().map(names_report)
}

/// What is wrong with a file of names, as a problem with its place.
#[must_use]
pub fn names_report(problem: &NamesProblem) -> Report {
    const CODE: &str = "style::names";
    let file = problem.file.display().to_string();
    let told = match problem.at {
        Some(at) => {
            let source = Source::new(file, problem.text.as_str());
            Diagnostic::at(&source, at..at + 1, CODE, problem.message.clone())
        }
        None => Diagnostic::whole_file(file, CODE, problem.message.clone()),
    };
    Report::one(told.hint(problem.hint))
}

/// Gives a version of a style a name, or with `None` takes its name away.
///
/// # Errors
/// There is no such version, the name is another version's or no name, the file of names was spoilt by hand, or the
/// disk refused; in every case the names are as they were.
pub fn name_version(loaded: &Loaded, number: u32, name: Option<&str>) -> Result<(), NameError> {
    VersionedFile::new(&loaded.path).name_version(number, name)
}
