//! The addresses of the history, made in one place.

use style::Revision;

use super::compare::Look;
use crate::addresses::{self, encoded, style_path};
use crate::room::Room;
use crate::viewing::Viewing;

/// A page of the list, from 1; of all versions or of those with a name.
pub(crate) fn list(name: &str, see: &Viewing, named: bool, page: usize) -> String {
    of_room(name, &list_leaf(named, page), see)
}

/// The same as its address goes on after the room's.
pub(crate) fn list_leaf(named: bool, page: usize) -> String {
    let named = named.then(|| "named=yes".to_owned());
    let page = (page > 1).then(|| format!("page={page}"));
    let asked: Vec<String> = named.into_iter().chain(page).collect();
    match asked.as_slice() {
        [] => String::new(),
        asked => format!("?{}", asked.join("&")),
    }
}

/// A page of the changes of all files, from 1.
pub(crate) fn all(name: &str, see: &Viewing, page: usize) -> String {
    of_room(name, &all_leaf(page), see)
}

/// The same as its address goes on after the room's.
pub(crate) fn all_leaf(page: usize) -> String {
    match page {
        0 | 1 => "?all=yes".to_owned(),
        page => format!("?all=yes&page={page}"),
    }
}

/// The small picture of a version.
pub(crate) fn picture(name: &str, version: &Revision) -> String {
    let (path, number) = (style_path(name), version.number);
    format!("{path}/revision/{number}/drawing.svg?id={}", version.id)
}

/// Two versions beside or over one another.
pub(crate) fn compare(name: &str, a: &str, b: &str, look: Look, see: &Viewing) -> String {
    of_room(name, &compare_leaf(a, b, look), see)
}

/// The same as its address goes on after the room's.
pub(crate) fn compare_leaf(a: &str, b: &str, look: Look) -> String {
    let (a, b) = (encoded(a), encoded(b));
    format!("/compare?a={a}&b={b}&look={}", look.word())
}

fn of_room(name: &str, leaf: &str, see: &Viewing) -> String {
    addresses::room(name, &format!("{}{leaf}", Room::History.word()), see)
}
