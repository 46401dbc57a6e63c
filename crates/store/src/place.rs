//! Where things lie: a collection, its files, and the versions of each.

use std::fs;
use std::path::{Path, PathBuf};

/// The name of the file that makes a folder a collection.
pub const COLLECTION_FILE: &str = "collection.toml";

/// The folder beside a file where its versions are kept.
pub const REVISIONS_FOLDER: &str = ".revisions";

/// The one kind of file that has a folder of its own; its versions lie in that folder's `.revisions` itself, those of
/// any other in a folder there that has the file's name.
const ALONE: &str = "style.toml";

/// Where a file really lies, also when it is named by a link. A file that is not there yet lies where it is named.
#[must_use]
pub fn real(path: &Path) -> PathBuf {
    fs::canonicalize(path)
        .or_else(|_| std::path::absolute(path))
        .unwrap_or_else(|_| path.to_path_buf())
}

/// The nearest folder at or above a place that is a collection.
#[must_use]
pub fn collection_of(path: &Path) -> Option<PathBuf> {
    let real = real(path);
    real.ancestors()
        .find(|folder| folder.join(COLLECTION_FILE).is_file())
        .map(Path::to_path_buf)
}

/// The folder of versions of a file, which is named by where it really lies.
pub(crate) fn versions_of(real: &Path) -> PathBuf {
    let revisions = real
        .parent()
        .unwrap_or(Path::new("."))
        .join(REVISIONS_FOLDER);
    match (real.file_name(), real.file_stem()) {
        (Some(name), Some(stem)) if name != ALONE => revisions.join(stem),
        _ => revisions,
    }
}

/// A file as the changes of a collection name it: its way from there, with forward slashes.
pub(crate) fn within(root: &Path, real: &Path) -> Option<String> {
    let parts = real.strip_prefix(root).ok()?.iter();
    let parts: Option<Vec<&str>> = parts.map(|part| part.to_str()).collect();
    Some(parts?.join("/"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_file_has_its_own_folder_of_versions() {
        let of = |path: &str| versions_of(Path::new(path));
        assert_eq!(
            of("/c/styles/a/style.toml"),
            Path::new("/c/styles/a/.revisions")
        );
        assert_eq!(of("/c/cloths.toml"), Path::new("/c/.revisions/cloths"));
        assert_eq!(
            of("/c/orders/spring.toml"),
            Path::new("/c/orders/.revisions/spring")
        );
        assert_eq!(
            within(Path::new("/c"), Path::new("/c/a b/é.toml")).as_deref(),
            Some("a b/é.toml")
        );
        assert_eq!(within(Path::new("/c"), Path::new("/d/x")), None);
    }
}
