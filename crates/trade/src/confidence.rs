//! How far a table row can be trusted.

use std::fmt;

/// Where a value of the trade comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Confidence {
    /// Found in the named source.
    Published(&'static str),
    /// Worked out here, from what is named.
    Derived(&'static str),
    /// What the trade usually does; makers differ.
    CommonPractice,
    /// Remembered, not found in a source: a starting value to be confirmed.
    FromMemory,
}

impl Confidence {
    /// Whether a published source stands behind the value.
    pub const fn is_published(self) -> bool {
        matches!(self, Self::Published(_))
    }
}

/// The words printed beside a value.
impl fmt::Display for Confidence {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Published(source) => f.write_str(source),
            Self::Derived(basis) => write!(f, "derived from {basis}"),
            Self::CommonPractice => f.write_str("common practice"),
            Self::FromMemory => f.write_str("from memory, to be confirmed"),
        }
    }
}
