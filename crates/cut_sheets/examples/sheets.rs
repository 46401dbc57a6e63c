//! Writes every sheet of the demo style in one size into a folder, to be looked at.
//!
//! `cargo run -p cut_sheets --example sheets -- FOLDER [SIZE]` (size "32x32" unless told).

use std::error::Error;
use std::path::Path;
use std::{env, fs};

use cut_sheets::{
    NestLook, PatternSet, PieceCaption, corner_sheet, nest_point, nest_sheet, piece_number,
    piece_sheet, piece_thumbnail, pieces_overview,
};
use cutting::{Plan, cut};
use drawing::{Sheet, measure_sheets, svg};
use style::Size;
use trade::Length;

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
    let (pattern, words) = (&garment.pattern, words::Words::english());
    let plan = Plan::of(&loaded.style);
    let cut = cut(&garment, &plan);
    let write =
        |name: &str, sheet: &Sheet| fs::write(folder.join(format!("{name}.svg")), svg(sheet));
    for piece in &cut.pieces {
        let caption = PieceCaption {
            number: piece_number(pattern, piece),
            style_and_size: true,
            scale: 0.2,
            type_size: 1.0,
        };
        let name = piece.code();
        write(
            &format!("piece-{name}"),
            &piece_sheet(piece, &caption, words),
        )?;
        write(&format!("thumbnail-{name}"), &piece_thumbnail(piece, words))?;
    }
    for (k, sheet) in pieces_overview(pattern, &cut, words)
        .sheets
        .iter()
        .enumerate()
    {
        write(&format!("overview-{}", k + 1), sheet)?;
    }
    write("corners", &corner_sheet(&cut, words))?;
    let waists = loaded.style.sizes.waists.iter();
    let run: Vec<_> = waists
        .map(|waist| {
            let size = Size::of(*waist, size.length);
            cutting::cut(
                &sewing::make(&loaded.style, &loaded.collection, size),
                &plan,
            )
        })
        .collect();
    let look = NestLook {
        base: size,
        scale: 0.2,
        type_size: 1.0,
        named: true,
    };
    for piece in &cut.pieces {
        let Some(at) = nest_point(piece) else {
            continue;
        };
        let nest = cutting::nest(&run, piece.piece, piece.part, piece.on, at)?;
        write(
            &format!("nest-{}", piece.code()),
            &nest_sheet(&run, &nest, &look, words),
        )?;
    }
    let set = PatternSet::of_size(pattern, &cut, words);
    write("roll", &set.on_width(Length::cm(90.0), true).sheet)?;
    let (nested, _) = PatternSet::nested(&run, size, words);
    write(
        "roll-nested",
        &nested.on_width(Length::cm(90.0), true).sheet,
    )?;
    for (k, sheet) in measure_sheets(pattern, words).iter().enumerate() {
        write(&format!("measure-{}", k + 1), sheet)?;
    }
    Ok(())
}
