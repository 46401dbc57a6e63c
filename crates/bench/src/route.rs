//! Every address of the bench, made in one place.

use std::fmt::Write;

use crate::see::See;

/// The list of styles.
pub(crate) fn collection(see: &See) -> String {
    with_query("/", &see.units_query())
}

/// The page of a style.
pub(crate) fn style(name: &str, see: &See) -> String {
    with_query(&style_path(name), &see.query())
}

/// A room of a style that is a page of its own.
pub(crate) fn room(name: &str, page: &str, see: &See) -> String {
    with_query(&format!("{}/{page}", style_path(name)), &see.query())
}

/// The drawing of a style as a file of its own; `revision` makes it a new address after each change.
pub(crate) fn picture(name: &str, see: &See, revision: &str) -> String {
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

/// Percent-encodes everything that is not plain in an address (RFC 3986, unreserved characters).
pub(crate) fn encoded(text: &str) -> String {
    let mut out = String::new();
    for byte in text.bytes() {
        if byte.is_ascii_alphanumeric() || b"-._~".contains(&byte) {
            out.push(char::from(byte));
        } else {
            let _ = write!(out, "%{byte:02X}");
        }
    }
    out
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
