//! A short mark of a text, by which a page and the bench know that they mean the same.

use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash, Hasher};

/// The mark of a part: another text has another one, but for a chance that never comes.
pub(crate) fn mark(html: &str) -> String {
    let mut hash = DefaultHasher::new();
    html.hash(&mut hash);
    format!("{:016x}", hash.finish())
}
