//! What rooms with work in the background share: how it stands, as a page asks for it, and files to take away.

use std::time::Duration;

use axum::http::{HeaderName, header};
use maud::{Markup, html};
use serde::Serialize;
use words::Words;

use crate::answer::Fragment;
use crate::typed_fields::capital;
use crate::work::NotBegun;

/// How the work of a room stands: what a page that asks is answered with.
#[derive(Debug, Default, Serialize)]
pub(crate) struct Standing {
    /// Whether to ask again soon.
    pub(crate) running: bool,
    /// What is to be read out when it is another than before.
    pub(crate) said: String,
    /// Why nothing was begun.
    pub(crate) problems: Vec<String>,
    /// The parts of the page as they are now.
    pub(crate) fragments: Vec<Fragment>,
}

/// Words as sentences of their own.
pub(crate) fn sentences(words: &[String]) -> Vec<String> {
    words.iter().map(|words| capital(words)).collect()
}

/// Why a job was not begun, in words.
pub(crate) fn not_begun(say: &'static Words, why: &NotBegun, busy: &str) -> String {
    match why {
        NotBegun::Busy => busy.to_owned(),
        NotBegun::NoThread(why) => say.work_no_room(why),
    }
}

/// A file that the browser puts away under its own name.
pub(crate) fn download(
    file: &str,
    mime: &'static str,
    bytes: Vec<u8>,
) -> ([(HeaderName, String); 2], Vec<u8>) {
    // Names are made of plain letters and digits before they get here.
    let plain = |c: &char| c.is_ascii_alphanumeric() || "-._".contains(*c);
    let name: String = file.chars().filter(plain).collect();
    let headers = [
        (header::CONTENT_TYPE, mime.to_owned()),
        (
            header::CONTENT_DISPOSITION,
            format!("attachment; filename=\"{name}\""),
        ),
    ];
    (headers, bytes)
}

/// How much of the work is done, as a bar; without a share it is not known.
pub(crate) fn bar(label: &str, done: Option<f64>) -> Markup {
    let value = done.map(|share| format!("{:.3}", share.clamp(0.0, 1.0)));
    html! { progress aria-label=(label) max="1" value=[value] {} }
}

/// Where problems with a form are said.
pub(crate) fn problems_place() -> Markup {
    html! { p.problem role="alert" hidden {} }
}

/// A time in words: "8 s", "2 min 5 s".
pub(crate) fn time(time: Duration) -> String {
    match time.as_secs() {
        seconds @ 0..=119 => format!("{seconds} s"),
        seconds => format!("{} min {} s", seconds / 60, seconds % 60),
    }
}

/// A size of a file in words.
pub(crate) fn bytes(count: usize) -> String {
    match count {
        0..=999_999 => format!("{} kB", count.div_ceil(1000)),
        _ => format!("{:.1} MB", count as f64 / 1e6),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_name_cannot_leave_its_header() {
        let (headers, _) = download("a\"; x=\r\n../b.pdf", "application/pdf", Vec::new());
        assert_eq!(headers[1].1, "attachment; filename=\"ax..b.pdf\"");
    }

    #[test]
    fn times_and_sizes_are_said_as_people_say_them() {
        assert_eq!(time(Duration::from_millis(8900)), "8 s");
        assert_eq!(time(Duration::from_secs(125)), "2 min 5 s");
        assert_eq!(bytes(1), "1 kB");
        assert_eq!(bytes(2_340_000), "2.3 MB");
    }
}
