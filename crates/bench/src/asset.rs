//! What pages load besides themselves: carried in the program, named by what they hold, kept by the browser for good.

use std::sync::LazyLock;

use axum::extract::Path;
use axum::http::header;
use axum::response::{IntoResponse, Redirect, Response};
use sha2::{Digest, Sha256};

use crate::request::Route;
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
    asset!("entry.js", "text/javascript; charset=utf-8"),
    asset!("drawing.js", "text/javascript; charset=utf-8"),
    asset!("parts.js", "text/javascript; charset=utf-8"),
    asset!("marks.js", "text/javascript; charset=utf-8"),
    asset!("halo.js", "text/javascript; charset=utf-8"),
    asset!("grips.js", "text/javascript; charset=utf-8"),
    asset!("dims.js", "text/javascript; charset=utf-8"),
    asset!("nudge.js", "text/javascript; charset=utf-8"),
    asset!("cloth.css", "text/css; charset=utf-8"),
    asset!("bring.js", "text/javascript; charset=utf-8"),
    asset!("forms.js", "text/javascript; charset=utf-8"),
    asset!("work.js", "text/javascript; charset=utf-8"),
    asset!("words.js", "text/javascript; charset=utf-8"),
    asset!("keys.js", "text/javascript; charset=utf-8"),
    asset!("mark.svg", "image/svg+xml"),
    asset!("plex-sans-400.woff2", "font/woff2"),
    asset!("plex-sans-600.woff2", "font/woff2"),
    asset!("plex-sans-OFL.txt", "text/plain; charset=utf-8"),
];

/// The addresses of what pages load.
pub(crate) fn routes() -> Vec<Route> {
    vec![
        Route::get("/asset/{edition}/{name}", file),
        Route::get("/favicon.ico", async || {
            Redirect::permanent(&url("mark.svg"))
        }),
    ]
}

async fn file(Path((edition, name)): Path<(String, String)>) -> Response {
    serve(&edition, &name)
}

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

/// Every script with its text.
pub(crate) fn scripts() -> impl Iterator<Item = (&'static str, &'static str)> {
    let scripts = ASSETS.iter().filter(|asset| asset.name.ends_with(".js"));
    scripts.filter_map(|asset| Some((asset.name, str::from_utf8(asset.bytes).ok()?)))
}

/// Scripts with all that they load, as their first lines say: `import { ask } from './swap.js';`.
pub(crate) fn with_imports(named: &[&'static str]) -> Vec<&'static str> {
    let mut all = named.to_vec();
    let mut at = 0;
    while let Some(script) = all.get(at) {
        let text = scripts().find(|(name, _)| name == script);
        let lines = text.map_or("", |(_, text)| text).lines();
        let imports = lines.filter(|line| line.starts_with("import "));
        let named = imports.filter_map(|line| line.split_once("'./")?.1.strip_suffix("';"));
        for import in named {
            if !all.contains(&import) {
                all.push(import);
            }
        }
        at += 1;
    }
    all
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
        let bytes: usize = scripts().map(|(_, text)| text.len()).sum();
        assert!(bytes > 0 && bytes < 92_000, "{bytes} bytes of script");
    }

    #[test]
    fn scripts_load_scripts_that_are_there() {
        for (script, text) in scripts() {
            let all = with_imports(&[script]);
            for name in &all {
                let there = scripts().any(|(known, _)| known == *name);
                assert!(there, "{script} loads {name}, which is not there");
            }
            let imports = text.matches("import ").count();
            let named = text.matches(".js';").count();
            assert_eq!(imports, named, "{script} loads something in another way");
        }
        let style = with_imports(&["bench.js"]);
        assert!(style.contains(&"gone.js"), "{style:?}");
    }
}
