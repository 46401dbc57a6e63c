//! How far apart two colours look.
//!
//! The difference is CIEDE2000 with all weights 1 (CIE 142-2001; G. Sharma, W. Wu and E. N. Dalal,
//! "The CIEDE2000 color-difference formula: implementation notes, supplementary test data, and
//! mathematical observations", Color Research and Application 30 (2005) 21 to 30), taken between
//! CIELAB values for daylight D65. Colours are what the maker entered from a screen or a sample
//! card, so the number compares entered colours: yarn and cloth are judged by eye, in daylight.

use std::fmt;

use palette::color_difference::Ciede2000;
use palette::white_point::D65;
use palette::{FromColor, Lab, Srgb};
use words::{Key, key};

use crate::Colour;

/// A colour difference: 0 for the same colour, 100 from black to white; it has no unit.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct ColourDifference(f64);

/// How a yarn reads on a cloth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Contrast {
    /// Less than [`TOLD_APART`].
    NotToldApart,
    /// Less than [`CLEAR`].
    Tonal,
    /// Less than [`STRONG`].
    Clear,
    /// From [`STRONG`] on.
    Strong,
}

/// From here two colours are told apart beside each other. All three limits are our own choice,
/// made by looking at yarns on denim; the formula itself is meant for small differences.
pub const TOLD_APART: ColourDifference = ColourDifference(2.0);
/// From here a row is seen as having a colour of its own. Our own choice.
pub const CLEAR: ColourDifference = ColourDifference(12.0);
/// From here a row is seen across a room. Our own choice.
pub const STRONG: ColourDifference = ColourDifference(30.0);

impl ColourDifference {
    /// The number, called ΔE00 in print.
    pub const fn to_delta_e(self) -> f64 {
        self.0
    }

    /// How a yarn with this difference from its cloth reads.
    pub fn contrast(self) -> Contrast {
        if self >= STRONG {
            Contrast::Strong
        } else if self >= CLEAR {
            Contrast::Clear
        } else if self >= TOLD_APART {
            Contrast::Tonal
        } else {
            Contrast::NotToldApart
        }
    }
}

/// As printed: "41.5".
impl fmt::Display for ColourDifference {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:.1}", self.0)
    }
}

impl Contrast {
    /// All, from none upwards.
    pub const ALL: [Self; 4] = [Self::NotToldApart, Self::Tonal, Self::Clear, Self::Strong];

    /// What it is called.
    pub const fn key(self) -> Key {
        match self {
            Self::NotToldApart => key::CONTRAST_NOT_TOLD_APART,
            Self::Tonal => key::CONTRAST_TONAL,
            Self::Clear => key::CONTRAST_CLEAR,
            Self::Strong => key::CONTRAST_STRONG,
        }
    }
}

/// The difference of two colours by CIEDE2000, the same whichever comes first.
pub fn ciede2000(one: Colour, other: Colour) -> ColourDifference {
    ColourDifference(lab(one).difference(lab(other)))
}

