//! The cloths and the maker's own files that details of a style name.

use crate::details::{ArtPath, BackPocket, Label, Lining};

use super::StyleDoc;

impl StyleDoc {
    /// The cloth a back pocket is lined with, a name from `cloths.toml`; `None` when the style names none.
    #[must_use]
    pub fn lining_of<'a>(&'a self, pocket: &'a BackPocket) -> Option<&'a str> {
        let own = pocket.lining_cloth.as_deref();
        own.or(self.cloth.lining.as_deref())
    }

    /// The cloths that line a back pocket, each once, the left pocket's first.
    #[must_use]
    pub fn linings(&self) -> Vec<&str> {
        let back = &self.pockets.back;
        let lined = [&back.left, &back.right];
        let mut cloths: Vec<&str> = lined
            .into_iter()
            .filter(|pocket| pocket.lining != Lining::None)
            .filter_map(|pocket| self.lining_of(pocket))
            .collect();
        cloths.dedup();
        cloths
    }

    /// Every file of the maker's own that the style names, with its path in the document ("patch.art").
    #[must_use]
    pub fn art(&self) -> Vec<(String, &ArtPath)> {
        let back = &self.pockets.back;
        let patch = self.patch.as_ref().and_then(|patch| patch.art.as_ref());
        let coin = self.pockets.coin.art.as_ref();
        let single = [
            ("pockets.coin.art", coin),
            ("pockets.back.left.art", back.left.art.as_ref()),
            ("pockets.back.right.art", back.right.art.as_ref()),
            ("patch.art", patch),
        ];
        let single = single
            .into_iter()
            .filter_map(|(path, art)| Some((path.to_owned(), art?)));
        let label = |(index, label): (usize, _)| -> Option<(String, &ArtPath)> {
            let label: &Label = label;
            Some((format!("labels[{index}].art"), label.art.as_ref()?))
        };
        single
            .chain(self.labels.iter().enumerate().filter_map(label))
            .collect()
    }
}
