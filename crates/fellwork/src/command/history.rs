//! `fellwork history`: every version of a style; names for them; one of them put back.

mod json;

use jiff::Timestamp;
use jiff::tz::TimeZone;
use jobs::system;
use style::{Change, History, Loaded, NameError, Report, Revision, Saved};

use crate::args::{HistoryOf, VersionName};
use crate::command::load;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

/// A version with what is told of it.
struct Told<'a> {
    version: &'a Revision,
    name: Option<&'a str>,
    /// Whether it is the one in the style file.
    now: bool,
    /// When it was written.
    written: Option<Timestamp>,
    /// An earlier version with the same text.
    same_as: Option<u32>,
    changes: Changes,
}

/// What changed in a version against the one before it.
enum Changes {
    /// There is none before it.
    First,
    Known(Vec<Change>),
    /// The one before it cannot be read.
    Unknown,
    /// It cannot be read itself.
    Unread(Report),
}

pub fn run(asked: &HistoryOf) -> Result<Exit, Trouble> {
    let loaded = match load(&asked.style) {
        Ok(loaded) => loaded,
        Err(unread) => return broken(asked, unread),
    };
    if let Some(VersionName { version, name }) = &asked.name {
        return give_name(&loaded, version, name.as_deref());
    }
    if let Some(version) = &asked.put_back {
        return put_back(&loaded, version);
    }
    let history = of(&loaded)?;
    if let Some(report) = history.names_problem().filter(|_| !asked.json) {
        printed::to_stderr(&format!("the names cannot be read:\n{}", report.render()));
    }
    let told = told(&loaded, &history, asked.named);
    printed::to_stdout(if asked.json {
        json::listed(&loaded, &history, &told)?
    } else {
        trade::plain(&words(&told)).into_owned()
    })?;
    Ok(Exit::Done)
}

/// The history of a style.
pub fn of(loaded: &Loaded) -> Result<History, Trouble> {
    History::of(loaded).map_err(|why| Trouble::Revisions {
        folder: loaded.folder().to_path_buf(),
        why,
    })
}

/// The version that is meant by a number, a name or "now".
pub fn version<'a>(history: &'a History, asked: &str) -> Result<&'a Revision, Trouble> {
    history.find(asked).ok_or_else(|| {
        let last = history.now().map_or(0, |now| now.number);
        Trouble::NoSuchVersion {
            asked: asked.to_owned(),
            versions: format!(
                "{}; name one by its number, by the name it was given, or as now",
                if last == 1 {
                    "its only version is 1".to_owned()
                } else {
                    format!("its versions are 1 to {last}")
                }
            ),
        }
    })
}

/// A version of a style, read against the collection as it is now.
pub fn read(loaded: &Loaded, version: &Revision) -> Result<Loaded, Report> {
    loaded.with_text(&style::read_revision(version)?)
}

/// What stands for a version in a sentence: "version 12, first sample".
pub fn called(history: &History, version: &Revision) -> String {
    let number = version.number;
    let now = history.now().is_some_and(|now| now.number == number);
    match (history.name(version), now) {
        (Some(name), _) => format!("version {number}, {name}"),
        (None, true) => format!("version {number}, now"),
        (None, false) => format!("version {number}"),
    }
}

fn give_name(loaded: &Loaded, asked: &str, name: Option<&str>) -> Result<Exit, Trouble> {
    let history = of(loaded)?;
    let number = version(&history, asked)?.number;
    style::name_version(loaded, number, name).map_err(|error| match error {
        NameError::Broken(report) => Trouble::Input(report),
        NameError::Save(error) => error.into(),
        other => Trouble::NotNamed(other),
    })?;
    printed::to_stdout(match name {
        Some(name) => {
            trade::plain(&format!("version {number} is called \"{name}\"\n")).into_owned()
        }
        None => format!("version {number} has no name any more\n"),
    })?;
    Ok(Exit::Done)
}

fn put_back(loaded: &Loaded, asked: &str) -> Result<Exit, Trouble> {
    let history = of(loaded)?;
    let version = version(&history, asked)?;
    let text = style::read_revision(version)?;
    let saved = style::save(loaded, &text)?;
    tell_put_back(version.number, &saved)
}

