//! The demo style as a pattern file.

use std::path::PathBuf;
use std::sync::OnceLock;

use cutting::{BandCut, CutSize, Plan, cut};
use patterns::{PatternFile, from_cut};
use style::Size;

/// Two sizes of the demo, cut.
pub fn cut_sizes() -> &'static [CutSize] {
    static CUT: OnceLock<Vec<CutSize>> = OnceLock::new();
    CUT.get_or_init(|| {
        let folder = concat!(
            env!("CARGO_MANIFEST_DIR"),
            "/../style/demo/saltmarsh/styles/ferryman"
        );
        let loaded = style::load(folder.as_ref()).unwrap();
        let plan = Plan {
            band: BandCut::AlongWeft,
            ..Plan::default()
        };
        let sizes = [Size::new(32, 32), Size::new(38, 34)];
        let cut = |size| {
            cut(
                &sewing::make(&loaded.style, &loaded.collection, size),
                &plan,
            )
        };
        sizes.into_iter().map(cut).collect()
    })
}

/// They as a pattern file.
pub fn ferryman() -> PatternFile {
    PatternFile {
        style: "SY-101 Ferryman".to_owned(),
        author: "Saltmarsh Yard".to_owned(),
        date: "25-11-2026".to_owned(),
        sample_size: "32x32".to_owned(),
        pieces: cut_sizes()
            .iter()
            .flat_map(|cut| from_cut(cut, words::Words::english()))
            .collect(),
    }
}

/// Keeps a file for somebody who wants to look at it: in the folder this variable names.
pub fn keep(name: &str, text: &str) {
    if let Some(folder) = std::env::var_os("PATTERNS_KEPT_IN") {
        std::fs::write(PathBuf::from(folder).join(name), text).unwrap();
    }
}
