//! Writes the section of every seam of the demo style, at plate and at table size, into a folder,
//! and those of constructions the demo does not use, shown on its seams.
//!
//! `cargo run -p drawing --example sections -- FOLDER`.

use std::error::Error;
use std::path::Path;
use std::{env, fs};

use drawing::{seam_section, seam_section_thumbnail, svg};
use style::{Construction, Seam, Size};

fn main() -> Result<(), Box<dyn Error>> {
    let folder = env::args().nth(1).ok_or("say which folder to write into")?;
    let folder = Path::new(&folder);
    fs::create_dir_all(folder)?;
    let demo = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../style/demo/saltmarsh")
        .join(style::demo::STYLE);
    let loaded = style::load(&demo)?;
    let size: Size = "32x32".parse()?;
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    let mut seams: Vec<(String, Seam)> = garment
        .seams
        .iter()
        .map(|seam| (seam.name.clone(), seam.clone()))
        .collect();
    // An inseam with one row at the seam line shows what the demo does otherwise.
    let inseam = garment.seams.iter().find(|s| s.name == "inseam");
    for construction in [
        Construction::PressedOpen,
        Construction::SafetyStitched,
        Construction::Overlocked,
    ] {
        if let Some(inseam) = inseam {
            let mut seam = inseam.clone();
            seam.construction = construction;
            seam.rows.truncate(1);
            for row in &mut seam.rows {
                row.offset = trade::Length::ZERO;
                row.stitch = match construction {
                    Construction::SafetyStitched => trade::StitchType::S516,
                    Construction::Overlocked => trade::StitchType::S504,
                    _ => row.stitch,
                };
            }
            seams.push((format!("other-{}", construction.word()), seam));
        }
    }
    for (name, seam) in &seams {
        if let Some(sheet) = seam_section(&garment, seam) {
            fs::write(folder.join(format!("{name}.svg")), svg(&sheet))?;
        }
        if let Some(sheet) = seam_section_thumbnail(&garment, seam) {
            fs::write(folder.join(format!("thumb-{name}.svg")), svg(&sheet))?;
        }
    }
    Ok(())
}
