//! Shares of a whole.

use std::fmt;
use std::ops::Mul;

use super::kind::{Quantity, System};
use super::length::Length;
use super::number::trimmed;
use super::quantity::quantity;

/// A share of a whole, inside as a ratio: 8 % is 0.08.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct Share(f64);

quantity!(Share, Quantity::Share);

impl Share {
    /// A ratio: 1 is the whole.
    pub const fn ratio(ratio: f64) -> Self {
        Self(ratio)
    }

    /// Percent: 100 is the whole.
    pub const fn percent(percent: f64) -> Self {
        Self(percent / 100.0)
    }

    /// The share as a ratio.
    pub const fn to_ratio(self) -> f64 {
        self.0
    }

    /// The share in percent.
    pub const fn to_percent(self) -> f64 {
        self.0 * 100.0
    }

    /// The share as a person reads it: "8 %", to a tenth of a percent in either system.
    pub fn show(self, _system: System) -> String {
        format!("{} %", trimmed(self.to_percent(), 0, 1))
    }
}

/// Prints to a millionth of a percent.
impl fmt::Display for Share {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} %", trimmed(self.to_percent(), 0, 6))
    }
}

/// A share of a length.
impl Mul<Share> for Length {
    type Output = Self;
    fn mul(self, share: Share) -> Self {
        self * share.0
    }
}