fn tell_put_back(number: u32, saved: &Saved) -> Result<Exit, Trouble> {
    let done = match saved.earlier {
        None => format!("the file holds the text of version {number} already\n"),
        Some(_) => {
            let now = of(&saved.loaded)?.now().map_or(0, |now| now.number);
            format!("version {number} is in the file again, as version {now}\n")
        }
    };
    printed::to_stdout(done)?;
    Ok(Exit::Done)
}

/// Where the file cannot be read, an earlier version can still be put in its place; which one is said with what is wrong.
fn broken(asked: &HistoryOf, unread: Trouble) -> Result<Exit, Trouble> {
    let Some(sound) = style::last_sound(&asked.style) else {
        return Err(unread);
    };
    let history = of(&sound.loaded)?;
    let Some(wanted) = &asked.put_back else {
        let last = history.with_id(sound.loaded.revision.as_str());
        let number = last.map_or(0, |version| version.number);
        printed::to_stderr(&format!(
            "version {number} is the last that can be read; put it in place of the file with --put-back {number}\n"
        ));
        return Err(unread);
    };
    let version = version(&history, wanted)?;
    // The last sound text may not be among those that are kept.
    let text = if version.id == sound.loaded.revision.as_str() {
        sound.loaded.text.clone()
    } else {
        style::read_revision(version)?
    };
    tell_put_back(version.number, &sound.put_in(&text)?)
}

/// Every version, or every one with a name, the newest first.
fn told<'a>(loaded: &Loaded, history: &'a History, named: bool) -> Vec<Told<'a>> {
    let units = system(&loaded.collection);
    let now = history.now().map(|now| now.number);
    // The version before one is the next in the list, so each is read once.
    let mut last: Option<(u32, Result<Loaded, Report>)> = None;
    let mut all = Vec::new();
    let versions = history.versions().iter().rev();
    for version in versions.filter(|version| !named || history.name(version).is_some()) {
        let this = match last.take() {
            Some((number, this)) if number == version.number => this,
            _ => read(loaded, version),
        };
        let before = history.before(version.number);
        let before = before.map(|before| (before.number, read(loaded, before)));
        let changes = match (this, &before) {
            (Err(report), _) => Changes::Unread(report),
            (Ok(_), None) => Changes::First,
            (Ok(_), Some((_, Err(_)))) => Changes::Unknown,
            (Ok(this), Some((_, Ok(before)))) => {
                Changes::Known(style::difference_in(&before.style, &this.style, units))
            }
        };
        let written = std::fs::metadata(&version.path).and_then(|file| file.modified());
        all.push(Told {
            version,
            name: history.name(version),
            now: now == Some(version.number),
            written: written.ok().and_then(|time| Timestamp::try_from(time).ok()),
            same_as: history.same_as(version).map(|same| same.number),
            changes,
        });
        last = before;
    }
    all
}

fn words(told: &[Told<'_>]) -> String {
    let mut out = String::new();
    for told in told {
        let mut head = vec![format!("{:>4}", told.version.number)];
        head.extend(told.written.map(|time| {
            let here = time.to_zoned_datetime(TimeZone::system());
            here.strftime("%-d %b %Y, %H:%M").to_string()
        }));
        head.extend(told.now.then(|| "now".to_owned()));
        head.extend(told.same_as.map(|same| format!("as {same} was")));
        head.extend(told.name.map(|name| format!("\"{name}\"")));
        out.push_str(&head.join("  "));
        out.push('\n');
        let line = |line: &str| format!("      {line}\n");
        match &told.changes {
            Changes::First => out.push_str(&line("the first that is kept")),
            Changes::Unknown => out.push_str(&line("the version before it cannot be read")),
            Changes::Unread(report) => {
                out.push_str(&line("it cannot be read now:"));
                let problems = report.problems.iter();
                problems.for_each(|problem| out.push_str(&line(&problem.message)));
            }
            Changes::Known(changes) if changes.is_empty() => {
                out.push_str(&line("comments, or the way it is written"));
            }
            Changes::Known(changes) => {
                let changes = changes.iter();
                changes.for_each(|change| out.push_str(&line(&change.sentence)));
            }
        }
    }
    if told.is_empty() {
        out.push_str("no version has a name yet\n");
    }
    out
}
