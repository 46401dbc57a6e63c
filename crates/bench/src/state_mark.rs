//! What tells one state of a style and its collection from another.

use style::Loaded;

use crate::fingerprint::mark;

/// What tells a style and what it shares with others of its collection from any other state of them.
pub(crate) fn of(loaded: &Loaded) -> String {
    mark(&format!("{} {:?}", loaded.revision, loaded.collection))
}
