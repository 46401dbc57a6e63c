//! Writes the four garment views of the demo style into a folder: `cargo run -p drawing --example views -- /tmp/views`.
// What it says is its result.
#![allow(clippy::print_stderr)]

use drawing::{View, garment_view, svg};
use sewing::{Face, make};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let out = std::env::args().nth(1).unwrap_or_else(|| ".".to_owned());
    let demo = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    let loaded = style::load(demo.as_ref()).map_err(|r| format!("{r:?}"))?;
    let garment = make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
    for (view, face) in [
        (View::Front, Face::Outside),
        (View::Front, Face::Inside),
        (View::Back, Face::Outside),
        (View::Back, Face::Inside),
    ] {
        let start = std::time::Instant::now();
        let text = svg(&garment_view(&garment, view, face));
        eprintln!(
            "{view:?} {face:?} {} bytes {:?}",
            text.len(),
            start.elapsed()
        );
        std::fs::write(format!("{out}/{}-{face:?}.svg", view.word()), text)?;
    }
    for f in &garment.findings {
        eprintln!("{:?} {} {}", f.severity, f.code, f.subject);
    }
    Ok(())
}
