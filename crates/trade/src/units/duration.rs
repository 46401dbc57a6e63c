//! How long work takes.

use std::fmt;

use super::kind::{Quantity, System};
use super::number::trimmed;
use super::quantity::quantity;

/// How long something takes, inside in minutes.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct Duration(f64);

quantity!(Duration, Quantity::Duration);

impl Duration {
    /// Minutes.
    pub const fn minutes(minutes: f64) -> Self {
        Self(minutes)
    }

    /// The time in minutes.
    pub const fn to_minutes(self) -> f64 {
        self.0
    }

    /// The time as a person reads it: "20 min", to a tenth of a minute.
    pub fn show(self, _system: System) -> String {
        format!("{} min", trimmed(self.to_minutes(), 0, 1))
    }
}

/// Prints to a millionth of a minute.
impl fmt::Display for Duration {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} min", trimmed(self.to_minutes(), 0, 6))
    }
}
