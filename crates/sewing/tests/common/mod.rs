//! The demo style, for all tests.

use style::Loaded;

pub fn ferryman() -> Loaded {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    style::load(folder.as_ref()).unwrap()
}
