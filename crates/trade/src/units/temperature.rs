//! Temperatures of a wash.

use std::fmt;

use super::kind::{Quantity, System};
use super::number::trimmed;
use super::quantity::quantity;

/// A temperature, inside in degrees Celsius.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct Temperature(f64);

quantity!(Temperature, Quantity::Temperature);

impl Temperature {
    /// Degrees Celsius.
    pub const fn celsius(celsius: f64) -> Self {
        Self(celsius)
    }

    /// The temperature in degrees Celsius.
    pub const fn to_celsius(self) -> f64 {
        self.0
    }

    /// The temperature as a person reads it: "40 °C" in either system, as wash recipes are written.
    pub fn show(self, _system: System) -> String {
        format!("{} °C", trimmed(self.to_celsius(), 0, 1))
    }
}

/// Prints to a millionth of a degree.
impl fmt::Display for Temperature {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} °C", trimmed(self.to_celsius(), 0, 6))
    }
}
