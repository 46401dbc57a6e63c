//! Why something was not kept.

use std::io;
use std::path::{Path, PathBuf};

use crate::read::ReadError;
use crate::revision_id::RevisionId;

/// Why a file was not saved or looked at. It is then as it was.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// Somebody changed the file since it was read. Both texts are kept.
    #[error(
        "{} was changed by someone else since it was opened, so it was not overwritten; \
         your version is kept at {}; load the file again and make your change there",
        path.display(), kept.display()
    )]
    Stale {
        /// The file; it holds the other text.
        path: PathBuf,
        /// What is in the file now.
        on_disk: RevisionId,
        /// Where the refused text is kept.
        kept: PathBuf,
    },
    /// The file on disk is no text that can be read.
    #[error(transparent)]
    Unreadable(#[from] ReadError),
    /// A kept version is no longer what it was when it was kept.
    #[error(
        "{} was changed after it was kept: its name no longer belongs to its text; kept versions are not meant to be edited",
        .0.display()
    )]
    Changed(PathBuf),
    /// The disk refused.
    #[error("{} cannot be written: {source}; check that there is room and that you may write there", path.display())]
    Disk {
        /// The file or folder concerned.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
}

pub(crate) fn disk(path: &Path) -> impl FnOnce(io::Error) -> StoreError + '_ {
    move |source| StoreError::Disk {
        path: path.to_path_buf(),
        source,
    }
}
