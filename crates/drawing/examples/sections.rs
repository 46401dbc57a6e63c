//! Writes the section of every seam of the demo style, at plate and at table size, into a folder,
//! and those of constructions the demo does not use, shown on seams that may have them.
//!
//! `cargo run -p drawing --example sections -- FOLDER`.

use std::error::Error;
use std::path::Path;
use std::{env, fs};

use drawing::{seam_section, seam_section_thumbnail, svg};
use style::{Construction, Seam, SeamId, Size};
use trade::{Length, StitchType};

/// Seam, construction, and the stitch and offset of each row.
type Other = (SeamId, Construction, &'static [(StitchType, f64)]);

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
        .map(|seam| (seam.id.code().to_owned(), seam.clone()))
        .collect();
    for (index, (id, construction, rows)) in others().into_iter().enumerate() {
        if let Some(seam) = garment.seams.iter().find(|s| s.id == id) {
            let named = format!("other-{}-{index}", construction.word());
            seams.push((named, sewn_as(seam, construction, rows)));
        }
    }
    for (name, seam) in &seams {
        if let Some(sheet) = seam_section(&garment, seam, words::Words::english()) {
            fs::write(folder.join(format!("{name}.svg")), svg(&sheet))?;
        }
        if let Some(sheet) = seam_section_thumbnail(&garment, seam, words::Words::english()) {
            fs::write(folder.join(format!("thumb-{name}.svg")), svg(&sheet))?;
        }
    }
    Ok(())
}

fn others() -> Vec<Other> {
    use Construction as C;
    use StitchType::{S301, S401, S504, S516};
    vec![
        (SeamId::Inseam, C::PressedOpen, &[(S401, 0.0)]),
        (
            SeamId::Inseam,
            C::PressedOpen,
            &[(S401, 0.0), (S301, 6.0), (S301, -6.0), (S504, 0.0)],
        ),
        (
            SeamId::Seat,
            C::LapFelled,
            &[(S401, 1.6), (S401, 5.0), (S401, 8.0)],
        ),
        (
            SeamId::Inseam,
            C::SafetyStitched,
            &[(S516, 0.0), (S301, 1.6)],
        ),
        (SeamId::Inseam, C::Overlocked, &[(S504, 0.0)]),
        (SeamId::BagClose, C::FrenchSeam, &[(S301, 0.0)]),
        (
            SeamId::BagClose,
            C::FrenchSeam,
            &[(S301, 0.0), (S301, -6.0)],
        ),
        (SeamId::BagClose, C::BoundEdge, &[(S301, 5.0)]),
        (SeamId::BagClose, C::BoundEdge, &[(S301, 0.0), (S301, 5.0)]),
        (SeamId::BagClose, C::PressedOpen, &[(S301, 0.0)]),
        (SeamId::FlyEdge, C::BoundEdge, &[(S301, 5.0)]),
        (SeamId::FlyEdge, C::CleanFinished, &[(S301, 2.0)]),
        (SeamId::Band, C::BandTurned, &[(S301, 0.0), (S301, 2.0)]),
        (SeamId::Hem, C::FoldedHem, &[(S401, 10.5)]),
    ]
}

fn sewn_as(seam: &Seam, construction: Construction, rows: &[(StitchType, f64)]) -> Seam {
    let mut seam = seam.clone();
    seam.construction = construction;
    if let Some(like) = seam.rows.first().cloned() {
        seam.rows = rows
            .iter()
            .map(|(stitch, mm)| style::RowSpec {
                stitch: *stitch,
                offset: Length::mm(*mm),
                ..like.clone()
            })
            .collect();
    }
    seam
}
