//! The two type families of the pack, carried in the program.
//!
//! Libertinus Serif (SIL Open Font License 1.1) sets everything. DejaVu Sans Mono (Bitstream Vera and
//! DejaVu licence) only lends a sign that Libertinus lacks. Both come from the crate `typst-assets`,
//! whose NOTICE file has the licence texts. A sign in neither prints as an empty box.

use std::sync::OnceLock;

use typst::foundations::Bytes;
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;

const FAMILIES: [&str; 2] = ["Libertinus Serif", "DejaVu Sans Mono"];

/// The fonts and the book they are chosen from.
pub(crate) struct Fonts {
    /// What each font is called and covers.
    pub(crate) book: LazyHash<FontBook>,
    /// The fonts, in the order of the book.
    pub(crate) fonts: Vec<Font>,
}

/// The fonts, read once.
pub(crate) fn fonts() -> &'static Fonts {
    static FONTS: OnceLock<Fonts> = OnceLock::new();
    FONTS.get_or_init(|| {
        let fonts: Vec<Font> = typst_assets::fonts()
            .flat_map(|data| Font::iter(Bytes::new(data)))
            .filter(|font| FAMILIES.contains(&font.info().family.as_str()))
            .collect();
        Fonts {
            book: LazyHash::new(FontBook::from_fonts(&fonts)),
            fonts,
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_families_are_carried() {
        for family in FAMILIES {
            assert!(
                fonts().book.contains_family(&family.to_lowercase()),
                "{family}"
            );
        }
    }
}
