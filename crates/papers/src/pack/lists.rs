//! The lists of the pack: changes, pieces, materials, findings and cautions.

use serde::{Serialize, Serializer};

use crate::{Ask, Drawing};

/// One difference from the revision before.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Change {
    /// What changed, such as "Thigh, all sizes".
    pub about: String,
    /// What it was. Empty for something new.
    pub before: String,
    /// What it is now. Empty for something taken away.
    pub after: String,
}

/// One piece to cut.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct PieceRow {
    /// Its number, such as "4".
    pub number: String,
    /// Its name, such as "Waistband".
    pub name: String,
    /// The cloth it is cut from, such as "shell".
    pub cloth: String,
    /// How many are cut for one garment, such as "2".
    pub count: String,
    /// How they relate, such as "mirrored pair". May be empty.
    pub pairing: String,
    /// The area of one, such as "812 cm²".
    pub area: String,
    /// What the cutter must know, such as "outseam on the finished edge". May be empty.
    pub notes: String,
    /// A small drawing of its shape. Made smaller to fit 24 mm by 12 mm, line weights and all, but never
    /// larger: drawn at that size it prints as drawn.
    pub thumbnail: Option<Drawing>,
}

/// Materials of one kind.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct MaterialGroup {
    /// The kind, such as "Sewing yarn".
    pub heading: String,
    /// The materials.
    pub rows: Vec<MaterialRow>,
}

/// One material.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct MaterialRow {
    /// Its name, such as "Keel shank button".
    pub name: String,
    /// What it is, such as "17.1 mm, brass, nickel-free".
    pub spec: String,
    /// Its colour, if it has one worth showing.
    pub colour: Option<Swatch>,
    /// Who sells it under which number, such as "Fenmill Weavers, article TL-475". May be empty.
    pub supply: String,
    /// What is open of it, printed below what it is.
    pub asks: Vec<Ask>,
    /// Where it goes, such as "waistband".
    pub used: String,
    /// How much of it, with its unit, such as "1.42 m". May be empty while it is not known.
    pub quantity: String,
}

/// How grave a finding is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// It cannot be made as it is.
    Error,
    /// It can be made but is likely to go wrong.
    Warning,
    /// Worth knowing.
    Note,
}

/// One thing the checks found.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FindingRow {
    /// How grave it is.
    pub severity: Severity,
    /// Its stable code.
    pub code: String,
    /// What it is about, such as "hem over inseam".
    pub about: String,
    /// Where on the garment, such as "Back, at the crotch". May be empty.
    pub place: String,
    /// What was found.
    pub message: String,
    /// What would settle it. May be empty.
    pub remedy: String,
    /// What the rule rests on, such as "common practice".
    pub basis: String,
    /// Whether the maker has left it so: then it stands in the annex only.
    pub muted: bool,
}

/// One thing to mind.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Caution {
    /// What it is about, such as "Nickel".
    pub heading: String,
    /// What is asked of the workroom.
    pub text: String,
    /// What is open of it, printed after that.
    pub asks: Vec<Ask>,
}

/// A colour to show beside a name, as red, green and blue of sRGB.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Swatch {
    red: u8,
    green: u8,
    blue: u8,
}

impl Swatch {
    /// Reads "#rrggbb". `None` for anything else.
    pub fn from_hex(text: &str) -> Option<Self> {
        let digits = text.strip_prefix('#')?;
        if digits.len() != 6 || !digits.bytes().all(|b| b.is_ascii_hexdigit()) {
            return None;
        }
        let [_, red, green, blue] = u32::from_str_radix(digits, 16).ok()?.to_be_bytes();
        Some(Self { red, green, blue })
    }
}

impl Serialize for Swatch {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&format_args!(
            "#{:02x}{:02x}{:02x}",
            self.red, self.green, self.blue
        ))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_six_hex_digits_are_a_colour() {
        assert_eq!(
            Swatch::from_hex("#C0813a"),
            Some(Swatch {
                red: 0xc0,
                green: 0x81,
                blue: 0x3a
            })
        );
        for wrong in [
            "", "#", "c0813a", "#c0813", "#c0813a0", "#c0813g", "#+c0813", "#éé00",
        ] {
            assert_eq!(Swatch::from_hex(wrong), None, "{wrong}");
        }
    }
}
