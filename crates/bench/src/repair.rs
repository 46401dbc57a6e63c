//! The last sound versions of what cannot be read.

use style::{KeptFile, Sound};

use crate::state::Bench;

/// Whether there is something to go back to for the style in this folder.
pub(crate) fn is_offered(bench: &Bench, name: &str) -> bool {
    !broken_shared(bench).is_empty() || sound(bench, name).is_some()
}

/// The files that all styles share and that cannot be read, each with the number of the last version that can be.
pub(crate) fn broken_shared(bench: &Bench) -> Vec<(KeptFile, u32)> {
    let files = style::SHARED_FILES.map(|name| bench.folder().join(name));
    let kept = files.iter().filter_map(|file| KeptFile::at(file));
    kept.filter_map(|kept| {
        let (version, _) = kept.last_sound()?;
        Some((kept, version.number))
    })
    .collect()
}

/// What can be gone back to, by the name of the style's folder.
pub(crate) fn sound(bench: &Bench, name: &str) -> Option<Sound> {
    let styles = bench.styles().ok()?;
    let (_, file) = styles.into_iter().find(|(known, _)| known == name)?;
    style::last_sound(&file)
}
