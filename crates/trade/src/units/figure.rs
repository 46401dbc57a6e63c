//! Quantities as figures of a message: so many decimals, in a unit.

use words::Figure;

use super::number::trimmed;
use super::{Angle, Length, Share, StitchDensity};

impl Length {
    /// In millimetres, with so many decimals.
    #[must_use]
    pub const fn in_mm(self, places: u8) -> Figure {
        Figure::new(self.to_mm(), places, "mm")
    }

    /// In millimetres, with so many decimals, where the unit is said once for several.
    #[must_use]
    pub const fn bare_mm(self, places: u8) -> Figure {
        Figure::new(self.to_mm(), places, "")
    }

    /// In centimetres, with so many decimals.
    #[must_use]
    pub const fn in_cm(self, places: u8) -> Figure {
        Figure::new(self.to_cm(), places, "cm")
    }

    /// In metres, with so many decimals.
    #[must_use]
    pub const fn in_m(self, places: u8) -> Figure {
        Figure::new(self.to_m(), places, "m")
    }

    /// In inches, with so many decimals.
    #[must_use]
    pub const fn in_inches(self, places: u8) -> Figure {
        Figure::new(self.to_inches(), places, "in")
    }

    /// In centimetres, to a tenth, or to a hundredth where there is one.
    #[must_use]
    pub fn figure(self) -> Figure {
        of_text(&trimmed(self.to_cm(), 1, 2), "cm")
    }
}

impl Angle {
    /// In degrees, with so many decimals.
    #[must_use]
    pub const fn in_deg(self, places: u8) -> Figure {
        Figure::new(self.to_deg(), places, "°")
    }
}

impl Share {
    /// In percent, with so many decimals.
    #[must_use]
    pub const fn in_percent(self, places: u8) -> Figure {
        Figure::new(self.to_percent(), places, "%")
    }

    /// In percent, to a tenth where there is one.
    #[must_use]
    pub fn figure(self) -> Figure {
        of_text(&trimmed(self.to_percent(), 0, 1), "%")
    }

    /// As a ratio, with so many decimals.
    #[must_use]
    pub const fn as_ratio(self, places: u8) -> Figure {
        Figure::new(self.to_ratio(), places, "")
    }
}

impl StitchDensity {
    /// In stitches to the inch, to a tenth where there is one.
    #[must_use]
    pub fn figure_per_inch(self) -> Figure {
        of_text(&trimmed(self.to_per_inch(), 0, 1), "/in")
    }
}

/// A number as it was printed, with the decimals it has there.
fn of_text(text: &str, unit: &'static str) -> Figure {
    let places = text.split_once('.').map_or(0, |(_, after)| after.len());
    let value = text.parse().unwrap_or(f64::NAN);
    Figure::new(value, u8::try_from(places).unwrap_or(u8::MAX), unit)
}

#[cfg(test)]
mod tests {
    use crate::{Angle, Length, Share, StitchDensity, System};

    #[test]
    fn a_figure_reads_as_the_quantity_is_shown() {
        for mm in [
            0.0,
            -0.0001,
            265.0,
            266.7,
            0.04,
            -31.25,
            f64::NAN,
            f64::INFINITY,
        ] {
            let length = Length::mm(mm);
            assert_eq!(length.figure().to_string(), length.show(System::Metric));
        }
        for percent in [0.0, 8.0, 3.46, -0.01, -2.5] {
            let share = Share::percent(percent);
            assert_eq!(share.figure().to_string(), share.show(System::Metric));
        }
        let density = StitchDensity::per_inch(7.5);
        assert_eq!(
            density.figure_per_inch().to_string(),
            density.show(System::Inch)
        );
        assert_eq!(Length::mm(3.0).in_mm(1).to_string(), "3.0 mm");
        assert_eq!(Length::mm(31.0).in_cm(2).to_string(), "3.10 cm");
        assert_eq!(Length::inches(30.0).in_inches(1).to_string(), "30.0 in");
        assert_eq!(Angle::deg(12.25).in_deg(1).to_string(), "12.2°");
        assert_eq!(Share::ratio(0.57).in_percent(0).to_string(), "57 %");
        assert_eq!(Share::ratio(0.0712).as_ratio(3).to_string(), "0.071");
    }
}
