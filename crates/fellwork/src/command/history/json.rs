//! The versions for programs. The shape is told in `fellwork history --help`.

use std::path::Path;

use serde::Serialize;
use style::{FileChange, History, KeptFile, ToldChange, Way};

use super::{Changes, Told};
use crate::trouble::Trouble;

/// The version of the shape.
const FORMAT: u32 = 1;

#[derive(Serialize)]
struct Listed<'a> {
    format: u32,
    file: String,
    names_problem: Option<String>,
    versions: Vec<Version<'a>>,
}

#[derive(Serialize)]
struct Version<'a> {
    number: u32,
    id: &'a str,
    file: String,
    written: Option<String>,
    name: Option<&'a str>,
    now: bool,
    outside: bool,
    same_as: Option<u32>,
    changes: Option<&'a [ToldChange]>,
    problem: Option<&'a str>,
}

pub fn listed(kept: &KeptFile, history: &History, told: &[Told<'_>]) -> Result<String, Trouble> {
    let versions = told.iter().map(|told| Version {
        number: told.version.number,
        id: &told.version.id,
        file: told.version.path.display().to_string(),
        written: told.written.map(|time| time.to_string()),
        name: told.name,
        now: told.now,
        outside: told.outside,
        same_as: told.same_as,
        changes: known(&told.changes),
        problem: problem(&told.changes),
    });
    let listed = Listed {
        format: FORMAT,
        file: kept.file.path().display().to_string(),
        names_problem: history
            .names_problem()
            .map(|problem| problem.message.clone()),
        versions: versions.collect(),
    };
    Ok(serde_json::to_string_pretty(&listed)? + "\n")
}

/// What a report says first; it is never empty.
fn first(report: &style::Report) -> &str {
    report
        .problems
        .first()
        .map_or("it cannot be read", |problem| problem.message.as_str())
}

fn known(changes: &Changes) -> Option<&[ToldChange]> {
    match changes {
        Changes::Known(changes) => Some(changes),
        Changes::First | Changes::Unknown | Changes::Unread(_) => None,
    }
}

fn problem(changes: &Changes) -> Option<&str> {
    match changes {
        Changes::Unread(report) => Some(first(report)),
        Changes::First | Changes::Known(_) | Changes::Unknown => None,
    }
}

#[derive(Serialize)]
struct OfCollection<'a> {
    format: u32,
    collection: String,
    changes: Vec<OfFile<'a>>,
}

#[derive(Serialize)]
struct OfFile<'a> {
    file: &'a str,
    version: u32,
    way: &'static str,
    written: Option<String>,
    changes: Option<&'a [ToldChange]>,
    problem: Option<&'a str>,
}

pub fn of_collection(folder: &Path, told: &[(&FileChange, Changes)]) -> Result<String, Trouble> {
    let changes = told.iter().map(|(change, changes)| OfFile {
        file: &change.file,
        version: change.to.number,
        way: match change.way {
            Way::Edit => "edit",
            Way::Undo => "undo",
            Way::Redo => "redo",
            Way::PutBack => "put back",
            Way::Outside => "outside",
        },
        written: super::written(&change.to).map(|time| time.to_string()),
        changes: known(changes),
        problem: problem(changes),
    });
    let listed = OfCollection {
        format: FORMAT,
        collection: folder.display().to_string(),
        changes: changes.collect(),
    };
    Ok(serde_json::to_string_pretty(&listed)? + "\n")
}
