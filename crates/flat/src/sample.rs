//! The demo style, sewn, for the tests of this room.

use std::path::Path;

use sewing::{Garment, make};
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
