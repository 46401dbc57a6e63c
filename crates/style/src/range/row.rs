//! A row of the table of what quantities usually are and can be.

use super::amount::Amount;

/// A row of the table: the quantities it is about and the values they take.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// The quantities, as paths in their files; `*` stands for a name, `[]` for a place in a list.
    pub paths: &'static [&'static str],
    /// What is usual, both ends included.
    pub usual: [Amount; 2],
    /// What is possible, both ends included.
    pub possible: [Amount; 2],
    /// Where the usual values come from.
    pub reason: &'static str,
}

impl Range {
    /// Whether a value is one that is usual.
    #[must_use]
    pub fn is_usual(&self, value: Amount) -> bool {
        value.lies_between(self.usual)
    }

    /// Whether a value is one that can be.
    #[must_use]
    pub fn is_possible(&self, value: Amount) -> bool {
        value.lies_between(self.possible)
    }
}
