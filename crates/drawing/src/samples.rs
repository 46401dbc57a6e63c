//! The demo style, sewn, for the tests of this room.

use std::path::Path;

use sewing::{Garment, make};
use style::{Loaded, Size, WashFinish};

use crate::lettering::crowding;
use crate::sheet::{Sheet, Text};

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

/// The demo where no wash comes between sewing and measuring: what the style states is what a sewer sets.
pub fn raw(waist: u32, length: u32) -> Garment {
    let mut loaded = ferryman();
    if let Some(wash) = &mut loaded.style.wash {
        wash.finish = WashFinish::Raw;
    }
    make(&loaded.style, &loaded.collection, Size::new(waist, length))
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
