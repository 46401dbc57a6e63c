//! Buttons and rivets.

use crate::{Confidence, Length};

/// A button size of the trade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ButtonSize {
    /// The size in lignes.
    pub ligne: u8,
    /// What it is usually chosen for on jeans; empty when nothing in particular.
    pub usual_use: &'static str,
    /// Where the usual use comes from; the diameter follows from the ligne alone.
    pub use_confidence: Confidence,
}

impl ButtonSize {
    /// The diameter: 0.635 mm to the ligne (workroombuttons.com, "International standard").
    pub fn diameter(&self) -> Length {
        Length::ligne(f64::from(self.ligne))
    }
}

const fn button(ligne: u8, usual_use: &'static str) -> ButtonSize {
    ButtonSize {
        ligne,
        usual_use,
        use_confidence: Confidence::FromMemory,
    }
}

/// Button sizes in use, smallest first.
pub const BUTTON_SIZES: [ButtonSize; 10] = [
    button(16, ""),
    button(18, ""),
    button(20, ""),
    button(22, "fly"),
    button(24, "fly"),
    button(27, "waistband"),
    button(28, ""),
    button(30, ""),
    button(32, ""),
    button(40, ""),
];

/// A rivet size of the trade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RivetSize {
    /// The diameter of the cap in lignes.
    pub ligne: u8,
    /// Where the choice of size comes from.
    pub confidence: Confidence,
}

impl RivetSize {
    /// The diameter of the cap.
    pub fn cap(&self) -> Length {
        Length::ligne(f64::from(self.ligne))
    }
}

/// Rivet sizes usual on jeans.
pub const RIVET_SIZES: [RivetSize; 2] = [
    RivetSize {
        ligne: 14,
        confidence: Confidence::FromMemory,
    },
    RivetSize {
        ligne: 15,
        confidence: Confidence::FromMemory,
    },
];

/// The least and the largest cap usual on jeans: 8.5 to 9.5 mm. From memory.
pub const RIVET_CAPS: (Length, Length) = (Length::mm(8.5), Length::mm(9.5));

/// How long to cut a buttonhole: 1/8 inch over the button's diameter
/// (masterclasses.historical-tailoring.com, selvedge jeans).
pub fn buttonhole_length(button: Length) -> Length {
    button + Length::inches(0.125)
}

/// The button size nearest to a diameter, when it is within a quarter of a millimetre.
pub fn button_of_diameter(diameter: Length) -> Option<&'static ButtonSize> {
    const NEAR: Length = Length::mm(0.25);
    BUTTON_SIZES
        .iter()
        .find(|size| (size.diameter() - diameter).abs() <= NEAR)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn near(found: f64, wanted: f64, within: f64) {
        assert!(
            (found - wanted).abs() <= within,
            "{found} is not {wanted} ± {within}"
        );
    }

    /// Computed at 1/40 inch; the roundings of workroombuttons.com, "International standard", and
    /// lustrim.com, "Button engineering", agree.
    #[test]
    fn lignes_are_fortieths_of_an_inch() {
        let wanted = [
            10.16, 11.43, 12.70, 13.97, 15.24, 17.15, 17.78, 19.05, 20.32, 25.40,
        ];
        for (size, mm) in BUTTON_SIZES.iter().zip(wanted) {
            near(size.diameter().to_mm(), mm, 0.0051);
        }
    }

    /// 14 and 15 lignes worked by hand: 8.89 and 9.525 mm.
    #[test]
    fn rivet_caps_are_in_the_usual_range() {
        for (size, mm) in RIVET_SIZES.iter().zip([8.9, 9.5]) {
            near(size.cap().to_mm(), mm, 0.051);
        }
    }

    #[test]
    fn a_diameter_finds_its_size() {
        assert_eq!(button_of_diameter(Length::mm(17.1)).unwrap().ligne, 27);
        assert_eq!(button_of_diameter(Length::mm(14.0)).unwrap().ligne, 22);
        assert_eq!(button_of_diameter(Length::mm(50.0)), None);
        assert_eq!(button_of_diameter(Length::mm(f64::NAN)), None);
        near(buttonhole_length(Length::ligne(27.0)).to_mm(), 20.32, 1e-9);
    }
}
