//! Lengths.

use std::fmt;
use std::ops::Mul;

use super::area::Area;
use super::kind::{MM_PER_INCH, MM_PER_LIGNE, MM_PER_YARD, Quantity, System};
use super::number::trimmed;
use super::quantity::quantity;

/// A length, inside in millimetres.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct Length(f64);

quantity!(Length, Quantity::Length);

impl Length {
    /// Millimetres.
    pub const fn mm(mm: f64) -> Self {
        Self(mm)
    }

    /// Centimetres.
    pub const fn cm(cm: f64) -> Self {
        Self(cm * 10.0)
    }

    /// Metres.
    pub const fn m(m: f64) -> Self {
        Self(m * 1000.0)
    }

    /// Inches of 25.4 mm.
    pub const fn inches(inches: f64) -> Self {
        Self(inches * MM_PER_INCH)
    }

    /// Yards of 36 inches.
    pub const fn yards(yards: f64) -> Self {
        Self(yards * MM_PER_YARD)
    }

    /// Lignes of the button trade, 40 to the inch.
    pub const fn ligne(ligne: f64) -> Self {
        Self(ligne * MM_PER_LIGNE)
    }

    /// The length in millimetres.
    pub const fn to_mm(self) -> f64 {
        self.0
    }

    /// The length in centimetres.
    pub const fn to_cm(self) -> f64 {
        self.0 / 10.0
    }

    /// The length in metres.
    pub const fn to_m(self) -> f64 {
        self.0 / 1000.0
    }

    /// The length in inches.
    pub const fn to_inches(self) -> f64 {
        self.0 / MM_PER_INCH
    }

    /// The length in yards.
    pub const fn to_yards(self) -> f64 {
        self.0 / MM_PER_YARD
    }

    /// The length in lignes.
    pub const fn to_ligne(self) -> f64 {
        self.0 / MM_PER_LIGNE
    }

    /// The length as a person reads it: "26.5 cm" or "26.67 cm"; "10 1/2 in" when a sixteenth of
    /// an inch is within 0.02 mm, otherwise "10.53 in".
    pub fn show(self, system: System) -> String {
        match system {
            System::Metric => format!("{} cm", trimmed(self.to_cm(), 1, 2)),
            System::Inch => self
                .as_sixteenths()
                .unwrap_or_else(|| format!("{} in", trimmed(self.to_inches(), 0, 2))),
        }
    }

    /// A short length in millimetres to a tenth, whole ones without a decimal: "1.6 mm", "8 mm".
    pub fn show_mm(self) -> String {
        format!("{} mm", trimmed(self.to_mm(), 0, 1))
    }

    /// A length of cloth as a person buys it: "152.34 m" or "166.6 yd".
    pub fn show_cloth(self, system: System) -> String {
        match system {
            System::Metric => format!("{} m", trimmed(self.to_m(), 2, 2)),
            System::Inch => format!("{} yd", trimmed(self.to_yards(), 2, 2)),
        }
    }

    /// The mixed fraction of inches, when the length is one.
    fn as_sixteenths(self) -> Option<String> {
        const NEAR_MM: f64 = 0.02;
        const MOST: f64 = 1.0e9;
        let sixteenths = (self.to_inches() * 16.0).round();
        let off = (sixteenths * MM_PER_INCH / 16.0 - self.0).abs();
        // The comparison is false for NaN, which then prints as decimals.
        if !(off <= NEAR_MM && sixteenths.abs() < MOST) {
            return None;
        }
        let sign = if sixteenths < 0.0 { "-" } else { "" };
        // Whole and within ±1e9 by the test above, so the conversion loses nothing.
        let count = sixteenths.abs() as u64;
        let (whole, mut above, mut below) = (count / 16, count % 16, 16);
        while above > 0 && above % 2 == 0 {
            above /= 2;
            below /= 2;
        }
        Some(match (whole, above) {
            (_, 0) => format!("{sign}{whole} in"),
            (0, _) => format!("{sign}{above}/{below} in"),
            _ => format!("{sign}{whole} {above}/{below} in"),
        })
    }
}

/// Prints to a ten-thousandth of a millimetre: "3.175 mm" below a centimetre, else "26.5 cm".
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.0.abs() < 10.0 {
            write!(f, "{} mm", trimmed(self.to_mm(), 0, 4))
        } else {
            write!(f, "{} cm", trimmed(self.to_cm(), 0, 5))
        }
    }
}

/// Length by width is an area.
impl Mul for Length {
    type Output = Area;
    fn mul(self, width: Self) -> Area {
        Area::mm2(self.0 * width.0)
    }
}
