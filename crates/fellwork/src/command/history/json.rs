//! The versions for programs. The shape is told in `fellwork history --help`.

use serde::Serialize;
use style::{Change, History, Loaded};

use super::{Changes, Told};
use crate::trouble::Trouble;

/// The version of the shape.
const FORMAT: u32 = 1;

#[derive(Serialize)]
struct Listed<'a> {
    format: u32,
    style: String,
    names_problem: Option<&'a str>,
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
    same_as: Option<u32>,
    changes: Option<&'a [Change]>,
    problem: Option<&'a str>,
}

pub fn listed(loaded: &Loaded, history: &History, told: &[Told<'_>]) -> Result<String, Trouble> {
    let versions = told.iter().map(|told| Version {
        number: told.version.number,
        id: &told.version.id,
        file: told.version.path.display().to_string(),
        written: told.written.map(|time| time.to_string()),
        name: told.name,
        now: told.now,
        same_as: told.same_as,
        changes: match &told.changes {
            Changes::Known(changes) => Some(changes),
            Changes::First | Changes::Unknown | Changes::Unread(_) => None,
        },
        problem: match &told.changes {
            Changes::Unread(report) => Some(first(report)),
            Changes::First | Changes::Known(_) | Changes::Unknown => None,
        },
    });
    let listed = Listed {
        format: FORMAT,
        style: loaded.path.display().to_string(),
        names_problem: history.names_problem().map(first),
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
