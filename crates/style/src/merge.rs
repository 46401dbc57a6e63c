//! Edits that were meant for an earlier text, made on the text as it is now: where nothing they touch has changed
//! meanwhile. Else nothing is made, and every value that clashes is named.
//!
//! What counts is what the texts say, not how: comments and spaces never clash. A list that has become longer or
//! shorter has changed as a whole, because its numbers no longer mean the same members.

use crate::content::{Content, differences, written};
use crate::difference::{Change, Written};
use crate::edit::{Edit, change};
use crate::path::{DocPath, Step};
use crate::report::Report;

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
    pub was: Option<Written>,
    /// What it is now.
    pub is: Option<Written>,
    /// What the edit was to make of it; `None` where it was to be taken out.
    pub wanted: Option<Written>,
}

impl Clash {
    /// Whether a change is about the value that clashes, one above or one below it.
    #[must_use]
    pub fn is_about(&self, change: &Change) -> bool {
        let path: Result<DocPath, _> = change.path.parse();
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
        let (before, after) = (Content::read(base)?, Content::read(now)?);
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

fn meets(edit: &Edit, before: &Content, after: &Content, changed: &[Vec<Step>]) -> Meeting {
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
        was: was.map(Content::written),
        is: is.map(Content::written),
        wanted: match edit {
            Edit::Set { value, .. } | Edit::Insert { value, .. } => Some(written(value)),
            Edit::Remove { .. } => None,
        },
    })
}

/// The places that an edit reads or writes.
fn touched(edit: &Edit, before: &Content) -> Vec<Vec<Step>> {
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
fn borrowed_rows(seam: &str, before: &Content) -> Vec<Vec<Step>> {
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
        let next = before.at(&like).and_then(Content::plain).map(str::to_owned);
        places.extend([rows, like]);
        match next {
            Some(next) => seam = next,
            None => return places,
        }
    }
}
