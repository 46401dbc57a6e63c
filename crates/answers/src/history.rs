//! The versions of a file, and all changes of a collection.

use std::path::Path;

use jiff::Timestamp;
use serde::Serialize;
use style::{FileChange, History, KeptFile, Report, Revision, ToldChange, Way};

use crate::change::{ChangeRow, changes};
use crate::shape::Shape;
use crate::text::{AnswerError, lines};

/// A version with what is told of it.
pub struct ToldVersion<'a> {
    /// The version.
    pub version: &'a Revision,
    /// The name it was given.
    pub name: Option<&'a str>,
    /// Whether it is the one in the file.
    pub now: bool,
    /// Whether it was written by hand, or by another program.
    pub outside: bool,
    /// When it was written.
    pub written: Option<Timestamp>,
    /// An earlier version with the same text.
    pub same_as: Option<u32>,
    /// What changed in it.
    pub changes: ToldChanges,
}

/// A change of a file of a collection with what is told of it.
pub struct ToldFileChange<'a> {
    /// The change.
    pub change: &'a FileChange,
    /// When it was written.
    pub written: Option<Timestamp>,
    /// What changed.
    pub changes: ToldChanges,
}

/// What changed in a version against the one before it.
pub enum ToldChanges {
    /// There is none before it.
    First,
    /// This.
    Known(Vec<ToldChange>),
    /// The one before it cannot be read.
    Unknown,
    /// It cannot be read itself.
    Unread(Report),
}

impl ToldChanges {
    fn known(&self) -> Option<Vec<ChangeRow<'_>>> {
        match self {
            Self::Known(known) => Some(changes(known)),
            Self::First | Self::Unknown | Self::Unread(_) => None,
        }
    }

    /// Why it cannot be read: what a report says first; it is never empty.
    fn problem(&self) -> Option<&str> {
        match self {
            Self::Unread(report) => Some(
                report
                    .problems
                    .first()
                    .map_or("it cannot be read", |problem| problem.message.as_str()),
            ),
            Self::First | Self::Known(_) | Self::Unknown => None,
        }
    }
}

#[derive(Serialize)]
struct Listed<'a> {
    format: u32,
    file: String,
    names_problem: Option<&'a str>,
    versions: Vec<VersionRow<'a>>,
}

#[derive(Serialize)]
struct VersionRow<'a> {
    number: u32,
    id: &'a str,
    file: String,
    written: Option<String>,
    name: Option<&'a str>,
    now: bool,
    outside: bool,
    same_as: Option<u32>,
    changes: Option<Vec<ChangeRow<'a>>>,
    problem: Option<&'a str>,
}

/// The answer for the versions of a file.
///
/// # Errors
/// It cannot be put into JSON.
pub fn history(
    kept: &KeptFile,
    history: &History,
    told: &[ToldVersion<'_>],
) -> Result<String, AnswerError> {
    let versions = told.iter().map(|told| VersionRow {
        number: told.version.number,
        id: &told.version.id,
        file: told.version.path.display().to_string(),
        written: told.written.map(|time| time.to_string()),
        name: told.name,
        now: told.now,
        outside: told.outside,
        same_as: told.same_as,
        changes: told.changes.known(),
        problem: told.changes.problem(),
    });
    lines(&Listed {
        format: Shape::History.version(),
        file: kept.file.path().display().to_string(),
        names_problem: history
            .names_problem()
            .map(|problem| problem.message.as_str()),
        versions: versions.collect(),
    })
}

#[derive(Serialize)]
struct OfCollection<'a> {
    format: u32,
    collection: String,
    changes: Vec<FileRow<'a>>,
}

#[derive(Serialize)]
struct FileRow<'a> {
    file: &'a str,
    version: u32,
    way: &'static str,
    written: Option<String>,
    changes: Option<Vec<ChangeRow<'a>>>,
    problem: Option<&'a str>,
}

/// The answer for all changes of a collection.
///
/// # Errors
/// It cannot be put into JSON.
pub fn history_of_collection(
    folder: &Path,
    told: &[ToldFileChange<'_>],
) -> Result<String, AnswerError> {
    let changes = told.iter().map(|told| FileRow {
        file: &told.change.file,
        version: told.change.to.number,
        way: match told.change.way {
            Way::Edit => "edit",
            Way::Undo => "undo",
            Way::Redo => "redo",
            Way::PutBack => "put back",
            Way::Outside => "outside",
        },
        written: told.written.map(|time| time.to_string()),
        changes: told.changes.known(),
        problem: told.changes.problem(),
    });
    lines(&OfCollection {
        format: Shape::HistoryOfCollection.version(),
        collection: folder.display().to_string(),
        changes: changes.collect(),
    })
}
