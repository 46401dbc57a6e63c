//! Writing files whole or not at all.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use crate::printed;
use crate::trouble::Trouble;

/// The output that means standard output.
const PRINTED: &str = "-";

/// Writes `bytes` to a file, or prints them when the output is `-`.
///
/// A file is written beside its place and renamed, so that it is never seen in part and an earlier
/// file stays as it was when something fails.
///
/// # Errors
/// The output cannot be written; nothing is left behind.
pub fn write(output: &Path, bytes: &[u8]) -> Result<(), Trouble> {
    if output == Path::new(PRINTED) {
        return printed::to_stdout(bytes);
    }
    write_whole(output, bytes).map_err(|why| Trouble::Write {
        path: output.to_path_buf(),
        why,
    })
}

/// Whether the output is standard output.
pub fn is_printed(output: &Path) -> bool {
    output == Path::new(PRINTED)
}

fn write_whole(output: &Path, bytes: &[u8]) -> io::Result<()> {
    // A link is followed, so that what it points to is replaced and not the link itself.
    let place = fs::canonicalize(output).unwrap_or_else(|_| output.to_path_buf());
    match fs::metadata(&place) {
        Ok(there) if there.is_dir() => {
            return Err(io::Error::new(
                io::ErrorKind::IsADirectory,
                "it is a folder",
            ));
        }
        // A device or a pipe is written to, never replaced.
        Ok(there) if !there.is_file() => return fs::write(&place, bytes),
        _ => {}
    }
    let beside = beside(&place)?;
    let written = fill(&beside, bytes).and_then(|()| fs::rename(&beside, &place));
    if written.is_err() {
        // What could not be finished is ours to take away; failing to is no worse than the error itself.
        let _ = fs::remove_file(&beside);
    }
    written
}

/// Writes files into a folder, all of them or none; the folder is made where it is not there.
///
/// Every file is first written whole beside its place. Only when all are there is each renamed.
///
/// # Errors
/// A file cannot be written; nothing of this is left behind.
pub fn write_all(folder: &Path, files: &[(String, impl AsRef<[u8]>)]) -> Result<(), Trouble> {
    let made = !folder.exists();
    let not_written = |path: &Path, why| Trouble::Write {
        path: path.to_path_buf(),
        why,
    };
    fs::create_dir_all(folder).map_err(|why| not_written(folder, why))?;
    let mut ready: Vec<(PathBuf, PathBuf)> = Vec::new();
    let mut fill_all = || -> Result<(), Trouble> {
        for (name, bytes) in files {
            let place = folder.join(name);
            if place.is_dir() {
                let why = io::Error::new(io::ErrorKind::IsADirectory, "it is a folder");
                return Err(not_written(&place, why));
            }
            let beside = beside(&place).map_err(|why| not_written(&place, why))?;
            ready.push((beside.clone(), place.clone()));
            fill(&beside, bytes.as_ref()).map_err(|why| not_written(&place, why))?;
        }
        Ok(())
    };
    let filled = fill_all();
    let renamed = filled.and_then(|()| {
        ready.iter().try_for_each(|(beside, place)| {
            fs::rename(beside, place).map_err(|why| not_written(place, why))
        })
    });
    if renamed.is_err() {
        // What could not be finished is ours to take away; failing to is no worse than the error itself.
        for (beside, _) in &ready {
            let _ = fs::remove_file(beside);
        }
        if made {
            let _ = fs::remove_dir(folder);
        }
    }
    renamed
}

fn beside(place: &Path) -> io::Result<PathBuf> {
    let name = place
        .file_name()
        .ok_or_else(|| io::Error::new(io::ErrorKind::InvalidInput, "it names no file"))?;
    // What a program that was killed left there is in nobody's way any more.
    let folder = place.parent().filter(|folder| *folder != Path::new(""));
    style::clear_unfinished(folder.unwrap_or(Path::new(".")));
    Ok(place.with_file_name(style::unfinished(name)))
}

fn fill(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut file = File::create(path)?;
    file.write_all(bytes)?;
    file.sync_all()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<String> = fs::read_dir(folder)
            .unwrap()
            .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
            .collect();
        names.sort();
        names
    }

    #[test]
    fn a_file_is_replaced_whole_and_nothing_else_is_left() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("a.svg");
        write(&file, b"first").unwrap();
        write(&file, b"second").unwrap();
        assert_eq!(fs::read(&file).unwrap(), b"second");
        assert_eq!(names(folder.path()), ["a.svg"]);
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn what_a_killed_program_left_is_cleared_away() {
        let folder = tempfile::tempdir().unwrap();
        // No system has so many programs.
        let left = folder.path().join(".a.svg.new-4194305-0");
        fs::write(&left, "half").unwrap();
        write(&folder.path().join("b.svg"), b"whole").unwrap();
        assert_eq!(names(folder.path()), ["b.svg"]);
    }

    #[test]
    fn a_folder_is_never_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let error = write(folder.path(), b"x").unwrap_err();
        assert!(
            error.render().contains("it is a folder"),
            "{}",
            error.render()
        );
    }

    #[test]
    fn several_files_are_written_all_or_none() {
        let folder = tempfile::tempdir().unwrap();
        let into = folder.path().join("new");
        let file = |name: &str| (name.to_owned(), "x".to_owned());
        write_all(&into, &[file("a"), file("b")]).unwrap();
        assert_eq!(names(&into), ["a", "b"]);
        fs::create_dir(into.join("d")).unwrap();
        let error = write_all(&into, &[file("c"), file("d")]).unwrap_err();
        assert!(error.render().contains("it is a folder"));
        assert_eq!(names(&into), ["a", "b", "d"]);
        let other = folder.path().join("other");
        assert!(write_all(&other, &[file("a"), file("no/b")]).is_err());
        assert!(!other.exists());
    }

    #[cfg(unix)]
    #[test]
    fn a_link_stays_a_link() {
        let folder = tempfile::tempdir().unwrap();
        let (file, link) = (folder.path().join("real"), folder.path().join("link"));
        write(&file, b"first").unwrap();
        std::os::unix::fs::symlink(&file, &link).unwrap();
        write(&link, b"second").unwrap();
        assert_eq!(fs::read(&file).unwrap(), b"second");
        assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    }
}
