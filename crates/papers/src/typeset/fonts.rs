//! The three type families of the pack, carried in the program.
//!
//! Libertinus Serif (SIL Open Font License 1.1) sets everything. DejaVu Sans Mono (Bitstream Vera and
//! DejaVu licence) only lends a sign that Libertinus lacks. Both come from the crate `typst-assets`,
//! whose NOTICE file has the licence texts. Noto Sans JP (SIL Open Font License 1.1; `assets/README.md`
//! says where from) lends the letters of Japanese. It stands last, so that it changes nothing the others
//! have. A sign in none prints as an empty box, which [`crate::letters`] tells.

use std::sync::OnceLock;

use typst::foundations::Bytes;
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;

const FAMILIES: [&str; 3] = ["Libertinus Serif", "DejaVu Sans Mono", "Noto Sans JP"];
/// One weight; bold words in these letters are set in it too.
const JAPANESE: &[u8] = include_bytes!("../../assets/NotoSansJP-Regular.ttf");

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
            .chain(std::iter::once(JAPANESE))
            .flat_map(|data| Font::iter(Bytes::new(data)))
            .filter(|font| FAMILIES.contains(&font.info().family.as_str()))
            .collect();
        Fonts {
            book: LazyHash::new(FontBook::from_fonts(&fonts)),
            fonts,
        }
    })
}

/// Whether one of the fonts has a letter.
pub(crate) fn has_letter(letter: char) -> bool {
    let mut all = fonts().fonts.iter();
    all.any(|font| font.info().coverage.contains(u32::from(letter)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_families_are_carried() {
        for family in FAMILIES {
            assert!(
                fonts().book.contains_family(&family.to_lowercase()),
                "{family}"
            );
        }
    }
}
