//! Writes every sheet of the demo style in one size into a folder, to be looked at.
//!
//! `cargo run -p drawing --example sheets -- FOLDER [SIZE]` (size "32x32" unless told).

use std::error::Error;
use std::path::Path;
use std::{env, fs};

use drawing::{
    PieceCaption, Sheet, measure_sheets, piece_sheet, piece_thumbnail, pieces_overview, svg,
};
use sewing::On;
use style::Size;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = env::args().skip(1);
    let folder = arguments.next().ok_or("say which folder to write into")?;
    let size: Size = arguments.next().unwrap_or("32x32".to_owned()).parse()?;
    let folder = Path::new(&folder);
    fs::create_dir_all(folder)?;
    let demo = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../style/demo/saltmarsh")
        .join(style::demo::STYLE);
    let loaded = style::load(&demo)?;
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    let (pattern, cut) = (&garment.pattern, &garment.cut);
    let write =
        |name: &str, sheet: &Sheet| fs::write(folder.join(format!("{name}.svg")), svg(sheet));
    for (k, piece) in pattern.pieces.iter().enumerate() {
        let caption = PieceCaption {
            style: loaded.style.style.name.clone(),
            size: size.to_string(),
            number: k + 1,
            scale: 0.2,
        };
        // Left and right are cut apart where their allowances differ.
        for cut in cut.iter().filter(|c| c.piece == piece.id) {
            let copy = if cut.on == On::Mirrored {
                "-mirrored"
            } else {
                ""
            };
            let name = format!("{}{copy}", piece.id.code());
            write(
                &format!("piece-{name}"),
                &piece_sheet(piece, Some(cut), &caption),
            )?;
            write(
                &format!("thumbnail-{name}"),
                &piece_thumbnail(piece, Some(cut)),
            )?;
        }
    }
    for (k, sheet) in pieces_overview(pattern, cut).sheets.iter().enumerate() {
        write(&format!("overview-{}", k + 1), sheet)?;
    }
    for (k, sheet) in measure_sheets(pattern).iter().enumerate() {
        write(&format!("measure-{}", k + 1), sheet)?;
    }
    Ok(())
}
