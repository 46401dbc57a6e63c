//! Reading: ordinary files only, and never more than a stated number of bytes.

use std::fs::{File, Metadata};
use std::io::{self, Read};
use std::path::{Path, PathBuf};

/// The largest text that is read: a style is a few kilobytes, so anything near this is another kind of file.
pub const LARGEST_FILE: u64 = 4 * 1024 * 1024;

/// Why a file was not read.
#[derive(Debug, thiserror::Error)]
pub enum ReadError {
    /// There is none.
    #[error("{}: there is no such file", .0.display())]
    Missing(PathBuf),
    /// The system refused.
    #[error("{} cannot be read: {source}", path.display())]
    Refused {
        /// The file.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// It is no file that has an end.
    #[error("{} is {what}, not a file", path.display())]
    NotAFile {
        /// What was named.
        path: PathBuf,
        /// What it is: a folder, a pipe, a socket, a device.
        what: &'static str,
    },
    /// More than is read.
    #[error("{} has {bytes} bytes; at most {largest} are read", path.display())]
    TooLarge {
        /// The file.
        path: PathBuf,
        /// How many it has at least.
        bytes: u64,
        /// How many are read.
        largest: u64,
    },
    /// No text.
    #[error("{} is not UTF-8 text: byte {byte:#04x} at offset {offset}", path.display())]
    NotText {
        /// The file.
        path: PathBuf,
        /// What stands before the offending byte.
        before: String,
        /// Where that is, from 0.
        offset: usize,
        /// The offending byte.
        byte: u8,
    },
}

/// Reads an ordinary file of at most so many bytes. One that states more is refused without being read.
///
/// # Errors
/// There is none, it is another kind of thing (a folder, a pipe, a device, also behind a link), it has more bytes, or
/// the system refused.
pub fn read_bytes(path: &Path, largest: u64) -> Result<Vec<u8>, ReadError> {
    let refused = |source: io::Error| match source.kind() {
        io::ErrorKind::NotFound => ReadError::Missing(path.to_path_buf()),
        _ => ReadError::Refused {
            path: path.to_path_buf(),
            source,
        },
    };
    let too_large = |bytes| ReadError::TooLarge {
        path: path.to_path_buf(),
        bytes,
        largest,
    };
    let plain = |data: &Metadata| match what_it_is(data) {
        Some(what) => Err(ReadError::NotAFile {
            path: path.to_path_buf(),
            what,
        }),
        None if data.len() > largest => Err(too_large(data.len())),
        None => Ok(()),
    };
    // Looked at before it is opened: opening a pipe waits for whoever writes into it.
    plain(&std::fs::metadata(path).map_err(refused)?)?;
    let file = File::open(path).map_err(refused)?;
    // Looked at again now that it is open, and counted while it is read: it may be another, or grow, meanwhile.
    plain(&file.metadata().map_err(refused)?)?;
    let mut bytes = Vec::new();
    file.take(largest.saturating_add(1))
        .read_to_end(&mut bytes)
        .map_err(refused)?;
    match bytes.len() as u64 {
        length if length > largest => Err(too_large(length)),
        _ => Ok(bytes),
    }
}

/// What is there instead of a plain file; `None` for a plain file.
fn what_it_is(data: &Metadata) -> Option<&'static str> {
    if data.is_file() {
        return None;
    }
    if data.is_dir() {
        return Some("a folder");
    }
    #[cfg(unix)]
    {
        use std::os::unix::fs::FileTypeExt;
        let kind = data.file_type();
        if kind.is_fifo() {
            return Some("a pipe");
        }
        if kind.is_socket() {
            return Some("a socket");
        }
        if kind.is_char_device() || kind.is_block_device() {
            return Some("a device");
        }
    }
    Some("something else")
}

/// Reads a text of at most so many bytes.
///
/// # Errors
/// As [`read_bytes`], and where it is not UTF-8.
pub fn read_text(path: &Path, largest: u64) -> Result<String, ReadError> {
    String::from_utf8(read_bytes(path, largest)?).map_err(|error| {
        let offset = error.utf8_error().valid_up_to();
        let bytes = error.as_bytes();
        ReadError::NotText {
            path: path.to_path_buf(),
            before: String::from_utf8_lossy(bytes.get(..offset).unwrap_or_default()).into_owned(),
            offset,
            byte: bytes.get(offset).copied().unwrap_or_default(),
        }
    })
}

/// Whether a character may stand in no text of ours: it steers a terminal, turns the words beside it round, or is none.
#[must_use]
pub fn unfit(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{fffe}' | '\u{ffff}')
}
