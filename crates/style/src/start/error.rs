//! Why nothing was begun.

use std::io;
use std::path::PathBuf;

use super::named;
use crate::report::Report;

/// Why nothing was made. Nothing is left behind.
#[derive(Debug, thiserror::Error)]
pub enum StartError {
    /// There is something already.
    #[error("{} is there already and is not overwritten; choose another name or another folder", .0.display())]
    Exists(PathBuf),
    /// No folder can be named after this.
    #[error("a folder cannot be named after \"{0}\"; use a name with letters or digits in it, of at most {most} bytes, or say what the folder is to be called (--folder)", most = named::LONGEST)]
    Nameless(String),
    /// Another style has this code.
    #[error("{} has the code {code} already; two styles never have one code: give another, or none for one that is free", style.display())]
    CodeTaken {
        /// The code.
        code: String,
        /// The style's file.
        style: PathBuf,
    },
    /// An answer does not hold.
    #[error("{0}")]
    Answer(String),
    /// The new style would have problems: the answers do not fit, or the collection lacks what the style starts with.
    #[error(transparent)]
    Invalid(#[from] Report),
    /// The disk refused.
    #[error("{} cannot be written: {source}; check that there is room and that you may write there", path.display())]
    Disk {
        /// The file or folder concerned.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
}
