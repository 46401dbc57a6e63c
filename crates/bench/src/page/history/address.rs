//! The addresses of the history, made in one place.

use style::Revision;

use super::compare::Look;
use crate::room::Room;
use crate::route::{encoded, style_path};
use crate::see::See;

/// A page of the list, from 1; of all versions or of those with a name.
pub(crate) fn list(name: &str, see: &See, named: bool, page: usize) -> String {
    let mut address = Room::History.url(name, see);
    if named {
        address.push_str("&named=yes");
    }
    if page > 1 {
        address.push_str(&format!("&page={page}"));
    }
    address
}

/// The small picture of a version.
pub(crate) fn picture(name: &str, version: &Revision) -> String {
    let (path, number) = (style_path(name), version.number);
    format!("{path}/revision/{number}/drawing.svg?id={}", version.id)
}

/// Two versions beside or over one another.
pub(crate) fn compare(name: &str, a: &str, b: &str, look: Look, see: &See) -> String {
    let (path, a, b) = (style_path(name), encoded(a), encoded(b));
    format!(
        "{path}/compare?a={a}&b={b}&look={}&{}",
        look.word(),
        see.query()
    )
}
