//! What pages load besides themselves: carried in the program, named by what they hold, kept by the browser for good.

use std::sync::LazyLock;

use axum::http::header;
use axum::response::{IntoResponse, Response};
use sha2::{Digest, Sha256};

use crate::trouble::Trouble;

struct Asset {
    name: &'static str,
    kind: &'static str,
    bytes: &'static [u8],
}

macro_rules! asset {
    ($name:literal, $kind:literal) => {
        Asset {
            name: $name,
            kind: $kind,
            bytes: include_bytes!(concat!("../assets/", $name)),
        }
    };
}

const ASSETS: &[Asset] = &[
    asset!("bench.css", "text/css; charset=utf-8"),
    asset!("art.js", "text/javascript; charset=utf-8"),
    asset!("begin.css", "text/css; charset=utf-8"),
    asset!("begin.js", "text/javascript; charset=utf-8"),
    asset!("history.css", "text/css; charset=utf-8"),
    asset!("history.js", "text/javascript; charset=utf-8"),
    asset!("gone.js", "text/javascript; charset=utf-8"),
    asset!("work.css", "text/css; charset=utf-8"),
    asset!("bench.js", "text/javascript; charset=utf-8"),
    asset!("swap.js", "text/javascript; charset=utf-8"),
    asset!("fields.js", "text/javascript; charset=utf-8"),
    asset!("drawing.js", "text/javascript; charset=utf-8"),
    asset!("parts.js", "text/javascript; charset=utf-8"),
    asset!("marks.js", "text/javascript; charset=utf-8"),
    asset!("grips.js", "text/javascript; charset=utf-8"),
    asset!("dims.js", "text/javascript; charset=utf-8"),
    asset!("nudge.js", "text/javascript; charset=utf-8"),
    asset!("cloth.css", "text/css; charset=utf-8"),
    asset!("bring.js", "text/javascript; charset=utf-8"),
    asset!("forms.js", "text/javascript; charset=utf-8"),
    asset!("work.js", "text/javascript; charset=utf-8"),
    asset!("keys.js", "text/javascript; charset=utf-8"),
    asset!("mark.svg", "image/svg+xml"),
    asset!("plex-sans-400.woff2", "font/woff2"),
    asset!("plex-sans-600.woff2", "font/woff2"),
    asset!("plex-sans-OFL.txt", "text/plain; charset=utf-8"),
];

/// One name for all assets together, so that they can name each other beside themselves.
static EDITION: LazyLock<String> = LazyLock::new(|| {
    let mut hash = Sha256::new();
    for asset in ASSETS {
        hash.update(asset.name.as_bytes());
        hash.update(asset.bytes.len().to_le_bytes());
        hash.update(asset.bytes);
    }
    let digest = hash.finalize();
    digest
        .iter()
        .take(8)
        .map(|byte| format!("{byte:02x}"))
        .collect()
});

/// The address of an asset.
pub(crate) fn url(name: &str) -> String {
    format!("/asset/{}/{name}", *EDITION)
}

/// The asset at an address.
pub(crate) fn serve(edition: &str, name: &str) -> Response {
    let asset = ASSETS.iter().find(|asset| asset.name == name);
    match asset.filter(|_| edition == *EDITION) {
        Some(asset) => (
            [
                (header::CONTENT_TYPE, asset.kind),
                (header::CACHE_CONTROL, "public, max-age=31536000, immutable"),
            ],
            asset.bytes,
        )
            .into_response(),
        None => Trouble::no_such_page().into_response(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_scripts_together_stay_small() {
        let scripts = ASSETS.iter().filter(|asset| asset.name.ends_with(".js"));
        let bytes: usize = scripts.map(|asset| asset.bytes.len()).sum();
        assert!(bytes > 0 && bytes < 120_000, "{bytes} bytes of script");
    }
}
