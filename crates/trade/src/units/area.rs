//! Areas.

use std::fmt;
use std::ops::{Div, Mul};

use super::kind::{MM_PER_INCH, MM_PER_YARD, Quantity, System};
use super::length::Length;
use super::number::trimmed;
use super::quantity::quantity;
use super::weight::{ArealWeight, Mass};

/// An area, inside in square millimetres.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct Area(f64);

quantity!(Area, Quantity::Area);

impl Area {
    /// Square millimetres.
    pub const fn mm2(mm2: f64) -> Self {
        Self(mm2)
    }

    /// Square centimetres.
    pub const fn cm2(cm2: f64) -> Self {
        Self(cm2 * 100.0)
    }

    /// Square metres.
    pub const fn m2(m2: f64) -> Self {
        Self(m2 * 1.0e6)
    }

    /// The area in square millimetres.
    pub const fn to_mm2(self) -> f64 {
        self.0
    }

    /// The area in square centimetres.
    pub const fn to_cm2(self) -> f64 {
        self.0 / 100.0
    }

    /// The area in square metres.
    pub const fn to_m2(self) -> f64 {
        self.0 / 1.0e6
    }

    /// The area in square inches.
    pub const fn to_inches2(self) -> f64 {
        self.0 / (MM_PER_INCH * MM_PER_INCH)
    }

    /// The area in square yards.
    pub const fn to_yards2(self) -> f64 {
        self.0 / (MM_PER_YARD * MM_PER_YARD)
    }

    /// The area as a person reads it: "45 cm2" or "1.25 m2", "7 in2" or "1.5 yd2".
    pub fn show(self, system: System) -> String {
        let (large, small) = match system {
            System::Metric => ((self.to_m2(), "m2"), (self.to_cm2(), "cm2")),
            System::Inch => ((self.to_yards2(), "yd2"), (self.to_inches2(), "in2")),
        };
        if large.0.abs() >= 1.0 {
            format!("{} {}", trimmed(large.0, 0, 2), large.1)
        } else {
            format!("{} {}", trimmed(small.0, 0, 1), small.1)
        }
    }
}

/// Prints in square centimetres, to a millionth.
impl fmt::Display for Area {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} cm2", trimmed(self.to_cm2(), 0, 6))
    }
}

/// An area of cloth of a given weight has a mass.
impl Mul<ArealWeight> for Area {
    type Output = Mass;
    fn mul(self, weight: ArealWeight) -> Mass {
        Mass::g(self.to_m2() * weight.to_gsm())
    }
}

/// The length of a strip of this area and the given width.
impl Div<Length> for Area {
    type Output = Length;
    fn div(self, width: Length) -> Length {
        Length::mm(self.0 / width.to_mm())
    }
}
