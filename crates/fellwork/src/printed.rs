//! Printing. A reader that stops listening (`| head`) ends the printing, not the program.

use std::io::{self, ErrorKind, Write};
use std::path::PathBuf;

use trade::plain;

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

/// Prints to standard error, for a person: nothing in it steers a terminal. Nobody can be told when that fails.
pub fn to_stderr(text: &str) {
    let _ = io::stderr().lock().write_all(plain(text).as_bytes());
}

/// Writes the one line of a terminal anew that tells how a search stands; no words take it away.
pub fn line_anew(text: &str) {
    let line = format!("\r{}\x1b[K", plain(text));
    let _ = io::stderr().lock().write_all(line.as_bytes());
}
