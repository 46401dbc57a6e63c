//! Writes every sheet of the demo style in one size into a folder, to be looked at.
//!
//! `cargo run -p drawing --example sheets -- FOLDER [SIZE]` (size "32x32" unless told).

use std::error::Error;
use std::path::Path;
use std::{env, fs};

use draft::{Pattern, Spec, draft};
use drawing::{
    PieceCaption, Sheet, measure_sheets, piece_sheet, piece_thumbnail, pieces_overview, svg,
};
use geometry::{Point, offset_outline};
use sewing::CutPiece;
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
    let pattern = draft(&Spec::of(&loaded.style, size)).pattern;
    let cut = ten_millimetres(&pattern);
    let write =
        |name: &str, sheet: &Sheet| fs::write(folder.join(format!("{name}.svg")), svg(sheet));
    for (k, piece) in pattern.pieces.iter().enumerate() {
        let caption = PieceCaption {
            style: loaded.style.style.name.clone(),
            size: size.to_string(),
            number: k + 1,
            scale: 0.2,
        };
        let cut = cut.iter().find(|c| c.piece == piece.id);
        write(
            &format!("piece-{}", piece.id.code()),
            &piece_sheet(piece, cut, &caption),
        )?;
        write(
            &format!("thumbnail-{}", piece.id.code()),
            &piece_thumbnail(piece, cut),
        )?;
    }
    for (k, sheet) in pieces_overview(&pattern, &cut).sheets.iter().enumerate() {
        write(&format!("overview-{}", k + 1), sheet)?;
    }
    for (k, sheet) in measure_sheets(&pattern).iter().enumerate() {
        write(&format!("measure-{}", k + 1), sheet)?;
    }
    Ok(())
}

/// Cut pieces with a plain allowance all round, 40 mm at the hem.
fn ten_millimetres(pattern: &Pattern) -> Vec<CutPiece> {
    pattern
        .pieces
        .iter()
        .filter_map(|piece| {
            let allowances: Vec<(&'static str, Length)> = piece
                .edges
                .iter()
                .map(|e| {
                    (
                        e.name,
                        Length::mm(if e.name == "hem" { 40.0 } else { 10.0 }),
                    )
                })
                .collect();
            let edges: Vec<(Vec<Point>, Length)> = piece
                .edges
                .iter()
                .zip(&allowances)
                .map(|(e, (_, a))| (e.path.dense(Length::mm(2.0)), *a))
                .collect();
            let outline = offset_outline(&edges)
                .map_err(|e| println!("{} {e}", piece.id))
                .ok()?;
            Some(CutPiece {
                piece: piece.id,
                allowances,
                outline,
            })
        })
        .collect()
}
