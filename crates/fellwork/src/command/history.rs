//! `fellwork history`: every version of a file of a collection; names for them; one of them put back; and all changes of
//! all files of a collection in the order of time.

use std::path::Path;

use answers::{ToldChanges, ToldFileChange, ToldVersion};
use jiff::Timestamp;
use jiff::tz::TimeZone;
use style::{
    Change, History, KeepError, KeptFile, NameError, Report, Revision, Teller, ToldChange, Units,
    VersionRead, Way,
};
use trade::System;
use words::Words;

use crate::args::{HistoryOf, VersionName};
use crate::command::named_file::load;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &HistoryOf) -> Result<Exit, Trouble> {
    if is_collection(&asked.file) && asked.name.is_none() && asked.put_back.is_none() {
        return collection(&asked.file, asked.json);
    }
    let kept = kept(&asked.file)?;
    let history = of(&kept)?;
    if let Some(version) = &asked.put_back {
        return put_back(&kept, &history, version);
    }
    sound(&kept, &history)?;
    if let Some(VersionName { version, name }) = &asked.name {
        return give_name(&kept, &history, version, name.as_deref());
    }
    if let Some(report) = style::names_problem(&history).filter(|_| !asked.json) {
        printed::to_stderr(&format!("the names cannot be read:\n{}", report.render()));
    }
    let told = told(&kept, &history, asked.named);
    if asked.json {
        printed::json(&answers::history(&kept, &history, &told)?)?;
    } else {
        printed::words(&words(&told))?;
    }
    Ok(Exit::Done)
}

fn is_collection(path: &Path) -> bool {
    path.join(style::COLLECTION_FILE).is_file() && !path.join(style::STYLE_FILE).exists()
}

/// A file of a collection, with what was written by hand into any of them taken note of.
pub fn kept(path: &Path) -> Result<KeptFile, Trouble> {
    let missing = !path.exists();
    match KeptFile::at(path).filter(|_| !missing) {
        Some(kept) => {
            style::take_note(&kept.root);
            Ok(kept)
        }
        // What is wrong with a path that means no file of a collection is said as of a style.
        None => match load(path) {
            Err(trouble) => Err(trouble),
            Ok(loaded) => Err(Trouble::NotKept { file: loaded.path }),
        },
    }
}

/// The history of a file.
pub fn of(kept: &KeptFile) -> Result<History, Trouble> {
    History::of(&kept.file).map_err(|why| style::SaveError::from(why).into())
}

/// The units that changes are told in.
pub fn units(kept: &KeptFile) -> System {
    match style::load_collection(&kept.root).map(|collection| collection.units) {
        Ok(Units::Inches) => System::Inch,
        Ok(Units::Centimetres) | Err(_) => System::Metric,
    }
}

