//! Writes the four garment views of a style into a folder, the demo's where none is named, and says how long each took:
//! `cargo run --workspace --example views -- /tmp/views [STYLE [SIZE [NAME]]]`.
// What it says is its result.
#![allow(clippy::print_stderr)]

use drawing::{View, garment_view, svg};
use sewing::{Face, make};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut asked = std::env::args().skip(1);
    let out = asked.next().unwrap_or_else(|| ".".to_owned());
    let demo = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    let style = asked.next().unwrap_or_else(|| demo.to_owned());
    let loaded = style::load(style.as_ref()).map_err(|r| format!("{r:?}"))?;
    let size = match asked.next() {
        Some(size) => size.parse()?,
        None => loaded.style.sizes.base,
    };
    let name = asked.next().map_or(String::new(), |name| name + "-");
    let garment = make(&loaded.style, &loaded.collection, size);
    for (view, face) in [
        (View::Front, Face::Outside),
        (View::Front, Face::Inside),
        (View::Back, Face::Outside),
        (View::Back, Face::Inside),
    ] {
        let start = std::time::Instant::now();
        let text = svg(&garment_view(&garment, view, face, words::Words::english()));
        eprintln!(
            "{view:?} {face:?} {} bytes {:?}",
            text.len(),
            start.elapsed()
        );
        std::fs::write(format!("{out}/{name}{}-{face:?}.svg", view.word()), text)?;
    }
    for f in &garment.findings {
        eprintln!("{:?} {} {}", f.severity, f.code, f.subject);
    }
    Ok(())
}
