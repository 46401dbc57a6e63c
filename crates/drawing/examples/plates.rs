//! Writes every plate of the demo style into a folder, to be looked at.
//!
//! `cargo run -p drawing --example plates -- FOLDER [SIZE]` (the base size unless told).
// What it says is its result.
#![allow(clippy::print_stdout)]

use std::error::Error;
use std::path::Path;
use std::{env, fs};

use drawing::{plates, svg};

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = env::args().skip(1);
    let folder = arguments.next().ok_or("say which folder to write into")?;
    let folder = Path::new(&folder);
    fs::create_dir_all(folder)?;
    let demo = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../style/demo/saltmarsh")
        .join(style::demo::STYLE);
    let loaded = style::load(&demo)?;
    let size = match arguments.next() {
        Some(told) => told.parse()?,
        None => loaded.style.sizes.base,
    };
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    for plate in plates(&garment, words::Words::english()) {
        fs::write(
            folder.join(format!("{}.svg", plate.id.code())),
            svg(&plate.sheet),
        )?;
        println!("{} {} {}", plate.id.code(), plate.scale, plate.caption);
        for row in &plate.stitches {
            let whole = if row.whole { "" } else { " (in part)" };
            println!("  {} {}: {}{whole}", row.seam.code(), row.number, row.drawn);
        }
    }
    Ok(())
}
