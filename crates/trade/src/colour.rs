//! Colours as style files write them.

use std::fmt;
use std::str::FromStr;

/// A colour in sRGB (IEC 61966-2-1), eight bits a channel, written "#rrggbb".
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Colour {
    /// Red, 0 to 255.
    pub red: u8,
    /// Green, 0 to 255.
    pub green: u8,
    /// Blue, 0 to 255.
    pub blue: u8,
}

/// Why a text is not a colour.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("\"{text}\" is not a colour: write a hash and six hex digits, such as \"#c8862b\"")]
pub struct ColourError {
    /// The text as written, cut when long.
    pub text: String,
}

impl Colour {
    /// Black.
    pub const BLACK: Self = Self::rgb(0, 0, 0);
    /// White.
    pub const WHITE: Self = Self::rgb(255, 255, 255);

    /// A colour from its three channels.
    pub const fn rgb(red: u8, green: u8, blue: u8) -> Self {
        Self { red, green, blue }
    }

    /// The colour moved towards `other`: 0 leaves it, 1 gives `other`, and the amount is held
    /// between them. Mixed channel by channel in sRGB.
    #[must_use]
    pub fn mixed(self, other: Self, amount: f64) -> Self {
        let amount = if amount.is_nan() {
            0.0
        } else {
            amount.clamp(0.0, 1.0)
        };
        let mix = |from: u8, to: u8| {
            let value = f64::from(from) + (f64::from(to) - f64::from(from)) * amount;
            // Between two channel values, so within 0 to 255.
            value.round() as u8
        };
        Self::rgb(
            mix(self.red, other.red),
            mix(self.green, other.green),
            mix(self.blue, other.blue),
        )
    }
}

impl fmt::Display for Colour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{:02x}{:02x}{:02x}", self.red, self.green, self.blue)
    }
}

impl FromStr for Colour {
    type Err = ColourError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let wrong = || ColourError {
            text: text.chars().take(60).collect(),
        };
        let digits = text.trim().strip_prefix('#').ok_or_else(wrong)?;
        if digits.len() != 6 || !digits.bytes().all(|b| b.is_ascii_hexdigit()) {
            return Err(wrong());
        }
        let value = u32::from_str_radix(digits, 16).map_err(|_| wrong())?;
        let [_, red, green, blue] = value.to_be_bytes();
        Ok(Self::rgb(red, green, blue))
    }
}

impl serde::Serialize for Colour {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for Colour {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = <std::borrow::Cow<'de, str>>::deserialize(from)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn reads_and_prints_hex() {
        let colour: Colour = "#C8862b".parse().unwrap();
        assert_eq!(colour, Colour::rgb(0xc8, 0x86, 0x2b));
        assert_eq!(colour.to_string(), "#c8862b");
        assert_eq!(serde_json::to_string(&colour).unwrap(), "\"#c8862b\"");
        assert_eq!(
            serde_json::from_str::<Colour>("\"#c8862b\"").unwrap(),
            colour
        );
    }

    #[test]
    fn refuses_what_is_not_hex() {
        for text in [
            "", "c8862b", "#c88", "#c8862", "#c8862bb", "#c8862é", "#+12345", "navy",
        ] {
            assert!(text.parse::<Colour>().is_err(), "{text}");
        }
    }

    #[test]
    fn mixing_stays_between_the_two() {
        assert_eq!(
            Colour::BLACK.mixed(Colour::WHITE, 0.5),
            Colour::rgb(128, 128, 128)
        );
        assert_eq!(Colour::BLACK.mixed(Colour::WHITE, 7.0), Colour::WHITE);
        assert_eq!(Colour::BLACK.mixed(Colour::WHITE, f64::NAN), Colour::BLACK);
    }
}
