//! Names of versions of a style.

use store::VersionedFile;

use crate::save::{SaveError, names_report};
use crate::{Loaded, Report};

/// Why a version was not named. The names are then as they were.
#[derive(Debug, thiserror::Error)]
pub enum NameError {
    /// There is no such version.
    #[error("there is no version {0} of this file")]
    NoSuchVersion(u32),
    /// The words cannot be a name.
    #[error("{0}")]
    Unfit(String),
    /// Another version has that name.
    #[error(
        "version {number} is called \"{name}\" already; give another name, or take that one away first"
    )]
    Taken {
        /// The name.
        name: String,
        /// The version that has it.
        number: u32,
    },
    /// The file of names was spoilt by hand; it was not written over.
    #[error("{0}")]
    Broken(Report),
    /// The disk refused.
    #[error(transparent)]
    Save(#[from] SaveError),
}

impl From<store::NameError> for NameError {
    fn from(error: store::NameError) -> Self {
        match error {
            store::NameError::NoSuchVersion(number) => Self::NoSuchVersion(number),
            store::NameError::Unfit(why) => Self::Unfit(why),
            store::NameError::Taken { name, number } => Self::Taken { name, number },
            store::NameError::Broken(problem) => Self::Broken(names_report(&problem)),
            store::NameError::Store(error) => Self::Save(error.into()),
        }
    }
}

/// Gives a version of a style a name, or with `None` takes its name away.
///
/// # Errors
/// There is no such version, the name is another version's or no name, the file of names was spoilt by hand, or the
/// disk refused; in every case the names are as they were.
pub fn name_version(loaded: &Loaded, number: u32, name: Option<&str>) -> Result<(), NameError> {
    Ok(VersionedFile::new(&loaded.path).name_version(number, name)?)
}
