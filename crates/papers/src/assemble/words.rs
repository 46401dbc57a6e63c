//! Quantities as the pack prints them, in the collection's units.

use style::{Collection, Units};
use trade::{Area, ArealWeight, Colour, Length, StitchDensity, System};
use words::{Key, key};

use crate::Swatch;

/// What a length worked out may be out by. Half a step is rounded up whichever way it is out, as on the drawings.
const WORKED_OUT: Length = Length::mm(1e-6);

/// How quantities are printed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Words {
    pub system: System,
}

impl Words {
    /// In the units the collection shows.
    pub fn of(collection: &Collection) -> Self {
        Self {
            system: match collection.units {
                Units::Centimetres => System::Metric,
                Units::Inches => System::Inch,
            },
        }
    }

    /// The unit of the chart, in a word.
    pub const fn unit(self) -> Key {
        match self.system {
            System::Metric => key::PAPERS_UNIT_CM,
            System::Inch => key::PAPERS_UNIT_IN,
        }
    }

    /// How the chart rounds, in words.
    pub const fn rounding(self) -> Key {
        match self.system {
            System::Metric => key::PAPERS_ROUNDING_CM,
            System::Inch => key::PAPERS_ROUNDING_IN,
        }
    }

    /// A finished measure without its unit: "85.1", or "33 1/2".
    pub fn figure(self, length: Length) -> String {
        match self.system {
            System::Metric => {
                let tenths = (length + WORKED_OUT).to_mm().round();
                format!("{:.1}", tenths / 10.0 + 0.0)
            }
            System::Inch => bare(length.show(self.system)),
        }
    }

    /// The same with its unit, as on the drawings: "29.8 cm", or "11 3/4 in".
    pub fn with_unit(self, length: Length) -> String {
        match self.system {
            System::Metric => format!("{} cm", self.figure(length)),
            System::Inch => length.show(self.system),
        }
    }

    /// A tolerance without its unit, not rounded away: "0.65", or "1/4".
    pub fn tolerance(self, length: Length) -> String {
        bare(length.show(self.system))
    }

    /// A length of a few centimetres or more, with its unit: "8 cm" or "3 1/8 in".
    pub fn length(self, length: Length) -> String {
        let shown = length.show(self.system);
        match shown.strip_suffix(".0 cm") {
            Some(whole) => format!("{whole} cm"),
            None => shown,
        }
    }

    /// An area: "812 cm²" or "126 in²".
    pub fn area(self, area: Area) -> String {
        match self.system {
            System::Metric if area.to_m2() >= 0.1 => format!("{:.3} m²", area.to_m2()),
            System::Metric => format!("{:.0} cm²", area.to_cm2()),
            System::Inch if area.to_yards2() >= 0.1 => format!("{:.3} yd²", area.to_yards2()),
            System::Inch => format!("{:.0} in²", area.to_inches2()),
        }
    }

    /// The area of one piece, always in the small unit so that pieces compare.
    pub fn piece_area(self, area: Area) -> String {
        match self.system {
            System::Metric => format!("{:.0} cm²", area.to_cm2()),
            System::Inch => format!("{:.1} in²", area.to_inches2()),
        }
    }

    /// A weight of cloth: "475 g/m²" or "14 oz/yd²".
    pub fn weight(self, weight: ArealWeight) -> String {
        let shown = weight.show(self.system);
        shown
            .strip_suffix('2')
            .map_or(shown.clone(), |unit| format!("{unit}²"))
    }

    /// Stitches to a length, in the collection's unit and in the other: "3.15 /cm", "8 /in".
    pub fn densities(self, density: StitchDensity) -> [String; 2] {
        let other = match self.system {
            System::Metric => System::Inch,
            System::Inch => System::Metric,
        };
        [density.show(self.system), density.show(other)]
    }

    /// A length of seam: "3.25 m" or "3.55 yd".
    pub fn sewn(self, length: Length) -> String {
        match self.system {
            System::Metric => format!("{:.2} m", length.to_m()),
            System::Inch => format!("{:.2} yd", length.to_yards()),
        }
    }

    /// A length of cloth: "1.42 m" or "1.55 yd".
    pub fn cloth(self, length: Length) -> String {
        self.sewn(length)
    }

    /// A length of yarn by the cone: "2500 m" or "2734 yd".
    pub fn much_yarn(self, length: Length) -> String {
        match self.system {
            System::Metric => format!("{:.0} m", length.to_m()),
            System::Inch => format!("{:.0} yd", length.to_yards()),
        }
    }

    /// To what a length of yarn is printed.
    pub const fn yarn_step(self) -> Length {
        match self.system {
            System::Metric => Length::mm(100.0),
            System::Inch => Length::inches(3.6),
        }
    }

    /// A length of yarn: "12.4 m" or "13.6 yd".
    pub fn yarn(self, length: Length) -> String {
        match self.system {
            System::Metric => format!("{:.1} m", length.to_m()),
            System::Inch => format!("{:.1} yd", length.to_yards()),
        }
    }
}

fn bare(shown: String) -> String {
    let cut = shown.strip_suffix(" cm").or(shown.strip_suffix(" in"));
    cut.map_or_else(|| shown.clone(), str::to_owned)
}

/// A colour as a swatch.
pub(super) fn swatch(colour: Colour) -> Option<Swatch> {
    Swatch::from_hex(&colour.to_string())
}

/// The text with its first letter large.
pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// The parts that say something, joined.
pub(crate) fn joined<'a>(parts: impl IntoIterator<Item = &'a str>, by: &str) -> String {
    let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    parts.join(by)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_rounded_once_and_tolerances_are_kept() {
        let cm = Words {
            system: System::Metric,
        };
        let inch = Words {
            system: System::Inch,
        };
        // Half a millimetre is rounded up, as on the drawings: a loop of 1.25 cm is one of 1.3.
        assert_eq!(cm.figure(Length::mm(12.5)), "1.3");
        assert_eq!(cm.figure(Length::mm(12.0) / 0.96), "1.3");
        // 33 1/2 in is 85.09 cm (exactly 25.4 mm to the inch).
        assert_eq!(cm.figure(Length::inches(33.5)), "85.1");
        assert_eq!(inch.figure(Length::inches(33.5)), "33 1/2");
        assert_eq!(cm.tolerance(Length::cm(0.65)), "0.65");
        assert_eq!(cm.length(Length::cm(8.0)), "8 cm");
        assert_eq!(Length::mm(12.70).show_mm(), "12.7 mm");
        assert_eq!(Length::mm(8.0).show_mm(), "8 mm");
    }
}
