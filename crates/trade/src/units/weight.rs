//! Masses, and the weight of cloth by its area.

use std::fmt;

use super::kind::{G_PER_OUNCE, M2_PER_YD2, Quantity, System};
use super::number::{plainest, trimmed};
use super::quantity::quantity;

/// The weight of a cloth, inside in grams per square metre.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct ArealWeight(f64);

quantity!(ArealWeight, Quantity::ArealWeight);

impl ArealWeight {
    /// Grams per square metre.
    pub const fn gsm(gsm: f64) -> Self {
        Self(gsm)
    }

    /// Ounces per square yard: 1 oz/yd2 is 28.349523 g over 0.836127 m2, about 33.906 g/m2.
    pub const fn oz_per_yd2(oz: f64) -> Self {
        Self(oz * (G_PER_OUNCE / M2_PER_YD2))
    }

    /// The weight in grams per square metre.
    pub const fn to_gsm(self) -> f64 {
        self.0
    }

    /// The weight in ounces per square yard.
    pub const fn to_oz_per_yd2(self) -> f64 {
        self.0 / (G_PER_OUNCE / M2_PER_YD2)
    }

    /// The weight as a person reads it: "475 g/m2" or "14 oz/yd2".
    pub fn show(self, system: System) -> String {
        match system {
            System::Metric => format!("{} g/m2", trimmed(self.to_gsm(), 0, 0)),
            System::Inch => format!("{} oz/yd2", trimmed(self.to_oz_per_yd2(), 0, 2)),
        }
    }
}

/// Prints in whichever unit is exact at four decimals, else in grams per square metre.
impl fmt::Display for ArealWeight {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let gsm = (self.to_gsm(), "", " g/m2");
        f.write_str(&plainest(&[
            gsm,
            (self.to_oz_per_yd2(), "", " oz/yd2"),
            gsm,
        ]))
    }
}

/// A mass, inside in grams.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct Mass(f64);

quantity!(Mass, Quantity::Mass);

impl Mass {
    /// Grams.
    pub const fn g(g: f64) -> Self {
        Self(g)
    }

    /// Kilograms.
    pub const fn kg(kg: f64) -> Self {
        Self(kg * 1000.0)
    }

    /// Avoirdupois ounces.
    pub const fn oz(oz: f64) -> Self {
        Self(oz * G_PER_OUNCE)
    }

    /// The mass in grams.
    pub const fn to_g(self) -> f64 {
        self.0
    }

    /// The mass in kilograms.
    pub const fn to_kg(self) -> f64 {
        self.0 / 1000.0
    }

    /// The mass in avoirdupois ounces.
    pub const fn to_oz(self) -> f64 {
        self.0 / G_PER_OUNCE
    }

    /// The mass as a person reads it: "650 g" or "22.93 oz".
    pub fn show(self, system: System) -> String {
        match system {
            System::Metric => format!("{} g", trimmed(self.to_g(), 0, 1)),
            System::Inch => format!("{} oz", trimmed(self.to_oz(), 0, 2)),
        }
    }
}

/// Prints in grams, or in ounces where only they are exact at four decimals.
impl fmt::Display for Mass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let g = (self.to_g(), "", " g");
        f.write_str(&plainest(&[g, (self.to_oz(), "", " oz"), g]))
    }
}