fn lab(colour: Colour) -> Lab<D65, f64> {
    let eight = Srgb::new(colour.red, colour.green, colour.blue);
    Lab::from_color(eight.into_format::<f64>())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// L*, a*, b* of both colours and their difference: table 1 of Sharma, Wu and Dalal 2005, all 34
    /// pairs, as carried in the tests of two public repositories that agree with each other (a
    /// colour profile library's check of its own formula and a table checked against the first
    /// author's file).
    const SHARMA: [[f64; 7]; 34] = [
        [50.0000, 2.6772, -79.7751, 50.0000, 0.0000, -82.7485, 2.0425],
        [50.0000, 3.1571, -77.2803, 50.0000, 0.0000, -82.7485, 2.8615],
        [50.0000, 2.8361, -74.0200, 50.0000, 0.0000, -82.7485, 3.4412],
        [
            50.0000, -1.3802, -84.2814, 50.0000, 0.0000, -82.7485, 1.0000,
        ],
        [
            50.0000, -1.1848, -84.8006, 50.0000, 0.0000, -82.7485, 1.0000,
        ],
        [
            50.0000, -0.9009, -85.5211, 50.0000, 0.0000, -82.7485, 1.0000,
        ],
        [50.0000, 0.0000, 0.0000, 50.0000, -1.0000, 2.0000, 2.3669],
        [50.0000, -1.0000, 2.0000, 50.0000, 0.0000, 0.0000, 2.3669],
        [50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0009, 7.1792],
        [50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0010, 7.1792],
        [50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0011, 7.2195],
        [50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0012, 7.2195],
        [50.0000, -0.0010, 2.4900, 50.0000, 0.0009, -2.4900, 4.8045],
        [50.0000, -0.0010, 2.4900, 50.0000, 0.0010, -2.4900, 4.8045],
        [50.0000, -0.0010, 2.4900, 50.0000, 0.0011, -2.4900, 4.7461],
        [50.0000, 2.5000, 0.0000, 50.0000, 0.0000, -2.5000, 4.3065],
        [50.0000, 2.5000, 0.0000, 73.0000, 25.0000, -18.0000, 27.1492],
        [50.0000, 2.5000, 0.0000, 61.0000, -5.0000, 29.0000, 22.8977],
        [50.0000, 2.5000, 0.0000, 56.0000, -27.0000, -3.0000, 31.9030],
        [50.0000, 2.5000, 0.0000, 58.0000, 24.0000, 15.0000, 19.4535],
        [50.0000, 2.5000, 0.0000, 50.0000, 3.1736, 0.5854, 1.0000],
        [50.0000, 2.5000, 0.0000, 50.0000, 3.2972, 0.0000, 1.0000],
        [50.0000, 2.5000, 0.0000, 50.0000, 1.8634, 0.5757, 1.0000],
        [50.0000, 2.5000, 0.0000, 50.0000, 3.2592, 0.3350, 1.0000],
        [
            60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644,
        ],
        [
            63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.2630,
        ],
        [61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620, 1.8731],
        [35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645],
        [
            22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619, 2.0373,
        ],
        [36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146],
        [90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447, 1.4441],
        [90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381],
        [6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377],
        [2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082],
    ];

    #[test]
    fn the_published_pairs_come_out() {
        for [l1, a1, b1, l2, a2, b2, wanted] in SHARMA {
            let one = Lab::<D65, f64>::new(l1, a1, b1);
            let other = Lab::<D65, f64>::new(l2, a2, b2);
            for found in [one.difference(other), other.difference(one)] {
                assert!(
                    (found - wanted).abs() < 1e-4,
                    "{one:?} {other:?}: {found} is not {wanted}"
                );
            }
        }
    }

    /// CIELAB of the sRGB primaries for D65 to two decimals, as widely published, here from a public
    /// repository's table of measured values.
    #[test]
    fn entered_colours_become_lab_in_daylight() {
        for (colour, wanted) in [
            (Colour::rgb(255, 0, 0), [53.24, 80.09, 67.20]),
            (Colour::rgb(0, 255, 0), [87.73, -86.18, 83.18]),
            (Colour::rgb(0, 0, 255), [32.30, 79.19, -107.86]),
            (Colour::rgb(255, 255, 0), [97.14, -21.55, 94.48]),
        ] {
            let found = lab(colour);
            for (found, wanted) in [found.l, found.a, found.b].into_iter().zip(wanted) {
                assert!((found - wanted).abs() < 0.02, "{colour}: {found} {wanted}");
            }
        }
    }

    /// From black to white only the lightness differs, by 100, and at a mean of 50 its weight is 1.
    #[test]
    fn black_and_white_are_a_hundred_apart() {
        let all = ciede2000(Colour::BLACK, Colour::WHITE).to_delta_e();
        assert!((all - 100.0).abs() < 1e-3, "{all}");
    }

    #[test]
    fn differences_are_said_in_words() {
        use Contrast::{Clear, NotToldApart, Strong, Tonal};
        let read =
            [0.0, 1.99, 2.0, 11.9, 12.0, 29.9, 30.0, 100.0].map(|d| ColourDifference(d).contrast());
        let wanted = [
            NotToldApart,
            NotToldApart,
            Tonal,
            Tonal,
            Clear,
            Clear,
            Strong,
            Strong,
        ];
        assert_eq!(read, wanted);
        let said = Contrast::ALL.map(|one| words::Words::english().named(one.key()));
        assert_eq!(
            said,
            ["not to be told apart", "tonal", "clear", "strong contrast"]
        );
    }

    proptest! {
        #[test]
        fn any_two_colours_have_a_difference(a: [u8; 3], b: [u8; 3]) {
            let colour = |[r, g, b]: [u8; 3]| Colour::rgb(r, g, b);
            let (a, b) = (colour(a), colour(b));
            let found = ciede2000(a, b).to_delta_e();
            prop_assert!((0.0..200.0).contains(&found));
            prop_assert!((found - ciede2000(b, a).to_delta_e()).abs() < 1e-9);
            prop_assert_eq!(ciede2000(a, a).to_delta_e(), 0.0);
            prop_assert!(a == b || found > 0.0);
        }
    }
}
