//! `fellwork set`: values of a file changed as the bench changes them; `undo` and `redo`: the last change taken back.

use std::path::Path;

use style::{Change, Direction, Edit, EditValue, KeepError, KeptFile, Report, Teller};

use crate::args::{Set, Undo, without_space};
use crate::command::history::{in_words, kept, read, units};
use crate::command::named_file::take_note;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &Set) -> Result<Exit, Trouble> {
    let edits = edits(asked)?;
    let kept = kept(&asked.file)?;
    let now = kept.file.look().map_err(style::SaveError::from)?;
    let saved = kept.edit(&now.version.id, &edits).map_err(not_made)?;
    let Some(earlier) = saved.earlier else {
        printed::words("the file says so already\n")?;
        return Ok(Exit::Done);
    };
    let teller = Teller::of(&kept);
    let changes = told(&teller, &earlier, &saved.now).unwrap_or_default();
    printed::words(&lines(&kept, &changes, "only the way it is written\n"))?;
    Ok(Exit::Done)
}

/// Takes the last change of a collection back, or makes the one again that was taken back last.
pub fn step(asked: &Undo, direction: Direction) -> Result<Exit, Trouble> {
    take_note(&asked.collection);
    let root = style::collection_of(&asked.collection).ok_or_else(|| Trouble::NoCollection {
        path: asked.collection.clone(),
    })?;
    let change = style::step(&root, direction, None).map_err(not_made)?;
    let path = root.join(&change.file);
    let words = match KeptFile::at(&path) {
        Some(kept) => {
            let teller = Teller::of(&kept);
            let (from, to) = match direction {
                Direction::Back => (&change.to, &change.from),
                Direction::Forward => (&change.from, &change.to),
            };
            let changes = told(&teller, from, to).unwrap_or_default();
            lines(&kept, &changes, "the file holds another text again\n")
        }
        None => String::new(),
    };
    printed::words(&format!("{}\n{words}", shown(&path)))?;
    Ok(Exit::Done)
}

fn shown(path: &Path) -> String {
    format!("in {}:", path.display())
}

fn told(
    teller: &Teller,
    from: &style::Revision,
    to: &style::Revision,
) -> Result<Vec<Change>, Report> {
    Ok(teller.changes(&read(teller, from)?, &read(teller, to)?))
}

/// What is different, a line each.
fn lines(kept: &KeptFile, changes: &[Change], none: &str) -> String {
    let told = in_words(changes, units(kept));
    let lines = told.iter().map(|change| format!("{}\n", change.sentence));
    match told.is_empty() {
        true => none.to_owned(),
        false => lines.collect(),
    }
}

fn not_made(error: KeepError) -> Trouble {
    match error {
        KeepError::Invalid(report) => report.into(),
        KeepError::Save(error) => error.into(),
        other => Trouble::NotChanged(other),
    }
}

/// The edits in the order in which they are made: values, then members put in, then what is taken out.
fn edits(asked: &Set) -> Result<Vec<Edit>, Trouble> {
    let mut edits = Vec::new();
    let mut values = asked.values.chunks_exact(2);
    for pair in values.by_ref() {
        edits.push(Edit::Set {
            path: path(&pair[0])?,
            value: value(&pair[1])?,
        });
    }
    if let [lonely] = values.remainder() {
        return Err(Trouble::NoValue {
            path: lonely.clone(),
        });
    }
    for pair in asked.insert.chunks_exact(2) {
        edits.push(Edit::Insert {
            path: path(&pair[0])?,
            value: value(&pair[1])?,
        });
    }
    for gone in &asked.remove {
        edits.push(Edit::Remove { path: path(gone)? });
    }
    if edits.is_empty() {
        return Err(Trouble::NothingSet);
    }
    Ok(edits)
}

fn path(text: &str) -> Result<style::DocPath, Trouble> {
    text.parse().map_err(|why| Trouble::NoPath {
        path: text.to_owned(),
        why,
    })
}

/// A list or a section is written as JSON, as the bench sends it, and so may a text be; everything else is the text of the
/// value.
fn value(text: &str) -> Result<EditValue, Trouble> {
    let text = without_space(text);
    if let Ok(quoted) = serde_json::from_str::<String>(text) {
        return Ok(quoted.as_str().into());
    }
    if !text.starts_with(['[', '{']) {
        return Ok(text.into());
    }
    serde_json::from_str(text).map_err(|why| Trouble::NoJson {
        value: text.to_owned(),
        why,
    })
}