/// Where the file cannot be read, an earlier version can still be put in its place; which one is said with what is wrong.
fn sound(kept: &KeptFile, history: &History) -> Result<(), Trouble> {
    let Some((version, _)) = kept.last_sound() else {
        return Ok(());
    };
    let last = history
        .with_id(&version.id)
        .map_or(version.number, |last| last.number);
    printed::to_stderr(&format!(
        "version {last} is the last that can be read; put it in place of the file with --put-back {last}\n"
    ));
    let unread = kept.file.look().map_err(style::SaveError::from);
    match unread.map(|now| kept.check(&now.text)) {
        Ok(Err(KeepError::Invalid(report))) => Err(report.into()),
        Ok(Err(other)) => Err(Trouble::NotPutBack(other)),
        Ok(Ok(())) => Ok(()),
        Err(error) => Err(error.into()),
    }
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

/// A version, read against the collection as it is now.
pub fn read(teller: &Teller, version: &Revision) -> Result<VersionRead, Report> {
    teller.read(&style::read_revision(version)?)
}

/// Changes in the words of the command line.
pub fn in_words(changes: &[Change], units: System) -> Vec<ToldChange> {
    let told = |change: &Change| change.told(Words::english(), units);
    changes.iter().map(told).collect()
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

fn give_name(
    kept: &KeptFile,
    history: &History,
    asked: &str,
    name: Option<&str>,
) -> Result<Exit, Trouble> {
    let number = version(history, asked)?.number;
    let named = kept.file.name_version(number, name);
    named.map_err(|error| match error {
        NameError::Broken(problem) => Trouble::Input(style::names_report(&problem)),
        NameError::Store(error) => style::SaveError::from(error).into(),
        other => Trouble::NotNamed(other),
    })?;
    printed::words(&match name {
        Some(name) => {
            trade::plain(&format!("version {number} is called \"{name}\"\n")).into_owned()
        }
        None => format!("version {number} has no name any more\n"),
    })?;
    Ok(Exit::Done)
}

fn put_back(kept: &KeptFile, history: &History, asked: &str) -> Result<Exit, Trouble> {
    let number = version(history, asked)?.number;
    let saved = kept.put_back(number).map_err(|error| match error {
        KeepError::Invalid(report) => report.into(),
        KeepError::Save(error) => error.into(),
        other => Trouble::NotPutBack(other),
    })?;
    printed::words(&match saved.earlier {
        None => format!("the file holds the text of version {number} already\n"),
        Some(_) => format!(
            "version {number} is in the file again, as version {}\n",
            saved.now.number
        ),
    })?;
    Ok(Exit::Done)
}

/// Every change of every file of a collection, the latest first.
fn collection(folder: &Path, json: bool) -> Result<Exit, Trouble> {
    style::take_note(folder);
    let timeline = style::timeline(folder).map_err(|why| Trouble::Revisions {
        folder: folder.to_path_buf(),
        why,
    })?;
    let root = style::real(folder);
    let mut told = Vec::new();
    for change in timeline.changes().iter().rev() {
        let Some(kept) = KeptFile::at(&root.join(&change.file)) else {
            continue;
        };
        let teller = Teller::of(&kept);
        let changes = match (read(&teller, &change.from), read(&teller, &change.to)) {
            (_, Err(report)) => ToldChanges::Unread(report),
            (Err(_), _) => ToldChanges::Unknown,
            (Ok(before), Ok(this)) => {
                ToldChanges::Known(in_words(&teller.changes(&before, &this), units(&kept)))
            }
        };
        told.push(ToldFileChange {
            change,
            written: written(&change.to),
            changes,
        });
    }
    if json {
        printed::json(&answers::history_of_collection(folder, &told)?)?;
        return Ok(Exit::Done);
    }
    let text = if told.is_empty() {
        "nothing was changed yet\n".to_owned()
    } else {
        told.iter()
            .map(|told| {
                let change = told.change;
                let how = match change.way {
                    Way::Edit => "",
                    Way::Undo => "  undone",
                    Way::Redo => "  made again",
                    Way::PutBack => "  put back",
                    Way::Outside => "  changed outside",
                };
                let time = told
                    .written
                    .map_or_else(String::new, |time| format!("{}  ", shown(time)));
                format!(
                    "{time}{} {}{how}\n{}",
                    change.file,
                    change.to.number,
                    lines(&told.changes)
                )
            })
            .collect()
    };
    printed::words(&text)?;
    Ok(Exit::Done)
}

/// Every version, or every one with a name, the newest first.
fn told<'a>(kept: &KeptFile, history: &'a History, named: bool) -> Vec<ToldVersion<'a>> {
    let teller = Teller::of(kept);
    let units = units(kept);
    let now = history.now().map(|now| now.number);
    let outside = from_outside(kept);
    // The version before one is the next in the list, so each is read once.
    let mut last: Option<(u32, Result<VersionRead, Report>)> = None;
    let mut all = Vec::new();
    let versions = history.versions().iter().rev();
    for version in versions.filter(|version| !named || history.name(version).is_some()) {
        let this = match last.take() {
            Some((number, this)) if number == version.number => this,
            _ => read(&teller, version),
        };
        let before = history.before(version.number);
        let before = before.map(|before| (before.number, read(&teller, before)));
        let changes = match (this, &before) {
            (Err(report), _) => ToldChanges::Unread(report),
            (Ok(_), None) => ToldChanges::First,
            (Ok(_), Some((_, Err(_)))) => ToldChanges::Unknown,
            (Ok(this), Some((_, Ok(before)))) => {
                ToldChanges::Known(in_words(&teller.changes(before, &this), units))
            }
        };
        all.push(ToldVersion {
            version,
            name: history.name(version),
            now: now == Some(version.number),
            outside: outside.contains(&version.number),
            written: written(version),
            same_as: history.same_as(version).map(|same| same.number),
            changes,
        });
        last = before;
    }
    all
}

/// The numbers of the versions that were written by hand or by another program.
fn from_outside(kept: &KeptFile) -> Vec<u32> {
    let timeline = style::timeline(&kept.root).unwrap_or_default();
    let changes = timeline.changes().iter();
    let ours = changes.filter(|change| {
        change.way == Way::Outside && kept.root.join(&change.file) == kept.file.path()
    });
    ours.map(|change| change.to.number).collect()
}

fn written(version: &Revision) -> Option<Timestamp> {
    let written = std::fs::metadata(&version.path).and_then(|file| file.modified());
    Timestamp::try_from(written.ok()?).ok()
}

fn shown(time: Timestamp) -> String {
    let here = time.to_zoned_datetime(TimeZone::system());
    here.strftime("%-d %b %Y, %H:%M").to_string()
}

fn words(told: &[ToldVersion<'_>]) -> String {
    let mut out = String::new();
    for told in told {
        let mut head = vec![format!("{:>4}", told.version.number)];
        head.extend(told.written.map(shown));
        head.extend(told.now.then(|| "now".to_owned()));
        head.extend(told.outside.then(|| "changed outside".to_owned()));
        head.extend(told.same_as.map(|same| format!("as {same} was")));
        head.extend(told.name.map(|name| format!("\"{name}\"")));
        out.push_str(&head.join("  "));
        out.push('\n');
        out.push_str(&lines(&told.changes));
    }
    if told.is_empty() {
        out.push_str("no version has a name yet\n");
    }
    out
}

/// What changed, a line each.
fn lines(changes: &ToldChanges) -> String {
    let line = |line: &str| format!("      {line}\n");
    match changes {
        ToldChanges::First => line("the first that is kept"),
        ToldChanges::Unknown => line("the version before it cannot be read"),
        ToldChanges::Unread(report) => {
            let problems = report.problems.iter().map(|problem| line(&problem.message));
            line("it cannot be read now:") + &problems.collect::<String>()
        }
        ToldChanges::Known(changes) if changes.is_empty() => {
            line("comments, or the way it is written")
        }
        ToldChanges::Known(changes) => changes
            .iter()
            .map(|change| line(&change.sentence))
            .collect(),
    }
}
