//! Angles.

use std::fmt;

use super::kind::{Quantity, System};
use super::number::trimmed;
use super::quantity::quantity;

/// An angle, inside in radians.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct Angle(f64);

quantity!(Angle, Quantity::Angle);

impl Angle {
    /// Radians.
    pub const fn rad(rad: f64) -> Self {
        Self(rad)
    }

    /// Degrees.
    pub const fn deg(deg: f64) -> Self {
        Self(deg.to_radians())
    }

    /// The angle in radians.
    pub const fn to_rad(self) -> f64 {
        self.0
    }

    /// The angle in degrees.
    pub const fn to_deg(self) -> f64 {
        self.0.to_degrees()
    }

    /// The angle as a person reads it: "13 deg", to a tenth of a degree in either system.
    pub fn show(self, _system: System) -> String {
        format!("{} deg", trimmed(self.to_deg(), 0, 1))
    }
}

/// Prints to a millionth of a degree.
impl fmt::Display for Angle {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} deg", trimmed(self.to_deg(), 0, 6))
    }
}
