//! The demo style, sewn, for the tests of this room.

use cutting::{CutSize, Plan, cut};
use drawing::lettering::crowding;
use drawing::{Sheet, Text};
use sewing::{Garment, make};
use std::path::Path;
use style::{Loaded, Size};

pub fn ferryman() -> Loaded {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../style/demo/saltmarsh")
        .join(style::demo::STYLE);
    match style::load(&path) {
        Ok(loaded) => loaded,
        Err(report) => panic!("{report}"),
    }
}

pub fn sewn(waist: u32, length: u32) -> Garment {
    let loaded = ferryman();
    make(&loaded.style, &loaded.collection, Size::new(waist, length))
}

/// What the demo style decides before cutting.
pub fn plan() -> Plan {
    Plan::of(&ferryman().style)
}

/// A size of the demo, cut.
pub fn cut_out(waist: u32, length: u32) -> CutSize {
    cut(&sewn(waist, length), &plan())
}

/// All words of a sheet.
pub fn texts(sheet: &Sheet) -> Vec<&Text> {
    sheet.texts().collect()
}

/// Fails when words run off the sheet or over one another.
pub fn words_stand_clear(sheet: &Sheet) {
    let crowded = crowding(sheet);
    assert!(
        crowded.is_empty(),
        "{}: {}",
        sheet.title,
        crowded.join("; ")
    );
}
