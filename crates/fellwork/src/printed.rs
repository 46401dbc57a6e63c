//! Printing. A reader that stops listening (`| head`) ends the printing, not the program.

use std::io::{self, ErrorKind, Write};
use std::path::PathBuf;

use trade::{plain, steers};

use crate::trouble::Trouble;

/// Prints to standard output. A closed pipe counts as read.
///
/// # Errors
/// Standard output refuses for another reason, such as a full disk behind it.
pub fn to_stdout(bytes: impl AsRef<[u8]>) -> Result<(), Trouble> {
    let mut out = io::stdout().lock();
    match out.write_all(bytes.as_ref()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => Err(Trouble::Write {
            path: PathBuf::from("standard output"),
            why: error,
        }),
        _ => Ok(()),
    }
}

/// Prints words to standard output, for a person: nothing in them steers a terminal.
///
/// # Errors
/// Standard output refuses.
pub fn words(text: &str) -> Result<(), Trouble> {
    to_stdout(plain(text).as_bytes())
}

/// Prints JSON to standard output. It is for programs, which read it as it was; but a terminal may stand behind it, so what
/// would steer one is written as JSON writes any character it cannot show, by its number.
///
/// # Errors
/// Standard output refuses.
pub fn json(text: &str) -> Result<(), Trouble> {
    to_stdout(by_number(text))
}

/// What is not plain ASCII in JSON stands in its texts only; there each may be written by its number.
fn by_number(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        if c.is_ascii() || !steers(c) {
            out.push(c);
        } else {
            let mut units = [0_u16; 2];
            for unit in c.encode_utf16(&mut units) {
                out.push_str(&format!("\\u{unit:04x}"));
            }
        }
    }
    out
}

/// Prints to standard error, for a person: nothing in it steers a terminal. Nobody can be told when that fails.
pub fn to_stderr(text: &str) {
    let _ = io::stderr().lock().write_all(plain(text).as_bytes());
}

/// Writes the one line of a terminal anew that tells how a search stands; no words take it away.
pub fn line_anew(text: &str) {
    let line = format!("\r{}\x1b[K", plain(text));
    let _ = io::stderr().lock().write_all(line.as_bytes());
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn json_steers_no_terminal_and_says_the_same() {
        let said = "渡し守 \u{202e}é\u{9b}\u{1b}[2J";
        let text = serde_json::to_string(said).unwrap();
        let written = by_number(&text);
        assert!(!written.chars().any(steers), "{written:?}");
        assert!(written.contains("渡し守"));
        assert_eq!(serde_json::from_str::<String>(&written).unwrap(), said);
    }
}
