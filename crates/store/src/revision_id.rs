//! What a text hashes to.

use std::fmt;

use sha2::{Digest, Sha256};

/// What a text hashes to: the first 16 hex digits of its SHA-256.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RevisionId(String);

impl RevisionId {
    /// The id of a text.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let digest = Sha256::digest(text.as_bytes());
        Self(
            digest
                .iter()
                .take(8)
                .map(|byte| format!("{byte:02x}"))
                .collect(),
        )
    }

    /// The id as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for RevisionId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
    }
}
