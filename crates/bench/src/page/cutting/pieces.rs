//! The pieces of a style as they are cut, in one size or in all of them.

use cut_sheets::nests_overview;
use cutting::{CutSize, Plan, cut};
use drawing::svg;
use serde::Deserialize;
use sewing::Garment;
use style::{Loaded, Size};
use words::Words;

/// The pieces of one size.
pub(super) struct Pieces {
    pub(super) size: Size,
    pub(super) garment: Garment,
    pub(super) cut: CutSize,
}

impl Pieces {
    pub(super) fn of(loaded: &Loaded, size: Size) -> Self {
        let garment = sewing::make(&loaded.style, &loaded.collection, size);
        let cut = cut(&garment, &Plan::of(&loaded.style));
        Self { size, garment, cut }
    }
}

/// Which nests.
#[derive(Debug, Deserialize)]
pub(super) struct Part {
    by: String,
}

/// All waists, or all lengths, of every piece that grows; the first page of them holds the panels.
pub(super) fn nests(say: &Words, loaded: &Loaded, part: &Part) -> Option<String> {
    let base = loaded.style.sizes.base;
    let plan = Plan::of(&loaded.style);
    let keep = |size: &style::Size| match part.by.as_str() {
        "waist" => size.length == base.length,
        "length" => size.waist == base.waist,
        _ => false,
    };
    let run: Vec<CutSize> = loaded
        .style
        .sizes
        .all()
        .filter(keep)
        .map(|size| {
            cut(
                &sewing::make(&loaded.style, &loaded.collection, size),
                &plan,
            )
        })
        .collect();
    nests_overview(&run, base, say).sheets.first().map(svg)
}
