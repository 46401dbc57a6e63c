//! Making a folder with files in it, in the words of a beginning.

use std::io;
use std::path::Path;

use store::MakeError;
pub(super) use store::{Files, is_free};

use super::error::StartError;
use crate::report::Report;

pub(super) fn make(folder: &Path, files: &Files) -> Result<(), StartError> {
    make_checked(folder, files, |_| Ok(()))
}

/// Makes a folder with files in it; `check` sees it before it is put in place.
pub(super) fn make_checked(
    folder: &Path,
    files: &Files,
    check: impl FnOnce(&Path) -> Result<(), Report>,
) -> Result<(), StartError> {
    store::make_folder(folder, files, check).map_err(|error| match error {
        MakeError::Exists(path) => StartError::Exists(path),
        MakeError::Unsound(report) => StartError::Invalid(report),
        MakeError::Disk { path, source } => StartError::Disk { path, source },
    })
}

pub(super) fn disk(path: &Path) -> impl FnOnce(io::Error) -> StartError + '_ {
    move |source| StartError::Disk {
        path: path.to_path_buf(),
        source,
    }
}
