//! Edits that were meant for an earlier text, made on the text as it is now: where nothing they touch has changed
//! meanwhile. Else nothing is made, and every value that clashes is named.
//!
//! What counts is what the texts say, not how: comments and spaces never clash. A list that has become longer or
//! shorter has changed as a whole, because its numbers no longer mean the same members.

use std::collections::BTreeMap;

use toml_edit::{Document, Item, TableLike, Value};

use crate::edit::{Edit, EditValue, change};
use crate::parse::style_alone;
use crate::path::{DocPath, Step};
use crate::report::{Report, Source};
use crate::{Change, STYLE_FILE};

/// What became of edits.
#[derive(Clone, Debug, PartialEq)]
pub enum Merged {
    /// The text as it is now with every edit made. It may still have problems, as after any edit.
    Text(String),
    /// What the edits touch was changed meanwhile; no edit was made.
    Clash(Vec<Clash>),
}

/// A value that was changed meanwhile and that an edit was to change.
#[derive(Clone, Debug, PartialEq)]
pub struct Clash {
    /// Which value the edit is about.
    pub path: DocPath,
    /// What it was where the edit was meant to be made; `None` for nothing.
    pub was: Option<String>,
    /// What it is now.
    pub is: Option<String>,
    /// What the edit was to make of it; `None` where it was to be taken out.
    pub wanted: Option<String>,
}

impl Clash {
    /// Whether a change told in words is about the value that clashes, one above or one below it.
    #[must_use]
    pub fn is_about(&self, told: &Change) -> bool {
        let path: Result<DocPath, _> = told.path.parse();
        path.is_ok_and(|path| overlap(path.steps(), self.path.steps()))
    }
}

/// Makes edits that were meant for the text `base` on the text `now`.
///
/// An edit that the text `now` holds already is done.
///
/// # Errors
/// One of the texts is no TOML, or a path of an edit leads nowhere.
pub fn merge(base: &str, now: &str, edits: &[Edit]) -> Result<Merged, Report> {
    let mut left: Vec<&Edit> = edits.iter().collect();
    if base != now {
        let (before, after) = (Said::read(base)?, Said::read(now)?);
        let mut changed = Vec::new();
        differences(Some(&before), Some(&after), &mut Vec::new(), &mut changed);
        let mut clashes = Vec::new();
        left.retain(|edit| match meets(edit, &before, &after, &changed) {
            Meeting::Clear => true,
            Meeting::Same => false,
            Meeting::Clash(clash) => {
                clashes.push(clash);
                true
            }
        });
        if !clashes.is_empty() {
            return Ok(Merged::Clash(clashes));
        }
    }
    let mut text = now.to_owned();
    for edit in left {
        text = change(&text, edit)?;
    }
    Ok(Merged::Text(text))
}

/// What a text says at a place.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Said {
    /// A text, number, date or flag, and whether it stands in quotes.
    Plain(String, bool),
    List(Vec<Said>),
    Section(BTreeMap<String, Said>),
}

impl Said {
    pub(crate) fn read(text: &str) -> Result<Self, Report> {
        match Document::parse(text) {
            Ok(document) => Ok(Self::table(document.as_table())),
            // The reader says the same thing with its place.
            Err(_) => Err(style_alone(&Source::new(STYLE_FILE, text)).report),
        }
    }

    fn table(table: &dyn TableLike) -> Self {
        let entries = table
            .iter()
            .filter_map(|(key, item)| Some((key.to_owned(), Self::item(item)?)));
        Self::Section(entries.collect())
    }

    fn item(item: &Item) -> Option<Self> {
        match item {
            Item::None => None,
            Item::Value(value) => Some(Self::value(value)),
            Item::Table(table) => Some(Self::table(table)),
            Item::ArrayOfTables(tables) => {
                Some(Self::List(tables.iter().map(|t| Self::table(t)).collect()))
            }
        }
    }

    fn value(value: &Value) -> Self {
        match value {
            Value::String(text) => Self::Plain(text.value().clone(), true),
            Value::Array(members) => Self::List(members.iter().map(Self::value).collect()),
            Value::InlineTable(table) => Self::table(table),
            other => Self::Plain(other.to_string().trim().to_owned(), false),
        }
    }

    pub(crate) fn at(&self, steps: &[Step]) -> Option<&Self> {
        let mut here = self;
        for step in steps {
            here = match (step, here) {
                (Step::Key(key), Self::Section(entries)) => entries.get(key)?,
                (Step::Index(index), Self::List(members)) => members.get(*index)?,
                _ => return None,
            };
        }
        Some(here)
    }

    /// Whether an edit's value says this.
    fn is(&self, wanted: &EditValue) -> bool {
        match (self, wanted) {
            (Self::List(members), EditValue::List(wanted)) => {
                members.len() == wanted.len() && members.iter().zip(wanted).all(|(a, b)| a.is(b))
            }
            (Self::Section(entries), EditValue::Section(wanted)) => {
                entries.len() == wanted.len()
                    && wanted
                        .iter()
                        .all(|(key, value)| entries.get(key).is_some_and(|said| said.is(value)))
            }
            (Self::Plain(..), EditValue::List(_) | EditValue::Section(_)) => false,
            (Self::Plain(text, _), plain) => *text == words(plain),
            _ => false,
        }
    }

