//! Every address of the bench, made in one place.

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, utf8_percent_encode};

use crate::viewing::Viewing;

/// The list of styles.
pub(crate) fn collection(see: &Viewing) -> String {
    with_query("/", &see.units_query())
}

/// The page of a style.
pub(crate) fn style(name: &str, see: &Viewing) -> String {
    with_query(&style_path(name), &see.query())
}

/// A room of a style that is a page of its own.
pub(crate) fn room(name: &str, page: &str, see: &Viewing) -> String {
    with_query(&format!("{}/{page}", style_path(name)), &see.query())
}

/// The drawing of a style as a file of its own; `revision` makes it a new address after each change.
pub(crate) fn picture(name: &str, see: &Viewing, revision: &str) -> String {
    let query = format!("{}&revision={revision}", see.query());
    with_query(&format!("{}/drawing.svg", style_path(name)), &query)
}

/// Where a style's changes are sent.
pub(crate) fn style_path(name: &str) -> String {
    format!("/style/{}", encoded(name))
}

fn with_query(path: &str, query: &str) -> String {
    match path.contains('?') {
        _ if query.is_empty() => path.to_owned(),
        true => format!("{path}&{query}"),
        false => format!("{path}?{query}"),
    }
}

/// What is not plain in an address: all but the unreserved characters of RFC 3986.
const NOT_PLAIN: &AsciiSet = &NON_ALPHANUMERIC
    .remove(b'-')
    .remove(b'.')
    .remove(b'_')
    .remove(b'~');

/// A text as a step or a value of an address.
pub(crate) fn encoded(text: &str) -> String {
    utf8_percent_encode(text, NOT_PLAIN).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_folder_name_cannot_leave_its_place_in_an_address() {
        assert_eq!(style_path("ferryman"), "/style/ferryman");
        assert_eq!(style_path("a/b ?\"é"), "/style/a%2Fb%20%3F%22%C3%A9");
    }
}
