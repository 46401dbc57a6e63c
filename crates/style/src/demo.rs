//! The demo collection, carried inside the program. It is also the format's reference:
//! what a file may say, the demo says, with a comment beside it.

macro_rules! demo_file {
    ($path:literal) => {
        ($path, include_str!(concat!("../demo/saltmarsh/", $path)))
    };
}

/// Where the demo's one style lies inside its collection.
pub const STYLE: &str = "styles/ferryman/style.toml";

/// Where the demo's one order lies inside its collection.
pub const ORDER: &str = "orders/spring.toml";

/// The shell the demo's style is cut from.
pub(crate) const SHELL: &str = "tideline-14";

const FILES: &[(&str, &str)] = &[
    demo_file!("collection.toml"),
    demo_file!("cloths.toml"),
    demo_file!("yarns.toml"),
    demo_file!("trims.toml"),
    demo_file!("orders/spring.toml"),
    demo_file!("styles/ferryman/style.toml"),
    demo_file!("styles/ferryman/art/bight.svg"),
    demo_file!("styles/ferryman/art/patch.svg"),
];

/// The demo's files: path inside the collection (with forward slashes) and text.
#[must_use]
pub fn files() -> &'static [(&'static str, &'static str)] {
    FILES
}

/// The text of one demo file; empty for a path the demo does not have.
pub(crate) fn text(path: &str) -> &'static str {
    FILES
        .iter()
        .find(|(name, _)| *name == path)
        .map_or("", |(_, text)| text)
}
