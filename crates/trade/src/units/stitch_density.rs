//! Stitch density along a seam.

use std::fmt;
use std::ops::Mul;

use super::kind::{MM_PER_INCH, Quantity, System};
use super::length::Length;
use super::number::{plainest, trimmed};
use super::quantity::quantity;

/// Stitches along a seam, inside in stitches per centimetre.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct StitchDensity(f64);

quantity!(StitchDensity, Quantity::StitchDensity);

impl StitchDensity {
    /// Stitches per centimetre.
    pub const fn per_cm(per_cm: f64) -> Self {
        Self(per_cm)
    }

    /// Stitches per inch.
    pub const fn per_inch(per_inch: f64) -> Self {
        Self(per_inch * (10.0 / MM_PER_INCH))
    }

    /// The density in stitches per centimetre.
    pub const fn to_per_cm(self) -> f64 {
        self.0
    }

    /// The density in stitches per inch.
    pub const fn to_per_inch(self) -> f64 {
        self.0 * (MM_PER_INCH / 10.0)
    }

    /// The length of one stitch; infinite when the density is zero.
    pub const fn pitch(self) -> Length {
        Length::mm(10.0 / self.0)
    }

    /// The density as a person reads it: "3.1 /cm" or "8 /in".
    pub fn show(self, system: System) -> String {
        match system {
            System::Metric => format!("{} /cm", trimmed(self.to_per_cm(), 1, 2)),
            System::Inch => format!("{} /in", trimmed(self.to_per_inch(), 0, 1)),
        }
    }
}

/// Prints in whichever unit is exact at four decimals, else per centimetre.
impl fmt::Display for StitchDensity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let cm = (self.to_per_cm(), "", " /cm");
        f.write_str(&plainest(&[cm, (self.to_per_inch(), "", " /in"), cm]))
    }
}

/// The number of stitches in a length of seam.
impl Mul<Length> for StitchDensity {
    type Output = f64;
    fn mul(self, length: Length) -> f64 {
        self.0 * length.to_cm()
    }
}