    pub(crate) fn is_plain(&self) -> bool {
        matches!(self, Self::Plain(..))
    }

    pub(crate) fn words(&self) -> String {
        match self {
            Self::Plain(text, _) => text.clone(),
            Self::List(members) => members_in_words(members.len()),
            Self::Section(_) => "a section".to_owned(),
        }
    }
}

/// An edit's value in words.
fn words(value: &EditValue) -> String {
    match value {
        EditValue::Flag(flag) => flag.to_string(),
        EditValue::Whole(number) => number.to_string(),
        EditValue::Tag(tag) => tag.to_string(),
        EditValue::Text(text) => text.clone(),
        EditValue::List(members) => members_in_words(members.len()),
        EditValue::Section(_) => "a section".to_owned(),
    }
}

fn members_in_words(count: usize) -> String {
    format!("a list of {count}")
}

/// The places where two texts say different things.
pub(crate) fn differences(
    a: Option<&Said>,
    b: Option<&Said>,
    at: &mut Vec<Step>,
    out: &mut Vec<Vec<Step>>,
) {
    match (a, b) {
        (Some(Said::Section(a)), Some(Said::Section(b))) => {
            let keys = a.keys().chain(b.keys().filter(|key| !a.contains_key(*key)));
            for key in keys {
                at.push(Step::Key(key.clone()));
                differences(a.get(key), b.get(key), at, out);
                at.pop();
            }
        }
        (Some(Said::List(a)), Some(Said::List(b))) if a.len() == b.len() => {
            for (index, (a, b)) in a.iter().zip(b).enumerate() {
                at.push(Step::Index(index));
                differences(Some(a), Some(b), at, out);
                at.pop();
            }
        }
        (a, b) if a == b => {}
        _ => out.push(at.clone()),
    }
}

/// Whether one place lies in the other.
fn overlap(a: &[Step], b: &[Step]) -> bool {
    a.iter().zip(b).all(|(a, b)| a == b)
}

/// How an edit stands to what was changed meanwhile.
enum Meeting {
    Clear,
    /// The same change was made meanwhile.
    Same,
    Clash(Clash),
}

fn meets(edit: &Edit, before: &Said, after: &Said, changed: &[Vec<Step>]) -> Meeting {
    let path = edit.path().steps();
    let touched = touched(edit, before);
    let met: Vec<&Vec<Step>> = changed
        .iter()
        .filter(|changed| touched.iter().any(|touched| overlap(touched, changed)))
        .collect();
    if met.is_empty() {
        return Meeting::Clear;
    }
    let (was, is) = (before.at(path), after.at(path));
    // A change above may have given the path another meaning.
    let only_here = met.iter().all(|met| met.starts_with(path));
    let same = match edit {
        Edit::Set { value, .. } => is.is_some_and(|is| is.is(value)),
        Edit::Remove { path } => is.is_none() && matches!(path.steps().last(), Some(Step::Key(_))),
        Edit::Insert { .. } => false,
    };
    if only_here && same {
        return Meeting::Same;
    }
    Meeting::Clash(Clash {
        path: edit.path().clone(),
        was: was.map(Said::words),
        is: is.map(Said::words),
        wanted: match edit {
            Edit::Set { value, .. } | Edit::Insert { value, .. } => Some(words(value)),
            Edit::Remove { .. } => None,
        },
    })
}

/// The places that an edit reads or writes.
fn touched(edit: &Edit, before: &Said) -> Vec<Vec<Step>> {
    let path = edit.path().steps();
    let whole_list = match (edit, path.split_last()) {
        // Whoever puts a member into a list or takes one out gives the others new numbers.
        (Edit::Insert { .. } | Edit::Remove { .. }, Some((Step::Index(_), list))) => list,
        _ => path,
    };
    let mut touched = vec![whole_list.to_vec()];
    // What the chart says, it says of the base size.
    let key = |key: &str| Step::Key(key.to_owned());
    match path {
        [first, ..] if *first == key("chart") => touched.push(vec![key("sizes"), key("base")]),
        [sizes, rest @ ..] if *sizes == key("sizes") && rest.first() == Some(&key("base")) => {
            touched.push(vec![key("chart")]);
        }
        _ => {}
    }
    if let [
        Step::Key(seams),
        Step::Key(seam),
        Step::Key(rows),
        Step::Index(_),
        ..,
    ] = path
        && seams == "seams"
        && rows == "rows"
    {
        touched.extend(borrowed_rows(seam, before));
    }
    touched
}

/// What decides the rows of a seam that has none of its own: an edit of one of them copies them first.
fn borrowed_rows(seam: &str, before: &Said) -> Vec<Vec<Step>> {
    let place = |seam: &str, key: &str| {
        ["seams", seam, key]
            .map(|key| Step::Key(key.to_owned()))
            .to_vec()
    };
    let mut places = Vec::new();
    let mut seam = seam.to_owned();
    loop {
        let rows = place(&seam, "rows");
        if before.at(&rows).is_some() {
            if !places.is_empty() {
                places.push(rows);
            }
            return places;
        }
        let like = place(&seam, "like");
        // A circle of seams that are like each other has no rows.
        if places.contains(&like) {
            return places;
        }
        let next = before.at(&like).map(Said::words);
        places.extend([rows, like]);
        match next {
            Some(next) => seam = next,
            None => return places,
        }
    }
}
