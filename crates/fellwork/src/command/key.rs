//! The key of the bench's pages, from where other users of the machine cannot read it.

use std::fs::File;
use std::io::{self, BufRead, BufReader, Read};
use std::path::Path;

use crate::args::Serving;
use crate::trouble::Trouble;

/// The file that means standard input.
const GIVEN: &str = "-";
/// More than the longest key and the end of its line.
const LONGEST: u64 = 1024;

/// The key that is to be used, where one is asked for.
///
/// # Errors
/// The file cannot be read, or others can read it.
pub fn asked_for(serving: &Serving) -> Result<Option<String>, Trouble> {
    let Some(file) = &serving.key_file else {
        return Ok(serving.key.clone());
    };
    if file == Path::new(GIVEN) {
        return first_line(io::stdin().lock(), file).map(Some);
    }
    first_line(opened(file)?, file).map(Some)
}

/// The file, if it is one that keeps a key.
fn opened(path: &Path) -> Result<File, Trouble> {
    let unreadable = |why: io::Error| trouble(path, &format!("it cannot be read: {why}"));
    // Something that is no file may never come to an end, or not even open.
    if !std::fs::metadata(path).map_err(unreadable)?.is_file() {
        return Err(trouble(path, "it is not a file"));
    }
    let file = File::open(path).map_err(unreadable)?;
    let told = file.metadata().map_err(unreadable)?;
    if is_open_to_others(&told) {
        return Err(trouble(path, "other users of this machine can read it"));
    }
    Ok(file)
}

#[cfg(unix)]
fn is_open_to_others(told: &std::fs::Metadata) -> bool {
    use std::os::unix::fs::MetadataExt;
    /// Anything that the group or everybody else may do.
    const OTHERS: u32 = 0o077;
    told.mode() & OTHERS != 0
}

/// Who may read a file is not said in this way elsewhere; a user's own folder is closed to others there.
#[cfg(not(unix))]
fn is_open_to_others(_: &std::fs::Metadata) -> bool {
    false
}

fn first_line(from: impl Read, path: &Path) -> Result<String, Trouble> {
    let mut line = String::new();
    BufReader::new(from.take(LONGEST))
        .read_line(&mut line)
        .map_err(|why| trouble(path, &format!("it cannot be read: {why}")))?;
    match line.trim() {
        "" => Err(trouble(path, "its first line is empty")),
        key => Ok(key.to_owned()),
    }
}

fn trouble(path: &Path, why: &str) -> Trouble {
    let from = match path {
        path if path == Path::new(GIVEN) => "standard input".to_owned(),
        path => path.display().to_string(),
    };
    Trouble::Key {
        from,
        why: why.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    const KEY: &str = "0123456789abcdefXYZ";

    fn serving(path: &Path) -> Serving {
        Serving {
            no_open: true,
            port: None,
            key: None,
            key_file: Some(path.to_owned()),
        }
    }

    fn why(path: &Path) -> String {
        asked_for(&serving(path)).unwrap_err().to_string()
    }

    #[cfg(unix)]
    fn allow(path: &Path, mode: u32) {
        use std::os::unix::fs::PermissionsExt;
        let mode = std::fs::Permissions::from_mode(mode);
        std::fs::set_permissions(path, mode).unwrap();
    }

    #[test]
    #[cfg(unix)]
    fn a_key_is_read_from_a_file_that_only_its_owner_can_read() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("key");
        std::fs::write(&file, format!("{KEY}\r\nmore\n")).unwrap();
        for mode in [0o644, 0o640, 0o604, 0o620] {
            allow(&file, mode);
            assert!(why(&file).contains("other users"), "{mode:o}");
        }
        for mode in [0o600, 0o400] {
            allow(&file, mode);
            assert_eq!(asked_for(&serving(&file)).unwrap().as_deref(), Some(KEY));
        }
    }

    #[test]
    #[cfg(unix)]
    fn what_holds_no_key_is_said_so_and_not_waited_for() {
        let folder = tempfile::tempdir().unwrap();
        assert!(why(folder.path()).contains("not a file"));
        assert!(why(Path::new("/dev/zero")).contains("not a file"));
        assert!(why(&folder.path().join("none")).contains("cannot be read"));
        let file = folder.path().join("key");
        std::fs::write(&file, "\n").unwrap();
        allow(&file, 0o600);
        assert!(why(&file).contains("empty"));
    }
}
